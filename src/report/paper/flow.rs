//! Text that runs down a column: headings, paragraphs, entries, boxes to tick.

use super::canvas::{Anchor, Canvas, Ink, Pen, Spot};
use super::letters::{self, Font};

/// Letters of running text: 7.5 points.
pub(in crate::report) const TEXT: Font = Font::plain(10.45);
pub(in crate::report) const STRONG: Font = Font::bold(10.45);
/// From one line of text to the next.
pub(in crate::report) const LEADING: f64 = 11.8;
const HEADING: Font = Font::bold(12.4);
/// Side of a box to tick.
const TICK: f64 = 7.6;
const THIN: Pen = Pen::of(0.7, Ink::Dark);

/// A column being written.
#[derive(Debug)]
pub(in crate::report) struct Flow<'c> {
    canvas: &'c mut Canvas,
    left: f64,
    wide: f64,
    y: f64,
}

impl<'c> Flow<'c> {
    pub(in crate::report) fn new(canvas: &'c mut Canvas, at: Spot, wide: f64) -> Flow<'c> {
        Flow {
            canvas,
            left: at.0,
            wide,
            y: at.1,
        }
    }

    /// A column that starts with a heading.
    pub(in crate::report) fn headed(
        canvas: &'c mut Canvas,
        at: Spot,
        wide: f64,
        heading: &str,
    ) -> Flow<'c> {
        let mut flow = Flow::new(canvas, at, wide);
        flow.heading(heading);
        flow
    }

    /// How far down it reaches.
    pub(in crate::report) fn bottom(&self) -> f64 {
        self.y
    }

    /// The canvas, once the column is written.
    pub(in crate::report) fn into_canvas(self) -> &'c mut Canvas {
        self.canvas
    }

    /// Leaves room.
    pub(in crate::report) fn skip(&mut self, high: f64) {
        self.y += high;
    }

    /// A part's number and name over a thin line.
    pub(in crate::report) fn heading(&mut self, words: &str) {
        self.y += 12.0;
        let words = letters::fit(words, HEADING, self.wide);
        self.canvas.text(
            (self.left, self.y),
            HEADING,
            Anchor::Start,
            Ink::Accent,
            &words,
        );
        self.y += 4.0;
        let right = self.left + self.wide;
        self.canvas.line(
            "rule",
            (self.left, self.y),
            (right, self.y),
            Pen::of(0.7, Ink::Accent),
        );
        self.y += 2.5;
    }

    pub(in crate::report) fn text(&mut self, words: &str) {
        self.hang(0.0, words, TEXT);
    }

    pub(in crate::report) fn strong(&mut self, words: &str) {
        self.hang(0.0, words, STRONG);
    }

    /// The same, cut with … after so many lines.
    pub(in crate::report) fn short_entry(&mut self, name: &str, words: &str, most: usize) {
        let words = letters::lines(words, TEXT, self.wide * 0.94, most).join(" ");
        self.entry(name, &words);
    }

    /// A name, and what is said of it behind it.
    pub(in crate::report) fn entry(&mut self, name: &str, words: &str) {
        let beside = letters::width(&letters::plain(name), STRONG) + 4.0;
        if beside > 0.6 * self.wide {
            self.strong(name);
            self.hang(8.0, words, TEXT);
            return;
        }
        // The first line is shorter by the name; the others are not.
        let first = letters::wrap(words, TEXT, self.wide - beside);
        let Some(first) = first.first() else { return };
        let rest = letters::plain(words)[..]
            .strip_prefix(first.as_str())
            .unwrap_or_default()
            .trim()
            .to_owned();
        self.canvas.text(
            (self.left, self.y + 9.6),
            STRONG,
            Anchor::Start,
            Ink::Dark,
            name,
        );
        self.canvas.text(
            (self.left + beside, self.y + 9.6),
            TEXT,
            Anchor::Start,
            Ink::Dark,
            first,
        );
        self.y += LEADING;
        if !rest.is_empty() {
            self.hang(8.0, &rest, TEXT);
        }
    }

    /// Something to do, with a box to tick.
    pub(in crate::report) fn tick(&mut self, words: &str) {
        let at = (self.left + 0.5, self.y + 2.4);
        self.canvas.frame("tick", at, TICK, TICK, THIN);
        self.hang(TICK + 5.0, words, TEXT);
    }

    fn hang(&mut self, indent: f64, words: &str, font: Font) {
        for line in letters::wrap(words, font, self.wide - indent) {
            let at = (self.left + indent, self.y + 9.6);
            self.canvas.text(at, font, Anchor::Start, Ink::Dark, &line);
            self.y += LEADING;
        }
    }
}
