//! The same by the obvious slow way: small steps of the equations of motion, with the friction looked up at each place.

use super::{FOOT, G, INCH, RADIUS, Shot, long};
use proptest::prelude::*;

/// Velocity, spin, place across, seconds and energy of a kg at 60 ft, by small steps.
fn stepped(shot: &Shot) -> ([f64; 2], [f64; 2], f64, f64) {
    let radius = RADIUS * INCH;
    let (mut v, slip) = shot.by_hand();
    let mut spin = [(slip[1] - v[1]) / radius, (v[0] - slip[0]) / radius];
    let (mut x, mut y, mut t) = (0.0, 0.0, 0.0);
    let step = 2e-5;
    while x < 60.0 * FOOT {
        let u = [v[0] - radius * spin[1], v[1] + radius * spin[0]];
        let mu = if x < shot.length * FOOT {
            shot.oil
        } else {
            shot.dry
        };
        // Of each kg: dv/dt = F, beta R² d(omega)/dt = -R z × F.
        let most = mu * G;
        // No more than what ends the slip within this step.
        let ends = long(u) / ((1.0 + 1.0 / shot.beta()) * step);
        let size = most.min(ends);
        let force = match long(u) > 0.0 {
            true => u.map(|part| -size * part / long(u)),
            false => [0.0; 2],
        };
        x += v[0] * step;
        y += v[1] * step;
        v = [v[0] + force[0] * step, v[1] + force[1] * step];
        let turn = step / (shot.beta() * radius);
        spin = [spin[0] + turn * force[1], spin[1] - turn * force[0]];
        t += step;
    }
    let over = (x - 60.0 * FOOT) / v[0];
    (v, spin, y - v[1] * over, t - over)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, failure_persistence: None, ..ProptestConfig::default() })]
    #[test]
    fn as_by_small_steps(
        mph in 8.0..24.0, rpm in 0.0..700.0, rotation in 0.0..90.0, tilt in 0.0..60.0, launch in -4.0..4.0,
        rg in 2.4..2.8, oil in 0.01..0.08, more in 1.0..5.0, length in 0.0..60.0,
    ) {
        let shot = Shot { mph, rpm, rotation, tilt, launch, rg, oil, dry: oil * more, length };
        let (v, spin, across, seconds) = stepped(&shot);
        let pins = *shot.roll().pins();
        for axis in [0, 1] {
            prop_assert!((pins.velocity()[axis] - v[axis]).abs() < 2e-4);
            prop_assert!((pins.spin()[axis] - spin[axis]).abs() < 5e-3);
        }
        prop_assert!((pins.across().as_metres() - across).abs() < 2e-4, "{} {across}", pins.across().as_metres());
        prop_assert!((pins.seconds() - seconds).abs() < 5e-5);
    }
}
