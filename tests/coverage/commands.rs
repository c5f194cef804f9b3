//! `rules coverage` and `rules diff` on the command line.

use std::fs;
use std::path::Path;
use std::process::{Command, Output};

use serde_json::Value;

fn spanwright(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_spanwright"))
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .args(arguments)
        .output()
        .unwrap()
}

fn said(output: &Output) -> String {
    String::from_utf8_lossy(&output.stdout).into_owned()
}

fn complained(output: &Output) -> String {
    String::from_utf8_lossy(&output.stderr).into_owned()
}

fn put(folder: &Path, name: &str, text: &str) -> String {
    let path = folder.join(name);
    fs::write(&path, text).unwrap();
    path.to_str().unwrap().to_owned()
}

#[test]
fn the_built_in_rules_pass_strictly() {
    let output = spanwright(&["rules", "coverage", "tests/cases", "--strict"]);
    assert_eq!(
        output.status.code(),
        Some(0),
        "{}{}",
        said(&output),
        complained(&output)
    );
    assert!(said(&output).ends_with("Nothing is missing.\n"));
}

#[test]
fn what_is_missing_is_told_and_only_strictly_refused() {
    let first = "catalog-demo/bowlers/first-ball.yaml";
    let plain = spanwright(&["rules", "coverage", first]);
    assert_eq!(plain.status.code(), Some(0));
    let text = said(&plain);
    assert!(text.contains("1 case:"), "{text}");
    // A learner comes by none of the rules for a hook.
    assert!(
        text.contains("  reactive-for-hook\n    never fired\n"),
        "{text}"
    );
    let strict = spanwright(&["rules", "coverage", first, "--strict"]);
    assert_eq!(strict.status.code(), Some(1));
    assert_eq!(said(&strict), text);
}

#[test]
fn json_tells_every_gap() {
    let output = spanwright(&["rules", "coverage", "catalog-demo/bowlers", "--json"]);
    assert_eq!(output.status.code(), Some(0), "{}", complained(&output));
    let answer: Value = serde_json::from_str(&said(&output)).unwrap();
    assert_eq!(answer["question"], "rules coverage");
    assert_eq!(answer["cases"], 11);
    let missing = answer["missing"].as_array().unwrap();
    let sides = missing
        .iter()
        .filter(|gap| gap["missing"] == "side")
        .count() as u64;
    let unfired = missing
        .iter()
        .filter(|gap| gap["missing"] == "fired")
        .count() as u64;
    let number = |key: &str| answer[key].as_u64().unwrap();
    assert_eq!(number("sides") - number("tried"), sides);
    assert_eq!(number("rules") - number("fired"), unfired);
    assert!(
        missing
            .iter()
            .all(|gap| gap["rule"].is_string() && gap["file"].is_string())
    );
}

#[test]
fn faulty_cases_are_all_told() {
    let folder = tempfile::tempdir().unwrap();
    let one = put(folder.path(), "one.yaml", "intnt: hook\n");
    let two = put(
        folder.path(),
        "two.yaml",
        "profile: {}\nexpect: { cover: polyester }\n",
    );
    let rules = put(folder.path(), "rules.yaml", "subject: nothing\nrules: []\n");
    let output = spanwright(&["rules", "coverage", &one, &two, "--rules", &rules]);
    assert_eq!(output.status.code(), Some(1));
    assert!(said(&output).is_empty());
    let told = complained(&output);
    for file in ["one.yaml", "two.yaml", "rules.yaml"] {
        assert!(told.contains(file), "{told}");
    }
}

#[test]
fn a_folder_without_a_case_is_no_success() {
    let folder = tempfile::tempdir().unwrap();
    let output = spanwright(&["rules", "coverage", folder.path().to_str().unwrap()]);
    assert_eq!(output.status.code(), Some(1));
    assert!(complained(&output).contains("holds no"));
    assert_eq!(spanwright(&["rules", "coverage"]).status.code(), Some(2));
    assert_eq!(
        spanwright(&["rules", "diff", "built-in"]).status.code(),
        Some(2)
    );
}

