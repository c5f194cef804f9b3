//! What can't be is refused, with what could.

use proptest::prelude::*;
use rstest::rstest;
use spanwright::fitting::{
    Sphere,
    grip::{Along, GripOrder, HoleOrder, Placed, Reading, Unplaceable, place},
    hole::{Hole, Pitches, Section},
    mend::mends,
    wall::within_grip,
};

use crate::grips::*;
use crate::mends::steps;

proptest! {
    /// Nothing that can be typed makes it stumble.
    #[test]
    fn odd_numbers_are_refused_or_placed(
        which in 0..14_usize,
        odd in prop_oneof![
            Just(f64::NAN), Just(f64::INFINITY), Just(f64::NEG_INFINITY), Just(f64::MAX), Just(f64::MIN_POSITIVE),
            Just(-0.0), Just(0.0), Just(-1.0), any::<f64>(), -20.0..20.0,
        ],
        thumb in any::<bool>(),
    ) {
        let mut order = if thumb { fingertip() } else { no_thumb() };
        let oval = Section::Oval { wide: odd, narrow: 0.9, angle: 45.0 };
        match which {
            0 => order.bridge = odd,
            1 => order.middle.depth = odd,
            2 => order.middle.pitches.forward = odd,
            3 => order.ring.pitches.lateral = odd,
            4 => order.ring.outside = Some(odd),
            5 => order.ring.bore = round(odd),
            6 => order.middle = HoleOrder { bore: oval, outside: None, ..order.middle },
            7 => order.palm_mark = Some(odd),
            8 => order.spans = Some([full(odd), full(4.25)]),
            9 => order.spans = Some([full(4.25), Reading { along: Along::Chord, ..full(odd) }]),
            10 => order.spans = Some([full(odd); 2]),
            11 => order.thumb = Some(bare(odd, 2.5, 0.0, 0.0)),
            12 => order.middle.bore = Section::Oval { wide: 0.9, narrow: 0.8, angle: odd },
            _ => order.middle.outside_pitches = Some(Pitches { forward: odd, lateral: odd }),
        }
        let ball = Sphere::default();
        match place(&ball, &order) {
            Ok(grip) => for pair in within_grip(&ball, &grip) {
                prop_assert!(pair.wall.least.is_finite());
            },
            Err(fault) => prop_assert!(!fault.faults().is_empty()),
        }
        mends(&ball, &order, odd, &steps());
    }
}

fn refusal(order: &GripOrder) -> String {
    let refused: Result<Placed, Unplaceable> = place(&Sphere::default(), order);
    refused.unwrap_err().to_string()
}

#[test]
fn spans_that_close_no_triangle_say_which_would() {
    let ball = Sphere::default();
    let mut order = fingertip();
    order.spans = Some([full(4.25), full(6.0)]);
    let text = refusal(&order);
    assert!(text.starts_with("a ring span of 6.0000 closes no triangle: for this middle span and bridge it lies between "), "{text}");
    let numbers: Vec<f64> = text
        .split(' ')
        .filter_map(|word| word.parse().ok())
        .collect();
    let [_, shortest, longest] = numbers[..] else {
        panic!("{text}")
    };
    // The limits are real: just inside them the triangle closes, just outside it doesn't.
    let tried = |ring: f64| {
        place(
            &ball,
            &GripOrder {
                spans: Some([full(4.25), full(ring)]),
                ..order
            },
        )
    };
    assert!(tried(shortest + 0.001).is_ok() && tried(longest - 0.001).is_ok());
    assert!(tried(shortest - 0.001).is_err() && tried(longest + 0.001).is_err());
}

