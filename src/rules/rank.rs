//! Ranking: totals of all candidates at once, column by column.

use std::sync::{Arc, OnceLock};

use super::compile::{Chooser, Job, Plan, Points, Way, add, full_column};
use super::condition::Allowed;
use super::world::World;

/// So few candidates are picked out one by one, without sorting the rest.
const FEW: usize = 32;

/// The candidates of a choice in order, for one asker.
#[derive(Clone, Debug)]
pub struct Ranking {
    pub(super) totals: Vec<i32>,
    pub(super) out: Vec<i32>,
    /// The asker's values by slot of the chooser.
    pub(super) scalars: Vec<i64>,
    /// Which ways of the chooser's rules are open to this asker.
    pub(super) open: Vec<bool>,
    /// Columns of facts of asker and candidate by slot, once asked for.
    pub(super) derived: Vec<OnceLock<Box<[i64]>>>,
    /// The plans that give points, counted or disputed, and are open to this asker.
    pub(super) live: Vec<usize>,
    /// By live plan: the points that all remaining candidates have alike.
    pub(super) common: OnceLock<Box<[Option<i32>]>>,
    by_tie: Arc<[u32]>,
    tie_place: Arc<[u32]>,
    order: OnceLock<Vec<usize>>,
}

impl Ranking {
    /// The candidates that are not ruled out, best first.
    #[must_use]
    pub fn order(&self) -> &[usize] {
        self.order.get_or_init(|| {
            let mut keys: Vec<u64> = self.keys().collect();
            keys.sort_unstable();
            self.candidates(&keys)
        })
    }

    /// The best few, best first; cheaper than [`Ranking::order`] when only they are wanted.
    #[must_use]
    pub fn best(&self, most: usize) -> Vec<usize> {
        if most > FEW {
            return self.order().iter().copied().take(most).collect();
        }
        let mut best: Vec<u64> = Vec::with_capacity(most + 1);
        for key in self.keys() {
            if best.len() < most || best.last().is_some_and(|&worst| key < worst) {
                best.insert(best.partition_point(|&other| other < key), key);
                best.truncate(most);
            }
        }
        self.candidates(&best)
    }

    /// The total of a candidate in tenths of points, also of one that is ruled out; 0 if there is no such candidate.
    #[must_use]
    pub fn total(&self, candidate: usize) -> i64 {
        self.totals
            .get(candidate)
            .map_or(0, |&total| i64::from(total))
    }

    /// Whether a rule rules the candidate out.
    #[must_use]
    pub fn is_ruled_out(&self, candidate: usize) -> bool {
        self.out.get(candidate).is_some_and(|&bits| bits != 0)
    }

    /// The place of a candidate among those that remain, the best at 0; none if it is ruled out.
    #[must_use]
    pub fn place(&self, candidate: usize) -> Option<usize> {
        self.order().iter().position(|&one| one == candidate)
    }

    /// Numbers that sort as the candidates that remain do: by total, best first, then by the place that breaks ties.
    fn keys(&self) -> impl Iterator<Item = u64> + '_ {
        let all = self.totals.iter().zip(&self.out).zip(&*self.tie_place);
        let remaining = all.filter(|((_, out), _)| **out == 0);
        remaining.map(|((&total, _), &place)| {
            // The larger total gives the smaller number.
            let from_best = i64::from(i32::MAX) - i64::from(total);
            (from_best as u64) << 32 | u64::from(place)
        })
    }

    fn candidates(&self, keys: &[u64]) -> Vec<usize> {
        let candidate = |key: &u64| self.by_tie[(key & u64::from(u32::MAX)) as usize] as usize;
        keys.iter().map(candidate).collect()
    }
}

/// Which candidates a rule holds for.
enum Cover<'a> {
    All,
    Some(&'a [i32]),
}

