//! Part 4: the layout as steps with the wax pencil: small drawings of the ball, each with one line more, and words.

use glam::DVec3;

use super::canvas::{Anchor, Canvas, Ink, Pen, Spot};
use super::chart::{Chart, Face};
use super::flow::{Flow, LEADING, STRONG, TEXT};
use super::hole::{self, Edge};
use super::letters;
use super::page::Detail;
use super::state::Job;
use crate::advice::{Drilling, PlannedLayout};

/// Pieces of a drawn line between two points.
const PIECES: usize = 12;
/// Lines of words beside a drawing.
const WORDS: usize = 7;
/// Ways of stating the layout that are printed.
const STATED: usize = 4;
const BALL: Pen = Pen::of(0.8, Ink::Dark);
const HOLE: Pen = Pen::of(0.5, Ink::Dark);
const GUIDE: Pen = Pen::of(0.4, Ink::Pale);
const DONE: Pen = Pen::of(0.6, Ink::Dark).dashed("2 2");
const NEW: Pen = Pen::of(1.7, Ink::Accent);

/// Writes the part: two columns of drawings for the first steps, words for the others. Gives back how far down it reaches.
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
        flow.text("No layout worked out. Leave the pin where the advice puts it.");
        return flow.bottom();
    };
    flow.entry("Layout:", layout.kind());
    let mut y = flow.bottom() + 3.0;
    let face = Face::at(looked_at(drilling, layout));
    let pictures = pictures(layout, detail);
    let columns = if pictures < 4 { 1 } else { 2 };
    let gap = 8.0;
    let each = (wide - gap * (columns as f64 - 1.0)) / columns as f64;
    for (row, steps) in layout.steps()[..pictures].chunks(columns).enumerate() {
        let mut reach = y;
        for column in 0..steps.len() {
            let at = (at.0 + (each + gap) * column as f64, y);
            reach = reach.max(step(
                canvas,
                drilling,
                layout,
                face,
                row * columns + column,
                at,
                each,
            ));
        }
        y = reach + 4.0;
    }
    let mut flow = Flow::new(canvas, (at.0, y), wide);
    for (index, step) in layout.steps().iter().enumerate().skip(pictures) {
        flow.entry(&(index + 1).to_string(), step.text());
    }
    for (label, numbers) in layout.stated().iter().take(STATED) {
        flow.entry(&format!("{label}:"), numbers);
    }
    for words in layout.track() {
        flow.text(words);
    }
    flow.bottom()
}

/// How many of the steps are drawn, from the first on: as far as there is something to draw, and room.
fn pictures(layout: &PlannedLayout, detail: Detail) -> usize {
    let most = match detail {
        Detail::Airy => 10,
        Detail::Full => 8,
        Detail::Short => 6,
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

/// One drawing and its words beside it; gives back how far down they reach.
fn step(
    canvas: &mut Canvas,
    drilling: &Drilling,
    layout: &PlannedLayout,
    face: Face,
    index: usize,
    at: Spot,
    wide: f64,
) -> f64 {
    let Some(step) = layout.steps().get(index) else {
        return at.1;
    };
    let across = if wide > 200.0 { 70.0 } else { 56.0 };
    let ball = hole::radius(drilling);
    let chart = Chart {
        view: face,
        origin: (at.0 + across / 2.0 + 1.0, at.1 + across / 2.0 + 2.0),
        scale: across / 2.0 / ball,
    };
    around(canvas, &chart, drilling, across / 2.0);
    let (before, _) = layout.steps().split_at(index);
    for old in before {
        line(canvas, &chart, drilling, old.line(), "step-before", DONE);
    }
    line(canvas, &chart, drilling, step.line(), "step", NEW);
    let left = at.0 + across + 8.0;
    let mut y = at.1 + 11.0;
    let number = (index + 1).to_string();
    canvas.text((left, y), STRONG, Anchor::Start, Ink::Accent, &number);
    let number = letters::width(&number, STRONG) + 4.0;
    // The first line stands beside the number.
    let mut first = true;
    for words in letters::lines(step.text(), TEXT, wide - across - 8.0 - number, WORDS) {
        if !std::mem::take(&mut first) {
            y += LEADING;
        }
        canvas.text((left + number, y), TEXT, Anchor::Start, Ink::Dark, &words);
    }
    (y + 3.0).max(at.1 + across + 4.0)
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
