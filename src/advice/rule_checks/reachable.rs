//! Balls that are first for nobody.
//!
//! For each ball on the shelf somebody is looked for whose first ball it is: first among people at random, then by changing
//! one answer after another so that the ball loses less to the best one. Where nobody is found it is proved that there is nobody; where
//! that stays open, the climb is tried once more among those who give one answer, for every word that an answer may be.

use super::super::chain::{Chain, Picks, known_values};
use super::super::outcome::Trouble;
use super::super::shop::Shop;
use super::anybody::{Anybody, Proof};
use super::climb::{climb, differs, short_of, worth_trying};
use crate::bowler::Bowler;
use crate::document::{Document, Format};
use crate::rules::{FactId, Interval, Kind, Origin, UNKNOWN};
use crate::search::{Decision, Example, Finding, FindingKind, Findings, Point, Shape};

/// How many people at random are asked.
const STRANGERS: usize = 2_000;
/// How many people who come near what suits one ball are asked for it.
const NEAR: usize = 400;
/// From how many of those who come nearest a climb begins, each as near as no other.
const CLIMBS: usize = 12;
/// From the nearest of how many a climb begins that keeps to one answer.
const NEAR_HOLDING: usize = 40;

/// Looks for somebody for each ball. Gives an example for each ball that is first for somebody.
pub(super) fn balls(shop: &Shop, findings: &mut Findings) -> Result<Vec<Example>, Trouble> {
    let Some(nobody) = nobody() else {
        return Ok(Vec::new());
    };
    let chain = Chain::new(shop)?;
    let search = Search {
        shop,
        picks: &Picks::new(&chain, &nobody, answers(shop)),
        anybody: Anybody::new(shop, &chain),
    };
    let values = worth_trying(shop, search.picks);
    let mut chance = Chance(0x2545_F491_4F6C_DD1D);
    let mut examples = Vec::new();
    for (ball, stranger) in search.strangers(&mut chance).into_iter().enumerate() {
        let somebody = stranger.or_else(|| search.climb_to(ball, &values, &mut chance));
        let found = match somebody {
            Some(point) => Found::Somebody(point),
            None => match search.prove(ball, &values) {
                Found::Neither => match search.climb_holding(ball, &values, &mut chance) {
                    Some(point) => Found::Somebody(point),
                    None => Found::Neither,
                },
                found => found,
            },
        };
        let name = |ball: usize| shop.candidates()[ball].id.clone();
        match found {
            Found::Somebody(point) => {
                findings.absent(FindingKind::Unreachable);
                examples.push(search.example(ball, &point));
            }
            Found::Nobody(ahead) => findings.found(Finding::Unreachable {
                subject: "ball".to_owned(),
                candidate: ball,
                name: name(ball),
                beaten_by: ahead.into_iter().map(name).collect(),
            }),
            Found::Neither => findings.open_for(FindingKind::Unreachable, name(ball)),
        }
    }
    Ok(examples)
}

/// What was found for a ball.
enum Found {
    /// Somebody who gets it first.
    Somebody(Point),
    /// Proved: nobody does. One of these is ahead.
    Nobody(Vec<usize>),
    Neither,
}

struct Search<'p, 'c, 's> {
    shop: &'s Shop,
    picks: &'p Picks<'c, 's>,
    anybody: Anybody<'c, 's>,
}

impl Search<'_, '_, '_> {
    /// For each ball one of the people at random who get it first.
    fn strangers(&self, chance: &mut Chance) -> Vec<Option<Point>> {
        let mut found: Vec<Option<Point>> = vec![None; self.shop.candidates().len()];
        for _ in 0..STRANGERS {
            let point = stranger(self.shop, self.picks, chance);
            if let Some(ball) = self.picks.pick(&point).ball
                && found[ball].is_none()
                && self.picks.is_possible(&point)
            {
                found[ball] = Some(point);
            }
        }
        found
    }

    /// Somebody who gets the ball first, by climbing from people whom it nearly suits.
    fn climb_to(&self, ball: usize, values: &[Vec<i64>], chance: &mut Chance) -> Option<Point> {
        let wishes = wishes(self.shop, self.picks, ball);
        let cost = |point: &[i64]| short_of(self.picks, ball, point);
        let mut near: Vec<(i64, Point)> = Vec::new();
        for _ in 0..NEAR {
            let point = self.suited(&wishes, chance);
            near.push((cost(&point), point));
        }
        near.sort();
        near.dedup_by_key(|(cost, _)| *cost);
        near.truncate(CLIMBS);
        let mut starts = near.into_iter();
        starts.find_map(|(_, start)| climb(start, values, &wishes, cost))
    }

    /// The same from the nearest of those who give one answer, and they keep to it: a ball that is nearly first for one sort of people
    /// may be first only for another, farther from it at the outset.
    fn climb_holding(
        &self,
        ball: usize,
        values: &[Vec<i64>],
        chance: &mut Chance,
    ) -> Option<Point> {
        let wishes = wishes(self.shop, self.picks, ball);
        let cost = |point: &[i64]| short_of(self.picks, ball, point);
        let is_free = |place: usize| at(&wishes, place).next().is_none();
        let words = (0..values.len())
            .filter(|&place| self.picks.shape(place) == Shape::Words && is_free(place));
        let held = words.flat_map(|place| values[place].iter().map(move |&value| (place, value)));
        for (place, value) in held {
            let holding = |_| {
                let mut point = self.suited(&wishes, chance);
                point[place] = value;
                (cost(&point), point)
            };
            let nearest = (0..NEAR_HOLDING).map(holding).min();
            let mut values = values.to_vec();
            values[place] = vec![value];
            let somebody = nearest.and_then(|(_, start)| climb(start, &values, &wishes, cost));
            if somebody.is_some() {
                return somebody;
            }
        }
        None
    }

    /// Somebody at random who has one of the wishes for each answer that there are wishes for.
    fn suited(&self, wishes: &[(usize, i64)], chance: &mut Chance) -> Point {
        let mut point = stranger(self.shop, self.picks, chance);
        for (place, value) in point.iter_mut().enumerate() {
            let told: Vec<i64> = at(wishes, place).collect();
            if !told.is_empty() {
                *value = told[chance.below(told.len() as u64) as usize];
            }
        }
        point
    }

    /// Proves that nobody gets the ball first, or comes upon somebody by the way.
    fn prove(&self, ball: usize, values: &[Vec<i64>]) -> Found {
        let wishes = wishes(self.shop, self.picks, ball);
        let mut somebody = None;
        let proof = self.anybody.gets_first(ball, |wanted| {
            let place = |fact: FactId| self.picks.facts().iter().position(|&one| one == fact);
            let answers = wanted.iter();
            let answers = answers.filter_map(|&(fact, value)| Some((place(fact)?, value)));
            let told: Vec<(usize, i64)> = answers.chain(wishes.iter().copied()).collect();
            let start = self.picks.start();
            let start = start.iter().enumerate();
            let start = start.map(|(place, &plain)| at(&told, place).next().unwrap_or(plain));
            let cost = |point: &[i64]| differs(self.picks, ball, wanted, point);
            somebody = climb(start.collect(), values, &wishes, cost);
            somebody.is_some()
        });
        match (proof, somebody) {
            (_, Some(point)) => Found::Somebody(point),
            (Proof::Nobody(ahead), None) => Found::Nobody(ahead),
            (Proof::Somebody | Proof::Open, None) => Found::Neither,
        }
    }

    /// What somebody says beyond what is assumed of anybody.
    fn example(&self, ball: usize, point: &[i64]) -> Example {
        let plain = self.picks.start();
        let said = self.picks.facts().iter().zip(point).zip(&plain);
        let said = said.filter(|((_, value), plain)| value != plain);
        Example {
            values: said.map(|((&fact, &value), _)| (fact, value)).collect(),
            candidate: Some(ball),
        }
    }
}

