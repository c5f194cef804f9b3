//! What is left between holes, and around the bore of a slug.

use proptest::prelude::*;
use spanwright::fitting::{
    Sphere,
    grip::{HoleOrder, Reference, place},
    hole::{Hole, Pitches},
    slug,
    wall::{Wall, between},
    web::FingerHoles,
};

use crate::grips::*;

/// The distance of two holes' middles, found by sliding one number at a time to where it is best, over and over.
fn slid_together(one: Hole, other: Hole) -> f64 {
    let half = |hole: &Hole| 0.5 * hole.section().run();
    let slides = [
        (one.axis(), 1.0, 0.0, one.depth()),
        (other.axis(), -1.0, 0.0, other.depth()),
        (one.wide(), 1.0, -half(&one), half(&one)),
        (other.wide(), -1.0, -half(&other), half(&other)),
    ];
    let mut at = [0.0_f64; 4];
    let mut line = plus(one.mouth(), other.mouth(), -1.0);
    for _ in 0..20_000 {
        for (place, (along, sign, low, high)) in at.iter_mut().zip(slides) {
            let best = (*place - sign * dot(line, along)).clamp(low, high);
            line = plus(line, along, sign * (best - *place));
            *place = best;
        }
    }
    length(line)
}

/// Straight across a bridge that was read along the ball.
fn across(ball: &Sphere, bridge: f64) -> f64 {
    2.0 * ball.radius() * (bridge / (2.0 * ball.radius())).sin()
}

proptest! {
    #[test]
    fn walls_are_the_same_from_both_sides(ball in ball(), order in order()) {
        let grip = placed(&ball, &order)?;
        let (one, other) = (grip.middle, grip.ring);
        let (here, there) = (between(&ball, &one, &other), between(&ball, &other, &one));
        near(here.least, there.least, 1e-12)?;
        prop_assert_eq!(here.breaks_at.is_some(), there.breaks_at.is_some());
        if let (Some(here), Some(there)) = (here.breaks_at, there.breaks_at) {
            near(here, there, HAIR)?;
        }
        let mirror = between(&ball, &one.mirrored(), &other.mirrored());
        near(here.least, mirror.least, 1e-12)?;
    }

    /// Against places tried one by one down both holes and along both runs.
    #[test]
    fn no_place_is_nearer_than_the_wall(ball in ball(), order in order()) {
        const PARTS: i32 = 12;
        let grip = placed(&ball, &order)?;
        let (one, other) = (grip.middle, grip.ring);
        let places = |hole: Hole| -> Vec<[f64; 3]> {
            let parts = 0..=PARTS;
            parts.clone().flat_map(|down| parts.clone().map(move |run| {
                let down = f64::from(down) / f64::from(PARTS) * hole.depth();
                let run = (f64::from(run) / f64::from(PARTS) - 0.5) * hole.section().run();
                plus(plus(hole.mouth(), hole.axis(), down), hole.wide(), run)
            })).collect()
        };
        let there = places(other);
        let nearest = places(one).into_iter().flat_map(|here| {
            there.iter().map(move |there| length(plus(here, *there, -1.0)))
        }).fold(f64::INFINITY, f64::min);
        let radii = 0.5 * (one.section().drill() + other.section().drill());
        let least = between(&ball, &one, &other).least;
        prop_assert!(nearest - radii >= least - HAIR);
        // Holes that lean apart are nearest at their rims, across the bridge.
        let middles = slid_together(one, other) - radii;
        near(middles.min(across(&ball, grip.bridge(&ball))), least, 1e-5)?;
    }

    #[test]
    fn holes_drilled_to_where_they_break_just_touch(ball in ball(), order in order()) {
        let grip = placed(&ball, &order)?;
        if let Some(depth) = between(&ball, &grip.middle, &grip.ring).breaks_at.filter(|d| *d > 0.0) {
            let mut deep = order;
            deep.middle.depth = depth;
            deep.ring.depth = depth;
            let grip = placed(&ball, &deep)?;
            near(between(&ball, &grip.middle, &grip.ring).least, 0.0, HAIR)?;
        }
    }

    #[test]
    fn without_pitches_along_the_fingers_the_web_is_the_planar_one(
        ball in ball(),
        size in 0.6..1.1,
        lateral in -0.75..0.75_f64,
        bridge in 0.1..0.6,
        depth in 0.5..3.0,
    ) {
        let mut order = fingertip();
        // A thumb hole that leans aside has its edges, and so the fingers, not quite level.
        order.thumb = Some(bare(1.0, 2.5, 0.0, 0.0));
        order.reference = Reference::Centreline;
        order.spans = Some([full(4.25); 2]);
        order.bridge = bridge;
        order.middle = bare(size, depth, 0.0, -lateral);
        order.ring = bare(size, depth, 0.0, lateral);
        let grip = placed(&ball, &order)?;
        let straight = length(plus(grip.middle.mouth(), grip.ring.mouth(), -1.0));
        let fits = |fault: spanwright::fitting::Misfit| TestCaseError::fail(fault.to_string());
        let planar = FingerHoles::new(&ball, straight - size, size, [lateral; 2]).map_err(fits)?;
        let wall = between(&ball, &grip.middle, &grip.ring);
        // Where the axes cross, the plane goes on counting; in space nothing is nearer than crossing.
        let planar_least = planar.least_web(depth).map_err(fits)?;
        let rims = across(&ball, bridge);
        near(wall.least, planar_least.max(-size).min(rims), HAIR)?;
        if let Some(depth) = wall.breaks_at {
            near(depth, planar.breaks_at().unwrap_or(f64::NAN), 1e-7)?;
        }
    }
}

