//! Compiling the rules of a choice for a list of candidates.
//!
//! A rule becomes *ways* it can hold. Each way is a gate on facts that are one for all candidates, decided once per
//! asker; a mask over the candidates, made here once; and what few tests there are on facts of asker and candidate.

use std::sync::Arc;

use super::condition::Allowed;
use super::curve::Curve;
use super::rule::{Amount, Effect, Rule, RuleId, Severity};
use super::set::RuleSet;
use super::subject::SubjectKind;
use super::vocabulary::UNKNOWN;
use super::vocabulary::{FactId, Origin};
use super::world::World;

/// The rules of a choice, compiled for a list of candidates: ranks them for one asker after another.
#[derive(Debug)]
pub struct Chooser<'r> {
    pub(super) set: &'r RuleSet,
    pub(super) count: usize,
    pub(super) plans: Vec<Plan<'r>>,
    /// The points of rules that hold whoever asks, by candidate.
    pub(super) base: Vec<i32>,
    /// The facts that gates ask for, by slot.
    pub(super) scalars: Vec<FactId>,
    /// The facts of asker and candidate that rules test or print, by slot.
    pub(super) derived: Vec<FactId>,
    /// The facts of candidates that rules look at, and their columns, which never change.
    fixed_facts: Vec<FactId>,
    pub(super) fixed: Vec<Box<[i64]>>,
    /// How many ways there are over all plans.
    pub(super) ways: usize,
    /// The candidates in the order that breaks ties, and the place of each in it.
    pub(super) by_tie: Arc<[u32]>,
    pub(super) tie_place: Arc<[u32]>,
}

/// A rule, compiled.
#[derive(Debug)]
pub(super) struct Plan<'r> {
    pub(super) id: RuleId,
    pub(super) job: Job,
    pub(super) points: Points<'r>,
    pub(super) ways: Vec<Way<'r>>,
    /// Whether its points are in [`Chooser::base`] already.
    pub(super) in_base: bool,
    /// Whether it looks at any fact of candidates to hold or to give its points.
    pub(super) looks: bool,
    /// The facts that its lines show, and where their values are.
    pub(super) shows: Vec<(FactId, Slot)>,
}

/// Where the value of a fact is, by its place there.
#[derive(Clone, Copy, Debug)]
pub(super) enum Slot {
    Scalar(usize),
    Fixed(usize),
    Derived(usize),
}

/// What a rule of a choice does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Job {
    Points,
    Dispute,
    RuleOut,
    Caution(Severity),
}

