//! What one clause says of one ball.

use super::strength::Strength;

/// Whether a limit is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Kept, by a published limit.
    Pass,
    /// Broken.
    Fail,
    /// Not settled: nothing in print was read, or a number is missing.
    Ask,
}

impl Verdict {
    /// As people and programs read it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Verdict::Pass => "pass",
            Verdict::Fail => "fail",
            Verdict::Ask => "ask",
        }
    }
}

/// What one clause says of one ball.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Finding {
    pub(crate) id: String,
    pub(crate) row: Option<String>,
    pub(crate) verdict: Verdict,
    pub(crate) about: String,
    pub(crate) says: String,
    pub(crate) clause: String,
    pub(crate) strength: Option<Strength>,
    pub(crate) distance: Option<String>,
    pub(crate) close: bool,
}

impl Finding {
    /// What is limited, as the table names it, such as `static-side`.
    pub fn id(&self) -> &str {
        &self.id
    }
    /// The id of the row of the table that decided; none if no row holds for such a ball or it isn't known which.
    pub fn row(&self) -> Option<&str> {
        self.row.as_deref()
    }
    /// Pass, fail or ask.
    pub fn verdict(&self) -> Verdict {
        self.verdict
    }
    /// What it is about: "side weight", "thumb hole: depth".
    pub fn about(&self) -> &str {
        &self.about
    }
    /// What was found against what is allowed, in a sentence or two; for `ask`, what to ask or measure.
    pub fn says(&self) -> &str {
        &self.says
    }
    /// Body, title, clause or edition, and how sure the source is.
    pub fn clause(&self) -> &str {
        &self.clause
    }
    /// How sure the source is; none if there is no row.
    pub fn strength(&self) -> Option<Strength> {
        self.strength
    }
    /// How far inside or outside the limit: "1.2 oz inside". Where only memory knows the limit, how far from half of it, which
    /// is what to aim at.
    pub fn distance(&self) -> Option<&str> {
        self.distance.as_deref()
    }
    /// Whether it lies so near the limit that another scale could say otherwise. The verdict stands; check it again.
    pub fn is_close(&self) -> bool {
        self.close
    }
}
