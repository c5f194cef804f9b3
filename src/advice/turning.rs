//! What if: the nearest step of each answer that changes weight, grip or ball.

use super::chain::{Chain, Choice};
use super::outcome::Trouble;
use super::phrases::{Phrase, Phrases, Step};
use super::picked::Picked;
use super::reason::Texts;
use super::shop::Shop;
use super::told::{Told, answers_of};
use super::what_if::{ChangedAnswer, Together, Turning, WhatIf};
use crate::bowler::{Bowler, Shape as Written};
use crate::rules::{Interval, UNKNOWN};
use crate::search::{self, Decision, Shape};

/// Boxes and points looked at for one answer; more than any answer has steps.
const FOR_ONE: usize = 1_000_000;
/// Boxes and points looked at for two answers together.
const FOR_TWO: usize = 2_000;
/// In how many places an answer that wasn't given is looked at beyond its step.
const LOOKS: i64 = 16;
/// How far away another word is, in thousandths: as far as a number that is half as much again. Own choice.
const A_WORD: i64 = 500;

impl Shop {
    /// The nearest step on each side of each answer that changes the pick, every step tried; where no single answer does, the
    /// nearest two.
    ///
    /// Only answers of the bowler, the balls owned and the fit card, and only those that a profile could tell together. Of an answer that
    /// isn't known, the steps around the values that keep the pick.
    ///
    /// # Errors
    /// Those of [`Shop::advise`].
    pub fn what_if(&self, bowler: &Bowler) -> Result<WhatIf, Trouble> {
        let now = self.pick(bowler)?;
        let chain = Chain::new(self)?;
        let settled = settled(bowler);
        let names = answers_of(&chain);
        let told = Told::new(self, &chain, bowler, &names);
        let phrases = Phrases::builtin()?;
        let mut found = Found::new(self, bowler, &told, phrases, &now);
        for answer in 0..told.answers() {
            found.turns_of(answer);
        }
        found.turns.sort_by_key(|turn| {
            let only_grip = turn.changed == ["grip"];
            (!turn.told, only_grip, turn.distance)
        });
        let together = match found.turns.is_empty() {
            true => found.pair(),
            false => Together::NotAsked,
        };
        let turning = |name: &&str| found.turns.iter().any(|turn| turn.step.fact == *name);
        let names = told.answers_told().iter().map(|answer| answer.name());
        let steady = names
            .filter(|name| !turning(name) && !found.unfinished.contains(name))
            .collect();
        Ok(WhatIf {
            bowler: bowler.name().unwrap_or_default().to_owned(),
            digest: self.digest().to_owned(),
            settled,
            steady,
            turns: found.turns,
            unfinished: found.unfinished,
            together,
            now,
        })
    }
}

/// What the profile has settled, so that no answer changes it.
fn settled(bowler: &Bowler) -> Vec<&'static str> {
    let ball = bowler.settled_ball();
    let weighed = ball.is_some_and(|ball| ball.contains('@'));
    let all = [
        ("weight", weighed || bowler.tells("settled.weight")),
        ("grip", bowler.tells("settled.grip")),
        ("ball", ball.is_some()),
    ];
    let settled = all.into_iter().filter(|(_, is)| *is);
    settled.map(|(stage, _)| stage).collect()
}

/// A search under way.
struct Found<'a, 'c, 's> {
    shop: &'s Shop,
    bowler: &'a Bowler,
    told: &'a Told<'c, 's>,
    phrases: &'a Phrases,
    now: &'a Picked,
    start: Vec<i64>,
    first: Choice,
    turns: Vec<Turning>,
    unfinished: Vec<&'static str>,
}

impl<'a, 'c, 's> Found<'a, 'c, 's> {
    fn new(
        shop: &'s Shop,
        bowler: &'a Bowler,
        told: &'a Told<'c, 's>,
        phrases: &'a Phrases,
        now: &'a Picked,
    ) -> Self {
        Found {
            shop,
            bowler,
            told,
            phrases,
            now,
            first: told.pick(&told.start()),
            start: told.start(),
            turns: Vec::new(),
            unfinished: Vec::new(),
        }
    }

    fn at(&self, answer: usize, value: i64) -> Vec<i64> {
        let mut point = self.start.clone();
        point[answer] = value;
        point
    }

    fn turns_of(&mut self, answer: usize) {
        let range = self.told.range(answer);
        let found = search::nearest(self.told, &self.start, answer, range, FOR_ONE);
        if !found.complete {
            let name = self.told.answers_told()[answer].name();
            self.unfinished.push(name);
        }
        for turn in found.turns {
            let from = Some(turn.from).filter(|from| *from != UNKNOWN);
            self.push(answer, from, turn.to, &turn.pick);
        }
    }

