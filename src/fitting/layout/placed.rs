//! A whole layout as points on the ball: pin, PAP, mass bias and heavy spot.

use super::gravity::cg_toward;
use super::great_circle::{heading, turn, walk};
use super::mass_bias::{mass_bias_place, mass_bias_through, way};
use super::{Angles, Distances, Point};
use crate::fitting::{Misfit, Sphere, within};

/// Degrees that rounding may leave below zero.
const ANGLE_HAIR: f64 = 1e-9;

/// Where pin, PAP, mass bias and centre of gravity lie. The pin always has a place; the rest may be unknown or not there.
///
/// It is stated for the usual side; [`Layout::mirrored`] turns it round for a ball that curves the other way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Layout {
    pin: Point,
    pap: Option<Point>,
    mass_bias: Option<Point>,
    cg: Option<Point>,
    mirrored: bool,
}

impl Layout {
    /// A layout by the place of the pin alone; no PAP is known.
    pub fn from_pin(pin: Point) -> Layout {
        Layout {
            pin,
            pap: None,
            mass_bias: None,
            cg: None,
            mirrored: false,
        }
    }

    /// A layout of a symmetric ball from the PAP: inches from pin to PAP (0 to a quarter of the way around), and degrees at
    /// the PAP from the upper VAL to the pin (0 to 180, toward the grip).
    ///
    /// # Errors
    ///
    /// A number outside those ranges.
    pub fn from_pap(ball: &Sphere, pap: Point, distance: f64, val: f64) -> Result<Layout, Misfit> {
        let angles = Angles::new(ball, 0.0, distance, val)?;
        Ok(Layout {
            pap: Some(pap),
            ..Layout::from_pin(angles.pin_place(ball, pap))
        })
    }

    /// A layout of an asymmetric ball from the PAP, by two angles and a distance.
    ///
    /// # Errors
    ///
    /// A pin on the PAP, as then no drilling angle is defined.
    pub fn from_angles(ball: &Sphere, pap: Point, angles: &Angles) -> Result<Layout, Misfit> {
        let pin = angles.pin_place(ball, pap);
        Ok(Layout {
            pap: Some(pap),
            mass_bias: Some(mass_bias_place(ball, pin, pap, angles.drilling())?),
            ..Layout::from_pin(pin)
        })
    }

    /// A layout of an asymmetric ball from the PAP, by three distances.
    ///
    /// # Errors
    ///
    /// Distances that no point on this ball can have together.
    pub fn from_distances(
        ball: &Sphere,
        pap: Point,
        distances: &Distances,
    ) -> Result<Layout, Misfit> {
        Layout::from_angles(ball, pap, &distances.angles(ball)?)
    }

    /// The same with a PAP that was measured.
    #[must_use]
    pub fn with_pap(self, pap: Point) -> Layout {
        Layout {
            pap: Some(pap),
            ..self
        }
    }

    /// The same with the mass bias on the line from the pin to this point, a quarter of the way around from the pin.
    ///
    /// # Errors
    ///
    /// A point on the pin or opposite to it.
    pub fn with_mass_bias_toward(self, ball: &Sphere, toward: Point) -> Result<Layout, Misfit> {
        Ok(Layout {
            mass_bias: Some(mass_bias_through(ball, self.pin, toward)?),
            ..self
        })
    }

    /// The same with the centre of gravity this far from the pin (0 to a quarter of the way around): toward the mass bias
    /// if there is one, else `direction` degrees from the way along the midline on the PAP's side, toward the fingers.
    ///
    /// # Errors
    ///
    /// A number out of range; -360 to 360 degrees are read.
    pub fn with_cg(self, ball: &Sphere, pin_out: f64, direction: f64) -> Result<Layout, Misfit> {
        let cg = match self.mass_bias {
            Some(mass_bias) => cg_toward(ball, self.pin, mass_bias, pin_out)?,
            None => {
                let pin_out = within("pin-out", pin_out, 0.0, ball.quarter())?;
                let direction =
                    within("direction from the pin", direction, -360.0, 360.0)?.to_radians();
                let along = self.pin.right(ball) * libm::cos(direction)
                    + self.pin.upward(ball) * libm::sin(direction);
                Point::of(
                    ball,
                    walk(self.pin.unit(ball), along, ball.radians(pin_out)),
                )
            }
        };
        Ok(Layout {
            cg: Some(cg),
            ..self
        })
    }

    /// The same with the centre of gravity here, wherever that is from the pin.
    #[must_use]
    pub fn with_cg_at(self, cg: Point) -> Layout {
        Layout {
            cg: Some(cg),
            ..self
        }
    }

    /// The mirror image, for a ball that curves the other way. The holes of the hand stay where they are.
    #[must_use]
    pub fn mirrored(self) -> Layout {
        let turned = |point: Point| point.mirrored();
        Layout {
            pin: turned(self.pin),
            pap: self.pap.map(turned),
            mass_bias: self.mass_bias.map(turned),
            cg: self.cg.map(turned),
            mirrored: !self.mirrored,
        }
    }

