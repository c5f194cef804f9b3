//! Answering for a candidate: its ledger, its fate, its cautions. Nothing is built until asked for.

use super::compile::{Chooser, Job, Plan, Points, Slot, Way};
use super::ledger::{Fate, Ledger, Line, Role};
use super::measure::sort_cautions;
use super::rank::Ranking;
use super::shown::Shown;
use super::vocabulary::UNKNOWN;
use super::world::World;

impl Chooser<'_> {
    /// The lines of a candidate, also of one that is ruled out. `ranking` is this chooser's for the same world.
    ///
    /// A rule that holds and gives no points has no line. Without such a candidate the ledger is empty.
    #[must_use]
    pub fn ledger(&self, world: &dyn World, ranking: &Ranking, candidate: usize) -> Ledger {
        let common = ranking.common.get_or_init(|| self.common(world, ranking));
        // A number that sorts as its line does: the larger first, then by plan, which is in the order of ids.
        let mut found: Vec<(u64, usize, i32)> = Vec::with_capacity(ranking.live.len());
        for (place, &index) in ranking.live.iter().enumerate() {
            let plan = &self.plans[index];
            let points = self.points(plan, world, ranking, candidate);
            if points != 0 {
                let counted = match plan.job {
                    Job::Points => points.unsigned_abs(),
                    _ => 0,
                };
                found.push((u64::from(!counted) << 32 | place as u64, index, points));
            }
        }
        found.sort_unstable_by_key(|&(key, ..)| key);
        let line = |&(key, index, points): &(u64, usize, i32)| {
            let plan = &self.plans[index];
            let mut line = self.line(plan, Role::Points, world, ranking, candidate);
            let place = (key & u64::from(u32::MAX)) as usize;
            line.common = common.get(place) == Some(&Some(points));
            match plan.job {
                Job::Points => line.points = i64::from(points),
                _ => (line.role, line.disputed) = (Role::Dispute, i64::from(points)),
            }
            line
        };
        Ledger {
            lines: found.iter().map(line).collect(),
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
        let single = remaining(ranking).nth(1).is_none();
        let mut remaining = remaining(ranking);
        !(single && plan.looks)
            && remaining.all(|candidate| self.holds(plan, world, ranking, candidate))
    }

    /// By live plan: the points that all remaining candidates have alike, if they are not 0.
    fn common(&self, world: &dyn World, ranking: &Ranking) -> Box<[Option<i32>]> {
        let single = remaining(ranking).nth(1).is_none();
        let common = |&index: &usize| {
            let plan = &self.plans[index];
            if single && plan.looks {
                return None;
            }
            let mut points =
                remaining(ranking).map(|candidate| self.points(plan, world, ranking, candidate));
            let first = points.next().filter(|&first| first != 0)?;
            (!plan.looks || points.all(|one| one == first)).then_some(first)
        };
        ranking.live.iter().map(common).collect()
    }

    /// The points that a rule gives a candidate; 0 where it does not hold.
    fn points(
        &self,
        plan: &Plan<'_>,
        world: &dyn World,
        ranking: &Ranking,
        candidate: usize,
    ) -> i32 {
        if let [way] = plan.ways.as_slice()
            && let Some(points) = &way.masked_points
        {
            let points = points.get(candidate).copied();
            return points.filter(|_| ranking.open[way.number]).unwrap_or(0);
        }
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
        let shown = Shown::new(plan.shows.iter().map(|&(fact, slot)| {
            let value = self.value(slot, world, ranking, candidate);
            (fact, value.unwrap_or(UNKNOWN))
        }));
        Line {
            rule: plan.id,
            points: 0,
            disputed: 0,
            role,
            common: false,
            shown,
        }
    }

    fn value(
        &self,
        slot: Slot,
        world: &dyn World,
        ranking: &Ranking,
        candidate: usize,
    ) -> Option<i64> {
        let value = match slot {
            Slot::Scalar(slot) => ranking.scalars.get(slot),
            Slot::Fixed(slot) => self.fixed.get(slot)?.get(candidate),
            Slot::Derived(slot) => self.derived_column(slot, world, ranking).get(candidate),
        };
        value.copied()
    }
}

/// The candidates that are not ruled out.
fn remaining(ranking: &Ranking) -> impl Iterator<Item = usize> + '_ {
    let out = ranking.out.iter().enumerate();
    out.filter(|(_, bits)| **bits == 0)
        .map(|(candidate, _)| candidate)
}
