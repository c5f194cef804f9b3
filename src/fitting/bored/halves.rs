//! How much more of a hole lies in one half of the ball than in the other.
//!
//! Where the hole crosses the plane between the halves, its strips are cut where the plane meets their top or bottom.

use std::f64::consts::FRAC_PI_4;

use glam::DVec3;

use super::super::gauss;
use super::Bored;

/// Which rules sum across the strips and along each piece of a strip.
const RULES: (usize, usize) = (6, 0);

impl Bored {
    /// For each of the three planes through the ball's centre: the volume on its positive side less that on the other.
    ///
    /// Good to about a ten-thousandth of a cubic inch where the hole crosses the plane.
    pub(in super::super) fn halves(&self, volume: f64) -> DVec3 {
        DVec3::from_array(DVec3::AXES.map(|square| self.split(square, volume)))
    }

    /// The same for the plane square to this direction.
    fn split(&self, square: DVec3, volume: f64) -> f64 {
        let [a, b, c] = self.parts(square);
        let middle = a * self.middle.0 + b * self.middle.1;
        let reach = a.abs() * self.run + libm::hypot(a, b) * self.drill;
        let (top, bottom) = (-self.radius, self.floor.unwrap_or(self.radius));
        let ends = [middle + c * top, middle + c * bottom];
        if ends.iter().all(|end| *end >= reach) {
            return volume;
        }
        if ends.iter().all(|end| *end <= -reach) {
            return -volume;
        }
        self.crossed(square)
    }

    /// The same for a hole that may cross the plane.
    pub(super) fn crossed(&self, square: DVec3) -> f64 {
        let [a, b, _] = self.parts(square);
        // Strips that run along the plane would jump from one side to the other; those that run through it don't.
        if self.run == 0.0 {
            let round = self.facing(square);
            round.cut(square, round.strips(gauss::rule(RULES.0)))
        } else if a.abs() >= b.abs() {
            self.cut(square, self.strips(gauss::rule(RULES.0)))
        } else {
            let turned = self.along(self.aside);
            turned.cut(square, turned.crosswise().into_iter())
        }
    }

    /// A round hole looks alike from every side: turned so that the strips run square to the plane.
    fn facing(&self, square: DVec3) -> Bored {
        let across = square - self.axis * square.dot(self.axis);
        if across.length() < 1e-9 {
            *self
        } else {
            self.along(across.normalize())
        }
    }

    /// The same middle in a frame with another `wide`, which must be square to the axis.
    fn along(&self, wide: DVec3) -> Bored {
        let aside = self.axis.cross(wide);
        let middle = self.wide * self.middle.0 + self.aside * self.middle.1;
        let middle = (middle.dot(wide), middle.dot(aside));
        Bored {
            wide,
            aside,
            middle,
            ..*self
        }
    }

    /// Strips square to an oval's wide direction, for a frame turned so that they run along `wide`.
    fn crosswise(&self) -> Vec<(f64, f64, f64)> {
        let mut strips = Vec::new();
        for (node, share) in gauss::rule(RULES.0) {
            strips.push((
                self.middle.1 + self.run * node,
                self.drill,
                self.run * share,
            ));
            let angle = FRAC_PI_4 * (node + 1.0);
            let (out, half) = (self.drill * libm::sin(angle), self.drill * libm::cos(angle));
            for out in [self.run + out, -self.run - out] {
                strips.push((self.middle.1 + out, half, FRAC_PI_4 * share * half));
            }
        }
        strips
    }

    /// Sums strips, each given by its place, half its length and its weight.
    fn cut(&self, square: DVec3, strips: impl Iterator<Item = (f64, f64, f64)>) -> f64 {
        let [a, b, c] = self.parts(square);
        let mut sum = 0.0;
        for (v, half, weight) in strips {
            let (from, to) = (self.middle.0 - half, self.middle.0 + half);
            let mut cuts = vec![from, to];
            cuts.extend(meets_floor(a, b * v, c * self.floor.unwrap_or(0.0)));
            cuts.extend(meets_sphere(a, b * v, c, self.radius * self.radius - v * v));
            cuts.retain(|cut| (from..=to).contains(cut));
            cuts.sort_by(f64::total_cmp);
            for piece in cuts.windows(2) {
                let (centre, half) = ((piece[0] + piece[1]) / 2.0, (piece[1] - piece[0]) / 2.0);
                for (node, share) in gauss::rule(RULES.1) {
                    let u = centre + half * node;
                    let (top, bottom) = self.chord(u, v);
                    sum += weight * half * share * more_above(a * u + b * v, c, top, bottom);
                }
            }
        }
        sum
    }

    /// A direction in the hole's own frame.
    fn parts(&self, square: DVec3) -> [f64; 3] {
        [self.wide, self.aside, self.axis].map(|axis| square.dot(axis))
    }
}

/// Where on a strip `a u + rest + height` is zero.
fn meets_floor(a: f64, rest: f64, height: f64) -> Option<f64> {
    let at = -(rest + height) / a;
    at.is_finite().then_some(at)
}

/// Where on a strip the plane meets the sphere: `(a u + rest)² = c² (square - u²)`.
fn meets_sphere(a: f64, rest: f64, c: f64, square: f64) -> impl Iterator<Item = f64> {
    let (quadratic, half) = (a * a + c * c, a * rest);
    let under = half * half - quadratic * (rest * rest - c * c * square);
    let root = libm::sqrt(under.max(0.0));
    [(-half - root) / quadratic, (-half + root) / quadratic]
        .into_iter()
        .filter(move |at| under >= 0.0 && at.is_finite())
}

/// The length of a chord from `top` to `bottom` where `level + slope t` is positive, less where it is negative.
fn more_above(level: f64, slope: f64, top: f64, bottom: f64) -> f64 {
    let at = if slope == 0.0 {
        f64::NAN
    } else {
        -level / slope
    };
    if at.is_finite() {
        let at = at.max(top).min(bottom);
        (top + bottom - 2.0 * at) * slope.signum()
    } else {
        (bottom - top) * level.signum()
    }
}
