//! What a bowler can be asked, and what is read off the hand: one row a fact.

use super::words;
use crate::notation::Notation::{
    self, Angle, Count, Counted, HoleSize, Length, Money, Rate, Speed, UpDown, Weight,
};
use crate::rules::{Fact, Kind, Origin};

pub(super) fn fact(
    name: &'static str,
    meaning: &'static str,
    kind: Kind,
    from: &'static str,
) -> Fact {
    Fact {
        name,
        meaning,
        kind,
        origin: Origin::Answer,
        from,
        subject: None,
    }
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
    vec![
        fact(
            "bowler.hand",
            "the hand that bowls",
            Kind::Choice(words::HANDS),
            ask,
        ),
        fact(
            "bowler.delivery",
            "one hand or two on the ball at release",
            Kind::Choice(words::DELIVERIES),
            told,
        ),
        fact(
            "bowler.thumb",
            "thumb in the ball or out of it",
            Kind::Choice(words::THUMBS),
            told,
        ),
        fact(
            "bowler.intent",
            "rolls it straight, would like to learn to hook, or hooks",
            Kind::Choice(words::INTENTS),
            ask,
        ),
        fact(
            "bowler.curve",
            "how the ball curves now: not, the usual way, or away from it",
            Kind::Choice(words::CURVES),
            told,
        ),
        fact(
            "bowler.experience",
            "first ball, league or tournament",
            Kind::Choice(words::EXPERIENCES),
            ask,
        ),
        fact(
            "bowler.games_a_week",
            "games bowled in a usual week",
            number(Counted("game", "games"), 0, 60),
            ask,
        ),
        fact(
            "bowler.age",
            "age",
            number(Counted("year", "years"), 3, 110),
            ask,
        ),
        fact(
            "bowler.body_weight",
            "body weight",
            number(Weight, 30 * POUND, 500 * POUND),
            ask,
        ),
        fact(
            "bowler.ball_now",
            "the ball used now: none, the house's or their own",
            Kind::Choice(words::BALLS_NOW),
            ask,
        ),
        fact(
            "bowler.ball_now_weight",
            "weight of the ball used now",
            number(Weight, 4 * POUND, 16 * POUND),
            ask,
        ),
        fact(
            "bowler.hold_passed",
            "heaviest ball held at arm's length for five seconds in comfort",
            number(Weight, 4 * POUND, 16 * POUND),
            "the hold test at the rack",
        ),
        fact(
            "bowler.hold_failed",
            "lightest ball that wasn't comfortable in the hold test",
            number(Weight, 4 * POUND, 16 * POUND),
            "the hold test at the rack",
        ),
        fact(
            "bowler.aches",
            "what hurts or tingles",
            Kind::Set(words::ACHES),
            ask,
        ),
        fact(
            "bowler.injuries",
            "injuries and illnesses that matter for the hand or arm",
            Kind::Set(words::INJURIES),
            ask,
        ),
        fact(
            "bowler.skin",
            "skin of the hand",
            Kind::Choice(words::SKINS),
            told,
        ),
        fact(
            "bowler.rev_rate",
            "rev rate just after release",
            number(Rate, 0, 700),
            "measured on video or by sensor",
        ),
        fact(
            "bowler.rev_level",
            "rev rate as a level, never measured",
            Kind::Choice(words::LEVELS),
            told,
        ),
        fact(
            "bowler.speed",
            "ball speed at release",
            number(Speed, 50, 300),
            "a speed display or a stopwatch",
        ),
        fact(
            "bowler.rotation",
            "axis rotation: 0 is end over end, 90 full side",
            number(Angle, 0, 900),
            "measured on video",
        ),
        fact(
            "bowler.tilt",
            "axis tilt above the horizontal",
            number(Angle, 0, 900),
            "measured from the track",
        ),
        fact(
            "bowler.pap_over",
            "PAP, over from the grip centre along the midline",
            number(Length, 2 * INCH, 8 * INCH),
            "measured from the track",
        ),
        fact(
            "bowler.pap_up",
            "PAP, up or down from the midline",
            number(UpDown, -3 * INCH, 3 * INCH),
            "measured from the track",
        ),
        fact(
            "bowler.lanes",
            "lanes bowled on",
            Kind::Set(words::LANES),
            ask,
        ),
        fact(
            "bowler.budget",
            "most they want to pay, all in",
            number(Money, 0, 200_000),
            ask,
        ),
        fact(
            "bowler.target_weight",
            "weight the customer insists on",
            number(Weight, 6 * POUND, 16 * POUND),
            ask,
        ),
        fact(
            "bowler.cover_wish",
            "cover the customer wishes for",
            Kind::Choice(words::COVERS),
            ask,
        ),
        fact(
            "bowler.colour_wish",
            "colour the customer wishes for",
            Kind::Choice(words::COLOURS),
            ask,
        ),
        fact(
            "bowler.wrist_support",
            "bowls with a wrist support",
            Kind::Flag,
            told,
        ),
        fact("bowler.present", "the ball is a present", Kind::Flag, ask),
        fact(
            "bowler.absent",
            "the one who will bowl isn't here",
            Kind::Flag,
            told,
        ),
        fact(
            "bowler.wants_dearest",
            "asks for the dearest ball",
            Kind::Flag,
            ask,
        ),
        fact("owned.count", "balls owned", number(Count, 0, 40), ask),
        fact(
            "owned.covers",
            "covers of the balls owned",
            Kind::Set(words::COVERS),
            ask,
        ),
        fact(
            "owned.games_since_service",
            "most games since service among the reactive balls owned",
            number(Counted("game", "games"), 0, 5000),
            ask,
        ),
    ]
}

