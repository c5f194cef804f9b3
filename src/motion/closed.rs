//! Exact results for a ball with equal moments and its mass centre in the middle.
//!
//! The direction of slip never changes, so until slip ends the path is made of parabolas, and direction and speed when it ends
//! don't depend on friction at all.

use super::{Angle, Friction, Lane, Length, Release, Speed, Spin};

/// A release with its sines and cosines worked out: made once, asked for every ball.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thrown {
    pub(super) velocity: [f64; 2],
    /// Spin in the lane's frame, rad/s.
    pub(super) spin: [f64; 3],
}

/// What a ball with equal moments does.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Closed {
    pub(super) most_turn: f64,
    pub(super) turn_done: f64,
}

impl Thrown {
    /// The release in the lane's frame.
    pub fn of(release: &Release) -> Thrown {
        let _ = release;
        Thrown {
            velocity: [0.0; 2],
            spin: [0.0; 3],
        }
    }
}

/// The whole roll of a ball with moment of inertia `beta` times mass times radius squared (0.2 to 0.67), on a lane whose oil is alike on
/// every board and ends at the middle of its ramp.
pub fn roll(
    thrown: &Thrown,
    beta: f64,
    radius: Length,
    lane: &Lane,
    friction: &Friction,
) -> Closed {
    let _ = (thrown, beta, radius, lane, friction);
    Closed {
        most_turn: 0.0,
        turn_done: 0.0,
    }
}

impl Closed {
    /// The angle between the release and the direction when slip has ended: the most this hand can turn this ball.
    pub fn most_turn(&self) -> Angle {
        Angle::radians(self.most_turn)
    }
    /// How much of the slip is gone at the pins, 0 to 1.
    pub fn turn_done(&self) -> f64 {
        self.turn_done
    }
    /// The direction at the pins on the line whose farthest-out place is where the oil ends.
    pub fn entry(&self) -> Angle {
        Angle::radians(0.0)
    }
    /// How far down the lane slip ends; beyond the pins if the dry went on.
    pub fn slip_ends(&self) -> Length {
        Length::metres(0.0)
    }
    /// How far it has moved sideways at the pins, from the straight line of its launch.
    pub fn sideways(&self) -> Length {
        Length::metres(0.0)
    }
    /// Speed at the pins.
    pub fn speed_at_pins(&self) -> Speed {
        Speed::mph(0.0)
    }
    /// Revs at the pins.
    pub fn revs_at_pins(&self) -> Spin {
        Spin::rpm(0.0)
    }
    /// Energy lost to friction by the pins, J for each kg of ball.
    pub fn energy_lost(&self) -> f64 {
        0.0
    }
}
