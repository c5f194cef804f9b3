//! Reads the table of limits: every fault with its place.

use std::collections::BTreeMap;

use super::body::Body;
use super::date::Date;
use super::quantity::Quantity;
use super::row::{Equal, Limit, Row, Stretch};
use super::strength::Strength;
use super::table::{Margin, Source, Standards};
use crate::document::{Content, Document, Faults, Fields, Node, Reader};
use crate::notation::Notation;

/// Reads a whole table.
///
/// # Errors
/// Every fault, in order of place.
pub(super) fn read(document: &Document) -> Result<Standards, Faults> {
    let mut reader = Reader::new(document);
    let table = table(document, &mut reader);
    reader.finish()?;
    table.ok_or_else(Faults::new)
}

fn table<'d>(document: &'d Document, reader: &mut Reader<'d>) -> Option<Standards> {
    let mut fields = reader.fields(document.root(), "a table of limits")?;
    let known_until = fields.require("known_until", reader);
    let known_until =
        known_until.and_then(|node| reader.value(node, "the last day known", Date::read));
    let sources = fields.require("sources", reader);
    let sources = sources.map(|node| read_sources(node, reader));
    let sources = sources.unwrap_or_default();
    let margins = fields.require("margins", reader);
    let margins = margins.map(|node| read_margins(node, reader));
    let limits = fields.require("limits", reader);
    let rows = limits.map(|node| read_rows(node, &sources, reader));
    fields.close(reader);
    Some(Standards::new(
        known_until?,
        margins.unwrap_or_default(),
        sources,
        rows.unwrap_or_default(),
    ))
}

fn read_sources<'d>(node: &'d Node, reader: &mut Reader<'d>) -> BTreeMap<String, Source> {
    let mut sources = BTreeMap::new();
    let Some(mut fields) = reader.fields(node, "the sources") else {
        return sources;
    };
    for (key, value) in fields.rest() {
        let Some(mut source) = reader.fields(value, "a source") else {
            continue;
        };
        let title = source.require("title", reader);
        let title = title.and_then(|node| reader.text(node, "the title"));
        let date = source.require("date", reader);
        let date = date.and_then(|node| reader.text(node, "the date"));
        let place = source.require("where", reader);
        let place = place.and_then(|node| reader.text(node, "where it was read"));
        source.close(reader);
        if let (Some(key), Some(title), Some(date), Some(_)) = (key.text(), title, date, place) {
            let source = Source {
                title: title.to_owned(),
                date: date.to_owned(),
            };
            sources.insert(key.to_owned(), source);
        }
    }
    sources
}

fn read_margins<'d>(node: &'d Node, reader: &mut Reader<'d>) -> Vec<Margin> {
    let mut margins = Vec::new();
    for node in reader.list(node, "the margins").unwrap_or_default() {
        let Some(mut fields) = reader.fields(node, "a margin") else {
            continue;
        };
        let quantities = quantities(&mut fields, reader);
        let steps = fields.require("margin", reader);
        let steps = steps.and_then(|node| size(node, "the margin", quantities.first(), reader));
        let because = fields.require("because", reader);
        let because = because.and_then(|node| reader.sentence(node, "the reason"));
        let source = fields.require("source", reader);
        let source = source.and_then(|node| reader.choice(node, "the source", &["own choice"]));
        fields.close(reader);
        if let (Some(steps), Some(_), Some(_)) = (steps, because, source) {
            margins.push(Margin { quantities, steps });
        }
    }
    margins
}

fn read_rows<'d>(
    node: &'d Node,
    sources: &BTreeMap<String, Source>,
    reader: &mut Reader<'d>,
) -> Vec<Row> {
    let mut rows: Vec<Row> = Vec::new();
    for node in reader.list(node, "the limits").unwrap_or_default() {
        let Some(mut fields) = reader.fields(node, "a limit") else {
            continue;
        };
        let found = row(&mut fields, sources, reader);
        let id = fields.take("id").unwrap_or(node);
        fields.close(reader);
        let Some(found) = found else { continue };
        if rows.iter().any(|row| row.id == found.id) {
            let message = format!("a limit has the id `{}` already", found.id);
            reader.fault(id, "repeated", message);
        }
        let found: Vec<Row> = found.rows().collect();
        let clash = found.iter().find_map(|new| {
            let other = rows.iter().find(|row| row.overlaps(new))?;
            Some((new.quantity, other.id.clone()))
        });
        if let Some((quantity, other)) = clash {
            let message = format!(
                "`{other}` limits `{}` for the same body, days and balls already",
                quantity.word()
            );
            reader.fault_with_help(id, "overlap", message, "end the older row the day before");
        }
        rows.extend(found);
    }
    rows
}

