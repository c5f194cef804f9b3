//! What must hold for every ball and hand: there and back is where one was, a mirror image is a mirror image, and what
//! cannot be is refused with the limit it broke.

use proptest::prelude::*;
use spanwright::fitting::{
    Misfit, Sphere, inches,
    layout::{Angles, Point, drilling_angle, val_angle},
    pitch, removed, ring, sixty_fourths, span, speed, track,
    web::FingerHoles,
};

const HAIR: f64 = 1e-6;

fn ball() -> impl Strategy<Value = Sphere> {
    (26.7..27.1).prop_filter_map("a ball", |around| Sphere::around(around).ok())
}

fn near(one: f64, other: f64) -> Result<(), TestCaseError> {
    prop_assert!((one - other).abs() < HAIR, "{} is not {}", one, other);
    Ok(())
}

fn fits<T>(found: Result<T, Misfit>) -> Result<T, TestCaseError> {
    found.map_err(|misfit| TestCaseError::fail(misfit.to_string()))
}

proptest! {
    #[test]
    fn arc_and_chord_there_and_back(ball in ball(), arc in 0.0..13.0) {
        let chord = fits(ball.arc_to_chord(arc))?;
        prop_assert!(chord <= arc + HAIR);
        near(fits(ball.chord_to_arc(chord))?, arc)?;
        near(ball.arc(ball.degrees(arc)), arc)?;
    }

    #[test]
    fn spans_there_and_back(ball in ball(), full in 2.0..6.0, thumb in 0.0..1.5, finger in 0.0..1.5) {
        let cut = fits(span::full_to_cut(full, thumb / 4.0, finger / 4.0))?;
        prop_assert!(cut <= full);
        near(fits(span::cut_to_full(cut, thumb / 4.0, finger / 4.0))?, full)?;
        let centre = fits(span::full_to_centre(&ball, full, thumb, finger))?;
        prop_assert!(centre >= full + (thumb + finger) / 2.0 - HAIR);
        near(fits(span::centre_to_full(&ball, centre, thumb, finger))?, full)?;
    }

    #[test]
    fn a_pitch_there_and_back_and_mirrored(ball in ball(), miss in 0.0..2.0) {
        let lean = fits(pitch::angle(&ball, miss))?;
        near(fits(pitch::offset(&ball, lean))?, miss)?;
        near(fits(pitch::angle(&ball, -miss))?, -lean)?;
        near(pitch::combined(-miss, 0.5), pitch::combined(miss, -0.5))?;
    }

    #[test]
    fn a_web_does_not_care_which_hole_is_which(ball in ball(), left in -0.5..1.0, right in -0.5..1.0, depth in 0.0..3.0) {
        let one = fits(FingerHoles::new(&ball, 0.25, 0.96875, [left, right]))?;
        let other = fits(FingerHoles::new(&ball, 0.25, 0.96875, [right, left]))?;
        near(fits(one.web_at(depth))?, fits(other.web_at(depth))?)?;
        prop_assert!(fits(one.least_web(depth))? <= fits(one.web_at(depth))? + HAIR);
        match one.breaks_at() {
            Some(breaks) if breaks <= 4.0 => near(fits(one.web_at(breaks))?, 0.0)?,
            _ => prop_assert!(fits(one.least_web(depth))? > 0.0),
        }
    }

    #[test]
    fn more_lateral_leaves_more_web(ball in ball(), lateral in 0.0..0.7, depth in 0.1..2.0) {
        let less = fits(FingerHoles::new(&ball, 0.25, 0.875, [lateral, lateral]))?;
        let more = fits(FingerHoles::new(&ball, 0.25, 0.875, [lateral + 0.0625, lateral]))?;
        prop_assert!(fits(more.web_at(depth))? > fits(less.web_at(depth))?);
    }

    #[test]
    fn a_track_there_and_back(ball in ball(), tilt in 0.0..90.0) {
        near(fits(track::tilt(&ball, fits(track::width(&ball, tilt))?))?, tilt)?;
    }

    #[test]
    fn a_layout_there_and_back(ball in ball(), drilling in 5.0..175.0, pin in 0.5..6.0, val in 1.0..179.0) {
        let layout = fits(Angles::new(&ball, drilling, pin, val))?;
        let mass_bias = layout.mass_bias(&ball);
        let back = fits(Angles::from_distances(&ball, pin, mass_bias, layout.buffer(&ball), val > 90.0))?;
        near(back.drilling(), drilling)?;
        // The sine is flat at a right angle, so half the digits are lost there.
        prop_assert!((back.val() - val).abs() < 1e-4);
    }

    #[test]
    fn fingers_and_thumb_are_mirror_images(ball in ball(), over in 3.0..6.0, up in -1.5..1.5, pin in 0.5..6.0, val in 0.0..180.0) {
        let straight = fits(Angles::new(&ball, 45.0, pin, val))?.pin_place(&ball, fits(Point::new(&ball, over, up))?);
        let mirrored = fits(Angles::new(&ball, 45.0, pin, 180.0 - val))?.pin_place(&ball, fits(Point::new(&ball, over, -up))?);
        near(straight.up(), -mirrored.up())?;
        near(straight.over(), mirrored.over())?;
        near(straight.to_grip(&ball), mirrored.to_grip(&ball))?;
        near(straight.to_centreline(&ball), mirrored.to_centreline(&ball))?;
    }

    #[test]
    fn the_pin_is_as_far_from_the_axis_point_as_asked(ball in ball(), over in 3.0..6.0, pin in 0.5..6.0, val in 0.0..180.0) {
        // With the axis point on the midline, moving it to the grip centre leaves the distance.
        let pap = fits(Point::new(&ball, over, 0.0))?;
        let place = fits(Angles::new(&ball, 45.0, pin, val))?.pin_place(&ball, pap);
        let moved = fits(Point::new(&ball, place.over() - over, place.up()))?;
        near(moved.to_grip(&ball), pin)?;
    }

    #[test]
    fn a_wider_difference_never_lengthens_the_ring(middle in 2.5..5.0, difference in 0.0..1.0, more in 0.0..0.5) {
        let level = (0.3125, 0.375);
        let one = fits(ring::ring_span(middle, difference, level))?;
        prop_assert!(fits(ring::ring_span(middle, difference + more, level))? <= one + HAIR);
    }

    #[test]
    fn steps_there_and_back(steps in -1_000_000_i64..1_000_000) {
        prop_assert_eq!(sixty_fourths(inches(steps)), steps);
    }
}

