//! The facts that rules may speak of.

use rustc_hash::FxHashMap;

use crate::notation::Notation;

/// The value of a fact that nobody knows. No condition on it holds, except `known: false`.
pub const UNKNOWN: i64 = i64::MIN;

/// The largest step a number may reach either way, so that columns fit 32 bits.
const WIDEST: i64 = i32::MAX as i64 - 1;

/// The most values a set may have: they are bits of an `i64`.
const MOST_IN_A_SET: usize = 62;

/// What values a fact can take.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A whole number of the notation's steps.
    Number {
        /// How it is written.
        notation: Notation,
        /// The lowest value, in steps.
        lowest: i64,
        /// The highest value, in steps.
        highest: i64,
    },
    /// One of these words; the value is its index.
    Choice(&'static [&'static str]),
    /// Yes (1) or no (0).
    Flag,
    /// Any of these words, at most 62; the value is a bit mask, the first word the lowest bit.
    Set(&'static [&'static str]),
}

/// Where a fact comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Origin {
    /// Told by the asker.
    Answer,
    /// Chosen or measured earlier in the same consultation.
    Settled,
    /// Computed from answers: one value for all candidates.
    Worked,
    /// A property of each candidate, whoever asks.
    Candidate,
    /// Computed for each candidate from the answers.
    Derived,
}

impl Origin {
    /// Whether the fact has one value for all candidates.
    #[must_use]
    pub fn is_scalar(self) -> bool {
        matches!(self, Origin::Answer | Origin::Settled | Origin::Worked)
    }
}

/// A fact that rules may speak of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fact {
    /// Its dotted name, such as `kite.shape`.
    pub name: &'static str,
    /// What it means, in a line.
    pub meaning: &'static str,
    /// What values it can take.
    pub kind: Kind,
    /// Where it comes from.
    pub origin: Origin,
    /// Where it comes from, in prose.
    pub from: &'static str,
    /// For a fact of candidates: the choice they are candidates of.
    pub subject: Option<&'static str>,
}

impl Fact {
    /// The words of a choice, a set or a flag (`no`, `yes`); none for a number.
    #[must_use]
    pub fn words(&self) -> &'static [&'static str] {
        match self.kind {
            Kind::Number { .. } => &[],
            Kind::Choice(words) | Kind::Set(words) => words,
            Kind::Flag => &["no", "yes"],
        }
    }
}

/// The place of a fact in its vocabulary.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FactId(pub u16);

/// All facts of a trade.
#[derive(Clone, Debug)]
pub struct Vocabulary {
    facts: Vec<Fact>,
    by_name: FxHashMap<&'static str, FactId>,
}

impl Vocabulary {
    /// Checks the facts and takes them, in their order.
    ///
    /// # Errors
    /// Says which fact is badly stated: a repeated or undotted name, no words or a repeated one, a set too large, bounds
    /// the wrong way round or beyond 32 bits, a fact of candidates without a subject or another with one.
    pub fn new(facts: Vec<Fact>) -> Result<Vocabulary, String> {
        let mut by_name = FxHashMap::with_capacity_and_hasher(facts.len(), Default::default());
        for (index, fact) in facts.iter().enumerate() {
            check(fact).map_err(|wrong| format!("fact {}: {wrong}", fact.name))?;
            let id = u16::try_from(index).map_err(|_| "too many facts".to_owned())?;
            if by_name.insert(fact.name, FactId(id)).is_some() {
                return Err(format!("fact {}: stated twice", fact.name));
            }
        }
        Ok(Vocabulary { facts, by_name })
    }

    /// The fact of this name.
    #[must_use]
    pub fn id(&self, name: &str) -> Option<FactId> {
        self.by_name.get(name).copied()
    }

    /// The fact with this id, which must be of this vocabulary.
    #[must_use]
    pub fn fact(&self, id: FactId) -> &Fact {
        &self.facts[usize::from(id.0)]
    }

    /// All facts in their order.
    #[must_use]
    pub fn facts(&self) -> &[Fact] {
        &self.facts
    }

    /// A value as people read it: numbers in their notation, words with spaces, sets as a list, flags as yes or no.
    #[must_use]
    pub fn print(&self, id: FactId, value: i64) -> String {
        if value == UNKNOWN {
            return "not known".to_owned();
        }
        match self.fact(id).kind {
            Kind::Number { notation, .. } => notation.write(value),
            Kind::Flag => if value == 0 { "no" } else { "yes" }.to_owned(),
            Kind::Choice(words) => {
                let word = usize::try_from(value)
                    .ok()
                    .and_then(|index| words.get(index));
                word.map_or_else(|| "not known".to_owned(), |word| spaced(word))
            }
            Kind::Set(words) => {
                let members = words
                    .iter()
                    .enumerate()
                    .filter(|(bit, _)| value >> bit & 1 == 1);
                listed(
                    &members.map(|(_, word)| spaced(word)).collect::<Vec<_>>(),
                    "and",
                )
            }
        }
    }
}

/// A word of a choice as people read it.
pub(super) fn spaced(word: &str) -> String {
    word.replace('_', " ")
}

/// `a, b and c`; `none` if there are none.
pub(super) fn listed(words: &[String], last: &str) -> String {
    match words {
        [] => "none".to_owned(),
        [only] => only.clone(),
        [most @ .., end] => format!("{} {last} {end}", most.join(", ")),
    }
}

fn check(fact: &Fact) -> Result<(), String> {
    let letters = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_';
    let parts: Vec<&str> = fact.name.split('.').collect();
    if parts.len() < 2
        || parts
            .iter()
            .any(|part| part.is_empty() || !part.chars().all(letters))
    {
        return Err("a name is small letters with a dot, such as kite.shape".to_owned());
    }
    match fact.kind {
        Kind::Number {
            lowest, highest, ..
        } => {
            if lowest > highest {
                return Err(format!("lowest {lowest} is above highest {highest}"));
            }
            if lowest < -WIDEST || highest > WIDEST {
                return Err(format!("bounds {lowest} and {highest} do not fit 32 bits"));
            }
        }
        Kind::Flag => {}
        Kind::Choice(words) | Kind::Set(words) => {
            if words.is_empty() {
                return Err("it has no words".to_owned());
            }
            if matches!(fact.kind, Kind::Set(_)) && words.len() > MOST_IN_A_SET {
                return Err(format!("a set has at most {MOST_IN_A_SET} words"));
            }
            if let Some((_, word)) = words
                .iter()
                .enumerate()
                .find(|(index, word)| words[..*index].contains(word))
            {
                return Err(format!("the word {word} is stated twice"));
            }
        }
    }
    match (fact.origin.is_scalar(), fact.subject) {
        (true, Some(_)) => Err("only a fact of candidates has a subject".to_owned()),
        (false, None) => Err("a fact of candidates names their subject".to_owned()),
        _ => Ok(()),
    }
}
