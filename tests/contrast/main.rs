//! Why not a ball, and this one or that: every number is found again from the ledgers of a plain advice.

#![allow(clippy::unwrap_used, clippy::panic)]

mod bad_input;
mod ledgers;
mod pairs;
mod sentences;
mod settled;
mod texts;
mod why_not;

use std::path::{Path, PathBuf};

use spanwright::bowler::Bowler;
use spanwright::document::{Document, Format};

/// Every demo bowler.
const BOWLERS: [&str; 11] = [
    "backup-bowler",
    "first-ball",
    "hanging-thumb",
    "knows-nothing",
    "league-tired-ball",
    "left-handed-child",
    "present",
    "sore-thumb",
    "straight-only",
    "two-balls",
    "two-handed-no-thumb",
];

/// Words that a customer must not read; common practice, no source.
const AVOIDED: [&str; 10] = [
    "newcomer",
    "senior",
    "stiff",
    "rolled out",
    "speed-dominant",
    "goes where you aim",
    "does nothing for you",
    "ledger",
    "fate",
    "rev level",
];

fn file(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("catalog-demo/bowlers")
        .join(format!("{name}.yaml"))
}

fn bowler(name: &str) -> Bowler {
    Bowler::read(&Document::read(&file(name)).unwrap()).unwrap()
}

/// A profile on the spot.
fn profile(text: &str) -> Bowler {
    Bowler::read(&Document::parse("profile", text.as_bytes(), Format::Yaml).unwrap()).unwrap()
}

#[test]
fn no_demo_bowler_is_forgotten() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("catalog-demo/bowlers");
    let entries = std::fs::read_dir(folder).unwrap();
    let mut names: Vec<String> = entries
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .map(|name| name.trim_end_matches(".yaml").to_owned())
        .collect();
    names.sort();
    assert_eq!(names, BOWLERS);
}
