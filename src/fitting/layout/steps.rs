//! What to draw on the ball with a wax pencil, one line at a time, starting from the pin.

use super::great_circle::{heading, turn};
use super::{HoleMark, Layout, Point, path, phrase};
use crate::fitting::Sphere;

/// Inches that a line is drawn past what it is for; for the drawing only.
const PAST: f64 = 1.0;
/// Inches either way of the grip centre that a line is drawn where nothing says how far; for the drawing only.
const REACH: f64 = 3.0;
/// What to do about a PAP that nobody measured.
const NO_PAP: &str = "Leave the PAP blank; measure it after 10 to 20 games.";

/// One thing to draw: the words, and a line of points on the ball; one point alone is a mark, none means nothing to draw.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    text: String,
    line: Vec<Point>,
}

impl Mark {
    fn new(text: String, line: Vec<Point>) -> Mark {
        Mark { text, line }
    }

    /// What to draw, or what to check.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The points the line goes through.
    pub fn line(&self) -> &[Point] {
        &self.line
    }
}

/// What to draw for this layout, in order: from the pin to the grip centre, centreline, midline, the PAP, the pin's line;
/// then what to check.
///
/// Points are those of a right hand's ball; a left hand's drawing is turned round by the caller, and `left_hand` only
/// chooses the words right and left. Lengths are written to a sixteenth, angles to a degree.
pub fn steps(ball: &Sphere, layout: &Layout, holes: &[HoleMark], left_hand: bool) -> Vec<Mark> {
    let bench = Bench {
        ball,
        layout,
        holes,
        left_hand,
    };
    let mut marks = bench.to_the_grip();
    marks.extend(bench.crossing_lines());
    marks.extend(bench.axis_point());
    marks.extend(bench.check_the_pin());
    marks.extend(bench.heavy_places());
    marks
}

struct Bench<'a> {
    ball: &'a Sphere,
    layout: &'a Layout,
    holes: &'a [HoleMark],
    left_hand: bool,
}

