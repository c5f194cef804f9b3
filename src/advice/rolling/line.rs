//! Where the ball is sent, so that it turns where the oil lets it and comes to the pocket.
//!
//! Two things are wanted of the ball that hooks less: that it is farthest out on the exit board, and that it comes to the target board at the
//! pins. Two numbers are free: the board it starts on, and its direction. Three ways to send it, the first that can be had:
//!
//! 1. outward, so that it turns back on the exit board;
//! 2. a ball that doesn't hook from the exit board to the target, even if it hooks all the way from the foul line: from the exit
//!    board, inward as far as it takes;
//! 3. a ball that hooks more than the lane is wide: from the farthest board anybody starts on, in the direction that comes to
//!    the target; then it turns back on another board.

use crate::motion::path::{Ending, Path};
use crate::motion::{Angle, Impossible, Lane, Release};

/// What a line is to do.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Wanted {
    /// Where it turns back.
    pub(super) exit: f64,
    /// Where it comes to the pins.
    pub(super) target: f64,
    /// The farthest board in from which anybody starts.
    pub(super) most_start: f64,
}

/// How it is sent.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Way {
    /// Out to the exit board and back.
    Out,
    /// Inward: it can't hook that far.
    Inward,
    /// From the farthest board: it hooks more than that.
    Farthest,
    /// No line was found that comes to the target; this is the nearest.
    Nearest,
}

/// A line that was found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Line {
    pub(super) start: f64,
    /// Degrees; toward the side it curves to is more than zero.
    pub(super) launch: f64,
    pub(super) way: Way,
}

/// Nearer to the target than this is on it, in boards.
const ON_TARGET: f64 = 0.01;
/// Nearer to the exit board than this is on it.
const ON_EXIT: f64 = 0.02;
/// The farthest direction outward and inward, in degrees; a release takes ten.
const FARTHEST: f64 = 9.5;
/// A ball that leaves the lane counts as missing by so many boards more: than any that stays.
const OFF_THE_LANE: f64 = 1000.0;
/// Steps of a search before it gives up.
const STEPS: usize = 40;
/// Degrees between the directions tried before a search is narrowed.
const APART: f64 = 0.5;

/// Rolls one ball on a lane, from a board and in a direction.
pub(super) struct Thrower<'a> {
    lane: &'a Lane,
    release: Release,
    roll: &'a dyn Fn(Release) -> Result<Path, Impossible>,
}

/// Where one throw turned back and where it came to, in boards.
#[derive(Clone, Copy)]
struct Came {
    turned: f64,
    came: f64,
    /// Whether it leaves the lane before the pins.
    lost: bool,
}

