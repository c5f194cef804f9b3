//! The unbevelled edge of a hole on the ball, where a span is read.

use std::f64::consts::TAU;

use glam::DVec3;

use super::{
    Misfit,
    hole::{Hole, direction, tangent},
    root,
};

/// Farther along the ball, in radians, than any edge is from its hole's centre.
const BEYOND: f64 = 0.8;

impl Hole {
    /// The place on the ball, in inches, where the great circle from the hole's centre toward another place first
    /// crosses the hole's wall: the edge that a span in that direction is read to.
    ///
    /// # Errors
    ///
    /// A direction of no length, or one straight out of or into the hole.
    pub fn edge(&self, toward: [f64; 3]) -> Result<[f64; 3], Misfit> {
        let toward = direction("way to the edge", toward)?;
        let toward = tangent("way to the edge", toward, self.out())?;
        Ok(self.at_edge(toward).to_array())
    }

    /// The hole's edge as this many places (3 to 1000) around it, counter-clockwise as seen from outside, in inches.
    /// The first lies in the wide direction.
    ///
    /// # Errors
    ///
    /// A hole whose wide direction has no part along the surface, which no hole that can be drilled has.
    pub fn outline(&self, places: usize) -> Result<Vec<[f64; 3]>, Misfit> {
        let places = places.clamp(3, 1000);
        let first = tangent("wide direction", self.wide_vec(), self.out())?;
        let second = self.out().cross(first);
        let around = (0..places).map(|place| {
            let angle = TAU * place as f64 / places as f64;
            let toward = first * libm::cos(angle) + second * libm::sin(angle);
            self.at_edge(toward).to_array()
        });
        Ok(around.collect())
    }

    fn at_edge(&self, toward: DVec3) -> DVec3 {
        let radius = self.mouth_vec().length();
        step(self.out(), toward, reach(self, toward)) * radius
    }
}

/// Radians along the great circle that leaves the hole's centre in this direction (of length one, along the surface) to
/// where it crosses the hole's wall. Exact for holes that lean and for ovals.
pub(super) fn reach(hole: &Hole, toward: DVec3) -> f64 {
    let out = hole.out();
    let radius = hole.mouth_vec().length();
    let (wide, narrow) = (hole.wide_vec(), hole.axis_vec().cross(hole.wide_vec()));
    let section = hole.section();
    let (drill, run) = (0.5 * section.drill(), 0.5 * section.run());
    let outside = |angle: f64| {
        let half = libm::sin(0.5 * angle);
        let from_centre = (toward * libm::sin(angle) - out * (2.0 * half * half)) * radius;
        let past_run = (libm::fabs(from_centre.dot(wide)) - run).max(0.0);
        libm::hypot(past_run, from_centre.dot(narrow)) - drill
    };
    root::rising(outside, 0.0, BEYOND)
}

/// The direction along the surface at one point (of length one) toward another.
pub(super) fn toward(from: DVec3, to: DVec3) -> DVec3 {
    let part = to - from * from.dot(to);
    part.normalize_or_zero()
}

/// The point this many radians from a point in a direction along the surface, both of length one.
pub(super) fn step(from: DVec3, toward: DVec3, angle: f64) -> DVec3 {
    from * libm::cos(angle) + toward * libm::sin(angle)
}

/// Radians between two directions of length one; exact for small and for large ones.
pub(super) fn apart(one: DVec3, other: DVec3) -> f64 {
    libm::atan2(one.cross(other).length(), one.dot(other))
}
