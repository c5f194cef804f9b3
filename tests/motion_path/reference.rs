//! Eight trajectories of an independent integrator, within the tolerances of their file.
//!
//! `tests/motion/reference.csv`, derived: a separate program (DOP853, rtol 1e-11, slip ends at 1e-7 m/s) that met the closed forms to 3e-7 m and
//! agreed with a second integrator to 2e-5 m. It shares no line with this one. Length 60 ft; `x_switch_m` is where the oil ends, and a row without one
//! has `mu1` everywhere. A row without a pin has equal moments, whose axes stand along the lane's at the release.

use glam::DVec3;
use rstest::rstest;
use spanwright::motion::path::{Mode, Path, Shot};
use spanwright::motion::{
    Angle, Attitude, Ball, Friction, Lane, Length, Mass, Release, Speed, Spin,
};

use super::shot::{attitude, fine, near};

type Row = std::collections::HashMap<String, String>;

fn rows(case: &str) -> Vec<Row> {
    let text = include_str!("../motion/reference.csv");
    let rows: Vec<Row> = csv::Reader::from_reader(text.as_bytes())
        .deserialize()
        .map(|row| row.unwrap())
        .filter(|row: &Row| row["case"] == case)
        .collect();
    assert_eq!(rows.len(), 7, "stations of {case}");
    rows
}

fn maybe(row: &Row, name: &str) -> Option<f64> {
    match row[name].as_str() {
        "" => None,
        text => Some(text.parse().unwrap()),
    }
}
fn number(row: &Row, name: &str) -> f64 {
    maybe(row, name).unwrap_or_else(|| panic!("no {name}"))
}

/// The attitude whose axes stand along the lane's.
fn along_the_lane(rotation: f64, tilt: f64) -> Attitude {
    let (rotation, tilt) = (rotation.to_radians(), tilt.to_radians());
    let pap = DVec3::new(
        tilt.cos() * rotation.sin(),
        -tilt.cos() * rotation.cos(),
        tilt.sin(),
    );
    let n = (DVec3::Z - pap.z * pap).normalize();
    let pin = pap.x.acos();
    let t = (DVec3::X - pap.x * pap) / pin.sin();
    let phase = pap.cross(n).dot(t).atan2(n.dot(t));
    let c = -pin.sin() * pap + pin.cos() * t;
    let turn = DVec3::X.cross(c).dot(DVec3::Z).atan2(c.z);
    attitude(pin.to_degrees(), phase.to_degrees(), turn.to_degrees())
}

fn shot(row: &Row) -> Shot {
    let n = |name: &str| number(row, name);
    let mass = n("weight_kg");
    let rg = ["I1", "I2", "I3"].map(|i| Length::metres((n(i) / mass).sqrt()));
    let (oil, mu2) = match maybe(row, "x_switch_m") {
        Some(x) => (Length::metres(x), n("mu2")),
        None => (Length::feet(60.0), n("mu1")),
    };
    Shot {
        ball: Ball::new(Mass::kilograms(mass), Length::metres(n("radius_m")), rg).unwrap(),
        attitude: match maybe(row, "pin_pap_deg") {
            Some(pin) => attitude(pin, n("pin_phase_deg"), n("mb_turn_deg")),
            None => along_the_lane(n("rot_deg"), n("tilt_deg")),
        },
        release: Release::new(
            Speed::metres_a_second(n("v0_mps")),
            Spin::rpm(n("rpm")),
            Angle::degrees(n("rot_deg")),
            Angle::degrees(n("tilt_deg")),
        )
        .unwrap()
        .sent(Length::metres(n("y0_m")), Angle::degrees(n("launch_deg")))
        .unwrap(),
        lane: Lane::oiled(oil, Length::feet(0.0)).unwrap(),
        friction: match mu2 {
            0.0 => Friction::none(),
            _ => Friction::new(n("mu1"), mu2).unwrap(),
        },
    }
}

fn place(row: &Row) -> Length {
    Length::feet(number(row, "station_ft"))
}

