//! Part 4: the layout as steps with the wax pencil: small drawings of the ball, each with one line more, and words.

use glam::DVec3;

use super::canvas::{Anchor, Canvas, Ink, Pen, Spot};
use super::chart::{Chart, Face};
use super::detail::Detail;
use super::flow::{Flow, STRONG};
use super::hole::{self, Edge};
use super::state::Job;
use crate::advice::{Drilling, PlannedLayout};
use crate::report::page::capitalised;

/// Pieces of a drawn line between two points.
const PIECES: usize = 12;
/// Drawings in a row, and how wide each is.
const PER_ROW: usize = 5;
const ACROSS: f64 = 58.0;
/// Ways of stating the layout that are printed.
const STATED: usize = 3;
const BALL: Pen = Pen::of(0.8, Ink::Dark);
const HOLE: Pen = Pen::of(0.5, Ink::Dark);
const GUIDE: Pen = Pen::of(0.4, Ink::Pale);
const DONE: Pen = Pen::of(0.6, Ink::Dark).dashed("2 2");
const NEW: Pen = Pen::of(1.7, Ink::Accent);

/// Writes the part: drawings of the first steps, then the words of all. Gives back how far down it reaches.
pub(super) fn write(
    canvas: &mut Canvas,
    job: &Job<'_>,
    at: Spot,
    wide: f64,
    detail: Detail,
) -> f64 {
    let mut flow = Flow::headed(canvas, at, wide, "4  Layout, with the wax pencil");
    let Some((drilling, layout)) = job
        .drilling
        .and_then(|d| d.layout().as_ref().map(|l| (d, l)))
    else {
        flow.text("Not worked out: something is still to be measured.");
        return flow.bottom();
    };
    flow.entry("Layout:", layout.kind());
    let face = Face::at(looked_at(drilling, layout));
    let top = flow.bottom() + 3.0;
    let pictures = pictures(layout, detail);
    let each = wide / PER_ROW as f64;
    let mut y = top;
    for (row, steps) in layout.steps()[..pictures].chunks(PER_ROW).enumerate() {
        for column in 0..steps.len() {
            let at = (at.0 + each * column as f64, y);
            picture(canvas, drilling, layout, face, row * PER_ROW + column, at);
        }
        y += ACROSS + 5.0;
    }
    let mut flow = Flow::new(canvas, (at.0, y), wide);
    for (index, step) in layout.steps().iter().enumerate() {
        flow.entry(&(index + 1).to_string(), step.text());
    }
    let stated = if detail == Detail::Short { 0 } else { STATED };
    for (label, numbers) in layout.stated().iter().take(stated) {
        flow.entry(&format!("{}:", capitalised(label)), numbers);
    }
    for words in layout.track() {
        flow.text(words);
    }
    flow.bottom()
}

/// How many of the steps are drawn, from the first on: as far as there is something to draw, and room.
fn pictures(layout: &PlannedLayout, detail: Detail) -> usize {
    let most = match detail {
        Detail::Airy | Detail::Full => 3 * PER_ROW,
        Detail::Short => 2 * PER_ROW,
    };
    let drawn = layout
        .steps()
        .iter()
        .rposition(|step| !step.line().is_empty());
    drawn.map_or(0, |last| last + 1).min(most)
}

/// The middle of everything there is to see.
fn looked_at(drilling: &Drilling, layout: &PlannedLayout) -> DVec3 {
    let points = layout.steps().iter().flat_map(|step| step.line());
    let sum: DVec3 = points.map(|point| hole::surface(drilling, *point)).sum();
    let middle = sum.normalize_or_zero() + DVec3::Z;
    if middle.is_finite() { middle } else { DVec3::Z }
}

/// One step's drawing: what was drawn before dashed, what is new thick.
fn picture(
    canvas: &mut Canvas,
    drilling: &Drilling,
    layout: &PlannedLayout,
    face: Face,
    index: usize,
    at: Spot,
) {
    let Some(step) = layout.steps().get(index) else {
        return;
    };
    let number = (index + 1).to_string();
    canvas.text(
        (at.0, at.1 + 9.0),
        STRONG,
        Anchor::Start,
        Ink::Accent,
        &number,
    );
    let chart = Chart {
        view: face,
        origin: (at.0 + 8.0 + ACROSS / 2.0, at.1 + ACROSS / 2.0 + 1.0),
        scale: ACROSS / 2.0 / hole::radius(drilling),
    };
    around(canvas, &chart, drilling, ACROSS / 2.0);
    for old in layout.steps().iter().take(index) {
        line(canvas, &chart, drilling, old.line(), "step-before", DONE);
    }
    line(canvas, &chart, drilling, step.line(), "step", NEW);
}

/// The ball, its holes, centreline and midline.
fn around(canvas: &mut Canvas, chart: &Chart<Face>, drilling: &Drilling, radius: f64) {
    let round: Vec<Spot> = (0..64)
        .map(|step| {
            let angle = std::f64::consts::TAU * f64::from(step) / 64.0;
            (
                chart.origin.0 + radius * libm::cos(angle),
                chart.origin.1 + radius * libm::sin(angle),
            )
        })
        .collect();
    canvas.path("ball", &round, true, BALL);
    let quarter = drilling.circumference() / 4.0;
    for ends in [
        [(0.0, -quarter), (0.0, quarter)],
        [(-quarter, 0.0), (quarter, 0.0)],
    ] {
        let way = through(drilling, &[ends[0], (0.0, 0.0), ends[1]]);
        for run in chart.seen(&way) {
            canvas.path("guide", &run, false, GUIDE);
        }
    }
    for hole in hole::all(drilling) {
        canvas.path("hole", &chart.spots(&hole.rim(Edge::Cut)), true, HOLE);
    }
}

/// One wax-pencil line, or a mark where it is a single point.
fn line(
    canvas: &mut Canvas,
    chart: &Chart<Face>,
    drilling: &Drilling,
    points: &[(f64, f64)],
    role: &str,
    pen: Pen,
) {
    if let [only] = points {
        let Some((x, y)) = chart.spot(hole::surface(drilling, *only)) else {
            return;
        };
        canvas.line(role, (x - 3.0, y - 3.0), (x + 3.0, y + 3.0), pen);
        canvas.line(role, (x - 3.0, y + 3.0), (x + 3.0, y - 3.0), pen);
        return;
    }
    for run in chart.seen(&through(drilling, points)) {
        canvas.path(role, &run, false, pen);
    }
}

/// Points along the ball through all of these.
fn through(drilling: &Drilling, points: &[(f64, f64)]) -> Vec<DVec3> {
    let places: Vec<DVec3> = points
        .iter()
        .map(|point| hole::surface(drilling, *point))
        .collect();
    places
        .windows(2)
        .flat_map(|pair| hole::way(pair[0], pair[1], PIECES))
        .collect()
}
