//! Turning points: the nearest step of an answer at which another pick comes.

use std::cmp::Ordering;

use super::decision::{Decision, Point, Shape};
use super::effort::{Effort, Spent};
use super::row::Row;
use super::span::{bits, sound};
use crate::rules::{Interval, UNKNOWN};

/// A step of one answer at which the pick changes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Turn<P> {
    /// Which answer.
    pub answer: usize,
    /// For steps: the value that keeps the pick next to `to`, where impossible ones between them don't count; [`UNKNOWN`]
    /// if the answer isn't known and every known value turns. For words and bits: the value at the start.
    ///
    /// So `to` below `from` reads "below `from`", and `to` above `from` reads "from `to` on".
    pub from: i64,
    /// The first value with another pick.
    pub to: i64,
    /// What is picked there.
    pub pick: P,
}

/// The nearest turns of one answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Nearest<P> {
    /// For steps: at most one below and one above, the one below first. For words and bits: every single step that turns, in
    /// order. Never to a value that can't be given together with the rest.
    pub turns: Vec<Turn<P>>,
    /// Whether nothing within the range was left open; false if the work limit came first.
    pub complete: bool,
    /// How many boxes and points were looked at.
    pub work: usize,
}

/// The nearest turns of one answer from `start`, every other answer as it is, looking at no more than `most` boxes and points.
///
/// Only known values within the range count as turns. Of an answer of steps that isn't known at `start` they are told from the
/// ends of the range: going in from each end that keeps the pick, the first turn; if neither does, going in from each end,
/// the last turn before the pick is kept; if nothing known keeps it, the lowest value. Of words that aren't known, every word that
/// turns; of a set that isn't known, the smallest set and those with one more.
pub fn nearest<D: Decision>(
    decision: &D,
    start: &[i64],
    answer: usize,
    within: Interval,
    most: usize,
) -> Nearest<D::Pick> {
    let mut effort = Effort::new(decision, most);
    let mut turns = Vec::new();
    let start = effort.point(start);
    let ended = match start.get(answer) {
        Some(_) => collect(&mut effort, &start, answer, within, &mut turns),
        None => Ok(()),
    };
    Nearest {
        turns,
        complete: ended.is_ok(),
        work: effort.work,
    }
}

fn collect<D: Decision>(
    effort: &mut Effort<D>,
    start: &Point,
    answer: usize,
    within: Interval,
    turns: &mut Vec<Turn<D::Pick>>,
) -> Result<(), Spent> {
    let range = sound(effort.decision.shape(answer), within).if_known();
    if !range.may_be_known() {
        return Ok(());
    }
    let target = effort.pick(start)?;
    turns_of(effort, start, answer, range, &target, turns)
}

/// The turns of one answer within a range of known values, where `target` is picked at `start`.
pub(super) fn turns_of<D: Decision>(
    effort: &mut Effort<D>,
    start: &Point,
    answer: usize,
    range: Interval,
    target: &D::Pick,
    turns: &mut Vec<Turn<D::Pick>>,
) -> Result<(), Spent> {
    let (shape, value) = (effort.decision.shape(answer), start[answer]);
    let mut row = Row::new(effort, start, answer, target);
    if row.is_proved(range, target)? {
        return Ok(());
    }
    let (lowest, highest) = (range.lowest(), range.highest());
    let turn = |from: i64, (to, pick)| Turn {
        answer,
        from,
        to,
        pick,
    };
    match shape {
        Shape::Steps if value == UNKNOWN => {
            from_the_ends(&mut row, (lowest, highest), |from, to| {
                turns.push(turn(from, to));
            })?;
        }
        Shape::Steps => {
            for (near, far) in sides(value, range).into_iter().flatten() {
                if let Some(found) = row.first_turn(near, far)? {
                    let kept = last_before(&mut row, found.0, near)?;
                    turns.push(turn(kept.unwrap_or(value), found));
                }
            }
        }
        Shape::Words => {
            for other in (lowest..=highest).filter(|&other| other != value) {
                if let Some(pick) = row.other_pick(other)? {
                    turns.push(turn(value, (other, pick)));
                }
            }
        }
        Shape::Bits => {
            for other in single_steps(value, lowest, highest) {
                if let Some(pick) = row.other_pick(other)? {
                    turns.push(turn(value, (other, pick)));
                }
            }
        }
    }
    Ok(())
}

