//! Which ball off the shelf, and where its heavy spot goes, so that the static weights keep clear of their limits.

use std::cmp::Ordering;

use glam::DVec3;

use super::balance::{Change, Scale, Statics};
use super::layout::Point;
use super::{Misfit, Sphere, within};

/// Margins nearer than this many to an ounce are alike, so that rounding can't decide between mirror images.
const ALIKE: f64 = 1e6;

/// An undrilled ball on the shelf, and where its heavy spot may go.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unit<'a> {
    /// The shelf's name for it.
    pub id: &'a str,
    /// Its scale reading over the heavy spot, 0 to 16 oz.
    pub top_weight: f64,
    /// The places that the layout leaves for its heavy spot: they depend on the pin and on how far out of it the pin is.
    pub places: &'a [Point],
}

/// The most each static weight may be either way, 0 to 16 oz.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// Top or bottom.
    pub top: f64,
    /// Either side.
    pub side: f64,
    /// Finger or thumb.
    pub finger: f64,
}

/// A ball off the shelf with the best place for its heavy spot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Choice {
    unit: usize,
    place: Point,
    statics: Statics,
    margin: f64,
}

impl Choice {
    /// Which of the units that were given.
    pub fn unit(&self) -> usize {
        self.unit
    }

    /// Where its heavy spot goes.
    pub fn place(&self) -> Point {
        self.place
    }

    /// What the scale should show after drilling.
    pub fn statics(&self) -> Statics {
        self.statics
    }

    /// Ounces left to the nearest limit; below zero, what breaks it.
    pub fn margin(&self) -> f64 {
        self.margin
    }
}

/// Every unit that has a place to offer, each at its best place, the widest margin first.
///
/// Margins within a millionth of an ounce are alike: then the smaller sum of squares of the readings goes first, then the
/// lower id, then the place named earlier. Units whose margin is below zero are listed too, last.
///
/// # Errors
///
/// A top weight or a limit outside 0 to 16 oz.
pub fn best(
    ball: &Sphere,
    units: &[Unit<'_>],
    changes: &[Change],
    scale: &Scale,
    limits: &Limits,
) -> Result<Vec<Choice>, Misfit> {
    let limit = DVec3::new(
        within("limit of side weight", limits.side, 0.0, 16.0)?,
        within("limit of finger weight", limits.finger, 0.0, 16.0)?,
        within("limit of top weight", limits.top, 0.0, 16.0)?,
    );
    // The holes do the same to every unit.
    let drilled: DVec3 = changes.iter().map(|change| change.statics(scale)).sum();
    let mut choices = Vec::new();
    for (unit, offered) in units.iter().enumerate() {
        let top_weight = within("top weight", offered.top_weight, 0.0, 16.0)?;
        let found = offered
            .places
            .iter()
            .map(|place| {
                let vector = DVec3::from_array(place.direction(ball)) * top_weight + drilled;
                Choice {
                    unit,
                    place: *place,
                    statics: Statics::from_vector(vector),
                    margin: (limit - vector.abs()).min_element(),
                }
            })
            // The first of equals wins.
            .reduce(|best, next| {
                if better(&next, &best) == Ordering::Less {
                    next
                } else {
                    best
                }
            });
        choices.extend(found);
    }
    choices.sort_by(|one, other| {
        better(one, other).then_with(|| units[one.unit].id.cmp(units[other.unit].id))
    });
    Ok(choices)
}

/// `Less` for the one that goes first.
fn better(one: &Choice, other: &Choice) -> Ordering {
    let steps = |value: f64| libm::round(value * ALIKE);
    let squares = |choice: &Choice| steps(choice.statics.vector().length_squared());
    steps(other.margin)
        .total_cmp(&steps(one.margin))
        .then_with(|| squares(one).total_cmp(&squares(other)))
}
