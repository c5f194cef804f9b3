//! The ring finger's span from the middle finger's.

use super::{Misfit, within};

/// The ring span that goes with a middle span.
///
/// `difference` is how far the middle finger's crease leads the ring finger's on the flat, open hand (-1 to 2 in). For a
/// difference between `level.0` and `level.1` the spans are alike. A smaller difference lengthens the ring span by what
/// is missing, a larger one shortens it by what is over.
///
/// # Errors
///
/// A middle span outside 0 to 15 in, a difference outside its range, or levels out of order.
pub fn ring_span(middle: f64, difference: f64, level: (f64, f64)) -> Result<f64, Misfit> {
    let middle = within("middle span", middle, 0.0, 15.0)?;
    let difference = within("crease difference", difference, -1.0, 2.0)?;
    let highest = within("level", level.1, -1.0, 2.0)?;
    let lowest = within("level", level.0, -1.0, highest)?;
    Ok(middle + (difference.clamp(lowest, highest) - difference))
}