    fn push(&mut self, answer: usize, from: Option<i64>, to: i64, pick: &Choice) {
        let picked = Picked::named(self.shop, pick);
        let told = self.bowler.tells(self.told.answers_told()[answer].name());
        let mut step = self.changed(answer, from, to);
        if from.is_some_and(|from| self.returns(answer, to, to > from, told)) {
            step.phrase = self.just(answer, &step.shown);
        }
        let number = self.told.shape(answer) == Shape::Steps;
        // A number that nobody gave is asked for; a word says itself what it is about.
        if let (false, true, Some(phrase)) = (told, number, self.phrases.of(step.fact)) {
            step.phrase = match from {
                Some(_) if step.phrase.newcomer.starts_with("If ") => step.phrase,
                Some(_) => step.phrase.after(phrase.asked(), ": "),
                None => Texts::alike(format!(", such as {}", step.shown)).after(phrase.asked(), ""),
            };
        }
        let point = self.at(answer, to);
        let full = self.told.in_full(&point);
        let also = (0..point.len()).filter(|&other| full[other] != point[other]);
        let also = also
            .map(|other| self.changed_to(other, full[other]))
            .collect();
        let turning = Turning {
            from: from.map(|from| (from, self.told.print(answer, from))),
            also,
            told,
            distance: self.distance(answer, to),
            changed: self.now.changed(&picked),
            picked,
            step,
        };
        self.turns.push(turning);
    }

    /// Whether the pick is seen to come back farther on: then "or more" would promise too much, and just the step is told. An answer that
    /// wasn't given is looked at in more places, as its step may lie at the far side of a gap.
    fn returns(&self, answer: usize, to: i64, upward: bool, told: bool) -> bool {
        let Written::Number {
            lowest,
            highest,
            usual,
            ..
        } = self.told.answers_told()[answer].shape()
        else {
            return false;
        };
        let (end, usual) = if upward {
            (highest, usual.1)
        } else {
            (lowest, usual.0)
        };
        let places = if told { 1 } else { LOOKS };
        let between = (1..=places).map(|part| to + (end - to) * part / places);
        between.chain([usual]).any(|value| {
            let beyond = if upward { value > to } else { value < to };
            let point = self.at(answer, value);
            beyond && self.told.is_possible(&point) && self.told.pick(&point) == self.first
        })
    }

    fn known(&self, answer: usize) -> Option<i64> {
        Some(self.start[answer]).filter(|value| *value != UNKNOWN)
    }

    fn changed(&self, answer: usize, from: Option<i64>, to: i64) -> ChangedAnswer {
        let fact = self.told.answers_told()[answer].name();
        let shown = self.told.print(answer, to);
        let last = from.map(|from| self.told.print(answer, from));
        let place = |value: i64| usize::try_from(value).unwrap_or(usize::MAX);
        let step = match (self.told.shape(answer), from, &last) {
            (Shape::Words, ..) => Step::Word(place(to)),
            (Shape::Bits, Some(from), _) if from & !to != 0 => {
                Step::Lacks(place(i64::from((from & !to).trailing_zeros())))
            }
            (Shape::Bits, from, _) => {
                let new = to & !from.unwrap_or(0);
                Step::Has(place(i64::from(new.trailing_zeros())))
            }
            (Shape::Steps, Some(from), Some(last)) if to < from => Step::Below(last, &shown),
            (Shape::Steps, ..) => Step::From(&shown),
        };
        let phrase = self.phrases.of(fact).and_then(|phrase| phrase.step(step));
        let phrase = phrase.unwrap_or_else(|| self.just(answer, &shown));
        ChangedAnswer {
            fact,
            to,
            phrase,
            shown,
        }
    }

    /// The answer with this one value, nothing said of those beside it.
    fn just(&self, answer: usize, shown: &str) -> Texts {
        let answer = self.told.answers_told()[answer];
        let phrase = self.phrases.of(answer.name());
        let called = phrase.map_or(answer.called(), Phrase::called);
        Texts::alike(format!("If {called} were {shown}"))
    }

    /// One of several answers that change together.
    fn changed_to(&self, answer: usize, to: i64) -> ChangedAnswer {
        let changed = self.changed(answer, self.known(answer), to);
        match self.told.shape(answer) {
            Shape::Steps => ChangedAnswer {
                phrase: self.just(answer, &changed.shown),
                ..changed
            },
            _ => changed,
        }
    }

    /// How far a step leads, in thousandths of where the bowler stands.
    fn distance(&self, answer: usize, to: i64) -> i64 {
        let start = self.start[answer];
        if self.told.shape(answer) != Shape::Steps || start == UNKNOWN {
            return A_WORD;
        }
        let range = self.told.range(answer);
        let whole = match start.abs() {
            0 => range.highest() - range.lowest(),
            size => size,
        };
        (to - start).abs() * 1000 / whole.max(1)
    }

    fn pair(&self) -> Together {
        let area: Vec<Interval> = (0..self.told.answers())
            .map(|answer| match self.start[answer] {
                UNKNOWN => Interval::NOT_KNOWN,
                _ => self.told.range(answer),
            })
            .collect();
        match search::pair(self.told, &self.start, &area, FOR_TWO) {
            (None, true) => Together::Nothing,
            (None, false) => Together::NotSettled(FOR_TWO),
            (Some(pair), certain) => Together::Nearest {
                steps: pair.steps.map(|(answer, to)| self.changed_to(answer, to)),
                picked: Picked::named(self.shop, &pair.pick),
                certain,
            },
        }
    }
}
