//! The old holes of a drilled ball beside the new ones.

use super::super::drilling::PlannedWeb;
use super::Bench;
use crate::fitting::grip::{Digit, Placed, Reference, Shift, place};
use crate::fitting::{inches, wall};
use crate::vocabulary::{GripOf, ordered};

impl Bench<'_, '_> {
    /// Whether the ball that is drilled was drilled before.
    pub(super) fn is_used(&self) -> bool {
        let open = self.consultation.situation.get("used.open_holes");
        open.is_known()
    }

    /// The card's grip seen from the new one; `None` where the card lacks what places it.
    fn old_grip(&self) -> Option<Placed> {
        let old = ordered(
            &self.consultation.situation,
            GripOf::Card,
            Reference::OwnLine,
        )?;
        let placed = place(&self.ball, &old.grip).ok()?;
        let new = self.consultation.bowler.used_ball()?.new_grip();
        let new = new.unwrap_or_default();
        // The profile speaks as the fitter sees it; here everything is a right hand's.
        let turn = if self.left { -1.0 } else { 1.0 };
        let shift = Shift {
            over: turn * inches(new.over()),
            up: inches(new.up()),
            // Tenths of a degree.
            turned: turn * new.turned() as f64 / 10.0,
        };
        placed.seen_from(&self.ball, shift).ok()
    }

    /// Walls to the old holes, which are plugs by the time the new ones are drilled: no least wall is asked of them.
    pub(super) fn old_walls(&self) -> Vec<PlannedWeb> {
        let Some(old) = self.old_grip().filter(|_| self.is_used()) else {
            return Vec::new();
        };
        let (digits, holes): (Vec<Digit>, Vec<_>) = old.holes().unzip();
        wall::to_old(&self.ball, &self.placed, &holes)
            .into_iter()
            .map(|pair| PlannedWeb {
                between: format!(
                    "{} and the plug of the old {} hole",
                    pair.digit.name(),
                    digits[pair.old].name()
                ),
                least: pair.wall.least,
                at_depth: pair.wall.at_depth,
                breaks_at: pair.wall.breaks_at,
                limit: f64::NEG_INFINITY,
            })
            .collect()
    }

    /// What to know of the old holes before the new ones are drilled.
    pub(super) fn old_notes(&self, webs: &[PlannedWeb]) -> Vec<String> {
        if !self.is_used() {
            return Vec::new();
        }
        if self.old_grip().is_none() {
            return vec![
                "Read the old holes off the ball (sizes, depths, pitches, spans): until then the new ones aren't checked against them."
                    .to_owned(),
            ];
        }
        let new = self
            .consultation
            .bowler
            .used_ball()
            .and_then(|used| used.new_grip());
        let mut notes = Vec::new();
        if new.is_none() {
            notes.push("Say where the new grip goes (`new_grip`): it is taken to lie where the old one was.".to_owned());
        }
        let into: Vec<&str> = webs
            .iter()
            .filter(|web| web.limit.is_infinite() && web.least < 0.0)
            .map(|web| web.between.as_str())
            .collect();
        if !into.is_empty() {
            notes.push(format!(
                "Let the plugs harden overnight: new holes run into old ones ({}).",
                into.join("; ")
            ));
        }
        notes
    }
}
