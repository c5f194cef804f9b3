//! Sentences as the customer reads them, lead-in and all: none is too long to take in at once.

use std::path::PathBuf;

use rstest::rstest;
use spanwright::advice::{Case, Shop};
use spanwright::bowler::Bowler;
use spanwright::report::{self, Look};
use spanwright::rules::Audience;

use crate::{BOWLERS, bowler};

/// So many words a customer can take in at once.
const MOST_WORDS: usize = 20;

/// So wide that every paragraph and item is one line.
const WIDE: usize = 100_000;

/// What ends with a mark, or with the block.
fn sentences(block: &str) -> Vec<&str> {
    let words = block.split_inclusive([' ']);
    let mut sentences = Vec::new();
    let (mut start, mut end) = (0, 0);
    for word in words {
        end += word.len();
        if word.trim_end().ends_with(['.', '!', '?']) {
            sentences.push(block[start..end].trim());
            start = end;
        }
    }
    sentences.push(block[start..].trim());
    sentences
}

fn none_is_too_long(about: &str, text: &str) {
    let customers = text.split("Drill spec, for the fitter").next().unwrap();
    let mut heading = "";
    for block in customers.lines().map(str::trim) {
        let above = std::mem::replace(&mut heading, block);
        // A list of what was assumed is no sentence.
        if above == "Assumed, because we didn't know" {
            continue;
        }
        for sentence in sentences(block) {
            let count = sentence.split_whitespace().count();
            assert!(
                count <= MOST_WORDS,
                "{about}, {count} words: {sentence}\n{text}"
            );
        }
    }
}

fn every_text_about(about: &str, shop: &Shop, bowler: &Bowler) {
    let look = Look::plain(Audience::Newcomer).wide(WIDE);
    let advice = shop.advise(bowler).unwrap();
    none_is_too_long(about, &report::text(&advice, &look));
    let standing = shop.standing(bowler).unwrap();
    let models: Vec<&str> = shop.catalog().models().map(|model| model.id()).collect();
    for model in &models {
        let answer = standing.why_not(model).unwrap();
        none_is_too_long(about, &report::why_not_text(&answer, &look));
    }
    for pair in models.windows(2) {
        let contrast = standing.compare(pair[0], pair[1]).unwrap();
        none_is_too_long(about, &report::contrast_text(&contrast, &look));
    }
}

#[rstest]
fn no_demo_bowler_reads_a_long_sentence(#[values(0, 1, 2, 3, 4, 5, 6, 7, 8, 9)] at: usize) {
    every_text_about(BOWLERS[at], &Shop::demo().unwrap(), &bowler(BOWLERS[at]));
}

/// Whoever a case tells of, the pick is explained in short sentences, and the balls around it too.
#[test]
fn no_customer_of_a_case_reads_a_long_sentence() {
    let shop = Shop::demo().unwrap();
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/cases");
    let cases = Case::read_all(&[folder]).unwrap();
    assert!(cases.len() > 200);
    for case in &cases {
        every_text_about(case.file(), &shop, case.bowler());
    }
}
