//! The physics of the roll. It knows no rules: plain typed inputs, plain typed results.
//!
//! [`closed`] has exact results for a ball with equal moments, cheap enough for every ball and bowler; [`path`] integrates
//! the full rigid body. Equations are the standard ones of a rigid body that slides and rolls under Coulomb friction.
//!
//! # Frame
//!
//! x runs down the lane from the foul line, y to the bowler's left from the lane's middle, z up. Everything is stated for a
//! right-hander whose ball curves to the left; a left-hander's shot, and a backup ball, is its mirror image. Boards are counted
//! from the bowler's own side: board 20 is the middle. Inside, all is in SI units and `f64`; [`quantity`] has the
//! units of the trade.
//!
//! # What the model leaves out
//!
//! Rolling resistance (so tilt never decays), the size of the contact, friction that depends on speed, oil that the ball
//! carries down the lane, the lane's slope, loft and bounce, and air.

mod ball;
pub mod closed;
mod impossible;
mod lane;
pub mod path;
pub mod quantity;
mod release;
mod stepper;

pub use ball::{Attitude, Ball};
pub use impossible::Impossible;
pub use lane::{Friction, Lane};
pub use quantity::{Angle, Length, Mass, Speed, Spin};
pub use release::Release;

/// Acceleration of free fall in m/s², the standard value (exact by definition).
pub const GRAVITY: f64 = 9.80665;

/// The value, if it lies between the limits, ends included; a limit that a change of units has rounded is still the limit.
fn within(
    what: &'static str,
    value: f64,
    lowest: f64,
    highest: f64,
    unit: &'static str,
) -> Result<f64, Impossible> {
    let slack = 1e-12 * (lowest.abs() + highest.abs());
    match value >= lowest - slack && value <= highest + slack {
        true => Ok(value),
        false => Err(Impossible::Outside {
            what,
            value,
            lowest,
            highest,
            unit,
        }),
    }
}
