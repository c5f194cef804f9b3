//! The card over the years: what happened to the ball, each with its day.

use super::sheet::Sheet;
use super::words::ENTRIES;
use crate::document::{Node, clean};
use crate::notation::Notation;

/// The most entries that are taken.
const MOST: usize = 200;
/// The most pieces of tape in one hole. Own choice, as on the card.
const MOST_TAPES: i64 = 12;

/// One dated entry of a fit card.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    date: String,
    kind: &'static str,
    text: Option<String>,
    tapes: Option<i64>,
}

impl Entry {
    /// The day, as `2026-03-14`.
    pub fn date(&self) -> &str {
        &self.date
    }

    /// One of [`ENTRIES`]: `ordered`, `drilled`, `tapes`, `eased`, `complaint` or `outcome`.
    pub fn kind(&self) -> &'static str {
        self.kind
    }

    /// What was done or said, safe to print.
    pub fn text(&self) -> Option<&str> {
        self.text.as_deref()
    }

    /// The pieces of tape in the thumb hole from that day on.
    pub fn tapes(&self) -> Option<i64> {
        self.tapes
    }
}

/// Reads the dated entries of a card; they stand in the order of their days, so that a mistaken year shows.
pub(super) fn read<'d>(sheet: &mut Sheet<'d>, node: &'d Node) -> Vec<Entry> {
    if sheet.nothing(node, []) {
        return Vec::new();
    }
    let Some(items) = sheet.reader.list(node, "the entries") else {
        return Vec::new();
    };
    if items.len() > MOST {
        let message = format!(
            "{} entries are more than one ball's card holds",
            items.len()
        );
        let help = format!("keep at most {MOST}, the latest");
        sheet
            .reader
            .fault_with_help(node, "out-of-range", message, help);
        return Vec::new();
    }
    let mut entries: Vec<Entry> = Vec::new();
    let mut latest: Option<(String, &Node)> = None;
    for item in items {
        let Some((date_node, entry)) = read_one(sheet, item) else {
            continue;
        };
        if let Some((date, node)) = &latest
            && entry.date < *date
        {
            let line = sheet.line(node);
            let message = format!(
                "{} is before {date}, the day of an earlier entry (line {line})",
                entry.date
            );
            let help = "put the entries in the order of their days, or check the date";
            sheet.contradict(date_node, message, help);
            continue;
        }
        latest = Some((entry.date.clone(), date_node));
        entries.push(entry);
    }
    entries
}

fn read_one<'d>(sheet: &mut Sheet<'d>, item: &'d Node) -> Option<(&'d Node, Entry)> {
    let mut fields = sheet.reader.fields(item, "an entry")?;
    let date_node = fields.require("date", &mut sheet.reader);
    let date = date_node.and_then(|node| date(sheet, node));
    let kind = fields
        .require("kind", &mut sheet.reader)
        .and_then(|node| sheet.word(node, "the kind of entry", ENTRIES))
        .and_then(|index| ENTRIES.get(usize::try_from(index).ok()?).copied());
    let text = fields
        .take("text")
        .and_then(|node| sheet.words(node, "the text of the entry"));
    let tapes = fields
        .take("tapes")
        .and_then(|node| sheet.number(node, "the tapes", Notation::Count, 0..=MOST_TAPES));
    fields.close(&mut sheet.reader);
    let entry = Entry {
        date: date?,
        kind: kind?,
        text,
        tapes,
    };
    Some((date_node?, entry))
}

/// Reads a day of the calendar, `2026-03-14`; nothing if it isn't known.
pub(super) fn date<'d>(sheet: &mut Sheet<'d>, node: &'d Node) -> Option<String> {
    if sheet.nothing(node, []) {
        return None;
    }
    let text = sheet.reader.text(node, "the date")?;
    if is_date(text) {
        return Some(text.to_owned());
    }
    let message = format!("`{}` is no date", clean(text));
    sheet.reader.fault_with_help(
        node,
        "bad-value",
        message,
        "write year, month and day: 2026-03-14",
    );
    None
}

/// A day of the calendar, written `2026-03-14`.
fn is_date(text: &str) -> bool {
    let parts: Vec<&str> = text.split('-').collect();
    let [year, month, day] = parts[..] else {
        return false;
    };
    let widths = [(year, 4), (month, 2), (day, 2)];
    if widths
        .iter()
        .any(|(part, width)| part.len() != *width || !part.bytes().all(|b| b.is_ascii_digit()))
    {
        return false;
    }
    let numbers: Vec<u32> = [year, month, day]
        .iter()
        .filter_map(|part| part.parse().ok())
        .collect();
    let [year, month, day] = numbers[..] else {
        return false;
    };
    let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    let days = match month {
        2 if leap => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        1..=12 => 31,
        _ => 0,
    };
    day >= 1 && day <= days
}
