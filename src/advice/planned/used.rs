//! What an old ball will weigh with its holes plugged and the new ones drilled, counted from the card's readings.

use super::super::drilling::{Drilling, Predicted};
use super::Bench;
use super::balance::told;
use crate::fitting::Misfit;
use crate::fitting::balance::{Ball, Change, Finished, Model, Scale, Statics, finish};
use crate::fitting::grip::{Placed, Reference, Shift};
use crate::fitting::solid::{drilled, sleeve};

/// What is needed before an old ball's weights can be told.
const WEIGH: &str = "Weigh the old ball, and its static weights about its old grip, before it is plugged: without them no weights can be told.";
/// Readings that are each possible, but not all of them in one ball.
const WEIGH_AGAIN: &str = "Weigh the ball again: seen from the new grip, its static weights are more than any scale shows.";
/// Where the core lies in an old ball nobody wrote down.
const LAYOUT: &str = "Find pin and heavy spot on the old ball: its layout is what the new grip's place makes of them.";
/// A plugged ball has other weights than its card says.
const WEIGH_PLUGGED: &str =
    "Weigh the plugged ball about the new grip: its card speaks of it before the plugs.";

impl Bench<'_, '_> {
    /// Predicts the weights, or says what is missing.
    pub(super) fn on_the_old_ball(&self, drilling: &mut Drilling) {
        if !self.order.centre_known || !self.order.thumb_depth_known {
            return;
        }
        if self.consultation.situation.known("used.open_holes") == Some(0) {
            drilling.open.push(WEIGH_PLUGGED.to_owned());
            return;
        }
        let old = self
            .consultation
            .bowler
            .old_grip_seen(&self.ball, Reference::OwnLine);
        // What hinders the old holes is told with their walls.
        let Ok((old, shift)) = old else { return };
        match self.weighed(&old, shift) {
            Some(Ok(balance)) => {
                drilling.balance = Some(balance);
                drilling.open.push(LAYOUT.to_owned());
            }
            Some(Err(why)) => drilling.open.push(why),
            None => drilling.open.push(WEIGH.to_owned()),
        }
    }

    /// The prediction, or what to do about readings that no ball has; `None` while a reading is missing on the card.
    fn weighed(&self, old: &Placed, shift: Shift) -> Option<Result<Predicted, String>> {
        let bowler = self.consultation.bowler;
        let statics = bowler.card()?.statics();
        let ounces = |hundredths: Option<i64>| Some(hundredths? as f64 / 100.0);
        // As the fitter saw it; here everything is a right hand's.
        let turn = if self.left { -1.0 } else { 1.0 };
        let statics = Statics {
            top: ounces(statics.top())?,
            side: turn * ounces(statics.right())?,
            finger: ounces(statics.finger())?,
        };
        // Hundredths of a pound.
        let weight = bowler.answer("card.ball_weight")? as f64 / 100.0 * 16.0;
        let Ok((ball, scale)) = self.seen_from_the_new(shift, weight, statics) else {
            return Some(Err(WEIGH_AGAIN.to_owned()));
        };
        let counted = self.counted(old, &ball, &scale);
        Some(counted.map_err(|misfit| format!("Check the old ball's card: {misfit}.")))
    }

    /// The old ball as it is, on the scale about its new grip.
    fn seen_from_the_new(
        &self,
        shift: Shift,
        ounces: f64,
        statics: Statics,
    ) -> Result<(Ball, Scale), Misfit> {
        let arm = self.number("bench.scale_arm", 1000.0);
        let scale = Scale::new(arm, Model::Moment)?;
        // The readings are a vector: about the new grip it is the same one, turned.
        let [side, finger, top] =
            shift.carry(&self.ball, [statics.side, statics.finger, statics.top])?;
        let about_new = Statics { top, side, finger };
        Ok((Ball::weighed(self.ball, ounces, about_new, &scale)?, scale))
    }

    fn counted(&self, old: &Placed, ball: &Ball, scale: &Scale) -> Result<Predicted, Misfit> {
        let mut changes = self.plugs(old)?;
        changes.extend(self.changes()?);
        let finished = finish(ball, &changes, scale)?;
        let hundredths = libm::round(finished.ounces() * 100.0 / 16.0) as i64;
        let aim = self.aim(hundredths);
        let mut settings = self.settings(true);
        settings.push(self.by_halves(ball, &changes)?);
        Ok(Predicted {
            unit: "the old ball, as its card weighs it".to_owned(),
            because: vec![
                "Counted from the card's weight and static weights: slug and inserts out, plugs in, then the new holes."
                    .to_owned(),
                aim.words(),
            ],
            margin: aim.known.then(|| margin(&finished, &aim.limits)),
            settings,
            ..told(&finished)
        })
    }

    /// Slug and inserts come out, and each hole as cut is filled.
    fn plugs(&self, old: &Placed) -> Result<Vec<Change>, Misfit> {
        let back = self.number("bench.density_back", 1000.0);
        let plug = self.number("bench.density_plug", 1000.0);
        let bores = [
            old.bores.thumb,
            Some(old.bores.middle),
            Some(old.bores.ring),
        ];
        let cuts = [old.thumb, Some(old.middle), Some(old.ring)];
        let mut changes = Vec::new();
        for (cut, bore) in cuts.into_iter().zip(bores) {
            let (Some(cut), Some(bore)) = (cut, bore) else {
                continue;
            };
            if cut.section() != bore.section() {
                changes.push(Change::out(sleeve(&self.ball, &cut, &bore)?, back)?);
            }
            changes.push(Change::back(drilled(&self.ball, &cut)?, plug)?);
        }
        Ok(changes)
    }
}

/// Ounces left to the nearest limit.
fn margin(finished: &Finished, limits: &crate::fitting::best_unit::Limits) -> f64 {
    let Statics { top, side, finger } = finished.statics();
    [
        limits.top - top.abs(),
        limits.side - side.abs(),
        limits.finger - finger.abs(),
    ]
    .into_iter()
    .fold(f64::INFINITY, f64::min)
}
