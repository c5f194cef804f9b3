//! Conditions: what a rule asks of the facts.
//!
//! Matchers become unions of whole-number intervals, or bit masks for sets. [`UNKNOWN`] is below every interval, so it
//! meets nothing but `known: false`.

use super::interval::Interval;
use super::vocabulary::FactId;
use super::vocabulary::UNKNOWN;

/// The lowest value that is known.
pub(super) const LOWEST: i64 = UNKNOWN + 1;

/// What values a test lets through.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Allowed {
    /// Values in any of these intervals, both ends included; sorted, apart, never empty.
    Ranges(Box<[(i64, i64)]>),
    /// Sets with all of `has`, any of `any` (0: no matter) and none of `none`.
    Bits { has: i64, any: i64, none: i64 },
}

impl Allowed {
    /// The lowest value and how far the highest lies beyond it, if the values are one interval.
    pub(super) fn single_range(&self) -> Option<(i64, u64)> {
        match self {
            Allowed::Ranges(ranges) => match **ranges {
                [(low, high)] => Some((low, high.wrapping_sub(low) as u64)),
                _ => None,
            },
            Allowed::Bits { .. } => None,
        }
    }

    /// Whether all, some or none of what a fact may be is let through.
    pub(super) fn over(&self, values: Interval) -> Met {
        if values.is_point() {
            let met = self.contains(values.lowest());
            return Met::of(met, met);
        }
        let unknown = values.may_be_unknown().then(|| self.contains(UNKNOWN));
        if !values.may_be_known() {
            return Met::of(unknown == Some(true), unknown == Some(true));
        }
        let known = self.over_known(values.lowest(), values.highest());
        let always = known == Met::Always && unknown != Some(false);
        Met::of(always, known != Met::Never || unknown == Some(true))
    }

    /// The same for the known values from one to another, or for the sets between two.
    fn over_known(&self, lowest: i64, highest: i64) -> Met {
        match self {
            Allowed::Ranges(ranges) => {
                let all = ranges
                    .iter()
                    .any(|&(low, high)| low <= lowest && highest <= high);
                let any = ranges
                    .iter()
                    .any(|&(low, high)| low <= highest && lowest <= high);
                Met::of(all, any)
            }
            Allowed::Bits { has, any, none } => {
                let always =
                    lowest & has == *has && (*any == 0 || lowest & any != 0) && highest & none == 0;
                // The largest set that has none of `none` meets the rest if any set does.
                let largest = highest & !none;
                let ever = lowest & none == 0
                    && largest & has == *has
                    && (*any == 0 || largest & any != 0);
                Met::of(always, ever)
            }
        }
    }

    /// Whether this value is let through.
    pub(super) fn contains(&self, value: i64) -> bool {
        match self {
            Allowed::Ranges(ranges) => ranges
                .iter()
                .any(|&(low, high)| low <= value && value <= high),
            Allowed::Bits { has, any, none } => {
                value != UNKNOWN
                    && value & has == *has
                    && (*any == 0 || value & any != 0)
                    && value & none == 0
            }
        }
    }
}

/// How far something is met over a box; the least of some tests is what all of them come to, the greatest what any does.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Met {
    Never,
    Sometimes,
    Always,
}

impl Met {
    fn of(always: bool, ever: bool) -> Met {
        match (always, ever) {
            (true, _) => Met::Always,
            (false, true) => Met::Sometimes,
            (false, false) => Met::Never,
        }
    }
}

/// A fact and the values it may have.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Test {
    pub(super) fact: FactId,
    pub(super) allowed: Allowed,
}

/// All of the tests, and any of the alternatives if there are some.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Condition {
    pub(super) tests: Vec<Test>,
    pub(super) any_of: Vec<Condition>,
}

impl Condition {
    /// Whether it holds, given the value of each fact.
    pub(super) fn holds(&self, value: &dyn Fn(FactId) -> i64) -> bool {
        self.tests
            .iter()
            .all(|test| test.allowed.contains(value(test.fact)))
            && (self.any_of.is_empty() || self.any_of.iter().any(|one| one.holds(value)))
    }

    /// The same as a list of ways it can hold, each a list of tests that must all pass. There are as many ways as there
    /// are innermost alternatives.
    pub(super) fn ways(&self) -> Vec<Vec<&Test>> {
        let mut ways = Vec::new();
        self.collect_ways(&mut Vec::new(), &mut ways);
        ways
    }

    fn collect_ways<'c>(&'c self, path: &mut Vec<&'c Test>, ways: &mut Vec<Vec<&'c Test>>) {
        let length = path.len();
        path.extend(&self.tests);
        if self.any_of.is_empty() {
            ways.push(path.clone());
        }
        for one in &self.any_of {
            one.collect_ways(path, ways);
        }
        path.truncate(length);
    }

    /// Every test, outer ones first.
    pub(super) fn all_tests(&self) -> Vec<&Test> {
        let inner = self.any_of.iter().flat_map(Condition::all_tests);
        self.tests.iter().chain(inner).collect()
    }
}

/// A union of intervals as it is put together from matchers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Intervals(Vec<(i64, i64)>);

impl Intervals {
    /// Every known value.
    pub(super) fn known() -> Intervals {
        Intervals(vec![(LOWEST, i64::MAX)])
    }

    /// Only the unknown value.
    pub(super) fn unknown() -> Intervals {
        Intervals(vec![(UNKNOWN, UNKNOWN)])
    }

    /// From `low` to `high`, both included.
    pub(super) fn between(low: i64, high: i64) -> Intervals {
        Intervals(if low <= high {
            vec![(low, high)]
        } else {
            Vec::new()
        })
    }

    /// Exactly these values.
    pub(super) fn of(values: &[i64]) -> Intervals {
        let mut values = values.to_vec();
        values.sort_unstable();
        let mut intervals: Vec<(i64, i64)> = Vec::new();
        for value in values {
            match intervals.last_mut() {
                Some((_, high)) if value <= high.saturating_add(1) => *high = value,
                _ => intervals.push((value, value)),
            }
        }
        Intervals(intervals)
    }

    /// The known values outside.
    pub(super) fn complement(&self) -> Intervals {
        let mut outside = Vec::new();
        let mut from = Some(LOWEST);
        for &(low, high) in &self.0 {
            if let Some(start) = from
                && low > start
            {
                outside.push((start, low - 1));
            }
            from = high.checked_add(1).map(|next| next.max(LOWEST));
        }
        if let Some(start) = from {
            outside.push((start, i64::MAX));
        }
        Intervals(outside)
    }

    /// The values in both.
    pub(super) fn meet(&self, other: &Intervals) -> Intervals {
        let mut both = Vec::new();
        for &(low, high) in &self.0 {
            for &(other_low, other_high) in &other.0 {
                let (low, high) = (low.max(other_low), high.min(other_high));
                if low <= high {
                    both.push((low, high));
                }
            }
        }
        Intervals(both)
    }

    /// Whether no value is left.
    pub(super) fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// As the values a test lets through.
    pub(super) fn allowed(self) -> Allowed {
        Allowed::Ranges(self.0.into())
    }

    /// The intervals of a test that has some.
    pub(super) fn from_allowed(allowed: &Allowed) -> Option<Intervals> {
        match allowed {
            Allowed::Ranges(ranges) => Some(Intervals(ranges.to_vec())),
            Allowed::Bits { .. } => None,
        }
    }

    /// The intervals in order.
    pub(super) fn iter(&self) -> impl Iterator<Item = (i64, i64)> + '_ {
        self.0.iter().copied()
    }
}
