//! `give_or_take` in a profile: what is read, and each way it can be wrong.

use rstest::rstest;

use crate::written::{bowler, parse};

const MEASURED: &str = "speed: { value: 16 mph, where: release }\nrev_rate: 240 rpm\nrotation: 40 deg\ntilt: 12 deg\n\
    body_weight: 160 lb\nhold_test: { passed: 14 lb, failed: 16 lb }\npap: { over: 4 1/2, up: 1/2 up }\n";

#[test]
fn half_widths_are_read_in_the_answers_own_notation() {
    let stated = "give_or_take:\n  speed: 1 mph\n  rev_rate: 20 rpm\n  rotation: 5 deg\n  tilt: 2.5 deg\n  \
        body_weight: 3 lb\n  hold_test: { passed: 0.5 lb, failed: 1 lb }\n  pap: { over: 1/4, up: 1/8 }\n";
    let bowler = bowler(&format!("{MEASURED}{stated}"));
    for (name, width) in [
        ("bowler.speed", 10),
        ("bowler.rev_rate", 20),
        ("bowler.rotation", 50),
        ("bowler.tilt", 25),
        ("bowler.body_weight", 300),
        ("bowler.hold_passed", 50),
        ("bowler.hold_failed", 100),
        ("bowler.pap_over", 16),
        ("bowler.pap_up", 8),
    ] {
        assert_eq!(bowler.give_or_take(name), Some(width), "{name}");
    }
    assert_eq!(bowler.give_or_take("bowler.age"), None);
    // Written down and read again it is the same.
    assert_eq!(parse(&bowler.to_yaml()).unwrap(), bowler);
}

#[rstest]
#[case("give_or_take: unknown\n")]
#[case("give_or_take:\n")]
#[case("give_or_take: { speed: unknown, pap: }\n")]
fn nothing_said_is_nothing_taken(#[case] stated: &str) {
    assert_eq!(
        bowler(&format!("{MEASURED}{stated}")).give_or_take("bowler.speed"),
        None
    );
}

#[rstest]
#[case(
    "{ speed: 0 mph }",
    24,
    "the give or take of the ball speed can't be 0 mph"
)]
#[case("{ speed: -1 mph }", 24, "-1 mph")]
#[case(
    "{ speed: 40 mph }",
    24,
    "the give or take of the ball speed can't be 40 mph"
)]
#[case("{ speed: fast }", 24, "fast")]
#[case("{ sped: 1 mph }", 17, "`sped`")]
#[case("{ age: 2 years }", 17, "`age`")]
#[case("{ pap: { ovr: 1/8 } }", 24, "`ovr`")]
#[case("{ pap: 1/8 }", 22, "must be a map")]
#[case("1 mph", 15, "must be a map")]
fn what_is_wrong_is_told_at_its_place(
    #[case] stated: &str,
    #[case] column: u32,
    #[case] words: &str,
) {
    let faults = parse(&format!("{MEASURED}give_or_take: {stated}\n")).unwrap_err();
    let all: Vec<_> = faults.iter().collect();
    assert_eq!(all.len(), 1, "{faults}");
    let place = all[0].place().unwrap();
    assert_eq!((place.line, place.column), (8, column), "{faults}");
    assert!(faults.to_string().contains(words), "{faults}");
}

#[rstest]
#[case(
    "rev_rate: high\n",
    "{ rev_rate: 20 rpm }",
    "the rev rate isn't given as a number"
)]
#[case(
    "speed: unknown\n",
    "{ speed: 1 mph }",
    "the ball speed isn't given as a number"
)]
#[case(
    "",
    "{ hold_test: { failed: 1 lb } }",
    "the weight that was too much isn't given as a number"
)]
fn an_answer_that_is_not_given_has_nothing_to_give_or_take(
    #[case] profile: &str,
    #[case] stated: &str,
    #[case] words: &str,
) {
    let faults = parse(&format!("{profile}give_or_take: {stated}\n")).unwrap_err();
    assert_eq!(faults.iter().count(), 1, "{faults}");
    assert!(faults.to_string().contains(words), "{faults}");
}

#[test]
fn an_answer_that_is_wrong_itself_is_told_once() {
    let faults = parse("rev_rate: 9000 rpm\ngive_or_take: { rev_rate: 20 rpm }\n").unwrap_err();
    assert_eq!(faults.iter().count(), 1, "{faults}");
}
