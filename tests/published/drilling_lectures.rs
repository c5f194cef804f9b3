//! Spans, bridges and laterals from drilling lectures and drillers' own notes.

use rstest::rstest;
use spanwright::fitting::{Sphere, ring, web::FingerHoles};

use crate::prints_as;

type Outcome = Result<(), Box<dyn std::error::Error>>;

/// A difference of 5/16 to 3/8 between the creases gives equal spans; women: 5/16. Kase Kazumi, drilling lecture
/// vol. 3, BBM bowling magazine, 2018-09-12. The amounts outside that range are derived from it: ring = middle + (k - d).
#[rstest]
#[case(3.75, 0.3125, (0.3125, 0.3125), 3.75)]
#[case(4.25, 0.3125, (0.3125, 0.375), 4.25)]
#[case(4.25, 0.375, (0.3125, 0.375), 4.25)]
#[case(4.25, 0.5, (0.3125, 0.375), 4.125)]
#[case(4.25, 0.25, (0.3125, 0.375), 4.3125)]
fn the_ring_span_follows_the_creases(
    #[case] middle: f64,
    #[case] difference: f64,
    #[case] level: (f64, f64),
    #[case] ring: f64,
) -> Outcome {
    assert_eq!(ring::ring_span(middle, difference, level)?, ring);
    Ok(())
}

/// "9/16 left and 9/16 right is parallel" at a bridge of 3/16 and a depth of 1.5 in: majiporan blog, 2010-03. It is exact
/// for a hole of 15/16 in, a size that is derived; the web then stays the bridge all the way down.
#[test]
fn nine_sixteenths_each_is_parallel() -> Outcome {
    let holes = FingerHoles::new(&Sphere::default(), 0.1875, 0.9375, [0.5625, 0.5625])?;
    prints_as(holes.web_at(1.5)?, 0.1875, 9);
    Ok(())
}

/// The same claim at the usual 31/32 in hole. Derived from stated premises: parallel is half of bridge plus hole, 0.578 in.
#[test]
fn parallel_is_half_of_bridge_and_hole() -> Outcome {
    let half: f64 = (0.1875 + 0.96875) / 2.0;
    prints_as(half, 0.578, 3);
    let holes = FingerHoles::new(&Sphere::default(), 0.1875, 0.96875, [half, half])?;
    prints_as(holes.least_web(2.5)?, 0.1875, 9);
    Ok(())
}

/// Bridge 1/4 with laterals that sum to 3/4 "does not break": bowlinganalyse.fr, "La tenue de boule a 4 trous", part 2.
/// The web of 0.085 in at 1.5 in is derived (equal 31/32 in holes); arithmetic redone independently.
#[test]
fn laterals_of_three_quarters_keep_a_web() -> Outcome {
    let holes = FingerHoles::new(&Sphere::default(), 0.25, 0.96875, [0.375, 0.375])?;
    prints_as(holes.least_web(1.5)?, 0.085, 3);
    Ok(())
}
