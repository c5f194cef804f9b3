//! Where a rising function crosses zero, to the last digits.

/// More rounds than halving alone would need.
const ROUNDS: usize = 120;
/// Small against anything that can be drilled, large against rounding.
const CLOSE: f64 = 1e-15;

/// The zero of a function that is at or below zero at `low` and at or above it at `high`, and rises between.
///
/// Secants that never leave the bracket (the Illinois rule), with a halving now and then so that no shape of function
/// can stall them. Outside its promise it gives one of the ends.
pub(super) fn rising(f: impl Fn(f64) -> f64, mut low: f64, mut high: f64) -> f64 {
    let (mut below, mut above) = (f(low), f(high));
    if below >= 0.0 || below.is_nan() {
        return low;
    }
    if above <= 0.0 || above.is_nan() {
        return high;
    }
    let mut last = 0.0;
    for round in 1..=ROUNDS {
        let secant = low - below * (high - low) / (above - below);
        let inside = secant > low && secant < high;
        let middle = if inside && round % 8 != 0 {
            secant
        } else {
            0.5 * (low + high)
        };
        let value = f(middle);
        if value == 0.0 || high - low < CLOSE || libm::fabs(value) < CLOSE {
            return middle;
        }
        let side = if value < 0.0 {
            (low, below) = (middle, value);
            -1.0
        } else {
            (high, above) = (middle, value);
            1.0
        };
        // The same side twice: the other end's weight is halved, or it would never move.
        if side == last {
            if side < 0.0 {
                above *= 0.5;
            } else {
                below *= 0.5;
            }
        }
        last = side;
    }
    0.5 * (low + high)
}