#[test]
fn what_cannot_be_is_refused_with_its_limit() {
    let ball = Sphere::default();
    let said = |misfit: Option<Misfit>| misfit.map(|misfit| misfit.to_string()).unwrap_or_default();
    assert_eq!(
        said(val_angle(&ball, 4.0, 4.5).err()),
        "the distance from pin to VAL of 4.5000 is above the most possible, 4.0000"
    );
    assert_eq!(
        said(drilling_angle(&ball, 4.0, 2.0).err()),
        "the distance from mass bias to PAP of 2.0000 is below the least possible, 2.7500"
    );
    assert_eq!(
        said(speed::mph(f64::NAN).err()),
        "the time in seconds is not a number"
    );
    assert!(Sphere::around(f64::INFINITY).is_err());
    assert!(Sphere::across(12.0).is_err());
    assert!(span::wall(0.5, 0.75).is_err());
    assert!(span::full_to_cut(0.1, 0.125, 0.09375).is_err());
    assert!(pitch::angle(&ball, 5.0).is_err());
    assert!(FingerHoles::new(&ball, -0.25, 0.9, [0.0, 0.0]).is_err());
    assert!(removed::ounces(1.0, -2.5, 1.2).is_err());
    assert!(ring::ring_span(4.0, 0.3, (0.5, 0.25)).is_err());
    assert!(track::tilt(&ball, 14.0).is_err());
}

/// Derived: straight across the oval reaches half its narrow size toward the fingers, straight along half its wide one, and
/// a round hole half its bore however it is turned.
#[test]
fn an_oval_reaches_as_far_as_its_edge() -> Result<(), Misfit> {
    assert!((span::oval_reach(1.125, 1.0, 0.0)? - 0.5).abs() < 1e-12);
    assert!((span::oval_reach(1.125, 1.0, 180.0)? - 0.5).abs() < 1e-12);
    assert!((span::oval_reach(1.125, 1.0, 90.0)? - 0.5625).abs() < 1e-12);
    // 15/32 + 1/16 sin 30 = 1/2.
    assert!((span::oval_reach(1.0625, 0.9375, 30.0)? - 0.5).abs() < 1e-12);
    assert!((span::oval_reach(1.0625, 0.9375, 150.0)? - 0.5).abs() < 1e-12);
    assert!((span::oval_reach(1.0, 1.0, 77.0)? - 0.5).abs() < 1e-12);
    assert!(span::oval_reach(1.0, 1.125, 0.0).is_err());
    assert!(span::oval_reach(1.125, 1.0, 181.0).is_err());
    assert!(span::oval_reach(f64::NAN, 1.0, 0.0).is_err());
    Ok(())
}

#[test]
fn the_ends_of_a_layout_still_have_angles() -> Result<(), Misfit> {
    let ball = Sphere::default();
    assert!((drilling_angle(&ball, 4.0, 2.75)? - 0.0).abs() < 1e-3);
    assert!((drilling_angle(&ball, 4.0, 10.75)? - 180.0).abs() < 1e-3);
    assert!((val_angle(&ball, 4.0, 4.0)? - 90.0).abs() < 1e-3);
    Ok(())
}
