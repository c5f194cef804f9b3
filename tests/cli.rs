//! The command line keeps its promises: exit codes, faults in words, JSON that adds up, plain text in a pipe.

#![allow(clippy::unwrap_used)]

#[path = "cli/friction.rs"]
mod friction;
#[path = "cli/target.rs"]
mod target;

use std::ffi::OsStr;
use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

use rstest::rstest;
use serde_json::Value;

fn demo(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("catalog-demo/bowlers")
        .join(format!("{name}.yaml"))
}

fn spanwright<S: AsRef<OsStr>>(arguments: impl IntoIterator<Item = S>) -> Output {
    Command::new(env!("CARGO_BIN_EXE_spanwright"))
        .args(arguments)
        .output()
        .unwrap()
}

fn advise(bowler: &Path, more: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_spanwright"));
    command
        .arg("advise")
        .arg(bowler)
        .args(more)
        .output()
        .unwrap()
}

/// Standard output of a command that went well.
fn said(output: Output) -> String {
    assert_eq!(output.status.code(), Some(0), "{}", complaint(&output));
    assert!(output.stderr.is_empty(), "{}", complaint(&output));
    String::from_utf8(output.stdout).unwrap()
}

fn complaint(output: &Output) -> String {
    String::from_utf8_lossy(&output.stderr).into_owned()
}

/// Bad input: nothing on standard output, words on standard error.
fn refused(output: &Output) -> String {
    assert_eq!(output.status.code(), Some(1), "{}", complaint(output));
    assert!(output.stdout.is_empty());
    let words = complaint(output);
    assert!(!words.contains("panicked"), "{words}");
    words
}

#[rstest]
#[case::no_verb(&[])]
#[case::unknown_verb(&["advice"])]
#[case::no_bowler(&["advise"])]
#[case::unknown_flag(&["advise", "x.yaml", "--loud"])]
#[case::unknown_reader(&["advise", "x.yaml", "--for", "everyone"])]
#[case::no_ball(&["fit", "x.yaml"])]
#[case::two_balls(&["fit", "x.yaml", "--ball", "daisy", "--used"])]
#[case::flag_without_value(&["advise", "x.yaml", "--catalog"])]
#[case::two_bowlers(&["advise", "x.yaml", "y.yaml"])]
#[case::no_verb_after_rules(&["rules"])]
fn misuse_is_exit_code_2(#[case] arguments: &[&str]) {
    let output = spanwright(arguments);
    assert_eq!(output.status.code(), Some(2));
    assert!(output.stdout.is_empty());
    assert!(
        complaint(&output).contains("--help"),
        "{}",
        complaint(&output)
    );
}

#[rstest]
#[case(&["--help"])]
#[case(&["advise", "--help"])]
#[case(&["--version"])]
fn help_is_no_misuse(#[case] arguments: &[&str]) {
    assert!(!said(spanwright(arguments)).is_empty());
}

#[test]
fn bad_profiles_are_exit_code_1_with_the_file_named() {
    let folder = tempfile::tempdir().unwrap();
    let file = |name: &str, bytes: &[u8]| {
        let path = folder.path().join(name);
        fs::write(&path, bytes).unwrap();
        path
    };
    let profiles = [
        folder.path().join("missing.yaml"),
        folder.path().to_path_buf(),
        file("empty.yaml", b""),
        file("latin.yaml", b"name: Zo\xeb\n"),
        file("broken.yaml", b"name: [Anna\n"),
        file("broken.json", b"{\"name\": "),
        file("unknown-key.yaml", b"shoe_size: 12\n"),
    ];
    for profile in profiles {
        let words = refused(&advise(&profile, &[]));
        let name = profile.file_name().unwrap().to_string_lossy();
        assert!(words.contains(&*name), "{name}: {words}");
    }
}

#[test]
fn faults_of_the_shop_and_of_the_bowler_are_told_together() {
    let folder = tempfile::tempdir().unwrap();
    let bowler = folder.path().join("missing-bowler.yaml");
    let words = refused(&advise(&bowler, &["--rules", "missing-rules.yaml"]));
    assert!(
        words.contains("missing-bowler.yaml") && words.contains("missing-rules.yaml"),
        "{words}"
    );
}

