//! What other rules change: which consultations come out otherwise, and by which lines.

mod lines;
mod outcome;
mod path;
mod rules;

use lines::{Both, lines_between};
use outcome::{Outcome, SHOWN};

use super::case::{Case, Question};
use super::reason::Reason;
use super::shop::Shop;

pub use rules::{Change as RuleChange, ChangeKind, PartChange, WordChange};

/// What is otherwise under new rules.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
#[non_exhaustive]
pub struct RulesDiff {
    /// The rules and assumptions that are new, gone or changed, in the order of their ids.
    pub rules: Vec<RuleChange>,
    /// The words that are explained otherwise, in the order of the alphabet.
    pub words: Vec<WordChange>,
    /// The consultations that come out otherwise, in the order they were given.
    pub changed: Vec<ChangedCase>,
    /// How many come out the same.
    pub unchanged: usize,
}

/// A consultation that comes out otherwise.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ChangedCase {
    /// The case's file.
    pub file: String,
    /// What was asked: `advise`, `fit`, `fit --used`, `refit`, `upgrade` or `roll`.
    pub question: &'static str,
    /// Everything that is otherwise: what was settled first, then picks, numbers, cautions, steps and money.
    pub differences: Vec<OutcomeChange>,
}

/// One thing that is otherwise.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OutcomeChange {
    /// What kind of thing: `settled`, `cause`, `gap`, `doubled`, `next`, `pick`, `rolled`, `said`, `number`, `caution`, `step`, `bill`,
    /// `offer`, `drill_today`, `held` or `answer`;
    /// `further` for a ball that isn't among the picks shown, its points before and now.
    pub kind: &'static str,
    /// Which one: a stage, a place from 1, a measure, a rule, a step, a ball.
    pub name: String,
    /// What it was; none if it wasn't there.
    pub before: Option<String>,
    /// What it is now; none if it is gone. It may be the same, for other lines.
    pub after: Option<String>,
    /// How many tenths of a point more it has, where something settled, a ball or a cause is the same.
    pub more: Option<i64>,
    /// The lines that are otherwise, those of changed rules first. Empty where it follows from an earlier difference.
    pub lines: Vec<LineChange>,
}

/// A line of a ledger that is new, gone, or gives other points.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LineChange {
    /// Whose ledger it stands in: a ball, a weight, a cause; empty for a number.
    pub of: String,
    /// The rule.
    pub rule: String,
    /// The points before, as people read them; none if the line wasn't there.
    pub before: Option<String>,
    /// The points now; none if the line is gone.
    pub after: Option<String>,
    /// Whether the rule itself is new, gone or changed, and did it. If not, it follows: something the rule looks at is otherwise,
    /// or the ball is in or out for another reason.
    pub by_rule: bool,
}

impl RulesDiff {
    /// Asks the cases under the rules of both shops and compares.
    #[must_use]
    pub fn between(old: &Shop, new: &Shop, cases: &[Case]) -> RulesDiff {
        let mut diff = RulesDiff {
            rules: rules::changes(old.rules(), new.rules()),
            words: rules::words(old.rules(), new.rules()),
            ..RulesDiff::default()
        };
        let acts = |rule: &str| {
            let mut found = diff.rules.iter().filter(|change| change.id == rule);
            found.any(|change| change.kind != ChangeKind::Text)
        };
        for case in cases {
            for question in case.questions() {
                let pair = Pair {
                    case,
                    question,
                    old,
                    new,
                };
                let differences = pair.differences(&acts);
                if differences.is_empty() {
                    diff.unchanged += 1;
                } else {
                    diff.changed.push(ChangedCase {
                        file: case.file().to_owned(),
                        question: verb(question),
                        differences,
                    });
                }
            }
        }
        diff
    }

    /// Whether nothing is otherwise, not even a text.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.rules.is_empty() && self.words.is_empty() && self.changed.is_empty()
    }
}

fn verb(question: &Question) -> &'static str {
    match question {
        Question::Advise => "advise",
        Question::Fit(_) => "fit",
        Question::Used => "fit --used",
        Question::Refit => "refit",
        Question::Upgrade => "upgrade",
        Question::Roll { .. } => "roll",
    }
}

/// One question under both rule sets.
struct Pair<'a> {
    case: &'a Case,
    question: &'a Question,
    old: &'a Shop,
    new: &'a Shop,
}

