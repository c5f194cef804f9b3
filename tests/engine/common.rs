//! What every remaining candidate has alike is common: no reason for this one.

use crate::garden::{Garden, plant_rules, rules};

/// The ids of the common lines of a plant.
fn common(text: &str, garden: &Garden, plant: usize) -> Vec<String> {
    let rules = rules(&plant_rules(text));
    let chooser = rules.chooser("plant", garden).unwrap();
    let ledger = chooser.ledger(garden, &chooser.rank(garden), plant);
    let common = ledger.lines().iter().filter(|line| line.is_common());
    common
        .map(|line| rules.rule(line.rule()).id().to_owned())
        .collect()
}

const RULES: &str = "
  everyone | points: 1
  sunny | when: { garden.sun: { above: 3 } }, points: 2
  green | when: { plant.evergreen: true }, points: 3
  tall | points: { along: plant.height, at: { 0: 0, 10: 10 } }
  gap | when: { match.sun_gap: { below: 5 } }, points: 5
  dear | when: { match.over_budget: { above: $0 } }, rule_out: true
";

#[test]
fn alike_for_all_that_remain() {
    let garden = Garden::of(3)
        .with("garden.sun", 4)
        .column("plant.evergreen", &[1, 1, 0])
        .column("plant.height", &[5, 5, 9])
        .column("match.sun_gap", &[1, 2, 9]);
    assert_eq!(common(RULES, &garden, 0), ["sunny", "everyone"]);
    // Once the third is ruled out, the other two differ in nothing. Lines of the same size go by id.
    let garden = garden.column("match.over_budget", &[0, 0, 1]);
    assert_eq!(
        common(RULES, &garden, 0),
        ["gap", "tall", "green", "sunny", "everyone"]
    );
    // The one ruled out has in common with them only what it has alike.
    assert_eq!(common(RULES, &garden, 2), ["sunny", "everyone"]);
}

#[test]
fn the_same_rule_with_other_points_is_not_common() {
    let garden = Garden::of(2).column("plant.height", &[5, 6]);
    assert_eq!(common(RULES, &garden, 0), ["everyone"]);
}

#[test]
fn a_single_one_left_keeps_the_reasons_that_look_at_it() {
    let garden = Garden::of(1)
        .with("garden.sun", 4)
        .column("plant.evergreen", &[1])
        .column("plant.height", &[5])
        .column("match.sun_gap", &[1]);
    assert_eq!(common(RULES, &garden, 0), ["sunny", "everyone"]);
}