#[rstest]
fn json_adds_up(
    #[values(
        "first-ball",
        "straight-only",
        "league-tired-ball",
        "left-handed-child",
        "two-handed-no-thumb",
        "sore-thumb",
        "backup-bowler",
        "knows-nothing"
    )]
    name: &str,
) {
    let answer: Value = serde_json::from_str(&said(advise(&demo(name), &["--json"]))).unwrap();
    assert_eq!(answer["contract"], 1);
    assert_eq!(answer["version"], env!("CARGO_PKG_VERSION"));
    assert!(!answer["digest"].as_str().unwrap().is_empty());
    for (list, sum) in [("picks", "total"), ("settled", "total")] {
        for entry in answer[list].as_array().unwrap() {
            assert_eq!(entry[sum], sum_of_lines(entry), "{name}: {entry}");
        }
    }
    for number in answer["spec"]["numbers"].as_array().unwrap() {
        if number["value"].is_null() {
            assert!(number["blank"].is_string(), "{name}: {number}");
        } else {
            assert_eq!(number["value"], sum_of_lines(number), "{name}: {number}");
        }
    }
}

fn sum_of_lines(entry: &Value) -> i64 {
    entry["lines"]
        .as_array()
        .unwrap()
        .iter()
        .map(|line| line["points"].as_i64().unwrap())
        .sum()
}

#[test]
fn the_same_question_gives_the_same_bytes() {
    for arguments in [&["--json"][..], &["--for", "fitter"]] {
        let ask = || said(advise(&demo("first-ball"), arguments));
        assert_eq!(ask(), ask());
    }
}

#[rstest]
fn a_pipe_gets_plain_text_within_80_columns(
    #[values("customer", "league", "fitter")] reader: &str,
) {
    let text = said(advise(&demo("first-ball"), &["--for", reader]));
    assert!(!text.contains('\u{1b}'));
    for line in text.lines() {
        assert!(line.chars().count() <= 80, "{line}");
    }
}

