//! What a question after turning points gives back. Plain results with getters; nothing here computes.

use super::picked::Picked;
use super::reason::Texts;
use super::stretch::Stretch;
use crate::rules::Audience;

/// Which answers would change the pick.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct WhatIf {
    pub(crate) bowler: String,
    pub(crate) digest: String,
    pub(crate) now: Picked,
    pub(crate) settled: Vec<&'static str>,
    pub(crate) turns: Vec<Turning>,
    pub(crate) steady: Vec<&'static str>,
    pub(crate) unfinished: Vec<&'static str>,
    pub(crate) together: Together,
}

/// A step of one answer that changes the pick.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Turning {
    pub(crate) step: ChangedAnswer,
    pub(crate) from: Option<(i64, String)>,
    pub(crate) stretch: Option<Stretch>,
    pub(crate) practical: bool,
    pub(crate) also: Vec<ChangedAnswer>,
    pub(crate) instead_of: Option<&'static str>,
    pub(crate) told: bool,
    pub(crate) distance: i64,
    pub(crate) picked: Picked,
    pub(crate) changed: Vec<&'static str>,
}

/// An answer with another value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ChangedAnswer {
    pub(crate) fact: &'static str,
    pub(crate) to: i64,
    pub(crate) shown: String,
    pub(crate) phrase: Texts,
}

/// What two answers do together, where none does alone.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
// There is one to an answer; a box would only stand in the reader's way.
#[allow(clippy::large_enum_variant)]
pub enum Together {
    /// It wasn't asked, as single answers change the pick.
    NotAsked,
    /// No two answers change it.
    Nothing,
    /// The nearest two; `certain` if all nearer ones were tried.
    Nearest {
        /// Both answers.
        steps: [ChangedAnswer; 2],
        /// What is picked then.
        picked: Picked,
        /// Whether every nearer pair was tried.
        certain: bool,
        /// Whether the phrases for customers, in steps that people count in, are true; else they are told of no numbers.
        practical: bool,
    },
    /// None was found among this many boxes and points.
    NotSettled(usize),
}

impl WhatIf {
    /// The customer's name, harmless to print; empty if none was given.
    pub fn bowler(&self) -> &str {
        &self.bowler
    }

    /// Digest of rules and catalog.
    pub fn digest(&self) -> &str {
        &self.digest
    }

    /// What is picked as the answers stand.
    pub fn now(&self) -> &Picked {
        &self.now
    }

    /// Which of `weight`, `grip` and `ball` the profile has settled, so that no answer changes it.
    pub fn settled(&self) -> &[&'static str] {
        &self.settled
    }

    /// Every nearest step that changes the pick, and of numbers that aren't known every stretch with another pick: answers given
    /// before answers not given, what changes only the grip last among them, nearer ones first; stretches of one answer the most
    /// ordinary first.
    pub fn turns(&self) -> &[Turning] {
        &self.turns
    }

    /// Answers that rules look at, yet no single step of them changes the pick.
    pub fn steady(&self) -> &[&'static str] {
        &self.steady
    }

    /// Answers of which not every step could be tried.
    pub fn unfinished(&self) -> &[&'static str] {
        &self.unfinished
    }

    /// What two answers do where none does alone.
    pub fn together(&self) -> &Together {
        &self.together
    }
}

impl Turning {
    /// The first value that changes the pick; of a choice the word, of a set all its words; of a number that isn't known, one of
    /// the stretch.
    pub fn step(&self) -> &ChangedAnswer {
        &self.step
    }

    /// The last value that keeps the pick, in steps and as people write it; none for a number that isn't known.
    pub fn keeps(&self) -> Option<(i64, &str)> {
        self.from
            .as_ref()
            .map(|(from, shown)| (*from, shown.as_str()))
    }

    /// For a number, every value onward from the step that has the very same pick.
    pub fn stretch(&self) -> Option<&Stretch> {
        self.stretch.as_ref()
    }

    /// How a sentence about it begins. Customers hear of numbers in steps that people count in, and only what is true of them: none
    /// where no such number lies in the stretch.
    pub fn said(&self, audience: Audience) -> Option<&str> {
        let is_said = self.practical || audience == Audience::Fitter;
        is_said.then(|| self.step.phrase.of(audience))
    }

    /// The answer that this one takes the place of: a profile has a rev rate as a number or as a word.
    pub fn instead_of(&self) -> Option<&'static str> {
        self.instead_of
    }

    /// Answers that follow: who owns a cover more owns a ball more.
    pub fn also(&self) -> &[ChangedAnswer] {
        &self.also
    }

    /// Whether the profile gives this answer, or its other form; if not, the step counts from what is assumed or from values that keep
    /// the pick.
    pub fn is_told(&self) -> bool {
        self.told
    }

    /// How far the step leads, in thousandths of the value; a word counts as five hundred.
    pub fn distance(&self) -> i64 {
        self.distance
    }

    /// What is picked then.
    pub fn picked(&self) -> &Picked {
        &self.picked
    }

    /// Which of `weight`, `grip` and `ball` change.
    pub fn changed(&self) -> &[&'static str] {
        &self.changed
    }
}

impl ChangedAnswer {
    /// The answer, such as `bowler.speed`.
    pub fn fact(&self) -> &'static str {
        self.fact
    }

    /// Its value, in steps.
    pub fn to(&self) -> i64 {
        self.to
    }

    /// Its value as people write it.
    pub fn shown(&self) -> &str {
        &self.shown
    }

    /// The beginning of a sentence that goes on with what is picked then.
    pub fn phrase(&self) -> &Texts {
        &self.phrase
    }
}
