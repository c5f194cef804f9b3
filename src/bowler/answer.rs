//! What an answer is: a name, what it is called, and what may be written.

use crate::notation::Notation;

/// What an answer looks like.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Shape {
    /// A number in whole steps of a notation. Outside `lowest..=highest` it is refused; outside `usual` it is asked again.
    Number {
        /// How it is written and what a step is.
        notation: Notation,
        /// The lowest value accepted, in steps.
        lowest: i64,
        /// The highest value accepted, in steps.
        highest: i64,
        /// The range that needs no second question, in steps.
        usual: (i64, i64),
    },
    /// One of these words; the value is its index.
    Choice(&'static [&'static str]),
    /// Yes (1) or no (0).
    Flag,
    /// Any of these words; the value has bit `i` set for word `i`.
    Set(&'static [&'static str]),
}

/// One answer: the name it is asked for by, what it is called in a sentence, and its shape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    name: &'static str,
    called: &'static str,
    shape: Shape,
}

impl Answer {
    /// The fact name, such as `bowler.age`.
    pub fn name(&self) -> &'static str {
        self.name
    }

    /// What a fitter calls it, such as "the age".
    pub fn called(&self) -> &'static str {
        self.called
    }

    /// What may be written.
    pub fn shape(&self) -> Shape {
        self.shape
    }
}

/// A number with what may be written and what needs no second question.
pub(super) const fn number(
    notation: Notation,
    lowest: i64,
    highest: i64,
    usual: (i64, i64),
) -> Shape {
    Shape::Number {
        notation,
        lowest,
        highest,
        usual,
    }
}

/// A number with nothing to ask again inside its range.
pub(super) const fn plain(notation: Notation, lowest: i64, highest: i64) -> Shape {
    number(notation, lowest, highest, (lowest, highest))
}

/// One row of the table.
pub(super) const fn row(name: &'static str, called: &'static str, shape: Shape) -> Answer {
    Answer {
        name,
        called,
        shape,
    }
}
