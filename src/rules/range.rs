//! What a measure may come to at all: its limits, its step, and the plain numbers it may start from.

use super::condition::{Allowed, LOWEST};
use super::rule::{Amount, Effect, Rule};
use super::set::RuleSet;
use super::vocabulary::FactId;

/// The limits and the step of a measure, in steps of its notation.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Range {
    /// The lowest value, if there is a lowest.
    pub lowest: Option<i64>,
    /// The highest value, if there is a highest.
    pub highest: Option<i64>,
    /// Values are multiples of this.
    pub step: Option<i64>,
}

impl RuleSet {
    /// The limits and the step of a measure; nothing of one that doesn't exist.
    #[must_use]
    pub fn range(&self, measure: &str) -> Range {
        let mut range = Range::default();
        for (_, rule) in self.rules_of(measure) {
            match rule.effect {
                Effect::Limit { lowest, highest } => {
                    (range.lowest, range.highest) = (lowest, highest);
                }
                Effect::Rounding(step) => range.step = Some(step),
                _ => {}
            }
        }
        range
    }

    /// Every plain number that a rule starts the measure from, each once, lowest first: stock sizes, for example.
    #[must_use]
    pub fn starts(&self, measure: &str) -> Vec<i64> {
        let mut starts: Vec<i64> = self
            .rules_of(measure)
            .filter(|(_, rule)| rule.disputes.is_none())
            .filter_map(|(_, rule)| match rule.effect {
                Effect::Start(Amount::Number(number)) => Some(number),
                _ => None,
            })
            .collect();
        starts.sort_unstable();
        starts.dedup();
        starts
    }

    /// The facts that a choice looks at: those of the conditions of rules that count, and those that their points run along.
    #[must_use]
    pub fn looks_at(&self, subject: &str) -> Vec<FactId> {
        let counts = |rule: &Rule| {
            rule.disputes.is_none() && matches!(rule.effect, Effect::Points(_) | Effect::RuleOut)
        };
        let rules = self.rules_of(subject).map(|(_, rule)| rule);
        let mut facts = Vec::new();
        for rule in rules.filter(|rule| counts(rule)) {
            facts.extend(rule.when.all_tests().into_iter().map(|test| test.fact));
            facts.extend(rule.effect.amount().and_then(Amount::fact));
        }
        facts.sort_unstable();
        facts.dedup();
        facts
    }

    /// The values of a fact from which on some rule of the subject says something else: the first value of each stretch that its
    /// conditions tell apart, and the knots of its curves. Lowest first; none for a set.
    #[must_use]
    pub fn cuts(&self, subject: &str, fact: FactId) -> Vec<i64> {
        let mut cuts = Vec::new();
        for (_, rule) in self.rules_of(subject) {
            for test in rule.when.all_tests() {
                if let (true, Allowed::Ranges(ranges)) = (test.fact == fact, &test.allowed) {
                    cuts.extend(ranges.iter().map(|&(low, _)| low));
                    cuts.extend(ranges.iter().filter_map(|&(_, high)| high.checked_add(1)));
                }
            }
            if let Some(Amount::Along(curve)) = rule.effect.amount()
                && curve.along() == fact
            {
                cuts.extend(curve.knots().iter().map(|&(at, _)| at));
            }
        }
        cuts.retain(|&cut| cut > LOWEST);
        cuts.sort_unstable();
        cuts.dedup();
        cuts
    }
}
