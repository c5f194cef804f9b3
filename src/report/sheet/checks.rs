//! Part 7: care at the machine, the action first; and what to tick off before the customer leaves.

use super::canvas::{Canvas, Spot};
use super::detail::Detail;
use super::flow::Flow;
use super::state::{Job, Readiness};
use crate::advice::WorkStep;

/// The steps of the work that keep whoever drills safe, and the last look before the drill. The rules have their words.
const CARE: [&str; 4] = [
    "read-back",
    "guard-the-machine",
    "keep-dust-down",
    "air-for-resin",
];

/// Writes the part; gives back how far down it reaches.
pub(super) fn write(
    canvas: &mut Canvas,
    job: &Job<'_>,
    at: Spot,
    wide: f64,
    detail: Detail,
) -> f64 {
    let mut flow = Flow::new(canvas, at, wide);
    flow.heading("7  At the machine, and at hand-over");
    let care: Vec<&WorkStep> = CARE
        .iter()
        .filter_map(|id| {
            job.advice
                .spec()
                .work()
                .iter()
                .find(|step| step.id() == *id)
        })
        .collect();
    for step in care {
        let because = step
            .because()
            .filter(|_| detail != Detail::Short)
            .map(|why| format!(" {why}"))
            .unwrap_or_default();
        flow.tick(&format!("{}{because}", step.text()));
    }
    if job.ready == Readiness::NotYet {
        return flow.bottom();
    }
    flow.skip(2.0);
    flow.strong("Before the customer leaves");
    for step in job.advice.spec().handover() {
        flow.tick(step.text());
    }
    flow.bottom()
}
