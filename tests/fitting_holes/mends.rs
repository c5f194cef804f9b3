//! A mend mends, the smallest step of it, and nothing else is called one.

use spanwright::fitting::{
    Sphere,
    grip::{Digit, GripOrder, Reference, place},
    hole::Hole,
    mend::{Bounds, Demand, Mend, Number, Steps, mends, mends_for},
    wall::{between, to_old, within_grip},
};

use crate::grips::*;

/// What a shop may change, invented for these tests.
pub fn steps() -> Steps {
    let bounds = |step, lowest, highest| Bounds {
        step,
        lowest,
        highest,
    };
    Steps {
        bridge: bounds(1.0 / 32.0, 0.1875, 0.5),
        lateral: bounds(0.0625, -0.75, 0.75),
        forward: bounds(0.0625, -0.75, 0.5),
        finger_depth: bounds(0.0625, 1.0, 2.5),
        thumb_depth: bounds(0.0625, 2.0, 3.0),
        size: bounds(1.0 / 64.0, 0.7, 1.2),
        finger_outsides: vec![0.875, 31.0 / 32.0],
        thumb_outsides: vec![1.25, 1.375, 1.5],
        insert_wall: 1.0 / 32.0,
        slug_wall: 1.0 / 16.0,
    }
}

fn least(order: &GripOrder) -> f64 {
    let ball = Sphere::default();
    let grip = place(&ball, order).unwrap();
    let walls = within_grip(&ball, &grip).into_iter();
    walls
        .map(|pair| pair.wall.least)
        .fold(f64::INFINITY, f64::min)
}

/// Each mend, set by hand, does what it says, and one step less doesn't.
#[test]
fn every_mend_mends_and_none_is_too_large() {
    let limit = 0.0625;
    let order = thin();
    assert!(least(&order) < 0.0);
    let found = mends(&Sphere::default(), &order, limit, &steps());
    assert!(found.iter().any(|mend| mend.what == Number::Bridge));
    for mend in &found {
        let step = match mend.what {
            Number::Bridge => 1.0 / 32.0,
            _ => 0.0625,
        };
        let back = mend.to - step * (mend.to - mend.from).signum();
        let with = |value: f64| {
            let mut order = order;
            match mend.what {
                Number::Bridge => order.bridge = value,
                Number::Lateral(digit) => order.hole_mut(digit).unwrap().pitches.lateral = value,
                Number::Forward(digit) => order.hole_mut(digit).unwrap().pitches.forward = value,
                Number::Depth(digit) => order.hole_mut(digit).unwrap().depth = value,
                Number::Size(digit) => order.hole_mut(digit).unwrap().outside = Some(value),
            }
            least(&order)
        };
        assert!((with(mend.to) - mend.least).abs() < 1e-12, "{mend:?}");
        assert!(mend.least >= limit - HAIR, "{mend:?}");
        assert!(with(back) < limit, "{mend:?}");
    }
}

/// The middle finger's outward is left, and stays so.
#[test]
fn laterals_mend_outward() {
    let mut order = fingertip();
    order.middle.pitches.lateral = -0.25;
    order.ring.pitches.lateral = 0.25;
    let found = mends(&Sphere::default(), &order, 0.07, &steps());
    let lateral = |digit| {
        found
            .iter()
            .find(|mend| mend.what == Number::Lateral(digit))
    };
    assert!(lateral(Digit::Middle).unwrap().to < -0.25);
    assert!(lateral(Digit::Ring).unwrap().to > 0.25);
}

#[test]
fn a_smaller_insert_from_stock_mends() {
    let mut order = fingertip();
    order.middle.pitches.lateral = -0.25;
    order.ring.pitches.lateral = 0.25;
    let size = |limit| -> Option<Mend> {
        let found = mends(&Sphere::default(), &order, limit, &steps());
        found
            .into_iter()
            .find(|mend| mend.what == Number::Size(Digit::Ring))
    };
    // Behind the same bridge a hole 3/32 narrower turns in less: by 3/64 over R, for each inch of depth.
    let gained = 1.25 * 3.0 / 64.0 / Sphere::default().radius();
    assert_eq!(size(least(&order) + 0.95 * gained).unwrap().to, 0.875);
    // No stock size is small enough for this.
    assert_eq!(size(least(&order) + 1.05 * gained), None);
}

