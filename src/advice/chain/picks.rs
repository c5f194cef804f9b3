//! The picks of a chain over the answers of one bowler.

use super::super::consultation::Consultation;
use super::behind::Behind;
use super::{Chain, Choice};
use crate::bowler::{Bowler, contradiction};
use crate::rules::{FactId, Interval, Kind, Ranking, UNKNOWN};
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
        // As every consultation begins: the price list and the bench are known.
        let base = Consultation::begin(chain.shop, bowler).situation;
        let settled = [chain.settled.weight, chain.settled.grip];
        let open: Vec<FactId> = answers.iter().copied().chain(settled).collect();
        let behind = Behind::new(&base, &open);
        let places = |(fact, told): (FactId, &[FactId])| {
            let told = behind.of(told.iter().copied());
            let places = (0..answers.len()).filter(|&place| told.contains(&answers[place]));
            (fact, places.collect())
        };
        let needed = behind.of(chain.sources().flat_map(|(_, told)| told).copied());
        let base = base.keeping(&needed);
        let cuts = |&answer: &FactId| {
            let mut cuts = chain.cuts(answer);
            cuts.extend(cuts_behind_flags(&base, answer, &needed));
            cuts.sort_unstable();
            cuts.dedup();
            cuts
        };
        Picks {
            chain,
            cuts: answers.iter().map(cuts).collect(),
            base,
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

    /// What is picked at a point, and all that the ball stage is told there.
    pub(in super::super) fn settled(&self, point: &[i64]) -> (Choice, Situation) {
        let mut situation = self.situation(point.iter().copied().map(Interval::point));
        let choice = self.chain.choose(&mut situation);
        (choice, situation)
    }

    /// What is picked at a point, and how the balls stand there.
    pub(in super::super) fn ranked(&self, point: &[i64]) -> (Choice, Ranking) {
        let (choice, situation) = self.settled(point);
        (choice, self.chain.balls.rank(&situation))
    }

    /// The situation over a box of answers.
    pub(super) fn situation(&self, area: impl Iterator<Item = Interval>) -> Situation {
        let mut situation = self.base.clone();
        situation.set_all(self.answers.iter().copied().zip(area));
        situation
    }
}

/// An answer of so many values is tried value by value.
const FEW_VALUES: i64 = 200;

/// The values of an answer from which on a flag worked out from it is another; none where there are too many to try.
fn cuts_behind_flags(base: &Situation, answer: FactId, needed: &[FactId]) -> Vec<i64> {
    let kind = |fact: FactId| base.vocabulary().fact(fact).kind;
    let all = Interval::all_of(&kind(answer));
    let is_number = matches!(kind(answer), Kind::Number { .. });
    if !is_number || all.highest() - all.lowest() > FEW_VALUES {
        return Vec::new();
    }
    let flags = needed.iter().filter(|&&fact| kind(fact) == Kind::Flag);
    let flags: Vec<FactId> = flags.copied().collect();
    let mut at = base.clone();
    let mut told = |value: i64| -> Vec<Interval> {
        at.set_all([(answer, Interval::point(value))]);
        flags.iter().map(|&flag| at.at(flag)).collect()
    };
    let told: Vec<Vec<Interval>> = (all.lowest()..=all.highest()).map(&mut told).collect();
    let next = told.windows(2).zip(all.lowest() + 1..);
    next.filter(|(two, _)| two[0] != two[1])
        .map(|(_, value)| value)
        .collect()
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
        self.settled(point).0
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
