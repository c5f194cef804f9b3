//! Which ball comes next for a bowler, and why; or none. Plain results with getters; nothing here computes.

use super::{Assumed, Caution};

/// The answer to "which ball comes next, why, and when not to buy?".
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Upgrade {
    pub(crate) bowler: String,
    pub(crate) cautions: Vec<Caution>,
    pub(crate) assumptions: Vec<Assumed>,
    pub(crate) questions: Vec<String>,
    pub(crate) digest: String,
}

impl Upgrade {
    /// The customer's name, harmless to print; empty if none was given.
    pub fn bowler(&self) -> &str {
        &self.bowler
    }
    /// What to take care of; serious ones first.
    pub fn cautions(&self) -> &[Caution] {
        &self.cautions
    }
    /// What was assumed because it wasn't known.
    pub fn assumptions(&self) -> &[Assumed] {
        &self.assumptions
    }
    /// Questions the profile raises, for the fitter to ask.
    pub fn questions(&self) -> &[String] {
        &self.questions
    }
    /// Digest of rules and catalog.
    pub fn digest(&self) -> &str {
        &self.digest
    }
}