/// The values of the range below `value` and those above it, each from the near end to the far end; none where there are none.
pub(super) fn sides(value: i64, range: Interval) -> [Option<(i64, i64)>; 2] {
    let (lowest, highest) = (range.lowest(), range.highest());
    let below = value > lowest;
    let above = value < highest;
    [
        below.then(|| (highest.min(value.saturating_sub(1)), lowest)),
        above.then(|| (lowest.max(value.saturating_add(1)), highest)),
    ]
}

/// The last possible value before another on the way from `near`; none if there is none.
fn last_before<D: Decision>(row: &mut Row<D>, value: i64, near: i64) -> Result<Option<i64>, Spent> {
    match near.cmp(&value) {
        Ordering::Less => row.first_possible(value - 1, near),
        Ordering::Equal => Ok(None),
        Ordering::Greater => row.first_possible(value + 1, near),
    }
}

/// The turns of an answer that isn't known, told from the ends of the range.
fn from_the_ends<D: Decision>(
    row: &mut Row<D>,
    (lowest, highest): (i64, i64),
    mut tell: impl FnMut(i64, (i64, D::Pick)),
) -> Result<(), Spent> {
    let (Some(low), Some(high)) = (
        row.first_possible(lowest, highest)?,
        row.first_possible(highest, lowest)?,
    ) else {
        return Ok(());
    };
    let (at_low, at_high) = (row.other_pick(low)?, row.other_pick(high)?);
    for (is_kept, near, far) in [
        (at_low.is_none(), low, high),
        (at_high.is_none(), high, low),
    ] {
        if is_kept && let Some(found) = row.first_turn(near, far)? {
            let kept = last_before(row, found.0, near)?;
            tell(kept.unwrap_or(near), found);
        }
    }
    let (Some(lowest_pick), Some(_)) = (at_low, at_high) else {
        return Ok(());
    };
    for (near, far) in [(low, high), (high, low)] {
        let Some(kept) = row.first_kept(near, far)? else {
            tell(UNKNOWN, (low, lowest_pick));
            break;
        };
        if let Some(last) = last_before(row, kept, near)?
            && let Some(pick) = row.other_pick(last)?
        {
            tell(kept, (last, pick));
        }
    }
    Ok(())
}

/// The sets of the range that differ from `value` in one bit; if it isn't known, the smallest and those with one more.
fn single_steps(value: i64, lowest: i64, highest: i64) -> Vec<i64> {
    if value == UNKNOWN {
        let more = bits(highest & !lowest).map(|bit| lowest | bit);
        return std::iter::once(lowest).chain(more).collect();
    }
    let is_within = |set: &i64| set & lowest == lowest && set & !highest == 0;
    let steps = bits(i64::MAX).map(|bit| value ^ bit);
    steps.filter(is_within).collect()
}

/// The stretch around `start` of an answer of steps over which the pick stays.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stretch {
    /// The lowest value, and whether the next lower one within the range turns the pick.
    pub lowest: (i64, bool),
    /// The highest value, and whether the next higher one within the range turns the pick.
    pub highest: (i64, bool),
}

/// The stretch around the start, in which impossible values don't count; none if the answer isn't known or not one of
/// steps, or the work limit came first.
pub fn stretch<D: Decision>(
    decision: &D,
    start: &[i64],
    answer: usize,
    within: Interval,
    most: usize,
) -> Option<Stretch> {
    let mut effort = Effort::new(decision, most);
    let start = effort.point(start);
    let value = *start.get(answer)?;
    if value == UNKNOWN || decision.shape(answer) != Shape::Steps {
        return None;
    }
    let range = sound(Shape::Steps, within).if_known();
    let stays = Stretch {
        lowest: (value, false),
        highest: (value, false),
    };
    if !range.may_be_known() {
        return Some(stays);
    }
    let target = effort.pick(&start).ok()?;
    let mut row = Row::new(&mut effort, &start, answer, &target);
    let ends = sides(value, range).map(|side| match side {
        Some((near, far)) => reach(&mut row, near, far, value),
        None => Ok((value, false)),
    });
    let [lowest, highest] = ends;
    Some(Stretch {
        lowest: lowest.ok()?,
        highest: highest.ok()?,
    })
}

/// How far the pick stays on the way from `near` to `far`, and whether it turns next.
fn reach<D: Decision>(
    row: &mut Row<D>,
    near: i64,
    far: i64,
    start: i64,
) -> Result<(i64, bool), Spent> {
    let (last, turns) = match row.first_turn(near, far)? {
        Some((turn, _)) => (last_before(row, turn, near)?, true),
        None => (row.first_possible(far, near)?, false),
    };
    Ok((last.unwrap_or(start), turns))
}
