//! What to set a drill to for one hole, and the two ways of counting a finger's lateral pitch.
//!
//! Model of the jig: the spindle stands upright over a table that slides two ways. At zero the ball's centre is under
//! the spindle. Heads that tilt about a fixed pivot are not exactly this; for a head that tilts about the mark on the
//! ball, the tilt is given.

use super::{
    Misfit, Sphere,
    digit::Digit,
    hole::{Pitches, Section, checked_depth},
    pitch, within,
};

/// What to set for one hole. Inches and degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Setting {
    /// How far the spindle stands forward of the ball's centre (toward the fingers for a thumb hole, toward the thumb
    /// for a finger hole); below zero, the other way.
    pub forward: f64,
    /// How far it stands to the right of the centre as seen with the fingers up; below zero, left.
    pub right: f64,
    /// Both together: how far the axis misses the centre.
    pub total: f64,
    /// The direction of the whole offset, in degrees from forward toward the right, over -180 to 180; 0 without offset.
    pub azimuth: f64,
    /// Degrees between the axis and the line from the mark to the ball's centre: sin tilt = total / R.
    pub tilt: f64,
    /// How far below the ball's highest point the mark lies when it is under the spindle.
    pub mark_below_top: f64,
    /// How far below the ball's highest point the drill's flat end stops: `mark_below_top` and the depth.
    pub stop_below_top: f64,
    /// How far the drill's flat end goes down from where it first touches the ball, which is the highest place under
    /// it. For an oval: the drill in the middle of its run.
    pub stop_below_touch: f64,
    /// For an oval: how far the table moves each way from the middle of the run, forward and right.
    pub run: Option<[f64; 2]>,
}

/// The setting for a digit's hole with these pitches, this section and depth.
///
/// # Errors
///
/// A number that no hole has.
pub fn setting(
    ball: &Sphere,
    digit: Digit,
    pitches: Pitches,
    section: Section,
    depth: f64,
) -> Result<Setting, Misfit> {
    let Pitches { forward, lateral } = pitches.checked(ball)?;
    let section = section.checked()?;
    let depth = checked_depth(ball, depth)?;
    let radius = ball.radius();
    let total = pitches.total();
    let height = |aside: f64| libm::sqrt((radius * radius - aside * aside).max(0.0));
    let mark = radius - height(total);
    let highest = height((total - 0.5 * section.drill()).max(0.0));
    let azimuth = if total > 0.0 {
        libm::atan2(lateral, forward).to_degrees()
    } else {
        0.0
    };
    Ok(Setting {
        forward,
        right: lateral,
        total,
        azimuth,
        tilt: pitch::angle(ball, total)?,
        mark_below_top: mark,
        stop_below_top: mark + depth,
        stop_below_touch: depth + highest - height(total),
        run: run(digit, section, azimuth.to_radians(), height(total) / radius),
    })
}

/// The run on the table: the mark on the ball is tilted, so its part along the offset looks shorter by the tilt's
/// cosine.
fn run(digit: Digit, section: Section, azimuth: f64, cosine: f64) -> Option<[f64; 2]> {
    let Section::Oval { angle, .. } = section else {
        return None;
    };
    // The wide direction on the ball. Forward is up for a thumb hole, down for a finger hole.
    let angle = angle.to_radians();
    let right = libm::cos(angle);
    let forward = match digit {
        Digit::Thumb => libm::sin(angle),
        Digit::Middle | Digit::Ring => -libm::sin(angle),
    };
    let along = (forward * libm::cos(azimuth) + right * libm::sin(azimuth)) * cosine;
    let across = right * libm::cos(azimuth) - forward * libm::sin(azimuth);
    let length = libm::hypot(along, across);
    let half = 0.5 * section.run() / length;
    Some([
        (along * libm::cos(azimuth) - across * libm::sin(azimuth)) * half,
        (along * libm::sin(azimuth) + across * libm::cos(azimuth)) * half,
    ])
}

/// A finger's lateral counted from "parallel to a finger hole that lies as far on the other side", from one counted
/// from "aimed at the ball's centre". Both are positive outward, away from the other finger (-2 to 2 in).
///
/// `between` is the straight line between the two finger holes' centres (0 to 4 in). An axis parallel to the line that
/// halves the angle between the two centres is zero.
///
/// # Errors
///
/// A number outside those ranges.
pub fn parallel_lateral(ball: &Sphere, between: f64, centre_lateral: f64) -> Result<f64, Misfit> {
    let lean = pitch::lean(ball, within("lateral pitch", centre_lateral, -2.0, 2.0)?)?;
    Ok(ball.radius() * libm::sin(lean - half_angle(ball, between)?))
}

/// The way back from [`parallel_lateral`].
///
/// # Errors
///
/// A distance outside 0 to 4 in, a pitch outside -3 to 2 in.
pub fn centre_lateral(ball: &Sphere, between: f64, parallel_lateral: f64) -> Result<f64, Misfit> {
    let lean = pitch::lean(ball, within("lateral pitch", parallel_lateral, -3.0, 2.0)?)?;
    Ok(ball.radius() * libm::sin(lean + half_angle(ball, between)?))
}

/// Half the angle between two centres this far apart in a straight line.
fn half_angle(ball: &Sphere, between: f64) -> Result<f64, Misfit> {
    let between = within("distance between finger centres", between, 0.0, 4.0)?;
    Ok(libm::asin(between / (2.0 * ball.radius())))
}
