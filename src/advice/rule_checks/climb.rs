//! Climbing toward an answer: one answer after another is changed so that something costs less.

use super::super::chain::{Picks, known_values};
use super::super::shop::Shop;
use crate::rules::{FactId, Kind, UNKNOWN};
use crate::search::{Decision, Point};

/// So often all answers are gone through.
const ROUNDS: usize = 6;

/// The values tried for each answer: every word, and the numbers from which on a rule says something else.
pub(super) fn worth_trying(shop: &Shop, picks: &Picks<'_, '_>) -> Vec<Vec<i64>> {
    let one = |(place, &plain): (usize, &i64)| {
        let fact = picks.facts()[place];
        let known = known_values(shop.vocabulary(), fact);
        let (lowest, highest) = (known.lowest(), known.highest());
        let mut values: Vec<i64> = match shop.vocabulary().fact(fact).kind {
            Kind::Choice(_) | Kind::Flag => (lowest..=highest).collect(),
            Kind::Set(words) => (0..words.len()).map(|bit| 1 << bit).chain([0]).collect(),
            Kind::Number { .. } => {
                let cuts = picks.cuts(place).iter();
                let both_sides = cuts.flat_map(|&cut| [cut.saturating_sub(1), cut]);
                both_sides.chain([lowest, highest]).collect()
            }
        };
        values.retain(|&value| known.holds(value));
        values.push(plain);
        values.sort_unstable();
        values.dedup();
        values
    };
    picks.start().iter().enumerate().map(one).collect()
}

/// Somebody near `start` who costs nothing, if the climb comes to one: `cost` is 0 then, and [`i64::MAX`] where nobody can be so.
pub(super) fn climb(
    start: Point,
    values: &[Vec<i64>],
    more: &[(usize, i64)],
    cost: impl Fn(&[i64]) -> i64,
) -> Option<Point> {
    let mut here = start;
    let mut least = cost(&here);
    for _ in 0..ROUNDS {
        let before = least;
        for (place, values) in values.iter().enumerate() {
            if least == 0 {
                return Some(here);
            }
            let more = more.iter().filter(|(at, _)| *at == place);
            let more = more.map(|(_, value)| *value);
            let mut best = here[place];
            for value in values.iter().copied().chain(more) {
                let left = std::mem::replace(&mut here[place], value);
                let found = cost(&here);
                if found < least {
                    (best, least) = (value, found);
                }
                here[place] = left;
            }
            here[place] = best;
        }
        if least == before {
            break;
        }
    }
    (least == 0).then_some(here)
}

/// How far somebody is from getting a ball first, in tenths of points; 0 for somebody who does.
pub(super) fn short_of(picks: &Picks<'_, '_>, ball: usize, point: &[i64]) -> i64 {
    /// Dearer than any points: nobody can be so, no ball is left, this one is ruled out.
    const RULED_OUT: i64 = 1 << 32;
    const NO_BALL: i64 = 1 << 40;
    if !picks.is_possible(point) {
        return i64::MAX;
    }
    let (choice, ranking) = picks.ranked(point);
    let Some(first) = choice.ball else {
        return NO_BALL;
    };
    if first == ball {
        return 0;
    }
    let behind = ranking.total(first) - ranking.total(ball);
    // A total may be just as large, or larger where it is ruled out.
    match ranking.is_ruled_out(ball) {
        true => RULED_OUT + behind,
        false => 1 + behind,
    }
}

/// In how many of these facts somebody differs from what is wanted, as the ball stage sees them; 0 if the ball is first for them.
pub(super) fn differs(
    picks: &Picks<'_, '_>,
    ball: usize,
    wanted: &[(FactId, i64)],
    point: &[i64],
) -> i64 {
    if !picks.is_possible(point) {
        return i64::MAX;
    }
    let (choice, situation) = picks.settled(point);
    if choice.ball == Some(ball) {
        return 0;
    }
    let other = |&&(fact, value): &&(FactId, i64)| {
        let at = situation.at(fact);
        !(at.is_point() && at.value() == value || value == UNKNOWN && !at.may_be_known())
    };
    1 + wanted.iter().filter(other).count() as i64
}
