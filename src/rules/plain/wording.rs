//! What breaks the rules of wording: findings, each with its place and its sentence.

use std::collections::BTreeMap;
use std::fmt;

use super::super::reason::{Audience, Piece, Template, Texts, split};
use super::super::set::RuleSet;
use super::{MOST_WORDS, Sentence, form};
use crate::document::nearest;

/// What is wrong with a sentence.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
pub enum Misworded {
    /// A word that stands neither in the list of plain words nor in the glossary.
    NotPlain {
        /// The word, in small letters.
        word: String,
        /// The plain word that looks most like it, if one does.
        near: Option<String>,
    },
    /// Words that this reader should not meet.
    Avoided {
        /// The words.
        words: String,
        /// What to say in their place.
        say: String,
    },
    /// More than [`MOST_WORDS`] words.
    TooLong {
        /// How many they are, each placeholder with the most words that it prints.
        words: usize,
    },
}

impl fmt::Display for Misworded {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Misworded::NotPlain { word, near } => {
                write!(
                    f,
                    "`{word}` is neither a plain word nor explained in the glossary"
                )?;
                near.iter()
                    .try_for_each(|near| write!(f, "; did you mean `{near}`?"))
            }
            Misworded::Avoided { words, say } => write!(f, "`{words}` is avoided; say {say}"),
            Misworded::TooLong { words } => {
                write!(
                    f,
                    "the sentence has {words} words, and {MOST_WORDS} are the most"
                )
            }
        }
    }
}

/// Which text of a rule set a sentence stands in.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
pub enum TextPlace {
    /// The reason of the rule with this id.
    Because(String),
    /// What the rule with this id says to do.
    Then(String),
    /// Why something is assumed for this fact.
    Assumption(String),
    /// The meaning of this word.
    Meaning(String),
}

impl TextPlace {
    /// The id of the rule whose text it is, if it is a rule's.
    #[must_use]
    pub fn rule(&self) -> Option<&str> {
        match self {
            TextPlace::Because(rule) | TextPlace::Then(rule) => Some(rule),
            TextPlace::Assumption(_) | TextPlace::Meaning(_) => None,
        }
    }
}

impl fmt::Display for TextPlace {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            TextPlace::Because(rule) => write!(f, "rule `{rule}`, because"),
            TextPlace::Then(rule) => write!(f, "rule `{rule}`, then"),
            TextPlace::Assumption(fact) => write!(f, "assumption of `{fact}`"),
            TextPlace::Meaning(word) => write!(f, "meaning of `{word}`"),
        }
    }
}

/// A sentence of a rule set that breaks the rules of wording.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Wording {
    /// The file that states it; empty for the meaning of a word.
    pub file: String,
    /// The text.
    pub place: TextPlace,
    /// For whom; [`Audience::Newcomer`] if it is the same text for all.
    pub audience: Audience,
    /// What is wrong.
    pub misworded: Misworded,
    /// The sentence as written, placeholders in braces.
    pub sentence: String,
}

impl fmt::Display for Wording {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if !self.file.is_empty() {
            write!(f, "{}: ", self.file)?;
        }
        write!(f, "{}: {}: {}", self.place, self.misworded, self.sentence)
    }
}

/// Words as a phrase has them, one after the other, and how many.
type Phrases = BTreeMap<String, Vec<Vec<String>>>;

impl RuleSet {
    /// Every sentence of this set that breaks the rules of wording, in the order of file and place.
    ///
    /// For someone new a word must be plain or explained, and no sentence long; a regular bowler's text may use the trade's
    /// words; the fitter's is only held to the spelling. What a rule says to do, assumptions and meanings are for everybody, so
    /// they are held to the strictest. Texts of subjects that only the fitter reads count as the fitter's.
    #[must_use]
    pub fn wording(&self) -> Vec<Wording> {
        let phrases = self.explained();
        let mut found = Vec::new();
        let mut take = |file: &str, place: &TextPlace, template: &Template, audience, reader| {
            for (misworded, sentence) in self.misworded(&phrases, template, reader) {
                found.push(Wording {
                    file: file.to_owned(),
                    place: place.clone(),
                    audience,
                    misworded,
                    sentence,
                });
            }
        };
        for rule in &self.rules {
            let fitter_only = self.plain.fitter_only.contains(&rule.subject);
            let as_read_by = |audience| {
                if fitter_only {
                    Audience::Fitter
                } else {
                    audience
                }
            };
            let place = TextPlace::Because(rule.id.clone());
            for (audience, text) in different(&rule.because) {
                take(&rule.file, &place, text, audience, as_read_by(audience));
            }
            if let Some(then) = &rule.then {
                let place = TextPlace::Then(rule.id.clone());
                let reader = as_read_by(Audience::Newcomer);
                take(&rule.file, &place, then, Audience::Newcomer, reader);
            }
        }
        for assumption in &self.assumptions {
            let name = self.vocabulary.fact(assumption.fact).name;
            let place = TextPlace::Assumption(name.to_owned());
            for (audience, text) in different(&assumption.because) {
                take(&assumption.file, &place, text, audience, audience);
            }
        }
        for word in &self.glossary {
            let place = TextPlace::Meaning(word.word.clone());
            let template = plain_template(&word.meaning);
            take(
                "",
                &place,
                &template,
                Audience::Newcomer,
                Audience::Newcomer,
            );
        }
        found.sort();
        found
    }

