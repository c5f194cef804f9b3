//! Exact results for a ball with equal moments and its mass centre in the middle.
//!
//! With u the slip at the contact, e its direction, and beta the moment of inertia over mass times radius squared, friction gives
//! dv/dt = -mu g e and du/dt = -mu g (1 + 1/beta) e. So e never changes, the path is a parabola in each zone, and when slip has ended
//! the velocity is v - beta/(1 + beta) u, whatever the friction was. The spin about the vertical neither changes nor matters.
//!
//! The oil is taken as one zone, alike on every board, that ends at the middle of its ramp; the dry follows. The crosswise ratio is
//! left out: [`path`](super::path) has it.

mod between;
mod course;

pub use between::{Between, Rolling};
pub use course::{Course, Place};
use course::{Surface, taken};

use super::{Angle, Friction, Lane, Length, Release, Speed, Spin};

/// The farthest out that a line is sent, in degrees: as for a [`Release`].
pub const MOST_LAUNCH: f64 = 10.0;
/// Sine of that.
const MOST_OUT: f64 = 0.173_648_177_666_930_35;

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
    velocity: [f64; 2],
    /// Velocity when slip has ended, m/s.
    finished: [f64; 2],
    /// Spin when slip has ended, rad/s.
    spin: [f64; 3],
    slip_ends: Place,
    pins: Place,
    sideways: f64,
    /// Velocity at the pins on the line whose farthest-out place is where the oil ends.
    entry: [f64; 2],
    /// Of the slip at the release, squared, times half beta / (1 + beta): all that friction can take, J/kg.
    energy: f64,
}

impl Thrown {
    /// The release in the lane's frame.
    pub fn of(release: &Release) -> Thrown {
        let (speed, turns) = (release.speed, release.spin);
        let (rotation, tilt) = (release.rotation, release.tilt);
        let flat = turns * libm::cos(tilt);
        Thrown {
            velocity: [
                speed * libm::cos(release.launch),
                speed * libm::sin(release.launch),
            ],
            spin: [
                -flat * libm::sin(rotation),
                flat * libm::cos(rotation),
                -turns * libm::sin(tilt),
            ],
        }
    }

    /// The direction it is sent in; to the left is more than zero.
    pub fn launch(&self) -> Angle {
        direction(self.velocity)
    }

    /// The slip at the contact of a ball with this radius, down the lane and to the left, m/s.
    pub fn slip(&self, radius: Length) -> [f64; 2] {
        let ([x, y], [across, along, _]) = (self.velocity, self.spin);
        let radius = radius.as_metres();
        [x - radius * along, y + radius * across]
    }

    /// The velocity when slip has ended, m/s, whatever the friction: down the lane and to the left.
    pub fn finished(&self, beta: f64, radius: Length) -> [f64; 2] {
        let ([x, y], [u, w]) = (self.velocity, self.slip(radius));
        let share = beta / (1.0 + beta);
        [x - share * u, y - share * w]
    }

    /// The same hand and speed, sent so that the ball is farthest out exactly where the oil ends: there it goes straight down the lane.
    /// Where that would want more than [`MOST_LAUNCH`] degrees, that much. The spin stays as it is in the lane.
    pub fn farthest_where_oil_ends(
        &self,
        beta: f64,
        radius: Length,
        lane: &Lane,
        friction: &Friction,
    ) -> Thrown {
        let [x, y] = self.velocity;
        let speed = libm::sqrt(x * x + y * y);
        let sent = |out: f64| Thrown {
            velocity: [libm::sqrt((speed * speed - out * out).max(0.0)), out],
            spin: self.spin,
        };
        // Sideways velocity where the oil ends: it rises with the sideways velocity sent. Below zero at one end, above at the other.
        let surface = Surface::of(lane, friction);
        let share = beta.clamp(0.01, 2.0) / (1.0 + beta.clamp(0.01, 2.0));
        let left = |out: f64| {
            let thrown = sent(out);
            let [u, w] = thrown.slip(radius);
            let size = length([u, w]);
            match size > 0.0 {
                true => {
                    let (ahead, all) = (thrown.velocity[0], share * size);
                    let gone = taken(ahead, u / size, surface.oil, surface.ends, all);
                    out - w / size * gone
                }
                false => out,
            }
        };
        let (mut low, mut high) = (-speed * MOST_OUT, 0.0);
        let (mut last, mut value) = (high, left(high));
        // What is left without a change of launch is nearly what to send it out by.
        let mut next = last - value;
        for _ in 0..60 {
            if value.abs() <= 1e-13 || value.is_nan() {
                return sent(last);
            }
            if !(next > low && next < high) {
                next = match low < last && left(low) >= 0.0 {
                    true => return sent(low),
                    false => (low + high) / 2.0,
                };
            }
            let found = left(next);
            match found > 0.0 {
                true => high = next,
                false => low = next,
            }
            let slope = (found - value) / (next - last);
            (last, value) = (next, found);
            next = last - value / slope;
        }
        sent(last)
    }
}

