//! What can't be is told so, nothing hangs, and whatever can be ends.

use proptest::prelude::*;
use proptest::test_runner::FileFailurePersistence;
use spanwright::motion::path::{Ending, Settings, Shot, roll, roll_with};
use spanwright::motion::{
    Angle, Attitude, Ball, Friction, Impossible, Lane, Length, Mass, Release, Speed, Spin,
};

use super::shot::{alike, attitude, ball, every, machine, release, shot, two_zones};

fn told<T: std::fmt::Debug>(what: &str, made: Result<T, Impossible>) {
    let fault = made.unwrap_err();
    assert!(fault.to_string().contains(what), "{fault} lacks {what}");
}

fn thrown(speed: f64, rpm: f64, rotation: f64, tilt: f64) -> Result<Release, Impossible> {
    Release::new(
        Speed::mph(speed),
        Spin::rpm(rpm),
        Angle::degrees(rotation),
        Angle::degrees(tilt),
    )
}

#[test]
fn numbers_that_nothing_has() {
    let feet = Length::feet;
    told("ball speed can't be 0", thrown(0.0, 200.0, 45.0, 10.0));
    told("ball speed can't be -5", thrown(-5.0, 200.0, 45.0, 10.0));
    // A drill.
    told("rev rate can't be 30", thrown(16.0, 30_000.0, 45.0, 10.0));
    told("rev rate", thrown(16.0, -1.0, 45.0, 10.0));
    told("axis rotation", thrown(16.0, 200.0, 91.0, 10.0));
    told("axis tilt can't be 95", thrown(16.0, 200.0, 45.0, 95.0));
    told("friction on the dry", Friction::new(0.04, 0.0));
    told("friction in the oil", Friction::new(0.0, 0.2));
    told("friction on the dry can't be 3", Friction::new(0.04, 3.0));
    told("friction in the oil", Friction::new(0.3, 0.2));
    told("the lane is 60.0 ft", Lane::oiled(feet(61.0), feet(0.0)));
    told("length of the oil", Lane::oiled(feet(-1.0), feet(0.0)));
    told("ramp", Lane::oiled(feet(10.0), feet(11.0)));
    let (lane, _) = two_zones();
    told("crosswise ratio", lane.crosswise(0.5, 8.0, 2.0));
    told("inside board", lane.crosswise(2.0, 25.0, 2.0));
    told("thins", lane.crosswise(2.0, 8.0, 9.0));
    let huge = ball([2.5; 3]).with_offset([Length::inches(1.0); 3]);
    told("offset of the mass centre", huge);
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        told("not a number", thrown(bad, 200.0, 45.0, 10.0));
        told("not a number", thrown(16.0, bad, 45.0, 10.0));
        told("not a number", thrown(16.0, 200.0, bad, 10.0));
        told("not a number", thrown(16.0, 200.0, 45.0, bad));
        told(
            "not a number",
            machine().sent(feet(bad), Angle::degrees(0.0)),
        );
        told(
            "not a number",
            machine().sent(feet(0.0), Angle::degrees(bad)),
        );
        told("not a number", Friction::new(bad, 0.2));
        told("not a number", Friction::new(0.04, bad));
        assert!(Lane::oiled(feet(bad), feet(0.0)).is_err());
        told("not a number", Lane::oiled(feet(40.0), feet(bad)));
        told("not a number", lane.crosswise(bad, 8.0, 2.0));
        told("not a number", lane.crosswise(2.0, bad, 2.0));
        told("not a number", lane.crosswise(2.0, 8.0, bad));
        for at in 0..3 {
            let mut rg = [2.5; 3];
            rg[at] = bad;
            let rg = rg.map(Length::inches);
            assert!(Ball::new(Mass::pounds(15.0), Length::inches(4.3), rg).is_err());
            let mut offset = [0.0; 3];
            offset[at] = bad;
            told(
                "not a number",
                ball([2.5; 3]).with_offset(offset.map(Length::metres)),
            );
            let mut angles = [10.0; 3];
            angles[at] = bad;
            let [pin, phase, turn] = angles.map(Angle::degrees);
            told("not a number", Attitude::new(pin, phase, turn));
        }
        let rg = [2.5; 3].map(Length::inches);
        told(
            "not a number",
            Ball::new(Mass::pounds(bad), Length::inches(4.3), rg),
        );
        told(
            "not a number",
            Ball::new(Mass::pounds(15.0), Length::inches(bad), rg),
        );
        let plain = shot(ball([2.5; 3]), Attitude::default(), machine(), two_zones());
        told("not a number", roll(&plain, &[], bad));
        told("not a number", roll(&plain, &[feet(bad)], 1e-6));
    }
    let plain = shot(ball([2.5; 3]), Attitude::default(), machine(), two_zones());
    told("tolerance", roll(&plain, &[], 0.0));
    told("tolerance", roll(&plain, &[], 0.1));
    told("place along the lane", roll(&plain, &[feet(61.0)], 1e-6));
    told("place along the lane", roll(&plain, &[feet(-1.0)], 1e-6));
}

#[test]
fn a_ball_that_leaves_the_lane_is_in_the_gutter() {
    let start = Length::metres(-0.45);
    let wide = machine().sent(start, Angle::degrees(-3.0)).unwrap();
    let out = shot(ball([2.5; 3]), Attitude::default(), wide, two_zones());
    let path = roll(&out, &every(5.0), 1e-9).unwrap();
    let Ending::Gutter(place) = path.ending() else {
        panic!("{:?}", path.ending())
    };
    // 77 mm at 3 degrees, bent a little by the hook.
    assert!((1.4..1.7).contains(&place.as_metres()), "{place:?}");
    assert!((path.last().across().as_inches() + 20.75).abs() < 1e-9);
    assert_eq!(path.stations().len(), 1 + (place.as_feet() / 5.0) as usize);
    assert_eq!(path.oil_ends(), None);
    // And one that never was on it.
    let beside = machine()
        .sent(Length::metres(0.9), Angle::degrees(0.0))
        .unwrap();
    let path = roll(
        &Shot {
            release: beside,
            ..out
        },
        &[],
        1e-9,
    )
    .unwrap();
    assert_eq!(path.ending(), Ending::Gutter(Length::metres(0.0)));
}

