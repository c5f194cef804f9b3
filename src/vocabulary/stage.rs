//! A stage's candidates seen by the engine: columns of values, and their bounds over a box of answers.

use std::borrow::Cow;
use std::sync::Arc;

use super::remembered::Remembered;
use super::{Interval, Situation};
use crate::rules::{Fact, FactId, Kind, Origin, Ranged, Vocabulary, World};

/// How a fact of a candidate comes about.
#[derive(Debug)]
pub enum Column<C> {
    /// Fixed with the catalog.
    Fixed(fn(&C) -> i64),
    /// Worked out from the facts named, in their order, and the candidate; ranges give a range.
    Derived(&'static [&'static str], fn(&C, &Given<'_>) -> Interval),
    /// The same for all candidates at once, where much of the work is alike for all.
    Together(
        &'static [&'static str],
        fn(&[C], &Given<'_>) -> Vec<Interval>,
    ),
    /// A number of the candidate less the fact named, so that it moves alike for all candidates.
    Less(fn(&C) -> i64, &'static str),
    /// Worked out from all but the last of the facts named and the candidate, less that last one: while the others are single
    /// values it moves alike for all candidates.
    DerivedLess(&'static [&'static str], fn(&C, &Given<'_>) -> Interval),
}

/// What a column is worked out from: the facts it names, in their order.
#[derive(Debug)]
pub struct Given<'a>(&'a [Interval]);

impl<'a> Given<'a> {
    pub(super) fn of(facts: &'a [Interval]) -> Self {
        Given(facts)
    }

    /// The fact named at this place.
    pub(super) fn at(&self, place: usize) -> Interval {
        self.0.get(place).copied().unwrap_or(Interval::NOT_KNOWN)
    }
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
                Column::Derived(..)
                | Column::Together(..)
                | Column::Less(..)
                | Column::DerivedLess(..) => Origin::Derived,
            },
            from: self.from,
            subject: Some(subject),
        }
    }
}

/// A stage's columns as a vocabulary numbers them: made once, for as many situations as wanted.
#[derive(Debug)]
pub struct Columns<C>(Vec<Numbered<C>>);

#[derive(Debug)]
struct Numbered<C> {
    fact: FactId,
    column: Column<C>,
    /// What it is worked out from.
    of: Vec<FactId>,
}

impl<C> Columns<C> {
    /// The columns of these facts.
    pub fn new(vocabulary: &Vocabulary, facts: &[StageFact<C>]) -> Self {
        let numbered = |stated: &StageFact<C>| {
            let of = match &stated.column {
                Column::Fixed(_) => &[],
                Column::Derived(of, _) | Column::Together(of, _) | Column::DerivedLess(of, _) => {
                    *of
                }
                Column::Less(_, than) => std::slice::from_ref(than),
            };
            Some(Numbered {
                fact: vocabulary.id(stated.name)?,
                column: stated.column,
                // A name that no fact has keeps its place, so that the others keep theirs.
                of: of
                    .iter()
                    .map(|name| vocabulary.id(name).unwrap_or(NO_FACT))
                    .collect(),
            })
        };
        Columns(facts.iter().filter_map(numbered).collect())
    }

    fn of(&self, fact: FactId) -> Option<&Numbered<C>> {
        self.0.iter().find(|column| column.fact == fact)
    }

    /// The facts that a column is worked out from; none for one fixed with the catalog.
    pub fn behind(&self, fact: FactId) -> &[FactId] {
        self.of(fact).map_or(&[], |column| &column.of)
    }
}

/// A number that no fact has.
const NO_FACT: FactId = FactId(u16::MAX);

/// A situation and a list of candidates: what the engine ranks.
pub struct StageWorld<'a, C> {
    situation: &'a Situation,
    candidates: &'a [C],
    columns: Arc<Columns<C>>,
    tie: fn(&C) -> i64,
    remembered: Option<&'a Remembered>,
}

impl<C> std::fmt::Debug for StageWorld<'_, C> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("StageWorld")
            .field("candidates", &self.candidates.len())
            .finish_non_exhaustive()
    }
}

impl<'a, C> StageWorld<'a, C> {
    /// Puts a stage's facts, the situation and the candidates together.
    pub fn new(
        situation: &'a Situation,
        facts: &[StageFact<C>],
        candidates: &'a [C],
        tie: fn(&C) -> i64,
    ) -> Self {
        let columns = Columns::new(situation.vocabulary(), facts);
        StageWorld::of(situation, Arc::new(columns), candidates, tie)
    }

