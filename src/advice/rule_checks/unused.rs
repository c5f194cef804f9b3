//! Facts that nothing looks at, and words of the glossary that no text contains.

use std::collections::BTreeSet;

use super::super::shop::Shop;
use super::behind::behind;
use crate::rules::{Audience, FactId, Kind, Origin, RuleSet, Word};
use crate::search::{Finding, FindingKind, Findings};
use crate::vocabulary::{bench, measures};

/// Facts that no built-in rule needs and that are there for a shop's own rules.
const FOR_A_SHOP: &[&str] = &[
    "hand.ring_span",
    "ball.finish",
    "ball.price",
    "ball.intermediate",
    "ball.colours",
    "match.price_drilled",
    "roll.most_turn",
    "roll.sideways",
];

/// What the program itself writes to a customer beside the texts of the rules, as far as it uses words of the trade.
const PROGRAM_WORDS: &str = include_str!("program_words.txt");

/// Facts that no rule, no assumption and no computing looks at.
///
/// An answer that nothing looks at is asked for nothing. Whatever else is settled or worked out costs nobody anything, and what the
/// built-in rules look at is unused because a shop wanted it so: both may be meant.
pub(super) fn facts(shop: &Shop, built_in: &RuleSet, findings: &mut Findings) {
    let vocabulary = shop.vocabulary();
    let (looked, usual) = (looked_at(shop.rules()), looked_at(built_in));
    for (fact, origin) in vocabulary
        .facts()
        .iter()
        .filter_map(|fact| Some((vocabulary.id(fact.name)?, fact.origin)))
    {
        if looked.contains(&fact) {
            findings.absent(FindingKind::UnusedFact);
        } else {
            findings.found(Finding::UnusedFact {
                fact,
                may_be_meant: origin != Origin::Answer || usual.contains(&fact),
            });
        }
    }
}

/// The facts that these rules look at, with all that they follow from, and those that are there for other ends.
fn looked_at(rules: &RuleSet) -> BTreeSet<FactId> {
    let vocabulary = rules.vocabulary();
    let id = |name: &str| vocabulary.id(name);
    let mut looked: BTreeSet<FactId> = BTreeSet::new();
    looked.extend(
        rules
            .rules()
            .iter()
            .flat_map(|rule| rule.facts().iter().copied()),
    );
    looked.extend(
        rules
            .assumptions()
            .iter()
            .map(|assumption| assumption.fact()),
    );
    // What is measured is drilled; the bench is reckoned with.
    looked.extend(
        measures()
            .iter()
            .filter_map(|measure| id(measure.fact.name)),
    );
    looked.extend(bench().iter().filter_map(|fact| id(fact.name)));
    looked.extend(FOR_A_SHOP.iter().filter_map(|name| id(name)));
    let used = looked
        .iter()
        .flat_map(|&fact| behind(vocabulary.fact(fact).name));
    let sources: Vec<FactId> = used.filter_map(|name| id(name)).collect();
    looked.extend(sources);
    looked
}

/// Words of the glossary that no text contains in any of their forms. One that the built-in texts use may be meant to stay.
pub(super) fn words(shop: &Shop, built_in: &RuleSet, findings: &mut Findings) {
    let (now, usual) = (unused_words(shop.rules()), unused_words(built_in));
    let explained: BTreeSet<&str> = built_in.glossary().iter().map(|word| word.word()).collect();
    for word in shop.rules().glossary().iter().map(|word| word.word()) {
        if now.contains(word) {
            findings.found(Finding::UnusedWord {
                word: word.to_owned(),
                may_be_meant: explained.contains(word) && !usual.contains(word),
            });
        } else {
            findings.absent(FindingKind::UnusedWord);
        }
    }
}

fn unused_words(rules: &RuleSet) -> BTreeSet<&str> {
    let texts = texts(rules);
    let glossary = rules.glossary();
    let is_unused = |word: &&Word| {
        let forms = std::iter::once(word.word()).chain(word.also().iter().map(String::as_str));
        let meanings = glossary.iter().filter(|other| other.word() != word.word());
        let texts = texts.iter().cloned();
        let mut all = texts.chain(meanings.map(|other| other.meaning().to_lowercase()));
        let forms: Vec<String> = forms.map(str::to_lowercase).collect();
        !all.any(|text| forms.iter().any(|form| contains(&text, form)))
    };
    let unused = glossary.iter().filter(is_unused);
    unused.map(|word| word.word()).collect()
}

/// Every text that may be printed, in small letters.
fn texts(rules: &RuleSet) -> Vec<String> {
    let vocabulary = rules.vocabulary();
    let audiences = [Audience::Newcomer, Audience::League, Audience::Fitter];
    let mut texts: Vec<String> = vec![PROGRAM_WORDS.to_lowercase()];
    for rule in rules.rules() {
        texts.extend(
            audiences
                .iter()
                .map(|&audience| rule.because(audience).to_lowercase()),
        );
        texts.extend(rule.then().map(str::to_lowercase));
    }
    for assumption in rules.assumptions() {
        let because = |&audience| assumption.because(audience).to_lowercase();
        texts.extend(audiences.iter().map(because));
    }
    texts.extend(
        rules
            .subjects()
            .iter()
            .map(|subject| subject.meaning().to_lowercase()),
    );
    for fact in vocabulary.facts() {
        texts.push(fact.meaning.to_lowercase());
        // A placeholder prints one of these.
        if let Kind::Choice(words) | Kind::Set(words) = fact.kind {
            texts.extend(
                words
                    .iter()
                    .map(|word| word.replace('_', " ").to_lowercase()),
            );
        }
    }
    texts
}

/// Whether a word stands in a text with no letter or digit on either side.
fn contains(text: &str, word: &str) -> bool {
    let apart = |neighbour: Option<char>| neighbour.is_none_or(|c| !c.is_alphanumeric());
    let stands = |at: usize| {
        let (before, after) = (text.get(..at), text.get(at + word.len()..));
        apart(before.and_then(|text| text.chars().next_back()))
            && apart(after.and_then(|text| text.chars().next()))
    };
    !word.is_empty() && text.match_indices(word).any(|(at, _)| stands(at))
}
