//! Every fault of a table of questions stands at its line.
#![allow(clippy::unwrap_used)]

use super::*;

const WORDS: &str = "words: { not_known: [dunno], help: [help], back: [back], stop: [stop] }";

/// The faults of a table with these questions, as code and line.
fn faults(questions: &str) -> Vec<(&'static str, u32)> {
    let text = format!("{WORDS}\nquestions:\n{questions}");
    let document = Document::parse("questions.yaml", text.as_bytes(), Format::Yaml).unwrap();
    let Err(faults) = Questions::read(&document) else {
        return Vec::new();
    };
    let place = |fault: &crate::document::Fault| fault.place().map_or(0, |place| place.line);
    faults
        .iter()
        .map(|fault| (fault.code(), place(fault)))
        .collect()
}

const THUMB: &str = "- id: thumb
  answers: [bowler.thumb]
  cost: 1
  ask: Does your thumb go in?
  help: Most do.
  choices: { in: [yes], out: [no] }
";

#[test]
fn a_sound_question_has_no_fault() {
    assert_eq!(faults(THUMB), []);
}

#[test]
fn every_fault_has_its_line() {
    let changed = |from: &str, to: &str| faults(&THUMB.replace(from, to));
    assert_eq!(
        changed("bowler.thumb", "bowler.thum"),
        [("unknown-fact", 4), ("wrong-matcher", 8)]
    );
    assert_eq!(changed("cost: 1", "cost: much"), [("bad-value", 5)]);
    assert_eq!(changed("  help: Most do.\n", ""), [("missing", 3)]);
    assert_eq!(changed("Most do.", "Most do"), [("cut-short", 7)]);
    assert_eq!(
        changed("Most do.", &format!("{}do.", "most ".repeat(20))),
        [("too-long", 7)]
    );
    assert_eq!(changed("out: [no]", "out: [yes]"), [("repeated", 8)]);
    assert_eq!(changed(", out: [no]", ""), [("missing", 8)]);
    assert_eq!(changed("out: [no]", "outside: [no]").len(), 2);
    assert_eq!(changed("  cost", "  costs").first(), Some(&("missing", 3)));
    assert_eq!(
        changed("  cost: 1", "  cost: 1\n  when: { bowler.intent: hook }"),
        [("unknown-fact", 6)]
    );
    let twice = format!("{THUMB}{THUMB}");
    assert_eq!(faults(&twice), [("repeated", 9), ("repeated", 10)]);
}
