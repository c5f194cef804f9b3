//! The old holes of a drilled ball beside the new ones.

use super::super::drilling::PlannedWeb;
use super::Bench;
use crate::fitting::grip::{Digit, Reference};
use crate::fitting::hole::Hole;
use crate::fitting::wall;

impl Bench<'_, '_> {
    /// Whether the ball that is drilled was drilled before.
    pub(super) fn is_used(&self) -> bool {
        let open = self.consultation.situation.get("used.open_holes");
        open.is_known()
    }

    /// The old holes seen from the new grip, or what to do about what isn't known of them; nothing of a new ball.
    fn old_holes(&self) -> Result<Vec<(Digit, Hole)>, String> {
        if !self.is_used() {
            return Ok(Vec::new());
        }
        self.consultation
            .bowler
            .old_holes(&self.ball, Reference::OwnLine)
            .map_err(|why| why.to_string())
    }

    /// Walls to the old holes, which are plugs by the time the new ones are drilled: no least wall is asked of them.
    pub(super) fn old_walls(&self) -> Vec<PlannedWeb> {
        let (digits, holes): (Vec<Digit>, Vec<Hole>) =
            self.old_holes().unwrap_or_default().into_iter().unzip();
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
        if let Err(why) = self.old_holes() {
            return vec![format!(
                "{why} Until then the new holes aren't checked against the old ones."
            )];
        }
        let into: Vec<&str> = webs
            .iter()
            .filter(|web| web.limit.is_infinite() && web.least < 0.0)
            .map(|web| web.between.as_str())
            .collect();
        if into.is_empty() {
            return Vec::new();
        }
        let first = match self.consultation.situation.known("used.open_holes") {
            Some(0) => "See that the plugs have hardened",
            _ => "Let the plugs harden overnight",
        };
        vec![format!(
            "{first}: new holes run into old ones ({}).",
            into.join("; ")
        )]
    }
}
