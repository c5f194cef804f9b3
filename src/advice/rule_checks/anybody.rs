//! Whether a ball can be first for anybody at all, proved over all that the ball stage may be told.
//!
//! What the earlier stages settle, and what is worked out of answers, is taken as free in its range: more than there can be, so
//! that a proof that nobody gets the ball first stays right.

use super::super::chain::Chain;
use super::super::shop::Shop;
use super::realm::Shelf;
use crate::rules::{FactId, Interval, Kind, Outdone, UNKNOWN};
use crate::search::{MOST, Realm, Shape, halves};
use crate::vocabulary::{BallCandidate, Situation};

/// So many places where a ball comes first are followed up for one ball.
const MOST_PLACES: usize = 12;
/// The choice that is looked at.
const BALL: &str = "ball";

/// All that the ball stage may be told.
pub(super) struct Anybody<'c, 's> {
    chain: &'c Chain<'s>,
    /// Nothing is told yet, and nothing worked out.
    nothing: Situation,
    told: Vec<Told>,
    /// Each fact that a rule looks at, with the places of those in `told` behind it.
    behind: Vec<(FactId, Vec<usize>)>,
    /// By ball: all of its weight.
    same_weight: Vec<Vec<usize>>,
    /// The place of the settled weight.
    weight: Option<usize>,
}

/// One fact that the ball stage is told.
struct Told {
    fact: FactId,
    range: Interval,
    plain: i64,
    shape: Shape,
    cuts: Vec<i64>,
}

/// What became of the question whether a ball is first for anybody.
pub(super) enum Proof {
    /// For nobody: one of these is always ahead of it, unless it is ruled out. The first one most often.
    Nobody(Vec<usize>),
    /// For somebody.
    Somebody,
    /// It can't be told within the work limit.
    Open,
}

impl<'c, 's> Anybody<'c, 's> {
    pub(super) fn new(shop: &Shop, chain: &'c Chain<'s>) -> Self {
        let (vocabulary, shelf) = (shop.vocabulary(), Shelf::new(shop));
        let is_told = |fact: &&FactId| vocabulary.fact(**fact).origin.is_scalar();
        let sources = chain.balls().sources();
        let mut facts: Vec<FactId> = sources
            .flat_map(|(_, behind)| behind)
            .filter(is_told)
            .copied()
            .collect();
        facts.sort_unstable();
        facts.dedup();
        let places = |(fact, behind): (FactId, &[FactId])| {
            let place = |fact: &FactId| facts.binary_search(fact).ok();
            (fact, behind.iter().filter_map(place).collect())
        };
        let behind = chain.balls().sources().map(places).collect();
        let settled_weight = vocabulary.id("settled.weight");
        let stock = shop.candidates();
        let same_weight = |ball: &BallCandidate| {
            let same = |&other: &usize| stock[other].weight == ball.weight;
            (0..stock.len()).filter(same).collect()
        };
        let told = |&fact: &FactId| {
            let mut cuts = shop.rules().cuts(BALL, fact);
            cuts.sort_unstable();
            Told {
                fact,
                range: shelf.range(BALL, fact),
                plain: shelf.plain(BALL, fact),
                shape: match vocabulary.fact(fact).kind {
                    Kind::Number { .. } => Shape::Steps,
                    Kind::Choice(_) | Kind::Flag => Shape::Words,
                    Kind::Set(_) => Shape::Bits,
                },
                cuts,
            }
        };
        Anybody {
            chain,
            nothing: Situation::empty(vocabulary).keeping(&[]),
            behind,
            same_weight: stock.iter().map(same_weight).collect(),
            weight: facts.iter().position(|&fact| Some(fact) == settled_weight),
            told: facts.iter().map(told).collect(),
        }
    }

