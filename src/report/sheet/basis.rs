//! Part 6: which numbers were measured or copied, and which are defaults, by how sure their source is.

use super::canvas::{Canvas, Spot};
use super::flow::Flow;
use super::state::{Job, blanks, settled_at_the_machine, spoken_name};
use crate::advice::SpecNumber;
use crate::report::page::capitalised;
use crate::rules::Strength;

/// Where a number of the spec comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Basis {
    /// Taken from the card of a fit that works, as it stands.
    Copied,
    /// Taken from the hand, as it was measured.
    Measured,
    /// Worked out from other numbers of the spec.
    Derived,
    /// By a rule; the weakest source behind it.
    Default(Strength),
}

/// From the surest source to the least sure.
const STRENGTHS: [Strength; 5] = [
    Strength::Published,
    Strength::PublishedWeak,
    Strength::CommonPractice,
    Strength::FromMemory,
    Strength::OwnChoice,
];

/// What a number rests on: the weakest of the lines that move it.
pub(super) fn basis(number: &SpecNumber) -> Basis {
    let moving = number.lines().iter().filter(|line| {
        matches!(line.role(), "start" | "limit") || (line.role() == "add" && line.points() != 0)
    });
    let mut found = Basis::Derived;
    let mut added = false;
    let mut weakest = None;
    for line in moving {
        let rank = STRENGTHS
            .iter()
            .position(|known| known.words() == line.strength());
        let names = |family: &str| {
            line.facts()
                .iter()
                .any(|(fact, value)| fact.starts_with(family) && value.as_str() == line.shown())
        };
        if line.role() == "start" && names("card.") {
            found = Basis::Copied;
        } else if line.role() == "start" && names("hand.") {
            found = Basis::Measured;
        } else if let Some(rank) = rank {
            added = true;
            weakest = weakest.max(Some(rank));
        }
    }
    match weakest.and_then(|rank| STRENGTHS.get(rank)) {
        Some(strength) if added => Basis::Default(*strength),
        _ => found,
    }
}

/// Writes the part; gives back how far down it reaches.
pub(super) fn write(canvas: &mut Canvas, job: &Job<'_>, at: Spot, wide: f64) -> f64 {
    let mut flow = Flow::new(canvas, at, wide);
    flow.heading("6  Defaults: not measured");
    let known: Vec<(String, Basis)> = job
        .advice
        .spec()
        .numbers()
        .iter()
        .filter(|number| number.value().is_some())
        .map(|number| (spoken_name(number.name()), basis(number)))
        .collect();
    let of = |wanted: Basis| {
        let names: Vec<&str> = known
            .iter()
            .filter(|(_, basis)| *basis == wanted)
            .map(|(name, _)| name.as_str())
            .collect();
        names.join(", ")
    };
    let mut any = false;
    for strength in STRENGTHS.iter().rev() {
        let names = of(Basis::Default(*strength));
        if !names.is_empty() {
            any = true;
            flow.entry(
                &format!("{}:", capitalised(strength.words())),
                &format!("{names}."),
            );
        }
    }
    let others = if job.advice.spec().is_copied() {
        "were copied from the card, measured, or follow from these"
    } else {
        "were measured or follow from these"
    };
    if known.is_empty() {
        flow.text("No number stands yet.");
    } else {
        let which = if any { "All other" } else { "All" };
        flow.text(&format!("{which} numbers {others}."));
    }
    if let Some(predicted) = job.drilling.and_then(|d| d.balance().as_ref()) {
        let settings = predicted.settings().iter();
        let settings: Vec<String> = settings
            .map(|(label, value)| format!("{label}: {}", in_short(value)))
            .collect();
        if !settings.is_empty() {
            flow.entry(
                "Settings of the shop:",
                &format!("{}.", settings.join("; ")),
            );
        }
    }
    for (reason, names) in blanks(job.advice) {
        let names: Vec<String> = names
            .iter()
            .filter(|name| settled_at_the_machine(name))
            .map(|name| spoken_name(name))
            .collect();
        if !names.is_empty() {
            flow.entry(
                "At the machine:",
                &format!("{}. {reason}", names.join(", ")),
            );
        }
    }
    for open in job.drilling.iter().flat_map(|drilling| drilling.open()) {
        flow.text(open);
    }
    flow.bottom()
}

/// A setting without its reason: what it is, and in brackets how sure.
fn in_short(value: &str) -> String {
    let what = value
        .split(". ")
        .next()
        .unwrap_or(value)
        .trim_end_matches('.');
    let sure = value
        .rsplit_once('(')
        .map(|(_, sure)| sure.trim_end_matches(['.', ')']));
    match sure.filter(|_| what.len() < value.len()) {
        Some(sure) => format!("{what} ({sure})"),
        None => what.to_owned(),
    }
}
