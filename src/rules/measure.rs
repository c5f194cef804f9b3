//! Measures: a start, what is added, limits and rounding, each a line.

use super::curve::to_multiple;
use super::ledger::{self, Line, Role};
use super::rule::{Effect, Rule, RuleId};
use super::set::RuleSet;
use super::subject::SubjectKind;
use super::vocabulary::FactId;
use super::world::World;

/// A number with the lines that add up to it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Measured {
    value: Option<i64>,
    lines: Vec<Line>,
    cautions: Vec<Line>,
    problem: Option<String>,
}

impl Measured {
    /// The number in steps of the measure's notation: the sum of the lines' points. None if there is a problem.
    #[must_use]
    pub fn value(&self) -> Option<i64> {
        self.value
    }

    /// The start, what is added (largest first), disputes, what the limits and the rounding change. Empty without a value.
    #[must_use]
    pub fn lines(&self) -> &[Line] {
        &self.lines
    }

    /// The cautions, serious ones first.
    #[must_use]
    pub fn cautions(&self) -> &[Line] {
        &self.cautions
    }

    /// Why there is no number: no such measure, no rule starts it, or more than one does.
    #[must_use]
    pub fn problem(&self) -> Option<&str> {
        self.problem.as_deref()
    }
}

impl RuleSet {
    /// Measures a subject; only facts with one value for all candidates are asked for.
    #[must_use]
    pub fn measure(&self, subject: &str, world: &dyn World) -> Measured {
        let is_measure = |kind| matches!(kind, SubjectKind::Measure(_));
        if !self
            .subject(subject)
            .is_some_and(|found| is_measure(found.kind))
        {
            let problem = Some(format!("there is no measure {subject}"));
            return Measured {
                problem,
                ..Measured::default()
            };
        }
        let value = |fact: FactId| world.scalar(fact);
        let holding: Vec<(RuleId, &Rule)> = self
            .rules_of(subject)
            .filter(|(_, rule)| rule.when.holds(&value))
            .collect();
        let cautions = cautions(&holding, &value);

        let (mut starts, mut adds) = (Vec::new(), Vec::new());
        for &(id, rule) in &holding {
            let amount = rule.effect.amount().and_then(|amount| amount.at(&value));
            let Some(amount) = amount else { continue };
            let mut line = line(id, rule, Role::Add, amount, &value);
            if rule.disputes.is_some() {
                (line.points, line.disputed, line.role) = (0, amount, Role::Dispute);
                adds.push(line);
            } else if matches!(rule.effect, Effect::Start(_)) {
                line.role = Role::Start;
                starts.push(line);
            } else if amount != 0 {
                adds.push(line);
            }
        }
        if starts.len() != 1 {
            let problem = Some(self.no_single_start(subject, &starts));
            return Measured {
                cautions,
                problem,
                ..Measured::default()
            };
        }

        let mut lines = starts;
        ledger::sort(&mut adds);
        lines.append(&mut adds);
        let mut sum: i64 = lines.iter().map(Line::points).sum();
        // Limits come first: they are multiples of the rounding step, so rounding cannot leave them again.
        for role in [Role::Limit, Role::Rounding] {
            for &(id, rule) in &holding {
                let wanted = match (&rule.effect, role) {
                    (Effect::Limit { lowest, highest }, Role::Limit) => {
                        let lifted = lowest.map_or(sum, |lowest| sum.max(lowest));
                        highest.map_or(lifted, |highest| lifted.min(highest))
                    }
                    (Effect::Rounding(step), Role::Rounding) => to_multiple(sum, *step),
                    _ => continue,
                };
                if wanted != sum {
                    lines.push(line(id, rule, role, wanted - sum, &value));
                    sum = wanted;
                }
            }
        }
        Measured {
            value: Some(sum),
            lines,
            cautions,
            problem: None,
        }
    }

    /// The cautions of all subjects that are a person, serious ones first.
    #[must_use]
    pub fn cautions(&self, world: &dyn World) -> Vec<Line> {
        let value = |fact: FactId| world.scalar(fact);
        let persons = self
            .subjects
            .iter()
            .filter(|subject| subject.kind == SubjectKind::Person);
        let rules = persons.flat_map(|subject| self.rules_of(&subject.id));
        let holding: Vec<_> = rules.filter(|(_, rule)| rule.when.holds(&value)).collect();
        cautions(&holding, &value)
    }

    /// What there is to do, in order, by the rules of a subject that is a list of steps.
    #[must_use]
    pub fn steps(&self, subject: &str, world: &dyn World) -> Vec<Line> {
        let value = |fact: FactId| world.scalar(fact);
        let mut found: Vec<(i64, Line)> = self
            .rules_of(subject)
            .filter(|(_, rule)| rule.when.holds(&value))
            .filter_map(|(id, rule)| match rule.effect {
                Effect::Step(place) => Some((place, line(id, rule, Role::Step, 0, &value))),
                _ => None,
            })
            .collect();
        found.sort_by_key(|(place, line)| (*place, line.rule));
        found.into_iter().map(|(_, line)| line).collect()
    }

    fn no_single_start(&self, subject: &str, starts: &[Line]) -> String {
        let ids: Vec<String> = starts
            .iter()
            .map(|line| self.rule(line.rule).id.clone())
            .collect();
        if ids.is_empty() {
            format!("no rule starts {subject}")
        } else {
            let ids = super::vocabulary::listed(&ids, "and");
            format!("more than one rule starts {subject}: {ids}")
        }
    }
}

/// The cautions among rules that hold, serious ones first, then by id.
fn cautions(holding: &[(RuleId, &Rule)], value: &dyn Fn(FactId) -> i64) -> Vec<Line> {
    let mut lines: Vec<Line> = Vec::new();
    for &(id, rule) in holding {
        if let Effect::Caution(severity) = rule.effect {
            lines.push(line(id, rule, Role::Caution(severity), 0, value));
        }
    }
    sort_cautions(&mut lines);
    lines
}

/// Serious ones first, then by the id of their rule.
pub(super) fn sort_cautions(lines: &mut [Line]) {
    let severity = |line: &Line| match line.role {
        Role::Caution(severity) => Some(severity),
        _ => None,
    };
    lines.sort_by_key(|line| (std::cmp::Reverse(severity(line)), line.rule));
}

fn line(
    rule: RuleId,
    stated: &Rule,
    role: Role,
    points: i64,
    value: &dyn Fn(FactId) -> i64,
) -> Line {
    Line {
        rule,
        points,
        disputed: 0,
        role,
        common: false,
        shown: stated.values(value),
    }
}
