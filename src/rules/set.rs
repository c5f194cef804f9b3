//! A set of rules that has been read and checked.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::ledger::Line;
use super::plain::PlainWords;
use super::reason::Audience;
use super::rule::{Rule, RuleId};
use super::source::Source;
use super::subject::Subject;
use super::vocabulary::Vocabulary;
use super::words::{Assumption, Word};

/// A set of rules that has been read and checked, with its subjects, sources, assumptions and glossary.
///
/// All of them are kept in the order of their ids, so that the order of files never matters.
#[derive(Clone, Debug)]
pub struct RuleSet {
    pub(super) vocabulary: Arc<Vocabulary>,
    pub(super) subjects: Vec<Subject>,
    pub(super) rules: Vec<Rule>,
    pub(super) sources: BTreeMap<String, Source>,
    pub(super) assumptions: Vec<Assumption>,
    pub(super) glossary: Vec<Word>,
    pub(super) plain: PlainWords,
}

impl RuleSet {
    /// The facts that the rules speak of.
    #[must_use]
    pub fn vocabulary(&self) -> &Arc<Vocabulary> {
        &self.vocabulary
    }

    /// The subjects in the order of their ids.
    #[must_use]
    pub fn subjects(&self) -> &[Subject] {
        &self.subjects
    }

    /// The subject with this id.
    #[must_use]
    pub fn subject(&self, id: &str) -> Option<&Subject> {
        self.subjects.iter().find(|subject| subject.id == id)
    }

    /// The rules in the order of their ids; a [`RuleId`] counts along them.
    #[must_use]
    pub fn rules(&self) -> &[Rule] {
        &self.rules
    }

    /// A rule by the id that one of this set's lines gave.
    #[must_use]
    pub fn rule(&self, id: RuleId) -> &Rule {
        &self.rules[id.index()]
    }

    /// The rule with this id, and its place.
    #[must_use]
    pub fn find(&self, id: &str) -> Option<(RuleId, &Rule)> {
        let index = self
            .rules
            .binary_search_by(|rule| rule.id.as_str().cmp(id))
            .ok()?;
        Some((RuleId::new(index), &self.rules[index]))
    }

    /// The sources that files name, in the order of their keys.
    pub fn sources(&self) -> impl Iterator<Item = &Source> {
        self.sources.values()
    }

    /// What stands in for answers that nobody gave.
    #[must_use]
    pub fn assumptions(&self) -> &[Assumption] {
        &self.assumptions
    }

    /// The words of the trade, in the order of the alphabet.
    #[must_use]
    pub fn glossary(&self) -> &[Word] {
        &self.glossary
    }

    /// The same set but for the rule with this id.
    #[must_use]
    pub fn without(&self, id: &str) -> RuleSet {
        let mut set = self.clone();
        set.rules.retain(|rule| rule.id != id);
        set
    }

    /// Why a line is there: what to do first if its rule says so, then the reason, then the file if an overlay brought it.
    #[must_use]
    pub fn reason(&self, line: &Line, audience: Audience) -> String {
        let rule = self.rule(line.rule);
        let fill =
            |template: &super::reason::Template| template.fill(&self.vocabulary, line.values());
        let mut reason = fill(rule.because.of(audience));
        if let Some(then) = &rule.then {
            reason = format!("{} {reason}", fill(then));
        }
        if rule.overlay {
            reason = format!("{reason} ({})", rule.file);
        }
        reason
    }

    /// What a line says to do, values filled in; it is also the beginning of its reason.
    #[must_use]
    pub fn action(&self, line: &Line) -> Option<String> {
        let then = self.rule(line.rule).then.as_ref()?;
        Some(then.fill(&self.vocabulary, line.values()))
    }

    /// The rules of a subject with their ids.
    pub(super) fn rules_of<'s>(
        &'s self,
        subject: &'s str,
    ) -> impl Iterator<Item = (RuleId, &'s Rule)> {
        let numbered = self
            .rules
            .iter()
            .enumerate()
            .map(|(index, rule)| (RuleId::new(index), rule));
        numbered.filter(move |(_, rule)| rule.subject == subject)
    }
}
