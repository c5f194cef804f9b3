//! What there is to say against a set of rules.

use super::realm::Example;
use crate::rules::{FactId, RuleId};

/// The kinds of findings, in the order in which they are told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FindingKind {
    /// A rule's conditions can never all be met.
    NeverTrue,
    /// A rule's conditions are always met.
    AlwaysTrue,
    /// Two rules hold for the same and do the same.
    Duplicate,
    /// A rule holds only where another one, which does as much or more, holds as well.
    Contained,
    /// A rule rules out all that another favours.
    Contradictory,
    /// Two rules can start one measure at once.
    TwoStarts,
    /// A knot of a curve that no value ever comes near.
    KnotOutOfReach,
    /// A text prints a fact that may not be known where the rule holds.
    MayBeUnknown,
    /// Nothing looks at a fact.
    UnusedFact,
    /// No text contains a word that is explained.
    UnusedWord,
    /// A candidate that is first for nobody.
    Unreachable,
    /// A word that a newcomer may not know, or a sentence that is too long.
    Wording,
    /// No candidate may be left.
    NoneLeft,
}

impl FindingKind {
    /// All kinds, in order.
    pub const ALL: [FindingKind; 13] = [
        FindingKind::NeverTrue,
        FindingKind::AlwaysTrue,
        FindingKind::Duplicate,
        FindingKind::Contained,
        FindingKind::Contradictory,
        FindingKind::TwoStarts,
        FindingKind::KnotOutOfReach,
        FindingKind::MayBeUnknown,
        FindingKind::UnusedFact,
        FindingKind::UnusedWord,
        FindingKind::Unreachable,
        FindingKind::Wording,
        FindingKind::NoneLeft,
    ];

    /// Its name, as people and programs read it.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            FindingKind::NeverTrue => "never true",
            FindingKind::AlwaysTrue => "always true",
            FindingKind::Duplicate => "duplicate",
            FindingKind::Contained => "contained",
            FindingKind::Contradictory => "contradictory",
            FindingKind::TwoStarts => "two starts",
            FindingKind::KnotOutOfReach => "knot out of reach",
            FindingKind::MayBeUnknown => "may be unknown",
            FindingKind::UnusedFact => "unused fact",
            FindingKind::UnusedWord => "unused word",
            FindingKind::Unreachable => "unreachable",
            FindingKind::Wording => "wording",
            FindingKind::NoneLeft => "none left",
        }
    }

    /// Whether all of this kind are told only so that people know: they may well be meant.
    #[must_use]
    pub fn is_note(self) -> bool {
        matches!(self, FindingKind::NoneLeft | FindingKind::Unreachable)
    }
}

/// Conditions that can't be met together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Clash {
    /// The fewest conditions that clash, in words. One alone if no value can meet it.
    pub conditions: Vec<String>,
    /// Why, where there is something to say beyond them.
    pub hint: Option<String>,
}

/// One thing to say against a set of rules.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Finding {
    /// A rule's conditions can never all be met: a clash for each way in which it could hold.
    NeverTrue {
        /// The rule.
        rule: RuleId,
        /// What clashes, in the order of the alternatives.
        clashes: Vec<Clash>,
    },
    /// A rule states conditions, and they are always met.
    AlwaysTrue {
        /// The rule.
        rule: RuleId,
    },
    /// Two rules hold for the same and do the same.
    Duplicate {
        /// The two, in the order of their ids.
        rules: [RuleId; 2],
        /// Where both hold.
        example: Example,
    },
    /// A rule holds only where another one, which does as much or more, holds as well.
    Contained {
        /// The rule that adds nothing.
        rule: RuleId,
        /// The other one.
        within: RuleId,
        /// Where both hold.
        example: Example,
    },
    /// Wherever a rule gives points, another one rules out.
    Contradictory {
        /// The rule that gives points.
        rule: RuleId,
        /// The one that rules out.
        against: RuleId,
        /// Where both hold.
        example: Example,
    },
    /// Two rules can start one measure at once, so that it has no number.
    TwoStarts {
        /// The two, in the order of their ids.
        rules: [RuleId; 2],
        /// Where both hold.
        example: Example,
    },
    /// A knot that no value ever comes near: the line to it and from it is never used.
    KnotOutOfReach {
        /// The rule.
        rule: RuleId,
        /// What its curve runs along.
        fact: FactId,
        /// The knot, in steps of the fact.
        knot: i64,
    },
    /// A text prints a fact that may not be known where the rule holds.
    MayBeUnknown {
        /// The rule.
        rule: RuleId,
        /// The fact.
        fact: FactId,
        /// Where it holds and the fact isn't known.
        example: Example,
    },
    /// No rule, no assumption, no question and no computing looks at a fact.
    UnusedFact {
        /// The fact.
        fact: FactId,
        /// Whether that may well be meant: it is asked of nobody, or only rules that an overlay took away looked at it.
        may_be_meant: bool,
    },
    /// No text contains a word of the glossary, in any of its forms.
    UnusedWord {
        /// The word.
        word: String,
        /// Whether that may well be meant: only texts that an overlay took away contained it.
        may_be_meant: bool,
    },
    /// A candidate that is first for nobody.
    Unreachable {
        /// The choice.
        subject: String,
        /// The candidate.
        candidate: usize,
        /// Its name.
        name: String,
        /// Who is ahead of it wherever it isn't ruled out, by name: always at least one of them. None if it is always ruled out.
        beaten_by: Vec<String>,
    },
    /// A word that a newcomer may not know, or a sentence that is too long.
    Wording {
        /// The rule whose text it is, if it is a rule's.
        rule: Option<RuleId>,
        /// What is the matter.
        says: String,
    },
    /// No candidate is left.
    NoneLeft {
        /// The choice.
        subject: String,
        /// The rules that rule all of them out: one alone, or all that rule out.
        rules: Vec<RuleId>,
        /// Where that is so.
        example: Example,
    },
}

