//! A profile that is written down reads as it was.

use std::path::PathBuf;

use proptest::prelude::*;
use spanwright::advice::Shop;
use spanwright::bowler::{self, Bowler};
use spanwright::document::{Content, Document, Format, Node};

use crate::customers::{Chance, complete};

fn read(text: &str) -> Bowler {
    let document = Document::parse("written", text.as_bytes(), Format::Yaml).unwrap();
    Bowler::read(&document).unwrap_or_else(|faults| panic!("{faults}\n{text}"))
}

/// All but the remarks, which may hang on how something was written.
fn is_the_same(one: &Bowler, other: &Bowler) {
    for answer in bowler::ANSWERS {
        let name = answer.name();
        assert_eq!(
            one.answer(name),
            other.answer(name),
            "{name}\n{}",
            one.to_yaml()
        );
        assert_eq!(
            one.is_unknown(name),
            other.is_unknown(name),
            "{name}\n{}",
            one.to_yaml()
        );
    }
    assert_eq!(one.name(), other.name());
    assert_eq!(one.spans(), other.spans());
    assert_eq!(one.card(), other.card());
    assert_eq!(one.owned(), other.owned());
    assert_eq!(one.used_ball(), other.used_ball());
    assert_eq!(one.settled_ball(), other.settled_ball());
}

fn there_and_back(bowler: &Bowler) {
    let again = read(&bowler.to_yaml());
    is_the_same(bowler, &again);
    assert_eq!(again.to_yaml(), bowler.to_yaml());
    // Written once, nothing is left that could change.
    assert_eq!(read(&again.to_yaml()), again);
}

fn files(folder: &str) -> Vec<PathBuf> {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join(folder);
    let mut files: Vec<_> = std::fs::read_dir(folder)
        .unwrap()
        .map(|e| e.unwrap().path())
        .collect();
    files.retain(|file| file.extension().is_some_and(|end| end == "yaml"));
    files.sort();
    files
}

#[test]
fn every_demo_profile_reads_as_it_was() {
    for file in files("catalog-demo/bowlers")
        .iter()
        .chain(&files("catalog-demo/weighed"))
    {
        there_and_back(&Bowler::read(&Document::read(file).unwrap()).unwrap());
    }
}

/// The profile inside a case, as text of its own.
fn json(node: &Node) -> serde_json::Value {
    match node.content() {
        Content::Null => serde_json::Value::Null,
        Content::Scalar(text) => serde_json::Value::String(text.to_string()),
        Content::List(items) => items.iter().map(json).collect(),
        Content::Map(pairs) => {
            let pair = |(key, value): &(Node, Node)| (key.text().unwrap().to_owned(), json(value));
            serde_json::Value::Object(pairs.iter().map(pair).collect())
        }
    }
}

#[test]
fn every_profile_of_a_case_reads_as_it_was() {
    let mut seen = 0;
    for file in files("tests/cases") {
        let document = Document::read(&file).unwrap();
        let Content::Map(pairs) = document.root().content() else {
            panic!("{}", file.display());
        };
        let Some((_, profile)) = pairs.iter().find(|(key, _)| key.text() == Some("profile")) else {
            continue;
        };
        let text = json(profile).to_string();
        let document = Document::parse("case.json", text.as_bytes(), Format::Json).unwrap();
        there_and_back(&Bowler::read(&document).unwrap());
        seen += 1;
    }
    assert!(seen > 100, "{seen} profiles");
}

#[test]
fn nothing_known_is_a_profile_too() {
    assert_eq!(Bowler::unheard().to_yaml(), "{}\n");
    there_and_back(&Bowler::unheard());
}

#[test]
fn texts_of_people_come_back() {
    for name in [
        "Ada",
        "null",
        "yes",
        "12",
        "a: b # c",
        "\"'\\",
        "- x",
        "{a}",
        "Ærø 🎳",
        "unknown fellow",
        " spaced ",
    ] {
        let mut quoted = serde_json::to_string(name).unwrap();
        quoted.insert_str(0, "name: ");
        let bowler = read(&quoted);
        assert!(bowler.name().is_some());
        there_and_back(&bowler);
    }
}

#[test]
fn customers_of_the_interview_read_as_they_were() {
    let shop = Shop::demo().unwrap();
    let interview = shop.interview().unwrap();
    for seed in 1..=100 {
        let (whole, _) = complete(&interview, &Bowler::unheard(), &mut Chance::new(seed));
        there_and_back(&whole);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Any answers, one after another; what can't be is refused and changes nothing.
    #[test]
    fn any_answers_read_as_they_were(
        answers in prop::collection::vec((0..bowler::ANSWERS.len(), any::<prop::sample::Index>(), 0..5), 1..40)
    ) {
        let mut bowler = Bowler::unheard();
        for (which, value, luck) in answers {
            let answer = &bowler::ANSWERS[which];
            let name = answer.name();
            if luck == 0 {
                let next = bowler.not_known(name).unwrap();
                // `hand.measured` follows from the rest.
                if name.starts_with("bowler.") || name == "owned.count" {
                    prop_assert!(next.is_unknown(name));
                }
                bowler = next;
                continue;
            }
            let (lowest, highest) = match answer.shape() {
                bowler::Shape::Number { lowest, highest, .. } => (lowest, highest),
                bowler::Shape::Choice(words) => (0, words.len() as i64 - 1),
                bowler::Shape::Set(words) => (0, (1 << words.len()) - 1),
                _ => (0, 1),
            };
            let value = lowest + value.index((highest - lowest + 1) as usize) as i64;
            if let Ok(next) = bowler.answered(name, value) {
                prop_assert_eq!(next.answer(name), Some(value), "{}", name);
                bowler = next;
            }
            prop_assert!(bowler.answered(name, highest + 1).is_err());
        }
        there_and_back(&bowler);
    }
}
