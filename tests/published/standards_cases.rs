//! Balls against the governing bodies' limits, by body and date.
//!
//! Each test names its sources; the letters in brackets are the rows in `rules/standards.yaml`, which says how sure
//! each is. The expected answers follow from those texts, not from this crate. Unless a test says otherwise: USBC,
//! 15.00 lb, thumb and two fingers, all holes used, no balance hole, on the approved list; a test without a date is
//! judged on 2024-10-01.

use rstest::rstest;
use spanwright::standards::{
    BallFacts, Body, CoverKind, Date, Digit, Finding, HoleFacts, HoleKind, Period, Standards,
    Verdict,
};

use Verdict::{Ask, Fail, Pass};

type Outcome = Result<(), Box<dyn std::error::Error>>;

const STATICS: &[&str] = &["static-top", "static-side", "static-finger"];
/// Eight-thousandths of an inch in an inch.
const INCH: f64 = 8000.0;

fn inches(size: f64) -> Option<i64> {
    Some((size * INCH).round() as i64)
}

fn grip(digit: Digit) -> HoleFacts {
    let mut hole = HoleFacts::new(HoleKind::Grip(digit));
    hole.used = Some(true);
    hole.diameter = inches(1.0);
    hole.depth = inches(2.0);
    hole
}

fn balance(diameter: f64) -> HoleFacts {
    let mut hole = HoleFacts::new(HoleKind::Balance);
    hole.diameter = inches(diameter);
    hole
}

fn ball() -> BallFacts {
    let mut ball = BallFacts::default();
    ball.weight = Some(1500);
    ball.listed = Some(true);
    ball.holes = Some(
        [Digit::Thumb, Digit::Middle, Digit::Ring]
            .map(grip)
            .to_vec(),
    );
    ball
}

fn with(hole: HoleFacts) -> BallFacts {
    let mut ball = ball();
    ball.holes.get_or_insert_default().push(hole);
    ball
}

fn weighed(top: i64, side: i64, finger: i64) -> BallFacts {
    let mut ball = ball();
    (ball.top, ball.side, ball.finger) = (Some(top), Some(side), Some(finger));
    ball
}

/// The same ball with its thumb hole left empty.
fn thumb_out(mut ball: BallFacts) -> BallFacts {
    for hole in ball.holes.iter_mut().flatten() {
        if hole.kind == HoleKind::Grip(Digit::Thumb) {
            hole.used = Some(false);
        }
    }
    ball
}

/// Judges the ball; what `ids` name must come out as expected, and nothing else may be broken.
#[track_caller]
fn expect(ball: &BallFacts, date: &str, body: Body, ids: &[&str], expected: Verdict) -> Outcome {
    let findings = Standards::builtin()?.judge(ball, Date::read(date)?, body);
    let concerned: Vec<&Finding> = findings
        .iter()
        .filter(|finding| ids.contains(&finding.id()))
        .collect();
    for id in ids {
        assert!(
            concerned.iter().any(|finding| finding.id() == *id),
            "nothing was said of {id}"
        );
    }
    let broken = findings.iter().filter(|finding| finding.verdict() == Fail);
    for finding in broken {
        assert!(
            expected == Fail && ids.contains(&finding.id()),
            "broken: {finding:?}"
        );
    }
    let worst = [Fail, Ask, Pass].into_iter().find(|verdict| {
        concerned
            .iter()
            .any(|finding| finding.verdict() == *verdict)
    });
    assert_eq!(worst, Some(expected), "{concerned:?}");
    Ok(())
}

const ON: &str = "2024-10-01";

/// USBC release, June 2018, with an association's summary of the April 2018 specifications (K2).
#[rstest]
#[case(300, 300, 300, Pass)]
#[case(-301, 300, 300, Fail)]
fn three_ounces_from_half_to_half(
    #[case] top: i64,
    #[case] side: i64,
    #[case] finger: i64,
    #[case] expected: Verdict,
) -> Outcome {
    let ball = weighed(top, side, finger);
    let ids = if expected == Fail {
        &STATICS[..1]
    } else {
        STATICS
    };
    expect(&ball, "2024-10-01", Body::Usbc, ids, expected)
}

/// USBC release, June 2018: from 1 August 2018 (K2).
#[test]
fn more_than_an_ounce_of_side_weight_from_august_2018() -> Outcome {
    expect(&weighed(0, 125, 0), "2018-08-01", Body::Usbc, STATICS, Pass)
}

