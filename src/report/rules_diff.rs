//! What other rules change, as text and as JSON.

use serde::Serialize;

use super::json::{Head, written};
use crate::advice::{
    ChangeKind, LineChange, OutcomeChange, PartChange, RuleChange, RulesDiff, WordChange,
};
use crate::document::clean;
use crate::notation::Notation;

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
            text.push_str(&format!("  {}\n", clean(&rule_said(rule))));
        }
    }
    if !diff.words.is_empty() {
        let words: Vec<String> = diff.words.iter().map(|word| clean(&word.word)).collect();
        let words = words.join(", ");
        text.push_str(&format!("Words explained otherwise: {words}\n"));
    }
    for case in &diff.changed {
        if !text.is_empty() {
            text.push('\n');
        }
        text.push_str(&format!("{}, {}\n", clean(&case.file), case.question));
        let (further, shown): (Vec<_>, Vec<_>) = case
            .differences
            .iter()
            .partition(|difference| difference.kind == "further");
        for difference in shown {
            text.push_str(&format!("  {}\n", clean(&headline(difference))));
            text.push_str(&sentences(difference));
        }
        // One stands for all of them, rather one whose points a changed rule gives.
        let by_rule = |of: &&&OutcomeChange| of.lines.iter().any(|line| line.by_rule);
        if let Some(example) = further.iter().find(by_rule).or(further.first()) {
            let (many, head) = (further.len(), headline(example));
            let head = format!("further balls with other lines: {many}, such as {head}");
            text.push_str(&format!("  {}\n", clean(&head)));
            text.push_str(&sentences(example));
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

fn rule_said(rule: &RuleChange) -> String {
    let value = |value: &Option<String>| value.clone().unwrap_or_else(|| "none".to_owned());
    let part = |part: &PartChange| {
        // Their values say what they are.
        let name = match part.name {
            "points" | "value" => String::new(),
            name => format!("{} ", name.replace('_', " ")),
        };
        format!("{name}{} -> {}", value(&part.before), value(&part.after))
    };
    let parts: Vec<String> = rule.parts.iter().map(part).collect();
    let colon = if parts.is_empty() { "" } else { ": " };
    format!("{} ({}){colon}{}", rule.id, rule.file, parts.join("; "))
}

fn sentences(difference: &OutcomeChange) -> String {
    let lines = difference.lines.iter();
    lines
        .map(|line| format!("    {}\n", clean(&sentence(line))))
        .collect()
}

fn headline(difference: &OutcomeChange) -> String {
    let OutcomeChange { kind, name, .. } = difference;
    let what = match *kind {
        "settled" | "number" | "offer" | "further" => name.clone(),
        "drill_today" => "drill today".to_owned(),
        "answer" | "held" | "bill" => (*kind).to_owned(),
        _ => format!("{kind} {name}"),
    };
    let value = |value: &Option<String>| value.clone().unwrap_or_else(|| "none".to_owned());
    if difference.before == difference.after {
        let how = match difference.more {
            Some(0) | None => "other lines".to_owned(),
            Some(more) => {
                let sign = if more < 0 { '\u{2212}' } else { '+' };
                format!("{sign}{}", Notation::Points.write(more.saturating_abs()))
            }
        };
        return format!("{what}: same, {}, {how}", value(&difference.after));
    }
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
        words: Vec<WordDoc<'a>>,
        changed: Vec<CaseDoc<'a>>,
        unchanged: usize,
    }
    let rules = diff.rules.iter().map(|rule| RuleDoc {
        rule: &rule.id,
        file: &rule.file,
        change: rule.kind.word(),
        parts: rule.parts.iter().map(PartDoc::new).collect(),
    });
    let changed = diff.changed.iter().map(|case| CaseDoc {
        case: &case.file,
        question: case.question,
        differences: case.differences.iter().map(DifferenceDoc::new).collect(),
    });
    written(&Answer {
        head: Head::new("rules diff"),
        rules: rules.collect(),
        words: diff.words.iter().map(WordDoc::new).collect(),
        changed: changed.collect(),
        unchanged: diff.unchanged,
    })
}

#[derive(Serialize)]
struct RuleDoc<'a> {
    rule: &'a str,
    file: &'a str,
    change: &'static str,
    parts: Vec<PartDoc<'a>>,
}

#[derive(Serialize)]
struct PartDoc<'a> {
    part: &'static str,
    before: Option<&'a str>,
    after: Option<&'a str>,
}

impl<'a> PartDoc<'a> {
    fn new(part: &'a PartChange) -> PartDoc<'a> {
        PartDoc {
            part: part.name,
            before: part.before.as_deref(),
            after: part.after.as_deref(),
        }
    }
}

#[derive(Serialize)]
struct WordDoc<'a> {
    word: &'a str,
    before: Option<&'a str>,
    after: Option<&'a str>,
}

impl<'a> WordDoc<'a> {
    fn new(word: &'a WordChange) -> WordDoc<'a> {
        WordDoc {
            word: &word.word,
            before: word.before.as_deref(),
            after: word.after.as_deref(),
        }
    }
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
    /// In tenths of a point.
    more: Option<i64>,
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
            more: difference.more,
            lines: lines.collect(),
        }
    }
}
