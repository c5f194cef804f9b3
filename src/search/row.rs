//! The values of one answer of steps in a row, every other answer as it is.

use super::decision::{Area, Decision, Holds, Point};
use super::effort::{Effort, Spent};
use super::span::part_at;
use crate::rules::Interval;

/// So many values are sooner picked one by one than bounded first.
const FEW: u64 = 3;

/// One answer moving, and what was picked before it moved.
pub(super) struct Row<'e, 'd, 't, D: Decision> {
    pub(super) effort: &'e mut Effort<'d, D>,
    pub(super) target: &'t D::Pick,
    answer: usize,
    point: Point,
    area: Area,
}

impl<'e, 'd, 't, D: Decision> Row<'e, 'd, 't, D> {
    /// `answer` must be one of the decision's, and `start` have a value for each.
    pub(super) fn new(
        effort: &'e mut Effort<'d, D>,
        start: &Point,
        answer: usize,
        target: &'t D::Pick,
    ) -> Self {
        Row {
            effort,
            target,
            answer,
            area: start.iter().copied().map(Interval::point).collect(),
            point: start.clone(),
        }
    }

    /// Whether this is picked wherever the answer lies.
    pub(super) fn is_proved(&mut self, span: Interval, pick: &D::Pick) -> Result<bool, Spent> {
        self.area[self.answer] = span;
        Ok(self.effort.holds(&self.area, pick)? == Holds::Proved)
    }

    /// What is picked at a value; none if it isn't possible.
    pub(super) fn pick(&mut self, value: i64) -> Result<Option<D::Pick>, Spent> {
        self.point[self.answer] = value;
        self.effort.possible_pick(&self.point)
    }

    /// What is picked at a value, if that is possible and turns.
    pub(super) fn other_pick(&mut self, value: i64) -> Result<Option<D::Pick>, Spent> {
        self.point[self.answer] = value;
        self.effort.other_pick(&self.point, self.target)
    }

    /// The first value from `near` to `far` that turns, and what is picked there.
    pub(super) fn first_turn(
        &mut self,
        near: i64,
        far: i64,
    ) -> Result<Option<(i64, D::Pick)>, Spent> {
        let mut stretches = vec![(near, far)];
        let mut possible = None;
        while let Some((near, far)) = stretches.pop() {
            if near.abs_diff(far) < FEW {
                for value in walk(near, far) {
                    if let Some(pick) = self.other_pick(value)? {
                        return Ok(Some((value, pick)));
                    }
                }
                continue;
            }
            if self.is_proved(Interval::between(near, far), self.target)? {
                continue;
            }
            if possible == Some(near) {
                stretches.extend(self.parts(near, far));
                continue;
            }
            // Bounds needn't be asked about what can't be given.
            possible = self.first_possible(near, far)?;
            match possible {
                Some(first) if first == near => stretches.extend(self.parts(near, far)),
                Some(first) => stretches.push((first, far)),
                None => {}
            }
        }
        Ok(None)
    }

    /// The first value from `near` to `far` that keeps the pick.
    pub(super) fn first_kept(&mut self, near: i64, far: i64) -> Result<Option<i64>, Spent> {
        let mut stretches = vec![(near, far)];
        let mut last = None;
        while let Some((near, far)) = stretches.pop() {
            if near.abs_diff(far) < FEW {
                for value in walk(near, far) {
                    if self.pick(value)?.as_ref() == Some(self.target) {
                        return Ok(Some(value));
                    }
                }
                continue;
            }
            // What is picked here instead may well be picked all along. The nearer of two parts begins where both did.
            let other = match last.take() {
                Some((value, other)) if value == near => other,
                _ => self.pick(near)?,
            };
            if other.as_ref() == Some(self.target) {
                return Ok(Some(near));
            }
            let span = Interval::between(near, far);
            let is_passed = match &other {
                Some(other) => self.is_proved(span, other)?,
                None => !self.may_be_possible(span)?,
            };
            if !is_passed {
                stretches.extend(self.parts(near, far));
            }
            last = Some((near, other));
        }
        Ok(None)
    }

    fn may_be_possible(&mut self, span: Interval) -> Result<bool, Spent> {
        self.area[self.answer] = span;
        self.effort.may_be_possible(&self.area)
    }

    /// The first possible value from `near` to `far`.
    pub(super) fn first_possible(&mut self, near: i64, far: i64) -> Result<Option<i64>, Spent> {
        let mut stretches = vec![(near, far)];
        while let Some((near, far)) = stretches.pop() {
            let is_short = near.abs_diff(far) < FEW;
            // Most often it is the nearest.
            for value in walk(near, if is_short { far } else { near }) {
                self.point[self.answer] = value;
                if self.effort.is_possible(&self.point)? {
                    return Ok(Some(value));
                }
            }
            if !is_short && self.may_be_possible(Interval::between(near, far))? {
                stretches.extend(self.parts(near, far));
            }
        }
        Ok(None)
    }

    /// The two parts of a stretch of at least two values, the nearer one last.
    fn parts(&self, near: i64, far: i64) -> [(i64, i64); 2] {
        let cuts = self.effort.decision.cuts(self.answer);
        let place = part_at(near.min(far), near.max(far), cuts);
        if near < far {
            [(place, far), (near, place - 1)]
        } else {
            [(place - 1, far), (near, place)]
        }
    }
}

/// Every value from `near` to `far`, which may lie below it.
fn walk(near: i64, far: i64) -> impl Iterator<Item = i64> {
    let up = near <= far;
    let steps = if up { near..=far } else { far..=near };
    let mut steps = steps;
    std::iter::from_fn(move || if up { steps.next() } else { steps.next_back() })
}
