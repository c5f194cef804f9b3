//! What drilling does to a ball: solids against closed forms, balance, the best unit, the scale's own arm, and how the core
//! turns; nothing removed changes nothing, and a mirror image stays one.

mod balance;
mod best_unit;
mod brute;
mod calibrate;
mod eigen;
mod inertia;
mod solids;

use spanwright::fitting::{
    Misfit, Sphere,
    hole::{Hole, Section},
};

/// A test's outcome when a number it gives is refused.
type Outcome = Result<(), Box<dyn std::error::Error>>;

/// A round hole at this place, leaning as said: both as directions.
fn round(
    ball: &Sphere,
    mouth: [f64; 3],
    axis: [f64; 3],
    size: f64,
    depth: f64,
) -> Result<Hole, Misfit> {
    let wide = if axis[0].abs() > 0.9 {
        [0.0, 1.0, 0.0]
    } else {
        [1.0, 0.0, 0.0]
    };
    Hole::along(ball, mouth, axis, wide, Section::Round { size }, depth)
}

/// A round hole straight at the ball's centre.
fn straight(ball: &Sphere, mouth: [f64; 3], size: f64, depth: f64) -> Result<Hole, Misfit> {
    round(ball, mouth, mouth.map(|part| -part), size, depth)
}

/// A thumb hole and two finger holes as anyone drills them, each leaning a little.
fn three_holes(ball: &Sphere) -> Result<[Hole; 3], Misfit> {
    Ok([
        round(ball, [0.0, -2.1, 3.7], [0.03, 0.55, -0.84], 1.0, 2.5)?,
        round(
            ball,
            [-0.6, 2.0, 3.75],
            [0.1, -0.4, -0.9],
            31.0 / 32.0,
            1.25,
        )?,
        round(
            ball,
            [0.6, 2.0, 3.75],
            [-0.12, -0.35, -0.9],
            31.0 / 32.0,
            1.25,
        )?,
    ])
}

/// Checks two vectors part by part.
#[track_caller]
fn near(found: [f64; 3], expected: [f64; 3], hair: f64) {
    for (one, other) in found.iter().zip(expected) {
        assert!(
            (one - other).abs() <= hair,
            "found {found:?}, expected {expected:?}"
        );
    }
}
