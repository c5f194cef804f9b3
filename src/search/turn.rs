//! Turning points: the nearest step of an answer, or of two, at which another pick comes.

use super::decision::Decision;
use crate::rules::Interval;

/// A step of one answer at which the pick changes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Turn<P> {
    /// Which answer.
    pub answer: usize,
    /// The last value that keeps the pick: next to `to` on the side of where the bowler stands. For words and bits, and for an answer
    /// that isn't known, where the bowler stands.
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
    /// Whether every value within the range was decided; false if the work limit came first.
    pub complete: bool,
    /// How many boxes and points were looked at.
    pub work: usize,
}

/// The nearest turns of one answer from `start`, every other answer as it is, looking at no more than `most` boxes and points.
///
/// Of an answer that isn't known at `start`: the lowest and the highest known value with another pick.
pub fn nearest<D: Decision>(
    decision: &D,
    start: &[i64],
    answer: usize,
    within: Interval,
    most: usize,
) -> Nearest<D::Pick> {
    let _ = (decision, start, answer, within, most);
    Nearest {
        turns: Vec::new(),
        complete: false,
        work: 0,
    }
}

/// The stretch around `start` of an answer of steps over which the pick stays.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stretch {
    /// The lowest value, and whether the next lower one within the range turns the pick.
    pub lowest: (i64, bool),
    /// The highest value, and whether the next higher one within the range turns the pick.
    pub highest: (i64, bool),
}

/// The stretch around where the bowler stands; none if the answer isn't known or the work limit came first.
pub fn stretch<D: Decision>(
    decision: &D,
    start: &[i64],
    answer: usize,
    within: Interval,
    most: usize,
) -> Option<Stretch> {
    let _ = (decision, start, answer, within, most);
    None
}

/// Two answers that turn the pick together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pair<P> {
    /// Which answers, each with its value there; the first has the lower number.
    pub steps: [(usize, i64); 2],
    /// What is picked there.
    pub pick: P,
}

/// The nearest two answers that turn the pick together, where no single one does.
///
/// Nearest by the sum of each answer's distance as a part of its range (a word or a bit counts as a whole range), then by number of
/// the answers, then by value. The second value is whether that was certain within `most` boxes and points.
pub fn pair<D: Decision>(
    decision: &D,
    start: &[i64],
    area: &[Interval],
    most: usize,
) -> (Option<Pair<D::Pick>>, bool) {
    let _ = (decision, start, area, most);
    (None, false)
}
