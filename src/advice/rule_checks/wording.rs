//! Texts that leave the plain words, those of the interview among them.

use std::collections::BTreeSet;

use super::super::outcome::Trouble;
use super::super::shop::Shop;
use crate::rules::{Audience, RuleId};
use crate::search::{Finding, FindingKind, Findings};

/// Sentences that a customer may stumble over: of rules, assumptions and the glossary, and of the questions.
pub(super) fn sentences(shop: &Shop, findings: &mut Findings) -> Result<(), Trouble> {
    let rules = shop.rules();
    let mut faulty: BTreeSet<RuleId> = BTreeSet::new();
    for one in rules.wording() {
        let rule = one.place.rule().and_then(|id| rules.find(id));
        let rule = rule.map(|(id, _)| id);
        faulty.extend(rule);
        let place = match rule {
            Some(_) => String::new(),
            None => format!("{}: ", one.place),
        };
        findings.found(Finding::Wording {
            rule,
            says: format!("{place}{}: {}", one.misworded, one.sentence),
        });
    }
    for _ in faulty.len()..rules.rules().len() {
        findings.absent(FindingKind::Wording);
    }
    let interview = shop.interview()?;
    for question in interview.questions() {
        let labels = question.choices().iter().map(|choice| choice.label());
        let labels = labels.chain(question.none()).chain(question.other());
        let texts = [question.ask(), question.help()].into_iter().chain(labels);
        let found: Vec<_> = texts
            .chain(question.open())
            .flat_map(|text| rules.wording_of(text, Audience::Newcomer))
            .collect();
        if found.is_empty() {
            findings.absent(FindingKind::Wording);
        }
        for (misworded, sentence) in found {
            findings.found(Finding::Wording {
                rule: None,
                says: format!("question `{}`: {misworded}: {sentence}", question.id()),
            });
        }
    }
    Ok(())
}
