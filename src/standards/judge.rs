//! Holds a ball against every limit of a body on a day.

use itertools::Itertools;

use super::body::Body;
use super::date::Date;
use super::facts::{BallFacts, CoverKind};
use super::finding::{Finding, Verdict};
use super::quantity::{Missing, Quantity};
use super::row::{Equal, Limit, Row};
use super::situation::{Situation, World};
use super::subject::{Subject, subjects};
use super::table::Standards;
use super::unit::Unit;

impl Standards {
    /// Holds a ball against every limit that a body had on a day.
    ///
    /// Findings come in a fixed order, whatever the order of holes' numbers. A limit that no published text settles is
    /// `ask`, never `pass`; so is one that needs a number nobody gave. What the body measures at approval is judged only if it
    /// is stated. A value nearer to the limit than the table's margin keeps its verdict, and [`Finding::is_close`] is true.
    #[must_use]
    pub fn judge(&self, facts: &BallFacts, date: Date, body: Body) -> Vec<Finding> {
        let situation = Situation::new(facts, self, date, body);
        let judge = Judge {
            standards: self,
            facts,
            situation,
            date,
            body,
        };
        let all = Quantity::ALL.iter().copied();
        all.filter(|quantity| !quantity.is_reference())
            .flat_map(|quantity| judge.quantity(quantity))
            .collect()
    }
}

struct Judge<'a> {
    standards: &'a Standards,
    facts: &'a BallFacts,
    situation: Situation,
    date: Date,
    body: Body,
}

/// What a row says of a value.
#[derive(Clone, Debug)]
struct Outcome<'a> {
    verdict: Verdict,
    row: Option<&'a Row>,
    /// Steps inside the limit; less than nothing is outside.
    inside: Option<i64>,
    says: String,
}

impl<'a> Judge<'a> {
    fn quantity(&self, quantity: Quantity) -> Vec<Finding> {
        let question = (self.standards, self.date, self.body);
        let subjects = subjects(quantity, self.facts, &self.situation, question);
        let rows = self.standards.rows(quantity, self.date, self.body);
        if rows.is_empty() {
            let stated = subjects.into_iter().find(|subject| subject.value.is_some());
            let unread = stated.map(|subject| {
                let subject = Subject {
                    about: quantity.about().to_owned(),
                    ..subject
                };
                self.finding(quantity, &subject, self.unread())
            });
            return unread.into_iter().collect();
        }
        if rows.iter().all(|row| row.limit == Limit::Moot) {
            return Vec::new();
        }
        let only_asks = rows.iter().all(|row| row.broken_asks);
        let is_free = rows.iter().all(|row| row.limit == Limit::Free);
        let mut findings = Vec::new();
        for subject in &subjects {
            let outcome = match (subject.value, quantity.missing()) {
                (Some(value), _) => self.outcome(quantity, value, &rows),
                (None, Missing::Ask(measure)) if !only_asks && !is_free => Outcome {
                    verdict: Verdict::Ask,
                    row: None,
                    inside: None,
                    says: measure.to_owned(),
                },
                _ => continue,
            };
            findings.push(self.finding(quantity, subject, outcome));
        }
        findings
    }

