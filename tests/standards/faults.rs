//! A table or a ball document that is wrong says where and why, every fault of it and nothing else.

use std::path::{Path, PathBuf};

use rstest::rstest;
use spanwright::document::Document;
use spanwright::standards::{BallFacts, Standards};

use crate::marks::{Mark, marks, reported};

pub fn here(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
}

#[rstest]
#[case::table("tests/faults/standards/every-fault.yaml")]
#[case::ball("tests/faults/ball/every-fault.yaml")]
fn every_mark_is_reported_and_nothing_else(#[case] path: &str) {
    let text = std::fs::read_to_string(here(path)).unwrap();
    let document = Document::read(&here(path)).unwrap();
    let faults = if path.contains("standards") {
        Standards::read(&document).unwrap_err()
    } else {
        BallFacts::read(&document).unwrap_err()
    };
    let (wanted, found) = (marks(&text), reported(&faults));
    let not_in = |marks: &[Mark], others: &[Mark]| -> Vec<Mark> {
        let alone = marks.iter().filter(|mark| !others.contains(mark));
        alone.cloned().collect()
    };
    assert_eq!(not_in(&found, &wanted), [], "not marked");
    assert_eq!(not_in(&wanted, &found), [], "not reported");
    assert_eq!(found.len(), wanted.len());
}
