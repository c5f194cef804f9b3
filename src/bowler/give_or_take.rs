//! How sure a measured answer is: half the width of the range it may lie in, as in `speed: 1 mph` for "give or take one".

use std::collections::BTreeMap;

use super::Bowler;
use super::answer::Shape;
use super::sheet::{Key, Sheet};
use super::table::answer;
use super::written::{Pair, flow, number};
use crate::document::{Content, Fields, Node};
use crate::notation::Notation;

/// The measured answers that may be given or taken something, by the key of the profile.
const KEYS: &[Key] = &[
    ("speed", "bowler.speed"),
    ("rev_rate", "bowler.rev_rate"),
    ("rotation", "bowler.rotation"),
    ("tilt", "bowler.tilt"),
    ("body_weight", "bowler.body_weight"),
];
/// The same within a key of the profile.
const GROUPS: &[(&str, &[Key])] = &[
    (
        "pap",
        &[("over", "bowler.pap_over"), ("up", "bowler.pap_up")],
    ),
    (
        "hold_test",
        &[
            ("passed", "bowler.hold_passed"),
            ("failed", "bowler.hold_failed"),
        ],
    ),
];

/// Half widths in steps, by answer.
pub(super) type HalfWidths = BTreeMap<&'static str, i64>;

/// The answers that are measured, so that they may be a little otherwise.
pub const MEASURED: [&str; 9] = [
    "bowler.speed",
    "bowler.rev_rate",
    "bowler.rotation",
    "bowler.tilt",
    "bowler.body_weight",
    "bowler.hold_passed",
    "bowler.hold_failed",
    "bowler.pap_over",
    "bowler.pap_up",
];

/// Reads the key `give_or_take`, once everything that it speaks of was read.
pub(super) fn read<'d>(sheet: &mut Sheet<'d>, node: &'d Node) -> HalfWidths {
    let mut widths = HalfWidths::new();
    if sheet.nothing(node, []) {
        return widths;
    }
    let Some(mut fields) = sheet.reader.fields(node, "give_or_take") else {
        return widths;
    };
    for &(key, name) in KEYS {
        read_one(sheet, &mut fields, key, key, name, &mut widths);
    }
    for &(group, keys) in GROUPS {
        let Some(node) = fields.take(group) else {
            continue;
        };
        if sheet.nothing(node, []) {
            continue;
        }
        let Some(mut parts) = sheet.reader.fields(node, "what is given or taken") else {
            continue;
        };
        for &(key, name) in keys {
            read_one(sheet, &mut parts, key, group, name, &mut widths);
        }
        parts.close(&mut sheet.reader);
    }
    fields.close(&mut sheet.reader);
    widths
}

/// The same written down again, of those answers that are still known.
pub(super) fn written(bowler: &Bowler) -> Vec<Pair> {
    let width = |&(key, name): &Key| {
        let width = bowler.give_or_take(name).filter(|_| bowler.tells(name))?;
        let (_, notation, _) = measured(name)?;
        Some((key, number(notation, width)))
    };
    let groups = GROUPS.iter().filter_map(|(group, keys)| {
        let pairs: Vec<Pair> = keys.iter().filter_map(width).collect();
        (!pairs.is_empty()).then(|| (*group, flow(pairs)))
    });
    KEYS.iter().filter_map(width).chain(groups).collect()
}

fn read_one<'d>(
    sheet: &mut Sheet<'d>,
    fields: &mut Fields<'d>,
    key: &'static str,
    of_profile: &str,
    name: &'static str,
    widths: &mut HalfWidths,
) {
    let Some(node) = fields.take(key) else {
        return;
    };
    if sheet.nothing(node, []) {
        return;
    }
    let Some((called, notation, most)) = measured(name) else {
        return;
    };
    let what = format!("the give or take of {called}");
    let Some(value) = sheet.number(node, &what, notation, 1..=most) else {
        return;
    };
    if sheet.value(name).is_some() {
        widths.insert(name, value);
    } else if !(sheet.reader.has_faults() && is_written(sheet, of_profile)) {
        let message = format!("{called} isn't given as a number, so nothing can be given or taken");
        let help = format!("give `{of_profile}` as well, or leave this out");
        sheet
            .reader
            .fault_with_help(node, "not-given", message, help);
    }
}

/// Whether the profile says anything under this key; if so, what is wrong there was told already.
fn is_written(sheet: &Sheet<'_>, key: &str) -> bool {
    let Content::Map(pairs) = sheet.reader.document().root().content() else {
        return false;
    };
    pairs
        .iter()
        .any(|(known, value)| known.text() == Some(key) && !value.is_null())
}

/// What an answer is called, how a difference of it is written, and the most it may be: the width of its range.
fn measured(name: &str) -> Option<(&'static str, Notation, i64)> {
    let answer = answer(name)?;
    let Shape::Number {
        notation,
        lowest,
        highest,
        ..
    } = answer.shape()
    else {
        return None;
    };
    let difference = match notation {
        // A difference has no direction.
        Notation::UpDown => Notation::Length,
        other => other,
    };
    Some((answer.called(), difference, highest - lowest))
}
