//! Why readings can't give the arm and the density, and what to measure next.

use std::error::Error;
use std::fmt;

use super::super::Misfit;

/// Why the readings don't give both numbers. Each says what to measure next.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CannotTell {
    /// Fewer readings than two numbers and their errors need.
    TooFew {
        /// Readings given: a weight and three static weights make four a ball.
        n: usize,
        /// Readings needed.
        needed: usize,
    },
    /// Nothing was done that turns the scale.
    NoMomentChange,
    /// Nothing was drilled out, so nothing can be said of its density.
    NothingDrilled,
    /// A denser ball with a longer arm would show the same.
    Inseparable,
    /// The sums never settled: some reading doesn't belong to these holes.
    NotSettled,
    /// The two can be told apart, but no better than by half of themselves.
    TooRough {
        /// Inches.
        arm: f64,
        /// Its standard error.
        arm_error: f64,
        /// In g/cm³.
        density: f64,
        /// Its standard error.
        density_error: f64,
    },
    /// A number that can't be, given or found.
    Unlikely(Misfit),
}

impl From<Misfit> for CannotTell {
    fn from(misfit: Misfit) -> CannotTell {
        CannotTell::Unlikely(misfit)
    }
}

impl fmt::Display for CannotTell {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            CannotTell::TooFew { n, needed } => write!(
                out,
                "weigh one more ball before and after, on both scales: {n} readings are fewer than {needed}"
            ),
            CannotTell::NoMomentChange => write!(
                out,
                "read the static weights of a ball before and after drilling: so far nothing moved them"
            ),
            CannotTell::NothingDrilled => write!(
                out,
                "measure a ball before and after a hole is drilled: so far nothing was taken out"
            ),
            CannotTell::Inseparable => write!(
                out,
                "weigh the ball itself before and after too: a denser ball on a longer arm would read the same"
            ),
            CannotTell::NotSettled => write!(
                out,
                "check the readings and the hole sizes: no arm and density come near all of them"
            ),
            CannotTell::TooRough {
                arm,
                arm_error,
                density,
                density_error,
            } => write!(
                out,
                "measure more balls, or read the scale finer: the arm is {arm:.2} in give or take {arm_error:.2}, the density \
                 {density:.2} g/cm³ give or take {density_error:.2}"
            ),
            CannotTell::Unlikely(misfit) => write!(
                out,
                "check the readings, and that all are of this ball and this grip: {misfit}"
            ),
        }
    }
}

impl Error for CannotTell {
    fn source(&self) -> Option<&(dyn Error + 'static)> {
        match self {
            CannotTell::Unlikely(misfit) => Some(misfit),
            _ => None,
        }
    }
}
