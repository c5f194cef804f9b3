//! Finds the trade words in a text, so that each is explained once, where it first appears.

use super::Term;

/// The words still to be explained, in the order of the glossary.
#[derive(Debug)]
pub(super) struct Unexplained<'g> {
    terms: Vec<&'g Term>,
}

impl<'g> Unexplained<'g> {
    pub(super) fn new(terms: &'g [Term]) -> Unexplained<'g> {
        Unexplained {
            terms: terms.iter().collect(),
        }
    }

    /// Takes the words that `text` uses, in the order in which they appear there.
    pub(super) fn take(&mut self, text: &str) -> Vec<&'g Term> {
        let text = text.to_lowercase();
        let mut used: Vec<(usize, &Term)> = Vec::new();
        self.terms.retain(|term| match first_use(&text, term) {
            Some(at) => {
                used.push((at, term));
                false
            }
            None => true,
        });
        used.sort_by_key(|(at, _)| *at);
        used.into_iter().map(|(_, term)| term).collect()
    }
}

/// Where a lower-case text first uses the term in any of its forms.
fn first_use(text: &str, term: &Term) -> Option<usize> {
    let forms = std::iter::once(&term.word).chain(&term.also);
    forms
        .filter_map(|form| whole_word(text, &form.to_lowercase()))
        .min()
}

/// Where `word` stands in `text` with no letter or digit on either side.
fn whole_word(text: &str, word: &str) -> Option<usize> {
    let apart = |neighbour: Option<char>| neighbour.is_none_or(|c| !c.is_alphanumeric());
    if word.is_empty() {
        return None;
    }
    text.match_indices(word).map(|(at, _)| at).find(|&at| {
        apart(text[..at].chars().next_back()) && apart(text[at + word.len()..].chars().next())
    })
}
