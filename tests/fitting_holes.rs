//! A grip on the ball: spans there and back, mirror images, walls the same from both sides, and every refusal with what
//! would be possible.

// Helpers of tests may stop a test just as tests may.
#![allow(clippy::unwrap_used, clippy::panic)]

use proptest::prelude::*;
use rstest::rstest;
use spanwright::fitting::{
    Sphere,
    grip::{
        Along, Digit, GripOrder, HoleOrder, Kind, Placed, Reading, Reference, Shift, Unplaceable,
        place,
    },
    hole::{Hole, Pitches, Section},
    jig,
    mend::{Bounds, Mend, Number, Steps, mends, mends_beside},
    slug,
    wall::{Wall, between, to_old, within_grip},
    web::FingerHoles,
};

/// Rounding, and nothing else.
const HAIR: f64 = 1e-9;

fn round(size: f64) -> Section {
    Section::Round { size }
}

fn bare(size: f64, depth: f64, forward: f64, lateral: f64) -> HoleOrder {
    HoleOrder {
        bore: round(size),
        outside: None,
        depth,
        pitches: Pitches { forward, lateral },
        outside_pitches: None,
    }
}

fn full(value: f64) -> Reading {
    Reading {
        value,
        kind: Kind::Full,
        along: Along::Arc,
    }
}