#[test]
fn a_diff_with_a_folder_of_rules() {
    let folder = tempfile::tempdir().unwrap();
    let file = put(
        folder.path(),
        "ours.yaml",
        "switch_off: [heavier-carries-better]\n",
    );
    let by_file = spanwright(&["rules", "diff", "built-in", &file]);
    let by_folder = spanwright(&["rules", "diff", "built-in", folder.path().to_str().unwrap()]);
    assert_eq!(by_file.status.code(), Some(0), "{}", complained(&by_file));
    assert_eq!(said(&by_file), said(&by_folder));
    assert!(said(&by_file).contains("Rules gone\n  heavier-carries-better (rules/weight.yaml)\n"));
    let same = spanwright(&["rules", "diff", "built-in", "built-in"]);
    assert_eq!(said(&same), "All 17 consultations come out the same.\n");
    let own = spanwright(&[
        "rules",
        "diff",
        "built-in",
        "built-in",
        "--cases",
        "tests/cases",
    ]);
    assert!(said(&own).starts_with("All "), "{}", complained(&own));
    let json = spanwright(&["rules", "diff", "built-in", &file, "--json"]);
    let answer: Value = serde_json::from_str(&said(&json)).unwrap();
    assert_eq!(answer["rules"][0]["change"], "removed");
}

#[test]
fn faults_of_both_sides_are_told() {
    let folder = tempfile::tempdir().unwrap();
    let old = put(folder.path(), "old.yaml", "switch_off: [no-such-rule]\n");
    let new = put(
        folder.path(),
        "new.yaml",
        "subject: no-such-subject\nrules: []\n",
    );
    let output = spanwright(&["rules", "diff", &old, &new]);
    assert_eq!(output.status.code(), Some(1));
    assert!(said(&output).is_empty());
    let told = complained(&output);
    assert!(
        told.contains("old.yaml") && told.contains("new.yaml"),
        "{told}"
    );
}

#[test]
fn a_rule_file_named_twice_is_one_file() {
    let folder = tempfile::tempdir().unwrap();
    let bad = put(folder.path(), "bad.yaml", "switch_off: [no-such-rule]\n");
    let told = complained(&spanwright(&["rules", "check", &bad]));
    assert!(told.contains("no-such-rule"), "{told}");
    let roundabout = folder.path().join(".").join("bad.yaml");
    let roundabout = roundabout.to_str().unwrap();
    for again in [bad.as_str(), roundabout] {
        let twice = spanwright(&["rules", "check", &bad, "--rules", again]);
        assert_eq!(twice.status.code(), Some(1));
        assert_eq!(
            complained(&twice).matches("no-such-rule").count(),
            told.matches("no-such-rule").count()
        );
    }
    // A good one neither repeats its own rules.
    let good = put(
        folder.path(),
        "good.yaml",
        "subject: ball\nrules: [{ id: ours, points: 1, because: We like it., source: own choice }]\n",
    );
    let twice = spanwright(&["rules", "check", &good, "--rules", &good]);
    assert_eq!(twice.status.code(), Some(0), "{}", complained(&twice));
}

#[test]
fn a_file_with_a_subject_may_only_switch_off_or_follow() {
    let folder = tempfile::tempdir().unwrap();
    for says in [
        "switch_off: [heavier-carries-better]",
        "follow: [thumb-forward-older-extrapolated]",
    ] {
        let file = put(
            folder.path(),
            "ours.yaml",
            &format!("subject: weight\n{says}\n"),
        );
        let output = spanwright(&["rules", "check", &file]);
        assert_eq!(output.status.code(), Some(0), "{}", complained(&output));
    }
    let bare = put(folder.path(), "bare.yaml", "subject: weight\n");
    let output = spanwright(&["rules", "check", &bare]);
    assert_eq!(output.status.code(), Some(1));
    assert!(complained(&output).contains("no `rules` about it"));
}
