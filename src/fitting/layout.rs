//! Layouts: where the pin goes, by trigonometry on the sphere.
//!
//! The grip centre is where latitude and longitude are zero. The midline is the equator and counts toward the axis point
//! (the *PAP*); latitude counts toward the fingers. The *VAL* is the line through the PAP square to the midline.

use super::{Misfit, Sphere, within};

/// Room for rounding when a ratio must not pass one.
const HAIR: f64 = 1e-9;

/// A point on the ball: first over along the midline from the grip centre, then up toward the fingers. Inches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    over: f64,
    up: f64,
}

impl Point {
    /// A point this far over (up to half way around either way) and up (up to a quarter either way).
    ///
    /// # Errors
    ///
    /// A number outside those ranges.
    pub fn new(ball: &Sphere, over: f64, up: f64) -> Result<Point, Misfit> {
        let quarter = ball.quarter();
        Ok(Point {
            over: within("distance over", over, -2.0 * quarter, 2.0 * quarter)?,
            up: within("distance up", up, -quarter, quarter)?,
        })
    }

    /// Inches over, toward the axis point.
    pub fn over(&self) -> f64 {
        self.over
    }

    /// Inches above the midline, toward the fingers.
    pub fn up(&self) -> f64 {
        self.up
    }

    /// The shortest way to the grip centre.
    pub fn to_grip(&self, ball: &Sphere) -> f64 {
        let (over, up) = (ball.radians(self.over), ball.radians(self.up));
        ball.radius() * libm::acos((libm::cos(over) * libm::cos(up)).clamp(-1.0, 1.0))
    }

    /// The shortest way to the centreline; below zero on the far side from the axis point.
    pub fn to_centreline(&self, ball: &Sphere) -> f64 {
        let (over, up) = (ball.radians(self.over), ball.radians(self.up));
        ball.radius() * libm::asin((libm::cos(up) * libm::sin(over)).clamp(-1.0, 1.0))
    }
}

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

    /// Where the pin goes for a bowler with this PAP.
    pub fn pin_place(&self, ball: &Sphere, pap: Point) -> Point {
        let (pin, val) = (ball.radians(self.pin), self.val.to_radians());
        let up = ball.radians(pap.up);
        let height =
            libm::sin(up) * libm::cos(pin) + libm::cos(up) * libm::sin(pin) * libm::cos(val);
        let height = height.clamp(-1.0, 1.0);
        let back = libm::atan2(
            libm::sin(val) * libm::sin(pin) * libm::cos(up),
            libm::cos(pin) - libm::sin(up) * height,
        );
        Point {
            over: pap.over - ball.radius() * back,
            up: ball.radius() * libm::asin(height),
        }
    }
}

/// The drilling angle in degrees that puts the mass bias this far from the PAP.
///
/// # Errors
///
/// A pin on the PAP or over a quarter of the way around from it; a mass bias nearer or farther than such a pin allows.
pub fn drilling_angle(ball: &Sphere, pin: f64, mass_bias: f64) -> Result<f64, Misfit> {
    let quarter = ball.quarter();
    let pin = within("distance from pin to PAP", pin, HAIR, quarter)?;
    let nearest = quarter - pin;
    let what = "distance from mass bias to PAP";
    let mass_bias = within(what, mass_bias, nearest - HAIR, quarter + pin + HAIR)?;
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

/// The share, 0 to 1, of the most flare a symmetric core can give: the sine of twice the angle from pin to PAP.
///
/// A model of an undrilled ball; the true curve is flatter, and drilling skews it.
///
/// # Errors
///
/// A distance outside 0 to a quarter of the way around.
pub fn flare_share(ball: &Sphere, pin: f64) -> Result<f64, Misfit> {
    let pin = within("distance from pin to PAP", pin, 0.0, ball.quarter())?;
    Ok(libm::sin(2.0 * ball.radians(pin)).max(0.0))
}
