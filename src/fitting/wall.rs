//! What is left of the ball between two holes, over their whole depth, in three dimensions.
//!
//! The wall is the distance between the middles of the two holes less their radii. The middle of a round hole is its
//! axis from the sphere to the bottom; of an oval it is the strip that the middle of its drill sweeps. True flat
//! bottoms of holes that lean toward each other keep up to 0.01 in more. Holes whose bottoms lean apart are nearest at
//! their rims, which stand above the mouths' level: there the straight line between the near edges counts.
//! [`super::web`] is the same in a plane, for holes without forward or reverse pitch.

use super::{
    Sphere,
    digit::Digit,
    hole::{Hole, deepest},
    placed::{Placed, between_edges},
    root,
    strip::{Strip, nearest},
};

/// A wall, in inches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wall {
    /// The thinnest; below zero the holes run into each other.
    pub least: f64,
    /// How deep that is: on the hole where it is deeper.
    pub at_depth: f64,
    /// The depth at which the holes would meet if both were drilled that deep; `None` if no depth that can be drilled
    /// does it.
    pub breaks_at: Option<f64>,
}

/// The wall between two holes, over the whole depth of both. The same whichever is named first.
pub fn between(ball: &Sphere, one: &Hole, other: &Hole) -> Wall {
    let radii = 0.5 * (one.section().drill() + other.section().drill());
    let found = nearest(
        &Strip::of(one, one.depth()),
        &Strip::of(other, other.depth()),
    );
    let [here, there] = found.depths;
    let middles = found.distance - radii;
    let rims = 2.0 * ball.radius() * libm::sin(0.5 * between_edges(one, other));
    // Where one hole starts inside the other there are no near edges.
    let rims = rims.max(-radii);
    let closed =
        |depth: f64| radii - nearest(&Strip::of(one, depth), &Strip::of(other, depth)).distance;
    let bottom = deepest(ball);
    Wall {
        least: middles.min(rims),
        at_depth: if rims < middles { 0.0 } else { here.max(there) },
        // A deeper hole is never farther away.
        breaks_at: (closed(bottom) >= 0.0).then(|| root::rising(closed, 0.0, bottom)),
    }
}

/// The wall between two holes of a grip.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Between {
    /// The two digits whose holes these are.
    pub holes: [Digit; 2],
    /// What is between them.
    pub wall: Wall,
}

/// Every wall between the holes of a grip as cut: middle and ring first (the web), then thumb and middle, thumb and
/// ring.
pub fn within_grip(ball: &Sphere, grip: &Placed) -> Vec<Between> {
    let fingers = [(Digit::Middle, grip.middle), (Digit::Ring, grip.ring)];
    let mut walls = vec![Between {
        holes: [Digit::Middle, Digit::Ring],
        wall: between(ball, &grip.middle, &grip.ring),
    }];
    if let Some(thumb) = grip.thumb {
        walls.extend(fingers.map(|(digit, hole)| Between {
            holes: [Digit::Thumb, digit],
            wall: between(ball, &thumb, &hole),
        }));
    }
    walls
}

/// The wall between a hole of a grip and an old hole of the same ball.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Beside {
    /// Whose new hole.
    pub digit: Digit,
    /// Which of the old holes, counted from 0.
    pub old: usize,
    /// What is between them. Where the old hole is plugged, it is plug beyond the wall.
    pub wall: Wall,
}

/// Every wall between the holes of a grip as cut and old holes, open or plugged, given in the grip's frame.
pub fn to_old(ball: &Sphere, grip: &Placed, old: &[Hole]) -> Vec<Beside> {
    let pairs = grip.holes().flat_map(|(digit, hole)| {
        old.iter().enumerate().map(move |(index, beside)| Beside {
            digit,
            old: index,
            wall: between(ball, &hole, beside),
        })
    });
    pairs.collect()
}
