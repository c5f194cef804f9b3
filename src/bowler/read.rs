//! Reads a profile, key by key.

use super::check::{self, Parts};
use super::sheet::{Found, Key, Sheet, is_unknown};
use super::words::REV_LEVELS;
use super::{Bowler, SLOWER_AT_THE_PINS, card, give_or_take, hand, owned, pap, used};
use crate::document::{Document, Faults, Node};
use crate::notation::Notation;

/// The keys of the profile that give one answer each.
pub(super) const PLAIN_KEYS: &[Key] = &[
    ("hand", "bowler.hand"),
    ("delivery", "bowler.delivery"),
    ("thumb", "bowler.thumb"),
    ("intent", "bowler.intent"),
    ("curve", "bowler.curve"),
    ("experience", "bowler.experience"),
    ("games_a_week", "bowler.games_a_week"),
    ("age", "bowler.age"),
    ("body_weight", "bowler.body_weight"),
    ("aches", "bowler.aches"),
    ("injuries", "bowler.injuries"),
    ("skin", "bowler.skin"),
    ("rotation", "bowler.rotation"),
    ("tilt", "bowler.tilt"),
    ("lanes", "bowler.lanes"),
    ("budget", "bowler.budget"),
    ("target_weight", "bowler.target_weight"),
    ("cover_wish", "bowler.cover_wish"),
    ("colour_wish", "bowler.colour_wish"),
    ("wants_dearest", "bowler.wants_dearest"),
    ("wrist_support", "bowler.wrist_support"),
    ("present", "bowler.present"),
    ("absent", "bowler.absent"),
];
pub(super) const BALL_NOW_KEYS: &[Key] = &[
    ("whose", "bowler.ball_now"),
    ("weight", "bowler.ball_now_weight"),
];
pub(super) const HOLD_TEST_KEYS: &[Key] = &[
    ("passed", "bowler.hold_passed"),
    ("failed", "bowler.hold_failed"),
];
pub(super) const SETTLED_KEYS: &[Key] = &[
    ("weight", "settled.weight"),
    ("grip", "settled.grip"),
    ("sleeve", "settled.sleeve"),
];
pub(super) const FIT_CHECK_KEYS: &[Key] = &[
    ("symptoms", "check.symptoms"),
    ("rest_test", "check.rest_test"),
    ("joint_line", "check.joint_line"),
    ("event_in", "check.event_weeks"),
];
const WHERE: &[&str] = &["release", "pins"];
/// The fastest speed at release that is taken, in 0.1 mph.
const FASTEST: i64 = 300;

/// Reads the whole profile; all faults are collected before any is reported.
pub(super) fn read(document: &Document, root: &Node) -> Result<Bowler, Faults> {
    let mut sheet = Sheet::new(document);
    let Some(mut fields) = sheet.reader.fields(root, "the profile") else {
        sheet.finish()?;
        return Ok(Bowler {
            name: None,
            notes: Default::default(),
            spans: Vec::new(),
            card: None,
            owned: Vec::new(),
            used: None,
            settled_ball: None,
            give_or_take: Default::default(),
        });
    };
    let name = fields
        .take("name")
        .and_then(|node| sheet.words(node, "the name"));
    sheet.keys(&mut fields, PLAIN_KEYS);
    if let Some(node) = fields.take("ball_now") {
        sheet.group(node, "the ball used now", BALL_NOW_KEYS);
    }
    if let Some(node) = fields.take("hold_test") {
        sheet.group(node, "the hold test", HOLD_TEST_KEYS);
    }
    if let Some(node) = fields.take("pap") {
        pap::read(&mut sheet, node);
    }
    if let Some(node) = fields.take("rev_rate") {
        read_rev_rate(&mut sheet, node);
    }
    if let Some(node) = fields.take("speed") {
        read_speed(&mut sheet, node);
    }
    let settled_ball = fields
        .take("settled")
        .and_then(|node| read_settled(&mut sheet, node));
    let owned = fields
        .take("owned")
        .map(|node| owned::read(&mut sheet, node))
        .unwrap_or_default();
    let hand = fields
        .take("measured")
        .map(|node| hand::read(&mut sheet, node))
        .unwrap_or_default();
    let card = fields
        .take("fit_card")
        .and_then(|node| card::read(&mut sheet, node));
    let used = fields
        .take("used_ball")
        .and_then(|node| used::read(&mut sheet, node, card.as_ref(), &owned));
    if let Some(node) = fields.take("fit_check") {
        sheet.group(node, "the fit check", FIT_CHECK_KEYS);
    }
    let give_or_take = fields
        .take("give_or_take")
        .map(|node| give_or_take::read(&mut sheet, node))
        .unwrap_or_default();
    fields.close(&mut sheet.reader);

    check::check(
        &mut sheet,
        &Parts {
            hand: &hand,
            card: card.as_ref(),
            owned: &owned,
        },
    );
    let measured = i64::from(hand::is_measured(&sheet, &hand.spans));
    let mut notes = sheet.finish()?;
    notes.values.insert("hand.measured", measured);
    Ok(Bowler {
        name,
        notes,
        spans: hand.spans,
        card,
        owned,
        used,
        settled_ball,
        give_or_take,
    })
}

