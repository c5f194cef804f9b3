//! The compiled engine against the naive evaluator, on random rules over random gardens with unknowns in them.

use proptest::prelude::*;
use proptest::sample::{select, subsequence};
use spanwright::rules::{Fate, Kind, Line, RuleSet, UNKNOWN};

use crate::garden::{Garden, SUBJECTS, document, vocabulary};
use crate::naive::{Does, Matcher, PlainRule, Test, holds, met, order, points, written};

/// The facts that random rules use: all but those of pots and of stakes.
pub fn usable() -> Vec<usize> {
    let facts = vocabulary();
    let named = facts.facts().iter().enumerate();
    let usable =
        named.filter(|(_, fact)| !fact.name.starts_with("pot.") && fact.name != "old.stake");
    usable.map(|(index, _)| index).collect()
}

/// A known value of a fact; numbers stay near nothing, so that tests on them are met now and then.
pub fn known(fact: usize) -> BoxedStrategy<i64> {
    match vocabulary().facts()[fact].kind {
        Kind::Number {
            lowest, highest, ..
        } => (lowest.max(-6)..=highest.min(6)).boxed(),
        Kind::Choice(words) => (0..words.len() as i64).boxed(),
        Kind::Flag => (0..2_i64).boxed(),
        Kind::Set(words) => (0..1_i64 << words.len()).boxed(),
    }
}

fn maybe(fact: usize) -> BoxedStrategy<i64> {
    prop_oneof![4 => known(fact), 1 => Just(UNKNOWN)].boxed()
}

fn matcher(fact: usize) -> BoxedStrategy<Matcher> {
    let values = || prop::collection::vec(known(fact), 1..4);
    let is_known = any::<bool>().prop_map(Matcher::Known);
    match vocabulary().facts()[fact].kind {
        Kind::Number { .. } => prop_oneof![
            known(fact).prop_map(Matcher::Above),
            known(fact).prop_map(Matcher::AtLeast),
            known(fact).prop_map(Matcher::AtMost),
            known(fact).prop_map(Matcher::Below),
            values().prop_map(Matcher::Is),
            values().prop_map(Matcher::Not),
            is_known,
        ]
        .boxed(),
        Kind::Choice(_) | Kind::Flag => prop_oneof![
            values().prop_map(Matcher::Is),
            values().prop_map(Matcher::Not),
            is_known
        ]
        .boxed(),
        Kind::Set(words) => {
            let mask = move || 1..1_i64 << words.len();
            prop_oneof![
                mask().prop_map(Matcher::Has),
                mask().prop_map(Matcher::HasAny),
                mask().prop_map(Matcher::HasNone),
                is_known,
            ]
            .boxed()
        }
    }
}

/// A test that some value meets; one key of a kind, and plain values alone, as files have it.
fn test() -> impl Strategy<Value = Test> {
    select(usable()).prop_flat_map(|fact| {
        prop::collection::vec(matcher(fact), 1..4).prop_map(move |mut matchers| {
            matchers.sort_by_key(order);
            matchers.dedup_by_key(|matcher| std::mem::discriminant(matcher));
            if matchers.len() > 1 {
                matchers.retain(|matcher| !matches!(matcher, Matcher::Is(_)));
            }
            let possible = |value: i64| matchers.iter().all(|matcher| met(matcher, value));
            let words = vocabulary().facts()[fact].words().len();
            let any = match vocabulary().facts()[fact].kind {
                Kind::Number {
                    lowest, highest, ..
                } => (lowest.max(-9)..=highest.min(9)).any(possible),
                Kind::Set(_) => (0..8).any(possible),
                Kind::Choice(_) | Kind::Flag => (0..words as i64).any(possible),
            };
            let is_unknown = matches!(matchers.as_slice(), [Matcher::Known(false)]);
            if !any && !is_unknown {
                matchers = vec![Matcher::Known(true)];
            }
            Test { fact, matchers }
        })
    })
}

/// Tests of different facts.
fn tests(most: usize) -> impl Strategy<Value = Vec<Test>> {
    prop::collection::vec(test(), 0..=most).prop_map(|mut tests| {
        tests.sort_by_key(|test| test.fact);
        tests.dedup_by_key(|test| test.fact);
        tests
    })
}

