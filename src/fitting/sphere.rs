//! The ball as a perfect sphere.

use std::f64::consts::PI;

use super::{Misfit, within};

/// A ball's size, known by its circumference.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sphere {
    /// Kept beside the radius so that a quarter of 27 is 6.75 to the last digit.
    circumference: f64,
    radius: f64,
}

impl Default for Sphere {
    /// A ball 27.000 in around.
    fn default() -> Self {
        Sphere {
            circumference: 27.0,
            radius: 27.0 / (2.0 * PI),
        }
    }
}

impl Sphere {
    /// A ball of this measured circumference, 20 to 30 inches.
    ///
    /// # Errors
    ///
    /// A circumference outside that range.
    pub fn around(circumference: f64) -> Result<Sphere, Misfit> {
        let circumference = within("circumference", circumference, 20.0, 30.0)?;
        Ok(Sphere {
            circumference,
            radius: circumference / (2.0 * PI),
        })
    }

    /// A ball of this diameter, 6.4 to 9.5 inches.
    ///
    /// # Errors
    ///
    /// A diameter outside that range.
    pub fn across(diameter: f64) -> Result<Sphere, Misfit> {
        let diameter = within("diameter", diameter, 6.4, 9.5)?;
        Ok(Sphere {
            circumference: PI * diameter,
            radius: diameter / 2.0,
        })
    }

    /// Inches from the centre to the surface.
    pub fn radius(&self) -> f64 {
        self.radius
    }

    /// Inches once around.
    pub fn circumference(&self) -> f64 {
        self.circumference
    }

    /// Inches a quarter of the way around: 6.75 on a 27 in ball.
    pub fn quarter(&self) -> f64 {
        self.circumference / 4.0
    }

    /// The straight line between two points that are `arc` inches apart along the ball, up to half way around.
    ///
    /// # Errors
    ///
    /// An arc below zero or over half the circumference.
    pub fn arc_to_chord(&self, arc: f64) -> Result<f64, Misfit> {
        let arc = within("arc", arc, 0.0, self.circumference / 2.0)?;
        Ok(2.0 * self.radius * libm::sin(arc / (2.0 * self.radius)))
    }

    /// The way along the ball between two points that are `chord` inches apart in a straight line.
    ///
    /// # Errors
    ///
    /// A chord below zero or over the diameter.
    pub fn chord_to_arc(&self, chord: f64) -> Result<f64, Misfit> {
        let chord = within("chord", chord, 0.0, 2.0 * self.radius)?;
        Ok(2.0 * self.radius * libm::asin((chord / (2.0 * self.radius)).min(1.0)))
    }

    /// Degrees at the ball's centre for an arc in inches.
    pub fn degrees(&self, arc: f64) -> f64 {
        arc * 360.0 / self.circumference
    }

    /// Inches along the ball for an angle in degrees at its centre.
    pub fn arc(&self, degrees: f64) -> f64 {
        degrees * self.circumference / 360.0
    }

    /// Radians at the ball's centre for an arc in inches.
    pub(super) fn radians(&self, arc: f64) -> f64 {
        arc / self.radius
    }
}
