//! The line whose farthest-out place is where the oil ends, and the course at any place.

use super::{Shot, long, near};
use proptest::prelude::*;
use spanwright::motion::Length;
use spanwright::motion::closed::{Course, MOST_LAUNCH};

fn shot() -> impl Strategy<Value = Shot> {
    let hand = (3.0..30.0, 0.0..800.0, 0.0..90.0, 0.0..90.0);
    let lane = (0.005..0.1, 1.0..6.0, 0.0..60.0, 2.3..2.9);
    (hand, lane).prop_map(
        |((mph, rpm, rotation, tilt), (oil, more, length, rg))| Shot {
            mph,
            rpm,
            rotation,
            tilt,
            launch: 0.0,
            rg,
            oil,
            dry: oil * more,
            length,
        },
    )
}

proptest! {
    /// There the sideways velocity is nothing, at the same speed of release and with the same spin; unless that wants more than the most
    /// launch, where it is still going out.
    #[test]
    fn farthest_out_where_the_oil_ends(shot in shot()) {
        let thrown = shot.thrown();
        let (lane, friction) = (shot.lane(), shot.friction());
        let line = thrown.farthest_where_oil_ends(shot.beta(), shot.radius(), &lane, &friction);
        let course = Course::of(&line, shot.beta(), shot.radius(), &lane, &friction);
        let start = course.at(Length::feet(0.0));
        near(start.speed().as_mph(), shot.mph, 1e-9);
        prop_assert_eq!(start.spin(), thrown_spin(&shot));
        let launch = line.launch().as_degrees();
        prop_assert!((-MOST_LAUNCH - 1e-9..=0.0).contains(&launch));
        let sideways = course.at_oil_end().velocity()[1];
        match launch < -MOST_LAUNCH + 1e-9 {
            true => prop_assert!(sideways >= -1e-9),
            false => near(sideways, 0.0, 1e-11),
        }
        let entry = course.at(lane.length());
        near(shot.roll().entry().as_degrees(), entry.direction().as_degrees(), 1e-9);
    }

    /// The course is whole: places come in order, velocity and place go on without a jump, slip only falls.
    #[test]
    fn no_jumps(shot in shot(), launch in -5.0..5.0) {
        let course = Shot { launch, ..shot }.course();
        let mut last = course.at(Length::feet(0.0));
        for step in 1..=240u32 {
            let place = course.at(Length::feet(f64::from(step) / 4.0));
            let seconds = place.seconds() - last.seconds();
            prop_assert!(seconds > 0.0 && place.slip_left() <= last.slip_left());
            let [x, y] = [0, 1].map(|axis| place.velocity()[axis] - last.velocity()[axis]);
            prop_assert!(long([x, y]) <= shot.dry * super::G * seconds + 1e-9);
            let across = place.across().as_metres() - last.across().as_metres();
            let mean = (place.velocity()[1] + last.velocity()[1]) / 2.0;
            // As a trapezium, which misses the change of acceleration at an edge by no more than this.
            prop_assert!((across - mean * seconds).abs() <= shot.dry * super::G * seconds * seconds);
            last = place;
        }
    }
}

fn thrown_spin(shot: &Shot) -> [f64; 3] {
    shot.course().at(Length::feet(0.0)).spin()
}

/// No break where it is sent to the left, or straight; none past the pins.
#[test]
fn where_it_does_not_turn_back() {
    for launch in [0.0, 2.0] {
        let shot = Shot {
            launch,
            ..Shot::machine()
        };
        assert_eq!(shot.course().breakpoint(), None);
    }
    let wide = Shot {
        launch: -9.0,
        ..Shot::machine()
    };
    assert_eq!(wide.course().breakpoint(), None);
}
