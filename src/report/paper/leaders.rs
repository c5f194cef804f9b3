//! Words beside a drawing, each on a line that leads to what it names. No two such lines cross.

use super::canvas::{Anchor, Canvas, Ink, Pen, Spot};
use super::letters::{self, Font};

/// The letters of a drawing's words.
pub(in crate::report) const WORDS: Font = Font::plain(11.2);
/// The first line of a label.
pub(in crate::report) const NAME: Font = Font::bold(11.2);
/// From one line of words to the next.
pub(in crate::report) const LEADING: f64 = 12.6;
/// Between two labels.
const GAP: f64 = 7.0;
/// Between a label and the start of its line.
const BREATH: f64 = 4.0;
const LEADER: Pen = Pen::of(0.5, Ink::Dark);

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::report) enum Side {
    Left,
    Right,
}

/// Words for one thing in a drawing. The first line is its name.
#[derive(Clone, Debug)]
pub(in crate::report) struct Label {
    pub(in crate::report) side: Side,
    pub(in crate::report) words: Vec<String>,
    pub(in crate::report) to: Spot,
    /// Where the line bends, if it must get around something.
    pub(in crate::report) via: Option<Spot>,
}

impl Label {
    pub(in crate::report) fn new(side: Side, to: Spot, words: Vec<String>) -> Label {
        Label {
            side,
            words,
            to,
            via: None,
        }
    }

    /// The way of the line from where it starts beside the words.
    fn line(&self, start: Spot) -> Vec<Spot> {
        [Some(start), self.via, Some(self.to)]
            .into_iter()
            .flatten()
            .collect()
    }

    /// Where the line first goes.
    fn aim(&self) -> Spot {
        self.via.unwrap_or(self.to)
    }
}

/// The columns of words on both sides of a drawing: `left` and `right` bound the drawing, `wide` is each column's width.
#[derive(Clone, Copy, Debug)]
pub(in crate::report) struct Columns {
    pub(in crate::report) left: f64,
    pub(in crate::report) right: f64,
    pub(in crate::report) wide: (f64, f64),
    pub(in crate::report) top: f64,
    pub(in crate::report) bottom: f64,
}

/// A label with its words broken into lines, and where it stands.
struct Placed<'l> {
    label: &'l Label,
    lines: Vec<(String, Font)>,
    top: f64,
}

impl Placed<'_> {
    fn high(&self) -> f64 {
        LEADING * self.lines.len() as f64
    }
}

/// Writes all labels with their lines. Gives back how far down they reach.
pub(in crate::report) fn write(canvas: &mut Canvas, columns: &Columns, labels: &[Label]) -> f64 {
    let mut bottom = columns.top;
    for side in [Side::Left, Side::Right] {
        let (edge, wide) = match side {
            Side::Left => (columns.left, columns.wide.0),
            Side::Right => (columns.right, columns.wide.1),
        };
        let mut placed: Vec<Placed<'_>> = labels
            .iter()
            .filter(|label| label.side == side && label.to.0.is_finite() && label.to.1.is_finite())
            .map(|label| Placed {
                label,
                lines: broken(label, wide - BREATH),
                top: 0.0,
            })
            .collect();
        placed.sort_by(|a, b| a.label.aim().1.total_cmp(&b.label.aim().1));
        arrange(&mut placed, columns);
        uncross(&mut placed, columns, edge);
        for one in &placed {
            draw(canvas, one, edge);
            bottom = bottom.max(one.top + one.high());
        }
    }
    bottom
}

/// How far down the words need to reach, whatever they are about.
pub(in crate::report) fn height(labels: &[Label], wide: (f64, f64)) -> f64 {
    let of = |side: Side, wide: f64| {
        let own = labels.iter().filter(|label| label.side == side);
        own.map(|label| broken(label, wide - BREATH).len() as f64 * LEADING + GAP)
            .sum::<f64>()
    };
    of(Side::Left, wide.0).max(of(Side::Right, wide.1))
}

fn broken(label: &Label, wide: f64) -> Vec<(String, Font)> {
    let mut lines = Vec::new();
    for (index, words) in label.words.iter().enumerate() {
        let font = if index == 0 { NAME } else { WORDS };
        lines.extend(
            letters::wrap(words, font, wide)
                .into_iter()
                .map(|line| (line, font)),
        );
    }
    lines
}

/// Puts each label as near the height of its thing as the others let it.
fn arrange(placed: &mut [Placed<'_>], columns: &Columns) {
    let mut free = columns.top;
    for one in placed.iter_mut() {
        one.top = (one.label.aim().1 - LEADING / 2.0).max(free);
        free = one.top + one.high() + GAP;
    }
    let mut floor = columns.bottom;
    for one in placed.iter_mut().rev() {
        one.top = one.top.min(floor - one.high());
        floor = one.top - GAP;
    }
    // More words than fit: they start at the top and reach below.
    let mut free = columns.top;
    for one in placed.iter_mut() {
        one.top = one.top.max(free);
        free = one.top + one.high() + GAP;
    }
}

/// Exchanges neighbours whose lines cross until none do. Each exchange makes the lines shorter, so it ends; the count is
/// there for lines that bend.
fn uncross(placed: &mut [Placed<'_>], columns: &Columns, edge: f64) {
    for _ in 0..placed.len() * placed.len() {
        let lines: Vec<Vec<Spot>> = placed
            .iter()
            .map(|one| one.label.line(start(one, edge)))
            .collect();
        let crossing = (0..placed.len()).find_map(|a| {
            (a + 1..placed.len())
                .find(|&b| cross(&lines[a], &lines[b]))
                .map(|b| (a, b))
        });
        let Some((a, b)) = crossing else { return };
        placed.swap(a, b);
        arrange(placed, columns);
    }
}

fn start(one: &Placed<'_>, edge: f64) -> Spot {
    (edge, one.top + LEADING * 0.55)
}

fn draw(canvas: &mut Canvas, one: &Placed<'_>, edge: f64) {
    let (at, anchor) = match one.label.side {
        Side::Left => (edge - BREATH, Anchor::End),
        Side::Right => (edge + BREATH, Anchor::Start),
    };
    for (index, (line, font)) in one.lines.iter().enumerate() {
        let base = one.top + LEADING * index as f64 + font.size * 0.92;
        canvas.text((at, base), *font, anchor, Ink::Dark, line);
    }
    canvas.path("leader", &one.label.line(start(one, edge)), false, LEADER);
    canvas.dot("leader-end", one.label.to, 1.5, Ink::Dark);
}

/// Whether two lines of several pieces cross.
fn cross(a: &[Spot], b: &[Spot]) -> bool {
    a.windows(2)
        .any(|p| b.windows(2).any(|q| pieces_cross(p[0], p[1], q[0], q[1])))
}

/// Whether two straight pieces have a point in common.
fn pieces_cross(a: Spot, b: Spot, c: Spot, d: Spot) -> bool {
    let turn = |p: Spot, q: Spot, r: Spot| (q.0 - p.0) * (r.1 - p.1) - (q.1 - p.1) * (r.0 - p.0);
    let (ab_c, ab_d) = (turn(a, b, c), turn(a, b, d));
    let (cd_a, cd_b) = (turn(c, d, a), turn(c, d, b));
    ab_c * ab_d < 0.0 && cd_a * cd_b < 0.0
}
