//! From an order to the ball and back, mirror images, the frame, edges.

use proptest::prelude::*;
use rstest::rstest;
use spanwright::fitting::{
    Sphere,
    grip::{Along, Digit, GripOrder, HoleOrder, Kind, Reference, place},
    hole::{Hole, Pitches, Section},
};

use crate::grips::*;

/// The order of the hand in the mirror. In the frame the left finger is called middle, so the names change too.
fn mirrored(order: &GripOrder) -> GripOrder {
    let hole = |hole: HoleOrder| HoleOrder {
        bore: hole.bore.mirrored(),
        pitches: hole.pitches.mirrored(),
        outside_pitches: hole.outside_pitches.map(Pitches::mirrored),
        ..hole
    };
    GripOrder {
        thumb: order.thumb.map(hole),
        middle: hole(order.ring),
        ring: hole(order.middle),
        spans: order.spans.map(|[middle, ring]| [ring, middle]),
        ..*order
    }
}

proptest! {
    #[test]
    fn spans_and_bridge_there_and_back(ball in ball(), order in order()) {
        let grip = placed(&ball, &order)?;
        near(grip.bridge(&ball), order.bridge, HAIR)?;
        if let Some(spans) = order.spans {
            for (digit, reading) in [Digit::Middle, Digit::Ring].into_iter().zip(spans) {
                let found = grip.span(&ball, digit, reading.kind, reading.along);
                near(found.unwrap_or(f64::NAN), reading.value, HAIR)?;
            }
        }
    }

    #[test]
    fn the_axis_misses_the_centre_by_the_pitch(ball in ball(), order in order()) {
        let grip = placed(&ball, &order)?;
        for (digit, hole) in grip.holes() {
            let pitch = order.hole(digit).map_or(f64::NAN, |hole| hole.cut_pitches().total());
            near(length(cross(hole.mouth(), hole.axis())), pitch, HAIR)?;
            near(length(hole.mouth()), ball.radius(), HAIR)?;
            near(length(hole.axis()), 1.0, HAIR)?;
            near(dot(hole.axis(), hole.wide()), 0.0, HAIR)?;
            prop_assert!(dot(hole.mouth(), hole.axis()) < 0.0);
        }
    }

    #[test]
    fn the_grip_lies_in_its_frame(ball in ball(), order in order()) {
        let grip = placed(&ball, &order)?;
        prop_assert!(grip.middle.mouth()[0] < 0.0 && grip.ring.mouth()[0] > 0.0);
        prop_assert!(grip.middle.mouth()[1] > 0.0 && grip.ring.mouth()[1] > 0.0);
        if let Some(thumb) = grip.thumb {
            near(thumb.mouth()[0], 0.0, HAIR)?;
            prop_assert!(thumb.mouth()[1] < 0.0 && thumb.mouth()[2] > 0.0);
        }
        // Forward leans a finger's bottom toward the thumb, right to the right.
        let straight = |hole: HoleOrder| HoleOrder { outside: None, pitches: Pitches::NONE, ..hole };
        let tried = |pitches| {
            let ring = HoleOrder { pitches, ..straight(order.ring) };
            placed(&ball, &GripOrder { ring, ..order }).map(|grip| grip.ring)
        };
        let lean = |hole: Hole| plus(hole.axis(), hole.mouth(), 1.0 / ball.radius());
        let forward = tried(Pitches { forward: 0.5, lateral: 0.0 })?;
        prop_assert!(lean(forward)[1] < 0.0);
        let right = tried(Pitches { forward: 0.0, lateral: 0.5 })?;
        prop_assert!(lean(right)[0] > 0.0);
    }

    /// Every place of an outline is on the sphere and on the drill's wall.
    #[test]
    fn outlines_lie_on_sphere_and_wall(ball in ball(), order in order()) {
        let grip = placed(&ball, &order)?;
        for (_, hole) in grip.holes() {
            let outline = hole.outline(24).map_err(|fault| TestCaseError::fail(fault.to_string()))?;
            prop_assert_eq!(outline.len(), 24);
            for place in outline {
                near(length(place), ball.radius(), HAIR)?;
                let from_mouth = plus(place, hole.mouth(), -1.0);
                let along = dot(from_mouth, hole.wide());
                let half = hole.section().run() / 2.0;
                let from_run = plus(from_mouth, hole.wide(), -along.clamp(-half, half));
                near(length(cross(from_run, hole.axis())), hole.section().drill() / 2.0, HAIR)?;
            }
        }
    }

    #[test]
    fn a_mirrored_order_gives_mirrored_holes(ball in ball(), order in order()) {
        let grip = placed(&ball, &order)?.mirrored();
        let mirror = placed(&ball, &mirrored(&order))?;
        let pairs = [
            (grip.thumb, mirror.thumb),
            (Some(grip.middle), Some(mirror.ring)),
            (Some(grip.ring), Some(mirror.middle)),
            (grip.bores.thumb, mirror.bores.thumb),
            (Some(grip.bores.middle), Some(mirror.bores.ring)),
        ];
        for (one, other) in pairs {
            let (Some(one), Some(other)) = (one, other) else {
                prop_assert_eq!(one, other);
                continue;
            };
            same_place(one.mouth(), other.mouth())?;
            same_place(one.axis(), other.axis())?;
            // An oval's wide direction has no front.
            let same = dot(one.wide(), other.wide()).abs();
            prop_assert!(one.section().run() == 0.0 || (same - 1.0).abs() < HAIR);
        }
    }
}

