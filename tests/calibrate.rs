//! The command `calibrate`: known arms and densities are found again, what can't be told says what to measure, and the lines
//! it prints set the shop's bench.

#![allow(clippy::unwrap_used, clippy::panic)]

#[path = "calibrate/cards.rs"]
mod cards;
#[path = "calibrate/refusals.rs"]
mod refusals;

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use rstest::rstest;
use serde_json::Value;
use spanwright::bowler::Bowler;
use spanwright::document::{Document, Format};
use spanwright::notation::Notation;
use tempfile::TempDir;

use cards::GRIPS;

/// Files in a folder of their own.
struct Files(TempDir, Vec<PathBuf>);

fn files(texts: impl IntoIterator<Item = String>) -> Files {
    let folder = tempfile::tempdir().unwrap();
    let paths = texts.into_iter().enumerate().map(|(index, text)| {
        let path = folder.path().join(format!("card-{index}.yaml"));
        fs::write(&path, text).unwrap();
        path
    });
    let paths = paths.collect();
    Files(folder, paths)
}

fn weighed(truth: (f64, f64), left: impl Fn(usize) -> bool) -> Vec<String> {
    let cards = GRIPS.iter().enumerate();
    cards
        .map(|(index, grip)| grip.weighed(truth, left(index)))
        .collect()
}

fn spanwright(arguments: &[&str], paths: &[PathBuf]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_spanwright"));
    command.args(arguments).args(paths).output().unwrap()
}

#[track_caller]
fn said(output: Output) -> String {
    let complaint = String::from_utf8_lossy(&output.stderr);
    assert_eq!(output.status.code(), Some(0), "{complaint}");
    assert!(complaint.is_empty(), "{complaint}");
    String::from_utf8(output.stdout).unwrap()
}

#[track_caller]
fn refused(texts: impl IntoIterator<Item = String>) -> String {
    let files = files(texts);
    let output = spanwright(&["calibrate"], &files.1);
    assert_eq!(output.status.code(), Some(1));
    assert!(output.stdout.is_empty());
    let folder = format!("{}/", files.0.path().display());
    String::from_utf8(output.stderr)
        .unwrap()
        .replace(&folder, "")
}

#[track_caller]
fn answer(arguments: &[&str], paths: &[PathBuf]) -> Value {
    let arguments = [&["calibrate", "--json"], arguments].concat();
    serde_json::from_str(&said(spanwright(&arguments, paths))).unwrap()
}

fn demo() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("catalog-demo/weighed");
    let entries = fs::read_dir(folder).unwrap();
    let mut paths: Vec<PathBuf> = entries.map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    paths
}

#[track_caller]
fn finds(answer: &Value, (arm, density): (f64, f64)) {
    for (key, truth) in [("arm", arm), ("density", density)] {
        let number = |field: &str| answer[key][field].as_f64().unwrap();
        let (value, error) = (number("value"), number("error"));
        assert!(error > 0.0 && error < 0.05 * truth, "{key}: error {error}");
        // Of these six all but one in a hundred tries stay within three errors; and four decimals round something away.
        let off = (value - truth).abs();
        assert!(
            off < 3.0 * error + 1e-4,
            "{key}: {value} ± {error}, not {truth}"
        );
    }
}

#[rstest]
#[case((3.2, 1.18))]
#[case((5.0, 1.05))]
#[case((2.0, 1.4))]
fn a_known_arm_and_density_are_found_again(#[case] truth: (f64, f64)) {
    // Two of the five are left hands.
    let files = files(weighed(truth, |index| index % 2 == 1));
    let answer = answer(&[], &files.1);
    assert_eq!(answer["contract"], 1);
    assert_eq!(answer["question"], "calibrate");
    assert_eq!(
        (&answer["balls"], &answer["readings"]),
        (&5.into(), &20.into())
    );
    finds(&answer, truth);
    // Readings this fine leave less than half a step of the weights, 0.16 oz.
    assert!(answer["residual_rms"].as_f64().unwrap() < 0.08);
}

