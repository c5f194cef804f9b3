//! A point on the ball and the ways of saying where it is.

use glam::DVec3;

use super::great_circle::apart;
use crate::fitting::{Misfit, Sphere, within};

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

    /// The grip centre.
    pub fn grip_centre() -> Point {
        Point { over: 0.0, up: 0.0 }
    }

    /// The point that was measured the other way round: first up the centreline (up to half way around either way), then
    /// over from there, square to the centreline (up to a quarter either way).
    ///
    /// # Errors
    ///
    /// A number outside those ranges.
    pub fn from_up_first(ball: &Sphere, up: f64, over: f64) -> Result<Point, Misfit> {
        let quarter = ball.quarter();
        let up = ball.radians(within(
            "distance up the centreline",
            up,
            -2.0 * quarter,
            2.0 * quarter,
        )?);
        let over = ball.radians(within(
            "distance over from the centreline",
            over,
            -quarter,
            quarter,
        )?);
        let level = libm::cos(over);
        Ok(Point::of(
            ball,
            DVec3::new(
                libm::sin(over),
                level * libm::sin(up),
                level * libm::cos(up),
            ),
        ))
    }

    /// The point at this distance along the ball from the grip centre (up to half way around), in this direction: degrees
    /// from the midline's PAP side toward the fingers, -360 to 360.
    ///
    /// # Errors
    ///
    /// A number outside those ranges.
    pub fn from_grip(ball: &Sphere, distance: f64, direction: f64) -> Result<Point, Misfit> {
        let half = 2.0 * ball.quarter();
        let distance = ball.radians(within(
            "distance from the grip centre",
            distance,
            0.0,
            half,
        )?);
        let direction =
            within("direction from the midline", direction, -360.0, 360.0)?.to_radians();
        let out = libm::sin(distance);
        Ok(Point::of(
            ball,
            DVec3::new(
                out * libm::cos(direction),
                out * libm::sin(direction),
                libm::cos(distance),
            ),
        ))
    }

    /// The point at this distance from the grip centre (up to half way around) and this height above the midline, on the
    /// PAP's side of the centreline or on the other.
    ///
    /// # Errors
    ///
    /// A distance out of range, or a height that no point at that distance has: above or below by more than the distance,
    /// or, past the side of the ball, than what is left of it.
    pub fn from_grip_and_height(
        ball: &Sphere,
        distance: f64,
        height: f64,
        pap_side: bool,
    ) -> Result<Point, Misfit> {
        let half = 2.0 * ball.quarter();
        let distance = within("distance from the grip centre", distance, 0.0, half)?;
        let most = distance.min(half - distance) + super::HAIR;
        let height = within("height above the midline", height, -most, most)?;
        let (far, high) = (ball.radians(distance), ball.radians(height.abs()));
        // The half-angle form keeps its digits where the pin is nearly on the centreline.
        let near_side = libm::sin((far + high) / 2.0) * libm::sin((far - high) / 2.0);
        let far_side = libm::cos((far + high) / 2.0) * libm::cos((far - high) / 2.0);
        let over = 2.0 * libm::atan2(near_side.max(0.0).sqrt(), far_side.max(0.0).sqrt());
        let over = ball.radius() * if pap_side { over } else { -over };
        let quarter = ball.quarter();
        Ok(Point {
            over: over.clamp(-half, half),
            up: height.clamp(-quarter, quarter),
        })
    }

    /// The point at these shortest distances from the centreline (below zero away from the PAP's side) and above the
    /// midline, on the grip's half of the ball or on the half behind.
    ///
    /// # Errors
    ///
    /// A distance over a quarter of the way around, or a height that leaves no such point: the two together reach at most
    /// a quarter.
    pub fn from_lines(
        ball: &Sphere,
        to_centreline: f64,
        height: f64,
        behind: bool,
    ) -> Result<Point, Misfit> {
        let quarter = ball.quarter();
        let aside = within(
            "distance from the centreline",
            to_centreline,
            -quarter,
            quarter,
        )?;
        let most = quarter - aside.abs() + super::HAIR;
        let height = within("height above the midline", height, -most, most)?;
        let (aside, high) = (ball.radians(aside), ball.radians(height));
        let out = (libm::cos(aside + high) * libm::cos(aside - high))
            .max(0.0)
            .sqrt();
        let out = if behind { -out } else { out };
        Ok(Point::of(
            ball,
            DVec3::new(libm::sin(aside), libm::sin(high), out),
        ))
    }

    /// The point where a line from the ball's centre in this direction meets the surface: x toward the PAP's side, y toward
    /// the fingers, z out through the grip centre. Any length but zero.
    ///
    /// # Errors
    ///
    /// A direction without length, or numbers that are none.
    pub fn at(ball: &Sphere, direction: [f64; 3]) -> Result<Point, Misfit> {
        let what = "direction from the ball's centre";
        if !direction.iter().all(|part| part.is_finite()) {
            return Err(Misfit::NotANumber { what });
        }
        let direction = DVec3::from_array(direction);
        let largest = direction.abs().max_element();
        let largest = within(what, largest, f64::MIN_POSITIVE, f64::MAX)?;
        // Scaled first, so that squares neither overflow nor vanish.
        Ok(Point::of(ball, (direction / largest).normalize()))
    }

    /// Inches over, toward the axis point.
    pub fn over(&self) -> f64 {
        self.over
    }

    /// Inches above the midline, toward the fingers.
    pub fn up(&self) -> f64 {
        self.up
    }

    /// The unit direction from the ball's centre: x toward the PAP's side, y toward the fingers, z out through the grip
    /// centre.
    pub fn direction(&self, ball: &Sphere) -> [f64; 3] {
        self.unit(ball).to_array()
    }

    /// The same point measured the other way round: inches up the centreline, then inches over from there, square to it.
    pub fn up_first(&self, ball: &Sphere) -> (f64, f64) {
        let unit = self.unit(ball);
        let up = if unit.y == 0.0 && unit.z == 0.0 {
            0.0
        } else {
            libm::atan2(unit.y, unit.z)
        };
        (ball.radius() * up, self.to_centreline(ball))
    }

    /// The shortest way to the grip centre.
    pub fn to_grip(&self, ball: &Sphere) -> f64 {
        ball.radius() * apart(self.unit(ball), DVec3::Z)
    }

    /// The direction from the grip centre, in degrees from the midline's PAP side toward the fingers, above -180, up to 180.
    /// The grip centre itself has direction 0.
    pub fn grip_direction(&self, ball: &Sphere) -> f64 {
        let unit = self.unit(ball);
        libm::atan2(unit.y, unit.x).to_degrees()
    }

    /// The shortest way to the centreline; below zero on the far side from the axis point.
    pub fn to_centreline(&self, ball: &Sphere) -> f64 {
        let unit = self.unit(ball);
        ball.radius() * libm::atan2(unit.x, libm::hypot(unit.y, unit.z))
    }

    /// The shortest way to another point.
    pub fn to(&self, ball: &Sphere, other: Point) -> f64 {
        ball.radius() * apart(self.unit(ball), other.unit(ball))
    }

    /// The mirror image: as far over the other way.
    #[must_use]
    pub fn mirrored(&self) -> Point {
        Point {
            over: -self.over,
            up: self.up,
        }
    }

    /// The unit vector to this point.
    pub(super) fn unit(&self, ball: &Sphere) -> DVec3 {
        let (over, up) = (ball.radians(self.over), ball.radians(self.up));
        let level = libm::cos(up);
        DVec3::new(
            level * libm::sin(over),
            libm::sin(up),
            level * libm::cos(over),
        )
    }

    /// The direction along the midline's way at this point, away from the grip on the PAP's side.
    pub(super) fn right(&self, ball: &Sphere) -> DVec3 {
        let over = ball.radians(self.over);
        DVec3::new(libm::cos(over), 0.0, -libm::sin(over))
    }

    /// The direction toward the fingers at this point, square to the midline.
    pub(super) fn upward(&self, ball: &Sphere) -> DVec3 {
        let (over, up) = (ball.radians(self.over), ball.radians(self.up));
        let fall = -libm::sin(up);
        DVec3::new(
            fall * libm::sin(over),
            libm::cos(up),
            fall * libm::cos(over),
        )
    }

    /// The point of a unit vector.
    pub(super) fn of(ball: &Sphere, unit: DVec3) -> Point {
        let level = libm::hypot(unit.x, unit.z);
        let over = if level == 0.0 {
            0.0
        } else {
            libm::atan2(unit.x, unit.z)
        };
        let quarter = ball.quarter();
        // Rounding must not leave the ranges that `new` accepts.
        Point {
            over: (ball.radius() * over).clamp(-2.0 * quarter, 2.0 * quarter),
            up: (ball.radius() * libm::atan2(unit.y, level)).clamp(-quarter, quarter),
        }
    }
}
