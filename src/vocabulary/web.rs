//! The thinnest wall between the holes that were settled, in three dimensions.

use super::answers::INCH;
use super::{GripOf, Interval, Situation, ordered};
use crate::fitting::grip::{Digit, Reference, place};
use crate::fitting::{Sphere, wall};

/// How forward pitch may be counted. The trade doesn't say which, so the thinner wall of the two is taken.
pub const REFERENCES: [Reference; 2] = [Reference::OwnLine, Reference::Centreline];

/// Rounding in the arithmetic must not take a whole sixty-fourth.
const HAIR: f64 = 1e-9;

/// Least web between any two holes as cut, over their whole depth. A thumb hole counts once its depth is known.
pub(super) fn least_web(s: &Situation) -> Interval {
    let webs: Option<Vec<f64>> = REFERENCES
        .into_iter()
        .map(|reference| thinnest(s, reference))
        .collect();
    match webs.and_then(|webs| webs.into_iter().reduce(f64::min)) {
        // Rounded down: a web is never said to be thicker than it is. Holes that have run into each other leave none.
        Some(web) => {
            let steps = libm::floor(web * INCH as f64 + HAIR).max(0.0);
            // A web is shorter than the ball is wide.
            Interval::point(steps as i64)
        }
        None => Interval::NOT_KNOWN,
    }
}

fn thinnest(s: &Situation, reference: Reference) -> Option<f64> {
    let order = ordered(s, GripOf::Fit, reference)?;
    let ball = Sphere::default();
    let placed = place(&ball, &order.grip).ok()?;
    wall::within_grip(&ball, &placed)
        .into_iter()
        .filter(|pair| order.thumb_depth_known || !pair.holes.contains(&Digit::Thumb))
        .map(|pair| pair.wall.least)
        .reduce(f64::min)
}
