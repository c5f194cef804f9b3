//! A stage's candidates seen by the engine: columns of values, and their bounds over a box of answers.

use std::borrow::Cow;

use super::{Interval, Situation};
use crate::rules::{Fact, FactId, Kind, Origin, Ranged, UNKNOWN, Vocabulary, World};

/// How a fact of a candidate comes about.
#[derive(Debug)]
pub enum Column<C> {
    /// Fixed with the catalog.
    Fixed(fn(&C) -> i64),
    /// Worked out from the answers and the candidate; a range of answers gives a range.
    Derived(fn(&Situation, &C) -> Interval),
}

impl<C> Clone for Column<C> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<C> Copy for Column<C> {}

/// One fact of a stage's candidates: name, meaning, kind, where it comes from, and its column.
#[derive(Clone, Debug)]
pub struct StageFact<C> {
    pub(super) name: &'static str,
    pub(super) meaning: &'static str,
    pub(super) kind: Kind,
    pub(super) from: &'static str,
    pub(super) column: Column<C>,
}

impl<C> StageFact<C> {
    pub(super) fn fact(&self, subject: &'static str) -> Fact {
        Fact {
            name: self.name,
            meaning: self.meaning,
            kind: self.kind,
            origin: match self.column {
                Column::Fixed(_) => Origin::Candidate,
                Column::Derived(_) => Origin::Derived,
            },
            from: self.from,
            subject: Some(subject),
        }
    }
}

/// A situation and a list of candidates: what the engine ranks.
pub struct StageWorld<'a, C> {
    situation: &'a Situation,
    candidates: &'a [C],
    columns: Vec<(FactId, Column<C>)>,
    tie: fn(&C) -> i64,
}

impl<C> std::fmt::Debug for StageWorld<'_, C> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("StageWorld")
            .field("candidates", &self.candidates.len())
            .finish_non_exhaustive()
    }
}

impl<'a, C: Clone> StageWorld<'a, C> {
    /// Puts a stage's facts, the situation and the candidates together.
    pub fn new(
        situation: &'a Situation,
        facts: &[StageFact<C>],
        candidates: &'a [C],
        tie: fn(&C) -> i64,
    ) -> Self {
        let vocabulary: &Vocabulary = situation.vocabulary();
        let columns = facts
            .iter()
            .filter_map(|f| Some((vocabulary.id(f.name)?, f.column)))
            .collect();
        StageWorld {
            situation,
            candidates,
            columns,
            tie,
        }
    }

    /// The range of a candidate's fact over the situation's ranges; a point where all is known.
    pub fn bounds(&self, fact: FactId, candidate: usize) -> Interval {
        let column = self.columns.iter().find(|(id, _)| *id == fact);
        match (column, self.candidates.get(candidate)) {
            (Some((_, Column::Fixed(value))), Some(c)) => Interval::point(value(c)),
            (Some((_, Column::Derived(value))), Some(c)) => value(self.situation, c),
            _ => Interval::NOT_KNOWN,
        }
    }
}

impl<C: Clone> World for StageWorld<'_, C> {
    fn candidates(&self) -> usize {
        self.candidates.len()
    }

    fn scalar(&self, fact: FactId) -> i64 {
        self.situation.at(fact).value()
    }

    fn column(&self, fact: FactId) -> Cow<'_, [i64]> {
        let values = match self.columns.iter().find(|(id, _)| *id == fact) {
            Some((_, Column::Fixed(value))) => self.candidates.iter().map(value).collect(),
            Some((_, Column::Derived(value))) => self
                .candidates
                .iter()
                .map(|c| value(self.situation, c).value())
                .collect(),
            None => vec![UNKNOWN; self.candidates.len()],
        };
        Cow::Owned(values)
    }

    fn tie(&self, candidate: usize) -> i64 {
        self.candidates.get(candidate).map_or(0, self.tie)
    }
}

impl<C: Clone> Ranged for StageWorld<'_, C> {
    fn candidates(&self) -> usize {
        self.candidates.len()
    }

    fn scalar(&self, fact: FactId) -> Interval {
        self.situation.at(fact)
    }

    fn bounds(&self, fact: FactId, candidate: usize) -> Interval {
        StageWorld::bounds(self, fact, candidate)
    }
}

/// A situation alone: what measures and the person's cautions are judged by.
#[derive(Debug)]
pub struct Alone<'a>(pub &'a Situation);

impl World for Alone<'_> {
    fn candidates(&self) -> usize {
        0
    }
    fn scalar(&self, fact: FactId) -> i64 {
        self.0.at(fact).value()
    }
    fn column(&self, _fact: FactId) -> Cow<'_, [i64]> {
        Cow::Borrowed(&[])
    }
}
