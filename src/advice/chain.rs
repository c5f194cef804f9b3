//! Weight, grip and ball in turn, compiled once: what the stages would pick for any answers, and nothing else.

use super::outcome::Trouble;
use super::shop::Shop;
use crate::bowler::Bowler;
use crate::rules::{Chooser, FactId, Interval, Kind, Origin, Ranking, UNKNOWN, Vocabulary, World};
use crate::search::{Area, Decision, Holds, Point, Shape};
use crate::vocabulary::{
    BallCandidate, Situation, StageFact, StageWorld, WeightCandidate, WordCandidate, all_words,
    ball_facts, grip_facts, weight_facts, words,
};

/// What the first three stages pick.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) struct Choice {
    /// Hundredths of a pound; none if no weight is right.
    pub(super) weight: Option<i64>,
    /// Index into [`words::GRIPS`].
    pub(super) grip: Option<i64>,
    /// Among [`Shop::candidates`]; none if no ball is left.
    pub(super) ball: Option<usize>,
}

/// The first three stages of a shop, compiled for its stock.
#[derive(Debug)]
pub(super) struct Chain<'s> {
    pub(super) shop: &'s Shop,
    weights: Stage<'s, WeightCandidate>,
    grips: Stage<'s, WordCandidate>,
    balls: Stage<'s, BallCandidate>,
}

/// One stage: its candidates and its rules, compiled.
#[derive(Debug)]
pub(super) struct Stage<'s, C: Clone> {
    facts: Vec<StageFact<C>>,
    candidates: Vec<C>,
    pub(super) chooser: Chooser<'s>,
    tie: fn(&C) -> i64,
}

impl<'s, C: Clone> Stage<'s, C> {
    fn new(
        shop: &'s Shop,
        subject: &str,
        facts: Vec<StageFact<C>>,
        candidates: Vec<C>,
        tie: fn(&C) -> i64,
    ) -> Result<Self, Trouble> {
        let nobody = Situation::empty(shop.vocabulary());
        let chooser = {
            let world = StageWorld::new(&nobody, &facts, &candidates, tie);
            shop.rules().chooser(subject, &world)
        };
        let chooser = chooser.ok_or_else(|| Trouble::Rules(format!("no subject `{subject}`")))?;
        Ok(Stage {
            facts,
            candidates,
            chooser,
            tie,
        })
    }

    /// The stage as one situation, or a box of them, sees it.
    pub(super) fn world<'a>(&'a self, situation: &'a Situation) -> StageWorld<'a, C> {
        StageWorld::new(situation, &self.facts, &self.candidates, self.tie)
    }

    /// The candidates, best first, for one situation.
    pub(super) fn rank(&self, situation: &Situation) -> Ranking {
        self.chooser.rank(&self.world(situation))
    }

    fn first(&self, situation: &Situation) -> Option<usize> {
        self.rank(situation).best(1).first().copied()
    }
}

impl<'s> Chain<'s> {
    /// Compiles the stages. Built once for a shop, asked as often as wanted.
    pub(super) fn new(shop: &'s Shop) -> Result<Self, Trouble> {
        let whole_pounds = (6..=16).map(|lb| WeightCandidate(lb * 100)).collect();
        let stock = shop.candidates().to_vec();
        Ok(Chain {
            shop,
            weights: Stage::new(shop, "weight", weight_facts(), whole_pounds, |c| c.0)?,
            grips: Stage::new(shop, "grip", grip_facts(), all_words(words::GRIPS), |c| c.0)?,
            balls: Stage::new(shop, "ball", ball_facts(), stock, |c| c.price)?,
        })
    }

