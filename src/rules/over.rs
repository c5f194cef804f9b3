//! The rules of a choice over a box of answers: what is decided is summed once, what is open is compared in pairs.

use std::cell::OnceCell;
use std::sync::Arc;

use super::compile::{Chooser, Job, Plan, Points, Way};
use super::condition::Met;
use super::interval::Interval;
use super::ranged::Ranged;
use super::rank::Ranking;
use super::vocabulary::FactId;
use super::world::World;

/// Who is first, and who would like to be.
#[derive(Clone, Copy, Debug)]
pub(super) struct Pair {
    pub(super) first: usize,
    pub(super) rival: usize,
}

/// The least and the most that something may come to.
pub(super) type Bounds = (i64, i64);

/// A chooser's rules over a box.
pub(super) struct Over<'a, 'r> {
    chooser: &'a Chooser<'r>,
    area: &'a dyn Ranged,
    pub(super) scalars: Vec<Interval>,
    /// How far the gate of each way is met.
    pub(super) gates: Vec<Met>,
    /// Ranges of the facts of asker and candidate by slot, once asked for.
    columns: Vec<OnceCell<Column>>,
    /// What the decided rules come to.
    pub(super) decided: Ranking,
    /// The rules that give points and aren't decided.
    open: Vec<&'a Plan<'r>>,
    /// The rules that rule out and aren't decided.
    pub(super) open_outs: Vec<&'a Plan<'r>>,
}

/// The ranges of a fact of asker and candidate.
pub(super) struct Column {
    pub(super) ranges: Arc<[Interval]>,
    /// Whether each of them is a single value.
    pub(super) decided: bool,
    /// Whether they move alike.
    pub(super) together: bool,
}

impl<'a, 'r> Over<'a, 'r> {
    pub(super) fn new(chooser: &'a Chooser<'r>, area: &'a dyn Ranged) -> Self {
        let scalars: Vec<Interval> = chooser
            .scalars
            .iter()
            .map(|&fact| area.scalar(fact))
            .collect();
        let values = scalars.iter().map(|range| range.value()).collect();
        let mut over = Over {
            chooser,
            area,
            scalars,
            gates: vec![Met::Never; chooser.ways],
            columns: std::iter::repeat_with(OnceCell::new)
                .take(chooser.derived.len())
                .collect(),
            decided: chooser.before_any_rule(values),
            open: Vec::new(),
            open_outs: Vec::new(),
        };
        let mut scratch = vec![0; chooser.count];
        for plan in &chooser.plans {
            over.take(plan, &mut scratch);
        }
        over
    }

    /// Sums a rule that is decided, and keeps one that is open.
    fn take(&mut self, plan: &'a Plan<'r>, scratch: &mut [i32]) {
        if plan.in_base || !matches!(plan.job, Job::Points | Job::RuleOut) {
            return;
        }
        let mut best = Met::Never;
        let mut decided = true;
        for way in &plan.ways {
            let met = self.gate(way);
            self.gates[way.number] = met;
            self.decided.open[way.number] = met == Met::Always;
            best = best.max(met);
            decided &= met != Met::Sometimes;
        }
        if best == Met::Never {
            return;
        }
        if decided && self.is_decided_beyond_gates(plan) {
            let sure = Decided(self.area);
            self.chooser
                .count_in(plan, &sure, &mut self.decided, scratch);
        } else if plan.job == Job::Points {
            self.open.push(plan);
        } else {
            self.open_outs.push(plan);
        }
    }

    /// How far the tests on the asker are met.
    fn gate(&self, way: &Way<'_>) -> Met {
        let tests = way.gate.iter();
        tests
            .map(|(slot, allowed)| allowed.over(self.scalars[*slot]))
            .min()
            .unwrap_or(Met::Always)
    }

    /// Whether what an open way tests of candidates, and the points, are single values.
    fn is_decided_beyond_gates(&self, plan: &Plan<'_>) -> bool {
        let points = match plan.points {
            Points::Number(_) | Points::Column(_) => true,
            Points::Asked(slot, _) => self.scalars[slot].is_point(),
            Points::Late(slot, _) => self.column(slot).decided,
        };
        let open = |way: &&Way<'_>| self.gates[way.number] != Met::Never;
        points
            && plan
                .ways
                .iter()
                .filter(open)
                .flat_map(|way| &way.late)
                .all(|(slot, _)| self.column(*slot).decided)
    }

    pub(super) fn column(&self, slot: usize) -> &Column {
        self.columns[slot].get_or_init(|| {
            let mut ranges = self.area.bounds_of_all(self.chooser.derived[slot]);
            if ranges.len() != self.chooser.count {
                let short = ranges.iter().copied();
                let filled = short.chain(std::iter::repeat(Interval::NOT_KNOWN));
                ranges = filled.take(self.chooser.count).collect();
            }
            let decided = ranges.iter().all(|range| range.is_point());
            if decided {
                // The decided rules look there, so it needn't be worked out again.
                let values = ranges.iter().map(|range| range.value()).collect();
                let _ = self.decided.derived[slot].set(values);
            }
            Column {
                ranges,
                decided,
                together: !decided && self.area.moves_together(self.chooser.derived[slot]),
            }
        })
    }

