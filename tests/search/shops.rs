//! Random racket shops: the search over the real engine and its bounds, against the naive evaluator at every point.

use std::ops::Range;

use proptest::prelude::*;
use proptest::sample::{Index, select, subsequence};
use spanwright::rules::{Interval, Kind, UNKNOWN};
use spanwright::search::{Area, Decision, Point, Shape};

use crate::checks::{Asked, Counted, PLENTY};
use crate::naive::{Does, Matcher, PlainRule, Test, met, order};
use crate::rackets::{ANSWERS, ByHand, Counter, Racket, Shop, Size, vocabulary};

/// The values of a fact that rules of a small shop speak of.
fn values(size: Size, fact: usize) -> Vec<i64> {
    match vocabulary(size).facts()[fact].kind {
        Kind::Number {
            lowest, highest, ..
        } => (lowest.max(-9)..=highest.min(9)).collect(),
        Kind::Choice(words) => (0..words.len() as i64).collect(),
        Kind::Flag => vec![0, 1],
        Kind::Set(words) => (0..1 << words.len()).collect(),
    }
}

fn matcher(size: Size, fact: usize) -> BoxedStrategy<Matcher> {
    let one = || select(values(size, fact));
    let some = || prop::collection::vec(one(), 1..3);
    let is_known = any::<bool>().prop_map(Matcher::Known);
    match vocabulary(size).facts()[fact].kind {
        Kind::Number { .. } => prop_oneof![
            2 => one().prop_map(Matcher::Above),
            2 => one().prop_map(Matcher::AtLeast),
            2 => one().prop_map(Matcher::AtMost),
            2 => one().prop_map(Matcher::Below),
            1 => some().prop_map(Matcher::Is),
            1 => some().prop_map(Matcher::Not),
            1 => is_known,
        ]
        .boxed(),
        Kind::Choice(_) | Kind::Flag => prop_oneof![
            4 => some().prop_map(Matcher::Is),
            2 => some().prop_map(Matcher::Not),
            1 => is_known,
        ]
        .boxed(),
        Kind::Set(words) => {
            let mask = move || 1..1_i64 << words.len();
            prop_oneof![
                2 => mask().prop_map(Matcher::Has),
                2 => mask().prop_map(Matcher::HasAny),
                2 => mask().prop_map(Matcher::HasNone),
                1 => is_known,
            ]
            .boxed()
        }
    }
}

/// A test that some value meets, as files want it.
fn test(size: Size, facts: Range<usize>) -> impl Strategy<Value = Test> {
    facts.prop_flat_map(move |fact| {
        let matchers = prop::collection::vec(matcher(size, fact), 1..3);
        matchers.prop_map(move |mut matchers| {
            matchers.sort_by_key(order);
            matchers.dedup_by_key(|matcher| std::mem::discriminant(matcher));
            if matchers.len() > 1 {
                matchers.retain(|matcher| !matches!(matcher, Matcher::Is(_)));
            }
            let is_met = |value: &i64| matchers.iter().all(|matcher| met(matcher, *value));
            let is_for_unknown = matches!(matchers.as_slice(), [Matcher::Known(false)]);
            if !is_for_unknown && !values(size, fact).iter().any(is_met) {
                matchers = vec![Matcher::Known(true)];
            }
            Test { fact, matchers }
        })
    })
}

/// Tests of different facts: some of the player, some of rackets, so that rules tell rackets apart for some players and not for others.
fn tests(size: Size, most: usize) -> impl Strategy<Value = Vec<Test>> {
    let of_player = prop::collection::vec(test(size, 0..6), 0..=most);
    let of_rackets = prop::collection::vec(test(size, 6..12), 0..=1);
    (of_player, of_rackets).prop_map(|(mut tests, of_rackets)| {
        tests.extend(of_rackets);
        tests.sort_by_key(|test| test.fact);
        tests.dedup_by_key(|test| test.fact);
        tests
    })
}

