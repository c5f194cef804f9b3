//! What there is to say against a shop's rules: the checks of [`search`](crate::search) over bowling's facts, stock and stages.

mod anybody;
mod behind;
mod climb;
mod reachable;
mod realm;
mod together;
mod unused;
mod when;
mod wording;

use super::builtin;
use super::outcome::Trouble;
use super::shop::Shop;
use crate::search::{Example, Finding, FindingKind, Findings, check_rules};

/// What was found in a shop's rules.
#[derive(Debug)]
pub struct RuleChecks {
    findings: Findings,
    first_for: Vec<Example>,
}

impl RuleChecks {
    /// All findings, with how often each kind was looked for.
    #[must_use]
    pub fn findings(&self) -> &Findings {
        &self.findings
    }

    /// Somebody for each ball that is first for somebody: what they say beyond what is assumed of anybody, and the ball's place
    /// among those on the shelf.
    #[must_use]
    pub fn first_for(&self) -> &[Example] {
        &self.first_for
    }

    /// Whether there is anything that ought to be put right.
    #[must_use]
    pub fn is_clean(&self) -> bool {
        let mut findings = self.findings.findings.iter();
        findings.all(Finding::is_note)
    }

    /// How many questions were not settled within the work limit.
    #[must_use]
    pub fn not_settled(&self) -> usize {
        let open = |&kind: &FindingKind| self.findings.counted(kind).open;
        FindingKind::ALL.iter().map(open).sum()
    }
}

impl Shop {
    /// Checks the rules in force, against the stock in force.
    ///
    /// # Errors
    /// [`Trouble::Rules`] where the rules have no weight, grip or ball to choose, [`Trouble::Friction`] where they give a surface no friction.
    pub fn check_rules(&self) -> Result<RuleChecks, Trouble> {
        self.check_friction_table()?;
        let mut findings = check_rules(self.rules(), &realm::Shelf::new(self));
        let built_in = builtin::rules(self.vocabulary())
            .map_err(|faults| Trouble::Rules(faults.to_string()))?;
        unused::facts(self, &built_in, &mut findings);
        unused::words(self, &built_in, &mut findings);
        wording::sentences(self, &mut findings)?;
        let first_for = reachable::balls(self, &mut findings)?;
        findings.sort();
        Ok(RuleChecks {
            findings,
            first_for,
        })
    }

    /// What a candidate of a choice is called.
    #[must_use]
    pub fn candidate_name(&self, subject: &str, candidate: usize) -> String {
        realm::Shelf::new(self).name(subject, candidate)
    }
}
