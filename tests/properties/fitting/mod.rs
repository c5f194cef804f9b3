//! The mathematics of the drill: what must hold for every ball, grip, hole and layout there could be.

mod anything;
mod balance;
mod grips;
mod there_and_back;

use proptest::prelude::*;
use spanwright::fitting::grip::{Along, GripOrder, HoleOrder, Kind, Reading, Reference};
use spanwright::fitting::hole::{Pitches, Section};
use spanwright::fitting::{Misfit, Sphere};

/// What is the same, is the same to this many inches, ounces or degrees.
const HAIR: f64 = 1e-9;

fn ball() -> impl Strategy<Value = Sphere> {
    (26.5..27.1).prop_filter_map("a ball", |around| Sphere::around(around).ok())
}

fn near(one: f64, other: f64) -> Result<(), TestCaseError> {
    prop_assert!((one - other).abs() < HAIR, "{one} is not {other}");
    Ok(())
}

fn all_near(one: [f64; 3], other: [f64; 3]) -> Result<(), TestCaseError> {
    for (one, other) in one.into_iter().zip(other) {
        near(one, other)?;
    }
    Ok(())
}

fn fits<T>(found: Result<T, Misfit>) -> Result<T, TestCaseError> {
    found.map_err(|misfit| TestCaseError::fail(misfit.to_string()))
}

/// A hole of about this size, bare or lined, round or oval, leaning any way.
fn hole(size: f64, outside: f64, depth: std::ops::Range<f64>) -> impl Strategy<Value = HoleOrder> {
    let bore =
        (size..size + 0.1, prop::option::of((0.0..0.15, 0.0..180.0))).prop_map(|(narrow, oval)| {
            match oval {
                Some((more, angle)) => Section::Oval {
                    wide: narrow + more,
                    narrow,
                    angle,
                },
                None => Section::Round { size: narrow },
            }
        });
    let pitches =
        (-0.5..0.5, -0.5..0.5).prop_map(|(forward, lateral)| Pitches { forward, lateral });
    (bore, any::<bool>(), depth, pitches).prop_map(move |(bore, lined, depth, pitches)| HoleOrder {
        bore,
        outside: lined.then_some(outside),
        depth,
        pitches,
        outside_pitches: None,
    })
}

/// A grip with a thumb whose spans close a triangle.
fn order() -> impl Strategy<Value = GripOrder> {
    let kinds = prop::sample::select(vec![Kind::Full, Kind::Cut, Kind::Centre]);
    let ways = prop::sample::select(vec![Along::Arc, Along::Chord]);
    let lines = prop::sample::select(vec![Reference::OwnLine, Reference::Centreline]);
    let spans = (3.6..4.8, -0.25..0.25, kinds, ways);
    let holes = (
        hole(0.85, 1.375, 2.0..3.0),
        hole(0.65, 0.96875, 1.25..2.0),
        hole(0.65, 0.96875, 1.25..2.0),
    );
    (holes, spans, 0.2..0.5, lines).prop_map(
        |((thumb, middle, ring), (span, more, kind, along), bridge, reference)| {
            let reading = |value| Reading { value, kind, along };
            GripOrder {
                thumb: Some(thumb),
                middle,
                ring,
                spans: Some([reading(span), reading(span + more)]),
                palm_mark: None,
                bridge,
                reference,
            }
        },
    )
}
