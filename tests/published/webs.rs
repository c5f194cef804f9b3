//! Webs between two equal finger holes at three depths, and the depth at which the holes meet.
//!
//! Derived: no forward or reverse pitch. With c = bridge + diameter, sin f = c/2R and sin t = lateral/R, the web at depth d is
//! bridge - d (sin(f - t) of one hole + that of the other). The depth at which 7/8 holes break was first worked as 0.96;
//! redone, it is 0.9549, so 0.95 stands here.

use crate::prints_as;

/// One pair of holes: bridge, diameter, laterals outward, webs at [`DEPTHS`], and the depth at which they meet.
pub struct Row {
    pub bridge: f64,
    pub size: f64,
    pub outward: [f64; 2],
    pub webs: [f64; 3],
    pub breaks: f64,
}

const DEPTHS: [f64; 3] = [1.0, 1.25, 1.5];

const PRINTED: [Row; 8] = [
    row(
        0.25,
        31.0 / 32.0,
        [0.0, 0.0],
        [-0.034, -0.105, -0.175],
        0.88,
    ),
    row(
        0.25,
        31.0 / 32.0,
        [0.125, 0.125],
        [0.024, -0.032, -0.089],
        1.11,
    ),
    row(
        0.25,
        31.0 / 32.0,
        [0.25, 0.25],
        [0.082, 0.040, -0.002],
        1.49,
    ),
    row(
        0.25,
        31.0 / 32.0,
        [0.375, 0.375],
        [0.140, 0.113, 0.085],
        2.28,
    ),
    row(0.25, 31.0 / 32.0, [0.25, 0.5], [0.140, 0.113, 0.086], 2.28),
    row(
        0.375,
        31.0 / 32.0,
        [0.0, 0.0],
        [0.062, -0.016, -0.094],
        1.20,
    ),
    row(0.25, 0.875, [0.0, 0.0], [-0.012, -0.077, -0.143], 0.95),
    row(0.375, 0.75, [0.0, 0.0], [0.113, 0.048, -0.018], 1.43),
];

const fn row(bridge: f64, size: f64, outward: [f64; 2], webs: [f64; 3], breaks: f64) -> Row {
    Row {
        bridge,
        size,
        outward,
        webs,
        breaks,
    }
}

/// Holds a way of measuring (a pair of holes and a depth in; the web there and the depth at which they meet out) against
/// every number.
pub fn hold(
    measure: impl Fn(&Row, f64) -> Result<(f64, Option<f64>), Box<dyn std::error::Error>>,
) -> Result<(), Box<dyn std::error::Error>> {
    for row in &PRINTED {
        for (depth, web) in DEPTHS.into_iter().zip(row.webs) {
            let (found, breaks) = measure(row, depth)?;
            prints_as(found, web, 3);
            prints_as(breaks.ok_or("they break")?, row.breaks, 2);
        }
    }
    Ok(())
}