/// A row of the file: perhaps several quantities, perhaps both ends.
struct Found {
    id: String,
    quantities: Vec<Quantity>,
    limits: Vec<Limit>,
    /// What all its rows share; quantity and limit are put in by [`Found::rows`].
    model: Row,
}

impl Found {
    fn rows(&self) -> impl Iterator<Item = Row> + '_ {
        self.quantities.iter().flat_map(|quantity| {
            self.limits.iter().map(|limit| Row {
                quantity: *quantity,
                limit: *limit,
                ..self.model.clone()
            })
        })
    }
}

fn row<'d>(
    fields: &mut Fields<'d>,
    sources: &BTreeMap<String, Source>,
    reader: &mut Reader<'d>,
) -> Option<Found> {
    let id = fields.require("id", reader);
    let id = id.and_then(|node| reader.text(node, "the id"));
    let sheet = fields.require("sheet", reader);
    let sheet = sheet.and_then(|node| reader.text(node, "the row of the sheet"));
    let quantities = quantities(fields, reader);
    let bodies = words(fields, "body", "the body", &Body::ALL.map(Body::word), reader);
    let bodies: Vec<Body> = bodies
        .into_iter()
        .filter_map(|at| Body::ALL.get(at).copied())
        .collect();
    let days = days(fields, reader);
    let approved = fields.take("approved").and_then(|node| {
        let mut fields = reader.fields(node, "the approval")?;
        let approved = self::days(&mut fields, reader);
        fields.close(reader);
        Some(approved)
    });
    let weights = fields.take("weight").map(|node| weights(node, reader));
    let [thumb, balance, slow] =
        ["thumb_hole", "balance_hole", "slow"].map(|key| only(fields.take(key), key, reader));
    let limits = limits(fields, quantities.first(), reader);
    let broken = fields
        .take("broken")
        .and_then(|node| reader.choice(node, "what breaking it means", &["fail", "ask"]));
    let says = fields.require("says", reader);
    let says = says.and_then(|node| reader.sentence(node, "what it says"));
    let strength = fields.require("strength", reader);
    let strength_names = Strength::WORDS.map(|(word, _)| word);
    let strength =
        strength.and_then(|node| reader.choice(node, "the strength", &strength_names));
    let strength = strength
        .and_then(|at| Strength::WORDS.get(at))
        .map(|(_, strength)| *strength);
    let is_published = matches!(
        strength,
        Some(Strength::Published | Strength::PublishedWeak)
    );
    let source = sources_of(fields, is_published, sources, reader);
    let note = fields.take("note");
    let note = note.and_then(|node| reader.sentence(node, "the note"));
    let quantity = *quantities.first()?;
    if quantities.iter().any(|other| other.unit() != quantity.unit()) {
        reader.fault(
            fields.node(),
            "contradiction",
            "the quantities of one row must have the same unit",
        );
        return None;
    }
    Some(Found {
        id: id?.to_owned(),
        model: Row {
            id: id?.to_owned(),
            sheet: sheet?.to_owned(),
            quantity,
            bodies,
            days,
            approved: approved.unwrap_or(Stretch::ALL),
            weights: weights.unwrap_or(Stretch::ALL),
            thumb,
            balance,
            slow,
            limit: *limits.first()?,
            broken_asks: broken == Some(1),
            says: says?.to_owned(),
            source,
            strength: strength?,
            note: note.map(str::to_owned),
        },
        quantities,
        limits,
    })
}

fn quantities<'d>(fields: &mut Fields<'d>, reader: &mut Reader<'d>) -> Vec<Quantity> {
    words(fields, "of", "the quantity", Quantity::WORDS, reader)
        .into_iter()
        .filter_map(|at| Quantity::ALL.get(at).copied())
        .collect()
}

/// One word or a list of words, as their indices.
fn words<'d>(
    fields: &mut Fields<'d>,
    key: &'static str,
    what: &str,
    names: &[&str],
    reader: &mut Reader<'d>,
) -> Vec<usize> {
    let Some(node) = fields.require(key, reader) else {
        return Vec::new();
    };
    let nodes = match node.content() {
        Content::List(nodes) => nodes.as_slice(),
        _ => std::slice::from_ref(node),
    };
    if nodes.is_empty() {
        reader.fault(node, "missing", format!("`{key}` names nothing"));
    }
    nodes
        .iter()
        .filter_map(|node| reader.choice(node, what, names))
        .collect()
}

