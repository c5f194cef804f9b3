//! Grips to try, and how to compare what comes out.

use proptest::prelude::*;
use spanwright::fitting::{
    Sphere,
    grip::{Along, GripOrder, HoleOrder, Kind, Placed, Reading, Reference, place},
    hole::{Pitches, Section},
};

/// Rounding, and nothing else.
pub const HAIR: f64 = 1e-9;

pub fn round(size: f64) -> Section {
    Section::Round { size }
}

pub fn bare(size: f64, depth: f64, forward: f64, lateral: f64) -> HoleOrder {
    HoleOrder {
        bore: round(size),
        outside: None,
        depth,
        pitches: Pitches { forward, lateral },
        outside_pitches: None,
    }
}

pub fn full(value: f64) -> Reading {
    Reading {
        value,
        kind: Kind::Full,
        along: Along::Arc,
    }
}

/// A fingertip grip with slug and inserts, as many shops drill it.
pub fn fingertip() -> GripOrder {
    let finger = |lateral| HoleOrder {
        outside: Some(31.0 / 32.0),
        ..bare(25.0 / 32.0, 1.25, -0.25, lateral)
    };
    GripOrder {
        thumb: Some(HoleOrder {
            outside: Some(1.25),
            ..bare(1.0, 2.5, -0.125, 0.0625)
        }),
        middle: finger(-0.375),
        ring: finger(0.375),
        spans: Some([full(4.25), full(4.3125)]),
        palm_mark: None,
        bridge: 0.25,
        reference: Reference::OwnLine,
    }
}

/// Two hands, no thumb.
pub fn no_thumb() -> GripOrder {
    GripOrder {
        thumb: None,
        spans: None,
        palm_mark: Some(2.5),
        ..fingertip()
    }
}

pub fn pitches() -> impl Strategy<Value = Pitches> {
    (-0.75..0.75, -0.75..0.75).prop_map(|(forward, lateral)| Pitches { forward, lateral })
}

pub fn section() -> impl Strategy<Value = Section> {
    let oval = (0.6..1.0, 0.0..0.3, 0.0..180.0).prop_map(|(narrow, run, angle)| Section::Oval {
        wide: narrow + run,
        narrow,
        angle,
    });
    prop_oneof![(0.6..1.2).prop_map(round), oval]
}

pub fn hole_order() -> impl Strategy<Value = HoleOrder> {
    let own = prop_oneof![Just(None), pitches().prop_map(Some)];
    let outside = prop_oneof![Just(None), (0.0..0.4).prop_map(Some)];
    (section(), outside, 0.5..3.0, pitches(), own).prop_map(
        |(bore, wall, depth, pitches, outside_pitches)| HoleOrder {
            bore,
            outside: wall.map(|wall| bore.drill() + bore.run() + wall),
            depth,
            pitches,
            outside_pitches,
        },
    )
}

pub fn reading() -> impl Strategy<Value = Reading> {
    let kind = prop_oneof![Just(Kind::Full), Just(Kind::Cut), Just(Kind::Centre)];
    let along = prop_oneof![Just(Along::Arc), Just(Along::Chord)];
    (3.6..4.4, kind, along).prop_map(|(value, kind, along)| Reading { value, kind, along })
}

pub fn order() -> impl Strategy<Value = GripOrder> {
    let holes = (
        proptest::option::weighted(0.8, hole_order()),
        hole_order(),
        hole_order(),
    );
    let reference = prop_oneof![Just(Reference::OwnLine), Just(Reference::Centreline)];
    (holes, (reading(), reading()), 0.1..3.0, 0.1..0.6, reference).prop_map(
        |((thumb, middle, ring), (first, second), mark, bridge, reference)| GripOrder {
            thumb,
            middle,
            ring,
            spans: thumb.map(|_| [first, second]),
            palm_mark: thumb.is_none().then_some(mark),
            bridge,
            reference,
        },
    )
}

pub fn ball() -> impl Strategy<Value = Sphere> {
    (26.7..27.1).prop_filter_map("a ball", |around| Sphere::around(around).ok())
}

/// Every order here lies on the ball except where the two spans differ by nearly the bridge and more.
pub fn placed(ball: &Sphere, order: &GripOrder) -> Result<Placed, TestCaseError> {
    place(ball, order).map_err(|fault| TestCaseError::reject(fault.to_string()))
}

pub fn near(one: f64, other: f64, within: f64) -> Result<(), TestCaseError> {
    prop_assert!((one - other).abs() < within, "{} is not {}", one, other);
    Ok(())
}

pub fn same_place(one: [f64; 3], other: [f64; 3]) -> Result<(), TestCaseError> {
    for (one, other) in one.into_iter().zip(other) {
        near(one, other, HAIR)?;
    }
    Ok(())
}

pub fn dot(one: [f64; 3], other: [f64; 3]) -> f64 {
    one.iter().zip(other).map(|(one, other)| one * other).sum()
}

pub fn cross([a, b, c]: [f64; 3], [x, y, z]: [f64; 3]) -> [f64; 3] {
    [b * z - c * y, c * x - a * z, a * y - b * x]
}

pub fn length(vector: [f64; 3]) -> f64 {
    dot(vector, vector).sqrt()
}

pub fn plus(one: [f64; 3], other: [f64; 3], times: f64) -> [f64; 3] {
    [0, 1, 2].map(|index| one[index] + times * other[index])
}

/// Two straight holes so close that they break 0.9 in down.
pub fn thin() -> GripOrder {
    let mut order = fingertip();
    order.middle.pitches = Pitches::NONE;
    order.ring.pitches = Pitches::NONE;
    order
}
