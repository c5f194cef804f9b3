//! A whole drilled ball (grip placed, walls, solids, balance, spin) against a million random points for its removed weight alone, and
//! the best of 500 balls on the shelf against the whole drilled ball.
//!
//! The points are thrown into the holes' own cylinders, nearly all of them hit, and nothing but the weight is counted: as cheap and as
//! exact as a million points get. Both errors are told, against a sum over fine rings that shares no line with either.

// A bench may stop as tests may.
#![allow(clippy::unwrap_used)]

use std::f64::consts::{PI, TAU};
use std::hint::black_box;
use std::time::{Duration, Instant};

use criterion::Criterion;
use glam::DVec3;
use spanwright::fitting::balance::{self, Ball, Change, Finished, Model, Scale};
use spanwright::fitting::best_unit::{Limits, Unit, best};
use spanwright::fitting::grip::{Along, GripOrder, HoleOrder, Kind, Reading, Reference, place};
use spanwright::fitting::hole::{Hole, Pitches, Section};
use spanwright::fitting::inertia::{self, Core, Turning};
use spanwright::fitting::layout::Point;
use spanwright::fitting::wall::{self, Wall};
use spanwright::fitting::{Sphere, solid};

const POINTS: u32 = 1_000_000;
const UNITS: usize = 500;
/// Places for the heavy spot of each.
const PLACES: usize = 24;
/// g/cm³ of the ball, and of slug and inserts.
const DENSITIES: (f64, f64) = (1.2, 1.15);
/// Ounces in a cubic inch at 1 g/cm³, exact by definition.
const OUNCES: f64 = 16.387_064 / 28.349_523_125;

/// All that is told of one drilled ball.
struct Whole {
    holes: Vec<Hole>,
    walls: Vec<Wall>,
    changes: Vec<Change>,
    finished: Finished,
    turning: Turning,
}

struct Bench {
    sphere: Sphere,
    order: GripOrder,
    scale: Scale,
    ball: Ball,
    core: Core,
}

fn main() {
    let bench = Bench::new();
    let whole = bench.whole();
    let radius = bench.sphere.radius();
    let rings: f64 = whole.holes.iter().map(|hole| rings(radius, hole)).sum();
    let truth = rings * DENSITIES.0 * OUNCES;
    let points_found = thrown(radius, &whole.holes) * DENSITIES.0 * OUNCES;
    let found = whole.finished.out_ounces();
    println!(
        "removed: {truth:.9} oz by rings; ours off by {:.1e}, a million points off by {:.1e}",
        (found / truth - 1.0).abs(),
        (points_found / truth - 1.0).abs()
    );
    assert!(
        (found / truth - 1.0).abs() < 1e-9,
        "the spec is wrong, so its speed means nothing"
    );

    let shelf = Shelf::new(&bench.sphere);
    let units = shelf.units();
    let limits = Limits {
        top: 3.0,
        side: 3.0,
        finger: 3.0,
    };
    let choose = || best(&bench.sphere, &units, &whole.changes, &bench.scale, &limits).unwrap();
    let spec = time(|| bench.whole().walls.len());
    let points = time(|| thrown(radius, &whole.holes));
    let shelf = time(|| choose().len());
    println!(
        "whole spec {spec:?}, million points {points:?}, ratio {:.5}",
        ratio(spec, points)
    );
    println!(
        "best of {UNITS} {shelf:?}, whole spec {spec:?}, ratio {:.3}",
        ratio(shelf, spec)
    );

    let mut criterion = Criterion::default().configure_from_args();
    let mut group = criterion.benchmark_group("drilled ball");
    group.sample_size(20);
    group.bench_function("whole spec", |bencher| {
        bencher.iter(|| black_box(bench.whole()).turning.differential())
    });
    group.bench_function("million points", |bencher| {
        bencher.iter(|| black_box(thrown(radius, &whole.holes)))
    });
    group.bench_function("best of 500", |bencher| {
        bencher.iter(|| black_box(choose()))
    });
    group.finish();
    criterion.final_summary();
}

impl Bench {
    /// A usual fit that leans all ways: a slug, two inserts, forward and reverse, a core with a mass bias.
    fn new() -> Bench {
        let sphere = Sphere::default();
        let finger = |lateral| HoleOrder {
            bore: Section::Round { size: 0.75 },
            outside: Some(0.96875),
            depth: 1.5,
            pitches: Pitches {
                forward: -0.25,
                lateral,
            },
            outside_pitches: None,
        };
        let thumb = HoleOrder {
            bore: Section::Round { size: 1.0 },
            outside: Some(1.25),
            depth: 2.75,
            pitches: Pitches {
                forward: 0.125,
                lateral: -0.0625,
            },
            outside_pitches: None,
        };
        let span = Reading {
            value: 4.25,
            kind: Kind::Full,
            along: Along::Arc,
        };
        let order = GripOrder {
            thumb: Some(thumb),
            middle: finger(-0.375),
            ring: finger(0.375),
            spans: Some([span, span]),
            palm_mark: None,
            bridge: 0.25,
            reference: Reference::OwnLine,
        };
        let scale = Scale::new(4.0, Model::Moment).unwrap();
        let spot = Point::new(&sphere, 1.0, 1.5).unwrap();
        let ball = Ball::undrilled(sphere, 240.0, 3.0, spot, &scale).unwrap();
        let pin = DVec3::new(0.3, 0.6, 0.7);
        let bias = pin.cross(DVec3::X);
        let core = Core::new(2.48, 0.05, 0.015, pin.to_array(), Some(bias.to_array())).unwrap();
        Bench {
            sphere,
            order,
            scale,
            ball,
            core,
        }
    }