impl Bench<'_> {
    fn line(&self, from: Point, to: Point) -> Vec<Point> {
        path::line(self.ball, from, to)
    }

    /// The mark on the ball, other than the pin, that tells which way the core lies.
    fn second_mark(&self) -> Option<(&'static str, Point)> {
        let apart = |(_, point): &(&'static str, Point)| {
            !phrase::is_nothing(self.layout.pin().to(self.ball, *point))
        };
        let mass_bias = self.layout.mass_bias().map(|point| ("mass bias", point));
        let cg = self.layout.cg().map(|point| ("CG", point));
        mass_bias.or(cg).filter(apart)
    }

    /// The words for turning, at a point, from the way to one mark to another way: none where it is the same way.
    fn turning(&self, angle: f64) -> Option<String> {
        let written = phrase::angle(angle);
        (written != phrase::angle(0.0)).then(|| {
            let way = phrase::way_to_turn(angle, self.left_hand);
            format!("turn {written} {way}")
        })
    }

    /// Degrees counter-clockwise at `at`, from the way to one point to the way to another.
    fn angle(&self, at: Point, from: Point, to: Point) -> Option<f64> {
        let here = at.unit(self.ball);
        let from = heading(here, from.unit(self.ball))?;
        let to = heading(here, to.unit(self.ball))?;
        Some(turn(here, from, to).to_degrees())
    }

    fn to_the_grip(&self) -> Vec<Mark> {
        let (pin, grip) = (self.layout.pin(), Point::grip_centre());
        let out = pin.to_grip(self.ball);
        let find = "Find the pin: everything is measured from it.".to_owned();
        let mut marks = vec![Mark::new(find, vec![pin])];
        if phrase::is_nothing(out) {
            let text = "The pin is the grip centre.".to_owned();
            marks.push(Mark::new(text, vec![grip]));
            return marks;
        }
        let length = phrase::length(out);
        let start = match self.second_mark() {
            Some((name, mark)) => {
                let line = format!("Draw a line from the pin to the {name} mark.");
                marks.push(Mark::new(line, self.line(pin, mark)));
                let angle = self.angle(pin, mark, grip).unwrap_or(0.0);
                match self.turning(angle) {
                    Some(turn) => {
                        format!("At the pin, {turn} from that line and draw a line {length} long.")
                    }
                    None => format!("Mark {length} from the pin along that line."),
                }
            }
            None => format!("From the pin, draw a line {length} long, any way."),
        };
        let text = format!("{start} It ends at the grip centre.");
        marks.push(Mark::new(text, self.line(pin, grip)));
        marks
    }

    fn crossing_lines(&self) -> Vec<Mark> {
        let (pin, grip) = (self.layout.pin(), Point::grip_centre());
        let at_pin = phrase::is_nothing(pin.to_grip(self.ball));
        let seen = if at_pin {
            self.second_mark()
        } else {
            Some(("pin", pin))
        };
        let first = match seen {
            None => "Draw the centreline through the grip centre, any way.".to_owned(),
            Some((name, mark)) => {
                let up = 90.0 - mark.grip_direction(self.ball);
                let up = if up > 180.0 { up - 360.0 } else { up };
                match self.turning(up) {
                    None => format!("The line to the {name} is the centreline, fingers up."),
                    Some(turn) => format!(
                        "At the grip centre, {turn} from the line to the {name}. Draw the centreline, fingers that way."
                    ),
                }
            }
        };
        let heights = self.holes.iter().map(|hole| hole.mouth().up());
        let top = heights.clone().fold(REACH, f64::max) + PAST;
        let bottom = heights.fold(-REACH, f64::min) - PAST;
        let overs = [self.layout.pap().map_or(0.0, |pap| pap.over()), 0.0];
        let right = overs.into_iter().fold(REACH, f64::max) + PAST;
        let left = overs.into_iter().fold(-REACH, f64::min) - PAST;
        let up = |at| Point::from_up_first(self.ball, at, 0.0).ok();
        let over = |at| Point::new(self.ball, at, 0.0).ok();
        let through = |ends: [Option<Point>; 2]| match ends {
            [Some(one), Some(other)] => {
                let mut line = self.line(one, grip);
                line.extend(self.line(grip, other).into_iter().skip(1));
                line
            }
            _ => vec![grip],
        };
        let quarter = self.ball.quarter();
        let ends = |low: f64, high: f64| (low.max(-2.0 * quarter), high.min(2.0 * quarter));
        let (bottom, top) = ends(bottom, top);
        let (left, right) = ends(left, right);
        vec![
            Mark::new(first, through([up(bottom), up(top)])),
            Mark::new(
                "Draw the midline square to it, through the grip centre.".to_owned(),
                through([over(left), over(right)]),
            ),
            Mark::new(
                "Where they cross is the grip centre.".to_owned(),
                vec![grip],
            ),
        ]
    }

    fn axis_point(&self) -> Vec<Mark> {
        let Some(pap) = self.layout.pap() else {
            return vec![Mark::new(NO_PAP.to_owned(), Vec::new())];
        };
        let mut marks = Vec::new();
        let foot = Point::new(self.ball, pap.over(), 0.0).unwrap_or(pap);
        if !phrase::is_nothing(pap.over()) {
            let side = phrase::side(pap.over(), self.left_hand);
            let over = phrase::length(pap.over());
            let text = format!("Over: mark {over} along the midline to the {side}.");
            marks.push(Mark::new(text, self.line(Point::grip_centre(), foot)));
        }
        let text = if phrase::is_nothing(pap.up()) {
            "That mark is the PAP. The line square to the midline there is the VAL.".to_owned()
        } else {
            let (up, height) = (phrase::length(pap.up()), phrase::height(pap.up()));
            format!("Draw the VAL there, square to the midline. {up} {height} it is the PAP.")
        };
        marks.push(Mark::new(text, self.val(pap, foot)));
        let pin = self.layout.pin();
        let distance = pin.to(self.ball, pap);
        let text = if phrase::is_nothing(distance) {
            "The pin is the PAP.".to_owned()
        } else {
            let length = phrase::length(distance);
            match self.layout.val(self.ball) {
                Ok(val) => format!(
                    "Join pin and PAP: {length}. At the PAP it stands {} from the upper VAL{}.",
                    phrase::angle(val),
                    if val < 0.0 {
                        ", away from the grip"
                    } else {
                        ""
                    }
                ),
                Err(_) => format!("Join pin and PAP: {length}."),
            }
        };
        marks.push(Mark::new(text, self.line(pin, pap)));
        marks
    }

    /// The VAL from below the midline or the PAP to above them.
    fn val(&self, pap: Point, foot: Point) -> Vec<Point> {
        let quarter = self.ball.quarter();
        let reach = self.layout.pin().up();
        let top = pap.up().max(reach).max(0.0) + PAST;
        let bottom = pap.up().min(0.0) - PAST;
        let at = |up: f64| Point::new(self.ball, pap.over(), up.clamp(-quarter, quarter));
        match (at(bottom), at(top)) {
            (Ok(low), Ok(high)) => self.line(low, high),
            _ => vec![foot, pap],
        }
    }

    fn check_the_pin(&self) -> Vec<Mark> {
        let pin = self.layout.pin();
        let foot = Point::new(self.ball, pin.over(), 0.0).unwrap_or(pin);
        let place = phrase::place(pin, self.left_hand);
        let mut marks = vec![Mark::new(
            format!("Check the pin by the midline: {place}."),
            self.line(foot, pin),
        )];
        let aside = pin.to_centreline(self.ball);
        if !phrase::is_nothing(aside) {
            let (up, _) = pin.up_first(self.ball);
            let level = Point::from_up_first(self.ball, up, 0.0).unwrap_or(pin);
            let text = format!(
                "Check the pin by the centreline: {} {} along it, then {} straight to the {}.",
                phrase::length(up),
                phrase::height(up),
                phrase::length(aside),
                phrase::side(aside, self.left_hand)
            );
            marks.push(Mark::new(text, self.line(level, pin)));
        }
        marks.extend(self.holes.iter().map(|hole| self.check_hole(hole)));
        marks
    }

    fn check_hole(&self, hole: &HoleMark) -> Mark {
        let pin = self.layout.pin();
        let gap = hole.to_edge(self.ball, pin);
        let name = hole.name();
        if gap <= 0.0 || phrase::is_nothing(gap) {
            let text = if phrase::is_nothing(gap) {
                format!("The pin lies on the edge of the {name}.")
            } else {
                let inside = phrase::length(gap);
                format!("The pin lies inside the {name}, {inside} from its edge.")
            };
            return Mark::new(text, vec![pin]);
        }
        let length = phrase::length(gap);
        let edge = path::part_way(self.ball, pin, hole.mouth(), gap);
        let text = format!("Check: pin to the near edge of the {name}, {length}.");
        Mark::new(text, self.line(pin, edge))
    }

    fn heavy_places(&self) -> Vec<Mark> {
        let mut marks = Vec::new();
        if let Some(mass_bias) = self.layout.mass_bias() {
            let place = phrase::place(mass_bias, self.left_hand);
            let from_pap = self
                .layout
                .mass_bias_to_pap(self.ball)
                .map(|inches| format!(", {} from the PAP", phrase::length(inches)))
                .unwrap_or_default();
            let text = format!("The mass bias mark comes to lie {place}{from_pap}.");
            marks.push(Mark::new(text, vec![mass_bias]));
        }
        if let Some(cg) = self.layout.cg() {
            let place = phrase::place(cg, self.left_hand);
            let text = format!("The CG mark comes to lie {place}.");
            marks.push(Mark::new(text, vec![cg]));
        }
        marks
    }
}
