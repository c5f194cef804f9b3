//! Which one from the shelf, where its heavy spot goes, and what the drilled ball then weighs and how it turns.

use super::super::drilling::{CoreChange, Drilling, Predicted};
use super::super::explain::{self, Scale as Shown};
use super::Bench;
use super::book::Aim;
use super::holes::inches as written;
use super::layout::Kind;
use crate::catalog::{ShelfUnit, Stock};
use crate::fitting::balance::{Ball, Change, Finished, Model, Scale, Statics, finish};
use crate::fitting::best_unit::{Choice, Unit, best};
use crate::fitting::grip::Digit;
use crate::fitting::inertia::{Core, after};
use crate::fitting::layout::{Layout, Point};
use crate::fitting::solid::{drilled, sleeve};
use crate::fitting::{Misfit, inches};
use crate::notation::Notation;
use crate::rules::Audience;
use crate::vocabulary::{Alone, bench};

/// The bench's settings that a weight hangs on.
const WEIGHED_WITH: [&str; 3] = ["bench.scale_arm", "bench.density_out", "bench.density_back"];
/// For an old ball the plugs' density counts as well.
pub(super) const PLUGS: &str = "bench.density_plug";

/// A unit with everything that was decided about it.
struct Taken<'k> {
    unit: &'k ShelfUnit,
    layout: Layout,
    changes: Vec<Change>,
    scale: Scale,
}

impl Bench<'_, '_> {
    /// Fills in what hangs on the ball itself.
    pub(super) fn on_the_ball(&self, chosen: usize, drilling: &mut Drilling) {
        if !self.order.centre_known {
            return;
        }
        let shop = self.consultation.shop;
        let stock = &shop.catalog().stock()[shop.candidates()[chosen].stock];
        let asymmetric = stock.intermediate() > 0;
        let kind = match self.kind(asymmetric) {
            Ok(Some(kind)) => kind,
            Ok(None) => {
                let open = "Settle the layout's numbers: until then no weights can be told.";
                drilling.open.push(open.to_owned());
                return;
            }
            Err(misfit) => {
                let open = format!("Choose another layout: {misfit}.");
                drilling.open.push(open);
                return;
            }
        };
        match self.taken(stock, kind, asymmetric, drilling) {
            Ok(Some(taken)) => {
                drilling.layout = Some(self.drawn(kind, &taken.layout, stock));
                if self.order.thumb_depth_known {
                    match core(stock, &taken, &self.ball) {
                        Ok(core) => drilling.core = Some(core),
                        Err(misfit) => drilling.open.push(format!(
                            "Find the core's marks on the ball before telling how it turns: {misfit}."
                        )),
                    }
                } else {
                    drilling.open.push(format!(
                        "Draw this layout on the one with {}; which one suits best shows once the thumb's depth is known.",
                        called(taken.unit)
                    ));
                }
                drilling.findings = self.findings(stock, drilling);
            }
            Ok(None) => {}
            Err(misfit) => drilling.open.push(format!("Check the layout: {misfit}.")),
        }
    }

