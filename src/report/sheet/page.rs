//! The page: where each part stands, and how large the grip is drawn so that everything fits.

use super::canvas::{Anchor, Canvas, Ink, PAGE, Spot};
use super::flow::{Flow, STRONG};
use super::state::Job;
use super::{basis, checks, grip, heading, layout, rulebook, section, weights};

/// Left free on all sides: printers reach no farther.
const MARGIN: f64 = 32.0;
/// Width of the column with the grip.
const GRIP: f64 = 432.0;
/// Between columns.
const GAP: f64 = 15.0;
/// For the signatures at the foot.
const FOOT: f64 = 21.0;
/// Sizes of the grip drawing, the ball's own size first.
const SCALES: [f64; 4] = [1.0, 0.75, 0.5, 0.375];
/// Ways to share the width among the last three parts; the one that reaches least far down is taken.
const SHARES: [[f64; 3]; 6] = [
    [0.27, 0.45, 0.28],
    [0.24, 0.50, 0.26],
    [0.30, 0.42, 0.28],
    [0.24, 0.46, 0.30],
    [0.28, 0.38, 0.34],
    [0.34, 0.36, 0.30],
];
const LOWEST: f64 = PAGE.1 - MARGIN - FOOT;
const WIDE: f64 = PAGE.0 - 2.0 * MARGIN;

/// How much is said beside the numbers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Detail {
    /// With the reason for each caution.
    Full,
    /// What to do, without the reason.
    Short,
}

/// Draws the whole sheet.
pub(super) fn draw(job: &Job<'_>) -> Canvas {
    let ways = SCALES
        .into_iter()
        .flat_map(|scale| [(scale, Detail::Full), (scale, Detail::Short)]);
    let mut drawn = Canvas::new();
    for (scale, detail) in ways {
        let (canvas, bottom) = attempt(job, scale, detail);
        drawn = canvas;
        if bottom <= LOWEST {
            break;
        }
    }
    let left_out = drawn.left_out();
    drawn.set_floor(PAGE.1);
    if left_out {
        let words = "Not everything fits on this sheet: read the advice too.";
        drawn.text(
            (MARGIN, LOWEST + 1.0),
            STRONG,
            Anchor::Start,
            Ink::Dark,
            words,
        );
    }
    rulebook::signatures(&mut drawn, (MARGIN, LOWEST + 3.0), WIDE);
    drawn
}

/// The sheet with the grip at one size, and how far down it would reach.
fn attempt(job: &Job<'_>, scale: f64, detail: Detail) -> (Canvas, f64) {
    let mut canvas = Canvas::new();
    canvas.set_floor(LOWEST - 9.0);
    let y = heading::title(&mut canvas, job, (MARGIN, MARGIN - 6.0), WIDE);
    let top = heading::ball(&mut canvas, job, (MARGIN, y), WIDE);
    let beside = MARGIN + GRIP + GAP;
    let narrow = WIDE - GRIP - GAP;
    let part = |canvas: &mut Canvas, name: &str, at: Spot, wide: f64| {
        let mut flow = Flow::new(canvas, at, wide);
        flow.heading(name);
        (at.0, flow.bottom() + 1.0)
    };
    let at = part(&mut canvas, "2  The grip", (MARGIN, top), GRIP);
    let left = grip::write(&mut canvas, job, at, GRIP, scale);
    let at = part(&mut canvas, "3  Sections", (beside, top), narrow);
    let right = section::write(&mut canvas, job, at, narrow);
    let at = part(
        &mut canvas,
        "4  Layout, with the wax pencil",
        (beside, right + 1.0),
        narrow,
    );
    let right = layout::write(&mut canvas, job, at, narrow);
    let at = part(&mut canvas, "5  Weights", (MARGIN, left), GRIP);
    let left = weights::write(&mut canvas, job, at, GRIP);
    let top = left.max(right) + 1.0;
    let mut best: Option<(Canvas, f64)> = None;
    for shares in SHARES {
        let mut canvas = canvas.clone();
        let bottom = last_parts(&mut canvas, job, top, shares, detail);
        if best.as_ref().is_none_or(|(_, reach)| bottom < *reach) {
            best = Some((canvas, bottom));
        }
    }
    best.unwrap_or((canvas, top))
}

/// Parts 6 to 8 side by side; gives back how far down they reach.
fn last_parts(
    canvas: &mut Canvas,
    job: &Job<'_>,
    top: f64,
    shares: [f64; 3],
    detail: Detail,
) -> f64 {
    let [first, second, third] = shares.map(|share| share * (WIDE - 2.0 * GAP));
    let (middle, right) = (MARGIN + first + GAP, MARGIN + first + second + 2.0 * GAP);
    let first = basis::write(canvas, job, (MARGIN, top), first);
    let second = checks::write(canvas, job, (middle, top), second, detail);
    let third = rulebook::write(canvas, job, (right, top), third);
    first.max(second).max(third)
}
