//! Everything known at one moment of a consultation: a value, or a range, for each scalar fact.

use std::cell::Cell;
use std::sync::Arc;

use super::Interval;
use super::refit::GAPS;
use super::worked::{RightFor, WORKED, Worked};
use crate::bowler::Bowler;
use crate::rules::{FactId, Kind, Origin, RuleSet, Vocabulary};

/// One value or range for each fact that isn't a column.
#[derive(Clone, Debug)]
pub struct Situation {
    vocabulary: Arc<Vocabulary>,
    values: Vec<Interval>,
    assumed: Vec<FactId>,
    /// The worked facts that are kept up to date, in an order in which each needs only earlier ones.
    rows: Arc<[Row]>,
    readings: Readings,
}

/// A worked fact, and how it is worked out.
#[derive(Clone, Copy)]
struct Row {
    fact: FactId,
    worked: &'static Worked,
}

impl std::fmt::Debug for Row {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(self.worked.name)
    }
}

/// The facts read by name, while somebody wants to know.
#[derive(Default)]
struct Readings(Cell<Option<Vec<FactId>>>);

impl std::fmt::Debug for Readings {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Readings")
    }
}

impl Clone for Readings {
    fn clone(&self) -> Self {
        Readings::default()
    }
}

impl Readings {
    fn note(&self, fact: FactId) {
        if let Some(mut read) = self.0.take() {
            read.push(fact);
            self.0.set(Some(read));
        }
    }
}

impl Situation {
    /// Nothing is known yet.
    pub fn empty(vocabulary: &Arc<Vocabulary>) -> Self {
        Situation {
            vocabulary: vocabulary.clone(),
            values: vec![Interval::NOT_KNOWN; vocabulary.facts().len()],
            assumed: Vec::new(),
            rows: WORKED
                .iter()
                .chain(GAPS)
                .filter_map(|worked| {
                    let fact = vocabulary.id(worked.name)?;
                    Some(Row { fact, worked })
                })
                .collect(),
            readings: Readings::default(),
        }
    }

    /// A bowler's answers, with the rules' assumptions where there is no answer.
    pub fn of(bowler: &Bowler, rules: &RuleSet) -> Self {
        let mut situation = Situation::empty(rules.vocabulary());
        for (index, fact) in situation.vocabulary.clone().facts().iter().enumerate() {
            if let Some(value) = super::answer(bowler, fact.name) {
                situation.values[index] = Interval::point(value);
            }
        }
        for assumption in rules.assumptions() {
            let index = usize::from(assumption.fact().0);
            if let (Some(value), false) = (assumption.value(), situation.values[index].is_known()) {
                situation.values[index] = Interval::point(value);
                situation.assumed.push(assumption.fact());
            }
        }
        situation.rework();
        situation
    }

    /// The value or range of a fact; not known for a name no fact has.
    pub fn get(&self, name: &str) -> Interval {
        match self.vocabulary.id(name) {
            Some(id) => {
                self.readings.note(id);
                self.values[usize::from(id.0)]
            }
            None => Interval::NOT_KNOWN,
        }
    }

    /// The single value of a fact, if it is known and no range.
    pub fn known(&self, name: &str) -> Option<i64> {
        let interval = self.get(name);
        (interval.is_known() && interval.lowest() == interval.highest()).then(|| interval.lowest())
    }

    /// True if a flag is certainly set.
    pub fn is(&self, name: &str) -> bool {
        self.known(name) == Some(1)
    }

    /// True if a choice has just this word.
    pub fn is_word(&self, name: &str, word: &str) -> bool {
        let Some(id) = self.vocabulary.id(name) else {
            return false;
        };
        match (&self.vocabulary.fact(id).kind, self.known(name)) {
            (Kind::Choice(words), Some(value)) => usize::try_from(value)
                .ok()
                .and_then(|i| words.get(i))
                .is_some_and(|w| *w == word),
            _ => false,
        }
    }

