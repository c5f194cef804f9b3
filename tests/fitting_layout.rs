//! Layouts go there and back, mirror, stay on the sphere, and refuse what no ball can have with what it could.

#![allow(clippy::unwrap_used)]

use proptest::prelude::*;
use spanwright::fitting::{
    Misfit, Sphere,
    layout::{
        Angles, Distances, HoleMark, Layout, Point, cg_places, cg_toward, clearances,
        drilling_angle, mass_bias_from_grip, mass_bias_place, mass_bias_reach, mass_bias_through,
        steps, val_angle, wander,
    },
};

fn ball() -> impl Strategy<Value = Sphere> {
    (26.0..28.0).prop_map(|around| Sphere::around(around).unwrap())
}

/// Any point, near the poles and behind the ball too.
fn point() -> impl Strategy<Value = (f64, f64)> {
    (-12.9..12.9, -6.4..6.4)
}

/// Apart in space, which is exact where angles aren't.
fn gap(ball: &Sphere, a: Point, b: Point) -> f64 {
    let (a, b) = (a.direction(ball), b.direction(ball));
    (0..3).map(|i| (a[i] - b[i]).powi(2)).sum::<f64>().sqrt() * ball.radius()
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    (0..3).map(|i| a[i] * b[i]).sum()
}

fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    ]
}

