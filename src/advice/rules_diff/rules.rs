//! Which rules, assumptions and words of two sets are otherwise.

use std::collections::BTreeMap;

use crate::rules::{Assumption, Audience, Part, Rule, RuleSet};

/// A rule or an assumption that is otherwise.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Change {
    /// The rule's id; of an assumption `assumption FACT`.
    pub id: String,
    /// The file it stands in now, or stood in.
    pub file: String,
    /// How it is otherwise.
    pub kind: ChangeKind,
    /// What exactly, where it is changed: each part that isn't as it was.
    pub parts: Vec<PartChange>,
}

/// A part of a rule or of an assumption that isn't as it was.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PartChange {
    /// Which part, as `RuleSet::parts_of` names it; of an assumption `value`.
    pub name: &'static str,
    /// What it said that it doesn't say now; none if there was nothing of it.
    pub before: Option<String>,
    /// What it says now that it didn't say; none if there is nothing of it.
    pub after: Option<String>,
}

/// A word that is explained otherwise.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WordChange {
    /// The word.
    pub word: String,
    /// What it meant; none if it wasn't explained.
    pub before: Option<String>,
    /// What it means now; none if it isn't explained.
    pub after: Option<String>,
}

/// How a rule is otherwise.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ChangeKind {
    /// It is new.
    Added,
    /// It is gone.
    Removed,
    /// It holds in other situations or does something else.
    Changed,
    /// Only its words or its source are otherwise.
    Text,
}

impl ChangeKind {
    /// The word for it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            ChangeKind::Added => "added",
            ChangeKind::Removed => "removed",
            ChangeKind::Changed => "changed",
            ChangeKind::Text => "text",
        }
    }
}

const AUDIENCES: [Audience; 3] = [Audience::Newcomer, Audience::League, Audience::Fitter];

/// Something with an id that can be compared.
enum Stated<'r> {
    Rule(&'r Rule),
    Assumption(&'r Assumption),
}

pub(super) fn changes(old: &RuleSet, new: &RuleSet) -> Vec<Change> {
    let sets = (old, new);
    let (old, new) = (stated(old), stated(new));
    let mut ids: Vec<&String> = old.keys().chain(new.keys()).collect();
    ids.sort_unstable();
    ids.dedup();
    let change = |id: &String| {
        let (file, kind) = match (old.get(id), new.get(id)) {
            (None, Some(new)) => (new.file(), ChangeKind::Added),
            (Some(old), None) => (old.file(), ChangeKind::Removed),
            (Some(old), Some(new)) => (new.file(), old.against(new)?),
            (None, None) => return None,
        };
        let parts = match (old.get(id), new.get(id)) {
            (Some(old), Some(new)) => parts_between(old.parts(sets.0), new.parts(sets.1)),
            _ => Vec::new(),
        };
        Some(Change {
            id: id.clone(),
            file: file.to_owned(),
            kind,
            parts,
        })
    };
    ids.into_iter().filter_map(change).collect()
}

/// The parts that only one has, by name.
fn parts_between(old: Vec<Part>, new: Vec<Part>) -> Vec<PartChange> {
    let mut names: Vec<&'static str> = Vec::new();
    for part in old.iter().chain(&new) {
        if !names.contains(&part.name) {
            names.push(part.name);
        }
    }
    let only = |name: &str, of: &[Part], not: &[Part]| {
        let parts = of.iter().filter(|part| part.name == name);
        let parts = parts.filter(|part| !not.contains(part));
        let said: Vec<&str> = parts.map(|part| &*part.said).collect();
        (!said.is_empty()).then(|| said.join(", "))
    };
    let change = |name| PartChange {
        name,
        before: only(name, &old, &new),
        after: only(name, &new, &old),
    };
    let changes = names.into_iter().map(change);
    let told = changes.filter(|change| change.before.is_some() || change.after.is_some());
    told.collect()
}

/// The words that are explained otherwise, in the order of the alphabet.
pub(super) fn words(old: &RuleSet, new: &RuleSet) -> Vec<WordChange> {
    let explained = |set: &RuleSet| -> BTreeMap<String, (String, Vec<String>)> {
        let words = set.glossary().iter();
        let said = words.map(|word| (word.meaning().to_owned(), word.also().to_vec()));
        let names = set.glossary().iter().map(|word| word.word().to_owned());
        names.zip(said).collect()
    };
    let (old, new) = (explained(old), explained(new));
    let mut words: Vec<&String> = old.keys().chain(new.keys()).collect();
    words.sort_unstable();
    words.dedup();
    let meaning = |found: Option<&(String, Vec<String>)>| {
        let (meaning, also) = found?;
        Some(match also.is_empty() {
            true => meaning.clone(),
            false => format!("{meaning} (also {})", also.join(", ")),
        })
    };
    let change = |word: &String| {
        let (before, after) = (meaning(old.get(word)), meaning(new.get(word)));
        (before != after).then(|| WordChange {
            word: word.clone(),
            before,
            after,
        })
    };
    words.into_iter().filter_map(change).collect()
}

fn stated(set: &RuleSet) -> BTreeMap<String, Stated<'_>> {
    let rules = set.rules().iter();
    let rules = rules.map(|rule| (rule.id().to_owned(), Stated::Rule(rule)));
    let assumptions = set.assumptions().iter().map(|assumption| {
        let fact = set.vocabulary().fact(assumption.fact()).name;
        let id = format!("assumption {fact}");
        (id, Stated::Assumption(assumption))
    });
    rules.chain(assumptions).collect()
}

impl Stated<'_> {
    fn file(&self) -> &str {
        match self {
            Stated::Rule(rule) => rule.file(),
            Stated::Assumption(assumption) => assumption.file(),
        }
    }

    /// What it states, part by part.
    fn parts(&self, set: &RuleSet) -> Vec<Part> {
        match self {
            Stated::Rule(rule) => set.parts_of(rule),
            Stated::Assumption(assumption) => {
                let said = match assumption.value() {
                    Some(value) => set.vocabulary().print(assumption.fact(), value),
                    None if assumption.is_needed() => "needed".to_owned(),
                    None => "not known".to_owned(),
                };
                let name = "value";
                vec![Part { name, said }]
            }
        }
    }

    /// How the other is otherwise, if it is.
    fn against(&self, other: &Stated<'_>) -> Option<ChangeKind> {
        let (same, alike) = match (self, other) {
            (Stated::Rule(one), Stated::Rule(other)) => {
                let words = |rule: &Rule| {
                    let texts = AUDIENCES.map(|reader| rule.because(reader).to_owned());
                    let then = rule.then().map(str::to_owned);
                    (
                        texts,
                        then,
                        rule.source().to_string(),
                        rule.practice().to_vec(),
                    )
                };
                (one.acts_like(other), words(one) == words(other))
            }
            (Stated::Assumption(one), Stated::Assumption(other)) => {
                let words = |assumed: &Assumption| {
                    let texts = AUDIENCES.map(|reader| assumed.because(reader).to_owned());
                    (texts, assumed.source().to_string())
                };
                let same = one.value() == other.value() && one.is_needed() == other.is_needed();
                (same, words(one) == words(other))
            }
            _ => (false, false),
        };
        match (same, alike) {
            (true, true) => None,
            (true, false) => Some(ChangeKind::Text),
            (false, _) => Some(ChangeKind::Changed),
        }
    }
}
