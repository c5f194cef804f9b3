//! Values in a row over which one pick stays, and how a customer is told of them: in steps people count in, and just as true.

use super::chain::Choice;
use super::phrases::{Phrase, Step};
use super::reason::Texts;
use super::told::Told;
use crate::rules::Interval;
use crate::search::{self, Decision};

/// Boxes and points looked at for one stretch.
const FOR_ONE: usize = 100_000;

/// A stretch of one answer over which the pick stays; values that can't be given don't count.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stretch {
    pub(crate) lowest: (i64, String),
    pub(crate) highest: (i64, String),
    pub(crate) turns: (bool, bool),
}

impl Stretch {
    /// The lowest value with this pick.
    pub fn lowest(&self) -> (i64, &str) {
        (self.lowest.0, &self.lowest.1)
    }

    /// The highest value with this pick.
    pub fn highest(&self) -> (i64, &str) {
        (self.highest.0, &self.highest.1)
    }

    /// Whether the next lower value has another pick; if not, no lower value can be given.
    pub fn turns_below(&self) -> bool {
        self.turns.0
    }

    /// Whether the next higher value has another pick; if not, no higher value can be given.
    pub fn turns_above(&self) -> bool {
        self.turns.1
    }

    /// The multiples of a step that lie within, the lowest and the highest of them.
    pub(super) fn rounded(&self, step: i64) -> Option<(i64, i64)> {
        rounded_in((self.lowest.0, self.highest.0), step)
    }

    /// The beginning of a sentence about these values, counted in steps, that is true of each of them; none where no multiple of the
    /// step lies within.
    pub(super) fn said(
        &self,
        phrase: &Phrase,
        step: i64,
        print: impl Fn(i64) -> String,
    ) -> Option<Texts> {
        let (low, high) = self.rounded(step)?;
        match self.turns {
            (_, false) if self.turns.0 => phrase.step(Step::From(&print(low))),
            (false, true) => {
                // Everything below it lies within, and something does.
                let keeps = (self.highest.0 + 1).div_euclid(step) * step;
                let said = phrase.step(Step::Below(&print(keeps), &print(high)));
                said.filter(|_| keeps > self.lowest.0)
            }
            _ if low == high => phrase.step(Step::At(&print(low))),
            _ => phrase.step(Step::Between(&print(low), &print(high))),
        }
    }
}

/// The lowest and the highest multiple of a step from one value to another.
pub(super) fn rounded_in((lowest, highest): (i64, i64), step: i64) -> Option<(i64, i64)> {
    let step = step.max(1);
    let low = -(-lowest).div_euclid(step) * step;
    let high = highest.div_euclid(step) * step;
    (low <= high).then_some((low, high))
}

/// The stretch around a value that turns, told on from there away from the start; `upward` says on which side of the start it lies.
pub(super) fn beyond(
    told: &Told<'_, '_>,
    point: &[i64],
    answer: usize,
    upward: bool,
) -> Option<Stretch> {
    let (range, value) = (told.range(answer), point[answer]);
    let away = match upward {
        true => Interval::between(value, range.highest()),
        false => Interval::between(range.lowest(), value),
    };
    let found = search::stretch(told, point, answer, away, FOR_ONE)?;
    let end = |value: i64| (value, told.print(answer, value));
    Some(Stretch {
        lowest: end(found.lowest.0),
        highest: end(found.highest.0),
        turns: match upward {
            true => (true, found.highest.1),
            false => (found.lowest.1, true),
        },
    })
}

/// Every stretch of an answer of steps with what is picked there, lowest first, at most so many, and whether these are all.
pub(super) fn stretches(
    told: &Told<'_, '_>,
    start: &[i64],
    answer: usize,
    most: usize,
) -> (Vec<(Stretch, Choice)>, bool) {
    let range = told.range(answer);
    let mut point = start.to_vec();
    let mut found: Vec<(Stretch, Choice)> = Vec::new();
    let mut next = range.lowest();
    loop {
        // What can't be given lies at the ends alone, or not far from it.
        let first = (next..=range.highest()).find(|&value| {
            point[answer] = value;
            told.is_possible(&point)
        });
        let Some(first) = first else {
            return (found, true);
        };
        if found.len() == most {
            return (found, false);
        }
        let rest = Interval::between(first, range.highest());
        let Some(on) = search::stretch(told, &point, answer, rest, FOR_ONE) else {
            return (found, false);
        };
        let (last, turns) = on.highest;
        let stretch = Stretch {
            lowest: (first, told.print(answer, first)),
            highest: (last, told.print(answer, last)),
            turns: (!found.is_empty(), turns),
        };
        found.push((stretch, told.pick(&point)));
        if !turns {
            return (found, true);
        }
        next = last + 1;
    }
}