#[test]
fn a_thick_web_needs_no_mend() {
    let ball = Sphere::default();
    let order = fingertip();
    assert!(least(&order) > 0.0625);
    assert_eq!(mends(&ball, &order, 0.0625, &steps()), []);
}

/// An old hole beside the new thumb: only what moves or shrinks the thumb hole can help.
#[test]
fn an_old_hole_counts() {
    let ball = Sphere::default();
    let order = fingertip();
    let grip = place(&ball, &order).unwrap();
    let thumb = grip.thumb.unwrap();
    let [x, y, z] = thumb.mouth();
    let old = Hole::along(
        &ball,
        [x + 1.25, y, z],
        [-0.25, 0.5, -1.0],
        [1.0, 0.0, 0.0],
        round(1.0),
        2.0,
    );
    let old = [old.unwrap()];
    let beside = to_old(&ball, &grip, &old);
    assert_eq!(beside.len(), 3);
    let wall = beside
        .iter()
        .find(|beside| beside.digit == Digit::Thumb)
        .unwrap()
        .wall;
    assert!(wall.least < 0.125, "{wall:?}");
    let demand = Demand {
        least: 0.125,
        references: &[],
        old: &old,
        thumb: true,
    };
    let found = mends_for(&ball, &order, &demand, &steps());
    assert!(found.iter().all(|mend| mend.least >= 0.125 - HAIR));
    assert!(
        found
            .iter()
            .all(|mend| mend.what != Number::Lateral(Digit::Ring))
    );
}

/// Along their own lines the fingers' holes close in on each other with forward pitch, parallel to the centreline they
/// don't: the mends must do for both.
#[test]
fn mends_hold_however_forward_pitch_is_counted() {
    let ball = Sphere::default();
    let mut order = fingertip();
    order.middle = bare(0.75, 2.0, 0.375, -0.25);
    order.ring = bare(0.75, 2.0, 0.375, 0.25);
    order.bridge = 0.375;
    let least_in = |order: &GripOrder, reference| {
        least(&GripOrder {
            reference,
            ..*order
        })
    };
    let (own, parallel) = (Reference::OwnLine, Reference::Centreline);
    let limit = 0.5 * (least_in(&order, own) + least_in(&order, parallel));
    assert!(least_in(&order, own) < limit && limit < least_in(&order, parallel));
    // Whichever the order itself says.
    for reference in [own, parallel] {
        let demand = Demand {
            least: limit,
            references: &[parallel, own],
            old: &[],
            thumb: true,
        };
        let order = GripOrder { reference, ..order };
        let found = mends_for(&ball, &order, &demand, &steps());
        let bridge = found
            .iter()
            .find(|mend| mend.what == Number::Bridge)
            .unwrap();
        let mended = GripOrder {
            bridge: bridge.to,
            ..order
        };
        assert!(least_in(&mended, own) >= limit && least_in(&mended, parallel) >= limit);
    }
}

/// A thumb hole so deep that it meets the fingers' is no matter where it isn't to count.
#[test]
fn a_thumb_hole_may_be_left_out() {
    let ball = Sphere::default();
    let mut order = fingertip();
    order.thumb = Some(bare(1.0, 4.5, 1.0, 0.0));
    order.middle.depth = 3.5;
    order.ring.depth = 3.5;
    let demand = |thumb| Demand {
        least: least_between_fingers(&order),
        references: &[],
        old: &[],
        thumb,
    };
    assert!(least(&order) < least_between_fingers(&order));
    assert_eq!(mends_for(&ball, &order, &demand(false), &steps()), []);
    let found = mends_for(&ball, &order, &demand(true), &steps());
    assert!(
        found
            .iter()
            .any(|mend| mend.what == Number::Depth(Digit::Thumb)),
        "{found:?}"
    );
}

fn least_between_fingers(order: &GripOrder) -> f64 {
    let ball = Sphere::default();
    let grip = place(&ball, order).unwrap();
    between(&ball, &grip.middle, &grip.ring).least
}
