//! One grip on a ball seen from another: how an old grip lies beside a new one.

use glam::{DMat3, DVec3};

use super::{Misfit, Sphere, layout::Point, within};

/// Where a new grip lies on the ball, seen from the old one.
///
/// Its centre is `over` inches along the midline (toward +x) and then `up` inches from the old grip's centre. Its
/// fingers point the way the old grip calls up there, turned by `turned` degrees (-360 to 360), counter-clockwise as
/// seen from outside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shift {
    /// Inches along the midline; up to half way around either way.
    pub over: f64,
    /// Inches toward the fingers, below zero toward the thumb; up to a quarter either way.
    pub up: f64,
    /// Degrees counter-clockwise.
    pub turned: f64,
}

impl Shift {
    /// A direction, or a moment, of the old grip's frame as it is in the new one's; its length stays.
    ///
    /// # Errors
    ///
    /// A number outside its range.
    pub fn carry(&self, ball: &Sphere, vector: [f64; 3]) -> Result<[f64; 3], Misfit> {
        Ok((self.view(ball)? * DVec3::from_array(vector)).to_array())
    }

    /// The turn that takes directions of the old grip's frame to the new one's.
    pub(super) fn view(&self, ball: &Sphere) -> Result<DMat3, Misfit> {
        let place = Point::new(ball, self.over, self.up)?;
        let turned =
            within("turn of the grip in degrees", self.turned, -360.0, 360.0)?.to_radians();
        let (over, up) = (ball.radians(place.over()), ball.radians(place.up()));
        let (sin_over, cos_over) = (libm::sin(over), libm::cos(over));
        let (sin_up, cos_up) = (libm::sin(up), libm::cos(up));
        let out = DVec3::new(cos_up * sin_over, sin_up, cos_up * cos_over);
        let north = DVec3::new(-sin_up * sin_over, cos_up, -sin_up * cos_over);
        let east = DVec3::new(cos_over, 0.0, -sin_over);
        let fingers = north * libm::cos(turned) - east * libm::sin(turned);
        let right = east * libm::cos(turned) + north * libm::sin(turned);
        Ok(DMat3::from_cols(right, fingers, out).transpose())
    }
}