#[test]
fn escapes_in_a_name_come_out_harmless() {
    let folder = tempfile::tempdir().unwrap();
    let bowler = folder.path().join("bowler.json");
    fs::write(&bowler, r#"{"name": "An\u001b]0;owned\u0007\u001b[2Jna"}"#).unwrap();
    for more in [&[][..], &["--json"], &["--for", "fitter"]] {
        let output = advise(&bowler, more);
        for bytes in [&output.stdout, &output.stderr] {
            let harmful = |byte: &&u8| byte.is_ascii_control() && **byte != b'\n';
            assert_eq!(
                bytes.iter().find(harmful),
                None,
                "{}",
                String::from_utf8_lossy(bytes)
            );
        }
    }
}

#[rstest]
#[case::yaml("intent: straight")]
#[case::json("{\"intent\": \"straight\"}")]
fn standard_input_is_read_as_yaml_or_json(#[case] profile: &str) {
    let mut child = Command::new(env!("CARGO_BIN_EXE_spanwright"))
        .args(["advise", "-"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    child
        .stdin
        .take()
        .unwrap()
        .write_all(profile.as_bytes())
        .unwrap();
    assert!(!said(child.wait_with_output().unwrap()).is_empty());
}

#[test]
fn a_closed_pipe_is_quiet() {
    let mut child = Command::new(env!("CARGO_BIN_EXE_spanwright"))
        .arg("facts")
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stdout.take());
    let output = child.wait_with_output().unwrap();
    assert_eq!(output.status.code(), Some(0));
    assert_eq!(complaint(&output), "");
}

#[test]
fn an_output_file_is_written_whole_or_left_alone() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("advice.txt");
    let to = out.to_str().unwrap();
    assert_eq!(said(advise(&demo("first-ball"), &["-o", to])), "");
    let written = fs::read_to_string(&out).unwrap();
    assert_eq!(written, said(advise(&demo("first-ball"), &[])));

    refused(&advise(&folder.path().join("missing.yaml"), &["-o", to]));
    assert_eq!(fs::read_to_string(&out).unwrap(), written);
    assert_eq!(
        fs::read_dir(folder.path()).unwrap().count(),
        1,
        "nothing half-written is left"
    );
    refused(&advise(&demo("first-ball"), &["-o", "/nowhere/at/all.txt"]));
}

#[test]
fn a_ball_of_the_customers_choice_is_marked_as_theirs() {
    let answer = said(advise(&demo("first-ball"), &["--json"]));
    let answer: Value = serde_json::from_str(&answer).unwrap();
    let second = answer["picks"][1]["ball"].as_str().unwrap().to_owned();
    let bowler = demo("first-ball");
    let fit = |more: &[&str]| {
        let bowler = bowler.to_str().unwrap();
        let arguments: Vec<&str> = ["fit", bowler, "--ball", &second]
            .into_iter()
            .chain(more.iter().copied())
            .collect();
        said(spanwright(arguments))
    };
    assert!(fit(&[]).contains("Your own choice"));
    let answer: Value = serde_json::from_str(&fit(&["--json"])).unwrap();
    assert_eq!(answer["question"], "fit");
    assert_eq!(answer["spec"]["for_ball"], *second);
}

/// The old ball of the demo in place of one from the shelf: every way to go on beside its spec.
#[test]
fn an_old_ball_is_fitted_with_every_offer_beside() {
    let bowler = demo("sore-thumb");
    let fit = |more: &[&str]| {
        let arguments = ["fit", bowler.to_str().unwrap(), "--used"];
        said(spanwright(arguments.iter().chain(more)))
    };
    let text = fit(&[]);
    // Health comes before any quote (common practice, no source).
    let health = text.find("See a doctor").unwrap();
    let quote = text.find("What can be done about the grey ball").unwrap();
    assert!(health < quote, "{text}");
    let answer: Value = serde_json::from_str(&fit(&["--json"])).unwrap();
    assert_eq!(answer["question"], "fit");
    assert_eq!(answer["spec"]["for_ball"], "the grey ball");
    let offers = answer["offers"]["list"].as_array().unwrap();
    let ids: Vec<&str> = offers.iter().map(|o| o["id"].as_str().unwrap()).collect();
    assert_eq!(ids, ["ease", "slug", "inserts", "redrill", "plain"]);
    assert_eq!(offers[3]["quote"], answer["quote"]);
}

#[test]
fn without_a_card_there_is_no_old_ball() {
    let bowler = demo("first-ball");
    let output = spanwright(["fit", bowler.to_str().unwrap(), "--used"]);
    assert!(refused(&output).contains("fit card"));
}

#[test]
fn an_unknown_ball_is_bad_input_and_the_nearest_name_is_given() {
    let bowler = demo("first-ball");
    let output = spanwright(["fit", bowler.to_str().unwrap(), "--ball", "dasy"]);
    let words = refused(&output);
    assert!(
        words.contains("`dasy`") && words.contains("did you mean `daisy"),
        "{words}"
    );
}

#[test]
fn facts_lists_every_fact_with_its_values() {
    let text = said(spanwright(["facts"]));
    assert!(text.contains("bowler.intent\n"), "{text}");
    let answer: Value = serde_json::from_str(&said(spanwright(["facts", "--json"]))).unwrap();
    let facts = answer["facts"].as_array().unwrap();
    assert!(facts.len() > 80, "{} facts", facts.len());
    for fact in facts {
        for key in ["name", "meaning", "kind", "origin", "from"] {
            assert!(!fact[key].as_str().unwrap().is_empty(), "{fact}");
        }
        assert!(text.contains(&format!("{}\n", fact["name"].as_str().unwrap())));
    }
}

#[test]
fn rules_check_counts_or_complains() {
    let text = said(spanwright(["rules", "check"]));
    assert!(
        text.contains(" rules in ") && text.contains(" read without fault"),
        "{text}"
    );

    let folder = tempfile::tempdir().unwrap();
    let one = folder.path().join("one.yaml");
    let two = folder.path().join("two.yaml");
    fs::write(&one, "subject: ball\nrules:\n  - id: a\n").unwrap();
    fs::write(&two, "subject: bal\nrules: []\n").unwrap();
    let output = spanwright([
        "rules",
        "check",
        one.to_str().unwrap(),
        two.to_str().unwrap(),
    ]);
    let words = refused(&output);
    assert!(
        words.contains("one.yaml") && words.contains("two.yaml"),
        "{words}"
    );
}

/// A fit that doesn't sit right: numbers in JSON add up, and a change never leaves the card by more than a quarter.
#[rstest]
fn refit_adds_up(#[values("hanging-thumb", "sore-thumb", "knows-nothing")] name: &str) {
    let file = demo(name);
    let answer: Value = serde_json::from_str(&said(spanwright([
        OsStr::new("refit"),
        file.as_os_str(),
        OsStr::new("--json"),
    ])))
    .unwrap();
    assert_eq!(answer["question"], "refit");
    for cause in answer["causes"].as_array().unwrap() {
        assert_eq!(cause["total"], sum_of_lines(cause), "{name}: {cause}");
    }
    for change in answer["changes"].as_array().unwrap() {
        if change["value"].is_null() {
            assert!(change["blank"].is_string(), "{name}: {change}");
        } else {
            assert_eq!(change["value"], sum_of_lines(change), "{name}: {change}");
        }
    }
}
