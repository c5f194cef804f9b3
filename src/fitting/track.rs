//! The track: the ring of oil a ball picks up, and the axis tilt it shows.
//!
//! The first ring is a small circle around the far end of the spin axis; its radius is 90 degrees less the tilt.

use super::{Misfit, Sphere, within};

/// Degrees of axis tilt from the width of the track, measured along the ball across the ring.
///
/// # Errors
///
/// A width below zero or over half the circumference.
pub fn tilt(ball: &Sphere, width: f64) -> Result<f64, Misfit> {
    let width = within("track width", width, 0.0, 2.0 * ball.quarter())?;
    // Rounding must not make a full track tilt the other way.
    Ok((90.0 - ball.degrees(width) / 2.0).max(0.0))
}

/// The width of the track that a tilt of 0 to 90 degrees leaves.
///
/// # Errors
///
/// A tilt outside that range.
pub fn width(ball: &Sphere, tilt: f64) -> Result<f64, Misfit> {
    Ok(2.0 * ball.arc(90.0 - within("tilt", tilt, 0.0, 90.0)?))
}

/// Inches along the ball from the axis point to the first ring, for a tilt of 0 to 90 degrees.
///
/// # Errors
///
/// A tilt outside that range.
pub fn axis_point_to_track(ball: &Sphere, tilt: f64) -> Result<f64, Misfit> {
    Ok(ball.arc(90.0 + within("tilt", tilt, 0.0, 90.0)?))
}
