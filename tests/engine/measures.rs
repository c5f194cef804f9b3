//! Measures: one start, what is added, limits and rounding; the lines add up to the number.

use rstest::rstest;
use spanwright::rules::{Measured, Role, RuleSet, Severity, UNKNOWN};

use crate::garden::{Garden, about, rules};

const STAKES: &str = "
  copy | when: { old.stake: { known: true } }, start: { copy: old.stake }
  by-sun | when: { old.stake: { known: false } }, start: { along: garden.sun, at: { 0: 10 in, 24: 22 in } }
  windy | when: { worked.wind: { above: 5 } }, add: 3 1/4
  sandy | when: { garden.soil: sand }, add: { along: worked.wind, at: { 0: 0, 8: 1 in } }
  shade | when: { garden.shade: true }, add: 1 in under
  heavy | when: { garden.soil: heavy_clay }, caution: mild
  wobbly | when: { worked.wind: { above: 15 } }, caution: serious
";

/// Sixty-fourths of an inch.
const INCH: i64 = 64;

fn stakes() -> RuleSet {
    rules(&about("stake.length", STAKES))
}

fn told(rules: &RuleSet, measured: &Measured) -> Vec<(String, Role, i64)> {
    let sum: i64 = measured.lines().iter().map(|line| line.points()).sum();
    assert_eq!(measured.value(), Some(sum), "lines add up");
    let line = |line: &spanwright::rules::Line| {
        (
            rules.rule(line.rule()).id().to_owned(),
            line.role(),
            line.points(),
        )
    };
    measured.lines().iter().map(line).collect()
}

#[test]
fn a_start_and_what_is_added() {
    let rules = stakes();
    let garden = Garden::of(0)
        .with("garden.sun", 12)
        .with("worked.wind", 8)
        .with("garden.soil", 0)
        .with("garden.shade", 1);
    let measured = rules.measure("stake.length", &garden);
    let expected = [
        ("by-sun", Role::Start, 16 * INCH),
        ("windy", Role::Add, 3 * INCH + 16),
        ("sandy", Role::Add, INCH),
        ("shade", Role::Add, -INCH),
        ("stake.length/rounding", Role::Rounding, 16),
    ];
    let expected = expected.map(|(id, role, points)| (id.to_owned(), role, points));
    assert_eq!(told(&rules, &measured), expected);
    assert_eq!(measured.value(), Some(19 * INCH + 32));
    assert_eq!(measured.problem(), None);
}

#[rstest]
#[case::as_it_was(20 * INCH, &[("copy", 1280)])]
#[case::rounded_up(20 * INCH + 16, &[("copy", 1296), ("stake.length/rounding", 16)])]
#[case::rounded_down(20 * INCH + 15, &[("copy", 1295), ("stake.length/rounding", -15)])]
#[case::too_long(70 * INCH, &[("copy", 4480), ("stake.length/limits", -640)])]
#[case::too_short(INCH + 1, &[("copy", 65), ("stake.length/limits", 447)])]
fn limits_and_rounding_are_lines(#[case] old: i64, #[case] expected: &[(&str, i64)]) {
    let rules = stakes();
    let measured = rules.measure("stake.length", &Garden::of(0).with("old.stake", old));
    let lines: Vec<(String, i64)> = told(&rules, &measured)
        .into_iter()
        .map(|(id, _, points)| (id, points))
        .collect();
    let expected: Vec<(String, i64)> = expected
        .iter()
        .map(|(id, points)| ((*id).to_owned(), *points))
        .collect();
    assert_eq!(lines, expected);
}

#[test]
fn limits_and_rounding_have_reasons() {
    let rules = stakes();
    let measured = rules.measure("stake.length", &Garden::of(0).with("old.stake", 9));
    let line = measured.lines().last().unwrap();
    let reason = rules.reason(line, spanwright::rules::Audience::Newcomer);
    assert_eq!(reason, "Shops stock no other stakes.");
    assert_eq!(rules.rule(line.rule()).source().key(), "own choice");
}

#[test]
fn no_start_no_number() {
    let measured = stakes().measure("stake.length", &Garden::of(0).with("worked.wind", 16));
    assert_eq!(measured.value(), None);
    assert_eq!(measured.problem(), Some("no rule starts stake.length"));
    assert!(measured.lines().is_empty());
    assert_eq!(
        measured.cautions().len(),
        1,
        "cautions are told all the same"
    );
}

#[test]
fn a_start_from_the_unknown_is_none() {
    let rules = rules(&about("stake.length", "copy | start: { copy: old.stake }"));
    let measured = rules.measure("stake.length", &Garden::of(0).with("old.stake", UNKNOWN));
    assert_eq!(measured.problem(), Some("no rule starts stake.length"));
}

#[test]
fn two_starts_no_number() {
    let rules = rules(&about("tie.count", "two | start: 2\nthree | start: 3"));
    let measured = rules.measure("tie.count", &Garden::of(0));
    assert_eq!(measured.value(), None);
    assert_eq!(
        measured.problem(),
        Some("more than one rule starts tie.count: three and two")
    );
}

#[test]
fn a_start_at_nothing_is_a_start() {
    let rules = rules(&about("tie.count", "none | start: 0\nnothing | add: 0"));
    let measured = rules.measure("tie.count", &Garden::of(0));
    assert_eq!(
        told(&rules, &measured),
        [("none".to_owned(), Role::Start, 0)]
    );
}

#[test]
fn cautions_serious_ones_first() {
    let rules = stakes();
    let garden = Garden::of(0)
        .with("garden.soil", 2)
        .with("worked.wind", 16)
        .with("old.stake", 1280);
    let measured = rules.measure("stake.length", &garden);
    let roles: Vec<Role> = measured.cautions().iter().map(|line| line.role()).collect();
    assert_eq!(
        roles,
        [
            Role::Caution(Severity::Serious),
            Role::Caution(Severity::Mild)
        ]
    );
}

#[rstest]
#[case("hedge")]
#[case("plant")]
#[case("gardener")]
fn what_is_no_measure(#[case] subject: &str) {
    let measured = stakes().measure(subject, &Garden::of(0));
    assert_eq!(
        measured.problem(),
        Some(format!("there is no measure {subject}").as_str())
    );
}

#[test]
fn without_its_limits() {
    let rules = stakes().without("stake.length/limits");
    let measured = rules.measure("stake.length", &Garden::of(0).with("old.stake", 70 * INCH));
    assert_eq!(measured.value(), Some(70 * INCH));
}

#[test]
fn steps_go_by_their_place_then_by_id() {
    let rules = rules(&about(
        "planting",
        "water | step: 3, then: Water it.
         dig | step: 1, then: Dig a hole.
         shade | when: { garden.shade: false }, step: 2
         b-stake | step: 2
         a-stake | when: { worked.wind: { above: 5 } }, step: 2",
    ));
    let steps = |wind| rules.steps("planting", &Garden::of(0).with("worked.wind", wind));
    let ids = crate::garden::ids(&rules, &steps(6)).join(" ");
    assert_eq!(ids, "dig a-stake b-stake water");
    assert_eq!(
        crate::garden::ids(&rules, &steps(5)).join(" "),
        "dig b-stake water"
    );
    assert!(
        steps(6)
            .iter()
            .all(|line| line.role() == Role::Step && line.points() == 0)
    );
    let said = rules.reason(&steps(6)[0], spanwright::rules::Audience::Newcomer);
    assert_eq!(said, "Dig a hole. So it is.");
    assert!(rules.steps("plant", &Garden::of(0)).is_empty());
}