proptest! {
    #[test]
    fn a_point_there_and_back(ball in ball(), (over, up) in point()) {
        let there = Point::new(&ball, over, up).unwrap();

        let back = Point::at(&ball, there.direction(&ball)).unwrap();
        prop_assert!(gap(&ball, there, back) < 1e-9);
        prop_assert!((back.up() - up).abs() < 1e-9 && (back.over() - over).abs() < 1e-9);

        let (up_first, over_then) = there.up_first(&ball);
        let back = Point::from_up_first(&ball, up_first, over_then).unwrap();
        prop_assert!(gap(&ball, there, back) < 1e-9);

        let back = Point::from_grip(&ball, there.to_grip(&ball), there.grip_direction(&ball)).unwrap();
        prop_assert!(gap(&ball, there, back) < 1e-9);
    }

    #[test]
    fn up_first_there_and_back(ball in ball(), up in -12.9..12.9, over in -6.4..6.4) {
        let (up_again, over_again) = Point::from_up_first(&ball, up, over).unwrap().up_first(&ball);
        prop_assert!((up_again - up).abs() < 1e-9 && (over_again - over).abs() < 1e-9);
    }

    /// Up first is the usual order with the ball turned a quarter about the grip centre.
    #[test]
    fn up_first_is_the_usual_order_turned(ball in ball(), up in -12.9..12.9, over in -6.4..6.4) {
        let [x, y, z] = Point::from_up_first(&ball, up, over).unwrap().direction(&ball);
        let turned = Point::new(&ball, up, over).unwrap().direction(&ball);
        prop_assert!((x - turned[1]).abs() + (y - turned[0]).abs() + (z - turned[2]).abs() < 1e-12);
    }

    #[test]
    fn from_the_grip_there_and_back(ball in ball(), distance in 0.01..12.9, direction in -179.9..180.0) {
        let point = Point::from_grip(&ball, distance, direction).unwrap();
        prop_assert!((point.to_grip(&ball) - distance).abs() < 1e-9);
        // An inch on the ball is about 13 degrees; what counts is the place.
        let aside = (point.grip_direction(&ball) - direction).abs();
        prop_assert!(aside * libm::sin(distance / ball.radius()).abs() < 1e-9);
    }

    /// Stated numbers come back; the place does, too, but for rounding where the pin is nearly on the centreline.
    #[test]
    fn grip_and_height_there_and_back(ball in ball(), distance in 0.0..13.0, part in -1.0..1.0, side: bool) {
        let height = part * f64::min(distance, 2.0 * ball.quarter() - distance);
        let point = Point::from_grip_and_height(&ball, distance, height, side).unwrap();
        prop_assert!((point.up() - height).abs() < 1e-9);
        prop_assert!((point.to_grip(&ball) - distance).abs() < 1e-9);
        prop_assert!(point.over() == 0.0 || (point.over() > 0.0) == side);
    }

    #[test]
    fn lines_there_and_back(ball in ball(), aside in -6.4..6.4, part in -0.99..0.99, behind: bool) {
        let height = part * (ball.quarter() - f64::abs(aside));
        let point = Point::from_lines(&ball, aside, height, behind).unwrap();
        prop_assert!((point.up() - height).abs() < 1e-9);
        prop_assert!((point.to_centreline(&ball) - aside).abs() < 1e-9);
        prop_assert_eq!(point.direction(&ball)[2] < 0.0, behind);
    }

    #[test]
    fn a_layout_as_points_there_and_back(
        ball in ball(), over in 2.0..8.0, up in -3.0..3.0,
        drilling in 1.0..179.0, pin in 0.2..6.4, val in 1.0..179.0, turned: bool,
    ) {
        let pap = Point::new(&ball, over, up).unwrap();
        let stated = Angles::new(&ball, drilling, pin, val).unwrap();
        let layout = Layout::from_angles(&ball, pap, &stated).unwrap();
        let layout = if turned { layout.mirrored() } else { layout };

        // Distances of an inch at an arm of so many inches are what counts at the bench.
        let angles = layout.angles(&ball).unwrap();
        prop_assert!((angles.drilling() - drilling).abs() < 1e-9);
        prop_assert!((angles.pin() - pin).abs() < 1e-9);
        prop_assert!((angles.val() - val).abs() < 1e-9);

        let bias = layout.mass_bias().unwrap();
        prop_assert!((bias.to(&ball, layout.pin()) - ball.quarter()).abs() < 1e-9);
        prop_assert!((layout.mass_bias_to_pap(&ball).unwrap() - stated.mass_bias(&ball)).abs() < 1e-9);
        prop_assert!((layout.buffer(&ball).unwrap() - stated.buffer(&ball)).abs() < 1e-9);
    }

    #[test]
    fn distances_there_and_back(
        ball in ball(), over in 2.0..8.0, up in -3.0..3.0, pin in 0.5..6.4,
        reach in 0.05..0.95, part in 0.05..0.95, thumb_side: bool,
    ) {
        let (nearest, farthest) = mass_bias_reach(&ball, pin).unwrap();
        let (bias, buffer) = (nearest + reach * (farthest - nearest), part * pin);
        let stated = Distances::new(&ball, pin, bias, buffer, thumb_side).unwrap();
        let pap = Point::new(&ball, over, up).unwrap();
        let read = Layout::from_distances(&ball, pap, &stated).unwrap().distances(&ball).unwrap();
        prop_assert!((read.pin() - pin).abs() < 1e-9);
        prop_assert!((read.mass_bias() - bias).abs() < 1e-9);
        prop_assert!((read.buffer() - buffer).abs() < 1e-9);
        prop_assert_eq!(read.thumb_side(), thumb_side);
        let angles = stated.angles(&ball).unwrap();
        prop_assert!((angles.distances(&ball).mass_bias() - bias).abs() < 1e-9);
    }

    /// For the usual side the mass bias is turned clockwise from the way to the PAP, as seen from outside: for a pin above
    /// the midline and a PAP to the right that is toward the thumb.
    #[test]
    fn the_mass_bias_turns_toward_the_thumb(
        ball in ball(), (over, up) in point(), (pap_over, pap_up) in point(), drilling in 1.0..179.0,
    ) {
        let (pin, pap) = (Point::new(&ball, over, up).unwrap(), Point::new(&ball, pap_over, pap_up).unwrap());
        prop_assume!((0.1..13.0).contains(&pin.to(&ball, pap)));
        let bias = mass_bias_place(&ball, pin, pap, drilling).unwrap().direction(&ball);
        let (pin, pap) = (pin.direction(&ball), pap.direction(&ball));
        prop_assert!(dot(pin, bias).abs() < 1e-12);
        prop_assert!(dot(pin, cross(pap, bias)) < 0.0);
    }

    #[test]
    fn mass_bias_by_its_distance_from_the_grip(
        ball in ball(), (over, up) in point(), part in 0.05..0.95, right: bool,
    ) {
        let pin = Point::new(&ball, over, up).unwrap();
        let (out, quarter) = (pin.to_grip(&ball), ball.quarter());
        prop_assume!(out > 0.1 && out < 2.0 * quarter - 0.1);
        let (near, far) = ((quarter - out).abs(), (quarter + out).min(3.0 * quarter - out));
        let distance = near + part * (far - near);
        let bias = mass_bias_from_grip(&ball, pin, distance, right).unwrap();
        prop_assert!((bias.to_grip(&ball) - distance).abs() < 1e-9);
        prop_assert!((bias.to(&ball, pin) - quarter).abs() < 1e-9);
        prop_assert!(mass_bias_from_grip(&ball, pin, far + 0.01, right).is_err());
        prop_assert!(mass_bias_from_grip(&ball, pin, near - 0.01, right).is_err());
    }

    #[test]
    fn the_heavy_spot_lies_toward_the_mass_bias(
        ball in ball(), drilling in 1.0..179.0, out in 0.1..6.0,
    ) {
        let pap = Point::new(&ball, 5.0, 0.5).unwrap();
        let angles = Angles::new(&ball, drilling, 4.5, 40.0).unwrap();
        let layout = Layout::from_angles(&ball, pap, &angles).unwrap().with_cg(&ball, out, 0.0).unwrap();
        let (pin, cg, bias) = (layout.pin(), layout.cg().unwrap(), layout.mass_bias().unwrap());
        prop_assert!((cg.to(&ball, pin) - out).abs() < 1e-9);
        prop_assert!((cg.to(&ball, bias) - (ball.quarter() - out)).abs() < 1e-9);
        prop_assert!(gap(&ball, mass_bias_through(&ball, pin, cg).unwrap(), bias) < 1e-9);
        prop_assert!(gap(&ball, cg_toward(&ball, pin, bias, out).unwrap(), cg) < 1e-9);
    }

    #[test]
    fn a_symmetric_ball_turns_about_its_pin(
        ball in ball(), (over, up) in point(), out in 0.0..6.4, step in 0.5..180.0,
    ) {
        let pin = Point::new(&ball, over, up).unwrap();
        let places = cg_places(&ball, pin, out, step).unwrap();
        for place in &places {
            prop_assert!((place.place().to(&ball, pin) - out).abs() < 1e-9);
            let again = Layout::from_pin(pin).with_cg(&ball, out, place.direction()).unwrap();
            prop_assert!(gap(&ball, again.cg().unwrap(), place.place()) < 1e-9);
        }
        // Even all round: they balance about the pin.
        let pin = pin.direction(&ball);
        let sum = places.iter().map(|place| place.place().direction(&ball)).fold([0.0; 3], |sum, at| {
            [sum[0] + at[0], sum[1] + at[1], sum[2] + at[2]]
        });
        prop_assert!(cross(sum, pin).iter().all(|part| part.abs() < 1e-9));
    }

    /// The layout mirrors: every place as far the other way, every stated number as before.
    #[test]
    fn the_mirror_image(ball in ball(), drilling in 1.0..179.0, pin in 0.5..6.0, val in 1.0..179.0, out in 0.2..4.0) {
        let pap = Point::new(&ball, 5.0, 0.5).unwrap();
        let angles = Angles::new(&ball, drilling, pin, val).unwrap();
        let layout = Layout::from_angles(&ball, pap, &angles).unwrap().with_cg(&ball, out, 0.0).unwrap();
        let image = layout.mirrored();
        for (one, other) in [
            (layout.pin(), image.pin()),
            (layout.pap().unwrap(), image.pap().unwrap()),
            (layout.cg().unwrap(), image.cg().unwrap()),
            (layout.mass_bias().unwrap(), image.mass_bias().unwrap()),
        ] {
            prop_assert_eq!((one.over(), one.up()), (-other.over(), other.up()));
        }
        prop_assert_eq!(image.angles(&ball), layout.angles(&ball));
        prop_assert_eq!(image.mirrored(), layout);
        // Said for the other hand it reads the same.
        prop_assert_eq!(image.stated(&ball, true), layout.stated(&ball, false));
        let words = |layout: &Layout, left| -> Vec<String> {
            steps(&ball, layout, &[], left).iter().map(|mark| mark.text().to_owned()).collect()
        };
        prop_assert_eq!(words(&image, true), words(&layout, false));
    }

    /// Whatever the layout, there are words and drawable points, and no panic.
    #[test]
    fn any_layout_can_be_drawn(ball in ball(), (over, up) in point(), (pap_over, pap_up) in point(), hole in point(), left: bool) {
        let at = |(over, up)| Point::new(&ball, over, up).unwrap();
        let hole = HoleMark::new("ring hole", at(hole), 0.5).unwrap();
        let pin = at((over, up));
        for layout in [Layout::from_pin(pin), Layout::from_pin(pin).with_pap(at((pap_over, pap_up)))] {
            for mark in steps(&ball, &layout, std::slice::from_ref(&hole), left) {
                prop_assert!(mark.text().ends_with('.') && !mark.text().contains('-') || mark.text().contains("counter-clockwise"));
                let finite = |point: &Point| point.over().is_finite() && point.up().is_finite();
                prop_assert!(mark.line().iter().all(finite));
            }
        }
    }

    /// Until the axis is so far away, going round the pin, no ring touches the hole; there, one does.
    #[test]
    fn a_ring_reaches_the_hole_where_it_is_said_to(
        (pin_over, pin_up) in (-2.0..3.0, 1.0..5.0), tilt in 0.0..40.0, (over, up) in (-1.5..1.5, -4.0..4.0), radius in 0.2..0.8,
    ) {
        let ball = Sphere::default();
        let at = |over, up| Point::new(&ball, over, up).unwrap();
        let (pap, pin, mouth) = (at(5.0, 0.5), at(pin_over, pin_up), at(over, up));
        let hole = HoleMark::new("thumb hole", mouth, radius).unwrap();
        let found = &clearances(&ball, pap, Some(pin), tilt, std::slice::from_ref(&hole)).unwrap()[0];
        let ring = ball.radius() * (90.0 + tilt).to_radians();
        let gap_for = |axis: [f64; 3]| {
            let axis = Point::at(&ball, axis).unwrap();
            (axis.to(&ball, mouth) - ring).abs() - hole.edge(&ball)
        };
        prop_assert!((gap_for(pap.direction(&ball)) - found.gap()).abs() < 1e-9);
        // Turn the axis about the pin, both ways, in small steps.
        let (p, a) = (pin.direction(&ball), pap.direction(&ball));
        let (along, side) = (dot(p, a), cross(p, a));
        let turned = |t: f64| std::array::from_fn(|i| {
            a[i] * t.cos() + side[i] * t.sin() + p[i] * along * (1.0 - t.cos())
        });
        let wandered = |axis: [f64; 3]| Point::at(&ball, axis).unwrap().to(&ball, pap);
        let mut met = f64::INFINITY;
        for step in 0..=1800 {
            let t = f64::from(step) * std::f64::consts::PI / 1800.0;
            for axis in [turned(t), turned(-t)] {
                if gap_for(axis) <= 0.0 {
                    met = met.min(wandered(axis));
                }
            }
        }
        match found.round_the_pin() {
            Some(reached) => prop_assert!((met - reached).abs() < 0.02 || met.is_infinite() && reached > 0.0, "{met} {reached}"),
            None => prop_assert!(met.is_infinite()),
        }
        // The axis can't reach it in less than the room, whichever way.
        prop_assert!(found.round_the_pin().is_none_or(|reached| reached >= found.room() - 1e-9));
    }
}

