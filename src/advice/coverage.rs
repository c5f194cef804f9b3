//! What a set of cases tries of the rules, and what it never does.
//!
//! A rule has *fired* where it held and did something: for one candidate of a choice at least, or for the measure, the list of
//! steps or the person. Limits and rounding belong to their measure and fire with it.
//!
//! A test *decides* where the rule hung on it: had this one test come out the other way, the rule would have too. So all other
//! tests were met, and no other alternative stood in for it. What must be seen of each test:
//! - a number: for each boundary within the fact's range one value on each side, up to the next boundary, where it decides;
//! - `known`, or a test that every value meets: known and not known, where it decides;
//! - words, flags and sets: met where it decides, and not met anywhere.
//!
//! A subject that a consultation leaves out isn't asked: nothing fires, and no number counts. But a word that isn't met there, or
//! a fact that isn't known, counts as seen: the rule then only guards a second time what the consultation guards already.

use std::sync::{Arc, Mutex};

use super::case::Case;
use super::outcome::Trouble;
use super::shop::Shop;
use crate::document::{Fault, Faults};
use crate::rules::{Parting, RuleId, RuleSet, Side, Sides, UNKNOWN, World};

/// How far a set of cases tries each rule.
#[derive(Clone, Debug)]
pub struct Coverage {
    rules: RuleSet,
    tried: Vec<Tried>,
    cases: usize,
}

/// How far one rule was tried.
#[derive(Clone, Debug)]
struct Tried {
    fired: bool,
    partings: Vec<(Parting, [bool; 2])>,
}

impl Tried {
    fn is_whole(&self) -> bool {
        self.fired && self.partings.iter().all(|(_, sides)| *sides == [true; 2])
    }
}

/// Something that no case tries.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Gap {
    /// The rule.
    pub rule: String,
    /// The file it stands in.
    pub file: String,
    /// What is missing.
    pub missing: Missing,
}

/// What no case tries of a rule.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Missing {
    /// It never held with any effect.
    Fired,
    /// One side of what a test tells apart.
    Side {
        /// The fact that the test looks at.
        fact: &'static str,
        /// What is told apart, in the fact's notation: the value that the upper stretch begins with, `known`, or the words of the test.
        boundary: String,
        /// The side that is missing, such as `below 12 lb`, `not known`, `not met`.
        side: String,
        /// A value to try, if there is one to name.
        hint: Option<String>,
    },
}

/// How much there is to try, and how much was.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Totals {
    /// Consultations.
    pub cases: usize,
    /// Rules in the set.
    pub rules: usize,
    /// Rules that fired.
    pub fired: usize,
    /// Sides of everything that tests tell apart.
    pub sides: usize,
    /// Sides that were tried.
    pub tried: usize,
}

impl Coverage {
    /// Nothing is tried yet of these rules.
    #[must_use]
    pub fn of(rules: &RuleSet) -> Coverage {
        let each = rules.rules().iter();
        let tried = each.filter_map(|rule| {
            let (id, _) = rules.find(rule.id())?;
            let partings = rules.partings(id).into_iter();
            Some(Tried {
                fired: false,
                partings: partings.map(|parting| (parting, [false; 2])).collect(),
            })
        });
        Coverage {
            tried: tried.collect(),
            rules: rules.clone(),
            cases: 0,
        }
    }

    /// Notes how the rules of a subject stand in a world. `rules` may have others laid over: what those changed isn't noted.
    /// `asked` is false where the consultation leaves the subject out, as it does the pin's place from a PAP that isn't known.
    pub fn observe(&mut self, rules: &RuleSet, subject: &str, world: &dyn World, asked: bool) {
        let place = |id: RuleId| {
            let rule = rules.rule(id);
            let (own, stated) = self.rules.find(rule.id())?;
            stated.acts_like(rule).then_some(own.place())
        };
        let wanted = |id| {
            let tried = place(id).and_then(|place| self.tried.get(place));
            tried.is_some_and(|tried| !tried.is_whole())
        };
        let mut noted: Vec<(usize, bool, Vec<Option<Side>>)> = Vec::new();
        rules.observe(subject, world, &wanted, &mut |observed| {
            let Some(place) = place(observed.rule) else {
                return;
            };
            let Some(tried) = self.tried.get(place) else {
                return;
            };
            let side = |(parting, _): &(Parting, [bool; 2])| {
                let seen = observed.tests.get(parting.test)?;
                let side = parting.side(seen.value, seen.met)?;
                let counts = match (asked, &parting.sides) {
                    (false, Sides::Stretches { .. }) => false,
                    (false, _) => !seen.met,
                    // Words that aren't met say nothing more beside others that are.
                    (true, Sides::Met) => seen.decides || !seen.met,
                    (true, _) => seen.decides,
                };
                counts.then_some(side)
            };
            let sides = tried.partings.iter().map(side).collect();
            noted.push((place, asked && observed.fires, sides));
        });
        for (place, fires, sides) in noted {
            let Some(tried) = self.tried.get_mut(place) else {
                continue;
            };
            tried.fired |= fires;
            for ((_, seen), side) in tried.partings.iter_mut().zip(sides) {
                match side {
                    Some(Side::First) => seen[0] = true,
                    Some(Side::Second) => seen[1] = true,
                    None => {}
                }
            }
        }
    }

