//! Finished weight, mass centre, static weights.

use proptest::prelude::*;
use spanwright::fitting::{
    Misfit, Sphere,
    balance::{Ball, Change, Model, Scale, Statics, finish, moved_grip},
    layout::Point,
    solid::{Solid, drilled},
};

use crate::{Outcome, near, straight, three_holes};

const BOTH: [Model; 2] = [Model::Moment, Model::Halves];

fn vector(statics: Statics) -> [f64; 3] {
    [statics.side, statics.finger, statics.top]
}

fn changes(ball: &Sphere, density: f64) -> Result<Vec<Change>, Misfit> {
    let holes = three_holes(ball)?;
    holes
        .iter()
        .map(|hole| Change::out(drilled(ball, hole)?, density))
        .collect()
}

/// The printed table of a moved grip (derived: side = T sin(s/R), top = T cos(s/R)), by this way round as well.
#[test]
fn a_moved_grip_is_a_heavy_spot_elsewhere() -> Outcome {
    let ball = Sphere::default();
    let table = [
        (2.0, [0.23, 0.46, 0.68, 0.90, 1.29]),
        (3.0, [0.35, 0.69, 1.03, 1.35, 1.93]),
        (4.0, [0.46, 0.92, 1.37, 1.80, 2.57]),
    ];
    for model in BOTH {
        let scale = Scale::new(3.0, model)?;
        for (top, printed) in table {
            for (away, printed) in [0.5, 1.0, 1.5, 2.0, 3.0].into_iter().zip(printed) {
                let moved = moved_grip(&ball, top, away)?;
                let whole =
                    Ball::undrilled(ball, 240.0, top, Point::new(&ball, away, 0.0)?, &scale)?;
                let found = finish(&whole, &[], &scale)?.statics();
                assert!((found.side - printed).abs() < 0.005 + 1e-9);
                near(vector(found), [moved.side, 0.0, moved.top], 1e-12);
                let whole =
                    Ball::undrilled(ball, 240.0, top, Point::new(&ball, 0.0, -away)?, &scale)?;
                let found = finish(&whole, &[], &scale)?.statics();
                near(vector(found), [0.0, -moved.side, moved.top], 1e-12);
            }
        }
    }
    Ok(())
}

#[test]
fn removing_nothing_changes_nothing() -> Outcome {
    let ball = Sphere::default();
    for model in BOTH {
        let scale = Scale::new(4.0, model)?;
        let whole = Ball::undrilled(ball, 244.0, 3.0, Point::new(&ball, 0.7, 0.4)?, &scale)?;
        let hole = drilled(&ball, &three_holes(&ball)?[0])?;
        let plugged = [Change::out(hole, 1.2)?, Change::back(hole, 1.2)?];
        let nothing = Change::out(Solid::default(), 1.2)?;
        for changes in [&[][..], &plugged, &[nothing]] {
            let found = finish(&whole, changes, &scale)?;
            assert!((found.ounces() - 244.0).abs() < 1e-12);
            near(found.centre(), whole.centre(), 1e-12);
            near(
                found.centre(),
                whole.moment().map(|part| part / 244.0),
                1e-12,
            );
            let measured = Ball::weighed(ball, 244.0, found.statics(), &scale)?;
            near(measured.moment(), whole.moment(), 1e-12);
            assert_eq!(found.model(), model);
        }
    }
    Ok(())
}

/// By hand, from the closed form of a straight hole: 1 in by 2 1/2 in at the grip's middle, density 1.2, arm 4 in. It weighs
/// 1.354 oz with its middle 3.05 in out, so it takes 1.034 oz off the top as a moment, and all 1.354 oz as half a ball.
#[test]
fn the_two_models_differ_by_lever_over_arm() -> Outcome {
    let ball = Sphere::default();
    let [volume, along, ..] = crate::solids::straight_hole(&ball, 1.0, 2.5);
    let heavy = 1.2 * 16.387_064 / 28.349_523_125;
    let hole = Change::out(
        drilled(&ball, &straight(&ball, [0.0, 0.0, 1.0], 1.0, 2.5)?)?,
        1.2,
    )?;
    for (model, off) in [
        (Model::Moment, heavy * along / 4.0),
        (Model::Halves, heavy * volume),
    ] {
        let scale = Scale::new(4.0, model)?;
        let whole = Ball::undrilled(ball, 240.0, 3.0, Point::new(&ball, 0.0, 0.0)?, &scale)?;
        let found = finish(&whole, &[hole], &scale)?;
        near(vector(found.statics()), [0.0, 0.0, 3.0 - off], 1e-9);
        assert!((found.out_ounces() - heavy * volume).abs() < 1e-9);
        assert!((found.out_ounces() - 1.354).abs() < 0.0005);
        assert_eq!(found.back_ounces(), 0.0);
        let centre = (12.0 - heavy * along) / (240.0 - heavy * volume);
        near(found.centre(), [0.0, 0.0, centre], 1e-9);
    }
    Ok(())
}

