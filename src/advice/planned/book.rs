//! What the governing body's rules say of the drilled ball.

use super::super::drilling::Drilling;
use super::Bench;
use crate::catalog::Stock;
use crate::fitting::balance::Finished;
use crate::fitting::best_unit::Limits;
use crate::standards::{
    BallFacts, Body, CoverKind, Digit, Finding, HoleFacts, HoleKind, Standards,
};

/// More than any scale shows: for a ball whose limits nobody knows.
const NO_LIMIT: f64 = 16.0;

/// What static weights are kept within.
pub(super) struct Aim {
    pub(super) limits: Limits,
    /// Read in print; otherwise half of what memory has is aimed at, or nothing is known at all.
    pub(super) printed: bool,
    /// Whether there is any limit.
    pub(super) known: bool,
}

impl Bench<'_, '_> {
    /// The static limits to aim at for a drilled ball of this weight, in 0.01 lb.
    pub(super) fn aim(&self, weight: i64) -> Aim {
        let thumb = self.placed.thumb.is_some();
        let found = Standards::builtin().ok().and_then(|standards| {
            let today = standards.known_until();
            standards.static_limits(weight, today, Body::Usbc, thumb, false)
        });
        let Some(found) = found else {
            let limits = Limits {
                top: NO_LIMIT,
                side: NO_LIMIT,
                finger: NO_LIMIT,
            };
            return Aim {
                limits,
                printed: false,
                known: false,
            };
        };
        let share = if found.from_memory { 0.5 } else { 1.0 };
        let ounces = |hundredths: i64| share * hundredths as f64 / 100.0;
        Aim {
            limits: Limits {
                top: ounces(found.top),
                side: ounces(found.side),
                finger: ounces(found.finger),
            },
            printed: !found.from_memory,
            known: true,
        }
    }

    /// Every clause that the computed ball can be held against.
    pub(super) fn findings(
        &self,
        stock: &Stock,
        finished: &Finished,
        drilling: &Drilling,
    ) -> Vec<Finding> {
        let Ok(standards) = Standards::builtin() else {
            return Vec::new();
        };
        let statics = finished.statics();
        // Away from nothing, so that rounding never brings a weight inside its limit.
        let hundredths = |ounces: f64| {
            let up = libm::ceil(ounces.abs() * 100.0 - 1e-6);
            up.copysign(ounces) as i64
        };
        let mut facts = BallFacts::default();
        facts.weight = Some(libm::round(finished.ounces() * 100.0 / 16.0) as i64);
        facts.rg = Some(stock.rg());
        facts.differential = Some(stock.differential());
        facts.intermediate = Some(stock.intermediate());
        facts.cover = Some(match stock.model().cover().name() {
            "polyester" => CoverKind::Polyester,
            "urethane" => CoverKind::Urethane,
            _ => CoverKind::Reactive,
        });
        if self.order.thumb_depth_known {
            facts.top = Some(hundredths(statics.top));
            facts.side = Some(hundredths(statics.side));
            facts.finger = Some(hundredths(statics.finger));
        }
        facts.holes = Some(
            drilling
                .holes
                .iter()
                .map(|hole| self.hole_facts(hole))
                .collect(),
        );
        // A grip by definition: these are the digits of one hand, all of them in their holes.
        facts.all_at_once = Some(true);
        standards.judge(&facts, standards.known_until(), Body::Usbc)
    }

    fn hole_facts(&self, hole: &super::super::drilling::PlannedHole) -> HoleFacts {
        let digit = match hole.name {
            "thumb" => Digit::Thumb,
            "middle" => Digit::Middle,
            _ => Digit::Ring,
        };
        let fine = |inches: f64| libm::round(inches * 8000.0) as i64;
        let wide = hole.oval.map_or(hole.bore, |(wide, ..)| wide);
        let known = self.order.thumb_depth_known || digit != Digit::Thumb;
        let mut facts = HoleFacts::new(HoleKind::Grip(digit));
        facts.diameter = Some(fine(hole.outside.unwrap_or(wide)));
        facts.depth = known.then(|| fine(hole.depth));
        facts.used = Some(true);
        facts.insert = hole.outside.is_some();
        facts
    }
}