fn does() -> impl Strategy<Value = Does> {
    let numbers: Vec<usize> = usable()
        .into_iter()
        .filter(|&fact| matches!(vocabulary().facts()[fact].kind, Kind::Number { .. }))
        .collect();
    let curve = select(numbers).prop_flat_map(|fact| {
        let Kind::Number {
            lowest, highest, ..
        } = vocabulary().facts()[fact].kind
        else {
            unreachable!()
        };
        let mut places: Vec<i64> = (lowest.max(-6)..=highest.min(6)).collect();
        // A far knot now and then makes a curve too wide for a table.
        places.push(highest);
        let places = subsequence(places, 2..5);
        (places, prop::collection::vec(-99..100_i64, 5)).prop_map(move |(places, points)| {
            Does::Curve(fact, places.into_iter().zip(points).collect())
        })
    });
    prop_oneof![
        4 => (1..100_i64, any::<bool>()).prop_map(|(size, less)| Does::Points(if less { -size } else { size })),
        4 => curve,
        1 => Just(Does::Out),
        1 => Just(Does::Caution),
    ]
}

pub fn rule() -> impl Strategy<Value = PlainRule> {
    let any_of = prop_oneof![
        2 => Just(Vec::new()),
        1 => prop::collection::vec(tests(2), 1..4),
    ];
    (tests(3), any_of, does(), prop::bool::weighted(0.2)).prop_map(
        |(when, any_of, does, disputes)| {
            let disputes = disputes && matches!(does, Does::Points(_) | Does::Curve(..));
            PlainRule {
                when,
                any_of,
                does,
                disputes,
            }
        },
    )
}

pub fn garden() -> impl Strategy<Value = Garden> {
    (0..6_usize).prop_flat_map(|plants| {
        let facts = usable();
        let values: Vec<_> = facts
            .iter()
            .map(|&fact| prop::collection::vec(maybe(fact), plants.max(1)))
            .collect();
        values.prop_map(move |values| {
            let mut garden = Garden::of(plants);
            for (&fact, values) in facts.iter().zip(values) {
                let stated = vocabulary().facts()[fact];
                garden = if stated.origin.is_scalar() {
                    garden.with(stated.name, values[0])
                } else {
                    garden.column(stated.name, &values[..plants])
                };
            }
            garden
        })
    })
}

fn id(index: usize) -> String {
    format!("rule-{index:02}")
}

/// The rules as files: `first`, which others dispute, and then these, dealt out over two files in this order.
pub fn read(rules: &[PlainRule], order: &[usize]) -> RuleSet {
    let mut files = [
        "subject: plant\nrules:\n".to_owned(),
        "subject: plant\nrules:\n".to_owned(),
    ];
    files[1] += "  - { id: first, points: 1, because: So it is., source: own choice }\n";
    for (place, &index) in order.iter().enumerate() {
        files[place % 2] += &written(&vocabulary(), &id(index), &rules[index]);
    }
    let mut documents = vec![
        document("one.yaml", &files[1]),
        document("subjects.yaml", SUBJECTS),
    ];
    if !order.is_empty() {
        documents.push(document("two.yaml", &files[0]));
    }
    RuleSet::read(&vocabulary(), &documents).unwrap_or_else(|faults| panic!("{faults}\n{files:?}"))
}

/// The value of a fact at a plant.
pub fn value(garden: &Garden, plant: usize, fact: usize) -> i64 {
    let name = vocabulary().facts()[fact].name;
    let scalar = garden.scalars.get(name).copied();
    scalar
        .or_else(|| garden.columns.get(name)?.get(plant).copied())
        .unwrap_or(UNKNOWN)
}

