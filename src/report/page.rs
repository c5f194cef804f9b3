//! Lines of a page: headings, paragraphs and items, wrapped to the width.

use textwrap::{Options, WordSplitter};
use unicode_width::UnicodeWidthStr;

use super::words::Unexplained;
use super::{Look, Term};
use crate::document::clean;
use crate::rules::Audience;

/// The one accent, with bold.
const ACCENT: &str = "\u{1b}[1;36m";
const BOLD: &str = "\u{1b}[1m";
const PLAIN: &str = "\u{1b}[0m";

/// Text after a label wider than this goes on below the label, not beside it.
const WIDEST_LABEL: usize = 16;

/// A text in the making. Everything written on it is made harmless first.
#[derive(Debug)]
pub(super) struct Page<'l> {
    look: &'l Look,
    text: String,
    /// What was written since words were last explained, without wrapping and colour.
    unexplained: String,
    words: Unexplained<'l>,
}

impl<'l> Page<'l> {
    pub(super) fn new(look: &'l Look) -> Page<'l> {
        let terms: &[Term] = if look.audience() == Audience::Newcomer {
            look.glossary()
        } else {
            &[]
        };
        Page {
            look,
            text: String::new(),
            unexplained: String::new(),
            words: Unexplained::new(terms),
        }
    }

    pub(super) fn audience(&self) -> Audience {
        self.look.audience()
    }

    /// Starts a part of the page, an empty line above it.
    pub(super) fn heading(&mut self, title: &str) {
        if !self.text.is_empty() {
            self.text.push('\n');
        }
        self.note(title);
        for line in textwrap::wrap(&clean(title), self.look.width()) {
            self.line(&line, ACCENT);
        }
    }

    /// A heading within a part.
    pub(super) fn subheading(&mut self, title: &str) {
        self.bold(2, title);
    }

    /// A sentence that must not be missed.
    pub(super) fn urgent(&mut self, text: &str) {
        self.note(text);
        for line in textwrap::wrap(&clean(text), self.look.width() - 2) {
            self.line(&format!("  {line}"), BOLD);
        }
    }

    /// A paragraph, `indent` columns in.
    pub(super) fn paragraph(&mut self, indent: usize, text: &str) {
        self.item(indent, "", text);
    }

    /// A mark or label, then text that hangs beside it, or below it if the label is wide.
    pub(super) fn item(&mut self, indent: usize, label: &str, text: &str) {
        let beside = label.width();
        let beside = if beside > WIDEST_LABEL { 2 } else { beside };
        self.hang(indent, beside, label, text, "");
    }

    /// A row of a table: a label in bold, padded to its column, and text that hangs beside it, or begins below a label that
    /// fills its column.
    pub(super) fn row(&mut self, indent: usize, column: usize, label: &str, text: &str) {
        if clean(label).width() >= column {
            self.bold(indent, label);
            self.hang(indent + column, 0, "", text, "");
        } else {
            self.hang(indent, column, &format!("{label:<column$}"), text, BOLD);
        }
    }

    /// A line of a table as it is, its columns kept.
    pub(super) fn aligned(&mut self, text: &str) {
        self.line(&clean(text), "");
    }

    /// Two columns: words at the left, an amount at the right of `width` columns.
    pub(super) fn amount(&mut self, width: usize, words: &str, amount: &str) {
        self.note(words);
        let (words, amount) = (clean(words), clean(amount));
        let taken = 2 + words.width() + amount.width();
        let space = width.min(self.look.width()).saturating_sub(taken).max(2);
        self.line(&format!("  {words}{}{amount}", " ".repeat(space)), "");
    }

    /// Explains in brackets the words that were first used since the last call.
    pub(super) fn explain(&mut self) {
        let written = std::mem::take(&mut self.unexplained);
        let words = self.words.take(&written);
        if words.is_empty() {
            return;
        }
        let said: Vec<String> = words
            .iter()
            .map(|term| format!("{}: {}", capitalised(&term.word), term.meaning))
            .collect();
        self.item(2, "(", &format!("{})", said.join(" ")));
        // What explains isn't explained in turn.
        self.unexplained.clear();
    }

    /// The whole text.
    pub(super) fn finish(self) -> String {
        self.text
    }

    /// Lines in bold, all of them `indent` columns in.
    fn bold(&mut self, indent: usize, words: &str) {
        self.note(words);
        let margin = " ".repeat(indent);
        let options = Options::new(self.look.width())
            .initial_indent(&margin)
            .subsequent_indent(&margin);
        for line in textwrap::wrap(&clean(words), options) {
            self.line(&line, BOLD);
        }
    }

    fn hang(&mut self, indent: usize, beside: usize, label: &str, text: &str, style: &str) {
        self.note(label);
        self.note(text);
        let (label, text) = (clean(label), clean(text));
        let margin = " ".repeat(indent);
        let first = if style.is_empty() || !self.look.is_coloured() {
            format!("{margin}{label}")
        } else {
            format!("{margin}{style}{label}{PLAIN}")
        };
        let rest = " ".repeat(indent + beside);
        let options = Options::new(self.look.width())
            .initial_indent(&first)
            .subsequent_indent(&rest)
            .word_splitter(WordSplitter::NoHyphenation);
        for line in textwrap::wrap(&text, options) {
            self.line(&line, "");
        }
    }

    /// Remembers words that may want explaining.
    fn note(&mut self, words: &str) {
        self.unexplained.push_str(words);
        self.unexplained.push('\n');
    }

    fn line(&mut self, line: &str, style: &str) {
        if style.is_empty() || !self.look.is_coloured() {
            self.text.push_str(line.trim_end());
        } else {
            self.text.push_str(style);
            self.text.push_str(line.trim_end());
            self.text.push_str(PLAIN);
        }
        self.text.push('\n');
    }
}

/// With a capital in front, to begin a sentence.
pub(super) fn capitalised(words: &str) -> String {
    let mut letters = words.chars();
    let first = letters.next().map(char::to_uppercase);
    first.into_iter().flatten().chain(letters).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_label_that_fills_its_column_stands_above_its_text() {
        let look = Look::plain(Audience::Fitter);
        let mut page = Page::new(&look);
        page.row(2, 10, "ring", "is a finger.");
        page.row(2, 10, "thumb and ring", "run into each other.");
        page.row(2, 10, "ten deep!!", "runs through.");
        let expected = [
            "  ring      is a finger.",
            "  thumb and ring",
            "            run into each other.",
            "  ten deep!!",
            "            runs through.",
            "",
        ];
        assert_eq!(page.finish(), expected.join("\n"));
    }
}
