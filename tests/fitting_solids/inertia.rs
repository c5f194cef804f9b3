//! How the core turns after drilling, against closed forms.

use proptest::prelude::*;
use rstest::rstest;
use spanwright::fitting::{
    Misfit, Sphere,
    balance::{Ball, Change, Model, Scale},
    inertia::{Core, Turning, after},
    layout::Point,
    solid::drilled,
};

use crate::{Outcome, near, solids::straight_hole, straight, three_holes};

const HEAVY: f64 = 16.387_064 / 28.349_523_125;
const PIN: [f64; 3] = [0.6, 0.64, 0.48];
const BIAS: [f64; 3] = [-0.8, 0.48, 0.36];

fn ball(ounces: f64, top: f64) -> Result<Ball, Misfit> {
    let sphere = Sphere::default();
    let cg = Point::new(&sphere, 1.2, -0.7)?;
    Ball::undrilled(sphere, ounces, top, cg, &Scale::new(4.0, Model::Moment)?)
}

fn changes() -> Result<Vec<Change>, Misfit> {
    let sphere = Sphere::default();
    let holes = three_holes(&sphere)?;
    holes
        .iter()
        .map(|hole| Change::out(drilled(&sphere, hole)?, 1.2))
        .collect()
}

fn turning(found: &Turning) -> [f64; 3] {
    [found.rg_low(), found.differential(), found.intermediate()]
}

#[rstest]
#[case(2.5, 0.05, 0.0)]
#[case(2.48, 0.052, 0.018)]
#[case(2.7, 0.004, 0.0)]
#[case(2.6, 0.03, 0.03)]
fn removing_nothing_changes_nothing(
    #[case] low: f64,
    #[case] differential: f64,
    #[case] intermediate: f64,
) -> Outcome {
    let core = Core::new(low, differential, intermediate, PIN, Some(BIAS))?;
    let hole = drilled(&Sphere::default(), &three_holes(&Sphere::default())?[0])?;
    let plugged = [Change::out(hole, 1.2)?, Change::back(hole, 1.2)?];
    for changes in [&[][..], &plugged] {
        let found = after(&core, &ball(240.0, 3.0)?, changes)?;
        near(turning(&found), [low, differential, intermediate], 1e-9);
        match found.moved() {
            Some(moved) => assert!(moved < 1e-6 && differential > intermediate),
            None => assert_eq!(differential, intermediate),
        }
        if intermediate > 0.0 && differential > intermediate {
            near(found.axes()[0], PIN, 1e-7);
            let high = found.axes()[2];
            let along: f64 = high.iter().zip(BIAS).map(|(one, other)| one * other).sum();
            assert!((along.abs() - 1.0).abs() < 1e-9);
        }
    }
    Ok(())
}

/// Derived. An even ball of 240 oz has RG = R √(2/5) about every axis. A straight hole of density 1.2 along z, with first and
/// second moments as in the solids' closed form, leaves about the ball's centre I(z) = 240 · 2/5 R² - 2 ρ A (A across) and
/// I(x) = 240 · 2/5 R² - ρ (A + B) (B along z); about the mass centre I(x) loses m c² with c = -ρ F / m.
#[test]
fn a_hole_in_an_even_ball() -> Outcome {
    let sphere = Sphere::default();
    let square = 0.4 * sphere.radius() * sphere.radius();
    let [volume, first, along, across] = straight_hole(&sphere, 1.0, 2.5);
    let density = 1.2 * HEAVY;
    let left = 240.0 - density * volume;
    let about = 240.0 * square - 2.0 * density * across;
    let other = 240.0 * square - density * (across + along) - (density * first).powi(2) / left;
    let (about, other) = ((about / left).sqrt(), (other / left).sqrt());

    let core = Core::new(square.sqrt(), 0.0, 0.0, [0.0, 0.0, 1.0], None)?;
    let hole = drilled(&sphere, &straight(&sphere, PIN, 1.0, 2.5)?)?;
    let found = after(&core, &ball(240.0, 0.0)?, &[Change::out(hole, 1.2)?])?;
    near(
        [found.rg_low(), found.rg_middle(), found.rg_high()],
        [other, other, about],
        1e-9,
    );
    // The hole lowers every axis but its own, which is now the one with the highest RG.
    let high = found.axes()[2];
    let along: f64 = high.iter().zip(PIN).map(|(one, other)| one * other).sum();
    assert!((along.abs() - 1.0).abs() < 1e-9);
    assert_eq!(found.moved(), None);
    Ok(())
}

/// The tensor is what the axes and RGs say, and the axes are square and right-handed, the lowest on the pin's side.
#[test]
fn the_tensor_and_its_axes_agree() -> Outcome {
    let core = Core::new(2.5, 0.05, 0.015, PIN, Some(BIAS))?;
    let found = after(&core, &ball(240.0, 3.0)?, &changes()?)?;
    let ounces = spanwright::fitting::balance::finish(
        &ball(240.0, 3.0)?,
        &changes()?,
        &Scale::new(4.0, Model::Moment)?,
    )?
    .ounces();
    let rgs = [found.rg_low(), found.rg_middle(), found.rg_high()];
    for (axis, rg) in found.axes().iter().zip(rgs) {
        let turned = found.tensor().map(|row| {
            row.iter()
                .zip(axis)
                .map(|(one, other)| one * other)
                .sum::<f64>()
        });
        near(turned, axis.map(|part| part * ounces * rg * rg), 1e-8);
    }
    let [low, middle, high] = found.axes();
    near(
        [
            low[1] * middle[2] - low[2] * middle[1],
            low[2] * middle[0] - low[0] * middle[2],
            low[0] * middle[1] - low[1] * middle[0],
        ],
        high,
        1e-12,
    );
    assert!(
        low.iter()
            .zip(PIN)
            .map(|(one, other)| one * other)
            .sum::<f64>()
            > 0.9
    );
    let moved = found.moved().ok_or("no axis")?;
    assert!(moved > 0.01 && moved < 2.0, "{moved}");
    Ok(())
}

