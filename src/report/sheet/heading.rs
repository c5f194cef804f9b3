//! Part 1: the ball and whose it is; above it, in a frame, why nothing may be drilled, if so.

use super::canvas::{Anchor, Canvas, Ink, Pen, Spot};
use super::flow::{Flow, STRONG, TEXT};
use super::letters::{self, Font};
use super::state::{Job, Readiness};
use crate::standards::Verdict;

const TITLE: Font = Font::bold(12.4);
const ALARM: Font = Font::bold(19.0);
/// Reasons told, and lines for each.
const REASONS: usize = 6;
const LINES: usize = 3;
const BOX: Pen = Pen::of(1.6, Ink::Dark);
const WRITE: Pen = Pen::of(0.5, Ink::Dark);

/// What must be read first; gives back how far down they reach.
pub(super) fn warning(canvas: &mut Canvas, job: &Job<'_>, at: Spot, wide: f64) -> f64 {
    let mut y = at.1;
    if job.ready == Readiness::NotYet {
        y = stop(canvas, job, (at.0, y), wide);
    } else if job
        .drilling
        .is_some_and(|d| d.findings().iter().any(|f| f.verdict() == Verdict::Fail))
    {
        let mut flow = Flow::new(canvas, (at.0, y), wide);
        flow.strong("Read part 8 before drilling: a limit of the rule book is broken.");
        y = flow.bottom();
    }
    y
}

fn stop(canvas: &mut Canvas, job: &Job<'_>, at: Spot, wide: f64) -> f64 {
    let inside = (at.0 + 8.0, at.1 + 5.0);
    canvas.text(
        (inside.0, inside.1 + 17.0),
        ALARM,
        Anchor::Start,
        Ink::Dark,
        "NOT TO BE DRILLED",
    );
    let mut flow = Flow::new(canvas, (inside.0, inside.1 + 22.0), wide - 16.0);
    for reason in job.reasons.iter().take(REASONS) {
        flow.short_entry("-", reason, LINES);
    }
    if job.reasons.len() > REASONS {
        flow.text("And more: read the advice.");
    }
    flow.skip(4.0);
    let bottom = flow.bottom();
    canvas.frame("stop", at, wide, bottom - at.1, BOX);
    bottom + 2.0
}

/// Part 1 proper; gives back how far down it reaches.
pub(super) fn ball(canvas: &mut Canvas, job: &Job<'_>, at: Spot, wide: f64) -> f64 {
    let top = Flow::headed(canvas, at, wide, "1  Ball and customer").bottom() + 1.0;
    let made = format!(
        "spanwright {}, rules and shelf {}",
        env!("CARGO_PKG_VERSION"),
        job.advice.digest()
    );
    let (right, base) = (at.0 + wide, at.1 + 12.0);
    canvas.text((right, base), TEXT, Anchor::End, Ink::Pale, &made);
    let right = right - letters::width(&made, TEXT) - 10.0;
    canvas.text(
        (right, base),
        TITLE,
        Anchor::End,
        Ink::Dark,
        "DRILLING SHEET",
    );
    let settled = |stage: &str| {
        let found = job
            .advice
            .settled()
            .iter()
            .find(|settled| settled.stage() == stage);
        found
            .map(|settled| settled.value().to_owned())
            .unwrap_or_default()
    };
    let hand = match job.drilling {
        Some(drilling) if drilling.left_hand() => "left",
        Some(_) => "right",
        None => "",
    };
    let ball = job
        .pick
        .map(|pick| format!("{} by {}", pick.name(), pick.maker()))
        .or_else(|| job.advice.offers().map(|old| old.ball().to_owned()))
        .unwrap_or_default();
    let weight = job
        .pick
        .map(|pick| pick.weight().to_owned())
        .unwrap_or_default();
    let predicted = job
        .drilling
        .and_then(|drilling| drilling.balance().as_ref());
    let unit = match (predicted, job.pick.and_then(|pick| pick.unit())) {
        (Some(predicted), _) if !predicted.unit().is_empty() => predicted.unit().to_owned(),
        (_, unit) => unit.unwrap_or_default().to_owned(),
    };
    let around = job
        .drilling
        .map(|d| format!("{} in around", super::canvas::number(d.circumference())))
        .unwrap_or_default();
    let grip = [
        settled("grip"),
        job.drilling
            .map_or(String::new(), |d| holes(d.holes().len())),
    ];
    let rows = [
        [
            ("Customer", job.advice.bowler().to_owned()),
            ("Hand", hand.to_owned()),
            ("Grip", joined(&grip)),
        ],
        [
            ("Ball", ball),
            ("Weight", weight_and_size(weight, around)),
            ("Surface", settled("surface")),
        ],
        [
            ("Unit", unit),
            ("Serial number", String::new()),
            ("Date", String::new()),
        ],
    ];
    let widths = [0.46, 0.26, 0.28];
    let mut y = top;
    for row in rows {
        let mut x = at.0;
        for ((name, value), share) in row.into_iter().zip(widths) {
            field(canvas, (x, y + 10.5), share * wide - 8.0, name, &value);
            x += share * wide;
        }
        y += 15.0;
    }
    y + 1.0
}

/// An unknown weight stays a line to write on, whatever else is known.
fn weight_and_size(weight: String, around: String) -> String {
    if weight.is_empty() {
        return weight;
    }
    joined(&[weight, around])
}

fn joined(words: &[String]) -> String {
    let words: Vec<&str> = words
        .iter()
        .map(String::as_str)
        .filter(|word| !word.is_empty())
        .collect();
    words.join(", ")
}

fn holes(count: usize) -> String {
    match count {
        0 => String::new(),
        2 => "no thumb hole".to_owned(),
        count => format!("{count} holes"),
    }
}

/// A name and what is known, or a line to write on.
pub(super) fn field(canvas: &mut Canvas, at: Spot, wide: f64, name: &str, value: &str) {
    canvas.text(at, STRONG, Anchor::Start, Ink::Dark, name);
    let left = at.0 + letters::width(name, STRONG) + 5.0;
    if letters::plain(value).trim().is_empty() {
        canvas.line(
            "write-here",
            (left, at.1 + 2.0),
            (at.0 + wide, at.1 + 2.0),
            WRITE,
        );
        return;
    }
    let value = letters::fit(value, TEXT, at.0 + wide - left);
    canvas.text((left, at.1), TEXT, Anchor::Start, Ink::Dark, &value);
}
