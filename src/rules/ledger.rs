//! Ledgers: the lines that add up to an answer.

use super::rule::{RuleId, Severity};
use super::shown::Shown;
use super::vocabulary::FactId;

/// What a line does in its ledger.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Role {
    /// Points for or against a candidate.
    Points,
    /// Rules the candidate out.
    RuleOut,
    /// A caution.
    Caution(Severity),
    /// Where a measure starts.
    Start,
    /// What is added to a measure.
    Add,
    /// What brings a measure within its limits.
    Limit,
    /// What rounds a measure.
    Rounding,
    /// What an opposing school would say; counts nothing.
    Dispute,
    /// Something to do.
    Step,
}

/// A line of a ledger: what one rule says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    pub(super) rule: RuleId,
    pub(super) points: i64,
    pub(super) disputed: i64,
    pub(super) role: Role,
    pub(super) common: bool,
    pub(super) shown: Shown,
}

impl Line {
    /// The rule that speaks; of the rule set that made the line.
    #[must_use]
    pub fn rule(&self) -> RuleId {
        self.rule
    }

    /// What it adds: tenths of points of a choice, steps of a measure. 0 for a dispute.
    #[must_use]
    pub fn points(&self) -> i64 {
        self.points
    }

    /// What a dispute would add if it counted; 0 for all other lines.
    #[must_use]
    pub fn disputed_points(&self) -> i64 {
        self.disputed
    }

    /// What it does.
    #[must_use]
    pub fn role(&self) -> Role {
        self.role
    }

    /// Whether every remaining candidate has the same line with the same points, so that it tells none from another.
    ///
    /// With a single candidate remaining, only lines of rules that look at no fact of candidates are common.
    #[must_use]
    pub fn is_common(&self) -> bool {
        self.common
    }

    /// The facts that the rule looks at or prints, with their values.
    #[must_use]
    pub fn values(&self) -> &[(FactId, i64)] {
        self.shown.as_slice()
    }
}

/// Sorts lines by size, then by the id of their rule: never by the order of files.
pub(super) fn sort(lines: &mut [Line]) {
    lines.sort_unstable_by_key(|line| (std::cmp::Reverse(line.points.abs()), line.rule));
}

/// What makes up a candidate's total.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ledger {
    pub(super) lines: Vec<Line>,
    pub(super) total: i64,
}

impl Ledger {
    /// The lines, largest first, then by the id of their rule.
    #[must_use]
    pub fn lines(&self) -> &[Line] {
        &self.lines
    }

    /// The total in tenths of points: the sum of the lines' points.
    #[must_use]
    pub fn total(&self) -> i64 {
        self.total
    }
}

/// What became of a candidate.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fate {
    /// Ruled out, by all of these.
    RuledOut(Vec<Line>),
    /// Ranked; the best is at place 0.
    Ranked {
        /// Its place among those that remain.
        place: usize,
    },
}
