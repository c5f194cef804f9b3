//! Limits for those who plan a ball: the numbers of the table, without a ball to judge.

use super::body::Body;
use super::date::Date;
use super::quantity::Quantity;
use super::row::{Limit, Row};
use super::situation::Situation;
use super::table::Standards;

/// The most that halves of a drilled ball may differ, in 0.01 oz.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StaticLimits {
    /// Top against bottom.
    pub top: i64,
    /// Right against left.
    pub side: i64,
    /// Finger against thumb.
    pub finger: i64,
    /// Only memory knows one of them; aim at half.
    pub from_memory: bool,
}

/// What a ball has to keep to be approved, as far as a catalog of core numbers needs it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ApprovalLimits {
    /// From this weight the limits are known to apply, in 0.01 lb.
    pub from_weight: i64,
    /// Lowest RG, in 0.001 in.
    pub rg_lowest: i64,
    /// Highest RG, in 0.001 in.
    pub rg_highest: i64,
    /// Highest total differential, in 0.001 in.
    pub differential_highest: i64,
}

impl Standards {
    /// The static-weight limits of a drilled ball of `weight` (0.01 lb, as used) under a body's rules on a day; `None` if none
    /// was read for such a ball, as for one with a balance hole when none is allowed.
    #[must_use]
    pub fn static_limits(
        &self,
        weight: i64,
        date: Date,
        body: Body,
        has_thumb: bool,
        balance_hole: bool,
    ) -> Option<StaticLimits> {
        let situation = Situation {
            approved: None,
            weight: Some(weight),
            thumb: Some(has_thumb),
            balance: Some(balance_hole),
            slow: None,
        };
        let most = |quantity| {
            let rows = self.rows(quantity, date, body);
            let row = only(&rows, &situation)?;
            match row.limit {
                Limit::Most(limit, _) => Some((limit, !row.strength.decides())),
                _ => None,
            }
        };
        let top = most(Quantity::Top)?;
        let side = most(Quantity::Side)?;
        let finger = most(Quantity::Finger)?;
        Some(StaticLimits {
            top: top.0,
            side: side.0,
            finger: finger.0,
            from_memory: top.1 || side.1 || finger.1,
        })
    }

    /// USBC's limits on core numbers for a ball approved on the last day the table knows; `None` if a table has none.
    #[must_use]
    pub fn approval_limits(&self) -> Option<ApprovalLimits> {
        let date = self.known_until();
        let holds = |row: &&Row| row.approved.has(date.number());
        let rows = |quantity| -> Vec<&Row> {
            let rows = self.rows(quantity, date, Body::Usbc).into_iter();
            rows.filter(holds).collect()
        };
        let (rg, differential) = (rows(Quantity::Rg), rows(Quantity::Differential));
        let most = |rows: &[&Row]| {
            rows.iter().find_map(|row| match row.limit {
                Limit::Most(limit, _) => Some(limit),
                _ => None,
            })
        };
        let least = rg.iter().find_map(|row| match row.limit {
            Limit::Least(limit, _) => Some(limit),
            _ => None,
        });
        let from_weight = rg.iter().chain(&differential).map(|row| row.weights.low);
        Some(ApprovalLimits {
            from_weight: from_weight.max()?,
            rg_lowest: least?,
            rg_highest: most(&rg)?,
            differential_highest: most(&differential)?,
        })
    }
}

/// The row that holds, if it is one and the same however the ball may be.
fn only<'a>(rows: &[&'a Row], situation: &Situation) -> Option<&'a Row> {
    let mut worlds = situation.worlds(rows).into_iter().map(|world| {
        let holds = |row: &&&Row| {
            let mut pairs = row.selectors().into_iter().zip(world);
            pairs.all(|(selector, number)| selector.has(number))
        };
        rows.iter().find(holds).copied()
    });
    let first = worlds.next()??;
    worlds.all(|row| row == Some(first)).then_some(first)
}
