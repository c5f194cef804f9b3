//! Curves: straight between knots, flat outside, rounded half away from zero, silent on the unknown.

use rstest::rstest;
use spanwright::rules::UNKNOWN;

use crate::garden::{Garden, lines, plant_rules, rules, totals};

#[rstest]
#[case::at_knots("{ 0: 0, 10: 5 }", vec![(0, 0), (10, 50)])]
#[case::between("{ 0: 0, 10: 5 }", vec![(1, 5), (5, 25), (9, 45)])]
#[case::flat_outside("{ 2: 3, 4: 5 }", vec![(0, 30), (1, 30), (5, 50), (300, 50)])]
#[case::down("{ 0: 1, 4: -1 }", vec![(0, 10), (1, 5), (2, 0), (3, -5), (4, -10)])]
#[case::half_away_from_zero("{ 0: 0, 4: 0.2 }", vec![(1, 1), (2, 1), (3, 2)])]
#[case::half_away_from_zero_below("{ 0: 0, 4: -0.2 }", vec![(1, -1), (2, -1), (3, -2)])]
#[case::thirds("{ 0: 0, 3: 0.1 }", vec![(1, 0), (2, 1)])]
#[case::three_knots("{ 0: 12, 1: 4, 3: -30 }", vec![(0, 120), (1, 40), (2, -130), (3, -300)])]
fn along_a_fact_of_plants(#[case] at: &str, #[case] expected: Vec<(i64, i64)>) {
    let rules = rules(&plant_rules(&format!(
        "c | points: {{ along: plant.height, at: {at} }}"
    )));
    let (places, points): (Vec<i64>, Vec<i64>) = expected.into_iter().unzip();
    let garden = Garden::of(places.len()).column("plant.height", &places);
    assert_eq!(totals(&rules, &garden), points);
}

/// Wide curves are worked out by division, narrow ones looked up in a table; both must say the same.
#[test]
fn a_wide_curve() {
    let rules = rules(&plant_rules(
        "wide | points: { along: plant.price, at: { $0: 0, $100: 100, $200: 50.5 } }",
    ));
    let garden = Garden::of(6).column("plant.price", &[0, 5, 4999, 10_000, 10_010, UNKNOWN]);
    assert_eq!(totals(&rules, &garden), [0, 1, 500, 1000, 1000, 0]);
}

#[test]
fn along_facts_of_every_origin() {
    let rules = rules(&plant_rules(
        "answer | points: { along: garden.sun, at: { 0: 0, 10: 1 } }
         worked | points: { along: worked.wind, at: { 0: 0, 10: 10 } }
         derived | when: { plant.evergreen: true }, points: { along: match.sun_gap, at: { 0: 0, 10: 100 } }
         gated | when: { garden.shade: true }, points: { along: plant.height, at: { 0: 0, 1: 1000 } }",
    ));
    let garden = Garden::of(2)
        .with("garden.sun", 3)
        .with("worked.wind", 4)
        .column("plant.evergreen", &[0, 1])
        .column("plant.height", &[1, 1])
        .column("match.sun_gap", &[5, 6]);
    assert_eq!(totals(&rules, &garden), [43, 643]);
    assert_eq!(
        totals(&rules, &garden.with("garden.shade", 1)),
        [10_043, 10_643]
    );
}

#[test]
fn the_unknown_gives_no_line() {
    let rules = rules(&plant_rules(
        "answer | points: { along: garden.sun, at: { 0: 5, 10: 7 } }
         derived | points: { along: match.sun_gap, at: { 0: 5, 10: 7 } }
         fixed | points: { along: plant.height, at: { 0: 5, 10: 7 } }",
    ));
    let garden = Garden::of(2)
        .column("match.sun_gap", &[UNKNOWN, 10])
        .column("plant.height", &[0, UNKNOWN]);
    assert_eq!(totals(&rules, &garden), [50, 70]);
    let chooser = rules.chooser("plant", &garden).unwrap();
    let ranking = chooser.rank(&garden);
    assert_eq!(
        lines(&rules, &chooser.ledger(&garden, &ranking, 0)),
        ["fixed: 50"]
    );
    assert_eq!(
        lines(&rules, &chooser.ledger(&garden, &ranking, 1)),
        ["derived: 70"]
    );
}