#[test]
fn a_mirrored_ball_has_mirrored_side_weight() -> Outcome {
    let ball = Sphere::default();
    for model in BOTH {
        let scale = Scale::new(4.0, model)?;
        let found = |sign: f64| -> Result<_, Misfit> {
            let whole = Ball::undrilled(
                ball,
                240.0,
                3.0,
                Point::new(&ball, sign * 1.5, 0.5)?,
                &scale,
            )?;
            let changes: Result<Vec<_>, _> = [([-1.2, 1.5, 3.8], 1.0), ([0.5, -2.0, 3.7], 0.9)]
                .iter()
                .map(|(mouth, size)| {
                    let hole = straight(&ball, [sign * mouth[0], mouth[1], mouth[2]], *size, 2.0)?;
                    Change::out(drilled(&ball, &hole)?, 1.1)
                })
                .collect();
            Ok(finish(&whole, &changes?, &scale)?.statics())
        };
        let (one, other) = (found(1.0)?, found(-1.0)?);
        near(vector(one), [-other.side, other.finger, other.top], 1e-9);
        assert!(one.side.abs() > 0.5);
    }
    Ok(())
}

/// What can't be is refused, and the message says what can.
#[test]
fn lead_and_other_nonsense() -> Outcome {
    let ball = Sphere::default();
    let hole = drilled(&ball, &three_holes(&ball)?[0])?;
    let lead = Change::back(hole, 11.3);
    let said = lead
        .err()
        .map(|misfit| misfit.to_string())
        .unwrap_or_default();
    assert_eq!(
        said,
        "the density in g/cm³ of 11.3000 is above the most possible, 4.0000"
    );
    for density in [0.0, 0.29, -1.0, 4.01, f64::INFINITY, f64::NAN] {
        assert!(Change::out(hole, density).is_err(), "{density}");
    }
    assert!(Change::out(Solid::default().less(&hole), 1.2).is_err());
    assert!(Change::back(hole.scaled(f64::MAX), 1.2).is_err());
    let scale = Scale::new(4.0, Model::Moment)?;
    for arm in [0.0, -1.0, 0.4, 21.0, f64::NAN] {
        assert!(Scale::new(arm, Model::Moment).is_err(), "{arm}");
    }
    let cg = Point::new(&ball, 0.0, 0.0)?;
    for (ounces, top) in [
        (f64::NAN, 3.0),
        (1.0, 3.0),
        (1e9, 3.0),
        (240.0, f64::NAN),
        (240.0, -1.0),
        (240.0, 17.0),
    ] {
        assert!(
            Ball::undrilled(ball, ounces, top, cg, &scale).is_err(),
            "{ounces} {top}"
        );
    }
    let light = Ball::undrilled(ball, 17.0, 1.0, cg, &scale)?;
    assert!(finish(&light, &changes(&ball, 4.0)?, &scale).is_err());
    Ok(())
}

proptest! {
    /// Turning the heavy spot by an angle about the grip's own axis turns its part of the static weights by that angle.
    #[test]
    fn the_static_weights_turn_with_the_heavy_spot(away in 0.0..6.7, turn in -3.1..3.1, top in 0.0..6.0, halves: bool) {
        let ball = Sphere::default();
        let model = BOTH[usize::from(halves)];
        let fits = |found: Result<[f64; 3], Misfit>| found.map_err(|misfit| TestCaseError::fail(misfit.to_string()));
        let statics = |angle: f64| -> Result<[f64; 3], Misfit> {
            let scale = Scale::new(4.0, model)?;
            // The point this far from the grip in this direction, by the sine and cosine rules.
            let lean: f64 = away / ball.radius();
            let (x, y, z) = (lean.sin() * angle.cos(), lean.sin() * angle.sin(), lean.cos());
            let cg = Point::new(&ball, ball.radius() * x.atan2(z), ball.radius() * y.asin())?;
            let whole = Ball::undrilled(ball, 240.0, top, cg, &scale)?;
            let drilled = finish(&whole, &changes(&ball, 1.2)?, &scale)?.statics();
            let none = Ball::undrilled(ball, 240.0, 0.0, cg, &scale)?;
            let holes = finish(&none, &changes(&ball, 1.2)?, &scale)?.statics();
            Ok([drilled.side - holes.side, drilled.finger - holes.finger, drilled.top - holes.top])
        };
        let (before, after) = (fits(statics(0.3))?, fits(statics(0.3 + turn))?);
        let (sine, cosine) = f64::sin_cos(turn);
        let turned = [before[0] * cosine - before[1] * sine, before[0] * sine + before[1] * cosine, before[2]];
        for (one, other) in after.iter().zip(turned) {
            prop_assert!((one - other).abs() < 1e-9, "{:?} {:?}", after, turned);
        }
    }
}
