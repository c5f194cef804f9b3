//! How wide words are, where a line of them breaks, and what must be written differently in a page.

use unicode_width::UnicodeWidthChar;

use crate::document::clean;

/// Letters of one size, in hundredths of an inch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in crate::report) struct Font {
    pub(in crate::report) size: f64,
    pub(in crate::report) bold: bool,
}

impl Font {
    pub(in crate::report) const fn plain(size: f64) -> Font {
        Font { size, bold: false }
    }
    pub(in crate::report) const fn bold(size: f64) -> Font {
        Font { size, bold: true }
    }
}

/// Widths of the printable ASCII letters from the space on, in thousandths of the size: those of common sans-serif faces.
const WIDTHS: [u16; 95] = [
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556,
    556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667,
    611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667,
    667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500,
    222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
];
/// Bold letters are wider by this.
const BOLDER: f64 = 1.07;
/// A column of a terminal, as a share of the size, for letters outside ASCII.
const COLUMN: f64 = 0.6;

/// The width of a line of text.
pub(in crate::report) fn width(text: &str, font: Font) -> f64 {
    let wide: f64 = text.chars().map(letter).sum();
    let bolder = if font.bold { BOLDER } else { 1.0 };
    wide * font.size * bolder
}

fn letter(c: char) -> f64 {
    let index = u32::from(c).wrapping_sub(32) as usize;
    match WIDTHS.get(index) {
        Some(width) => f64::from(*width) / 1000.0,
        None => c.width().unwrap_or(1) as f64 * COLUMN,
    }
}

/// The text on one line, harmless: every run of spaces and line ends one space, every control character marked.
pub(in crate::report) fn plain(text: &str) -> String {
    let words: Vec<&str> = text.split_whitespace().collect();
    clean(&words.join(" "))
        .chars()
        // No document in XML may have these two.
        .map(|c| {
            if matches!(c, '\u{FFFE}' | '\u{FFFF}') {
                '\u{FFFD}'
            } else {
                c
            }
        })
        .collect()
}

/// With the five letters that mean something to XML written out.
pub(in crate::report) fn escaped(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => escaped.push_str("&amp;"),
            '<' => escaped.push_str("&lt;"),
            '>' => escaped.push_str("&gt;"),
            '"' => escaped.push_str("&quot;"),
            '\'' => escaped.push_str("&#39;"),
            other => escaped.push(other),
        }
    }
    escaped
}

/// The words of a text; a number stays with its fraction and its unit.
fn together(text: &str) -> Vec<String> {
    let number = |word: &str| word.starts_with(|c: char| c.is_ascii_digit());
    let goes_on = |word: &str| {
        let bare = word.trim_end_matches([',', ';', '.', ':']);
        matches!(bare, "in" | "oz" | "lb" | "degrees") || (number(bare) && bare.contains('/'))
    };
    let mut words: Vec<String> = Vec::new();
    for word in text.split(' ') {
        match words.last_mut() {
            Some(last) if number(last) && goes_on(word) && last.len() < 12 => {
                last.push(' ');
                last.push_str(word);
            }
            _ => words.push(word.to_owned()),
        }
    }
    words
}

/// The text in lines no wider than this; a word that is too wide by itself is broken.
pub(in crate::report) fn wrap(text: &str, font: Font, widest: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut line = String::new();
    for word in together(&plain(text)) {
        let word = word.as_str();
        let longer = if line.is_empty() {
            word.to_owned()
        } else {
            format!("{line} {word}")
        };
        if width(&longer, font) <= widest {
            line = longer;
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
        }
        for c in word.chars() {
            line.push(c);
            if width(&line, font) > widest && line.chars().count() > 1 {
                line.pop();
                lines.push(std::mem::replace(&mut line, c.to_string()));
            }
        }
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}

/// At most this many lines; the last one ends in … where more was to come.
pub(in crate::report) fn lines(text: &str, font: Font, widest: f64, most: usize) -> Vec<String> {
    let mut lines = wrap(text, font, widest);
    if lines.len() > most {
        lines.truncate(most);
        if let Some(last) = lines.last_mut() {
            last.push('…');
            while width(last, font) > widest && last.chars().count() > 1 {
                last.pop();
                last.pop();
                last.push('…');
            }
        }
    }
    lines
}

/// One line, cut with … if it is too wide.
pub(in crate::report) fn fit(text: &str, font: Font, widest: f64) -> String {
    lines(text, font, widest, 1).pop().unwrap_or_default()
}