/// Every measurement of the hand. None of them is ever assumed.
pub(super) fn hand() -> Vec<Fact> {
    let gauge = "gauge holes, cold hand";
    let spans = "measured on the hand, laid on and relaxed";
    vec![
        fact(
            "hand.measured",
            "gauge sizes and a span have been measured",
            Kind::Flag,
            "the measuring part of the profile",
        ),
        fact(
            "hand.thumb_gauge",
            "smaller snug gauge size of the thumb",
            number(HoleSize, 20, 96),
            gauge,
        ),
        fact(
            "hand.middle_gauge",
            "smaller snug gauge size of the middle finger",
            number(HoleSize, 20, 96),
            gauge,
        ),
        fact(
            "hand.ring_gauge",
            "smaller snug gauge size of the ring finger",
            number(HoleSize, 20, 96),
            gauge,
        ),
        fact(
            "hand.thumb_gauge_warm",
            "gauge size of the thumb after bowling",
            number(HoleSize, 20, 96),
            "gauge holes, warm hand",
        ),
        fact(
            "hand.conventional_middle_span",
            "full span to the middle finger's second joint, along the arc",
            number(Length, INCH, 7 * INCH),
            spans,
        ),
        fact(
            "hand.conventional_ring_span",
            "full span to the ring finger's second joint, along the arc",
            number(Length, INCH, 7 * INCH),
            spans,
        ),
        fact(
            "hand.fingertip_middle_span",
            "full span to the middle finger's first joint, along the arc",
            number(Length, INCH, 7 * INCH),
            spans,
        ),
        fact(
            "hand.fingertip_ring_span",
            "full span to the ring finger's first joint, along the arc",
            number(Length, INCH, 7 * INCH),
            spans,
        ),
        fact(
            "hand.crease_difference",
            "how far the middle finger's crease leads the ring finger's, hand flat",
            number(Length, 0, 2 * INCH),
            "measured on the flat hand",
        ),
        fact(
            "hand.thumb_flexibility",
            "how far the thumb's base bends",
            Kind::Choice(words::FLEXIBILITIES),
            "bent gently by the fitter",
        ),
        fact(
            "hand.thumb_lies",
            "where a relaxed thumb points",
            Kind::Choice(words::THUMB_LIES),
            "the hand round a bottle-size cylinder",
        ),
        fact(
            "hand.finger_joints",
            "how far the fingers' end joints bend",
            Kind::Choice(words::FLEXIBILITIES),
            "bent gently by the fitter",
        ),
        fact(
            "hand.finger_reach",
            "how deep the fingers reach into a hole",
            number(Length, INCH / 4, 4 * INCH),
            "measured on the fingers",
        ),
        fact(
            "hand.thumb_length",
            "length of the thumb in the hole",
            number(Length, INCH, 4 * INCH),
            "measured on the thumb",
        ),
        fact(
            "hand.slim_fingers",
            "slim fingers",
            Kind::Flag,
            "what the fitter sees",
        ),
        fact(
            "hand.oval_wide",
            "thumb, the wide way",
            number(HoleSize, 20, 110),
            gauge,
        ),
        fact(
            "hand.oval_narrow",
            "thumb, the narrow way",
            number(HoleSize, 20, 96),
            gauge,
        ),
        fact(
            "hand.oval_angle",
            "how far the oval is turned",
            number(Angle, 0, 1800),
            "drawn on the hand",
        ),
    ]
}
