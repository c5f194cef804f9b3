//! The path of a ball with equal moments: a parabola in the oil, another on the dry, a straight line when slip has ended.

use super::super::{Angle, Friction, GRAVITY, Lane, Length, Speed, Spin};
use super::{Thrown, direction, length};

/// The ball at one place of its course.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    seconds: f64,
    down: f64,
    across: f64,
    velocity: [f64; 2],
    spin: [f64; 3],
    slip_left: f64,
}

impl Place {
    /// Seconds since the foul line.
    pub fn seconds(&self) -> f64 {
        self.seconds
    }
    /// How far down the lane.
    pub fn down(&self) -> Length {
        Length::metres(self.down)
    }
    /// How far left of where it started.
    pub fn across(&self) -> Length {
        Length::metres(self.across)
    }
    /// Its velocity, down the lane and to the left, m/s.
    pub fn velocity(&self) -> [f64; 2] {
        self.velocity
    }
    /// How fast it goes.
    pub fn speed(&self) -> Speed {
        Speed::metres_a_second(length(self.velocity))
    }
    /// Its direction; to the left is more than zero.
    pub fn direction(&self) -> Angle {
        direction(self.velocity)
    }
    /// Its angular velocity in the lane's frame, rad/s.
    pub fn spin(&self) -> [f64; 3] {
        self.spin
    }
    /// How fast it spins in all.
    pub fn revs(&self) -> Spin {
        let [x, y, z] = self.spin;
        Spin::radians_a_second(libm::sqrt(x * x + y * y + z * z))
    }
    /// How much of the slip at the release is left, 0 to 1.
    pub fn slip_left(&self) -> f64 {
        self.slip_left
    }
    /// The friction that would have done the same to the velocity by here, had it been the same all the way: 0 at the foul line.
    pub fn mean_friction(&self, released: [f64; 2]) -> f64 {
        let ([x, y], [a, b]) = (self.velocity, released);
        match self.seconds > 0.0 {
            true => length([x - a, y - b]) / (GRAVITY * self.seconds),
            false => 0.0,
        }
    }
}

/// A part of the course with one acceleration.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Piece {
    start: Place,
    /// Acceleration, m/s².
    pull: [f64; 2],
    /// Share of the slip at the release that is lost in a second.
    loss: f64,
    /// Seconds since the foul line when it ends.
    until: f64,
}

impl Piece {
    /// After so many seconds of it; `turned` is the change of spin that a change of velocity brings, 1/(beta R).
    fn after(&self, seconds: f64, turned: f64) -> Place {
        let (start, [a, b]) = (&self.start, self.pull);
        let ([x, y], [p, q, r]) = (start.velocity, start.spin);
        Place {
            seconds: start.seconds + seconds,
            down: start.down + (x + a * seconds / 2.0) * seconds,
            across: start.across + (y + b * seconds / 2.0) * seconds,
            velocity: [x + a * seconds, y + b * seconds],
            spin: [p + b * seconds * turned, q - a * seconds * turned, r],
            slip_left: (start.slip_left - self.loss * seconds).max(0.0),
        }
    }

    /// Seconds of it to come so far down the lane; the ball always goes forward.
    fn seconds_to(&self, down: f64) -> f64 {
        let ([x, _], [a, _]) = (self.start.velocity, self.pull);
        let ahead = (down - self.start.down).max(0.0);
        2.0 * ahead / (x + libm::sqrt((x * x + 2.0 * a * ahead).max(0.0)))
    }
}

/// A lane as one cover finds it: the oil as one zone.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Surface {
    pub(super) oil: f64,
    pub(super) dry: f64,
    /// Where the oil ends, m.
    pub(super) ends: f64,
    /// Where the pins are, m.
    pub(super) length: f64,
}

impl Surface {
    pub(super) fn of(lane: &Lane, friction: &Friction) -> Surface {
        Surface {
            oil: friction.oil,
            dry: friction.dry,
            ends: lane.oil_ends().as_metres(),
            length: lane.length,
        }
    }
}

/// The course of one ball: where it is at any place down the lane. Beyond the pins the dry goes on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Course {
    /// In the oil, on the dry, without slip; one that doesn't come about takes no time.
    pieces: [Piece; 3],
    turned: f64,
    oil: f64,
    lane: f64,
}

