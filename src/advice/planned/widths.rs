//! Holes that the hand or the card wants wider or narrower than any may be: brought to the limit, they would fit nobody.

use super::super::drilling::Refusal;
use super::super::explain::{self, Scale};
use super::Bench;
use crate::notation::Notation;
use crate::rules::{Audience, Role};
use crate::standards::{Finding, Verdict};
use crate::vocabulary::Alone;

/// The measures of a hole's width, how people call each, and what to do where it is too wide.
const WIDTHS: [(&str, &str, &str); 7] = [
    ("thumb.bore", "thumb hole", MEASURE),
    ("thumb.oval_wide", "thumb hole's wide way", MEASURE),
    ("thumb.slug", "thumb slug or sleeve", TAKE),
    ("middle.bore", "middle hole", MEASURE),
    ("middle.insert", "middle finger's insert", TAKE),
    ("ring.bore", "ring hole", MEASURE),
    ("ring.insert", "ring finger's insert", TAKE),
];
const MEASURE: &str = "Measure again;";
const TAKE: &str = "Take one of";

/// What the rule book limits of a gripping hole itself.
const OF_HOLES: [&str; 2] = ["gripping-hole-diameter", "gripping-hole-depth"];

/// What it limits of the drilled ball's static weights, which are predicted.
const OF_WEIGHTS: [&str; 3] = ["static-top", "static-side", "static-finger"];

impl Bench<'_, '_> {
    /// Widths that the rules had to cut back or raise: what was asked for isn't what would be drilled.
    pub(super) fn out_of_bounds(&self) -> Vec<Refusal> {
        let rules = self.consultation.shop.rules();
        let world = Alone(&self.consultation.situation);
        let width = |&(measure, called, mend): &(&str, &str, &str)| {
            let measured = rules.measure(measure, &world);
            let bound = measured.value()?;
            let changed =
                |line: &&crate::rules::Line| line.role() == Role::Limit && line.points() != 0;
            let limit = measured.lines().iter().find(changed)?;
            let end = if limit.points() < 0 { "most" } else { "least" };
            let notation = rules.subject(measure)?.notation()?;
            let scale = Scale::Measure {
                notation,
                mirrored: false,
            };
            let reason = explain::reason(rules, limit, scale);
            let size = |steps: i64| Notation::HoleSize.write(steps);
            Some(Refusal {
                what: format!(
                    "The {called} would be {}, and {} is the {end}. {}",
                    size(bound.saturating_sub(limit.points())),
                    size(bound),
                    reason.text(Audience::Fitter)
                ),
                mends: vec![format!("{mend} at {end} {}.", size(bound))],
            })
        };
        WIDTHS.iter().filter_map(width).collect()
    }
}

/// Clauses that the ball as ordered breaks, by its holes or by its predicted weights: it isn't drilled so.
pub(super) fn broken(findings: &[Finding]) -> Vec<Refusal> {
    let breaks = |finding: &&Finding| finding.verdict() == Verdict::Fail;
    let refusal = |finding: &Finding| {
        let mend = if OF_HOLES.contains(&finding.id()) {
            "Bring it back to the limit"
        } else if OF_WEIGHTS.contains(&finding.id()) {
            "Take another ball off the shelf, or another layout"
        } else {
            return None;
        };
        Some(Refusal {
            what: format!("The {} breaks a rule. {}", finding.about(), finding.says()),
            mends: vec![format!(
                "{mend}: it is {}.",
                finding.distance().unwrap_or("outside")
            )],
        })
    };
    findings.iter().filter(breaks).filter_map(refusal).collect()
}
