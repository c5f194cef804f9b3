//! Whether a plant stays first over a box of answers, against trying every point of the box.

use std::collections::BTreeMap;

use proptest::prelude::*;
use proptest::sample::select;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;
use spanwright::rules::{Challenge, FactId, Interval, Kind, Origin, Ranged, RuleSet, UNKNOWN};

use crate::garden::{Garden, plant_rules, rules, vocabulary};
use crate::naive::{Does, PlainRule};
use crate::random::{garden, known, read, rule, usable, value};

/// A fact of the gardener, or of one plant.
type Place = (usize, usize);

/// A garden of which some values are open.
#[derive(Clone, Debug)]
struct Plot {
    garden: Garden,
    open: BTreeMap<Place, Interval>,
    /// What is taken off a fact of each plant: the same for all of them.
    less: Option<(usize, Interval)>,
}

impl Plot {
    fn of(garden: Garden) -> Plot {
        Plot {
            garden,
            open: BTreeMap::new(),
            less: None,
        }
    }

    fn open(mut self, name: &str, plant: usize, range: Interval) -> Plot {
        let fact = vocabulary().id(name).unwrap();
        self.open.insert((usize::from(fact.0), plant), range);
        self
    }

    fn range(&self, fact: usize, plant: usize) -> Interval {
        let open = self.open.get(&(fact, plant)).copied();
        let whole = open.unwrap_or_else(|| Interval::point(value(&self.garden, plant, fact)));
        match self.less {
            Some((same, less)) if same == fact => whole.minus(less),
            _ => whole,
        }
    }

    /// Every garden there may be, or as many as `most` of them, spread out.
    fn gardens(&self, most: usize) -> Vec<Garden> {
        let sides: Vec<(Place, Vec<i64>)> = self
            .open
            .iter()
            .map(|(&place, &range)| (place, values(place.0, range)))
            .collect();
        let all: usize = sides.iter().map(|(_, values)| values.len()).product();
        let gardens = 0..all.min(most);
        gardens
            .map(|number| {
                let mut rest = number * all / all.min(most);
                let mut garden = self.garden.clone();
                for ((fact, plant), values) in &sides {
                    put(&mut garden, *fact, *plant, values[rest % values.len()]);
                    rest /= values.len();
                }
                garden
            })
            .collect()
    }
}

impl Ranged for Plot {
    fn candidates(&self) -> usize {
        self.garden.candidates
    }

    fn scalar(&self, fact: FactId) -> Interval {
        self.range(usize::from(fact.0), 0)
    }

    fn bounds(&self, fact: FactId, candidate: usize) -> Interval {
        self.range(usize::from(fact.0), candidate)
    }

    fn moves_together(&self, fact: FactId) -> bool {
        self.less
            .is_some_and(|(same, _)| same == usize::from(fact.0))
    }
}

/// All values of a range; of a set all sets from what is certainly in to what may be.
fn values(fact: usize, range: Interval) -> Vec<i64> {
    let mut values = Vec::new();
    if range.may_be_known() {
        let (low, high) = (range.lowest(), range.highest());
        let lattice = matches!(vocabulary().facts()[fact].kind, Kind::Set(_));
        let among = |value: &i64| !lattice || value & low == low && value & !high == 0;
        values.extend((low..=high).filter(among));
    }
    if range.may_be_unknown() {
        values.push(UNKNOWN);
    }
    values
}

fn put(garden: &mut Garden, fact: usize, plant: usize, value: i64) {
    let stated = vocabulary().facts()[fact];
    if stated.origin.is_scalar() {
        garden.scalars.insert(stated.name.to_owned(), value);
    } else if let Some(column) = garden.columns.get_mut(stated.name) {
        column[plant] = value;
    }
}

/// What a fact may be.
fn range(fact: usize) -> BoxedStrategy<Interval> {
    let set = matches!(vocabulary().facts()[fact].kind, Kind::Set(_));
    let range = (known(fact), known(fact)).prop_map(move |(a, b)| match set {
        true => Interval::between(a & b, a | b),
        false => Interval::between(a, b),
    });
    (range, prop::bool::weighted(0.3))
        .prop_map(|(range, unknown)| if unknown { range.or_unknown() } else { range })
        .boxed()
}