    /// Chooses the unit and predicts its weights; without the thumb's depth the first unit's layout alone.
    fn taken<'k>(
        &self,
        stock: &'k Stock,
        kind: Kind,
        asymmetric: bool,
        drilling: &mut Drilling,
    ) -> Result<Option<Taken<'k>>, Misfit> {
        let places: Vec<Vec<Point>> = stock
            .units()
            .iter()
            .map(|unit| self.places(kind, unit))
            .collect::<Result<_, _>>()?;
        let arm = self.number("bench.scale_arm", 1000.0);
        let scale = Scale::new(arm, Model::Moment)?;
        let pounds = stock.weight() as f64 / 100.0;
        let changes = match self.order.thumb_depth_known {
            true => self.changes()?,
            false => Vec::new(),
        };
        let ids: Vec<String> = stock.units().iter().map(called).collect();
        let units: Vec<Unit<'_>> = stock
            .units()
            .iter()
            .zip(&places)
            .zip(&ids)
            .map(|((unit, places), id)| Unit {
                id,
                top_weight: unit.top_weight as f64 / 100.0,
                places,
            })
            .collect();
        let drilled = pounds * 16.0 + changes.iter().map(Change::ounces).sum::<f64>();
        let aim = self.aim(libm::round(drilled * 100.0 / 16.0) as i64);
        let choices = best(&self.ball, &units, &changes, &scale, &aim.limits)?;
        let first = match self.order.thumb_depth_known {
            true => choices.first(),
            // As the shelf has them: without weights none is better.
            false => choices.iter().min_by_key(|choice| choice.unit()),
        };
        let Some(first) = first else {
            return Ok(None);
        };
        let unit = &stock.units()[first.unit()];
        let layout = self.finished(kind, unit, first.place(), asymmetric)?;
        let top = unit.top_weight as f64 / 100.0;
        let ball = Ball::undrilled(self.ball, pounds * 16.0, top, first.place(), &scale)?;
        let finished = finish(&ball, &changes, &scale)?;
        if self.order.thumb_depth_known {
            let mut balance = self.predicted(&choices, stock, &finished, &aim);
            balance.settings.push(self.by_halves(&ball, &changes)?);
            drilling.balance = Some(balance);
        }
        Ok(Some(Taken {
            unit,
            layout,
            changes,
            scale,
        }))
    }

    /// What goes out and what comes back: each hole as cut, less slug and inserts.
    pub(super) fn changes(&self) -> Result<Vec<Change>, Misfit> {
        let out = self.number("bench.density_out", 1000.0);
        let back = self.number("bench.density_back", 1000.0);
        let mut changes = Vec::new();
        for (digit, cut) in self.placed.holes() {
            changes.push(Change::out(drilled(&self.ball, &cut)?, out)?);
            let order = match digit {
                Digit::Thumb => self.order.grip.thumb,
                Digit::Middle => Some(self.order.grip.middle),
                Digit::Ring => Some(self.order.grip.ring),
            };
            let bore = match digit {
                Digit::Thumb => self.placed.bores.thumb,
                Digit::Middle => Some(self.placed.bores.middle),
                Digit::Ring => Some(self.placed.bores.ring),
            };
            if let (Some(bore), true) = (bore, order.is_some_and(|o| o.outside.is_some())) {
                let filled = sleeve(&self.ball, &cut, &bore)?;
                changes.push(Change::back(filled, back)?);
            }
        }
        Ok(changes)
    }

    fn predicted(
        &self,
        choices: &[Choice],
        stock: &Stock,
        finished: &Finished,
        aim: &Aim,
    ) -> Predicted {
        let units = stock.units();
        let first = &choices[0];
        let mut because = Vec::new();
        because.push(match choices.get(1) {
            Some(next) => format!(
                "Of the {} kinds of this weight on the shelf it comes out best, {}; the next, {}, {}.",
                choices.len(),
                inside(first.margin()),
                called(&units[next.unit()]),
                inside(next.margin())
            ),
            None => "It is the only kind of this weight on the shelf.".to_owned(),
        });
        because.push(aim.words());
        Predicted {
            unit: called(&units[first.unit()]),
            because,
            margin: aim.known.then_some(first.margin()),
            settings: self.settings(false),
            ..told(finished)
        }
    }

    /// The other way of counting: the same ball on a scale that would weigh one half against the other.
    pub(super) fn by_halves(
        &self,
        ball: &Ball,
        changes: &[Change],
    ) -> Result<(String, String), Misfit> {
        let scale = Scale::new(self.number("bench.scale_arm", 1000.0), Model::Halves)?;
        let Statics { top, side, finger } = finish(ball, changes, &scale)?.statics();
        let (right, left) = match self.left {
            true => ("left", "right"),
            false => ("right", "left"),
        };
        let way = |ounces: f64, more: &str, less: &str| match ounces < 0.0 {
            true => format!("{:.2} oz {less}", -ounces),
            false => format!("{ounces:.2} oz {more}"),
        };
        Ok((
            "how static weights are counted".to_owned(),
            format!(
                "As moments over the arm. By the weight of each half it would be {}, {}, {}; readings of your own scale tell which.",
                way(top, "top", "bottom"),
                way(side, right, left),
                way(finger, "finger", "thumb")
            ),
        ))
    }

    /// What the prediction rests on, each with its reason and source.
    pub(super) fn settings(&self, plugged: bool) -> Vec<(String, String)> {
        let rules = self.consultation.shop.rules();
        bench()
            .iter()
            .filter(|fact| WEIGHED_WITH.contains(&fact.name) || plugged && fact.name == PLUGS)
            .filter_map(|fact| {
                let notation = rules.subject(fact.name)?.notation()?;
                let measured = rules.measure(fact.name, &Alone(&self.consultation.situation));
                let value = notation.write(measured.value()?);
                let scale = Shown::Measure {
                    notation,
                    mirrored: false,
                };
                let reasons: Vec<String> = measured
                    .lines()
                    .iter()
                    .map(|line| explain::reason(rules, line, scale))
                    .map(|reason| {
                        format!("{} ({})", reason.text(Audience::Fitter), reason.source())
                    })
                    .collect();
                Some((
                    fact.meaning.to_owned(),
                    format!("{value}. {}", reasons.join(" ")),
                ))
            })
            .collect()
    }

    /// A bench setting in its own unit, of which `steps` make one.
    pub(super) fn number(&self, name: &str, steps: f64) -> f64 {
        self.consultation.situation.known(name).unwrap_or(0) as f64 / steps
    }
}

