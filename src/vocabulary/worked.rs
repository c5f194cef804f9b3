//! Facts worked out from the answers and from what is settled: one value each, in an order in which
//! each needs only earlier ones.

use self::RightFor::{Ranges, Values};
use super::answers::{INCH, POUND, number};
use super::{Interval, Situation, geometry, web};
use crate::notation::Notation::{HoleSize, Length, Weight};
use crate::rules::{Fact, Kind, Origin};

/// One worked fact: its name, meaning and kind beside the way it is worked out.
pub(super) struct Worked {
    pub(super) name: &'static str,
    meaning: &'static str,
    pub(super) kind: fn() -> Kind,
    from: &'static str,
    pub(super) right_for: RightFor,
    pub(super) value: fn(&Situation) -> Interval,
}

/// What a way of working out a fact may be trusted with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum RightFor {
    /// Ranges of what it reads, and what may not be known.
    Ranges,
    /// Single values only. Where it reads anything else, the fact may be all that its kind allows.
    Values,
}

/// A child is younger than this, in years (own choice: until 14 or so).
const CHILD_UNDER: i64 = 15;
/// An older hand from this age on, in years (own choice).
const OLDER_FROM: i64 = 60;

impl Worked {
    pub(super) const fn new(
        name: &'static str,
        meaning: &'static str,
        kind: fn() -> Kind,
        from: &'static str,
        value: fn(&Situation) -> Interval,
    ) -> Worked {
        Worked {
            name,
            meaning,
            kind,
            from,
            right_for: RightFor::Ranges,
            value,
        }
    }
}

fn flag() -> Kind {
    Kind::Flag
}
fn length() -> Kind {
    number(Length, -10 * INCH, 10 * INCH)
}

/// The measured span of the settled grip.
fn span(s: &Situation, conventional: &str, fingertip: &str) -> Interval {
    let grip = s.get("settled.grip");
    let (conventional, fingertip) = (s.get(conventional), s.get(fingertip));
    let span = match (grip.holds(0), grip.holds(1)) {
        (true, false) => conventional,
        (false, true) => fingertip,
        (true, true) => conventional.or(fingertip),
        (false, false) => Interval::NOT_KNOWN,
    };
    match grip.may_be_unknown() {
        true => span.or_unknown(),
        false => span,
    }
}

/// The thumb goes in; so it does where nobody asked.
fn thumb_in(s: &Situation) -> Interval {
    s.get("bowler.thumb")
        .is(0)
        .unless_unknown(Interval::flag(true))
}

/// This of a card, if the card fits.
fn copied(s: &Situation, of_card: Interval) -> Interval {
    s.get("card.fits")
        .and(of_card)
        .unless_unknown(Interval::flag(false))
}

/// All of these are known.
fn are_known(s: &Situation, names: &[&str]) -> Interval {
    names
        .iter()
        .map(|name| s.get(name).is_given())
        .fold(Interval::flag(true), Interval::and)
}

/// All of these stand on a card that fits.
fn on_card(s: &Situation, names: &[&str]) -> Interval {
    copied(s, are_known(s, names))
}

/// What is missing of the least that is allowed.
fn short(s: &Situation, least: &str, found: &str) -> Interval {
    s.get(least)
        .minus(s.get(found))
        .rising(|missing| missing.max(0))
}

