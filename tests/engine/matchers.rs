//! Every matcher, on every kind of fact, at its edges and on the unknown.

use rstest::rstest;
use spanwright::rules::UNKNOWN;

use crate::garden::{Garden, plant_rules, rules, totals};

/// Whether a rule with this condition gives its point to each of the values.
fn holds(matcher: &str, name: &str, values: &[i64]) -> Vec<bool> {
    let text = plant_rules(&format!("one | when: {{ {name}: {matcher} }}, points: 1"));
    let rules = rules(&text);
    let is_scalar = ["garden.", "settled.", "worked."]
        .iter()
        .any(|family| name.starts_with(family));
    if is_scalar {
        let one = |value: &i64| totals(&rules, &Garden::of(1).with(name, *value)) == [10];
        values.iter().map(one).collect()
    } else {
        let garden = Garden::of(values.len()).column(name, values);
        totals(&rules, &garden)
            .into_iter()
            .map(|total| total == 10)
            .collect()
    }
}

/// The values of a number that hold, tried from -3 to 9 and the unknown.
fn numbers(matcher: &str, name: &str) -> Vec<i64> {
    let values: Vec<i64> = (-3..10).chain([UNKNOWN]).collect();
    let holds = holds(matcher, name, &values);
    values
        .into_iter()
        .zip(holds)
        .filter(|(_, holds)| *holds)
        .map(|(value, _)| value)
        .collect()
}

#[rstest]
#[case("4", vec![4])]
#[case("[4, 6, 7]", vec![4, 6, 7])]
#[case("{ above: 4 }", vec![5, 6, 7, 8, 9])]
#[case("{ at_least: 4 }", vec![4, 5, 6, 7, 8, 9])]
#[case("{ at_most: 1 }", vec![-3, -2, -1, 0, 1])]
#[case("{ below: 1 }", vec![-3, -2, -1, 0])]
#[case("{ above: 2, below: 5 }", vec![3, 4])]
#[case("{ at_least: 2, at_most: 5, not: 3 }", vec![2, 4, 5])]
#[case("{ not: 3 }", vec![-3, -2, -1, 0, 1, 2, 4, 5, 6, 7, 8, 9])]
#[case("{ not: [3, 4, 9], above: 2 }", vec![5, 6, 7, 8])]
#[case("{ known: true }", (-3..10).collect())]
#[case("{ known: true, above: 7 }", vec![8, 9])]
#[case("{ known: false }", vec![UNKNOWN])]
fn a_number(#[case] matcher: &str, #[case] expected: Vec<i64>) {
    for name in ["match.sun_gap", "worked.wind"] {
        assert_eq!(numbers(matcher, name), expected, "{name}: {matcher}");
    }
}

#[rstest]
#[case("loam", [false, true, false, false])]
#[case("[sand, heavy_clay]", [true, false, true, false])]
#[case("{ not: loam }", [true, false, true, false])]
#[case("{ not: [loam, sand] }", [false, false, true, false])]
#[case("{ known: true }", [true, true, true, false])]
#[case("{ known: false }", [false, false, false, true])]
fn a_choice(#[case] matcher: &str, #[case] expected: [bool; 4]) {
    for name in ["garden.soil", "plant.soil"] {
        assert_eq!(
            holds(matcher, name, &[0, 1, 2, UNKNOWN]),
            expected,
            "{name}: {matcher}"
        );
    }
}

#[rstest]
#[case("true", [false, true, false])]
#[case("yes", [false, true, false])]
#[case("false", [true, false, false])]
#[case("{ not: true }", [true, false, false])]
#[case("{ known: false }", [false, false, true])]
fn a_flag(#[case] matcher: &str, #[case] expected: [bool; 3]) {
    for name in ["garden.shade", "worked.dry", "plant.evergreen"] {
        assert_eq!(
            holds(matcher, name, &[0, 1, UNKNOWN]),
            expected,
            "{name}: {matcher}"
        );
    }
}

