//! What no ball, release or lane can have.

use std::error::Error;
use std::fmt;

/// Why there is no roll to tell.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Impossible {
    /// A number outside what can be, or no number at all.
    Outside {
        /// What it stands for.
        what: &'static str,
        /// The number given.
        value: f64,
        /// The lowest allowed.
        lowest: f64,
        /// The highest allowed.
        highest: f64,
        /// The unit of all three.
        unit: &'static str,
    },
    /// The lane ends before its oil does.
    OilPastTheLane {
        /// Length of the oil in feet.
        oil: f64,
        /// Length of the lane in feet.
        lane: f64,
    },
    /// The heavy side turns so fast that the ball would hop.
    Hops {
        /// Where, in feet from the foul line.
        feet: f64,
    },
    /// The work limit was reached before the ball came to the pins.
    TooManySteps {
        /// Where, in feet from the foul line.
        feet: f64,
    },
}

impl fmt::Display for Impossible {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Impossible::Outside { what, value, .. } if !value.is_finite() => {
                write!(out, "the {what} is not a number")
            }
            Impossible::Outside {
                what,
                value,
                lowest,
                highest,
                unit,
            } => {
                let unit = if unit.is_empty() {
                    String::new()
                } else {
                    format!(" {unit}")
                };
                write!(
                    out,
                    "the {what} can't be {value}{unit}; it lies between {lowest} and {highest}{unit}"
                )
            }
            Impossible::OilPastTheLane { oil, lane } => write!(
                out,
                "the oil can't be {oil:.1} ft long: the lane is {lane:.1} ft"
            ),
            Impossible::Hops { feet } => {
                write!(
                    out,
                    "the ball would hop at {feet:.1} ft: its heavy side turns too fast"
                )
            }
            Impossible::TooManySteps { feet } => write!(
                out,
                "the roll wasn't settled at {feet:.1} ft within the steps allowed"
            ),
        }
    }
}

impl Error for Impossible {}
