//! The fit: each measure in turn by the rules, later ones seeing earlier ones; blank where nothing is known.

use super::consultation::Consultation;
use super::explain::{self, Scale};
use super::spec::{DrillSpec, SpecNumber};
use crate::notation::Notation;
use crate::rules::{Measured, UNKNOWN};
use crate::vocabulary::{Alone, Interval, Measure, NoStart, bench, measures};

/// What a number says where no hand was measured at all.
const NOTHING_MEASURED: &str = "Measure the hand.";

impl Consultation<'_> {
    /// What the bench is set to; no hand is needed for that.
    pub(super) fn bench(&mut self) {
        let rules = self.shop.rules();
        for fact in bench() {
            self.shop.observe(fact.name, &Alone(&self.situation));
            let value = rules.measure(fact.name, &Alone(&self.situation)).value();
            self.situation.set(
                fact.name,
                value.map_or(Interval::NOT_KNOWN, Interval::point),
            );
        }
    }

    /// All numbers of the drill spec, in the order of work.
    pub(super) fn spec(&mut self) -> DrillSpec {
        let rules = self.shop.rules();
        let left = self.situation.is_word("bowler.hand", "left");
        let mut spec = DrillSpec {
            copied_from_card: self.situation.is("card.fits")
                && self.situation.get("card.middle_bore").is_known(),
            ..DrillSpec::default()
        };
        let a_hand = self.situation.has_a_hand();
        for Measure {
            id,
            fact,
            ask,
            no_start,
            only,
        } in measures()
        {
            if !only
                .iter()
                .all(|(fact, word)| self.situation.is_word(fact, word))
            {
                self.shop.observe_left_out(id, &Alone(&self.situation));
                continue;
            }
            let Some(subject) = rules.subject(id) else {
                continue;
            };
            let mut measured = rules.measure(id, &Alone(&self.situation));
            if a_hand {
                self.shop.observe(id, &Alone(&self.situation));
            } else {
                self.shop.observe_left_out(id, &Alone(&self.situation));
                // Not even a shop's own rule makes up a hand.
                measured = Measured::default();
            }
            let none = match no_start {
                NoStart::Missing => false,
                NoStart::NoneIn(fact, word) => self.situation.is_word(fact, word),
                NoStart::NoneUnless(flag) => !self.situation.is(flag),
            };
            if none && measured.value().is_none() {
                continue;
            }
            let value = measured.value().unwrap_or(UNKNOWN);
            self.situation.set(fact.name, Interval::point(value));
            let notation = subject.notation().unwrap_or(Notation::Count);
            let mirrored = left && notation == Notation::LateralPitch;
            let mut number = self.number(id, subject.meaning(), notation, mirrored, &measured);
            if number.value.is_none() && number.blank.is_none() {
                let known = self.situation.is("hand.measured") || self.situation.is("card.fits");
                number.blank = Some(if known { ask } else { NOTHING_MEASURED }.to_owned());
            }
            spec.numbers.push(number);
        }
        spec.work = self.shop.steps("work", &self.situation);
        spec.handover = self.shop.steps("handover", &self.situation);
        spec
    }

    pub(super) fn number(
        &self,
        id: &str,
        meaning: &str,
        notation: Notation,
        mirrored: bool,
        measured: &Measured,
    ) -> SpecNumber {
        let rules = self.shop.rules();
        let turn = if mirrored { -1 } else { 1 };
        let value = measured.value().map(|v| v * turn);
        let scale = Scale::Measure { notation, mirrored };
        let blank = match (value, measured.problem()) {
            (Some(_), _) => None,
            (None, Some(problem)) if problem.starts_with("more than one") => {
                Some(format!("Decide by hand: {problem}."))
            }
            (None, _) => None,
        };
        SpecNumber {
            name: id.to_owned(),
            meaning: meaning.to_owned(),
            value,
            unit: notation.step(),
            shop: value.map(|v| notation.write(v)).unwrap_or_default(),
            blank,
            lines: measured
                .lines()
                .iter()
                .map(|line| explain::reason(rules, line, scale))
                .collect(),
            cautions: measured
                .cautions()
                .iter()
                .map(|line| explain::caution(rules, line, id))
                .collect(),
        }
    }
}