impl Chooser<'_> {
    /// Ranks the candidates for the asker of this world, which has the same candidates in the same order.
    #[must_use]
    pub fn rank(&self, world: &dyn World) -> Ranking {
        let scalars = self.scalars.iter().map(|&fact| world.scalar(fact));
        let mut ranking = self.before_any_rule(scalars.collect());
        let mut scratch = vec![0; self.count];
        for (index, plan) in self.plans.iter().enumerate() {
            let mut any_open = false;
            for way in &plan.ways {
                let open = way
                    .gate
                    .iter()
                    .all(|(slot, allowed)| allowed.contains(ranking.scalars[*slot]));
                ranking.open[way.number] = open;
                any_open |= open;
            }
            if any_open && matches!(plan.job, Job::Points | Job::Dispute) {
                ranking.live.push(index);
            }
            if any_open && !plan.in_base {
                self.count_in(plan, world, &mut ranking, &mut scratch);
            }
        }
        ranking
    }

    /// The candidates as they stand before any rule has spoken that depends on the asker.
    pub(super) fn before_any_rule(&self, scalars: Vec<i64>) -> Ranking {
        Ranking {
            totals: self.base.clone(),
            out: vec![0; self.count],
            scalars,
            open: vec![false; self.ways],
            derived: vec![OnceLock::new(); self.derived.len()],
            live: Vec::with_capacity(self.plans.len()),
            common: OnceLock::new(),
            by_tie: Arc::clone(&self.by_tie),
            tie_place: Arc::clone(&self.tie_place),
            order: OnceLock::new(),
        }
    }

    /// Lets an open rule do its part.
    pub(super) fn count_in(
        &self,
        plan: &Plan<'_>,
        world: &dyn World,
        ranking: &mut Ranking,
        scratch: &mut [i32],
    ) {
        let mut open = plan.ways.iter().filter(|way| ranking.open[way.number]);
        match plan.job {
            Job::Points => {
                let only = open.next().filter(|_| open.next().is_none());
                if let Some(column) = only.and_then(|way| way.masked_points.as_deref()) {
                    add(&mut ranking.totals, column);
                    return;
                }
                if let Some(way) = only
                    && self.give_by_one_test(plan, way, world, ranking)
                {
                    return;
                }
                let cover = self.cover(plan, world, ranking, scratch);
                self.give(plan, cover, world, ranking);
            }
            Job::RuleOut => match self.cover(plan, world, ranking, scratch) {
                Cover::All => ranking.out.fill(-1),
                Cover::Some(mask) => {
                    ranking
                        .out
                        .iter_mut()
                        .zip(mask)
                        .for_each(|(out, bits)| *out |= bits);
                }
            },
            // Neither changes the order; they are looked up when a candidate is asked about.
            Job::Dispute | Job::Caution(_) => {}
        }
    }

    /// The candidates that any open way of the rule covers.
    fn cover<'a>(
        &self,
        plan: &'a Plan<'_>,
        world: &dyn World,
        ranking: &Ranking,
        scratch: &'a mut [i32],
    ) -> Cover<'a> {
        let mut open = plan.ways.iter().filter(|way| ranking.open[way.number]);
        let Some(first) = open.next() else {
            scratch.fill(0);
            return Cover::Some(scratch);
        };
        let Some(second) = open.next() else {
            if first.late.is_empty() {
                return first.mask.as_deref().map_or(Cover::All, Cover::Some);
            }
            self.cover_one(first, world, ranking, scratch);
            return Cover::Some(scratch);
        };
        self.cover_one(first, world, ranking, scratch);
        let mut one = vec![0; self.count];
        for way in std::iter::once(second).chain(open) {
            self.cover_one(way, world, ranking, &mut one);
            scratch
                .iter_mut()
                .zip(&one)
                .for_each(|(bits, more)| *bits |= more);
        }
        Cover::Some(scratch)
    }

    /// The candidates that one open way covers.
    fn cover_one(&self, way: &Way<'_>, world: &dyn World, ranking: &Ranking, mask: &mut [i32]) {
        let mut late = way.late.iter();
        match (&way.mask, late.next()) {
            (Some(fixed), _) => mask.copy_from_slice(fixed),
            (None, Some((slot, allowed))) => {
                fill(mask, self.derived_column(*slot, world, ranking), allowed);
            }
            (None, None) => mask.fill(-1),
        }
        let rest = if way.mask.is_some() {
            way.late.iter()
        } else {
            late
        };
        for (slot, allowed) in rest {
            narrow(mask, self.derived_column(*slot, world, ranking), allowed);
        }
    }

    /// Gives the rule's points in one pass, if there is but one late test, of one interval, and one number to give. False if
    /// not: then nothing is done.
    fn give_by_one_test(
        &self,
        plan: &Plan<'_>,
        way: &Way<'_>,
        world: &dyn World,
        ranking: &mut Ranking,
    ) -> bool {
        let ([(slot, allowed)], Points::Number(number)) = (way.late.as_slice(), &plan.points)
        else {
            return false;
        };
        let Some((low, width)) = allowed.single_range() else {
            return false;
        };
        let mut totals = std::mem::take(&mut ranking.totals);
        let places = totals
            .iter_mut()
            .zip(self.derived_column(*slot, world, ranking));
        match &way.mask {
            None => {
                places.for_each(|(total, &value)| *total += within(value, low, width) & number);
            }
            Some(mask) => places.zip(mask).for_each(|((total, &value), bits)| {
                *total += within(value, low, width) & bits & number;
            }),
        }
        ranking.totals = totals;
        true
    }

    /// Gives the rule's points to the candidates that it covers.
    fn give(&self, plan: &Plan<'_>, cover: Cover<'_>, world: &dyn World, ranking: &mut Ranking) {
        let number = match &plan.points {
            Points::Number(number) => Some(*number),
            Points::Asked(slot, curve) => Some(
                curve
                    .value(ranking.scalars[*slot])
                    .map_or(0, |value| value as i32),
            ),
            Points::Column(_) | Points::Late(..) => None,
        };
        // The totals are taken out for the while, so that columns can be borrowed from the rest.
        let mut totals = std::mem::take(&mut ranking.totals);
        match (&plan.points, cover, number) {
            (_, Cover::All, Some(number)) => totals.iter_mut().for_each(|total| *total += number),
            (_, Cover::Some(mask), Some(number)) => {
                totals
                    .iter_mut()
                    .zip(mask)
                    .for_each(|(total, bits)| *total += bits & number);
            }
            (Points::Column(column), Cover::All, None) => add(&mut totals, column),
            (Points::Column(column), Cover::Some(mask), None) => {
                let masked = mask.iter().zip(column).map(|(bits, points)| bits & points);
                totals
                    .iter_mut()
                    .zip(masked)
                    .for_each(|(total, points)| *total += points);
            }
            (Points::Late(slot, curve), cover, None) => {
                let column = self.derived_column(*slot, world, ranking);
                let mask = match cover {
                    Cover::All => None,
                    Cover::Some(mask) => Some(mask),
                };
                curve.add_to(&mut totals, mask, column);
            }
            (Points::Number(_) | Points::Asked(..), _, None) => {}
        }
        ranking.totals = totals;
    }

    /// The column of a fact of asker and candidate; asked of the world once for a ranking.
    pub(super) fn derived_column<'k>(
        &self,
        slot: usize,
        world: &dyn World,
        ranking: &'k Ranking,
    ) -> &'k [i64] {
        ranking.derived[slot].get_or_init(|| full_column(world, self.derived[slot], self.count))
    }
}

/// Leaves only candidates whose value is let through.
fn narrow(mask: &mut [i32], column: &[i64], allowed: &Allowed) {
    let pairs = mask.iter_mut().zip(column);
    match allowed.single_range() {
        Some((low, width)) => pairs.for_each(|(bits, &value)| *bits &= within(value, low, width)),
        None => pairs.for_each(|(bits, &value)| *bits &= -i32::from(allowed.contains(value))),
    }
}

/// Marks exactly the candidates whose value is let through.
fn fill(mask: &mut [i32], column: &[i64], allowed: &Allowed) {
    let pairs = mask.iter_mut().zip(column);
    match allowed.single_range() {
        Some((low, width)) => pairs.for_each(|(bits, &value)| *bits = within(value, low, width)),
        None => pairs.for_each(|(bits, &value)| *bits = -i32::from(allowed.contains(value))),
    }
}

/// -1 for a value from `low` on to `width` beyond it, else 0: one comparison, no branch.
fn within(value: i64, low: i64, width: u64) -> i32 {
    -i32::from(value.wrapping_sub(low) as u64 <= width)
}
