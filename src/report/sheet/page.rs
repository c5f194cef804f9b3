//! The page: where each part stands, and how large the grip is drawn so that everything fits.
//!
//! Two columns. The grip leads the left one, sections and layout the right one; parts 5 to 8 follow in order, each below
//! either column.

use super::canvas::{Anchor, Canvas, Ink, PAGE, Spot};
use super::detail::Detail;
use super::flow::STRONG;
use super::state::Job;
use super::{basis, checks, grip, heading, layout, rulebook, section, weights};

/// Left free on all sides: printers reach no farther.
const MARGIN: f64 = 28.0;
/// Width of the column with the grip.
const GRIP: f64 = 404.0;
/// Between columns.
const GAP: f64 = 15.0;
/// For the signatures at the foot.
const FOOT: f64 = 21.0;
/// Sizes of the grip drawing, the ball's own size first.
const SCALES: [f64; 6] = [1.0, 0.75, 0.625, 0.5625, 0.5, 0.375];
/// Below a part.
const GAP_BELOW: f64 = 1.0;
/// More above a part, where there is room for it.
const AIR: f64 = 6.0;
/// Which of the parts 5 to 8 stand in the right column, one bit a part, 5 the lowest. What reads best comes first.
const RIGHT: [u8; 16] = [
    0b1100, 0b1000, 0b1110, 0b0100, 0b1101, 0b1111, 0b0000, 0b1011, 0b0111, 0b1001, 0b1010, 0b0011,
    0b0110, 0b0101, 0b0001, 0b0010,
];
const WIDE: f64 = PAGE.0 - 2.0 * MARGIN;
const SIGNED: f64 = PAGE.1 - MARGIN - FOOT;
/// Nothing but signatures stands below this.
const LOWEST: f64 = SIGNED - 9.0;

/// A column, and how far down it is written.
#[derive(Clone, Copy, Debug)]
struct Column {
    left: f64,
    wide: f64,
    y: f64,
}

impl Column {
    fn add(&mut self, canvas: &mut Canvas, write: impl FnOnce(&mut Canvas, Spot, f64) -> f64) {
        self.y = write(canvas, (self.left, self.y), self.wide) + GAP_BELOW;
    }
}

/// Draws the whole sheet.
pub(super) fn draw(job: &Job<'_>) -> Canvas {
    let mut drawn = fitting(job);
    let left_out = drawn.left_out();
    drawn.set_floor(PAGE.1);
    if left_out {
        let words = "Not everything fits on this sheet: read the advice too.";
        drawn.text(
            (MARGIN, SIGNED + 1.0),
            STRONG,
            Anchor::Start,
            Ink::Dark,
            words,
        );
    }
    rulebook::signatures(&mut drawn, (MARGIN, SIGNED + 3.0), WIDE);
    drawn
}

/// The largest and fullest sheet that fits; if none does, the smallest, cut off above the signatures.
fn fitting(job: &Job<'_>) -> Canvas {
    let mut least: Option<(Canvas, f64)> = None;
    for scale in SCALES {
        for detail in [Detail::Airy, Detail::Full, Detail::Short] {
            let (canvas, columns) = lead(job, scale, detail);
            for right in RIGHT {
                let mut canvas = canvas.clone();
                let bottom = rest(&mut canvas, job, columns, right, detail);
                if bottom <= LOWEST {
                    return canvas;
                }
                if least.as_ref().is_none_or(|(_, reach)| bottom < *reach) {
                    least = Some((canvas, bottom));
                }
            }
        }
    }
    least.map_or_else(Canvas::new, |(canvas, _)| canvas)
}

/// Everything down to the layout, with the grip at one size.
fn lead(job: &Job<'_>, scale: f64, detail: Detail) -> (Canvas, [Column; 2]) {
    let mut canvas = Canvas::new();
    canvas.set_floor(LOWEST);
    let y = heading::warning(&mut canvas, job, (MARGIN, MARGIN - 4.0), WIDE);
    let y = heading::ball(&mut canvas, job, (MARGIN, y), WIDE);
    let column = |left, wide| Column { left, wide, y };
    let mut left = column(MARGIN, GRIP);
    let mut right = column(MARGIN + GRIP + GAP, WIDE - GRIP - GAP);
    left.add(&mut canvas, |canvas, at, wide| {
        grip::write(canvas, job, at, wide, scale)
    });
    right.add(&mut canvas, |canvas, at, wide| {
        section::write(canvas, job, at, wide)
    });
    right.add(&mut canvas, |canvas, at, wide| {
        layout::write(canvas, job, at, wide, detail)
    });
    (canvas, [left, right])
}

/// Parts 5 to 8, each in the column that its bit says; gives back how far down they reach.
fn rest(
    canvas: &mut Canvas,
    job: &Job<'_>,
    [mut left, mut right]: [Column; 2],
    bits: u8,
    detail: Detail,
) -> f64 {
    let air = if detail == Detail::Airy { AIR } else { 0.0 };
    for part in 0..4 {
        let column = if bits >> part & 1 == 1 {
            &mut right
        } else {
            &mut left
        };
        column.y += air;
        column.add(canvas, |canvas, at, wide| match part {
            0 => weights::write(canvas, job, at, wide),
            1 => basis::write(canvas, job, at, wide),
            2 => checks::write(canvas, job, at, wide, detail),
            _ => rulebook::write(canvas, job, at, wide),
        });
    }
    left.y.max(right.y)
}
