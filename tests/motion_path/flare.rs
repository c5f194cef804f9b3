//! How far the axis wanders over the ball: facts 4, D1 and the bell (derived).

use spanwright::motion::path::{Path, Settings, Shot, roll, roll_with};
use spanwright::motion::{Ball, Friction, Lane, Length, Mass};

use super::shot::{attitude, machine, near, shot, two_zones};

/// 8.594 in across: 27 in round.
const RADIUS: f64 = 8.594 / 2.0;

fn ball(differential: f64) -> Ball {
    let rg = [2.50, 2.50 + differential, 2.50 + differential];
    Ball::new(
        Mass::pounds(15.0),
        Length::inches(RADIUS),
        rg.map(Length::inches),
    )
    .unwrap()
}

/// The pin so many inches above the PAP.
fn thrown(differential: f64, pin: f64) -> Shot {
    shot(
        ball(differential),
        attitude((pin / RADIUS).to_degrees(), 0.0, 0.0),
        machine(),
        two_zones(),
    )
}

/// D1 was made with rolling forced once reached.
fn forced(shot: &Shot) -> Path {
    let settings = Settings::new(1e-9).unwrap().kept_rolling();
    roll_with(shot, &[], &settings).unwrap()
}

/// D1, derived by the independent integrator: inches, printed to 0.01.
#[test]
fn the_table_of_axis_shifts() {
    let pins = [0.5, 1.5, 2.5, 3.375, 4.25, 5.25, 6.25];
    let table = [
        (0.01, [0.41, 1.04, 1.46, 1.59, 1.46, 1.02, 0.38]),
        (0.02, [0.75, 1.95, 2.80, 3.08, 2.85, 2.00, 0.72]),
        (0.03, [1.00, 2.66, 3.93, 4.45, 4.19, 2.97, 1.06]),
        (0.04, [1.14, 3.09, 4.75, 5.60, 5.45, 3.91, 1.40]),
        (0.05, [1.19, 3.21, 5.17, 6.45, 6.59, 4.82, 1.72]),
        (0.06, [1.23, 3.24, 5.24, 6.90, 7.56, 5.71, 2.04]),
    ];
    for (differential, row) in table {
        for (pin, wanted) in pins.into_iter().zip(row) {
            let path = forced(&thrown(differential, pin));
            let name = format!("differential {differential}, pin {pin} in");
            near(&name, path.flare().as_inches(), wanted, 0.0101);
        }
    }
}

/// The greatest flare over pins every sixteenth of an inch.
fn peak(differential: f64) -> f64 {
    (32..=84)
        .map(|sixteenths| {
            let pin = f64::from(sixteenths) / 16.0;
            let path = roll(&thrown(differential, pin), &[], 1e-7).unwrap();
            (path.flare().as_inches(), pin)
        })
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .unwrap()
        .1
}

/// At a quarter turn, 3 3/8 in on this ball, for a small differential; past it for a large one.
#[test]
fn the_bell_and_its_limit() {
    near("small", peak(0.01), 3.375, 0.125);
    let large = peak(0.06);
    assert!(large > 4.0, "{large}");
}

/// The axis goes over the ball at (R Ω / 2) (dI / I) sin(2 pin), with dI / I = 1 - (low RG / high RG)²: 0.0388 for 2.50 and 2.55.
#[test]
fn the_pace_of_the_axis() {
    for differential in [0.01f64, 0.05] {
        let share = 1.0 - (2.50 / (2.50 + differential)).powi(2);
        for pin in [0.0f64, 1.0, 2.5, 3.375, 5.0, 6.75] {
            let free = Shot {
                lane: Lane::oiled(Length::feet(60.0), Length::feet(0.0)).unwrap(),
                friction: Friction::none(),
                ..thrown(differential, pin)
            };
            let path = roll(&free, &[], 1e-10).unwrap();
            let spin = 275.0 * std::f64::consts::PI / 30.0;
            let pace = RADIUS * spin / 2.0 * share * (2.0 * pin / RADIUS).sin();
            near(
                "axis path, in",
                path.axis_path().as_inches(),
                pace * path.last().seconds(),
                2e-6 + 2e-3 * f64::from(pin == 6.75),
            );
        }
    }
    near("dI/I", 1.0 - (2.50f64 / 2.55).powi(2), 0.0388, 5e-5);
}
