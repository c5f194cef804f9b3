//! Where a rule comes from, and how sure that is.

use std::fmt;

/// How sure a source is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Strength {
    /// Published, and the publication supports it well.
    Published,
    /// Published, but thinly supported.
    PublishedWeak,
    /// What the trade does, with nothing printed to point to.
    CommonPractice,
    /// Remembered, not looked up.
    FromMemory,
    /// Decided for these rules.
    OwnChoice,
    /// Follows from mathematics or physics.
    Derived,
}

impl Strength {
    /// Every strength, in the order of [`Strength::words`].
    pub(super) const ALL: [Strength; 6] = [
        Strength::Published,
        Strength::PublishedWeak,
        Strength::CommonPractice,
        Strength::FromMemory,
        Strength::OwnChoice,
        Strength::Derived,
    ];

    /// As files and people write it.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Strength::Published => "published",
            Strength::PublishedWeak => "published, weak",
            Strength::CommonPractice => "common practice",
            Strength::FromMemory => "from memory",
            Strength::OwnChoice => "own choice",
            Strength::Derived => "derived",
        }
    }
}

impl fmt::Display for Strength {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

/// Where a rule comes from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Source {
    pub(super) key: String,
    pub(super) title: String,
    pub(super) author: Option<String>,
    pub(super) year: Option<String>,
    pub(super) section: Option<String>,
    pub(super) at: Option<String>,
    pub(super) strength: Strength,
}

impl Source {
    /// The source of a rule that names no publication, such as `common practice`.
    pub(super) fn plain(strength: Strength) -> Source {
        Source {
            key: strength.words().to_owned(),
            title: strength.words().to_owned(),
            author: None,
            year: None,
            section: None,
            at: None,
            strength,
        }
    }

    /// The strengths that a rule may name in place of a key.
    pub(super) const PLAIN: [Strength; 4] = [
        Strength::CommonPractice,
        Strength::FromMemory,
        Strength::OwnChoice,
        Strength::Derived,
    ];

    /// The key that rules name it by.
    #[must_use]
    pub fn key(&self) -> &str {
        &self.key
    }

    /// The title of the publication, or the words of its strength.
    #[must_use]
    pub fn title(&self) -> &str {
        &self.title
    }

    /// Who wrote it.
    #[must_use]
    pub fn author(&self) -> Option<&str> {
        self.author.as_deref()
    }

    /// When it came out.
    #[must_use]
    pub fn year(&self) -> Option<&str> {
        self.year.as_deref()
    }

    /// The part of it that is meant; a rule may name its own.
    #[must_use]
    pub fn section(&self) -> Option<&str> {
        self.section.as_deref()
    }

    /// Where it is to be found.
    #[must_use]
    pub fn place(&self) -> Option<&str> {
        self.at.as_deref()
    }

    /// How sure it is.
    #[must_use]
    pub fn strength(&self) -> Strength {
        self.strength
    }
}

impl fmt::Display for Source {
    /// `Author, Title (year), section`, or just the words of its strength.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(author) = &self.author {
            write!(f, "{author}, ")?;
        }
        f.write_str(&self.title)?;
        if let Some(year) = &self.year {
            write!(f, " ({year})")?;
        }
        if let Some(section) = &self.section {
            write!(f, ", {section}")?;
        }
        Ok(())
    }
}