/// The numbers of a finished ball, without where they come from.
pub(super) fn told(finished: &Finished) -> Predicted {
    let Statics { top, side, finger } = finished.statics();
    let squares = finished.centre().iter().map(|c| c * c).sum::<f64>();
    Predicted {
        unit: String::new(),
        because: Vec::new(),
        out: finished.out_ounces(),
        back: finished.back_ounces(),
        pounds: finished.ounces() / 16.0,
        offset: libm::sqrt(squares),
        top,
        side,
        finger,
        margin: None,
        settings: Vec::new(),
    }
}

/// A unit as a fitter looks for it.
fn called(unit: &ShelfUnit) -> String {
    format!(
        "pin-out {}, top weight {}",
        written(inches(unit.pin_out)),
        Notation::Ounces.write(unit.top_weight)
    )
}

/// How far inside the limits, or past them.
fn inside(margin: f64) -> String {
    if margin < 0.0 {
        format!("{:.2} oz past the nearest limit", -margin)
    } else {
        format!("{margin:.2} oz inside the nearest limit")
    }
}

/// How the core turns before and after.
fn core(
    stock: &Stock,
    taken: &Taken<'_>,
    ball: &crate::fitting::Sphere,
) -> Result<CoreChange, Misfit> {
    let thousandths = |steps: i64| steps as f64 / 1000.0;
    let (rg, differential, intermediate) = (
        thousandths(stock.rg()),
        thousandths(stock.differential()),
        thousandths(stock.intermediate()),
    );
    let bias = taken.layout.mass_bias().map(|bias| bias.direction(ball));
    let core = Core::new(
        rg,
        differential,
        intermediate,
        taken.layout.pin().direction(ball),
        bias,
    )?;
    let cg = taken.layout.cg().unwrap_or(taken.layout.pin());
    let undrilled = Ball::undrilled(
        *ball,
        stock.weight() as f64 / 100.0 * 16.0,
        taken.unit.top_weight as f64 / 100.0,
        cg,
        &taken.scale,
    )?;
    let turning = after(&core, &undrilled, &taken.changes)?;
    Ok(CoreChange {
        before: (rg, differential, intermediate),
        after: (
            turning.rg_low(),
            turning.differential(),
            turning.intermediate(),
        ),
        axes: turning.axes(),
        moved: turning.moved(),
    })
}
