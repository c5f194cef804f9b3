//! Curves: points or steps that change with a number, straight between knots and flat outside.

use super::interval::Interval;
use super::vocabulary::FactId;
use super::vocabulary::UNKNOWN;

/// The widest curve that is also kept as a table of all its values.
const WIDEST_TABLE: i64 = 4096;

/// A line through knots, flat outside them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Curve {
    along: FactId,
    /// Strictly increasing in the first.
    knots: Box<[(i64, i64)]>,
    /// The value at each step from the first knot to the last, if those are few. A look-up is faster than a division.
    table: Option<Box<[i32]>>,
}

impl Curve {
    /// A curve through at least two knots that strictly increase; none otherwise. Values must fit 32 bits.
    pub(super) fn new(along: FactId, knots: Vec<(i64, i64)>) -> Option<Curve> {
        let (first, last) = (*knots.first()?, *knots.last()?);
        if knots.len() < 2 || knots.windows(2).any(|pair| pair[0].0 >= pair[1].0) {
            return None;
        }
        let knots: Box<[_]> = knots.into();
        let table = if last.0 - first.0 < WIDEST_TABLE {
            (first.0..=last.0)
                .map(|at| i32::try_from(between(&knots, at)).ok())
                .collect()
        } else {
            None
        };
        Some(Curve {
            along,
            knots,
            table,
        })
    }

    /// The fact it runs along.
    pub(super) fn along(&self) -> FactId {
        self.along
    }

    /// Its knots.
    pub(super) fn knots(&self) -> &[(i64, i64)] {
        &self.knots
    }

    /// Its value there, rounded half away from zero; none at an unknown place.
    pub(super) fn value(&self, at: i64) -> Option<i64> {
        if at == UNKNOWN {
            return None;
        }
        match &self.table {
            Some(table) => {
                let last = self.knots[0].0 + table.len() as i64 - 1;
                let index = at.clamp(self.knots[0].0, last) - self.knots[0].0;
                Some(i64::from(table[index as usize]))
            }
            None => Some(between(&self.knots, at)),
        }
    }

    /// The least and the most that it gives over a range; 0 is among it where nobody may know. Rounding never turns a line
    /// round, so both lie at an end of the range or at a knot within.
    pub(super) fn bounds(&self, along: Interval) -> (i64, i64) {
        let ends = [along.lowest(), along.highest()];
        let ends = ends.into_iter().filter_map(|at| self.value(at));
        let within = self
            .knots
            .iter()
            .filter(|&&(at, _)| along.lowest() < at && at < along.highest())
            .map(|&(_, value)| value);
        let nothing = along.may_be_unknown().then_some(0);
        let all = ends.chain(within).chain(nothing);
        all.fold(None, |bounds: Option<(i64, i64)>, value| {
            let (least, most) = bounds.unwrap_or((value, value));
            Some((least.min(value), most.max(value)))
        })
        .unwrap_or((0, 0))
    }

    /// Adds its value along a column to the totals, only under the mask if there is one; nothing at unknown places.
    pub(super) fn add_to(&self, totals: &mut [i32], mask: Option<&[i32]>, column: &[i64]) {
        let places = totals.iter_mut().zip(column);
        match (&self.table, mask) {
            (Some(table), None) => {
                let look = self.look_up(table);
                places.for_each(|(total, &at)| *total += look(at));
            }
            (Some(table), Some(mask)) => {
                let look = self.look_up(table);
                let masked = places.zip(mask);
                masked.for_each(|((total, &at), bits)| *total += look(at) & bits);
            }
            (None, None) => places.for_each(|(total, &at)| *total += self.divide(at)),
            (None, Some(mask)) => {
                let masked = places.zip(mask).filter(|(_, bits)| **bits != 0);
                masked.for_each(|((total, &at), _)| *total += self.divide(at));
            }
        }
    }

    /// Its value by the table, 0 at an unknown place; without a branch.
    fn look_up<'t>(&self, table: &'t [i32]) -> impl Fn(i64) -> i32 + 't {
        let first = self.knots[0].0;
        let last = first + table.len() as i64 - 1;
        move |at| {
            let value = table[(at.clamp(first, last) - first) as usize];
            if at == UNKNOWN { 0 } else { value }
        }
    }

    /// Its value by division, 0 at an unknown place.
    fn divide(&self, at: i64) -> i32 {
        self.value(at).map_or(0, |value| value as i32)
    }
}

/// The value of the line through `knots` at a known place.
fn between(knots: &[(i64, i64)], at: i64) -> i64 {
    let next = knots.partition_point(|&(knot, _)| knot < at);
    let Some(&(right, right_value)) = knots.get(next) else {
        return knots.last().map_or(0, |&(_, value)| value);
    };
    if next == 0 || right == at {
        return right_value;
    }
    let (left, left_value) = knots[next - 1];
    let width = i128::from(right - left);
    let sum = i128::from(left_value) * i128::from(right - at)
        + i128::from(right_value) * i128::from(at - left);
    rounded(sum, width)
}

/// `sum / width`, rounded half away from zero; `width` is positive.
fn rounded(sum: i128, width: i128) -> i64 {
    let size = (2 * sum.abs() + width) / (2 * width);
    (if sum < 0 { -size } else { size }) as i64
}

/// The nearest multiple of `step`, half away from zero; `step` is positive.
pub(super) fn to_multiple(value: i64, step: i64) -> i64 {
    rounded(i128::from(value), i128::from(step)) * step
}