/// A fingertip grip with slug and inserts, as many shops drill it.
fn fingertip() -> GripOrder {
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
fn no_thumb() -> GripOrder {
    GripOrder {
        thumb: None,
        spans: None,
        palm_mark: Some(2.5),
        ..fingertip()
    }
}

fn pitches() -> impl Strategy<Value = Pitches> {
    (-0.75..0.75, -0.75..0.75).prop_map(|(forward, lateral)| Pitches { forward, lateral })
}

fn section() -> impl Strategy<Value = Section> {
    let oval = (0.6..1.0, 0.0..0.3, 0.0..180.0).prop_map(|(narrow, run, angle)| Section::Oval {
        wide: narrow + run,
        narrow,
        angle,
    });
    prop_oneof![(0.6..1.2).prop_map(round), oval]
}

fn hole_order() -> impl Strategy<Value = HoleOrder> {
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

fn reading() -> impl Strategy<Value = Reading> {
    let kind = prop_oneof![Just(Kind::Full), Just(Kind::Cut), Just(Kind::Centre)];
    let along = prop_oneof![Just(Along::Arc), Just(Along::Chord)];
    (3.6..4.4, kind, along).prop_map(|(value, kind, along)| Reading { value, kind, along })
}

fn order() -> impl Strategy<Value = GripOrder> {
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

fn ball() -> impl Strategy<Value = Sphere> {
    (26.7..27.1).prop_filter_map("a ball", |around| Sphere::around(around).ok())
}

/// Every order here lies on the ball except where the two spans differ by nearly the bridge and more.
fn placed(ball: &Sphere, order: &GripOrder) -> Result<Placed, TestCaseError> {
    place(ball, order).map_err(|fault| TestCaseError::reject(fault.to_string()))
}

fn near(one: f64, other: f64, within: f64) -> Result<(), TestCaseError> {
    prop_assert!((one - other).abs() < within, "{} is not {}", one, other);
    Ok(())
}

fn same_place(one: [f64; 3], other: [f64; 3]) -> Result<(), TestCaseError> {
    for (one, other) in one.into_iter().zip(other) {
        near(one, other, HAIR)?;
    }
    Ok(())
}

fn dot(one: [f64; 3], other: [f64; 3]) -> f64 {
    one.iter().zip(other).map(|(one, other)| one * other).sum()
}

fn cross([a, b, c]: [f64; 3], [x, y, z]: [f64; 3]) -> [f64; 3] {
    [b * z - c * y, c * x - a * z, a * y - b * x]
}

fn length(vector: [f64; 3]) -> f64 {
    dot(vector, vector).sqrt()
}

fn plus(one: [f64; 3], other: [f64; 3], times: f64) -> [f64; 3] {
    [0, 1, 2].map(|index| one[index] + times * other[index])
}

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
        near(slid_together(one, other) - radii, least, 1e-5)?;
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
        near(wall.least, planar_least.max(-size), HAIR)?;
        if let Some(depth) = wall.breaks_at {
            near(depth, planar.breaks_at().unwrap_or(f64::NAN), 1e-7)?;
        }
    }

    #[test]
    fn an_old_grip_seen_from_the_new_keeps_its_shape(
        ball in ball(),
        order in order(),
        over in -8.0..8.0,
        up in -5.0..5.0,
        turned in -180.0..180.0,
    ) {
        let grip = placed(&ball, &order)?;
        let seen = grip.seen_from(&ball, Shift { over, up, turned });
        let seen = seen.map_err(|fault| TestCaseError::fail(fault.to_string()))?;
        near(seen.bridge(&ball), grip.bridge(&ball), HAIR)?;
        let (here, there) = (between(&ball, &grip.middle, &grip.ring), between(&ball, &seen.middle, &seen.ring));
        near(here.least, there.least, HAIR)?;
        near(dot(seen.middle.axis(), seen.middle.wide()), 0.0, HAIR)?;
    }

    #[test]
    fn laterals_there_and_back(ball in ball(), between in 0.5..2.0, lateral in -1.0..1.0) {
        let parallel = jig::parallel_lateral(&ball, between, lateral);
        let back = parallel.and_then(|parallel| jig::centre_lateral(&ball, between, parallel));
        near(back.unwrap_or(f64::NAN), lateral, HAIR)?;
    }

    #[test]
    fn the_jig_moves_along_the_oval(ball in ball(), order in order()) {
        let grip = placed(&ball, &order)?;
        for (digit, hole) in grip.holes() {
            let pitches = order.hole(digit).map(HoleOrder::cut_pitches).unwrap_or_default();
            let jig = jig::setting(&ball, digit, pitches, hole.section(), hole.depth());
            let jig = jig.map_err(|fault| TestCaseError::fail(fault.to_string()))?;
            prop_assert_eq!(jig.run.is_some(), hole.section().run() > 0.0);
            let (Some([forward, right]), true) = (jig.run, pitches.total() > 1e-3) else { continue };
            near(forward.hypot(right), hole.section().run() / 2.0, HAIR)?;
            // Along the offset and square to it: on the table, and on the ball as the spindle sees it. From forward to
            // right it is clockwise for a thumb, counter-clockwise for a finger.
            let total = pitches.total();
            let along = (forward * pitches.forward + right * pitches.lateral) / total;
            let across = (right * pitches.forward - forward * pitches.lateral) / total;
            let down = dot(hole.mouth(), hole.axis());
            let offset = plus(hole.mouth(), hole.axis(), -down);
            let (along_ball, square) = (dot(offset, hole.wide()), cross(hole.axis(), offset));
            let turn = if digit == Digit::Thumb { 1.0 } else { -1.0 };
            let across_ball = turn * dot(square, hole.wide());
            near(along * across_ball, across * along_ball, HAIR)?;
        }
    }

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

/// What a shop may change, invented for these tests.
fn steps() -> Steps {
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

/// Two straight holes so close that they break 0.9 in down.
fn thin() -> GripOrder {
    let mut order = fingertip();
    order.middle.pitches = Pitches::NONE;
    order.ring.pitches = Pitches::NONE;
    order
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
    let found = mends_beside(&ball, &order, &old, 0.125, &steps());
    assert!(found.iter().all(|mend| mend.least >= 0.125 - HAIR));
    assert!(
        found
            .iter()
            .all(|mend| mend.what != Number::Lateral(Digit::Ring))
    );
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
    order.thumb = Some(bare(1.0, 2.5, 0.0, 0.0));
    let grip = place(&ball, &order).unwrap();
    let reach = |size: f64| (size / 2.0 / ball.radius()).asin();
    let (thumb, finger) = (grip.thumb.unwrap().mouth(), grip.ring.mouth());
    let whole = (dot(thumb, finger) / ball.radius().powi(2)).acos();
    let at = (reach(1.0) + whole - reach(31.0 / 32.0)) / 2.0;
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

/// A quarter turn to the right: what lay on the axis point's side now lies under the new grip.
#[test]
fn an_old_grip_lies_where_it_was() {
    let ball = Sphere::default();
    let old = place(&ball, &fingertip()).unwrap();
    let stay = Shift {
        over: 0.0,
        up: 0.0,
        turned: 0.0,
    };
    assert_eq!(old.seen_from(&ball, stay).unwrap(), old);
    let [x, y, z] = old.ring.mouth();
    let near = |found: [f64; 3], expected: [f64; 3]| {
        assert!(
            length(plus(found, expected, -1.0)) < 1e-12,
            "{found:?} {expected:?}"
        );
    };
    // Seen from a grip a quarter over, the old one lies a quarter to the left.
    let over = Shift {
        over: ball.quarter(),
        ..stay
    };
    near(old.seen_from(&ball, over).unwrap().ring.mouth(), [-z, y, x]);
    // Seen from a grip turned a quarter counter-clockwise, the old one is turned clockwise: its up is the new right.
    let turned = Shift {
        turned: 90.0,
        ..stay
    };
    near(
        old.seen_from(&ball, turned).unwrap().ring.mouth(),
        [y, -x, z],
    );
    let up = Shift {
        up: ball.quarter(),
        ..stay
    };
    near(old.seen_from(&ball, up).unwrap().ring.mouth(), [x, -z, y]);
    assert!(old.seen_from(&ball, Shift { up: 9.0, ..stay }).is_err());
}

/// Straight holes: the drill's end first touches the ball at its top, and the mark is there.
#[test]
fn a_straight_hole_stops_at_its_depth() {
    let ball = Sphere::default();
    let jig = jig::setting(&ball, Digit::Ring, Pitches::NONE, round(1.0), 1.25).unwrap();
    assert_eq!(
        (
            jig.total,
            jig.tilt,
            jig.azimuth,
            jig.mark_below_top,
            jig.stop_below_top,
            jig.stop_below_touch,
            jig.run
        ),
        (0.0, 0.0, 0.0, 0.0, 1.25, 1.25, None)
    );
    let leaning = Pitches {
        forward: -0.75,
        lateral: 0.25,
    };
    let jig = jig::setting(&ball, Digit::Ring, leaning, round(1.0), 1.25).unwrap();
    let height = |aside: f64| (ball.radius().powi(2) - aside * aside).sqrt();
    let total = 0.75_f64.hypot(0.25);
    assert!((jig.mark_below_top - (ball.radius() - height(total))).abs() < 1e-12);
    assert!((jig.stop_below_touch - (1.25 + height(total - 0.5) - height(total))).abs() < 1e-12);
    assert!((jig.azimuth - 161.565).abs() < 1e-3);
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