    /// Fixes a fact and works out again what follows from it.
    pub fn set(&mut self, name: &str, value: Interval) {
        if let Some(id) = self.vocabulary.id(name) {
            self.values[usize::from(id.0)] = value;
            self.rework();
        }
    }

    /// Fixes several facts and works out again what follows from them.
    pub fn set_all(&mut self, values: impl IntoIterator<Item = (FactId, Interval)>) {
        for (fact, value) in values {
            if let Some(place) = self.values.get_mut(usize::from(fact.0)) {
                *place = value;
            }
        }
        self.rework();
    }

    /// Whether anything at all was measured on the hand or stands on a fit card: a number, not a flag or a word.
    pub fn has_a_hand(&self) -> bool {
        // What a ball weighs says nothing of a hand.
        let of_a_hand = |name: &str| {
            name.starts_with("hand.") || name.starts_with("card.") && name != "card.ball_weight"
        };
        self.vocabulary
            .facts()
            .iter()
            .zip(&self.values)
            .any(|(fact, value)| {
                fact.origin == Origin::Answer
                    && of_a_hand(fact.name)
                    && matches!(fact.kind, Kind::Number { .. })
                    && value.is_known()
            })
    }

    /// Facts whose value was assumed.
    pub fn assumed(&self) -> &[FactId] {
        &self.assumed
    }

    /// The vocabulary the facts belong to.
    pub fn vocabulary(&self) -> &Arc<Vocabulary> {
        &self.vocabulary
    }

    /// The value or range of a fact.
    pub fn at(&self, fact: FactId) -> Interval {
        self.values
            .get(usize::from(fact.0))
            .copied()
            .unwrap_or(Interval::NOT_KNOWN)
    }

    fn rework(&mut self) {
        let rows = Arc::clone(&self.rows);
        for row in &*rows {
            self.values[usize::from(row.fact.0)] = self.work_out(row);
        }
    }

    /// The value or range of a worked fact.
    fn work_out(&self, row: &Row) -> Interval {
        if row.worked.right_for == RightFor::Ranges {
            return (row.worked.value)(self);
        }
        let (value, read) = self.reading(row.worked.value);
        match read.iter().all(|&fact| self.at(fact).is_point()) {
            true => value,
            false => Interval::all_of(&(row.worked.kind)()).or_unknown(),
        }
    }

    /// What comes of this, and the facts that were read by name for it.
    fn reading<T>(&self, work: impl FnOnce(&Situation) -> T) -> (T, Vec<FactId>) {
        self.readings.0.set(Some(Vec::new()));
        let found = work(self);
        (found, self.readings.0.take().unwrap_or_default())
    }

    /// Each worked fact that is kept up to date, with the facts read for it while all `open` facts may be anything: with all it
    /// depends on among them, and among the facts known already.
    ///
    /// None instead, where it can't be told: it may depend on any of `open`.
    pub fn reads(&self, open: &[FactId]) -> Vec<(FactId, Option<Vec<FactId>>)> {
        let mut anything = self.clone();
        anything.set_all(open.iter().map(|&fact| {
            let kind = self.vocabulary.fact(fact).kind;
            (fact, Interval::all_of(&kind).or_unknown())
        }));
        let reads = |row: &Row| {
            let (_, read) = anything.reading(row.worked.value);
            let told = row.worked.right_for == RightFor::Ranges
                || read.iter().all(|&fact| anything.at(fact).is_point());
            (row.fact, told.then_some(read))
        };
        self.rows.iter().map(reads).collect()
    }

    /// The same, but of the worked facts only these are kept up to date; of all others nobody may ask any more.
    #[must_use]
    pub fn keeping(&self, worked: &[FactId]) -> Situation {
        let rows = self.rows.iter().copied();
        Situation {
            rows: rows.filter(|row| worked.contains(&row.fact)).collect(),
            ..self.clone()
        }
    }
}
