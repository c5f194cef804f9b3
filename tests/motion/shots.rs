//! Prints made-up shots and what becomes of them, a JSON object a line, for another integrator to check; or how fast they are.
//!
//! `shots N` prints N shots. `shots each TOL N` prints them at another tolerance, with the seconds each takes (the least of several times)
//! and how often the equations were worked out for it. `shots time TOL N` prints seconds a roll, the largest difference in place at the pins or gutter from the same
//! rolls at 1e-12, and how often the equations were worked out.
//!
//! The shots are made by a small generator of our own from their number alone: any run of the program makes the same ones.

#![allow(clippy::unwrap_used)]

use std::time::Instant;

use serde_json::{Value, json};
use spanwright::motion::path::{Ending, Mode, Path, Settings, Shot, Station, roll_with};
use spanwright::motion::{
    Angle, Attitude, Ball, Friction, Lane, Length, Mass, Release, Speed, Spin,
};

const TOLERANCE: f64 = 1e-10;
const STATIONS: [f64; 8] = [5.0, 15.0, 30.0, 40.0, 45.0, 50.0, 55.0, 60.0];

/// SplitMix64: G. Steele, D. Lea, C. Flood, "Fast splittable pseudorandom number generators" (2014); from memory.
struct Dice(u64);

impl Dice {
    fn between(&mut self, low: f64, high: f64) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^= z >> 31;
        low + (high - low) * ((z >> 11) as f64 / (1u64 << 53) as f64)
    }
}

/// A shot with everything that was chosen for it, in SI and radians.
struct Made {
    shot: Shot,
    told: Value,
}

fn made(number: u64) -> Made {
    let mut dice = Dice(number.wrapping_mul(0x0123_4567_89ab_cdef));
    let mass = Mass::pounds(dice.between(10.0, 16.0));
    let radius = Length::inches(dice.between(4.25, 4.2975));
    let low = dice.between(2.46, 2.65);
    let total = dice.between(0.0, 0.06);
    let middle = low + total * dice.between(0.4, 1.0);
    let rg = [low, middle, low + total].map(Length::inches);
    // One ball in two has its mass centre off, by up to a millimetre.
    let off = dice.between(-0.001, 0.001).max(0.0);
    let (up, round) = (
        dice.between(-1.0, 1.0),
        dice.between(0.0, std::f64::consts::TAU),
    );
    let flat = (1.0 - up * up).sqrt();
    let offset = [flat * libm::cos(round), flat * libm::sin(round), up].map(|part| part * off);
    let pin = dice.between(0.0, 90.0f64.to_radians());
    let phase = dice.between(-180.0f64.to_radians(), 180.0f64.to_radians());
    let turn = dice.between(-180.0f64.to_radians(), 180.0f64.to_radians());
    let speed = Speed::mph(dice.between(12.0, 21.0));
    let spin = Spin::rpm(dice.between(50.0, 550.0));
    let rotation = dice.between(0.0, 80.0f64.to_radians());
    let tilt = dice.between(0.0, 30.0f64.to_radians());
    let launch = dice.between(-2.6f64.to_radians(), -0.6f64.to_radians());
    let start = dice.between(-0.25, 0.0);
    let oil = Length::feet(dice.between(30.0, 46.0));
    let ramp = Length::feet(dice.between(-4.0, 6.0).max(0.0));
    let ratio = dice.between(-5.0, 10.0).max(1.0);
    let inside = dice.between(5.0, 10.0);
    let taper = dice.between(1.0, 5.0);
    let mu_dry = dice.between(0.12, 0.25);
    let mu_oil = dice.between(0.02, 0.06);
    let attitude = Attitude::new(
        Angle::radians(pin),
        Angle::radians(phase),
        Angle::radians(turn),
    );
    let ball = Ball::new(mass, radius, rg)
        .and_then(|ball| ball.with_offset(offset.map(Length::metres)))
        .unwrap();
    let release = Release::new(speed, spin, Angle::radians(rotation), Angle::radians(tilt))
        .and_then(|release| release.sent(Length::metres(start), Angle::radians(launch)))
        .unwrap();
    let lane = Lane::oiled(oil, ramp)
        .and_then(|lane| lane.crosswise(ratio, inside, taper))
        .unwrap();
    Made {
        told: json!({
            "mass": mass.as_kilograms(), "radius": radius.as_metres(), "moments": ball.moments(),
            "offset": offset, "pin": pin, "phase": phase, "turn": turn,
            "speed": speed.as_metres_a_second(), "spin": spin.as_radians_a_second(),
            "rotation": rotation, "tilt": tilt, "launch": launch, "start": start,
            "oil": oil.as_metres(), "ramp": ramp.as_metres(), "ratio": ratio, "inside": inside,
            "taper": taper, "mu_oil": mu_oil, "mu_dry": mu_dry, "tolerance": TOLERANCE,
        }),
        shot: Shot {
            ball,
            attitude: attitude.unwrap(),
            release,
            lane,
            friction: Friction::new(mu_oil, mu_dry).unwrap(),
        },
    }
}

