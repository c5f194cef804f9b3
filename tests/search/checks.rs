//! Each search against trying every point: with any work limit what it says is so, and with plenty of work it says something.

use std::cell::Cell;

use proptest::prelude::*;
use spanwright::rules::Interval;
use spanwright::search::{
    Area, Decision, Holds, Outcome, Point, Shape, nearest, pair, settle, stretch,
};

use crate::plain;

/// More work than any of the small decisions can want.
pub const PLENTY: usize = 10_000_000;

/// A decision whose calls are counted, and whose bounds can be taken away.
#[derive(Debug)]
pub struct Counted<'d, D> {
    pub decision: &'d D,
    pub has_bounds: bool,
    calls: Cell<usize>,
}

impl<'d, D: Decision> Counted<'d, D> {
    pub fn new(decision: &'d D, has_bounds: bool) -> Self {
        Counted {
            decision,
            has_bounds,
            calls: Cell::new(0),
        }
    }

    /// How many calls there were since this was asked last.
    pub fn calls(&self) -> usize {
        self.calls.take()
    }

    fn count(&self) {
        self.calls.set(self.calls.get() + 1);
    }
}

impl<D: Decision> Decision for Counted<'_, D> {
    type Pick = D::Pick;

    fn answers(&self) -> usize {
        self.decision.answers()
    }

    fn shape(&self, answer: usize) -> Shape {
        self.decision.shape(answer)
    }

    fn pick(&self, point: &[i64]) -> D::Pick {
        self.count();
        self.decision.pick(point)
    }

    fn is_possible(&self, point: &[i64]) -> bool {
        self.decision.is_possible(point)
    }

    fn holds(&self, area: &[Interval], pick: &D::Pick) -> Holds {
        self.count();
        if self.has_bounds {
            self.decision.holds(area, pick)
        } else {
            Holds::Open { split: Vec::new() }
        }
    }

    fn may_be_possible(&self, area: &[Interval]) -> bool {
        !self.has_bounds || self.decision.may_be_possible(area)
    }

    fn cuts(&self, answer: usize) -> &[i64] {
        self.decision.cuts(answer)
    }
}

/// What is asked, and what the truth is read from: a decision of the same answers and picks, which is only ever asked at points.
#[derive(Debug)]
pub struct Asked<'a, D, T> {
    pub searched: Counted<'a, D>,
    pub truth: &'a T,
    pub start: &'a Point,
    pub area: &'a Area,
}

impl<P: Clone + PartialEq + std::fmt::Debug, D: Decision<Pick = P>, T: Decision<Pick = P>>
    Asked<'_, D, T>
{
    fn is_inside(&self, point: &Point) -> bool {
        point.iter().enumerate().all(|(answer, &value)| {
            plain::lies_in(self.truth.shape(answer), self.area[answer], value)
        })
    }

    pub fn settle(&self, most: usize) -> Result<(), TestCaseError> {
        let (truth, start) = (self.truth, self.start);
        let target = truth.pick(start);
        let can_turn = plain::turns(truth, self.area, &target);
        self.searched.calls();
        let outcome = settle(&self.searched, self.area, start, most);
        let calls = self.searched.calls();
        let work = match outcome {
            Outcome::Proved { work } => {
                prop_assert!(!can_turn);
                work
            }
            Outcome::Turns { at, pick, work } => {
                prop_assert!(self.is_inside(&at));
                prop_assert_eq!(plain::possible(truth, &at), Some(pick.clone()));
                prop_assert_ne!(pick, target.clone());
                let back = start.iter().enumerate().filter(|&(answer, &back)| {
                    at[answer] != back
                        && plain::lies_in(truth.shape(answer), self.area[answer], back)
                });
                for (answer, &back) in back.filter(|_| work < most) {
                    let less = plain::possible(truth, &plain::with(&at, answer, back));
                    prop_assert!(less.is_none_or(|pick| pick == target));
                }
                work
            }
            Outcome::NotSettled { work } => {
                prop_assert!(most < PLENTY);
                prop_assert_eq!(work, most);
                work
            }
        };
        prop_assert!(
            work <= most && calls <= work,
            "{} calls are not {} looks",
            calls,
            work
        );
        Ok(())
    }

    pub fn one_answer(&self, answer: usize, most: usize) -> Result<(), TestCaseError> {
        let within = self.area[answer];
        let truth = plain::nearest(self.truth, self.start, answer, within);
        self.searched.calls();
        let found = nearest(&self.searched, self.start, answer, within, most);
        prop_assert!(found.work <= most && self.searched.calls() <= found.work);
        if found.complete {
            prop_assert_eq!(&found.turns, &truth);
        } else {
            prop_assert!(most < PLENTY);
            prop_assert_eq!(found.work, most);
            prop_assert!(found.turns.iter().all(|turn| truth.contains(turn)));
        }
        let reach = stretch(&self.searched, self.start, answer, within, most);
        prop_assert!(self.searched.calls() <= most);
        if reach.is_some() || most == PLENTY {
            prop_assert_eq!(
                reach,
                plain::stretch(self.truth, self.start, answer, within)
            );
        }
        Ok(())
    }

    pub fn pair(&self, most: usize) -> Result<(), TestCaseError> {
        let (truth, start) = (self.truth, self.start);
        let nearest = plain::pair(truth, start, self.area);
        self.searched.calls();
        let (found, is_certain) = pair(&self.searched, start, self.area, most);
        prop_assert!(self.searched.calls() <= most);
        prop_assert!(is_certain || most < PLENTY);
        if is_certain {
            prop_assert_eq!(found, nearest);
        } else if let Some(found) = found {
            // Perhaps not the nearest, but a pair, so that there is a nearest one.
            prop_assert!(nearest.is_some());
            let target = truth.pick(start);
            let [(one, a), (other, b)] = found.steps;
            let at = plain::with(&plain::with(start, one, a), other, b);
            prop_assert_eq!(plain::possible(truth, &at), Some(found.pick.clone()));
            prop_assert_ne!(found.pick, target.clone());
            for (answer, value) in found.steps {
                let alone = plain::possible(truth, &plain::with(start, answer, value));
                prop_assert!(alone.is_none_or(|pick| pick == target));
            }
        }
        Ok(())
    }

    /// All of them.
    pub fn all(&self, most: usize) -> Result<(), TestCaseError> {
        self.settle(most)?;
        self.pair(most)?;
        for answer in 0..self.start.len() {
            self.one_answer(answer, most)?;
        }
        Ok(())
    }
}