/// Limits are read the way the span was.
#[test]
fn limits_of_a_calliper_are_straight_lines() {
    let ball = Sphere::default();
    let mut order = fingertip();
    let chord = |value| Reading {
        along: Along::Chord,
        ..full(value)
    };
    order.spans = Some([full(4.25), chord(2.5)]);
    let text = refusal(&order);
    let numbers: Vec<f64> = text
        .split(' ')
        .filter_map(|word| word.parse().ok())
        .collect();
    let tried = |ring: f64| {
        place(
            &ball,
            &GripOrder {
                spans: Some([full(4.25), chord(ring)]),
                ..order
            },
        )
    };
    assert!(tried(numbers[1] + 0.001).is_ok() && tried(numbers[1] - 0.001).is_err());
}

#[rstest]
#[case(|order: &mut GripOrder| order.middle.depth = -1.0, "middle hole: the depth of -1.0000 is below the least possible, 0.0000")]
#[case(|order: &mut GripOrder| order.ring.depth = f64::NAN, "ring hole: the depth is not a number")]
#[case(|order: &mut GripOrder| order.ring.outside = Some(2.5), "ring hole: the hole diameter of 2.5000 is above the most possible, 2.0000")]
#[case(|order: &mut GripOrder| order.ring.outside = Some(0.75), "ring hole: the bore of 0.7812 is above the most possible, 0.7500")]
#[case(|order: &mut GripOrder| order.middle.pitches.forward = 3.0, "middle hole: the forward pitch of 3.0000 is above the most possible, 2.1486")]
#[case(|order: &mut GripOrder| order.bridge = -0.25, "the bridge of -0.2500 is below the least possible, 0.0000")]
#[case(|order: &mut GripOrder| order.spans = None, "a grip with a thumb hole needs its two spans")]
#[case(
    |order: &mut GripOrder| (order.thumb, order.spans) = (None, None),
    "a grip without thumb hole needs the way from the fingers to the palm mark"
)]
#[case(
    |order: &mut GripOrder| order.spans = Some([Reading { along: Along::Chord, ..full(9.0) }, full(4.25)]),
    "the middle span as a straight line of 9.0000 is above the most possible, 8.5944"
)]
#[case(
    |order: &mut GripOrder| order.spans = Some([full(4.25), full(8.0)]),
    "the ring span of 8.0000 is above the most possible, 6.7500"
)]
#[case(
    |order: &mut GripOrder| order.thumb = Some(HoleOrder { bore: Section::Oval { wide: 0.9, narrow: 1.0, angle: 0.0 }, ..bare(1.0, 2.5, 0.0, 0.0) }),
    "thumb hole: the wide size of the oval of 0.9000 is below the least possible, 1.0000"
)]
fn a_refusal_says_what_would_be_possible(#[case] spoil: fn(&mut GripOrder), #[case] text: &str) {
    let mut order = fingertip();
    spoil(&mut order);
    assert_eq!(refusal(&order), text);
}

/// One look at the work order tells all.
#[test]
fn all_faults_are_found_at_once() {
    let mut order = fingertip();
    order.middle.depth = -1.0;
    order.ring.outside = Some(2.5);
    order.bridge = 9.0;
    let faults = place(&Sphere::default(), &order).unwrap_err();
    assert_eq!(faults.faults().len(), 3, "{faults}");
}

/// What stands in the way of a single hole.
#[test]
fn a_hole_without_direction_is_refused() {
    let ball = Sphere::default();
    let up = [0.0, 1.0, 0.0];
    let out = [0.0, 0.0, 1.0];
    let try_new = |mouth, forward| Hole::new(&ball, mouth, forward, Pitches::NONE, round(1.0), 1.0);
    assert!(try_new(out, up).is_ok());
    assert!(try_new([0.0; 3], up).is_err());
    assert!(try_new(out, [0.0, 0.0, -2.0]).is_err());
    assert!(try_new([f64::INFINITY, 0.0, 0.0], up).is_err());
    // Straight out of the ball instead of into it.
    assert!(Hole::along(&ball, out, out, up, round(1.0), 1.0).is_err());
    let inward = [0.0, 0.0, -1e300];
    assert!(Hole::along(&ball, out, inward, up, round(1.0), 1.0).is_ok());
}
