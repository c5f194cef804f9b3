//! One step of the pair of orders 5 and 4 by Dormand and Prince, with its values anywhere inside the step.
//!
//! The pair: J. R. Dormand and P. J. Prince, "A family of embedded Runge-Kutta formulae", Journal of Computational and Applied
//! Mathematics 6 (1980) 19-26. The values inside a step (order 4): E. Hairer, S. P. Nørsett, G. Wanner, "Solving Ordinary
//! Differential Equations I", section II.6. Both from memory; tests hold the orders.

use std::array::from_fn;

/// A step that was tried.
#[derive(Clone, Copy, Debug)]
pub(super) struct Step<const N: usize> {
    /// The state where it starts.
    pub(super) from: [f64; N],
    /// The state where it ends.
    pub(super) to: [f64; N],
    /// The slope where it ends: the next step's first.
    pub(super) slope: [f64; N],
    /// How long it is.
    pub(super) size: f64,
    /// The difference of the two orders.
    error: [f64; N],
    /// What the values inside are made of.
    inside: [[f64; N]; 4],
}

/// How many slopes a step asks for beside the one it is given.
pub(super) const SLOPES: usize = 6;

impl<const N: usize> Step<N> {
    /// From a state and its slope, so far on.
    pub(super) fn take(
        field: impl Fn(&[f64; N]) -> [f64; N],
        from: &[f64; N],
        first: &[f64; N],
        size: f64,
    ) -> Step<N> {
        let h = size;
        let y = from;
        let k1 = first;
        let k2 = field(&from_fn(|i| y[i] + h * (1.0 / 5.0) * k1[i]));
        let k3 = field(&from_fn(|i| {
            y[i] + h * (3.0 / 40.0 * k1[i] + 9.0 / 40.0 * k2[i])
        }));
        let k4 = field(&from_fn(|i| {
            y[i] + h * (44.0 / 45.0 * k1[i] - 56.0 / 15.0 * k2[i] + 32.0 / 9.0 * k3[i])
        }));
        let k5 = field(&from_fn(|i| {
            y[i] + h
                * (19372.0 / 6561.0 * k1[i] - 25360.0 / 2187.0 * k2[i] + 64448.0 / 6561.0 * k3[i]
                    - 212.0 / 729.0 * k4[i])
        }));
        let k6 = field(&from_fn(|i| {
            y[i] + h
                * (9017.0 / 3168.0 * k1[i] - 355.0 / 33.0 * k2[i]
                    + 46732.0 / 5247.0 * k3[i]
                    + 49.0 / 176.0 * k4[i]
                    - 5103.0 / 18656.0 * k5[i])
        }));
        let to: [f64; N] = from_fn(|i| {
            y[i] + h
                * (35.0 / 384.0 * k1[i] + 500.0 / 1113.0 * k3[i] + 125.0 / 192.0 * k4[i]
                    - 2187.0 / 6784.0 * k5[i]
                    + 11.0 / 84.0 * k6[i])
        });
        let k7 = field(&to);
        let error = from_fn(|i| {
            h * (71.0 / 57600.0 * k1[i] - 71.0 / 16695.0 * k3[i] + 71.0 / 1920.0 * k4[i]
                - 17253.0 / 339200.0 * k5[i]
                + 22.0 / 525.0 * k6[i]
                - 1.0 / 40.0 * k7[i])
        });
        let rise: [f64; N] = from_fn(|i| to[i] - y[i]);
        let bend: [f64; N] = from_fn(|i| h * k1[i] - rise[i]);
        let turn: [f64; N] = from_fn(|i| rise[i] - h * k7[i] - bend[i]);
        let last: [f64; N] = from_fn(|i| {
            h * (-12715105075.0 / 11282082432.0 * k1[i] + 87487479700.0 / 32700410799.0 * k3[i]
                - 10690763975.0 / 1880347072.0 * k4[i]
                + 701980252875.0 / 199316789632.0 * k5[i]
                - 1453857185.0 / 822651844.0 * k6[i]
                + 69997945.0 / 29380423.0 * k7[i])
        });
        Step {
            from: *from,
            to,
            slope: k7,
            size,
            error,
            inside: [rise, bend, turn, last],
        }
    }

    /// The state at a share of the step, 0 to 1.
    pub(super) fn at(&self, share: f64) -> [f64; N] {
        let [rise, bend, turn, last] = &self.inside;
        let rest = 1.0 - share;
        from_fn(|i| {
            self.from[i] + share * (rise[i] + rest * (bend[i] + share * (turn[i] + rest * last[i])))
        })
    }

    /// The least and the most that [`Step::at`] can give of each value: between the ends it leaves the straight line by its other terms, whose
    /// factors are at most 1/4, 4/27 and 1/16.
    pub(super) fn spans(&self) -> [(f64, f64); N] {
        let [_, bend, turn, last] = &self.inside;
        from_fn(|i| {
            let off = libm::fabs(bend[i]) / 4.0
                + libm::fabs(turn[i]) * (4.0 / 27.0)
                + libm::fabs(last[i]) / 16.0;
            let (from, to) = (self.from[i], self.to[i]);
            (from.min(to) - off, from.max(to) + off)
        })
    }

