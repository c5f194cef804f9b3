//! T1 to T12, each on several shots: ordinary, slow and high in revs, overspun, full side roll, no revs at all.

use super::{FOOT, G, INCH, RADIUS, Shot, long, near};
use spanwright::motion::closed::{Course, Thrown, roll};
use spanwright::motion::{Angle, Friction, Lane, Length, Release, Speed, Spin};

fn shots() -> Vec<Shot> {
    let machine = Shot::machine();
    vec![
        machine,
        Shot {
            mph: 13.0,
            rpm: 450.0,
            rotation: 70.0,
            launch: -2.0,
            ..machine
        },
        Shot {
            mph: 14.0,
            rpm: 700.0,
            rotation: 5.0,
            tilt: 0.0,
            ..machine
        },
        Shot {
            rotation: 90.0,
            tilt: 0.0,
            ..machine
        },
        Shot {
            rpm: 0.0,
            launch: 1.0,
            ..machine
        },
        Shot {
            mph: 20.0,
            rg: 2.70,
            oil: 0.02,
            dry: 0.05,
            ..machine
        },
    ]
}

/// A uniform ball without spin at 8 m/s, friction 0.12 all along.
fn uniform() -> (Thrown, f64, Length, Lane, Friction) {
    let none = Angle::degrees(0.0);
    let release = Release::new(Speed::metres_a_second(8.0), Spin::rpm(0.0), none, none).unwrap();
    (
        Thrown::of(&release),
        0.4,
        Length::inches(RADIUS),
        Lane::oiled(Length::feet(40.0), Length::feet(0.0)).unwrap(),
        Friction::new(0.12, 0.12).unwrap(),
    )
}

/// Derived: du/dt = -mu g (1 + 1/beta) e, so the slip keeps its direction and falls evenly with time.
#[test]
fn t1_slip_keeps_its_direction_and_falls_evenly() {
    for shot in shots() {
        let (_, slip) = shot.by_hand();
        let e = slip.map(|part| part / long(slip));
        let course = shot.course();
        for feet in [5.0, 20.0, 39.9] {
            let place = course.at(Length::feet(feet));
            if place.slip_left() == 0.0 {
                continue;
            }
            let [x, y] = place.velocity();
            let [wx, wy, _] = place.spin();
            let radius = RADIUS * INCH;
            let [a, b] = [x - radius * wy, y + radius * wx];
            let left = long(slip) - shot.oil * G * (1.0 + 1.0 / shot.beta()) * place.seconds();
            near(a, e[0] * left, 1e-12);
            near(b, e[1] * left, 1e-12);
            near(place.slip_left(), left / long(slip), 1e-12);
        }
    }
}

/// Derived: slip ends when the integral of mu g dt is beta |u0| / (1 + beta); with one mu at t = |u0| / (mu g (1 + 1/beta)).
#[test]
fn t2_when_slip_ends() {
    for shot in shots() {
        let (_, slip) = shot.by_hand();
        let course = shot.course();
        let oil = course
            .at_oil_end()
            .seconds()
            .min(course.slip_ends().seconds());
        let dry = course.slip_ends().seconds() - oil;
        let needed = shot.beta() * long(slip) / (1.0 + shot.beta());
        near((shot.oil * oil + shot.dry * dry) * G, needed, 1e-12);
        let even = Shot {
            dry: shot.oil,
            ..shot
        };
        let seconds = long(slip) / (shot.oil * G * (1.0 + 1.0 / shot.beta()));
        near(even.roll().seconds_to_slip_end(), seconds, 1e-12);
    }
}

