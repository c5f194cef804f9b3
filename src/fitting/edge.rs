//! The unbevelled edge of a hole on the ball, where a span is read.

use glam::DVec3;

use super::{hole::Hole, root};

/// Farther along the ball, in radians, than any edge is from its hole's centre.
const BEYOND: f64 = 0.8;

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
