//! `roll` at the command line: files, exit codes, and bad input told in words.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use rstest::rstest;

/// A thrower in a file; what a case changes stands in place of its line. Invented.
fn profile(folder: &Path, speed: &str, revs: &str, tilt: &str) -> PathBuf {
    let file = folder.join("bowler.yaml");
    let text = format!(
        "intent: hook\nexperience: league\nball_now: {{ whose: own, weight: 14 lb }}\n{speed}\n{revs}\nrotation: 45 deg\n{tilt}\n"
    );
    fs::write(&file, text).unwrap();
    file
}

const SPEED: &str = "speed: { value: 16 mph, where: release }";
const REVS: &str = "rev_rate: 280 rpm";
const TILT: &str = "tilt: 13 deg";

fn roll(bowler: &Path, more: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_spanwright"));
    command.arg("roll").arg(bowler).args(more).output().unwrap()
}

#[rstest]
#[case::zero_speed("speed: { value: 0 mph, where: release }", REVS, TILT, &["--ball", "daisy"], "speed")]
#[case::no_speed("", REVS, TILT, &["--ball", "daisy"], "the ball speed")]
#[case::speed_without_a_place("speed: 16 mph", REVS, TILT, &["--ball", "daisy"], "the speed must be a map")]
#[case::drill(SPEED, "rev_rate: 3000 rpm", TILT, &["--ball", "daisy"], "700 rpm")]
#[case::faster_drill(SPEED, "rev_rate: 4000 rpm", TILT, &["--ball", "daisy"], "can't be 4000 rpm")]
#[case::no_revs(SPEED, "", TILT, &["--ball", "daisy"], "the rev rate")]
#[case::a_level(SPEED, "rev_rate: high", TILT, &["--ball", "daisy"], "as a number")]
#[case::tilt(SPEED, REVS, "tilt: 95 deg", &["--ball", "daisy"], "90 degrees")]
#[case::ball(SPEED, REVS, TILT, &["--ball", "daisie"], "did you mean `daisy`?")]
#[case::far_from_any_ball(SPEED, REVS, TILT, &["--ball", "zzzzzzzzz"], "by its id in the shop's models.csv")]
#[case::far_from_any_lane(SPEED, REVS, TILT, &["--ball", "daisy", "--lane", "zzzzzzzzz"], "medium-house")]
#[case::no_ball(SPEED, REVS, TILT, &["--ball", ""], "no ball was named")]
#[case::weight(SPEED, REVS, TILT, &["--ball", "daisy@heavy"], "is no weight")]
#[case::lane(SPEED, REVS, TILT, &["--ball", "daisy", "--lane", "medium-hose"], "did you mean `medium-house`?")]
#[case::three(SPEED, REVS, TILT, &["--ball", "daisy", "--ball", "oxeye", "--ball", "ribwort"], "3 balls were named")]
#[case::one_drawn(SPEED, REVS, TILT, &["--ball", "daisy", "-o", "never-written.svg", "--json"], "not both")]
fn bad_input_is_told(
    #[case] speed: &str,
    #[case] revs: &str,
    #[case] tilt: &str,
    #[case] more: &[&str],
    #[case] told: &str,
) {
    let folder = tempfile::tempdir().unwrap();
    let output = roll(&profile(folder.path(), speed, revs, tilt), more);
    let words = String::from_utf8_lossy(&output.stderr).into_owned();
    assert_eq!(output.status.code(), Some(1), "{words}");
    assert!(output.stdout.is_empty());
    assert!(!words.contains("panicked"), "{words}");
    assert!(words.contains(told), "{words}");
    assert!(!Path::new("never-written.svg").exists());
}

