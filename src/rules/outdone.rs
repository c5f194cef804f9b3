//! Whether a candidate is first nowhere in a box of answers.

use super::compile::{Chooser, Plan};
use super::condition::{Allowed, Met};
use super::over::{Over, Pair};
use super::ranged::Ranged;
use super::vocabulary::FactId;

/// Whether a candidate is first nowhere in a box of answers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Outdone {
    /// Certainly: this one is ahead of it wherever it isn't ruled out. None if it is ruled out all over.
    By(Option<usize>),
    /// Bounds don't show it. What the undecided rules look at, the most telling first; facts of askers and of candidates.
    Open(Vec<FactId>),
}

impl Chooser<'_> {
    /// Whether `candidate` is first nowhere in the box of `area`; these rivals are tried before all others.
    ///
    /// `area` has this chooser's candidates in the same order. Never says so wrongly; where bounds are too loose it is left
    /// open.
    #[must_use]
    pub fn outdone(&self, area: &dyn Ranged, candidate: usize, before: &[usize]) -> Outdone {
        if candidate >= self.count {
            return Outdone::By(None);
        }
        let over = Over::new(self, area);
        if over.is_out(candidate) {
            return Outdone::By(None);
        }
        let known = before.iter().copied().filter(|&rival| rival < self.count);
        let mut nearest: Option<((bool, i64), usize)> = None;
        for rival in known.chain(0..self.count) {
            if rival == candidate || over.is_out(rival) {
                continue;
            }
            let pair = Pair {
                first: rival,
                rival: candidate,
            };
            let (along, gap) = (over.comes_along(pair), over.least_gap(pair));
            let ahead_in_a_tie = over.tie_place(rival) < over.tie_place(candidate);
            if along && (gap > 0 || gap == 0 && ahead_in_a_tie) {
                return Outdone::By(Some(rival));
            }
            if nearest.is_none_or(|(best, _)| best < (along, gap)) {
                nearest = Some(((along, gap), rival));
            }
        }
        let mut facts = Vec::new();
        if let Some(((along, _), rival)) = nearest {
            if !along {
                facts.extend(over.facts_of_rule_outs(rival));
            }
            facts.extend(over.facts_of_gap(Pair {
                first: rival,
                rival: candidate,
            }));
        }
        facts.extend(over.facts_of_rule_outs(candidate));
        Outdone::Open(facts)
    }
}

impl Over<'_, '_> {
    /// Whether the first of two is certainly in wherever the other is: what rules the first out rules out the other too.
    fn comes_along(&self, pair: Pair) -> bool {
        let falls_with = |plan: &&Plan<'_>| self.falls_with(plan, pair);
        self.decided.out[pair.first] == 0 && self.open_outs.iter().all(falls_with)
    }

    /// Whether a rule that holds for the first of two holds for the other by the same way.
    fn falls_with(&self, plan: &Plan<'_>, pair: Pair) -> bool {
        plan.ways.iter().all(|way| {
            let never = self.gates[way.number] == Met::Never
                || self.beyond_gate(way, pair.first) == Met::Never;
            let masked = way.mask.as_ref();
            let mut late = way.late.iter();
            never
                || masked.is_none_or(|mask| mask[pair.rival] != 0)
                    && late.all(|(slot, allowed)| self.meets_with(*slot, allowed, pair))
        })
    }

    /// Whether the second of two meets a test wherever the first does.
    fn meets_with(&self, slot: usize, allowed: &Allowed, pair: Pair) -> bool {
        let column = self.column(slot);
        let (first, second) = (column.ranges[pair.first], column.ranges[pair.rival]);
        if allowed.over(second) == Met::Always {
            return true;
        }
        let Allowed::Ranges(ranges) = allowed else {
            return false;
        };
        let ([(low, high)], true) = (&**ranges, column.together) else {
            return false;
        };
        // Where it is known for the one it is for the other, and as far apart as at their lowest.
        !first.may_be_known()
            || !second.may_be_known()
            || second.lowest() >= first.lowest() && second.highest() <= *high
            || second.lowest() <= first.lowest() && second.lowest() >= *low
    }
}
