//! Whether one pick holds over a box of answers.

use super::decision::{Decision, Point};
use crate::rules::Interval;

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
/// Points nearest to `start` are tried first, so that a turn differs from it in few answers.
pub fn settle<D: Decision>(
    decision: &D,
    area: &[Interval],
    start: &[i64],
    most: usize,
) -> Outcome<D::Pick> {
    let _ = (decision, area, start, most);
    Outcome::NotSettled { work: 0 }
}
