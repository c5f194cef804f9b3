//! A layout stated from the PAP: by two angles and a distance, or by three distances.

use super::great_circle::walk;
use super::{HAIR, Point};
use crate::fitting::{Misfit, Sphere, within};

/// A layout by two angles and the distance between them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Angles {
    drilling: f64,
    pin: f64,
    val: f64,
}

impl Angles {
    /// The drilling angle at the pin, from the PAP to the mass bias (0 to 180 degrees); inches from pin to PAP (0 to a
    /// quarter of the way around); the angle at the PAP, from the upper VAL to the pin (0 to 180 degrees).
    ///
    /// # Errors
    ///
    /// A number outside those ranges.
    pub fn new(ball: &Sphere, drilling: f64, pin: f64, val: f64) -> Result<Angles, Misfit> {
        Ok(Angles {
            drilling: within("drilling angle", drilling, 0.0, 180.0)?,
            pin: within("distance from pin to PAP", pin, 0.0, ball.quarter())?,
            val: within("VAL angle", val, 0.0, 180.0)?,
        })
    }

    /// The same layout from three distances: pin to PAP, mass bias to PAP, and pin to VAL.
    ///
    /// `thumb_side` says that the pin lies on the thumb's side of the great circle through the PAP square to the VAL.
    ///
    /// # Errors
    ///
    /// Distances that no point on the ball can have together.
    pub fn from_distances(
        ball: &Sphere,
        pin: f64,
        mass_bias: f64,
        buffer: f64,
        thumb_side: bool,
    ) -> Result<Angles, Misfit> {
        let val = val_angle(ball, pin, buffer)?;
        let val = if thumb_side { 180.0 - val } else { val };
        Angles::new(ball, drilling_angle(ball, pin, mass_bias)?, pin, val)
    }

    /// The drilling angle in degrees.
    pub fn drilling(&self) -> f64 {
        self.drilling
    }

    /// Inches from pin to PAP.
    pub fn pin(&self) -> f64 {
        self.pin
    }

    /// The VAL angle in degrees.
    pub fn val(&self) -> f64 {
        self.val
    }

    /// The shortest way from the pin to the VAL.
    pub fn buffer(&self, ball: &Sphere) -> f64 {
        let square = libm::sin(ball.radians(self.pin)) * libm::sin(self.val.to_radians());
        ball.radius() * libm::asin(square.clamp(-1.0, 1.0))
    }

    /// The way from the mass bias, a quarter of the way around from the pin, to the PAP.
    pub fn mass_bias(&self, ball: &Sphere) -> f64 {
        let along = libm::sin(ball.radians(self.pin)) * libm::cos(self.drilling.to_radians());
        ball.radius() * libm::acos(along.clamp(-1.0, 1.0))
    }

    /// The same layout in three distances.
    pub fn distances(&self, ball: &Sphere) -> Distances {
        Distances {
            pin: self.pin,
            mass_bias: self.mass_bias(ball),
            buffer: self.buffer(ball),
            thumb_side: self.val > 90.0,
        }
    }

    /// Where the pin goes for a bowler with this PAP. For a PAP on the other side see [`Layout`](super::Layout).
    pub fn pin_place(&self, ball: &Sphere, pap: Point) -> Point {
        let val = self.val.to_radians();
        let heading = pap.upward(ball) * libm::cos(val) - pap.right(ball) * libm::sin(val);
        Point::of(ball, walk(pap.unit(ball), heading, ball.radians(self.pin)))
    }
}

/// A layout by three distances, in inches: pin to PAP, mass bias to PAP, and pin to VAL (the buffer).
///
/// The buffer alone leaves two places for the pin, so it is said on which side the pin lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Distances {
    pin: f64,
    mass_bias: f64,
    buffer: f64,
    thumb_side: bool,
}

impl Distances {
    /// These three distances. `thumb_side` says that the pin lies on the thumb's side of the great circle through the PAP
    /// square to the VAL; such a pin can still lie above the midline.
    ///
    /// # Errors
    ///
    /// Distances that no point on the ball can have together.
    pub fn new(
        ball: &Sphere,
        pin: f64,
        mass_bias: f64,
        buffer: f64,
        thumb_side: bool,
    ) -> Result<Distances, Misfit> {
        val_angle(ball, pin, buffer)?;
        drilling_angle(ball, pin, mass_bias)?;
        Ok(Distances {
            pin,
            mass_bias,
            buffer,
            thumb_side,
        })
    }

    /// Inches from pin to PAP.
    pub fn pin(&self) -> f64 {
        self.pin
    }

    /// Inches from mass bias to PAP.
    pub fn mass_bias(&self) -> f64 {
        self.mass_bias
    }

    /// Inches from the pin to the VAL.
    pub fn buffer(&self) -> f64 {
        self.buffer
    }

    /// Whether the pin lies on the thumb's side of the great circle through the PAP square to the VAL.
    pub fn thumb_side(&self) -> bool {
        self.thumb_side
    }

    /// The same layout in angles.
    ///
    /// # Errors
    ///
    /// Distances of a ball of another size.
    pub fn angles(&self, ball: &Sphere) -> Result<Angles, Misfit> {
        Angles::from_distances(ball, self.pin, self.mass_bias, self.buffer, self.thumb_side)
    }
}

/// How near to the PAP and how far from it the mass bias can come when the pin is this far from the PAP, in inches.
///
/// # Errors
///
/// A pin on the PAP or over a quarter of the way around from it.
pub fn mass_bias_reach(ball: &Sphere, pin: f64) -> Result<(f64, f64), Misfit> {
    let quarter = ball.quarter();
    let pin = within("distance from pin to PAP", pin, HAIR, quarter)?;
    Ok((quarter - pin, quarter + pin))
}

/// The drilling angle in degrees that puts the mass bias this far from the PAP.
///
/// # Errors
///
/// A pin on the PAP or over a quarter of the way around from it; a mass bias nearer or farther than such a pin allows.
pub fn drilling_angle(ball: &Sphere, pin: f64, mass_bias: f64) -> Result<f64, Misfit> {
    let (nearest, farthest) = mass_bias_reach(ball, pin)?;
    let what = "distance from mass bias to PAP";
    let mass_bias = within(what, mass_bias, nearest - HAIR, farthest + HAIR)?;
    let ratio = libm::cos(ball.radians(mass_bias)) / libm::sin(ball.radians(pin));
    Ok(libm::acos(ratio.clamp(-1.0, 1.0)).to_degrees())
}

/// The VAL angle in degrees, 0 to 90, that puts the pin this far from the VAL.
///
/// # Errors
///
/// A pin on the PAP or over a quarter of the way around from it; a pin farther from the VAL than from the PAP.
pub fn val_angle(ball: &Sphere, pin: f64, buffer: f64) -> Result<f64, Misfit> {
    let pin = within("distance from pin to PAP", pin, HAIR, ball.quarter())?;
    let buffer = within("distance from pin to VAL", buffer, 0.0, pin + HAIR)?;
    let ratio = libm::sin(ball.radians(buffer)) / libm::sin(ball.radians(pin));
    Ok(libm::asin(ratio.clamp(-1.0, 1.0)).to_degrees())
}
