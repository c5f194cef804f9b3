//! A profile that is wrong says where and why; one that is odd asks; none makes the program stumble.

// Helpers of tests may stop a test just as tests may.
#![allow(clippy::unwrap_used, clippy::panic)]

#[path = "faults/marks.rs"]
mod marks;
#[path = "bowler/written.rs"]
mod written;

use std::path::{Path, PathBuf};

use marks::{marks, reported};
use proptest::prelude::*;
use rstest::rstest;
use spanwright::bowler::Bowler;
use spanwright::document::{Document, Format};

use written::{bowler, parse};

fn here(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
}

fn demos() -> Vec<PathBuf> {
    let folder = std::fs::read_dir(here("catalog-demo/bowlers")).unwrap();
    let mut paths: Vec<PathBuf> = folder.map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    paths
}

#[test]
fn every_mark_is_reported_and_nothing_else() {
    let path = here("tests/faults/bowler/every-fault.yaml");
    let text = std::fs::read_to_string(&path).unwrap();
    let faults = Bowler::read(&Document::read(&path).unwrap()).unwrap_err();
    let (wanted, found) = (marks(&text), reported(&faults));
    for mark in &found {
        assert!(wanted.contains(mark), "not marked: {mark:?}");
    }
    for mark in &wanted {
        assert!(found.contains(mark), "not reported: {mark:?}");
    }
    assert_eq!(found.len(), wanted.len());
}

#[rstest]
#[case("age: 9\nage: 10\n")]
#[case("rev_rate: 300 rpm\nrev_rate: high\n")]
#[case("- a list\n")]
#[case("just words\n")]
fn a_profile_of_another_shape_is_a_fault(#[case] text: &str) {
    assert!(parse(text).is_err());
}

#[rstest]
#[case(
    "used_ball: { ball: the blue ball }\n",
    "no fit card tells the holes of the used ball"
)]
#[case(
    "owned: [{ name: the red ball }]\nfit_card: { ball: the blue ball }\nused_ball: { ball: the blue bal }\n",
    "no ball is called `the blue bal`"
)]
fn a_used_ball_needs_its_holes(#[case] text: &str, #[case] message: &str) {
    let faults = parse(text).unwrap_err().to_string();
    assert!(faults.contains(message), "{faults}");
}

#[test]
fn a_ball_on_the_card_and_owned_is_named_once() {
    let text = "owned: [{ name: the red ball }]\nfit_card: { ball: the red ball }\nused_ball: { ball: the rad ball }\n";
    let faults = parse(text).unwrap_err().to_string();
    assert_eq!(faults.matches("name: the red ball").count(), 1, "{faults}");
    assert!(!faults.contains("the red ball, the red ball"), "{faults}");
}

#[test]
fn nobody_owns_forty_one_balls() {
    let faults = parse(&format!("owned: [{}]", "{}, ".repeat(41))).unwrap_err();
    let fault =
        "out-of-range: 41 balls are more than one bowler owns (list at most 40, those in use)";
    assert_eq!(reported(&faults), [(1, 8, fault.to_owned())]);
}

// Faults that can't stand in one file with the others.
#[rstest]
#[case(&format!("name: {}", "a".repeat(201)), 7, "too-long: the name is longer than 200 characters")]
#[case(
    "speed: { value: 29 mph, where: pins }",
    17,
    "out-of-range: a ball at this speed at the pins was let go at 31.3 mph (check the speed and where it was read)"
)]
#[case(
    "speed: { value: 9 mph, where: lane }",
    31,
    "unknown-value: unknown value `lane` for where the speed was read; expected release or pins"
)]
#[case(
    "rev_rate: 900 rpm",
    11,
    "out-of-range: the rev rate can't be 900 rpm (it lies between 0 rpm and 700 rpm)"
)]
#[case(
    "aches: ouch",
    8,
    "unknown-value: unknown value `ouch` for the aches; expected thumb, fingers, wrist, elbow, shoulder, back, knee, \
     numbness, swelling or night_pain"
)]
#[case(
    "fit_card: { weight: 14 lb, before: { weight: 13 lb 15 oz } }",
    46,
    "contradiction: a ball of 13.94 lb can't weigh 14 lb once it is drilled (line 1) (look whether the two were exchanged)"
)]
// A quarter of 27 in around is 6 3/4 in: derived.
#[case(
    "pap: { over: 8, up: 1/2 up, first: up }",
    14,
    "out-of-range: the distance over from the centreline of 8.0000 is above the most possible, 6.7500 (measure again, or \
     say `first: over` if that came first)"
)]
#[case(
    "fit_card: { before: 15 lb }",
    21,
    "shape: the readings before drilling must be a map of keys and values, found a single value"
)]
fn one_fault_alone(#[case] text: &str, #[case] column: u32, #[case] fault: &str) {
    let faults = parse(text).unwrap_err();
    assert_eq!(reported(&faults), [(1, column, fault.to_owned())]);
}