    /// Whether this is a mirror image.
    pub fn is_mirrored(&self) -> bool {
        self.mirrored
    }

    /// Where the pin lies.
    pub fn pin(&self) -> Point {
        self.pin
    }

    /// Where the PAP lies, if it was measured.
    pub fn pap(&self) -> Option<Point> {
        self.pap
    }

    /// Where the mass bias comes to lie, if the ball has one.
    pub fn mass_bias(&self) -> Option<Point> {
        self.mass_bias
    }

    /// Where the centre of gravity comes to lie, if it is known.
    pub fn cg(&self) -> Option<Point> {
        self.cg
    }

    /// Inches from pin to PAP, if there is one.
    pub fn pin_to_pap(&self, ball: &Sphere) -> Option<f64> {
        self.pap.map(|pap| self.pin.to(ball, pap))
    }

    /// Inches from mass bias to PAP, if there are both.
    pub fn mass_bias_to_pap(&self, ball: &Sphere) -> Option<f64> {
        Some(self.mass_bias?.to(ball, self.pap?))
    }

    /// Inches from mass bias to grip centre, if there is a mass bias.
    pub fn mass_bias_to_grip(&self, ball: &Sphere) -> Option<f64> {
        Some(self.mass_bias?.to_grip(ball))
    }

    /// Inches from the pin to the VAL, if there is a PAP; below zero for a pin beyond the VAL, away from the grip.
    pub fn buffer(&self, ball: &Sphere) -> Option<f64> {
        let whole = if self.mirrored {
            self.mirrored()
        } else {
            *self
        };
        let square = whole.pap?.right(ball);
        let aside = -whole.pin.unit(ball).dot(square);
        Some(ball.radius() * libm::asin(aside.clamp(-1.0, 1.0)))
    }

    /// Degrees at the PAP from the upper VAL to the pin, above -180, up to 180; below zero for a pin beyond the VAL.
    ///
    /// # Errors
    ///
    /// No PAP ([`Misfit::NotANumber`]); a pin on the PAP or opposite to it.
    pub fn val(&self, ball: &Sphere) -> Result<f64, Misfit> {
        let whole = if self.mirrored {
            self.mirrored()
        } else {
            *self
        };
        let pap = whole.pap.ok_or(Misfit::NotANumber { what: "PAP" })?;
        let to_pin = way(ball, pap, whole.pin, "distance from pin to PAP")?;
        Ok(turn(pap.unit(ball), pap.upward(ball), to_pin).to_degrees())
    }

    /// Degrees at the pin from the PAP to the mass bias, above -180, up to 180; below zero for a mass bias turned the
    /// unusual way.
    ///
    /// # Errors
    ///
    /// No PAP or no mass bias ([`Misfit::NotANumber`]); a pin on one of them or opposite to it.
    pub fn drilling(&self, ball: &Sphere) -> Result<f64, Misfit> {
        let whole = if self.mirrored {
            self.mirrored()
        } else {
            *self
        };
        let pap = whole.pap.ok_or(Misfit::NotANumber { what: "PAP" })?;
        let mass_bias = whole
            .mass_bias
            .ok_or(Misfit::NotANumber { what: "mass bias" })?;
        let to_pap = way(ball, whole.pin, pap, "distance from pin to PAP")?;
        let at = whole.pin.unit(ball);
        let along = heading(at, mass_bias.unit(ball)).unwrap_or(to_pap);
        Ok(-turn(at, to_pap, along).to_degrees())
    }

    /// The layout in two angles and a distance.
    ///
    /// # Errors
    ///
    /// As [`Layout::val`] and [`Layout::drilling`]; a pin over a quarter of the way around from the PAP or beyond the VAL, or
    /// a mass bias turned the unusual way: such a layout has no usual angles.
    pub fn angles(&self, ball: &Sphere) -> Result<Angles, Misfit> {
        let distance = self
            .pin_to_pap(ball)
            .ok_or(Misfit::NotANumber { what: "PAP" })?;
        let quarter = ball.quarter();
        let distance = within(
            "distance from pin to PAP",
            distance,
            0.0,
            quarter + super::HAIR,
        )?;
        Angles::new(
            ball,
            snapped(self.drilling(ball)?),
            distance.min(quarter),
            snapped(self.val(ball)?),
        )
    }

    /// The layout in three distances.
    ///
    /// # Errors
    ///
    /// As [`Layout::angles`].
    pub fn distances(&self, ball: &Sphere) -> Result<Distances, Misfit> {
        Ok(self.angles(ball)?.distances(ball))
    }
}

/// An angle that rounding pushed over an end of 0 to 180 is that end.
fn snapped(angle: f64) -> f64 {
    if angle < 0.0 && angle > -ANGLE_HAIR {
        0.0
    } else if angle < -180.0 + ANGLE_HAIR {
        180.0
    } else {
        angle
    }
}