    /// What breaks the rules of wording in a text for this audience, each with its sentence. The text may hold `{fact}`; braces
    /// that do not pair up or name no fact count as text.
    #[must_use]
    pub fn wording_of(&self, text: &str, audience: Audience) -> Vec<(Misworded, String)> {
        let template = self.template_of(text);
        self.misworded(&self.explained(), &template, audience)
    }

    fn template_of(&self, text: &str) -> Template {
        let pieces = split(text).ok().and_then(|pieces| {
            let piece = |piece: Result<&str, &str>| match piece {
                Ok(text) => Some(Piece::Text(text.to_owned())),
                Err(name) => self.vocabulary.id(name).map(Piece::Fact),
            };
            pieces.into_iter().map(piece).collect::<Option<Vec<_>>>()
        });
        pieces.map_or_else(
            || plain_template(text),
            |pieces| Template {
                written: text.to_owned(),
                pieces,
            },
        )
    }

    /// The words of the glossary with their forms, by their first word.
    fn explained(&self) -> Phrases {
        let mut phrases = Phrases::new();
        for word in &self.glossary {
            for form in std::iter::once(&word.word).chain(&word.also) {
                let words: Vec<String> = form
                    .to_lowercase()
                    .split([' ', '-'])
                    .map(str::to_owned)
                    .collect();
                if let Some(first) = words.first() {
                    phrases.entry(first.clone()).or_default().push(words);
                }
            }
        }
        phrases
    }

    fn misworded(
        &self,
        phrases: &Phrases,
        template: &Template,
        reader: Audience,
    ) -> Vec<(Misworded, String)> {
        let mut found = Vec::new();
        for sentence in Sentence::of(template, &self.vocabulary) {
            let mut take = |misworded| found.push((misworded, sentence.written.clone()));
            for instead in &self.plain.instead {
                if (instead.everywhere || reader != Audience::Fitter)
                    && holds(&sentence.words, &instead.words)
                {
                    take(Misworded::Avoided {
                        words: instead.words.join(" "),
                        say: instead.say.clone(),
                    });
                }
            }
            if reader != Audience::Fitter && sentence.length > MOST_WORDS {
                take(Misworded::TooLong {
                    words: sentence.length,
                });
            }
            if reader == Audience::Newcomer {
                self.strange(phrases, &sentence.words)
                    .into_iter()
                    .for_each(take);
            }
        }
        found
    }

    /// The words that are neither plain nor explained, each once.
    fn strange(&self, phrases: &Phrases, words: &[String]) -> Vec<Misworded> {
        let mut strange: Vec<Misworded> = Vec::new();
        if self.plain.words.is_empty() {
            return strange;
        }
        let mut rest = words;
        while let Some((word, after)) = rest.split_first() {
            let explained = phrases.get(word.trim_end_matches("'s"));
            let whole = |phrase: &&Vec<String>| begins(rest, phrase);
            let longest = explained.and_then(|them| them.iter().filter(whole).map(Vec::len).max());
            if let Some(count) = longest {
                rest = rest.get(count..).unwrap_or(&[]);
                continue;
            }
            rest = after;
            let avoided = || {
                let mut them = self.plain.instead.iter();
                them.any(|instead| holds(std::slice::from_ref(word), &instead.words))
            };
            // A word to avoid is told as such, once.
            if word.is_empty() || self.plain.has(word) || avoided() {
                continue;
            }
            let plain = self.plain.words.iter().map(String::as_str);
            let misworded = Misworded::NotPlain {
                word: word.clone(),
                near: nearest(word, plain).map(str::to_owned),
            };
            if !strange.contains(&misworded) {
                strange.push(misworded);
            }
        }
        strange
    }
}

/// The texts that differ, the newcomer's first, each with the first audience that reads it.
fn different(texts: &Texts) -> Vec<(Audience, &Template)> {
    let mut different: Vec<(Audience, &Template)> = Vec::new();
    for (audience, _) in Audience::KEYS {
        let text = texts.of(audience);
        if different.iter().all(|(_, other)| *other != text) {
            different.push((audience, text));
        }
    }
    different
}

fn plain_template(text: &str) -> Template {
    Template {
        written: text.to_owned(),
        pieces: vec![Piece::Text(text.to_owned())],
    }
}

/// Whether these words begin with this phrase; its last word may own something.
fn begins(words: &[String], phrase: &[String]) -> bool {
    words.len() >= phrase.len()
        && words
            .iter()
            .zip(phrase)
            .all(|(word, wanted)| word.trim_end_matches("'s") == wanted)
}

/// Whether the phrase stands among these words; a phrase of one word also in its regular forms.
fn holds(words: &[String], phrase: &[String]) -> bool {
    if let [only] = phrase {
        return words
            .iter()
            .any(|word| word == only || form::bases(word).contains(only));
    }
    !phrase.is_empty() && (0..words.len()).any(|at| begins(&words[at..], phrase))
}
