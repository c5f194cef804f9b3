//! How sure a limit is.

/// How sure the source of a limit is. Only what was published decides; the rest asks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Strength {
    /// Read in the body's own text.
    Published,
    /// Read second-hand or in translation.
    PublishedWeak,
    /// Follows from published rows by arithmetic.
    Derived,
    /// Remembered, not looked up.
    FromMemory,
    /// Looked for, and not found.
    NotFound,
}

impl Strength {
    /// Every strength with its word.
    pub(super) const WORDS: [(&'static str, Strength); 5] = [
        ("published", Strength::Published),
        ("published, weak", Strength::PublishedWeak),
        ("derived", Strength::Derived),
        ("from memory", Strength::FromMemory),
        ("not found", Strength::NotFound),
    ];

    /// As files and people write it.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Strength::Published => "published",
            Strength::PublishedWeak => "published, weak",
            Strength::Derived => "derived",
            Strength::FromMemory => "from memory",
            Strength::NotFound => "not found",
        }
    }

    /// Whether a limit this sure may say pass or fail.
    pub(super) fn decides(self) -> bool {
        !matches!(self, Strength::FromMemory | Strength::NotFound)
    }
}