/// The worked facts of an advice.
pub(super) const WORKED: &[Worked] = &[
    Worked {
        name: "bowler.child",
        meaning: "younger than fifteen",
        kind: flag,
        from: "age",
        right_for: Ranges,
        value: |s| Interval::point(CHILD_UNDER - 1).is_at_least(s.get("bowler.age")),
    },
    Worked {
        name: "bowler.older",
        meaning: "sixty or older",
        kind: flag,
        from: "age",
        right_for: Ranges,
        value: |s| s.get("bowler.age").is_at_least(Interval::point(OLDER_FROM)),
    },
    Worked {
        name: "bowler.tenth_of_body",
        meaning: "a tenth of body weight",
        kind: || number(Weight, 3 * POUND, 50 * POUND),
        from: "body weight",
        right_for: Ranges,
        value: |s| s.get("bowler.body_weight").rising(|w| w / 10),
    },
    Worked {
        name: "bowler.mirrored",
        meaning: "the ball curves away from the usual side, so the layout mirrors",
        kind: flag,
        from: "which way the ball curves",
        right_for: Ranges,
        value: |s| s.get("bowler.curve").is(2),
    },
    Worked {
        name: "hand.middle_span",
        meaning: "measured full span to the middle finger in the settled grip",
        kind: length,
        from: "the measured spans and the settled grip",
        right_for: Ranges,
        value: |s| {
            span(
                s,
                "hand.conventional_middle_span",
                "hand.fingertip_middle_span",
            )
        },
    },
    Worked {
        name: "hand.ring_span",
        meaning: "measured full span to the ring finger in the settled grip",
        kind: length,
        from: "the measured spans and the settled grip",
        right_for: Ranges,
        value: |s| span(s, "hand.conventional_ring_span", "hand.fingertip_ring_span"),
    },
    Worked {
        name: "hand.flat_ring_span",
        meaning: "ring span worked out from the middle span and the difference of the creases, hand flat",
        kind: length,
        from: "the settled grip's middle span and the crease difference",
        right_for: Values,
        value: |s| geometry::ring_span(s.get("hand.middle_span"), s.get("hand.crease_difference")),
    },
    Worked {
        name: "card.fits",
        meaning: "a fit without pain is on file for the settled grip, so it can be copied",
        kind: flag,
        from: "the fit card and the settled grip",
        right_for: Ranges,
        value: |s| {
            let same = s.get("card.grip").equals(s.get("settled.grip"));
            // A fit that isn't on file can't be copied.
            s.get("card.works")
                .and(same)
                .unless_unknown(Interval::flag(false))
        },
    },
    Worked {
        name: "hand.thumb_swell",
        meaning: "how much wider the thumb is after bowling",
        kind: || number(HoleSize, -2 * INCH, 2 * INCH),
        from: "the warm and the cold gauge size",
        right_for: Ranges,
        value: |s| {
            s.get("hand.thumb_gauge_warm")
                .minus(s.get("hand.thumb_gauge"))
        },
    },
    Worked {
        name: "fit.has_sleeve",
        meaning: "the thumb hole gets a sleeve that can be changed",
        kind: flag,
        from: "what the fitter settled, else a card that fits and has one",
        right_for: Ranges,
        value: |s| {
            let copied = copied(s, s.get("card.sleeve").is(1));
            thumb_in(s).and(s.get("settled.sleeve").unless_unknown(copied))
        },
    },
    Worked {
        name: "fit.has_slug",
        meaning: "the thumb hole gets a slug or a sleeve",
        kind: flag,
        from: "a fingertip grip with the thumb in, a sleeve, or a card that fits and has a slug",
        right_for: Ranges,
        value: |s| {
            let grip = s.get("settled.grip").is(1);
            let other = s.get("fit.has_sleeve").or_flag(on_card(s, &["card.slug"]));
            thumb_in(s).and(grip.or_flag(other))
        },
    },
    Worked {
        name: "fit.has_oval",
        meaning: "the thumb hole is cut as an oval",
        kind: flag,
        from: "an oval measured on the thumb, or on a card that fits",
        right_for: Ranges,
        value: |s| {
            let card = on_card(s, &["card.oval_wide", "card.oval_narrow"]);
            // A round hole that works stays round.
            let round = on_card(s, &["card.thumb_bore"]);
            let hand = are_known(s, &["hand.oval_wide", "hand.oval_narrow"]);
            let gauged = hand.and(Interval::flag(true).minus(round));
            thumb_in(s).and(card.or_flag(gauged))
        },
    },
    Worked {
        name: "fit.thumb.widest",
        meaning: "thumb hole the wide way; of a round one its bore",
        kind: || number(HoleSize, 0, 110),
        from: "the bore, or the oval's wide size",
        right_for: Ranges,
        value: geometry::widest_thumb,
    },
    Worked {
        name: "fit.middle_cut_span",
        meaning: "cut-to-cut span to the middle finger",
        kind: length,
        from: "full span less the walls of insert and slug",
        right_for: Values,
        value: |s| geometry::cut_span(s, "fit.middle.span", "fit.middle.insert", "fit.middle.bore"),
    },
    Worked {
        name: "fit.ring_cut_span",
        meaning: "cut-to-cut span to the ring finger",
        kind: length,
        from: "full span less the walls of insert and slug",
        right_for: Values,
        value: |s| geometry::cut_span(s, "fit.ring.span", "fit.ring.insert", "fit.ring.bore"),
    },
    Worked {
        name: "fit.slug_wall",
        meaning: "wall left between thumb hole and the outside of the slug",
        kind: length,
        from: "half of slug outside less thumb hole the wide way",
        right_for: Ranges,
        value: geometry::slug_wall,
    },
    Worked {
        name: "fit.slug_wall_short",
        meaning: "what the slug's wall lacks of the least it must have",
        kind: length,
        from: "least allowed wall less the slug's",
        right_for: Ranges,
        value: |s| short(s, "bench.least_sleeve_wall", "fit.slug_wall"),
    },
    Worked {
        name: "fit.span_gap",
        meaning: "how far the two spans differ",
        kind: length,
        from: "ring span against middle span",
        right_for: Ranges,
        value: |s| {
            s.get("fit.ring.span")
                .minus(s.get("fit.middle.span"))
                .distance()
        },
    },
    Worked {
        name: "fit.web_least",
        meaning: "least web between any two holes over their whole depth",
        kind: length,
        from: "sizes as cut, spans, bridge, pitches and depths, placed on the ball",
        right_for: Values,
        value: web::least_web,
    },
    Worked {
        name: "fit.web_short",
        meaning: "what the thinnest web lacks of the least that may be left",
        kind: length,
        from: "least allowed web less the thinnest",
        right_for: Ranges,
        value: |s| short(s, "bench.least_web", "fit.web_least"),
    },
];

/// The answers behind a worked fact that an assumption may stand in for.
pub fn answers_behind(worked: &str) -> &'static [&'static str] {
    match worked {
        "bowler.child" | "bowler.older" => &["bowler.age"],
        "bowler.tenth_of_body" => &["bowler.body_weight"],
        "bowler.mirrored" => &["bowler.curve"],
        "roll.most_turn" => super::roll::HAND,
        "roll.turn_done" | "roll.entry_angle" => super::roll::HAND,
        "roll.slip_ends" | "roll.sideways" => super::roll::HAND,
        _ => &[],
    }
}

/// Worked facts as the vocabulary sees them.
pub(super) fn facts(rows: &[Worked]) -> Vec<Fact> {
    rows.iter()
        .map(|w| Fact {
            name: w.name,
            meaning: w.meaning,
            kind: (w.kind)(),
            origin: Origin::Worked,
            from: w.from,
            subject: None,
        })
        .collect()
}