#[rstest]
fn every_station(
    #[values("C01", "C02", "C03", "C05", "C06", "C09", "C10", "C12")] case: &str,
    #[values(1e-7, 1e-10)] tolerance: f64,
) {
    let rows = rows(case);
    let places: Vec<Length> = rows.iter().map(place).collect();
    let path = spanwright::motion::path::roll(&shot(&rows[0]), &places, tolerance).unwrap();
    assert_eq!(path.stations().len(), rows.len());
    for (row, station) in rows.iter().zip(path.stations()) {
        let tol = |name: &str| number(row, name);
        let at = |name: &str| format!("{case} at {} ft: {name}", row["station_ft"]);
        let check = |name: &str, got: f64, tolerance: &str| {
            near(&at(name), got, number(row, name), tol(tolerance));
        };
        assert_eq!(
            station.mode(),
            match row["mode"].as_str() {
                "slip" => Mode::Slip,
                "roll" => Mode::Roll,
                other => panic!("mode {other}"),
            },
            "{}",
            at("mode")
        );
        near(
            &at("x"),
            station.down().as_metres(),
            place(row).as_metres(),
            1e-9,
        );
        check("t_s", station.seconds(), "tol_time_s");
        check("y_m", station.across().as_metres(), "tol_pos_m");
        check(
            "path_angle_deg",
            station.direction().as_degrees(),
            "tol_angle_deg",
        );
        let ([vx, vy], [wx, wy, wz]) = (station.velocity(), station.spin());
        check("vx", vx, "tol_vel_mps");
        check("vy", vy, "tol_vel_mps");
        check("slip_mps", station.slip(), "tol_vel_mps");
        check("wx", wx, "tol_omega_radps");
        check("wy", wy, "tol_omega_radps");
        check("wz", wz, "tol_omega_radps");
        let [b1, b2, b3] = station.spin_in_ball();
        check("wb1", b1, "tol_omega_radps");
        check("wb2", b2, "tol_omega_radps");
        check("wb3", b3, "tol_omega_radps");
        near(
            &at("speed"),
            station.speed().as_mph(),
            number(row, "speed_mph"),
            tol("tol_vel_mps") / 0.44704,
        );
        near(
            &at("revs"),
            station.revs().as_rpm(),
            number(row, "rpm_now"),
            tol("tol_omega_radps") * 30.0 / std::f64::consts::PI,
        );
    }
    ends(&rows[0], &path, case);
}

/// Where things happen, and what is true of the whole roll.
fn ends(row: &Row, path: &Path, case: &str) {
    let tol = |name: &str| number(row, name);
    let place = |name: &str, got: Option<Length>, tolerance: &str| {
        let (got, wanted) = (got.map(Length::as_metres), maybe(row, name));
        match (got, wanted) {
            (Some(got), Some(wanted)) => {
                near(&format!("{case} {name}"), got, wanted, tol(tolerance))
            }
            (got, wanted) => assert_eq!(got, wanted, "{case} {name}"),
        }
    };
    let rolls = path.slip_ends();
    place("x_roll_m", rolls.map(|s| s.down()), "tol_transition_m");
    place("y_roll_m", rolls.map(|s| s.across()), "tol_transition_m");
    place(
        "x_turn_m",
        path.breakpoint().map(|s| s.down()),
        "tol_transition_m",
    );
    if let Some(rolls) = rolls {
        near(
            &format!("{case} t_roll"),
            rolls.seconds(),
            number(row, "t_roll_s"),
            tol("tol_time_s").max(tol("tol_transition_m") / number(row, "v0_mps")),
        );
    }
    if maybe(row, "x_zone_m").is_some() {
        let oil = path.oil_ends().unwrap();
        place("x_zone_m", Some(oil.down()), "tol_transition_m");
        near(
            &format!("{case} t_zone"),
            oil.seconds(),
            number(row, "t_zone_s"),
            tol("tol_time_s"),
        );
    }
    let check = |name: &str, got: f64, tolerance: f64| {
        near(&format!("{case} {name}"), got, number(row, name), tolerance);
    };
    let last = path.last();
    check(
        "entry_angle_deg",
        last.direction().as_degrees(),
        tol("tol_angle_deg"),
    );
    let [.., five, _] = path.stations() else {
        panic!("stations")
    };
    let chord = (last.across().as_metres() - five.across().as_metres())
        .atan2(last.down().as_metres() - five.down().as_metres());
    check(
        "chord_angle_55_60_deg",
        chord.to_degrees(),
        tol("tol_angle_deg"),
    );
    check("energy_lost_J", last.energy_lost(), tol("tol_energy_J"));
    // The file gives no tolerance for these: a thousandth of an inch, and of the weight.
    check("axis_path_in", path.axis_path().as_inches(), 1e-3);
    check("axis_shift_in", path.axis_shift().as_inches(), 1e-3);
    check("roll_friction_demand", path.friction_asked(), 1e-3);
    assert_eq!(path.slips_again(), 0, "{case}");
}

/// Facts 2.5, P4: the axis keeps about the same RG as it crosses the ball (published); C10 stays within 2.5246 to 2.5272 in
/// while it moves 6.45 in (derived).
#[test]
fn the_axis_keeps_about_the_same_rg() {
    let shot = shot(&rows("C10")[0]);
    let path = fine(&shot, &super::shot::every(0.1));
    let mass = shot.ball.mass().as_kilograms();
    let (mut low, mut high) = (f64::INFINITY, 0.0_f64);
    for station in path.stations() {
        let spin = DVec3::from_array(station.spin_in_ball()).normalize();
        let moment = DVec3::from_array(shot.ball.moments()).dot(spin * spin);
        let rg = Length::metres((moment / mass).sqrt()).as_inches();
        low = low.min(rg);
        high = high.max(rg);
    }
    near("lowest RG", low, 2.5246, 1e-4);
    near("highest RG", high, 2.5272, 1e-4);
    assert!(high - low < 0.004);
    near("flare", path.flare().as_inches(), 6.450, 2e-3);
}
