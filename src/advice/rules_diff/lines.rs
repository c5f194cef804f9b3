//! The lines behind what comes out otherwise.

use super::outcome::Outcome;
use super::{LineChange, OutcomeChange};
use crate::advice::explain::signed;
use crate::advice::reason::Reason;
use crate::notation::Notation;

const RULED_OUT: &str = "ruled out";

/// What a question came to before, and what it comes to now.
pub(super) struct Both<'a> {
    pub(super) before: &'a Outcome,
    pub(super) after: &'a Outcome,
}

/// Where a ball or a cause stands.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Standing {
    In,
    Out,
    /// Not asked about: another weight, or no points at all.
    Absent,
}

impl Both<'_> {
    /// The lines that are otherwise of a stage that settles on the same value.
    pub(super) fn stage(&self, stage: &str, value: &str) -> Vec<LineChange> {
        let of = |outcome: &Outcome| outcome.ledgers.of("settled", stage).to_vec();
        lines_between(value, &of(self.before), &of(self.after))
    }

    /// The lines that are otherwise of a number.
    pub(super) fn number(&self, name: &str) -> Vec<LineChange> {
        let of = |outcome: &Outcome| outcome.ledgers.of("number", name).to_vec();
        lines_between("", &of(self.before), &of(self.after))
    }

    /// The lines that are otherwise of a ball or a cause. One that falls out loses its other lines for that alone.
    pub(super) fn ranked(&self, kind: &'static str, name: &str) -> Vec<LineChange> {
        let of = |outcome: &Outcome| outcome.ledgers.of(kind, name).to_vec();
        let mut lines = lines_between(name, &of(self.before), &of(self.after));
        let (was, is) = (
            standing(self.before, kind, name),
            standing(self.after, kind, name),
        );
        let turned = match kind {
            // What a cause without points has for and against it isn't told.
            "cause" | "gap" => [was, is].contains(&Standing::Out),
            _ => true,
        };
        if was != is && turned {
            for line in &mut lines {
                let sides = [&line.before, &line.after];
                let rules_out = |side: &&Option<String>| {
                    side.as_ref().is_some_and(|said| said.contains(RULED_OUT))
                };
                line.by_rule = sides.iter().any(rules_out);
            }
        }
        lines
    }

    /// The lines behind another ball or cause in a place: its own and those of the one that stood there before, or else of
    /// whatever changed sides with one of them.
    pub(super) fn place(&self, kind: &'static str, names: [Option<&String>; 2]) -> Vec<LineChange> {
        let here = names.into_iter().flatten();
        let own: Vec<LineChange> = here.flat_map(|name| self.ranked(kind, name)).collect();
        if !own.is_empty() {
            return own;
        }
        let lists = [self.before, self.after].map(|outcome| outcome.order.get(kind));
        let mut others: Vec<&String> = lists.into_iter().flatten().flatten().collect();
        others.sort_unstable();
        others.dedup();
        let crossed = |other: &&String| {
            let mut here = names.into_iter().flatten();
            here.any(|name| {
                ahead(self.before, kind, other, name) != ahead(self.after, kind, other, name)
            })
        };
        let crossing = others.into_iter().filter(crossed);
        crossing.flat_map(|name| self.ranked(kind, name)).collect()
    }

    /// How many tenths of a point more something has now.
    pub(super) fn more(&self, kind: &'static str, name: &str) -> Option<i64> {
        let total = |outcome: &Outcome| outcome.totals.get(&(kind, name.to_owned())).copied();
        Some(total(self.after)?.saturating_sub(total(self.before)?))
    }

    /// The balls beyond the first few whose lines are otherwise. Where one isn't there at all under one of the rule sets, the
    /// weight is otherwise, and that is told already.
    pub(super) fn further(&self, shown: usize) -> Vec<OutcomeChange> {
        const KIND: &str = "pick";
        let among_shown = |outcome: &Outcome, ball: &str| {
            let place = outcome.place(KIND, ball);
            place.is_some_and(|place| place < shown)
        };
        let said = |outcome: &Outcome, ball: &str| {
            let total = outcome.totals.get(&(KIND, ball.to_owned()));
            let written = |&total: &i64| {
                let size = Notation::Points.write(total.saturating_abs());
                signed(total, &size)
            };
            Some(total.map_or_else(|| RULED_OUT.to_owned(), written))
        };
        let balls = self.before.ledgers.names(KIND);
        let balls = balls.filter(|ball| self.after.ledgers.knows(KIND, ball));
        let balls =
            balls.filter(|ball| !among_shown(self.before, ball) && !among_shown(self.after, ball));
        let change = |ball: &str| {
            let lines = self.ranked(KIND, ball);
            (!lines.is_empty()).then(|| OutcomeChange {
                kind: "further",
                name: ball.to_owned(),
                before: said(self.before, ball),
                after: said(self.after, ball),
                more: self.more(KIND, ball),
                lines,
            })
        };
        balls.filter_map(change).collect()
    }
}

fn standing(outcome: &Outcome, kind: &'static str, name: &str) -> Standing {
    match outcome.place(kind, name) {
        Some(_) => Standing::In,
        None if outcome.ledgers.knows(kind, name) => Standing::Out,
        None => Standing::Absent,
    }
}

/// Whether one stands before another; one that isn't in stands behind all.
fn ahead(outcome: &Outcome, kind: &'static str, one: &str, other: &str) -> bool {
    let place = |name| outcome.place(kind, name).unwrap_or(usize::MAX);
    place(one) < place(other)
}

/// The lines that stand in only one of two ledgers, or with other points; as if each were its rule's own doing.
pub(super) fn lines_between(of: &str, before: &[Reason], after: &[Reason]) -> Vec<LineChange> {
    let shown = |lines: &[Reason], rule: &str| -> Option<String> {
        let found: Vec<&str> = lines
            .iter()
            .filter(|line| line.rule() == rule)
            .map(said)
            .collect();
        (!found.is_empty()).then(|| found.join(", "))
    };
    let mut rules: Vec<&str> = before.iter().chain(after).map(Reason::rule).collect();
    rules.sort_unstable();
    rules.dedup();
    let change = |rule: &str| {
        let (was, is) = (shown(before, rule), shown(after, rule));
        (was != is).then(|| LineChange {
            of: of.to_owned(),
            rule: rule.to_owned(),
            before: was,
            after: is,
            by_rule: true,
        })
    };
    rules.into_iter().filter_map(change).collect()
}

/// What a line does, in a word or a number.
fn said(line: &Reason) -> &str {
    match line.role() {
        "rule_out" => RULED_OUT,
        "caution" => "caution",
        "dispute" => "disputes, not counted",
        _ => line.shown(),
    }
}
