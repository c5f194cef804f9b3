//! Which rules and assumptions of two sets are otherwise.

use std::collections::BTreeMap;

use crate::rules::{Assumption, Audience, Rule, RuleSet};

/// A rule or an assumption that is otherwise.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Change {
    /// The rule's id; of an assumption `assumption FACT`.
    pub id: String,
    /// The file it stands in now, or stood in.
    pub file: String,
    /// How it is otherwise.
    pub kind: ChangeKind,
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
        Some(Change {
            id: id.clone(),
            file: file.to_owned(),
            kind,
        })
    };
    ids.into_iter().filter_map(change).collect()
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
