//! `whatif` at the command line: for each reader, as JSON, and on input that is no profile.

use std::io::Write;
use std::path::Path;
use std::process::{Command, Output, Stdio};

use rstest::rstest;
use serde_json::Value;

fn demo(name: &str) -> String {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("catalog-demo/bowlers");
    folder.join(name).to_string_lossy().into_owned()
}

fn whatif(words: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_spanwright"));
    command.arg("whatif").args(words).output().unwrap()
}

fn said(output: &Output) -> String {
    let complaint = String::from_utf8_lossy(&output.stderr);
    assert_eq!(output.status.code(), Some(0), "{complaint}");
    String::from_utf8(output.stdout.clone()).unwrap()
}

#[test]
fn a_customer_hears_a_few_steps_and_a_fitter_all_of_them() {
    let bowler = demo("two-handed-no-thumb.yaml");
    let customer = said(&whatif(&[&bowler]));
    let fitter = said(&whatif(&[&bowler, "--for", "fitter"]));
    let steps = |text: &str| text.lines().filter(|line| line.starts_with("  - ")).count();
    assert!(steps(&customer) <= 7, "{customer}");
    assert!(steps(&fitter) > steps(&customer), "{fitter}");
    assert!(
        customer.contains("From 17.5 mph on, we'd pick"),
        "{customer}"
    );
    let unwrapped = fitter.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        unwrapped.contains("17 mph keeps, 17.1 mph changes"),
        "{fitter}"
    );
}

#[test]
fn the_document_tells_both_values_of_every_step() {
    let bowler = demo("sore-thumb.yaml");
    let text = said(&whatif(&[&bowler, "--json"]));
    assert_eq!(text, said(&whatif(&[&bowler, "--json"])));
    let document: Value = serde_json::from_str(&text).unwrap();
    // A straight ball is still missing, and the pearl gets too little of its turn done in this hand.
    assert_eq!(document["now"]["ball"], "daisy@14");
    let turns = document["turns"].as_array().unwrap();
    let budget: Vec<&Value> = turns
        .iter()
        .filter(|turn| turn["fact"] == "bowler.budget")
        .collect();
    assert_eq!(budget.len(), 2);
    for turn in budget {
        let keeps = turn["last_that_keeps"]["value"].as_i64().unwrap();
        let changes = turn["first_that_changes"]["value"].as_i64().unwrap();
        assert_eq!((keeps - changes).abs(), 1);
        assert_ne!(turn["picked"], document["now"]);
    }
}

#[rstest]
#[case("age: nine hundred\n", "the age")]
#[case("give_or_take: { speed: 1 mph }\n", "the ball speed isn't given")]
#[case("hold_test: { passed: 14 lb, failed: 12 lb }\n", "can't be too much")]
#[case("- a list\n", "must be a map")]
#[case("settled: { ball: daysy }\n", "did you mean `daisy`?")]
#[case("\u{1}\u{2}", "")]
fn what_is_no_profile_is_refused_in_words(#[case] profile: &str, #[case] words: &str) {
    let mut child = Command::new(env!("CARGO_BIN_EXE_spanwright"))
        .args(["whatif", "-"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut input = child.stdin.take().unwrap();
    input.write_all(profile.as_bytes()).unwrap();
    drop(input);
    let output = child.wait_with_output().unwrap();
    let complaint = String::from_utf8_lossy(&output.stderr);
    assert_eq!(output.status.code(), Some(1), "{complaint}");
    assert!(output.stdout.is_empty());
    assert!(!complaint.contains("panicked"), "{complaint}");
    assert!(complaint.contains(words), "{complaint}");
}

#[rstest]
#[case(&[])]
#[case(&["nobody.yaml", "--for", "everyone"])]
#[case(&["one.yaml", "two.yaml"])]
fn misuse_is_told_as_such(#[case] words: &[&str]) {
    assert_eq!(whatif(words).status.code(), Some(2));
}
