//! Part 3: sections through the holes, to scale, with depths, axes and webs; what to set the jig to.

use glam::DVec3;

use super::canvas::{Canvas, Ink, Pen, Spot};
use super::chart::{Chart, Section};
use super::flow::Flow;
use super::hole::{self, Edge, Hole};
use super::leaders::{self, Columns, Label, Side};
use super::state::{Job, Readiness};
use super::words;
use crate::advice::PlannedWeb;

/// Of the ball's own size.
const SCALE: f64 = 0.5;
/// Inches of ball shown on both sides of the outermost wall.
const ROUND: f64 = 0.3;
/// Inches of wall from which on it isn't told.
const AMPLE: f64 = 0.75;
const SKIN: Pen = Pen::of(1.2, Ink::Dark);
const WALL: Pen = Pen::of(1.2, Ink::Dark);
const BORE: Pen = Pen::of(0.6, Ink::Dark);
const AXIS: Pen = Pen::of(0.6, Ink::Accent).dashed("8 2 2 2");
const STRAIGHT: Pen = Pen::of(0.5, Ink::Pale).dashed("3 3");

/// Writes the part; gives back how far down it reaches.
pub(super) fn write(canvas: &mut Canvas, job: &Job<'_>, at: Spot, wide: f64) -> f64 {
    let mut y = Flow::headed(canvas, at, wide, "3  Sections").bottom() + 1.0;
    let Some(drilling) = job.drilling else {
        let mut flow = Flow::new(canvas, (at.0, y), wide);
        flow.text("Nothing to show yet.");
        return flow.bottom();
    };
    let holes = hole::all(drilling);
    let find = |name: &str| holes.iter().find(|hole| hole.is(name));
    let (thumb, middle, ring) = (find("thumb"), find("middle"), find("ring"));
    let fingers = middle.zip(ring);
    if let Some((middle, ring)) = fingers {
        // The one that stands on the left of the drawing comes first, as in the grip above.
        let pair = if middle.mouth.x <= ring.mouth.x {
            [middle, ring]
        } else {
            [ring, middle]
        };
        let section = Section::of(pair[0].mouth + pair[1].mouth, pair[1].mouth - pair[0].mouth);
        y = draw(canvas, job, &pair, section, (at.0, y), wide) + 4.0;
    }
    if let Some(thumb) = thumb.filter(|_| job.knows_depth("thumb")) {
        let toward = fingers.map_or(DVec3::Y, |(a, b)| a.mouth + b.mouth);
        let section = Section::of(thumb.mouth, toward);
        y = draw(canvas, job, &[thumb], section, (at.0, y), wide) + 2.0;
    }
    let mut flow = Flow::new(canvas, (at.0, y), wide);
    flow.text(match thumb {
        Some(_) if job.knows_depth("thumb") => {
            "Half size; depths along the axis. By the thumb, the fingers lie to the right."
        }
        Some(_) => "Half size; depths along the axis. Measure the length of the thumb: its section waits for the depth.",
        None => "Half size; depths along the axis.",
    });
    let mut rounding = ", to the nearest 1/64 in";
    for web in worth_telling(drilling.webs()) {
        let limit = wanted(web, rounding);
        if limit.is_some() {
            // Once is enough.
            rounding = "";
        }
        flow.text(&format!("{}{}.", web_words(web), limit.unwrap_or_default()));
    }
    if job.ready == Readiness::Drill {
        for hole in holes.iter().filter(|hole| !hole.plan.jig().is_empty()) {
            let name = hole.plan.name();
            let words = if job.knows_depth(name) {
                hole.plan.jig().join(" ")
            } else {
                "set it once the depth is known.".to_owned()
            };
            flow.entry(&format!("Jig, {name}:"), &words);
        }
    }
    flow.bottom()
}

/// The thinnest wall, and every other that is thin enough to care about.
fn worth_telling(webs: &[PlannedWeb]) -> impl Iterator<Item = &PlannedWeb> {
    let thin = |(index, web): &(usize, &PlannedWeb)| *index == 0 || web.least() < AMPLE;
    webs.iter().enumerate().filter(thin).map(|(_, web)| web)
}

fn web_words(web: &PlannedWeb) -> String {
    let deep = words::length(web.at_depth());
    let meets = words::known(web.breaks_at());
    let least = match (web.least() < 0.0, meets) {
        (true, Some(meets)) => format!("the holes run into each other {meets} down"),
        (true, None) => format!("the holes run into each other, {deep} deep"),
        (false, Some(meets)) => {
            let least = words::length(web.least());
            format!("least {least}, {deep} deep; would meet {meets} down")
        }
        (false, None) => format!("least {}, {deep} deep", words::length(web.least())),
    };
    format!("Web, {}: {least}", web.between())
}

