//! Grips, walls and solids: read back as ordered, mirrored, and alike from both sides.

use proptest::prelude::*;
use spanwright::fitting::grip::{Digit, GripOrder, HoleOrder, place};
use spanwright::fitting::hole::{Hole, Pitches, Section};
use spanwright::fitting::solid::{self, Solid};
use spanwright::fitting::web::FingerHoles;
use spanwright::fitting::{Sphere, wall};

use super::{all_near, ball, fits, near, order};
use crate::cases;

/// The order of the other hand, written as if for the same: what lies left lies right.
fn mirrored(order: &GripOrder) -> GripOrder {
    let turned = |hole: HoleOrder| HoleOrder {
        bore: hole.bore.mirrored(),
        pitches: hole.pitches.mirrored(),
        ..hole
    };
    GripOrder {
        thumb: order.thumb.map(turned),
        middle: turned(order.ring),
        ring: turned(order.middle),
        spans: order.spans.map(|[middle, ring]| [ring, middle]),
        ..*order
    }
}

fn across([x, y, z]: [f64; 3]) -> [f64; 3] {
    [-x, y, z]
}

/// Two solids whose numbers are each other's mirror images.
fn mirror_images(one: &Solid, other: &Solid) -> Result<(), TestCaseError> {
    near(one.volume(), other.volume())?;
    all_near(one.first(), across(other.first()))?;
    for (row, (here, there)) in one.second().into_iter().zip(other.second()).enumerate() {
        let sign = if row == 0 { -1.0 } else { 1.0 };
        all_near(here, across(there).map(|part| part * sign))?;
    }
    Ok(())
}

/// Two equal finger holes this far apart, without forward or reverse, laterals outward.
fn fingers(
    ball: &Sphere,
    bridge: f64,
    size: f64,
    outward: f64,
    depth: f64,
) -> Result<[Hole; 2], TestCaseError> {
    let half = ((bridge + size) / (2.0 * ball.radius())).asin();
    let finger = |side: f64| {
        let mouth = [side * half.sin(), 0.0, half.cos()];
        let pitches = Pitches {
            forward: 0.0,
            lateral: side * outward,
        };
        fits(Hole::new(
            ball,
            mouth,
            [0.0, -1.0, 0.0],
            pitches,
            Section::Round { size },
            depth,
        ))
    };
    Ok([finger(-1.0)?, finger(1.0)?])
}