/// The refused, with the nearest that would be possible.
#[test]
fn what_cannot_be_says_what_could() {
    let ball = Sphere::default();
    let limit = |misfit: Misfit| match misfit {
        Misfit::TooLarge { highest, .. } => highest,
        Misfit::TooSmall { lowest, .. } => lowest,
        _ => f64::NAN,
    };
    let near = |found: Misfit, wanted: f64| {
        assert!((limit(found) - wanted).abs() < 1e-6, "{found}");
    };
    near(val_angle(&ball, 4.0, 4.5).unwrap_err(), 4.0);
    near(drilling_angle(&ball, 4.0, 2.5).unwrap_err(), 2.75);
    near(drilling_angle(&ball, 4.0, 11.0).unwrap_err(), 10.75);
    near(
        Distances::new(&ball, 4.0, 4.0, 4.5, false).unwrap_err(),
        4.0,
    );
    // A pin 3 in from the grip centre is at most 3 in up; one 10 in away at most 3 1/2.
    near(
        Point::from_grip_and_height(&ball, 3.0, 3.5, true).unwrap_err(),
        3.0,
    );
    near(
        Point::from_grip_and_height(&ball, 10.0, -4.0, true).unwrap_err(),
        -3.5,
    );
    near(Point::from_lines(&ball, 5.0, 2.0, false).unwrap_err(), 1.75);
    let grip = Point::grip_centre();
    near(
        mass_bias_from_grip(&ball, Point::new(&ball, 0.0, 4.0).unwrap(), 2.0, true).unwrap_err(),
        2.75,
    );
    assert!(mass_bias_place(&ball, grip, grip, 50.0).is_err());
    assert!(mass_bias_place(&ball, grip, Point::new(&ball, 13.5, 0.0).unwrap(), 50.0).is_err());
    assert!(cg_places(&ball, grip, 7.0, 10.0).is_err());
    assert!(Layout::from_pin(grip).angles(&ball).is_err());
}

