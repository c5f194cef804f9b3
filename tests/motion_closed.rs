//! The exact results for a ball with equal moments: each against its formula, against published figures, and against slow integration.
//!
//! Checks named T follow from the mechanics of a rigid body that slides under Coulomb friction (derived; each states its formula), with
//! u = v - R omega × z the slip, e = u/|u|, beta = I/(m R²), g = 9.80665 m/s². Checks named P have a publication beside them.

#![allow(clippy::unwrap_used)]

#[path = "motion_closed/boxes.rs"]
mod boxes;
#[path = "motion_closed/derived.rs"]
mod derived;
#[path = "motion_closed/line.rs"]
mod line;
#[path = "motion_closed/published.rs"]
mod published;
#[path = "motion_closed/slow.rs"]
mod slow;

use spanwright::motion::closed::{Closed, Course, Thrown, roll};
use spanwright::motion::{Angle, Friction, Lane, Length, Release, Speed, Spin};

/// A shot, in the units of the trade.
#[derive(Clone, Copy, Debug)]
struct Shot {
    mph: f64,
    rpm: f64,
    rotation: f64,
    tilt: f64,
    launch: f64,
    rg: f64,
    oil: f64,
    dry: f64,
    /// Feet.
    length: f64,
}

/// Radius in inches, as in the derivations.
const RADIUS: f64 = 4.295;
/// Metres in a foot.
const FOOT: f64 = 0.3048;
/// Metres in an inch.
const INCH: f64 = 0.0254;
/// Metres a second in a mile an hour.
const MPH: f64 = 0.44704;
const G: f64 = 9.80665;

impl Shot {
    /// The release of the throwing machine: 17 mph, 275 rpm, rotation 55, tilt 13 degrees; RG 2.55, 40 ft of oil at 0.04, dry at 0.20.
    fn machine() -> Shot {
        Shot {
            mph: 17.0,
            rpm: 275.0,
            rotation: 55.0,
            tilt: 13.0,
            launch: 0.0,
            rg: 2.55,
            oil: 0.04,
            dry: 0.20,
            length: 40.0,
        }
    }
    fn beta(&self) -> f64 {
        (self.rg / RADIUS) * (self.rg / RADIUS)
    }
    fn radius(&self) -> Length {
        Length::inches(RADIUS)
    }
    fn thrown(&self) -> Thrown {
        let release = Release::new(
            Speed::mph(self.mph),
            Spin::rpm(self.rpm),
            Angle::degrees(self.rotation),
            Angle::degrees(self.tilt),
        )
        .unwrap();
        Thrown::of(
            &release
                .sent(Length::metres(0.0), Angle::degrees(self.launch))
                .unwrap(),
        )
    }
    fn lane(&self) -> Lane {
        Lane::oiled(Length::feet(self.length), Length::feet(0.0)).unwrap()
    }
    fn friction(&self) -> Friction {
        Friction::new(self.oil, self.dry).unwrap()
    }
    fn course(&self) -> Course {
        Course::of(
            &self.thrown(),
            self.beta(),
            self.radius(),
            &self.lane(),
            &self.friction(),
        )
    }
    fn roll(&self) -> Closed {
        roll(
            &self.thrown(),
            self.beta(),
            self.radius(),
            &self.lane(),
            &self.friction(),
        )
    }
    /// Release velocity and slip written out: v - R omega × z with omega = -Omega p, p = (cos t sin r, -cos t cos r, sin t).
    fn by_hand(&self) -> ([f64; 2], [f64; 2]) {
        let v = self.mph * MPH;
        let [launch, rotation, tilt] = [self.launch, self.rotation, self.tilt].map(f64::to_radians);
        let velocity = [v * launch.cos(), v * launch.sin()];
        let spin = self.rpm * std::f64::consts::PI / 30.0;
        let (forward, side) = (
            spin * tilt.cos() * rotation.cos(),
            spin * tilt.cos() * rotation.sin(),
        );
        let radius = RADIUS * INCH;
        (
            velocity,
            [velocity[0] - radius * forward, velocity[1] - radius * side],
        )
    }
}

fn long([x, y]: [f64; 2]) -> f64 {
    x.hypot(y)
}

#[track_caller]
fn near(found: f64, wanted: f64, within: f64) {
    assert!(
        (found - wanted).abs() <= within,
        "{found} is not {wanted} within {within}"
    );
}

#[track_caller]
fn between(found: f64, lowest: f64, highest: f64) {
    assert!(
        found >= lowest && found <= highest,
        "{found} is not from {lowest} to {highest}"
    );
}
