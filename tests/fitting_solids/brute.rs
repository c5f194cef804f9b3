//! A second, slow way to the same solids: small cubes counted one by one. It shares no code with the quadrature.

use spanwright::fitting::{Sphere, hole::Hole};

/// Volume, first moment, and half differences.
pub struct Counted {
    pub volume: f64,
    pub first: [f64; 3],
    pub halves: [f64; 3],
}

/// Cubes with an edge of `edge` inches, in the hole's own frame, each counted if its middle lies in the hole.
pub fn counted(ball: &Sphere, hole: &Hole, edge: f64) -> Counted {
    let (mouth, axis, wide) = (hole.mouth(), hole.axis(), hole.wide());
    let aside = [
        axis[1] * wide[2] - axis[2] * wide[1],
        axis[2] * wide[0] - axis[0] * wide[2],
        axis[0] * wide[1] - axis[1] * wide[0],
    ];
    let (run, drill) = (hole.section().run() / 2.0, hole.section().drill() / 2.0);
    let mut counted = Counted {
        volume: 0.0,
        first: [0.0; 3],
        halves: [0.0; 3],
    };
    let middles = |from: f64, to: f64| {
        let steps = ((to - from) / edge).ceil() as i32;
        (0..steps).map(move |step| from + (f64::from(step) + 0.5) * (to - from) / f64::from(steps))
    };
    for u in middles(-run - drill, run + drill) {
        for v in middles(-drill, drill) {
            if (u.abs() - run).max(0.0).hypot(v) > drill {
                continue;
            }
            for depth in middles(-1.0, hole.depth()) {
                let place = [0, 1, 2].map(|part| {
                    mouth[part] + u * wide[part] + v * aside[part] + depth * axis[part]
                });
                if place.iter().map(|part| part * part).sum::<f64>() > ball.radius().powi(2) {
                    continue;
                }
                counted.volume += 1.0;
                for (part, at) in place.into_iter().enumerate() {
                    counted.first[part] += at;
                    counted.halves[part] += at.signum();
                }
            }
        }
    }
    let steps = |length: f64| length / (length / edge).ceil();
    let cube = steps(2.0 * (run + drill)) * steps(2.0 * drill) * steps(hole.depth() + 1.0);
    counted.volume *= cube;
    counted.first = counted.first.map(|part| part * cube);
    counted.halves = counted.halves.map(|part| part * cube);
    counted
}
