//! The mass bias: a quarter of the way around from the pin, turned toward the thumb's side from the way to the PAP.

use std::f64::consts::FRAC_PI_2;

use glam::DVec3;

use super::great_circle::{apart, heading, turned, walk};
use super::{HAIR, Point};
use crate::fitting::{Misfit, Sphere, within};

/// The way straight from one point to another, or why there is none.
pub(super) fn way(
    ball: &Sphere,
    from: Point,
    to: Point,
    what: &'static str,
) -> Result<DVec3, Misfit> {
    let (from, to) = (from.unit(ball), to.unit(ball));
    heading(from, to).ok_or_else(|| {
        let value = ball.radius() * apart(from, to);
        let farthest = 2.0 * ball.quarter() - HAIR;
        if value < farthest {
            Misfit::TooSmall {
                what,
                value,
                lowest: HAIR,
            }
        } else {
            Misfit::TooLarge {
                what,
                value,
                highest: farthest,
            }
        }
    })
}

/// Where the mass bias comes to lie: a quarter of the way around from the pin, at the drilling angle (0 to 180 degrees) from
/// the way to the PAP. For the usual side of a right hand it is turned toward the thumb's side.
///
/// # Errors
///
/// An angle out of range; a pin on the PAP or opposite to it.
pub fn mass_bias_place(
    ball: &Sphere,
    pin: Point,
    pap: Point,
    drilling: f64,
) -> Result<Point, Misfit> {
    let drilling = within("drilling angle", drilling, 0.0, 180.0)?.to_radians();
    let to_pap = way(ball, pin, pap, "distance from pin to PAP")?;
    let at = pin.unit(ball);
    Ok(Point::of(
        ball,
        walk(at, turned(at, to_pap, -drilling), FRAC_PI_2),
    ))
}

/// Where the mass bias lies when the line from the pin through the centre of gravity is followed a quarter of the way around.
///
/// # Errors
///
/// A centre of gravity on the pin or opposite to it.
pub fn mass_bias_through(ball: &Sphere, pin: Point, cg: Point) -> Result<Point, Misfit> {
    let along = way(ball, pin, cg, "distance from pin to centre of gravity")?;
    Ok(Point::of(ball, walk(pin.unit(ball), along, FRAC_PI_2)))
}

/// Where the mass bias lies when it is a quarter of the way around from the pin and this far from the grip centre.
///
/// Two such places are alike in distance: `right` takes the one to the right of the way from the pin to the grip centre.
///
/// # Errors
///
/// A pin on the grip centre or opposite to it; a distance that no such place has. With the pin d inches from the grip centre
/// and a quarter of q inches, it is at least |q - d|, and at most the smaller of q + d and 3 q - d.
pub fn mass_bias_from_grip(
    ball: &Sphere,
    pin: Point,
    distance: f64,
    right: bool,
) -> Result<Point, Misfit> {
    let to_grip = way(
        ball,
        pin,
        Point::grip_centre(),
        "distance from pin to grip centre",
    )?;
    let (quarter, pin_out) = (ball.quarter(), pin.to_grip(ball));
    let distance = within(
        "distance from mass bias to grip centre",
        distance,
        (quarter - pin_out).abs() - HAIR,
        (quarter + pin_out).min(3.0 * quarter - pin_out) + HAIR,
    )?;
    let ratio = libm::cos(ball.radians(distance)) / libm::sin(ball.radians(pin_out));
    let angle = libm::acos(ratio.clamp(-1.0, 1.0));
    let at = pin.unit(ball);
    let along = turned(at, to_grip, if right { -angle } else { angle });
    Ok(Point::of(ball, walk(at, along, FRAC_PI_2)))
}
