//! Choices: order, ties, what rules out, fates, ledgers that add up.

use spanwright::rules::{Fate, Role, Severity, UNKNOWN};

use crate::garden::{Garden, about, ids, lines, plant_rules, rules};

const RULES: &str = "
  tall | points: { along: plant.height, at: { 0: 0, 100: 10 } }
  dry-soil | when: { worked.dry: true, plant.soil: sand }, points: 4.5
  evergreen | when: { plant.evergreen: true }, points: -3
  over-budget | when: { match.over_budget: { above: $0 } }, rule_out: true
  eaten | when: { garden.pests: { has: deer }, plant.safe_from: { has_none: deer } }, rule_out: true
  prickly | when: { plant.height: { above: 50 } }, caution: mild
  poison | when: { plant.evergreen: true }, caution: serious
";

fn garden() -> Garden {
    Garden::of(4)
        .with("worked.dry", 1)
        .with("garden.pests", 0)
        .column("plant.height", &[100, 40, 100, 7])
        .column("plant.soil", &[1, 0, 1, 0])
        .column("plant.evergreen", &[1, 0, 0, 1])
        .column("plant.safe_from", &[0, 4, 4, 0])
        .column("match.over_budget", &[0, 0, 1, UNKNOWN])
}

#[test]
fn the_best_first_without_those_ruled_out() {
    let rules = rules(&plant_rules(RULES));
    let garden = garden();
    let chooser = rules.chooser("plant", &garden).unwrap();
    let ranking = chooser.rank(&garden);
    let totals: Vec<i64> = (0..4).map(|plant| ranking.total(plant)).collect();
    assert_eq!(totals, [70, 85, 100, 22]);
    assert_eq!(ranking.order(), [1, 0, 3]);
    assert_eq!(
        (0..5)
            .map(|most| ranking.best(most).len())
            .collect::<Vec<_>>(),
        [0, 1, 2, 3, 3]
    );
    assert_eq!(ranking.best(2), [1, 0]);
    assert_eq!(
        [0, 1, 2, 3, 4].map(|plant| ranking.place(plant)),
        [Some(1), Some(0), None, Some(2), None]
    );
    assert_eq!(
        [0, 1, 2, 3, 4].map(|plant| ranking.is_ruled_out(plant)),
        [false, false, true, false, false]
    );
}

#[test]
fn every_candidate_has_a_fate() {
    let rules = rules(&plant_rules(RULES));
    let garden = garden().with("garden.pests", 4);
    let chooser = rules.chooser("plant", &garden).unwrap();
    let ranking = chooser.rank(&garden);
    assert_eq!(ranking.order(), [1]);
    assert_eq!(
        chooser.fate(&garden, &ranking, 1),
        Fate::Ranked { place: 0 }
    );
    let ruled_out_by = |plant| match chooser.fate(&garden, &ranking, plant) {
        Fate::RuledOut(lines) => {
            assert!(
                lines
                    .iter()
                    .all(|line| line.role() == Role::RuleOut && line.points() == 0)
            );
            ids(&rules, &lines).join(" ")
        }
        Fate::Ranked { .. } => "nothing".to_owned(),
    };
    assert_eq!(
        [0, 2, 3].map(ruled_out_by),
        ["eaten", "over-budget", "eaten"]
    );
    assert_eq!(ruled_out_by(9), "", "a plant that there is not");
}

#[test]
fn what_was_found_and_what_was_wanted() {
    let rules = rules(&plant_rules(
        "over | when: { match.over_budget: { above: $0 } }, rule_out: true
         size | when: { plant.height: { above: 10, below: 90, not: 50 } }, rule_out: true
         soil | when: { garden.shade: false, plant.soil: [sand, heavy_clay] }, rule_out: true
         eaten | when: { plant.safe_from: { has_none: [deer, mice] } }, rule_out: true
         bare | when: { plant.evergreen: false }, rule_out: true",
    ));
    let garden = Garden::of(1)
        .with("garden.shade", 0)
        .column("match.over_budget", &[250])
        .column("plant.height", &[20])
        .column("plant.soil", &[2])
        .column("plant.safe_from", &[1])
        .column("plant.evergreen", &[0]);
    let chooser = rules.chooser("plant", &garden).unwrap();
    let Fate::RuledOut(out) = chooser.fate(&garden, &chooser.rank(&garden), 0) else {
        panic!("all of them rule it out");
    };
    let found: Vec<String> = out
        .iter()
        .flat_map(|line| rules.found(line))
        .map(|found| {
            let value = rules.vocabulary().print(found.fact(), found.value());
            format!("{value}, not {}", found.wanted())
        })
        .collect();
    let expected = [
        "no, not yes",
        "snails, not with mice and deer",
        "$2.50, not at most $0",
        "20, not at most 10, 50 or at least 90",
        "heavy clay, not loam",
    ];
    assert_eq!(found, expected);
}

