//! Why a grip can't lie on the ball, and what would be possible.

use std::error::Error;
use std::fmt;

use super::{Misfit, digit::Digit};

/// One reason.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fault {
    /// A number of one hole.
    InHole {
        /// Whose hole.
        digit: Digit,
        /// Which number, and its limit.
        misfit: Misfit,
    },
    /// A number of the grip as a whole.
    InGrip(Misfit),
    /// A number that this kind of grip can't do without.
    Missing {
        /// What it needs.
        what: &'static str,
    },
    /// Two spans and a bridge that close no triangle.
    OpenTriangle {
        /// The ring span as it was read.
        ring: f64,
        /// With this middle span and bridge, it must be longer than this (read in the same way).
        shortest: f64,
        /// And shorter than this.
        longest: f64,
    },
}

impl fmt::Display for Fault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Fault::InHole { digit, misfit } => write!(out, "{} hole: {misfit}", digit.name()),
            Fault::InGrip(misfit) => write!(out, "{misfit}"),
            Fault::Missing { what } => write!(out, "{what}"),
            Fault::OpenTriangle {
                ring,
                shortest,
                longest,
            } => write!(
                out,
                "a ring span of {ring:.4} closes no triangle: for this middle span and bridge it lies between {shortest:.4} and {longest:.4}"
            ),
        }
    }
}

impl Error for Fault {}

/// A grip that can't lie on the ball, with every reason found.
#[derive(Clone, Debug, PartialEq)]
pub struct Unplaceable {
    faults: Vec<Fault>,
}

impl Unplaceable {
    pub(super) fn new(faults: Vec<Fault>) -> Unplaceable {
        Unplaceable { faults }
    }

    /// The reasons: never none.
    pub fn faults(&self) -> &[Fault] {
        &self.faults
    }
}

impl From<Fault> for Unplaceable {
    fn from(fault: Fault) -> Unplaceable {
        Unplaceable::new(vec![fault])
    }
}

impl fmt::Display for Unplaceable {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (index, fault) in self.faults.iter().enumerate() {
            let before = if index == 0 { "" } else { "; " };
            write!(out, "{before}{fault}")?;
        }
        Ok(())
    }
}

impl Error for Unplaceable {}