const SPAN: &str = "finger: middle, kind: full, along: arc";

#[rstest]
#[case("intent: straight\ncurve: usual", "bowler.curve")]
#[case("intent: straight\ncurve: away", "bowler.curve")]
#[case("intent: hook\ncurve: none", "bowler.curve")]
#[case("delivery: two hands\nwrist_support: yes", "bowler.wrist_support")]
#[case(
    "experience: first ball\nowned: [{ cover: pearl }]",
    "bowler.experience"
)]
#[case("experience: tournament\ngames_a_week: 0", "bowler.games_a_week")]
#[case("experience: tournament\nage: 6", "bowler.age")]
#[case("age: 40\nbody_weight: 60 lb", "bowler.body_weight")]
#[case("ball_now: { whose: own }\nowned: none", "owned.count")]
#[case(
    "target_weight: 15 lb\nhold_test: { failed: 14 lb }",
    "bowler.target_weight"
)]
#[case(
    "ball_now: { weight: 14 lb }\nhold_test: { failed: 14 lb }",
    "bowler.ball_now_weight"
)]
#[case("target_weight: 15 lb\nsettled: { weight: 14 lb }", "settled.weight")]
#[case("absent: yes\nmeasured: { ring: { cold: 23/32 } }", "bowler.absent")]
#[case("pap: { over: 4 1/2 }", "bowler.pap_up")]
#[case("pap: { up: 1/2 up }", "bowler.pap_over")]
#[case("speed: { value: 15 mph, where: unknown }", "bowler.speed")]
#[case("rev_rate: 650 rpm", "bowler.rev_rate")]
#[case(
    "measured: { thumb: { cold: 27/32, warm: 25/32 } }",
    "hand.thumb_gauge_warm"
)]
#[case("measured: { thumb: { cold: 35/64 } }", "hand.thumb_gauge")]
#[case("measured: { ring: { cold: 77/64 } }", "hand.ring_gauge")]
#[case("thumb: out\nfit_card: { works: yes, slug: 1 1/4 }", "card.works")]
#[case("aches: [numbness]\nfit_card: { works: yes }", "card.works")]
#[case("fit_card: { works: no, grip: fingertip }", "card.complaint")]
#[case(
    "fit_card: { date: 2024-09-12, entries: [{ date: 2024-09-13, kind: drilled }] }",
    "card.works"
)]
#[case("fit_card: { oval: { wide: 1 in } }", "card.oval_narrow")]
#[case(
    "measured: { thumb: { oval: { wide: 1 in, narrow: 15/16 } } }",
    "hand.oval_angle"
)]
#[case("fit_card: { works: yes, complaint: it pinches }", "card.complaint")]
#[case(
    "measured: { spans: [{ grip: fingertip, finger: ring, value: 4, kind: cut, along: arc }] }",
    "hand.fingertip_ring_span"
)]
#[case("owned: [{ name: the red one, surface: banana }]", "owned.covers")]
#[case("owned: [{ surface: \"sanded, 99999999\" }]", "owned.covers")]
#[case("owned: [{ surface: sanded 199 }]", "owned.covers")]
#[case("owned: [{ surface: 500 then 2000 grit }]", "owned.covers")]
fn what_is_odd_is_asked_not_refused(#[case] text: &str, #[case] about: &str) {
    let bowler = bowler(text);
    let asked: Vec<_> = bowler
        .questions()
        .iter()
        .map(|question| question.about())
        .collect();
    assert_eq!(asked, [about]);
    let text = bowler.questions()[0].text();
    assert!(text.ends_with(['?', '.']), "{text}");
    assert!(
        text.split_inclusive(['?', '.'])
            .all(|sentence| sentence.split_whitespace().count() <= 20),
        "{text}"
    );
}

#[rstest]
#[case("measured: { thumb: { cold: 36/64 }, ring: { cold: 76/64 } }")]
#[case("intent: straight\ncurve: none")]
#[case("curve: away\nintent: hook")]
#[case("hand: left\ndelivery: two hands\nthumb: out\nage: 9")]
#[case("hold_test: { passed: 12 lb, failed: 13 lb }\nball_now: { whose: house, weight: 12 lb }")]
#[case("owned: [{ surface: \"sanded, 2000\" }, { surface: polished }, { surface: \"\" }]")]
#[case("owned: [{ surface: sanded 200 }, { surface: sanded 10000 }, { surface: Matte }]")]
fn what_is_ordinary_is_not_asked(#[case] text: &str) {
    assert_eq!(bowler(text).questions(), []);
}

