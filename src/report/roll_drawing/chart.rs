//! The drawing itself: a lane seen from above, foul line below, and how far the ball is to the side along it.

use super::plot::{Place, Plot};
use super::scale::{LANE, LEFT, RIGHT, Scale};
use crate::report::paper::canvas::{Anchor, Canvas, Ink, Pen, Spot};
use crate::report::paper::letters::{self, Font};

const SMALL: Font = Font::plain(10.45);
const EDGE: Pen = Pen::of(0.8, Ink::Dark);
const GRID: Pen = Pen::of(0.4, Ink::Pale);
const TICK: Pen = Pen::of(0.6, Ink::Dark);
const BAND: Pen = Pen::of(0.6, Ink::Dark);
const ZERO: Pen = Pen::of(1.1, Ink::Dark);
const LINE: Pen = Pen::of(2.2, Ink::Accent);
const OIL: Pen = Pen::of(0.8, Ink::Dark).dashed("5 3");
/// Below the foul line, for the boards.
pub(super) const BELOW: f64 = 37.0;
/// A range narrower than this on paper can't be seen beside the line in it.
const SEEN: f64 = 4.0;

/// Draws everything but the words on leader lines.
pub(super) fn draw(canvas: &mut Canvas, plot: &Plot, scale: &Scale) {
    if has_band(plot, scale) {
        band(canvas, plot, scale);
    }
    feet(canvas, scale);
    boards(canvas, plot, scale);
    if has_oil(plot) {
        let y = scale.down(plot.oil);
        canvas.line("oil", (LEFT, y), (RIGHT, y), OIL);
    }
    // The thin line stays to be seen on the thick one.
    canvas.path(
        "line",
        &edge(plot, scale, |place| place.boards),
        false,
        LINE,
    );
    // Where the first ball is in the gutter there is nothing to count from.
    let gutter = plot.against.as_ref().and_then(|first| first.gutter);
    let end = gutter
        .filter(|feet| (1.0..=LANE).contains(feet))
        .unwrap_or(LANE);
    canvas.line("zero", scale.spot(0.0, end), scale.spot(0.0, 0.0), ZERO);
}

/// Whether there is oil, and an end of it on the lane.
pub(super) fn has_oil(plot: &Plot) -> bool {
    (0.5..=LANE).contains(&plot.oil)
}

/// Whether there is a range to draw, wide enough to be seen.
pub(super) fn has_band(plot: &Plot, scale: &Scale) -> bool {
    let widest = plot.along.iter().map(|place| place.most - place.least);
    widest.fold(0.0, f64::max) * scale.board >= SEEN
}

fn edge(plot: &Plot, scale: &Scale, boards: impl Fn(&Place) -> f64) -> Vec<Spot> {
    plot.along
        .iter()
        .map(|place| scale.spot(boards(place), place.feet))
        .collect()
}

fn band(canvas: &mut Canvas, plot: &Plot, scale: &Scale) {
    // It ends where in some of the range a ball has left the lane.
    let is_wide = |place: &Place| place.most > place.least;
    let end = plot.along.iter().rposition(is_wide).map_or(0, |at| at + 1);
    let sides = [|place: &Place| place.least, |place: &Place| place.most];
    let [least, most] = sides.map(|side| {
        let mut spots = edge(plot, scale, side);
        spots.truncate(end);
        spots
    });
    let mut around = least.clone();
    around.extend(most.iter().rev());
    canvas.area("band", &around);
    canvas.path("band-edge", &least, false, BAND);
    canvas.path("band-edge", &most, false, BAND);
}

/// A line every ten feet, named at the left.
fn feet(canvas: &mut Canvas, scale: &Scale) {
    for ten in 0..=6 {
        let feet = f64::from(ten) * 10.0;
        let y = scale.down(feet);
        let (pen, words) = match ten {
            0 => (EDGE, "foul line".to_owned()),
            6 => (EDGE, "pins, 60 ft".to_owned()),
            _ => (GRID, format!("{feet} ft")),
        };
        canvas.line("feet", (LEFT, y), (RIGHT, y), pen);
        canvas.text((LEFT - 6.0, y + 3.6), SMALL, Anchor::End, Ink::Dark, &words);
    }
}

/// A tick for every board at the foul line, some of them numbered, and which way is which.
fn boards(canvas: &mut Canvas, plot: &Plot, scale: &Scale) {
    let y = scale.bottom();
    // Numbers stand clear of one another; ticks closer than three hundredths of an inch would run together.
    let farthest = (scale.zero - LEFT).max(RIGHT - scale.zero) / scale.board;
    let widest = letters::width(&format!("{farthest:.0}"), SMALL);
    let step = [1_i32, 2, 5, 10, 20, 50, 100, 1000, 10_000]
        .into_iter()
        .find(|step| f64::from(*step) * scale.board >= widest + 12.0);
    let tick = if scale.board >= 3.0 { Some(1) } else { step };
    if let Some(tick) = tick {
        for boards in reach(scale, tick) {
            let x = scale.across(f64::from(boards));
            canvas.line("board", (x, y), (x, y + 4.0), TICK);
        }
    }
    for boards in step.map(|step| reach(scale, step)).unwrap_or_default() {
        let words = boards.abs().to_string();
        let half = letters::width(&words, SMALL) / 2.0;
        let at = (scale.across(f64::from(boards)) - half, y + 15.0);
        canvas.text(at, SMALL, Anchor::Start, Ink::Dark, &words);
    }
    let (left, right) = match &plot.against {
        Some(_) => ("boards further left", "boards further right"),
        None => ("boards to the left", "boards to the right"),
    };
    let (base, middle) = (y + 30.0, y + 26.5);
    canvas.arrow("way", (LEFT + 18.0, middle), (LEFT, middle), TICK);
    canvas.text((LEFT + 22.0, base), SMALL, Anchor::Start, Ink::Dark, left);
    canvas.arrow("way", (RIGHT - 18.0, middle), (RIGHT, middle), TICK);
    canvas.text((RIGHT - 22.0, base), SMALL, Anchor::End, Ink::Dark, right);
}

/// Every so many boards that lie on the paper, with room for a number.
fn reach(scale: &Scale, step: i32) -> Vec<i32> {
    let on = |boards: i32| (LEFT..=RIGHT).contains(&scale.across(f64::from(boards)));
    let mut found = vec![0];
    for way in [step, -step] {
        let all = (1..=200).map(|count: i32| count.saturating_mul(way));
        found.extend(all.take_while(|boards| on(*boards)));
    }
    found
}