/// The values for the answer at this place.
fn at(answers: &[(usize, i64)], place: usize) -> impl Iterator<Item = i64> + '_ {
    let there = answers.iter().filter(move |(at, _)| *at == place);
    there.map(|(_, value)| *value)
}

/// A profile that tells nothing.
fn nobody() -> Option<Bowler> {
    let document = Document::parse("nobody", b"{}", Format::Json).ok()?;
    Bowler::read(&document).ok()
}

/// The answers that the first three stages look at.
fn answers(shop: &Shop) -> Vec<FactId> {
    let vocabulary = shop.vocabulary();
    let stages = ["weight", "grip", "ball"];
    let of_stages = shop
        .rules()
        .rules()
        .iter()
        .filter(|rule| stages.contains(&rule.subject()));
    let mut facts: Vec<FactId> = of_stages
        .flat_map(|rule| rule.facts().iter().copied())
        .flat_map(|fact| {
            let names = super::behind::behind(vocabulary.fact(fact).name).iter();
            names.filter_map(|name| vocabulary.id(name)).chain([fact])
        })
        .filter(|&fact| vocabulary.fact(fact).origin == Origin::Answer)
        .collect();
    facts.sort_unstable();
    facts.dedup();
    facts
}

/// Somebody at random: half of the answers as when nobody says anything.
fn stranger(shop: &Shop, picks: &Picks<'_, '_>, chance: &mut Chance) -> Point {
    let plain = picks.start();
    let one = |(&fact, &plain): (&FactId, &i64)| {
        if chance.below(2) == 0 {
            return plain;
        }
        let all: Interval = known_values(shop.vocabulary(), fact);
        match shop.vocabulary().fact(fact).kind {
            // Few words at a time, as people give them.
            Kind::Set(words) => 1 << chance.below(words.len() as u64),
            _ => all.lowest() + chance.below((all.highest() - all.lowest() + 1) as u64) as i64,
        }
    };
    picks.facts().iter().zip(&plain).map(one).collect()
}

/// The wishes of somebody whom this ball would suit in weight, cover, colour and price: answers by place, some with several.
fn wishes(shop: &Shop, picks: &Picks<'_, '_>, ball: usize) -> Vec<(usize, i64)> {
    let ball = &shop.candidates()[ball];
    let mut wishes = vec![
        ("bowler.target_weight", ball.weight),
        ("bowler.hold_passed", ball.weight),
        ("bowler.hold_failed", UNKNOWN),
        ("bowler.cover_wish", ball.cover),
    ];
    let colours = (0..62).filter(|colour| ball.colours >> colour & 1 == 1);
    wishes.extend(colours.map(|colour| ("bowler.colour_wish", colour)));
    // Just enough for the ball, the most that it may come to first.
    let mut prices: Vec<i64> = ball.drilled.iter().flatten().copied().collect();
    prices.sort_unstable_by_key(|price| std::cmp::Reverse(*price));
    wishes.extend(prices.into_iter().map(|price| ("bowler.budget", price)));
    let place = |name: &str| {
        let mut facts = picks.facts().iter();
        facts.position(|&fact| shop.vocabulary().fact(fact).name == name)
    };
    wishes
        .into_iter()
        .filter_map(|(name, value)| Some((place(name)?, value)))
        .collect()
}

/// Numbers as good as thrown, always the same ones.
struct Chance(u64);

impl Chance {
    /// A number below this.
    fn below(&mut self, end: u64) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) % end.max(1)
    }
}
