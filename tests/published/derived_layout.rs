//! Pins, mass biases and axis points.
//!
//! Every number here is derived from stated premises, with the arithmetic redone independently: spherical trigonometry on a
//! ball 27 in around, the mass bias a quarter of the way around from the pin. No published worked conversion was found.

use rstest::rstest;
use spanwright::fitting::{
    Misfit, Sphere,
    layout::{Angles, Point, drilling_angle, flare_share, val_angle},
};

use crate::prints_as;

type Outcome = Result<(), Box<dyn std::error::Error>>;

/// Case 37, and the table of shares. A model: the sine of twice the angle.
#[rstest]
#[case(0.0, 0.0)]
#[case(1.0, 45.0)]
#[case(2.0, 80.0)]
#[case(3.0, 98.0)]
#[case(3.375, 100.0)]
#[case(4.0, 96.0)]
#[case(4.5, 87.0)]
#[case(5.0, 73.0)]
#[case(5.5, 55.0)]
#[case(6.0, 34.0)]
#[case(6.75, 0.0)]
fn the_share_of_flare(#[case] pin: f64, #[case] percent: f64) -> Outcome {
    prints_as(100.0 * flare_share(&Sphere::default(), pin)?, percent, 0);
    Ok(())
}

/// Case 39.
#[test]
fn from_the_axis_point_to_the_grip() -> Outcome {
    let ball = Sphere::default();
    prints_as(Point::new(&ball, 5.0, 0.5)?.to_grip(&ball), 5.0125, 4);
    Ok(())
}

/// The first row is case 41.
#[rstest]
#[case((5.0, 0.5), (50.0, 4.5, 30.0), 1.924, 4.213, 4.006, 4.197)]
#[case((5.0, 0.5), (45.0, 5.0, 35.0), 2.384, 3.713, 3.935, 3.959)]
#[case((4.5, 1.25), (60.0, 4.0, 40.0), 2.328, 4.977, 3.709, 3.741)]
#[case((5.25, 0.5), (30.0, 3.375, 30.0), 1.553, 3.918, 3.274, 4.257)]
#[case((5.0, 1.0), (70.0, 5.5, 70.0), 4.814, 5.316, 1.698, 1.866)]
#[case((5.0, 0.0), (90.0, 4.5, 45.0), 2.832, 6.750, 2.832, 3.038)]
fn where_a_layout_puts_things(
    #[case] pap: (f64, f64),
    #[case] angles: (f64, f64, f64),
    #[case] buffer: f64,
    #[case] mass_bias: f64,
    #[case] above: f64,
    #[case] to_grip: f64,
) -> Outcome {
    let ball = Sphere::default();
    let pap = Point::new(&ball, pap.0, pap.1)?;
    let layout = Angles::new(&ball, angles.0, angles.1, angles.2)?;
    let pin = layout.pin_place(&ball, pap);
    prints_as(layout.buffer(&ball), buffer, 3);
    prints_as(layout.mass_bias(&ball), mass_bias, 3);
    prints_as(pin.up(), above, 3);
    prints_as(pin.to_grip(&ball), to_grip, 3);
    Ok(())
}

#[rstest]
#[case((4.0, 4.0, 2.0), 41.9, 34.0)]
#[case((5.0, 4.0, 2.0), 49.4, 29.3)]
#[case((5.0, 3.0, 1.0), 33.5, 14.5)]
#[case((4.5, 4.5, 2.0), 54.7, 31.2)]
fn distances_as_angles(
    #[case] distances: (f64, f64, f64),
    #[case] drilling: f64,
    #[case] val: f64,
) -> Outcome {
    let ball = Sphere::default();
    let layout = Angles::from_distances(&ball, distances.0, distances.1, distances.2, false)?;
    prints_as(layout.drilling(), drilling, 1);
    prints_as(layout.val(), val, 1);
    Ok(())
}

/// A pin on the thumb's side of the circle through the axis point can still lie above the midline.
#[test]
fn past_a_right_angle_is_not_below_the_midline() -> Outcome {
    let ball = Sphere::default();
    let pap = Point::new(&ball, 5.0, 1.0)?;
    let layout = Angles::new(&ball, 50.0, 5.5, 85.0)?;
    prints_as(layout.pin_place(&ball, pap).up(), 0.636, 3);
    Ok(())
}

/// Case 43: a pin 4 in from the axis point is never 4 1/2 in from the line through it.
#[test]
fn a_layout_that_cannot_be() {
    let ball = Sphere::default();
    assert!(
        matches!(val_angle(&ball, 4.0, 4.5), Err(Misfit::TooLarge { value, .. }) if value == 4.5)
    );
    assert!(
        matches!(drilling_angle(&ball, 4.0, 2.5), Err(Misfit::TooSmall { value, .. }) if value == 2.5)
    );
    assert!(Angles::from_distances(&ball, 4.0, 4.0, 4.5, false).is_err());
}
