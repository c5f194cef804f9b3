//! What a set of cases never tries of the rules, as text and as JSON.

use itertools::Itertools;
use serde::Serialize;

use super::json::{Head, written};
use crate::advice::{Coverage, Gap, Missing, Totals};
use crate::document::clean;

/// Writes what is missing, file by file and rule by rule, then how much was tried.
#[must_use]
pub fn coverage_text(coverage: &Coverage) -> String {
    let gaps = coverage.gaps();
    let mut text = String::new();
    let files = gaps.iter().sorted_by_key(|gap| &gap.file);
    for (file, gaps) in &files.chunk_by(|gap| &gap.file) {
        text.push_str(&format!("{}\n", clean(file)));
        for (rule, gaps) in &gaps.chunk_by(|gap| &gap.rule) {
            text.push_str(&format!("  {}\n", clean(rule)));
            for gap in gaps {
                text.push_str(&format!("    {}\n", clean(&sentence(&gap.missing))));
            }
        }
    }
    if !text.is_empty() {
        text.push('\n');
    }
    let Totals {
        cases,
        rules,
        fired,
        sides,
        tried,
    } = coverage.totals();
    let cases = match cases {
        1 => "1 case".to_owned(),
        _ => format!("{cases} cases"),
    };
    text.push_str(&format!(
        "{cases}: {fired} of {rules} rules fired, {tried} of {sides} sides of what they tell apart were tried\n"
    ));
    if gaps.is_empty() {
        text.push_str("Nothing is missing.\n");
    }
    text
}

fn sentence(missing: &Missing) -> String {
    match missing {
        Missing::Fired => "never fired".to_owned(),
        Missing::Side {
            fact,
            boundary,
            side,
            hint,
        } => {
            let of = match side.as_str() {
                "met" | "not met" => format!(" ({boundary})"),
                _ => String::new(),
            };
            let hint = match hint {
                Some(hint) => format!("; try {hint}"),
                None => String::new(),
            };
            format!("{fact}{of} never {side} where it decides{hint}")
        }
    }
}

/// Writes the same as an answer document.
#[must_use]
pub fn coverage_json(coverage: &Coverage, digest: &str) -> String {
    #[derive(Serialize)]
    struct Answer<'a> {
        #[serde(flatten)]
        head: Head<'a>,
        cases: usize,
        rules: usize,
        fired: usize,
        sides: usize,
        tried: usize,
        missing: Vec<GapDoc<'a>>,
    }
    let gaps = coverage.gaps();
    let totals = coverage.totals();
    written(&Answer {
        head: Head::new("rules coverage").digest(digest),
        cases: totals.cases,
        rules: totals.rules,
        fired: totals.fired,
        sides: totals.sides,
        tried: totals.tried,
        missing: gaps.iter().map(GapDoc::new).collect(),
    })
}

#[derive(Serialize)]
struct GapDoc<'a> {
    rule: &'a str,
    file: &'a str,
    missing: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    fact: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    boundary: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    side: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    hint: Option<&'a str>,
}

impl<'a> GapDoc<'a> {
    fn new(gap: &'a Gap) -> GapDoc<'a> {
        let mut doc = GapDoc {
            rule: &gap.rule,
            file: &gap.file,
            missing: "fired",
            fact: None,
            boundary: None,
            side: None,
            hint: None,
        };
        if let Missing::Side {
            fact,
            boundary,
            side,
            hint,
        } = &gap.missing
        {
            doc.missing = "side";
            doc.fact = Some(fact);
            doc.boundary = Some(boundary);
            doc.side = Some(side);
            doc.hint = hint.as_deref();
        }
        doc
    }
}