/// The span runs to the oval's own edge: along its wide direction half the wide size away, across it half the narrow
/// one.
#[rstest]
#[case(90.0, 1.2)]
#[case(0.0, 0.9)]
fn a_span_runs_to_the_ovals_edge(#[case] angle: f64, #[case] across: f64) {
    let ball = Sphere::default();
    let oval = Section::Oval {
        wide: 1.2,
        narrow: 0.9,
        angle,
    };
    let mut order = fingertip();
    order.spans = Some([full(4.25); 2]);
    order.bridge = 1e-6;
    let thin = bare(0.2, 1.0, 0.0, 0.0);
    let thumb = HoleOrder {
        bore: oval,
        ..bare(1.0, 2.0, 0.0, 0.0)
    };
    (order.thumb, order.middle, order.ring) = (Some(thumb), thin, thin);
    let grip = place(&ball, &order).unwrap();
    let centre = grip
        .span(&ball, Digit::Middle, Kind::Centre, Along::Arc)
        .unwrap();
    let half = |size: f64| ball.radius() * (size / 2.0 / ball.radius()).asin();
    // The finger holes are narrow and close together, so the spans run nearly straight up from the thumb.
    assert!(
        (centre - 4.25 - half(across) - half(0.2)).abs() < 3e-4,
        "{centre}"
    );
}

/// Counter-clockwise from the hole's right as seen from outside: 45 degrees point up and to the right.
#[test]
fn an_ovals_angle_counts_from_the_right() {
    let ball = Sphere::default();
    let oval = Section::Oval {
        wide: 1.1,
        narrow: 0.9,
        angle: 45.0,
    };
    let mut order = fingertip();
    let straight = HoleOrder {
        bore: oval,
        ..bare(0.9, 2.0, 0.0, 0.0)
    };
    (order.thumb, order.ring) = (Some(straight), straight);
    order.reference = Reference::Centreline;
    let grip = place(&ball, &order).unwrap();
    for (digit, hole) in grip.holes().filter(|(digit, _)| *digit != Digit::Middle) {
        let [x, y, _] = hole.wide();
        assert!(
            x * y > 0.0 && (x.abs() - 0.5_f64.sqrt()).abs() < 0.1,
            "{digit:?} {x} {y}"
        );
    }
}

/// The near edge of a leaning hole, found from outside: it lies on the great circle between the centres, half a
/// diameter from the axis.
#[test]
fn edges_lie_on_the_drills_wall() {
    let ball = Sphere::default();
    let mut order = fingertip();
    order.spans = Some([full(4.25); 2]);
    // All alike on both sides, so that both reaches are.
    order.thumb = Some(bare(1.0, 2.5, 0.25, 0.0));
    order.middle = bare(0.9, 1.5, 0.375, -0.5);
    order.ring = bare(0.9, 1.5, 0.375, 0.5);
    let grip = place(&ball, &order).unwrap();
    let (here, there) = (grip.middle.mouth(), grip.ring.mouth());
    let apart = (dot(here, there) / ball.radius().powi(2)).acos();
    let reach = (apart - order.bridge / ball.radius()) / 2.0;
    let edge = [0, 1, 2]
        .map(|part| (here[part] * (apart - reach).sin() + there[part] * reach.sin()) / apart.sin());
    let from_mouth = plus(edge, here, -1.0);
    assert!((length(cross(from_mouth, grip.middle.axis())) - 0.45).abs() < 1e-9);
    let found = grip.middle.edge(there).unwrap();
    assert!(length(plus(found, edge, -1.0)) < 1e-9);
}

/// With straight holes and like spans everything about the grip centre is plain: it halves the line from edge to edge.
#[test]
fn the_grip_centre_halves_the_cut_span() {
    let ball = Sphere::default();
    let mut order = thin();
    order.spans = Some([full(4.25); 2]);
    order.thumb = Some(HoleOrder {
        outside: Some(1.25),
        ..bare(1.0, 2.5, 0.0, 0.0)
    });
    let grip = place(&ball, &order).unwrap();
    let reach = |size: f64| (size / 2.0 / ball.radius()).asin();
    let (thumb, finger) = (grip.thumb.unwrap().mouth(), grip.ring.mouth());
    let whole = (dot(thumb, finger) / ball.radius().powi(2)).acos();
    let at = (reach(1.25) + whole - reach(31.0 / 32.0)) / 2.0;
    // The midpoint on the thumb-ring line: level with the grip centre, to the right of it.
    let middle = [0, 1, 2]
        .map(|part| (thumb[part] * (whole - at).sin() + finger[part] * at.sin()) / whole.sin());
    assert!(middle[1].abs() < 1e-12 && middle[0] > 0.1, "{middle:?}");
}

/// No thumb: straight holes 31/32 as felt 25/32 wide; the mark lies 2.5 in below the line of the bores' lower edges.
#[test]
fn the_palm_mark_is_the_grip_centre() {
    let ball = Sphere::default();
    let mut order = no_thumb();
    order.middle.pitches = Pitches::NONE;
    order.ring.pitches = Pitches::NONE;
    let grip = place(&ball, &order).unwrap();
    let [x, y, z] = grip.ring.mouth();
    let radius = ball.radius();
    // The level of the two edges on the centreline; edges are straight below the centres, along the direction of the
    // centreline.
    let half = (x / radius).asin();
    let down = (25.0 / 64.0 / radius).asin();
    let level = (down.tan() / half.cos()).atan();
    assert!(((y / z).atan() - level - 2.5 / radius).abs() < 1e-12);
    assert!((grip.middle.mouth()[0] + x).abs() < 1e-12);
    assert_eq!(grip.thumb, None);
    assert_eq!(grip.span(&ball, Digit::Ring, Kind::Cut, Along::Arc), None);
}