impl<'a> Thrower<'a> {
    pub(super) fn new(
        lane: &'a Lane,
        release: Release,
        roll: &'a dyn Fn(Release) -> Result<Path, Impossible>,
    ) -> Thrower<'a> {
        Thrower {
            lane,
            release,
            roll,
        }
    }

    /// The path from this board in this direction.
    pub(super) fn path(&self, start: f64, launch: f64) -> Result<Path, Impossible> {
        let release = self
            .release
            .sent(self.lane.across(start), Angle::degrees(launch))?;
        (self.roll)(release)
    }

    fn came(&self, start: f64, launch: f64) -> Result<Came, Impossible> {
        let path = self.path(start, launch)?;
        let last = path.last();
        let mut came = self.lane.board_at(last.across());
        if let Ending::Gutter(at) = path.ending() {
            // Straight on beside the lane, so that a search sees by how much it misses.
            let left = self.lane.length().as_metres() - at.as_metres();
            let [down, aside] = last.velocity();
            let slope = if down > 0.0 { aside / down } else { 0.0 };
            came += left * slope / self.lane.board().as_metres();
            let out = if came > 20.0 { 40.0 } else { 0.0 };
            came = if out > 0.0 {
                came.max(out)
            } else {
                came.min(out)
            };
        }
        let turned = match path.breakpoint() {
            Some(place) => self.lane.board_at(place.across()),
            None => start.min(came),
        };
        let lost = path.ending() != Ending::Pins;
        Ok(Came { turned, came, lost })
    }

    /// The board at the pins, sent from the exit board straight down the lane: the more a ball hooks, the farther over.
    pub(super) fn hooks_to(&self, wanted: Wanted) -> Result<f64, Impossible> {
        Ok(self.came(wanted.exit, 0.0)?.came)
    }

    /// The line for what is wanted.
    pub(super) fn line(&self, wanted: Wanted) -> Result<Line, Impossible> {
        let straight = self.came(wanted.exit, 0.0)?;
        if straight.came < wanted.target {
            let inward = |launch| Ok(self.came(wanted.exit, launch)?.came - wanted.target);
            if let Some(launch) = first_root(&inward, 0.0, FARTHEST, ON_TARGET)? {
                return Ok(Line {
                    start: wanted.exit,
                    launch,
                    way: Way::Inward,
                });
            }
            return self.nearest(wanted);
        }
        // Sent farther out it turns back farther down, always on the exit board, and so comes less far back.
        let past = |launch: f64| -> Result<f64, Impossible> {
            let start = self.start_for(wanted, launch)?;
            Ok(self.came(start, launch)?.came - wanted.target)
        };
        if let Some(launch) = first_root(&past, 0.0, -FARTHEST, ON_TARGET)? {
            let start = self.start_for(wanted, launch)?;
            let there = self.came(start, launch)?;
            let on = libm::fabs(there.turned - wanted.exit) <= ON_EXIT.max(0.05)
                && libm::fabs(there.came - wanted.target) <= 0.05;
            if on && start <= wanted.most_start {
                return Ok(Line {
                    start,
                    launch,
                    way: Way::Out,
                });
            }
        }
        let across = |launch| Ok(self.came(wanted.most_start, launch)?.came - wanted.target);
        if let Some(launch) = first_root(&across, 0.0, -FARTHEST, ON_TARGET)? {
            // Between a ball that comes too far back and one that drops off the outer edge there may be none that comes right.
            let there = self.came(wanted.most_start, launch)?;
            if !there.lost && libm::fabs(there.came - wanted.target) <= 0.05 {
                return Ok(Line {
                    start: wanted.most_start,
                    launch,
                    way: Way::Farthest,
                });
            }
        }
        self.nearest(wanted)
    }

    /// The board to start on in this direction, so that it turns back on the exit board.
    fn start_for(&self, wanted: Wanted, launch: f64) -> Result<f64, Impossible> {
        let lane = 1.0..=39.0;
        let mut start = wanted.exit;
        let mut off = self.came(start, launch)?.turned - wanted.exit;
        let mut slope = 1.0;
        for _ in 0..STEPS {
            if libm::fabs(off) <= ON_EXIT / 4.0 {
                break;
            }
            let next = (start - off / slope).clamp(*lane.start(), *lane.end());
            if next == start {
                break;
            }
            let found = self.came(next, launch)?.turned - wanted.exit;
            // Where it starts hardly changes how it turns, so one board there is about one board here.
            slope = ((found - off) / (next - start)).clamp(0.5, 2.0);
            (start, off) = (next, found);
        }
        Ok(start)
    }

    /// Where nothing comes to the target: the throw among many that misses it least, one that stays on the lane if there is any.
    fn nearest(&self, wanted: Wanted) -> Result<Line, Impossible> {
        let mut best = (f64::INFINITY, wanted.exit, 0.0);
        for board in [wanted.exit, wanted.target, wanted.most_start] {
            let mut launch = -FARTHEST;
            while launch <= FARTHEST {
                let there = self.came(board, launch)?;
                let lost = if there.lost { OFF_THE_LANE } else { 0.0 };
                let off = lost + libm::fabs(there.came - wanted.target);
                if off < best.0 {
                    best = (off, board, launch);
                }
                launch += APART;
            }
        }
        let (_, start, launch) = best;
        Ok(Line {
            start,
            launch,
            way: Way::Nearest,
        })
    }
}

/// Where a function first crosses zero on the way from `from` to `to`, to within `near` of zero; none if it doesn't.
fn first_root(
    of: &dyn Fn(f64) -> Result<f64, Impossible>,
    from: f64,
    to: f64,
    near: f64,
) -> Result<Option<f64>, Impossible> {
    let step = if to < from { -APART } else { APART };
    let (mut at, mut value) = (from, of(from)?);
    while libm::fabs(at - from) < libm::fabs(to - from) {
        if libm::fabs(value) <= near {
            return Ok(Some(at));
        }
        let next = at + step;
        let found = of(next)?;
        if (found < 0.0) != (value < 0.0) {
            return narrowed(of, (at, value), (next, found), near).map(Some);
        }
        (at, value) = (next, found);
    }
    Ok(None)
}

/// The crossing between two places of unlike sign: the false position with the Illinois rule, halved where that is slow.
fn narrowed(
    of: &dyn Fn(f64) -> Result<f64, Impossible>,
    mut one: (f64, f64),
    mut other: (f64, f64),
    near: f64,
) -> Result<f64, Impossible> {
    let mut best = if libm::fabs(one.1) < libm::fabs(other.1) {
        one
    } else {
        other
    };
    for step in 0..STEPS {
        if libm::fabs(best.1) <= near / 4.0 {
            break;
        }
        let false_position = (one.0 * other.1 - other.0 * one.1) / (other.1 - one.1);
        let at = if step % 4 == 3 || !false_position.is_finite() {
            (one.0 + other.0) / 2.0
        } else {
            false_position
        };
        let found = of(at)?;
        if libm::fabs(found) < libm::fabs(best.1) {
            best = (at, found);
        }
        if (found < 0.0) == (other.1 < 0.0) {
            one.1 /= 2.0;
        } else {
            one = other;
        }
        other = (at, found);
    }
    Ok(best.0)
}
