//! Rolls, as ratios to one plain ranking of the shelf in the same run: the exact results for 500 balls and one bowler, one full path at three
//! precisions, a whole `roll` comparison with its range, and an upgrade path.
//!
//! The exact results are all that a ball's facts are made of: the course, the end of slip, the line farthest out where the oil ends.
//! `explain/plain.rs` says what a plain ranking is; its balls have no core numbers, so nothing of a roll is in it.

// A bench may stop as tests may.
#![allow(clippy::unwrap_used)]

#[path = "explain/plain.rs"]
mod plain;

use std::hint::black_box;
use std::time::Duration;

use criterion::Criterion;
use plain::{Plain, bowlers, time};
use spanwright::advice::Shop;
use spanwright::bowler::Bowler;
use spanwright::document::Document;
use spanwright::motion::closed::{Thrown, roll};
use spanwright::motion::path::{self, Shot};
use spanwright::motion::{
    Angle, Attitude, Ball, Friction, Lane, Length, Mass, Release, Speed, Spin,
};

/// How many balls are rolled.
const BALLS: usize = 500;

/// What is timed.
type Timed<'a> = (String, Box<dyn FnMut() -> usize + 'a>);

fn main() {
    let shop = Shop::demo().unwrap();
    let everybody = bowlers();
    let plain = Plain::new(&shop, &everybody);
    let rank = {
        let times: Vec<Duration> = (everybody.iter())
            .map(|bowler| time(|| plain.rank(bowler)))
            .collect();
        times.iter().sum::<Duration>() / u32::try_from(times.len()).unwrap()
    };
    println!("plain ranking: {rank:?}");
    let (balls, release, lane) = (balls(), release(), lane());
    let shot = shot();
    let bowler = demo("two-balls");
    let named = shop.roll(&bowler, &compared(), None).unwrap();
    assert!(named.apart().is_some());
    let mut all: Vec<Timed> = vec![(
        format!("closed, {BALLS} balls"),
        Box::new(|| roll_all(&balls, &release, &lane)),
    )];
    for tolerance in [1e-6, 1e-8, 1e-10] {
        let rolled = move || path::roll(&shot, &[], tolerance).unwrap().slopes();
        all.push((format!("one path at {tolerance:e}"), Box::new(rolled)));
    }
    all.push((
        "roll, two balls".to_owned(),
        Box::new(|| shop.roll(&bowler, &compared(), None).unwrap().balls().len()),
    ));
    all.push((
        "upgrade".to_owned(),
        Box::new(|| shop.upgrade(&bowler).unwrap().next().len()),
    ));
    for (name, run) in &mut all {
        let took = time(&mut *run);
        let ratio = took.as_secs_f64() / rank.as_secs_f64();
        println!("{name}: {took:?}, ratio {ratio:.2}");
    }

    let mut criterion = Criterion::default().configure_from_args();
    for (name, run) in &mut all {
        criterion.bench_function(name, |bencher| bencher.iter(|| black_box(run())));
    }
    criterion.final_summary();
}

/// A demo bowler by the file's name.
fn demo(name: &str) -> Bowler {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/catalog-demo/bowlers");
    let document = Document::read(format!("{folder}/{name}.yaml").as_ref()).unwrap();
    Bowler::read(&document).unwrap()
}

fn compared() -> [String; 2] {
    ["daisy", "tormentil"].map(str::to_owned)
}

/// Beta and friction of made-up balls, no two alike.
fn balls() -> Vec<(f64, Friction)> {
    (0..BALLS)
        .map(|at| {
            let part = at as f64 / BALLS as f64;
            let friction = Friction::new(0.012 + 0.018 * part, 0.2 - 0.1 * part).unwrap();
            (0.32 + 0.08 * part, friction)
        })
        .collect()
}

/// A league bowler.
fn release() -> Release {
    Release::new(
        Speed::mph(16.5),
        Spin::rpm(300.0),
        Angle::degrees(45.0),
        Angle::degrees(13.0),
    )
    .unwrap()
}

fn lane() -> Lane {
    Lane::oiled(Length::feet(40.0), Length::feet(3.0)).unwrap()
}

/// A strong core with its pin 3 3/8 in from the PAP, thrown so.
fn shot() -> Shot {
    let rg = [2.50, 2.54, 2.55].map(Length::inches);
    Shot {
        ball: Ball::new(Mass::pounds(15.0), Length::inches(4.295), rg).unwrap(),
        attitude: Attitude::new(
            Angle::degrees(45.0),
            Angle::degrees(20.0),
            Angle::degrees(50.0),
        )
        .unwrap(),
        release: release()
            .sent(Length::inches(-4.0), Angle::degrees(-1.5))
            .unwrap(),
        lane: lane(),
        friction: Friction::new(0.02, 0.16).unwrap(),
    }
}

fn roll_all(balls: &[(f64, Friction)], release: &Release, lane: &Lane) -> usize {
    let thrown = Thrown::of(release);
    let radius = Length::inches(4.297);
    balls
        .iter()
        .filter(|(beta, friction)| roll(&thrown, *beta, radius, lane, friction).turn_done() > 0.9)
        .count()
}
