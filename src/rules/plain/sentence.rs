//! Texts taken apart: sentences, and the words of each.

use super::super::reason::{Piece, Template};
use super::super::vocabulary::{FactId, Kind, Vocabulary, spaced};

/// A sentence of a text.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(in super::super) struct Sentence {
    /// As written, placeholders as `{fact}`.
    pub(in super::super) written: String,
    /// The words in small letters; an empty one stands for a number, a placeholder or a mark that parts phrases.
    pub(in super::super) words: Vec<String>,
    /// How many words a reader meets, numbers and the words of placeholders included.
    pub(in super::super) length: usize,
}

impl Sentence {
    /// The sentences of a text. One ends at a full stop, a question mark or an exclamation mark before a space.
    pub(in super::super) fn of(template: &Template, vocabulary: &Vocabulary) -> Vec<Sentence> {
        let mut sentences = Vec::new();
        let mut open = Sentence::default();
        for piece in &template.pieces {
            match piece {
                Piece::Fact(fact) => open.take_fact(*fact, vocabulary),
                Piece::Text(text) => {
                    let mut rest = text.as_str();
                    while let Some(end) = end_of_sentence(rest) {
                        let (head, tail) = rest.split_at(end);
                        open.take_text(head);
                        sentences.push(std::mem::take(&mut open));
                        rest = tail;
                    }
                    open.take_text(rest);
                }
            }
        }
        sentences.push(open);
        for sentence in &mut sentences {
            sentence.written = sentence.written.trim().to_owned();
        }
        sentences.retain(|sentence| sentence.length > 0);
        sentences
    }

    fn take_fact(&mut self, fact: FactId, vocabulary: &Vocabulary) {
        self.written += &format!("{{{}}}", vocabulary.fact(fact).name);
        self.words.push(String::new());
        self.length += most_words(fact, vocabulary);
    }

    fn take_text(&mut self, text: &str) {
        self.written += text;
        for chunk in text.split_whitespace() {
            self.length += usize::from(chunk.contains(char::is_alphanumeric));
            if chunk.contains(|c: char| c.is_ascii_digit()) {
                self.words.push(String::new());
            } else {
                self.words.extend(words(chunk));
            }
        }
    }
}

/// The words of a piece without spaces, an empty one for each mark between or after them but a hyphen.
fn words(chunk: &str) -> Vec<String> {
    let mut words = Vec::new();
    let mut open = String::new();
    for c in chunk.chars() {
        if c.is_alphabetic() || c == '\'' {
            open.extend(c.to_lowercase());
            continue;
        }
        words.push(std::mem::take(&mut open));
        if c != '-' {
            words.push(String::new());
        }
    }
    words.push(open);
    let last = words.len() - 1;
    let whole = words.into_iter().enumerate().map(|(index, word)| {
        let word = word.trim_matches('\'').to_owned();
        (index, word)
    });
    // A mark leaves an empty word of its own; the empty ends between two marks add nothing.
    whole
        .filter(|(index, word)| !word.is_empty() || *index < last)
        .map(|(_, word)| word)
        .collect()
}

fn end_of_sentence(text: &str) -> Option<usize> {
    let ends = text.match_indices(['.', '!', '?']);
    let mut ends = ends.map(|(at, mark)| at + mark.len());
    ends.find(|&end| {
        let next = text[end..].chars().next();
        next.is_some_and(char::is_whitespace)
    })
}

/// The most words that a value of this fact prints; of a set, two values, as hardly anybody names more.
fn most_words(fact: FactId, vocabulary: &Vocabulary) -> usize {
    let count = |text: &str| text.split_whitespace().count();
    match vocabulary.fact(fact).kind {
        Kind::Flag => 1,
        Kind::Number {
            lowest, highest, ..
        } => {
            let values = [
                lowest,
                lowest.saturating_add(1),
                highest.saturating_sub(1),
                highest,
            ];
            let printed = values.map(|value| count(&vocabulary.print(fact, value)));
            printed.into_iter().max().unwrap_or(1)
        }
        Kind::Choice(words) => longest(words).first().copied().unwrap_or(1),
        Kind::Set(words) => {
            let longest = longest(words);
            longest.iter().take(2).sum::<usize>() + usize::from(longest.len() > 1)
        }
    }
}

/// How many words each of these prints, most first.
fn longest(words: &[&str]) -> Vec<usize> {
    let count = |word: &&str| spaced(word).split_whitespace().count();
    let mut counts: Vec<usize> = words.iter().map(count).collect();
    counts.sort_unstable_by(|a, b| b.cmp(a));
    counts
}
