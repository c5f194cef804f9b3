//! The ball as a rigid body, and how it is turned in the hand when it is let go.

use super::{Angle, Impossible, Length, Mass, within};

/// A rigid ball: mass, radius, three principal moments, and where its mass centre is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ball {
    pub(super) mass: f64,
    pub(super) radius: f64,
    /// About the mass centre, lowest first, kg m².
    pub(super) moments: [f64; 3],
    /// From the middle of the ball to the mass centre, along the three axes, m.
    pub(super) offset: [f64; 3],
}

impl Ball {
    /// A ball of this mass (2 to 20 lb) and radius (3 to 6 in), with the lowest, middle and highest RG (1 to 4 in each, in this
    /// order, as any solid has them).
    ///
    /// # Errors
    /// A number outside those limits, RGs out of order, or three that no solid has: the two lower moments of inertia always add
    /// up to the highest or more.
    pub fn new(mass: Mass, radius: Length, rg: [Length; 3]) -> Result<Ball, Impossible> {
        let mass = within("weight", mass.as_pounds(), 2.0, 20.0, "lb").map(Mass::pounds)?;
        let radius = within("radius", radius.as_inches(), 3.0, 6.0, "in").map(Length::inches)?;
        let [low, middle, high] = rg.map(Length::as_inches);
        within("low RG", low, 1.0, 4.0, "in")?;
        within("middle RG", middle, low, 4.0, "in")?;
        let most = libm::sqrt(low * low + middle * middle).min(4.0);
        within("high RG", high, middle, most, "in")?;
        let mass = mass.as_kilograms();
        Ok(Ball {
            mass,
            radius: radius.as_metres(),
            moments: rg.map(|rg| mass * rg.as_metres() * rg.as_metres()),
            offset: [0.0; 3],
        })
    }

    /// The same ball with its mass centre so far from the middle, along the axes of lowest, middle and highest RG (at most 5 mm
    /// in all; facts of the trade stay below 1 or 2).
    ///
    /// # Errors
    /// An offset outside that limit.
    pub fn with_offset(self, offset: [Length; 3]) -> Result<Ball, Impossible> {
        let offset = offset.map(Length::as_metres);
        let [x, y, z] = offset;
        let long = libm::sqrt(x * x + y * y + z * z) * 1000.0;
        within("offset of the mass centre", long, 0.0, 5.0, "mm")?;
        Ok(Ball { offset, ..self })
    }

    /// Its radius.
    pub fn radius(&self) -> Length {
        Length::metres(self.radius)
    }
    /// Its mass.
    pub fn mass(&self) -> Mass {
        Mass::kilograms(self.mass)
    }
    /// Its principal moments about the mass centre in kg m², lowest first.
    pub fn moments(&self) -> [f64; 3] {
        self.moments
    }
    /// The mean of the three moments over mass times radius squared: what a ball of equal moments would have.
    pub fn beta(&self) -> f64 {
        let [low, middle, high] = self.moments;
        (low + middle + high) / 3.0 / (self.mass * self.radius * self.radius)
    }
}

/// How the ball's axes stand at the release.
///
/// With p the direction of the PAP, n the upward part square to p, and t = cos(phase) n + sin(phase) p × n: the pin (lowest RG)
/// lies at cos(pin) p + sin(pin) t. With c = -sin(pin) p + cos(pin) t the axis of the highest RG is cos(turn) c + sin(turn)
/// (pin × c), and the middle one completes them.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Attitude {
    /// From the PAP to the pin.
    pub(super) pin: Angle,
    /// Where round the PAP the pin stands: 0 is straight above it, growing right-handed about the PAP.
    pub(super) phase: Angle,
    /// Where round the pin the axis of the highest RG stands.
    pub(super) turn: Angle,
}

impl Attitude {
    /// The pin so far from the PAP (0 to 180 degrees), so far round it, the axis of the highest RG so far round the pin.
    ///
    /// # Errors
    /// A pin outside that range, or an angle that is no number or beyond 360 degrees either way.
    pub fn new(pin: Angle, phase: Angle, turn: Angle) -> Result<Attitude, Impossible> {
        within(
            "angle from PAP to pin",
            pin.as_degrees(),
            0.0,
            180.0,
            "degrees",
        )?;
        within(
            "phase of the pin",
            phase.as_degrees(),
            -360.0,
            360.0,
            "degrees",
        )?;
        within(
            "turn about the pin",
            turn.as_degrees(),
            -360.0,
            360.0,
            "degrees",
        )?;
        Ok(Attitude { pin, phase, turn })
    }
}
