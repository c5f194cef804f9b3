//! From feet and boards to paper. Both run evenly; how much larger boards are drawn than feet is said on the page.

use super::plot::Plot;
use crate::report::paper::canvas::Spot;

/// Left and right edge of what is drawn.
pub(super) const LEFT: f64 = 92.0;
pub(super) const RIGHT: f64 = 492.0;
/// Feet of a lane.
pub(super) const LANE: f64 = 60.0;
/// Paper for a board, largest first: a small difference is to look small.
const BOARDS: [f64; 10] = [40.0, 32.0, 25.0, 20.0, 16.0, 12.5, 10.0, 8.0, 6.25, 5.0];
/// Left free beside what is drawn, on either side.
const BESIDE: f64 = 24.0;
/// Width of a board in inches: 41 1/2 in over 39 boards.
const BOARD: f64 = 41.5 / 39.0;

/// Where a foot and a board come to lie.
#[derive(Clone, Copy, Debug)]
pub(super) struct Scale {
    /// Paper for a board.
    pub(super) board: f64,
    /// Paper for a foot.
    pub(super) foot: f64,
    /// Where nothing lies to the side.
    pub(super) zero: f64,
    /// Where the pins are.
    pub(super) top: f64,
    /// 1 where more boards lie to the right.
    turn: f64,
}

impl Scale {
    /// The largest at which all of it is on the paper.
    pub(super) fn of(plot: &Plot, top: f64, foot: f64) -> Scale {
        let turn = if plot.mirrored { 1.0 } else { -1.0 };
        let both = plot
            .along
            .iter()
            .flat_map(|place| [place.least, place.most]);
        let (low, high) = both.fold((0.0, 0.0), |(low, high): (f64, f64), boards| {
            (low.min(boards * turn), high.max(boards * turn))
        });
        let room = RIGHT - LEFT - 2.0 * BESIDE;
        let wanted = (high - low).max(1e-9);
        let fits = BOARDS.into_iter().find(|board| board * wanted <= room);
        let board = fits.unwrap_or(room / wanted);
        let spare = (RIGHT - LEFT - board * (high - low)) / 2.0;
        Scale {
            board,
            foot,
            zero: LEFT + spare - board * low,
            top,
            turn,
        }
    }

    pub(super) fn across(&self, boards: f64) -> f64 {
        self.zero + self.turn * self.board * boards
    }
    pub(super) fn down(&self, feet: f64) -> f64 {
        self.top + self.foot * (LANE - feet)
    }
    pub(super) fn spot(&self, boards: f64, feet: f64) -> Spot {
        (self.across(boards), self.down(feet))
    }
    /// Where the foul line is.
    pub(super) fn bottom(&self) -> f64 {
        self.down(0.0)
    }
    /// Both scales in words.
    pub(super) fn said(&self) -> String {
        let larger = (self.board / BOARD) / (self.foot / 12.0);
        format!(
            "true both ways. One board across is {:.2} in of paper, ten feet along are {:.2} in. Sideways is drawn about {} times as large.",
            self.board / 100.0,
            self.foot / 10.0,
            rounded(larger)
        )
    }
}

/// Two digits are enough.
fn rounded(value: f64) -> String {
    if value >= 10.0 {
        format!("{value:.0}")
    } else {
        format!("{value:.1}")
    }
}
