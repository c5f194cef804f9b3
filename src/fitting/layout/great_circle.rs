//! Walking along the ball: angles between points, headings, and where a walk ends. Radians and unit vectors.

use glam::DVec3;

/// Two points nearer than this, or nearer to opposite, have no direction between them.
const NO_WAY: f64 = 1e-12;

/// The angle between two points, exact for near and for opposite ones.
pub(super) fn apart(a: DVec3, b: DVec3) -> f64 {
    libm::atan2(a.cross(b).length(), a.dot(b))
}

/// The direction along the ball at `from` that leads straight to `to`; none to itself or the opposite point.
pub(super) fn heading(from: DVec3, to: DVec3) -> Option<DVec3> {
    // Twice across is better near the ends than taking the part along off.
    let across = from.cross(to);
    (across.length() > NO_WAY).then(|| across.cross(from).normalize())
}

/// Where a walk of so many radians along a heading ends.
pub(super) fn walk(from: DVec3, heading: DVec3, angle: f64) -> DVec3 {
    (from * libm::cos(angle) + heading * libm::sin(angle)).normalize()
}

/// A heading at `at` turned by an angle, counter-clockwise as seen from outside.
pub(super) fn turned(at: DVec3, heading: DVec3, angle: f64) -> DVec3 {
    heading * libm::cos(angle) + at.cross(heading) * libm::sin(angle)
}

/// The angle, counter-clockwise as seen from outside, from one heading at `at` to another; above -pi, up to pi.
pub(super) fn turn(at: DVec3, from: DVec3, to: DVec3) -> f64 {
    libm::atan2(at.cross(from).dot(to), from.dot(to))
}
