//! The heavy spot: the centre of gravity marked on the undrilled ball, a stated distance from its pin (the *pin-out*).

use super::Point;
use super::great_circle::{turned, walk};
use super::mass_bias::way;
use crate::fitting::{Misfit, Sphere, within};

/// The most places that are worked out at once.
const MOST_PLACES: f64 = 3600.0;

/// One place the centre of gravity can come to lie.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CgPlace {
    direction: f64,
    place: Point,
}

impl CgPlace {
    /// Degrees at the pin, counter-clockwise from the direction along the midline on the PAP's side, 0 to 360.
    pub fn direction(&self) -> f64 {
        self.direction
    }

    /// Where it lies.
    pub fn place(&self) -> Point {
        self.place
    }
}

/// Where the centre of gravity lies when it is `pin_out` inches (0 to a quarter of the way around) from the pin on the line
/// to `toward`: the mass bias of an asymmetric ball.
///
/// # Errors
///
/// A pin-out out of range; a point on the pin or opposite to it.
pub fn cg_toward(ball: &Sphere, pin: Point, toward: Point, pin_out: f64) -> Result<Point, Misfit> {
    let pin_out = within("pin-out", pin_out, 0.0, ball.quarter())?;
    let along = way(ball, pin, toward, "distance from pin to mass bias")?;
    Ok(Point::of(
        ball,
        walk(pin.unit(ball), along, ball.radians(pin_out)),
    ))
}

/// Everywhere the centre of gravity of a symmetric ball can come to lie: all round the pin, as the ball may be turned about
/// it, in even steps of about `step` degrees (0.1 to 180). A pin-out of 0 has one place.
///
/// # Errors
///
/// A pin-out outside 0 to a quarter of the way around, or a step outside its range.
pub fn cg_places(
    ball: &Sphere,
    pin: Point,
    pin_out: f64,
    step: f64,
) -> Result<Vec<CgPlace>, Misfit> {
    let pin_out = within("pin-out", pin_out, 0.0, ball.quarter())?;
    let step = within("step", step, 0.1, 180.0)?;
    // Even steps that close the circle; the cast is from 2 to 3600.
    let count = if pin_out == 0.0 {
        1
    } else {
        libm::round(360.0 / step).clamp(2.0, MOST_PLACES) as u32
    };
    let (at, right) = (pin.unit(ball), pin.right(ball));
    let places = (0..count).map(|index| {
        let direction = 360.0 * f64::from(index) / f64::from(count);
        let along = turned(at, right, direction.to_radians());
        let place = Point::of(ball, walk(at, along, ball.radians(pin_out)));
        CgPlace { direction, place }
    });
    Ok(places.collect())
}