/// Plain geometry: two straight holes crosswise to the centreline, 2 in deep, walls only touching at the bottom.
#[test]
fn a_wall_knows_where_it_is_thinnest() {
    let ball = Sphere::default();
    let order = thin();
    let grip = place(&ball, &order).unwrap();
    let wall: Wall = between(&ball, &grip.middle, &grip.ring);
    assert_eq!(wall.at_depth, 1.25);
    let mut fanned = order;
    fanned.middle.pitches.lateral = -1.0;
    fanned.ring.pitches.lateral = 1.0;
    let grip = place(&ball, &fanned).unwrap();
    let wall = between(&ball, &grip.middle, &grip.ring);
    assert_eq!((wall.at_depth, wall.breaks_at), (0.0, None));
}

/// The bore stands in the middle of a hole drilled the same way: the wall is half the difference, all the way down.
#[test]
fn a_slug_bored_as_it_was_drilled_keeps_its_wall() {
    let ball = Sphere::default();
    let grip = place(&ball, &fingertip()).unwrap();
    let wall = slug::wall(&ball, &grip.thumb.unwrap(), &grip.bores.thumb.unwrap());
    assert!((wall.least - 0.125).abs() < 1e-12, "{wall:?}");
    assert_eq!(wall.breaks_at, None);
}

/// Bored with 1/4 reverse into a hole aimed straight: 2.5 in down the bore's far wall is d sin t + (bore / 2) cos t
/// from the slug's axis.
#[test]
fn a_pitched_bore_thins_a_straight_slug() {
    let ball = Sphere::default();
    let mut order = fingertip();
    order.thumb = Some(HoleOrder {
        outside: Some(1.5),
        outside_pitches: Some(Pitches::NONE),
        ..bare(1.0, 2.5, -0.25, 0.0)
    });
    let grip = place(&ball, &order).unwrap();
    let wall = slug::wall(&ball, &grip.thumb.unwrap(), &grip.bores.thumb.unwrap());
    let lean = (0.25 / ball.radius()).asin();
    let expected = 0.75 - 2.5 * lean.sin() - 0.5 * lean.cos();
    assert!((wall.least - expected).abs() < 1e-12, "{wall:?} {expected}");
    assert_eq!(wall.at_depth, 2.5);
    let breaks = (0.75 - 0.5 * lean.cos()) / lean.sin();
    assert!((wall.breaks_at.unwrap() - breaks).abs() < HAIR);
}
