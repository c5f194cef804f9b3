//! The phrases: every answer that can matter has one, and a faulty table says where.

use rstest::rstest;
use spanwright::advice::Phrases;
use spanwright::bowler::ANSWERS;
use spanwright::document::{Document, Format};
use spanwright::rules::Audience;
use spanwright::vocabulary::vocabulary;

use crate::demos::{bowlers, shop};

#[test]
fn every_answer_of_the_bowler_has_a_phrase() {
    let phrases = Phrases::builtin().unwrap();
    for answer in ANSWERS {
        let name = answer.name();
        if name.starts_with("bowler.") || name.starts_with("owned.") {
            assert!(phrases.of(name).is_some(), "{name}");
        }
    }
}

#[test]
fn every_answer_that_can_matter_has_a_phrase() {
    let phrases = Phrases::builtin().unwrap();
    for (_, bowler) in bowlers() {
        let found = shop().what_if(&bowler).unwrap();
        let turning = found.turns().iter().map(|turn| turn.step().fact());
        for fact in turning.chain(found.steady().iter().copied()) {
            assert!(phrases.of(fact).is_some(), "{fact}");
        }
    }
}

/// Sentences of what would change the pick, for customers: at most twenty words before the name of a ball.
#[test]
fn phrases_are_short_and_plain() {
    for (name, bowler) in bowlers() {
        for turn in shop().what_if(&bowler).unwrap().turns() {
            for audience in [Audience::Newcomer, Audience::League] {
                let Some(phrase) = turn.said(audience) else {
                    continue;
                };
                assert!(phrase.split(' ').count() <= 16, "{name}: {phrase}");
                assert!(!phrase.contains(['{', '}']), "{name}: {phrase}");
                assert!(phrase.starts_with(char::is_uppercase), "{name}: {phrase}");
            }
        }
    }
}

/// By the same list of plain words as all that customers read.
#[test]
fn phrases_are_worded_plainly() {
    let shop = shop();
    let mut found = Vec::new();
    for (fact, texts) in Phrases::builtin().unwrap().texts() {
        let text = texts.of(Audience::Newcomer).replace(['{', '}'], "");
        let text = format!("{text}.")
            .replace("value", "one")
            .replace("keeps", "one");
        for (misworded, sentence) in shop.rules().wording_of(&text, Audience::Newcomer) {
            found.push(format!("{fact}: {misworded}: {sentence}"));
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}

fn faults(row: &str) -> String {
    let text = format!("phrases:\n  - {row}\n");
    let document = Document::parse("phrases.yaml", text.as_bytes(), Format::Yaml).unwrap();
    match Phrases::read(&vocabulary().unwrap(), &document) {
        Ok(_) => String::new(),
        Err(faults) => faults.to_string(),
    }
}

#[rstest]
#[case(
    "{ fact: bowler.speed, called: s, asked: s, from: from {value}, below: below it }",
    "this phrase says `{value}` or `{keeps}` once"
)]
#[case(
    "{ fact: bowler.speed, called: s, asked: s, from: from {value}, step: 0 mph }",
    "a step is more than nothing"
)]
#[case(
    "{ fact: bowler.speed, called: s, asked: s, from: from {value}, between: \"{low} on\" }",
    "this phrase says `{low}` and `{high}` once"
)]
#[case(
    "{ fact: bowler.speed, called: s, asked: s, from: \"from {keeps}\", below: \"{value}\" }",
    "this phrase says `{value}` once"
)]
#[case(
    "{ fact: bowler.sped, called: s, asked: s }",
    "did you mean `bowler.speed`?"
)]
#[case(
    "{ fact: ball.cover, called: s, asked: s }",
    "there is no answer `ball.cover`"
)]
#[case(
    "{ fact: bowler.present, called: s, asked: s, words: { no: n } }",
    "yes"
)]
#[case(
    "{ fact: bowler.present, called: s, asked: s, words: { no: n, yes: y, perhaps: p } }",
    "`perhaps`"
)]
#[case(
    "{ fact: bowler.present, called: s, asked: s, words: { no: \"{value}\", yes: y } }",
    "a phrase for a word has no placeholder"
)]
#[case(
    "{ fact: bowler.present, called: s, asked: s, from: \"{value}\", below: \"{value}\" }",
    "words"
)]
fn a_faulty_phrase_is_told(#[case] row: &str, #[case] words: &str) {
    let told = faults(&row.replace("from {value},", "\"from {value}\","));
    assert!(told.contains(words), "{told}");
}

#[test]
fn a_phrase_said_twice_is_told() {
    let row = "{ fact: bowler.present, called: s, asked: s, words: { no: n, yes: y } }";
    let told = faults(&format!("{row}\n  - {row}"));
    assert!(told.contains("`bowler.present` is said twice"), "{told}");
}
