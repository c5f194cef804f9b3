//! One row of the table: what it limits, when and for which balls.

use super::body::Body;
use super::date::Date;
use super::quantity::Quantity;
use super::strength::Strength;

/// What a row allows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Limit {
    /// At most so many steps.
    Most(i64, Equal),
    /// At least so many steps.
    Least(i64, Equal),
    /// Exactly this: a flag.
    Is(i64),
    /// Looked for and not read.
    Unread,
    /// Read that there is none.
    Free,
    /// Nothing to judge, as another row decides.
    Moot,
}

/// What a value exactly at the limit does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Equal {
    Pass,
    Fail,
    Ask,
}

/// Which of the two ends a limit closes; a ball keeps one limit of each.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum End {
    Low,
    High,
}

impl Limit {
    /// The ends it speaks of.
    pub(super) fn ends(self) -> &'static [End] {
        match self {
            Limit::Least(..) => &[End::Low],
            Limit::Most(..) => &[End::High],
            Limit::Is(_) | Limit::Unread | Limit::Free | Limit::Moot => &[End::Low, End::High],
        }
    }
}

/// A stretch of whole numbers, both ends included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Stretch {
    pub(super) low: i64,
    pub(super) high: i64,
}

impl Stretch {
    pub(super) const ALL: Stretch = Stretch {
        low: i64::MIN,
        high: i64::MAX,
    };

    /// Days from one to another, open where they are not given.
    pub(super) fn days(from: Option<Date>, until: Option<Date>) -> Stretch {
        Stretch {
            low: from.map_or(i64::MIN, Date::number),
            high: until.map_or(i64::MAX, Date::number),
        }
    }

    pub(super) fn has(self, number: i64) -> bool {
        (self.low..=self.high).contains(&number)
    }

    pub(super) fn meets(self, other: Stretch) -> bool {
        self.low <= other.high && other.low <= self.high
    }
}

/// One row, for one quantity.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Row {
    pub(super) id: String,
    /// What tests cite the row by, such as `K2`; a few that belong together share one.
    pub(super) label: String,
    pub(super) quantity: Quantity,
    pub(super) bodies: Vec<Body>,
    /// Days of use it holds on.
    pub(super) days: Stretch,
    /// Days of approval of the balls it holds for.
    pub(super) approved: Stretch,
    /// Weights of the balls it holds for, in 0.01 lb.
    pub(super) weights: Stretch,
    /// Whether it is for balls with a thumb hole (1) or without (0); both if open.
    pub(super) thumb: Stretch,
    /// Whether it is for balls with a balance hole.
    pub(super) balance: Stretch,
    /// Whether it is for slowly absorbing balls with a high-performance core.
    pub(super) slow: Stretch,
    pub(super) limit: Limit,
    /// Whether breaking it only asks, as where an event may decide.
    pub(super) broken_asks: bool,
    pub(super) says: String,
    pub(super) source: Vec<String>,
    pub(super) strength: Strength,
    pub(super) note: Option<String>,
}

impl Row {
    /// What tells apart the balls that rows of one quantity, body and day hold for.
    pub(super) fn selectors(&self) -> [Stretch; 5] {
        [
            self.approved,
            self.weights,
            self.thumb,
            self.balance,
            self.slow,
        ]
    }

    /// Whether some ball of some body on some day falls under both rows.
    pub(super) fn overlaps(&self, other: &Row) -> bool {
        self.bodies.iter().any(|body| other.bodies.contains(body)) && self.rivals(other)
    }

    /// The same whatever the body.
    pub(super) fn rivals(&self, other: &Row) -> bool {
        self.quantity == other.quantity
            && self.days.meets(other.days)
            && self
                .limit
                .ends()
                .iter()
                .any(|end| other.limit.ends().contains(end))
            && self
                .selectors()
                .into_iter()
                .zip(other.selectors())
                .all(|(one, two)| one.meets(two))
    }
}
