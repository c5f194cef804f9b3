//! Balance: what a drilled ball weighs, where its mass centre lies, and the static weights a shop's scale shows.
//!
//! Frame: the ball's centre is the origin, x runs to the right of the grip, y toward the fingers, z out through the grip
//! centre. A ball whose mass centre lies off its own centre has a moment, weight times place, in ounce-inches; drilling takes away
//! each hole's own. A scale on which the ball rests shows one direction of that moment over the scale's arm. The arm is printed
//! nowhere that was read: it is a setting, and [`calibrate`](super::calibrate::calibrate) finds a shop's own.
//!
//! ```
//! use spanwright::fitting::{
//!     Sphere,
//!     balance::{Ball, Change, Model, Scale, finish},
//!     hole::{Hole, Section},
//!     layout::Point,
//!     solid::drilled,
//! };
//!
//! let sphere = Sphere::default();
//! let scale = Scale::new(4.0, Model::Moment)?;
//! // 15 lb with 3 oz of top weight, the heavy spot an inch toward the PAP.
//! let ball = Ball::undrilled(sphere, 240.0, 3.0, Point::new(&sphere, 1.0, 0.0)?, &scale)?;
//! let section = Section::Round { size: 1.0 };
//! let thumb = Hole::along(&sphere, [0.0, -0.5, 0.9], [0.0, 0.5, -0.9], [1.0, 0.0, 0.0], section, 2.5)?;
//! let out = Change::out(drilled(&sphere, &thumb)?, 1.2)?;
//! let finished = finish(&ball, &[out], &scale)?;
//! assert!((finished.out_ounces() - 1.354).abs() < 0.001);
//! // A thumb hole makes finger weight.
//! assert!(finished.statics().finger > 0.0 && finished.statics().top < 3.0);
//! # Ok::<(), spanwright::fitting::Misfit>(())
//! ```

use glam::{DMat3, DVec3};

use super::layout::Point;
use super::solid::Solid;
use super::{Misfit, Sphere, removed, within};

/// The least and most dense stuff that a ball, a slug or a plug can be of, in g/cm³. Light filler starts at 0.6 and dense
/// cores end at 3 (from memory); the rest is room for error. Lead has 11.3.
pub const DENSITIES: (f64, f64) = (0.3, 4.0);
/// The least and most any static weight of an undrilled ball can be, in ounces.
const MOST_STATIC: f64 = 16.0;

/// More than any ball holds, in cubic inches.
const MOST_VOLUME: f64 = 500.0;

/// What is left of top weight, and what it became to the side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moved {
    /// Ounces toward the heavy spot's side.
    pub side: f64,
    /// Ounces left on top.
    pub top: f64,
}

/// Splits an undrilled ball's top weight (0 to 16 oz) for a grip centre this many inches from the heavy spot.
///
/// Moment model: the mass centre's lever is turned by the arc. What a shop scale shows may differ; this is geometry.
///
/// # Errors
///
/// A top weight outside that range, or a distance outside 0 to a quarter of the way around.
pub fn moved_grip(ball: &Sphere, top_weight: f64, distance: f64) -> Result<Moved, Misfit> {
    let top_weight = within("top weight", top_weight, 0.0, MOST_STATIC)?;
    let turned = ball.radians(within("distance", distance, 0.0, ball.quarter())?);
    Ok(Moved {
        side: top_weight * libm::sin(turned),
        top: top_weight * libm::cos(turned),
    })
}

/// The three readings of a ball on the scale, in ounces: each the heavier half's lead over the other.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Statics {
    /// Top weight: above zero when the grip's side is heavier, below zero for bottom weight.
    pub top: f64,
    /// Side weight: above zero toward x, the PAP side of a right-hander's grip.
    pub side: f64,
    /// Finger weight: above zero toward the fingers, below zero for thumb weight.
    pub finger: f64,
}

impl Statics {
    /// The three as a vector in the ball's frame: side, finger, top.
    pub(super) fn vector(&self) -> DVec3 {
        DVec3::new(self.side, self.finger, self.top)
    }

    pub(super) fn from_vector(vector: DVec3) -> Statics {
        Statics {
            top: vector.z,
            side: vector.x,
            finger: vector.y,
        }
    }
}

/// What a static weight is taken to be. Which of the two a scale shows, only its own readings before and after can tell.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Model {
    /// The moment over the scale's arm: stuff counts by its weight and by how far from the middle it lies.
    #[default]
    Moment,
    /// The weight in one half of the ball less the weight in the other: stuff counts by its weight alone, wherever in its half
    /// it lies. This is the rule books' wording, and not what a balance beam does.
    Halves,
}

/// A shop's scale: its arm and the model of what it shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    arm: f64,
    model: Model,
}

impl Scale {
    /// A scale that shows one ounce for a moment of `arm` ounce-inches (0.5 to 20 in).
    ///
    /// # Errors
    ///
    /// An arm outside that range.
    pub fn new(arm: f64, model: Model) -> Result<Scale, Misfit> {
        Ok(Scale {
            arm: within("arm of the scale", arm, 0.5, 20.0)?,
            model,
        })
    }

    /// Inches.
    pub fn arm(&self) -> f64 {
        self.arm
    }

    /// What it is taken to show.
    pub fn model(&self) -> Model {
        self.model
    }
}

/// A ball before the change: its size, its weight and its moment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ball {
    sphere: Sphere,
    ounces: f64,
    moment: DVec3,
}

