//! Answers that can't be given together, judged over ranges.

use crate::rules::{Interval, Truth};

/// Everything that is read off a thumb which goes into a hole.
const OF_A_THUMB: [&str; 8] = [
    "hand.thumb_gauge",
    "hand.thumb_gauge_warm",
    "hand.thumb_length",
    "hand.thumb_flexibility",
    "hand.thumb_lies",
    "hand.oval_wide",
    "hand.oval_narrow",
    "hand.oval_angle",
];

pub(super) type Value<'v> = dyn Fn(&str) -> Option<Interval> + 'v;

/// What a profile is refused for: answers that can't be given together. Not all of it, only what bears on rules.
pub(super) const CLASHES: &[fn(&Value<'_>) -> Truth] = &[
    // What is worked out from others is known only with them.
    |value| {
        needs(
            value,
            "fit.web_short",
            &["bench.least_web", "fit.web_least"],
        )
    },
    |value| {
        needs(
            value,
            "fit.slug_wall_short",
            &["bench.least_sleeve_wall", "fit.slug_wall"],
        )
    },
    |value| needs(value, "hand.flat_ring_span", &["hand.crease_difference"]),
    // What was held in comfort is lighter than what was too much.
    |value| {
        both(
            value,
            "bowler.hold_passed",
            "bowler.hold_failed",
            |passed, failed| {
                order(
                    passed.lowest() < failed.highest(),
                    passed.highest() < failed.lowest(),
                )
            },
        )
    },
    // Without a ball there is no weight of it.
    |value| {
        both(
            value,
            "bowler.ball_now",
            "bowler.ball_now_weight",
            |ball, _| order(ball.highest() > 0, ball.lowest() > 0),
        )
    },
    |value| both(value, "hand.oval_narrow", "hand.oval_wide", at_most),
    |value| both(value, "card.oval_narrow", "card.oval_wide", at_most),
    // A rev rate that was measured isn't guessed as well.
    |value| {
        both(value, "bowler.rev_rate", "bowler.rev_level", |_, _| {
            Truth::No
        })
    },
    // Each kind of cover is on a ball of its own.
    |value| both(value, "owned.covers", "owned.count", at_least_as_many),
    // A thumb that stays out of the ball isn't measured for a hole.
    |value| {
        let each = OF_A_THUMB
            .iter()
            .map(|name| both(value, "bowler.thumb", name, |thumb, _| is_in(thumb)));
        each.min().unwrap_or(Truth::Yes)
    },
];

/// Whether a thumb goes into the ball; that is the first word of its answer.
fn is_in(thumb: Interval) -> Truth {
    order(thumb.lowest() == 0, thumb.highest() == 0)
}

/// Whether there are no more kinds of cover than balls.
fn at_least_as_many(covers: Interval, balls: Interval) -> Truth {
    let count = |covers: i64| i64::from(covers.count_ones());
    order(
        count(covers.lowest()) <= balls.highest(),
        count(covers.highest()) <= balls.lowest(),
    )
}

/// A fact is known only where these are.
fn needs(value: &Value<'_>, fact: &str, others: &[&str]) -> Truth {
    let Some(fact) = value(fact).filter(|fact| fact.may_be_known()) else {
        return Truth::Yes;
    };
    let missing = others.iter().filter_map(|other| value(other));
    let one = |other: Interval| match (other.may_be_known(), other.may_be_unknown()) {
        (true, false) => Truth::Yes,
        (false, _) if !fact.may_be_unknown() => Truth::No,
        _ => Truth::Open,
    };
    missing.map(one).min().unwrap_or(Truth::Yes)
}

fn at_most(one: Interval, other: Interval) -> Truth {
    order(
        one.lowest() <= other.highest(),
        one.highest() <= other.lowest(),
    )
}

fn order(may: bool, must: bool) -> Truth {
    match (may, must) {
        (false, _) => Truth::No,
        (true, true) => Truth::Yes,
        (true, false) => Truth::Open,
    }
}

/// What two answers allow, where both are known.
fn both(
    value: &Value<'_>,
    one: &str,
    other: &str,
    known: impl Fn(Interval, Interval) -> Truth,
) -> Truth {
    let (Some(one), Some(other)) = (value(one), value(other)) else {
        return Truth::Yes;
    };
    if !one.may_be_known() || !other.may_be_known() {
        return Truth::Yes;
    }
    match known(one, other) {
        Truth::No if one.may_be_unknown() || other.may_be_unknown() => Truth::Open,
        truth => truth,
    }
}
