//! Balls that can't be asked about: exit code 1, nothing on standard output, and words that help.

use std::fs;
use std::path::Path;
use std::process::{Command, Output};

use rstest::rstest;

use crate::file;

fn spanwright(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_spanwright"))
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .args(arguments)
        .output()
        .unwrap()
}

fn refused(arguments: &[&str]) -> String {
    let output = spanwright(arguments);
    let words = String::from_utf8(output.stderr).unwrap();
    assert_eq!(output.status.code(), Some(1), "{words}");
    assert!(output.stdout.is_empty());
    words
}

#[rstest]
#[case("daisi", "did you mean `daisy`?")]
#[case("Cats-ear@12", "did you mean `cats-ear`?")]
#[case("zzzzzzzz", "no ball `zzzzzzzz` in the catalog")]
#[case("", "no ball was named")]
#[case("   ", "no ball was named")]
#[case("@", "no ball was named")]
#[case("@12", "no ball was named")]
#[case(
    "daisy@heavy",
    "`heavy` is no weight; `daisy` is on the shelf in 6 lb, 7 lb"
)]
#[case("daisy@", "no weight stands behind the `@` of `daisy@`")]
#[case("daisy@@", "`@` is no weight")]
#[case("daisy@-12", "`-12` is no weight")]
#[case(
    "daisy@12.5",
    "`daisy` is not on the shelf in 12.5 lb; on the shelf: 6 lb"
)]
#[case(
    "eyebright@16",
    "`eyebright` is not on the shelf in 16 lb; on the shelf: 10 lb, 12 lb, 13 lb, 14 lb, 15 lb"
)]
#[case("d\u{202e}aisy", "no ball `d\u{fffd}aisy`")]
#[case("\u{1b}[31mdaisy", "no ball `\u{fffd}[31mdaisy`")]
#[case("ｄａｉｓｙ", "no ball `ｄａｉｓｙ`")]
#[case("daisy@１２", "is no weight")]
#[case("🎳", "no ball `🎳`")]
fn a_ball_that_cant_be_asked_about(#[case] ball: &str, #[case] words: &str) {
    let bowler = file("first-ball");
    let bowler = bowler.to_str().unwrap();
    let why_not = refused(&["advise", bowler, "--why-not", ball]);
    assert!(why_not.contains(words), "{why_not}");
    let first = refused(&["compare", bowler, ball, "daisy"]);
    let second = refused(&["compare", bowler, "daisy", ball]);
    assert_eq!((&first, &second), (&why_not, &why_not));
    // `fit` says it in the same words.
    assert_eq!(
        refused(&["fit", bowler, &format!("--ball={ball}")]),
        why_not
    );
}

#[test]
fn a_very_long_name_is_cut_short() {
    let bowler = file("first-ball");
    let long = "daisy".repeat(2000);
    for ball in [long.clone(), format!("daisy@{long}")] {
        let words = refused(&["advise", bowler.to_str().unwrap(), "--why-not", &ball]);
        assert!(words.contains('…') && words.len() < 300, "{words}");
    }
}

#[rstest]
#[case("daisy", "daisy", "daisy@12")]
#[case("daisy@12", "daisy", "daisy@12")]
#[case("daisy@6", "daisy@6.0", "daisy@6")]
fn a_ball_is_not_held_against_itself(#[case] one: &str, #[case] other: &str, #[case] ball: &str) {
    let bowler = file("first-ball");
    let words = refused(&["compare", bowler.to_str().unwrap(), one, other]);
    assert!(
        words.starts_with(&format!("`{ball}` was named twice")),
        "{words}"
    );
}

/// A model may be in the catalog and sold out.
#[test]
fn a_model_with_no_ball_on_the_shelf() {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("catalog-demo");
    let folder = tempfile::tempdir().unwrap();
    for name in ["models.csv", "cores.csv", "prices.yaml", "shelf.csv"] {
        let text = fs::read_to_string(demo.join(name)).unwrap();
        let sold_out = |line: &&str| name != "shelf.csv" || !line.starts_with("oxeye,");
        let kept: Vec<&str> = text.lines().filter(sold_out).collect();
        fs::write(folder.path().join(name), kept.join("\n")).unwrap();
    }
    let bowler = file("first-ball");
    let (bowler, catalog) = (bowler.to_str().unwrap(), folder.path().to_str().unwrap());
    for ball in ["oxeye", "oxeye@12"] {
        let words = refused(&["advise", bowler, "--catalog", catalog, "--why-not", ball]);
        assert_eq!(words, "`oxeye` is not on the shelf in any weight\n");
        let words = refused(&["compare", bowler, "daisy", ball, "--catalog", catalog]);
        assert_eq!(words, "`oxeye` is not on the shelf in any weight\n");
    }
}

#[rstest]
#[case(&["compare", "x.yaml"])]
#[case(&["compare", "x.yaml", "daisy"])]
#[case(&["compare", "x.yaml", "daisy", "oxeye", "cowslip"])]
#[case(&["advise", "x.yaml", "--why-not"])]
#[case(&["fit", "x.yaml", "--ball", "daisy", "--why-not", "daisy"])]
fn misuse_is_told_as_misuse(#[case] arguments: &[&str]) {
    assert_eq!(spanwright(arguments).status.code(), Some(2));
}