/// Lines as `(id, points, disputed)` in the order of ids.
fn told(set: &RuleSet, lines: &[Line]) -> Vec<(String, i64, i64)> {
    let line = |line: &Line| {
        (
            set.rule(line.rule()).id().to_owned(),
            line.points(),
            line.disputed_points(),
        )
    };
    let mut told: Vec<_> = lines.iter().map(line).collect();
    told.sort();
    told
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]

    /// Totals, order, what is ruled out and by what, ledgers, cautions.
    #[test]
    fn the_engine_and_the_naive_agree(rules in prop::collection::vec(rule(), 1..12), gardens in prop::collection::vec(garden(), 1..3)) {
        let order: Vec<usize> = (0..rules.len()).collect();
        let set = read(&rules, &order);
        for garden in &gardens {
            let chooser = set.chooser("plant", garden).unwrap();
            let ranking = chooser.rank(garden);
            let mut expected_order = Vec::new();
            for plant in 0..garden.candidates {
                let at = |fact: usize| value(garden, plant, fact);
                let mut lines = vec![("first".to_owned(), 10, 0)];
                let mut outs = Vec::new();
                let mut cautions = Vec::new();
                for (index, rule) in rules.iter().enumerate() {
                    let points = points(rule, &at);
                    if points != 0 {
                        let counted = if rule.disputes { (0, points) } else { (points, 0) };
                        lines.push((id(index), counted.0, counted.1));
                    }
                    match rule.does {
                        Does::Out if holds(rule, &at) => outs.push((id(index), 0, 0)),
                        Does::Caution if holds(rule, &at) => cautions.push((id(index), 0, 0)),
                        _ => {}
                    }
                }
                let total: i64 = lines.iter().map(|(_, points, _)| points).sum();
                prop_assert_eq!(ranking.total(plant), total);
                prop_assert_eq!(ranking.is_ruled_out(plant), !outs.is_empty());
                let ledger = chooser.ledger(garden, &ranking, plant);
                prop_assert_eq!(ledger.total(), total);
                prop_assert_eq!(ledger.lines().iter().map(Line::points).sum::<i64>(), total);
                prop_assert!(ledger.lines().windows(2).all(|two| two[0].points().abs() >= two[1].points().abs()));
                prop_assert_eq!(told(&set, ledger.lines()), lines);
                match chooser.fate(garden, &ranking, plant) {
                    Fate::RuledOut(lines) => prop_assert_eq!(told(&set, &lines), outs),
                    Fate::Ranked { place } => {
                        prop_assert_eq!(ranking.order()[place], plant);
                        expected_order.push((-total, plant));
                    }
                }
                prop_assert_eq!(told(&set, &chooser.cautions(garden, plant)), cautions);
                for line in ledger.lines() {
                    for &(fact, shown) in line.values() {
                        prop_assert_eq!(shown, at(usize::from(fact.0)));
                    }
                }
            }
            expected_order.sort_unstable();
            let expected_order: Vec<usize> = expected_order.into_iter().map(|(_, plant)| plant).collect();
            prop_assert_eq!(ranking.order(), expected_order.as_slice());
            for most in 0..4 {
                prop_assert_eq!(ranking.best(most), &expected_order[..most.min(expected_order.len())]);
            }
        }
    }

    /// A line is common exactly if every remaining plant has it with the same points.
    #[test]
    fn common_lines(rules in prop::collection::vec(rule(), 1..8), garden in garden()) {
        let set = read(&rules, &(0..rules.len()).collect::<Vec<_>>());
        let chooser = set.chooser("plant", &garden).unwrap();
        let ranking = chooser.rank(&garden);
        prop_assume!(ranking.order().len() > 1);
        for plant in 0..garden.candidates {
            for line in chooser.ledger(&garden, &ranking, plant).lines() {
                let rule = set.rule(line.rule()).id();
                let index = (0..rules.len()).find(|&index| id(index) == rule);
                let at_plant = |plant: usize| match index {
                    Some(index) => points(&rules[index], &|fact| value(&garden, plant, fact)),
                    None => 10,
                };
                let alike = ranking.order().iter().all(|&other| at_plant(other) == at_plant(plant));
                prop_assert_eq!(line.is_common(), alike, "{}", rule);
            }
        }
    }

    /// Neither the order of rules and files nor that of candidates changes anything.
    #[test]
    fn order_does_not_matter(
        (rules, order) in prop::collection::vec(rule(), 1..8)
            .prop_flat_map(|rules| { let order: Vec<usize> = (0..rules.len()).collect(); (Just(rules), Just(order).prop_shuffle()) }),
        (garden, plants) in garden()
            .prop_flat_map(|garden| { let plants: Vec<usize> = (0..garden.candidates).collect(); (Just(garden), Just(plants).prop_shuffle()) }),
    ) {
        let straight = read(&rules, &(0..rules.len()).collect::<Vec<_>>());
        let shuffled = read(&rules, &order);
        prop_assert_eq!(straight.digest(), shuffled.digest());
        // The shuffled garden keeps the ties of the straight one.
        let mut moved = garden.clone();
        moved.ties = plants.iter().map(|&plant| plant as i64).collect();
        for column in moved.columns.values_mut() {
            *column = plants.iter().map(|&plant| column[plant]).collect();
        }
        let (one, two) = (straight.chooser("plant", &garden).unwrap(), shuffled.chooser("plant", &moved).unwrap());
        let (first, second) = (one.rank(&garden), two.rank(&moved));
        let back: Vec<usize> = second.order().iter().map(|&place| plants[place]).collect();
        prop_assert_eq!(first.order(), back.as_slice());
        for (place, &plant) in plants.iter().enumerate() {
            prop_assert_eq!(one.ledger(&garden, &first, plant), two.ledger(&moved, &second, place));
        }
    }
}
