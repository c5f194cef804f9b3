//! Watching rules at work: for each rule and each candidate, what its tests see and which of them decide.

use std::borrow::Cow;
use std::collections::BTreeMap;

use super::condition::Condition;
use super::rule::{Effect, Rule, RuleId};
use super::set::RuleSet;
use super::subject::SubjectKind;
use super::vocabulary::FactId;
use super::vocabulary::UNKNOWN;
use super::world::World;

/// A rule as it stood for one candidate, or for the one who asks.
#[derive(Clone, Copy, Debug)]
pub struct Observed<'o> {
    /// Which rule.
    pub rule: RuleId,
    /// Whether it held and did something: points that are not 0, a start that is known, a caution, a step.
    pub fires: bool,
    /// Its tests, outer ones first.
    pub tests: &'o [Seen],
}

/// What a test saw.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Seen {
    /// The value of its fact, or [`UNKNOWN`].
    pub value: i64,
    /// Whether the value meets it.
    pub met: bool,
    /// Whether the rule hung on it: had the test come out the other way, the rule would have too.
    pub decides: bool,
}

impl RuleSet {
    /// Tells how each rule of a subject stands for each candidate of the world; rules for which `wanted` says no are left out.
    pub fn observe(
        &self,
        subject: &str,
        world: &dyn World,
        wanted: &dyn Fn(RuleId) -> bool,
        tell: &mut dyn FnMut(&Observed<'_>),
    ) {
        let chooses = self
            .subject(subject)
            .is_some_and(|found| found.kind == SubjectKind::Choice);
        let candidates = if chooses { world.candidates() } else { 1 };
        let mut columns: BTreeMap<FactId, Cow<'_, [i64]>> = BTreeMap::new();
        for (id, rule) in self.rules_of(subject).filter(|(id, _)| wanted(*id)) {
            let tests = rule.when.all_tests();
            let amount = rule.effect.amount().and_then(|amount| amount.fact());
            for fact in tests.iter().map(|test| test.fact).chain(amount) {
                if !self.vocabulary.fact(fact).origin.is_scalar() {
                    columns.entry(fact).or_insert_with(|| world.column(fact));
                }
            }
            let mut seen = Vec::with_capacity(tests.len());
            let mut met = Vec::with_capacity(tests.len());
            for candidate in 0..candidates {
                let value = |fact: FactId| match columns.get(&fact) {
                    Some(column) => column.get(candidate).copied().unwrap_or(UNKNOWN),
                    None => world.scalar(fact),
                };
                met.clear();
                met.extend(tests.iter().map(|t| t.allowed.contains(value(t.fact))));
                let holds = stands(&rule.when, &met);
                seen.clear();
                for (place, test) in tests.iter().enumerate() {
                    let as_it_is = met[place];
                    met[place] = !as_it_is;
                    let decides = stands(&rule.when, &met) != holds;
                    met[place] = as_it_is;
                    seen.push(Seen {
                        value: value(test.fact),
                        met: as_it_is,
                        decides,
                    });
                }
                tell(&Observed {
                    rule: id,
                    fires: holds && does_something(rule, &value),
                    tests: &seen,
                });
            }
        }
    }
}

impl Rule {
    /// Whether it holds in the same situations and does the same as another; texts and sources don't matter.
    #[must_use]
    pub fn acts_like(&self, other: &Rule) -> bool {
        self.subject == other.subject
            && self.when == other.when
            && self.effect == other.effect
            && self.disputes == other.disputes
    }
}

/// Whether a condition holds, given whether each of its tests is met, outer ones first.
fn stands(condition: &Condition, met: &[bool]) -> bool {
    walk(condition, met, &mut 0)
}

fn walk(condition: &Condition, met: &[bool], next: &mut usize) -> bool {
    let mut holds = true;
    for _ in &condition.tests {
        holds &= met.get(*next).copied().unwrap_or(false);
        *next += 1;
    }
    let mut any = condition.any_of.is_empty();
    // Each alternative is walked, so that the count goes on rightly behind it.
    for one in &condition.any_of {
        any |= walk(one, met, next);
    }
    holds && any
}

fn does_something(rule: &Rule, value: &dyn Fn(FactId) -> i64) -> bool {
    match &rule.effect {
        Effect::Points(amount) | Effect::Add(amount) => {
            amount.at(value).is_some_and(|points| points != 0)
        }
        Effect::Start(amount) => amount.at(value).is_some(),
        Effect::RuleOut
        | Effect::Caution(_)
        | Effect::Limit { .. }
        | Effect::Rounding(_)
        | Effect::Step(_) => true,
    }
}
