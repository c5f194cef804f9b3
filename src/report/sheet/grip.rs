//! Part 2: the grip as drawn on the ball, true to scale, seen from outside with the fingers up.

use glam::DVec3;

use super::canvas::{Anchor, Canvas, Ink, Pen, Spot};
use super::chart::{Chart, Unrolled, View};
use super::flow::{Flow, TEXT};
use super::heading;
use super::hole::{self, Edge, Hole};
use super::leaders::{self, Columns, Label, Side};
use super::state::{Job, Readiness, spoken_name};
use super::words;
use crate::report::page::capitalised;

/// Narrowest and widest column of words.
const COLUMN: (f64, f64) = (76.0, 122.0);
/// Inches of the ball shown around the outermost rim.
const ROUND: f64 = 0.12;
/// Pieces of a drawn line.
const PIECES: usize = 24;
const CUT: Pen = Pen::of(1.5, Ink::Dark);
const BORE: Pen = Pen::of(0.7, Ink::Dark);
const GUIDE: Pen = Pen::of(0.6, Ink::Pale).dashed("10 3 2 3");
const SPAN: Pen = Pen::of(0.8, Ink::Accent);
const ARROW: Pen = Pen::of(1.2, Ink::Accent);

/// Writes the part; gives back how far down it reaches.
pub(super) fn write(canvas: &mut Canvas, job: &Job<'_>, at: Spot, wide: f64, scale: f64) -> f64 {
    let mut flow = Flow::headed(canvas, at, wide, "2  The grip");
    let Some(drilling) = job.drilling else {
        flow.text("Nothing is drawn from a hand that was not measured. Write its numbers here:");
        return form(flow, job, at, wide);
    };
    let at = (at.0, flow.bottom() + 1.0);
    let holes = hole::all(drilling);
    let around = Around::of(&holes);
    let drawn = 100.0 * scale * (around.right - around.left);
    let column = ((wide - drawn) / 2.0).clamp(COLUMN.0, COLUMN.1);
    let columns = (column, column);
    let chart = |origin| Chart {
        view: Unrolled,
        origin,
        scale: 100.0 * scale,
    };
    let (left, right) = (at.0 + column, at.0 + wide - column);
    let middle =
        f64::midpoint(left, right) - 100.0 * scale * f64::midpoint(around.left, around.right);
    let top = at.1 + 2.0;
    let mut chart = chart((middle, top + 100.0 * scale * around.top));
    let mut labels = labels(job, &holes, &chart, (left, right));
    let high =
        (100.0 * scale * (around.top - around.bottom)).max(leaders::height(&labels, columns));
    let spare = high - 100.0 * scale * (around.top - around.bottom);
    chart.origin.1 += spare / 2.0;
    labels = self::labels(job, &holes, &chart, (left, right));
    guides(canvas, &chart, &around, (left, right), job.knows_centre());
    for hole in &holes {
        draw(canvas, hole, &chart, job.ready);
    }
    for (_, from, to) in spans(&holes) {
        canvas.path(
            "span",
            &chart.spots(&hole::way(from, to, PIECES)),
            false,
            SPAN,
        );
    }
    let columns = Columns {
        left,
        right,
        wide: columns,
        top,
        bottom: top + high,
    };
    let below = leaders::write(canvas, &columns, &labels).max(top + high);
    foot(canvas, (at.0, below + 8.0), wide, scale, job.knows_centre())
}

/// How far the rims reach, in inches from the grip centre.
struct Around {
    left: f64,
    right: f64,
    top: f64,
    bottom: f64,
}

