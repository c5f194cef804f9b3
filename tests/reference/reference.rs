//! Prints drilled balls as JSON lines, seeded and random: what `check.py` holds against meshes and brute force.

use std::error::Error;

use serde_json::{Value, json};
use spanwright::fitting::balance::{self, Ball, Change, Model, Scale};
use spanwright::fitting::grip::{
    Along, GripOrder, HoleOrder, Kind, Placed, Reading, Reference, place,
};
use spanwright::fitting::hole::{Hole, Pitches, Section};
use spanwright::fitting::inertia::{self, Core};
use spanwright::fitting::layout::Point;
use spanwright::fitting::solid::{self, Solid};
use spanwright::fitting::{Sphere, wall};

type Outcome<T> = Result<T, Box<dyn Error>>;

/// Besides one straight grip.
const OBLIQUE: u64 = 12;
const BALL_DENSITY: f64 = 1.2;
const LINING_DENSITY: f64 = 1.15;

/// Seeded numbers, the same on every machine: SplitMix64 (Steele, Lea and Flood, 2014).
struct Dice(u64);

impl Dice {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn yes(&mut self) -> bool {
        self.next() >> 63 == 1
    }

    fn pitches(&mut self, forward: (f64, f64), lateral: (f64, f64)) -> Pitches {
        Pitches {
            forward: self.between(forward.0, forward.1),
            lateral: self.between(lateral.0, lateral.1),
        }
    }
}

/// A grip of round holes, all aimed at the centre, for the closed form.
fn straight() -> GripOrder {
    let hole = |size, depth| HoleOrder {
        bore: Section::Round { size },
        outside: None,
        depth,
        pitches: Pitches::NONE,
        outside_pitches: None,
    };
    let span = Reading {
        value: 3.25,
        kind: Kind::Full,
        along: Along::Arc,
    };
    GripOrder {
        thumb: Some(hole(1.0, 2.5)),
        middle: hole(0.75, 1.5),
        ring: hole(0.6875, 1.25),
        spans: Some([span, span]),
        palm_mark: None,
        bridge: 0.5,
        reference: Reference::Centreline,
    }
}

/// A grip as nobody would order it, but as a drill could cut it: everything leans, some holes are oval, some are lined.
fn oblique(dice: &mut Dice) -> GripOrder {
    let depth = dice.between(1.25, 2.0);
    let lined = dice.yes();
    let mut finger = |lateral| HoleOrder {
        bore: Section::Round {
            size: dice.between(0.65, 0.8),
        },
        outside: lined.then_some(0.96875),
        depth,
        pitches: dice.pitches((-0.6, 0.3), lateral),
        outside_pitches: None,
    };
    // The bottoms lean apart, or the fingers would meet.
    let (middle, ring) = (finger((-0.75, -0.4)), finger((0.4, 0.75)));
    let narrow = dice.between(0.85, 1.0);
    let oval = Section::Oval {
        wide: narrow + dice.between(0.05, 0.2),
        narrow,
        angle: dice.between(0.0, 180.0),
    };
    let slug = dice.yes();
    let thumb = HoleOrder {
        bore: if dice.yes() {
            oval
        } else {
            Section::Round { size: narrow }
        },
        outside: slug.then_some(1.5),
        depth: dice.between(2.25, 3.0),
        pitches: if slug {
            dice.pitches((-0.1, 0.1), (-0.1, 0.1))
        } else {
            dice.pitches((-0.6, 0.6), (-0.4, 0.4))
        },
        // A slug hole is often drilled straight and only the bore in it leans.
        outside_pitches: (slug && dice.yes()).then_some(Pitches::NONE),
    };
    let span = dice.between(3.4, 4.6);
    let kind = [Kind::Full, Kind::Cut, Kind::Full, Kind::Centre][(dice.next() % 4) as usize];
    let along = if dice.yes() { Along::Arc } else { Along::Chord };
    let reading = |value| Reading { value, kind, along };
    GripOrder {
        thumb: Some(thumb),
        middle,
        ring,
        spans: Some([reading(span), reading(span + dice.between(-0.25, 0.25))]),
        palm_mark: None,
        bridge: dice.between(0.25, 0.4),
        reference: if dice.yes() {
            Reference::OwnLine
        } else {
            Reference::Centreline
        },
    }
}

fn section(section: Section) -> Value {
    match section {
        Section::Round { size } => json!({ "round": size }),
        Section::Oval { wide, narrow, .. } => json!({ "oval": [wide, narrow] }),
    }
}

fn hole(hole: &Hole) -> Value {
    json!({
        "mouth": hole.mouth(), "axis": hole.axis(), "wide": hole.wide(),
        "section": section(hole.section()), "depth": hole.depth(),
    })
}

fn solid(solid: &Solid) -> Value {
    json!({ "volume": solid.volume(), "first": solid.first(), "second": solid.second() })
}

/// The arc of a span as it was ordered.
fn arc(sphere: &Sphere, reading: &Reading) -> Outcome<f64> {
    Ok(match reading.along {
        Along::Arc => reading.value,
        Along::Chord => sphere.chord_to_arc(reading.value)?,
    })
}

/// What was ordered from edge to edge; centre spans have no edges.
fn edges(sphere: &Sphere, order: &GripOrder) -> Outcome<Vec<Value>> {
    let mut found =
        vec![json!({ "what": "bridge", "between": [1, 2], "cut": true, "arc": order.bridge })];
    for (finger, reading) in order.spans.iter().flatten().enumerate() {
        let what = ["middle span", "ring span"][finger];
        if reading.kind != Kind::Centre {
            found.push(json!({
                "what": what, "between": [0, finger + 1],
                "cut": reading.kind == Kind::Cut, "arc": arc(sphere, reading)?,
            }));
        }
    }
    Ok(found)
}

