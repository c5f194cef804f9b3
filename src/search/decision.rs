//! What is decided, for which answers.

use std::fmt::Debug;

use crate::rules::Interval;

/// A value for each answer, in the order of the decision's answers; [`UNKNOWN`](crate::rules::UNKNOWN) where nobody knows.
pub type Point = Vec<i64>;

/// What each answer may be, in the same order.
pub type Area = Vec<Interval>;

/// How the values of an answer lie to each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    /// Whole steps in a row; one lies next to another.
    Steps,
    /// A few values without an order, from 0 on.
    Words,
    /// Bit masks; one step puts one bit in or takes it out.
    Bits,
}

/// Whether a pick holds over a box of answers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Holds {
    /// Certainly, at every point.
    Proved,
    /// It could not be shown.
    Open {
        /// The answers worth splitting, the most telling first. Others are split once these are points, so a list that leaves
        /// some out costs time and is never wrong.
        split: Vec<usize>,
    },
}

/// Something that is decided by answers.
pub trait Decision {
    /// What is picked.
    type Pick: Clone + PartialEq + Debug;

    /// How many answers there are.
    fn answers(&self) -> usize;

    /// How the values of an answer lie to each other.
    fn shape(&self, answer: usize) -> Shape;

    /// What is picked at one point.
    fn pick(&self, point: &[i64]) -> Self::Pick;

    /// Whether `pick` is picked at every possible point of `area`. Never says so wrongly.
    fn holds(&self, area: &[Interval], pick: &Self::Pick) -> Holds;

    /// Whether these answers can be given together.
    fn is_possible(&self, _point: &[i64]) -> bool {
        true
    }

    /// Whether some point of `area` can be given. False only where certainly none can; nothing more is then asked about it.
    fn may_be_possible(&self, _area: &[Interval]) -> bool {
        true
    }

    /// The values of an answer from which on something changes, lowest first: where splitting is most promising.
    fn cuts(&self, _answer: usize) -> &[i64] {
        &[]
    }
}
