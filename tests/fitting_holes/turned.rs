//! An old grip seen from a new one.

use proptest::prelude::*;
use spanwright::fitting::{
    Sphere,
    grip::{Shift, place},
    wall::between,
};

use crate::grips::*;

proptest! {
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