    /// Whether a ball is first for anybody. Where the stage would put it first, `is_somebody` is asked whether somebody's
    /// answers come to that.
    pub(super) fn gets_first(
        &self,
        ball: usize,
        mut is_somebody: impl FnMut(&[(FactId, i64)]) -> bool,
    ) -> Proof {
        let mut ahead: Vec<(usize, usize)> = Vec::new();
        let mut boxes = self.whole();
        let mut followed: Vec<Vec<i64>> = Vec::new();
        let mut settled = true;
        for _ in 0..MOST {
            let Some(area) = boxes.pop() else {
                ahead.sort_by_key(|&(_, times)| std::cmp::Reverse(times));
                let nobody = ahead.into_iter().map(|(rival, _)| rival).collect();
                return if settled {
                    Proof::Nobody(nobody)
                } else {
                    Proof::Open
                };
            };
            // Few names say more than many: who was ahead before, then who is as heavy.
            let known = ahead.iter().map(|(rival, _)| *rival);
            let before: Vec<usize> = known
                .chain(self.same_weight[ball].iter().copied())
                .collect();
            let situation = self.situation(area.iter().copied());
            let balls = self.chain.balls();
            let facts = match balls
                .chooser
                .outdone(&balls.world(&situation), ball, &before)
            {
                Outdone::By(rival) => {
                    let known = ahead.iter_mut().find(|(known, _)| Some(*known) == rival);
                    match (known, rival) {
                        (Some((_, times)), _) => *times += 1,
                        (None, Some(rival)) => ahead.push((rival, 1)),
                        (None, None) => {}
                    }
                    continue;
                }
                Outdone::Open(facts) => facts,
            };
            let plain = self.plainest(&area);
            if self.first(&plain) == Some(ball) && !followed.contains(&plain) {
                let values = self.told.iter().map(|told| told.fact);
                let values: Vec<(FactId, i64)> = values.zip(plain.iter().copied()).collect();
                if is_somebody(&values) {
                    return Proof::Somebody;
                }
                followed.push(plain);
                if followed.len() >= MOST_PLACES {
                    return Proof::Open;
                }
            }
            match self.parts(&area, &facts) {
                Some((near, far)) => boxes.extend([far, near]),
                None => settled = false,
            }
        }
        Proof::Open
    }

    /// All there may be, one box for each weight that is offered: balls are in whole pounds as well.
    fn whole(&self) -> Vec<Vec<Interval>> {
        let all: Vec<Interval> = self.told.iter().map(|told| told.range).collect();
        let Some(place) = self.weight else {
            return vec![all];
        };
        let weights = self.chain.offered_weights().chain([UNKNOWN]);
        let of_weight = |weight: i64| {
            let mut area = all.clone();
            area[place] = Interval::point(weight);
            area
        };
        weights.map(of_weight).collect()
    }

    fn situation(&self, area: impl Iterator<Item = Interval>) -> Situation {
        let mut situation = self.nothing.clone();
        situation.set_all(self.told.iter().map(|told| told.fact).zip(area));
        situation
    }

    fn first(&self, point: &[i64]) -> Option<usize> {
        let situation = self.situation(point.iter().copied().map(Interval::point));
        let ranking = self.chain.balls().rank(&situation);
        ranking.best(1).first().copied()
    }

    /// The point of a box that says least.
    fn plainest(&self, area: &[Interval]) -> Vec<i64> {
        let one = |(told, range): (&Told, &Interval)| match range.holds(told.plain) {
            true if told.shape != Shape::Bits || told.plain == UNKNOWN => told.plain,
            _ => range.lowest(),
        };
        self.told.iter().zip(area).map(one).collect()
    }

    /// A box in two, along what stands behind the first of these facts that is still open.
    fn parts(&self, area: &[Interval], facts: &[FactId]) -> Option<(Vec<Interval>, Vec<Interval>)> {
        let behind = |fact: &FactId| self.behind.iter().find(|(known, _)| known == fact);
        let mut places = facts
            .iter()
            .filter_map(behind)
            .flat_map(|(_, places)| places);
        let &place = places.find(|&&place| !area[place].is_point())?;
        let told = &self.told[place];
        let (near, far) = halves(told.shape, area[place], &told.cuts, told.plain)?;
        let with = |part: Interval| {
            let mut area = area.to_vec();
            area[place] = part;
            area
        };
        Some((with(near), with(far)))
    }
}