    /// The largest error against what is allowed to each value: `floor + |value|` times the tolerance. 1 is just allowed; what is
    /// no number is far too much.
    pub(super) fn error(&self, floor: &[f64; N], tolerance: f64) -> f64 {
        let mut most = 0.0;
        for (((error, floor), from), to) in
            self.error.iter().zip(floor).zip(&self.from).zip(&self.to)
        {
            let size = libm::fabs(*from).max(libm::fabs(*to));
            let share = libm::fabs(*error) / (tolerance * (floor + size));
            if !(share.is_finite() && to.is_finite()) {
                return f64::INFINITY;
            }
            most = share.max(most);
        }
        most
    }
}

/// How much longer the next step may be, or how much shorter this one must be, for an error of so much of what is allowed.
pub(super) fn scale(error: f64) -> f64 {
    if !error.is_finite() {
        return 0.2;
    }
    if error <= 0.0 {
        return 5.0;
    }
    (0.9 * libm::pow(error, -0.2)).clamp(0.2, 5.0)
}

/// Where between two places a function goes from at most zero to more than zero: the end where it is more, with its value. Regula falsi in
/// the Illinois way; at most 60 tries, until the value there is at most `close` or the two places can't be told apart.
pub(super) fn crossing(
    function: impl Fn(f64) -> f64,
    below: (f64, f64),
    above: (f64, f64),
    close: f64,
) -> (f64, f64) {
    let ((mut a, mut low), (mut b, mut high)) = (below, above);
    let mut weight = (low, high);
    let mut side = 0;
    for round in 0..60 {
        if high <= close || libm::fabs(b - a) <= 4.0 * f64::EPSILON * libm::fabs(b) {
            break;
        }
        let (wl, wh) = weight;
        let mut middle = (a * wh - b * wl) / (wh - wl);
        // Every third try halves, so that it ends whatever the function does.
        if round % 3 == 2 || !(middle > a.min(b) && middle < a.max(b)) {
            middle = 0.5 * (a + b);
        }
        let value = function(middle);
        if value > 0.0 {
            b = middle;
            high = value;
            weight.1 = value;
            if side == 1 {
                weight.0 *= 0.5;
            }
            side = 1;
        } else {
            a = middle;
            low = value;
            weight.0 = low;
            if side == -1 {
                weight.1 *= 0.5;
            }
            side = -1;
        }
    }
    (b, high)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// An oscillation with a slowly changing pace has an exact answer: (cos, -sin) of t + t²/2, with t itself the third value.
    fn field(at: &[f64; 3]) -> [f64; 3] {
        let pace = 1.0 + at[2];
        [pace * at[1], -pace * at[0], 1.0]
    }
    fn exact(t: f64) -> f64 {
        libm::cos(t + t * t / 2.0)
    }
    fn run(steps: usize) -> (f64, f64) {
        let size = 1.0 / steps as f64;
        let mut state = [1.0, 0.0, 0.0];
        let mut inside = 0.0_f64;
        for _ in 0..steps {
            let step = Step::take(field, &state, &field(&state), size);
            for share in [0.25, 0.5, 0.8] {
                let at = step.at(share);
                inside = inside.max(libm::fabs(at[0] - exact(at[2])));
            }
            state = step.to;
        }
        (libm::fabs(state[0] - exact(1.0)), inside)
    }

    #[test]
    fn halving_the_step_leaves_a_thirtieth_of_the_error() {
        let (coarse, inside_coarse) = run(20);
        let (fine, inside_fine) = run(40);
        let order = libm::log2(coarse / fine);
        assert!((4.7..6.0).contains(&order), "order {order}");
        let order = libm::log2(inside_coarse / inside_fine);
        assert!((4.0..6.0).contains(&order), "order inside {order}");
        assert!(fine < 1e-8, "{fine}");
    }

    #[test]
    fn inside_its_spans() {
        let state = [0.3, -0.9, 0.5];
        let step = Step::take(field, &state, &field(&state), 1.5);
        let spans = step.spans();
        for look in 0..=1000 {
            for (value, (least, most)) in step.at(f64::from(look) / 1000.0).iter().zip(spans) {
                let slack = 1e-15 * (1.0 + libm::fabs(*value));
                assert!(least - slack <= *value && *value <= most + slack);
            }
        }
        // A curve that turns back inside leaves the ends' own range.
        assert!(spans[0].1 > state[0].max(step.to[0]) || spans[0].0 < state[0].min(step.to[0]));
    }

    #[test]
    fn the_error_told_is_about_the_one_made() {
        let state = [1.0, 0.0, 0.0];
        let step = Step::take(field, &state, &field(&state), 0.2);
        let made = libm::fabs(step.to[0] - exact(0.2));
        let told = step.error(&[0.0; 3], 1.0) * libm::fabs(step.from[0]);
        assert!(told > made && told < 1e-4, "{told} against {made}");
    }

    #[test]
    fn a_crossing_is_found_from_above() {
        let (place, value) = crossing(|x| x * x * x - 2.0, (0.0, -2.0), (3.0, 25.0), 1e-14);
        assert!((0.0..=1e-14).contains(&value), "{value}");
        assert!(libm::fabs(place - libm::cbrt(2.0)) < 1e-14);
    }
}
