//! Reading what a rule does.

use super::Reading;
use super::values::{points, steps};
use crate::document::{Content, Fields, Node, Reader};
use crate::notation::Notation;
use crate::rules::curve::Curve;
use crate::rules::rule::{Amount, Effect, Severity};
use crate::rules::subject::{Subject, SubjectKind};
use crate::rules::vocabulary::{FactId, Kind};

/// The keys of effects.
const EFFECTS: [&str; 6] = ["points", "start", "add", "rule_out", "caution", "step"];

/// In what the numbers of an effect are written.
#[derive(Clone, Copy)]
enum Unit {
    Tenths,
    Steps(Notation),
}

impl<'d> Reading<'d> {
    /// The one effect of a rule, fit for its subject.
    pub(super) fn effect(
        &self,
        reader: &mut Reader<'d>,
        fields: &mut Fields<'d>,
        subject: Option<&Subject>,
    ) -> Option<Effect> {
        let mut found: Vec<(&'static str, &'d Node)> = Vec::new();
        for key in EFFECTS {
            found.extend(fields.take(key).map(|node| (key, node)));
        }
        let Some(&(key, node)) = found.first() else {
            let message = "the rule does nothing";
            let help = "say one of points, start, add, rule_out, caution, step";
            reader.fault_with_help(fields.node(), "no-effect", message, help);
            return None;
        };
        if let Some(&(second, node)) = found.get(1) {
            let message = format!("`{second}` beside `{key}`: a rule does one thing");
            reader.fault(node, "two-effects", message);
            return None;
        }
        if let Some(subject) = subject
            && !allows(subject.kind, key)
        {
            let message = format!(
                "`{key}` cannot be said of {}, which is {}",
                subject.id,
                is(subject.kind)
            );
            let allowed = EFFECTS.into_iter().filter(|key| allows(subject.kind, key));
            let help = format!("say one of {}", allowed.collect::<Vec<_>>().join(", "));
            reader.fault_with_help(node, "wrong-effect", message, help);
            return None;
        }
        match key {
            "points" => self
                .amount(reader, node, Unit::Tenths, subject)
                .map(Effect::Points),
            "rule_out" => {
                let flag = reader.flag(node, "rule_out")?;
                if !flag {
                    reader.fault(
                        node,
                        "no-effect",
                        "`rule_out: false` does nothing; leave the rule out",
                    );
                }
                flag.then_some(Effect::RuleOut)
            }
            "step" => {
                let read = |text: &str| Notation::Count.read(text);
                reader
                    .value(node, "the place of a step", read)
                    .map(Effect::Step)
            }
            "caution" => {
                let index = reader.choice(node, "a caution", &["mild", "serious"])?;
                Some(Effect::Caution(if index == 0 {
                    Severity::Mild
                } else {
                    Severity::Serious
                }))
            }
            _ => {
                // Without a subject there is no notation to read the number in; its fault is told already.
                let unit = Unit::Steps(subject?.notation()?);
                let amount = if key == "start" && has_key(node, "copy") {
                    self.copy(reader, node, subject)?
                } else {
                    self.amount(reader, node, unit, subject)?
                };
                Some(if key == "start" {
                    self.check_start(reader, node, subject?, &amount)?;
                    Effect::Start(amount)
                } else {
                    Effect::Add(amount)
                })
            }
        }
    }

    /// A plain start lies within its measure's limits: a rule that can only be cut back is a slip.
    fn check_start(
        &self,
        reader: &mut Reader<'d>,
        node: &'d Node,
        subject: &Subject,
        start: &Amount,
    ) -> Option<()> {
        let (Amount::Number(start), Some(notation)) = (start, subject.notation()) else {
            return Some(());
        };
        let limits = self.rules.get(&format!("{}/limits", subject.id()));
        let Some(Effect::Limit { lowest, highest }) = limits.map(|rule| &rule.effect) else {
            return Some(());
        };
        let broken = match (lowest, highest) {
            (Some(lowest), _) if start < lowest => format!("at least {}", notation.write(*lowest)),
            (_, Some(highest)) if start > highest => {
                format!("at most {}", notation.write(*highest))
            }
            _ => return Some(()),
        };
        let message = format!(
            "a start of {} is outside the limits of `{}`; expected {broken}",
            notation.write(*start),
            subject.id()
        );
        reader.fault(node, "out-of-bounds", message);
        None
    }

