//! A drawn sheet read back by another XML reader, and what must hold of every sheet.

use roxmltree::{Document, Node, ParsingOptions};

/// Width and height of the page in hundredths of an inch: what A4 (8.27 in wide) and Letter (11 in high) have in common.
const PAGE: (f64, f64) = (827.0, 1100.0);
/// 7.5 points in hundredths of an inch.
const SMALLEST: f64 = 7.5 / 72.0 * 100.0;

pub type Spot = (f64, f64);

/// A line of text and the box it takes.
#[derive(Debug)]
pub struct Text {
    pub words: String,
    pub size: f64,
    pub left: f64,
    pub right: f64,
    pub top: f64,
    pub bottom: f64,
}

/// A drawn line; `role` is its class.
#[derive(Debug)]
pub struct Line {
    pub role: String,
    pub points: Vec<Spot>,
}

/// Everything on a sheet.
#[derive(Debug)]
pub struct Drawn {
    pub texts: Vec<Text>,
    pub lines: Vec<Line>,
    pub dots: Vec<(String, Spot)>,
}

impl Drawn {
    /// Reads the SVG of a sheet, alone or inside a page. Panics where it is not well-formed.
    pub fn read(sheet: &str) -> Drawn {
        let options = ParsingOptions {
            allow_dtd: true,
            ..ParsingOptions::default()
        };
        let document = Document::parse_with_options(sheet, options).unwrap();
        let all = || document.descendants();
        assert_eq!(all().filter(|node| node.has_tag_name("svg")).count(), 1);
        Drawn {
            texts: all()
                .filter(|node| node.has_tag_name("text"))
                .map(text)
                .collect(),
            lines: all()
                .filter(|node| node.has_tag_name("path"))
                .map(line)
                .collect(),
            dots: all()
                .filter(|node| node.has_tag_name("circle"))
                .map(|node| (role(node), (number(node, "cx"), number(node, "cy"))))
                .collect(),
        }
    }

    /// All words, one text a line.
    pub fn words(&self) -> String {
        let words: Vec<&str> = self.texts.iter().map(|text| text.words.as_str()).collect();
        words.join("\n")
    }

    /// The only line with this role.
    pub fn line(&self, role: &str) -> &Line {
        let mut found = self.lines.iter().filter(|line| line.role == role);
        let line = found.next().unwrap_or_else(|| panic!("no line {role}"));
        assert!(found.next().is_none(), "several lines {role}");
        line
    }

    /// The only dot with this role.
    pub fn dot(&self, role: &str) -> Spot {
        self.dots
            .iter()
            .find(|(known, _)| known == role)
            .unwrap_or_else(|| panic!("no dot {role}"))
            .1
    }

    /// The grip centre on paper, and how much paper the scale bar gives an inch of the ball.
    pub fn scale(&self) -> (Spot, f64) {
        let cross: Vec<&Line> = self
            .lines
            .iter()
            .filter(|line| line.role == "grip-centre")
            .collect();
        let (level, upright) = (&cross[0].points, &cross[1].points);
        let bar = &self.line("scale").points;
        let centre = (
            (level[0].0 + level[1].0) / 2.0,
            (upright[0].1 + upright[1].1) / 2.0,
        );
        (centre, bar[1].0 - bar[0].0)
    }

    /// Asserts that a dot stands for this point of a right hand's ball. Derived: the unrolled map keeps arc and direction
    /// from the grip centre. Paper is written to a ten-thousandth of an inch.
    pub fn is_true(&self, dot: &str, [x, y, z]: [f64; 3], left_hand: bool) {
        let x = if left_hand { -x } else { x };
        let aside = x.hypot(y);
        let ball = aside.hypot(z);
        let arc = ball * (z / ball).acos();
        let ((over, down), inch) = self.scale();
        let spot = self.dot(dot);
        let found = ((spot.0 - over) / inch, (down - spot.1) / inch);
        let wanted = (arc * x / aside, arc * y / aside);
        let near = (found.0 - wanted.0).abs() < 1e-3 && (found.1 - wanted.1).abs() < 1e-3;
        assert!(near, "{dot}: {found:?}, not {wanted:?}");
    }