/// A garden with up to `most` open values.
fn plot(most: usize) -> impl Strategy<Value = Plot> {
    let asked = |fact: &usize| vocabulary().facts()[*fact].origin != Origin::Candidate;
    let facts: Vec<usize> = usable().into_iter().filter(asked).collect();
    let place = select(facts).prop_flat_map(|fact| (Just(fact), 0..6_usize, range(fact)));
    (garden(), prop::collection::vec(place, 0..=most)).prop_map(|(garden, open)| {
        let mut plot = Plot::of(garden);
        for (fact, plant, range) in open {
            let scalar = vocabulary().facts()[fact].origin.is_scalar();
            let plant = if scalar { 0 } else { plant };
            if scalar || plant < plot.garden.candidates {
                plot.open.insert((fact, plant), range);
            }
        }
        plot
    })
}

/// Who is first in each of these gardens.
fn firsts(rules: &RuleSet, gardens: &[Garden]) -> Vec<Option<usize>> {
    let first = |garden: &Garden| {
        let chooser = rules.chooser("plant", garden).unwrap();
        chooser.rank(garden).best(1).first().copied()
    };
    gardens.iter().map(first).collect()
}

/// Never says so wrongly, and mostly says so where it is so.
#[test]
fn against_trying_every_point() {
    let mut runner = TestRunner::deterministic();
    let boxes = (prop::collection::vec(rule(), 1..12), plot(4));
    let (mut agree, mut held) = (0, 0);
    for _ in 0..1500 {
        let (rules, plot) = boxes.new_tree(&mut runner).unwrap().current();
        let set = read(&rules, &(0..rules.len()).collect::<Vec<_>>());
        let chooser = set.chooser("plant", &plot.garden).unwrap();
        let firsts = firsts(&set, &plot.gardens(400));
        let first = firsts[0];
        let same = firsts.iter().all(|&other| other == first);
        let holds = chooser.challenge(&plot, first) == Challenge::Holds;
        assert!(same || !holds, "{plot:?} {rules:?}");
        agree += i32::from(same);
        held += i32::from(same && holds);
    }
    assert!(held * 10 >= agree * 9, "{held} of {agree}");
}

/// A box that is one garden is always decided, and what is said to be open is open.
#[test]
fn at_a_point_it_is_always_right() {
    let mut runner = TestRunner::deterministic();
    let boxes = (prop::collection::vec(rule(), 1..12), plot(3));
    for _ in 0..1000 {
        let (rules, plot) = boxes.new_tree(&mut runner).unwrap().current();
        let set = read(&rules, &(0..rules.len()).collect::<Vec<_>>());
        let chooser = set.chooser("plant", &plot.garden).unwrap();
        let point = Plot::of(plot.garden.clone());
        let first = firsts(&set, std::slice::from_ref(&plot.garden))[0];
        let anyone = (0..plot.garden.candidates).map(Some).chain([None]);
        for one in anyone {
            let holds = chooser.challenge(&point, one) == Challenge::Holds;
            assert_eq!(holds, one == first, "{one:?} {plot:?} {rules:?}");
            if let Challenge::Open { facts, .. } = chooser.challenge(&plot, one) {
                for fact in facts {
                    let fact = usize::from(fact.0);
                    assert!(plot.open.keys().any(|(open, _)| *open == fact));
                }
            }
        }
    }
}

/// Many rules along a fact of which the same is taken off for all plants. Each line is followed closely enough that a single such
/// rule is nearly always decided rightly.
#[test]
fn what_moves_alike_for_all() {
    let mut runner = TestRunner::deterministic();
    let gap = vocabulary().id("match.sun_gap").unwrap();
    let gap = usize::from(gap.0);
    let looks = prop::collection::vec(
        rule().prop_filter("it looks at the gap", move |rule| looks_at(rule, gap)),
        1..3,
    );
    let known = prop::collection::vec(-6..=6_i64, 5);
    let boxes = (looks, known, range(gap), 0..=400_i64);
    let (mut agree, mut held) = (0, 0);
    for _ in 0..1500 {
        let (rules, gaps, less, wide) = boxes.new_tree(&mut runner).unwrap().current();
        let less = match wide > 380 {
            true => Interval::between(-wide, wide),
            false => less,
        };
        let set = read(&rules, &(0..rules.len()).collect::<Vec<_>>());
        let garden = Garden::of(5).column("match.sun_gap", &gaps);
        let gardens: Vec<Garden> = values(gap, less)
            .into_iter()
            .map(|less| {
                let one = |&gap: &i64| if less == UNKNOWN { UNKNOWN } else { gap - less };
                let gaps: Vec<i64> = gaps.iter().map(one).collect();
                garden.clone().column("match.sun_gap", &gaps)
            })
            .collect();
        let firsts = firsts(&set, &gardens);
        let mut plot = Plot::of(garden.clone());
        plot.less = Some((gap, less));
        let chooser = set.chooser("plant", &garden).unwrap();
        let same = firsts.iter().all(|&other| other == firsts[0]);
        let holds = chooser.challenge(&plot, firsts[0]) == Challenge::Holds;
        assert!(same || !holds, "{plot:?} {rules:?}");
        agree += i32::from(same);
        held += i32::from(same && holds);
    }
    assert!(held * 10 >= agree * 8, "{held} of {agree}");
}

