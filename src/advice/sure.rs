//! How sure: over which range of each measured answer the pick stays first, and whether it does over all that the bowler isn't sure of.

use super::chain::{Chain, Choice};
use super::how_sure::{HowSure, Measured, Over, SureRange};
use super::outcome::Trouble;
use super::phrases::{Phrase, Phrases, Step};
use super::picked::Picked;
use super::reason::Texts;
use super::shop::Shop;
use super::stretch::rounded_in;
use super::told::{Told, answers_of};
use crate::bowler::{Answer, Bowler, MEASURED, Shape as Written, answer};
use crate::rules::Interval;
use crate::search::{self, Decision, Outcome};

/// Boxes and points looked at for one range.
const FOR_ONE: usize = 100_000;
/// Boxes and points looked at for all measured answers together.
const FOR_ALL: usize = 1_000;

impl Shop {
    /// How far each measured answer could be otherwise with the same pick, and whether the pick stays over everything that the
    /// profile isn't sure of (`give_or_take`). Empty where nothing was measured.
    ///
    /// # Errors
    /// Those of [`Shop::advise`].
    pub fn how_sure(&self, bowler: &Bowler) -> Result<HowSure, Trouble> {
        let given = |name: &&&str| bowler.tells(name);
        let given: Vec<&'static str> = MEASURED.iter().filter(given).copied().collect();
        let mut sure = HowSure {
            ranges: Vec::new(),
            over: Over::NothingStated,
        };
        if given.is_empty() {
            return Ok(sure);
        }
        let chain = Chain::new(self)?;
        let matter = answers_of(&chain);
        let (names, steady): (Vec<&str>, Vec<&str>) =
            given.iter().partition(|name| matter.contains(*name));
        let phrases = Phrases::builtin()?;
        let told = Told::new(self, &chain, bowler, &names);
        let start = told.start();
        let measuring = Measuring {
            shop: self,
            bowler,
            told: &told,
            phrases,
            start: &start,
            first: told.pick(&start),
        };
        let places = 0..told.answers();
        sure.ranges = places.filter_map(|place| measuring.range(place)).collect();
        sure.over = measuring.over(&sure.ranges);
        let steady = steady.iter().filter_map(|name| measuring.whole(name));
        sure.ranges.extend(steady);
        if matches!(sure.over, Over::NothingStated) && sure.ranges.iter().any(SureRange::is_stated)
        {
            sure.over = Over::Stays;
        }
        Ok(sure)
    }
}

struct Measuring<'a, 'c, 's> {
    shop: &'s Shop,
    bowler: &'a Bowler,
    told: &'a Told<'c, 's>,
    phrases: &'a Phrases,
    start: &'a [i64],
    first: Choice,
}

