//! The digest: a short name for exactly these rules.

use std::fmt::Write as _;

use sha2::{Digest as _, Sha256};

use super::condition::Condition;
use super::reason::{Audience, Texts};
use super::rule::{Amount, Effect};
use super::set::RuleSet;
use super::source::Source;
use super::vocabulary::{FactId, Vocabulary};

impl RuleSet {
    /// The first 16 hexadecimal digits of the SHA-256 of everything that the set says, however its files are ordered or
    /// laid out. It changes whenever an answer, a reason or a word of the set may change.
    #[must_use]
    pub fn digest(&self) -> String {
        let hash = Sha256::digest(self.canonical());
        hash.iter()
            .take(8)
            .map(|byte| format!("{byte:02x}"))
            .collect()
    }

    /// Everything the set says, a line each, facts by name. Strings are quoted, so that no two sets look alike.
    fn canonical(&self) -> String {
        let mut text = String::new();
        let facts = &*self.vocabulary;
        for subject in &self.subjects {
            text += &format!(
                "subject {:?} {:?} {:?}\n",
                subject.id, subject.kind, subject.meaning
            );
        }
        for rule in &self.rules {
            text += &format!("rule {:?} {:?}\n", rule.id, rule.subject);
            condition(&mut text, facts, &rule.when);
            text += &format!(" {}\n", effect(facts, &rule.effect));
            text += &format!(
                " {:?} {:?} {:?}\n",
                rule.disputes,
                rule.then(),
                rule.practice
            );
            text += &format!(" {}\n", texts(&rule.because));
            text += &format!(" {}\n", source(&rule.source));
            if rule.overlay {
                text += &format!(" {:?}\n", rule.file);
            }
        }
        for one in self.sources.values() {
            text += &format!("source {}\n", source(one));
        }
        for one in &self.assumptions {
            let name = facts.fact(one.fact).name;
            let (because, source) = (texts(&one.because), source(&one.source));
            text += &format!(
                "assume {name} {:?} {} {because} {source}\n",
                one.value, one.needed
            );
        }
        for word in &self.glossary {
            text += &format!("word {:?} {:?} {:?}\n", word.word, word.also, word.meaning);
        }
        text
    }
}

fn condition(text: &mut String, facts: &Vocabulary, condition_: &Condition) {
    for test in &condition_.tests {
        // Writing to a string cannot fail.
        let _ = writeln!(text, " {} {:?}", facts.fact(test.fact).name, test.allowed);
    }
    for one in &condition_.any_of {
        text.push_str(" (\n");
        condition(text, facts, one);
        text.push_str(" )\n");
    }
}

fn effect(facts: &Vocabulary, effect: &Effect) -> String {
    let name = |fact: FactId| facts.fact(fact).name;
    let amount = |amount: &Amount| match amount {
        Amount::Number(number) => number.to_string(),
        Amount::Along(curve) => format!("along {} {:?}", name(curve.along()), curve.knots()),
        Amount::Copy(fact) => format!("copy {}", name(*fact)),
    };
    match effect {
        Effect::Points(points) => format!("points {}", amount(points)),
        Effect::RuleOut => "rule out".to_owned(),
        Effect::Caution(severity) => format!("caution {severity:?}"),
        Effect::Start(start) => format!("start {}", amount(start)),
        Effect::Add(add) => format!("add {}", amount(add)),
        Effect::Limit { lowest, highest } => format!("limit {lowest:?} {highest:?}"),
        Effect::Rounding(step) => format!("round {step}"),
        Effect::Step(place) => format!("step {place}"),
    }
}

fn texts(texts: &Texts) -> String {
    Audience::KEYS
        .map(|(audience, _)| format!("{:?}", texts.written(audience)))
        .join(" ")
}

fn source(source: &Source) -> String {
    let Source {
        key,
        title,
        author,
        year,
        section,
        at,
        strength,
    } = source;
    format!("{key:?} {title:?} {author:?} {year:?} {section:?} {at:?} {strength}")
}
