//! Static weights when the grip is moved away from the heavy spot.

use super::{Misfit, Sphere, within};

/// What is left of top weight, and what it became to the side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moved {
    /// Ounces toward the heavy spot's side.
    pub side: f64,
    /// Ounces left on top.
    pub top: f64,
}

/// Splits an undrilled ball's top weight (0 to 16 oz) for a grip centre this many inches from the heavy spot.
///
/// Moment model: the mass centre's lever is turned by the arc. What a shop scale shows may differ; this is geometry.
///
/// # Errors
///
/// A top weight outside that range, or a distance outside 0 to a quarter of the way around.
pub fn moved_grip(ball: &Sphere, top_weight: f64, distance: f64) -> Result<Moved, Misfit> {
    let top_weight = within("top weight", top_weight, 0.0, 16.0)?;
    let turned = ball.radians(within("distance", distance, 0.0, ball.quarter())?);
    Ok(Moved {
        side: top_weight * libm::sin(turned),
        top: top_weight * libm::cos(turned),
    })
}
