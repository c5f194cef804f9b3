//! The paper: a small writer of SVG that keeps everything on the page.
//!
//! One unit is a hundredth of an inch on paper, from the top left corner. A shape with a point off the page, or with a
//! coordinate that is no number, is left out; every text is made harmless and given its width, so that letters of another
//! make take no more room than they were given.

use super::letters::{self, Font};

/// Inches that a sheet of Letter and one of A4 both have: A4 is narrower, Letter is shorter.
pub(in crate::report) const PAGE: (f64, f64) = (827.0, 1100.0);

/// A place on the page.
pub(in crate::report) type Spot = (f64, f64);

/// How dark a line or a letter is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::report) enum Ink {
    /// What counts.
    Dark,
    /// The one accent; dark enough for a copier.
    Accent,
    /// What is there only to find one's way.
    Pale,
}

impl Ink {
    fn colour(self) -> &'static str {
        match self {
            Ink::Dark => "#111",
            Ink::Accent => "#0a4a7a",
            Ink::Pale => "#777",
        }
    }
}

/// A pen: width, ink, and dashes or none.
#[derive(Clone, Copy, Debug)]
pub(in crate::report) struct Pen {
    width: f64,
    ink: Ink,
    dashes: &'static str,
}

impl Pen {
    pub(in crate::report) const fn of(width: f64, ink: Ink) -> Pen {
        Pen {
            width,
            ink,
            dashes: "",
        }
    }

    /// With dashes, given as SVG has them: `6 3`.
    pub(in crate::report) const fn dashed(self, dashes: &'static str) -> Pen {
        Pen { dashes, ..self }
    }

    fn attributes(self) -> String {
        let dashes = if self.dashes.is_empty() {
            String::new()
        } else {
            format!(" stroke-dasharray=\"{}\"", self.dashes)
        };
        format!(
            " stroke=\"{}\" stroke-width=\"{}\"{dashes}",
            self.ink.colour(),
            number(self.width)
        )
    }
}

/// Which end of a text its place is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::report) enum Anchor {
    Start,
    End,
}

/// A page in the making.
#[derive(Clone, Debug)]
pub(in crate::report) struct Canvas {
    body: String,
    /// Nothing is drawn below this.
    floor: f64,
    left_out: bool,
}

impl Canvas {
    pub(in crate::report) fn new() -> Canvas {
        Canvas {
            body: String::new(),
            floor: PAGE.1,
            left_out: false,
        }
    }

    /// Keeps everything drawn from now on above this.
    pub(in crate::report) fn set_floor(&mut self, floor: f64) {
        self.floor = floor.min(PAGE.1);
    }

    /// Whether something did not fit and was left out.
    pub(in crate::report) fn left_out(&self) -> bool {
        self.left_out
    }

    fn holds(&mut self, at: Spot) -> bool {
        // No number lies in no range.
        let held = (0.0..=PAGE.0).contains(&at.0) && (0.0..=self.floor).contains(&at.1);
        self.left_out |= !held;
        held
    }

    /// One line of text; its place is on the base line.
    pub(in crate::report) fn text(
        &mut self,
        at: Spot,
        font: Font,
        anchor: Anchor,
        ink: Ink,
        words: &str,
    ) {
        let words = letters::plain(words);
        let wide = letters::width(&words, font);
        let left = match anchor {
            Anchor::Start => at.0,
            Anchor::End => at.0 - wide,
        };
        let corners = [
            (left, at.1 - font.size),
            (left + wide, at.1 + font.size / 4.0),
        ];
        if words.trim().is_empty() || !corners.iter().all(|corner| self.holds(*corner)) {
            return;
        }
        let weight = if font.bold {
            " font-weight=\"bold\""
        } else {
            ""
        };
        self.body.push_str(&format!(
            "<text x=\"{}\" y=\"{}\" font-size=\"{}\"{weight} fill=\"{}\" textLength=\"{}\" lengthAdjust=\"spacingAndGlyphs\">{}</text>\n",
            number(left),
            number(at.1),
            number(font.size),
            ink.colour(),
            number(wide),
            letters::escaped(&words),
        ));
    }

