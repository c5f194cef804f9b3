//! Any number at all: no number, infinite, huge, tiny, below zero. Nothing panics, and what is accepted gives numbers.

use proptest::num::f64 as floats;
use proptest::prelude::*;
use spanwright::fitting::balance::{self, Ball, Change, Model, Scale, Statics};
use spanwright::fitting::best_unit::{Limits, Unit, best};
use spanwright::fitting::calibrate::{self, ReadingPair, calibrate};
use spanwright::fitting::grip::{
    Along, Digit, GripOrder, HoleOrder, Kind, Reading, Reference, Shift, place,
};
use spanwright::fitting::hole::{Hole, Pitches, Section};
use spanwright::fitting::inertia::{self, Core};
use spanwright::fitting::layout::{self, Angles, Distances, HoleMark, Layout, Point};
use spanwright::fitting::mend::{Bounds, Steps, mends};
use spanwright::fitting::solid::{self, Solid};
use spanwright::fitting::web::FingerHoles;
use spanwright::fitting::{
    Sphere, eigen, jig, pitch, removed, ring, sixty_fourths, slug, span, speed, track, wall,
};

use crate::cases;

/// One wild number in three: enough for most inputs to be refused, few enough for some to get through.
fn number() -> impl Strategy<Value = f64> {
    let odd = vec![
        f64::NAN,
        f64::INFINITY,
        f64::NEG_INFINITY,
        0.0,
        -0.0,
        -1e-300,
        1e-300,
        1e300,
        f64::MAX,
        f64::MIN_POSITIVE,
    ];
    prop_oneof![6 => -0.5..0.5, 6 => 0.25..3.0, 2 => 2.0..30.0, 1 => floats::ANY, 1 => prop::sample::select(odd), 1 => -1e-9..0.0]
}

fn three() -> impl Strategy<Value = [f64; 3]> {
    [number(), number(), number()]
}

/// Fitting numbers, with now and then one that nothing fits.
fn likely(range: std::ops::Range<f64>) -> impl Strategy<Value = f64> {
    prop_oneof![12 => range, 1 => number()]
}

fn section() -> impl Strategy<Value = Section> {
    let oval = (likely(0.9..1.2), likely(0.7..0.9), likely(0.0..180.0));
    prop_oneof![
        likely(0.5..1.2).prop_map(|size| Section::Round { size }),
        oval.prop_map(|(wide, narrow, angle)| Section::Oval {
            wide,
            narrow,
            angle
        }),
    ]
}

fn hole() -> impl Strategy<Value = HoleOrder> {
    let pitches = || {
        (likely(-0.5..0.5), likely(-0.5..0.5))
            .prop_map(|(forward, lateral)| Pitches { forward, lateral })
    };
    (
        section(),
        prop::option::of(likely(0.8..1.5)),
        likely(0.5..3.0),
        pitches(),
        prop::option::of(pitches()),
    )
        .prop_map(
            |(bore, outside, depth, pitches, outside_pitches)| HoleOrder {
                bore,
                outside,
                depth,
                pitches,
                outside_pitches,
            },
        )
}

fn order() -> impl Strategy<Value = GripOrder> {
    let reading = || {
        let kinds = prop::sample::select(vec![Kind::Full, Kind::Cut, Kind::Centre]);
        let ways = prop::sample::select(vec![Along::Arc, Along::Chord]);
        (likely(3.0..5.0), kinds, ways).prop_map(|(value, kind, along)| Reading {
            value,
            kind,
            along,
        })
    };
    let spans = prop::option::weighted(0.8, [reading(), reading()]);
    let lines = prop::sample::select(vec![Reference::OwnLine, Reference::Centreline]);
    let marks = (prop::option::of(likely(2.0..4.0)), likely(0.1..0.6), lines);
    (
        prop::option::weighted(0.8, hole()),
        hole(),
        hole(),
        spans,
        marks,
    )
        .prop_map(
            |(thumb, middle, ring, spans, (palm_mark, bridge, reference))| GripOrder {
                thumb,
                middle,
                ring,
                spans,
                palm_mark,
                bridge,
                reference,
            },
        )
}

fn real(parts: impl IntoIterator<Item = f64>) -> Result<(), TestCaseError> {
    for part in parts {
        prop_assert!(part.is_finite(), "{part}");
    }
    Ok(())
}

/// What is told of a hole that was let through, alone and lining another.
fn told_of(ball: &Sphere, hole: &Hole, bore: &Hole) -> Result<Option<Solid>, TestCaseError> {
    real(
        hole.mouth()
            .into_iter()
            .chain(hole.axis())
            .chain(hole.wide()),
    )?;
    let _ = (
        hole.place(ball),
        slug::wall(ball, hole, bore),
        solid::sleeve(ball, hole, bore),
    );
    let found = solid::drilled(ball, hole).ok();
    if let Some(solid) = &found {
        real(
            solid
                .first()
                .into_iter()
                .chain(solid.second().into_iter().flatten()),
        )?;
        prop_assert!(solid.volume() >= 0.0, "{}", solid.volume());
    }
    Ok(found)
}

