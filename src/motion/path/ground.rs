//! The lane under the ball, cut along the edges and kinks of its oil: within a piece friction is smooth.

use crate::motion::lane::BOARDS;
use crate::motion::{Friction, Lane};

/// Along the lane, and across it on each side.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Part {
    Whole,
    Thinning,
    Least,
}

/// The piece of the lane that the ball is on.
#[derive(Clone, Copy, Debug)]
pub(super) struct Ground {
    friction: Friction,
    /// The coefficient where the crosswise ratio leaves least oil.
    least: f64,
    /// Where the oil starts to thin down the lane, and where it ends.
    down: [f64; 2],
    /// The same across, from the middle.
    across: [f64; 2],
    /// Whether it is alike on every board.
    even: bool,
    here: Part,
    aside: Part,
    /// Which side of the middle the ball is on; counts only where oil thins.
    left: bool,
}

/// Where the piece ends, in metres: down the lane, back, farther out, farther in.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bounds {
    pub(super) down: f64,
    pub(super) back: f64,
    pub(super) left: f64,
    pub(super) right: f64,
}

impl Ground {
    pub(super) fn new(lane: &Lane, friction: &Friction, [x, y]: [f64; 2]) -> Ground {
        let board = lane.width / BOARDS;
        let inside = ((BOARDS + 1.0) / 2.0 - lane.inside) * board;
        let mut ground = Ground {
            friction: *friction,
            least: friction.dry - (friction.dry - friction.oil) / lane.ratio,
            down: [lane.oil - lane.ramp, lane.oil],
            across: [inside, inside + lane.taper * board],
            even: lane.ratio <= 1.0,
            here: Part::Whole,
            aside: Part::Whole,
            left: y > 0.0,
        };
        ground.stand([x, y]);
        ground
    }

    /// The ball now stands here.
    pub(super) fn stand(&mut self, [x, y]: [f64; 2]) {
        let part = |[thins, ends]: [f64; 2], at: f64| {
            if at >= ends {
                Part::Least
            } else if at < thins {
                Part::Whole
            } else {
                Part::Thinning
            }
        };
        self.here = part(self.down, x);
        self.aside = match self.even {
            true => Part::Whole,
            false => part(self.across, libm::fabs(y)),
        };
        self.left = y > 0.0;
    }

    pub(super) fn bounds(&self) -> Bounds {
        let of = |part: Part, [thins, ends]: [f64; 2]| match part {
            Part::Whole => [f64::NEG_INFINITY, thins],
            Part::Thinning => [thins, ends],
            Part::Least => [ends, f64::INFINITY],
        };
        let [back, down] = of(self.here, self.down);
        let [inner, outer] = match self.even {
            true => [f64::NEG_INFINITY, f64::INFINITY],
            false => of(self.aside, self.across),
        };
        let (left, right) = match (self.aside, self.left) {
            (Part::Whole, _) => (outer, -outer),
            (_, true) => (outer, inner),
            (_, false) => (-inner, -outer),
        };
        Bounds {
            down,
            back,
            left,
            right,
        }
    }

    /// The coefficient here, by the piece's own smooth law even a little past its edges.
    pub(super) fn friction(&self, [x, y]: [f64; 2]) -> f64 {
        let share = |part: Part, [thins, ends]: [f64; 2], at: f64| match part {
            Part::Whole => 0.0,
            Part::Thinning => (at - thins) / (ends - thins),
            Part::Least => 1.0,
        };
        let out = if self.left { y } else { -y };
        let thin = share(self.aside, self.across, out);
        let gone = share(self.here, self.down, x);
        let oil = self.friction.oil + (self.least - self.friction.oil) * thin;
        (oil + (self.friction.dry - oil) * gone).max(0.0)
    }
}
