//! Which answers a profile could tell together: the contradictions that reading refuses, for values alone.

use super::words::FIRST_REACTIVE;

/// Whether a profile could tell these answers together; `value` gives each answer's value in steps, none if it isn't told.
///
/// It looks at the hold test, the ball used now, the rev rate, the thumb and the balls owned. That each value lies inside its own range
/// is taken for granted.
pub fn go_together(value: impl Fn(&str) -> Option<i64>) -> bool {
    let both = |one: &str, other: &str| Some((value(one)?, value(other)?));
    let hold_test = both("bowler.hold_passed", "bowler.hold_failed")
        .is_none_or(|(passed, failed)| passed < failed);
    // No ball is used now, so nothing is known of its weight.
    let ball_now =
        both("bowler.ball_now", "bowler.ball_now_weight").is_none_or(|(ball, _)| ball != 0);
    let rev_rate = both("bowler.rev_rate", "bowler.rev_level").is_none();
    let thumb = both("bowler.thumb", "hand.thumb_gauge").is_none_or(|(thumb, _)| thumb != 1);
    let covers = value("owned.covers");
    let owned = both("owned.count", "owned.covers")
        .is_none_or(|(count, covers)| i64::from(covers.count_ones()) <= count);
    // Games since service are counted on reactive balls.
    let reactive = covers.is_some_and(|covers| covers >> FIRST_REACTIVE != 0);
    let service = value("owned.games_since_service").is_none() || reactive;
    hold_test && ball_now && rev_rate && thumb && owned && service
}
