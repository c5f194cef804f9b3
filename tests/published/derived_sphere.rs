//! Pitches, chords and spans on the sphere.
//!
//! Every number here is derived from stated premises, with the arithmetic redone independently: a ball 27 in around, a
//! pitch that is the distance by which the axis misses the centre. No printed table of these was found.

use rstest::rstest;
use spanwright::fitting::{Sphere, pitch, span};

use crate::prints_as;

type Outcome = Result<(), Box<dyn std::error::Error>>;

#[test]
fn the_ball_of_reference() -> Outcome {
    let ball = Sphere::default();
    prints_as(ball.radius(), 4.2972, 4);
    prints_as(ball.degrees(1.0), 13.333, 3);
    prints_as(ball.arc(1.0), 0.075, 3);
    prints_as(ball.quarter(), 6.75, 9);
    prints_as(2.0 * ball.radius(), 8.594, 3);
    assert_eq!(Sphere::around(27.0)?, ball);
    Ok(())
}

/// Hand-computed from sin t = p/R.
#[test]
fn three_eighths_leans_five_degrees() -> Outcome {
    prints_as(pitch::angle(&Sphere::default(), 0.375)?, 5.006, 3);
    Ok(())
}

/// Two pitches stand square: sqrt(p² + q²), then sin t = p/R.
#[test]
fn reverse_and_side_combine() -> Outcome {
    let whole = pitch::combined(-0.375, 0.25);
    prints_as(whole, 0.4507, 4);
    prints_as(pitch::angle(&Sphere::default(), whole)?, 6.020, 3);
    Ok(())
}

#[rstest]
#[case(0.0625, 0.83, 0.84)]
#[case(0.125, 1.67, 1.69)]
#[case(0.25, 3.34, 3.37)]
#[case(0.375, 5.01, 5.06)]
#[case(0.5, 6.68, 6.76)]
#[case(0.625, 8.36, 8.46)]
#[case(0.75, 10.05, 10.16)]
#[case(1.0, 13.46, 13.61)]
fn pitches_as_angles(#[case] inches: f64, #[case] usual: f64, #[case] small: f64) -> Outcome {
    prints_as(pitch::angle(&Sphere::default(), inches)?, usual, 2);
    prints_as(pitch::angle(&Sphere::across(8.5)?, inches)?, small, 2);
    Ok(())
}

/// Hand-computed from chord = 2R sin(arc / 2R).
#[test]
fn a_chord_is_a_longer_arc() -> Outcome {
    prints_as(Sphere::default().chord_to_arc(4.0789)?, 4.25, 3);
    Ok(())
}

#[rstest]
#[case(2.0, 26.67, 1.982)]
#[case(3.0, 40.0, 2.939)]
#[case(3.375, 45.0, 3.289)]
#[case(4.0, 53.33, 3.857)]
#[case(4.25, 56.67, 4.079)]
#[case(4.5, 60.0, 4.297)]
#[case(5.0, 66.67, 4.723)]
#[case(6.75, 90.0, 6.077)]
fn arcs_and_their_chords(#[case] arc: f64, #[case] degrees: f64, #[case] chord: f64) -> Outcome {
    let ball = Sphere::default();
    prints_as(ball.degrees(arc), degrees, 2);
    prints_as(ball.arc_to_chord(arc)?, chord, 3);
    Ok(())
}

#[test]
fn a_calliper_read_as_an_arc_shortens_the_span() -> Outcome {
    prints_as(4.25 - Sphere::default().arc_to_chord(4.25)?, 0.171, 3);
    Ok(())
}

#[test]
fn a_full_span_cut_for_insert_and_slug() -> Outcome {
    let insert = span::wall(31.0 / 32.0, 25.0 / 32.0)?;
    let slug = span::wall(1.25, 1.0)?;
    assert_eq!(insert, 3.0 / 32.0);
    assert_eq!(slug, 1.0 / 8.0);
    assert_eq!(span::full_to_cut(4.25, slug, insert)?, 4.0 + 1.0 / 32.0);
    Ok(())
}

/// The sum of the half bores is about 0.002 in short of the centre span along the ball.
#[test]
fn a_centre_span_adds_the_half_bores_along_the_ball() -> Outcome {
    let centre = span::full_to_centre(&Sphere::default(), 4.25, 1.0, 25.0 / 32.0)?;
    prints_as(centre - (4.25 + 0.5 + 25.0 / 64.0), 0.002, 3);
    Ok(())
}
