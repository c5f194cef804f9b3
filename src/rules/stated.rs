//! What a rule states, part by part, in short words, so that two versions of a rule can be held side by side.

use super::condition::Condition;
use super::rule::{Amount, Effect, Rule, Severity};
use super::set::RuleSet;
use super::told;
use super::vocabulary::Vocabulary;
use crate::notation::Notation;

/// A part of a rule in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Part {
    /// Which part: `subject`, `when`, what the rule does (`points`, `rule_out`, `caution`, `start`, `add`, `limits`,
    /// `rounding`, `step`) or `disputes`.
    pub name: &'static str,
    /// What it says, such as `14 points`.
    pub said: String,
}

impl RuleSet {
    /// The parts of a rule of this set that make it act, each test of its condition a part; texts and sources are none.
    #[must_use]
    pub fn parts_of(&self, rule: &Rule) -> Vec<Part> {
        let subject = self.subject(&rule.subject);
        let notation = subject.and_then(|subject| subject.notation());
        let notation = notation.unwrap_or(Notation::Points);
        let mut parts = vec![Part {
            name: "subject",
            said: rule.subject.clone(),
        }];
        let tests = conditions(&self.vocabulary, &rule.when);
        let when = |said| Part { name: "when", said };
        parts.extend(tests.into_iter().map(when));
        let (name, said) = effect(&self.vocabulary, &rule.effect, notation);
        parts.push(Part { name, said });
        if let Some(other) = &rule.disputes {
            let said = other.clone();
            let name = "disputes";
            parts.push(Part { name, said });
        }
        parts
    }
}

/// Each test of a condition in words; its alternatives are one more.
fn conditions(vocabulary: &Vocabulary, of: &Condition) -> Vec<String> {
    let tests = of.tests.iter().map(|test| told::test(vocabulary, test));
    let mut parts: Vec<String> = tests.collect();
    if !of.any_of.is_empty() {
        let one = |one: &Condition| conditions(vocabulary, one).join(" and ");
        let any: Vec<String> = of.any_of.iter().map(one).collect();
        parts.push(format!("any of ({})", any.join("; ")));
    }
    parts
}

fn effect(vocabulary: &Vocabulary, effect: &Effect, notation: Notation) -> (&'static str, String) {
    let number = |amount| self::amount(vocabulary, amount, notation);
    match effect {
        Effect::Points(amount) => ("points", self::amount(vocabulary, amount, Notation::Points)),
        Effect::RuleOut => ("rule_out", "yes".to_owned()),
        Effect::Caution(Severity::Mild) => ("caution", "mild".to_owned()),
        Effect::Caution(Severity::Serious) => ("caution", "serious".to_owned()),
        Effect::Start(amount) => ("start", number(amount)),
        Effect::Add(amount) => ("add", number(amount)),
        Effect::Limit { lowest, highest } => {
            let end = |end: &Option<i64>| {
                let written = end.map(|steps| notation.write(steps));
                written.unwrap_or_else(|| "none".to_owned())
            };
            ("limits", format!("{} to {}", end(lowest), end(highest)))
        }
        Effect::Rounding(step) => ("rounding", notation.write(*step)),
        Effect::Step(place) => ("step", place.to_string()),
    }
}

fn amount(vocabulary: &Vocabulary, amount: &Amount, notation: Notation) -> String {
    match amount {
        Amount::Number(number) => notation.write(*number),
        Amount::Copy(fact) => vocabulary.fact(*fact).name.to_owned(),
        Amount::Along(curve) => {
            let knot = |&(at, value): &(i64, i64)| {
                let at = vocabulary.print(curve.along(), at);
                format!("{at}: {}", notation.write(value))
            };
            let shown: Vec<String> = curve.knots().iter().map(knot).collect();
            let name = vocabulary.fact(curve.along()).name;
            format!("along {name} {}", shown.join(", "))
        }
    }
}