/// Weights are rounded sixteen times as coarsely as static weights, and the errors must say so: the truth lies within one standard
/// error at least 68 times in 100, within two at least 95 (textbook), less three spreads of that count for chance.
#[test]
fn the_reported_error_is_not_too_small() {
    let shop = spanwright::advice::Shop::demo().unwrap();
    let tries = 60;
    let mut within = [[0; 2]; 2];
    for number in 0..tries {
        // Truths far enough apart that every reading is rounded anew.
        let truth = (
            2.0 + 0.05 * f64::from(number),
            1.05 + 0.0061 * f64::from(number),
        );
        let cards = weighed(truth, |_| false).into_iter().map(|text| {
            let document = Document::parse("card", text.as_bytes(), Format::Yaml).unwrap();
            (text, Bowler::read(&document).unwrap())
        });
        let cards: Vec<(String, Bowler)> = cards.collect();
        let found = shop.calibrate(&cards).unwrap_or_else(|why| panic!("{why}"));
        for ((setting, truth), within) in found
            .settings()
            .iter()
            .zip([truth.0, truth.1])
            .zip(&mut within)
        {
            let off = (setting.value() - truth).abs() / setting.error();
            within[0] += i32::from(off < 1.0);
            within[1] += i32::from(off < 2.0);
        }
    }
    for [one, two] in within {
        // 60 tries: 41 less 3 √(60 · 0.68 · 0.32), and 57 less 3 √(60 · 0.95 · 0.05).
        assert!(one >= 41 - 11 && two >= 57 - 5, "{within:?}");
    }
}

/// Derived: a left hand's ball is the mirror image, so with right and left exchanged everywhere the same comes out; exchanged
/// in the readings alone it doesn't fit.
#[test]
fn right_and_left_are_as_they_are_seen() {
    let truth = (3.2, 1.18);
    let right = files(weighed(truth, |_| false));
    let left = files(weighed(truth, |_| true));
    let found = answer(&[], &right.1);
    assert_eq!(found, answer(&[], &left.1));
    let hand = "hand: left";
    let wrong = weighed(truth, |_| true).into_iter().map(|card| {
        let (holes, readings) = card.split_at(card.find("  before").unwrap());
        let readings = readings.replace("left", "x").replace("right", "left");
        let card = format!("{holes}{}", readings.replace('x', "right"));
        assert!(card.contains(hand));
        card
    });
    let wrong = answer(&[], &files(wrong).1);
    let rms = |answer: &Value| answer["residual_rms"].as_f64().unwrap();
    assert!(rms(&wrong) > 1.5 * rms(&found), "{wrong}");
}

/// Invented readings, made up to suit 3.2 in and 1.18 g/cc, as the files say.
#[test]
fn the_demo_tells_its_shops_bench() {
    let answer = answer(&[], &demo());
    assert_eq!(
        (&answer["balls"], &answer["readings"]),
        (&4.into(), &16.into())
    );
    finds(&answer, (3.2, 1.18));
}

#[test]
fn text_says_both_with_their_errors_beside_what_is_set() {
    let text = said(spanwright(&["calibrate"], &demo()));
    let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
    let answer = answer(&[], &demo());
    let [arm, density] = ["arm", "density"].map(|key| {
        let number = |field: &str| answer[key][field].as_f64().unwrap();
        (number("value"), number("error"))
    });
    for words in [
        "16 readings of 4 balls".to_owned(),
        format!(
            "{:.3} in, give or take {:.3} in (set now: 3.000 in)",
            arm.0, arm.1
        ),
        format!(
            "{:.3} g/cc, give or take {:.3} g/cc (set now: 1.2 g/cc)",
            density.0, density.1
        ),
        "oz a reading".to_owned(),
        "Weights are kept to 0.01 lb".to_owned(),
    ] {
        assert!(flat.contains(&words), "no {words}: {text}");
    }
    assert!(
        text.lines().all(|line| line.chars().count() <= 80),
        "{text}"
    );
    assert_eq!(text, said(spanwright(&["calibrate"], &demo())));
}

/// The printed lines, saved as they stand.
fn saved(folder: &TempDir, more: &[&str]) -> PathBuf {
    let text = said(spanwright(&[&["calibrate"], more].concat(), &demo()));
    let path = folder.path().join("our-bench.yaml");
    fs::write(&path, &text[text.find("# Fitted").unwrap()..]).unwrap();
    path
}

