//! What one answer may change to, without where it stands: the values on one side, some words, or single bits.

use super::decision::Shape;
use super::span::{bits, part_at};
use crate::rules::Interval;

/// A whole range, as a distance.
const WHOLE: u128 = 1_000_000_000;

/// Values that an answer may change to.
#[derive(Clone, Copy, Debug)]
pub(super) struct Arm {
    answer: usize,
    start: i64,
    values: Values,
}

#[derive(Clone, Copy, Debug)]
enum Values {
    /// From one value to another on one side of the start; the range they are a part of.
    Steps { from: i64, to: i64, whole: u64 },
    /// From one word to another.
    Words { from: i64, to: i64 },
    /// Each of these bits alone, put in or taken out.
    Bits(i64),
}

impl Arm {
    /// From one value to another, on one side of `start` for steps, as parts of a range of the answer.
    pub(super) fn row(
        answer: usize,
        shape: Shape,
        start: i64,
        (from, to): (i64, i64),
        range: Interval,
    ) -> Self {
        let whole = range.highest().abs_diff(range.lowest());
        let values = match shape {
            Shape::Steps => Values::Steps { from, to, whole },
            Shape::Words | Shape::Bits => Values::Words { from, to },
        };
        Arm {
            answer,
            start,
            values,
        }
    }

    /// Each of these bits alone, of which there must be one.
    pub(super) fn bits(answer: usize, start: i64, bits: i64) -> Self {
        let values = Values::Bits(bits);
        Arm {
            answer,
            start,
            values,
        }
    }

    pub(super) fn answer(&self) -> usize {
        self.answer
    }

    /// A range that holds all of them.
    pub(super) fn span(&self) -> Interval {
        match self.values {
            Values::Steps { from, to, .. } | Values::Words { from, to } => {
                Interval::between(from, to)
            }
            Values::Bits(bits) if is_single(bits) => Interval::point(self.start ^ bits),
            Values::Bits(bits) => Interval::between(self.start & !bits, self.start | bits),
        }
    }

    /// A range that holds all of them and what another holds that holds the start.
    pub(super) fn reach(&self, other: Interval) -> Interval {
        match self.values {
            Values::Steps { from, to, .. } | Values::Words { from, to } => Interval::between(
                other.lowest().min(from).min(to),
                other.highest().max(from).max(to),
            ),
            Values::Bits(bits) => Interval::between(self.start & !bits, self.start | bits),
        }
    }

    /// The value, if there is only one.
    pub(super) fn only(&self) -> Option<i64> {
        match self.values {
            Values::Steps { from, to, .. } | Values::Words { from, to } => {
                (from == to).then_some(from)
            }
            Values::Bits(bits) => is_single(bits).then_some(self.start ^ bits),
        }
    }

    /// The lowest value.
    pub(super) fn lowest(&self) -> i64 {
        match self.values {
            Values::Steps { from, to, .. } | Values::Words { from, to } => from.min(to),
            Values::Bits(open) => bits(open)
                .map(|bit| self.start ^ bit)
                .min()
                .unwrap_or(self.start),
        }
    }

    /// The value farthest from the start, or one of them.
    pub(super) fn far(&self) -> i64 {
        match self.values {
            Values::Steps { from, to, .. } => {
                if self.start.abs_diff(from) > self.start.abs_diff(to) {
                    from
                } else {
                    to
                }
            }
            Values::Words { to, .. } => to,
            Values::Bits(bits) => self.start ^ (1_i64 << (63 - bits.leading_zeros())),
        }
    }

    /// How far a value lies from the start, in billionths of the whole range, rounded down; words and bits lie a whole range away.
    pub(super) fn distance(&self, value: i64) -> u128 {
        match self.values {
            Values::Steps { whole, .. } if whole > 0 => {
                u128::from(self.start.abs_diff(value)) * WHOLE / u128::from(whole)
            }
            _ => WHOLE,
        }
    }

    /// The least distance of a value from the start.
    pub(super) fn least_distance(&self) -> u128 {
        match self.values {
            Values::Steps { from, to, .. } => self.distance(from).min(self.distance(to)),
            Values::Words { .. } | Values::Bits(_) => WHOLE,
        }
    }

    /// How much is open yet, as a distance.
    pub(super) fn open(&self) -> u128 {
        match self.values {
            Values::Steps { from, to, .. } => self.distance(from).abs_diff(self.distance(to)),
            Values::Words { .. } | Values::Bits(_) => WHOLE,
        }
    }

    /// Two parts that make up the whole; none of a single value.
    pub(super) fn parts(&self, cuts: &[i64]) -> Option<[Arm; 2]> {
        let with = |values| Arm { values, ..*self };
        match self.values {
            _ if self.only().is_some() => None,
            Values::Steps { from, to, whole } => {
                let (from, to) = (from.min(to), from.max(to));
                let place = part_at(from, to, cuts);
                let below = (from, place - 1);
                Some([below, (place, to)].map(|(from, to)| with(Values::Steps { from, to, whole })))
            }
            Values::Words { from, to } => {
                let place = part_at(from, to, cuts);
                let below = (from, place - 1);
                Some([below, (place, to)].map(|(from, to)| with(Values::Words { from, to })))
            }
            Values::Bits(open) => {
                let half = open.count_ones() / 2;
                let low = bits(open).take(half as usize).fold(0, |low, bit| low | bit);
                Some([low, open & !low].map(|bits| with(Values::Bits(bits))))
            }
        }
    }
}

fn is_single(bits: i64) -> bool {
    bits.count_ones() == 1
}