    fn outcome(&self, quantity: Quantity, value: (i64, i64), rows: &[&'a Row]) -> Outcome<'a> {
        let outcome = self.every_way(quantity, value, rows);
        if quantity == Quantity::UnusedHoles && outcome.verdict != Verdict::Pass {
            return self.house_ball(outcome);
        }
        outcome
    }

    /// What the rows say in every way the ball may be. If the ways don't agree, what to find out.
    fn every_way(
        &self,
        quantity: Quantity,
        (least, most): (i64, i64),
        rows: &[&'a Row],
    ) -> Outcome<'a> {
        let worlds = self.situation.worlds(rows);
        let outcomes: Vec<Outcome> = worlds
            .iter()
            .flat_map(|world| [least, most].map(|value| self.one_way(world, value, rows)))
            .collect();
        let same = |one: &Outcome, other: &Outcome| {
            let row = |outcome: &Outcome| outcome.row.map(|row| row.id.clone());
            // Two questions are one only if they are the same question.
            one.verdict == other.verdict && (one.verdict != Verdict::Ask || row(one) == row(other))
        };
        if outcomes
            .iter()
            .tuple_windows()
            .all(|(one, other)| same(one, other))
        {
            let nearest = outcomes
                .into_iter()
                .min_by_key(|outcome| outcome.inside.unwrap_or(i64::MAX));
            return nearest.unwrap_or_else(|| self.unread());
        }
        let mut open = self.situation.open(rows);
        if least != most
            && let Missing::Ask(measure) = quantity.missing()
        {
            open.push(measure);
        }
        let mut says = open.join(" ");
        says.push_str(" The limit depends on it.");
        Outcome {
            verdict: Verdict::Ask,
            row: None,
            inside: None,
            says,
        }
    }

    /// The worst of what the rows say that hold for one way the ball may be: at most one below and one above.
    fn one_way(&self, world: &World, value: i64, rows: &[&'a Row]) -> Outcome<'a> {
        let holds = |row: &&&Row| {
            let mut pairs = row.selectors().into_iter().zip(world);
            pairs.all(|(selector, number)| selector.has(*number))
        };
        let outcomes = rows.iter().filter(holds).map(|row| check(row, value));
        let worst = outcomes.min_by_key(|outcome| {
            let rank = match outcome.verdict {
                Verdict::Fail => 0,
                Verdict::Ask => 1,
                Verdict::Pass => 2,
            };
            (rank, outcome.inside.unwrap_or(i64::MAX))
        });
        worst.unwrap_or_else(|| self.unread())
    }

    /// A ball of the centre may keep holes that nobody uses, if every condition holds.
    fn house_ball(&self, broken: Outcome<'a>) -> Outcome<'a> {
        let facts = self.facts;
        if facts.house_supplied != Some(true) {
            return broken;
        }
        let row = self
            .standards
            .plain(Quantity::HouseDifferential, self.date, self.body);
        let differential = match (row, facts.differential) {
            (Some(row), Some(value)) => Some(check(row, value).verdict == Verdict::Pass),
            _ => None,
        };
        let conditions = [
            facts.cover.map(|cover| cover != CoverKind::Reactive),
            differential,
            facts.house_fitted.map(|fitted| !fitted),
            facts.house_left_behind.map(|left| !left),
        ];
        if conditions.contains(&Some(false)) {
            return broken;
        }
        let all = row.is_some() && conditions.iter().all(Option::is_some);
        Outcome {
            verdict: if all { Verdict::Pass } else { Verdict::Ask },
            row: row.or(broken.row),
            inside: None,
            says: match row {
                Some(row) => row.says.clone(),
                None => self.unread().says,
            },
        }
    }

    fn unread(&self) -> Outcome<'a> {
        let says = format!(
            "No limit of {} for such a ball on {} was read. Ask the governing body.",
            self.body.name(),
            self.date
        );
        Outcome {
            verdict: Verdict::Ask,
            row: None,
            inside: None,
            says,
        }
    }

    fn finding(&self, quantity: Quantity, subject: &Subject, outcome: Outcome<'_>) -> Finding {
        let unit = quantity.unit();
        let inside = outcome.inside.filter(|_| unit.has_distance());
        let margin = self.standards.margin(quantity);
        let close = inside.is_some_and(|steps| steps.unsigned_abs() < margin.unsigned_abs());
        let value = subject.value.filter(|(least, most)| least == most);
        let mut says = match value {
            Some((value, _)) if inside.is_some() => {
                let is = if unit.is_count() { "Found:" } else { "It is" };
                format!("{is} {}. {}", unit.write(value), outcome.says)
            }
            _ => outcome.says,
        };
        if close {
            let margin = unit.write(margin);
            says.push_str(&format!(
                " It lies within {margin} of the limit; scales differ, so weigh it again."
            ));
        }
        Finding {
            id: quantity.word().to_owned(),
            row: outcome.row.map(|row| row.id.clone()),
            verdict: outcome.verdict,
            about: subject.about.clone(),
            says,
            clause: match outcome.row {
                Some(row) => self.standards.clause(row),
                None => self.body.name().to_owned(),
            },
            strength: outcome.row.map(|row| row.strength),
            distance: inside.map(|steps| {
                if let Some((row, limit)) = outcome.row.and_then(aimed_at_half) {
                    // What is inside of the limit is the limit less the value.
                    let value = limit.saturating_sub(steps);
                    return from_half(row.quantity.unit(), limit, value);
                }
                let size = unit.write(steps.saturating_abs());
                let is_most = outcome
                    .row
                    .is_some_and(|row| matches!(row.limit, Limit::Most(..)));
                match (steps, unit.is_count(), is_most) {
                    (0, ..) => "at the limit".to_owned(),
                    (1.., false, _) => format!("{size} inside"),
                    (_, false, _) => format!("{size} outside"),
                    (1.., true, _) => format!("{size} to spare"),
                    (_, true, true) => format!("{size} too many"),
                    (_, true, false) => format!("{size} too few"),
                }
            }),
            close,
        }
    }
}

/// A limit that only memory knows: its half is aimed at.
fn aimed_at_half(row: &Row) -> Option<(&Row, i64)> {
    match row.limit {
        Limit::Most(limit, _) if !row.strength.decides() => Some((row, limit)),
        _ => None,
    }
}

/// How far a value lies from half of a limit.
fn from_half(unit: Unit, limit: i64, value: i64) -> String {
    let half = unit.write_half(limit);
    // Counted in halves of a step, as the half may lie between two.
    let over = value.saturating_mul(2).saturating_sub(limit);
    let size = unit.write_half(over.saturating_abs());
    match over.signum() {
        1 => format!("{size} over the half, {half}, that is aimed at"),
        -1 => format!("{size} inside the half, {half}, that is aimed at"),
        _ => format!("at the half, {half}, that is aimed at"),
    }
}

/// What one row says of one value.
fn check(row: &Row, value: i64) -> Outcome<'_> {
    let at = |inside: i64, equal: Equal| match (inside, equal) {
        (1.., _) | (0, Equal::Pass) => Verdict::Pass,
        (0, Equal::Ask) => Verdict::Ask,
        _ => Verdict::Fail,
    };
    let (verdict, inside) = match row.limit {
        Limit::Most(limit, equal) => {
            let inside = limit.saturating_sub(value);
            (at(inside, equal), Some(inside))
        }
        Limit::Least(limit, equal) => {
            let inside = value.saturating_sub(limit);
            (at(inside, equal), Some(inside))
        }
        Limit::Is(wanted) if wanted == value => (Verdict::Pass, None),
        Limit::Is(_) => (Verdict::Fail, None),
        Limit::Unread => (Verdict::Ask, None),
        Limit::Free | Limit::Moot => (Verdict::Pass, None),
    };
    let verdict = match verdict {
        _ if !row.strength.decides() => Verdict::Ask,
        Verdict::Fail if row.broken_asks => Verdict::Ask,
        verdict => verdict,
    };
    let mut says = row.says.clone();
    let note = row.note.as_deref().filter(|_| verdict == Verdict::Ask);
    if let Some(note) = note {
        says = format!("{says} {note}");
    }
    if let Some((_, limit)) = aimed_at_half(row) {
        let half = row.quantity.unit().write_half(limit);
        says.push_str(&format!(
            " That is from memory, not from print: aim at half of it, {half}, and ask."
        ));
    }
    Outcome {
        verdict,
        row: Some(row),
        inside,
        says,
    }
}
