//! The ball on the lane at one moment, and how it starts.

use glam::{DMat3, DQuat, DVec3};

use super::{Mode, Shot, Station};
use crate::motion::{Ball, Release};

/// Place (2), velocity of the middle (2) and angular velocity (3) in the lane's frame, the turn from ball to lane (4), energy lost,
/// and how far the axis point has wandered, in radians.
pub(super) type State = [f64; 13];

/// What an error in each is measured against, beside the value itself: 1 m, 1 m/s, 10 rad/s, a full turn, 10 J. Of the axis point's path
/// an error counts for little: it acts on nothing.
pub(super) const FLOOR: State = [
    1.0, 1.0, 1.0, 1.0, 10.0, 10.0, 10.0, 1.0, 1.0, 1.0, 1.0, 10.0, 100.0,
];

/// The ball's numbers in one place.
#[derive(Clone, Copy, Debug)]
pub(super) struct Body {
    pub(super) mass: f64,
    pub(super) radius: f64,
    pub(super) moments: DVec3,
    pub(super) offset: DVec3,
}

impl Body {
    pub(super) fn of(ball: &Ball) -> Body {
        Body {
            mass: ball.mass,
            radius: ball.radius,
            moments: DVec3::from_array(ball.moments),
            offset: DVec3::from_array(ball.offset),
        }
    }
    /// How fast friction of one newton for each kilogram takes slip away, at most.
    pub(super) fn mobility(&self) -> f64 {
        1.0 + self.mass * self.radius * self.radius / self.moments.min_element()
    }
}

/// A state by names.
#[derive(Clone, Copy, Debug)]
pub(super) struct Moving {
    pub(super) place: [f64; 2],
    pub(super) velocity: DVec3,
    pub(super) spin: DVec3,
    pub(super) turn: DQuat,
    pub(super) lost: f64,
    pub(super) wandered: f64,
}

impl Moving {
    pub(super) fn of(state: &State) -> Moving {
        let [x, y, vx, vy, wx, wy, wz, qx, qy, qz, qw, lost, wandered] = *state;
        Moving {
            place: [x, y],
            velocity: DVec3::new(vx, vy, 0.0),
            spin: DVec3::new(wx, wy, wz),
            turn: DQuat::from_xyzw(qx, qy, qz, qw).normalize(),
            lost,
            wandered,
        }
    }

    pub(super) fn state(&self) -> State {
        let ([x, y], v, w, q) = (self.place, self.velocity, self.spin, self.turn);
        [
            x,
            y,
            v.x,
            v.y,
            w.x,
            w.y,
            w.z,
            q.x,
            q.y,
            q.z,
            q.w,
            self.lost,
            self.wandered,
        ]
    }

    /// The ball as it leaves the hand.
    pub(super) fn released(shot: &Shot) -> Moving {
        let Release {
            speed,
            spin,
            rotation,
            tilt,
            launch,
            start,
        } = shot.release;
        let (st, ct) = (libm::sin(tilt), libm::cos(tilt));
        let (sr, cr) = (libm::sin(rotation), libm::cos(rotation));
        let pap = DVec3::new(ct * sr, -ct * cr, st);
        // The upward direction square to it; the same as z - (z·p) p made unit, and still there when p points straight up.
        let upward = DVec3::new(-st * sr, st * cr, ct);
        let angle = |angle: super::Angle| {
            let radians = angle.as_radians();
            (libm::sin(radians), libm::cos(radians))
        };
        let (s, c) = angle(shot.attitude.phase);
        let aside = c * upward + s * pap.cross(upward);
        let (s, c) = angle(shot.attitude.pin);
        let low = c * pap + s * aside;
        let around = -s * pap + c * aside;
        let (s, c) = angle(shot.attitude.turn);
        let high = c * around + s * low.cross(around);
        let middle = high.cross(low);
        let axes = DMat3::from_cols(low, middle, high);
        let spin = -spin * pap;
        // Speed and direction are those of the mass centre.
        let offset = axes * DVec3::from_array(shot.ball.offset);
        let velocity = DVec3::new(speed * libm::cos(launch), speed * libm::sin(launch), 0.0)
            - spin.cross(offset);
        Moving {
            place: [0.0, start],
            velocity: DVec3::new(velocity.x, velocity.y, 0.0),
            spin,
            turn: DQuat::from_mat3(&axes).normalize(),
            lost: 0.0,
            wandered: 0.0,
        }
    }

    /// The ball's axes in the lane's frame.
    pub(super) fn axes(&self) -> DMat3 {
        DMat3::from_quat(self.turn)
    }
    /// The spin along the ball's axes.
    pub(super) fn spin_in_ball(&self) -> DVec3 {
        self.axes().transpose() * self.spin
    }
    /// The velocity that rolling needs with this spin.
    pub(super) fn rolling(&self, body: &Body) -> DVec3 {
        body.radius * self.spin.cross(DVec3::Z)
    }
    /// Velocity of the ball's lowest point over the lane.
    pub(super) fn slip(&self, body: &Body) -> DVec3 {
        self.velocity - self.rolling(body)
    }
    /// How the turn changes.
    pub(super) fn turning(&self) -> DQuat {
        let w = 0.5 * self.spin;
        DQuat::from_xyzw(w.x, w.y, w.z, 0.0) * self.turn
    }
    /// How fast the axis point wanders over the ball, rad/s, when the spin changes so.
    pub(super) fn wandering(&self, spin_change: DVec3) -> f64 {
        let square = self.spin.length_squared();
        if square > 0.0 {
            self.spin.cross(spin_change).length() / square
        } else {
            0.0
        }
    }

    /// As it is told.
    pub(super) fn station(&self, body: &Body, mode: Mode, seconds: f64) -> Station {
        let [down, across] = self.place;
        let axes = self.axes();
        let (velocity, slip) = match mode {
            Mode::Slip => (self.velocity, self.slip(body).length()),
            Mode::Roll => (self.rolling(body), 0.0),
        };
        Station {
            mode,
            seconds,
            down,
            across,
            velocity: [velocity.x, velocity.y],
            spin: self.spin.to_array(),
            spin_in_ball: self.spin_in_ball().to_array(),
            axes: axes.to_cols_array_2d(),
            slip,
            energy_lost: self.lost,
        }
    }
}

/// How all of it changes: the velocity and the spin so, the place with the velocity.
pub(super) fn slopes(now: &Moving, velocity: DVec3, change: Change) -> State {
    let q = now.turning();
    let (a, w) = (change.velocity, change.spin);
    [
        velocity.x,
        velocity.y,
        a.x,
        a.y,
        w.x,
        w.y,
        w.z,
        q.x,
        q.y,
        q.z,
        q.w,
        change.losing,
        now.wandering(w),
    ]
}

/// How velocity and spin change in the lane's frame, and what presses and drags at the contact.
#[derive(Clone, Copy, Debug)]
pub(super) struct Change {
    pub(super) velocity: DVec3,
    pub(super) spin: DVec3,
    /// Energy lost, J/s.
    pub(super) losing: f64,
    /// How hard the ball presses on the lane, N.
    pub(super) normal: f64,
    /// The friction on the ball, N.
    pub(super) drag: DVec3,
}
