//! The points of a grip on a sphere of radius one, somewhere on it: the triangle solved by its sides.

use glam::DVec3;

use super::edge::{step, toward};

/// Three points and the one between the fingers, as directions of length one. Seen from outside with the fingers up,
/// the middle finger is left.
#[derive(Clone, Copy)]
pub(super) struct Figure {
    /// The thumb's centre, or the palm mark.
    pub foot: DVec3,
    /// The centres of middle and ring.
    pub fingers: [DVec3; 2],
    /// The middle of the bridge.
    pub bridge: DVec3,
}

impl Figure {
    /// Down the centreline at the middle of the bridge, carried along the surface to another point: there it is square
    /// to the great circle that crosses the centreline squarely at the middle of the bridge.
    pub fn down(&self, at: DVec3) -> DVec3 {
        let down = toward(self.bridge, self.foot);
        (down - at * at.dot(down)).normalize_or_zero()
    }
}

/// A grip with a thumb: radians from the thumb's centre to each finger's, from finger to finger, and from the middle
/// finger's centre to the middle of the bridge. Sides that close no triangle give the nearest that is flat.
pub(super) fn with_thumb(sides: [f64; 2], across: f64, to_bridge: f64) -> Figure {
    let [middle, ring] = sides;
    let half = 0.5 * (middle + ring + across);
    // Half angles keep every digit where the triangle is nearly flat; the law of cosines would lose them.
    let near = libm::sin(half - middle) * libm::sin(half - ring);
    let square = near / (libm::sin(middle) * libm::sin(ring));
    let fan = libm::asin(libm::sqrt(square.clamp(0.0, 1.0)));
    let (aside, up) = (libm::sin(fan), libm::cos(fan));
    let foot = DVec3::Z;
    let fingers = [
        step(foot, DVec3::new(-aside, up, 0.0), middle),
        step(foot, DVec3::new(aside, up, 0.0), ring),
    ];
    Figure {
        foot,
        fingers,
        bridge: step(fingers[0], toward(fingers[0], fingers[1]), to_bridge),
    }
}

/// A grip without thumb: the bridge level, and the mark down the centreline from the line of the palm-side edges, which
/// lie `down` radians below the centres.
pub(super) fn with_palm_mark(to_bridge: f64, across: f64, down: [f64; 2], mark: f64) -> Figure {
    let at = |over: f64| DVec3::new(libm::sin(over), 0.0, libm::cos(over));
    let fingers = [at(-to_bridge), at(across - to_bridge)];
    let [left, right] = [0, 1].map(|finger| step(fingers[finger], DVec3::NEG_Y, down[finger]));
    // Where the line through the two edges crosses the centreline.
    let level = left * right.x - right * left.x;
    let foot = libm::atan2(level.y, level.z) - mark;
    Figure {
        foot: DVec3::new(0.0, libm::sin(foot), libm::cos(foot)),
        fingers,
        bridge: DVec3::Z,
    }
}
