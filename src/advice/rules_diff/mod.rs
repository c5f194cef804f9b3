//! What other rules change: which consultations come out otherwise, and by which lines.

mod outcome;
mod rules;

use outcome::{Ledgers, Outcome};

use super::case::{Case, Question};
use super::reason::Reason;
use super::shop::Shop;

pub use rules::{Change as RuleChange, ChangeKind};

/// What is otherwise under new rules.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
#[non_exhaustive]
pub struct RulesDiff {
    /// The rules and assumptions that are new, gone or changed, in the order of their ids.
    pub rules: Vec<RuleChange>,
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
    /// What was asked: `advise`, `fit`, `fit --used` or `refit`.
    pub question: &'static str,
    /// Everything that is otherwise: what was settled first, then picks, numbers, cautions, steps and money.
    pub differences: Vec<OutcomeChange>,
}

/// One thing that is otherwise.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OutcomeChange {
    /// What kind of thing: `settled`, `cause`, `pick`, `number`, `caution`, `step`, `bill`, `offer`, `drill_today`, `held` or `answer`.
    pub kind: &'static str,
    /// Which one: a stage, a place from 1, a measure, a rule, a step.
    pub name: String,
    /// What it was; none if it wasn't there.
    pub before: Option<String>,
    /// What it is now; none if it is gone.
    pub after: Option<String>,
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
    /// Whether the rule itself is new, gone or changed. If not, something it looks at is otherwise.
    pub by_rule: bool,
}

impl RulesDiff {
    /// Asks the cases under the rules of both shops and compares.
    #[must_use]
    pub fn between(old: &Shop, new: &Shop, cases: &[Case]) -> RulesDiff {
        let mut diff = RulesDiff {
            rules: rules::changes(old.rules(), new.rules()),
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
        self.rules.is_empty() && self.changed.is_empty()
    }
}

fn verb(question: &Question) -> &'static str {
    match question {
        Question::Advise => "advise",
        Question::Fit(_) => "fit",
        Question::Used => "fit --used",
        Question::Refit => "refit",
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
        let mut found = Vec::new();
        for key in keys {
            let (was, is) = (before.items.get(key), after.items.get(key));
            if was == is {
                continue;
            }
            let (_, kind, name) = key;
            let mut lines = Vec::new();
            match *kind {
                "settled" => {
                    for value in [was, is].into_iter().flatten() {
                        let fixed = |shop| self.fixed(shop, name, value);
                        lines.extend(lines_between(value, &fixed(self.old), &fixed(self.new)));
                    }
                }
                "pick" | "cause" => {
                    for value in [was, is].into_iter().flatten() {
                        let of = |ledgers: &Ledgers| ledgers.of(kind, value).to_vec();
                        lines.extend(lines_between(
                            value,
                            &of(&before.ledgers),
                            &of(&after.ledgers),
                        ));
                    }
                }
                "number" => {
                    let of = |ledgers: &Ledgers| ledgers.of(kind, name).to_vec();
                    lines.extend(lines_between("", &of(&before.ledgers), &of(&after.ledgers)));
                }
                _ => {}
            }
            for line in &mut lines {
                line.by_rule = acts(&line.rule);
            }
            lines.sort_by(|a, b| {
                let order = |line: &LineChange| (!line.by_rule, line.of.clone(), line.rule.clone());
                order(a).cmp(&order(b))
            });
            lines.dedup();
            found.push(OutcomeChange {
                kind,
                name: name.clone(),
                before: was.cloned(),
                after: is.cloned(),
                lines,
            });
        }
        found.extend(reordered(&before, &after));
        found
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
        lines: Vec::new(),
    };
    changed.map(difference).collect()
}

/// The lines that stand in only one of two ledgers, or with other points.
fn lines_between(of: &str, before: &[Reason], after: &[Reason]) -> Vec<LineChange> {
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
            by_rule: false,
        })
    };
    rules.into_iter().filter_map(change).collect()
}

/// What a line does, in a word or a number.
fn said(line: &Reason) -> &str {
    match line.role() {
        "rule_out" => "ruled out",
        "caution" => "caution",
        "dispute" => "disputes, not counted",
        _ => line.shown(),
    }
}
