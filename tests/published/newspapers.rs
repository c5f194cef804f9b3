//! Track widths, a television sample and a word for cores, from newspapers.

use rstest::rstest;
use spanwright::fitting::{Sphere, layout, speed, track};

use crate::prints_as;

type Outcome = Result<(), Box<dyn std::error::Error>>;

/// The widths where a track is called small, medium or large: Orlando Sentinel, 2 June 2000.
/// The tilts are derived: the ring is a small circle on a 27 in ball; arithmetic redone independently.
#[rstest]
#[case(9.5, 26.67)]
#[case(11.0, 16.67)]
#[case(13.5, 0.0)]
fn a_track_width_is_a_tilt(#[case] width: f64, #[case] tilt: f64) -> Outcome {
    let ball = Sphere::default();
    prints_as(track::tilt(&ball, width)?, tilt, 2);
    prints_as(track::width(&ball, track::tilt(&ball, width)?)?, width, 6);
    Ok(())
}

/// Derived from stated premises (as above); arithmetic redone independently.
#[test]
fn a_narrow_track_lies_far_from_the_axis_point() -> Outcome {
    let ball = Sphere::default();
    let tilt = track::tilt(&ball, 9.5)?;
    prints_as(track::axis_point_to_track(&ball, tilt)?, 8.75, 2);
    Ok(())
}

/// 436 rpm at 18.61 mph, the mean of 30 men: Dougherty, Albany Times Union, 29 Sept 2020. The rolling rate
/// and the ratio are derived for a 27 in ball; arithmetic redone independently.
#[test]
fn professionals_turn_the_ball_at_three_fifths_of_rolling() -> Outcome {
    let ball = Sphere::default();
    prints_as(speed::roll_rpm(&ball, 18.61)?, 727.9, 1);
    prints_as(speed::share_of_roll(&ball, 436.0, 18.61)?, 0.599, 3);
    Ok(())
}

/// 297 rpm at 17.83 mph, the mean of 10 women: Dougherty, Albany Times Union, 29 Sept 2020; the ratio derived.
#[test]
fn the_women_of_the_sample_turned_it_less() -> Outcome {
    prints_as(
        speed::share_of_roll(&Sphere::default(), 297.0, 17.83)?,
        0.43,
        2,
    );
    Ok(())
}

/// Derived from stated premises (a 27 in ball that does not slip); arithmetic redone independently.
#[test]
fn rolling_at_one_mile_an_hour() -> Outcome {
    let ball = Sphere::default();
    prints_as(speed::roll_rpm(&ball, 1.0)?, 39.11, 2);
    prints_as(speed::roll_rpm(&ball, 17.0)?, 665.0, 0);
    Ok(())
}

/// A differential of 0.050 and up is called high flare: "Symmetrical cores", Sharon Herald, 6 Oct 2022.
#[rstest]
#[case(0.052, true)]
#[case(0.050, true)]
#[case(0.049, false)]
fn high_flare_begins_at_fifty_thousandths(
    #[case] differential: f64,
    #[case] high: bool,
) -> Outcome {
    assert_eq!(layout::is_high_flare(differential)?, high);
    Ok(())
}