fn station(station: &Station) -> Value {
    let ([vx, vy], [wx, wy, wz]) = (station.velocity(), station.spin());
    json!({
        "x": station.down().as_metres(), "t": station.seconds(), "y": station.across().as_metres(),
        "vx": vx, "vy": vy, "wx": wx, "wy": wy, "wz": wz,
        "mode": match station.mode() { Mode::Slip => "slip", Mode::Roll => "roll" },
    })
}

fn told(made: &Made, path: &Path) -> Value {
    let mut told = made.told.clone();
    let stations: Vec<Value> = path.stations().iter().map(station).collect();
    told["stations"] = json!(stations);
    told["slip_ends"] = path.slip_ends().map_or(Value::Null, station);
    told["energy_lost"] = json!(path.last().energy_lost());
    told["ending"] = json!(match path.ending() {
        Ending::Pins => "pins",
        Ending::Gutter(_) => "gutter",
    });
    told["last"] = station(path.last());
    told["slips_again"] = json!(path.slips_again());
    told
}

fn rolled(made: &Made, tolerance: f64, places: &[Length]) -> Path {
    let settings = Settings::new(tolerance).unwrap();
    roll_with(&made.shot, places, &settings).unwrap()
}

fn time(tolerance: f64, count: u64) {
    let shots: Vec<Made> = (0..count).map(made).collect();
    let started = Instant::now();
    let paths: Vec<Path> = shots.iter().map(|m| rolled(m, tolerance, &[])).collect();
    let seconds = started.elapsed().as_secs_f64() / count as f64;
    let mut worst = 0.0f64;
    for (shot, path) in shots.iter().zip(&paths) {
        let best = rolled(shot, 1e-12, &[]);
        let [x, y] = [Station::down, Station::across]
            .map(|place| place(path.last()).as_metres() - place(best.last()).as_metres());
        worst = worst.max(libm::hypot(x, y));
    }
    let slopes: usize = paths.iter().map(Path::slopes).sum();
    println!(
        "{}",
        json!({
            "tolerance": tolerance, "rolls": count, "seconds": seconds, "error": worst,
            "slopes": slopes as f64 / count as f64,
        })
    );
}

/// One roll with what it costs.
fn each(made: &Made, tolerance: f64) -> Value {
    let path = rolled(made, tolerance, &[]);
    let seconds = (0..20).map(|_| {
        let started = Instant::now();
        std::hint::black_box(rolled(std::hint::black_box(made), tolerance, &[]));
        started.elapsed().as_secs_f64()
    });
    let mut told = told(made, &path);
    told["seconds"] = json!(seconds.fold(f64::INFINITY, f64::min));
    told["evaluations"] = json!(path.slopes());
    told
}

fn main() {
    let given: Vec<String> = std::env::args().skip(1).collect();
    let given: Vec<&str> = given.iter().map(String::as_str).collect();
    match given.as_slice() {
        ["each", tolerance, count] => {
            let tolerance = tolerance.parse().unwrap();
            for number in 0..count.parse().unwrap() {
                println!("{}", each(&made(number), tolerance));
            }
        }
        ["time", tolerance, count] => time(tolerance.parse().unwrap(), count.parse().unwrap()),
        [count] => {
            let places = STATIONS.map(Length::feet);
            for number in 0..count.parse().unwrap() {
                let made = made(number);
                println!("{}", told(&made, &rolled(&made, TOLERANCE, &places)));
            }
        }
        _ => eprintln!("shots N | shots each TOL N | shots time TOL N"),
    }
}