#[test]
fn text_json_and_a_drawing_are_written() {
    let folder = tempfile::tempdir().unwrap();
    let bowler = profile(folder.path(), SPEED, REVS, TILT);
    let two = ["--ball", "daisy@14", "--ball", "hawkbit@14"];
    let text = roll(&bowler, &two);
    assert_eq!(text.status.code(), Some(0));
    assert!(String::from_utf8(text.stdout).unwrap().contains("Hawkbit"));

    let json = roll(&bowler, &[&two[..], &["--json"]].concat());
    let document: serde_json::Value = serde_json::from_slice(&json.stdout).unwrap();
    assert_eq!(document["question"], "roll");
    assert_eq!(document["balls"].as_array().unwrap().len(), 2);
    assert_eq!(
        document["balls"][0]["stations"].as_array().unwrap().len(),
        61
    );

    let drawing = folder.path().join("difference.svg");
    let drawn = roll(
        &bowler,
        &[&two[..], &["-o", drawing.to_str().unwrap()]].concat(),
    );
    assert_eq!(drawn.status.code(), Some(0));
    assert!(fs::read_to_string(drawing).unwrap().starts_with("<"));
}

/// What a shop's own folder or rules can get wrong about a lane: told with the file, and nothing is rolled.
#[test]
fn a_lane_or_a_grip_that_cannot_be_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let bowler = profile(folder.path(), SPEED, REVS, TILT);
    let shop = folder.path().join("shop");
    fs::create_dir(&shop).unwrap();
    for file in fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/catalog-demo")).unwrap() {
        let file = file.unwrap().path();
        if file.is_file() {
            fs::copy(&file, shop.join(file.file_name().unwrap())).unwrap();
        }
    }
    let lanes = fs::read_to_string(shop.join("lanes.yaml")).unwrap();
    let longer = lanes.replace("oil: 34 ft", "oil: 70 ft");
    assert_ne!(lanes, longer);
    fs::write(shop.join("lanes.yaml"), longer).unwrap();
    let shop = shop.to_str().unwrap();
    told(
        &roll(&bowler, &["--ball", "daisy", "--catalog", shop]),
        "the oil can't be 70.0 ft long",
    );

    let rules = folder.path().join("grip.yaml");
    let file = rules.to_str().unwrap();
    for (grip, words) in [("0", "at least 0.005"), ("3", "at most 0.100")] {
        let text = format!(
            "rules:\n  - id: oil-solid\n    override: true\n    subject: friction.oil\n    when: {{ roll.cover: solid }}\n    \
             start: {grip}\n    because: Tried.\n    source: own choice\n"
        );
        fs::write(&rules, text).unwrap();
        told(
            &roll(&bowler, &["--ball", "hawkbit", "--rules", file]),
            words,
        );
    }
}

fn told(output: &Output, wanted: &str) {
    let words = String::from_utf8_lossy(&output.stderr).into_owned();
    assert_eq!(output.status.code(), Some(1), "{words}");
    assert!(
        words.contains(wanted) && !words.contains("panicked"),
        "{words}"
    );
    assert!(output.stdout.is_empty());
}

/// 550 rpm at 13 mph on short oil: no line keeps a solid on the lane to the pocket, and it is said so.
#[test]
fn a_ball_that_cannot_be_kept_on_the_lane_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let file = profile(
        folder.path(),
        "speed: { value: 13 mph, where: release }",
        "rev_rate: 550 rpm",
        "tilt: 10 deg",
    );
    let steep = fs::read_to_string(&file)
        .unwrap()
        .replace("rotation: 45 deg", "rotation: 80 deg");
    fs::write(&file, steep).unwrap();
    let alone = roll(&file, &["--ball", "hawkbit@14", "--lane", "short-flat"]);
    let words = String::from_utf8(alone.stdout).unwrap();
    assert_eq!(alone.status.code(), Some(0));
    let words = words.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        words.contains("No line was found that brings Hawkbit"),
        "{words}"
    );
    let beside = roll(
        &file,
        &[
            "--ball",
            "daisy@14",
            "--ball",
            "hawkbit@14",
            "--lane",
            "short-flat",
        ],
    );
    let words = String::from_utf8(beside.stdout).unwrap();
    assert!(words.contains("Hawkbit leaves the lane"), "{words}");
    assert!(!words.contains("still hooking"), "{words}");
}