impl Around {
    fn of(holes: &[Hole<'_>]) -> Around {
        let mut around = Around {
            left: -1.0,
            right: 1.0,
            top: 0.6,
            bottom: -0.6,
        };
        for point in holes.iter().flat_map(|hole| hole.rim(Edge::Cut)) {
            let Some((over, up)) = Unrolled.flat(point) else {
                continue;
            };
            // `min` and `max` pass over what is no number.
            around.left = around.left.min(over);
            around.right = around.right.max(over);
            around.top = around.top.max(up);
            around.bottom = around.bottom.min(up);
        }
        around.left -= ROUND;
        around.right += ROUND;
        around.top += ROUND;
        around.bottom -= ROUND;
        around
    }
}

fn guides(
    canvas: &mut Canvas,
    chart: &Chart<Unrolled>,
    around: &Around,
    (left, right): (f64, f64),
    centre: bool,
) {
    let (over, down) = chart.origin;
    let up = |inches: f64| (over, down - chart.scale * inches);
    canvas.line("centreline", up(around.bottom), up(around.top), GUIDE);
    if !centre {
        return;
    }
    let end = |inches: f64| (over + chart.scale * inches).clamp(left + 6.0, right - 6.0);
    let ends = (end(around.left), end(around.right));
    canvas.line("midline", (ends.0, down), (ends.1, down), GUIDE);
    for (from, to) in [((-6.0, 0.0), (6.0, 0.0)), ((0.0, -6.0), (0.0, 6.0))] {
        let spot = |(x, y): Spot| (over + x, down + y);
        canvas.line("grip-centre", spot(from), spot(to), CUT);
    }
}

fn draw(canvas: &mut Canvas, hole: &Hole<'_>, chart: &Chart<Unrolled>, ready: Readiness) {
    let name = hole.plan.name();
    let pen = |pen: Pen| {
        if ready == Readiness::Drill {
            pen
        } else {
            pen.dashed("5 3")
        }
    };
    canvas.path(
        &format!("cut {name}"),
        &chart.spots(&hole.rim(Edge::Cut)),
        true,
        pen(CUT),
    );
    canvas.path(
        &format!("bore {name}"),
        &chart.spots(&hole.rim(Edge::Bore)),
        true,
        pen(BORE),
    );
    let Some(centre) = chart.spot(hole.mouth) else {
        return;
    };
    for (over, down) in [(5.0, 0.0), (0.0, 5.0)] {
        let (from, to) = (
            (centre.0 - over, centre.1 - down),
            (centre.0 + over, centre.1 + down),
        );
        canvas.line("mark", from, to, BORE);
    }
    canvas.dot(&format!("centre {name}"), centre, 1.0, Ink::Dark);
    if ready != Readiness::Drill {
        return;
    }
    // The way the bottom leans: what the axis has across the line to the ball's centre.
    let lean = hole.axis.reject_from(hole.mouth.normalize_or_zero());
    let tip = hole.mouth + lean * hole.mouth.length();
    let tip = chart.spot(tip.normalize_or_zero() * hole.mouth.length());
    if let Some(tip) = tip.filter(|_| lean.length() * hole.mouth.length() > 1.0 / 256.0) {
        canvas.arrow("pitch", centre, tip, ARROW);
    }
}

/// The spans and the bridge: the name, and the two near edges on the shortest way between the centres.
fn spans(holes: &[Hole<'_>]) -> Vec<(&'static str, DVec3, DVec3)> {
    let find = |name: &str| holes.iter().find(|hole| hole.is(name));
    let pairs = [
        ("middle", "thumb", "middle"),
        ("ring", "thumb", "ring"),
        ("bridge", "middle", "ring"),
    ];
    pairs
        .into_iter()
        .filter_map(|(what, a, b)| {
            let (a, b) = (find(a)?, find(b)?);
            Some((what, near(a, b.mouth)?, near(b, a.mouth)?))
        })
        .collect()
}

/// The point of the rim on the way to another point.
fn near(hole: &Hole<'_>, other: DVec3) -> Option<DVec3> {
    let normal = hole.mouth.cross(other).normalize_or_zero();
    let ahead = |point: &DVec3| (*point - hole.mouth).dot(other - hole.mouth) > 0.0;
    let rim = hole.rim(Edge::Cut);
    let mut found: Option<DVec3> = None;
    for (index, &a) in rim.iter().enumerate() {
        let b = *rim.get(index + 1).or(rim.first())?;
        let (here, there) = (a.dot(normal), b.dot(normal));
        if ahead(&a) && (here <= 0.0) != (there <= 0.0) {
            found =
                Some(a.lerp(b, here / (here - there)).normalize_or_zero() * hole.mouth.length());
        }
    }
    found.filter(|point| point.is_finite())
}

fn labels(
    job: &Job<'_>,
    holes: &[Hole<'_>],
    chart: &Chart<Unrolled>,
    (left, right): (f64, f64),
) -> Vec<Label> {
    let mut labels = Vec::new();
    let reach = 100.0;
    for hole in holes {
        let Some(centre) = chart.spot(hole.mouth) else {
            continue;
        };
        // Fingers get their words on their own side, the thumb on the side with fewer of them.
        let side = if hole.is("thumb") || centre.0 > chart.origin.0 {
            Side::Right
        } else {
            Side::Left
        };
        let (edge, sign) = match side {
            Side::Left => (left, -1.0),
            Side::Right => (right, 1.0),
        };
        let rim = chart.spots(&hole.rim(Edge::Cut));
        let outermost = rim
            .iter()
            .copied()
            .max_by(|a, b| (sign * a.0).total_cmp(&(sign * b.0)));
        let to = outermost
            .filter(|spot| (spot.0 - edge).abs() < 100.0 * reach)
            .unwrap_or(centre);
        labels.push(Label::new(side, to, hole_words(job, hole)));
    }
    for (what, from, to) in spans(holes) {
        let way = chart.spots(&hole::way(from, to, PIECES));
        let Some(&middle) = way.get(PIECES / 2) else {
            continue;
        };
        let words = job.span_words(what);
        if what == "bridge" {
            labels.push(bridge(holes, chart, middle, words));
            continue;
        }
        let side = if middle.0 > chart.origin.0 {
            Side::Right
        } else {
            Side::Left
        };
        // Where the two span lines are well apart: toward the fingers.
        let share = if middle.1 > chart.origin.1 {
            2 * PIECES / 3
        } else {
            PIECES / 2
        };
        labels.push(Label::new(
            side,
            way.get(share).copied().unwrap_or(middle),
            words,
        ));
    }
    let (over, down) = chart.origin;
    let around = Around::of(holes);
    let low = (over, down - chart.scale * (around.bottom + 0.03));
    labels.push(Label::new(Side::Left, low, vec!["Centreline".to_owned()]));
    if !job.knows_centre() {
        return labels;
    }
    let end = (over + chart.scale * (around.left + 0.05)).max(left + 10.0);
    labels.push(Label::new(
        Side::Left,
        (end, down),
        vec!["Midline".to_owned()],
    ));
    let middle = if holes.iter().any(|hole| hole.is("thumb")) {
        "middle of the span, on the centreline"
    } else {
        "where centreline and midline cross"
    };
    let centre = vec!["Grip centre".to_owned(), middle.to_owned()];
    // Aside of the midline, which would hide a level line.
    labels.push(Label {
        via: Some((over + 20.0, down + 16.0)),
        ..Label::new(Side::Right, chart.origin, centre)
    });
    labels
}

/// The bridge's line leaves upward between the two holes, then turns aside.
fn bridge(holes: &[Hole<'_>], chart: &Chart<Unrolled>, middle: Spot, words: Vec<String>) -> Label {
    let fingers = holes.iter().filter(|hole| !hole.is("thumb"));
    let rims = fingers.flat_map(|hole| chart.spots(&hole.rim(Edge::Cut)));
    let top = rims.map(|spot| spot.1).fold(middle.1, f64::min);
    let aside = 0.28 * (middle.1 - top);
    Label {
        via: Some((middle.0 + aside, top - 4.0)),
        ..Label::new(Side::Right, (middle.0 + 1.5, middle.1), words)
    }
}

fn hole_words(job: &Job<'_>, hole: &Hole<'_>) -> Vec<String> {
    let mut lines = vec![words::named(hole).to_owned()];
    if job.ready != Readiness::Drill {
        lines.extend([
            format!("cut {}", words::BLANK),
            format!("pitch {}", words::BLANK),
        ]);
        return lines;
    }
    lines.extend(words::sizes(hole, job.turn()));
    lines.extend(words::pitches(hole, job.turn()));
    lines.push(if job.knows_depth(hole.plan.name()) {
        format!("depth {}", words::length(hole.plan.depth()))
    } else {
        format!("depth {} in", words::BLANK)
    });
    if job.knows_centre() {
        let place = words::place(hole.plan.place(), job.turn());
        lines.push(format!("centre {place}"));
    }
    lines
}

/// The scale bar, and what the drawing is.
fn foot(canvas: &mut Canvas, at: Spot, wide: f64, scale: f64, centre: bool) -> f64 {
    let long = 100.0 * scale;
    let base = at.1 + 7.0;
    canvas.line("scale", (at.0, base), (at.0 + long, base), CUT);
    for end in [at.0, at.0 + long] {
        canvas.line("scale-end", (end, base - 4.0), (end, base + 4.0), CUT);
    }
    let measure = if scale >= 1.0 {
        "1 in: measure this line on the print; if it is not 1 in, print at 100%.".to_owned()
    } else {
        format!(
            "1 in on the ball, {} on paper: measure this line.",
            words::length(scale)
        )
    };
    let beside = (at.0 + long + 8.0, base + 3.5);
    canvas.text(beside, TEXT, Anchor::Start, Ink::Dark, &measure);
    let mut flow = Flow::new(canvas, (at.0, base + 6.0), wide);
    flow.text(if centre {
        "Seen from outside, fingers up. Distances from the grip centre are true along the ball. An arrow shows where the \
         bottom of a hole leans; it is as long as the pitch."
    } else {
        "Measure the palm mark: the grip centre and the midline stay blank until then. Seen from outside, fingers up. An \
         arrow shows where the bottom of a hole leans; it is as long as the pitch."
    });
    flow.bottom() + 2.0
}

/// Every number of the spec as a line to write on, where there is nothing to draw.
fn form(flow: Flow<'_>, job: &Job<'_>, at: Spot, wide: f64) -> f64 {
    let mut y = flow.bottom() + 13.0;
    let canvas = flow.into_canvas();
    let each = wide / 2.0;
    for pair in job.advice.spec().numbers().chunks(2) {
        for (column, number) in pair.iter().enumerate() {
            let left = at.0 + each * column as f64;
            let name = capitalised(&spoken_name(number.name()));
            heading::field(canvas, (left, y), each - 14.0, &name, "");
        }
        y += 17.0;
    }
    y - 6.0
}
