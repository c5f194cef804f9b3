//! Part 8: what the rule book says of the drilled ball, broken limits first; then the signatures.

use super::canvas::{Canvas, Spot};
use super::flow::Flow;
use super::heading;
use super::state::{Job, sentence};
use crate::standards::{Finding, Verdict};

/// Writes the part; gives back how far down it reaches.
pub(super) fn write(canvas: &mut Canvas, job: &Job<'_>, at: Spot, wide: f64) -> f64 {
    let mut flow = Flow::new(canvas, at, wide);
    flow.heading(&match job.drilling {
        Some(drilling) => format!("8  What the rule book of {} says", drilling.body().name()),
        None => "8  What the rule book says".to_owned(),
    });
    let findings = job.drilling.map_or(&[][..], |drilling| drilling.findings());
    if findings.is_empty() {
        flow.text("Not judged. Ask the governing body of the league or tournament.");
    }
    let of = |verdict| {
        findings
            .iter()
            .filter(move |finding| finding.verdict() == verdict)
    };
    for finding in of(Verdict::Fail) {
        flow.entry("NOT ALLOWED:", &told(finding));
    }
    // Several limits may raise the same question: it is put once, with all that it is about.
    let mut asked: Vec<(&str, &str, Vec<&str>)> = Vec::new();
    for finding in of(Verdict::Ask) {
        match asked.iter_mut().find(|(says, ..)| *says == finding.says()) {
            Some((.., about)) => about.push(finding.about()),
            None => asked.push((finding.says(), finding.clause(), vec![finding.about()])),
        }
    }
    for (says, clause, about) in asked {
        let about = sentence(&about.join(", "));
        let about = about.trim_end_matches('.');
        flow.entry("Ask:", &format!("{about}: {} ({clause})", sentence(says)));
    }
    for finding in of(Verdict::Pass).filter(|finding| finding.is_close()) {
        flow.entry("Close:", &short(finding));
    }
    let kept = of(Verdict::Pass).count();
    if kept > 0 {
        let limits = if kept == 1 { "limit" } else { "limits" };
        flow.entry(
            "Kept:",
            &format!("{kept} {limits} that were read in print."),
        );
    }
    flow.bottom()
}

/// In full, for what needs reading.
fn told(finding: &Finding) -> String {
    format!("{} ({})", sentence(finding.says()), finding.clause())
}

/// What is kept, and by how much.
fn short(finding: &Finding) -> String {
    match finding.distance() {
        Some(distance) => format!("{}, {distance}.", finding.about()),
        None => format!("{}.", finding.about()),
    }
}

/// Lines to sign on; gives back how far down they reach.
pub(super) fn signatures(canvas: &mut Canvas, at: Spot, wide: f64) -> f64 {
    let gap = 12.0;
    let each = (wide - 2.0 * gap) / 3.0;
    for (index, name) in ["Drilled by", "Read back by", "Customer"]
        .iter()
        .enumerate()
    {
        let left = at.0 + (each + gap) * index as f64;
        heading::field(canvas, (left, at.1 + 14.0), each, name, "");
    }
    at.1 + 18.0
}