impl Course {
    /// The course of a ball with moment of inertia `beta` times mass times radius squared (0.01 to 2), from the place where it starts.
    pub fn of(
        thrown: &Thrown,
        beta: f64,
        radius: Length,
        lane: &Lane,
        friction: &Friction,
    ) -> Course {
        let radius = Length::metres(radius.as_metres().clamp(0.01, 1.0));
        let beta = beta.clamp(0.01, 2.0);
        let slip = thrown.slip(radius);
        let speed = length(slip);
        let along = match speed > 0.0 {
            true => slip.map(|part| part / speed),
            false => [0.0; 2],
        };
        let all = beta / (1.0 + beta) * speed;
        let turned = 1.0 / (beta * radius.as_metres());
        let surface = Surface::of(lane, friction);
        Course::sliding(thrown.velocity, thrown.spin, along, all, turned, &surface)
    }

    /// The course from this velocity and spin, with the slip in this direction, and so much change of velocity to its end.
    pub(super) fn sliding(
        velocity: [f64; 2],
        spin: [f64; 3],
        along: [f64; 2],
        all: f64,
        turned: f64,
        surface: &Surface,
    ) -> Course {
        // Seconds to the end of slip are these over the friction.
        let needed = all / GRAVITY;
        let piece = |start: Place, friction: f64| Piece {
            start,
            pull: along.map(|part| -friction * GRAVITY * part),
            loss: match needed > 0.0 {
                true => friction / needed,
                false => 0.0,
            },
            until: start.seconds + start.slip_left * needed / friction,
        };
        let start = Place {
            seconds: 0.0,
            down: 0.0,
            across: 0.0,
            velocity,
            spin,
            slip_left: if needed > 0.0 { 1.0 } else { 0.0 },
        };
        let mut oil = piece(start, surface.oil);
        let done = oil.after(oil.until, turned);
        let dry = match done.down <= surface.ends {
            true => piece(
                Place {
                    slip_left: 0.0,
                    ..done
                },
                surface.dry,
            ),
            false => {
                oil.until = oil.seconds_to(surface.ends);
                piece(oil.after(oil.until, turned), surface.dry)
            }
        };
        let mut finished = dry.after(dry.until - dry.start.seconds, turned);
        finished.slip_left = 0.0;
        let rolls = Piece {
            start: finished,
            pull: [0.0; 2],
            loss: 0.0,
            until: f64::INFINITY,
        };
        Course {
            pieces: [oil, dry, rolls],
            turned,
            oil: surface.ends,
            lane: surface.length,
        }
    }

    /// The ball so far down the lane; at the foul line for less than nothing.
    pub fn at(&self, down: Length) -> Place {
        let down = down.as_metres();
        let [oil, dry, rolls] = &self.pieces;
        let piece = if down >= rolls.start.down {
            rolls
        } else if down >= dry.start.down {
            dry
        } else {
            oil
        };
        piece.after(piece.seconds_to(down), self.turned)
    }

    /// The ball where slip ends; beyond the pins if it would only end there.
    pub fn slip_ends(&self) -> Place {
        self.pieces[2].start
    }

    /// The ball where the oil ends (the middle of its ramp).
    pub fn at_oil_end(&self) -> Place {
        self.at(Length::metres(self.oil))
    }

    /// Where it is farthest out: it was sent to the right and turns back to the left on the lane.
    pub fn breakpoint(&self) -> Option<Place> {
        let turns = |piece: &Piece| {
            let ([_, y], [_, b]) = (piece.start.velocity, piece.pull);
            let seconds = -y / b;
            let within = y < 0.0 && b > 0.0 && seconds <= piece.until - piece.start.seconds;
            within.then(|| piece.after(seconds, self.turned))
        };
        let found = self.pieces.iter().find_map(turns)?;
        (found.down <= self.lane).then_some(found)
    }
}

/// How much of the slip friction takes over a distance, at most `most`; all of it from a ball that would stop.
pub(super) fn taken(speed: f64, along: f64, friction: f64, distance: f64, most: f64) -> f64 {
    let pull = friction * GRAVITY;
    let ahead = speed * speed - 2.0 * pull * along * distance;
    match speed > 0.0 && ahead >= 0.0 {
        true => (pull * 2.0 * distance / (speed + libm::sqrt(ahead))).min(most),
        false => most,
    }
}
