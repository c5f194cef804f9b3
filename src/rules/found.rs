//! What a line found, and what it would have wanted.

use super::condition::{Allowed, Intervals, Test};
use super::ledger::Line;
use super::set::RuleSet;
use super::vocabulary::{Fact, FactId, Kind, Vocabulary, listed, spaced};

/// A value that a rule found in a candidate, and what would not have met its condition.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Found {
    fact: FactId,
    value: i64,
    wanted: String,
}

impl Found {
    /// The fact.
    #[must_use]
    pub fn fact(&self) -> FactId {
        self.fact
    }

    /// Its value at the candidate.
    #[must_use]
    pub fn value(&self) -> i64 {
        self.value
    }

    /// The values that the condition lets go, in words: `at most $0.00`.
    #[must_use]
    pub fn wanted(&self) -> &str {
        &self.wanted
    }
}

impl RuleSet {
    /// What the rule of a line that rules out found in the candidate, and what it would have wanted instead. Only facts
    /// of candidates: the asker's answers are not for us to wish otherwise.
    #[must_use]
    pub fn found(&self, line: &Line) -> Vec<Found> {
        let rule = self.rule(line.rule);
        let mut found = Vec::new();
        for test in rule.when.all_tests() {
            let fact = self.vocabulary.fact(test.fact);
            let value = line.values().iter().find(|(shown, _)| *shown == test.fact);
            if let Some(&(_, value)) = value
                && !fact.origin.is_scalar()
                && test.allowed.contains(value)
            {
                let wanted = opposite(&self.vocabulary, fact, test);
                found.push(Found {
                    fact: test.fact,
                    value,
                    wanted,
                });
            }
        }
        found
    }
}

/// The values that a test does not let through, in words.
fn opposite(vocabulary: &Vocabulary, fact: &Fact, test: &Test) -> String {
    match (&test.allowed, fact.kind) {
        (Allowed::Bits { has, any, none }, _) => {
            let print = |mask: i64| vocabulary.print(test.fact, mask);
            let has = (*has != 0).then(|| format!("without {}", print(*has)));
            let any = (*any != 0).then(|| format!("none of {}", print(*any)));
            let none = (*none != 0).then(|| format!("with {}", print(*none)));
            listed(
                &[has, any, none].into_iter().flatten().collect::<Vec<_>>(),
                "or",
            )
        }
        (Allowed::Ranges(_), kind) => {
            let Some(intervals) = Intervals::from_allowed(&test.allowed) else {
                return String::new();
            };
            let outside = intervals.complement();
            match kind {
                Kind::Number {
                    lowest, highest, ..
                } => {
                    let within = outside.meet(&Intervals::between(lowest, highest));
                    let print = |value| vocabulary.print(test.fact, value);
                    let one = |(low, high): (i64, i64)| match (low == lowest, high == highest) {
                        _ if low == high => print(low),
                        (true, _) => format!("at most {}", print(high)),
                        (_, true) => format!("at least {}", print(low)),
                        _ => format!("{} to {}", print(low), print(high)),
                    };
                    listed(&within.iter().map(one).collect::<Vec<_>>(), "or")
                }
                _ => {
                    let words = fact.words().iter().enumerate();
                    let other = words.filter(|(index, _)| !test.allowed.contains(*index as i64));
                    listed(
                        &other.map(|(_, word)| spaced(word)).collect::<Vec<_>>(),
                        "or",
                    )
                }
            }
        }
    }
}
