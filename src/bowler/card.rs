//! The fit card: the last ball that was drilled for this hand, as drilled, and how it went.

use super::entry::{self, Entry};
use super::sheet::{Key, Sheet};
use super::span::{self, Origin, Span};
use super::statics::{self, Statics};
use super::weighed::{self, Weighed};
use crate::document::Node;

/// The last ball drilled for this hand. Its numbers are answers named `card.…`.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct FitCard {
    pub(super) ball: Option<String>,
    pub(super) date: Option<String>,
    pub(super) complaint: Option<String>,
    pub(super) serial: Option<String>,
    pub(super) layout: Option<String>,
    pub(super) statics: Statics,
    pub(super) before: Weighed,
    pub(super) spans: Vec<Span>,
    pub(super) entries: Vec<Entry>,
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

    /// The serial number on the ball.
    pub fn serial(&self) -> Option<&str> {
        self.serial.as_deref()
    }

    /// Its layout, in the shop's words.
    pub fn layout(&self) -> Option<&str> {
        self.layout.as_deref()
    }

    /// The static weights measured on the drilled ball.
    pub fn statics(&self) -> Statics {
        self.statics
    }

    /// What the scales showed before it was drilled.
    pub fn before(&self) -> Weighed {
        self.before
    }

    /// What happened to the ball over the years, oldest first.
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// The spans as they were read off the ball.
    pub fn spans(&self) -> &[Span] {
        &self.spans
    }
}

pub(super) const CARD_KEYS: &[Key] = &[
    ("works", "card.works"),
    ("bridge", "card.bridge"),
    ("slug", "card.slug"),
    ("insert", "card.insert"),
    ("tapes", "card.tapes"),
    ("sleeve", "card.sleeve"),
    ("weight", "card.ball_weight"),
];
pub(super) const BORE_KEYS: &[Key] = &[
    ("thumb", "card.thumb_bore"),
    ("middle", "card.middle_bore"),
    ("ring", "card.ring_bore"),
];
pub(super) const DEPTH_KEYS: &[Key] = &[
    ("thumb", "card.thumb_depth"),
    ("middle", "card.middle_depth"),
    ("ring", "card.ring_depth"),
];
pub(super) const OVAL_KEYS: &[Key] = &[
    ("wide", "card.oval_wide"),
    ("narrow", "card.oval_narrow"),
    ("angle", "card.oval_angle"),
];
/// The two pitches of each hole of a card.
pub(super) const PITCHES: &[(&str, &str, [Key; 2])] = &[
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
        card.date = entry::date(sheet, date);
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
    if let Some(depths) = fields.take("depths") {
        sheet.group(depths, "the depths", DEPTH_KEYS);
    }
    if let Some(oval) = fields.take("oval") {
        sheet.group(oval, "the oval", OVAL_KEYS);
    }
    if let Some(serial) = fields.take("serial") {
        card.serial = sheet.words(serial, "the serial number");
    }
    if let Some(layout) = fields.take("layout") {
        card.layout = sheet.words(layout, "the layout of the card");
    }
    if let Some(statics) = fields.take("statics") {
        card.statics = statics::read(sheet, statics);
    }
    if let Some(entries) = fields.take("entries") {
        card.entries = entry::read(sheet, entries);
    }
    sheet.keys(&mut fields, CARD_KEYS);
    if let Some(before) = fields.take("before") {
        card.before = weighed::read(sheet, before);
    }
    fields.close(&mut sheet.reader);
    let drilled = card.entries.iter().find(|entry| entry.kind() == "drilled");
    if let (Some(date), Some(entry)) = (&card.date, drilled)
        && entry.date() != date
    {
        let text = format!(
            "The card says {date} and its entry {} for the day of drilling. Which is right?",
            entry.date()
        );
        sheet.ask("card.works", text);
    }
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
