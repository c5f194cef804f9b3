//! How a text is to look, and for whom.

use crate::rules::{Audience, Word};

/// The narrowest page that can still be read.
const NARROWEST: usize = 30;

/// Width, colour, reader, and the words to explain.
#[derive(Clone, Debug)]
pub struct Look {
    width: usize,
    colour: bool,
    audience: Audience,
    glossary: Vec<Term>,
}

/// A word of the trade with the sentence that explains it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Term {
    /// The word as it is explained.
    pub word: String,
    /// Other forms that count as the same word, such as the plural.
    pub also: Vec<String>,
    /// What it means, in a sentence.
    pub meaning: String,
}

impl From<&Word> for Term {
    fn from(word: &Word) -> Term {
        Term {
            word: word.word().to_owned(),
            also: word.also().to_vec(),
            meaning: word.meaning().to_owned(),
        }
    }
}

impl Look {
    /// Plain, 80 columns wide, nothing explained.
    #[must_use]
    pub fn plain(audience: Audience) -> Look {
        Look {
            width: 80,
            colour: false,
            audience,
            glossary: Vec::new(),
        }
    }

    /// With another width in columns, at least 30.
    #[must_use]
    pub fn wide(self, width: usize) -> Look {
        Look {
            width: width.max(NARROWEST),
            ..self
        }
    }

    /// With bold and one accent colour, or without.
    #[must_use]
    pub fn coloured(self, colour: bool) -> Look {
        Look { colour, ..self }
    }

    /// With words that are explained to newcomers where they first appear.
    #[must_use]
    pub fn explaining(self, terms: impl IntoIterator<Item = impl Into<Term>>) -> Look {
        Look {
            glossary: terms.into_iter().map(Into::into).collect(),
            ..self
        }
    }

    /// Width in columns.
    #[must_use]
    pub fn width(&self) -> usize {
        self.width
    }

    /// True if terminal colours may be used.
    #[must_use]
    pub fn is_coloured(&self) -> bool {
        self.colour
    }

    /// Whose words are used.
    #[must_use]
    pub fn audience(&self) -> Audience {
        self.audience
    }

    /// The words to explain.
    #[must_use]
    pub fn glossary(&self) -> &[Term] {
        &self.glossary
    }
}
