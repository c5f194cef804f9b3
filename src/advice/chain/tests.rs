//! The chain against the consultation itself, and proofs against trying every point.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::sync::LazyLock;

use proptest::prelude::*;
use proptest::sample::select;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;

use super::{Chain, Choice, Picks, known_values};
use crate::advice::Shop;
use crate::bowler::Bowler;
use crate::document::{Document, Format};
use crate::rules::{FactId, Interval, Kind, UNKNOWN};
use crate::search::{Decision, Holds};
use crate::vocabulary::{Situation, words};

static SHOP: LazyLock<Shop> = LazyLock::new(|| Shop::demo().unwrap());
static CHAIN: LazyLock<Chain<'static>> = LazyLock::new(|| Chain::new(&SHOP).unwrap());

fn bowler(yaml: &str) -> Bowler {
    let document = Document::parse("profile.yaml", yaml.as_bytes(), Format::Yaml).unwrap();
    Bowler::read(&document).unwrap()
}

/// The invented customers of the demo shop.
fn customers() -> Vec<Bowler> {
    [
        include_str!("../../../catalog-demo/bowlers/backup-bowler.yaml"),
        include_str!("../../../catalog-demo/bowlers/first-ball.yaml"),
        include_str!("../../../catalog-demo/bowlers/league-tired-ball.yaml"),
        include_str!("../../../catalog-demo/bowlers/left-handed-child.yaml"),
        include_str!("../../../catalog-demo/bowlers/straight-only.yaml"),
        include_str!("../../../catalog-demo/bowlers/two-handed-no-thumb.yaml"),
        "{}",
        "ball_now: { whose: house, weight: 14 lb }\nhold_test: { failed: 6 lb }\n",
    ]
    .map(bowler)
    .into()
}

#[test]
fn picks_are_those_of_a_consultation() {
    for bowler in customers() {
        let advice = SHOP.advise(&bowler).unwrap();
        let picks = Picks::new(&CHAIN, &bowler, CHAIN.matters());
        let Choice { weight, grip, ball } = picks.pick(&picks.start());
        let settled = |stage: &str| {
            let found = advice.settled().iter().find(|one| one.stage() == stage);
            found.map(|one| one.value().to_owned())
        };
        let written = |value: i64| crate::notation::Notation::Weight.write(value);
        assert_eq!(weight.map(written), settled("weight"));
        let word = |grip: i64| words::GRIPS[usize::try_from(grip).unwrap()].to_owned();
        assert_eq!(grip.map(word), settled("grip"));
        let first = advice.picks().first().map(|pick| pick.ball().to_owned());
        assert_eq!(ball.map(|ball| SHOP.candidates()[ball].id.clone()), first);
    }
}

/// What an answer may be in a small box, and where in its range that lies.
fn side(fact: FactId) -> BoxedStrategy<(FactId, Interval)> {
    let kind = SHOP.vocabulary().fact(fact).kind;
    let all = known_values(SHOP.vocabulary(), fact);
    let known = match kind {
        Kind::Number { .. } => {
            let steps = select(vec![1, 5, 10, 50, 100, 5000]);
            (all.lowest()..=all.highest(), steps)
                .prop_map(move |(from, wide)| {
                    Interval::between(from, (from + wide).min(all.highest()))
                })
                .boxed()
        }
        Kind::Set(_) => (0..=all.highest(), 0..=all.highest(), 0..=all.highest())
            .prop_map(|(a, b, c)| Interval::between(a & b, a & b | a & c))
            .boxed(),
        Kind::Choice(_) | Kind::Flag => {
            (all.lowest()..=all.highest(), all.lowest()..=all.highest())
                .prop_map(|(a, b)| Interval::between(a, b))
                .boxed()
        }
    };
    (known, 0..4)
        .prop_map(move |(known, unknown)| {
            let values = match unknown {
                0 => known.or_unknown(),
                _ => known,
            };
            (fact, values)
        })
        .boxed()
}

/// Some values of a range, both ends among them; for a short one all.
fn values(fact: FactId, range: Interval) -> Vec<i64> {
    let mut values: Vec<i64> = Vec::new();
    if range.may_be_known() {
        let (low, high) = (range.lowest(), range.highest());
        values = match SHOP.vocabulary().fact(fact).kind {
            Kind::Set(_) => (0..=high & !low)
                .filter(|more| more & !(high & !low) == 0)
                .map(|more| low | more)
                .take(40)
                .collect(),
            _ => (0..=12)
                .map(|part| low + (high - low) * part / 12)
                .collect(),
        };
        values.push(high);
        values.sort_unstable();
        values.dedup();
    }
    if range.may_be_unknown() {
        values.push(UNKNOWN);
    }
    values
}

/// Every combination of these values.
fn points(values: &[Vec<i64>]) -> Vec<Vec<i64>> {
    values.iter().fold(vec![Vec::new()], |points, values| {
        let longer = |point: &Vec<i64>| {
            let with = |&value: &i64| [point.as_slice(), &[value]].concat();
            values.iter().map(with).collect::<Vec<_>>()
        };
        points.iter().flat_map(longer).collect()
    })
}

