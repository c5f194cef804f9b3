//! What if: the nearest step of each answer that changes weight, grip or ball.

use super::chain::{Chain, Choice};
use super::outcome::Trouble;
use super::phrases::{Phrase, Phrases, Step};
use super::picked::Picked;
use super::reason::Texts;
use super::shop::Shop;
use super::stretch::{Stretch, beyond, rounded_in, stretches};
use super::told::{Told, answers_of};
use super::what_if::{ChangedAnswer, Together, Turning, WhatIf};
use crate::bowler::{Bowler, Shape as Written};
use crate::rules::{Interval, UNKNOWN};
use crate::search::{self, Decision, Shape};

/// Boxes and points looked at for one answer; more than any answer has steps.
const FOR_ONE: usize = 1_000_000;
/// Boxes and points looked at for two answers together.
const FOR_TWO: usize = 2_000;
/// The most stretches looked for of a number that isn't known.
const STRETCHES: usize = 40;
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
        if self.told.shape(answer) == Shape::Steps && self.start[answer] == UNKNOWN {
            return self.stretches_of(answer);
        }
        let range = self.told.range(answer);
        let found = search::nearest(self.told, &self.start, answer, range, FOR_ONE);
        if !found.complete {
            let name = self.told.answers_told()[answer].name();
            self.unfinished.push(name);
        }
        for turn in found.turns {
            let from = Some(turn.from).filter(|from| *from != UNKNOWN);
            let step = self.changed(answer, from, turn.to);
            let point = self.at(answer, turn.to);
            let stretch = match self.told.shape(answer) {
                Shape::Steps => beyond(self.told, &point, answer, turn.to > turn.from),
                Shape::Words | Shape::Bits => None,
            };
            self.push(answer, (from, step), stretch, &turn.pick);
        }
    }

    /// Every stretch of a number that isn't known which has another pick, the most ordinary first.
    fn stretches_of(&mut self, answer: usize) {
        let (found, complete) = stretches(self.told, &self.start, answer, STRETCHES);
        if !complete {
            let name = self.told.answers_told()[answer].name();
            self.unfinished.push(name);
        }
        let mut found: Vec<_> = found
            .into_iter()
            .filter(|(_, pick)| *pick != self.first)
            .collect();
        let near = self.nearest_weight(answer);
        let pounds_off = |pick: &Choice| {
            let off = self.first.weight.zip(pick.weight);
            off.map_or(i64::MAX, |(now, then)| (now - then).abs())
        };
        found.sort_by_key(|(stretch, pick)| match near {
            Some(weight) => (
                (self.nearest_said(answer, stretch, weight) - weight).abs(),
                0,
            ),
            None => (pounds_off(pick), -self.usual_width(answer, stretch)),
        });
        for (stretch, pick) in found {
            let to = match near {
                Some(weight) => self.nearest_said(answer, &stretch, weight),
                None => stretch.lowest.0,
            };
            let step = self.changed(answer, None, to);
            self.push(answer, (None, step), Some(stretch), &pick);
        }
    }

    /// For what is a ball's weight, the weight picked now.
    fn nearest_weight(&self, answer: usize) -> Option<i64> {
        let phrase = self.phrases.of(self.told.answers_told()[answer].name());
        let of_a_ball = phrase.is_some_and(Phrase::is_of_a_ball);
        self.first.weight.filter(|_| of_a_ball)
    }

    /// The value of a stretch nearest to a weight; one that people count in, if there is one.
    fn nearest_said(&self, answer: usize, stretch: &Stretch, weight: i64) -> i64 {
        let rounded = stretch.rounded(self.practical_step(answer));
        let (low, high) = rounded.unwrap_or((stretch.lowest.0, stretch.highest.0));
        weight.clamp(low, high)
    }

    /// How much of what needs no second question lies in a stretch.
    fn usual_width(&self, answer: usize, stretch: &Stretch) -> i64 {
        let Written::Number { usual, .. } = self.told.answers_told()[answer].shape() else {
            return 0;
        };
        stretch.highest.0.min(usual.1) - stretch.lowest.0.max(usual.0)
    }

    fn practical_step(&self, answer: usize) -> i64 {
        let phrase = self.phrases.of(self.told.answers_told()[answer].name());
        phrase.map_or(1, Phrase::practical_step)
    }

    fn push(
        &mut self,
        answer: usize,
        (from, mut step): (Option<i64>, ChangedAnswer),
        stretch: Option<Stretch>,
        pick: &Choice,
    ) {
        let picked = Picked::named(self.shop, pick);
        let other_form = self.told.other_form(answer);
        let tells = |place: usize| self.bowler.tells(self.told.answers_told()[place].name());
        let told = tells(answer) || other_form.is_some_and(tells);
        let mut practical = true;
        if let Some(stretch) = &stretch {
            (step.phrase, practical) = self.phrase_of(answer, stretch, step.to);
        }
        let (to, point) = (step.to, self.at(answer, step.to));
        let full = self.told.in_full(&point);
        let also = (0..point.len()).filter(|&other| full[other] != point[other]);
        let (gone, also): (Vec<usize>, Vec<usize>) =
            also.partition(|&other| full[other] == UNKNOWN);
        let also = also.into_iter();
        let also = also
            .map(|other| self.changed_to(other, full[other]))
            .collect();
        let name = |place: usize| self.told.answers_told()[place].name();
        let turning = Turning {
            from: from.map(|from| (from, self.told.print(answer, from))),
            stretch,
            practical,
            also,
            instead_of: gone.first().copied().map(name),
            told,
            distance: self.distance(answer, to),
            changed: self.now.changed(&picked),
            picked,
            step,
        };
        self.turns.push(turning);
    }

    /// How a stretch is said: just so to the fitter, and to customers by steps that people count in, if that can be done.
    fn phrase_of(&self, answer: usize, stretch: &Stretch, to: i64) -> (Texts, bool) {
        let print = |value: i64| self.told.print(answer, value);
        let Some(phrase) = self.phrases.of(self.told.answers_told()[answer].name()) else {
            return (self.just(answer, &print(to)), false);
        };
        let exact = stretch.said(phrase, 1, print);
        let exact = exact.unwrap_or_else(|| self.just(answer, &print(to)));
        let (step, is_known) = (phrase.practical_step(), self.known(answer).is_some());
        let rounded = match phrase.is_of_a_ball() && !is_known {
            true => stretch
                .rounded(step)
                .and_then(|_| phrase.step(Step::At(&print(to)))),
            false => stretch.said(phrase, step, print),
        };
        let practical = rounded.is_some();
        let for_customers = rounded.unwrap_or_else(|| exact.clone());
        let texts = Texts {
            fitter: exact.fitter,
            ..for_customers
        };
        // A number that nobody gave is asked for.
        match is_known || texts.newcomer.starts_with("If ") {
            true => (texts, practical),
            false => (texts.after(phrase.asked(), ": "), practical),
        }
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
            (Some(pair), certain) => {
                let rounded = self.rounded_away(pair.steps, &pair.pick);
                let said = |place: usize| {
                    let (answer, to) = pair.steps[place];
                    let exact = self.changed_to(answer, to);
                    let other = rounded.map(|steps| self.changed_to(answer, steps[place].1));
                    let customers = other.unwrap_or_else(|| exact.clone()).phrase;
                    let fitter = exact.phrase.fitter;
                    ChangedAnswer {
                        phrase: Texts {
                            fitter,
                            ..customers
                        },
                        ..exact
                    }
                };
                Together::Nearest {
                    steps: [said(0), said(1)],
                    picked: Picked::named(self.shop, &pair.pick),
                    certain,
                    practical: rounded.is_some(),
                }
            }
        }
    }

    /// The same two steps a little farther from the start, in numbers that people count in, if the pick is the same there.
    fn rounded_away(&self, steps: [(usize, i64); 2], pick: &Choice) -> Option<[(usize, i64); 2]> {
        let rounded = steps.map(|(answer, to)| {
            if self.told.shape(answer) != Shape::Steps {
                return Some((answer, to));
            }
            let (range, step) = (self.told.range(answer), self.practical_step(answer));
            let (low, high) = match to > self.start[answer] {
                true => rounded_in((to, range.highest()), step)?,
                false => rounded_in((range.lowest(), to), step)?,
            };
            let value = if to > self.start[answer] { low } else { high };
            Some((answer, value))
        });
        let [Some(one), Some(other)] = rounded else {
            return None;
        };
        let mut point = self.start.clone();
        for (answer, value) in [one, other] {
            point[answer] = value;
        }
        let holds = self.told.is_possible(&point) && self.told.pick(&point) == *pick;
        holds.then_some([one, other])
    }
}
