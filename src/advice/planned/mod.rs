//! The drilled ball computed from the settled numbers: holes and walls, layout, balance, core, and what the rule book says.

mod balance;
mod book;
mod holes;
mod layout;
mod mends;
mod old;
mod used;
mod widths;

use super::consultation::Consultation;
use super::drilling::{Drilling, Refusal};
use crate::fitting::Sphere;
use crate::fitting::grip::{Fault, Placed, Reference, place};
use crate::notation::Notation;
use crate::rules::Fact;
use crate::standards::Body;
use crate::vocabulary::{Alone, Ordered, bench, ordered};

/// What every part of the plan is computed from.
struct Bench<'c, 's> {
    consultation: &'c Consultation<'s>,
    ball: Sphere,
    order: Ordered,
    placed: Placed,
    /// A left hand: words are turned round, numbers are not.
    left: bool,
}

impl Consultation<'_> {
    /// The drilled ball, for the candidate that was chosen; `None` while the numbers that place the holes are missing.
    pub(super) fn drilling(&self, chosen: Option<usize>) -> Option<Drilling> {
        // Every ball counts as one of 27 in around: nobody measures it at the counter.
        let ball = Sphere::default();
        let left = self.situation.is_word("bowler.hand", "left");
        let order = ordered(&self.situation, Reference::OwnLine)?;
        let mut drilling = empty(&ball, left, self.shop.body());
        let placed = match place(&ball, &order.grip) {
            Ok(placed) => placed,
            Err(unplaceable) => {
                drilling.refusals = unplaceable.faults().iter().map(unplaced).collect();
                return Some(drilling);
            }
        };
        let bench = Bench {
            consultation: self,
            ball,
            order,
            placed,
            left,
        };
        drilling.holes = bench.holes();
        drilling.webs = bench.webs();
        drilling.refusals = bench.refusals(&drilling.webs);
        drilling.refusals.extend(bench.out_of_bounds());
        let unsettled = bench.unsettled();
        let settled = unsettled.is_empty();
        drilling.refusals.extend(unsettled);
        drilling.open = bench.open();
        drilling.open.extend(bench.old_notes(&drilling.webs));
        match chosen.filter(|_| settled) {
            Some(chosen) => bench.on_the_ball(chosen, &mut drilling),
            None => {
                if settled && bench.is_used() {
                    bench.on_the_old_ball(&mut drilling);
                }
                drilling.findings = bench.findings_of_holes(&drilling);
            }
        }
        let broken = widths::broken(&drilling.findings);
        drilling.refusals.extend(broken);
        Some(drilling)
    }
}

/// Why the grip can't lie on the ball, in the lengths that a fitter reads.
fn unplaced(fault: &Fault) -> Refusal {
    let Fault::OpenTriangle {
        ring,
        shortest,
        longest,
    } = fault
    else {
        return Refusal {
            what: format!("These holes can't be placed: {fault}."),
            mends: vec!["Measure again what is named here.".to_owned()],
        };
    };
    // Inward to the sixty-fourth, so that what is named is possible.
    let lowest = libm::floor(shortest * 64.0) as i64 + 1;
    let highest = libm::ceil(longest * 64.0) as i64 - 1;
    let length = |steps: i64| Notation::Length.write(steps);
    Refusal {
        what: format!(
            "These spans and this bridge close no triangle: the ring span reads {}.",
            holes::inches(*ring)
        ),
        mends: vec![format!(
            "Measure again: beside this middle span and bridge the ring span is {} to {}.",
            length(lowest),
            length(highest)
        )],
    }
}

fn empty(ball: &Sphere, left_hand: bool, body: Body) -> Drilling {
    Drilling {
        circumference: ball.circumference(),
        left_hand,
        holes: Vec::new(),
        webs: Vec::new(),
        refusals: Vec::new(),
        layout: None,
        balance: None,
        core: None,
        body,
        findings: Vec::new(),
        open: Vec::new(),
    }
}

impl Bench<'_, '_> {
    /// Settings of the bench that no rule, or more than one, states: without them neither walls nor weights can be judged.
    fn unsettled(&self) -> Vec<Refusal> {
        let rules = self.consultation.shop.rules();
        let world = Alone(&self.consultation.situation);
        let missing = |fact: &Fact| {
            let measured = rules.measure(fact.name, &world);
            let why = measured.problem().unwrap_or("nothing states it");
            measured.value().is_none().then(|| Refusal {
                what: format!("`{}` is not settled: {why}.", fact.name),
                mends: vec![format!("State {} once in the shop's rules.", fact.meaning)],
            })
        };
        // A new ball has no plugs.
        let counts = |fact: &&Fact| self.is_used() || fact.name != balance::PLUGS;
        bench().iter().filter(counts).filter_map(missing).collect()
    }

    /// What is still to be measured before weights can be told.
    fn open(&self) -> Vec<String> {
        let mut open = Vec::new();
        if !self.order.thumb_depth_known {
            open.push(
                "Measure the length of the thumb: without the thumb hole's depth its walls and all weights stay open."
                    .to_owned(),
            );
        }
        if !self.order.centre_known {
            open.push(
                "Measure from the palm-side edges of the finger holes to the middle of the palm: without the palm mark the layout and all weights stay open."
                    .to_owned(),
            );
        }
        open
    }
}