#[test]
fn ties_go_by_the_callers_column_then_by_place() {
    let rules = rules(&plant_rules("all | points: 1"));
    let mut garden = Garden::of(5);
    garden.ties = vec![7, 3, 7, -1, 3];
    let chooser = rules.chooser("plant", &garden).unwrap();
    assert_eq!(chooser.rank(&garden).order(), [3, 1, 4, 0, 2]);
    assert_eq!(chooser.rank(&garden).best(3), [3, 1, 4]);
}

#[test]
fn a_ledger_adds_up_and_goes_by_size_then_by_id() {
    let rules = rules(&plant_rules(
        "small | points: 1
         b-same | points: -5
         a-same | points: 5
         large | when: { match.sun_gap: 0 }, points: -20.5
         asks | points: { along: garden.sun, at: { 0: 0, 2: 0.5 } }
         zero | points: { along: garden.sun, at: { 1: 0, 2: 3 } }
         elsewhere | when: { plant.soil: sand }, points: 9",
    ));
    let garden = Garden::of(1)
        .with("garden.sun", 1)
        .column("match.sun_gap", &[0])
        .column("plant.soil", &[1]);
    let chooser = rules.chooser("plant", &garden).unwrap();
    let ranking = chooser.rank(&garden);
    let ledger = chooser.ledger(&garden, &ranking, 0);
    let expected = [
        "large: -205",
        "a-same: 50",
        "b-same: -50",
        "small: 10",
        "asks: 3",
    ];
    assert_eq!(lines(&rules, &ledger), expected);
    assert_eq!(ledger.total(), -192);
    assert_eq!(
        ledger.lines().iter().map(|line| line.points()).sum::<i64>(),
        ledger.total()
    );
}

#[test]
fn one_that_is_ruled_out_has_a_ledger_too() {
    let rules = rules(&plant_rules(RULES));
    let garden = garden();
    let chooser = rules.chooser("plant", &garden).unwrap();
    let ledger = chooser.ledger(&garden, &chooser.rank(&garden), 2);
    assert_eq!(lines(&rules, &ledger), ["tall: 100"]);
    assert_eq!(ledger.total(), 100);
}

#[test]
fn cautions_of_a_candidate_serious_ones_first() {
    let rules = rules(&plant_rules(RULES));
    let garden = garden();
    let chooser = rules.chooser("plant", &garden).unwrap();
    let cautions = |plant| chooser.cautions(&garden, plant);
    assert_eq!(ids(&rules, &cautions(0)), ["poison", "prickly"]);
    assert_eq!(ids(&rules, &cautions(1)), [""; 0]);
    assert_eq!(ids(&rules, &cautions(2)), ["prickly"]);
    assert_eq!(cautions(0)[0].role(), Role::Caution(Severity::Serious));
}

#[test]
fn cautions_of_the_person() {
    let rules = rules(&about(
        "gardener",
        "sun | when: { garden.sun: { above: 6 } }, caution: mild
         gloves | when: { garden.pests: { has: mice } }, caution: serious
         never | when: { garden.shade: true }, caution: serious",
    ));
    let garden = Garden::of(0).with("garden.sun", 9).with("garden.pests", 2);
    assert_eq!(ids(&rules, &rules.cautions(&garden)), ["gloves", "sun"]);
}

#[test]
fn a_chooser_serves_one_asker_after_another() {
    let rules = rules(&plant_rules(RULES));
    let first = garden();
    let chooser = rules.chooser("plant", &first).unwrap();
    let second = garden().with("worked.dry", 0);
    assert_eq!(chooser.rank(&first).order(), [1, 0, 3]);
    assert_eq!(chooser.rank(&second).order(), [0, 1, 3]);
    assert_eq!(chooser.rank(&first).order(), [1, 0, 3]);
}

#[test]
fn no_candidates_no_rules_no_such_choice() {
    let none = rules(&plant_rules(RULES));
    let empty = Garden::of(0);
    let chooser = none.chooser("plant", &empty).unwrap();
    assert!(chooser.rank(&empty).order().is_empty());
    assert!(
        chooser
            .ledger(&empty, &chooser.rank(&empty), 0)
            .lines()
            .is_empty()
    );
    let garden = garden();
    assert_eq!(
        none.chooser("pot", &garden).unwrap().rank(&garden).order(),
        [0, 1, 2, 3]
    );
    assert!(none.chooser("gardener", &garden).is_none());
    assert!(none.chooser("stake.length", &garden).is_none());
    assert!(none.chooser("hedge", &garden).is_none());
}
