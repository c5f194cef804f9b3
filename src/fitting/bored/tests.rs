//! Closed forms for holes that `Hole` does not make, and how well the sums agree with themselves.

use std::f64::consts::PI;

use glam::DVec3;

use super::{Bored, Misfit, Sphere, gauss, within};

/// A round hole `miss` inches off the ball's centre, along -z.
fn bored(miss: f64, radius: f64, depth: f64) -> Result<Bored, Misfit> {
    let ball = Sphere::default();
    let rise = (ball.radius().powi(2) - miss * miss).sqrt();
    let mouth = DVec3::new(miss, 0.0, rise);
    Bored::new(
        &ball,
        mouth,
        -DVec3::Z,
        DVec3::X,
        (0.0, 2.0 * radius),
        depth,
    )
}

/// Through the middle: the ball less what is left, a ring as high as the hole, whose volume is that of a ball of the same
/// height: `4/3 π (R³ - (R² - r²)^1.5)`. The second moment along the axis is `4/15 π (R⁵ - (R² - r²)^2.5)`, from
/// integrating `2 π ρ` times a third of twice the cubed half chord.
#[test]
fn clean_through() -> Result<(), Misfit> {
    let radius = Sphere::default().radius();
    for hole in [0.25_f64, 0.5, 1.0] {
        let sums = bored(0.0, hole, 2.0 * radius)?.sums();
        let rest = radius * radius - hole * hole;
        let volume = 4.0 / 3.0 * PI * (radius.powi(3) - rest.powf(1.5));
        let along = 4.0 / 15.0 * PI * (radius.powi(5) - rest.powf(2.5));
        assert!(
            (sums.volume / volume - 1.0).abs() < 1e-12,
            "{}",
            sums.volume
        );
        assert!((sums.second.z_axis.z / along - 1.0).abs() < 1e-12);
        assert!(sums.first.length() < 1e-12);
    }
    Ok(())
}

/// The same plane splits a hole clean through the middle into equal halves, however it leans.
#[test]
fn clean_through_has_equal_halves() -> Result<(), Misfit> {
    let ball = Sphere::default();
    let out = DVec3::new(0.3, -0.5, 0.8).normalize();
    let wide = out.any_orthonormal_vector();
    let mouth = out * ball.radius();
    let bored = Bored::new(&ball, mouth, -out, wide, (0.2, 1.0), 9.0)?;
    let halves = bored.halves(bored.sums().volume);
    assert!(halves.abs().max_element() < 1e-12, "{halves}");
    Ok(())
}

#[test]
fn refuses_what_sticks_out() {
    let radius = Sphere::default().radius();
    // Half inch radius at a quarter inch from the centre: the rim nearest the side starts lower than the axis.
    let lowest = (radius * radius - 0.0625).sqrt() - (radius * radius - 0.5625).sqrt();
    let shallow = bored(0.25, 0.5, lowest - 1e-6);
    assert!(
        matches!(shallow, Err(Misfit::TooSmall { what: "depth", lowest: least, .. })
        if within("least", least, lowest - 1e-12, lowest + 1e-12).is_ok())
    );
    assert!(bored(0.25, 0.5, lowest + 1e-6).is_ok());
    // Through on one side of the bottom only.
    let highest = 2.0 * (radius * radius - 0.0625).sqrt() - lowest;
    assert!(bored(0.25, 0.5, highest - 1e-6).is_ok());
    assert!(matches!(
        bored(0.25, 0.5, highest + 1e-6),
        Err(Misfit::TooLarge { .. })
    ));
    assert!(bored(0.25, 0.5, 2.0 * radius).is_ok());
    // Over the side of the ball.
    assert!(matches!(bored(3.9, 0.5, 1.0), Err(Misfit::TooLarge { .. })));
    assert!(matches!(
        bored(0.0, 0.5, f64::NAN),
        Err(Misfit::NotANumber { .. })
    ));
}

/// The farthest a wall may be: the two highest orders still agree to twelve digits.
#[test]
fn even_a_notch_is_summed_well() -> Result<(), Misfit> {
    let notch = bored(3.16, 1.0, 2.5)?;
    let found = notch.sums().volume;
    let (one, other) = (
        notch.summed(gauss::rule(5))[0],
        notch.summed(gauss::rule(6))[0],
    );
    assert!((one / other - 1.0).abs() < 1e-12);
    assert!((found / other - 1.0).abs() < 1e-12, "{found} {other}");
    Ok(())
}

/// A round hole's strips may run any way, and square to the plane they are exact. One that is round but for a hair of an oval's
/// run has its strips where an oval's lie, with the corners: the difference is the error that `halves` admits.
#[test]
fn halves_are_as_good_as_said() -> Result<(), Misfit> {
    let ball = Sphere::default();
    for (aside, lean) in [(0.0, 0.0), (0.1, 0.02), (0.3, -0.08), (0.2, 0.15)] {
        let out = DVec3::new(aside / ball.radius(), -0.5, 0.8).normalize();
        let axis = (DVec3::new(lean, 0.0, 0.0) - out).normalize();
        for degrees in [0.0_f64, 20.0, 45.0, 70.0, 90.0, 130.0] {
            let (sine, cosine) = degrees.to_radians().sin_cos();
            let along = DVec3::new(cosine, sine, 0.0);
            let wide = (along - axis * along.dot(axis)).normalize();
            let mouth = out * ball.radius();
            let split = |run| -> Result<f64, Misfit> {
                let bored = Bored::new(&ball, mouth, axis, wide, (run, 1.0), 2.5)?;
                Ok(bored.crossed(DVec3::X))
            };
            let (rough, exact) = (split(1e-9)?, split(0.0)?);
            assert!((rough - exact).abs() < 1e-4, "{degrees}: {rough} {exact}");
        }
    }
    Ok(())
}
