//! What a rule's tests tell apart: the stretches of a number on both sides of each boundary, known from unknown, met from not met.

use super::condition::{Allowed, LOWEST, Test};
use super::rule::RuleId;
use super::set::RuleSet;
use super::vocabulary::{Fact, FactId, Kind, UNKNOWN};

/// Two kinds of situations that one test of a rule tells apart.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Parting {
    /// The test's place among the rule's, outer ones first.
    pub test: usize,
    /// The fact it looks at.
    pub fact: FactId,
    /// What lies on the two sides.
    pub sides: Sides,
}

/// The two sides of a [`Parting`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Sides {
    /// Neighbouring stretches of a number, one of them let through: both ends included, in steps.
    Stretches {
        /// The lower stretch.
        below: (i64, i64),
        /// The stretch that follows it.
        from: (i64, i64),
    },
    /// The fact isn't known, or is.
    Known,
    /// The test of words, a flag or a set isn't met, or is.
    Met,
}

/// One of the two sides: the lower stretch, not known, not met; or the other.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Side {
    /// The lower stretch, not known, or not met.
    First,
    /// The upper stretch, known, or met.
    Second,
}

impl Parting {
    /// The side a value lies on, given whether it meets the test; none beyond the two stretches.
    #[must_use]
    pub fn side(&self, value: i64, met: bool) -> Option<Side> {
        let second = match self.sides {
            Sides::Met => met,
            Sides::Known => value != UNKNOWN,
            Sides::Stretches { below, from } => {
                let within = |(low, high): (i64, i64)| low <= value && value <= high;
                match (within(below), within(from)) {
                    (false, false) => return None,
                    (_, upper) => upper,
                }
            }
        };
        Some(if second { Side::Second } else { Side::First })
    }

    /// The value of a side nearest to the other, where there are numbers.
    #[must_use]
    pub fn nearest(&self, side: Side) -> Option<i64> {
        match (&self.sides, side) {
            (Sides::Stretches { below, .. }, Side::First) => Some(below.1),
            (Sides::Stretches { from, .. }, Side::Second) => Some(from.0),
            _ => None,
        }
    }
}

impl RuleSet {
    /// Everything that the tests of a rule tell apart, within the ranges of their facts. A boundary at the end of a fact's range
    /// tells nothing apart.
    #[must_use]
    pub fn partings(&self, rule: RuleId) -> Vec<Parting> {
        let tests = self.rule(rule).when.all_tests();
        let each = tests.into_iter().enumerate();
        each.flat_map(|(place, test)| partings(place, test, self.vocabulary.fact(test.fact)))
            .collect()
    }

    /// The words that meet a test, or don't, as rules write them; none where it isn't about words.
    #[must_use]
    pub fn words_of(&self, rule: RuleId, parting: &Parting, side: Side) -> Vec<&'static str> {
        let tests = self.rule(rule).when.all_tests();
        let Some(test) = tests.get(parting.test) else {
            return Vec::new();
        };
        let fact = self.vocabulary.fact(test.fact);
        let set = matches!(fact.kind, Kind::Set(_));
        let met = |place: usize| match set {
            true => test.allowed.contains(1 << place),
            false => test.allowed.contains(place as i64),
        };
        let words = fact.words().iter().enumerate();
        words
            .filter(|(place, _)| met(*place) == (side == Side::Second))
            .map(|(_, word)| *word)
            .collect()
    }
}

fn partings(place: usize, test: &Test, fact: &Fact) -> Vec<Parting> {
    let parting = |sides| Parting {
        test: place,
        fact: test.fact,
        sides,
    };
    let ranges = match &test.allowed {
        Allowed::Ranges(ranges) => ranges,
        // A set that may hold anything only has to be known.
        Allowed::Bits {
            has: 0,
            any: 0,
            none: 0,
        } => return vec![parting(Sides::Known)],
        Allowed::Bits { .. } => return vec![parting(Sides::Met)],
    };
    let (lowest, highest) = match fact.kind {
        Kind::Number {
            lowest, highest, ..
        } => (lowest, highest),
        Kind::Set(_) => (LOWEST, i64::MAX),
        Kind::Choice(_) | Kind::Flag => (0, fact.words().len() as i64 - 1),
    };
    let within: Vec<(i64, i64)> = ranges
        .iter()
        .map(|&(low, high)| (low.max(lowest), high.min(highest)))
        .filter(|(low, high)| low <= high)
        .collect();
    // Every known value or none: then it only matters whether it is known.
    if within.is_empty() || within == [(lowest, highest)] {
        return vec![parting(Sides::Known)];
    }
    if !matches!(fact.kind, Kind::Number { .. }) {
        return vec![parting(Sides::Met)];
    }
    let mut stretches = Vec::new();
    let mut next = lowest;
    for (low, high) in within {
        if next < low {
            stretches.push((next, low - 1));
        }
        stretches.push((low, high));
        next = high + 1;
    }
    if next <= highest {
        stretches.push((next, highest));
    }
    let pairs = stretches.windows(2).filter_map(|pair| match pair {
        &[below, from] => Some(parting(Sides::Stretches { below, from })),
        _ => None,
    });
    pairs.collect()
}
