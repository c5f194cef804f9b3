//! The picks of a chain over the answers of one bowler.

use super::behind::Behind;
use super::{Chain, Choice};
use crate::bowler::{Bowler, contradiction};
use crate::rules::{FactId, Interval, Kind, UNKNOWN};
use crate::search::{Decision, Holds, Point, Shape};
use crate::vocabulary::Situation;

/// The picks of a chain by the answers of one bowler: what a search is made over.
#[derive(Debug)]
pub(in super::super) struct Picks<'c, 's> {
    chain: &'c Chain<'s>,
    base: Situation,
    answers: Vec<FactId>,
    cuts: Vec<Vec<i64>>,
    /// For each fact that a rule looks at, the places of the answers behind it.
    behind: Vec<(FactId, Vec<usize>)>,
}

impl<'c, 's> Picks<'c, 's> {
    /// Over these answers; every other answer is as the bowler gave it, or assumed.
    pub(in super::super) fn new(
        chain: &'c Chain<'s>,
        bowler: &Bowler,
        answers: Vec<FactId>,
    ) -> Self {
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
    pub(in super::super) fn facts(&self) -> &[FactId] {
        &self.answers
    }

    /// Where the bowler stands: what was answered, else what is assumed.
    pub(in super::super) fn start(&self) -> Point {
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
        contradiction(&told).is_none()
    }

    fn cuts(&self, answer: usize) -> &[i64] {
        &self.cuts[answer]
    }
}
