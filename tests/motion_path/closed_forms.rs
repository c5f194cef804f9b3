//! The integrator against the closed forms of a ball with equal moments: facts 3, T1 to T5, T7 to T10 and T12 (derived).

use glam::DVec3;
use spanwright::motion::path::{Mode, Shot, Station};
use spanwright::motion::{Angle, Attitude, Friction, GRAVITY, Lane, Length, Release};

use super::shot::{alike, ball, every, fine, near, release, shot, two_zones, velocity};

const RG: f64 = 2.55;

fn plain(release: Release, ground: (Lane, Friction)) -> Shot {
    shot(ball([RG; 3]), Attitude::default(), release, ground)
}

fn hook() -> Release {
    release(8.0, 300.0, 50.0, 12.0)
        .sent(Length::metres(0.1), Angle::degrees(-1.0))
        .unwrap()
}

fn slip(shot: &Shot, station: &Station) -> DVec3 {
    let radius = shot.ball.radius().as_metres();
    velocity(station) - radius * DVec3::from_array(station.spin()).cross(DVec3::Z)
}

fn beta(shot: &Shot) -> f64 {
    (Length::inches(RG).as_metres() / shot.ball.radius().as_metres()).powi(2)
}

/// T1 to T4, T7 and T12.
#[test]
fn slip_falls_evenly_and_keeps_its_direction() {
    let mu = 0.11;
    let shot = plain(hook(), alike(mu));
    let path = fine(&shot, &every(2.0));
    let beta = beta(&shot);
    let start = &path.stations()[0];
    let u0 = slip(&shot, start);
    let direction = u0.normalize();
    let loses = mu * GRAVITY * (1.0 + 1.0 / beta);
    let mut slipping = 0;
    for station in path.stations() {
        let u = slip(&shot, station);
        if station.mode() == Mode::Slip {
            slipping += 1;
            assert!(u.cross(direction).length() < 1e-8, "T1");
            near(
                "T1",
                u.length(),
                u0.length() - loses * station.seconds(),
                1e-8,
            );
        } else {
            near("rolls", u.length(), 0.0, 1e-12);
        }
    }
    assert!(slipping > 10 && slipping < path.stations().len());
    let rolls = path.slip_ends().unwrap();
    let seconds = u0.length() / loses;
    near("T2", rolls.seconds(), seconds, 1e-8);
    let wanted = velocity(start) - beta / (1.0 + beta) * u0;
    assert!((velocity(rolls) - wanted).length() < 1e-8, "T3");
    assert!((velocity(path.last()) - wanted).length() < 1e-8, "T3");
    let middle = (velocity(start) + wanted) * seconds / 2.0;
    near("T4 down", rolls.down().as_metres(), middle.x, 1e-7);
    near(
        "T4 across",
        rolls.across().as_metres(),
        0.1 + middle.y,
        1e-7,
    );
    let mass = shot.ball.mass().as_kilograms();
    let lost = 0.5 * mass * beta / (1.0 + beta) * u0.length_squared();
    near("T7", path.last().energy_lost(), lost, 1e-7);
    let [wx, wy, wz] = rolls.spin();
    let radius = shot.ball.radius().as_metres();
    let tilt = (-wz / wx.hypot(wy)).atan();
    near("T12", tilt, (-wz * radius / wanted.length()).atan(), 1e-8);
    near("T9", wz, start.spin()[2], 1e-9);
}

/// T3, T7 and T8: another lane changes the place, not the end.
#[test]
fn the_end_does_not_hang_on_friction() {
    let house = (
        Lane::oiled(Length::feet(36.0), Length::feet(3.0))
            .and_then(|lane| lane.crosswise(8.0, 8.0, 3.0))
            .unwrap(),
        Friction::new(0.03, 0.2).unwrap(),
    );
    let one = fine(&plain(hook(), alike(0.12)), &[]);
    for other in [two_zones(), house] {
        let other = fine(&plain(hook(), other), &[]);
        let apart = velocity(one.last()) - velocity(other.last());
        assert!(apart.length() < 1e-7, "{apart}");
        near(
            "energy",
            other.last().energy_lost(),
            one.last().energy_lost(),
            1e-6,
        );
        let (a, b) = (one.slip_ends().unwrap(), other.slip_ends().unwrap());
        assert!((a.down().as_metres() - b.down().as_metres()).abs() > 0.1);
    }
    // With one coefficient all lengths scale as its inverse.
    let half = fine(&plain(hook(), alike(0.24)), &[]);
    let (a, b) = (one.slip_ends().unwrap(), half.slip_ends().unwrap());
    near(
        "down",
        a.down().as_metres(),
        2.0 * b.down().as_metres(),
        1e-7,
    );
    let across = |s: &Station| s.across().as_metres() - 0.1;
    near("across", across(a), 2.0 * across(b), 1e-7);
}

/// T5, with its numbers: speed 8 m/s, coefficient 0.12, uniform sphere.
#[test]
fn five_sevenths() {
    let radius = Length::metres(0.109093).as_inches();
    let shot = shot(
        ball([radius * 0.4f64.sqrt(); 3]),
        Attitude::default(),
        release(8.0, 0.0, 0.0, 0.0),
        alike(0.12),
    );
    let path = fine(&shot, &[]);
    let rolls = path.slip_ends().unwrap();
    near("t", rolls.seconds(), 1.94233, 2e-5);
    near(
        "t",
        rolls.seconds(),
        2.0 * 8.0 / (7.0 * 0.12 * GRAVITY),
        1e-8,
    );
    near("x", rolls.down().as_metres(), 13.3188, 1e-4);
    near("v", velocity(path.last()).x, 5.0 * 8.0 / 7.0, 1e-8);
    let energy = 0.5 * shot.ball.mass().as_kilograms() * 64.0;
    near("lost", path.last().energy_lost(), energy * 2.0 / 7.0, 1e-7);
    assert!(path.breakpoint().is_none());
}

/// T9: spin about the vertical neither changes nor matters.
#[test]
fn upright_spin_does_not_matter() {
    let tilted = release(8.0, 300.0, 50.0, 30.0);
    let level = release(8.0, 300.0 * 30f64.to_radians().cos(), 50.0, 0.0);
    let [a, b] = [tilted, level].map(|release| fine(&plain(release, two_zones()), &every(10.0)));
    for (a, b) in a.stations().iter().zip(b.stations()) {
        near("y", a.across().as_metres(), b.across().as_metres(), 1e-8);
        near("t", a.seconds(), b.seconds(), 1e-8);
    }
    near("wz", a.last().spin()[2], a.stations()[0].spin()[2], 1e-9);
}

/// T10: a ball over-spun forward speeds up.
#[test]
fn over_spun_it_speeds_up() {
    let path = fine(&plain(release(6.5, 700.0, 0.0, 0.0), alike(0.12)), &[]);
    assert!(path.last().speed().as_metres_a_second() > 6.6);
    let beta = beta(&plain(hook(), alike(0.12)));
    let spin = 700.0 * std::f64::consts::PI / 30.0 * 0.109093;
    near(
        "T3 in line",
        path.last().speed().as_metres_a_second(),
        (6.5 + beta * spin) / (1.0 + beta),
        1e-8,
    );
}
