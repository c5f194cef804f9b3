//! Pitch: how far a hole's axis misses the centre of the ball.
//!
//! Model of the jig: the drill stands upright and the ball is moved sideways by the pitch. Heads that tilt about a fixed
//! pivot are not exactly this.

use super::{Misfit, Sphere, within};

/// Degrees between a hole's axis and the line from the hole to the ball's centre: `sin t = pitch / R`. Keeps the sign.
///
/// # Errors
///
/// A pitch as large as the radius or larger.
pub fn angle(ball: &Sphere, pitch: f64) -> Result<f64, Misfit> {
    Ok(lean(ball, pitch)?.to_degrees())
}

/// The pitch whose axis leans this many degrees, -90 to 90. Keeps the sign.
///
/// # Errors
///
/// An angle outside that range.
pub fn offset(ball: &Sphere, degrees: f64) -> Result<f64, Misfit> {
    let degrees = within("lean of the axis", degrees, -90.0, 90.0)?;
    Ok(ball.radius() * libm::sin(degrees.to_radians()))
}

/// The whole miss of an axis with a forward or reverse part and a part to the side, which stand square to each other.
pub fn combined(forward: f64, lateral: f64) -> f64 {
    libm::hypot(forward, lateral)
}

/// [`angle`] in radians.
pub(super) fn lean(ball: &Sphere, pitch: f64) -> Result<f64, Misfit> {
    let radius = ball.radius();
    Ok(libm::asin(
        within("pitch", pitch, -radius, radius)? / radius,
    ))
}
