//! Cards that can't be used say what to measure or to check.

use rstest::rstest;

use super::cards::GRIPS;
use super::{answer, files, refused, spanwright};

/// A card with some lines left out or put otherwise.
fn card(index: usize, change: impl Fn(&str) -> Option<String>) -> String {
    let card = GRIPS[index].weighed((3.2, 1.18), false);
    let lines = card.lines().filter_map(change);
    lines.map(|line| line + "\n").collect()
}

fn without(index: usize, parts: &[&str]) -> String {
    card(index, |line| {
        let gone = parts.iter().any(|part| line.trim_start().starts_with(part));
        (!gone).then(|| line.to_owned())
    })
}

#[test]
fn every_card_says_what_it_lacks() {
    let no_top = card(0, |line| {
        let (start, rest) = line.split_once("statics: { top: ").unwrap_or((line, ""));
        let rest = rest
            .split_once(", ")
            .map(|(_, rest)| format!("statics: {{ {rest}"));
        Some(format!("{start}{}", rest.unwrap_or_default()))
    });
    let words = refused([
        without(0, &["before:"]),
        without(1, &["hand:", "depths:", "weight:"]),
        no_top,
        without(3, &["statics:", "slug:"]),
        "name: Nobody\n".to_owned(),
        GRIPS[2].weighed((3.2, 1.18), false),
    ]);
    let wanted = "\
card-0.yaml: still to tell: the readings before drilling (`before`)
card-1.yaml: still to tell: whose hand it is (`hand`); the card's middle finger depth; the card's ring finger depth; the card's thumb depth; the weight after drilling
card-2.yaml: still to tell: the top weight before drilling; the top weight after drilling
card-3.yaml: still to tell: the outside of the card's slug; the top weight after drilling; the side weight after drilling; the finger weight after drilling
card-4.yaml: still to tell: the fit card (`fit_card`)
";
    assert_eq!(words, wanted);
}

#[test]
fn a_grip_that_cannot_be_is_told() {
    let words = refused([card(2, |line| {
        Some(line.replace("value: 3 5/16", "value: 5"))
    })]);
    assert!(
        words.starts_with("card-0.yaml: Check the old ball's card:"),
        "{words}"
    );
}

/// Derived: without slug and insert, and without the ball's own weight, only density over arm shows.
#[test]
fn static_weights_of_bare_holes_alone_do_not_tell() {
    let card = without(2, &["weight:"]);
    let start = card.find("weight: ").unwrap();
    let end = start + card[start..].find("statics").unwrap();
    let words = refused([format!("{}{}", &card[..start], &card[end..])]);
    assert!(
        words.starts_with("weigh the ball itself before and after"),
        "{words}"
    );
}

/// Nothing moved, or the two were exchanged: no arm fits that.
#[rstest]
#[case::unmoved(
    "{ top: 1 oz, right: 0 oz, finger: 0 oz }",
    "{ top: 1 oz, right: 0 oz, finger: 0 oz }"
)]
#[case::exchanged(
    "{ top: 1 oz, right: 0 oz, finger: 0 oz }",
    "{ top: 3 oz, right: 0 oz, finger: 0 oz }"
)]
fn nonsense_says_what_to_check(#[case] before: &str, #[case] after: &str) {
    let words = refused([0, 3].map(|index| {
        let text = GRIPS[index].card(false);
        format!("{text}  before: {{ weight: 15 lb, statics: {before} }}\n  weight: 14.9 lb\n  statics: {after}\n")
    }));
    let to_do = ["check the readings", "measure more balls"];
    assert!(
        to_do.iter().any(|start| words.starts_with(start)),
        "{words}"
    );
}

#[test]
fn one_ball_warns_that_its_error_is_a_guess() {
    let files = files([GRIPS[0].weighed((3.2, 1.18), false)]);
    let notes = answer(&[], &files.1)["notes"].to_string();
    assert!(notes.contains("Weigh more balls: from 1 ball"), "{notes}");
}

#[test]
fn a_ball_counts_once() {
    let card = || GRIPS[0].weighed((3.2, 1.18), false);
    // Nor does another name make another ball of it.
    for again in [card(), card() + "name: Somebody Else\n"] {
        let words = refused([card(), GRIPS[1].weighed((3.2, 1.18), false), again]);
        assert_eq!(
            words,
            "card-2.yaml tells just what card-0.yaml does: give each ball once\n"
        );
    }
}

#[test]
fn faults_of_all_files_are_told_together() {
    let words = refused([
        "fit_card: { before: { weight: 99 lb } }\n".to_owned(),
        GRIPS[0].weighed((3.2, 1.18), false),
        "fit_card: { before: [1] }\n".to_owned(),
        "\u{0}\u{1}".to_owned(),
    ]);
    for part in [
        "card-0.yaml:1:",
        "[out-of-range]",
        "card-2.yaml:1:",
        "[shape]",
        "card-3.yaml",
    ] {
        assert!(words.contains(part), "no {part}: {words}");
    }
    assert!(!words.contains("panicked"), "{words}");
}

#[test]
fn without_a_card_it_is_misuse() {
    let output = spanwright(&["calibrate"], &[]);
    assert_eq!(output.status.code(), Some(2));
    assert!(output.stdout.is_empty());
}
