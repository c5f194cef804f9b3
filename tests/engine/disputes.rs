//! Opposing schools: shown, not counted, until a shop follows them.

use spanwright::rules::Role;

use crate::garden::{Garden, about, document, lines, plant_rules, rules, totals};

const RULES: &str = "
  loam-first | when: { plant.soil: loam }, points: 6
  sand-first | when: { plant.soil: sand }, points: 7, disputes: loam-first
  tall-first | points: { along: plant.height, at: { 0: 0, 10: 10 } }, disputes: loam-first
";

fn garden() -> Garden {
    Garden::of(2)
        .column("plant.soil", &[0, 1])
        .column("plant.height", &[2, 1])
}

#[test]
fn shown_and_not_counted() {
    let rules = rules(&plant_rules(RULES));
    let garden = garden();
    assert_eq!(totals(&rules, &garden), [0, 60]);
    let chooser = rules.chooser("plant", &garden).unwrap();
    let ranking = chooser.rank(&garden);
    let ledger = chooser.ledger(&garden, &ranking, 0);
    assert_eq!(lines(&rules, &ledger), ["sand-first: 0", "tall-first: 0"]);
    assert_eq!(ledger.total(), 0);
    let said: Vec<_> = ledger
        .lines()
        .iter()
        .map(|line| (line.role(), line.disputed_points()))
        .collect();
    assert_eq!(said, [(Role::Dispute, 70), (Role::Dispute, 20)]);
    let ledger = chooser.ledger(&garden, &ranking, 1);
    assert_eq!(lines(&rules, &ledger), ["loam-first: 60", "tall-first: 0"]);
    assert_eq!(ledger.lines()[0].disputed_points(), 0);
}

#[test]
fn following_the_other_school() {
    let base = rules(&plant_rules(RULES));
    let shop = base
        .overlay(&[document("shop.yaml", "follow: [sand-first]")])
        .unwrap();
    assert_eq!(totals(&shop, &garden()), [70, 0]);
    let disputes = |id| shop.find(id).unwrap().1.disputes().map(str::to_owned);
    assert_eq!(disputes("sand-first"), None);
    assert_eq!(disputes("loam-first").as_deref(), Some("sand-first"));
    assert_eq!(disputes("tall-first").as_deref(), Some("sand-first"));
    // And back again.
    let again = shop
        .overlay(&[document("shop.yaml", "follow: [loam-first]")])
        .unwrap();
    assert_eq!(totals(&again, &garden()), [0, 60]);
}

#[test]
fn measures_have_schools_too() {
    let rules = rules(&about(
        "tie.count",
        "three | start: 3
         four | start: 4, disputes: three
         windy | when: { worked.wind: { above: 5 } }, add: 1
         calm | add: 2, disputes: windy",
    ));
    let measured = rules.measure("tie.count", &Garden::of(0).with("worked.wind", 9));
    assert_eq!(measured.value(), Some(4));
    let line = |line: &spanwright::rules::Line| {
        (
            rules.rule(line.rule()).id().to_owned(),
            line.points(),
            line.disputed_points(),
        )
    };
    let expected = [
        ("three", 3, 0),
        ("windy", 1, 0),
        ("calm", 0, 2),
        ("four", 0, 4),
    ];
    let found: Vec<_> = measured.lines().iter().map(line).collect();
    assert_eq!(
        found,
        expected.map(|(id, points, disputed)| (id.to_owned(), points, disputed))
    );
}