/// A hole where the pin is leaves the low axis where it was.
#[test]
fn a_hole_on_the_pin_moves_no_axis() -> Outcome {
    let sphere = Sphere::default();
    let core = Core::new(2.5, 0.05, 0.0, PIN, None)?;
    let hole = drilled(&sphere, &straight(&sphere, PIN, 1.0, 2.5)?)?;
    let found = after(&core, &ball(240.0, 0.0)?, &[Change::out(hole, 1.2)?])?;
    assert!(found.moved().ok_or("no axis")? < 1e-7);
    assert!(found.differential() < 0.05 && found.intermediate() < 1e-9);
    Ok(())
}

#[test]
fn cores_that_cannot_be_are_refused() {
    let core = |low, differential, intermediate| {
        Core::new(low, differential, intermediate, PIN, Some(BIAS))
    };
    assert!(core(2.5, 0.05, 0.02).is_ok());
    for (low, differential, intermediate) in [
        (2.5, 0.02, 0.05),
        (2.5, -0.01, 0.0),
        (2.5, 0.05, -0.01),
        (1.99, 0.05, 0.0),
        (3.48, 0.0, 0.0),
        (3.46, 0.05, 0.0),
        (f64::NAN, 0.05, 0.0),
        (2.5, f64::NAN, 0.0),
        (2.5, 0.05, f64::INFINITY),
        // A plate: 2² + 2² is 8, and 3.4² is 11.56.
        (2.0, 1.4, 1.4),
    ] {
        assert!(
            core(low, differential, intermediate).is_err(),
            "{low} {differential} {intermediate}"
        );
    }
    let missing = Core::new(2.5, 0.05, 0.02, PIN, None);
    assert_eq!(
        missing
            .map_err(|misfit| misfit.to_string())
            .err()
            .as_deref(),
        Some("the direction of the mass bias is needed")
    );
    assert!(Core::new(2.5, 0.05, 0.0, [0.0; 3], None).is_err());
    assert!(Core::new(2.5, 0.05, 0.0, [f64::NAN, 0.0, 1.0], None).is_err());
    assert!(Core::new(2.5, 0.05, 0.02, PIN, Some(PIN)).is_err());
}

proptest! {
    /// An axis is a line: the pin's other end gives the same numbers. And seen in a mirror, the core turns as its mirror image.
    #[test]
    fn either_end_of_the_pin_and_either_hand(x in -1.0..1.0, y in -1.0..1.0, differential in 0.004..0.06, top in 0.0..4.0) {
        let sphere = Sphere::default();
        let found = |ends: f64, hand: f64| -> Result<Turning, Misfit> {
            let pin = [ends * hand * x, ends * y, ends * 0.7];
            let core = Core::new(2.52, differential, 0.0, pin, None)?;
            let cg = Point::new(&sphere, hand * 1.1, 0.4)?;
            let whole = Ball::undrilled(sphere, 235.0, top, cg, &Scale::new(4.0, Model::Moment)?)?;
            let mut changes = Vec::new();
            for (mouth, size) in [([-0.7, 2.0, 3.7], 0.9), ([0.5, 2.1, 3.6], 0.9), ([0.1, -2.0, 3.7], 1.2)] {
                let hole = straight(&sphere, [hand * mouth[0], mouth[1], mouth[2]], size, 2.0)?;
                changes.push(Change::out(drilled(&sphere, &hole)?, 1.2)?);
            }
            after(&core, &whole, &changes)
        };
        let fits = |found: Result<Turning, Misfit>| found.map_err(|misfit| TestCaseError::fail(misfit.to_string()));
        let dot = |one: [f64; 3], other: [f64; 3]| one.iter().zip(other).map(|(one, other)| one * other).sum::<f64>();
        let (one, end, hand) = (fits(found(1.0, 1.0))?, fits(found(-1.0, 1.0))?, fits(found(1.0, -1.0))?);
        for (found, ends) in [(&one, 1.0), (&end, -1.0)] {
            prop_assert!(dot(found.axes()[0], [ends * x, ends * y, ends * 0.7]) >= 0.0);
        }
        for other in [end, hand] {
            for (one, other) in turning(&one).into_iter().zip(turning(&other)) {
                prop_assert!((one - other).abs() < 1e-9);
            }
            let moved = one.moved().zip(other.moved());
            // Where two axes are nearly alike the low one wanders with the last digit.
            prop_assert!(one.differential() - one.intermediate() < 1e-4 || moved.is_some_and(|(one, other)| (one - other).abs() < 1e-6));
        }
        prop_assert!(one.moved().unwrap_or(0.0) <= sphere.quarter());
    }
}
