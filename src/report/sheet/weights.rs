//! Part 5: the weights as predicted, each over an empty box for what the scale says.

use super::canvas::{Anchor, Canvas, Ink, Pen, Spot};
use super::flow::{Flow, STRONG, TEXT};
use super::letters;
use super::state::{Job, Readiness};
use super::words::{self, BLANK};

const BOX: f64 = 15.0;
const THIN: Pen = Pen::of(0.7, Ink::Dark);
/// Room for what stands at the left of the rows.
const NAMES: f64 = 56.0;

/// Writes the part; gives back how far down it reaches.
pub(super) fn write(canvas: &mut Canvas, job: &Job<'_>, at: Spot, wide: f64) -> f64 {
    let drilling = job.drilling.filter(|_| job.ready == Readiness::Drill);
    let said = drilling.and_then(|drilling| drilling.balance().as_ref());
    let (over, away) = if job.turn() > 0.0 {
        ("right", "left")
    } else {
        ("left", "right")
    };
    let blank = || BLANK.to_owned();
    let columns = [
        (
            "Finished",
            said.map_or_else(blank, |p| words::pounds(p.pounds())),
        ),
        (
            "Top",
            said.map_or_else(blank, |p| words::leaning(p.top(), "top", "bottom")),
        ),
        (
            "Side",
            said.map_or_else(blank, |p| words::leaning(p.side(), over, away)),
        ),
        (
            "Finger",
            said.map_or_else(blank, |p| words::leaning(p.finger(), "finger", "thumb")),
        ),
    ];
    let each = (wide - NAMES) / columns.len() as f64;
    let top = Flow::headed(canvas, at, wide, "5  Weights").bottom();
    for (row, name) in ["", "predicted", "measured"].iter().enumerate() {
        let base = top + 10.0 + 13.0 * row as f64 + if row == 2 { 2.0 } else { 0.0 };
        canvas.text((at.0, base), TEXT, Anchor::Start, Ink::Dark, name);
    }
    for (column, (name, predicted)) in columns.into_iter().enumerate() {
        let left = at.0 + NAMES + each * column as f64;
        canvas.text((left, top + 10.0), STRONG, Anchor::Start, Ink::Dark, name);
        let predicted = letters::fit(&predicted, TEXT, each - 4.0);
        canvas.text(
            (left, top + 23.0),
            TEXT,
            Anchor::Start,
            Ink::Dark,
            &predicted,
        );
        canvas.frame("measured", (left, top + 27.5), each - 12.0, BOX, THIN);
    }
    let mut flow = Flow::new(canvas, (at.0, top + 45.0), wide);
    if let Some(said) = said {
        let taken = format!(
            "Drilled out {}, put back {}.",
            words::ounces(said.out()),
            words::ounces(said.back())
        );
        let margin = said.margin().map(|margin| {
            let side = if margin < 0.0 { "over" } else { "inside" };
            format!(" {} {side} the nearest limit.", words::ounces(margin))
        });
        flow.text(&format!("{taken}{}", margin.unwrap_or_default()));
    }
    if let Some(core) = drilling.and_then(|drilling| drilling.core().as_ref()) {
        let (before, after) = (core.before(), core.after());
        let pair = |a: f64, b: f64| format!("{} to {}", thousandths(a), thousandths(b));
        flow.text(&format!(
            "Core: RG {}, differential {}, intermediate {} in.",
            pair(before.0, after.0),
            pair(before.1, after.1),
            pair(before.2, after.2)
        ));
    }
    flow.bottom()
}

fn thousandths(inches: f64) -> String {
    if inches.is_finite() && inches.abs() < 100.0 {
        format!("{inches:.3}")
    } else {
        BLANK.to_owned()
    }
}
