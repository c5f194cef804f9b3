//! Weight taken out by the drill, and top weight that moves to the side.
//!
//! Derived from stated premises, with the arithmetic redone independently: flat-topped cylinders, a ball 27 in around, the
//! mass centre as a lever. Where a printed number agrees, the test says so.

use rstest::rstest;
use spanwright::fitting::{Sphere, balance, removed};

use crate::prints_as;

type Outcome = Result<(), Box<dyn std::error::Error>>;

/// The thumb hole at density 1.0 was first worked as 1.14; the arithmetic, redone, gives 1.135.
#[rstest]
#[case(1.0, 2.5, [1.13, 1.25, 1.36, 1.48])]
#[case(31.0 / 32.0, 1.25, [0.53, 0.59, 0.64, 0.69])]
fn ounces_out_of_a_hole(
    #[case] diameter: f64,
    #[case] depth: f64,
    #[case] ounces: [f64; 4],
) -> Outcome {
    for (density, printed) in [1.0, 1.1, 1.2, 1.3].into_iter().zip(ounces) {
        prints_as(removed::ounces(diameter, depth, density)?, printed, 2);
    }
    Ok(())
}

#[test]
fn the_factor_of_the_formula() -> Outcome {
    prints_as(removed::ounces(1.0, 1.0, 1.0)?, 0.4540, 4);
    Ok(())
}

/// Agrees with "about 2.5 oz in all": a shop's page, "Center of Gravity"; published, weak.
#[test]
fn three_holes_take_out_two_and_two_thirds_ounces() -> Outcome {
    let thumb = removed::ounces(1.0, 2.5, 1.2)?;
    let finger = removed::ounces(31.0 / 32.0, 1.25, 1.2)?;
    prints_as(thumb + 2.0 * finger, 2.64, 2);
    Ok(())
}

/// Premise: the slug is as dense as the ball. It gives back what its own hole took beyond the thumb's bore.
#[test]
fn a_bored_slug_leaves_the_bore() -> Outcome {
    let hole = removed::ounces(1.25, 2.75, 1.2)?;
    let slug = removed::ounces(1.25, 2.75, 1.2)? - removed::ounces(1.0, 2.5, 1.2)?;
    prints_as(hole - slug, 1.36, 2);
    Ok(())
}

#[rstest]
#[case(2.0, [0.23, 0.46, 0.68, 0.90, 1.29])]
#[case(3.0, [0.35, 0.69, 1.03, 1.35, 1.93])]
#[case(4.0, [0.46, 0.92, 1.37, 1.80, 2.57])]
fn side_weight_of_a_moved_grip(#[case] top: f64, #[case] side: [f64; 5]) -> Outcome {
    let ball = Sphere::default();
    for (distance, printed) in [0.5, 1.0, 1.5, 2.0, 3.0].into_iter().zip(side) {
        let moved = balance::moved_grip(&ball, top, distance)?;
        prints_as(moved.side, printed, 2);
        prints_as(moved.side.hypot(moved.top), top, 9);
    }
    Ok(())
}

#[rstest]
#[case(16.0, 1.332)]
#[case(15.0, 1.249)]
#[case(14.0, 1.166)]
#[case(12.0, 0.999)]
#[case(10.0, 0.833)]
fn average_density(#[case] pounds: f64, #[case] density: f64) -> Outcome {
    prints_as(
        removed::average_density(&Sphere::default(), pounds)?,
        density,
        3,
    );
    Ok(())
}
