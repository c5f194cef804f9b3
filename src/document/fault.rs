//! What is wrong with a document, for people to read.

use std::error::Error;
use std::fmt;

use super::place::Place;
use super::text::clean;

/// The most faults shown at once; the rest are counted.
pub(super) const MOST_SHOWN: usize = 100;

/// One thing wrong, and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    code: &'static str,
    place: Option<Place>,
    message: String,
    help: Option<String>,
}

impl Fault {
    /// A fault without a place. `code` is stable, in kebab-case; the message is in lower case without a full stop.
    pub fn new(code: &'static str, message: impl Into<String>) -> Fault {
        Fault {
            code,
            place: None,
            message: message.into(),
            help: None,
        }
    }

    /// The same fault at a place.
    #[must_use]
    pub fn at(mut self, place: Place) -> Fault {
        self.place = Some(place);
        self
    }

    /// The same fault with a remedy.
    #[must_use]
    pub fn with_help(mut self, help: impl Into<String>) -> Fault {
        self.help = Some(help.into());
        self
    }

    /// The stable name of this kind of fault.
    pub fn code(&self) -> &'static str {
        self.code
    }

    /// Where it is; `None` if it isn't at a place of a file.
    pub fn place(&self) -> Option<&Place> {
        self.place.as_ref()
    }

    /// What is wrong.
    pub fn message(&self) -> &str {
        &self.message
    }

    /// What to do about it.
    pub fn help(&self) -> Option<&str> {
        self.help.as_deref()
    }

    pub(super) fn too_large(name: &str, bytes: u64) -> Fault {
        let tenths = bytes.div_ceil(1024 * 1024 / 10);
        let message = format!("`{name}` has {}.{} MB", tenths / 10, tenths % 10);
        Fault::new("too-large", message).with_help("at most 8 MB are read; split the file")
    }

    /// Order of showing: by file, line and column, faults without a place first.
    fn order(&self) -> Option<(&str, u32, u32)> {
        self.place.as_ref().map(|p| (&*p.file, p.line, p.column))
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(place) = &self.place {
            write!(f, "{place}: ")?;
        }
        write!(f, "{} [{}]", self.message, self.code)?;
        if let Some(place) = &self.place
            && !place.source.is_empty()
        {
            let number = place.line.to_string();
            let gutter = " ".repeat(number.len());
            let before = (place.column - 1).saturating_sub(place.skipped) as usize;
            let keep_tab = |c| {
                if c == '\t' {
                    "\t".to_owned()
                } else {
                    clean(&String::from(c))
                }
            };
            let source: String = place.source.chars().map(keep_tab).collect();
            // A tab before the place is copied, so that the marks stand under the text however wide tabs are.
            let lead: String = source
                .chars()
                .take(before)
                .flat_map(|c| {
                    let width = unicode_width::UnicodeWidthChar::width(c).unwrap_or(0);
                    let mark = if c == '\t' { '\t' } else { ' ' };
                    std::iter::repeat_n(mark, if c == '\t' { 1 } else { width })
                })
                .collect();
            let left = source.chars().count().saturating_sub(before);
            let marks = "^".repeat((place.length as usize).min(left).max(1));
            let dots = if place.skipped > 0 { "…" } else { "" };
            let pad = if place.skipped > 0 { " " } else { "" };
            write!(f, "\n{gutter} |\n{number} | {dots}{source}")?;
            write!(f, "\n{gutter} | {pad}{lead}{marks}")?;
            if let Some(help) = &self.help {
                write!(f, "\n{gutter} = help: {help}")?;
            }
        } else if let Some(help) = &self.help {
            write!(f, "\n  = help: {help}")?;
        }
        Ok(())
    }
}

/// All faults found, in order of place. Whoever returns it as an error has at least one in it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Faults {
    faults: Vec<Fault>,
    left_out: usize,
}

impl Faults {
    /// No faults yet.
    pub fn new() -> Faults {
        Faults::default()
    }

    /// Adds a fault at its place in the order.
    pub fn push(&mut self, fault: Fault) {
        let at = self
            .faults
            .partition_point(|other| other.order() <= fault.order());
        self.faults.insert(at, fault);
    }

    /// Adds all faults of another collection.
    pub fn merge(&mut self, other: Faults) {
        self.left_out += other.left_out;
        self.extend(other.faults);
    }

    /// Counts faults that aren't kept.
    pub(super) fn leave_out(&mut self, count: usize) {
        self.left_out += count;
    }

    /// The faults kept, in order of place.
    pub fn iter(&self) -> std::slice::Iter<'_, Fault> {
        self.faults.iter()
    }

    /// How many faults there are, those counted but not kept included.
    pub fn len(&self) -> usize {
        self.faults.len() + self.left_out
    }

    /// Whether there are none.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// `Err` of the faults if there are any.
    ///
    /// # Errors
    /// Itself, unless it is empty.
    pub fn into_result(self) -> Result<(), Faults> {
        if self.is_empty() { Ok(()) } else { Err(self) }
    }
}

impl Extend<Fault> for Faults {
    fn extend<I: IntoIterator<Item = Fault>>(&mut self, faults: I) {
        for fault in faults {
            self.push(fault);
        }
    }
}

impl From<Fault> for Faults {
    fn from(fault: Fault) -> Faults {
        Faults {
            faults: vec![fault],
            left_out: 0,
        }
    }
}

impl<'f> IntoIterator for &'f Faults {
    type Item = &'f Fault;
    type IntoIter = std::slice::Iter<'f, Fault>;

    fn into_iter(self) -> Self::IntoIter {
        self.iter()
    }
}

impl fmt::Display for Faults {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (i, fault) in self.faults.iter().take(MOST_SHOWN).enumerate() {
            if i > 0 {
                f.write_str("\n\n")?;
            }
            write!(f, "{fault}")?;
        }
        match self.len().saturating_sub(MOST_SHOWN.min(self.faults.len())) {
            0 => Ok(()),
            more => write!(f, "\n\nand {more} more"),
        }
    }
}

impl Error for Fault {}
impl Error for Faults {}
