//! Where facts get their ranges: what a [`World`](super::World) is for one asker, for a whole box of answers.

use std::sync::Arc;

use super::interval::Interval;
use super::vocabulary::FactId;

/// The ranges of all facts over a box of answers and one list of candidates.
///
/// Ranges may be too wide, never too narrow.
pub trait Ranged {
    /// How many candidates there are.
    fn candidates(&self) -> usize;

    /// What a fact may be that is one for all candidates.
    fn scalar(&self, fact: FactId) -> Interval;

    /// What a fact of a candidate may be.
    fn bounds(&self, fact: FactId, candidate: usize) -> Interval;

    /// What a fact of each candidate may be, in their order.
    fn bounds_of_all(&self, fact: FactId) -> Arc<[Interval]> {
        (0..self.candidates())
            .map(|candidate| self.bounds(fact, candidate))
            .collect()
    }

    /// Whether a fact of the candidates moves alike for all of them: at every point of the box it lies as far above its lowest
    /// for one as for any other, and it is known for all or for none.
    fn moves_together(&self, _fact: FactId) -> bool {
        false
    }
}