/// Sets of snails (1), mice (2) and deer (4) that hold.
#[rstest]
#[case("{ has: mice }", vec![2, 3, 6, 7])]
#[case("{ has: [mice, deer] }", vec![6, 7])]
#[case("{ has_any: [mice, deer] }", vec![2, 3, 4, 5, 6, 7])]
#[case("{ has_none: [mice, deer] }", vec![0, 1])]
#[case("{ has: snails, has_none: deer }", vec![1, 3])]
#[case("{ has_any: [mice, snails], has_none: snails }", vec![2, 6])]
#[case("{ known: true }", vec![0, 1, 2, 3, 4, 5, 6, 7])]
#[case("{ known: false }", vec![UNKNOWN])]
fn a_set(#[case] matcher: &str, #[case] expected: Vec<i64>) {
    let values = [0, 1, 2, 3, 4, 5, 6, 7, UNKNOWN];
    for name in ["garden.pests", "plant.safe_from", "match.unsafe_from"] {
        let holds = holds(matcher, name, &values).into_iter().zip(values);
        let found: Vec<i64> = holds
            .filter(|(holds, _)| *holds)
            .map(|(_, value)| value)
            .collect();
        assert_eq!(found, expected, "{name}: {matcher}");
    }
}

#[test]
fn all_conditions_together_and_none_at_all() {
    let rules = rules(&plant_rules(
        "both | when: { garden.shade: true, plant.soil: loam, match.sun_gap: { above: 0 } }, points: 1
         always | points: 100",
    ));
    let garden = Garden::of(4)
        .with("garden.shade", 1)
        .column("plant.soil", &[1, 1, 0, 1])
        .column("match.sun_gap", &[1, 0, 1, 5]);
    assert_eq!(totals(&rules, &garden), [1010, 1000, 1000, 1010]);
    assert_eq!(totals(&rules, &garden.with("garden.shade", 0)), [1000; 4]);
}

#[test]
fn alternatives() {
    let rules = rules(&plant_rules(
        "any | when: { garden.sun: { above: 2 }, any_of: [ { garden.shade: true }, { plant.soil: loam },
           { match.sun_gap: 3, plant.evergreen: true } ] }, points: 1"
            .replace('\n', " ")
            .as_str(),
    ));
    let garden = Garden::of(4)
        .with("garden.sun", 5)
        .with("garden.shade", 0)
        .column("plant.soil", &[1, 0, 0, UNKNOWN])
        .column("plant.evergreen", &[0, 1, 0, UNKNOWN])
        .column("match.sun_gap", &[3, 3, 3, 3]);
    assert_eq!(totals(&rules, &garden), [10, 10, 0, 0]);
    assert_eq!(
        totals(&rules, &garden.clone().with("garden.shade", 1)),
        [10; 4]
    );
    assert_eq!(totals(&rules, &garden.with("garden.sun", 2)), [0; 4]);
}

#[test]
fn alternatives_within_alternatives_and_both_holding_count_once() {
    let rules = rules(&plant_rules(
        "any | when: { any_of: [ { plant.height: 1, any_of: [ { match.sun_gap: 1 }, { match.sun_gap: 2 } ] }, { plant.soil: loam } ] }, points: 1",
    ));
    let garden = Garden::of(5)
        .column("plant.height", &[1, 1, 1, 0, 0])
        .column("match.sun_gap", &[1, 2, 3, 1, 1])
        .column("plant.soil", &[1, 0, 0, 1, 0]);
    assert_eq!(totals(&rules, &garden), [10, 10, 0, 10, 0]);
}

#[test]
fn a_column_cut_short_is_unknown_from_its_end_on() {
    let rules = rules(&plant_rules(
        "one | when: { plant.soil: { known: false } }, points: 1",
    ));
    assert_eq!(
        totals(&rules, &Garden::of(3).column("plant.soil", &[0])),
        [0, 10, 10]
    );
}
