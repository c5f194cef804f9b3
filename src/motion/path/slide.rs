//! Sliding: friction is the coefficient times what presses on the lane, straight against the slip.

use glam::DVec3;

use super::state::{Body, Change, Moving};
use crate::motion::GRAVITY;

/// How a sliding ball changes where friction has this coefficient.
///
/// The angular acceleration is linear in the pressure N, and N hangs on it when the mass centre is off: both are solved for at once.
pub(super) fn change(body: &Body, now: &Moving, friction: f64) -> Change {
    let axes = now.axes();
    let back = axes.transpose();
    let slip = now.slip(body);
    let fast = slip.length();
    let against = if fast > 0.0 {
        -friction / fast * slip
    } else {
        DVec3::ZERO
    };
    // All in the ball's axes from here.
    let up = back * DVec3::Z;
    let spin = back * now.spin;
    let push = back * (DVec3::Z + against);
    let arm = -body.offset - body.radius * up;
    let by_pressure = arm.cross(push) / body.moments;
    let free = -spin.cross(body.moments * spin) / body.moments;
    let whirl = spin.cross(spin.cross(body.offset));
    let normal = body.mass * (GRAVITY + up.dot(free.cross(body.offset) + whirl))
        / (1.0 - body.mass * up.dot(by_pressure.cross(body.offset)));
    let spin_change = normal * by_pressure + free;
    let centre = normal / body.mass * push - GRAVITY * up - spin_change.cross(body.offset) - whirl;
    let centre = axes * centre;
    Change {
        velocity: DVec3::new(centre.x, centre.y, 0.0),
        spin: axes * spin_change,
        losing: friction * normal * fast,
        normal,
        drag: normal * against,
    }
}