impl Ball {
    /// An undrilled ball of this weight (16 to 480 oz) whose scale reading over the heavy spot (`cg`) is `top_weight` (0 to
    /// 16 oz): its moment is that reading times the arm, toward the heavy spot.
    ///
    /// # Errors
    ///
    /// A number outside those ranges.
    pub fn undrilled(
        sphere: Sphere,
        ounces: f64,
        top_weight: f64,
        cg: Point,
        scale: &Scale,
    ) -> Result<Ball, Misfit> {
        let top_weight = within("top weight", top_weight, 0.0, MOST_STATIC)?;
        let statics = Statics::from_vector(DVec3::from_array(cg.direction(&sphere)) * top_weight);
        Ball::weighed(sphere, ounces, statics, scale)
    }

    /// A ball, drilled or not, of this weight (16 to 480 oz) and these scale readings (-16 to 16 oz), from the grip that the
    /// frame belongs to.
    ///
    /// # Errors
    ///
    /// A number outside those ranges.
    pub fn weighed(
        sphere: Sphere,
        ounces: f64,
        statics: Statics,
        scale: &Scale,
    ) -> Result<Ball, Misfit> {
        for (what, value) in [
            ("top weight", statics.top),
            ("side weight", statics.side),
            ("finger weight", statics.finger),
        ] {
            within(what, value, -MOST_STATIC, MOST_STATIC)?;
        }
        Ok(Ball {
            sphere,
            ounces: within("weight in ounces", ounces, 16.0, 480.0)?,
            moment: statics.vector() * scale.arm,
        })
    }

    /// Its size.
    pub fn sphere(&self) -> &Sphere {
        &self.sphere
    }

    /// Ounces.
    pub fn ounces(&self) -> f64 {
        self.ounces
    }

    /// Ounce-inches about the ball's centre.
    pub fn moment(&self) -> [f64; 3] {
        self.moment.to_array()
    }

    /// Inches from the ball's centre to its mass centre.
    pub fn centre(&self) -> [f64; 3] {
        (self.moment / self.ounces).to_array()
    }
}

/// Something taken out of a ball or put into it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Change {
    solid: Solid,
    /// Ounces a cubic inch; below zero for what goes out.
    heaviness: f64,
}

impl Change {
    /// Drilled out of stuff of this density (0.3 to 4 g/cm³: the ball near its surface, or the plug a new hole goes through).
    ///
    /// # Errors
    ///
    /// A density outside that range, or a volume outside 0 to 500 in³.
    pub fn out(solid: Solid, density: f64) -> Result<Change, Misfit> {
        Change::new(solid, density, -1.0)
    }

    /// A slug, an insert or a plug of this density (0.3 to 4 g/cm³) put in.
    ///
    /// # Errors
    ///
    /// A density outside that range, or a volume outside 0 to 500 in³.
    pub fn back(solid: Solid, density: f64) -> Result<Change, Misfit> {
        Change::new(solid, density, 1.0)
    }

    fn new(solid: Solid, density: f64, sign: f64) -> Result<Change, Misfit> {
        let density = within("density in g/cm³", density, DENSITIES.0, DENSITIES.1)?;
        within("volume in cubic inches", solid.volume(), 0.0, MOST_VOLUME)?;
        Ok(Change {
            solid,
            heaviness: sign * removed::ounces_a_cubic_inch(density),
        })
    }

    /// Ounces put in; below zero for what goes out.
    pub fn ounces(&self) -> f64 {
        self.solid.volume() * self.heaviness
    }

    pub(super) fn moment(&self) -> DVec3 {
        self.solid.first_moment() * self.heaviness
    }

    /// Ounces times square inches.
    pub(super) fn second(&self) -> DMat3 {
        self.solid.second_moment() * self.heaviness
    }

    /// What it does to the three readings by itself.
    pub(super) fn statics(&self, scale: &Scale) -> DVec3 {
        match scale.model {
            Model::Moment => self.moment() / scale.arm,
            Model::Halves => self.solid.half_differences() * self.heaviness,
        }
    }
}

/// A ball after the changes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Finished {
    ounces: f64,
    centre: DVec3,
    statics: Statics,
    out_ounces: f64,
    back_ounces: f64,
    model: Model,
}

impl Finished {
    /// Its weight.
    pub fn ounces(&self) -> f64 {
        self.ounces
    }

    /// Inches from the ball's centre to its mass centre, from the moments whatever the scale is taken to show.
    pub fn centre(&self) -> [f64; 3] {
        self.centre.to_array()
    }

    /// What the scale should show.
    pub fn statics(&self) -> Statics {
        self.statics
    }

    /// Ounces taken out.
    pub fn out_ounces(&self) -> f64 {
        self.out_ounces
    }

    /// Ounces put in.
    pub fn back_ounces(&self) -> f64 {
        self.back_ounces
    }

    /// What the static weights are taken to be.
    pub fn model(&self) -> Model {
        self.model
    }
}

/// The ball after every hole and every slug, insert and plug, in any order.
///
/// Both models start from the undrilled reading, turned to the grip; they differ in what a hole does to it.
///
/// # Errors
///
/// Changes that leave less than a pound of ball.
pub fn finish(ball: &Ball, changes: &[Change], scale: &Scale) -> Result<Finished, Misfit> {
    let (mut out_ounces, mut back_ounces) = (0.0, 0.0);
    let (mut moment, mut statics) = (ball.moment, ball.moment / scale.arm);
    for change in changes {
        let ounces = change.ounces();
        if ounces < 0.0 {
            out_ounces -= ounces;
        } else {
            back_ounces += ounces;
        }
        moment += change.moment();
        statics += change.statics(scale);
    }
    let ounces = ball.ounces - out_ounces + back_ounces;
    let ounces = within("weight in ounces after drilling", ounces, 16.0, f64::MAX)?;
    Ok(Finished {
        ounces,
        centre: moment / ounces,
        statics: Statics::from_vector(statics),
        out_ounces,
        back_ounces,
        model: scale.model,
    })
}
