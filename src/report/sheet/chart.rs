//! From the ball to paper: three ways of looking at it.

use glam::DVec3;

use super::canvas::Spot;

/// A way to lay points of the ball on paper.
pub(super) trait View {
    /// Inches to the right and up, before the scale; none where the point can't be seen.
    fn flat(&self, point: DVec3) -> Option<(f64, f64)>;
}

/// The grip unrolled about its centre: every distance from the grip centre is true along the ball, and so is every
/// direction. A tape laid through the grip centre agrees.
#[derive(Clone, Copy, Debug)]
pub(super) struct Unrolled;

impl View for Unrolled {
    fn flat(&self, point: DVec3) -> Option<(f64, f64)> {
        let aside = libm::hypot(point.x, point.y);
        let arc = point.length() * libm::atan2(aside, point.z);
        if aside < 1e-12 {
            return Some((0.0, 0.0));
        }
        Some((arc * point.x / aside, arc * point.y / aside))
    }
}

/// The ball seen from far away; its far half is hidden.
#[derive(Clone, Copy, Debug)]
pub(super) struct Face {
    right: DVec3,
    up: DVec3,
    toward: DVec3,
}

impl Face {
    /// Looking at this point of the ball, with the fingers up.
    pub(super) fn at(point: DVec3) -> Face {
        let toward = point.try_normalize().unwrap_or(DVec3::Z);
        let right = DVec3::Y.cross(toward).try_normalize().unwrap_or(DVec3::X);
        Face {
            right,
            up: toward.cross(right),
            toward,
        }
    }
}

impl View for Face {
    fn flat(&self, point: DVec3) -> Option<(f64, f64)> {
        (point.dot(self.toward) >= 0.0).then(|| (point.dot(self.right), point.dot(self.up)))
    }
}

/// A section: the plane through the ball's centre that these two directions span. What lies off it is seen square on.
#[derive(Clone, Copy, Debug)]
pub(super) struct Section {
    right: DVec3,
    up: DVec3,
}

impl Section {
    /// With this point of the ball on top, and this one to the right of it.
    pub(super) fn of(top: DVec3, right: DVec3) -> Section {
        let up = top.normalize_or_zero();
        Section {
            right: right.reject_from(up).normalize_or_zero(),
            up,
        }
    }
}

impl View for Section {
    fn flat(&self, point: DVec3) -> Option<(f64, f64)> {
        Some((point.dot(self.right), point.dot(self.up)))
    }
}

/// A view on a place of the page, at a scale.
#[derive(Clone, Copy, Debug)]
pub(super) struct Chart<V> {
    pub(super) view: V,
    /// Where the view's own origin lies.
    pub(super) origin: Spot,
    /// Hundredths of an inch on paper for an inch of the ball.
    pub(super) scale: f64,
}

impl<V: View> Chart<V> {
    pub(super) fn spot(&self, point: DVec3) -> Option<Spot> {
        let (right, up) = self.view.flat(point)?;
        let spot = (
            self.origin.0 + self.scale * right,
            self.origin.1 - self.scale * up,
        );
        (spot.0.is_finite() && spot.1.is_finite()).then_some(spot)
    }

    /// All of the points, or nothing.
    pub(super) fn spots(&self, points: &[DVec3]) -> Vec<Spot> {
        let spots: Option<Vec<Spot>> = points.iter().map(|point| self.spot(*point)).collect();
        spots.unwrap_or_default()
    }

    /// The runs of points that can be seen.
    pub(super) fn seen(&self, points: &[DVec3]) -> Vec<Vec<Spot>> {
        let mut runs = vec![Vec::new()];
        for point in points {
            match (self.spot(*point), runs.last_mut()) {
                (Some(spot), Some(run)) => run.push(spot),
                _ => runs.push(Vec::new()),
            }
        }
        runs.retain(|run| !run.is_empty());
        runs
    }
}
