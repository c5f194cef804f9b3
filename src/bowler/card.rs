//! The fit card: the last ball that was drilled for this hand, as drilled, and how it went.

use super::sheet::{Key, Sheet};
use super::span::{self, Origin, Span};
use crate::document::{Node, clean};

/// The last ball drilled for this hand. Its numbers are answers named `card.…`.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct FitCard {
    ball: Option<String>,
    date: Option<String>,
    complaint: Option<String>,
    spans: Vec<Span>,
}

impl FitCard {
    /// The ball it was drilled on.
    pub fn ball(&self) -> Option<&str> {
        self.ball.as_deref()
    }

    /// The day it was drilled, as `2026-03-14`.
    pub fn date(&self) -> Option<&str> {
        self.date.as_deref()
    }

    /// What the bowler complains of, in the bowler's words.
    pub fn complaint(&self) -> Option<&str> {
        self.complaint.as_deref()
    }

    /// The spans as they were read off the ball.
    pub fn spans(&self) -> &[Span] {
        &self.spans
    }
}

const CARD_KEYS: &[Key] = &[
    ("works", "card.works"),
    ("bridge", "card.bridge"),
    ("slug", "card.slug"),
    ("insert", "card.insert"),
    ("tapes", "card.tapes"),
];
const BORE_KEYS: &[Key] = &[
    ("thumb", "card.thumb_bore"),
    ("middle", "card.middle_bore"),
    ("ring", "card.ring_bore"),
];
/// The two pitches of each hole of a card.
const PITCHES: &[(&str, &str, [Key; 2])] = &[
    (
        "thumb",
        "the pitches of the thumb",
        [
            ("forward", "card.thumb_forward"),
            ("lateral", "card.thumb_lateral"),
        ],
    ),
    (
        "middle",
        "the pitches of the middle finger",
        [
            ("forward", "card.middle_forward"),
            ("lateral", "card.middle_lateral"),
        ],
    ),
    (
        "ring",
        "the pitches of the ring finger",
        [
            ("forward", "card.ring_forward"),
            ("lateral", "card.ring_lateral"),
        ],
    ),
];

/// Reads the key `fit_card`.
pub(super) fn read<'d>(sheet: &mut Sheet<'d>, node: &'d Node) -> Option<FitCard> {
    if sheet.nothing(node, ["card.works"]) {
        return None;
    }
    let mut fields = sheet.reader.fields(node, "the fit card")?;
    let mut card = FitCard::default();
    if let Some(ball) = fields.take("ball") {
        card.ball = sheet.words(ball, "the ball of the card");
    }
    if let Some(date) = fields.take("date") {
        card.date = read_date(sheet, date);
    }
    if let Some(complaint) = fields.take("complaint") {
        card.complaint = read_complaint(sheet, complaint);
    }
    if let Some(grip) = fields.take("grip") {
        sheet.answer("card.grip", grip);
    }
    if let Some(spans) = fields.take("spans") {
        let grip = sheet.value("card.grip").map(span::grip);
        card.spans = span::read(sheet, spans, Origin::Card(grip));
    }
    if let Some(pitches) = fields.take("pitches") {
        read_pitches(sheet, pitches);
    }
    if let Some(bores) = fields.take("bores") {
        sheet.group(bores, "the bores", BORE_KEYS);
    }
    sheet.keys(&mut fields, CARD_KEYS);
    fields.close(&mut sheet.reader);
    // A fit is copied because it works without pain; only the bowler can say what a complaint is about.
    if sheet.value("card.works") == Some(1) && sheet.value("card.complaint") == Some(1) {
        let text = "The card says that this fit works and names a complaint. Does it hurt?";
        sheet.ask("card.complaint", text);
    }
    Some(card)
}

fn read_pitches<'d>(sheet: &mut Sheet<'d>, node: &'d Node) {
    let names = PITCHES
        .iter()
        .flat_map(|(_, _, keys)| keys.iter().map(|&(_, name)| name));
    if sheet.nothing(node, names) {
        return;
    }
    let Some(mut fields) = sheet.reader.fields(node, "the pitches") else {
        return;
    };
    for (hole, what, keys) in PITCHES {
        if let Some(node) = fields.take(hole) {
            sheet.group(node, what, keys);
        }
    }
    fields.close(&mut sheet.reader);
}

/// A complaint in words is a complaint; `none` or `no` is none.
fn read_complaint<'d>(sheet: &mut Sheet<'d>, node: &'d Node) -> Option<String> {
    if sheet.nothing(node, ["card.complaint"]) {
        return None;
    }
    let text = sheet.words(node, "the complaint")?;
    let value = i64::from(!matches!(
        text.to_lowercase().as_str(),
        "none" | "no" | "false"
    ));
    sheet
        .found
        .insert("card.complaint", super::sheet::Found { value, node });
    (value == 1).then_some(text)
}

fn read_date<'d>(sheet: &mut Sheet<'d>, node: &'d Node) -> Option<String> {
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
