//! An oval thumb hole has two sizes and an angle, on the hand and on the card.

use super::sheet::Sheet;

/// An oval: the names of its two sizes and its angle, and what to ask where one is missing.
type Oval = ([&'static str; 3], &'static str);

const OVALS: [Oval; 2] = [
    (
        ["hand.oval_wide", "hand.oval_narrow", "hand.oval_angle"],
        "An oval has two sizes and an angle. Can you measure all three on the thumb?",
    ),
    (
        ["card.oval_wide", "card.oval_narrow", "card.oval_angle"],
        "An oval has two sizes and an angle. Can you read all three off the drilled ball?",
    ),
];

/// A part of an oval is asked after.
pub(super) fn check(sheet: &mut Sheet) {
    for (names, question) in OVALS {
        let missing: Vec<&'static str> = names
            .into_iter()
            .filter(|name| sheet.value(name).is_none() && !sheet.unknown.contains(name))
            .collect();
        if let ([first, ..], true) = (&missing[..], missing.len() < names.len()) {
            sheet.ask(first, question);
        }
    }
}
