//! Flare: how much of a core's flare a pin distance lets out, and about how far the axis may wander.
//!
//! Both are models of an undrilled ball with a symmetric core. Drilling skews them, and flare is a small part of what a
//! ball does; nothing here is a promise.

use std::f64::consts::{PI, TAU};

use crate::fitting::{Misfit, Sphere, within};

/// The spin about the pin rises on the lane: its average over the way is 1.3 times its value at release. Derived from the
/// time and the pin component of the spin in a simulated shot with a 0.05 in differential (17 mph, 275 rpm).
const SPIN_RISES: f64 = 1.3;

/// The share, 0 to 1, of the most flare a symmetric core can give: the sine of twice the angle from pin to PAP.
///
/// A model of an undrilled ball; the true curve is flatter, and drilling skews it.
///
/// # Errors
///
/// A distance outside 0 to a quarter of the way around.
pub fn flare_share(ball: &Sphere, pin: f64) -> Result<f64, Misfit> {
    let pin = within("distance from pin to PAP", pin, 0.0, ball.quarter())?;
    Ok(libm::sin(2.0 * ball.radians(pin)).max(0.0))
}

/// Whether a core's differential (0 to 0.2 in) is what print calls high flare: 0.050 and up (Sharon Herald, 6 Oct 2022). Others
/// draw the line at 0.045 (from memory). A word, not a promise.
///
/// # Errors
///
/// A differential outside that range.
pub fn is_high_flare(differential: f64) -> Result<bool, Misfit> {
    const HIGH: f64 = 0.050;
    Ok(within("differential", differential, 0.0, 0.2)? >= HIGH)
}

/// About how far the axis wanders on its way down the lane: inches along the ball from the first axis point to the farthest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wander {
    pub(super) least: f64,
    pub(super) most: f64,
}

impl Wander {
    /// If the ball kept its spin of the release.
    pub fn least(&self) -> f64 {
        self.least
    }

    /// If its spin rises as that of a ball on oil, then dry, does.
    pub fn most(&self) -> f64 {
        self.most
    }
}

/// About how far the axis of a symmetric core wanders, by the torque-free turn about the pin. The axis goes round the pin
/// on a circle; in a turn of the ball it goes the share `cos(pin to PAP) * (1 - (low RG / high RG)^2)` of the way around.
///
/// `pin` is inches from pin to PAP (0 to a quarter of the way around), `rg_low` 1 to 4 in, `differential` 0 to 0.2 in, and
/// `turns` is rev rate times the time on the lane (0 to 100). Within a third of an inch of a computed table of shifts for
/// one release; other releases, drilled holes and asymmetric cores are farther off.
///
/// # Errors
///
/// A number outside those ranges.
pub fn wander(
    ball: &Sphere,
    pin: f64,
    rg_low: f64,
    differential: f64,
    turns: f64,
) -> Result<Wander, Misfit> {
    let pin = within("distance from pin to PAP", pin, 0.0, ball.quarter())?;
    let low = within("lowest RG", rg_low, 1.0, 4.0)?;
    let high = low + within("differential", differential, 0.0, 0.2)?;
    let turns = within("number of turns", turns, 0.0, 100.0)?;
    let angle = ball.radians(pin);
    let share = 1.0 - (low / high) * (low / high);
    let far = |turns: f64| {
        let round = (TAU * turns * libm::cos(angle) * share).min(PI);
        let half = libm::sin(angle) * libm::sin(round / 2.0);
        2.0 * ball.radius() * libm::asin(half.clamp(0.0, 1.0))
    };
    Ok(Wander {
        least: far(turns),
        most: far(turns * SPIN_RISES),
    })
}