/// Where points come from.
#[derive(Debug)]
pub(super) enum Points<'r> {
    /// Always the same number; 0 for rules that give none.
    Number(i32),
    /// A curve along a fact of the asker.
    Asked(usize, &'r Curve),
    /// A curve along a fact of the candidates, worked out.
    Column(Box<[i32]>),
    /// A curve along a fact of asker and candidate.
    Late(usize, &'r Curve),
}

/// One way a rule can hold.
#[derive(Debug)]
pub(super) struct Way<'r> {
    /// Its number among the ways of all plans.
    pub(super) number: usize,
    /// Tests on facts of the asker, by slot.
    pub(super) gate: Vec<(usize, &'r Allowed)>,
    /// -1 for candidates that may hold, 0 for others; none if all may.
    pub(super) mask: Option<Box<[i32]>>,
    /// Tests on facts of asker and candidate, by slot.
    pub(super) late: Vec<(usize, &'r Allowed)>,
    /// The points under the mask, if they are known beforehand and there are no late tests.
    pub(super) masked_points: Option<Box<[i32]>>,
}

impl RuleSet {
    /// Compiles the rules of a choice for the candidates of `fixed`, whose own facts and ties are asked for here and never
    /// again. None if there is no such choice.
    #[must_use]
    pub fn chooser(&self, subject: &str, fixed: &dyn World) -> Option<Chooser<'_>> {
        let subject = self
            .subject(subject)
            .filter(|found| found.kind == SubjectKind::Choice)?;
        let count = fixed.candidates();
        let mut ties: Vec<(i64, u32)> = (0..count)
            .map(|candidate| (fixed.tie(candidate), candidate as u32))
            .collect();
        ties.sort_unstable();
        let by_tie: Arc<[u32]> = ties.iter().map(|&(_, candidate)| candidate).collect();
        let mut tie_place = vec![0; count];
        for (place, &candidate) in by_tie.iter().enumerate() {
            tie_place[candidate as usize] = place as u32;
        }
        let mut chooser = Chooser {
            set: self,
            count,
            plans: Vec::new(),
            base: vec![0; count],
            scalars: Vec::new(),
            derived: Vec::new(),
            fixed_facts: Vec::new(),
            fixed: Vec::new(),
            ways: 0,
            by_tie,
            tie_place: tie_place.into(),
        };
        for (id, rule) in self.rules_of(&subject.id) {
            chooser.add(id, rule, fixed);
        }
        Some(chooser)
    }
}

impl<'r> Chooser<'r> {
    fn add(&mut self, id: RuleId, rule: &'r Rule, fixed: &dyn World) {
        let job = match rule.effect {
            Effect::Points(_) if rule.disputes.is_some() => Job::Dispute,
            Effect::Points(_) => Job::Points,
            Effect::RuleOut => Job::RuleOut,
            Effect::Caution(severity) => Job::Caution(severity),
            _ => return,
        };
        let mut shows = Vec::with_capacity(rule.facts().len());
        for &fact in rule.facts() {
            shows.push((fact, self.slot(fact, fixed)));
        }
        let points = match rule.effect.amount() {
            Some(Amount::Number(number)) => Points::Number(*number as i32),
            Some(Amount::Along(curve)) => self.points_along(curve, fixed),
            Some(Amount::Copy(_)) | None => Points::Number(0),
        };
        let mut looks = matches!(points, Points::Column(_) | Points::Late(..));
        let mut ways = Vec::new();
        for tests in rule.when.ways() {
            looks |= tests.iter().any(|test| !self.origin(test.fact).is_scalar());
            let mut way = Way {
                number: self.ways,
                gate: Vec::new(),
                mask: None,
                late: Vec::new(),
                masked_points: None,
            };
            for test in tests {
                match self.slot(test.fact, fixed) {
                    Slot::Fixed(slot) => way.narrow(&self.fixed[slot], &test.allowed),
                    Slot::Derived(slot) => way.late.push((slot, &test.allowed)),
                    Slot::Scalar(slot) => way.gate.push((slot, &test.allowed)),
                }
            }
            let never = way
                .mask
                .as_ref()
                .is_some_and(|mask| mask.iter().all(|&bits| bits == 0));
            if !never {
                way.masked_points = way.points_under_mask(&points);
                self.ways += 1;
                ways.push(way);
            }
        }
        let always = |way: &Way<'_>| way.gate.is_empty() && way.late.is_empty();
        let in_base = job == Job::Points && ways.len() == 1 && ways.iter().all(always);
        let in_base = in_base && self.add_to_base(&ways[0], &points);
        if !ways.is_empty() {
            self.plans.push(Plan {
                id,
                job,
                points,
                ways,
                in_base,
                looks,
                shows,
            });
        }
    }

    /// Adds the points of a way that always holds; false if they depend on who asks.
    fn add_to_base(&mut self, way: &Way<'_>, points: &Points<'_>) -> bool {
        match (&way.masked_points, points) {
            (Some(column), _) => add(&mut self.base, column),
            (None, Points::Number(number)) => {
                self.base.iter_mut().for_each(|total| *total += number)
            }
            _ => return false,
        }
        true
    }

    /// Where the value of a fact will be; the columns of candidates are asked for here.
    fn slot(&mut self, fact: FactId, fixed: &dyn World) -> Slot {
        match self.origin(fact) {
            Origin::Candidate => {
                let slot = slot(&mut self.fixed_facts, fact);
                if slot == self.fixed.len() {
                    self.fixed.push(full_column(fixed, fact, self.count));
                }
                Slot::Fixed(slot)
            }
            Origin::Derived => Slot::Derived(slot(&mut self.derived, fact)),
            _ => Slot::Scalar(slot(&mut self.scalars, fact)),
        }
    }

    fn points_along(&mut self, curve: &'r Curve, fixed: &dyn World) -> Points<'r> {
        match self.slot(curve.along(), fixed) {
            Slot::Fixed(slot) => {
                let mut points = vec![0; self.count].into_boxed_slice();
                curve.add_to(&mut points, None, &self.fixed[slot]);
                Points::Column(points)
            }
            Slot::Derived(slot) => Points::Late(slot, curve),
            Slot::Scalar(slot) => Points::Asked(slot, curve),
        }
    }

    fn origin(&self, fact: FactId) -> Origin {
        self.set.vocabulary.fact(fact).origin
    }
}

impl Way<'_> {
    /// Leaves only candidates whose fact is let through.
    fn narrow(&mut self, column: &[i64], allowed: &Allowed) {
        let mask = self
            .mask
            .get_or_insert_with(|| vec![-1; column.len()].into_boxed_slice());
        for (bits, &value) in mask.iter_mut().zip(column) {
            *bits &= -i32::from(allowed.contains(value));
        }
    }

    fn points_under_mask(&self, points: &Points<'_>) -> Option<Box<[i32]>> {
        if !self.late.is_empty() {
            return None;
        }
        match (points, &self.mask) {
            (Points::Number(number), Some(mask)) => {
                Some(mask.iter().map(|bits| bits & number).collect())
            }
            (Points::Column(column), Some(mask)) => Some(
                mask.iter()
                    .zip(column)
                    .map(|(bits, number)| bits & number)
                    .collect(),
            ),
            (Points::Column(column), None) => Some(column.clone()),
            _ => None,
        }
    }
}

/// Adds a column to the totals.
pub(super) fn add(totals: &mut [i32], column: &[i32]) {
    for (total, points) in totals.iter_mut().zip(column) {
        *total += points;
    }
}

/// A world's column, cut or filled up to the number of candidates.
pub(super) fn full_column(world: &dyn World, fact: FactId, count: usize) -> Box<[i64]> {
    let mut column = world.column(fact).into_owned();
    column.resize(count, UNKNOWN);
    column.into()
}

/// The slot of a fact, made if there is none.
fn slot(slots: &mut Vec<FactId>, fact: FactId) -> usize {
    slots
        .iter()
        .position(|&known| known == fact)
        .unwrap_or_else(|| {
            slots.push(fact);
            slots.len() - 1
        })
}