#[test]
fn a_heavy_side_that_turns_fast_hops() {
    let mut heavy = shot(
        ball([2.5; 3]),
        attitude(90.0, 0.0, 0.0),
        release(8.0, 900.0, 45.0, 0.0),
        two_zones(),
    );
    heavy.ball = heavy
        .ball
        .with_offset([4.0, 0.0, 0.0].map(|mm| Length::metres(mm / 1000.0)))
        .unwrap();
    told("hop at 0.", roll(&heavy, &[], 1e-8));
}

#[test]
fn steps_are_bounded() {
    let plain = shot(ball([2.5; 3]), Attitude::default(), machine(), two_zones());
    let settings = Settings::new(1e-9).unwrap().in_steps(20);
    told(
        "within the steps allowed",
        roll_with(&plain, &[], &settings),
    );
    let settings = Settings::new(1e-9).unwrap().in_steps(0);
    told(
        "within the steps allowed",
        roll_with(&plain, &[], &settings),
    );
}

/// A release that rolls already, on a lane that holds it: nothing is lost and nothing turns.
#[test]
fn a_ball_that_rolls_from_the_start() {
    let rpm = 7.0 / 0.109093 * 30.0 / std::f64::consts::PI;
    let rolls = shot(
        ball([2.5; 3]),
        Attitude::default(),
        release(7.0, rpm, 0.0, 0.0),
        alike(0.1),
    );
    let path = roll(&rolls, &every(20.0), 1e-9).unwrap();
    assert!(path.slip_ends().unwrap().down().as_metres() < 1e-6);
    assert!(path.last().energy_lost() < 1e-9);
    assert_eq!(path.stations().len(), 4);
}

prop_compose! {
    fn any_shot()(
        (mass, radius, low, more, most) in (2.01..19.9, 3.01..5.99, 1.01..3.0f64, 0.0..0.3f64, 0.0..0.3f64),
        offset in prop::array::uniform3(-1.0..1.0f64), offset_size in prop_oneof![Just(0.0), 0.0..2.8f64],
        (pin, phase, turn) in (0.0..179.0, -359.0..359.0, -359.0..359.0),
        (speed, rpm, rotation, tilt) in (3.01..39.9, prop_oneof![Just(0.0), 0.0..999.0], 0.0..89.9, 0.0..89.9),
        (start, launch) in (-0.5..0.5, -10.0..10.0),
        (oil, ramp, ratio, inside, taper) in (0.0..59.9, 0.0..0.999, 1.0..20.0, 1.0..19.0, 0.0..0.999),
        (dry, share) in (0.0011..1.0, 0.0..1.0f64),
        tolerance in prop_oneof![Just(1e-3), Just(1e-5), Just(1e-8)],
    ) -> (Shot, f64) {
        let rg = [low, low + more, low + more + most].map(Length::inches);
        let dry: f64 = dry;
        let friction = Friction::new((dry * share).max(0.001), dry).unwrap();
        let lane = Lane::oiled(Length::feet(oil), Length::feet(oil * ramp))
            .and_then(|lane| lane.crosswise(ratio, inside, taper * inside))
            .unwrap();
        let ball = Ball::new(Mass::pounds(mass), Length::inches(radius), rg)
            .and_then(|ball| ball.with_offset(offset.map(|part| Length::metres(part * offset_size / 1000.0))))
            .unwrap();
        let release = thrown(speed, rpm, rotation, tilt)
            .and_then(|release| release.sent(Length::metres(start), Angle::degrees(launch)))
            .unwrap();
        (shot(ball, attitude(pin, phase, turn), release, (lane, friction)), tolerance)
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 500, failure_persistence: Some(Box::new(FileFailurePersistence::WithSource("proptest-regressions"))), ..ProptestConfig::default() })]
    #[test]
    fn whatever_can_be_ends((shot, tolerance) in any_shot()) {
        match roll(&shot, &every(5.0), tolerance) {
            Ok(path) => {
                prop_assert!(path.steps() <= 400_000);
                for station in path.stations().iter().chain([path.last()]) {
                    let [vx, vy] = station.velocity();
                    let [wx, wy, wz] = station.spin();
                    for value in [
                        station.seconds(), station.down().as_metres(), station.across().as_metres(), vx, vy, wx, wy, wz,
                        station.slip(), station.energy_lost(),
                    ] {
                        prop_assert!(value.is_finite());
                    }
                }
                for value in [path.axis_path(), path.axis_shift(), path.flare()] {
                    prop_assert!(value.as_metres().is_finite());
                }
                let downs: Vec<f64> = path.stations().iter().map(|s| s.down().as_feet()).collect();
                prop_assert!(downs.is_sorted());
                match path.ending() {
                    Ending::Pins => prop_assert_eq!(downs.len(), 13),
                    Ending::Gutter(place) => prop_assert!((0.0..=60.0).contains(&place.as_feet())),
                }
                // The same shot again is the same to the last bit.
                prop_assert_eq!(roll(&shot, &every(5.0), tolerance).unwrap(), path);
            }
            Err(Impossible::Hops { .. }) => {}
            Err(fault) => prop_assert!(false, "{fault}"),
        }
    }
}
