//! Facts that move alike for all candidates: how far apart a rule along one puts two of them.

use super::compile::{Plan, Points, Way};
use super::condition::{Allowed, Met};
use super::over::{Bounds, Over, Pair};
use super::vocabulary::UNKNOWN;

/// How far a gap may stray from the line between two places, in tenths of a point: four roundings of a half.
const ROUNDING: i64 = 2;

/// A rule of one way whose only open fact of candidates moves alike for all.
struct Moving<'p> {
    plan: &'p Plan<'p>,
    way: &'p Way<'p>,
    slot: usize,
}

impl Over<'_, '_> {
    /// What a rule gives the one more than the other while what it looks at moves alike for both. None of other rules.
    pub(super) fn gap_moving(&self, plan: &Plan<'_>, pair: Pair) -> Option<Bounds> {
        let moving = self.moving(plan)?;
        let column = self.column(moving.slot);
        let (first, rival) = (column.ranges[pair.first], column.ranges[pair.rival]);
        let gap = |one: i64, other: i64| {
            self.points_at(&moving, pair.first, one) - self.points_at(&moving, pair.rival, other)
        };
        let mut gaps: Vec<i64> = Vec::new();
        if self.gates[moving.way.number] == Met::Sometimes {
            gaps.push(0);
        }
        if first.may_be_unknown() {
            gaps.push(gap(UNKNOWN, UNKNOWN));
        }
        let mut stray = 0;
        if first.may_be_known() {
            let width = first.highest() - first.lowest();
            let mut places = vec![0, width];
            for range in [first, rival] {
                moving.places(|value| {
                    places.extend(value.checked_sub(range.lowest()));
                });
            }
            places.retain(|place| (0..=width).contains(place));
            places.sort_unstable();
            places.dedup();
            if matches!(moving.plan.points, Points::Late(..))
                && places.windows(2).any(|two| two[1] - two[0] > 1)
            {
                stray = ROUNDING;
            }
            let at = |place: &i64| gap(first.lowest() + place, rival.lowest() + place);
            gaps.extend(places.iter().map(at));
        }
        let (least, most) = (*gaps.iter().min()?, *gaps.iter().max()?);
        Some((least - stray, most + stray))
    }

    /// The rule, if it is one along a fact that moves alike.
    fn moving<'p>(&self, plan: &'p Plan<'p>) -> Option<Moving<'p>> {
        let [way] = plan.ways.as_slice() else {
            return None;
        };
        if let Points::Asked(slot, _) = plan.points
            && !self.scalars[slot].is_point()
        {
            return None;
        }
        let along = match plan.points {
            Points::Late(slot, _) => Some(slot),
            _ => None,
        };
        let looked_at = way.late.iter().map(|(slot, _)| *slot).chain(along);
        let mut open = looked_at.filter(|&slot| !self.column(slot).decided);
        let slot = open.next()?;
        let alone = open.all(|other| other == slot);
        (alone && self.column(slot).together).then_some(Moving { plan, way, slot })
    }

    /// What the rule gives a candidate while its gate is open and the fact that moves has this value.
    fn points_at(&self, moving: &Moving<'_>, candidate: usize, value: i64) -> i64 {
        let at = |slot: usize| match slot == moving.slot {
            true => value,
            false => self.column(slot).ranges[candidate].value(),
        };
        let masked = moving.way.mask.as_ref();
        let late = |(slot, allowed): &(usize, &Allowed)| allowed.contains(at(*slot));
        if masked.is_some_and(|mask| mask[candidate] == 0) || !moving.way.late.iter().all(late) {
            return 0;
        }
        match &moving.plan.points {
            Points::Number(number) => i64::from(*number),
            Points::Column(column) => i64::from(column[candidate]),
            Points::Asked(slot, curve) => curve.value(self.scalars[*slot].value()).unwrap_or(0),
            Points::Late(slot, curve) => curve.value(at(*slot)).unwrap_or(0),
        }
    }
}

impl Moving<'_> {
    /// Every value of the fact at which the rule begins or ends to hold, or its line bends.
    fn places(&self, mut note: impl FnMut(i64)) {
        for (slot, allowed) in &self.way.late {
            if let (true, Allowed::Ranges(ranges)) = (*slot == self.slot, allowed) {
                for &(low, high) in ranges {
                    let ends = [low.saturating_sub(1), low, high, high.saturating_add(1)];
                    ends.into_iter().for_each(&mut note);
                }
            }
        }
        if let Points::Late(slot, curve) = &self.plan.points
            && *slot == self.slot
        {
            curve.knots().iter().for_each(|&(at, _)| note(at));
        }
    }
}
