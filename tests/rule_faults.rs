//! Rule files that are wrong say where and why: every fault of every file, each at its line and column, and nothing else.
//!
//! The files under `tests/faults/rules` hold all kinds of faults that a kind of rule file can have. Under a faulty line stands
//! a mark for each: `#! 7 code: message (help)` speaks of column 7 of the line above.

// Helpers of tests may stop a test just as tests may.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

#[allow(dead_code, reason = "the engine's tests use all of it")]
#[path = "engine/garden.rs"]
mod garden;
#[path = "faults/marks.rs"]
mod marks;

use std::path::Path;

use garden::{SUBJECTS, document, vocabulary};
use marks::{Mark, marks};
use rstest::rstest;
use spanwright::document::{Document, Fault, Faults};
use spanwright::rules::RuleSet;

/// A sound file that the faulty ones stand beside or are laid over.
const SOUND: &str = "
subject: plant
rules:
  - { id: elsewhere, points: 1, because: So it is., source: own choice }
  - { id: loam, when: { plant.soil: loam }, points: 6, because: So it is., source: own choice }
  - { id: sand, when: { plant.soil: sand }, points: 5, because: So it is., source: own choice }
  - { id: sand-first, when: { plant.soil: sand }, points: 7, disputes: loam, because: So it is., source: own choice }
  - { id: potted, subject: pot, points: 7, because: So it is., source: own choice }
";

fn faulty(name: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("tests/faults/rules")
        .join(name);
    std::fs::read_to_string(path).unwrap()
}

/// As marks, all of them of one file.
fn reported(faults: &Faults, file: &str) -> Vec<Mark> {
    for fault in faults.iter() {
        let place = fault.place().expect("every fault has a place");
        assert_eq!(&*place.file, file, "{fault}");
    }
    marks::reported(faults)
}

/// As marks, so that a difference can be read, and copied into the file once it has been thought over.
fn shown(marks: &[Mark]) -> String {
    marks
        .iter()
        .map(|(line, column, told)| format!("{line}: #! {column} {told}\n"))
        .collect()
}

fn sound() -> [Document; 2] {
    [
        document("subjects.yaml", SUBJECTS),
        document("sound.yaml", SOUND),
    ]
}

#[rstest]
#[case("rules.yaml")]
#[case("effects.yaml")]
#[case("homeless.yaml")]
#[case("ruleless.yaml")]
#[case("subjects.yaml")]
#[case("sources.yaml")]
#[case("assumptions.yaml")]
#[case("glossary.yaml")]
fn every_fault_at_its_place(#[case] name: &str) {
    let text = faulty(name);
    let file = format!("faulty-{name}");
    let mut documents = Vec::from(sound());
    documents.push(document(&file, &text));
    let faults = RuleSet::read(&vocabulary(), &documents).unwrap_err();
    assert_eq!(shown(&reported(&faults, &file)), shown(&marks(&text)));
}

#[test]
fn every_fault_of_an_overlay_at_its_place() {
    let text = faulty("overlay.yaml");
    let base = RuleSet::read(&vocabulary(), &sound()).unwrap_or_else(|faults| panic!("{faults}"));
    let faults = base
        .overlay(&[document("overlay.yaml", &text)])
        .unwrap_err();
    assert_eq!(
        shown(&reported(&faults, "overlay.yaml")),
        shown(&marks(&text))
    );
}

/// All faults of all files, whichever is read first.
#[test]
fn faults_of_several_files_together() {
    let names = ["sources.yaml", "glossary.yaml", "assumptions.yaml"];
    let read = |order: [usize; 3]| {
        let mut documents = Vec::from(sound());
        documents.extend(order.map(|index| document(names[index], &faulty(names[index]))));
        RuleSet::read(&vocabulary(), &documents)
            .unwrap_err()
            .to_string()
    };
    let faults = read([0, 1, 2]);
    for name in names {
        let marks = marks(&faulty(name)).len();
        assert_eq!(faults.matches(&format!("{name}:")).count(), marks, "{name}");
    }
    assert_eq!(read([2, 1, 0]), faults);
}

/// What faulty parts are named by is known all the same, so that one fault does not bring forth others.
#[test]
fn one_fault_one_report() {
    let text = "
subjects:
  - { id: hedge, kind: choise, meaning: a hedge }
sources:
  notes: { title: Notes, strength: sure }
subject: hedge
rules:
  - { id: tall, when: { plant.height: 300 }, points: x, because: So it is., source: notes }
  - { id: small, disputes: tall, points: 1, because: So it is., source: notes }
";
    let faults = RuleSet::read(&vocabulary(), &[document("one.yaml", text)]).unwrap_err();
    let codes: Vec<&str> = faults.iter().map(Fault::code).collect();
    assert_eq!(codes, ["unknown-value", "unknown-value", "not-a-number"]);
}
