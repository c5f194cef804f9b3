//! What about a ball decides which row holds for it, and every way it may be as long as that isn't known.

use itertools::Itertools;

use super::body::Body;
use super::date::{Date, Period};
use super::facts::{BallFacts, Digit, HoleFacts, HoleKind};
use super::quantity::Quantity;
use super::row::{Limit, Row, Stretch};
use super::table::Standards;

/// What decides between rows; `None` where it isn't known.
#[derive(Clone, Copy, Debug)]
pub(super) struct Situation {
    pub(super) approved: Option<Period>,
    pub(super) weight: Option<i64>,
    pub(super) thumb: Option<bool>,
    /// Whether it has a balance hole, an empty thumb hole counted where the rules count it.
    pub(super) balance: Option<bool>,
    pub(super) slow: Option<bool>,
}

/// One way a ball may be: a number for each selector, in the order of [`Row::selectors`].
pub(super) type World = [i64; 5];

/// What to find out, in the same order.
const OPEN: [&str; 5] = [
    "Find out when the ball was approved.",
    "Weigh the ball as it is used.",
    "Say if it has a thumb hole.",
    "Say if it has a balance hole, and if the thumb is in its hole at delivery.",
    "Find out how fast it absorbs oil, and if its core counts as high-performance.",
];

impl Situation {
    pub(super) fn new(
        facts: &BallFacts,
        standards: &Standards,
        date: Date,
        body: Body,
    ) -> Situation {
        let holes = facts.holes.as_ref();
        let thumb = holes.map(|holes| thumb_hole(holes).is_some());
        Situation {
            approved: facts.approved,
            weight: facts.weight,
            thumb,
            balance: holes.and_then(|holes| has_balance_hole(holes, standards, date, body)),
            slow: is_slow(facts, standards, date, body),
        }
    }

    /// Every way the ball may be, as far as the rows tell ways apart.
    pub(super) fn worlds(&self, rows: &[&Row]) -> Vec<World> {
        let flag = |known: Option<bool>| match known {
            Some(is) => vec![i64::from(is)],
            None => vec![0, 1],
        };
        let approved = self.approved.map_or(Stretch::ALL, |period| {
            Stretch::days(Some(period.first()), Some(period.last()))
        });
        let weight = self.weight.map_or(Stretch::ALL, |weight| Stretch {
            low: weight,
            high: weight,
        });
        let next_day = |day| Date::from_number(day).map(|date| date.next().number());
        let next_weight = |weight: i64| weight.checked_add(1);
        let approved = marks(approved, rows.iter().map(|row| row.approved), next_day);
        let weights = marks(weight, rows.iter().map(|row| row.weights), next_weight);
        [
            approved,
            weights,
            flag(self.thumb),
            flag(self.balance),
            flag(self.slow),
        ]
        .into_iter()
        .multi_cartesian_product()
        .filter_map(|world| world.try_into().ok())
        .collect()
    }

    /// What to find out so that it is known which of the rows holds.
    pub(super) fn open(&self, rows: &[&Row]) -> Vec<&'static str> {
        let day = self
            .approved
            .is_some_and(|period| period.first() == period.last());
        let known = [
            day,
            self.weight.is_some(),
            self.thumb.is_some(),
            self.balance.is_some(),
            self.slow.is_some(),
        ];
        let matters = |at: usize| {
            let selects = |row: &&Row| row.selectors().get(at) != Some(&Stretch::ALL);
            rows.iter().any(selects)
        };
        let open = known.into_iter().zip(OPEN).enumerate();
        open.filter(|(at, (known, _))| !known && matters(*at))
            .map(|(_, (_, what))| what)
            .collect()
    }
}

/// One number for each part into which the bounds of rows cut a stretch.
fn marks(
    stretch: Stretch,
    rows: impl Iterator<Item = Stretch>,
    next: impl Fn(i64) -> Option<i64>,
) -> Vec<i64> {
    let cuts = rows.flat_map(|row| [Some(row.low), next(row.high)]);
    let inside = cuts.flatten().filter(|cut| stretch.has(*cut));
    std::iter::once(stretch.low)
        .chain(inside)
        .sorted()
        .dedup()
        .collect()
}

/// The holes that are not plugged.
pub(super) fn open_holes(holes: &[HoleFacts]) -> impl Iterator<Item = &HoleFacts> {
    holes.iter().filter(|hole| !hole.plugged)
}

fn thumb_hole(holes: &[HoleFacts]) -> Option<&HoleFacts> {
    open_holes(holes).find(|hole| hole.kind == HoleKind::Grip(Digit::Thumb))
}

/// How many holes count as balance holes, least and most.
pub(super) fn balance_holes(
    holes: &[HoleFacts],
    standards: &Standards,
    date: Date,
    body: Body,
) -> (i64, i64) {
    let declared = open_holes(holes).filter(|hole| hole.kind == HoleKind::Balance);
    let declared = declared.count() as i64;
    let Some(thumb) = thumb_hole(holes) else {
        return (declared, declared);
    };
    let rows = standards.rows(Quantity::ThumbAsBalance, date, body);
    let counts = match rows.first().map(|row| row.limit) {
        Some(Limit::Is(1)) => Some(true),
        Some(Limit::Unread) => None,
        _ => Some(false),
    };
    let (least, most) = match (counts, thumb.used) {
        (Some(false), _) | (_, Some(true)) => (0, 0),
        (Some(true), Some(false)) => (1, 1),
        _ => (0, 1),
    };
    (declared + least, declared + most)
}

fn has_balance_hole(
    holes: &[HoleFacts],
    standards: &Standards,
    date: Date,
    body: Body,
) -> Option<bool> {
    let (least, most) = balance_holes(holes, standards, date, body);
    ((least > 0) == (most > 0)).then_some(least > 0)
}

fn is_slow(facts: &BallFacts, standards: &Standards, date: Date, body: Body) -> Option<bool> {
    let row = standards.plain(Quantity::SlowAbsorption, date, body)?;
    let Limit::Most(limit, _) = row.limit else {
        return None;
    };
    let long = facts.absorption.map(|seconds| seconds > limit);
    match (long, facts.high_performance) {
        (Some(false), _) | (_, Some(false)) => Some(false),
        (Some(true), Some(true)) => Some(true),
        _ => None,
    }
}