impl Measuring<'_, '_, '_> {
    fn range(&self, place: usize) -> Option<SureRange> {
        let answer = self.told.answers_told()[place];
        let range = self.told.range(place);
        let found = search::stretch(self.told, self.start, place, range, FOR_ONE)?;
        let turns = (found.lowest.1, found.highest.1);
        self.sure(answer, (found.lowest.0, found.highest.0), turns)
    }

    /// An answer that no rule of the choices looks at.
    fn whole(&self, name: &str) -> Option<SureRange> {
        let answer = answer(name)?;
        let Written::Number {
            lowest, highest, ..
        } = answer.shape()
        else {
            return None;
        };
        self.sure(answer, (lowest, highest), (false, false))
    }

    fn sure(
        &self,
        answer: &'static Answer,
        (lowest, highest): (i64, i64),
        turns: (bool, bool),
    ) -> Option<SureRange> {
        let name = answer.name();
        let vocabulary = self.shop.vocabulary();
        let fact = vocabulary.id(name)?;
        let shown = |value: i64| (value, vocabulary.print(fact, value));
        let phrase = self.phrases.of(name);
        let value = self.bowler.answer(name)?;
        let step = phrase.map_or(1, Phrase::practical_step);
        let rounded = rounded_in((lowest, highest), step);
        // A range that has room on one side alone of what was given says less than it seems to.
        let around = rounded.filter(|&(low, high)| {
            let is_wide = low < high || !(turns.0 && turns.1);
            is_wide && low <= value && value <= high
        });
        let width = self.bowler.give_or_take(name);
        let width = width.map(|width| (width, vocabulary.print(fact, width)));
        Some(SureRange {
            fact: name,
            called: phrase.map_or(answer.called(), Phrase::called).to_owned(),
            value: shown(value),
            lowest: shown(lowest),
            highest: shown(highest),
            turns,
            practical: around.map(|(low, high)| [low, high].map(|end| shown(end).1)),
            give_or_take: width.map(|(width, text)| {
                // A difference has no direction.
                let plain = text.trim_end_matches(" up").to_owned();
                (width, plain)
            }),
        })
    }

    fn over(&self, ranges: &[SureRange]) -> Over {
        let answers = self.told.answers_told().iter().enumerate();
        let area: Vec<Interval> = answers
            .map(|(place, answer)| {
                let value = self.start[place];
                let width = self.bowler.give_or_take(answer.name()).unwrap_or(0);
                let range = self.told.range(place);
                let low = value.saturating_sub(width).max(range.lowest());
                let high = value.saturating_add(width).min(range.highest());
                Interval::between(low, high)
            })
            .collect();
        if area.iter().all(|range| range.is_point()) {
            return Over::NothingStated;
        }
        if let Some((place, value)) = self.alone(ranges, &area) {
            return self.breaks(&[(place, value)], &area);
        }
        match search::settle(self.told, &area, self.start, FOR_ALL) {
            Outcome::Proved { .. } => Over::Stays,
            Outcome::NotSettled { work } => Over::NotSettled(work),
            Outcome::Turns { at, .. } => self.breaks(&self.fewest(at), &area),
        }
    }

    /// The single answer that breaks the pick within what is given or taken, nearest by the part of that.
    fn alone(&self, ranges: &[SureRange], area: &[Interval]) -> Option<(usize, i64)> {
        let answers = self.told.answers_told();
        let steps = ranges.iter().flat_map(|range| {
            let place = answers.iter().position(|a| a.name() == range.fact);
            let below = range.turns.0.then_some(range.lowest.0 - 1);
            let above = range.turns.1.then_some(range.highest.0 + 1);
            let width = range.give_or_take.as_ref().map_or(1, |(width, _)| *width);
            let steps = [below, above].into_iter().flatten();
            steps.filter_map(move |value| Some((place?, value, width)))
        });
        steps
            .filter(|(place, value, _)| area[*place].holds(*value))
            .min_by_key(|(place, value, width)| {
                ((value - self.start[*place]).abs() * 1000 / width, *place)
            })
            .map(|(place, value, _)| (place, value))
    }

    /// The same turn with as few answers changed as will do.
    fn fewest(&self, mut at: Vec<i64>) -> Vec<(usize, i64)> {
        for place in 0..at.len() {
            let kept = std::mem::replace(&mut at[place], self.start[place]);
            if !self.told.is_possible(&at) || self.told.pick(&at) == self.first {
                at[place] = kept;
            }
        }
        let changed = at.iter().copied().enumerate();
        changed
            .filter(|(place, value)| *value != self.start[*place])
            .collect()
    }

    fn breaks(&self, steps: &[(usize, i64)], area: &[Interval]) -> Over {
        let point = self.at(steps);
        let pick = self.told.pick(&point);
        let exact = self.phrase(steps);
        let rounded = self.rounded(steps, area, &pick);
        let practical = rounded.is_some();
        let said = rounded.map_or_else(|| exact.clone(), |steps| self.phrase(&steps));
        let measured = |&(place, value): &(usize, i64)| Measured {
            fact: self.told.answers_told()[place].name(),
            value,
            shown: self.told.print(place, value),
        };
        Over::Breaks {
            steps: steps.iter().map(measured).collect(),
            phrase: Texts {
                fitter: exact.fitter,
                ..said
            },
            practical,
            picked: Picked::named(self.shop, &pick),
        }
    }

    fn at(&self, steps: &[(usize, i64)]) -> Vec<i64> {
        let mut point = self.start.to_vec();
        for &(place, value) in steps {
            point[place] = value;
        }
        point
    }

    /// The same steps in numbers that people count in, still within what is given or taken, if the pick is the same there.
    fn rounded(
        &self,
        steps: &[(usize, i64)],
        area: &[Interval],
        pick: &Choice,
    ) -> Option<Vec<(usize, i64)>> {
        let rounded = steps.iter().map(|&(place, value)| {
            let phrase = self.phrases.of(self.told.answers_told()[place].name());
            let step = phrase.map_or(1, Phrase::practical_step);
            let away = match value > self.start[place] {
                true => rounded_in((value, area[place].highest()), step)?.0,
                false => rounded_in((area[place].lowest(), value), step)?.1,
            };
            Some((place, away))
        });
        let rounded: Vec<(usize, i64)> = rounded.collect::<Option<_>>()?;
        let point = self.at(&rounded);
        let holds = self.told.is_possible(&point) && self.told.pick(&point) == *pick;
        holds.then_some(rounded)
    }

    /// `If you held 13 lb in comfort`: of the values beyond it nothing is said.
    fn phrase(&self, steps: &[(usize, i64)]) -> Texts {
        if let [(place, value)] = *steps {
            let shown = self.told.print(place, value);
            let phrase = self.phrases.of(self.told.answers_told()[place].name());
            if let Some(texts) = phrase.and_then(|phrase| phrase.step(Step::At(&shown))) {
                return texts;
            }
        }
        let all: Vec<String> = steps
            .iter()
            .map(|&(place, value)| self.just(place, value))
            .collect();
        Texts::alike(format!("If {}", all.join(" and ")))
    }

    fn just(&self, place: usize, value: i64) -> String {
        let answer = self.told.answers_told()[place];
        let phrase = self.phrases.of(answer.name());
        let called = phrase.map_or(answer.called(), Phrase::called);
        format!("{called} were {}", self.told.print(place, value))
    }
}
