//! A question: what it settles, its words, and what may be said.

use super::when::Wish;
use crate::bowler::Bowler;
use crate::notation::Notation;

/// How an answer is given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Form {
    /// One of the choices, or a number where there is one.
    One,
    /// Any of the choices, or none of them.
    Several,
    /// A ball each: the cover of every ball, as often as there are such balls.
    Balls,
}

/// A number that may be said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Quantity {
    pub(super) answer: &'static str,
    /// How it is written, and what a step is.
    pub notation: Notation,
    /// The lowest that is taken, in steps.
    pub lowest: i64,
    /// The highest that is taken, in steps.
    pub highest: i64,
}

/// One thing to choose.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Choice {
    pub(super) value: i64,
    pub(super) word: &'static str,
    pub(super) label: String,
    /// Every way of saying it, in plain small letters; the label is the first.
    pub(super) sayings: Vec<String>,
}

impl Choice {
    /// What is shown.
    #[must_use]
    pub fn label(&self) -> &str {
        &self.label
    }

    /// The word of the profile.
    #[must_use]
    pub fn word(&self) -> &'static str {
        self.word
    }
}

/// A question of the interview.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Question {
    pub(super) id: String,
    pub(super) answers: Vec<&'static str>,
    pub(super) when: Vec<Wish>,
    pub(super) cost: i64,
    pub(super) ask: String,
    pub(super) help: String,
    pub(super) form: Form,
    pub(super) quantity: Option<Quantity>,
    /// The answer that a choice gives.
    pub(super) chosen: Option<&'static str>,
    pub(super) choices: Vec<Choice>,
    pub(super) such_as: Vec<String>,
    pub(super) none: Vec<String>,
    pub(super) none_label: Option<String>,
    pub(super) other: Vec<String>,
    pub(super) other_label: Option<String>,
    /// Ways of leaving it open that go with this question.
    pub(super) open: Vec<String>,
    pub(super) open_label: Option<String>,
    /// Words around a number that is the most.
    pub(super) at_most: Vec<String>,
    /// Sayings that are no answer here, and what to say to them.
    pub(super) ask_back: Option<(Vec<String>, String)>,
    pub(super) at_the_pins: Vec<String>,
    pub(super) at_release: Vec<String>,
}

impl Question {
    /// Its id, stable between releases.
    #[must_use]
    pub fn id(&self) -> &str {
        &self.id
    }

    /// The names of the answers that it settles.
    #[must_use]
    pub fn answers(&self) -> &[&'static str] {
        &self.answers
    }

    /// What it costs to ask; the cheapest that helps is asked first.
    #[must_use]
    pub fn cost(&self) -> i64 {
        self.cost
    }

    /// The question in plain words.
    #[must_use]
    pub fn ask(&self) -> &str {
        &self.ask
    }

    /// What the words mean and how to find out.
    #[must_use]
    pub fn help(&self) -> &str {
        &self.help
    }

    /// How an answer is given.
    #[must_use]
    pub fn form(&self) -> Form {
        self.form
    }

    /// The number that may be said, if it asks for one.
    #[must_use]
    pub fn quantity(&self) -> Option<Quantity> {
        self.quantity
    }

    /// What can be chosen.
    #[must_use]
    pub fn choices(&self) -> &[Choice] {
        &self.choices
    }

    /// How to say that none of the choices holds, if that is an answer.
    #[must_use]
    pub fn none(&self) -> Option<&str> {
        self.none_label.as_deref()
    }

    /// How to say that it is something else, if that is an answer.
    #[must_use]
    pub fn other(&self) -> Option<&str> {
        self.other_label.as_deref()
    }

    /// How to leave this question open other than by "I don't know".
    #[must_use]
    pub fn open(&self) -> Option<&str> {
        self.open_label.as_deref()
    }

    /// Examples of what to say.
    #[must_use]
    pub fn such_as(&self) -> &[String] {
        &self.such_as
    }

    /// The labels of the choices that the profile has made here.
    #[must_use]
    pub fn chosen(&self, bowler: &Bowler) -> Vec<&str> {
        let value = self.chosen.and_then(|name| bowler.answer(name));
        let is_chosen = |choice: &&Choice| match self.form {
            Form::One => value == Some(choice.value),
            _ => value.is_some_and(|bits| bits >> choice.value & 1 == 1),
        };
        let chosen = self.choices.iter().filter(is_chosen);
        chosen.map(|choice| choice.label.as_str()).collect()
    }

    /// Whether the profile tells anything of what it asks, or that it isn't known.
    #[must_use]
    pub fn is_settled(&self, bowler: &Bowler) -> bool {
        let settled = |name: &&'static str| bowler.tells(name) || bowler.is_unknown(name);
        self.answers.iter().any(settled)
    }
}
