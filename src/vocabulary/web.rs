//! The thinnest wall between the holes that were settled, in three dimensions.

use super::order::{fingers, ordered};
use super::{Interval, Situation};
use crate::fitting::grip::{Digit, Reference, place};
use crate::fitting::{Sphere, sixty_fourths, wall};

/// How forward pitch may be counted. The trade doesn't say which, so the thinner wall of the two is taken.
pub const REFERENCES: [Reference; 2] = [Reference::OwnLine, Reference::Centreline];

/// Least web between any two holes as cut, over their whole depth, in sixty-fourths. A thumb hole counts once its depth is known.
pub(super) fn least_web(s: &Situation) -> Interval {
    let webs: Option<Vec<f64>> = REFERENCES
        .into_iter()
        .map(|reference| thinnest(s, reference))
        .collect();
    match webs.and_then(|webs| webs.into_iter().reduce(f64::min)) {
        // To the nearest sixty-fourth, the finest a shop sets. Holes that have run into each other leave none.
        Some(web) => Interval::point(sixty_fourths(web).max(0)),
        None => Interval::NOT_KNOWN,
    }
}

fn thinnest(s: &Situation, reference: Reference) -> Option<f64> {
    // While the thumb's numbers are missing the fingers' holes are judged alone.
    let (grip, thumb) = match ordered(s, reference) {
        Some(order) => (order.grip, order.thumb_depth_known),
        None => (fingers(s, reference)?, false),
    };
    let ball = Sphere::default();
    let placed = place(&ball, &grip).ok()?;
    wall::within_grip(&ball, &placed)
        .into_iter()
        .filter(|pair| thumb || !pair.holes.contains(&Digit::Thumb))
        .map(|pair| pair.wall.least)
        .reduce(f64::min)
}