fn looks_at(rule: &PlainRule, fact: usize) -> bool {
    let tests = rule.when.iter().chain(rule.any_of.iter().flatten());
    let along = matches!(rule.does, Does::Curve(along, _) if along == fact);
    along || tests.into_iter().any(|test| test.fact == fact)
}

/// What a plant gets by a rule that asks only the gardener, another gets as well.
#[test]
fn what_favours_both_alike_cancels() {
    let set = rules(&plant_rules(
        "
        sunny | when: { garden.sun: { above: 3 } }, points: 20
        windy | points: { along: worked.wind, at: { 0: 0, 10: 30 } }
        green | when: { plant.evergreen: true }, points: 1
        both-or-neither | when: { garden.shade: true, any_of: [ { garden.soil: sand }, { garden.sun: 0 } ] }, points: 9
    ",
    ));
    let garden = Garden::of(2).column("plant.evergreen", &[0, 1]);
    let plot = Plot::of(garden.clone())
        .open("garden.sun", 0, Interval::between(0, 24).or_unknown())
        .open("worked.wind", 0, Interval::between(-20, 20).or_unknown())
        .open("garden.shade", 0, Interval::either().or_unknown())
        .open("garden.soil", 0, Interval::between(0, 2));
    let chooser = set.chooser("plant", &garden).unwrap();
    assert_eq!(chooser.challenge(&plot, Some(1)), Challenge::Holds);
    assert!(matches!(
        chooser.challenge(&plot, Some(0)),
        Challenge::Open { rival: Some(1), .. }
    ));
}

/// The rule that widens the gap most is named first.
#[test]
fn the_most_telling_fact_first() {
    let set = rules(&plant_rules(
        "
        little | when: { garden.shade: true, plant.evergreen: true }, points: 1
        much | when: { garden.soil: sand, plant.evergreen: true }, points: 8
        base | when: { plant.evergreen: false }, points: 4
    ",
    ));
    let garden = Garden::of(2).column("plant.evergreen", &[0, 1]);
    let plot = Plot::of(garden.clone())
        .open("garden.shade", 0, Interval::either())
        .open("garden.soil", 0, Interval::between(0, 2));
    let chooser = set.chooser("plant", &garden).unwrap();
    let ids = ["garden.soil", "garden.shade"].map(|name| vocabulary().id(name).unwrap());
    assert_eq!(
        chooser.challenge(&plot, Some(0)),
        Challenge::Open {
            rival: Some(1),
            facts: ids.into()
        }
    );
}

/// Nobody is first only while everybody is ruled out.
#[test]
fn nobody_left() {
    let set = rules(&plant_rules(
        "dear | when: { match.over_budget: { above: $0 } }, rule_out: true",
    ));
    let garden = Garden::of(2).column("match.over_budget", &[1, 1]);
    let chooser = set.chooser("plant", &garden).unwrap();
    let all_dear = Plot::of(garden.clone()).open("match.over_budget", 1, Interval::between(1, 50));
    assert_eq!(chooser.challenge(&all_dear, None), Challenge::Holds);
    let perhaps = Plot::of(garden).open("match.over_budget", 1, Interval::between(0, 50));
    assert!(matches!(
        chooser.challenge(&perhaps, None),
        Challenge::Open { rival: Some(1), .. }
    ));
    assert!(matches!(
        chooser.challenge(&perhaps, Some(0)),
        Challenge::Open { rival: None, .. }
    ));
}
