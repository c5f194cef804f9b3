//! Reads one row of the table.

use std::collections::BTreeMap;

use super::body::Body;
use super::date::Date;
use super::quantity::Quantity;
use super::row::{Equal, Limit, Row, Stretch};
use super::strength::Strength;
use super::table::Source;
use crate::document::{Content, Fields, Node, Reader};
use crate::notation::Notation;

/// A row of the file: perhaps several quantities, perhaps both ends.
pub(super) struct Found {
    pub(super) id: String,
    quantities: Vec<Quantity>,
    limits: Vec<Limit>,
    /// What all its rows share; quantity and limit are put in by [`Found::rows`].
    model: Row,
}

impl Found {
    pub(super) fn rows(&self) -> impl Iterator<Item = Row> + '_ {
        self.quantities.iter().flat_map(|quantity| {
            self.limits.iter().map(|limit| Row {
                quantity: *quantity,
                limit: *limit,
                ..self.model.clone()
            })
        })
    }
}

pub(super) fn row<'d>(
    fields: &mut Fields<'d>,
    sources: &BTreeMap<String, Source>,
    reader: &mut Reader<'d>,
) -> Option<Found> {
    let id = fields.require("id", reader);
    let id = id.and_then(|node| reader.text(node, "the id"));
    let label = fields.require("label", reader);
    let label = label.and_then(|node| reader.text(node, "the label"));
    let quantities = quantities(fields, reader);
    let bodies = words(
        fields,
        "body",
        "the body",
        &Body::ALL.map(Body::word),
        reader,
    );
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
    let strength = strength.and_then(|node| reader.choice(node, "the strength", &strength_names));
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
    if quantities
        .iter()
        .any(|other| other.unit() != quantity.unit())
    {
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
            label: label?.to_owned(),
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

pub(super) fn quantities<'d>(fields: &mut Fields<'d>, reader: &mut Reader<'d>) -> Vec<Quantity> {
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
        reader.value(node, "a bound of the class", |text| {
            Notation::Weight.read(text)
        })
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
    let equal = equal
        .and_then(|node| reader.choice(node, "a value at the limit", &["pass", "fail", "ask"]));
    let equal = match equal {
        Some(1) => Equal::Fail,
        Some(2) => Equal::Ask,
        _ => Equal::Pass,
    };
    let keys = ["at_least", "at_most", "is", "unread", "no_limit", "moot"]
        .map(|key| (key, fields.take(key)));
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
            "no_limit" => reader.flag(node, key).map(|_| Limit::Free),
            _ => reader.flag(node, key).map(|_| Limit::Moot),
        });
    }
    if !any {
        let message = "a limit needs `at_most`, `at_least`, `is`, `no_limit`, `moot` or `unread`";
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
pub(super) fn size<'d>(
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