/// No number at all is refused everywhere.
#[test]
fn no_number_is_no_layout() {
    let ball = Sphere::default();
    let grip = Point::grip_centre();
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e300, -1e300] {
        assert!(Point::new(&ball, bad, 0.0).is_err());
        assert!(Point::new(&ball, 0.0, bad).is_err());
        assert!(Point::from_up_first(&ball, bad, 0.0).is_err());
        assert!(Point::from_grip(&ball, bad, 0.0).is_err());
        assert!(Point::from_grip(&ball, 1.0, bad).is_err());
        assert!(Point::from_grip_and_height(&ball, bad, 0.0, true).is_err());
        assert!(Point::from_lines(&ball, 0.0, bad, true).is_err());
        assert!(Layout::from_pap(&ball, grip, bad, 30.0).is_err());
        assert!(Layout::from_pin(grip).with_cg(&ball, bad, 0.0).is_err());
        assert!(cg_places(&ball, grip, 1.0, bad).is_err() || bad == 1e300);
        assert!(HoleMark::new("hole", grip, bad).is_err());
        assert!(clearances(&ball, grip, None, bad, &[]).is_err());
        assert!(wander(&ball, bad, 2.5, 0.05, 12.0).is_err());
        assert!(wander(&ball, 3.0, 2.5, bad, 12.0).is_err());
    }
    assert!(Point::at(&ball, [f64::NAN, 0.0, 1.0]).is_err());
    assert!(Point::at(&ball, [0.0; 3]).is_err());
    // Any length will do.
    let far = Point::at(&ball, [1e300, 0.0, 1e300]).unwrap();
    assert!((far.over() - 3.375).abs() < 1e-9);
    let near = Point::at(&ball, [1e-300, 0.0, 1e-300]).unwrap();
    assert!((near.over() - 3.375).abs() < 1e-9);
}
