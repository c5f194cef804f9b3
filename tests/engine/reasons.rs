//! Reasons: an audience each, values filled in, sources that travel with them; and the digest of it all.

use spanwright::rules::{Audience, Fate, RuleSet, Strength};

use crate::garden::{Garden, SUBJECTS, document, plant_rules, rules, vocabulary};

const RULES: &str = "
subject: plant
rules:
  - id: soil
    when: { plant.soil: loam }
    points: 6
    because:
      newcomer: It likes your {garden.soil} well enough.
      league: '{plant.soil} suits it.'
      fitter: 'Soil {plant.soil}; garden {garden.soil}, {garden.sun} hours, {match.sun_gap}.'
    source: hedge-book
    section: chapter 2
    practice: [G1, G7]
  - id: dear
    when: { match.over_budget: { above: $0 } }
    rule_out: true
    because: It comes to {match.over_budget} for your {garden.budget}.
    source: from memory
  - id: mice
    caution: mild
    then: Look out for {garden.pests}.
    because: They eat {plant.safe_from}, and it is {plant.evergreen} that it stays green.
    source: common practice
";

fn garden() -> Garden {
    Garden::of(1)
        .with("garden.soil", 2)
        .with("garden.budget", 5000)
        .with("garden.pests", 3)
        .column("plant.soil", &[1])
        .column("plant.safe_from", &[0])
        .column("plant.evergreen", &[1])
        .column("match.sun_gap", &[-2])
        .column("match.over_budget", &[125])
}

#[test]
fn each_audience_has_its_text_with_values() {
    let (rules, garden) = (rules(RULES), garden());
    let chooser = rules.chooser("plant", &garden).unwrap();
    let ranking = chooser.rank(&garden);
    let ledger = chooser.ledger(&garden, &ranking, 0);
    let line = &ledger.lines()[0];
    let reason = |audience| rules.reason(line, audience);
    assert_eq!(
        reason(Audience::Newcomer),
        "It likes your heavy clay well enough."
    );
    assert_eq!(reason(Audience::League), "loam suits it.");
    let expected = "Soil loam; garden heavy clay, not known hours, 2 fewer.";
    assert_eq!(reason(Audience::Fitter), expected);
    let Fate::RuledOut(out) = chooser.fate(&garden, &ranking, 0) else {
        panic!("it is too dear")
    };
    assert_eq!(
        rules.reason(&out[0], Audience::League),
        "It comes to $1.25 for your $50."
    );
}

#[test]
fn what_to_do_comes_first() {
    let (rules, garden) = (rules(RULES), garden());
    let cautions = rules
        .chooser("plant", &garden)
        .unwrap()
        .cautions(&garden, 0);
    let expected =
        "Look out for snails and mice. They eat none, and it is yes that it stays green.";
    assert_eq!(rules.reason(&cautions[0], Audience::Newcomer), expected);
    assert_eq!(
        rules.action(&cautions[0]).as_deref(),
        Some("Look out for snails and mice.")
    );
}

#[test]
fn sources_travel_with_rules() {
    let rules = rules(RULES);
    let source = rules.find("soil").unwrap().1.source();
    assert_eq!(
        source.to_string(),
        "A. Rowe, The Plain Hedge (1974), chapter 2"
    );
    assert_eq!(
        (source.key(), source.strength()),
        ("hedge-book", Strength::Published)
    );
    let source = rules.find("mice").unwrap().1.source();
    assert_eq!(
        (source.to_string().as_str(), source.strength()),
        ("common practice", Strength::CommonPractice)
    );
    assert_eq!(rules.find("soil").unwrap().1.practice(), ["G1", "G7"]);
    assert_eq!(
        rules
            .sources()
            .map(|source| source.key())
            .collect::<Vec<_>>(),
        ["hedge-book"]
    );
}

#[test]
fn a_digest_tells_sets_apart_and_not_their_layout() {
    let read = |files: &[(&str, &str)]| {
        let documents: Vec<_> = files
            .iter()
            .map(|(name, text)| document(name, text))
            .collect();
        RuleSet::read(&vocabulary(), &documents).unwrap().digest()
    };
    let one = plant_rules("a | points: 1\nb | points: 2");
    let digest = read(&[("s", SUBJECTS), ("r", &one)]);
    assert_eq!(digest.len(), 16);
    assert!(digest.bytes().all(|byte| byte.is_ascii_hexdigit()));
    let turned = plant_rules("b | points: 2.0\na | points: 1");
    let commented = format!("# about plants\n{turned}");
    assert_eq!(read(&[("other", &commented), ("s", SUBJECTS)]), digest);
    let split = [
        ("s", SUBJECTS),
        ("a", &plant_rules("a | points: 1")),
        ("b", &plant_rules("b | points: 2")),
    ];
    assert_eq!(read(&split), digest);
    for other in [
        "a | points: 1\nb | points: 2.1",
        "a | points: 1",
        "a | points: 1\nc | points: 2",
        "a | points: 1\nb | when: { garden.shade: true }, points: 2",
        "a | points: 1\nb | points: 2, practice: [G1]",
        "a | points: 1\nb | points: 2, disputes: a",
    ] {
        assert_ne!(
            read(&[("s", SUBJECTS), ("r", &plant_rules(other))]),
            digest,
            "{other}"
        );
    }
    let texts = one.replace("So it is.", "So be it.");
    assert_ne!(read(&[("s", SUBJECTS), ("r", &texts)]), digest);
}
