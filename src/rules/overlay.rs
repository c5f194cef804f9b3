//! Laying a shop's own files over a set of rules.

use super::read::{Reading, parts::Parts, parts::Reference, read};
use super::rule::Rule;
use super::set::RuleSet;
use crate::document::{Document, Faults, Reader};

impl RuleSet {
    /// The same set with these documents laid over it; this set stays as it is, whatever faults they have.
    ///
    /// They may hold all that rule files hold, and besides:
    /// - `override: true` on a rule, which takes the place of the rule with the same id;
    /// - `follow: [ids]`: a rule that disputes another takes its place, and the other is shown as disputing;
    /// - `switch_off: [ids]`: those rules are gone.
    ///
    /// An assumption about the same fact and a glossary entry for the same word replace the earlier ones.
    ///
    /// # Errors
    /// All faults of all documents.
    pub fn overlay(&self, documents: &[Document]) -> Result<RuleSet, Faults> {
        read(&self.vocabulary, Some(self), documents)
    }

    /// Does what an overlay file says of rules by their ids; rules that there are not were faults before.
    pub(super) fn apply_overlay(&mut self, parts: &Parts<'_>) {
        for reference in &parts.follow {
            self.follow(reference.id);
        }
        for reference in &parts.switch_off {
            self.rules.retain(|rule| rule.id != reference.id);
        }
    }

    /// Lets a disputing rule change places with the one it disputes.
    fn follow(&mut self, id: &str) {
        let Some(disputed) = self.find(id).and_then(|(_, rule)| rule.disputes.clone()) else {
            return;
        };
        let change = |rule: &mut Rule| {
            if rule.id == id {
                rule.disputes = None;
            } else if rule.id == disputed || rule.disputes.as_ref() == Some(&disputed) {
                rule.disputes = Some(id.to_owned());
            }
        };
        self.rules.iter_mut().for_each(change);
    }
}

impl<'d> Reading<'d> {
    /// Checks the rules that `switch_off` and `follow` name.
    pub(super) fn check_overlay(&self, reader: &mut Reader<'d>, parts: &Parts<'d>) {
        if !self.over {
            return;
        }
        for &Reference { node, id } in &parts.switch_off {
            self.rule_named(reader, node, id);
        }
        for &Reference { node, id } in &parts.follow {
            if let Some(known) = self.rule_named(reader, node, id)
                && !known.disputes
            {
                let message = format!("`{id}` disputes no rule, so there is nothing to change");
                reader.fault(node, "disputes-nothing", message);
            }
        }
    }
}