/// The angle between the release and the direction when slip has ended, whatever the friction: the most this hand can turn a ball with this
/// `beta` and radius.
pub fn most_turn(thrown: &Thrown, beta: f64, radius: Length) -> Angle {
    between(thrown.velocity, thrown.finished(beta, radius))
}

/// The direction at the pins on the line whose farthest-out place is where the oil ends.
pub fn entry(
    thrown: &Thrown,
    beta: f64,
    radius: Length,
    lane: &Lane,
    friction: &Friction,
) -> Angle {
    let line = thrown.farthest_where_oil_ends(beta, radius, lane, friction);
    let course = Course::of(&line, beta, radius, lane, friction);
    course.at(lane.length()).direction()
}

/// The whole roll of a ball with moment of inertia `beta` times mass times radius squared (0.01 to 2; a solid ball alike all
/// through has 0.4), on a lane whose oil is alike on every board and ends at the middle of its ramp.
pub fn roll(
    thrown: &Thrown,
    beta: f64,
    radius: Length,
    lane: &Lane,
    friction: &Friction,
) -> Closed {
    let course = Course::of(thrown, beta, radius, lane, friction);
    let (pins, slip_ends) = (course.at(lane.length()), course.slip_ends());
    let line = thrown.farthest_where_oil_ends(beta, radius, lane, friction);
    let on_line = Course::of(&line, beta, radius, lane, friction).at(lane.length());
    let ([x, y], [u, w]) = (thrown.velocity, thrown.slip(radius));
    Closed {
        velocity: thrown.velocity,
        finished: slip_ends.velocity(),
        spin: slip_ends.spin(),
        slip_ends,
        pins,
        sideways: pins.across().as_metres() - y / x * lane.length,
        entry: on_line.velocity(),
        energy: beta / (1.0 + beta) * (u * u + w * w) / 2.0,
    }
}

impl Closed {
    /// The angle between the release and the direction when slip has ended: the most this hand can turn this ball.
    pub fn most_turn(&self) -> Angle {
        between(self.velocity, self.finished)
    }
    /// How much of the slip is gone at the pins, 0 to 1.
    pub fn turn_done(&self) -> f64 {
        1.0 - self.pins.slip_left()
    }
    /// The direction at the pins on the line whose farthest-out place is where the oil ends.
    pub fn entry(&self) -> Angle {
        direction(self.entry)
    }
    /// The same as sine over cosine, which needs no arc tangent.
    pub fn entry_slope(&self) -> f64 {
        self.entry[1] / self.entry[0]
    }
    /// How far down the lane slip ends; beyond the pins if the dry went on.
    pub fn slip_ends(&self) -> Length {
        self.slip_ends.down()
    }
    /// When slip ends, in seconds from the foul line; later than the pins if the dry went on.
    pub fn seconds_to_slip_end(&self) -> f64 {
        self.slip_ends.seconds()
    }
    /// The direction when slip has ended; to the left is more than zero.
    pub fn direction_when_finished(&self) -> Angle {
        direction(self.finished)
    }
    /// The speed when slip has ended.
    pub fn speed_when_finished(&self) -> Speed {
        Speed::metres_a_second(length(self.finished))
    }
    /// The tilt of the spin axis when slip has ended; the release's own tilt is at least as large, unless the ball was overspun.
    pub fn tilt_when_finished(&self) -> Angle {
        let [x, y, z] = self.spin;
        Angle::radians(libm::atan2(-z, length([x, y])))
    }
    /// How far it has moved sideways at the pins, from the straight line of its launch; to the left is more than zero.
    pub fn sideways(&self) -> Length {
        Length::metres(self.sideways)
    }
    /// The ball at the pins.
    pub fn pins(&self) -> &Place {
        &self.pins
    }
    /// Speed at the pins.
    pub fn speed_at_pins(&self) -> Speed {
        self.pins.speed()
    }
    /// Revs at the pins.
    pub fn revs_at_pins(&self) -> Spin {
        self.pins.revs()
    }
    /// Energy lost to friction by the pins, J for each kg of ball.
    pub fn energy_lost(&self) -> f64 {
        let left = self.pins.slip_left();
        self.energy * (1.0 - left * left)
    }
    /// The friction that would have done the same to the ball's velocity by the pins, had it been the same all the way.
    pub fn mean_friction(&self) -> f64 {
        self.pins.mean_friction(self.velocity)
    }
}

/// The length of a vector.
fn length([x, y]: [f64; 2]) -> f64 {
    libm::sqrt(x * x + y * y)
}

/// The direction of a velocity.
fn direction([x, y]: [f64; 2]) -> Angle {
    Angle::radians(libm::atan2(y, x))
}

/// From one direction to another; to the left is more than zero.
fn between([a, b]: [f64; 2], [c, d]: [f64; 2]) -> Angle {
    Angle::radians(libm::atan2(a * d - b * c, a * c + b * d))
}