    /// What is picked in this situation, which knows nothing yet of what the stages settle but what the fitter fixed.
    /// Leaves the situation as the ball stage sees it.
    pub(super) fn choose(&self, situation: &mut Situation) -> Choice {
        let weight = match situation.known("settled.weight") {
            Some(fixed) => Some(fixed),
            None => self
                .weights
                .first(situation)
                .map(|c| self.weights.candidates[c].0),
        };
        settle(situation, "settled.weight", weight);
        let grip = match situation.known("settled.grip") {
            Some(fixed) => Some(fixed),
            None => self
                .grips
                .first(situation)
                .map(|c| self.grips.candidates[c].0),
        };
        settle(situation, "settled.grip", grip);
        Choice {
            weight,
            grip,
            ball: self.balls.first(situation),
        }
    }

    /// The ball stage.
    pub(super) fn balls(&self) -> &Stage<'s, BallCandidate> {
        &self.balls
    }
}

fn settle(situation: &mut Situation, fact: &str, value: Option<i64>) {
    if let Some(value) = value {
        situation.set(fact, Interval::point(value));
    }
}

/// The picks of a chain by the answers of one bowler: what a search is made over.
#[derive(Debug)]
pub(super) struct Picks<'c, 's> {
    chain: &'c Chain<'s>,
    base: Situation,
    answers: Vec<FactId>,
    cuts: Vec<Vec<i64>>,
}

impl<'c, 's> Picks<'c, 's> {
    /// Over these answers; every other answer is as the bowler gave it, or assumed.
    pub(super) fn new(chain: &'c Chain<'s>, bowler: &Bowler, answers: Vec<FactId>) -> Self {
        let rules = chain.shop.rules();
        let cuts = |&fact: &FactId| {
            let stages = ["weight", "grip", "ball"];
            let mut cuts: Vec<i64> = stages
                .iter()
                .flat_map(|stage| rules.cuts(stage, fact))
                .collect();
            cuts.sort_unstable();
            cuts.dedup();
            cuts
        };
        Picks {
            chain,
            base: Situation::of(bowler, rules),
            cuts: answers.iter().map(cuts).collect(),
            answers,
        }
    }

    /// The answers that a search is made over, in its order.
    pub(super) fn facts(&self) -> &[FactId] {
        &self.answers
    }

    /// Where the bowler stands: what was answered, else what is assumed.
    pub(super) fn start(&self) -> Point {
        let value = |&fact: &FactId| self.base.at(fact).value();
        self.answers.iter().map(value).collect()
    }

    /// The situation over a box of answers.
    fn situation(&self, area: impl Iterator<Item = Interval>) -> Situation {
        let mut situation = self.base.clone();
        situation.set_all(self.answers.iter().copied().zip(area));
        situation
    }
}

/// All that an answer may be when it is given.
pub(super) fn known_values(vocabulary: &Vocabulary, fact: FactId) -> Interval {
    match vocabulary.fact(fact).kind {
        Kind::Number {
            lowest, highest, ..
        } => Interval::between(lowest, highest),
        Kind::Choice(words) => Interval::between(0, words.len() as i64 - 1),
        Kind::Set(words) => Interval::between(0, (1 << words.len()) - 1),
        Kind::Flag => Interval::either(),
    }
}

impl Decision for Picks<'_, '_> {
    type Pick = Choice;

    fn answers(&self) -> usize {
        self.answers.len()
    }

    fn shape(&self, answer: usize) -> Shape {
        match self.base.vocabulary().fact(self.answers[answer]).kind {
            Kind::Number { .. } => Shape::Steps,
            Kind::Choice(_) | Kind::Flag => Shape::Words,
            Kind::Set(_) => Shape::Bits,
        }
    }

    fn pick(&self, point: &[i64]) -> Choice {
        let mut situation = self.situation(point.iter().copied().map(Interval::point));
        self.chain.choose(&mut situation)
    }

    fn holds(&self, area: &[Interval], pick: &Choice) -> Holds {
        let _ = (area, pick);
        Holds::Open { split: Vec::new() }
    }

    fn cuts(&self, answer: usize) -> &[i64] {
        &self.cuts[answer]
    }
}