    pub(super) fn candidates(&self) -> usize {
        self.chooser.count
    }

    pub(super) fn tie_place(&self, candidate: usize) -> u32 {
        self.chooser.tie_place[candidate]
    }

    /// Whether a candidate is certainly ruled out.
    pub(super) fn is_out(&self, candidate: usize) -> bool {
        let always = |plan: &&Plan<'_>| self.met(plan, candidate) == Met::Always;
        self.decided.out[candidate] != 0 || self.open_outs.iter().any(always)
    }

    /// Whether a candidate is certainly not ruled out.
    pub(super) fn stays_in(&self, candidate: usize) -> bool {
        let never = |plan: &&Plan<'_>| self.met(plan, candidate) == Met::Never;
        self.decided.out[candidate] == 0 && self.open_outs.iter().all(never)
    }

    /// How far a rule holds for a candidate.
    fn met(&self, plan: &Plan<'_>, candidate: usize) -> Met {
        let ways = plan.ways.iter();
        ways.map(|way| self.gates[way.number].min(self.beyond_gate(way, candidate)))
            .max()
            .unwrap_or(Met::Never)
    }

    /// How far a way is met by a candidate once its gate is open.
    pub(super) fn beyond_gate(&self, way: &Way<'_>, candidate: usize) -> Met {
        if way.mask.as_ref().is_some_and(|mask| mask[candidate] == 0) {
            return Met::Never;
        }
        let late = way.late.iter();
        late.map(|(slot, allowed)| allowed.over(self.column(*slot).ranges[candidate]))
            .min()
            .unwrap_or(Met::Always)
    }

    /// The least by which the one may be ahead of the other.
    pub(super) fn least_gap(&self, pair: Pair) -> i64 {
        let open = self.open.iter();
        self.decided_gap(pair) + open.map(|plan| self.gap_of(plan, pair).0).sum::<i64>()
    }

    fn decided_gap(&self, pair: Pair) -> i64 {
        let total = |candidate: usize| i64::from(self.decided.totals[candidate]);
        total(pair.first) - total(pair.rival)
    }

    /// What a rule gives the one more than the other.
    fn gap_of(&self, plan: &Plan<'_>, pair: Pair) -> Bounds {
        if let [way] = plan.ways.as_slice()
            && way.late.is_empty()
            && !matches!(plan.points, Points::Late(..))
        {
            return self.gap_by_gate(plan, way, pair);
        }
        let (least, most) = self.gap_apart(plan, pair);
        match self.gap_moving(plan, pair) {
            Some(moving) => (least.max(moving.0), most.min(moving.1)),
            None => (least, most),
        }
    }

    /// The same of a rule with one way that never looks at asker and candidate together: it opens for both or for neither.
    fn gap_by_gate(&self, plan: &Plan<'_>, way: &Way<'_>, pair: Pair) -> Bounds {
        let covers = |candidate: usize| way.mask.as_ref().is_none_or(|mask| mask[candidate] != 0);
        let (least, most) = match (covers(pair.first), covers(pair.rival)) {
            (true, true) => self.points_apart(plan, pair),
            (true, false) => self.points(plan, pair.first),
            (false, true) => {
                let (least, most) = self.points(plan, pair.rival);
                (-most, -least)
            }
            (false, false) => (0, 0),
        };
        match self.gates[way.number] {
            Met::Never => (0, 0),
            Met::Sometimes => (least.min(0), most.max(0)),
            Met::Always => (least, most),
        }
    }

    /// The same, each for itself wherever the rule looks at the two.
    fn gap_apart(&self, plan: &Plan<'_>, pair: Pair) -> Bounds {
        let (first, rival) = (self.met(plan, pair.first), self.met(plan, pair.rival));
        let mut gap: Option<Bounds> = None;
        let mut may_be = |bounds: Bounds| {
            let (least, most) = gap.unwrap_or(bounds);
            gap = Some((least.min(bounds.0), most.max(bounds.1)));
        };
        if first != Met::Never && rival != Met::Never {
            may_be(self.points_apart(plan, pair));
        }
        if first != Met::Always && rival != Met::Always {
            may_be((0, 0));
        }
        if first != Met::Never && rival != Met::Always && self.may_part(plan, pair) {
            may_be(self.points(plan, pair.first));
        }
        let turned = Pair {
            first: pair.rival,
            rival: pair.first,
        };
        if rival != Met::Never && first != Met::Always && self.may_part(plan, turned) {
            let (least, most) = self.points(plan, pair.rival);
            may_be((-most, -least));
        }
        gap.unwrap_or((0, 0))
    }