    /// What is wrong with the drawing: off the page, too small, over one another, touched by a line.
    pub fn faults(&self) -> Vec<String> {
        let mut faults = Vec::new();
        for text in &self.texts {
            let words = &text.words;
            if text.left < 0.0 || text.right > PAGE.0 || text.top < 0.0 || text.bottom > PAGE.1 {
                faults.push(format!("off the page: {words}"));
            }
            if text.size < SMALLEST {
                faults.push(format!("smaller than 7.5 points: {words}"));
            }
            // Letters of common faces are about half as wide as high; a line set much tighter can't be read.
            let letters = words.chars().count() as f64;
            let each = (text.right - text.left) / (letters * text.size);
            if letters > 12.0 && words.is_ascii() && !(0.33..1.0).contains(&each) {
                faults.push(format!("letters {each:.2} of their size wide: {words}"));
            }
            for line in self.lines.iter().filter(|line| line.role != "stop") {
                if line
                    .points
                    .windows(2)
                    .any(|pair| touches(text, pair[0], pair[1]))
                {
                    faults.push(format!("a line ({}) touches: {words}", line.role));
                }
            }
        }
        for (index, a) in self.texts.iter().enumerate() {
            for b in &self.texts[index + 1..] {
                let apart = a.right <= b.left
                    || b.right <= a.left
                    || a.bottom <= b.top
                    || b.bottom <= a.top;
                if !apart {
                    faults.push(format!("`{}` lies over `{}`", a.words, b.words));
                }
            }
        }
        let points = self
            .lines
            .iter()
            .flat_map(|line| &line.points)
            .chain(self.dots.iter().map(|(_, spot)| spot));
        for (x, y) in points {
            if !(0.0..=PAGE.0).contains(x) || !(0.0..=PAGE.1).contains(y) {
                faults.push(format!("a point off the page: {x} {y}"));
            }
        }
        let leaders: Vec<&Line> = self
            .lines
            .iter()
            .filter(|line| line.role == "leader")
            .collect();
        for (index, a) in leaders.iter().enumerate() {
            for b in &leaders[index + 1..] {
                let meet = |p: &[Spot]| b.points.windows(2).any(|q| cross(p[0], p[1], q[0], q[1]));
                if a.points.windows(2).any(meet) {
                    faults.push(format!(
                        "leader lines cross: {:?} and {:?}",
                        a.points, b.points
                    ));
                }
            }
        }
        faults
    }
}

fn role(node: Node<'_, '_>) -> String {
    node.attribute("class").unwrap_or_default().to_owned()
}

fn number(node: Node<'_, '_>, name: &str) -> f64 {
    let value: f64 = node.attribute(name).unwrap().parse().unwrap();
    assert!(value.is_finite());
    value
}

fn text(node: Node<'_, '_>) -> Text {
    let (x, y, size) = (
        number(node, "x"),
        number(node, "y"),
        number(node, "font-size"),
    );
    Text {
        words: node.text().unwrap().to_owned(),
        size,
        left: x,
        right: x + number(node, "textLength"),
        // Capitals reach three quarters of the size up, tails a fifth down.
        top: y - 0.75 * size,
        bottom: y + 0.2 * size,
    }
}

fn line(node: Node<'_, '_>) -> Line {
    let shape = node.attribute("d").unwrap();
    let closed = shape.ends_with('Z');
    let mut points: Vec<Spot> = shape
        .trim_end_matches('Z')
        .split(['M', 'L'])
        .filter(|piece| !piece.is_empty())
        .map(|piece| {
            let (x, y) = piece.split_once(' ').unwrap();
            (x.parse().unwrap(), y.parse().unwrap())
        })
        .collect();
    if closed {
        points.push(points[0]);
    }
    Line {
        role: role(node),
        points,
    }
}

/// Whether a straight piece comes into a text's box.
fn touches(text: &Text, a: Spot, b: Spot) -> bool {
    let inside =
        |p: Spot| p.0 > text.left && p.0 < text.right && p.1 > text.top && p.1 < text.bottom;
    let corners = [
        (text.left, text.top),
        (text.right, text.top),
        (text.right, text.bottom),
        (text.left, text.bottom),
    ];
    inside(a) || inside(b) || (0..4).any(|side| cross(a, b, corners[side], corners[(side + 1) % 4]))
}

fn cross(a: Spot, b: Spot, c: Spot, d: Spot) -> bool {
    let turn = |p: Spot, q: Spot, r: Spot| (q.0 - p.0) * (r.1 - p.1) - (q.1 - p.1) * (r.0 - p.0);
    turn(a, b, c) * turn(a, b, d) < 0.0 && turn(c, d, a) * turn(c, d, b) < 0.0
}
