//! Weight, grip and ball in turn, compiled once: what the stages would pick for any answers, and nothing else.

mod behind;
mod picks;
#[cfg(test)]
mod tests;

use std::sync::Arc;

use self::behind::Behind;
pub(super) use self::picks::Picks;
use super::outcome::Trouble;
use super::shop::Shop;
use crate::rules::{Challenge, Chooser, FactId, Interval, Origin, Ranking, UNKNOWN, Vocabulary};
use crate::vocabulary::{
    BallCandidate, Columns, Remembered, Situation, StageFact, StageWorld, WeightCandidate,
    WordCandidate, all_words, ball_facts, grip_facts, weight_facts, words,
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
    settled: Settled,
}

/// Where the first two stages leave what they pick.
#[derive(Clone, Copy, Debug)]
struct Settled {
    weight: FactId,
    grip: FactId,
}

/// One stage: its candidates and its rules, compiled.
#[derive(Debug)]
pub(super) struct Stage<'s, C: Clone> {
    columns: Arc<Columns<C>>,
    /// The facts that its rules look at.
    looks_at: Vec<FactId>,
    candidates: Vec<C>,
    remembered: Remembered,
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
        let columns = Arc::new(Columns::new(shop.vocabulary(), &facts));
        let chooser = {
            let world = StageWorld::of(&nobody, Arc::clone(&columns), &candidates, tie);
            shop.rules().chooser(subject, &world)
        };
        let chooser = chooser.ok_or_else(|| Trouble::Rules(format!("no subject `{subject}`")))?;
        Ok(Stage {
            columns,
            looks_at: shop.rules().looks_at(subject),
            candidates,
            remembered: Remembered::default(),
            chooser,
            tie,
        })
    }

    /// The stage as one situation, or a box of them, sees it.
    pub(super) fn world<'a>(&'a self, situation: &'a Situation) -> StageWorld<'a, C> {
        let columns = Arc::clone(&self.columns);
        StageWorld::of(situation, columns, &self.candidates, self.tie).remembering(&self.remembered)
    }

    /// The candidates, best first, for one situation.
    pub(super) fn rank(&self, situation: &Situation) -> Ranking {
        self.chooser.rank(&self.world(situation))
    }

    /// Whether a candidate, or none, stays first over a box; if that is open, the facts that leave it so.
    fn stays(&self, situation: &Situation, first: Option<usize>) -> Result<(), Vec<FactId>> {
        match self.chooser.challenge(&self.world(situation), first) {
            Challenge::Holds => Ok(()),
            Challenge::Open { facts, .. } => Err(facts),
        }
    }

    /// Each fact that its rules look at, with the facts of the asker that tell it.
    pub(super) fn sources(&self) -> impl Iterator<Item = (FactId, &[FactId])> {
        self.looks_at.iter().map(|fact| {
            let behind = self.columns.behind(*fact);
            let itself = std::slice::from_ref(fact);
            (*fact, if behind.is_empty() { itself } else { behind })
        })
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
        let settled = |name: &str| {
            let fact = shop.vocabulary().id(name);
            fact.ok_or_else(|| Trouble::Rules(format!("no fact `{name}`")))
        };
        Ok(Chain {
            shop,
            weights: Stage::new(shop, "weight", weight_facts(), whole_pounds, |c| c.0)?,
            grips: Stage::new(shop, "grip", grip_facts(), all_words(words::GRIPS), |c| c.0)?,
            balls: Stage::new(shop, "ball", ball_facts(), stock, |c| c.price)?,
            settled: Settled {
                weight: settled("settled.weight")?,
                grip: settled("settled.grip")?,
            },
        })
    }

    /// What is picked in this situation, which knows nothing yet of what the stages settle but what the fitter fixed.
    /// Leaves the situation as the ball stage sees it.
    pub(super) fn choose(&self, situation: &mut Situation) -> Choice {
        let weight = fixed(situation, self.settled.weight).or_else(|| {
            let first = self.weights.first(situation);
            first.map(|c| self.weights.candidates[c].0)
        });
        settle(situation, self.settled.weight, weight);
        let grip = fixed(situation, self.settled.grip).or_else(|| {
            let first = self.grips.first(situation);
            first.map(|c| self.grips.candidates[c].0)
        });
        settle(situation, self.settled.grip, grip);
        Choice {
            weight,
            grip,
            ball: self.balls.first(situation),
        }
    }

    /// Whether this is picked all over a box; where that can't be shown, the facts that leave it open, the most telling first.
    fn stays(&self, situation: &mut Situation, choice: &Choice) -> Result<(), Vec<FactId>> {
        self.weights
            .settled_as(situation, self.settled.weight, choice.weight, |c| c.0)?;
        self.grips
            .settled_as(situation, self.settled.grip, choice.grip, |c| c.0)?;
        self.balls.stays(situation, choice.ball)
    }

    /// The answers that weight, grip and ball can depend on at all, in the order of the vocabulary.
    pub(super) fn matters(&self) -> Vec<FactId> {
        let vocabulary = self.shop.vocabulary();
        let ids = (0..).map(FactId).zip(vocabulary.facts());
        let told = |origin: Origin, name: &str| {
            origin == Origin::Answer || origin == Origin::Settled && name.starts_with("settled.")
        };
        let told: Vec<FactId> = ids
            .filter(|(_, fact)| told(fact.origin, fact.name))
            .map(|(id, _)| id)
            .collect();
        let behind = Behind::new(&Situation::empty(vocabulary), &told);
        let looked_at = self.sources().flat_map(|(_, facts)| facts);
        let matters = behind.of(looked_at.copied());
        told.into_iter()
            .filter(|fact| vocabulary.fact(*fact).origin == Origin::Answer)
            .filter(|fact| matters.contains(fact))
            .collect()
    }

    /// The values of an answer from which on a rule of the stages says something else.
    fn cuts(&self, answer: FactId) -> Vec<i64> {
        let stages = ["weight", "grip", "ball"].into_iter();
        stages
            .flat_map(|stage| self.shop.rules().cuts(stage, answer))
            .collect()
    }

    /// Each fact that a rule of the stages looks at, with the facts of the asker that tell it.
    fn sources(&self) -> impl Iterator<Item = (FactId, &[FactId])> {
        let words = self.weights.sources().chain(self.grips.sources());
        words.chain(self.balls.sources())
    }

    /// The weights among which the first stage chooses, in hundredths of a pound.
    pub(super) fn offered_weights(&self) -> impl Iterator<Item = i64> {
        self.weights.candidates.iter().map(|weight| weight.0)
    }

    /// The ball stage.
    pub(super) fn balls(&self) -> &Stage<'s, BallCandidate> {
        &self.balls
    }
}

