//! What other rules change, as text and as JSON.

use serde::Serialize;

use super::json::{Head, written};
use crate::advice::{ChangeKind, LineChange, OutcomeChange, RulesDiff};
use crate::document::clean;

/// Writes the rules that are otherwise, then consultation by consultation what comes out otherwise and by which lines.
#[must_use]
pub fn rules_diff_text(diff: &RulesDiff) -> String {
    let mut text = String::new();
    for (kind, title) in [
        (ChangeKind::Added, "Rules added"),
        (ChangeKind::Removed, "Rules gone"),
        (ChangeKind::Changed, "Rules changed"),
        (ChangeKind::Text, "Only words or sources changed"),
    ] {
        let found: Vec<_> = diff.rules.iter().filter(|rule| rule.kind == kind).collect();
        if !found.is_empty() {
            text.push_str(&format!("{title}\n"));
        }
        for rule in found {
            text.push_str(&format!("  {} ({})\n", clean(&rule.id), clean(&rule.file)));
        }
    }
    for case in &diff.changed {
        if !text.is_empty() {
            text.push('\n');
        }
        text.push_str(&format!("{}, {}\n", clean(&case.file), case.question));
        for difference in &case.differences {
            text.push_str(&format!("  {}\n", clean(&headline(difference))));
            for line in &difference.lines {
                text.push_str(&format!("    {}\n", clean(&sentence(line))));
            }
        }
    }
    if !text.is_empty() {
        text.push('\n');
    }
    let otherwise = diff.changed.len();
    let all = otherwise + diff.unchanged;
    text.push_str(&match otherwise {
        0 => format!("All {all} consultations come out the same.\n"),
        _ => format!("{otherwise} of {all} consultations come out otherwise.\n"),
    });
    text
}

fn headline(difference: &OutcomeChange) -> String {
    let OutcomeChange { kind, name, .. } = difference;
    let what = match *kind {
        "settled" | "number" | "offer" => name.clone(),
        "drill_today" => "drill today".to_owned(),
        "answer" | "held" | "bill" => (*kind).to_owned(),
        _ => format!("{kind} {name}"),
    };
    let value = |value: &Option<String>| value.clone().unwrap_or_else(|| "none".to_owned());
    format!(
        "{what}: {} -> {}",
        value(&difference.before),
        value(&difference.after)
    )
}

fn sentence(line: &LineChange) -> String {
    let value = |value: &Option<String>| value.clone().unwrap_or_else(|| "no line".to_owned());
    let of = match line.of.as_str() {
        "" => String::new(),
        of => format!(" for {of}"),
    };
    let follows = if line.by_rule { "" } else { " (follows)" };
    format!(
        "{}{of}: {} -> {}{follows}",
        line.rule,
        value(&line.before),
        value(&line.after)
    )
}

/// Writes the same as an answer document.
#[must_use]
pub fn rules_diff_json(diff: &RulesDiff) -> String {
    #[derive(Serialize)]
    struct Answer<'a> {
        #[serde(flatten)]
        head: Head<'a>,
        rules: Vec<RuleDoc<'a>>,
        changed: Vec<CaseDoc<'a>>,
        unchanged: usize,
    }
    let rules = diff.rules.iter().map(|rule| RuleDoc {
        rule: &rule.id,
        file: &rule.file,
        change: rule.kind.word(),
    });
    let changed = diff.changed.iter().map(|case| CaseDoc {
        case: &case.file,
        question: case.question,
        differences: case.differences.iter().map(DifferenceDoc::new).collect(),
    });
    written(&Answer {
        head: Head::new("rules diff"),
        rules: rules.collect(),
        changed: changed.collect(),
        unchanged: diff.unchanged,
    })
}

#[derive(Serialize)]
struct RuleDoc<'a> {
    rule: &'a str,
    file: &'a str,
    change: &'static str,
}

#[derive(Serialize)]
struct CaseDoc<'a> {
    case: &'a str,
    question: &'static str,
    differences: Vec<DifferenceDoc<'a>>,
}

#[derive(Serialize)]
struct DifferenceDoc<'a> {
    kind: &'static str,
    name: &'a str,
    before: Option<&'a str>,
    after: Option<&'a str>,
    lines: Vec<LineDoc<'a>>,
}

#[derive(Serialize)]
struct LineDoc<'a> {
    rule: &'a str,
    of: &'a str,
    before: Option<&'a str>,
    after: Option<&'a str>,
    rule_changed: bool,
}

impl<'a> DifferenceDoc<'a> {
    fn new(difference: &'a OutcomeChange) -> DifferenceDoc<'a> {
        let lines = difference.lines.iter().map(|line| LineDoc {
            rule: &line.rule,
            of: &line.of,
            before: line.before.as_deref(),
            after: line.after.as_deref(),
            rule_changed: line.by_rule,
        });
        DifferenceDoc {
            kind: difference.kind,
            name: &difference.name,
            before: difference.before.as_deref(),
            after: difference.after.as_deref(),
            lines: lines.collect(),
        }
    }
}
