//! What a drill takes out of a ball, and what a slug, an insert or a plug fills again: real solids on the real sphere.
//!
//! A hole is what its section sweeps from the ball's round surface down to a flat bottom, square to the axis, at its depth. A
//! conical drill point takes out a little more than that, and a bevel too; neither is counted.

use std::f64::consts::PI;

use glam::{DMat3, DVec3};

use super::bored::Bored;
use super::hole::Hole;
use super::{Misfit, Sphere, within};

/// Room for rounding when a bore must not leave its sleeve.
const HAIR: f64 = 1e-6;
/// Points looked at around a bore's rim.
const AROUND: usize = 128;

/// A solid as far as balance and spin need it: its volume, and its moments about the ball's centre.
///
/// Solids add and subtract. Frame: x to the right of the grip, y toward the fingers, z out through the grip centre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Solid {
    volume: f64,
    first: DVec3,
    second: DMat3,
    halves: DVec3,
}

impl Default for Solid {
    /// Nothing at all.
    fn default() -> Solid {
        Solid {
            volume: 0.0,
            first: DVec3::ZERO,
            // A matrix's own default is one, not nothing.
            second: DMat3::ZERO,
            halves: DVec3::ZERO,
        }
    }
}

impl Solid {
    /// Cubic inches.
    pub fn volume(&self) -> f64 {
        self.volume
    }

    /// The sum of place times volume, in in⁴.
    pub fn first(&self) -> [f64; 3] {
        self.first.to_array()
    }

    /// The sum of place times place times volume, in in⁵: symmetric, row and column in the order x, y, z.
    pub fn second(&self) -> [[f64; 3]; 3] {
        self.second.to_cols_array_2d()
    }

    /// Cubic inches right of the centreline less those left of it; above the midline less below it; in the grip's half of the
    /// ball less in the other.
    pub fn halves(&self) -> [f64; 3] {
        self.halves.to_array()
    }

    /// Where its middle lies, in inches from the ball's centre; `None` without volume.
    pub fn centroid(&self) -> Option<[f64; 3]> {
        (self.volume.abs() > 1e-12).then(|| (self.first / self.volume).to_array())
    }

    /// Both together.
    pub fn add(&self, other: &Solid) -> Solid {
        Solid {
            volume: self.volume + other.volume,
            first: self.first + other.first,
            second: self.second + other.second,
            halves: self.halves + other.halves,
        }
    }

    /// This one with the other, which must lie inside it, cut out.
    pub fn less(&self, other: &Solid) -> Solid {
        self.add(&other.scaled(-1.0))
    }

    /// The same shape of stuff this many times as dense: every sum times the factor.
    pub fn scaled(&self, factor: f64) -> Solid {
        Solid {
            volume: self.volume * factor,
            first: self.first * factor,
            second: self.second * factor,
            halves: self.halves * factor,
        }
    }

    /// [`Solid::first`] for the sums of this layer.
    pub(super) fn first_moment(&self) -> DVec3 {
        self.first
    }

    /// [`Solid::second`] for the sums of this layer.
    pub(super) fn second_moment(&self) -> DMat3 {
        self.second
    }

    /// [`Solid::halves`] for the sums of this layer.
    pub(super) fn half_differences(&self) -> DVec3 {
        self.halves
    }
}

/// What the drill takes out: volume and moments to 1e-10 of themselves or better, halves to about 1e-4 in³.
///
/// The same solid fills the hole again when it is plugged.
///
/// # Errors
///
/// - A hole so far to the side that its wall comes within 3 % of the radius of missing the ball.
/// - A hole so shallow that its flat bottom sticks out of the ball; the limit given is the least depth that doesn't.
/// - A hole that comes out on the far side with part of its bottom only. Clean through is a solid like any other.
pub fn drilled(ball: &Sphere, hole: &Hole) -> Result<Solid, Misfit> {
    let section = hole.section();
    let bored = Bored::new(
        ball,
        hole.mouth_vec(),
        hole.axis_vec(),
        hole.wide_vec(),
        (section.run(), section.drill()),
        hole.depth(),
    )?;
    Ok(emptied(&bored))
}

/// A slug or an insert: what fills the outside hole, less the bore inside it. The two may lean differently.
///
/// # Errors
///
/// What [`drilled`] refuses, or a bore that leaves its sleeve through the wall or through the bottom. Such a bore also cuts
/// the ball's own stuff: take it as the whole outside hole put back, and the bore taken out.
pub fn sleeve(ball: &Sphere, outside: &Hole, bore: &Hole) -> Result<Solid, Misfit> {
    let whole = drilled(ball, outside)?;
    let inside = drilled(ball, bore)?;
    let (past_wall, past_floor) = reach_past(outside, bore);
    within(
        "reach of the bore through its sleeve's wall",
        past_wall,
        f64::MIN,
        HAIR,
    )?;
    within(
        "reach of the bore through its sleeve's bottom",
        past_floor,
        f64::MIN,
        HAIR,
    )?;
    Ok(whole.less(&inside))
}

fn emptied(bored: &Bored) -> Solid {
    let sums = bored.sums();
    Solid {
        volume: sums.volume,
        first: sums.first,
        second: sums.second,
        halves: bored.halves(sums.volume),
    }
}

/// How far the bore's rims, at its mouth and at its bottom, stand out of the outside hole's wall and below its bottom.
fn reach_past(outside: &Hole, bore: &Hole) -> (f64, f64) {
    let (mouth, axis, wide) = (outside.mouth_vec(), outside.axis_vec(), outside.wide_vec());
    let aside = axis.cross(wide);
    let (run, drill) = (
        outside.section().run() / 2.0,
        outside.section().drill() / 2.0,
    );
    let (mut wall, mut floor) = (f64::MIN, f64::MIN);
    for point in rims(bore) {
        let place = point - mouth;
        let across = libm::hypot((place.dot(wide).abs() - run).max(0.0), place.dot(aside));
        wall = wall.max(across - drill);
        floor = floor.max(place.dot(axis) - outside.depth());
    }
    (wall, floor)
}

/// Points around both ends of a hole.
fn rims(hole: &Hole) -> impl Iterator<Item = DVec3> {
    let (mouth, axis, wide) = (hole.mouth_vec(), hole.axis_vec(), hole.wide_vec());
    let aside = axis.cross(wide);
    let (run, drill) = (hole.section().run() / 2.0, hole.section().drill() / 2.0);
    let depth = hole.depth();
    (0..AROUND).flat_map(move |step| {
        let angle = 2.0 * PI * step as f64 / AROUND as f64;
        let (sine, cosine) = (libm::sin(angle), libm::cos(angle));
        let rim = mouth + wide * (drill * cosine + run.copysign(cosine)) + aside * drill * sine;
        [rim, rim + axis * depth]
    })
}
