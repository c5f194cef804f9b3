//! Faults of a list of plain words, each at its place.

use std::sync::Arc;

use spanwright::document::{Document, Format};
use spanwright::rules::{RuleSet, Vocabulary};

/// The faults as `line:column code`.
fn faults(text: &str) -> Vec<String> {
    let vocabulary = Arc::new(Vocabulary::new(Vec::new()).unwrap());
    let document = Document::parse("words.yaml", text.as_bytes(), Format::Yaml).unwrap();
    let Err(faults) = RuleSet::read(&vocabulary, &[document]) else {
        return Vec::new();
    };
    faults
        .iter()
        .map(|fault| {
            let place = fault.place().unwrap();
            format!("{}:{} {}", place.line, place.column, fault.code())
        })
        .collect()
}

#[test]
fn every_fault_of_the_words_is_told() {
    let text = "plain_words:
  words: [ball, and, lane, lane, Pin, 3, [a], oil]
  instead:
    - { not: ledger }
    - { say: reasons }
    - { not: oil, say: grease }
    - { not: fate, say: what came of it, readers: nobody }
    - { not: fate, say: what came of it, because: so }
  fitter_only: [bench]
  customers_only: [bench]
";
    let wanted = [
        "2:17 out-of-order",
        "2:28 repeated-word",
        "2:34 bad-word",
        "2:39 bad-word",
        "2:42 shape",
        "4:7 missing",
        "5:7 missing",
        "6:14 avoided-and-plain",
        "7:51 unknown-value",
        "8:42 unknown-key",
        "9:17 unknown-subject",
        "10:3 unknown-key",
    ];
    assert_eq!(faults(text), wanted);
}

#[test]
fn an_ordered_list_has_no_fault() {
    let text = "plain_words:
  words: [a, \"can't\", lane]
  instead: [{ not: rolled out, say: has finished hooking, readers: customers }]
";
    assert_eq!(faults(text), Vec::<String>::new());
}
