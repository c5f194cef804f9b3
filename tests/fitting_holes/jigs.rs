//! What the jig is set to, and laterals counted two ways.

use proptest::prelude::*;
use spanwright::fitting::{
    Sphere,
    grip::{Digit, HoleOrder},
    hole::Pitches,
    jig,
};

use crate::grips::*;

proptest! {
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
