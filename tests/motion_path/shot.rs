//! Shots to try, and what is measured on them.

use glam::DVec3;
use spanwright::motion::path::{Path, Shot, Station, roll};
use spanwright::motion::{
    Angle, Attitude, Ball, Friction, Lane, Length, Mass, Release, Speed, Spin,
};

/// Precise enough for every check here.
pub const FINE: f64 = 1e-10;

/// Ball of 15 lb and 8.59 in with these RGs in inches.
pub fn ball(rg: [f64; 3]) -> Ball {
    Ball::new(
        Mass::pounds(15.0),
        Length::metres(0.109093),
        rg.map(Length::inches),
    )
    .unwrap()
}

/// m/s, rpm, degrees.
pub fn release(speed: f64, rpm: f64, rotation: f64, tilt: f64) -> Release {
    Release::new(
        Speed::metres_a_second(speed),
        Spin::rpm(rpm),
        Angle::degrees(rotation),
        Angle::degrees(tilt),
    )
    .unwrap()
}

/// The throwing machine of facts 2.4: 17 mph, 275 rpm, rotation 55, tilt 13; sent as case C06 is.
pub fn machine() -> Release {
    release(7.59968, 275.0, 55.0, 13.0)
        .sent(Length::metres(-0.15), Angle::degrees(-2.0))
        .unwrap()
}

/// Degrees.
pub fn attitude(pin: f64, phase: f64, turn: f64) -> Attitude {
    Attitude::new(
        Angle::degrees(pin),
        Angle::degrees(phase),
        Angle::degrees(turn),
    )
    .unwrap()
}

/// One coefficient everywhere.
pub fn alike(mu: f64) -> (Lane, Friction) {
    let lane = Lane::oiled(Length::feet(60.0), Length::feet(0.0)).unwrap();
    (lane, Friction::new(mu, mu).unwrap())
}

/// 0.04 to 40 ft, then 0.20: the literature's pair.
pub fn two_zones() -> (Lane, Friction) {
    let lane = Lane::oiled(Length::feet(40.0), Length::feet(0.0)).unwrap();
    (lane, Friction::new(0.04, 0.20).unwrap())
}

pub fn shot(
    ball: Ball,
    attitude: Attitude,
    release: Release,
    (lane, friction): (Lane, Friction),
) -> Shot {
    Shot {
        ball,
        attitude,
        release,
        lane,
        friction,
    }
}

/// Told every so many feet.
pub fn every(feet: f64) -> Vec<Length> {
    let count = (60.0 / feet).floor() as usize;
    (0..=count).map(|i| Length::feet(i as f64 * feet)).collect()
}

pub fn fine(shot: &Shot, places: &[Length]) -> Path {
    roll(shot, places, FINE).unwrap()
}

/// L about the mass centre in the lane's frame.
pub fn angular_momentum(ball: &Ball, station: &Station) -> DVec3 {
    let axes = station.axes().map(DVec3::from_array);
    let spin = station.spin_in_ball();
    (0..3)
        .map(|i| ball.moments()[i] * spin[i] * axes[i])
        .sum::<DVec3>()
}

pub fn velocity(station: &Station) -> DVec3 {
    let [x, y] = station.velocity();
    DVec3::new(x, y, 0.0)
}

#[track_caller]
pub fn near(name: &str, got: f64, wanted: f64, tolerance: f64) {
    assert!(
        (got - wanted).abs() <= tolerance,
        "{name}: {got} where {wanted} was wanted, to {tolerance}"
    );
}