proptest! {
    #![proptest_config(cases(128))]

    #[test]
    fn a_placed_grip_reads_as_it_was_ordered(ball in ball(), order in order()) {
        let placed = place(&ball, &order).map_err(|fault| TestCaseError::fail(fault.to_string()))?;
        near(placed.bridge(&ball), order.bridge)?;
        for (finger, reading) in [Digit::Middle, Digit::Ring].into_iter().zip(order.spans.iter().flatten()) {
            let read = placed.span(&ball, finger, reading.kind, reading.along);
            near(read.unwrap_or(f64::NAN), reading.value)?;
        }
    }

    /// The axis of every hole misses the centre by its whole pitch.
    #[test]
    fn an_axis_misses_the_centre_by_its_pitch(ball in ball(), order in order()) {
        let placed = place(&ball, &order).map_err(|fault| TestCaseError::fail(fault.to_string()))?;
        for (digit, hole) in placed.holes() {
            let ([a, b, c], [x, y, z]) = (hole.mouth(), hole.axis());
            let miss = [b * z - c * y, c * x - a * z, a * y - b * x];
            let ordered = order.hole(digit).map(|hole| hole.pitches.total());
            near(miss.iter().map(|part| part * part).sum::<f64>().sqrt(), ordered.unwrap_or(f64::NAN))?;
            near((x * x + y * y + z * z).sqrt(), 1.0)?;
            near((a * a + b * b + c * c).sqrt(), ball.radius())?;
        }
    }

    #[test]
    fn the_other_hand_is_a_mirror_image(ball in ball(), order in order()) {
        let right = place(&ball, &order).map_err(|fault| TestCaseError::fail(fault.to_string()))?;
        let left = place(&ball, &mirrored(&order)).map_err(|fault| TestCaseError::fail(fault.to_string()))?;
        let thumbs = right.thumb.into_iter().zip(left.thumb);
        let pairs: Vec<(Hole, Hole)> = thumbs.chain([(right.middle, left.ring), (right.ring, left.middle)]).collect();
        for (here, there) in &pairs {
            all_near(here.mouth(), across(there.mouth()))?;
            all_near(here.axis(), across(there.axis()))?;
            mirror_images(&fits(solid::drilled(&ball, here))?, &fits(solid::drilled(&ball, there))?)?;
        }
        for (one, other) in [(0, 1), (0, 2), (1, 2)] {
            let here = wall::between(&ball, &pairs[one].0, &pairs[other].0);
            let there = wall::between(&ball, &pairs[one].1, &pairs[other].1);
            near(here.least, there.least)?;
        }
    }

    #[test]
    fn a_wall_is_the_same_from_both_sides(ball in ball(), order in order()) {
        let placed = place(&ball, &order).map_err(|fault| TestCaseError::fail(fault.to_string()))?;
        let holes: Vec<Hole> = placed.holes().map(|(_, hole)| hole).collect();
        for (one, other) in [(0, 1), (0, 2), (1, 2)] {
            let here = wall::between(&ball, &holes[one], &holes[other]);
            let there = wall::between(&ball, &holes[other], &holes[one]);
            near(here.least, there.least)?;
            near(here.breaks_at.unwrap_or(-1.0), there.breaks_at.unwrap_or(-1.0))?;
        }
    }

    /// Where the bottoms lean together the thinnest wall is deep, and the planar formula is exact.
    #[test]
    fn walls_in_space_agree_with_the_plane(
        ball in ball(), bridge in 0.2..0.5, size in 0.6..1.0, share in 0.0..0.8, depth in 0.5..2.5,
    ) {
        let outward = share * (bridge + size) / 2.0;
        let [middle, ring] = fingers(&ball, bridge, size, outward, depth)?;
        let found = wall::between(&ball, &middle, &ring);
        let planar = fits(FingerHoles::new(&ball, bridge, size, [outward; 2]))?;
        near(found.least, fits(planar.least_web(depth))?)?;
        near(found.at_depth, depth)?;
        if let (Some(here), Some(there)) = (found.breaks_at, planar.breaks_at()) {
            near(here, there)?;
        }
    }

    /// Unequal laterals: the planar formula compares equal depths only. With half an inch of lateral between them the bottoms lie
    /// 0.02 in apart in height, which changes their distance by less than a thousandth.
    #[test]
    fn unequal_laterals_agree_with_the_plane_too(
        ball in ball(), bridge in 0.2..0.5, size in 0.6..1.0, left in 0.0..0.8, right in 0.0..0.8, depth in 0.5..2.0,
    ) {
        let parallel = (bridge + size) / 2.0;
        let [middle, _] = fingers(&ball, bridge, size, left * parallel, depth)?;
        let [_, ring] = fingers(&ball, bridge, size, right * parallel, depth)?;
        let planar = fits(FingerHoles::new(&ball, bridge, size, [left * parallel, right * parallel]))?;
        let over = fits(planar.least_web(depth))? - wall::between(&ball, &middle, &ring).least;
        prop_assert!(over.abs() < 1e-3, "{over}");
    }

    #[test]
    fn deeper_holes_never_leave_more(ball in ball(), order in order(), more in 0.0..0.75) {
        let placed = place(&ball, &order).map_err(|fault| TestCaseError::fail(fault.to_string()))?;
        let mut deeper = order;
        deeper.middle.depth += more;
        let deeper = place(&ball, &deeper).map_err(|fault| TestCaseError::fail(fault.to_string()))?;
        let least = |holes: [&Hole; 2]| wall::between(&ball, holes[0], holes[1]).least;
        prop_assert!(least([&deeper.middle, &deeper.ring]) <= least([&placed.middle, &placed.ring]) + 1e-9);
        let volume = |hole: &Hole| fits(solid::drilled(&ball, hole)).map(|solid| solid.volume());
        prop_assert!(volume(&deeper.middle)? >= volume(&placed.middle)? - 1e-9);
    }
}
