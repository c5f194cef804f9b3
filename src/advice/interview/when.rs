//! When a question makes sense: what other answers must be like.

use crate::rules::Interval;

/// What a question wants of one other answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Wish {
    pub(super) answer: &'static str,
    pub(super) wanted: Wanted,
}

/// Which values are wanted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Wanted {
    /// One of these.
    OneOf(Vec<i64>),
    /// A set with any of these bits.
    HasAny(i64),
    /// Whatever it is, it is known.
    Known,
}

/// What can be said of a condition over a box of answers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Truth {
    Never,
    Maybe,
    Always,
}

impl Wanted {
    /// Whether an answer that may be any of these is as wanted.
    pub(super) fn truth(&self, of: Interval) -> Truth {
        if !of.may_be_known() {
            return Truth::Never;
        }
        let (lowest, highest) = (of.lowest(), of.highest());
        let (always, ever) = match self {
            Wanted::Known => (true, true),
            Wanted::OneOf(values) => {
                let among = |value: &i64| (lowest..=highest).contains(value);
                let inside = values.iter().filter(|value| among(value)).count();
                let width = highest.saturating_sub(lowest).saturating_add(1);
                let all = usize::try_from(width).is_ok_and(|width| width == inside);
                (all, inside > 0)
            }
            // The ends of a set are what is certainly in it and what may be.
            Wanted::HasAny(bits) => (lowest & bits != 0, highest & bits != 0),
        };
        match (ever, always && !of.may_be_unknown()) {
            (false, _) => Truth::Never,
            (true, false) => Truth::Maybe,
            (true, true) => Truth::Always,
        }
    }
}

/// Whether all of these hold.
pub(super) fn all(truths: impl IntoIterator<Item = Truth>) -> Truth {
    truths
        .into_iter()
        .fold(Truth::Always, |all, one| match (all, one) {
            (Truth::Never, _) | (_, Truth::Never) => Truth::Never,
            (Truth::Maybe, _) | (_, Truth::Maybe) => Truth::Maybe,
            _ => Truth::Always,
        })
}
