//! Whether one pick holds over a box of answers.

use rustc_hash::FxHashSet;

use super::decision::{Area, Decision, Holds, Point, Shape};
use super::effort::{Effort, Spent};
use super::reduce::reduce;
use super::span::{bits, farthest_from, nearest_to};
use crate::rules::{Interval, UNKNOWN};

/// What is known of a pick over a box of answers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Outcome<P> {
    /// It is picked at every possible point.
    Proved {
        /// How many boxes and points were looked at.
        work: usize,
    },
    /// Here something else is picked.
    Turns {
        /// The answers, possible together.
        at: Point,
        /// What is picked there.
        pick: P,
        /// How many boxes and points were looked at.
        work: usize,
    },
    /// The work limit was reached first.
    NotSettled {
        /// How many boxes and points were looked at.
        work: usize,
    },
}

/// Whether what is picked at `start` is picked at every possible point of `area`, looking at no more than `most` boxes
/// and points.
///
/// `start` needn't lie in `area`. A turn is brought back toward `start`, one answer at a time, as far as it still turns
/// and the work limit allows: putting back any single answer would no longer turn the pick.
pub fn settle<D: Decision>(
    decision: &D,
    area: &[Interval],
    start: &[i64],
    most: usize,
) -> Outcome<D::Pick> {
    let mut effort = Effort::new(decision, most);
    let start = effort.point(start);
    let area = effort.area(area, &start);
    let found = explore(&mut effort, &area, &start);
    let work = effort.work;
    match found {
        Ok(None) => Outcome::Proved { work },
        Ok(Some((at, pick))) => Outcome::Turns { at, pick, work },
        Err(Spent) => Outcome::NotSettled { work },
    }
}

type Found<P> = Option<(Point, P)>;

fn explore<D: Decision>(
    effort: &mut Effort<D>,
    area: &Area,
    start: &Point,
) -> Result<Found<D::Pick>, Spent> {
    let target = effort.pick(start)?;
    let mut points = Points {
        target: &target,
        seen: FxHashSet::default(),
    };
    let mut found = None;
    let mut boxes = vec![area.clone()];
    let mut is_first = true;
    while let (None, Some(area)) = (&found, boxes.pop()) {
        if let Some(point) = only_point(&area) {
            found = points.turn(effort, point)?;
            continue;
        }
        let Holds::Open { split } = effort.holds(&area, &target)? else {
            continue;
        };
        if is_first {
            is_first = false;
            found = points.around(effort, &area, start, &split)?;
        }
        for corner in [nearest_to, farthest_from] {
            if found.is_none() {
                found = points.turn(effort, corner_of(effort.decision, &area, start, corner))?;
            }
        }
        if let Some((answer, near, far)) = effort.parts(&area, &split, start) {
            for part in [far, near] {
                let mut half = area.clone();
                half[answer] = part;
                boxes.push(half);
            }
        }
    }
    Ok(found.map(|turn| reduce(effort, area, start, &target, turn)))
}

/// The point that is left if nothing is open.
fn only_point(area: &Area) -> Option<Point> {
    let is_point = area.iter().all(|span| span.is_point());
    is_point.then(|| area.iter().map(|span| span.value()).collect())
}

/// One value for each answer of an area: the corner nearest to `start`, or the one farthest from it.
pub(super) fn corner_of<D: Decision>(
    decision: &D,
    area: &Area,
    start: &Point,
    corner: fn(Shape, Interval, i64) -> i64,
) -> Point {
    let spans = area.iter().zip(start).enumerate();
    spans
        .map(|(answer, (&span, &value))| corner(decision.shape(answer), span, value))
        .collect()
}

/// Points looked at, each once.
struct Points<'t, P> {
    target: &'t P,
    seen: FxHashSet<Point>,
}

impl<P: PartialEq> Points<'_, P> {
    /// The point, if it turns.
    fn turn<D: Decision<Pick = P>>(
        &mut self,
        effort: &mut Effort<D>,
        point: Point,
    ) -> Result<Found<P>, Spent> {
        if !self.seen.insert(point.clone()) {
            return Ok(None);
        }
        let other = effort.other_pick(&point, self.target)?;
        Ok(other.map(|pick| (point, pick)))
    }

    /// Points of the area that differ from the one nearest to `start` in one answer of those that matter.
    fn around<D: Decision<Pick = P>>(
        &mut self,
        effort: &mut Effort<D>,
        area: &Area,
        start: &Point,
        matter: &[usize],
    ) -> Result<Found<P>, Spent> {
        let decision = effort.decision;
        let home = corner_of(decision, area, start, nearest_to);
        let found = self.turn(effort, home.clone())?;
        if found.is_some() {
            return Ok(found);
        }
        let all: Vec<usize> = (0..area.len()).collect();
        let matter = if matter.is_empty() { &all } else { matter };
        for &answer in matter {
            let (Some(&span), Some(&value)) = (area.get(answer), home.get(answer)) else {
                continue;
            };
            let cuts = decision.cuts(answer);
            for other in telling(decision.shape(answer), span, cuts, value) {
                let mut point = home.clone();
                point[answer] = other;
                let found = self.turn(effort, point)?;
                if found.is_some() {
                    return Ok(found);
                }
            }
        }
        Ok(None)
    }
}

/// The values of an answer that are likely to tell something: every word and bit; for steps the nearest cut on each side and the ends.
pub(super) fn telling(shape: Shape, span: Interval, cuts: &[i64], value: i64) -> Vec<i64> {
    let mut values = Vec::new();
    if span.may_be_known() {
        let (lowest, highest) = (span.lowest(), span.highest());
        match shape {
            Shape::Bits if value == UNKNOWN => values.extend([lowest, highest]),
            Shape::Bits => values.extend(bits(highest & !lowest).map(|bit| value ^ bit)),
            Shape::Words if highest.abs_diff(lowest) < 64 => values.extend(lowest..=highest),
            Shape::Steps | Shape::Words => {
                let below = cuts.iter().rev().find(|&&cut| cut <= value);
                let above = cuts.iter().find(|&&cut| cut > value);
                values.extend(below.and_then(|cut| cut.checked_sub(1)));
                values.extend(above);
                values.extend([lowest, highest]);
            }
        }
    }
    if span.may_be_unknown() {
        values.push(UNKNOWN);
    }
    values.retain(|&other| {
        other != value
            && match shape {
                Shape::Bits => true,
                Shape::Steps | Shape::Words => span.holds(other),
            }
    });
    values
}
