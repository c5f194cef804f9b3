//! The drawing of a roll: how far the second ball is from the first all along the lane, with its range. One ball alone is held
//! against the straight line it was sent on.
//!
//! The lane is seen from above by whoever throws, foul line below, so left on paper is left on the lane. Everything
//! is named in words beside it. The same roll gives the same bytes.

mod chart;
mod foot;
mod marks;
mod plot;
mod scale;
mod words;

#[cfg(test)]
mod tests;

use super::page::capitalised;
use super::paper::canvas::{Anchor, Canvas, Ink, PAGE, Spot};
use super::paper::flow::STRONG;
use super::paper::leaders::{self, Columns, Label};
use super::paper::letters::{self, Font};
use crate::advice::Roll;
use plot::Plot;
use scale::Scale;

/// Left free on all sides: printers reach no farther.
const MARGIN: f64 = 28.0;
const WIDE: f64 = PAGE.0 - 2.0 * MARGIN;
/// What the drawing says in a sentence or two.
const SAID: Font = Font::bold(15.5);
const SAID_LEADING: f64 = 19.0;
/// Lines of it, and of what it is about.
const SAID_LINES: usize = 4;
const ABOUT_LINES: usize = 2;
/// Above the pins, for the lines that come from there.
const OVER: f64 = 40.0;
/// Paper for a foot of the lane, the largest first.
const FEET: [f64; 7] = [12.0, 11.0, 10.0, 9.0, 8.0, 7.0, 6.0];

/// The drawing as an SVG document: one page that fits A4 and Letter alike and needs nothing from outside.
#[must_use]
pub fn roll_drawing(roll: &Roll) -> String {
    drawn(&Plot::of(roll))
}

fn drawn(plot: &Plot) -> String {
    let mut least = None;
    for foot in FEET {
        let (canvas, labels, bottom) = page(plot, foot);
        let fits = bottom <= PAGE.1 - MARGIN;
        least = Some((canvas, labels));
        if fits {
            break;
        }
    }
    let (canvas, labels) = least.unwrap_or_else(|| (Canvas::new(), Vec::new()));
    format!(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n{}",
        canvas.described(&title(plot), &described(plot, &labels))
    )
}

/// The whole page with a foot of the lane this long. Gives back how far down it reaches.
fn page(plot: &Plot, foot: f64) -> (Canvas, Vec<Label>, f64) {
    let mut canvas = Canvas::new();
    let top = heading(&mut canvas, plot, (MARGIN, MARGIN)) + OVER;
    let scale = Scale::of(plot, top, foot);
    chart::draw(&mut canvas, plot, &scale);
    let labels = marks::labels(plot, &scale);
    let columns = Columns {
        left: scale::LEFT,
        right: marks::EDGE,
        wide: (0.0, marks::WIDE),
        top: top - OVER + 6.0,
        bottom: scale.bottom() + chart::BELOW,
    };
    let words = leaders::write(&mut canvas, &columns, &labels);
    let y = words.max(columns.bottom) + 8.0;
    let bottom = foot::write(&mut canvas, plot, &scale, (MARGIN, y), WIDE);
    (canvas, labels, bottom)
}

/// What is drawn, and what comes of it.
fn heading(canvas: &mut Canvas, plot: &Plot, at: Spot) -> f64 {
    let mut y = at.1;
    for line in letters::lines(&title(plot), STRONG, WIDE, ABOUT_LINES) {
        canvas.text((at.0, y + 8.0), STRONG, Anchor::Start, Ink::Accent, &line);
        y += 12.0;
    }
    for line in letters::lines(&said(plot), SAID, WIDE, SAID_LINES) {
        canvas.text((at.0, y + 16.0), SAID, Anchor::Start, Ink::Dark, &line);
        y += SAID_LEADING;
    }
    y + 4.0
}

fn said(plot: &Plot) -> String {
    match plot.against {
        Some(_) => plot.said.clone(),
        None => format!(
            "How far {} leaves the straight line it is sent on, all along the lane.",
            marks::name(&plot.ball)
        ),
    }
}

fn title(plot: &Plot) -> String {
    let ball = capitalised(&marks::name(&plot.ball));
    let balls = match &plot.against {
        Some(first) => format!("{ball} against {}, thrown alike", marks::name(first)),
        None => format!("{ball} down the lane"),
    };
    match plot.bowler.as_str() {
        "" => balls,
        bowler => format!("{balls}, for {bowler}"),
    }
}

/// The drawing in words alone, from the pins to the foul line.
fn described(plot: &Plot, labels: &[Label]) -> String {
    let marks: Vec<String> = labels.iter().map(|label| label.words.join(", ")).collect();
    let seen = format!(
        "A lane seen from above, with the foul line below; the ball curves to the {}.",
        plot.side()
    );
    format!("{} {seen} {}.", said(plot), marks.join(". "))
}
