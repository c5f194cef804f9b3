//! The whole table: what is known until when, and which row holds for which ball.

use std::collections::BTreeMap;

use itertools::Itertools;

use super::body::Body;
use super::date::Date;
use super::quantity::Quantity;
use super::row::{Limit, Row};

/// The limits of the governing bodies, each with its days, source and strength.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Standards {
    known_until: Date,
    margins: Vec<Margin>,
    sources: BTreeMap<String, Source>,
    rows: Vec<Row>,
}

/// How far a scale or gauge may be off.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Margin {
    pub(super) quantities: Vec<Quantity>,
    pub(super) steps: i64,
}

/// Where a limit was read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Source {
    pub(super) title: String,
    pub(super) date: String,
}

impl Standards {
    pub(super) fn new(
        known_until: Date,
        margins: Vec<Margin>,
        sources: BTreeMap<String, Source>,
        rows: Vec<Row>,
    ) -> Standards {
        Standards {
            known_until,
            margins,
            sources,
            rows,
        }
    }

    /// The day of the newest rule in the table; what came later isn't known. The day to judge for if none is given.
    #[must_use]
    pub fn known_until(&self) -> Date {
        self.known_until
    }

    /// How far a scale may be off for a quantity; nothing if no margin is set.
    pub(super) fn margin(&self, quantity: Quantity) -> i64 {
        let margin = self
            .margins
            .iter()
            .find(|margin| margin.quantities.contains(&quantity));
        margin.map_or(0, |margin| margin.steps)
    }

    /// The rows of a quantity that a body had on a day. A body that follows another has that one's rows too, unless a row of
    /// its own speaks of the same balls.
    pub(super) fn rows(&self, quantity: Quantity, date: Date, body: Body) -> Vec<&Row> {
        let of = |body: Body| -> Vec<&Row> {
            let holds = |row: &&Row| {
                row.quantity == quantity
                    && row.bodies.contains(&body)
                    && row.days.has(date.number())
            };
            self.rows.iter().filter(holds).collect()
        };
        let own = of(body);
        match body.follows() {
            None => own,
            Some(other) => {
                let is_free = |row: &&Row| !own.iter().any(|mine| mine.rivals(row));
                let others: Vec<&Row> = of(other).into_iter().filter(is_free).collect();
                [own, others].concat()
            }
        }
    }

    /// The one limit of a quantity that does not depend on the ball.
    pub(super) fn plain(&self, quantity: Quantity, date: Date, body: Body) -> Option<&Row> {
        let rows = self.rows(quantity, date, body);
        rows.into_iter().find(|row| row.limit != Limit::Unread)
    }

    /// Title and date of every source of a row, and how sure it is.
    pub(super) fn clause(&self, row: &Row) -> String {
        let sources = row.source.iter().filter_map(|key| self.sources.get(key));
        let titles = sources.map(|source| format!("{} ({})", source.title, source.date));
        let strength = row.strength.words().to_owned();
        titles.chain([strength]).join("; ")
    }
}