    fn whole(&self) -> Whole {
        let sphere = &self.sphere;
        let placed = place(sphere, &self.order).unwrap();
        let bores = placed.bores;
        let pairs = [
            (placed.thumb.unwrap(), bores.thumb.unwrap()),
            (placed.middle, bores.middle),
            (placed.ring, bores.ring),
        ];
        let mut changes = Vec::new();
        for (cut, bore) in &pairs {
            let out = solid::drilled(sphere, cut).unwrap();
            let lining = solid::sleeve(sphere, cut, bore).unwrap();
            changes.push(Change::out(out, DENSITIES.0).unwrap());
            changes.push(Change::back(lining, DENSITIES.1).unwrap());
        }
        let holes = pairs.map(|(cut, _)| cut).to_vec();
        let walls = [(0, 1), (0, 2), (1, 2)]
            .map(|(one, other)| wall::between(sphere, &holes[one], &holes[other]));
        Whole {
            walls: walls.to_vec(),
            finished: balance::finish(&self.ball, &changes, &self.scale).unwrap(),
            turning: inertia::after(&self.core, &self.ball, &changes).unwrap(),
            holes,
            changes,
        }
    }
}

/// The balls on the shelf: top weights, and rings of places around pins of all kinds.
struct Shelf(Vec<(String, f64, Vec<Point>)>);

impl Shelf {
    fn new(sphere: &Sphere) -> Shelf {
        let unit = |unit: usize| {
            let pin_out = 1.0 + (unit % 29) as f64 / 8.0;
            let place = |step: usize| {
                let turn = TAU * step as f64 / PLACES as f64;
                Point::new(sphere, pin_out * turn.cos(), pin_out * turn.sin()).unwrap()
            };
            let top_weight = 1.5 + (unit % 37) as f64 / 16.0;
            (
                format!("unit-{unit:03}"),
                top_weight,
                (0..PLACES).map(place).collect(),
            )
        };
        Shelf((0..UNITS).map(unit).collect())
    }

    fn units(&self) -> Vec<Unit<'_>> {
        self.0
            .iter()
            .map(|(id, top_weight, places)| Unit {
                id,
                top_weight: *top_weight,
                places,
            })
            .collect()
    }
}

/// Two directions square to a hole's axis and to each other, and its radius.
fn across(hole: &Hole) -> (DVec3, DVec3, f64) {
    let (axis, wide) = (
        DVec3::from_array(hole.axis()),
        DVec3::from_array(hole.wide()),
    );
    (wide, axis.cross(wide), hole.section().drill() / 2.0)
}

/// Volume of a round hole by Simpson's rule over rings and a plain mean around each: far more of both than ten digits need.
fn rings(radius: f64, hole: &Hole) -> f64 {
    const RINGS: usize = 2000;
    const AROUND: usize = 256;
    let (mouth, axis) = (
        DVec3::from_array(hole.mouth()),
        DVec3::from_array(hole.axis()),
    );
    let (wide, aside, r) = across(hole);
    let around = |ring: f64| -> f64 {
        let depth = |step: usize| {
            let turn = TAU * step as f64 / AROUND as f64;
            let start = mouth + ring * (wide * turn.cos() + aside * turn.sin());
            let along = start.dot(axis);
            let top = -along - (along * along - start.length_squared() + radius * radius).sqrt();
            hole.depth() - top
        };
        TAU * ring * (0..AROUND).map(depth).sum::<f64>() / AROUND as f64
    };
    let weight = |step: usize| match step {
        0 | RINGS => 1.0,
        odd if odd % 2 == 1 => 4.0,
        _ => 2.0,
    };
    let width = r / RINGS as f64;
    (0..=RINGS)
        .map(|step| weight(step) * around(step as f64 * width))
        .sum::<f64>()
        * width
        / 3.0
}

/// Volume of round holes by random points, an equal share for each hole.
fn thrown(radius: f64, holes: &[Hole]) -> f64 {
    let mut state = 0x2545_f491_4f6c_dd1d_u64;
    // Xorshift: as fast as a random number gets.
    let mut random = || {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        (state >> 11) as f64 / (1_u64 << 53) as f64
    };
    let share = POINTS / holes.len() as u32;
    let mut volume = 0.0;
    for hole in holes {
        let (mouth, axis) = (
            DVec3::from_array(hole.mouth()),
            DVec3::from_array(hole.axis()),
        );
        let (wide, aside, r) = across(hole);
        // A leaning hole's rim stands out this far above the mouth's level; no pitch here comes near a fifth.
        let lip = 0.2 * r;
        let length = hole.depth() + lip;
        let mut hits = 0_u32;
        for _ in 0..share {
            let (out, turn) = (r * random().sqrt(), TAU * random());
            let point = mouth
                + axis * (length * random() - lip)
                + wide * (out * turn.cos())
                + aside * (out * turn.sin());
            hits += u32::from(point.length_squared() < radius * radius);
        }
        volume += PI * r * r * length * f64::from(hits) / f64::from(share);
    }
    volume
}

/// One run: the median of the quicker third of sixty.
fn time<T>(mut run: impl FnMut() -> T) -> Duration {
    let mut found: Vec<Duration> = (0..60)
        .map(|_| {
            let start = Instant::now();
            black_box(run());
            start.elapsed()
        })
        .collect();
    found.sort();
    found[10]
}

fn ratio(one: Duration, other: Duration) -> f64 {
    one.as_secs_f64() / other.as_secs_f64()
}
