//! Answering for a candidate: its ledger, its fate, its cautions. Nothing is built until asked for.

use super::compile::{Chooser, Job, Plan, Points, Way};
use super::ledger::{self, Fate, Ledger, Line, Role};
use super::measure::sort_cautions;
use super::rank::Ranking;
use super::vocabulary::{FactId, Origin};
use super::world::{UNKNOWN, World};

impl Chooser<'_> {
    /// The lines of a candidate, also of one that is ruled out. `ranking` is this chooser's for the same world.
    ///
    /// A rule that holds and gives no points has no line. Without such a candidate the ledger is empty.
    #[must_use]
    pub fn ledger(&self, world: &dyn World, ranking: &Ranking, candidate: usize) -> Ledger {
        let mut lines = Vec::new();
        let common = ranking.common.get_or_init(|| self.common(world, ranking));
        for (plan, common) in self.plans.iter().zip(common) {
            let role = match plan.job {
                Job::Points => Role::Points,
                Job::Dispute => Role::Dispute,
                Job::RuleOut | Job::Caution(_) => continue,
            };
            let points = self.points(plan, world, ranking, candidate);
            if points == 0 {
                continue;
            }
            let mut line = self.line(plan, role, world, ranking, candidate);
            line.common = *common == Some(points);
            match role {
                Role::Dispute => line.disputed = i64::from(points),
                _ => line.points = i64::from(points),
            }
            lines.push(line);
        }
        ledger::sort(&mut lines);
        Ledger {
            lines,
            total: ranking.total(candidate),
        }
    }

    /// What became of a candidate. One that there is not counts as ruled out, by no rule.
    #[must_use]
    pub fn fate(&self, world: &dyn World, ranking: &Ranking, candidate: usize) -> Fate {
        if let Some(place) = ranking.place(candidate) {
            return Fate::Ranked { place };
        }
        let out = self.plans.iter().filter(|plan| plan.job == Job::RuleOut);
        let held = out.filter(|plan| self.holds(plan, world, ranking, candidate));
        Fate::RuledOut(
            held.map(|plan| self.line(plan, Role::RuleOut, world, ranking, candidate))
                .collect(),
        )
    }

    /// The cautions about a candidate, serious ones first.
    #[must_use]
    pub fn cautions(&self, world: &dyn World, candidate: usize) -> Vec<Line> {
        let ranking = self.rank(world);
        self.ranked_cautions(world, &ranking, candidate)
    }

    /// The same as [`Chooser::cautions`] for one who has the ranking already.
    #[must_use]
    pub fn ranked_cautions(
        &self,
        world: &dyn World,
        ranking: &Ranking,
        candidate: usize,
    ) -> Vec<Line> {
        let mut lines = Vec::new();
        for plan in &self.plans {
            if let Job::Caution(severity) = plan.job
                && self.holds(plan, world, ranking, candidate)
            {
                let mut line = self.line(plan, Role::Caution(severity), world, ranking, candidate);
                line.common = self.is_common_caution(plan, world, ranking);
                lines.push(line);
            }
        }
        sort_cautions(&mut lines);
        lines
    }

    fn is_common_caution(&self, plan: &Plan<'_>, world: &dyn World, ranking: &Ranking) -> bool {
        let mut remaining = remaining(ranking);
        let tells = self.tells_apart(plan, ranking);
        !tells && remaining.all(|candidate| self.holds(plan, world, ranking, candidate))
    }

    /// By plan: the points that all remaining candidates have alike, if they are not 0.
    fn common(&self, world: &dyn World, ranking: &Ranking) -> Box<[Option<i32>]> {
        let common = |plan: &Plan<'_>| {
            if !matches!(plan.job, Job::Points | Job::Dispute) || self.tells_apart(plan, ranking) {
                return None;
            }
            let mut points =
                remaining(ranking).map(|candidate| self.points(plan, world, ranking, candidate));
            let first = points.next().filter(|&first| first != 0)?;
            points.all(|one| one == first).then_some(first)
        };
        self.plans.iter().map(common).collect()
    }

    /// Whether a rule looks at candidates while there is but one left: it is a reason for that one then.
    fn tells_apart(&self, plan: &Plan<'_>, ranking: &Ranking) -> bool {
        plan.looks && remaining(ranking).nth(1).is_none()
    }

    /// The points that a rule gives a candidate; 0 where it does not hold.
    fn points(
        &self,
        plan: &Plan<'_>,
        world: &dyn World,
        ranking: &Ranking,
        candidate: usize,
    ) -> i32 {
        if !self.holds(plan, world, ranking, candidate) {
            return 0;
        }
        match &plan.points {
            Points::Number(number) => *number,
            Points::Asked(slot, curve) => curve
                .value(ranking.scalars[*slot])
                .map_or(0, |value| value as i32),
            Points::Column(column) => column[candidate],
            Points::Late(slot, curve) => {
                let at = self.derived_column(*slot, world, ranking)[candidate];
                curve.value(at).map_or(0, |value| value as i32)
            }
        }
    }

    fn holds(
        &self,
        plan: &Plan<'_>,
        world: &dyn World,
        ranking: &Ranking,
        candidate: usize,
    ) -> bool {
        let covers = |way: &Way<'_>| {
            let late = |(slot, allowed): &(usize, &super::condition::Allowed)| {
                allowed.contains(self.derived_column(*slot, world, ranking)[candidate])
            };
            ranking.open[way.number]
                && way.mask.as_ref().is_none_or(|mask| mask[candidate] != 0)
                && way.late.iter().all(late)
        };
        candidate < self.count && plan.ways.iter().any(covers)
    }

    fn line(
        &self,
        plan: &Plan<'_>,
        role: Role,
        world: &dyn World,
        ranking: &Ranking,
        candidate: usize,
    ) -> Line {
        let value = |fact: FactId| self.value(fact, world, ranking, candidate);
        let shown = plan.rule.values(&value);
        Line {
            rule: plan.id,
            points: 0,
            disputed: 0,
            role,
            common: false,
            shown,
        }
    }

    fn value(&self, fact: FactId, world: &dyn World, ranking: &Ranking, candidate: usize) -> i64 {
        let slot_of = |slots: &[FactId]| slots.iter().position(|&known| known == fact);
        let value = match self.set.vocabulary.fact(fact).origin {
            Origin::Candidate => self
                .fixed
                .get(&fact)
                .and_then(|column| column.get(candidate)),
            Origin::Derived => slot_of(&self.derived)
                .and_then(|slot| self.derived_column(slot, world, ranking).get(candidate)),
            _ => slot_of(&self.scalars).and_then(|slot| ranking.scalars.get(slot)),
        };
        value.copied().unwrap_or(UNKNOWN)
    }
}

/// The candidates that are not ruled out.
fn remaining(ranking: &Ranking) -> impl Iterator<Item = usize> + '_ {
    let out = ranking.out.iter().enumerate();
    out.filter(|(_, bits)| **bits == 0)
        .map(|(candidate, _)| candidate)
}
