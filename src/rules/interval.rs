//! A value, or the range it may lie in: one expression gives both a column and its bounds.

use super::vocabulary::{Kind, UNKNOWN};

/// What a fact may be over a box of answers: any whole step from a lowest to a highest value, or not known, or either.
///
/// A point when there is just one value. For a set the two ends are bit masks: what is certainly in it, and what may be.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Interval {
    /// [`UNKNOWN`] where no value can be known.
    lowest: i64,
    highest: i64,
    /// Whether it may be that nobody knows.
    unknown: bool,
}

impl Interval {
    /// Nobody knows.
    pub const NOT_KNOWN: Interval = Interval {
        lowest: UNKNOWN,
        highest: UNKNOWN,
        unknown: true,
    };

    /// One value; [`UNKNOWN`] gives [`Interval::NOT_KNOWN`].
    #[must_use]
    pub fn point(value: i64) -> Self {
        Interval {
            lowest: value,
            highest: value,
            unknown: value == UNKNOWN,
        }
    }
    /// From one known value to another, in either order.
    #[must_use]
    pub fn between(a: i64, b: i64) -> Self {
        Interval {
            lowest: a.min(b),
            highest: a.max(b),
            unknown: false,
        }
    }
    /// All that a fact of this kind may be when it is known.
    #[must_use]
    pub fn all_of(kind: &Kind) -> Self {
        match *kind {
            Kind::Number {
                lowest, highest, ..
            } => Interval::between(lowest, highest),
            Kind::Choice(words) => Interval::between(0, words.len() as i64 - 1),
            Kind::Set(words) => Interval::between(0, (1 << words.len()) - 1),
            Kind::Flag => Interval::either(),
        }
    }
    /// The same, or not known.
    #[must_use]
    pub fn or_unknown(self) -> Self {
        Interval {
            unknown: true,
            ..self
        }
    }
    /// The same, but known; [`Interval::NOT_KNOWN`] stays as it is.
    #[must_use]
    pub fn if_known(self) -> Self {
        Interval {
            unknown: self.lowest == UNKNOWN,
            ..self
        }
    }
    /// The same where it is known, `instead` where it isn't.
    #[must_use]
    pub fn unless_unknown(self, instead: Interval) -> Self {
        match (self.may_be_known(), self.unknown) {
            (_, false) => self,
            (false, true) => instead,
            (true, true) => self.if_known().or(instead),
        }
    }
    /// Is it known? A flag.
    #[must_use]
    pub fn is_given(self) -> Self {
        Interval::between(i64::from(!self.unknown), i64::from(self.lowest != UNKNOWN))
    }
    /// One of two, by this flag; `no` also where nobody knows.
    #[must_use]
    pub fn choose(self, yes: Interval, no: Interval) -> Self {
        match (self.holds(1), self.holds(0) || self.unknown) {
            (true, true) => yes.or(no),
            (true, false) => yes,
            _ => no,
        }
    }
    /// A flag that is certainly so.
    #[must_use]
    pub fn flag(yes: bool) -> Self {
        Interval::point(i64::from(yes))
    }
    /// A flag that could be either.
    #[must_use]
    pub fn either() -> Self {
        Interval::between(0, 1)
    }
    /// True if it is certainly known.
    #[must_use]
    pub fn is_known(self) -> bool {
        !self.unknown
    }
    /// True if there is a value it may have.
    #[must_use]
    pub fn may_be_known(self) -> bool {
        self.lowest != UNKNOWN
    }
    /// True if it may be that nobody knows.
    #[must_use]
    pub fn may_be_unknown(self) -> bool {
        self.unknown
    }
    /// True if nothing is left open: one value, or certainly not known.
    #[must_use]
    pub fn is_point(self) -> bool {
        self.lowest == self.highest && (self.unknown == (self.lowest == UNKNOWN))
    }
    /// The smallest value, or [`UNKNOWN`].
    #[must_use]
    pub fn lowest(self) -> i64 {
        self.lowest
    }
    /// The largest value, or [`UNKNOWN`].
    #[must_use]
    pub fn highest(self) -> i64 {
        self.highest
    }
    /// The value, if there is just one; else [`UNKNOWN`].
    #[must_use]
    pub fn value(self) -> i64 {
        if self.is_point() {
            self.lowest
        } else {
            UNKNOWN
        }
    }
    /// True if the value, or [`UNKNOWN`], is among what it may be.
    #[must_use]
    pub fn holds(self, value: i64) -> bool {
        if value == UNKNOWN {
            return self.unknown;
        }
        self.may_be_known() && self.lowest <= value && value <= self.highest
    }