/// Derived: v_f = (v0 + beta R omega × z)/(1 + beta), whatever the friction and wherever the oil ends.
#[test]
fn t3_velocity_when_slip_has_ended() {
    for shot in shots() {
        let ([x, y], [u, w]) = shot.by_hand();
        let beta = shot.beta();
        // R omega × z is v - u.
        let wanted = [
            (x + beta * (x - u)) / (1.0 + beta),
            (y + beta * (y - w)) / (1.0 + beta),
        ];
        for (oil, dry, length) in [(0.04, 0.2, 40.0), (0.01, 0.3, 33.0), (0.1, 0.1, 0.0)] {
            let other = Shot {
                oil,
                dry,
                length,
                ..shot
            };
            let found = other.course().slip_ends().velocity();
            near(found[0], wanted[0], 1e-12);
            near(found[1], wanted[1], 1e-12);
            let before = other.thrown().finished(beta, other.radius());
            near(before[0], wanted[0], 1e-12);
            near(before[1], wanted[1], 1e-12);
        }
    }
}

/// Derived: r = v0 t - (mu g / 2) e t² while it slips; at the end of slip r = (v0 + v_f) t / 2 with one mu.
#[test]
fn t4_the_path_is_a_parabola() {
    for shot in shots() {
        let shot = Shot {
            dry: shot.oil,
            ..shot
        };
        let (velocity, slip) = shot.by_hand();
        let e = slip.map(|part| part / long(slip));
        let course = shot.course();
        let end = course.slip_ends();
        let place = course.at(Length::metres(end.down().as_metres() * 0.7));
        let t = place.seconds();
        for (found, axis) in [(place.down(), 0), (place.across(), 1)] {
            let wanted = velocity[axis] * t - shot.oil * G / 2.0 * e[axis] * t * t;
            near(found.as_metres(), wanted, 1e-11);
        }
        for (found, axis) in [(end.down(), 0), (end.across(), 1)] {
            let mean = (velocity[axis] + end.velocity()[axis]) / 2.0;
            near(found.as_metres(), mean * end.seconds(), 1e-11);
        }
    }
}

/// Derived: a uniform sphere without spin has v_f = 5 v0/7, t = 2 v0/(7 mu g), x = 12 v0²/(49 mu g), and loses 2/7 of its energy. At 8 m/s
/// and mu 0.12: 1.94233 s, 13.3188 m, 5.71429 m/s.
#[test]
fn t5_five_sevenths() {
    let (thrown, beta, radius, lane, friction) = uniform();
    let ball = roll(&thrown, beta, radius, &lane, &friction);
    near(ball.seconds_to_slip_end(), 1.94233, 0.00002);
    near(ball.slip_ends().as_metres(), 13.3188, 0.0001);
    near(
        ball.speed_when_finished().as_metres_a_second(),
        5.71429,
        0.00001,
    );
    near(
        ball.speed_at_pins().as_metres_a_second(),
        8.0 * 5.0 / 7.0,
        1e-12,
    );
    near(
        ball.slip_ends().as_metres(),
        12.0 * 64.0 / (49.0 * 0.12 * G),
        1e-12,
    );
    near(ball.energy_lost(), 2.0 / 7.0 * 32.0, 1e-12);
    near(ball.most_turn().as_degrees(), 0.0, 1e-12);
    near(ball.turn_done(), 1.0, 1e-12);
}

/// Derived: launched straight, tan(phi) = beta R ws / (v0 + beta R wf); with a launch the velocities are added first.
#[test]
fn t6_direction_when_slip_has_ended() {
    for shot in shots() {
        let shot = Shot {
            launch: 0.0,
            ..shot
        };
        let ([x, _], [u, w]) = shot.by_hand();
        let (forward, side) = (x - u, -w);
        let wanted = (shot.beta() * side).atan2(x + shot.beta() * forward);
        near(
            shot.roll().direction_when_finished().as_radians(),
            wanted,
            1e-12,
        );
        near(shot.roll().most_turn().as_radians(), wanted, 1e-12);
        let sent = Shot {
            launch: -3.0,
            ..shot
        };
        let v = shot.mph * super::MPH;
        let (sine, cosine) = (-3f64).to_radians().sin_cos();
        let wanted = (v * sine + shot.beta() * side).atan2(v * cosine + shot.beta() * forward);
        near(
            sent.roll().direction_when_finished().as_radians(),
            wanted,
            1e-12,
        );
        near(
            sent.roll().most_turn().as_radians(),
            wanted - (-3f64).to_radians(),
            1e-12,
        );
    }
}

