//! The layout on this ball: where pin, heavy spot, mass bias and PAP lie, and how to draw them.

use super::super::drilling::{LayoutStep, PlannedLayout};
use super::Bench;
use crate::catalog::{ShelfUnit, Stock};
use crate::fitting::grip::Digit;
use crate::fitting::layout::{
    Angles, HoleMark, Layout, Point, Wander, cg_places, cg_toward, clearances, mass_bias_through,
    steps, track_words, wander,
};
use crate::fitting::{Misfit, inches, speed};

/// Degrees between the places that are tried for the heavy spot.
const ROUND_THE_PIN: f64 = 5.0;

/// A layout before the heavy spot has its place.
#[derive(Clone, Copy)]
pub(super) enum Kind {
    /// The heavy spot in the grip centre.
    OverLabel,
    /// Pin placed by distance and direction from the grip centre.
    FromGrip(Layout),
    /// Pin placed from the PAP.
    FromPap(Layout),
}

impl Bench<'_, '_> {
    fn known(&self, name: &str) -> Option<f64> {
        self.consultation.situation.known(name).map(inches)
    }

    /// Tenths of a degree as degrees.
    fn degrees(&self, name: &str) -> Option<f64> {
        let tenths = self.consultation.situation.known(name)?;
        Some(tenths as f64 / 10.0)
    }

    /// The settled layout; `None` while one of its numbers is missing.
    ///
    /// # Errors
    ///
    /// Numbers that no layout on the ball can have.
    pub(super) fn kind(&self, asymmetric: bool) -> Result<Option<Kind>, Misfit> {
        let situation = &self.consultation.situation;
        let turned = |layout: Layout| match situation.is("bowler.mirrored") {
            true => layout.mirrored(),
            false => layout,
        };
        if situation.is_word("settled.layout", "over_label") {
            return Ok(Some(Kind::OverLabel));
        }
        if situation.is_word("settled.layout", "pin_from_grip") {
            let numbers = (
                self.known("fit.pin.from_grip"),
                self.degrees("fit.pin.direction"),
            );
            let (Some(distance), Some(direction)) = numbers else {
                return Ok(None);
            };
            let pin = Point::from_grip(&self.ball, distance, direction)?;
            return Ok(Some(Kind::FromGrip(turned(Layout::from_pin(pin)))));
        }
        let pap = (self.known("bowler.pap_over"), self.known("bowler.pap_up"));
        let from_pap = (
            self.known("fit.pin.from_pap"),
            self.degrees("fit.pin.val_angle"),
        );
        let ((Some(over), Some(up)), (Some(pin), Some(val))) = (pap, from_pap) else {
            return Ok(None);
        };
        let drilling = self.degrees("fit.pin.drilling_angle");
        // Without it the mass bias would end up wherever the heavy spot balances best.
        if drilling.is_none() && situation.is_word("settled.core", "asymmetric") {
            return Ok(None);
        }
        let pap = Point::new(&self.ball, over, up)?;
        let layout = match drilling {
            Some(drilling) if asymmetric => Angles::new(&self.ball, drilling, pin, val)
                .and_then(|angles| Layout::from_angles(&self.ball, pap, &angles)),
            _ => Layout::from_pap(&self.ball, pap, pin, val),
        };
        Ok(Some(Kind::FromPap(turned(layout?))))
    }

    /// Where the heavy spot of this ball may go under this layout.
    pub(super) fn places(&self, kind: Kind, unit: &ShelfUnit) -> Result<Vec<Point>, Misfit> {
        let pin_out = inches(unit.pin_out);
        match kind {
            Kind::OverLabel => Ok(vec![Point::grip_centre()]),
            Kind::FromGrip(layout) | Kind::FromPap(layout) => match layout.mass_bias() {
                Some(bias) => Ok(vec![cg_toward(&self.ball, layout.pin(), bias, pin_out)?]),
                None => Ok(cg_places(&self.ball, layout.pin(), pin_out, ROUND_THE_PIN)?
                    .into_iter()
                    .map(|found| found.place())
                    .collect()),
            },
        }
    }

