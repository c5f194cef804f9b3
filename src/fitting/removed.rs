//! The weight a drill takes out of a ball, by the trade's rule of thumb. The real solid is [`solid`](super::solid)'s.

use std::f64::consts::PI;

use super::{Misfit, Sphere, within};

/// Cubic centimetres in a cubic inch, exact by definition.
const CUBIC_INCH: f64 = 16.387_064;
/// Grams in an ounce, exact by definition.
const OUNCE: f64 = 28.349_523_125;

/// The trade's rule: ounces in a hole of this diameter (0 to 3 in) and depth (0 to 5 in), for stuff of this density (0.1 to 20 g/cm³).
///
/// The hole is taken as a flat-topped cylinder. The round surface makes it 0.6 % less for a thumb hole, 1.1 % for a
/// finger hole 1 1/4 in deep. The same number is what an insert or a slug puts back.
///
/// # Errors
///
/// A number outside those ranges.
pub fn ounces(diameter: f64, depth: f64, density: f64) -> Result<f64, Misfit> {
    let diameter = within("hole diameter", diameter, 0.0, 3.0)?;
    let depth = within("depth", depth, 0.0, 5.0)?;
    let density = within("density", density, 0.1, 20.0)?;
    Ok(PI / 4.0 * diameter * diameter * depth * ounces_a_cubic_inch(density))
}

/// Ounces in a cubic inch of stuff of this density in g/cm³.
pub(super) fn ounces_a_cubic_inch(density: f64) -> f64 {
    density * CUBIC_INCH / OUNCE
}

/// Average density in g/cm³ of a whole ball of this weight (1 to 30 lb).
///
/// # Errors
///
/// A weight outside that range.
pub fn average_density(ball: &Sphere, pounds: f64) -> Result<f64, Misfit> {
    let pounds = within("ball weight", pounds, 1.0, 30.0)?;
    let radius = ball.radius();
    let volume = 4.0 / 3.0 * PI * radius * radius * radius * CUBIC_INCH;
    Ok(pounds * 16.0 * OUNCE / volume)
}

/// The least specific gravity of the inner core of a ball of this weight (1 to 30 lb), in one patented design: 0.1063 for each
/// pound (US RE34,614). A drill that reaches such a core takes out more than one that stays in the cover.
///
/// # Errors
///
/// A weight outside that range.
pub fn least_core_gravity(pounds: f64) -> Result<f64, Misfit> {
    const FOR_A_POUND: f64 = 0.1063;
    Ok(FOR_A_POUND * within("ball weight", pounds, 1.0, 30.0)?)
}
