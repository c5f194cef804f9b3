//! Texts that a newcomer may not understand.

use std::collections::BTreeSet;

use super::super::shop::Shop;
use crate::rules::TextPlace;
use crate::search::{Finding, FindingKind, Findings};

/// Words that are neither plain nor explained, and sentences that are too long; each rule without any counts as proved.
pub(super) fn texts(shop: &Shop, findings: &mut Findings) {
    let rules = shop.rules();
    let mut worded = BTreeSet::new();
    for wording in rules.wording() {
        let rule = match &wording.place {
            TextPlace::Because(id) | TextPlace::Then(id) => rules.find(id).map(|(id, _)| id),
            _ => None,
        };
        let says = match rule {
            Some(_) => format!("{}: {}", wording.misworded, wording.sentence),
            None => wording.to_string(),
        };
        worded.extend(rule);
        findings.found(Finding::Wording { rule, says });
    }
    for _ in worded.len()..rules.rules().len() {
        findings.absent(FindingKind::Wording);
    }
}
