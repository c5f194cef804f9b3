//! How the core turns: radii of gyration (RG) of the drilled ball, from the published numbers of the undrilled one.
//!
//! A ball of mass m has the moment of inertia `m RG²` about an axis. It has three principal axes: the pin marks the one with
//! the *lowest* RG; the mass bias, where there is one, the one with the *highest*; the third, *middle* one is square to both.
//! Published are the low RG, the (total) differential `high - low`, and the intermediate differential `high - middle`, in
//! inches. A symmetric core has `middle = high`, so its intermediate differential is 0.
//!
//! Published RGs are taken about the undrilled ball's mass centre, and the drilled ball's are given about its own new one, the
//! point a free ball turns about. Whether makers measure about the mass centre or about the middle of the sphere isn't printed;
//! with 3 oz of top weight the two differ by about 0.0005 in of RG, less than the last digit they print.

use glam::{DMat3, DVec3};

use super::balance::{self, Ball, Change, Model, Scale};
use super::hole::direction;
use super::{Misfit, eigen, within};

/// The least RG of any ball: much lower and the core would be metal.
const LOWEST_RG: f64 = 2.0;
/// The highest RG of any ball: a thin shell 8 1/2 in across has its radius times the root of two thirds.
const HIGHEST_RG: f64 = 3.47;
/// Degrees by which the mark of the mass bias may miss being square to the pin; it is squared up.
const OUT_OF_SQUARE: f64 = 15.0;
/// A difference of RGs below which two principal axes can't be told apart, in inches.
const ALIKE: f64 = 1e-6;

/// The core as published, in the ball's frame.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Core {
    rg_low: f64,
    differential: f64,
    intermediate: f64,
    pin: DVec3,
    bias: DVec3,
}

impl Core {
    /// A core with this low RG (2 to 3.47 in, and so the high one), total and intermediate differential, whose pin lies in
    /// this direction from the ball's centre. A symmetric core needs no mass bias; its other two axes are any square to the pin.
    ///
    /// # Errors
    ///
    /// - An RG outside those limits; an intermediate differential above the total one or below zero.
    /// - Numbers that no solid has: the two lower moments of inertia always add up to the highest or more.
    /// - No direction of the mass bias with an intermediate differential; a direction of no length, or a mass bias over 15
    ///   degrees out of square with the pin.
    pub fn new(
        rg_low: f64,
        differential: f64,
        intermediate: f64,
        pin: [f64; 3],
        mass_bias: Option<[f64; 3]>,
    ) -> Result<Core, Misfit> {
        let rg_low = within("low RG", rg_low, LOWEST_RG, HIGHEST_RG)?;
        let differential = within("differential", differential, 0.0, HIGHEST_RG - rg_low)?;
        let intermediate = within("intermediate differential", intermediate, 0.0, differential)?;
        let high = rg_low + differential;
        let middle = high - intermediate;
        let most = libm::sqrt(rg_low * rg_low + middle * middle);
        within("high RG beside the two lower ones", high, 0.0, most)?;
        let pin = direction("direction of the pin", pin)?;
        let bias = match mass_bias {
            Some(bias) => {
                let bias = direction("direction of the mass bias", bias)?;
                let off = libm::asin(pin.dot(bias).abs().min(1.0)).to_degrees();
                let what = "degrees from square between mass bias and pin";
                within(what, off, 0.0, OUT_OF_SQUARE)?;
                (bias - pin * pin.dot(bias)).normalize()
            }
            None if intermediate > 0.0 => {
                return Err(Misfit::Missing {
                    what: "direction of the mass bias",
                });
            }
            None => pin.any_orthonormal_vector(),
        };
        Ok(Core {
            rg_low,
            differential,
            intermediate,
            pin,
            bias,
        })
    }