#[test]
fn the_printed_lines_set_the_bench() {
    let folder = tempfile::tempdir().unwrap();
    let path = saved(&folder, &[]);
    let rules = path.to_str().unwrap();
    let before = answer(&[], &demo());
    assert_eq!(before["rules_file"], fs::read_to_string(&path).unwrap());
    said(spanwright(&["rules", "check", rules], &[]));

    let after = answer(&["--rules", rules], &demo());
    for key in ["arm", "density"] {
        let set = after[key]["setting"].as_f64().unwrap();
        let found = before[key]["value"].as_f64().unwrap();
        assert!((set - found).abs() <= 0.0005 + 1e-9, "{key}: {set}");
        assert_ne!(before[key]["setting"], after[key]["setting"]);
        assert_eq!(after[key]["agrees"], true);
        assert_eq!(before[key]["rule"], after[key]["rule"]);
    }
    let notes = after["notes"].to_string();
    assert!(notes.contains("two files can't both state it"), "{notes}");
    assert!(
        notes.contains("bench.scale_arm may stay as it is"),
        "{notes}"
    );

    // Advice weighs the drilled ball on the new scale.
    let league =
        Path::new(env!("CARGO_MANIFEST_DIR")).join("catalog-demo/bowlers/league-tired-ball.yaml");
    let advise = |more: &[&str]| -> Value {
        let arguments = [&["advise", "--json"], more].concat();
        serde_json::from_str(&said(spanwright(&arguments, std::slice::from_ref(&league)))).unwrap()
    };
    let [plain, ours] = [advise(&[]), advise(&["--rules", rules])];
    let balance = |advice: &Value| advice["drilling"]["balance"].clone();
    assert!(balance(&plain).is_object(), "{plain}");
    assert_ne!(balance(&plain), balance(&ours));
}

/// What the shop set before is not two rules but one: the new lines take its place, whatever it was called.
#[rstest]
#[case::overridden("  - id: scale-arm-three-inches\n    override: true\n", "", true)]
#[case::replaced("  - id: our-arm\n", "switch_off: [scale-arm-three-inches]\n", false)]
fn a_shops_own_setting_is_replaced(
    #[case] rule: &str,
    #[case] more: &str,
    #[case] overrides: bool,
) {
    let folder = tempfile::tempdir().unwrap();
    let old = folder.path().join("old.yaml");
    let body = "    start: 4 in\n    because: So we guessed.\n    source: own choice\n";
    fs::write(
        &old,
        format!("subject: bench.scale_arm\n{more}rules:\n{rule}{body}"),
    )
    .unwrap();
    let answer = answer(&["--rules", old.to_str().unwrap()], &demo());
    assert_eq!(answer["arm"]["setting"], 4.0);
    let lines = answer["rules_file"].as_str().unwrap();
    let arm = &lines[..lines.find("bench.density_out").unwrap()];
    assert_eq!(arm.contains("override: true"), overrides, "{lines}");
    assert!(answer["notes"].to_string().contains("old.yaml"), "{answer}");
    // In place of the old rule, the file is read without fault.
    fs::write(&old, format!("{more}{lines}")).unwrap();
    said(spanwright(&["rules", "check", old.to_str().unwrap()], &[]));
}

#[test]
fn other_rules_of_the_setting_are_told() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("more.yaml");
    let rule =
        "  - { id: longer-by-one, add: 1 in, because: So we thought., source: own choice }\n";
    fs::write(&path, format!("subject: bench.scale_arm\nrules:\n{rule}")).unwrap();
    let answer = answer(&["--rules", path.to_str().unwrap()], &demo());
    assert_eq!(answer["arm"]["setting"], 4.0);
    let found = answer["arm"]["value"].as_f64().unwrap();
    let steps = (found * 1000.0).round() as i64 + 1000;
    let words = format!("it comes to {}", Notation::Thousandths.write(steps));
    assert!(answer["notes"].to_string().contains(&words), "{answer}");
}
