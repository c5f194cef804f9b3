//! A value, or the range it may lie in: one expression gives both a column and its bounds.

use crate::rules::UNKNOWN;

/// All whole steps from `lowest` to `highest`; a point when both are alike; or not known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Interval {
    lowest: i64,
    highest: i64,
}

impl Interval {
    /// Nobody knows.
    pub const NOT_KNOWN: Interval = Interval {
        lowest: UNKNOWN,
        highest: UNKNOWN,
    };

    /// One value; [`UNKNOWN`] gives [`Interval::NOT_KNOWN`].
    pub fn point(value: i64) -> Self {
        Interval {
            lowest: value,
            highest: value,
        }
    }
    /// From one value to another, in either order.
    pub fn between(a: i64, b: i64) -> Self {
        Interval {
            lowest: a.min(b),
            highest: a.max(b),
        }
    }
    /// A flag that is certainly so.
    pub fn flag(yes: bool) -> Self {
        Interval::point(i64::from(yes))
    }
    /// A flag that could be either.
    pub fn either() -> Self {
        Interval::between(0, 1)
    }
    /// False for [`Interval::NOT_KNOWN`].
    pub fn is_known(self) -> bool {
        self.lowest != UNKNOWN && self.highest != UNKNOWN
    }
    /// The smallest value, or [`UNKNOWN`].
    pub fn lowest(self) -> i64 {
        self.lowest
    }
    /// The largest value, or [`UNKNOWN`].
    pub fn highest(self) -> i64 {
        self.highest
    }
    /// The value, if there is just one; else [`UNKNOWN`].
    pub fn value(self) -> i64 {
        if self.lowest == self.highest {
            self.lowest
        } else {
            UNKNOWN
        }
    }
    /// This less that; not known if either isn't.
    pub fn minus(self, that: Interval) -> Self {
        if !self.is_known() || !that.is_known() {
            return Interval::NOT_KNOWN;
        }
        Interval {
            lowest: self.lowest.saturating_sub(that.highest),
            highest: self.highest.saturating_sub(that.lowest),
        }
    }
    /// This and that.
    pub fn plus(self, that: Interval) -> Self {
        if !self.is_known() || !that.is_known() {
            return Interval::NOT_KNOWN;
        }
        Interval {
            lowest: self.lowest.saturating_add(that.lowest),
            highest: self.highest.saturating_add(that.highest),
        }
    }
    /// The smallest range that holds both; not known if either isn't.
    pub(super) fn or(self, that: Interval) -> Self {
        if !self.is_known() || !that.is_known() {
            return Interval::NOT_KNOWN;
        }
        Interval {
            lowest: self.lowest.min(that.lowest),
            highest: self.highest.max(that.highest),
        }
    }
    /// Both of two flags; not known if either isn't.
    pub(super) fn and(self, that: Interval) -> Self {
        if !self.is_known() || !that.is_known() {
            return Interval::NOT_KNOWN;
        }
        Interval {
            lowest: self.lowest.min(that.lowest),
            highest: self.highest.min(that.highest),
        }
    }
    /// Are both the same value? A flag; not known if either isn't.
    pub(super) fn equals(self, that: Interval) -> Self {
        self.minus(that).is(0)
    }
    /// Distance from zero.
    pub fn distance(self) -> Self {
        if !self.is_known() {
            return self;
        }
        let (a, b) = (self.lowest.saturating_abs(), self.highest.saturating_abs());
        let least = if self.lowest <= 0 && self.highest >= 0 {
            0
        } else {
            a.min(b)
        };
        Interval {
            lowest: least,
            highest: a.max(b),
        }
    }
    /// The same function at both ends; right for any function that never falls.
    pub fn rising(self, f: impl Fn(i64) -> i64) -> Self {
        if !self.is_known() {
            return self;
        }
        Interval {
            lowest: f(self.lowest),
            highest: f(self.highest),
        }
    }
    /// Is this at least that? A flag; not known if either isn't.
    pub fn is_at_least(self, that: Interval) -> Self {
        if !self.is_known() || !that.is_known() {
            Interval::NOT_KNOWN
        } else if self.lowest >= that.highest {
            Interval::flag(true)
        } else if self.highest < that.lowest {
            Interval::flag(false)
        } else {
            Interval::either()
        }
    }
    /// Is this just that value? A flag; not known if this isn't.
    pub fn is(self, value: i64) -> Self {
        if !self.is_known() {
            Interval::NOT_KNOWN
        } else if self.lowest == value && self.highest == value {
            Interval::flag(true)
        } else if value < self.lowest || value > self.highest {
            Interval::flag(false)
        } else {
            Interval::either()
        }
    }
    /// True if the value lies inside.
    pub fn holds(self, value: i64) -> bool {
        self.lowest <= value && value <= self.highest
    }
}

impl Interval {
    /// Either yes or no where something is known, not known otherwise.
    pub(super) fn either_if(known: bool) -> Self {
        if known {
            Interval::either()
        } else {
            Interval::NOT_KNOWN
        }
    }
}

impl Interval {
    /// Either flag; not known if either isn't.
    pub(super) fn or_flag(self, that: Interval) -> Self {
        if !self.is_known() || !that.is_known() {
            return Interval::NOT_KNOWN;
        }
        Interval {
            lowest: self.lowest.max(that.lowest),
            highest: self.highest.max(that.highest),
        }
    }
}
