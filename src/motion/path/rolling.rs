//! Rolling: the lowest point stands still, and friction is whatever keeps it so.

use glam::DVec3;

use super::state::{Body, Change, Moving};
use crate::motion::GRAVITY;

/// How a rolling ball changes.
///
/// `(I + m (r² 1 - r rᵀ)) w' = -w × I w + m r × (g z + w × (w × d))`, solved as a diagonal less a rank-one part.
pub(super) fn change(body: &Body, now: &Moving) -> Change {
    let axes = now.axes();
    let back = axes.transpose();
    let up = back * DVec3::Z;
    let spin = back * now.spin;
    let arm = -body.offset - body.radius * up;
    let whirl = spin.cross(spin.cross(body.offset));
    let torque = -spin.cross(body.moments * spin) + body.mass * arm.cross(GRAVITY * up + whirl);
    let diagonal = body.moments + DVec3::splat(body.mass * arm.length_squared());
    let (straight, along) = (torque / diagonal, arm / diagonal);
    let spin_change =
        straight + along * (body.mass * arm.dot(straight) / (1.0 - body.mass * arm.dot(along)));
    let in_lane = axes * spin_change;
    let velocity = body.radius * in_lane.cross(DVec3::Z);
    let force = body.mass
        * (velocity
            + axes * (spin_change.cross(body.offset) + whirl)
            + DVec3::new(0.0, 0.0, GRAVITY));
    Change {
        velocity,
        spin: in_lane,
        losing: 0.0,
        normal: force.z,
        drag: DVec3::new(force.x, force.y, 0.0),
    }
}