#[test]
fn what_is_proved_holds_at_every_point() {
    let mut runner = TestRunner::deterministic();
    let matters = CHAIN.matters();
    let sides = prop::collection::vec(select(matters).prop_flat_map(side), 1..4);
    let boxes = (select(customers()), sides);
    let (mut agree, mut proved) = (0, 0);
    for _ in 0..600 {
        let (bowler, mut sides) = boxes.new_tree(&mut runner).unwrap().current();
        sides.sort_by_key(|(fact, _)| *fact);
        sides.dedup_by_key(|(fact, _)| *fact);
        let (facts, area): (Vec<FactId>, Vec<Interval>) = sides.into_iter().unzip();
        let picks = Picks::new(&CHAIN, &bowler, facts.clone());
        let values: Vec<Vec<i64>> = facts
            .iter()
            .zip(&area)
            .map(|(&fact, &range)| values(fact, range))
            .collect();
        let points = points(&values);
        let pick = picks.pick(&points[0]);
        let same = points.iter().all(|point| picks.pick(point) == pick);
        match picks.holds(&area, &pick) {
            Holds::Proved => {
                assert!(same, "{facts:?} {area:?}");
                proved += 1;
            }
            Holds::Open { split } => {
                let open = area.iter().filter(|range| !range.is_point()).count();
                assert!(open == 0 || !split.is_empty());
                assert!(split.iter().all(|&place| !area[place].is_point()));
            }
        }
        agree += i32::from(same);
        // A single point is always decided, and decided rightly.
        let last = points.last().unwrap();
        let at: Vec<Interval> = last.iter().copied().map(Interval::point).collect();
        let there = picks.pick(last);
        assert_eq!(picks.holds(&at, &there), Holds::Proved);
        assert_eq!(picks.holds(&at, &pick) == Holds::Proved, there == pick);
    }
    println!("{proved} of {agree} proved");
    assert!(proved * 10 >= agree * 6, "{proved} of {agree} proved");
}

/// Only facts that the stages need are kept up to date; the rest makes no difference.
#[test]
fn a_pick_is_that_of_the_whole_situation() {
    let mut runner = TestRunner::deterministic();
    for bowler in customers() {
        let matters = CHAIN.matters();
        let picks = Picks::new(&CHAIN, &bowler, matters.clone());
        let sides: Vec<_> = matters.iter().map(|&fact| side(fact)).collect();
        for _ in 0..100 {
            let sides = sides.new_tree(&mut runner).unwrap().current();
            let point: Vec<i64> = sides.iter().map(|(_, range)| range.highest()).collect();
            let mut whole = Situation::of(&bowler, SHOP.rules());
            let ranges = point.iter().copied().map(Interval::point);
            whole.set_all(matters.iter().copied().zip(ranges));
            assert_eq!(picks.pick(&point), CHAIN.choose(&mut whole));
        }
    }
}

/// Changing an answer that doesn't matter never changes the pick.
#[test]
fn what_does_not_matter_changes_nothing() {
    let mut runner = TestRunner::deterministic();
    let matters = CHAIN.matters();
    let ids = (0..).map(FactId).zip(SHOP.vocabulary().facts());
    let rest: Vec<FactId> = ids
        .filter(|(id, fact)| fact.origin == crate::rules::Origin::Answer && !matters.contains(id))
        .map(|(id, _)| id)
        .collect();
    let change = (select(customers()), select(rest).prop_flat_map(side));
    for _ in 0..300 {
        let (bowler, (fact, range)) = change.new_tree(&mut runner).unwrap().current();
        let mut changed = Situation::of(&bowler, SHOP.rules());
        let mut same = changed.clone();
        changed.set_all([(fact, Interval::point(range.lowest()))]);
        assert_eq!(CHAIN.choose(&mut changed), CHAIN.choose(&mut same));
    }
}

/// A child is under fifteen, an older hand from sixty on: the weight rules go by both.
#[test]
fn flags_worked_out_from_an_answer_cut_it() {
    let age = SHOP.vocabulary().id("bowler.age").unwrap();
    let picks = Picks::new(&CHAIN, &bowler("{}"), vec![age]);
    assert_eq!(picks.cuts(0), [15, 60]);
}

#[test]
fn combinations_that_a_profile_refuses() {
    let vocabulary = SHOP.vocabulary();
    let ids = |names: &[&str]| -> Vec<FactId> {
        names
            .iter()
            .map(|name| vocabulary.id(name).unwrap())
            .collect()
    };
    let nobody = bowler("{}");
    let possible =
        |names: &[&str], point: &[i64]| Picks::new(&CHAIN, &nobody, ids(names)).is_possible(point);
    let hold = ["bowler.hold_passed", "bowler.hold_failed"];
    assert!(possible(&hold, &[1200, 1300]));
    assert!(!possible(&hold, &[1200, 1200]));
    assert!(possible(&hold, &[1200, UNKNOWN]));
    // The other answer may be the bowler's own, told but not searched over.
    let told = bowler("hold_test: { passed: 12 lb }\n");
    let failed = Picks::new(&CHAIN, &told, ids(&["bowler.hold_failed"]));
    assert!(failed.is_possible(&[1300]) && !failed.is_possible(&[1100]));
    let now = ["bowler.ball_now", "bowler.ball_now_weight"];
    assert!(!possible(&now, &[0, 1200]));
    assert!(possible(&now, &[1, 1200]));
    assert!(!possible(
        &["bowler.rev_level", "bowler.rev_rate"],
        &[0, 300]
    ));
    assert!(!possible(&["bowler.thumb", "hand.thumb_gauge"], &[1, 60]));
}
