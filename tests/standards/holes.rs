//! Holes that nobody uses, house balls, vents and marks, and the size of the ball.

use rstest::rstest;
use spanwright::standards::{Body, Verdict};

use Verdict::{Ask, Fail, Pass};

use crate::{judge, of};

/// D3h, W2: The 11th Frame, 7 May 2014; World Bowling 11.12.2. The year World Bowling's rule began was not shown: ask.
#[rstest]
#[case("2014-05-06", Body::Usbc, Pass)]
#[case("2014-05-07", Body::Usbc, Fail)]
#[case("2018-06-01", Body::Ibf, Ask)]
#[case("2019-01-01", Body::Ibf, Fail)]
fn an_empty_thumb_hole_beside_a_balance_hole(
    #[case] date: &str,
    #[case] body: Body,
    #[case] expected: Verdict,
) {
    let text = "weight: 15 lb\nholes: [{ for: thumb, used: no }, { for: middle, used: yes }, { for: balance, diameter: 1 in }]\n";
    let findings = judge(text, date, body);
    assert_eq!(of(&findings, "balance-holes").verdict(), expected);
}

/// D4: USBC manual 01/2021, read in French: all four conditions, the differential below 0.025 in.
#[rstest]
#[case(
    "kind: polyester",
    "0.024",
    "fitted_to_bowler: no, left_by_customer: no",
    Pass
)]
#[case(
    "kind: urethane",
    "0.024",
    "fitted_to_bowler: no, left_by_customer: no",
    Pass
)]
#[case(
    "kind: reactive",
    "0.024",
    "fitted_to_bowler: no, left_by_customer: no",
    Fail
)]
#[case(
    "kind: polyester",
    "0.025",
    "fitted_to_bowler: no, left_by_customer: no",
    Fail
)]
#[case(
    "kind: polyester",
    "0.024",
    "fitted_to_bowler: yes, left_by_customer: no",
    Fail
)]
#[case("kind: polyester", "0.024", "fitted_to_bowler: no", Ask)]
fn a_house_ball_keeps_every_condition(
    #[case] cover: &str,
    #[case] differential: &str,
    #[case] house: &str,
    #[case] expected: Verdict,
) {
    let text = format!(
        "cover: {{ {cover} }}\ncore: {{ differential: {differential} }}\nhouse_ball: {{ supplied_by_centre: yes, {house} }}\n\
         holes: [{{ for: thumb, used: no }}, {{ for: middle, used: yes }}]\n"
    );
    let findings = judge(&text, "2024-10-01", Body::Usbc);
    assert_eq!(of(&findings, "unused-holes").verdict(), expected);
}

/// D5 to D7: ABC ball specification, 1990s; World Bowling 11.12; USBC manual 01/2021. P3: a shop's copy. C1: Rule 18, 2019.
#[rstest]
#[case(
    "holes: [{ for: thumb, used: yes }, { for: vent, of: thumb, diameter: 1/4 in }]",
    "vent-diameter",
    Pass
)]
#[case(
    "holes: [{ for: thumb, used: yes }, { for: vent, diameter: 1/4 in, mouth: 17/64 in }]",
    "vent-diameter",
    Fail
)]
#[case(
    "holes: [{ for: thumb, used: yes }, { for: vent, of: thumb }, { for: vent, of: thumb }]",
    "vents-per-hole",
    Fail
)]
#[case(
    "holes: [{ for: thumb, used: yes }, { for: mill, diameter: 5/8 in }]",
    "mill-diameter",
    Pass
)]
#[case(
    "holes: [{ for: thumb, used: yes }, { for: mill, diameter: 0.626 in }]",
    "mill-diameter",
    Fail
)]
#[case(
    "holes: [{ for: thumb, used: yes }, { for: mill, depth: 0.126 in }]",
    "mill-depth",
    Fail
)]
#[case(
    "holes: [{ for: thumb, used: yes, hidden_hole: yes }]",
    "hidden-hole",
    Fail
)]
#[case("raised_plug: yes", "raised-plug", Fail)]
#[case("treated_in_play: yes", "treated-in-play", Fail)]
#[case("diameter: 8.595 in\nweight: 15 lb", "diameter", Pass)]
#[case("diameter: 8.596 in\nweight: 15 lb", "diameter", Fail)]
#[case("circumference: 26.703 in\nweight: 15 lb", "circumference", Fail)]
#[case(
    "plus_marks: 2\nholes: [{ for: middle, used: yes }]",
    "plus-mark",
    Fail
)]
#[case(
    "plus_marks: 1\nholes: [{ for: middle, used: yes }]",
    "plus-mark",
    Pass
)]
fn small_holes_marks_and_sizes(#[case] text: &str, #[case] id: &str, #[case] expected: Verdict) {
    let findings = judge(text, "2024-10-01", Body::Usbc);
    assert_eq!(of(&findings, id).verdict(), expected);
}