/// The hole as cut, and the bore in its slug or insert.
fn lined(
    sphere: &Sphere,
    cut: Hole,
    bore: Hole,
    outside: Option<f64>,
) -> Outcome<(Hole, Option<Hole>)> {
    if outside.is_none() {
        return Ok((cut, None));
    }
    // A bore that leans away from its hole would come through the bottom; it ends above.
    let above = if cut.axis() == bore.axis() {
        0.0
    } else {
        0.375
    };
    let shorter = Hole::along(
        sphere,
        bore.mouth(),
        bore.axis(),
        bore.wide(),
        bore.section(),
        bore.depth() - above,
    )?;
    Ok((cut, Some(shorter)))
}

fn holes(
    sphere: &Sphere,
    order: &GripOrder,
    placed: &Placed,
) -> Outcome<Vec<(&'static str, Hole, Option<Hole>)>> {
    let mut found = Vec::new();
    let bores = &placed.bores;
    if let (Some(cut), Some(bore), Some(ordered)) = (placed.thumb, bores.thumb, order.thumb) {
        let (cut, bore) = lined(sphere, cut, bore, ordered.outside)?;
        found.push(("thumb", cut, bore));
    }
    let (cut, bore) = lined(sphere, placed.middle, bores.middle, order.middle.outside)?;
    found.push(("middle", cut, bore));
    let (cut, bore) = lined(sphere, placed.ring, bores.ring, order.ring.outside)?;
    found.push(("ring", cut, bore));
    Ok(found)
}

/// A core that leans anywhere, symmetric every other time.
fn core(dice: &mut Dice) -> Outcome<(Core, Value)> {
    let (around, up) = (
        dice.between(0.0, std::f64::consts::TAU),
        dice.between(-1.2, 1.2),
    );
    let (cosine, sine) = (libm::cos(up), libm::sin(up));
    let pin = [cosine * libm::sin(around), sine, cosine * libm::cos(around)];
    // Square to the pin: along the circle of its height.
    let bias = [libm::cos(around), 0.0, -libm::sin(around)];
    let symmetric = dice.yes();
    let (low, differential) = (dice.between(2.46, 2.6), dice.between(0.02, 0.06));
    let intermediate = if symmetric {
        0.0
    } else {
        dice.between(0.005, 0.02)
    };
    let bias = (!symmetric).then_some(bias);
    let told = json!({
        "rg_low": low, "differential": differential, "intermediate": intermediate, "pin": pin, "mass_bias": bias,
    });
    Ok((Core::new(low, differential, intermediate, pin, bias)?, told))
}

fn spec(name: &str, sphere: &Sphere, order: &GripOrder, dice: &mut Dice) -> Outcome<Value> {
    let placed = place(sphere, order)?;
    let holes = holes(sphere, order, &placed)?;
    let (mut removed, mut back, mut told, mut changes) =
        (Vec::new(), Vec::new(), Vec::new(), Vec::new());
    for (digit, cut, bore) in &holes {
        let out = solid::drilled(sphere, cut)?;
        changes.push(Change::out(out, BALL_DENSITY)?);
        removed.push(solid(&out));
        let mut words = hole(cut);
        words["name"] = json!(digit);
        words["bore"] = Value::Null;
        back.push(Value::Null);
        if let Some(bore) = bore {
            let lining = solid::sleeve(sphere, cut, bore)?;
            changes.push(Change::back(lining, LINING_DENSITY)?);
            words["bore"] = hole(bore);
            words["bore"]["density"] = json!(LINING_DENSITY);
            if let Some(last) = back.last_mut() {
                *last = solid(&lining);
            }
        }
        told.push(words);
    }
    let mut walls = Vec::new();
    for (second, (_, other, _)) in holes.iter().enumerate() {
        for (first, (_, one, _)) in holes.iter().enumerate().take(second) {
            walls.push(json!({ "between": [first, second], "least": wall::between(sphere, one, other).least }));
        }
    }
    let scale = Scale::new(4.0, Model::Moment)?;
    let spot = Point::new(sphere, dice.between(-3.0, 3.0), dice.between(-3.0, 3.0))?;
    let ball = Ball::undrilled(
        *sphere,
        dice.between(190.0, 256.0),
        dice.between(0.5, 4.0),
        spot,
        &scale,
    )?;
    let (core, core_told) = core(dice)?;
    let finished = balance::finish(&ball, &changes, &scale)?;
    let turning = inertia::after(&core, &ball, &changes)?;
    Ok(json!({
        "name": name, "radius": sphere.radius(), "holes": told, "edges": edges(sphere, order)?,
        "removed": removed, "back": back, "density": BALL_DENSITY, "walls": walls,
        "ball": { "ounces": ball.ounces(), "moment": ball.moment() }, "core": core_told,
        "finished": { "ounces": finished.ounces(), "centre": finished.centre() },
        "turning": {
            "rg_low": turning.rg_low(), "rg_high": turning.rg_high(), "intermediate": turning.intermediate(),
            "differential": turning.differential(), "axes": turning.axes(), "tensor": turning.tensor(),
        },
    }))
}

fn main() -> Outcome<()> {
    let mut dice = Dice(20_260_110);
    println!(
        "{}",
        spec("straight", &Sphere::default(), &straight(), &mut dice)?
    );
    for number in 1..=OBLIQUE {
        let sphere = Sphere::around(dice.between(26.7, 27.0))?;
        let order = oblique(&mut dice);
        println!(
            "{}",
            spec(&format!("oblique-{number}"), &sphere, &order, &mut dice)?
        );
    }
    Ok(())
}
