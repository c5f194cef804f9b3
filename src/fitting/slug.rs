//! What is left of a slug, sleeve or insert around its bore.

use std::f64::consts::TAU;

use glam::DVec3;

use super::{
    Sphere,
    hole::{Hole, deepest},
    root,
    wall::Wall,
};

/// Places around a rim that are looked at before the best is refined.
const AROUND: usize = 48;
/// Golden sections that shrink the last two steps to the square root of the last digit, which gives the last digit.
const SECTIONS: usize = 45;

/// The wall of a slug, sleeve or insert around its bore, over the bore's whole depth.
///
/// `outside` is the hole drilled for it, round, aimed straight or with pitches of its own; `bore` is what is bored into
/// it. The farther from the outside hole's axis a place of the bore is, the less is left. That distance is convex, so
/// it is greatest on the bore's upper or lower rim. The wall is measured square to the outside hole's axis.
pub fn wall(ball: &Sphere, outside: &Hole, bore: &Hole) -> Wall {
    let radius = 0.5 * outside.section().drill();
    let over = |depth: f64| farthest(outside, bore, depth) - radius;
    let (top, bottom) = (-over(0.0), -over(bore.depth()));
    let down = deepest(ball);
    Wall {
        least: top.min(bottom),
        at_depth: if bottom < top { bore.depth() } else { 0.0 },
        breaks_at: (top <= 0.0 || over(down) >= 0.0).then(|| root::rising(over, 0.0, down)),
    }
}

/// From the outside hole's axis to the farthest place of the bore's rim at this depth.
fn farthest(outside: &Hole, bore: &Hole, depth: f64) -> f64 {
    let axis = outside.axis_vec();
    let flat = |v: DVec3| v - axis * v.dot(axis);
    let section = bore.section();
    let radius = 0.5 * section.drill();
    let (one, other) = (bore.wide_vec(), bore.axis_vec().cross(bore.wide_vec()));
    let (one, other) = (flat(one) * radius, flat(other) * radius);
    let middle = flat(bore.mouth_vec() + bore.axis_vec() * depth - outside.mouth_vec());
    // An oval is spanned by the circles at its two ends.
    let ends = [-0.5, 0.5].map(|end| middle + flat(bore.wide_vec()) * (end * section.run()));
    let from_axis = |centre: DVec3| {
        greatest(|angle| (centre + one * libm::cos(angle) + other * libm::sin(angle)).length())
    };
    from_axis(ends[0]).max(from_axis(ends[1]))
}

/// The greatest value of a smooth function of an angle that has no more than two hills.
fn greatest(f: impl Fn(f64) -> f64) -> f64 {
    const GOLDEN: f64 = 0.618_033_988_749_894_9;
    let step = TAU / AROUND as f64;
    let mut best = (f64::NEG_INFINITY, 0.0);
    for index in 0..AROUND {
        let angle = step * index as f64;
        let value = f(angle);
        if value > best.0 {
            best = (value, angle);
        }
    }
    let (mut low, mut high) = (best.1 - step, best.1 + step);
    for _ in 0..SECTIONS {
        let inner = GOLDEN * (high - low);
        if f(high - inner) > f(low + inner) {
            high = low + inner;
        } else {
            low = high - inner;
        }
    }
    f(0.5 * (low + high)).max(best.0)
}
