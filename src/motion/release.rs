//! How the ball leaves the hand.

use super::{Angle, Impossible, Length, Speed, Spin, within};

/// A release at the foul line. Speed and direction are those of the mass centre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Release {
    pub(super) speed: f64,
    pub(super) spin: f64,
    pub(super) rotation: f64,
    pub(super) tilt: f64,
    pub(super) launch: f64,
    pub(super) start: f64,
}

impl Release {
    /// A release of this speed (3 to 40 mph), spin (0 to 1000 rpm), axis rotation (0 is end over end, 90 full side; 0 to 90 degrees) and
    /// axis tilt (0 to 90 degrees), sent straight down the middle of the lane.
    ///
    /// # Errors
    /// A number outside those limits.
    pub fn new(
        speed: Speed,
        spin: Spin,
        rotation: Angle,
        tilt: Angle,
    ) -> Result<Release, Impossible> {
        within("ball speed", speed.as_mph(), 3.0, 40.0, "mph")?;
        within("rev rate", spin.as_rpm(), 0.0, 1000.0, "rpm")?;
        within("axis rotation", rotation.as_degrees(), 0.0, 90.0, "degrees")?;
        within("axis tilt", tilt.as_degrees(), 0.0, 90.0, "degrees")?;
        Ok(Release {
            speed: speed.as_metres_a_second(),
            spin: spin.as_radians_a_second(),
            rotation: rotation.as_radians(),
            tilt: tilt.as_radians(),
            launch: 0.0,
            start: 0.0,
        })
    }

    /// The same from so far left of the lane's middle, in a direction so far to the left (-10 to 10 degrees); to the right is less
    /// than zero. The axis of the spin stays as it is in the lane.
    ///
    /// # Errors
    /// A number outside those limits, or a start more than a metre from the middle.
    pub fn sent(self, start: Length, launch: Angle) -> Result<Release, Impossible> {
        within("start across the lane", start.as_metres(), -1.0, 1.0, "m")?;
        within("launch angle", launch.as_degrees(), -10.0, 10.0, "degrees")?;
        Ok(Release {
            start: start.as_metres(),
            launch: launch.as_radians(),
            ..self
        })
    }

    /// How fast.
    pub fn speed(&self) -> Speed {
        Speed::metres_a_second(self.speed)
    }
    /// How many turns.
    pub fn spin(&self) -> Spin {
        Spin::radians_a_second(self.spin)
    }
}