/// The least wall that is wanted, if there is one; `exactly` says how it is meant.
fn wanted(web: &PlannedWeb, exactly: &str) -> Option<String> {
    let limit = web.limit();
    let words = || format!("; at least {} wanted{exactly}", words::length(limit));
    limit.is_finite().then(words)
}

/// One section through one or two holes; gives back how far down it reaches.
fn draw(
    canvas: &mut Canvas,
    job: &Job<'_>,
    holes: &[&Hole<'_>],
    section: Section,
    at: Spot,
    wide: f64,
) -> f64 {
    let mut chart = Chart {
        view: section,
        origin: (0.0, 0.0),
        scale: 100.0 * SCALE,
    };
    let points: Vec<Spot> = holes
        .iter()
        .flat_map(|hole| {
            let half = hole.axis.cross(DVec3::Z).normalize_or_zero() * hole.cut() / 2.0;
            let ends = [
                hole.mouth,
                hole.bottom(),
                hole.bottom() + half,
                hole.bottom() - half,
            ];
            hole.rim(Edge::Cut).into_iter().chain(ends)
        })
        .filter_map(|point| chart.spot(point))
        .collect();
    let bound = |pick: fn(&Spot) -> f64, choose: fn(f64, f64) -> f64| {
        points.iter().map(pick).reduce(choose)
    };
    let (Some(left), Some(right), Some(top), Some(bottom)) = (
        bound(|p| p.0, f64::min),
        bound(|p| p.0, f64::max),
        bound(|p| p.1, f64::min),
        bound(|p| p.1, f64::max),
    ) else {
        return at.1;
    };
    let round = 100.0 * SCALE * ROUND;
    let drawn = right - left + 2.0 * round;
    let each = (wide - drawn) / 2.0;
    // Sizes of no hand would leave no room for words; what is no number lies in no range.
    if !(40.0..wide).contains(&each) || !(0.0..400.0).contains(&(bottom - top)) {
        return at.1;
    }
    chart.origin = (at.0 + each + round - left, at.1 + 6.0 - top);
    skin(canvas, &chart, holes, (at.0 + each, at.0 + each + drawn));
    for hole in holes {
        walls(canvas, &chart, hole);
    }
    // The web's words stand below the holes.
    let room = if holes.len() > 1 { 34.0 } else { 20.0 };
    let labels = labels(job, holes, &chart);
    let columns = Columns {
        left: at.0 + each,
        right: at.0 + each + drawn,
        wide: (each, each),
        top: at.1,
        bottom: at.1 + (bottom - top + room).max(leaders::height(&labels, (each, each))),
    };
    leaders::write(canvas, &columns, &labels).max(columns.bottom)
}

/// The surface of the ball, open where the holes are.
fn skin(
    canvas: &mut Canvas,
    chart: &Chart<Section>,
    holes: &[&Hole<'_>],
    (left, right): (f64, f64),
) {
    let Some(ball) = holes.first().map(|hole| hole.mouth.length() * chart.scale) else {
        return;
    };
    let mut openings: Vec<(f64, f64)> = holes
        .iter()
        .filter_map(|hole| {
            let across: Vec<f64> = chart
                .spots(&hole.rim(Edge::Cut))
                .iter()
                .map(|spot| spot.0)
                .collect();
            Some((
                across.iter().copied().reduce(f64::min)?,
                across.iter().copied().reduce(f64::max)?,
            ))
        })
        .collect();
    openings.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut from = left;
    for (open, shut) in openings.into_iter().chain([(right, right)]) {
        let piece: Vec<Spot> = (0..=16)
            .map(|step| {
                let over = from + (open - from) * f64::from(step) / 16.0;
                let aside = over - chart.origin.0;
                (
                    over,
                    chart.origin.1 - libm::sqrt((ball * ball - aside * aside).max(0.0)),
                )
            })
            .collect();
        if open > from {
            canvas.path("skin", &piece, false, SKIN);
        }
        from = from.max(shut);
    }
}

/// Both walls and the flat bottom of a hole, its axis, and the line straight to the ball's centre.
fn walls(canvas: &mut Canvas, chart: &Chart<Section>, hole: &Hole<'_>) {
    let Some((mouth, bottom)) = chart.spot(hole.mouth).zip(chart.spot(hole.bottom())) else {
        return;
    };
    let (over, down) = (bottom.0 - mouth.0, bottom.1 - mouth.1);
    let long = libm::hypot(over, down);
    if long.is_nan() || long <= 0.0 {
        return;
    }
    let aside = (-down / long, over / long);
    let ball = hole.mouth.length() * chart.scale;
    let outline = |wide: f64| {
        let half = chart.scale * wide / 2.0;
        let wall = |side: f64| {
            let low = (
                bottom.0 + side * half * aside.0,
                bottom.1 + side * half * aside.1,
            );
            // Up the wall to the surface of the ball.
            let (x, y) = (low.0 - chart.origin.0, low.1 - chart.origin.1);
            let (ux, uy) = (-over / long, -down / long);
            let along = x * ux + y * uy;
            let root = (along * along - (x * x + y * y - ball * ball)).max(0.0);
            let up = -along + libm::sqrt(root);
            [(low.0 + up * ux, low.1 + up * uy), low]
        };
        let ([a, b], [d, c]) = (wall(1.0), wall(-1.0));
        [a, b, c, d]
    };
    let name = hole.plan.name();
    canvas.path(&format!("wall {name}"), &outline(hole.cut()), false, WALL);
    if hole.plan.outside().is_some() {
        let felt = hole
            .plan
            .oval()
            .map_or(hole.plan.bore(), |(wide, _, _)| wide);
        canvas.path("wall-bore", &outline(felt), false, BORE);
    }
    canvas.line("axis", mouth, bottom, AXIS);
    let straight = hole.mouth - hole.mouth.normalize_or_zero() * hole.plan.depth();
    if let Some(straight) = chart.spot(straight) {
        canvas.line("straight", mouth, straight, STRAIGHT);
    }
}

fn labels(job: &Job<'_>, holes: &[&Hole<'_>], chart: &Chart<Section>) -> Vec<Label> {
    let mut labels = Vec::new();
    let blank = job.ready != Readiness::Drill;
    for (index, hole) in holes.iter().enumerate() {
        let side = if index == 0 { Side::Left } else { Side::Right };
        let Some(wall) = on_wall(chart, hole, side) else {
            continue;
        };
        let depth = if blank {
            format!("{} in", words::BLANK)
        } else {
            words::length(hole.plan.depth())
        };
        let depth = format!("{depth} deep");
        labels.push(Label::new(
            side,
            wall,
            vec![words::named(hole).to_owned(), depth],
        ));
    }
    match holes {
        [thumb] => labels.extend(axis_labels(chart, thumb, blank)),
        [a, b] => labels.extend(web_label(job, chart, a, b)),
        _ => {}
    }
    labels
}

/// Half way down the outer wall.
fn on_wall(chart: &Chart<Section>, hole: &Hole<'_>, side: Side) -> Option<Spot> {
    let (mouth, bottom) = chart.spot(hole.mouth).zip(chart.spot(hole.bottom()))?;
    let (over, down) = (bottom.0 - mouth.0, bottom.1 - mouth.1);
    let long = libm::hypot(over, down);
    let half = chart.scale * hole.cut() / 2.0;
    let sign = if side == Side::Left { 1.0 } else { -1.0 };
    let at = (
        mouth.0 + 0.6 * over - sign * half * down / long,
        mouth.1 + 0.6 * down + sign * half * over / long,
    );
    (long > 0.0).then_some(at)
}

fn axis_labels(chart: &Chart<Section>, thumb: &Hole<'_>, blank: bool) -> Vec<Label> {
    let depth = thumb.plan.depth();
    let pitch = if blank {
        words::BLANK.to_owned()
    } else {
        words::forward(thumb.plan.forward())
    };
    let straight = vec!["Straight to".to_owned(), "the ball's centre".to_owned()];
    [
        (
            thumb.mouth + thumb.axis * (0.35 * depth),
            vec!["Axis".to_owned(), pitch],
        ),
        (
            thumb.mouth - thumb.mouth.normalize_or_zero() * (0.97 * depth),
            straight,
        ),
    ]
    .into_iter()
    .filter_map(|(point, words)| Some(Label::new(Side::Right, chart.spot(point)?, words)))
    .collect()
}

fn least_words(web: &PlannedWeb) -> String {
    if web.least() < 0.0 {
        "none: they meet".to_owned()
    } else {
        format!("least {}", words::length(web.least()))
    }
}

/// The wall between the fingers; its line comes from below, where no hole is in the way.
fn web_label(job: &Job<'_>, chart: &Chart<Section>, a: &Hole<'_>, b: &Hole<'_>) -> Option<Label> {
    let webs = job.drilling.map_or(&[][..], |drilling| drilling.webs());
    let both = |web: &&PlannedWeb| {
        web.between() == "middle and ring" || web.between() == "ring and middle"
    };
    let web = webs.iter().find(both)?;
    let deep = |hole: &Hole<'_>| hole.mouth + hole.axis * web.at_depth();
    let to = chart.spot((deep(a) + deep(b)) / 2.0)?;
    let lowest = chart.spot(a.bottom())?.1.max(chart.spot(b.bottom())?.1);
    let words = vec!["Web".to_owned(), least_words(web)];
    Some(Label {
        via: Some((to.0 - 3.0, lowest + 8.0)),
        ..Label::new(Side::Left, to, words)
    })
}
