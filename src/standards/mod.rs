//! The governing bodies' limits as dated tables, and verdicts. Knows no rules of advice.

/// Whether a limit is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Kept, by a published limit.
    Pass,
    /// Broken.
    Fail,
    /// Not settled: nothing in print was read, a number is missing, or the scale can't tell.
    Ask,
}

/// What one clause says of one ball.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Finding {
    pub(crate) id: String,
    pub(crate) verdict: Verdict,
    pub(crate) about: String,
    pub(crate) says: String,
    pub(crate) clause: String,
    pub(crate) distance: Option<String>,
}

impl Finding {
    /// The limit's id in the table, such as `static-side`.
    pub fn id(&self) -> &str {
        &self.id
    }
    /// Pass, fail or ask.
    pub fn verdict(&self) -> Verdict {
        self.verdict
    }
    /// What it is about: "side weight".
    pub fn about(&self) -> &str {
        &self.about
    }
    /// What was found against what is allowed, in a sentence; for `ask`, what to ask.
    pub fn says(&self) -> &str {
        &self.says
    }
    /// Body, title, clause or edition, and how sure the source is.
    pub fn clause(&self) -> &str {
        &self.clause
    }
    /// How far inside (or outside) the limit: "1.20 oz inside".
    pub fn distance(&self) -> Option<&str> {
        self.distance.as_deref()
    }
}
