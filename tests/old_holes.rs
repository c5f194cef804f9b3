//! The holes of an old ball lie where its card says, seen from the new grip; what the card doesn't tell is asked for.

// Helpers of tests may stop a test just as tests may.
#![allow(clippy::unwrap_used, clippy::panic)]

use rstest::rstest;
use spanwright::bowler::{Bowler, NoOldHoles};
use spanwright::document::{Document, Format};
use spanwright::fitting::Sphere;
use spanwright::fitting::grip::{Along, Digit, Kind, Reference};

fn bowler(text: &str) -> Bowler {
    Document::parse("profile.yaml", text.as_bytes(), Format::Yaml)
        .and_then(|document| Bowler::read(&document))
        .unwrap_or_else(|faults| panic!("{faults}"))
}

/// A whole card; the words in capitals are filled in.
const CARD: &str = "
hand: HAND
fit_card:
  ball: the blue ball
  grip: fingertip
  spans:
    - { finger: middle, value: 4 1/4, kind: full, along: arc }
    - { finger: ring, value: 4 5/16, kind: full, along: arc }
  bridge: 1/4
  pitches:
    thumb: { forward: 1/8 R, lateral: 1/16 OUT }
    middle: { forward: 1/8 R, lateral: 3/8 OUT }
    ring: { forward: 1/4 R, lateral: 3/8 IN }
  bores: { middle: 25/32, ring: 25/32 }
  oval: { wide: 1 1/16, narrow: 15/16, angle: ANGLE }
  depths: { thumb: 2 1/4, middle: 1 1/8, ring: 1 1/8 }
  slug: 1 3/8
  insert: 31/32
used_ball: { holes: open, new_grip: { GRIP } }
";

fn right(grip: &str) -> Bowler {
    let card = CARD.replace("HAND", "right").replace("ANGLE", "20 deg");
    bowler(
        &card
            .replace("OUT", "L")
            .replace("IN", "R")
            .replace("GRIP", grip),
    )
}

/// The mirror image: laterals to the other side, and an oval turned by 20 degrees is one turned by 160.
fn left(grip: &str) -> Bowler {
    let card = CARD.replace("HAND", "left").replace("ANGLE", "160 deg");
    bowler(
        &card
            .replace("OUT", "R")
            .replace("IN", "L")
            .replace("GRIP", grip),
    )
}

fn mouths(bowler: &Bowler) -> Vec<(Digit, [f64; 3])> {
    let holes = bowler.old_holes(&Sphere::default(), Reference::OwnLine);
    let holes = holes.unwrap_or_else(|why| panic!("{why}"));
    holes
        .iter()
        .map(|(digit, hole)| (*digit, hole.mouth()))
        .collect()
}

/// Derived: what the card says of the spans and the bridge can be measured again on the placed holes.
#[test]
fn the_card_can_be_read_off_the_ball_again() {
    let ball = Sphere::default();
    let grip = right("over: 0")
        .old_grip(&ball, Reference::OwnLine)
        .unwrap();
    let span = |finger| grip.span(&ball, finger, Kind::Full, Along::Arc).unwrap();
    assert!((span(Digit::Middle) - 4.25).abs() < 1e-9);
    assert!((span(Digit::Ring) - 4.3125).abs() < 1e-9);
    assert!((grip.bridge(&ball) - 0.25).abs() < 1e-9);
}

/// Derived: a grip moved over by 2 1/2 along the midline turns the ball about the y axis, so every y stays and every hole lies
/// 2 1/2 / R farther left.
#[test]
fn a_grip_moved_over_sees_the_old_holes_on_the_other_side() {
    let radius = Sphere::default().radius();
    let (before, after) = (mouths(&right("over: 0")), mouths(&right("over: 2 1/2 R")));
    assert_eq!(before.len(), 3);
    for ((digit, old), (_, new)) in before.iter().zip(&after) {
        let across = |m: &[f64; 3]| m[0].atan2(m[2]);
        assert!((old[1] - new[1]).abs() < 1e-9, "{digit:?}");
        assert!(
            (across(old) - across(new) - 2.5 / radius).abs() < 1e-9,
            "{digit:?}"
        );
    }
}

/// Derived: a grip turned by half a turn sees the old thumb above it.
#[test]
fn a_grip_turned_round_sees_the_thumb_above() {
    let (before, after) = (
        mouths(&right("turned: 0")),
        mouths(&right("turned: 180 deg")),
    );
    for ((digit, old), (_, new)) in before.iter().zip(&after) {
        assert!(
            (old[0] + new[0]).abs() < 1e-9 && (old[1] + new[1]).abs() < 1e-9,
            "{digit:?}"
        );
    }
}

#[test]
fn a_left_hand_is_the_mirror_image() {
    let ball = Sphere::default();
    let holes = |bowler: Bowler| bowler.old_holes(&ball, Reference::Centreline).unwrap();
    let here = holes(right("over: 2 1/2 R, up: 1/2 up, turned: 30 deg"));
    let there = holes(left("over: 2 1/2 L, up: 1/2 up, turned: 330 deg"));
    for ((_, one), (_, other)) in here.iter().zip(&there) {
        let pairs = [
            (one.mouth(), other.mouth()),
            (one.axis(), other.axis()),
            (one.wide(), other.wide()),
        ];
        for (a, b) in pairs {
            assert!(
                a.iter().zip(b).all(|(a, b)| (a - b).abs() < 1e-9),
                "{a:?} {b:?}"
            );
        }
    }
}

#[rstest]
#[case("  depths: { thumb: 2 1/4, middle: 1 1/8, ring: 1 1/8 }\n", "  depths: { middle: 1 1/8 }\n", &["the card's thumb depth", "the card's ring finger depth"])]
#[case("  slug: 1 3/8\n", "", &["the outside of the card's slug"])]
#[case("  insert: 31/32\n", "", &["the outside of the card's inserts"])]
#[case(", angle: 20 deg", "", &["the card's oval angle"])]
#[case("used_ball: { holes: open, new_grip: { over: 0 } }\n", "", &["where the new grip goes"])]
fn what_the_card_does_not_tell_is_asked_for(
    #[case] part: &str,
    #[case] instead: &str,
    #[case] asked: &[&str],
) {
    let card = CARD
        .replace("HAND", "right")
        .replace("ANGLE", "20 deg")
        .replace("OUT", "L")
        .replace("IN", "R")
        .replace("GRIP", "over: 0");
    assert!(card.contains(part));
    let bowler = bowler(&card.replace(part, instead));
    let found = bowler.old_holes(&Sphere::default(), Reference::OwnLine);
    let Err(NoOldHoles::Missing(mut names)) = found else {
        panic!("{found:?}");
    };
    let mut asked = asked.to_vec();
    names.sort_unstable();
    asked.sort_unstable();
    assert_eq!(names, asked);
}

#[test]
fn spans_that_close_no_triangle_are_refused() {
    let text = CARD
        .replace("HAND", "right")
        .replace("ANGLE", "20 deg")
        .replace("OUT", "L")
        .replace("IN", "R")
        .replace("GRIP", "over: 0")
        .replace("4 5/16", "2");
    let found = bowler(&text).old_holes(&Sphere::default(), Reference::OwnLine);
    let Err(why @ NoOldHoles::Unplaceable(_)) = found else {
        panic!("{found:?}");
    };
    assert!(why.to_string().contains("closes no triangle"), "{why}");
}

#[test]
fn without_a_card_there_are_no_old_holes() {
    let found = bowler("hand: right").old_holes(&Sphere::default(), Reference::OwnLine);
    assert_eq!(found, Err(NoOldHoles::NoCard));
}
