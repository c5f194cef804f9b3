//! The range of a fact over a box of answers holds the fact's value at every point of the box.

use proptest::prelude::*;
use spanwright::rules::{Kind, Origin, World};
use spanwright::vocabulary::{
    BallCandidate, Interval, Situation, StageFact, StageWorld, WeightCandidate, ball_facts,
    weight_facts,
};

use crate::{SHOP, cases};

/// The scalar facts that columns and worked facts are made of.
const ASKED: &[&str] = &[
    "bowler.thumb",
    "bowler.curve",
    "bowler.age",
    "bowler.body_weight",
    "bowler.ball_now_weight",
    "bowler.hold_passed",
    "bowler.hold_failed",
    "bowler.target_weight",
    "bowler.budget",
    "bowler.cover_wish",
    "bowler.colour_wish",
    "owned.covers",
    "settled.weight",
    "settled.grip",
    "settled.sleeve",
    "card.works",
    "card.grip",
    "card.sleeve",
    "hand.conventional_middle_span",
    "hand.conventional_ring_span",
    "hand.fingertip_middle_span",
    "hand.fingertip_ring_span",
];
/// Worked facts that come from those alone.
const WORKED: &[&str] = &[
    "bowler.child",
    "bowler.older",
    "bowler.tenth_of_body",
    "bowler.mirrored",
    "card.fits",
    "fit.has_sleeve",
    "fit.has_slug",
    "hand.middle_span",
    "hand.ring_span",
];

/// An answer's range and a point of it; neither if it isn't known.
type Side = Option<(i64, i64, i64)>;

fn side(name: &str) -> BoxedStrategy<Side> {
    let vocabulary = SHOP.vocabulary();
    let (lowest, highest) = match vocabulary.fact(vocabulary.id(name).unwrap()).kind {
        Kind::Number {
            lowest, highest, ..
        } => (lowest, highest),
        Kind::Choice(words) => (0, words.len() as i64 - 1),
        Kind::Set(words) => (0, (1 << words.len()) - 1),
        _ => (0, 1),
    };
    let range = (lowest..=highest, lowest..=highest, 0..=100_i64).prop_map(|(a, b, part)| {
        let (low, high) = (a.min(b), a.max(b));
        Some((low, high, low + (high - low) * part / 100))
    });
    prop_oneof![1 => Just(None), 2 => (lowest..=highest).prop_map(|v| Some((v, v, v))), 4 => range]
        .boxed()
}

fn sides() -> Vec<BoxedStrategy<Side>> {
    ASKED.iter().map(|name| side(name)).collect()
}

/// The whole box, and one point of it.
fn situations(sides: &[Side]) -> (Situation, Situation) {
    let mut whole = Situation::empty(SHOP.vocabulary());
    let mut point = whole.clone();
    for (name, side) in ASKED.iter().zip(sides) {
        if let Some((low, high, at)) = side {
            whole.set(name, Interval::between(*low, *high));
            point.set(name, Interval::point(*at));
        }
    }
    (whole, point)
}

fn ball() -> impl Strategy<Value = BallCandidate> {
    let prices = || prop::array::uniform2(prop::array::uniform3(5_000..40_000_i64));
    (0..5_i64, 6..=16_i64, 0..2048_i64, prices(), prices()).prop_map(
        |(cover, pounds, colours, drilled, cheapest)| BallCandidate {
            cover,
            weight: pounds * 100,
            colours,
            drilled,
            cheapest,
            ..BallCandidate::default()
        },
    )
}

fn enclosed<C: Clone>(
    subject: &str,
    facts: &[StageFact<C>],
    candidates: &[C],
    sides: &[Side],
) -> Result<(), TestCaseError> {
    let (whole, point) = situations(sides);
    let over = StageWorld::new(&whole, facts, candidates, |_| 0);
    let at = StageWorld::new(&point, facts, candidates, |_| 0);
    let vocabulary = SHOP.vocabulary();
    for fact in vocabulary
        .facts()
        .iter()
        .filter(|f| f.subject == Some(subject) && f.origin == Origin::Derived)
    {
        let id = vocabulary.id(fact.name).unwrap();
        for (candidate, value) in at.column(id).iter().enumerate() {
            let bounds = over.bounds(id, candidate);
            prop_assert!(
                bounds.holds(*value),
                "{} is {value}, outside {bounds:?}",
                fact.name
            );
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(cases(512))]

    #[test]
    fn of_weights(sides in sides(), pounds in 6..=16_i64) {
        enclosed("weight", &weight_facts(), &[WeightCandidate(pounds * 100)], &sides)?;
    }

    #[test]
    fn of_balls(sides in sides(), ball in ball()) {
        enclosed("ball", &ball_facts(), &[ball], &sides)?;
    }

    #[test]
    fn of_worked_facts(sides in sides()) {
        let (whole, point) = situations(&sides);
        for name in WORKED {
            let (bounds, value) = (whole.get(name), point.get(name).value());
            // Where a fact is known at some points only, its range is not known: no claim at all.
            prop_assert!(!bounds.is_known() || bounds.holds(value), "{name} is {value}, outside {bounds:?}");
        }
    }
}