    /// A line through all the points. `role` says what it is, for whoever works on the drawing.
    pub(in crate::report) fn path(&mut self, role: &str, points: &[Spot], closed: bool, pen: Pen) {
        if points.len() < 2 || !points.iter().all(|point| self.holds(*point)) {
            return;
        }
        let shape = shape(points, closed);
        self.body.push_str(&format!(
            "<path class=\"{role}\" d=\"{shape}\" fill=\"none\"{}/>\n",
            pen.attributes()
        ));
    }

    pub(in crate::report) fn line(&mut self, role: &str, from: Spot, to: Spot, pen: Pen) {
        self.path(role, &[from, to], false, pen);
    }

    /// A small filled circle, such as where a leader line ends.
    pub(in crate::report) fn dot(&mut self, role: &str, at: Spot, radius: f64, ink: Ink) {
        let corners = [
            (at.0 - radius, at.1 - radius),
            (at.0 + radius, at.1 + radius),
        ];
        if !corners.iter().all(|corner| self.holds(*corner)) {
            return;
        }
        self.body.push_str(&format!(
            "<circle class=\"{role}\" cx=\"{}\" cy=\"{}\" r=\"{}\" fill=\"{}\"/>\n",
            number(at.0),
            number(at.1),
            number(radius),
            ink.colour()
        ));
    }

    /// An arrow with a small open head; nothing where it has no length.
    pub(in crate::report) fn arrow(&mut self, role: &str, from: Spot, to: Spot, pen: Pen) {
        let (over, down) = (to.0 - from.0, to.1 - from.1);
        let long = libm::hypot(over, down);
        if long.is_nan() || long < 1e-6 {
            return;
        }
        self.line(role, from, to, pen);
        let (over, down) = (over / long, down / long);
        let barb = |side: f64| {
            (
                to.0 - 4.5 * over + side * 2.2 * down,
                to.1 - 4.5 * down - side * 2.2 * over,
            )
        };
        self.path(role, &[barb(1.0), to, barb(-1.0)], false, pen);
    }

    /// An empty box to write or tick in.
    pub(in crate::report) fn frame(
        &mut self,
        role: &str,
        at: Spot,
        wide: f64,
        high: f64,
        pen: Pen,
    ) {
        let (right, bottom) = (at.0 + wide, at.1 + high);
        let corners = [at, (right, at.1), (right, bottom), (at.0, bottom)];
        self.path(role, &corners, true, pen);
    }

    /// A pale area inside these points. Nothing may hang on seeing it: a copier may lose it, so its edge is drawn as lines.
    pub(in crate::report) fn area(&mut self, role: &str, points: &[Spot]) {
        if points.len() < 3 || !points.iter().all(|point| self.holds(*point)) {
            return;
        }
        let shape = shape(points, true);
        self.body.push_str(&format!(
            "<path class=\"{role}\" d=\"{shape}\" fill=\"#e6e6e6\"/>\n"
        ));
    }

    /// The whole drawing as an SVG document of its own.
    pub(in crate::report) fn finish(&self, title: &str) -> String {
        self.written(title, "")
    }

    /// The same with all it says in words, for those who can't see it.
    pub(in crate::report) fn described(&self, title: &str, description: &str) -> String {
        let description = letters::escaped(&letters::plain(description));
        self.written(title, &format!("<desc>{description}</desc>\n"))
    }

    fn written(&self, title: &str, description: &str) -> String {
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"8.27in\" height=\"11in\" viewBox=\"0 0 {} {}\" role=\"img\" font-family=\"sans-serif\" stroke-linejoin=\"round\">\n<title>{}</title>\n{description}<style>@page{{margin:0}}</style>\n{}</svg>\n",
            number(PAGE.0),
            number(PAGE.1),
            letters::escaped(&letters::plain(title)),
            self.body
        )
    }
}

/// Two decimals at most, without idle zeros; never `-0`.
pub(in crate::report) fn number(value: f64) -> String {
    let text = format!("{value:.2}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0" } else { text }.to_owned()
}

fn shape(points: &[Spot], closed: bool) -> String {
    let mut shape = String::new();
    for (index, point) in points.iter().enumerate() {
        let verb = if index == 0 { 'M' } else { 'L' };
        shape.push_str(&format!("{verb}{} {}", number(point.0), number(point.1)));
    }
    if closed {
        shape.push('Z');
    }
    shape
}
