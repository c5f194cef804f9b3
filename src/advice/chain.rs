//! Weight, grip and ball in turn, compiled once: what the stages would pick for any answers, and nothing else.

use std::sync::Arc;

use super::outcome::Trouble;
use super::shop::Shop;
use crate::bowler::Bowler;
use crate::rules::{
    Challenge, Chooser, FactId, Interval, Kind, Origin, Ranking, UNKNOWN, Vocabulary,
};
use crate::search::{Decision, Holds, Point, Shape};
use crate::vocabulary::{
    BallCandidate, Columns, Situation, StageFact, StageWorld, WeightCandidate, WordCandidate,
    all_words, ball_facts, grip_facts, weight_facts, words,
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
            chooser,
            tie,
        })
    }

    /// The stage as one situation, or a box of them, sees it.
    pub(super) fn world<'a>(&'a self, situation: &'a Situation) -> StageWorld<'a, C> {
        let columns = Arc::clone(&self.columns);
        StageWorld::of(situation, columns, &self.candidates, self.tie)
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
    fn sources(&self) -> impl Iterator<Item = (FactId, &[FactId])> {
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

    /// Each fact that a rule of the stages looks at, with the facts of the asker that tell it.
    fn sources(&self) -> impl Iterator<Item = (FactId, &[FactId])> {
        let words = self.weights.sources().chain(self.grips.sources());
        words.chain(self.balls.sources())
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

/// What stands behind worked facts, while some facts are open.
struct Behind {
    open: Vec<FactId>,
    read: Vec<(FactId, Option<Vec<FactId>>)>,
}

impl Behind {
    fn new(situation: &Situation, open: &[FactId]) -> Self {
        Behind {
            open: open.to_vec(),
            read: situation.reads(open),
        }
    }

    /// These facts and all facts behind them.
    fn of(&self, facts: impl IntoIterator<Item = FactId>) -> Vec<FactId> {
        let mut all: Vec<FactId> = Vec::new();
        let mut next: Vec<FactId> = facts.into_iter().collect();
        while let Some(fact) = next.pop() {
            if all.contains(&fact) {
                continue;
            }
            all.push(fact);
            match self.read.iter().find(|(worked, _)| *worked == fact) {
                Some((_, Some(read))) => next.extend(read),
                Some((_, None)) => {
                    next.extend(&self.open);
                    next.extend(self.read.iter().map(|(worked, _)| worked));
                }
                None => {}
            }
        }
        all
    }
}

/// The picks of a chain by the answers of one bowler: what a search is made over.
#[derive(Debug)]
pub(super) struct Picks<'c, 's> {
    chain: &'c Chain<'s>,
    base: Situation,
    answers: Vec<FactId>,
    cuts: Vec<Vec<i64>>,
    /// For each fact that a rule looks at, the places of the answers behind it.
    behind: Vec<(FactId, Vec<usize>)>,
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
        let base = Situation::of(bowler, rules);
        let settled = [chain.settled.weight, chain.settled.grip];
        let open: Vec<FactId> = answers.iter().copied().chain(settled).collect();
        let behind = Behind::new(&base, &open);
        let places = |(fact, told): (FactId, &[FactId])| {
            let told = behind.of(told.iter().copied());
            let places = (0..answers.len()).filter(|&place| told.contains(&answers[place]));
            (fact, places.collect())
        };
        let needed = behind.of(chain.sources().flat_map(|(_, told)| told).copied());
        Picks {
            chain,
            base: base.keeping(&needed),
            cuts: answers.iter().map(cuts).collect(),
            behind: chain.sources().map(places).collect(),
            answers,
        }
    }

    /// The open answers behind these facts, in the order of the facts; all that are open if there are none.
    fn split(&self, area: &[Interval], facts: &[FactId]) -> Vec<usize> {
        let open = |place: &usize| !area[*place].is_point();
        let mut split: Vec<usize> = Vec::new();
        for fact in facts {
            let behind = self.behind.iter().filter(|(known, _)| known == fact);
            for &place in behind.flat_map(|(_, places)| places) {
                if open(&place) && !split.contains(&place) {
                    split.push(place);
                }
            }
        }
        if split.is_empty() {
            split.extend((0..area.len()).filter(open));
        }
        split
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
    Interval::all_of(&vocabulary.fact(fact).kind)
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
        let mut situation = self.situation(area.iter().copied());
        match self.chain.stays(&mut situation, pick) {
            Ok(()) => Holds::Proved,
            Err(facts) => Holds::Open {
                split: self.split(area, &facts),
            },
        }
    }

    fn is_possible(&self, point: &[i64]) -> bool {
        let vocabulary = self.base.vocabulary();
        let told = |name: &str| {
            let fact = vocabulary.id(name)?;
            let place = self.answers.iter().position(|answer| *answer == fact);
            let value = match place {
                Some(place) => point.get(place).copied()?,
                None if self.base.assumed().contains(&fact) => UNKNOWN,
                None => self.base.at(fact).value(),
            };
            Some(value).filter(|&value| value != UNKNOWN)
        };
        go_together(&told)
    }

    fn cuts(&self, answer: usize) -> &[i64] {
        &self.cuts[answer]
    }
}

/// What of the thumb is measured only for a hole of its own.
const MEASURED_THUMB: [&str; 8] = [
    "hand.thumb_gauge",
    "hand.thumb_gauge_warm",
    "hand.thumb_length",
    "hand.thumb_flexibility",
    "hand.thumb_lies",
    "hand.oval_wide",
    "hand.oval_narrow",
    "hand.oval_angle",
];

/// Whether a profile with these answers would be taken: the contradictions of `bowler::check`.
fn go_together(told: &dyn Fn(&str) -> Option<i64>) -> bool {
    let held = match (told("bowler.hold_passed"), told("bowler.hold_failed")) {
        (Some(passed), Some(failed)) => failed > passed,
        _ => true,
    };
    let is = |name: &str, value: i64| told(name) == Some(value);
    let known = |name: &str| told(name).is_some();
    let no_ball_yet_its_weight = is("bowler.ball_now", 0) && known("bowler.ball_now_weight");
    let two_rev_rates = known("bowler.rev_rate") && known("bowler.rev_level");
    let out_yet_measured = is("bowler.thumb", 1) && MEASURED_THUMB.into_iter().any(known);
    // Balls owned are told one by one: each has at most one cover, and only a ball owned is serviced.
    let count = told("owned.count").unwrap_or(0);
    let covers = told("owned.covers").unwrap_or(0);
    let owned_as_told = i64::from(covers.count_ones()) <= count
        && (count > 0 || !known("owned.games_since_service"));
    held && !no_ball_yet_its_weight && !two_rev_rates && !out_yet_measured && owned_as_told
}
