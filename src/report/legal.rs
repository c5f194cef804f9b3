//! What a rule book says of a ball, as people and programs read it.

use serde::Serialize;

use super::Look;
use super::json::{Head, written};
use super::page::{Page, capitalised};
use crate::standards::{Body, Date, Finding, Strength, Verdict};

/// A ball held against a body's limits on a day.
#[derive(Clone, Copy, Debug)]
pub struct Legal<'a> {
    /// What the ball is called, if it has a name.
    pub ball: Option<&'a str>,
    /// Whose limits.
    pub body: Body,
    /// The day it was judged for.
    pub date: Date,
    /// The last day whose rules the table knows.
    pub known_until: Date,
    /// What each limit says.
    pub findings: &'a [Finding],
}

impl Legal<'_> {
    fn of(&self, verdict: Verdict) -> Vec<&Finding> {
        let findings = self.findings.iter();
        findings
            .filter(|finding| finding.verdict() == verdict)
            .collect()
    }

    /// Fail if a limit is broken; else ask if anything is open.
    fn result(&self) -> Verdict {
        [Verdict::Fail, Verdict::Ask]
            .into_iter()
            .find(|verdict| !self.of(*verdict).is_empty())
            .unwrap_or(Verdict::Pass)
    }

    /// What decides in the end, and what the table doesn't know.
    fn caution(&self) -> String {
        let mut caution = format!(
            "Ask the official of your event before you count on this: the governing body's current rule book decides. The table \
             knows rules up to {}.",
            self.known_until
        );
        if self.date > self.known_until {
            caution.push_str(" The day asked for is later; rules made since then are missing.");
        }
        caution
    }
}

/// Writes the verdicts as plain text: what is broken first, then what to ask or measure, then in short what is kept.
#[must_use]
pub fn legal_text(legal: &Legal<'_>, look: &Look) -> String {
    let mut page = Page::new(look);
    let ball = legal.ball.unwrap_or("The ball");
    page.heading(&format!("{ball}: {}, {}", legal.body.name(), legal.date));
    let [broken, open, kept] =
        [Verdict::Fail, Verdict::Ask, Verdict::Pass].map(|verdict| legal.of(verdict));
    let questions = together(&open);
    page.paragraph(2, &summary(broken.len(), questions.len()));
    if !broken.is_empty() {
        page.heading("Broken");
        for finding in broken {
            in_full(&mut page, finding);
        }
    }
    if !open.is_empty() {
        page.heading("To ask or measure");
        for (says, findings) in questions {
            let about: Vec<String> = findings.iter().map(|finding| title(finding)).collect();
            page.subheading(&capitalised(&about.join("; ")));
            page.paragraph(4, says);
            source(&mut page, findings.first().copied());
        }
    }
    if !kept.is_empty() {
        page.heading("Kept");
        for finding in kept {
            in_short(&mut page, finding);
        }
    }
    page.heading("Who decides");
    page.paragraph(2, &legal.caution());
    page.finish()
}

fn summary(broken: usize, open: usize) -> String {
    let limits = if broken == 1 {
        "limit is"
    } else {
        "limits are"
    };
    let questions = if open == 1 {
        "question is"
    } else {
        "questions are"
    };
    match (broken, open) {
        (0, 0) => "No limit is broken.".to_owned(),
        (0, _) => format!("No limit is broken, but {open} {questions} open."),
        (_, 0) => format!("{broken} {limits} broken."),
        _ => format!("{broken} {limits} broken, and {open} {questions} open."),
    }
}

fn in_full(page: &mut Page<'_>, finding: &Finding) {
    page.subheading(&capitalised(&title(finding)));
    page.paragraph(4, finding.says());
    source(page, Some(finding));
}

/// Findings that ask the very same, in the order of the first of each.
fn together<'f>(findings: &[&'f Finding]) -> Vec<(&'f str, Vec<&'f Finding>)> {
    let mut groups: Vec<(&str, Vec<&Finding>)> = Vec::new();
    for finding in findings {
        match groups.iter_mut().find(|(says, _)| *says == finding.says()) {
            Some((_, group)) => group.push(finding),
            None => groups.push((finding.says(), vec![finding])),
        }
    }
    groups
}

fn title(finding: &Finding) -> String {
    match finding.distance() {
        Some(distance) => format!("{}, {distance}", finding.about()),
        None => finding.about().to_owned(),
    }
}

fn source(page: &mut Page<'_>, finding: Option<&Finding>) {
    if let Some(finding) = finding.filter(|finding| {
        let strength = finding.strength();
        strength.is_some_and(|strength| strength != Strength::NotFound)
    }) {
        page.paragraph(4, &format!("Source: {}.", finding.clause()));
    }
}

fn in_short(page: &mut Page<'_>, finding: &Finding) {
    let distance = finding.distance().unwrap_or("kept");
    let mut line = format!("{}: {distance}.", capitalised(finding.about()));
    if finding.is_close() {
        line.push_str(" Scales differ, so weigh it again.");
    }
    page.paragraph(2, &line);
}

#[derive(Serialize)]
struct LegalDoc<'a> {
    #[serde(flatten)]
    head: Head<'a>,
    ball: Option<&'a str>,
    body: &'static str,
    date: String,
    known_until: String,
    result: &'static str,
    findings: Vec<FindingDoc<'a>>,
    caution: String,
}

#[derive(Serialize)]
struct FindingDoc<'a> {
    id: &'a str,
    row: Option<&'a str>,
    verdict: &'static str,
    about: &'a str,
    says: &'a str,
    distance: Option<&'a str>,
    close: bool,
    clause: &'a str,
    strength: Option<&'static str>,
}

/// Writes the verdicts as an answer document, ending in a line break. The same ball gives the same bytes.
#[must_use]
pub fn legal_json(legal: &Legal<'_>) -> String {
    written(&LegalDoc {
        head: Head::new("legal"),
        ball: legal.ball,
        body: legal.body.word(),
        date: legal.date.to_string(),
        known_until: legal.known_until.to_string(),
        result: legal.result().word(),
        findings: legal
            .findings
            .iter()
            .map(|each| FindingDoc {
                id: each.id(),
                row: each.row(),
                verdict: each.verdict().word(),
                about: each.about(),
                says: each.says(),
                distance: each.distance(),
                close: each.is_close(),
                clause: each.clause(),
                strength: each.strength().map(|strength| strength.words()),
            })
            .collect(),
        caution: legal.caution(),
    })
}
