//! What is assumed when nobody knows, and what the words mean.

use super::reason::{Audience, Texts};
use super::source::Source;
use super::vocabulary::FactId;

/// What stands in for an answer that nobody gave.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Assumption {
    pub(super) fact: FactId,
    pub(super) value: Option<i64>,
    pub(super) needed: bool,
    pub(super) because: Texts,
    pub(super) source: Source,
    pub(super) file: String,
}

impl Assumption {
    /// The answer it stands in for.
    #[must_use]
    pub fn fact(&self) -> FactId {
        self.fact
    }

    /// The assumed value in steps; `None` if the answer stays unknown.
    #[must_use]
    pub fn value(&self) -> Option<i64> {
        self.value
    }

    /// Whether what hangs on the answer can't be judged without it. If not, and there is no value either, the rules get
    /// along without.
    #[must_use]
    pub fn is_needed(&self) -> bool {
        self.needed
    }

    /// Why this is a fair assumption, or why there is none.
    #[must_use]
    pub fn because(&self, audience: Audience) -> &str {
        self.because.written(audience)
    }

    /// Where it comes from.
    #[must_use]
    pub fn source(&self) -> &Source {
        &self.source
    }

    /// The file that states it.
    #[must_use]
    pub fn file(&self) -> &str {
        &self.file
    }
}

/// A word of the trade and its meaning.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Word {
    pub(super) word: String,
    pub(super) also: Vec<String>,
    pub(super) meaning: String,
}

impl Word {
    /// The word.
    #[must_use]
    pub fn word(&self) -> &str {
        &self.word
    }

    /// Its other forms, such as the plural.
    #[must_use]
    pub fn also(&self) -> &[String] {
        &self.also
    }

    /// What it means.
    #[must_use]
    pub fn meaning(&self) -> &str {
        &self.meaning
    }
}