/// A rev rate is a rate or a rough level, never both.
fn read_rev_rate<'d>(sheet: &mut Sheet<'d>, node: &'d Node) {
    if sheet.nothing(node, ["bowler.rev_rate", "bowler.rev_level"]) {
        return;
    }
    let text = node.text().map(|text| text.trim().to_lowercase());
    // `inf rpm` is meant for a number.
    let is_word = text
        .as_deref()
        .is_some_and(|text| text.starts_with(char::is_alphabetic) && !text.ends_with("rpm"));
    if is_word {
        let called = "the rev rate (as a number it is written as in `300 rpm`)";
        if let Some(value) = sheet.word(node, called, REV_LEVELS) {
            sheet
                .found
                .insert("bowler.rev_level", Found { value, node });
        }
    } else {
        sheet.answer("bowler.rev_rate", node);
    }
}

/// A speed always says where it was read; at the pins it is slower than at release.
fn read_speed<'d>(sheet: &mut Sheet<'d>, node: &'d Node) {
    if sheet.nothing(node, ["bowler.speed"]) {
        return;
    }
    let Some(mut fields) = sheet.reader.fields(node, "the speed") else {
        return;
    };
    let value_node = fields.take("value");
    let speed = value_node.and_then(|node| sheet.read("bowler.speed", node));
    let at_node = match value_node {
        Some(value) if !value.is_null() && !is_unknown(value) => {
            fields.require("where", &mut sheet.reader)
        }
        _ => fields.take("where"),
    };
    fields.close(&mut sheet.reader);
    let Some(at_node) = at_node else { return };
    if sheet.nothing(at_node, []) {
        sheet.ask(
            "bowler.speed",
            "Was the speed read at release or at the pins?",
        );
        return;
    }
    let at = sheet.word(at_node, "where the speed was read", WHERE);
    let (Some(speed), Some(at), Some(node)) = (speed, at, value_node) else {
        return;
    };
    let value = if at == 1 { release_speed(speed) } else { speed };
    if value > FASTEST {
        let message = format!(
            "a ball at this speed at the pins was let go at {}",
            Notation::Speed.write(value)
        );
        sheet.reader.fault_with_help(
            node,
            "out-of-range",
            message,
            "check the speed and where it was read",
        );
        return;
    }
    sheet.found.insert("bowler.speed", Found { value, node });
}

/// The speed at release of a ball that has this speed at the pins; both in 0.1 mph.
#[must_use]
pub fn release_speed(at_pins: i64) -> i64 {
    (at_pins * 10 + SLOWER_AT_THE_PINS + 5) / 10
}

/// Reads what the fitter has fixed; gives back the settled ball.
fn read_settled<'d>(sheet: &mut Sheet<'d>, node: &'d Node) -> Option<String> {
    if sheet.nothing(node, []) {
        return None;
    }
    let mut fields = sheet.reader.fields(node, "what is settled")?;
    let ball = fields
        .take("ball")
        .and_then(|node| sheet.words(node, "the settled ball"));
    sheet.keys(&mut fields, SETTLED_KEYS);
    fields.close(&mut sheet.reader);
    ball
}
