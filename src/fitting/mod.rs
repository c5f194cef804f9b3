//! The mathematics of the hand and the drill. It knows no rules: plain numbers in, plain numbers out.
//!
//! Lengths are inches, angles degrees, both as `f64`; round once at the end. Distances on the ball are great-circle
//! arcs unless a name says `chord`. Everything is stated for a right-handed bowler; a left-hander's ball is the mirror
//! image. A number that no ball or hand can have is refused with the limit it broke, see [`Misfit`].
//!
//! ```
//! use spanwright::fitting::{Sphere, pitch, span};
//!
//! let ball = Sphere::default();
//! // A calliper read straight across is not the span along the ball.
//! assert!((ball.chord_to_arc(4.079)? - 4.25).abs() < 0.001);
//! // An insert wall of 3/32 in and a slug wall of 1/8 in.
//! assert_eq!(span::full_to_cut(4.25, 0.125, 0.09375)?, 4.03125);
//! assert!((pitch::angle(&ball, 0.375)? - 5.006).abs() < 0.001);
//! # Ok::<(), spanwright::fitting::Misfit>(())
//! ```

pub mod balance;
pub mod best_unit;
mod bored;
pub mod calibrate;
mod digit;
mod edge;
pub mod eigen;
mod figure;
mod gauss;
pub mod grip;
pub mod hole;
pub mod inertia;
pub mod jig;
pub mod layout;
pub mod mend;
mod order;
pub mod pitch;
mod placed;
mod placing;
mod reaches;
pub mod removed;
pub mod ring;
mod root;
mod section;
pub mod slug;
pub mod solid;
pub mod span;
pub mod speed;
mod sphere;
mod strip;
pub mod track;
mod unplaceable;
mod view;
pub mod wall;
pub mod web;

pub use sphere::Sphere;

use std::error::Error;
use std::fmt;

/// A number outside what geometry or sense allows, with the limit it broke.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Misfit {
    /// Infinite, or no number at all.
    NotANumber {
        /// What the number stands for.
        what: &'static str,
    },
    /// Less than the lowest possible.
    TooSmall {
        /// What the number stands for.
        what: &'static str,
        /// The number given.
        value: f64,
        /// The lowest allowed.
        lowest: f64,
    },
    /// More than the highest possible.
    TooLarge {
        /// What the number stands for.
        what: &'static str,
        /// The number given.
        value: f64,
        /// The highest allowed.
        highest: f64,
    },
    /// Not given, or a direction without length.
    Missing {
        /// What is needed.
        what: &'static str,
    },
}

impl fmt::Display for Misfit {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Misfit::NotANumber { what } => write!(out, "the {what} is not a number"),
            Misfit::Missing { what } => write!(out, "the {what} is needed"),
            Misfit::TooSmall {
                what,
                value,
                lowest,
            } => {
                write!(
                    out,
                    "the {what} of {value:.4} is below the least possible, {lowest:.4}"
                )
            }
            Misfit::TooLarge {
                what,
                value,
                highest,
            } => {
                write!(
                    out,
                    "the {what} of {value:.4} is above the most possible, {highest:.4}"
                )
            }
        }
    }
}

impl Error for Misfit {}

/// Inches as the nearest whole number of sixty-fourths, which facts and sheets use.
pub fn sixty_fourths(inches: f64) -> i64 {
    // The cast keeps to the ends of the range, and makes "no number" zero.
    libm::round(inches * 64.0) as i64
}

/// Whole sixty-fourths as inches.
pub fn inches(sixty_fourths: i64) -> f64 {
    sixty_fourths as f64 / 64.0
}

/// The value, if it lies between the limits, ends included.
fn within(what: &'static str, value: f64, lowest: f64, highest: f64) -> Result<f64, Misfit> {
    if !value.is_finite() {
        Err(Misfit::NotANumber { what })
    } else if value < lowest {
        Err(Misfit::TooSmall {
            what,
            value,
            lowest,
        })
    } else if value > highest {
        Err(Misfit::TooLarge {
            what,
            value,
            highest,
        })
    } else {
        Ok(value)
    }
}
