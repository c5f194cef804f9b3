//! The range of a fact over a box of answers holds the fact's value at every point of the box.

use std::sync::{Arc, LazyLock};

use proptest::prelude::*;
use spanwright::motion::Friction;
use spanwright::rules::{Fact, FactId, Kind, Origin, UNKNOWN, World};
use spanwright::vocabulary::{
    BallCandidate, Interval, Situation, StageFact, StageWorld, WeightCandidate, ball_facts,
    weight_facts,
};

use crate::{SHOP, cases};

/// The facts with this origin.
fn all(origin: Origin) -> Vec<(FactId, &'static str)> {
    let ids = (0..).map(FactId).zip(SHOP.vocabulary().facts());
    let of_origin = ids.filter(|(_, fact): &(FactId, &Fact)| fact.origin == origin);
    of_origin.map(|(id, fact)| (id, fact.name)).collect()
}

/// Everything that columns and worked facts are made of: answers, and what is settled.
static ASKED: LazyLock<Vec<FactId>> = LazyLock::new(|| {
    let asked = [Origin::Answer, Origin::Settled].map(all).concat();
    asked.into_iter().map(|(id, _)| id).collect()
});

/// What a fact may be in the box, and what it is at the point.
type Side = (Interval, i64);

/// A side that is open in one of `openness` cases, and a single value or not known in the others.
fn side(fact: FactId, openness: u32) -> BoxedStrategy<Side> {
    let kind = SHOP.vocabulary().fact(fact).kind;
    let all = Interval::all_of(&kind);
    let (lowest, highest) = (all.lowest(), all.highest());
    let known = match kind {
        // All sets from what is certainly in to what may be.
        Kind::Set(_) => (lowest..=highest, lowest..=highest, lowest..=highest)
            .prop_map(|(a, b, c)| (Interval::between(a & b, a | b), a & b | (a | b) & c))
            .boxed(),
        _ => (lowest..=highest, lowest..=highest, 0..=100_i64)
            .prop_map(|(a, b, part)| {
                let (low, high) = (a.min(b), a.max(b));
                (
                    Interval::between(low, high),
                    low + (high - low) * part / 100,
                )
            })
            .boxed(),
    };
    let maybe = (known.clone(), any::<bool>())
        .prop_map(|((range, at), known)| (range.or_unknown(), if known { at } else { UNKNOWN }));
    let value = (lowest..=highest).prop_map(|value| (Interval::point(value), value));
    prop_oneof![
        openness => known,
        openness => maybe,
        1 => Just((Interval::NOT_KNOWN, UNKNOWN)),
        3 => value,
    ]
    .boxed()
}

fn sides(openness: u32) -> Vec<BoxedStrategy<Side>> {
    ASKED.iter().map(|&fact| side(fact, openness)).collect()
}

/// The whole box, and one point of it.
fn situations(sides: &[Side]) -> (Situation, Situation) {
    let mut whole = Situation::empty(SHOP.vocabulary());
    let mut point = whole.clone();
    let asked = || ASKED.iter().copied().zip(sides);
    whole.set_all(asked().map(|(fact, side)| (fact, side.0)));
    point.set_all(asked().map(|(fact, side)| (fact, Interval::point(side.1))));
    (whole, point)
}

fn ball() -> impl Strategy<Value = BallCandidate> {
    let prices = || prop::array::uniform2(prop::array::uniform3(5_000..40_000_i64));
    let grips = (5..=60_i32, 0..=300_i32).prop_map(|(oil, more)| {
        let thousandths = |steps: i32| f64::from(steps) / 1000.0;
        Friction::new(thousandths(oil), thousandths(oil + more)).ok()
    });
    let body = (grips, 0.30..0.43);
    (0..5_i64, 6..=16_i64, 0..2048_i64, prices(), prices(), body).prop_map(
        |(cover, pounds, colours, drilled, cheapest, (friction, beta))| BallCandidate {
            friction,
            beta,
            lanes: Arc::clone(SHOP.catalog().lanes()),
            cover,
            weight: pounds * 100,
            colours,
            drilled,
            cheapest,
            ..BallCandidate::default()
        },
    )
}

/// Speed, revs, rotation, tilt and lanes, each known: a range that may be narrow, and a value in it.
fn hand() -> impl Strategy<Value = Vec<(&'static str, Side)>> {
    let range = |lowest: i64, highest: i64| {
        (
            lowest..=highest,
            prop_oneof![Just(0), 0..=30_i64, 0..=900_i64],
            0..=100_i64,
        )
            .prop_map(move |(low, wide, part)| {
                let wide = wide.min(highest - low);
                (Interval::between(low, low + wide), low + wide * part / 100)
            })
    };
    let words = (0..64_i64, 0..64_i64, 0..64_i64)
        .prop_map(|(a, b, c)| (Interval::between(a & b, a | b), a & b | (a | b) & c));
    (
        range(50, 300),
        range(0, 700),
        range(0, 900),
        range(0, 900),
        words,
    )
        .prop_map(|(speed, revs, rotation, tilt, lanes)| {
            vec![
                ("bowler.speed", speed),
                ("bowler.rev_rate", revs),
                ("bowler.rotation", rotation),
                ("bowler.tilt", tilt),
                ("bowler.lanes", lanes),
            ]
        })
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

fn worked_facts_enclose(sides: &[Side]) -> Result<(), TestCaseError> {
    let (whole, point) = situations(sides);
    for (fact, name) in all(Origin::Worked) {
        let (bounds, value) = (whole.at(fact), point.at(fact).value());
        prop_assert!(bounds.holds(value), "{name} is {value}, outside {bounds:?}");
    }
    Ok(())
}

proptest! {
    #![proptest_config(cases(512))]

    #[test]
    fn of_weights(sides in sides(4), pounds in 6..=16_i64) {
        enclosed("weight", &weight_facts(), &[WeightCandidate(pounds * 100)], &sides)?;
    }

    #[test]
    fn of_balls(sides in sides(4), ball in ball()) {
        enclosed("ball", &ball_facts(), &[ball], &sides)?;
    }

    #[test]
    fn of_worked_facts(sides in sides(4)) {
        worked_facts_enclose(&sides)?;
    }

    /// Most facts are single values, so that what comes of many of them is known now and then.
    #[test]
    fn of_worked_facts_in_small_boxes(sides in sides(1)) {
        worked_facts_enclose(&sides)?;
    }

    /// Somebody whose speed and revs are known in a range, and the rest in a range or as a value: so that rolls are worked out.
    #[test]
    fn of_rolls(sides in sides(1), ball in ball(), hand in hand()) {
        let mut sides = sides;
        for (name, side) in hand {
            let place = ASKED.iter().position(|&fact| SHOP.vocabulary().fact(fact).name == name);
            sides[place.unwrap()] = side;
        }
        enclosed("ball", &ball_facts(), &[ball], &sides)?;
    }

    /// A box that is a single point has single values only, the point's own.
    #[test]
    fn at_a_point(sides in sides(4)) {
        let sides: Vec<Side> = sides.iter().map(|&(_, at)| (Interval::point(at), at)).collect();
        let (whole, _) = situations(&sides);
        for (fact, name) in all(Origin::Worked) {
            prop_assert!(whole.at(fact).is_point(), "{name} is {:?}", whole.at(fact));
        }
    }
}
