//! The exact results of the roll for 500 balls and one bowler, as a ratio to one plain ranking of the shelf in the same run.
//!
//! Everything that `roll` tells is worked out for each ball: the course, the end of slip, and the line farthest out where the oil ends. The plain ranking
//! gives every stocked ball's total for a bowler whose weight and grip are settled, compiled once; its bowler bowls hooks at known speed and
//! revs, so the columns of the roll are part of it.

// A bench may stop as tests may.
#![allow(clippy::unwrap_used)]

use std::hint::black_box;
use std::time::{Duration, Instant};

use criterion::Criterion;
use spanwright::advice::Shop;
use spanwright::bowler::Bowler;
use spanwright::motion::closed::{Thrown, roll};
use spanwright::motion::{Angle, Friction, Lane, Length, Release, Speed, Spin};

/// How many balls are rolled.
const BALLS: usize = 500;

fn main() {
    let shop = Shop::demo().unwrap();
    let bowler = Bowler::unheard()
        .with("bowler.intent", Some(2))
        .with("bowler.experience", Some(2))
        .with("bowler.speed", Some(165))
        .with("bowler.rev_rate", Some(300))
        .with("bowler.ball_now_weight", Some(1500));
    let balls = balls();
    let (rank, rolls) = (
        time(|| shop.standing(&bowler).unwrap().all().len()),
        time(|| roll_all(&balls)),
    );
    let ratio = rolls.as_secs_f64() / rank.as_secs_f64();
    println!(
        "{BALLS} balls, one bowler: closed {rolls:?}, one ranking of the shelf {rank:?}, ratio {ratio:.2}"
    );

    let mut criterion = Criterion::default().configure_from_args();
    criterion.bench_function("closed, 500 balls", |bencher| {
        bencher.iter(|| roll_all(black_box(&balls)));
    });
    criterion.final_summary();
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

fn roll_all(balls: &[(f64, Friction)]) -> usize {
    let release = Release::new(
        Speed::mph(16.5),
        Spin::rpm(300.0),
        Angle::degrees(45.0),
        Angle::degrees(13.0),
    );
    let thrown = Thrown::of(&release.unwrap());
    let lane = Lane::oiled(Length::feet(40.0), Length::feet(3.0)).unwrap();
    let radius = Length::inches(4.297);
    balls
        .iter()
        .filter(|(beta, friction)| roll(&thrown, *beta, radius, &lane, friction).turn_done() > 0.9)
        .count()
}

/// Of many rounds the one that a tenth of all are faster than, so that what else the machine does hardly counts.
fn time(mut run: impl FnMut() -> usize) -> Duration {
    black_box(run());
    let started = Instant::now();
    let mut rounds = Vec::new();
    while rounds.len() < 20
        || (rounds.len() < 400 && started.elapsed() < Duration::from_millis(300))
    {
        let start = Instant::now();
        black_box(run());
        rounds.push(start.elapsed());
    }
    rounds.sort_unstable();
    rounds[rounds.len() / 10]
}
