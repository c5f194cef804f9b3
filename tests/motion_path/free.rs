//! A ball without friction turns as a free body: facts 3, T14 and T15 (derived; textbook solutions of Euler's equations).

use spanwright::motion::path::{Path, Shot, roll};
use spanwright::motion::{Friction, Lane, Length};

use super::shot::{attitude, ball, every, near, release, shot};

/// More than six seconds on the lane.
fn free(rg: [f64; 3], pin: f64) -> (Shot, Path) {
    let lane = Lane::oiled(Length::feet(40.0), Length::feet(2.0)).unwrap();
    let shot = shot(
        ball(rg),
        attitude(pin, 25.0, 0.0),
        release(3.0, 400.0, 40.0, 20.0),
        (lane, Friction::none()),
    );
    let path = roll(&shot, &every(1.0), 1e-12).unwrap();
    assert!(path.last().seconds() > 6.0);
    near("energy lost", path.last().energy_lost(), 0.0, 0.0);
    near(
        "speed",
        path.last().speed().as_metres_a_second(),
        3.0,
        1e-10,
    );
    (shot, path)
}

#[test]
fn two_equal_moments_turn_evenly() {
    let (shot, path) = free([2.50, 2.55, 2.55], 35.0);
    let [low, equal, _] = shot.ball.moments();
    let [w1, w2, w3] = path.stations()[0].spin_in_ball();
    let pace = w1 * (low - equal) / equal;
    for station in path.stations() {
        let angle = pace * station.seconds();
        let (s, c) = angle.sin_cos();
        let [b1, b2, b3] = station.spin_in_ball();
        near("w1", b1, w1, 1e-8);
        // I2 w2' = (I3 - I1) w3 w1 and I3 w3' = (I1 - I2) w1 w2.
        near("w2", b2, c * w2 - s * w3, 1e-7);
        near("w3", b3, s * w2 + c * w3, 1e-7);
    }
    assert!((pace * path.last().seconds()).abs() > 5.0);
}

/// sn, cn, dn of Jacobi by the arithmetic-geometric mean: Abramowitz and Stegun 16.4 (from memory).
fn jacobi(u: f64, k: f64) -> [f64; 3] {
    let (mut a, mut b) = (1.0, (1.0 - k * k).sqrt());
    let mut steps = vec![(a, k)];
    while steps.last().unwrap().1.abs() > 1e-16 && steps.len() < 40 {
        let c = (a - b) / 2.0;
        (a, b) = ((a + b) / 2.0, (a * b).sqrt());
        steps.push((a, c));
    }
    let mut angle = u * a * 2.0f64.powi(steps.len() as i32 - 1);
    for (a, c) in steps.iter().skip(1).rev() {
        angle = (angle + (c / a * angle.sin()).asin()) / 2.0;
    }
    let (sn, cn) = angle.sin_cos();
    [sn, cn, (1.0 - k * k * sn * sn).sqrt()]
}

#[test]
fn jacobi_functions_are_right() {
    // k = 0 is the circle; K(sin 45 degrees) = 1.85407468 (Abramowitz and Stegun table 17.1, from memory).
    let [sn, cn, dn] = jacobi(0.7, 0.0);
    near("sn", sn, 0.7f64.sin(), 1e-15);
    near("cn", cn, 0.7f64.cos(), 1e-15);
    near("dn", dn, 1.0, 1e-15);
    let [sn, cn, _] = jacobi(1.854_074_677, 0.5f64.sqrt());
    near("sn at the quarter", sn, 1.0, 1e-9);
    near("cn at the quarter", cn, 0.0, 1e-8);
}

#[test]
fn three_moments_turn_as_jacobi_says() {
    let mut branches = [false; 2];
    // The pin near the axis, and the axis of the highest RG near it; both start without a middle part.
    for pin in [15.0, 40.0, 75.0] {
        let (shot, path) = free([2.48, 2.515, 2.535], pin);
        let start = path.stations()[0].spin_in_ball();
        near("w2 at the start", start[1], 0.0, 1e-12);
        let moments = shot.ball.moments();
        let energy: f64 = (0..3).map(|i| moments[i] * start[i] * start[i]).sum();
        let square: f64 = (0..3).map(|i| (moments[i] * start[i]).powi(2)).sum();
        // The branch: which axis it circles, and so which two change places.
        let high = square > energy * moments[1];
        branches[usize::from(high)] = true;
        let (first, last) = if high { (0, 2) } else { (2, 0) };
        let (i1, i2, i3) = (moments[first], moments[1], moments[last]);
        let size1 = ((energy * i3 - square) / (i1 * (i3 - i1))).sqrt();
        let size2 = ((energy * i3 - square) / (i2 * (i3 - i2))).sqrt();
        let size3 = ((square - energy * i1) / (i3 * (i3 - i1))).sqrt();
        let pace = ((i3 - i2) * (square - energy * i1) / (i1 * i2 * i3)).sqrt();
        let k = ((i2 - i1) * (energy * i3 - square) / ((i3 - i2) * (square - energy * i1))).sqrt();
        let (sign1, sign3) = (start[first].signum(), start[last].signum());
        // Euler's equation of the middle axis tells the sign there, in both branches: I2 w2' = (I3 - I1) w3 w1.
        let sign2 = sign1 * sign3;
        for station in path.stations() {
            let [sn, cn, dn] = jacobi(pace * station.seconds(), k);
            let now = station.spin_in_ball();
            near("w first", now[first], sign1 * size1 * cn, 1e-7);
            near("w middle", now[1], sign2 * size2 * sn, 1e-7);
            near("w last", now[last], sign3 * size3 * dn, 1e-7);
        }
    }
    assert_eq!(branches, [true, true]);
}
