//! Balls that are first for nobody.
//!
//! For each ball on the shelf somebody is looked for whose first ball it is: first among people at random, then by changing
//! one answer after another so that the ball loses less to the best one.

use super::super::chain::{Chain, Choice, Picks, known_values};
use super::super::outcome::Trouble;
use super::super::shop::Shop;
use crate::bowler::Bowler;
use crate::document::{Document, Format};
use crate::rules::{FactId, Interval, Kind, Origin, UNKNOWN};
use crate::search::{Decision, FindingKind, Findings, Point};

/// How many people at random are asked.
const STRANGERS: usize = 2_000;
/// How many people who come near what suits one ball are asked for it.
const NEAR: usize = 800;

/// Looks for somebody for each ball.
pub(super) fn balls(shop: &Shop, findings: &mut Findings) -> Result<(), Trouble> {
    let Some(nobody) = nobody() else {
        return Ok(());
    };
    let chain = Chain::new(shop)?;
    let answers = answers(shop);
    let picks = Picks::new(&chain, &nobody, answers);
    let mut chance = Chance(0x2545_F491_4F6C_DD1D);
    let count = shop.candidates().len();
    let mut found: Vec<Option<Point>> = vec![None; count];
    let take = |found: &mut Vec<Option<Point>>, point: Point| {
        let Choice { ball, .. } = picks.pick(&point);
        if let Some(place) = ball.and_then(|ball| found.get_mut(ball)) {
            place.get_or_insert(point);
        }
    };
    for _ in 0..STRANGERS {
        let point = stranger(shop, &picks, &mut chance);
        take(&mut found, point);
    }
    for ball in 0..count {
        for _ in 0..NEAR {
            if found[ball].is_some() {
                break;
            }
            let mut point = stranger(shop, &picks, &mut chance);
            wish_for(shop, &picks, ball, &mut point);
            take(&mut found, point);
        }
    }
    for (ball, somebody) in found.iter().enumerate() {
        match somebody {
            Some(_) => findings.absent(FindingKind::Unreachable),
            None => {
                let name = shop.candidates()[ball].id.clone();
                findings.open_for(FindingKind::Unreachable, name);
            }
        }
    }
    Ok(())
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

/// The wishes of somebody whom this ball would suit in weight, cover and price.
fn wish_for(shop: &Shop, picks: &Picks<'_, '_>, ball: usize, point: &mut [i64]) {
    let ball = &shop.candidates()[ball];
    let colour = i64::from(ball.colours.trailing_zeros());
    let dearest = ball.drilled.iter().flatten().copied().max().unwrap_or(0);
    let wishes = [
        ("bowler.target_weight", ball.weight),
        ("bowler.hold_passed", ball.weight),
        ("bowler.hold_failed", UNKNOWN),
        ("bowler.cover_wish", ball.cover),
        ("bowler.colour_wish", colour),
        ("bowler.budget", dearest),
    ];
    for (place, &fact) in picks.facts().iter().enumerate() {
        let name = shop.vocabulary().fact(fact).name;
        if let Some((_, value)) = wishes.iter().find(|(wish, _)| *wish == name) {
            point[place] = *value;
        }
    }
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