    /// What comes of two that must both be known.
    fn both(self, that: Interval, ends: impl Fn(Interval, Interval) -> (i64, i64)) -> Self {
        if !self.may_be_known() || !that.may_be_known() {
            return Interval::NOT_KNOWN;
        }
        let (lowest, highest) = ends(self, that);
        Interval {
            lowest,
            highest,
            unknown: self.unknown || that.unknown,
        }
    }

    /// This less that; not known where either isn't.
    #[must_use]
    pub fn minus(self, that: Interval) -> Self {
        self.both(that, |a, b| {
            (
                a.lowest.saturating_sub(b.highest),
                a.highest.saturating_sub(b.lowest),
            )
        })
    }
    /// This and that; not known where either isn't.
    #[must_use]
    pub fn plus(self, that: Interval) -> Self {
        self.both(that, |a, b| {
            (
                a.lowest.saturating_add(b.lowest),
                a.highest.saturating_add(b.highest),
            )
        })
    }
    /// Whichever of the two: all that either may be. Not for sets.
    #[must_use]
    pub fn or(self, that: Interval) -> Self {
        let unknown = self.unknown || that.unknown;
        let (lowest, highest) = match (self.may_be_known(), that.may_be_known()) {
            (true, true) => (self.lowest.min(that.lowest), self.highest.max(that.highest)),
            (true, false) => (self.lowest, self.highest),
            _ => (that.lowest, that.highest),
        };
        Interval {
            lowest,
            highest,
            unknown,
        }
    }
    /// Both of two flags; not known where either isn't.
    #[must_use]
    pub fn and(self, that: Interval) -> Self {
        self.both(that, |a, b| {
            (a.lowest.min(b.lowest), a.highest.min(b.highest))
        })
    }
    /// Either of two flags; not known where either isn't.
    #[must_use]
    pub fn or_flag(self, that: Interval) -> Self {
        self.both(that, |a, b| {
            (a.lowest.max(b.lowest), a.highest.max(b.highest))
        })
    }
    /// Are both the same value? A flag; not known where either isn't.
    #[must_use]
    pub fn equals(self, that: Interval) -> Self {
        self.minus(that).is(0)
    }
    /// The same function at both ends; right for any function that never falls.
    #[must_use]
    pub fn rising(self, f: impl Fn(i64) -> i64) -> Self {
        self.both(self, |a, _| (f(a.lowest), f(a.highest)))
    }
    /// Distance from zero.
    #[must_use]
    pub fn distance(self) -> Self {
        self.both(self, |all, _| {
            let (a, b) = (all.lowest.saturating_abs(), all.highest.saturating_abs());
            let least = if all.lowest <= 0 && all.highest >= 0 {
                0
            } else {
                a.min(b)
            };
            (least, a.max(b))
        })
    }
    /// Is this at least that? A flag; not known where either isn't.
    #[must_use]
    pub fn is_at_least(self, that: Interval) -> Self {
        self.both(that, |a, b| {
            (
                i64::from(a.lowest >= b.highest),
                i64::from(a.highest >= b.lowest),
            )
        })
    }
    /// Is this word in the set? A flag; not known where the set isn't.
    #[must_use]
    pub fn has(self, word: i64) -> Self {
        let among = |set: i64| i64::from((0..62).contains(&word) && set >> word & 1 == 1);
        self.both(self, |set, _| (among(set.lowest), among(set.highest)))
    }
    /// Is this just that value? A flag; not known where this isn't.
    #[must_use]
    pub fn is(self, value: i64) -> Self {
        self.both(self, |all, _| {
            let certain = all.lowest == value && all.highest == value;
            let possible = all.lowest <= value && value <= all.highest;
            (i64::from(certain), i64::from(possible))
        })
    }
}
