//! Boxes and points looked at, within a limit.

use super::decision::{Area, Decision, Holds, Point};
use super::span::{halves, sound};
use crate::rules::{Interval, UNKNOWN};

/// The work limit was reached.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Spent;

/// A decision, and how much of it may still be looked at.
#[derive(Debug)]
pub(super) struct Effort<'d, D> {
    pub(super) decision: &'d D,
    most: usize,
    pub(super) work: usize,
}

impl<'d, D: Decision> Effort<'d, D> {
    pub(super) fn new(decision: &'d D, most: usize) -> Self {
        Effort {
            decision,
            most,
            work: 0,
        }
    }

    /// A value for every answer of the decision; what is missing isn't known.
    pub(super) fn point(&self, given: &[i64]) -> Point {
        let values = given.iter().copied().chain(std::iter::repeat(UNKNOWN));
        values.take(self.decision.answers()).collect()
    }

    /// A range for every answer of the decision; what is missing stays as at `start`.
    pub(super) fn area(&self, given: &[Interval], start: &[i64]) -> Area {
        let range = |(answer, &value): (usize, &i64)| match given.get(answer) {
            Some(&span) => sound(self.decision.shape(answer), span),
            None => Interval::point(value),
        };
        start.iter().enumerate().map(range).collect()
    }

    fn look(&mut self) -> Result<(), Spent> {
        if self.work >= self.most {
            return Err(Spent);
        }
        self.work += 1;
        Ok(())
    }

    /// What is picked at a point, whether or not it is possible.
    pub(super) fn pick(&mut self, point: &[i64]) -> Result<D::Pick, Spent> {
        self.look()?;
        Ok(self.decision.pick(point))
    }

    /// What is picked at a point; none if it isn't possible.
    pub(super) fn possible_pick(&mut self, point: &[i64]) -> Result<Option<D::Pick>, Spent> {
        self.look()?;
        let possible = self.decision.is_possible(point);
        Ok(possible.then(|| self.decision.pick(point)))
    }

    /// What is picked at a point, if it is possible and something else than `pick`.
    pub(super) fn other_pick(
        &mut self,
        point: &[i64],
        pick: &D::Pick,
    ) -> Result<Option<D::Pick>, Spent> {
        Ok(self.possible_pick(point)?.filter(|found| found != pick))
    }

    pub(super) fn is_possible(&mut self, point: &[i64]) -> Result<bool, Spent> {
        self.look()?;
        Ok(self.decision.is_possible(point))
    }

    /// Whether a pick holds over a box; it does where nothing is possible.
    pub(super) fn holds(&mut self, area: &[Interval], pick: &D::Pick) -> Result<Holds, Spent> {
        self.look()?;
        Ok(if self.decision.may_be_possible(area) {
            self.decision.holds(area, pick)
        } else {
            Holds::Proved
        })
    }

    pub(super) fn may_be_possible(&mut self, area: &[Interval]) -> Result<bool, Spent> {
        self.look()?;
        Ok(self.decision.may_be_possible(area))
    }

    /// The first answer of those named, else of all, that isn't a point, and its parts, the one nearer to `start` first.
    pub(super) fn parts(
        &self,
        area: &[Interval],
        named: &[usize],
        start: &[i64],
    ) -> Option<(usize, Interval, Interval)> {
        named
            .iter()
            .copied()
            .chain(0..area.len())
            .find_map(|answer| {
                let (span, value) = (*area.get(answer)?, *start.get(answer)?);
                let shape = self.decision.shape(answer);
                let (near, far) = halves(shape, span, self.decision.cuts(answer), value)?;
                Some((answer, near, far))
            })
    }
}
