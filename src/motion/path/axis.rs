//! The axis point: where the spin axis comes out of the ball, and how far it goes over the ball.

use glam::DVec3;

use super::state::{Moving, State};

/// The axis point's way, as angles at the ball's middle.
#[derive(Clone, Copy, Debug)]
pub(super) struct Axis {
    first: DVec3,
    /// Cosine of the angle to the farthest one.
    least: f64,
}

impl Axis {
    /// From the release. A ball let go without spin starts where its first spin is, so the change of its spin tells.
    pub(super) fn new(released: &Moving, spin_change: DVec3) -> Axis {
        let spin = if released.spin.length_squared() > 1e-12 {
            released.spin
        } else {
            spin_change
        };
        Axis {
            first: (released.axes().transpose() * spin).normalize_or_zero(),
            least: 1.0,
        }
    }

    /// The angle from the first axis point to this one.
    pub(super) fn shift(&self, state: &State) -> f64 {
        let now = Moving::of(state).spin_in_ball();
        let (sine, cosine) = (self.first.cross(now).length(), self.first.dot(now));
        libm::atan2(sine, cosine)
    }

    /// The ball has come to here.
    pub(super) fn see(&mut self, state: &State) {
        let now = Moving::of(state).spin_in_ball();
        let long = now.length();
        if long > 0.0 {
            self.least = (self.first.dot(now) / long).min(self.least);
        }
    }
    /// The angle to the farthest one.
    pub(super) fn farthest(&self) -> f64 {
        libm::acos(self.least.max(-1.0))
    }
}
