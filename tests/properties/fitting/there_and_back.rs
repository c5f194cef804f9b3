//! Conversions there and back: spans, chords, pitches, speeds, points and layouts end where they began.

use proptest::prelude::*;
use spanwright::fitting::layout::{Angles, Layout, Point};
use spanwright::fitting::{jig, pitch, span, speed, track};

use super::{ball, fits, near};
use crate::cases;

proptest! {
    #![proptest_config(cases(256))]

    #[test]
    fn arcs_chords_and_spans(ball in ball(), arc in 0.0..12.0, full in 2.0..6.0, thumb in 0.0..1.5, finger in 0.0..1.5) {
        near(fits(ball.chord_to_arc(fits(ball.arc_to_chord(arc))?))?, arc)?;
        near(ball.arc(ball.degrees(arc)), arc)?;
        let cut = fits(span::full_to_cut(full, thumb / 4.0, finger / 4.0))?;
        near(fits(span::cut_to_full(cut, thumb / 4.0, finger / 4.0))?, full)?;
        let centre = fits(span::full_to_centre(&ball, full, thumb, finger))?;
        near(fits(span::centre_to_full(&ball, centre, thumb, finger))?, full)?;
    }

    #[test]
    fn pitches(ball in ball(), miss in -2.0..2.0, between in 0.5..2.0, lateral in -1.0..1.0) {
        near(fits(pitch::offset(&ball, fits(pitch::angle(&ball, miss))?))?, miss)?;
        let parallel = fits(jig::parallel_lateral(&ball, between, lateral))?;
        near(fits(jig::centre_lateral(&ball, between, parallel))?, lateral)?;
        // Aimed half the distance outward, the two are parallel.
        near(fits(jig::parallel_lateral(&ball, between, between / 2.0))?, 0.0)?;
    }

    #[test]
    fn speeds_and_tracks(ball in ball(), mph in 10.0..25.0, tilt in 0.0..80.0) {
        near(fits(speed::mph(fits(speed::seconds(mph))?))?, mph)?;
        near(fits(track::tilt(&ball, fits(track::width(&ball, tilt))?))?, tilt)?;
    }

    /// Not near the ends of an axis, where "over" stops meaning anything.
    #[test]
    fn points(ball in ball(), over in -6.0..6.0, up in -6.0..6.0) {
        let point = fits(Point::new(&ball, over, up))?;
        let same = |found: Point| near(found.over(), over).and_then(|()| near(found.up(), up));
        let (first_up, then_over) = point.up_first(&ball);
        same(fits(Point::from_up_first(&ball, first_up, then_over))?)?;
        same(fits(Point::at(&ball, point.direction(&ball)))?)?;
        same(fits(Point::from_grip(&ball, point.to_grip(&ball), point.grip_direction(&ball)))?)?;
        same(point.mirrored().mirrored())?;
    }

    /// A distance and a height, or two distances from lines, name a point and no other. Not where the two circles only touch: half
    /// the digits are lost there.
    #[test]
    fn points_by_two_distances(ball in ball(), over in 0.5..6.0, up in -5.5..5.5, right in any::<bool>()) {
        let point = fits(Point::new(&ball, if right { over } else { -over }, up))?;
        let same = |found: Point| near(found.over(), point.over()).and_then(|()| near(found.up(), up));
        same(fits(Point::from_grip_and_height(&ball, point.to_grip(&ball), up, right))?)?;
        same(fits(Point::from_lines(&ball, point.to_centreline(&ball), up, false))?)?;
    }

    #[test]
    fn layouts(
        ball in ball(), over in 3.0..6.0, up in -1.5..1.5, drilling in 5.0..175.0, pin in 0.5..6.0, val in 5.0..175.0,
    ) {
        let pap = fits(Point::new(&ball, over, up))?;
        let angles = fits(Angles::new(&ball, drilling, pin, val))?;
        let layout = fits(Layout::from_angles(&ball, pap, &angles))?;
        for layout in [layout, layout.mirrored()] {
            let back = fits(layout.angles(&ball))?;
            near(back.drilling(), drilling)?;
            near(back.pin(), pin)?;
            near(back.val(), val)?;
            let told = angles.distances(&ball);
            near(layout.mass_bias_to_pap(&ball).unwrap_or(f64::NAN), told.mass_bias())?;
            near(layout.buffer(&ball).unwrap_or(f64::NAN), told.buffer())?;
        }
        // A quarter of the way around from the pin lies the mass bias.
        near(layout.mass_bias().map_or(f64::NAN, |bias| bias.to(&ball, layout.pin())), ball.quarter())?;
    }

    /// By three distances. The sine is flat at a right angle, the cosine at none and half a turn: not there.
    #[test]
    fn layouts_by_distances(ball in ball(), drilling in 20.0..160.0, pin in 0.5..6.0, val in 5.0..70.0, low in any::<bool>()) {
        let val = if low { 180.0 - val } else { val };
        let angles = fits(Angles::new(&ball, drilling, pin, val))?;
        let back = fits(angles.distances(&ball).angles(&ball))?;
        near(back.drilling(), drilling)?;
        near(back.val(), val)?;
    }
}