/// Derived: energy lost = (m/2) beta/(1 + beta) |u0|² whatever the friction; and it is the kinetic energy that is gone, slide or roll:
/// of each kg v²/2 + beta R² omega²/2.
#[test]
fn t7_energy() {
    for shot in shots() {
        let (_, slip) = shot.by_hand();
        let held = |[x, y]: [f64; 2], [p, q, r]: [f64; 3]| {
            let radius = RADIUS * INCH;
            (x * x + y * y + shot.beta() * radius * radius * (p * p + q * q + r * r)) / 2.0
        };
        let spin = shot.course().at(Length::feet(0.0)).spin();
        let before = held(shot.by_hand().0, spin);
        let ball = shot.roll();
        let after = held(ball.pins().velocity(), ball.pins().spin());
        near(ball.energy_lost(), before - after, 1e-11);
        if ball.turn_done() == 1.0 {
            let all = shot.beta() / (1.0 + shot.beta()) * long(slip) * long(slip) / 2.0;
            near(ball.energy_lost(), all, 1e-11);
        }
    }
    // The one with little friction still slips at the pins, so both kinds were tried.
    assert!(shots().iter().any(|shot| shot.roll().turn_done() < 1.0));
    assert!(shots().iter().any(|shot| shot.roll().turn_done() == 1.0));
}

/// Derived: two zones change the place and not the velocity; with one mu all lengths to the end of slip go as 1/mu.
#[test]
fn t8_two_zones_and_scale() {
    for shot in shots() {
        let one = Shot {
            oil: 0.08,
            dry: 0.08,
            ..shot
        };
        let double = Shot {
            oil: 0.16,
            dry: 0.16,
            ..shot
        };
        let (far, near_by) = (one.course().slip_ends(), double.course().slip_ends());
        near(
            far.down().as_metres(),
            2.0 * near_by.down().as_metres(),
            1e-11,
        );
        near(
            far.across().as_metres(),
            2.0 * near_by.across().as_metres(),
            1e-11,
        );
        near(far.speed().as_mph(), near_by.speed().as_mph(), 1e-11);
        // Sooner in 20 ft of oil than in 40, at the same speed and direction.
        let short = Shot {
            length: 20.0,
            ..shot
        };
        let (long, short) = (shot.course().slip_ends(), short.course().slip_ends());
        near(long.speed().as_mph(), short.speed().as_mph(), 1e-11);
        assert!(short.down() < long.down());
    }
}

/// Derived: the spin about the vertical neither changes nor matters: with flat spin kept the same, tilt changes no path.
#[test]
fn t9_the_vertical_spin_does_not_matter() {
    for shot in shots() {
        let flat = Shot { tilt: 0.0, ..shot };
        let tilted = Shot {
            tilt: 40.0,
            rpm: shot.rpm / 40f64.to_radians().cos(),
            ..shot
        };
        for feet in [10.0, 45.0, 60.0] {
            let [one, two] = [flat, tilted].map(|shot| shot.course().at(Length::feet(feet)));
            near(one.across().as_metres(), two.across().as_metres(), 1e-11);
            near(one.seconds(), two.seconds(), 1e-11);
            let sent = tilted.thrown();
            let released = Course::of(
                &sent,
                shot.beta(),
                shot.radius(),
                &shot.lane(),
                &shot.friction(),
            )
            .at(Length::feet(0.0));
            near(two.spin()[2], released.spin()[2], 1e-12);
        }
    }
}

/// Derived: where R wf > v0 friction pushes forward. Uniform ball, 6.5 m/s, 700 rpm end over end: v_f = (v0 + beta R w)/(1 + beta) =
/// 6.92770 m/s, after 2.44008 m and 0.363440 s at mu 0.12 (facts of mechanics, integrated independently as case C03).
#[test]
fn t10_overspun() {
    let none = Angle::degrees(0.0);
    let release = Release::new(Speed::metres_a_second(6.5), Spin::rpm(700.0), none, none).unwrap();
    let (_, beta, _, lane, friction) = uniform();
    let radius = Length::metres(0.109_093);
    let ball = roll(&Thrown::of(&release), beta, radius, &lane, &friction);
    near(ball.speed_at_pins().as_metres_a_second(), 6.927_696, 2e-6);
    near(ball.slip_ends().as_metres(), 2.440_081, 2e-6);
    near(ball.seconds_to_slip_end(), 0.363_440, 2e-6);
    near(ball.pins().seconds(), 2.651_058, 2e-6);
    near(ball.revs_at_pins().as_rpm(), 606.406, 2e-3);
}

