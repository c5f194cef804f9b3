//! Speed, and the revs that go with rolling.

use super::{Misfit, Sphere, within};

/// Feet a second in one mile an hour, exact: 5280 / 3600.
const FEET_A_SECOND: f64 = 5280.0 / 3600.0;
/// Inches a minute in one mile an hour, exact.
const INCHES_A_MINUTE: f64 = 5280.0 * 12.0 / 60.0;

/// Average miles an hour over the 60 feet from foul line to head pin, from the seconds taken (0.5 to 20).
///
/// # Errors
///
/// Seconds outside that range.
pub fn mph(seconds: f64) -> Result<f64, Misfit> {
    Ok(60.0 / FEET_A_SECOND / within("time in seconds", seconds, 0.5, 20.0)?)
}

/// Seconds over the 60 feet from foul line to head pin at an average of this many miles an hour (1 to 60).
///
/// # Errors
///
/// A speed outside that range.
pub fn seconds(mph: f64) -> Result<f64, Misfit> {
    Ok(60.0 / FEET_A_SECOND / within("speed", mph, 1.0, 60.0)?)
}

/// Turns a minute of a ball that rolls without slipping at this speed (0 to 60 mph).
///
/// # Errors
///
/// A speed outside that range.
pub fn roll_rpm(ball: &Sphere, mph: f64) -> Result<f64, Misfit> {
    Ok(within("speed", mph, 0.0, 60.0)? * INCHES_A_MINUTE / ball.circumference())
}

/// A rev rate (0 to 2000 rpm) as a share of what pure rolling would need at this speed (1 to 60 mph).
///
/// # Errors
///
/// A number outside those ranges.
pub fn share_of_roll(ball: &Sphere, rpm: f64, mph: f64) -> Result<f64, Misfit> {
    let mph = within("speed", mph, 1.0, 60.0)?;
    Ok(within("rev rate", rpm, 0.0, 2000.0)? / roll_rpm(ball, mph)?)
}