impl Finding {
    /// What kind it is.
    #[must_use]
    pub fn kind(&self) -> FindingKind {
        match self {
            Finding::NeverTrue { .. } => FindingKind::NeverTrue,
            Finding::AlwaysTrue { .. } => FindingKind::AlwaysTrue,
            Finding::Duplicate { .. } => FindingKind::Duplicate,
            Finding::Contained { .. } => FindingKind::Contained,
            Finding::Contradictory { .. } => FindingKind::Contradictory,
            Finding::TwoStarts { .. } => FindingKind::TwoStarts,
            Finding::KnotOutOfReach { .. } => FindingKind::KnotOutOfReach,
            Finding::MayBeUnknown { .. } => FindingKind::MayBeUnknown,
            Finding::UnusedFact { .. } => FindingKind::UnusedFact,
            Finding::UnusedWord { .. } => FindingKind::UnusedWord,
            Finding::Unreachable { .. } => FindingKind::Unreachable,
            Finding::Wording { .. } => FindingKind::Wording,
            Finding::NoneLeft { .. } => FindingKind::NoneLeft,
        }
    }

    /// Whether it is told only so that people know: it may well be meant.
    #[must_use]
    pub fn is_note(&self) -> bool {
        match self {
            Finding::UnusedFact { may_be_meant, .. } | Finding::UnusedWord { may_be_meant, .. } => {
                *may_be_meant
            }
            _ => self.kind().is_note(),
        }
    }

    /// The rules it is about, the one to look at first.
    #[must_use]
    pub fn rules(&self) -> Vec<RuleId> {
        match self {
            Finding::NeverTrue { rule, .. }
            | Finding::AlwaysTrue { rule }
            | Finding::KnotOutOfReach { rule, .. }
            | Finding::MayBeUnknown { rule, .. } => vec![*rule],
            Finding::Duplicate { rules, .. } | Finding::TwoStarts { rules, .. } => rules.to_vec(),
            Finding::Contained { rule, within, .. } => vec![*rule, *within],
            Finding::Contradictory { rule, against, .. } => vec![*rule, *against],
            Finding::NoneLeft { rules, .. } => rules.clone(),
            Finding::Wording { rule, .. } => rule.iter().copied().collect(),
            Finding::UnusedFact { .. }
            | Finding::UnusedWord { .. }
            | Finding::Unreachable { .. } => Vec::new(),
        }
    }

    /// Where it is so, for a finding that is so somewhere.
    #[must_use]
    pub fn example(&self) -> Option<&Example> {
        match self {
            Finding::Duplicate { example, .. }
            | Finding::Contained { example, .. }
            | Finding::Contradictory { example, .. }
            | Finding::TwoStarts { example, .. }
            | Finding::MayBeUnknown { example, .. }
            | Finding::NoneLeft { example, .. } => Some(example),
            _ => None,
        }
    }
}

/// How often a kind was looked for, and with what end.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counted {
    /// Found.
    pub found: usize,
    /// Proved absent.
    pub absent: usize,
    /// Not settled within the work limit.
    pub open: usize,
}

/// All that was found in a set of rules.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Findings {
    /// By kind, then by rule.
    pub findings: Vec<Finding>,
    /// What wasn't settled: the kind, the rules it was asked of, and the name of the candidate if it was asked of one.
    pub not_settled: Vec<(FindingKind, Vec<RuleId>, Option<String>)>,
    counts: [Counted; FindingKind::ALL.len()],
}

impl Default for Findings {
    fn default() -> Self {
        Findings {
            findings: Vec::new(),
            not_settled: Vec::new(),
            counts: [Counted::default(); FindingKind::ALL.len()],
        }
    }
}

impl Findings {
    /// How often a kind was looked for, and with what end.
    #[must_use]
    pub fn counted(&self, kind: FindingKind) -> Counted {
        self.counts[kind as usize]
    }

    /// Takes a finding.
    pub fn found(&mut self, finding: Finding) {
        self.counts[finding.kind() as usize].found += 1;
        self.findings.push(finding);
    }

    /// Counts one that isn't there.
    pub fn absent(&mut self, kind: FindingKind) {
        self.counts[kind as usize].absent += 1;
    }

    /// Counts one that couldn't be settled.
    pub fn open(&mut self, kind: FindingKind, rules: &[RuleId]) {
        self.not_settled.push((kind, rules.to_vec(), None));
        self.counts[kind as usize].open += 1;
    }

    /// Counts one that couldn't be settled for a candidate of this name.
    pub fn open_for(&mut self, kind: FindingKind, candidate: String) {
        self.not_settled.push((kind, Vec::new(), Some(candidate)));
        self.counts[kind as usize].open += 1;
    }

    /// Puts them in order.
    pub fn sort(&mut self) {
        self.findings
            .sort_by_key(|finding| (finding.kind(), finding.rules()));
    }
}