#[test]
fn spans_that_do_not_go_together_are_asked() {
    let twelve = "measured: { spans: [";
    let text = format!(
        "{twelve}{{ grip: fingertip, value: 4, {SPAN} }}, {{ grip: fingertip, value: 4 5/16, finger: ring, kind: full, \
         along: arc }}, {{ grip: conventional, value: 4 1/8, {SPAN} }}] }}"
    );
    let bowler = bowler(&text);
    let asked: Vec<_> = bowler
        .questions()
        .iter()
        .map(|question| question.about())
        .collect();
    assert_eq!(
        asked,
        ["hand.fingertip_ring_span", "hand.fingertip_middle_span"]
    );
}

#[test]
fn no_demo_bowler_has_a_fault_or_leaves_a_question() {
    assert!(demos().len() >= 8);
    for path in demos() {
        let bowler = Bowler::read(&Document::read(&path).unwrap())
            .unwrap_or_else(|faults| panic!("{faults}"));
        assert_eq!(bowler.questions(), [], "{}", path.display());
        assert!(bowler.name().is_some() && bowler.answer("hand.measured").is_some());
    }
}

#[rstest]
#[case("inf rpm")]
#[case("inf")]
#[case("rpm")]
#[case("quick")]
fn a_rev_rate_that_is_none_is_shown_how(#[case] rate: &str) {
    let faults = parse(&format!("rev_rate: {rate}")).unwrap_err();
    assert!(faults.to_string().contains("`300 rpm`"), "{faults}");
}

#[test]
fn json_and_yaml_tell_the_same() {
    for path in demos() {
        let text = std::fs::read_to_string(&path).unwrap();
        let tree: serde_yaml::Value = serde_yaml::from_str(&text).unwrap();
        let json = serde_json::to_string_pretty(&tree).unwrap();
        let from_json = Document::parse("profile.json", json.as_bytes(), Format::Json).unwrap();
        let from_json = Bowler::read(&from_json).unwrap_or_else(|faults| panic!("{faults}"));
        assert_eq!(Some(from_json), parse(&text).ok(), "{}", path.display());
    }
}

/// Pieces of profiles, right and wrong, to be put together anyhow.
fn fragment() -> impl Strategy<Value = String> {
    let keys = [
        "name",
        "hand",
        "thumb",
        "age",
        "ball_now",
        "hold_test",
        "aches",
        "rev_rate",
        "speed",
        "pap",
        "owned",
        "settled",
        "measured",
        "fit_card",
        "budget",
        "cold",
        "warm",
        "oval",
        "spans",
        "pitches",
        "value",
        "where",
        "middle",
        "date",
    ];
    let values = [
        "",
        "unknown",
        "~",
        "left",
        "none",
        "[]",
        "{}",
        "[1, 2]",
        "{ value: 3, where: pins }",
        "25/32",
        "4 1/4",
        "-1",
        "99999999999999999999",
        "1e400",
        "{ whose: none, weight: 12 lb }",
        "[{ cover: pearl }, x]",
        "\"\\e[0m\"",
        "$-3",
        "{ thumb: { cold: [1, 2], warm: {} } }",
        "{ spans: [{ finger: ring }] }",
        "2024-02-30",
        "é½",
        "?",
    ];
    (
        prop::sample::select(keys.to_vec()),
        prop::sample::select(values.to_vec()),
        0..3_usize,
    )
        .prop_map(|(key, value, depth)| {
            let indent = "  ".repeat(depth);
            format!("{indent}{key}: {value}\n")
        })
}

proptest! {
    #[test]
    fn no_profile_makes_the_reader_stumble(lines in prop::collection::vec(fragment(), 0..12)) {
        let _ = parse(&lines.concat());
    }

    #[test]
    fn no_value_makes_the_reader_stumble(key in "[a-z_]{3,12}", value in "\\PC{0,30}") {
        for text in [format!("{key}: {value}\n"), format!("measured: {{ {key}: {value} }}\n")] {
            let _ = parse(&text);
        }
        for key in ["age", "budget", "rev_rate", "pap", "fit_card", "owned", "measured", "speed", "settled", "name"] {
            let _ = parse(&format!("{key}: {value}\n"));
        }
    }
}
