//! Where facts get their values.

use std::borrow::Cow;

use super::vocabulary::FactId;

/// The values of all facts for one asker and one list of candidates.
///
/// Values are whole steps of the fact's notation; a choice is its index, a flag 0 or 1, a set a bit mask.
pub trait World {
    /// How many candidates there are.
    fn candidates(&self) -> usize;

    /// The value of a fact that is one for all candidates, or [`UNKNOWN`](super::UNKNOWN).
    fn scalar(&self, fact: FactId) -> i64;

    /// The values of a fact of the candidates, one each in their order. A column that is too short counts as unknown
    /// from its end on.
    fn column(&self, fact: FactId) -> Cow<'_, [i64]>;

    /// Breaks ties of the total: the lower value goes first. Asked once, when a chooser is compiled.
    fn tie(&self, candidate: usize) -> i64 {
        i64::try_from(candidate).unwrap_or(i64::MAX)
    }
}