impl<C: Clone> Stage<'_, C> {
    /// Whether a stage picks the candidate of this value all over a box, and then that value settled.
    fn settled_as(
        &self,
        situation: &mut Situation,
        fact: FactId,
        value: Option<i64>,
        value_of: fn(&C) -> i64,
    ) -> Result<(), Vec<FactId>> {
        let already = situation.at(fact);
        if already.may_be_known() {
            let same = already.is_point() && Some(already.value()) == value;
            return if same { Ok(()) } else { Err(vec![fact]) };
        }
        let place = |value| self.candidates.iter().position(|c| value_of(c) == value);
        let first = value.map(|value| place(value).ok_or_else(Vec::new));
        self.stays(situation, first.transpose()?)?;
        settle(situation, fact, value);
        Ok(())
    }
}

fn fixed(situation: &Situation, fact: FactId) -> Option<i64> {
    Some(situation.at(fact).value()).filter(|&value| value != UNKNOWN)
}

fn settle(situation: &mut Situation, fact: FactId, value: Option<i64>) {
    if let Some(value) = value {
        situation.set_all([(fact, Interval::point(value))]);
    }
}

/// All that an answer may be when it is given.
pub(super) fn known_values(vocabulary: &Vocabulary, fact: FactId) -> Interval {
    Interval::all_of(&vocabulary.fact(fact).kind)
}
