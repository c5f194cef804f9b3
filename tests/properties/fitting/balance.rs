//! Balance and spin: nothing changes nothing, what goes out and comes back was never gone, and a turned ball reads turned.

use proptest::prelude::*;
use spanwright::fitting::Sphere;
use spanwright::fitting::balance::{self, Ball, Change, Model, Scale, Statics};
use spanwright::fitting::grip::place;
use spanwright::fitting::inertia::{self, Core};
use spanwright::fitting::layout::Point;
use spanwright::fitting::solid::{self, Solid};

use super::{all_near, ball, fits, near, order};
use crate::cases;

fn vector(statics: Statics) -> [f64; 3] {
    [statics.side, statics.finger, statics.top]
}

fn dot(one: [f64; 3], other: [f64; 3]) -> f64 {
    one.iter().zip(other).map(|(one, other)| one * other).sum()
}

/// Turned about an axis of length one by an angle: Rodrigues' formula.
fn turned(vector: [f64; 3], axis: [f64; 3], angle: f64) -> [f64; 3] {
    let [x, y, z] = axis;
    let [a, b, c] = vector;
    let cross = [y * c - z * b, z * a - x * c, x * b - y * a];
    let along = dot(axis, vector) * (1.0 - angle.cos());
    std::array::from_fn(|k| vector[k] * angle.cos() + cross[k] * angle.sin() + axis[k] * along)
}

fn direction() -> impl Strategy<Value = [f64; 3]> {
    let parts = [-1.0..1.0, -1.0..1.0, -1.0..1.0];
    parts.prop_filter_map("a direction", |vector: [f64; 3]| {
        let length = dot(vector, vector).sqrt();
        (length > 0.1).then(|| vector.map(|part| part / length))
    })
}

fn drilled(
    ball: &Sphere,
    order: &spanwright::fitting::grip::GripOrder,
) -> Result<Vec<Solid>, TestCaseError> {
    let placed = place(ball, order).map_err(|fault| TestCaseError::fail(fault.to_string()))?;
    placed
        .holes()
        .map(|(_, hole)| fits(solid::drilled(ball, &hole)))
        .collect()
}

proptest! {
    #![proptest_config(cases(96))]

    #[test]
    fn removing_nothing_changes_nothing(
        sphere in ball(), order in order(), spot in direction(), top in 0.0..6.0, pin in direction(), bias in direction(),
    ) {
        let scale = fits(Scale::new(4.0, Model::Moment))?;
        let ball = fits(Ball::undrilled(sphere, 240.0, top, fits(Point::at(&sphere, spot))?, &scale))?;
        let along = dot(pin, bias);
        prop_assume!(along.abs() < 0.9);
        let bias: [f64; 3] = std::array::from_fn(|k| bias[k] - along * pin[k]);
        let core = fits(Core::new(2.5, 0.05, 0.015, pin, Some(bias)))?;
        let mut there_and_back = Vec::new();
        for solid in drilled(&sphere, &order)? {
            there_and_back.push(fits(Change::out(solid, 1.2))?);
            there_and_back.push(fits(Change::back(solid, 1.2))?);
        }
        let nothing = fits(Change::out(Solid::default(), 1.2))?;
        for changes in [vec![], vec![nothing], there_and_back] {
            let finished = fits(balance::finish(&ball, &changes, &scale))?;
            near(finished.ounces(), 240.0)?;
            near(finished.out_ounces(), finished.back_ounces())?;
            all_near(finished.centre(), ball.centre())?;
            all_near(vector(finished.statics()), ball.moment().map(|part| part / scale.arm()))?;
            let turning = fits(inertia::after(&core, &ball, &changes))?;
            near(turning.rg_low(), 2.5)?;
            near(turning.differential(), 0.05)?;
            near(turning.intermediate(), 0.015)?;
            prop_assert!(turning.moved().is_some_and(|moved| moved < 1e-6), "{:?}", turning.moved());
        }
    }

    /// Whatever was drilled: the holes add the same to the readings wherever the heavy spot lies.
    #[test]
    fn a_turned_heavy_spot_turns_the_readings(
        sphere in ball(), order in order(), spot in direction(), axis in direction(), angle in -3.2..3.2, top in 0.0..6.0,
    ) {
        let scale = fits(Scale::new(4.0, Model::Moment))?;
        let out: Result<Vec<Change>, _> = drilled(&sphere, &order)?.into_iter().map(|solid| Change::out(solid, 1.2)).collect();
        let out = fits(out)?;
        let read = |spot: [f64; 3], top: f64| {
            let ball = fits(Ball::undrilled(sphere, 240.0, top, fits(Point::at(&sphere, spot))?, &scale))?;
            Ok::<_, TestCaseError>(vector(fits(balance::finish(&ball, &out, &scale))?.statics()))
        };
        let holes = read(spot, 0.0)?;
        let own = |found: [f64; 3]| -> [f64; 3] { std::array::from_fn(|k| found[k] - holes[k]) };
        let (here, there) = (own(read(spot, top)?), own(read(turned(spot, axis, angle), top)?));
        all_near(turned(here, axis, angle), there)?;
        near(dot(here, here).sqrt(), top)?;
    }

    /// Moving the grip's centre along the midline: what top weight loses in cosine, side weight gains in sine.
    #[test]
    fn along_the_midline_it_is_sine_and_cosine(sphere in ball(), top in 0.0..6.0, over in -6.0..6.0) {
        let scale = fits(Scale::new(4.0, Model::Moment))?;
        let ball = fits(Ball::undrilled(sphere, 240.0, top, fits(Point::new(&sphere, over, 0.0))?, &scale))?;
        let statics = fits(balance::finish(&ball, &[], &scale))?.statics();
        let angle = over / sphere.radius();
        all_near(vector(statics), [top * angle.sin(), 0.0, top * angle.cos()])?;
        let moved = fits(balance::moved_grip(&sphere, top, over.abs()))?;
        near(moved.top, statics.top)?;
        near(moved.side, statics.side.abs())?;
    }

    #[test]
    fn the_scale_s_arm_divides_and_no_more(sphere in ball(), order in order(), arm in 1.0..10.0) {
        let near_arm = fits(Scale::new(arm, Model::Moment))?;
        let far_arm = fits(Scale::new(2.0 * arm, Model::Moment))?;
        let even = fits(Ball::weighed(sphere, 240.0, Statics::default(), &near_arm))?;
        let out: Result<Vec<Change>, _> = drilled(&sphere, &order)?.into_iter().map(|solid| Change::out(solid, 1.2)).collect();
        let out = fits(out)?;
        let (one, two) = (fits(balance::finish(&even, &out, &near_arm))?, fits(balance::finish(&even, &out, &far_arm))?);
        all_near(vector(one.statics()), vector(two.statics()).map(|part| 2.0 * part))?;
        all_near(one.centre(), two.centre())?;
    }
}
