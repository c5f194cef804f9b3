//! The region a drill empties: inside its section, inside the ball, above the flat bottom. Summed by Gauss quadrature
//! over the section, with the exact chord to the sphere along the axis.
//!
//! The sums' own frame has its origin at the ball's centre: `wide` and `aside` across the hole, `axis` along it. A point
//! over the section at `(u, v)` from the centre's foot meets the sphere at `t = -h` and `t = +h`, `h² = R² - u² - v²`.

mod halves;

use std::f64::consts::FRAC_PI_2;

use glam::{DMat3, DVec3};

use super::{Misfit, Sphere, gauss, within};

/// How nearly two orders must agree, as a share of the volume (moments: of the volume times the radius).
const AGREED: f64 = 1e-12;
/// The most a hole's far wall may miss the ball's centre by, as a share of the radius: here a hole is a notch in the side.
const FARTHEST: f64 = 0.97;
/// A hole's section and where it lies.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bored {
    radius: f64,
    wide: DVec3,
    aside: DVec3,
    axis: DVec3,
    /// The section's middle, across the hole, from the foot of the ball's centre.
    middle: (f64, f64),
    /// Half of what an oval's drill is moved.
    run: f64,
    /// Half the drill's diameter.
    drill: f64,
    /// Where the flat bottom is along the axis; none if the hole goes clean through.
    floor: Option<f64>,
}

/// What the sums give, about the ball's centre.
#[derive(Clone, Copy, Debug)]
pub(super) struct Sums {
    pub(super) volume: f64,
    pub(super) first: DVec3,
    pub(super) second: DMat3,
}

impl Bored {
    /// A hole whose axis (of length one, into the ball) runs through `mouth`, with the drill moved `run` inches along
    /// `wide` (of length one, square to the axis) in all.
    ///
    /// # Errors
    ///
    /// A hole that hangs over the side of the ball, that is too shallow for its whole bottom to lie inside the ball, or that
    /// comes out on the far side with only part of its bottom.
    pub(super) fn new(
        ball: &Sphere,
        mouth: DVec3,
        axis: DVec3,
        wide: DVec3,
        (run, drill): (f64, f64),
        depth: f64,
    ) -> Result<Bored, Misfit> {
        let radius = ball.radius();
        let aside = axis.cross(wide);
        let middle = (mouth.dot(wide), mouth.dot(aside));
        let (run, drill) = (run / 2.0, drill / 2.0);
        let misses = libm::hypot(middle.0, middle.1);
        let far = libm::hypot(middle.0.abs() + run, middle.1) + drill;
        let near = libm::hypot((middle.0.abs() - run).max(0.0), middle.1) - drill;
        let what = "distance of the hole's far wall from the ball's centre, across the hole,";
        within(what, far, 0.0, FARTHEST * radius)?;
        let rise = |across: f64| libm::sqrt(radius * radius - across * across);
        let (entry, lowest, highest) = (rise(misses), rise(far), rise(near.max(0.0)));
        let depth = within("depth", depth, entry - lowest, f64::MAX)?;
        let floor = if depth >= entry + highest {
            None
        } else {
            let what = "depth of a hole that does not go clean through";
            Some(within(what, depth, 0.0, entry + lowest)? - entry)
        };
        Ok(Bored {
            radius,
            wide,
            aside,
            axis,
            middle,
            run,
            drill,
            floor,
        })
    }

    /// Volume, first and second moment, to twelve digits or better.
    pub(super) fn sums(&self) -> Sums {
        let mut last = self.summed(gauss::rule(0));
        // One order after the other until two agree.
        for which in 1..gauss::ORDERS.len() {
            let next = self.summed(gauss::rule(which));
            let agreed = next.iter().zip(last).all(|(one, other)| {
                (one - other).abs() <= AGREED * next[0] * self.radius * self.radius
            });
            last = next;
            if agreed {
                break;
            }
        }
        let [volume, u, v, t, uu, uv, vv, ut, vt, tt] = last;
        let frame = DMat3::from_cols(self.wide, self.aside, self.axis);
        let second = DMat3::from_cols(
            DVec3::new(uu, uv, ut),
            DVec3::new(uv, vv, vt),
            DVec3::new(ut, vt, tt),
        );
        let second = frame * second * frame.transpose();
        Sums {
            volume,
            first: frame * DVec3::new(u, v, t),
            // Rounding must not make row and column differ.
            second: (second + second.transpose()) * 0.5,
        }
    }

    /// Volume, the three first and the six second moments in the hole's own frame.
    fn summed(&self, nodes: &[(f64, f64)]) -> [f64; 10] {
        let mut sums = [0.0; 10];
        for (v, half, weight) in self.strips(nodes) {
            for (node, share) in nodes {
                let u = self.middle.0 + half * node;
                let (top, bottom) = self.chord(u, v);
                let weight = weight * half * share;
                let flat = weight * (bottom - top);
                let along = weight * (bottom * bottom - top * top) / 2.0;
                let twice = weight * (bottom * bottom * bottom - top * top * top) / 3.0;
                let parts = [
                    flat,
                    u * flat,
                    v * flat,
                    along,
                    u * u * flat,
                    u * v * flat,
                    v * v * flat,
                    u * along,
                    v * along,
                    twice,
                ];
                for (sum, part) in sums.iter_mut().zip(parts) {
                    *sum += part;
                }
            }
        }
        sums
    }

    /// The section cut into strips along `wide`: place, half length, weight. With `v = r sin a` nothing has a corner.
    fn strips(&self, nodes: &[(f64, f64)]) -> impl Iterator<Item = (f64, f64, f64)> {
        nodes.iter().map(|(node, weight)| {
            let angle = FRAC_PI_2 * node;
            let reach = self.drill * libm::cos(angle);
            (
                self.middle.1 + self.drill * libm::sin(angle),
                self.run + reach,
                FRAC_PI_2 * weight * reach,
            )
        })
    }

    /// Where the line at this place of the section enters and leaves the emptied region.
    fn chord(&self, u: f64, v: f64) -> (f64, f64) {
        let half = libm::sqrt((self.radius * self.radius - u * u - v * v).max(0.0));
        (-half, self.floor.unwrap_or(half))
    }
}

#[cfg(test)]
mod tests;
