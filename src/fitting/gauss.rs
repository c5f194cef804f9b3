//! Gauss-Legendre nodes and weights, worked out rather than typed in, once.

use std::f64::consts::PI;
use std::sync::OnceLock;

/// The orders there are, lowest first.
pub(super) const ORDERS: [usize; 7] = [8, 12, 18, 28, 44, 68, 104];

static RULES: [OnceLock<Vec<(f64, f64)>>; ORDERS.len()] = [const { OnceLock::new() }; ORDERS.len()];

/// The nodes of [`ORDERS`]`[which]` on -1 to 1, each with its weight: a polynomial of degree `2 * order - 1` is summed exactly.
/// Beyond the last there is the last.
pub(super) fn rule(which: usize) -> &'static [(f64, f64)] {
    let which = which.min(ORDERS.len() - 1);
    RULES[which].get_or_init(|| nodes(ORDERS[which]))
}

fn nodes(order: usize) -> Vec<(f64, f64)> {
    let count = order as f64;
    (0..order)
        .map(|index| {
            // Tricomi's first guess is good to a thousandth or better, and Newton doubles the digits each time.
            let mut node = libm::cos(PI * (index as f64 + 0.75) / (count + 0.5));
            let mut slope = 1.0;
            for _ in 0..6 {
                let (value, derivative) = legendre(order, node);
                slope = derivative;
                node -= value / derivative;
            }
            (node, 2.0 / ((1.0 - node * node) * slope * slope))
        })
        .collect()
}

/// The Legendre polynomial of this degree and its derivative, strictly between -1 and 1.
fn legendre(degree: usize, at: f64) -> (f64, f64) {
    let (mut before, mut value) = (0.0, 1.0);
    for step in 1..=degree {
        let step = step as f64;
        let next = ((2.0 * step - 1.0) * at * value - (step - 1.0) * before) / step;
        before = value;
        value = next;
    }
    let slope = degree as f64 * (at * value - before) / (at * at - 1.0);
    (value, slope)
}

#[cfg(test)]
mod tests {
    use super::{ORDERS, nodes, rule};

    /// The highest degree that must come out exact, and the two-point rule of any textbook: nodes at one over root three.
    #[test]
    fn sums_polynomials_exactly() {
        for (which, order) in ORDERS.into_iter().enumerate() {
            for power in [0, 2 * order - 2, 2 * order - 1] {
                let sum: f64 = rule(which)
                    .iter()
                    .map(|(node, weight)| weight * node.powi(power as i32))
                    .sum();
                let exact = if power % 2 == 0 {
                    2.0 / (power as f64 + 1.0)
                } else {
                    0.0
                };
                assert!((sum - exact).abs() < 1e-13, "{order} {power}: {sum}");
            }
        }
        assert!((nodes(2)[0].0 - 1.0 / 3.0_f64.sqrt()).abs() < 1e-15);
    }
}