/// USBC release, June 2018; ABC ball specification, 1990s, and USBC news, about 2016 (K3, W1).
#[test]
fn a_balance_hole_keeps_the_ounce() -> Outcome {
    let mut ball = with(balance(1.25));
    (ball.top, ball.side, ball.finger) = (Some(0), Some(100), Some(0));
    let ids = ["static-side", "balance-holes", "balance-diameter"];
    expect(&ball, "2018-08-01", Body::Usbc, &ids, Pass)
}

/// World Bowling 11.13, as published by BTBA 24 February 2019, from 1 January 2019 (K2).
#[test]
fn thumb_weight_under_world_bowling() -> Outcome {
    expect(&weighed(0, 0, -200), "2019-01-01", Body::Ibf, STATICS, Pass)
}

/// USBC releases, April and June 2018: none from 1 August 2020 (W1, W4).
#[rstest]
#[case("2020-07-31", Pass)]
#[case("2020-08-01", Fail)]
fn the_last_day_of_balance_holes(#[case] date: &str, #[case] expected: Verdict) -> Outcome {
    let ball = with(balance(1.25));
    expect(&ball, date, Body::Usbc, &["balance-holes"], expected)
}

/// ABC ball specification, 1990s; USBC news, about 2016: at any point of its depth (W1).
#[test]
fn a_balance_hole_wider_at_its_mouth() -> Outcome {
    let mut hole = balance(1.25);
    hole.mouth = inches(1.30);
    expect(
        &with(hole),
        "2019-05-01",
        Body::Usbc,
        &["balance-diameter"],
        Fail,
    )
}

/// USBC manual 01/2021, read in French (D4).
#[rstest]
#[case(false, Pass)]
#[case(true, Fail)]
fn a_house_ball_bowled_without_the_thumb(
    #[case] left_behind: bool,
    #[case] expected: Verdict,
) -> Outcome {
    let mut ball = thumb_out(ball());
    ball.cover = Some(CoverKind::Polyester);
    ball.differential = Some(24);
    ball.house_supplied = Some(true);
    ball.house_fitted = Some(false);
    ball.house_left_behind = Some(left_behind);
    expect(&ball, "2021-06-01", Body::Usbc, &["unused-holes"], expected)
}

/// USBC manual 01/2021; notices of associations, 2019 to 2020 (N2).
#[test]
fn no_thumb_hole_and_no_mark() -> Outcome {
    let mut ball = ball();
    ball.holes = Some([Digit::Middle, Digit::Ring].map(grip).to_vec());
    ball.plus_marks = Some(0);
    expect(&ball, "2021-06-01", Body::Usbc, &["plus-mark"], Fail)
}

/// The 11th Frame, 7 May 2014, and USBC news, about 2016; USBC release, June 2018 (D3h, K3).
#[test]
fn an_empty_thumb_hole_is_the_balance_hole() -> Outcome {
    let ball = thumb_out(weighed(290, 90, 90));
    let ids = [STATICS, &["balance-holes", "unused-holes"]].concat();
    expect(&ball, "2019-06-01", Body::Usbc, &ids, Pass)
}

/// USBC manual 01/2021, read in French (D2, P4).
#[rstest]
#[case(1.5625, 4.50, Pass)]
#[case(1.60, 3.0, Fail)]
fn the_largest_gripping_hole(
    #[case] diameter: f64,
    #[case] depth: f64,
    #[case] expected: Verdict,
) -> Outcome {
    let mut ball = ball();
    for hole in ball.holes.iter_mut().flatten().take(1) {
        hole.diameter = inches(diameter);
        hole.depth = inches(depth);
    }
    let ids: &[&str] = &["gripping-hole-diameter", "gripping-hole-depth"];
    let ids = if expected == Fail { &ids[..1] } else { ids };
    expect(&ball, "2022-06-01", Body::Usbc, ids, expected)
}

/// ABC ball specification, 1990s; USBC manual 01/2021; USBC news, about 2016 (D1, D1b).
#[rstest]
#[case::one_per_digit(&[], Pass)]
#[case::six(&[Digit::Ring], Fail)]
fn five_gripping_holes(#[case] more: &[Digit], #[case] expected: Verdict) -> Outcome {
    use Digit::{Index, Little, Middle, Ring, Thumb};
    let mut ball = ball();
    let holes = [Thumb, Index, Middle, Ring, Little];
    ball.holes = Some(holes.iter().chain(more).copied().map(grip).collect());
    let ids = ["gripping-holes", "holes-per-digit"];
    expect(&ball, ON, Body::Usbc, &ids, expected)
}

#[test]
fn two_rows_for_one_finger() -> Outcome {
    let ball = with(grip(Digit::Middle));
    expect(&ball, ON, Body::Usbc, &["holes-per-digit"], Fail)
}

