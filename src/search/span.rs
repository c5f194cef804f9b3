//! What one answer may be: its values, halves, and the one nearest to where a search starts.

use super::decision::Shape;
use crate::rules::{Interval, UNKNOWN};

/// The same range, put right where its ends make no sense: a search never meets one that has no value.
pub(super) fn sound(shape: Shape, span: Interval) -> Interval {
    let (lowest, highest) = (span.lowest(), span.highest());
    if !span.may_be_known() || highest == UNKNOWN {
        return Interval::NOT_KNOWN;
    }
    let known = match shape {
        Shape::Bits => {
            let certain = lowest & i64::MAX;
            Interval::between(certain, certain | (highest & i64::MAX))
        }
        Shape::Steps | Shape::Words => Interval::between(lowest, highest),
    };
    if span.may_be_unknown() {
        known.or_unknown()
    } else {
        known
    }
}

/// The value that the answer may have which lies nearest to `value`.
///
/// Nothing known lies near to [`UNKNOWN`]: the lowest is taken then.
pub(super) fn nearest_to(shape: Shape, span: Interval, value: i64) -> i64 {
    if span.holds(UNKNOWN) && (value == UNKNOWN || !span.may_be_known()) {
        return UNKNOWN;
    }
    let (lowest, highest) = (span.lowest(), span.highest());
    match shape {
        _ if value == UNKNOWN => lowest,
        Shape::Bits => (value | lowest) & highest,
        Shape::Steps | Shape::Words => value.clamp(lowest, highest),
    }
}

/// The value that the answer may have which lies farthest from `value`.
pub(super) fn farthest_from(shape: Shape, span: Interval, value: i64) -> i64 {
    if !span.may_be_known() {
        return UNKNOWN;
    }
    let (lowest, highest) = (span.lowest(), span.highest());
    match shape {
        _ if value == UNKNOWN => highest,
        Shape::Bits => (!value | lowest) & highest,
        Shape::Steps | Shape::Words => {
            if value.abs_diff(lowest) > value.abs_diff(highest) {
                lowest
            } else {
                highest
            }
        }
    }
}

/// Two parts that make up the whole, the one nearer to `value` first; none of a point.
///
/// What is known is told from what isn't first. Then a set loses the lowest bit that is open; other answers part at the cut
/// nearest to their middle, or there.
pub(crate) fn halves(
    shape: Shape,
    span: Interval,
    cuts: &[i64],
    value: i64,
) -> Option<(Interval, Interval)> {
    if span.is_point() {
        return None;
    }
    let (lowest, highest) = (span.lowest(), span.highest());
    if span.may_be_unknown() {
        let known = Interval::between(lowest, highest);
        return Some(if value == UNKNOWN {
            (Interval::NOT_KNOWN, known)
        } else {
            (known, Interval::NOT_KNOWN)
        });
    }
    let (first, second, second_is_nearer) = match shape {
        Shape::Bits => {
            let open = highest & !lowest;
            let bit = open & open.wrapping_neg();
            let without = Interval::between(lowest, highest & !bit);
            let with = Interval::between(lowest | bit, highest);
            (without, with, value != UNKNOWN && value & bit != 0)
        }
        Shape::Steps | Shape::Words => {
            let place = part_at(lowest, highest, cuts);
            let below = Interval::between(lowest, place - 1);
            (below, Interval::between(place, highest), value >= place)
        }
    };
    Some(if second_is_nearer {
        (second, first)
    } else {
        (first, second)
    })
}

/// Where the upper half begins: above `lowest`, at most `highest`, which is above it.
pub(super) fn part_at(lowest: i64, highest: i64, cuts: &[i64]) -> i64 {
    let middle = middle(lowest, highest).saturating_add(1);
    let inside = cuts.iter().filter(|&&cut| lowest < cut && cut <= highest);
    inside
        .min_by_key(|&&cut| cut.abs_diff(middle))
        .copied()
        .unwrap_or(middle)
}

/// Halfway, rounded down.
pub(super) fn middle(a: i64, b: i64) -> i64 {
    (a & b) + ((a ^ b) >> 1)
}

/// The bits that are open, each alone, lowest first.
pub(super) fn bits(mask: i64) -> impl Iterator<Item = i64> {
    (0..63)
        .map(|bit| 1_i64 << bit)
        .filter(move |bit| mask & bit != 0)
}
