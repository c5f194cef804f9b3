//! Turns the engine's lines into reasons that stand on their own.

use super::reason::{Caution, Reason, Texts};
use crate::notation::Notation;
use crate::rules::{Audience, Line, Role, RuleSet, Severity};

/// How a line's points are printed.
#[derive(Clone, Copy)]
pub(super) enum Scale {
    /// Tenths of a point.
    Points,
    /// Steps of a measure; mirrored for a left hand's laterals.
    Measure { notation: Notation, mirrored: bool },
}

pub(super) fn reason(rules: &RuleSet, line: &Line, scale: Scale) -> Reason {
    let rule = rules.rule(line.rule());
    let said = if line.role() == Role::Dispute {
        line.disputed_points()
    } else {
        line.points()
    };
    let (points, shown) = match scale {
        Scale::Points => (
            line.points(),
            signed(said, &Notation::Points.write(said.saturating_abs())),
        ),
        Scale::Measure { notation, mirrored } => {
            let turn = if mirrored { -1 } else { 1 };
            (line.points() * turn, notation.write(said * turn))
        }
    };
    let texts = Texts {
        newcomer: rules.reason(line, Audience::Newcomer),
        league: rules.reason(line, Audience::League),
        fitter: rules.reason(line, Audience::Fitter),
    };
    let vocabulary = rules.vocabulary();
    let facts = line
        .values()
        .iter()
        .map(|&(fact, value)| (vocabulary.fact(fact).name, vocabulary.print(fact, value)))
        .collect();
    Reason {
        facts,
        rule: rule.id().to_owned(),
        file: rule.file().to_owned(),
        points,
        shown,
        role: role_name(line.role()),
        common: line.is_common(),
        texts,
        source: rule.source().to_string(),
        strength: rule.source().strength().words(),
    }
}

/// A number with its sign in front.
pub(super) fn signed(value: i64, size: &str) -> String {
    match value {
        0 => size.to_owned(),
        v if v > 0 => format!("+{size}"),
        _ => format!("\u{2212}{size}"),
    }
}

pub(super) fn caution(rules: &RuleSet, line: &Line, about: &str) -> Caution {
    let severity = match line.role() {
        Role::Caution(severity) => severity,
        _ => Severity::Mild,
    };
    let mut reason = reason(rules, line, Scale::Points);
    let action = rules.action(line);
    if let Some(action) = &action {
        for text in [
            &mut reason.texts.newcomer,
            &mut reason.texts.league,
            &mut reason.texts.fitter,
        ] {
            if let Some(rest) = text.strip_prefix(action.as_str()) {
                *text = rest.trim_start().to_owned();
            }
        }
    }
    Caution {
        severity,
        about: about.to_owned(),
        action: action.map(Texts::alike),
        reason,
    }
}

fn role_name(role: Role) -> &'static str {
    match role {
        Role::Points => "points",
        Role::RuleOut => "rule_out",
        Role::Caution(_) => "caution",
        Role::Start => "start",
        Role::Add => "add",
        Role::Limit => "limit",
        Role::Rounding => "rounding",
        Role::Dispute => "dispute",
        Role::Step => "step",
    }
}
