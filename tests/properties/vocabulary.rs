//! Facts, answers and rule files agree with each other.

use std::collections::BTreeSet;

use spanwright::bowler::{ANSWERS, Shape, answer};
use spanwright::rules::{Kind, Origin};

use crate::SHOP;
use crate::order::{rule_files, rules};

#[test]
fn names_are_unique() {
    let facts = SHOP.vocabulary().facts();
    let names: BTreeSet<&str> = facts.iter().map(|fact| fact.name).collect();
    assert_eq!(names.len(), facts.len());
    let answers: BTreeSet<&str> = ANSWERS.iter().map(|answer| answer.name()).collect();
    assert_eq!(answers.len(), ANSWERS.len());
}

/// What a profile may say of a fact is what the rules may read: same words in the same order, same notation, no
/// value beyond the fact's range.
#[test]
fn every_answer_fact_is_an_answer_of_the_profile() {
    let mut wrong = Vec::new();
    for fact in SHOP
        .vocabulary()
        .facts()
        .iter()
        .filter(|fact| fact.origin == Origin::Answer)
    {
        let Some(answer) = answer(fact.name) else {
            wrong.push(format!("{} is no answer", fact.name));
            continue;
        };
        let same = match (&fact.kind, answer.shape()) {
            (
                Kind::Number {
                    notation,
                    lowest,
                    highest,
                },
                Shape::Number {
                    notation: own,
                    lowest: low,
                    highest: high,
                    ..
                },
            ) => *notation == own && *lowest <= low && high <= *highest,
            (Kind::Choice(words), Shape::Choice(own)) | (Kind::Set(words), Shape::Set(own)) => {
                *words == own
            }
            (Kind::Flag, Shape::Flag) => true,
            _ => false,
        };
        if !same {
            wrong.push(format!(
                "{}: {:?} against {:?}",
                fact.name,
                fact.kind,
                answer.shape()
            ));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// The rules built into the program are all files of the folder, and nothing else.
#[test]
fn built_in_rules_are_the_files() {
    let read = rules(&rule_files());
    assert_eq!(read.digest(), SHOP.rules().digest());
    let files = |set: &spanwright::rules::RuleSet| -> BTreeSet<String> {
        set.rules()
            .iter()
            .map(|rule| rule.file().to_owned())
            .collect()
    };
    assert_eq!(files(&read), files(SHOP.rules()));
}
