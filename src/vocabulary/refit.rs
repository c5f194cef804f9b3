//! Refitting a ball that doesn't sit right: what may be the cause, and which numbers of the card may change.

use super::answers::{INCH, number};
use super::grip::WordCandidate;
use super::settled::settled;
use super::stage::{Column::Fixed, StageFact};
use super::words::CAUSES;
use super::worked::Worked;
use crate::notation::Notation::{ForwardPitch, HoleSize, LateralPitch, Length};
use crate::rules::{Fact, Kind};

/// Facts of a cause.
pub fn cause_facts() -> Vec<StageFact<WordCandidate>> {
    vec![StageFact {
        name: "cause.kind",
        meaning: "what may be wrong",
        kind: Kind::Choice(CAUSES),
        from: "causes a fitter looks for",
        column: Fixed(|c| c.0),
    }]
}

/// What the refit has settled.
pub(super) fn facts() -> Vec<Fact> {
    vec![settled(
        "refit.cause",
        "the likeliest cause of what the bowler feels",
        Kind::Choice(CAUSES),
        "the ranking of causes",
    )]
}

/// One number of the card that a refit may change: a measure that starts at the card's number.
#[derive(Clone, Copy, Debug)]
pub struct CardNumber {
    /// The measure's id in the rules.
    pub id: &'static str,
    /// The fact of the card it starts from.
    pub card: &'static str,
    /// The causes that ask for a change of it.
    pub causes: &'static [&'static str],
    /// What to do where the card doesn't tell it.
    pub ask: &'static str,
    /// Whether it is about the size of the thumb hole, which nobody touches before the rest test.
    pub thumb_size: bool,
    /// Whether only a ball with a thumb hole has it.
    pub thumb: bool,
}

const fn row(
    id: &'static str,
    card: &'static str,
    causes: &'static [&'static str],
    ask: &'static str,
) -> CardNumber {
    CardNumber {
        id,
        card,
        causes,
        ask,
        thumb_size: false,
        thumb: false,
    }
}

const fn of_thumb(row: CardNumber) -> CardNumber {
    CardNumber { thumb: true, ..row }
}

const fn thumb_size(row: CardNumber) -> CardNumber {
    CardNumber {
        thumb_size: true,
        thumb: true,
        ..row
    }
}

const SPANS: &[&str] = &["span_too_long", "span_too_short"];
const RING: &[&str] = &["span_too_long", "ring_span_too_long", "span_too_short"];
const THUMB_FORWARD: &[&str] = &[
    "too_much_thumb_reverse",
    "too_much_thumb_forward",
    "too_little_thumb_forward",
];
const READ_SPAN: &str = "Measure this span on the ball, with insert and slug in.";
const READ_PITCH: &str = "Measure this pitch on the ball.";

/// The numbers of the card that may change, in the order in which they are tried: what undoes easily comes first.
pub const CARD_NUMBERS: &[CardNumber] = &[
    thumb_size(row(
        "refit.tapes",
        "card.tapes",
        &["thumb_hole_too_loose"],
        "Count the pieces of tape in the thumb hole.",
    )),
    thumb_size(row(
        "refit.thumb_bore",
        "card.thumb_bore",
        &["thumb_hole_too_tight"],
        "Gauge the thumb hole of the ball.",
    )),
    row(
        "refit.middle_bore",
        "card.middle_bore",
        &["finger_holes_too_tight"],
        "Gauge the middle finger hole of the ball.",
    ),
    row(
        "refit.ring_bore",
        "card.ring_bore",
        &["finger_holes_too_tight"],
        "Gauge the ring finger hole of the ball.",
    ),
    of_thumb(row(
        "refit.middle_span",
        "card.middle_span",
        SPANS,
        READ_SPAN,
    )),
    of_thumb(row("refit.ring_span", "card.ring_span", RING, READ_SPAN)),
    of_thumb(row(
        "refit.thumb_forward",
        "card.thumb_forward",
        THUMB_FORWARD,
        READ_PITCH,
    )),
    of_thumb(row(
        "refit.thumb_lateral",
        "card.thumb_lateral",
        &["thumb_leans_to_the_wrong_side"],
        READ_PITCH,
    )),
    row(
        "refit.middle_forward",
        "card.middle_forward",
        &["fingers_need_reverse"],
        READ_PITCH,
    ),
    row(
        "refit.ring_forward",
        "card.ring_forward",
        &["fingers_need_reverse"],
        READ_PITCH,
    ),
];

fn length() -> Kind {
    number(Length, -10 * INCH, 10 * INCH)
}
fn size() -> Kind {
    number(HoleSize, -2 * INCH, 2 * INCH)
}
fn forward() -> Kind {
    number(ForwardPitch, -4 * INCH, 4 * INCH)
}

/// How far the hand, measured, lies from the card.
pub(super) const GAPS: &[Worked] = &[
    Worked::new(
        "refit.middle_span_gap",
        "how far the measured middle span lies over or under the card's",
        length,
        "the hand's span less the card's",
        |s| s.get("fit.middle.span").minus(s.get("card.middle_span")),
    ),
    Worked::new(
        "refit.ring_span_gap",
        "how far the measured ring span lies over or under the card's",
        length,
        "the hand's span less the card's",
        |s| s.get("fit.ring.span").minus(s.get("card.ring_span")),
    ),
    Worked::new(
        "refit.ring_lead",
        "how much longer the card's ring span is than its middle span",
        length,
        "the card's ring span less its middle span",
        |s| s.get("card.ring_span").minus(s.get("card.middle_span")),
    ),
    Worked::new(
        "refit.thumb_forward_gap",
        "how far the hand's thumb pitch lies forward of the card's",
        forward,
        "the pitch worked out for the hand less the card's",
        |s| {
            s.get("fit.thumb.forward_pitch")
                .minus(s.get("card.thumb_forward"))
        },
    ),
    Worked::new(
        "refit.thumb_lateral_gap",
        "how far the hand's thumb lateral lies to the right of the card's",
        || number(LateralPitch, -4 * INCH, 4 * INCH),
        "the pitch worked out for the hand less the card's",
        |s| {
            s.get("fit.thumb.lateral_pitch")
                .minus(s.get("card.thumb_lateral"))
        },
    ),
    Worked::new(
        "refit.middle_forward_gap",
        "how far the middle finger's pitch, worked out for the hand, lies forward of the card's",
        forward,
        "the pitch worked out for the hand less the card's",
        |s| {
            s.get("fit.middle.forward_pitch")
                .minus(s.get("card.middle_forward"))
        },
    ),
    Worked::new(
        "refit.ring_forward_gap",
        "how far the ring finger's pitch, worked out for the hand, lies forward of the card's",
        forward,
        "the pitch worked out for the hand less the card's",
        |s| {
            s.get("fit.ring.forward_pitch")
                .minus(s.get("card.ring_forward"))
        },
    ),
    Worked::new(
        "refit.thumb_room",
        "how much wider the card's thumb hole is than the thumb's gauge size",
        size,
        "the card's thumb hole less the gauge size",
        |s| s.get("card.thumb_bore").minus(s.get("hand.thumb_gauge")),
    ),
    Worked::new(
        "refit.thumb_room_warm",
        "how much wider the card's thumb hole is than the thumb's gauge size after bowling",
        size,
        "the card's thumb hole less the warm gauge size",
        |s| {
            s.get("card.thumb_bore")
                .minus(s.get("hand.thumb_gauge_warm"))
        },
    ),
];