fn days<'d>(fields: &mut Fields<'d>, reader: &mut Reader<'d>) -> Stretch {
    let mut day = |key, what| {
        let node = fields.take(key)?;
        Some((node, reader.value(node, what, Date::read)?))
    };
    let from = day("from", "the first day");
    let until = day("until", "the last day");
    if let (Some((_, from)), Some((node, until))) = (from, until)
        && until < from
    {
        let message = format!("it ends on {until}, before it begins on {from}");
        reader.fault(node, "contradiction", message);
    }
    Stretch::days(from.map(|(_, day)| day), until.map(|(_, day)| day))
}

/// A class of weights, in whole hundredths of a pound.
fn weights<'d>(node: &'d Node, reader: &mut Reader<'d>) -> Stretch {
    let mut class = Stretch::ALL;
    let Some(mut fields) = reader.fields(node, "the weight class") else {
        return class;
    };
    let mut bound = |key| {
        let node = fields.take(key)?;
        reader.value(node, "a bound of the class", |text| Notation::Weight.read(text))
    };
    // The next hundredth of a pound is the first weight over a bound.
    let low = [bound("from"), bound("over").map(|over| over + 1)];
    let high = [bound("to"), bound("under").map(|under| under - 1)];
    fields.close(reader);
    class.low = low.into_iter().flatten().max().unwrap_or(class.low);
    class.high = high.into_iter().flatten().min().unwrap_or(class.high);
    if class.high < class.low {
        reader.fault(node, "contradiction", "no weight lies in this class");
    }
    class
}

/// A condition that holds, doesn't hold, or is open.
fn only<'d>(node: Option<&'d Node>, key: &str, reader: &mut Reader<'d>) -> Stretch {
    match node.and_then(|node| reader.flag(node, key)) {
        Some(is) => {
            let is = i64::from(is);
            Stretch { low: is, high: is }
        }
        None => Stretch::ALL,
    }
}

fn limits<'d>(
    fields: &mut Fields<'d>,
    quantity: Option<&Quantity>,
    reader: &mut Reader<'d>,
) -> Vec<Limit> {
    let equal = fields.take("equal");
    let equal = equal.and_then(|node| {
        reader.choice(node, "a value at the limit", &["pass", "fail", "ask"])
    });
    let equal = match equal {
        Some(1) => Equal::Fail,
        Some(2) => Equal::Ask,
        _ => Equal::Pass,
    };
    let keys = ["at_least", "at_most", "is", "unread", "no_limit"].map(|key| (key, fields.take(key)));
    let mut limits = Vec::new();
    let mut any = false;
    for (key, node) in keys {
        let Some(node) = node else { continue };
        any = true;
        let mut size = |what| size(node, what, quantity, reader);
        limits.extend(match key {
            "at_least" => size("the least").map(|steps| Limit::Least(steps, equal)),
            "at_most" => size("the most").map(|steps| Limit::Most(steps, equal)),
            "is" => reader
                .flag(node, "what it must be")
                .map(|is| Limit::Is(i64::from(is))),
            "unread" => reader.flag(node, key).map(|_| Limit::Unread),
            _ => reader.flag(node, key).map(|_| Limit::Free),
        });
    }
    if !any {
        let message = "a limit needs `at_most`, `at_least`, `is`, `no_limit` or `unread`";
        reader.fault(fields.node(), "missing", message);
    }
    let whole = |limit: &Limit| limit.ends().len() == 2;
    if limits.len() > 1 && limits.iter().any(whole) {
        let message = "only `at_least` and `at_most` go together";
        reader.fault(fields.node(), "contradiction", message);
    }
    limits
}

/// A number in the unit of the quantity.
fn size<'d>(
    node: &'d Node,
    what: &str,
    quantity: Option<&Quantity>,
    reader: &mut Reader<'d>,
) -> Option<i64> {
    let unit = quantity?.unit();
    let steps = reader.value(node, what, |text| unit.read(text))?;
    if steps < 0 {
        reader.fault(node, "out-of-range", format!("{what} is less than nothing"));
        return None;
    }
    Some(steps)
}

/// Keys of the sources; what was published must name one.
fn sources_of<'d>(
    fields: &mut Fields<'d>,
    is_needed: bool,
    sources: &BTreeMap<String, Source>,
    reader: &mut Reader<'d>,
) -> Vec<String> {
    let node = fields.take("source");
    let nodes = match node {
        None => &[],
        Some(node) => match node.content() {
            Content::List(nodes) => nodes.as_slice(),
            _ => std::slice::from_ref(node),
        },
    };
    if nodes.is_empty() && is_needed {
        let message = "`source` is missing: what was published was read somewhere";
        reader.fault(node.unwrap_or(fields.node()), "missing", message);
    }
    let names: Vec<&str> = sources.keys().map(String::as_str).collect();
    nodes
        .iter()
        .filter_map(|node| reader.choice(node, "the source", &names))
        .filter_map(|at| names.get(at).map(|name| (*name).to_owned()))
        .collect()
}