impl Pair<'_> {
    fn differences(&self, acts: &dyn Fn(&str) -> bool) -> Vec<OutcomeChange> {
        let ask = |shop| Outcome::of(self.case, shop, self.case.bowler(), self.question);
        let (before, after) = (ask(self.old), ask(self.new));
        let mut keys: Vec<&(usize, &'static str, String)> =
            before.items.keys().chain(after.items.keys()).collect();
        keys.sort_unstable();
        keys.dedup();
        let both = Both {
            before: &before,
            after: &after,
        };
        let mut found = Vec::new();
        for key in keys {
            let (was, is) = (before.items.get(key), after.items.get(key));
            let (_, kind, name) = key;
            let value = was.filter(|_| was == is);
            let mut lines = match (*kind, value) {
                ("settled", Some(value)) => both.stage(name, value),
                ("settled", None) => self.of_other_values(name, [was, is]),
                ("pick" | "cause" | "gap" | "next", Some(value)) => both.ranked(kind, value),
                ("pick" | "cause" | "gap" | "next", None) => both.place(kind, [was, is]),
                ("number", _) => both.number(name),
                _ => Vec::new(),
            };
            if value.is_some() && lines.is_empty() {
                continue;
            }
            if lines.is_empty() && matches!(*kind, "pick" | "cause" | "gap" | "next" | "number") {
                lines = settled_lines(&found);
            }
            let of = value.filter(|_| *kind != "settled").unwrap_or(name);
            found.push(OutcomeChange {
                kind,
                name: name.clone(),
                before: was.cloned(),
                after: is.cloned(),
                more: value.and_then(|_| both.more(kind, of)),
                lines,
            });
        }
        found.extend(both.further(SHOWN));
        for difference in &mut found {
            for line in &mut difference.lines {
                line.by_rule &= acts(&line.rule);
            }
            difference.lines.sort_by(|a, b| {
                let order = |line: &LineChange| (!line.by_rule, line.of.clone(), line.rule.clone());
                order(a).cmp(&order(b))
            });
            difference.lines.dedup();
        }
        found.extend(reordered(&before, &after));
        found
    }

    /// The lines for what a stage settled before and what it settles now.
    fn of_other_values(&self, stage: &str, values: [Option<&String>; 2]) -> Vec<LineChange> {
        let mut lines = Vec::new();
        for value in values.into_iter().flatten() {
            let fixed = |shop| self.fixed(shop, stage, value);
            lines.extend(lines_between(value, &fixed(self.old), &fixed(self.new)));
        }
        lines
    }

    /// The ledger of one candidate of a stage, whatever the rules would have settled on.
    fn fixed(&self, shop: &Shop, stage: &str, value: &str) -> Vec<Reason> {
        let Some((fact, answer)) = outcome::as_answer(stage, value) else {
            return Vec::new();
        };
        let bowler = self.case.bowler().with(fact, Some(answer));
        let outcome = Outcome::of(self.case, shop, &bowler, self.question);
        outcome.ledgers.of("settled", stage).to_vec()
    }
}

/// Lists in which the steps that both have stand in another order.
fn reordered(before: &Outcome, after: &Outcome) -> Vec<OutcomeChange> {
    let common = |one: &[String], other: &[String]| {
        let kept = one.iter().filter(|id| other.contains(id));
        kept.cloned().collect::<Vec<_>>().join(", ")
    };
    let lists = before.steps.iter();
    let pairs = lists.filter_map(|(list, was)| Some((list, was, after.steps.get(list)?)));
    let orders = pairs.map(|(list, was, is)| (list, common(was, is), common(is, was)));
    let changed = orders.filter(|(_, was, is)| was != is);
    let difference = |(list, was, is): (&&'static str, String, String)| OutcomeChange {
        kind: "step",
        name: format!("{list} order"),
        before: Some(was),
        after: Some(is),
        more: None,
        lines: Vec::new(),
    };
    changed.map(difference).collect()
}

/// The lines of everything that was settled otherwise.
fn settled_lines(found: &[OutcomeChange]) -> Vec<LineChange> {
    let settled = found.iter().filter(|change| change.kind == "settled");
    settled.flat_map(|change| change.lines.clone()).collect()
}
