//! What a bowler can be asked, and what is read off the hand: one row a fact. Its kind and its bounds stand in the profile's
//! own table, once.

use crate::bowler::{self, Shape};
use crate::notation::Notation;
use crate::rules::{Fact, Kind, Origin};

/// A fact by name, with its meaning and where it comes from.
pub(super) type Row = (&'static str, &'static str, &'static str);

/// The facts of these rows. A row the profile doesn't know gives none; a test holds that there is no such row.
pub(super) fn facts(rows: &[Row]) -> Vec<Fact> {
    let fact = |&(name, meaning, from): &Row| {
        let kind = match bowler::answer(name)?.shape() {
            Shape::Number {
                notation,
                lowest,
                highest,
                ..
            } => number(notation, lowest, highest),
            Shape::Choice(words) => Kind::Choice(words),
            Shape::Set(words) => Kind::Set(words),
            Shape::Flag => Kind::Flag,
        };
        Some(Fact {
            name,
            meaning,
            kind,
            origin: Origin::Answer,
            from,
            subject: None,
        })
    };
    rows.iter().filter_map(fact).collect()
}

pub(super) fn number(notation: Notation, lowest: i64, highest: i64) -> Kind {
    Kind::Number {
        notation,
        lowest,
        highest,
    }
}

/// Steps in one inch of a length, a hole size or a pitch.
pub(super) const INCH: i64 = 64;
/// Steps in one pound.
pub(super) const POUND: i64 = 100;

/// Every answer about the person, how they bowl and what they wish for.
pub(super) fn person() -> Vec<Fact> {
    let ask = "the customer's answer";
    let told = "the customer's answer, or what the fitter sees";
    facts(&[
        ("bowler.hand", "the hand that bowls", ask),
        (
            "bowler.delivery",
            "one hand or two on the ball at release",
            told,
        ),
        ("bowler.thumb", "thumb in the ball or out of it", told),
        (
            "bowler.intent",
            "rolls it straight, would like to learn to hook, or hooks",
            ask,
        ),
        (
            "bowler.curve",
            "how the ball curves now: not, the usual way, or away from it",
            told,
        ),
        ("bowler.experience", "first ball, league or tournament", ask),
        ("bowler.games_a_week", "games bowled in a usual week", ask),
        ("bowler.age", "age", ask),
        ("bowler.body_weight", "body weight", ask),
        (
            "bowler.ball_now",
            "the ball used now: none, the house's or their own",
            ask,
        ),
        ("bowler.ball_now_weight", "weight of the ball used now", ask),
        (
            "bowler.hold_passed",
            "heaviest ball held at arm's length for five seconds in comfort",
            "the hold test at the rack",
        ),
        (
            "bowler.hold_failed",
            "lightest ball that wasn't comfortable in the hold test",
            "the hold test at the rack",
        ),
        ("bowler.aches", "what hurts or tingles", ask),
        (
            "bowler.injuries",
            "injuries and illnesses that matter for the hand or arm",
            ask,
        ),
        ("bowler.skin", "skin of the hand", told),
        (
            "bowler.rev_rate",
            "rev rate just after release",
            "measured on video or by sensor",
        ),
        (
            "bowler.rev_level",
            "rev rate as a level, never measured",
            told,
        ),
        (
            "bowler.speed",
            "ball speed at release",
            "a speed display or a stopwatch",
        ),
        (
            "bowler.rotation",
            "axis rotation: 0 is end over end, 90 full side",
            "measured on video",
        ),
        (
            "bowler.tilt",
            "axis tilt above the horizontal",
            "measured from the track",
        ),
        (
            "bowler.pap_over",
            "PAP, over from the grip centre along the midline",
            "measured from the track",
        ),
        (
            "bowler.pap_up",
            "PAP, up or down from the midline",
            "measured from the track",
        ),
        ("bowler.lanes", "lanes bowled on", ask),
        ("bowler.budget", "most they want to pay, all in", ask),
        (
            "bowler.target_weight",
            "weight the customer insists on",
            ask,
        ),
        ("bowler.cover_wish", "cover the customer wishes for", ask),
        ("bowler.colour_wish", "colour the customer wishes for", ask),
        ("bowler.wrist_support", "bowls with a wrist support", told),
        ("bowler.present", "the ball is a present", ask),
        ("bowler.absent", "the one who will bowl isn't here", told),
        ("bowler.wants_dearest", "asks for the dearest ball", ask),
        ("owned.count", "balls owned", ask),
        ("owned.covers", "covers of the balls owned", ask),
        (
            "owned.games_since_service",
            "most games since service among the reactive balls owned",
            ask,
        ),
    ])
}

/// Every measurement of the hand. None of them is ever assumed.
pub(super) fn hand() -> Vec<Fact> {
    let gauge = "gauge holes, cold hand";
    let spans = "measured on the hand, laid on and relaxed";
    facts(&[
        (
            "hand.measured",
            "gauge sizes and a span have been measured",
            "the measuring part of the profile",
        ),
        (
            "hand.thumb_gauge",
            "smaller snug gauge size of the thumb",
            gauge,
        ),
        (
            "hand.middle_gauge",
            "smaller snug gauge size of the middle finger",
            gauge,
        ),
        (
            "hand.ring_gauge",
            "smaller snug gauge size of the ring finger",
            gauge,
        ),
        (
            "hand.thumb_gauge_warm",
            "gauge size of the thumb after bowling",
            "gauge holes, warm hand",
        ),
        (
            "hand.conventional_middle_span",
            "full span to the middle finger's second joint, along the arc",
            spans,
        ),
        (
            "hand.conventional_ring_span",
            "full span to the ring finger's second joint, along the arc",
            spans,
        ),
        (
            "hand.fingertip_middle_span",
            "full span to the middle finger's first joint, along the arc",
            spans,
        ),
        (
            "hand.fingertip_ring_span",
            "full span to the ring finger's first joint, along the arc",
            spans,
        ),
        (
            "hand.crease_difference",
            "how far the middle finger's crease leads the ring finger's, hand flat",
            "measured on the flat hand",
        ),
        (
            "hand.thumb_flexibility",
            "how far the thumb's base bends",
            "bent gently by the fitter",
        ),
        (
            "hand.thumb_lies",
            "where a relaxed thumb points",
            "the hand round a bottle-size cylinder",
        ),
        (
            "hand.finger_joints",
            "how far the fingers' end joints bend",
            "bent gently by the fitter",
        ),
        (
            "hand.finger_reach",
            "how deep the fingers reach into a hole",
            "measured on the fingers",
        ),
        (
            "hand.thumb_length",
            "length of the thumb in the hole",
            "measured on the thumb",
        ),
        ("hand.slim_fingers", "slim fingers", "what the fitter sees"),
        ("hand.oval_wide", "thumb, the wide way", gauge),
        ("hand.oval_narrow", "thumb, the narrow way", gauge),
        (
            "hand.oval_angle",
            "how far the oval is turned, as on the ball",
            "drawn on the hand",
        ),
        (
            "hand.palm_mark",
            "how far from the fingers the palm lies, along the arc",
            "the hand laid on the ball, for a ball without a thumb hole",
        ),
    ])
}
