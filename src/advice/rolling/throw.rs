//! How the ball leaves this bowler's hand, and how far each number of it may be off.

use super::super::outcome::Trouble;
use super::super::result::Assumed;
use crate::bowler::Bowler;
use crate::motion::{Angle, Impossible, Release, Speed, Spin};
use crate::notation::Notation;
use crate::vocabulary::Situation;

/// The numbers of a throw, in steps of their notations.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Throw {
    /// 0.1 mph, at release.
    pub(super) speed: i64,
    /// rpm.
    pub(super) revs: i64,
    /// 0.1 degree.
    pub(super) rotation: i64,
    /// 0.1 degree.
    pub(super) tilt: i64,
}

/// What a bowler measures before a roll can be told.
const SPEED: &str = "the ball speed: read it off the lane's display, or take the seconds from the foul line to the head pin; \
    40.9 divided by them is the mean in mph. Write `speed: { value: …, where: release }` or `where: pins`";
const REVS: &str = "the rev rate: put a tape on the ball, film the first few feet and count the turns in a second, times 60. \
    Write it as `rev_rate: 280 rpm`";
const REVS_FROM_LEVEL: &str = "the rev rate as a number: how much you turn the ball is known as a word alone, and no number is made of that. \
    Film the first few feet and count the turns in a second, times 60";
const ROTATION: &str =
    "the axis rotation: film the release from above or from behind. Write it as `rotation: 45 deg`";
const TILT: &str =
    "the axis tilt: read it off the ring of oil on the ball. Write it as `tilt: 13 deg`";

/// A ball that doesn't curve has no side spin: the direction it ends in follows from the side spin alone.
const NO_CURVE: &str = "A ball that doesn't curve is rolled end over end.";

impl Throw {
    /// The throw of this bowler, and what was taken for granted beside the rules' assumptions.
    ///
    /// # Errors
    /// What is missing, all of it at once. Speed and rev rate are never assumed.
    pub(super) fn of(
        bowler: &Bowler,
        situation: &Situation,
    ) -> Result<(Throw, Vec<Assumed>), Trouble> {
        let mut assumed = Vec::new();
        let mut missing = Vec::new();
        let speed = bowler.answer("bowler.speed");
        let revs = bowler.answer("bowler.rev_rate");
        if speed.is_none() {
            missing.push(SPEED.to_owned());
        }
        if revs.is_none() {
            let level = bowler.answer("bowler.rev_level").is_some();
            missing.push(if level { REVS_FROM_LEVEL } else { REVS }.to_owned());
        }
        let told = bowler.answer("bowler.rotation");
        let no_curve = bowler.answer("bowler.curve") == Some(0);
        let rotation = match told {
            None if no_curve => {
                assumed.push(end_over_end());
                Some(0)
            }
            told => told.or_else(|| situation.known("bowler.rotation")),
        };
        let tilt = situation.known("bowler.tilt");
        if rotation.is_none() {
            missing.push(ROTATION.to_owned());
        }
        if tilt.is_none() {
            missing.push(TILT.to_owned());
        }
        match (speed, revs, rotation, tilt) {
            (Some(speed), Some(revs), Some(rotation), Some(tilt)) => {
                let throw = Throw {
                    speed,
                    revs,
                    rotation,
                    tilt,
                };
                Ok((throw, assumed))
            }
            _ => Err(Trouble::NotMeasured { missing }),
        }
    }

    /// The release, straight down the middle.
    pub(super) fn release(&self) -> Result<Release, Impossible> {
        let tenths = |steps: i64| steps as f64 / 10.0;
        Release::new(
            Speed::mph(tenths(self.speed)),
            Spin::rpm(self.revs as f64),
            Angle::degrees(tenths(self.rotation)),
            Angle::degrees(tenths(self.tilt)),
        )
    }

    /// What was taken, as people write it.
    pub(super) fn shown(&self) -> Vec<(&'static str, String)> {
        vec![
            ("speed at release", Notation::Speed.write(self.speed)),
            ("rev rate", Notation::Rate.write(self.revs)),
            ("axis rotation", Notation::Angle.write(self.rotation)),
            ("axis tilt", Notation::Angle.write(self.tilt)),
        ]
    }
}

fn end_over_end() -> Assumed {
    Assumed {
        fact: "bowler.rotation".to_owned(),
        meaning: "axis rotation: 0 is end over end, 90 full side".to_owned(),
        value: Some(Notation::Angle.write(0)),
        matters: true,
        reason: NO_CURVE.to_owned(),
        source: "derived".to_owned(),
        strength: "derived",
    }
}