    /// The layout with the heavy spot in its place. A ball over its label has its pin straight over along the midline, the way
    /// that leads farthest from the holes.
    pub(super) fn finished(
        &self,
        kind: Kind,
        unit: &ShelfUnit,
        cg: Point,
        asymmetric: bool,
    ) -> Result<Layout, Misfit> {
        let layout = match kind {
            Kind::OverLabel => {
                let pin = Point::from_grip(&self.ball, inches(unit.pin_out), 0.0)?;
                Layout::from_pin(pin)
            }
            Kind::FromGrip(layout) | Kind::FromPap(layout) => layout,
        };
        let layout = layout.with_cg_at(cg);
        // A heavy spot on the pin says nothing of where the mass bias is.
        if asymmetric && layout.mass_bias().is_none() && unit.pin_out > 0 {
            let bias = mass_bias_through(&self.ball, layout.pin(), cg)?;
            return layout.with_mass_bias_toward(&self.ball, bias);
        }
        Ok(layout)
    }

    /// The layout in words and lines.
    pub(super) fn drawn(&self, kind: Kind, layout: &Layout, stock: &Stock) -> PlannedLayout {
        let holes = self.hole_marks();
        let mut points = vec![("pin", layout.pin())];
        points.extend(layout.cg().map(|cg| ("centre of gravity", cg)));
        points.extend(layout.mass_bias().map(|bias| ("mass bias", bias)));
        points.extend(layout.pap().map(|pap| ("PAP", pap)));
        let at = |point: &Point| (point.over(), point.up());
        PlannedLayout {
            kind: match kind {
                Kind::OverLabel => "over the label, the heavy spot in the grip",
                Kind::FromGrip(_) => "pin from the grip",
                Kind::FromPap(_) => "pin from the PAP",
            }
            .to_owned(),
            points: points
                .iter()
                .map(|(name, point)| (*name, at(point)))
                .collect(),
            stated: layout.stated(&self.ball, self.left),
            steps: steps(&self.ball, layout, &holes, self.left)
                .iter()
                .map(|mark| LayoutStep {
                    text: mark.text().to_owned(),
                    line: mark.line().iter().map(at).collect(),
                })
                .collect(),
            track: self.track(layout, &holes, stock),
        }
    }

    /// Whether the oil may run over a hole; needs a PAP and a tilt.
    fn track(&self, layout: &Layout, holes: &[HoleMark], stock: &Stock) -> Vec<String> {
        let Some(pap) = layout.pap() else {
            return Vec::new();
        };
        // A tilt that was taken for granted says nothing about these holes.
        let situation = &self.consultation.situation;
        let id = situation.vocabulary().id("bowler.tilt");
        let measured = id.is_some_and(|id| !situation.assumed().contains(&id));
        let Some(tilt) = self.degrees("bowler.tilt").filter(|_| measured) else {
            let ask = "Measure the axis tilt: without it nobody can say whether the oil runs over a hole.";
            return vec![ask.to_owned()];
        };
        clearances(&self.ball, pap, Some(layout.pin()), tilt, holes)
            .map(|found| track_words(&found, self.wander(layout, stock)))
            .unwrap_or_default()
    }

    /// About how far the axis wanders on the way to the pins; needs revs and speed.
    fn wander(&self, layout: &Layout, stock: &Stock) -> Option<Wander> {
        let situation = &self.consultation.situation;
        let rpm = situation.known("bowler.rev_rate")? as f64;
        // Tenths of a mile an hour.
        let mph = situation.known("bowler.speed")? as f64 / 10.0;
        let turns = rpm / 60.0 * speed::seconds(mph).ok()?;
        let thousandths = |steps: i64| steps as f64 / 1000.0;
        let pin = layout.pin_to_pap(&self.ball)?;
        let (rg, differential) = (thousandths(stock.rg()), thousandths(stock.differential()));
        wander(&self.ball, pin, rg, differential, turns).ok()
    }

    /// The mouths as cut, each with its bevel.
    fn hole_marks(&self) -> Vec<HoleMark> {
        let bevel = |name: &str| self.known(name).unwrap_or(0.0);
        self.placed
            .holes()
            .filter_map(|(digit, hole)| {
                let bevel = match digit {
                    Digit::Thumb => bevel("fit.thumb.bevel"),
                    _ => bevel("fit.finger.bevel"),
                };
                let section = hole.section();
                let radius = (section.drill() + section.run()) / 2.0 + bevel;
                let mouth = hole.place(&self.ball).ok()?;
                HoleMark::new(&format!("{} hole", digit.name()), mouth, radius).ok()
            })
            .collect()
    }
}