    /// What was never tried, in the order of the rules' ids.
    #[must_use]
    pub fn gaps(&self) -> Vec<Gap> {
        let mut gaps = Vec::new();
        for (rule, tried) in self.rules.rules().iter().zip(&self.tried) {
            let mut add = |missing| {
                gaps.push(Gap {
                    rule: rule.id().to_owned(),
                    file: rule.file().to_owned(),
                    missing,
                });
            };
            if !tried.fired {
                add(Missing::Fired);
            }
            let Some((id, _)) = self.rules.find(rule.id()) else {
                continue;
            };
            for (parting, [first, second]) in &tried.partings {
                for (side, seen) in [(Side::First, first), (Side::Second, second)] {
                    if !seen {
                        add(self.missing(id, parting, side));
                    }
                }
            }
        }
        gaps
    }

    /// How much there is to try, and how much was.
    #[must_use]
    pub fn totals(&self) -> Totals {
        let sides = self.tried.iter().flat_map(|tried| &tried.partings);
        let seen = sides.clone().flat_map(|(_, seen)| seen);
        Totals {
            cases: self.cases,
            rules: self.tried.len(),
            fired: self.tried.iter().filter(|tried| tried.fired).count(),
            sides: 2 * sides.count(),
            tried: seen.filter(|seen| **seen).count(),
        }
    }

    fn missing(&self, rule: RuleId, parting: &Parting, side: Side) -> Missing {
        let vocabulary = self.rules.vocabulary();
        let print = |value| vocabulary.print(parting.fact, value);
        let words = |side| self.rules.words_of(rule, parting, side).join(", ");
        let (boundary, said) = match (&parting.sides, side) {
            (Sides::Stretches { from, .. }, Side::First) => {
                (print(from.0), format!("below {}", print(from.0)))
            }
            (Sides::Stretches { from, .. }, Side::Second) => {
                let end = match from.0 == from.1 {
                    true => format!("exactly {}", print(from.0)),
                    false => format!("from {} on", print(from.0)),
                };
                (print(from.0), end)
            }
            (Sides::Known, Side::First) => ("known".to_owned(), print(UNKNOWN)),
            (Sides::Known, Side::Second) => ("known".to_owned(), "known".to_owned()),
            (Sides::Met, Side::First) => (words(Side::Second), "not met".to_owned()),
            (Sides::Met, Side::Second) => (words(Side::Second), "met".to_owned()),
        };
        let hint = match parting.sides {
            Sides::Met => Some(words(side)).filter(|words| !words.is_empty()),
            _ => parting.nearest(side).map(print),
        };
        Missing::Side {
            fact: vocabulary.fact(parting.fact).name,
            boundary,
            side: said,
            hint,
        }
    }
}

/// Where a shop's consultations are noted. Copies share what is noted.
#[derive(Clone, Debug)]
pub(super) struct Watch(Arc<Mutex<Coverage>>);

impl Watch {
    /// Notes how the rules of a subject stand.
    pub(super) fn observe(&self, rules: &RuleSet, subject: &str, world: &dyn World, asked: bool) {
        if let Ok(mut coverage) = self.0.lock() {
            coverage.observe(rules, subject, world, asked);
        }
    }
}

impl Shop {
    /// How far these cases try this shop's rules.
    ///
    /// # Errors
    /// Everything that keeps a case from being answered, each with the name of its file.
    pub fn coverage(&self, cases: &[Case]) -> Result<Coverage, Faults> {
        let watch = Watch(Arc::new(Mutex::new(Coverage::of(self.rules()))));
        let watched = self.with(self.rules().clone(), self.catalog().clone());
        let watched = watched.watched(&watch);
        let mut faults = Faults::new();
        for case in cases {
            match case.ask(&watched) {
                Ok(_) => {}
                Err(Trouble::Files(found)) => faults.merge(found),
                Err(trouble) => {
                    let message = format!("{}: {trouble}", case.file());
                    faults.push(Fault::new("case", message));
                }
            }
        }
        faults.into_result()?;
        let noted = watch.0.lock().map(|coverage| coverage.clone());
        let mut coverage = noted.unwrap_or_else(|_| Coverage::of(self.rules()));
        coverage.cases = cases.len();
        Ok(coverage)
    }
}