    /// The tensor about the mass centre for this weight, in ounces times square inches.
    fn tensor(&self, ounces: f64) -> DMat3 {
        let high = self.rg_low + self.differential;
        let middle = high - self.intermediate;
        let axes = DMat3::from_cols(self.pin, self.pin.cross(self.bias), self.bias);
        let moments = DVec3::new(self.rg_low * self.rg_low, middle * middle, high * high) * ounces;
        axes * DMat3::from_diagonal(moments) * axes.transpose()
    }
}

/// How the drilled ball turns.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turning {
    tensor: DMat3,
    rg: [f64; 3],
    axes: [[f64; 3]; 3],
    moved: Option<f64>,
}

impl Turning {
    /// Lowest RG in inches.
    pub fn rg_low(&self) -> f64 {
        self.rg[0]
    }

    /// Middle RG in inches.
    pub fn rg_middle(&self) -> f64 {
        self.rg[1]
    }

    /// Highest RG in inches.
    pub fn rg_high(&self) -> f64 {
        self.rg[2]
    }

    /// Highest less lowest RG in inches.
    pub fn differential(&self) -> f64 {
        self.rg[2] - self.rg[0]
    }

    /// Highest less middle RG in inches.
    pub fn intermediate(&self) -> f64 {
        self.rg[2] - self.rg[1]
    }

    /// Unit directions of the lowest, middle and highest RG's axes, right-handed. Each is a line; the lowest is given on the
    /// pin's side.
    pub fn axes(&self) -> [[f64; 3]; 3] {
        self.axes
    }

    /// Inches along the ball from the pin to the nearer end of the low-RG axis; `None` where the core, before or after, is so
    /// even that it has no such axis.
    pub fn moved(&self) -> Option<f64> {
        self.moved
    }

    /// The inertia tensor about the drilled ball's mass centre, in ounces times square inches: symmetric, row and column in
    /// the order x, y, z.
    pub fn tensor(&self) -> [[f64; 3]; 3] {
        self.tensor.to_cols_array_2d()
    }
}

/// The core's numbers after every hole, slug, insert and plug.
///
/// # Errors
///
/// Changes that leave less than a pound of ball, or that take more out of one place than a ball can hold there.
pub fn after(core: &Core, ball: &Ball, changes: &[Change]) -> Result<Turning, Misfit> {
    // Weight and mass centre are the same on every scale.
    let finished = balance::finish(ball, changes, &Scale::new(1.0, Model::Moment)?)?;
    let centre = DVec3::from_array(ball.centre());
    let mut about_middle = core.tensor(ball.ounces()) + point(centre, ball.ounces());
    for change in changes {
        let second = change.second();
        let trace = second.col(0).x + second.col(1).y + second.col(2).z;
        about_middle += DMat3::from_diagonal(DVec3::splat(trace)) - second;
    }
    let centre = DVec3::from_array(finished.centre());
    let tensor = about_middle - point(centre, finished.ounces());
    let principal = eigen::symmetric(tensor.to_cols_array_2d())?;
    let [lowest, ..] = principal.values();
    let what = "moment of inertia after drilling";
    within(what, lowest, f64::MIN_POSITIVE, f64::MAX)?;
    let rg = principal
        .values()
        .map(|value| libm::sqrt(value / finished.ounces()));
    let [low, _, high] = principal.axes().map(DVec3::from_array);
    let side = 1.0_f64.copysign(low.dot(core.pin));
    let low = low * side;
    let apart = libm::atan2(low.cross(core.pin).length(), low.dot(core.pin).abs());
    let has_axis = core.differential - core.intermediate > ALIKE && rg[1] - rg[0] > ALIKE;
    Ok(Turning {
        tensor,
        rg,
        axes: [low, high.cross(low), high].map(|axis| axis.to_array()),
        moved: has_axis.then(|| apart * ball.sphere().radius()),
    })
}

/// The tensor about the ball's centre of so many ounces all in one place: Steiner's term.
fn point(place: DVec3, ounces: f64) -> DMat3 {
    let outer = DMat3::from_cols(place * place.x, place * place.y, place * place.z);
    (DMat3::from_diagonal(DVec3::splat(place.length_squared())) - outer) * ounces
}
