//! A planned hole in space, as the hand at hand sees it: its rim on the ball, its walls, its bottom.
//!
//! A left hand's ball is turned round here, once, so that nothing that draws has to ask.

use std::f64::consts::TAU;

use glam::DVec3;

use crate::advice::{Drilling, PlannedHole};

/// Points on a rim.
const RIM: usize = 72;

/// A hole to draw. Inches, ball centre at the origin, x to the right as drawn.
#[derive(Clone, Debug)]
pub(super) struct Hole<'d> {
    pub(super) plan: &'d PlannedHole,
    pub(super) mouth: DVec3,
    pub(super) axis: DVec3,
    /// The wide direction of an oval, square to the axis.
    wide: DVec3,
}

/// Which edge of a hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Edge {
    /// Cut into the ball.
    Cut,
    /// Felt by the finger, where it isn't what is cut.
    Bore,
}

/// The radius of the ball.
pub(super) fn radius(drilling: &Drilling) -> f64 {
    drilling.circumference() / TAU
}

/// Turns a point of a right hand's ball into one of this hand's.
pub(super) fn turned(drilling: &Drilling, point: DVec3) -> DVec3 {
    if drilling.left_hand() {
        DVec3::new(-point.x, point.y, point.z)
    } else {
        point
    }
}

/// The point this far over along the midline and then up, as this hand sees it.
pub(super) fn surface(drilling: &Drilling, (over, up): (f64, f64)) -> DVec3 {
    let ball = radius(drilling);
    let (over, up) = (over / ball, up / ball);
    let point = DVec3::new(
        libm::cos(up) * libm::sin(over),
        libm::sin(up),
        libm::cos(up) * libm::cos(over),
    );
    turned(drilling, point * ball)
}

/// Every hole of the drilling, in its order.
pub(super) fn all(drilling: &Drilling) -> Vec<Hole<'_>> {
    let mouth_of = |plan: &PlannedHole| DVec3::from_array(plan.mouth());
    let thumb = drilling.holes().iter().find(|plan| plan.name() == "thumb");
    let one = |plan| {
        let (mouth, axis) = (mouth_of(plan), DVec3::from_array(plan.axis()));
        // Forward is toward the fingers for a thumb, toward the thumb for a finger.
        let (toward, sign) = match thumb {
            Some(thumb) if plan.name() != "thumb" => (mouth_of(thumb) - mouth, -1.0),
            _ => (DVec3::Y, 1.0),
        };
        let normal = mouth.normalize_or_zero();
        let up = toward.reject_from(normal).normalize_or_zero() * sign;
        let right = up.cross(normal);
        let angle = plan.oval().map_or(0.0, |(_, _, angle)| angle.to_radians());
        let wide = right * libm::cos(angle) + up * libm::sin(angle);
        Hole {
            plan,
            mouth: turned(drilling, mouth),
            axis: turned(drilling, axis),
            wide: turned(drilling, wide)
                .reject_from(turned(drilling, axis))
                .normalize_or_zero(),
        }
    };
    drilling.holes().iter().map(one).collect()
}

impl Hole<'_> {
    pub(super) fn is(&self, name: &str) -> bool {
        self.plan.name() == name
    }

    /// The diameter cut into the ball; the wide one of an oval.
    pub(super) fn cut(&self) -> f64 {
        match (self.plan.outside(), self.plan.oval()) {
            (Some(outside), _) => outside,
            (None, Some((wide, _, _))) => wide,
            (None, None) => self.plan.bore(),
        }
    }

    /// The bottom of the axis.
    pub(super) fn bottom(&self) -> DVec3 {
        self.mouth + self.axis * self.plan.depth()
    }

    /// Where an edge meets the ball; empty where there is no such edge.
    pub(super) fn rim(&self, edge: Edge) -> Vec<DVec3> {
        let (wide, narrow) = match (edge, self.plan.outside(), self.plan.oval()) {
            (Edge::Cut, Some(outside), _) => (outside, outside),
            (Edge::Bore, None, _) => return Vec::new(),
            (_, _, Some((wide, narrow, _))) => (wide, narrow),
            (_, _, None) => (self.plan.bore(), self.plan.bore()),
        };
        let across = self.axis.cross(self.wide);
        let ball = self.mouth.length();
        let straight = (wide - narrow).max(0.0) / 2.0;
        (0..RIM)
            .map(|step| {
                let angle = TAU * step as f64 / RIM as f64;
                let (sin, cos) = (libm::sin(angle), libm::cos(angle));
                let shift = if cos >= 0.0 { straight } else { -straight };
                let from = self.mouth
                    + self.wide * (cos * narrow / 2.0 + shift)
                    + across * (sin * narrow / 2.0);
                onto(from, self.axis, ball)
            })
            .collect()
    }
}

/// Moves a point along a direction until it lies on the ball; where it never does, to the nearest point of the ball.
fn onto(from: DVec3, along: DVec3, ball: f64) -> DVec3 {
    let half = from.dot(along);
    let root = half * half - (from.length_squared() - ball * ball);
    if root.is_nan() || root < 0.0 {
        return from.normalize_or_zero() * ball;
    }
    // Of the two places, the one near the mouth: the axis points inward, so it is the first.
    from + along * (-half - libm::sqrt(root))
}

/// Points along the shortest way between two points of the ball, ends included.
pub(super) fn way(from: DVec3, to: DVec3, pieces: usize) -> Vec<DVec3> {
    let ball = from.length();
    let (a, b) = (from.normalize_or_zero(), to.normalize_or_zero());
    let angle = libm::acos(a.dot(b).clamp(-1.0, 1.0));
    let sin = libm::sin(angle);
    (0..=pieces)
        .map(|step| {
            let share = step as f64 / pieces.max(1) as f64;
            if sin < 1e-9 {
                return a.lerp(b, share) * ball;
            }
            (a * libm::sin((1.0 - share) * angle) + b * libm::sin(share * angle)) / sin * ball
        })
        .collect()
}
