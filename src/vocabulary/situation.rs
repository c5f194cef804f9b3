//! Everything known at one moment of a consultation: a value, or a range, for each scalar fact.

use std::sync::Arc;

use super::Interval;
use super::refit::GAPS;
use super::worked::{WORKED, Worked};
use crate::bowler::Bowler;
use crate::rules::{FactId, Kind, Origin, RuleSet, Vocabulary};

/// One value or range for each fact that isn't a column.
#[derive(Clone, Debug)]
pub struct Situation {
    vocabulary: Arc<Vocabulary>,
    values: Vec<Interval>,
    assumed: Vec<FactId>,
}

impl Situation {
    /// Nothing is known yet.
    pub fn empty(vocabulary: &Arc<Vocabulary>) -> Self {
        Situation {
            vocabulary: vocabulary.clone(),
            values: vec![Interval::NOT_KNOWN; vocabulary.facts().len()],
            assumed: Vec::new(),
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
            Some(id) => self.values[usize::from(id.0)],
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

    /// Worked facts stand in an order in which each needs only earlier ones.
    fn rework(&mut self) {
        for Worked { name, value, .. } in WORKED.iter().chain(GAPS) {
            if let Some(id) = self.vocabulary.id(name) {
                self.values[usize::from(id.0)] = value(self);
            }
        }
    }
}