/// ABC ball specification, 1990s (B1, B2).
#[rstest]
#[case(1600, Pass)]
#[case(1601, Fail)]
#[case(600, Pass)]
fn the_weight_of_a_ball(#[case] weight: i64, #[case] expected: Verdict) -> Outcome {
    let mut ball = ball();
    ball.weight = Some(weight);
    expect(&ball, ON, Body::Usbc, &["weight"], expected)
}

/// USBC release, 24 August 2009; USBC manual 2012, second-hand (B9, B9h, B10).
#[rstest]
#[case(2460, "2015", Pass)]
#[case(2800, "2015", Pass)]
#[case(2459, "2015", Fail)]
#[case(2450, "2009", Pass)]
fn rg_by_the_year_of_approval(
    #[case] rg: i64,
    #[case] approved: &str,
    #[case] expected: Verdict,
) -> Outcome {
    let mut ball = ball();
    ball.rg = Some(rg);
    ball.approved = Some(Period::read(approved)?);
    expect(&ball, ON, Body::Usbc, &["rg"], expected)
}

/// USBC manual as quoted 03/2005; USBC manual 2012, second-hand (B6).
#[rstest]
#[case(3800, Pass)]
#[case(3810, Fail)]
fn the_densest_component(#[case] density: i64, #[case] expected: Verdict) -> Outcome {
    let mut ball = ball();
    ball.densities = vec![1200, density];
    expect(&ball, ON, Body::Usbc, &["component-density"], expected)
}

/// USBC releases on hardness, April and 8 June 2020: no field test, still listed (H4).
#[test]
fn a_ball_that_softened_with_use() -> Outcome {
    let mut ball = ball();
    ball.approved = Some(Period::read("2019")?);
    ball.hardness_approved = Some(720);
    ball.hardness_measured = Some(700);
    let ids = [
        "hardness-at-approval",
        "hardness-measured",
        "on-approved-list",
    ];
    expect(&ball, "2024-06-01", Body::Usbc, &ids, Pass)
}

/// USBC release, September 2025: over 90 min (H6).
#[test]
fn ninety_minutes_are_not_over_ninety() -> Outcome {
    let mut ball = ball();
    ball.approved = Some(Period::read("2026-02")?);
    ball.high_performance = Some(true);
    ball.absorption = Some(90 * 60);
    ball.hardness_approved = Some(770);
    expect(
        &ball,
        "2026-02-28",
        Body::Usbc,
        &["hardness-at-approval"],
        Pass,
    )
}

/// USBC release on marking, in force 31 January 2012 (B16, B17).
#[rstest]
#[case(1.0, 1.5, &["pin-to-low-axis", "mark-to-high-axis"], Pass)]
#[case(1.1, 1.5, &["pin-to-low-axis"], Fail)]
#[case(1.0, 1.6, &["mark-to-high-axis"], Fail)]
fn axes_from_their_marks(
    #[case] low: f64,
    #[case] high: f64,
    #[case] ids: &[&str],
    #[case] expected: Verdict,
) -> Outcome {
    let mut ball = ball();
    ball.pin_to_axis = inches(low);
    ball.mark_to_axis = inches(high);
    expect(&ball, ON, Body::Usbc, ids, expected)
}

/// USBC release, June 2018: more than 10 pounds (K2).
#[test]
fn a_hundredth_over_ten_pounds() -> Outcome {
    let mut ball = weighed(0, 250, 0);
    ball.weight = Some(1001);
    expect(&ball, "2024-06-01", Body::Usbc, STATICS, Pass)
}

/// JBC articles 34 and 35, 19 December 2019: no difference of 3 oz or more; drilled, within 3 oz (K2 and its note).
#[rstest]
#[case(290, Pass)]
#[case(300, Ask)]
#[case(310, Fail)]
fn a_ball_without_holes(#[case] halves: i64, #[case] expected: Verdict) -> Outcome {
    let mut ball = ball();
    ball.holes = Some(Vec::new());
    ball.halves = Some(halves);
    expect(
        &ball,
        "2024-06-01",
        Body::Usbc,
        &["static-halves"],
        expected,
    )
}

/// A Dutch club's notice on national events, 2020: the old rule to 31 December 2020 (W5).
#[test]
fn a_dutch_national_event_in_the_autumn_of_2020() -> Outcome {
    let ids = ["balance-holes", "balance-diameter"];
    expect(&with(balance(1.25)), "2020-10-15", Body::Nbf, &ids, Pass)
}
