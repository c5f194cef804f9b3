//! The command `legal`: a ball that breaks a limit is an answer; a faulty document or a day that isn't one is not.

#![allow(clippy::unwrap_used)]

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use rstest::rstest;
use serde_json::Value;

/// An invented ball with an old balance hole.
fn ball() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("catalog-demo/balls/drilled-yarrow.yaml")
}

fn legal(ball: &Path, more: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_spanwright"));
    command.arg("legal").arg(ball).args(more).output().unwrap()
}

#[track_caller]
fn said(ball: &Path, more: &[&str]) -> String {
    let output = legal(ball, more);
    assert_eq!(output.status.code(), Some(0));
    assert!(output.stderr.is_empty());
    String::from_utf8(output.stdout).unwrap()
}

#[test]
fn what_is_broken_comes_first_and_the_rule_book_last() {
    let text = said(&ball(), &["--on", "2024-10-01"]);
    let at = |words: &str| {
        text.find(words)
            .unwrap_or_else(|| panic!("no {words}: {text}"))
    };
    let places = [
        at("Yarrow of Ruth Marlow: USBC, 2024-10-01"),
        at("Broken\n"),
        at("No balance hole is allowed."),
        at("To ask or measure\n"),
        at("Plug the balance hole and weigh again"),
        at("Kept\n"),
        at("Who decides\n"),
        at("current rule book"),
    ];
    assert!(places.is_sorted(), "{text}");
    assert!(
        text.lines().all(|line| line.chars().count() <= 80),
        "{text}"
    );
}

/// While one balance hole was allowed, the same ball broke nothing.
#[test]
fn the_day_decides() {
    let text = said(&ball(), &["--on", "2019-10-01"]);
    assert!(!text.contains("Broken"), "{text}");
    assert!(text.contains("Side weight: 0.25 oz inside."), "{text}");
}

#[test]
fn without_a_day_it_is_the_last_the_table_knows_and_later_days_are_told() {
    let known = "The table knows rules up to 2026-01-01.";
    let flat = |text: String| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let text = flat(said(&ball(), &[]));
    assert!(
        text.contains("USBC, 2026-01-01") && text.contains(known),
        "{text}"
    );
    assert!(!text.contains("is later"), "{text}");
    let text = flat(said(&ball(), &["--on", "2030-01-01"]));
    assert!(text.contains("The day asked for is later"), "{text}");
}

#[test]
fn json_says_the_same() {
    let text = said(&ball(), &["--on", "2024-10-01", "--body", "ibf", "--json"]);
    let answer: Value = serde_json::from_str(&text).unwrap();
    assert_eq!(answer["contract"], 1);
    assert_eq!(answer["question"], "legal");
    assert_eq!(answer["body"], "ibf");
    assert_eq!(answer["date"], "2024-10-01");
    assert_eq!(answer["result"], "fail");
    let findings = answer["findings"].as_array().unwrap();
    let broken: Vec<&Value> = findings
        .iter()
        .filter(|finding| finding["verdict"] == "fail")
        .collect();
    assert_eq!(broken.len(), 1, "{broken:?}");
    assert_eq!(broken[0]["id"], "balance-holes");
    assert_eq!(broken[0]["distance"], "1 hole too many");
    assert_eq!(broken[0]["strength"], "published");
    for finding in findings {
        let says = |key: &str| finding[key].as_str().is_some_and(|words| !words.is_empty());
        assert!(says("about") && says("says") && says("clause"), "{finding}");
    }
    assert_eq!(
        text,
        said(&ball(), &["--on", "2024-10-01", "--body", "ibf", "--json"])
    );
}

/// On a day of which much is unknown the titles of one question fill more than a line.
#[test]
fn a_long_title_goes_on_below_its_start() {
    let text = said(&ball(), &["--on", "1950-01-01"]);
    let (_, after) = text.split_once("To ask or measure\n").unwrap();
    let (asked, _) = after.split_once("\n\n").unwrap();
    assert!(asked.lines().count() > 3, "{text}");
    assert!(asked.lines().all(|line| line.starts_with("  ")), "{text}");
}

/// A zero is a number nobody measured; it mustn't be a limit that is kept.
#[rstest]
#[case("weight: 0 lb")]
#[case("diameter: 0 in")]
#[case("core: { rg: 0.000 in }")]
#[case("holes: [{ for: thumb, diameter: 0 in }]")]
#[case("holes: [{ for: thumb, depth: 0 }]")]
fn nothing_is_no_measure(#[case] text: &str) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("ball.yaml");
    std::fs::write(&path, text).unwrap();
    let output = legal(&path, &[]);
    assert_eq!(output.status.code(), Some(1), "{text}");
    let words = String::from_utf8(output.stderr).unwrap();
    assert!(words.contains("can't be nothing [out-of-range]"), "{words}");
}

#[rstest]
#[case(&["--on", "2024-02-30"])]
#[case(&["--on", "tomorrow"])]
#[case(&["--body", "abc"])]
#[case(&["--for", "fitter"])]
fn misuse_is_exit_code_2(#[case] more: &[&str]) {
    let output = legal(&ball(), more);
    assert_eq!(output.status.code(), Some(2));
    assert!(output.stdout.is_empty());
}

#[test]
fn a_faulty_ball_is_exit_code_1_with_every_fault() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/faults/ball/every-fault.yaml");
    let output = legal(&path, &[]);
    assert_eq!(output.status.code(), Some(1));
    assert!(output.stdout.is_empty());
    let words = String::from_utf8(output.stderr).unwrap();
    for fault in [
        "[unknown-key]",
        "[bad-value]",
        "[contradiction]",
        "[missing]",
        "[out-of-range]",
    ] {
        assert!(words.contains(fault), "{words}");
    }
}