fn rule(size: Size) -> impl Strategy<Value = PlainRule> {
    let is_number = |&fact: &usize| matches!(vocabulary(size).facts()[fact].kind, Kind::Number { lowest, highest, .. } if lowest < highest);
    let curve = select((0..12).filter(is_number).collect::<Vec<_>>()).prop_flat_map(move |fact| {
        let places = values(size, fact);
        let most = places.len().min(4);
        let knots = (
            subsequence(places, 2..=most),
            prop::collection::vec(-60..60_i64, 4),
        );
        knots.prop_map(move |(places, points)| {
            Does::Curve(fact, places.into_iter().zip(points).collect())
        })
    });
    let does = prop_oneof![
        8 => (1..60_i64, any::<bool>()).prop_map(|(size, less)| Does::Points(if less { -size } else { size })),
        5 => curve,
        1 => Just(Does::Out),
        1 => Just(Does::Caution),
    ];
    let any_of = prop_oneof![
        4 => Just(Vec::new()),
        1 => prop::collection::vec(tests(size, 1), 1..3),
    ];
    (tests(size, 2), any_of, does).prop_map(|(when, any_of, does)| PlainRule {
        when,
        any_of,
        does,
        disputes: false,
    })
}

fn size() -> impl Strategy<Value = Size> {
    (
        -3..3_i64,
        1..6_i64,
        0..3_i64,
        1..8_i64,
        1..5_usize,
        1..4_usize,
    )
        .prop_map(|(reach, long, budget, rich, styles, aches)| Size {
            reach: (reach, reach + long),
            budget: (budget, budget + rich),
            styles,
            aches,
        })
}

fn racket(size: Size) -> impl Strategy<Value = Racket> {
    (
        -2..8_i64,
        0..10_i64,
        0..3_i64,
        0..1_i64 << size.aches,
        0..4_i64,
    )
        .prop_map(|(weight, price, frame, soft_for, tie)| Racket {
            weight,
            price,
            frame,
            soft_for,
            tie,
        })
}

/// A shop whose rules speak of what differs now and then.
fn shop() -> impl Strategy<Value = Shop> {
    size().prop_flat_map(|size| {
        let rackets = prop::collection::vec(racket(size), 2..6);
        let rules = prop::collection::vec(rule(size), 4..14);
        let impossible = prop_oneof![2 => Just(None), 1 => (-4..4_i64).prop_map(Some)];
        (rackets, rules, impossible).prop_map(move |(mut rackets, rules, impossible)| {
            // Ties are told apart, as they are between rackets that can be bought.
            for (place, racket) in rackets.iter_mut().enumerate() {
                racket.tie = racket.tie * 10 + place as i64;
            }
            Shop {
                size,
                rackets,
                rules,
                impossible,
            }
        })
    })
}

/// What a player told, and what the player could have told instead: all answers closed but a few.
fn visit() -> impl Strategy<Value = (Shop, Point, Area)> {
    let ends = (any::<Index>(), any::<Index>(), 0..8_u8);
    let ends = prop::collection::vec(ends, ANSWERS);
    let told = prop::collection::vec((any::<Index>(), prop::bool::weighted(0.15)), ANSWERS);
    let open = prop::collection::vec(prop::bool::weighted(0.6), ANSWERS);
    (shop(), told, ends, open).prop_map(|(shop, told, ends, open)| {
        let value = |answer: usize, index: Index| {
            let all = shop.all(answer);
            let width = all.highest() - all.lowest() + 1;
            all.lowest() + index.index(width as usize) as i64
        };
        let told = told.into_iter().enumerate();
        let start: Point = told
            .map(|(answer, (index, is_unknown))| {
                if is_unknown {
                    UNKNOWN
                } else {
                    value(answer, index)
                }
            })
            .collect();
        let area = ends
            .into_iter()
            .enumerate()
            .map(|(answer, (one, other, form))| {
                let (a, b) = (value(answer, one), value(answer, other));
                let is_set = ByHand(&shop).shape(answer) == Shape::Bits;
                match form {
                    _ if !open[answer] => Interval::point(start[answer]),
                    0 | 1 => shop.all(answer),
                    2 | 3 => shop.all(answer).if_known(),
                    _ if is_set => Interval::between(a & b, a | b),
                    4 => Interval::between(a, b).or_unknown(),
                    _ => Interval::between(a, b),
                }
            });
        let area: Area = area.collect();
        (shop, start, area)
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 150, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_search_over_the_engine_agrees((shop, start, area) in visit(), most in 0..300_usize) {
        let rules = shop.read();
        let counter = Counter::new(&shop, &rules);
        let truth = ByHand(&shop);
        for (has_bounds, most) in [(true, PLENTY), (true, most), (false, most)] {
            let searched = Counted::new(&counter, has_bounds);
            let asked = Asked { searched, truth: &truth, start: &start, area: &area };
            asked.all(most)?;
        }
    }
}
