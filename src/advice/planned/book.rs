//! What the governing body's rules say of the drilled ball.

use super::super::drilling::Drilling;
use super::Bench;
use crate::catalog::{Cover, Stock};
use crate::fitting::best_unit::Limits;
use crate::standards::{
    BallFacts, CoverKind, Digit, Finding, HoleFacts, HoleKind, Standards, Verdict,
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

impl Aim {
    /// The limits and how far they can be trusted, in a sentence or two.
    pub(super) fn words(&self) -> String {
        if !self.known {
            return "No limit is known for this ball; ask the governing body.".to_owned();
        }
        let Limits { top, side, finger } = self.limits;
        let each = match top == side && side == finger {
            true => format!("{top} oz each way"),
            false => {
                format!("{top} oz top or bottom, {side} oz to a side, {finger} oz finger or thumb")
            }
        };
        match self.printed {
            true => format!("The printed limit of this weight is {each}."),
            false => format!(
                "The limits of this weight were never read in print. Half of what memory has is aimed at: {each}."
            ),
        }
    }
}

impl Bench<'_, '_> {
    /// The static limits to aim at for a drilled ball of this weight, in 0.01 lb.
    pub(super) fn aim(&self, weight: i64) -> Aim {
        let thumb = self.placed.thumb.is_some();
        let found = Standards::builtin().ok().and_then(|standards| {
            let today = standards.known_until();
            standards.static_limits(weight, today, self.consultation.shop.body(), thumb, false)
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
        let share = if found.from_memory { 2.0 } else { 1.0 };
        let ounces = |hundredths: i64| hundredths as f64 / share / 100.0;
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
    pub(super) fn findings(&self, stock: &Stock, drilling: &Drilling) -> Vec<Finding> {
        let Ok(standards) = Standards::builtin() else {
            return Vec::new();
        };
        let cover = match stock.model().cover() {
            Cover::Polyester => CoverKind::Polyester,
            Cover::Urethane => CoverKind::Urethane,
            Cover::Solid | Cover::Hybrid | Cover::Pearl => CoverKind::Reactive,
        };
        let mut facts = BallFacts {
            weight: Some(stock.weight()),
            rg: Some(stock.rg()),
            differential: Some(stock.differential()),
            intermediate: Some(stock.intermediate()),
            cover: Some(cover),
            ..BallFacts::default()
        };
        self.weights_of(drilling, &mut facts);
        self.holes_of(drilling, &mut facts);
        standards.judge(
            &facts,
            standards.known_until(),
            self.consultation.shop.body(),
        )
    }

    /// What the clauses say of holes and weights, where nothing else is known of the ball.
    pub(super) fn findings_of_holes(&self, drilling: &Drilling) -> Vec<Finding> {
        let Ok(standards) = Standards::builtin() else {
            return Vec::new();
        };
        let mut facts = BallFacts::default();
        self.weights_of(drilling, &mut facts);
        self.holes_of(drilling, &mut facts);
        let mut findings = standards.judge(
            &facts,
            standards.known_until(),
            self.consultation.shop.body(),
        );
        findings.retain(|finding| finding.verdict() != Verdict::Ask);
        findings
    }

    /// The predicted weights, if there are any.
    fn weights_of(&self, drilling: &Drilling, facts: &mut BallFacts) {
        let Some(balance) = &drilling.balance else {
            return;
        };
        // As the weights are told. What rounding could decide lies close to its limit, and is said to.
        let hundredths = |value: f64| libm::round(value * 100.0) as i64;
        // The PAP of a ball that curves away lies on the other side of the grip.
        let away = self.consultation.situation.is("bowler.mirrored");
        let side = if away { -balance.side } else { balance.side };
        facts.weight = Some(hundredths(balance.pounds));
        facts.top = Some(hundredths(balance.top));
        facts.side = Some(hundredths(side));
        facts.finger = Some(hundredths(balance.finger));
    }

    fn holes_of(&self, drilling: &Drilling, facts: &mut BallFacts) {
        let holes = drilling.holes.iter();
        facts.holes = Some(holes.map(|hole| self.hole_facts(hole)).collect());
        // A grip by definition: these are the digits of one hand, all of them in their holes.
        facts.all_at_once = Some(true);
    }

    fn hole_facts(&self, hole: &super::super::drilling::PlannedHole) -> HoleFacts {
        let digit = match hole.name {
            "thumb" => Digit::Thumb,
            "middle" => Digit::Middle,
            _ => Digit::Ring,
        };
        let fine = |inches: f64| libm::round(inches * 8000.0) as i64;
        let wide = hole.oval.map_or(hole.bore, |(wide, ..)| wide);
        let mut facts = HoleFacts::new(HoleKind::Grip(digit));
        facts.diameter = Some(fine(hole.outside.unwrap_or(wide)));
        facts.depth = hole.depth_known.then(|| fine(hole.depth));
        facts.used = Some(true);
        facts.insert = hole.outside.is_some();
        facts
    }
}
