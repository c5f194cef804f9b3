//! The lane: how long, how wide, where the oil lies, and the friction that a cover finds there.

use super::{Impossible, Length, within};

/// Friction coefficients of one cover: in the oil at the lane's middle, and on the dry. The oil's is never above the dry's.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Friction {
    pub(super) oil: f64,
    pub(super) dry: f64,
}

impl Friction {
    /// Both coefficients, 0.001 to 1.
    ///
    /// # Errors
    /// A number outside those limits, or oil that grips more than the dry.
    pub fn new(oil: f64, dry: f64) -> Result<Friction, Impossible> {
        within("friction on the dry", dry, 0.001, 1.0, "")?;
        within("friction in the oil", oil, 0.001, dry, "")?;
        Ok(Friction { oil, dry })
    }
    /// No friction at all: the ball keeps its speed and turns as a free body. For checks; no lane is like that.
    pub const fn none() -> Friction {
        Friction { oil: 0.0, dry: 0.0 }
    }
    /// In the oil.
    pub fn oil(&self) -> f64 {
        self.oil
    }
    /// On the dry.
    pub fn dry(&self) -> f64 {
        self.dry
    }
}

/// A lane and its oil.
///
/// Down the lane the oil is whole up to `oil - ramp`, then thins evenly to none at `oil`. Across, it is whole between the two
/// inside boards; outside them friction goes evenly over `taper` boards from the oil's to what the crosswise ratio leaves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lane {
    pub(super) length: f64,
    pub(super) width: f64,
    pub(super) oil: f64,
    pub(super) ramp: f64,
    pub(super) ratio: f64,
    pub(super) inside: f64,
    pub(super) taper: f64,
}

/// Boards on a lane.
pub const BOARDS: f64 = 39.0;

impl Default for Lane {
    /// A lane 60 ft long and 41 1/2 in wide without any oil.
    fn default() -> Lane {
        Lane {
            length: Length::feet(60.0).as_metres(),
            width: Length::inches(41.5).as_metres(),
            oil: 0.0,
            ramp: 0.0,
            ratio: 1.0,
            inside: 0.0,
            taper: 0.0,
        }
    }
}

impl Lane {
    /// A lane 60 ft long and 41 1/2 in wide, oiled so far (0 to the whole length), alike on every board, the last `ramp` of it thinning out.
    ///
    /// # Errors
    /// Oil longer than the lane, or a ramp longer than the oil.
    pub fn oiled(oil: Length, ramp: Length) -> Result<Lane, Impossible> {
        let bare = Lane::default();
        let length = bare.length();
        if oil > length {
            return Err(Impossible::OilPastTheLane {
                oil: oil.as_feet(),
                lane: length.as_feet(),
            });
        }
        within(
            "length of the oil",
            oil.as_feet(),
            0.0,
            length.as_feet(),
            "ft",
        )?;
        within(
            "ramp at the end of the oil",
            ramp.as_feet(),
            0.0,
            oil.as_feet(),
            "ft",
        )?;
        Ok(Lane {
            oil: oil.as_metres(),
            ramp: ramp.as_metres(),
            ..bare
        })
    }

    /// The same with more oil inside than outside: so many times as much (1 to 20), whole from board `inside` (1 to 19) to the same board
    /// of the other side, thinning over `taper` boards (0 to `inside`).
    ///
    /// # Errors
    /// A number outside those limits.
    pub fn crosswise(self, ratio: f64, inside: f64, taper: f64) -> Result<Lane, Impossible> {
        Ok(Lane {
            ratio: within("crosswise ratio", ratio, 1.0, 20.0, "")?,
            inside: within("inside board", inside, 1.0, 19.0, "")?,
            taper: within(
                "boards over which the oil thins",
                taper,
                0.0,
                inside,
                "boards",
            )?,
            ..self
        })
    }

    /// How long it is, foul line to head pin.
    pub fn length(&self) -> Length {
        Length::metres(self.length)
    }
    /// How far the oil goes.
    pub fn oil(&self) -> Length {
        Length::metres(self.oil)
    }
    /// Where the oil ends if it is taken as one zone: at the middle of its ramp.
    pub fn oil_ends(&self) -> Length {
        Length::metres(self.oil - self.ramp / 2.0)
    }
    /// How wide one board is.
    pub fn board(&self) -> Length {
        Length::metres(self.width / BOARDS)
    }
    /// Whether the oil is alike on every board.
    pub fn is_even(&self) -> bool {
        self.ratio <= 1.0
    }
    /// The board under a place so far left of the middle, counted from the right; board 20 is the middle.
    pub fn board_at(&self, across: Length) -> f64 {
        (BOARDS + 1.0) / 2.0 + across.as_metres() / (self.width / BOARDS)
    }
    /// How far left of the middle a board lies; less than zero to the right.
    pub fn across(&self, board: f64) -> Length {
        Length::metres((board - (BOARDS + 1.0) / 2.0) * (self.width / BOARDS))
    }

    /// The friction at a place, for one cover.
    pub fn friction_at(&self, friction: &Friction, down: Length, across: Length) -> f64 {
        let (x, y) = (down.as_metres(), across.as_metres());
        let gone = if x >= self.oil {
            1.0
        } else if x <= self.oil - self.ramp {
            0.0
        } else {
            (x - (self.oil - self.ramp)) / self.ramp
        };
        let board = self.width / BOARDS;
        // Boards outside the inside ones, on whichever side.
        let outside = libm::fabs(y) / board - ((BOARDS + 1.0) / 2.0 - self.inside);
        let thin = if outside <= 0.0 {
            0.0
        } else if self.taper > 0.0 && outside < self.taper {
            outside / self.taper
        } else {
            1.0
        };
        let least = friction.dry - (friction.dry - friction.oil) / self.ratio;
        let oil = friction.oil + (least - friction.oil) * thin;
        oil + (friction.dry - oil) * gone
    }
}
