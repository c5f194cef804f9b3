//! Facts worked out from the answers and from what is settled: one value each, in an order in which
//! each needs only earlier ones.

use super::answers::{INCH, POUND, number};
use super::{Interval, Situation, geometry, web};
use crate::notation::Notation::{HoleSize, Length, Weight};
use crate::rules::{Fact, Kind, Origin};

/// One worked fact: its name, meaning and kind beside the way it is worked out.
pub(super) struct Worked {
    pub(super) name: &'static str,
    meaning: &'static str,
    kind: fn() -> Kind,
    from: &'static str,
    pub(super) value: fn(&Situation) -> Interval,
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
    match (grip.holds(0), grip.holds(1)) {
        (true, false) => s.get(conventional),
        (false, true) => s.get(fingertip),
        (true, true) => s.get(conventional).or(s.get(fingertip)),
        (false, false) => Interval::NOT_KNOWN,
    }
}

/// The thumb goes in; so it does where nobody asked.
fn thumb_in(s: &Situation) -> Interval {
    match s.get("bowler.thumb") {
        asked if asked.is_known() => asked.is(0),
        _ => Interval::flag(true),
    }
}

/// This of a card, if the card fits.
fn copied(s: &Situation, of_card: Interval) -> Interval {
    match of_card.is_known() {
        true => s.get("card.fits").and(of_card),
        false => Interval::flag(false),
    }
}

/// All of these stand on a card that fits.
fn on_card(s: &Situation, names: &[&str]) -> Interval {
    let all = names.iter().all(|name| s.get(name).is_known());
    copied(s, Interval::flag(all))
}

/// What is missing of the least that is allowed.
fn short(s: &Situation, least: &str, found: &str) -> Interval {
    match (s.known(least), s.known(found)) {
        (Some(least), Some(found)) => Interval::point((least - found).max(0)),
        _ => Interval::NOT_KNOWN,
    }
}

/// The worked facts of an advice.
pub(super) const WORKED: &[Worked] = &[
    Worked {
        name: "bowler.child",
        meaning: "younger than fifteen",
        kind: flag,
        from: "age",
        value: |s| match s.get("bowler.age") {
            age if age.is_known() => Interval::point(CHILD_UNDER - 1).is_at_least(age),
            _ => Interval::NOT_KNOWN,
        },
    },
    Worked {
        name: "bowler.older",
        meaning: "sixty or older",
        kind: flag,
        from: "age",
        value: |s| s.get("bowler.age").is_at_least(Interval::point(OLDER_FROM)),
    },
    Worked {
        name: "bowler.tenth_of_body",
        meaning: "a tenth of body weight",
        kind: || number(Weight, 3 * POUND, 50 * POUND),
        from: "body weight",
        value: |s| s.get("bowler.body_weight").rising(|w| w / 10),
    },
    Worked {
        name: "bowler.mirrored",
        meaning: "the ball curves away from the usual side, so the layout mirrors",
        kind: flag,
        from: "which way the ball curves",
        value: |s| s.get("bowler.curve").is(2),
    },
    Worked {
        name: "hand.middle_span",
        meaning: "measured full span to the middle finger in the settled grip",
        kind: length,
        from: "the measured spans and the settled grip",
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
        value: |s| span(s, "hand.conventional_ring_span", "hand.fingertip_ring_span"),
    },
    Worked {
        name: "hand.flat_ring_span",
        meaning: "ring span worked out from the middle span and the difference of the creases, hand flat",
        kind: length,
        from: "the settled grip's middle span and the crease difference",
        value: |s| geometry::ring_span(s.get("hand.middle_span"), s.get("hand.crease_difference")),
    },
    Worked {
        name: "card.fits",
        meaning: "a fit without pain is on file for the settled grip, so it can be copied",
        kind: flag,
        from: "the fit card and the settled grip",
        value: |s| {
            let same = s.get("card.grip").equals(s.get("settled.grip"));
            let fits = s.get("card.works").and(same);
            // A fit that isn't on file can't be copied.
            if fits.is_known() {
                fits
            } else {
                Interval::flag(false)
            }
        },
    },
    Worked {
        name: "hand.thumb_swell",
        meaning: "how much wider the thumb is after bowling",
        kind: || number(HoleSize, -2 * INCH, 2 * INCH),
        from: "the warm and the cold gauge size",
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
        value: |s| {
            let wanted = match s.get("settled.sleeve") {
                settled if settled.is_known() => settled,
                _ => copied(s, s.get("card.sleeve").is(1)),
            };
            thumb_in(s).and(wanted)
        },
    },
    Worked {
        name: "fit.has_slug",
        meaning: "the thumb hole gets a slug or a sleeve",
        kind: flag,
        from: "a fingertip grip with the thumb in, a sleeve, or a card that fits and has a slug",
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
        value: |s| {
            let card = on_card(s, &["card.oval_wide", "card.oval_narrow"]);
            // A round hole that works stays round.
            let round = on_card(s, &["card.thumb_bore"]);
            let hand = ["hand.oval_wide", "hand.oval_narrow"]
                .iter()
                .all(|name| s.get(name).is_known());
            let gauged = Interval::flag(hand).and(Interval::flag(true).minus(round));
            thumb_in(s).and(card.or_flag(gauged))
        },
    },
    Worked {
        name: "fit.thumb.widest",
        meaning: "thumb hole the wide way; of a round one its bore",
        kind: || number(HoleSize, 0, 110),
        from: "the bore, or the oval's wide size",
        value: geometry::widest_thumb,
    },
    Worked {
        name: "fit.middle_cut_span",
        meaning: "cut-to-cut span to the middle finger",
        kind: length,
        from: "full span less the walls of insert and slug",
        value: |s| geometry::cut_span(s, "fit.middle.span", "fit.middle.insert", "fit.middle.bore"),
    },
    Worked {
        name: "fit.ring_cut_span",
        meaning: "cut-to-cut span to the ring finger",
        kind: length,
        from: "full span less the walls of insert and slug",
        value: |s| geometry::cut_span(s, "fit.ring.span", "fit.ring.insert", "fit.ring.bore"),
    },
    Worked {
        name: "fit.slug_wall",
        meaning: "wall left between thumb hole and the outside of the slug",
        kind: length,
        from: "half of slug outside less thumb hole the wide way",
        value: geometry::slug_wall,
    },
    Worked {
        name: "fit.slug_wall_short",
        meaning: "what the slug's wall lacks of the least it must have",
        kind: length,
        from: "least allowed wall less the slug's",
        value: |s| short(s, "bench.least_sleeve_wall", "fit.slug_wall"),
    },
    Worked {
        name: "fit.span_gap",
        meaning: "how far the two spans differ",
        kind: length,
        from: "ring span against middle span",
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
        value: web::least_web,
    },
    Worked {
        name: "fit.web_short",
        meaning: "what the thinnest web lacks of the least that may be left",
        kind: length,
        from: "least allowed web less the thinnest",
        value: |s| short(s, "bench.least_web", "fit.web_least"),
    },
];

/// The answers behind a worked fact that an assumption may stand in for.
pub fn answers_behind(worked: &str) -> &'static [&'static str] {
    match worked {
        "bowler.child" | "bowler.older" => &["bowler.age"],
        "bowler.tenth_of_body" => &["bowler.body_weight"],
        "bowler.mirrored" => &["bowler.curve"],
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