    /// A number, or a curve along a fact.
    fn amount(
        &self,
        reader: &mut Reader<'d>,
        node: &'d Node,
        unit: Unit,
        subject: Option<&Subject>,
    ) -> Option<Amount> {
        if !matches!(node.content(), Content::Map(_)) {
            let number = read(reader, node, unit)?;
            if number == 0 && matches!(unit, Unit::Tenths) {
                reader.fault(node, "no-effect", "no points at all do nothing");
                return None;
            }
            return Some(Amount::Number(number));
        }
        let mut fields = reader.fields(node, "a curve")?;
        let along = fields
            .require("along", reader)
            .and_then(|node| self.along(reader, node, subject));
        let knots = fields
            .require("at", reader)
            .and_then(|node| self.knots(reader, node, along, unit));
        fields.close(reader);
        Curve::new(along?, knots?).map(Amount::Along)
    }

    /// The fact a curve runs along, which is a number.
    fn along(
        &self,
        reader: &mut Reader<'d>,
        node: &'d Node,
        subject: Option<&Subject>,
    ) -> Option<FactId> {
        let name = reader.text(node, "a fact")?;
        let id = self.fact(reader, node, name)?;
        let fits = self.in_scope(reader, node, id, subject);
        let is_number = matches!(self.vocabulary.fact(id).kind, Kind::Number { .. });
        if !is_number {
            let message = format!("a curve runs along a number, which `{name}` is not");
            reader.fault(node, "wrong-kind", message);
        }
        (fits && is_number).then_some(id)
    }

    /// The knots of a curve, strictly increasing. Without the fact, only the values are checked.
    fn knots(
        &self,
        reader: &mut Reader<'d>,
        node: &'d Node,
        along: Option<FactId>,
        unit: Unit,
    ) -> Option<Vec<(i64, i64)>> {
        let mut fields = reader.fields(node, "the knots")?;
        let pairs = fields.rest();
        fields.close(reader);
        let mut knots: Vec<(i64, i64)> = Vec::with_capacity(pairs.len());
        let mut whole = true;
        for (key, value) in &pairs {
            let at = along.and_then(|along| self.value(reader, key, along));
            if let (Some(at), Some(&(before, _))) = (at, knots.last())
                && at <= before
            {
                let message = "this knot is not beyond the one before";
                reader.fault(key, "knots-not-increasing", message);
                whole = false;
            }
            match (at, read(reader, value, unit)) {
                (Some(at), Some(value)) => knots.push((at, value)),
                _ => whole = false,
            }
        }
        if pairs.len() < 2 {
            reader.fault(node, "too-few-knots", "a curve has two knots or more");
            whole = false;
        }
        whole.then_some(knots)
    }

    /// The fact that a measure starts with a copy of, which counts the same steps.
    fn copy(
        &self,
        reader: &mut Reader<'d>,
        node: &'d Node,
        subject: Option<&Subject>,
    ) -> Option<Amount> {
        let mut fields = reader.fields(node, "a copy")?;
        let from = fields.require("copy", reader);
        fields.close(reader);
        let from = from?;
        let name = reader.text(from, "a fact")?;
        let id = self.fact(reader, from, name)?;
        let fits = self.in_scope(reader, from, id, subject);
        let notation = subject.and_then(Subject::notation);
        let same = match (self.vocabulary.fact(id).kind, notation) {
            (Kind::Number { notation, .. }, Some(wanted)) => same_steps(notation, wanted),
            (_, wanted) => wanted.is_none(),
        };
        if !same {
            let message = format!("`{name}` does not count the same steps as the measure");
            reader.fault(from, "wrong-kind", message);
        }
        (fits && same).then_some(Amount::Copy(id))
    }
}

fn read<'d>(reader: &mut Reader<'d>, node: &'d Node, unit: Unit) -> Option<i64> {
    match unit {
        Unit::Tenths => points(reader, node),
        Unit::Steps(notation) => steps(reader, node, notation),
    }
}

/// Whether two notations count the same steps, so that a value of one is a value of the other.
fn same_steps(one: Notation, other: Notation) -> bool {
    let sixty_fourths = |notation| {
        use Notation::{ForwardPitch, HoleSize, LateralPitch, Length, UpDown};
        matches!(
            notation,
            Length | HoleSize | ForwardPitch | LateralPitch | UpDown
        )
    };
    one == other || (sixty_fourths(one) && sixty_fourths(other))
}

fn allows(kind: SubjectKind, effect: &str) -> bool {
    match kind {
        SubjectKind::Choice => matches!(effect, "points" | "rule_out" | "caution"),
        SubjectKind::Measure(_) => matches!(effect, "start" | "add" | "caution"),
        SubjectKind::Person => effect == "caution",
        SubjectKind::Steps => effect == "step",
    }
}

fn is(kind: SubjectKind) -> &'static str {
    match kind {
        SubjectKind::Choice => "a choice",
        SubjectKind::Measure(_) => "a measure",
        SubjectKind::Person => "a person",
        SubjectKind::Steps => "a list of steps",
    }
}

fn has_key(node: &Node, key: &str) -> bool {
    matches!(node.content(), Content::Map(pairs) if pairs.iter().any(|(name, _)| name.text() == Some(key)))
}
