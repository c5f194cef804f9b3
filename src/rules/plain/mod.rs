//! Plain words: what texts for someone new may use, what no customer should read, and what breaks that.
//!
//! A text is plain when each of its words is in the list or is a form of one that is, or is explained in the glossary, and
//! no sentence is long. The list is data (`plain_words` in a rule file), so that a shop may add its own words.

mod form;
mod sentence;
mod wording;

use std::collections::BTreeSet;

pub(super) use self::sentence::Sentence;
pub use self::wording::{Misworded, TextPlace, Wording};

/// The most words that a sentence for a customer may have.
pub const MOST_WORDS: usize = 20;

/// Words that texts avoid, and what to say in their place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Instead {
    /// The words to avoid, in small letters.
    pub(super) words: Vec<String>,
    pub(super) say: String,
    /// Whether the fitter's texts avoid them too, as with a spelling.
    pub(super) everywhere: bool,
}

/// The words of plain texts.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct PlainWords {
    /// In small letters; empty where nobody gave a list, and then no word is held against it.
    pub(super) words: BTreeSet<String>,
    pub(super) instead: Vec<Instead>,
    /// The subjects whose texts only the fitter reads.
    pub(super) fitter_only: BTreeSet<String>,
}

impl PlainWords {
    /// Whether this word, in small letters, is in the list or a regular form of a word that is.
    pub(super) fn has(&self, word: &str) -> bool {
        self.words.contains(word)
            || form::bases(word)
                .iter()
                .any(|base| self.words.contains(base))
    }
}