    /// The same of columns that were numbered before, by the situation's own vocabulary.
    pub fn of(
        situation: &'a Situation,
        columns: Arc<Columns<C>>,
        candidates: &'a [C],
        tie: fn(&C) -> i64,
    ) -> Self {
        StageWorld {
            situation,
            candidates,
            columns,
            tie,
            remembered: None,
        }
    }

    /// The same, looking there first for what was worked out before: for these very candidates and columns.
    #[must_use]
    pub fn remembering(self, remembered: &'a Remembered) -> Self {
        StageWorld {
            remembered: Some(remembered),
            ..self
        }
    }

    /// The range of a candidate's fact over the situation's ranges; a point where all is known.
    pub fn bounds(&self, fact: FactId, candidate: usize) -> Interval {
        match self.candidates.get(candidate) {
            Some(one) => {
                let of = self.given(fact);
                let ranges = self.ranges(fact, std::slice::from_ref(one), &of);
                ranges.first().copied().unwrap_or(Interval::NOT_KNOWN)
            }
            None => Interval::NOT_KNOWN,
        }
    }

    /// What a column is worked out from.
    fn given(&self, fact: FactId) -> Vec<Interval> {
        let of = self.columns.behind(fact).iter();
        of.map(|&fact| self.situation.at(fact)).collect()
    }

    /// What a fact comes to for each candidate.
    fn all_ranges(&self, fact: FactId) -> Arc<[Interval]> {
        let of = self.given(fact);
        match self.remembered {
            Some(remembered) => {
                remembered.or_else(fact, of, |of| self.ranges(fact, self.candidates, of))
            }
            None => self.ranges(fact, self.candidates, &of),
        }
    }

    /// What a fact comes to for each of these candidates.
    fn ranges(&self, fact: FactId, candidates: &[C], of: &[Interval]) -> Arc<[Interval]> {
        let given = Given(of);
        let all = candidates;
        let candidates = all.iter();
        match self.columns.of(fact).map(|numbered| numbered.column) {
            None => candidates.map(|_| Interval::NOT_KNOWN).collect(),
            Some(Column::Fixed(value)) => {
                candidates.map(|one| Interval::point(value(one))).collect()
            }
            Some(Column::Derived(_, value)) => candidates.map(|one| value(one, &given)).collect(),
            Some(Column::Together(_, values)) => values(all, &given).into(),
            Some(Column::DerivedLess(_, value)) => {
                let less = of.last().copied().unwrap_or(Interval::NOT_KNOWN);
                candidates
                    .map(|one| value(one, &given).minus(less))
                    .collect()
            }
            Some(Column::Less(value, _)) => candidates
                .map(|one| Interval::point(value(one)).minus(given.at(0)))
                .collect(),
        }
    }
}

impl<C> World for StageWorld<'_, C> {
    fn candidates(&self) -> usize {
        self.candidates.len()
    }

    fn scalar(&self, fact: FactId) -> i64 {
        self.situation.at(fact).value()
    }

    fn column(&self, fact: FactId) -> Cow<'_, [i64]> {
        let ranges = self.all_ranges(fact);
        ranges.iter().map(|range| range.value()).collect()
    }

    fn tie(&self, candidate: usize) -> i64 {
        self.candidates.get(candidate).map_or(0, self.tie)
    }
}

impl<C> Ranged for StageWorld<'_, C> {
    fn candidates(&self) -> usize {
        self.candidates.len()
    }

    fn scalar(&self, fact: FactId) -> Interval {
        self.situation.at(fact)
    }

    fn bounds(&self, fact: FactId, candidate: usize) -> Interval {
        StageWorld::bounds(self, fact, candidate)
    }

    fn bounds_of_all(&self, fact: FactId) -> Arc<[Interval]> {
        self.all_ranges(fact)
    }

    fn moves_together(&self, fact: FactId) -> bool {
        let column = self.columns.of(fact).map(|numbered| &numbered.column);
        match column {
            Some(Column::Less(..)) => true,
            Some(Column::DerivedLess(..)) => {
                let of = self.given(fact);
                let others = of.split_last().map_or(&[][..], |(_, others)| others);
                others.iter().all(|other| other.is_point())
            }
            _ => false,
        }
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
