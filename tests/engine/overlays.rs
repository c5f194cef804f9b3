//! A shop's own files over the rules.

use spanwright::rules::{Audience, RuleSet};

use crate::garden::{Garden, about, document, plant_rules, rules, totals, vocabulary};

const RULES: &str = "
  loam | when: { plant.soil: loam }, points: 6
  sand | when: { plant.soil: sand }, points: 5
";

fn base() -> RuleSet {
    let words = "
assumptions:
  - { fact: garden.shade, value: false, because: Most beds lie in the sun., source: from memory }
  - { fact: garden.sun, needed: true, because: Nobody can guess the sun., source: own choice }
  - { fact: garden.soil, absent: true, because: Not asked., source: own choice }
  - { fact: garden.pests, value: none, because: Not seen., source: own choice }
glossary:
  - { word: Loam, also: [loams], meaning: Soil that is neither sand nor clay. }
  - { word: Clay, meaning: Soil that keeps water. }
";
    rules(&(plant_rules(RULES) + words))
}

fn laid(text: &str) -> RuleSet {
    base()
        .overlay(&[document("shop.yaml", text)])
        .unwrap_or_else(|faults| panic!("{faults}"))
}

fn garden() -> Garden {
    Garden::of(2).column("plant.soil", &[0, 1])
}

#[test]
fn nothing_laid_over_changes_nothing() {
    let shop = base().overlay(&[]).unwrap();
    assert_eq!(totals(&shop, &garden()), [50, 60]);
    assert_eq!(shop.digest(), base().digest());
}

#[test]
fn an_added_rule_names_its_file() {
    let shop = laid(&plant_rules("ours | when: { plant.soil: sand }, points: 2"));
    assert_eq!(totals(&shop, &garden()), [70, 60]);
    let garden = garden();
    let chooser = shop.chooser("plant", &garden).unwrap();
    let ledger = chooser.ledger(&garden, &chooser.rank(&garden), 0);
    let reasons: Vec<String> = ledger
        .lines()
        .iter()
        .map(|line| shop.reason(line, Audience::League))
        .collect();
    assert_eq!(reasons, ["So it is.", "So it is. (shop.yaml)"]);
    let files: Vec<(&str, bool)> = ledger
        .lines()
        .iter()
        .map(|line| shop.rule(line.rule()))
        .map(|r| (r.file(), r.is_overlay()))
        .collect();
    assert_eq!(files, [("rules.yaml", false), ("shop.yaml", true)]);
}

#[test]
fn a_rule_overridden() {
    let shop = laid(&plant_rules(
        "sand | override: true, when: { plant.soil: sand }, points: 8",
    ));
    assert_eq!(totals(&shop, &garden()), [80, 60]);
}

#[test]
fn a_rule_overridden_into_another_subject() {
    let shop = laid(&about("pot", "sand | override: true, points: 8"));
    assert_eq!(totals(&shop, &garden()), [0, 60]);
}

#[test]
fn a_rule_switched_off() {
    assert_eq!(totals(&laid("switch_off: [loam]"), &garden()), [50, 0]);
    assert_eq!(
        totals(&laid("switch_off: [loam, sand, loam]"), &garden()),
        [0, 0]
    );
}

#[test]
fn overlays_over_overlays() {
    let one = laid(&plant_rules("ours | points: 1"));
    let text = plant_rules("ours | override: true, points: 2");
    let two = one.overlay(&[document("branch.yaml", &text)]).unwrap();
    assert_eq!(totals(&two, &garden()), [70, 80]);
    assert_eq!(two.find("ours").unwrap().1.file(), "branch.yaml");
}

#[test]
fn what_is_laid_over_may_come_in_several_files_and_any_order() {
    let files = [
        ("a.yaml", plant_rules("ours | points: 1, disputes: loam")),
        ("b.yaml", "follow: [ours]".to_owned()),
        ("c.yaml", "switch_off: [sand]".to_owned()),
    ];
    let read = |order: [usize; 3]| {
        let documents = order.map(|index| document(files[index].0, &files[index].1));
        base().overlay(&documents).unwrap()
    };
    assert_eq!(totals(&read([0, 1, 2]), &garden()), [10, 10]);
    for order in [[0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]] {
        assert_eq!(read(order).digest(), read([0, 1, 2]).digest());
    }
}

#[test]
fn assumptions_and_words_are_replaced() {
    let shop = laid(
        "
assumptions:
  - { fact: garden.shade, value: true, because: Our town has tall houses., source: own choice }
glossary:
  - { word: loam, meaning: The good soil. }
",
    );
    let assumed = |name: &str| {
        let fact = vocabulary().id(name);
        let found = shop
            .assumptions()
            .iter()
            .find(|assumption| Some(assumption.fact()) == fact);
        found.map(|found| {
            (
                found.value(),
                found.is_needed(),
                found.because(Audience::Newcomer),
                found.file(),
            )
        })
    };
    assert_eq!(
        assumed("garden.shade"),
        Some((Some(1), false, "Our town has tall houses.", "shop.yaml"))
    );
    assert_eq!(
        assumed("garden.sun"),
        Some((None, true, "Nobody can guess the sun.", "rules.yaml"))
    );
    assert_eq!(
        assumed("garden.soil"),
        Some((None, false, "Not asked.", "rules.yaml"))
    );
    assert_eq!(
        assumed("garden.pests"),
        Some((Some(0), false, "Not seen.", "rules.yaml"))
    );
    assert_eq!(assumed("garden.budget"), None);
    let words: Vec<_> = shop
        .glossary()
        .iter()
        .map(|word| (word.word(), word.meaning()))
        .collect();
    assert_eq!(
        words,
        [
            ("Clay", "Soil that keeps water."),
            ("loam", "The good soil.")
        ]
    );
}

#[test]
fn a_faulty_overlay_leaves_the_rules_in_force() {
    let base = base();
    let faulty = document("shop.yaml", "switch_off: [loam, laom]");
    let faults = base.overlay(&[faulty]).unwrap_err();
    assert_eq!(faults.len(), 1);
    assert_eq!(totals(&base, &garden()), [50, 60]);
}