/// Derived: mu_mean = |dv| / (g t): the very friction where it is one, time's mean of the two where there are two.
#[test]
fn t11_mean_friction() {
    for shot in shots() {
        let even = Shot {
            oil: 0.03,
            dry: 0.03,
            ..shot
        };
        let released = shot.by_hand().0;
        let place = even.course().at(Length::feet(5.0));
        near(place.mean_friction(released), 0.03, 1e-12);
        let ball = shot.roll();
        let [x, y] = ball.pins().velocity();
        let change = long([x - released[0], y - released[1]]);
        near(
            ball.mean_friction(),
            change / (G * ball.pins().seconds()),
            1e-12,
        );
        let at_release = shot.course().at(Length::feet(0.0));
        near(at_release.mean_friction(released), 0.0, 0.0);
    }
}

/// Derived: the flat part of the spin moves on a straight line towards (z × v_f)/R; tilt at the end of slip is atan(-wz R/|v_f|).
#[test]
fn t12_the_spin_axis() {
    for shot in shots() {
        let course = shot.course();
        let radius = RADIUS * INCH;
        let (start, end) = (course.at(Length::feet(0.0)).spin(), course.slip_ends());
        let [x, y] = end.velocity();
        near(end.spin()[0], -y / radius, 1e-11);
        near(end.spin()[1], x / radius, 1e-11);
        let there = course.at(Length::metres(end.down().as_metres() * 0.6));
        let [p, q] = [0, 1].map(|axis| end.spin()[axis] - start[axis]);
        let [r, s] = [0, 1].map(|axis| there.spin()[axis] - start[axis]);
        near(p * s - q * r, 0.0, 1e-9);
        let tilt = (-start[2] * radius / long(end.velocity())).atan();
        near(shot.roll().tilt_when_finished().as_radians(), tilt, 1e-11);
    }
}

/// Slip that hasn't ended at the pins: where it would end if the dry went on, and what share of it is gone.
#[test]
fn not_finished_at_the_pins() {
    let shot = Shot {
        mph: 20.0,
        oil: 0.02,
        dry: 0.05,
        ..Shot::machine()
    };
    let ball = shot.roll();
    assert!(ball.slip_ends() > Length::feet(60.0));
    let (_, slip) = shot.by_hand();
    let [x, y] = ball.pins().velocity();
    let [wx, wy, _] = ball.pins().spin();
    let radius = RADIUS * INCH;
    let left = long([x - radius * wy, y + radius * wx]);
    near(ball.turn_done(), 1.0 - left / long(slip), 1e-12);
    // Written out: the dry from 40 ft on at one mu.
    let oil = shot.course().at(Length::feet(40.0));
    let e = slip.map(|part| part / long(slip));
    let more = (shot.beta() * long(slip) / (1.0 + shot.beta()) - shot.oil * G * oil.seconds())
        / (shot.dry * G);
    let wanted = 40.0 * FOOT + oil.velocity()[0] * more - shot.dry * G / 2.0 * e[0] * more * more;
    near(ball.slip_ends().as_metres(), wanted, 1e-11);
}

/// The oil ends at the middle of its ramp.
#[test]
fn the_ramp_counts_half() {
    let shot = Shot::machine();
    let ramp = Lane::oiled(Length::feet(42.0), Length::feet(4.0)).unwrap();
    let with = roll(
        &shot.thrown(),
        shot.beta(),
        shot.radius(),
        &ramp,
        &shot.friction(),
    );
    assert_eq!(with, shot.roll());
}