    /// Whether a rule may hold for the one and not for the other: by a way that, once open, is not certain for the other.
    fn may_part(&self, plan: &Plan<'_>, pair: Pair) -> bool {
        plan.ways.iter().any(|way| {
            self.gates[way.number] != Met::Never
                && self.beyond_gate(way, pair.first) != Met::Never
                && self.beyond_gate(way, pair.rival) != Met::Always
        })
    }

    /// The points of a rule where it holds.
    fn points(&self, plan: &Plan<'_>, candidate: usize) -> Bounds {
        match &plan.points {
            Points::Number(number) => (i64::from(*number), i64::from(*number)),
            Points::Column(column) => {
                let points = i64::from(column[candidate]);
                (points, points)
            }
            Points::Asked(slot, curve) => curve.bounds(self.scalars[*slot]),
            Points::Late(slot, curve) => curve.bounds(self.column(*slot).ranges[candidate]),
        }
    }

    /// What a rule gives the one more than the other where it holds for both.
    fn points_apart(&self, plan: &Plan<'_>, pair: Pair) -> Bounds {
        match &plan.points {
            Points::Number(_) | Points::Asked(..) => (0, 0),
            Points::Column(column) => {
                let gap = i64::from(column[pair.first]) - i64::from(column[pair.rival]);
                (gap, gap)
            }
            Points::Late(..) => {
                let (first, rival) = (self.points(plan, pair.first), self.points(plan, pair.rival));
                (first.0 - rival.1, first.1 - rival.0)
            }
        }
    }

    /// What the open rules look at, what widens the gap most first.
    pub(super) fn facts_of_gap(&self, pair: Pair) -> Vec<FactId> {
        let mut widths: Vec<(i64, FactId)> = Vec::new();
        for plan in &self.open {
            let (least, most) = self.gap_of(plan, pair);
            if least == most {
                continue;
            }
            let mut facts = self.open_facts(plan, &[pair.first, pair.rival]);
            facts.extend(match plan.points {
                Points::Asked(slot, _) => self.open_scalar(slot),
                Points::Late(slot, _) => self
                    .is_open_late(slot, &[pair.first, pair.rival])
                    .then(|| self.chooser.derived[slot]),
                Points::Number(_) | Points::Column(_) => None,
            });
            facts.sort_unstable();
            facts.dedup();
            for fact in facts {
                match widths.iter_mut().find(|(_, known)| *known == fact) {
                    Some((width, _)) => *width += most - least,
                    None => widths.push((most - least, fact)),
                }
            }
        }
        widths.sort_unstable_by_key(|&(width, fact)| (-width, fact));
        widths.into_iter().map(|(_, fact)| fact).collect()
    }

    /// What the rules look at that may rule the candidate out.
    pub(super) fn facts_of_rule_outs(&self, candidate: usize) -> Vec<FactId> {
        let sometimes = |plan: &&&Plan<'_>| self.met(plan, candidate) == Met::Sometimes;
        let plans = self.open_outs.iter().filter(sometimes);
        let mut facts: Vec<FactId> = plans
            .flat_map(|plan| self.open_facts(plan, &[candidate]))
            .collect();
        facts.sort_unstable();
        facts.dedup();
        facts
    }

    /// The facts of tests that are not decided for these candidates.
    fn open_facts(&self, plan: &Plan<'_>, candidates: &[usize]) -> Vec<FactId> {
        let mut facts = Vec::new();
        for way in &plan.ways {
            let dead = |&candidate: &usize| self.beyond_gate(way, candidate) == Met::Never;
            if self.gates[way.number] == Met::Never || candidates.iter().all(dead) {
                continue;
            }
            for (slot, allowed) in &way.gate {
                if allowed.over(self.scalars[*slot]) == Met::Sometimes {
                    facts.push(self.chooser.scalars[*slot]);
                }
            }
            for (slot, _) in &way.late {
                if self.is_open_late(*slot, candidates) {
                    facts.push(self.chooser.derived[*slot]);
                }
            }
        }
        facts
    }

    fn open_scalar(&self, slot: usize) -> Option<FactId> {
        (!self.scalars[slot].is_point()).then(|| self.chooser.scalars[slot])
    }

    fn is_open_late(&self, slot: usize, candidates: &[usize]) -> bool {
        let ranges = &self.column(slot).ranges;
        candidates.iter().any(|&one| !ranges[one].is_point())
    }
}

/// The single values of a box; where there is none, not known.
struct Decided<'a>(&'a dyn Ranged);

impl World for Decided<'_> {
    fn candidates(&self) -> usize {
        self.0.candidates()
    }

    fn scalar(&self, fact: FactId) -> i64 {
        self.0.scalar(fact).value()
    }

    fn column(&self, fact: FactId) -> std::borrow::Cow<'_, [i64]> {
        let ranges = self.0.bounds_of_all(fact);
        ranges.iter().map(|range| range.value()).collect()
    }
}
