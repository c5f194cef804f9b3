//! What balls do on the bowler's lane, by the closed results: those owned, and one from the shelf.

use super::consultation::Consultation;
use super::upgrade::{Against, Does};

/// What balls do for one throw, and for the throws that it may be as well.
#[derive(Debug, Default)]
pub(super) struct Motions {
    /// The lane as people say it.
    pub(super) lane: Option<String>,
    /// For each ball owned: the throw as it was told first, then the others.
    owned: Vec<Vec<Does>>,
}

impl Motions {
    /// What an owned ball does; none where that can't be told.
    pub(super) fn of_owned(&self, at: usize) -> Option<Does> {
        self.owned.get(at)?.first().copied()
    }
}

impl Consultation<'_> {
    /// What the balls owned do; nothing where speed or revs aren't known.
    pub(super) fn motions(&self) -> Motions {
        Motions::default()
    }

    /// How a ball from the shelf differs from the owned ball that comes nearest to it.
    pub(super) fn against_owned(&self, motions: &Motions, candidate: usize) -> Option<Against> {
        let _ = (motions, candidate);
        None
    }
}