fn balls(around: f64) -> Sphere {
    Sphere::around(around).unwrap_or_default()
}

proptest! {
    #![proptest_config(cases(512))]

    #[test]
    fn plain_numbers(a in number(), b in number(), c in number(), d in number(), around in number()) {
        let ball = balls(around);
        let _ = (Sphere::across(a), ball.arc_to_chord(a), ball.chord_to_arc(a), ball.degrees(a), ball.arc(a));
        let _ = (pitch::angle(&ball, a), pitch::offset(&ball, a), pitch::combined(a, b), sixty_fourths(a));
        let _ = (span::wall(a, b), span::full_to_cut(a, b, c), span::cut_to_full(a, b, c), span::oval_reach(a, b, c));
        let _ = (span::full_to_centre(&ball, a, b, c), span::centre_to_full(&ball, a, b, c), ring::ring_span(a, b, (c, d)));
        let _ = (speed::mph(a), speed::seconds(a), speed::roll_rpm(&ball, a), speed::share_of_roll(&ball, a, b));
        let _ = (track::tilt(&ball, a), track::width(&ball, a), track::axis_point_to_track(&ball, a));
        let _ = (removed::ounces(a, b, c), removed::average_density(&ball, a), removed::least_core_gravity(a), balance::moved_grip(&ball, a, b));
        let _ = (jig::parallel_lateral(&ball, a, b), jig::centre_lateral(&ball, a, b));
        if let Ok(holes) = FingerHoles::new(&ball, a, b, [c, d]) {
            let _ = (holes.web_at(a), holes.least_web(d), holes.breaks_at(), holes.toward_the_thumb(&ball, [a, b], d));
        }
        let matrix = [[a, b, c], [b, d, a], [c, a, b]];
        if let Ok(found) = eigen::symmetric(matrix) {
            let axes = found.axes().into_iter().flatten();
            real(axes)?;
        }
    }

    #[test]
    fn layouts(a in number(), b in number(), c in number(), d in number(), direction in three(), yes in any::<bool>(), around in number()) {
        let ball = balls(around);
        let _ = (layout::drilling_angle(&ball, a, b), layout::val_angle(&ball, a, b), layout::mass_bias_reach(&ball, a));
        let _ = (layout::flare_share(&ball, a), layout::is_high_flare(a), layout::wander(&ball, a, b, c, d));
        let points = [
            Point::new(&ball, a, b), Point::from_up_first(&ball, a, b), Point::from_grip(&ball, a, b), Point::at(&ball, direction),
            Point::from_grip_and_height(&ball, a, b, yes), Point::from_lines(&ball, a, b, yes), Point::new(&ball, c, d),
        ];
        let points: Vec<Point> = points.into_iter().flatten().chain([Point::grip_centre()]).collect();
        for (&one, &other) in points.iter().zip(points.iter().rev()) {
            real([one.over(), one.up(), one.to(&ball, other), one.to_grip(&ball), one.to_centreline(&ball), one.grip_direction(&ball)])?;
            real([one.up_first(&ball).0, one.up_first(&ball).1])?;
            let _ = (layout::cg_toward(&ball, one, other, c), layout::cg_places(&ball, one, c, d));
            let _ = (layout::mass_bias_through(&ball, one, other), layout::mass_bias_from_grip(&ball, one, c, yes));
            let mark = HoleMark::new("thumb", other, a);
            let marks: Vec<HoleMark> = mark.into_iter().collect();
            if let Ok(found) = layout::clearances(&ball, one, Some(other), d, &marks) {
                let _ = layout::track_words(&found, layout::wander(&ball, a, b, c, d).ok());
            }
            let mut laid = vec![Layout::from_pin(one), Layout::from_pin(one).with_pap(other)];
            laid.extend(Layout::from_pap(&ball, one, c, d));
            laid.extend(Angles::new(&ball, a, b, c).and_then(|angles| Layout::from_angles(&ball, one, &angles)));
            laid.extend(Distances::new(&ball, a, b, c, yes).and_then(|told| Layout::from_distances(&ball, one, &told)));
            for layout in laid {
                let layout = layout.with_mass_bias_toward(&ball, other).unwrap_or(layout);
                let layout = layout.with_cg(&ball, c, d).unwrap_or(layout);
                let _ = (layout.angles(&ball), layout.distances(&ball), layout.val(&ball), layout.drilling(&ball));
                real(layout.buffer(&ball).into_iter().chain(layout.pin_to_pap(&ball)))?;
                let _ = layout::steps(&ball, &layout, &marks, yes);
            }
        }
    }

    #[test]
    fn holes(mouth in three(), aim in three(), wide in three(), order in hole(), other in hole(), around in number()) {
        let ball = balls(around);
        let made = |order: &HoleOrder| {
            [
                Hole::new(&ball, mouth, aim, order.pitches, order.bore, order.depth),
                Hole::along(&ball, mouth, aim, wide, order.bore, order.depth),
                // A likely axis: roughly inward.
                Hole::along(&ball, mouth, mouth.map(|part| -part), wide, order.bore, order.depth),
            ]
        };
        let holes: Vec<Hole> = made(&order).into_iter().chain(made(&other)).flatten().collect();
        for one in &holes {
            for other in &holes {
                told_of(&ball, one, other)?;
                let wall = wall::between(&ball, one, other);
                real([wall.least, wall.at_depth].into_iter().chain(wall.breaks_at))?;
            }
        }
        let _ = jig::setting(&ball, Digit::Thumb, order.pitches, order.bore, order.depth);
    }

    #[test]
    fn grips(order in order(), shift in three(), around in likely(26.0..27.1)) {
        let ball = balls(around);
        match place(&ball, &order) {
            Err(refused) => prop_assert!(!refused.to_string().is_empty() && !refused.faults().is_empty()),
            Ok(placed) => {
                let holes: Vec<Hole> = placed.holes().map(|(_, hole)| hole).collect();
                for one in &holes {
                    for other in &holes {
                        told_of(&ball, one, other)?;
                    }
                }
                for beside in wall::within_grip(&ball, &placed) {
                    real([beside.wall.least, beside.wall.at_depth])?;
                }
                real([placed.bridge(&ball), placed.felt_bridge(&ball)])?;
                let [over, up, turned] = shift;
                if let Ok(seen) = placed.seen_from(&ball, Shift { over, up, turned }) {
                    let old: Vec<Hole> = seen.holes().map(|(_, hole)| hole).collect();
                    let walls = wall::to_old(&ball, &placed, &old);
                    real(walls.iter().map(|beside| beside.wall.least))?;
                }
            }
        }
    }

    #[test]
    fn balances(
        a in likely(190.0..256.0), b in likely(0.0..4.0), arm in likely(2.0..6.0), density in likely(0.8..1.6),
        parts in three(), rg in likely(2.4..2.6), differential in likely(0.0..0.08), pin in three(), bias in prop::option::of(three()),
        order in hole(), halves in any::<bool>(),
    ) {
        let sphere = Sphere::default();
        let model = if halves { Model::Halves } else { Model::Moment };
        let scale = Scale::new(arm, model).or(Scale::new(4.0, model));
        let Ok(scale) = scale else { return Ok(()) };
        let statics = Statics { top: parts[0], side: parts[1], finger: parts[2] };
        let solid = Hole::new(&sphere, [0.0, 0.4, 1.0], [0.0, -1.0, 0.0], order.pitches, order.bore, order.depth)
            .and_then(|hole| solid::drilled(&sphere, &hole));
        let solid = solid.unwrap_or_default();
        let changes: Vec<Change> = [Change::out(solid, density), Change::back(solid.scaled(parts[0]), density)]
            .into_iter().flatten().collect();
        let core = Core::new(rg, differential, parts[1], pin, bias);
        let place = Point::new(&sphere, parts[0], parts[1]).unwrap_or(Point::grip_centre());
        for ball in [Ball::undrilled(sphere, a, b, place, &scale), Ball::weighed(sphere, a, statics, &scale)].into_iter().flatten() {
            if let Ok(done) = balance::finish(&ball, &changes, &scale) {
                real(done.centre().into_iter().chain([done.ounces(), done.statics().top, done.statics().side, done.statics().finger]))?;
            }
            if let Ok(turning) = core.and_then(|core| inertia::after(&core, &ball, &changes)) {
                real(turning.axes().into_iter().flatten().chain([turning.rg_low(), turning.rg_high()]).chain(turning.moved()))?;
            }
        }
        let places = [place, Point::grip_centre()];
        let units = [Unit { id: "one", top_weight: b, places: &places }, Unit { id: "two", top_weight: 2.0, places: &[] }];
        let limits = Limits { top: parts[0], side: parts[1], finger: parts[2] };
        if let Ok(found) = best(&sphere, &units, &changes, &scale, &limits) {
            real(found.iter().map(|choice| choice.margin()))?;
        }
        let reading = |ounces: f64, statics| calibrate::Reading { ounces: Some(ounces), statics };
        let pair = ReadingPair {
            removed: vec![solid], put_back: vec![(solid, density)],
            before: reading(a, statics), after: reading(a - b, Statics::default()),
        };
        if let Ok(found) = calibrate(&vec![pair; 3]) {
            real([found.arm(), found.density(), found.residual_rms()])?;
        }
    }
}

proptest! {
    // Every mend places the grip again and again.
    #![proptest_config(cases(24))]

    #[test]
    fn mended(order in order(), least in number(), bounds in [three(), three(), three()], outside in number(), slug in number()) {
        let [one, two, three] = bounds.map(|[step, lowest, highest]| Bounds { step, lowest, highest });
        let steps = Steps {
            bridge: one, lateral: two, forward: three, finger_depth: one, thumb_depth: two, size: three,
            finger_outsides: vec![outside, 0.875], thumb_outsides: vec![1.25, slug], insert_wall: outside, slug_wall: slug,
        };
        for mend in mends(&Sphere::default(), &order, least, &steps) {
            prop_assert!(mend.least >= least - 1e-6, "{mend:?}");
        }
    }
}
