//! Reading subjects. The limits and the rounding of a measure become rules, so that they have reasons like any other.

use super::values::{notation, steps};
use super::{Known, Reading};
use crate::document::{Fields, Node, Reader};
use crate::notation::Notation;
use crate::rules::condition::Condition;
use crate::rules::reason::Texts;
use crate::rules::rule::{Effect, Rule};
use crate::rules::source::{Source, Strength};
use crate::rules::subject::{Subject, SubjectKind};

/// The keys that only measures have.
const BOUNDS: [&str; 5] = [
    "notation",
    "limits",
    "round_to",
    "rounding_because",
    "rounding_source",
];

impl<'d> Reading<'d> {
    /// The `subjects` of a file.
    pub(super) fn read_subjects(&mut self, reader: &mut Reader<'d>, node: Option<&'d Node>) {
        let items = node.and_then(|node| reader.list(node, "the subjects"));
        for item in items.unwrap_or_default() {
            self.read_subject(reader, item);
        }
    }

    fn read_subject(&mut self, reader: &mut Reader<'d>, node: &'d Node) {
        let Some(mut fields) = reader.fields(node, "a subject") else {
            return;
        };
        let id_node = fields.require("id", reader);
        let id = id_node.and_then(|node| subject_id(reader, node));
        let kind = self.read_kind(reader, &mut fields);
        let meaning = fields
            .require("meaning", reader)
            .and_then(|node| reader.text(node, "a meaning"));
        let mut rules = Vec::new();
        if let Some(SubjectKind::Measure(notation)) = kind {
            rules = self.read_bounds(reader, &mut fields, notation);
        } else if kind.is_none() {
            // Which of these keys belong here is not known then, so they are no faults of their own.
            for key in BOUNDS {
                fields.take(key);
            }
        }
        fields.close(reader);
        let (Some(id), Some(id_node)) = (id, id_node) else {
            return;
        };
        if self.subjects.contains_key(id) {
            reader.fault(
                id_node,
                "repeated-subject",
                format!("there is a subject `{id}` already"),
            );
            return;
        }
        let stated = |(kind, meaning): (SubjectKind, &str)| Subject {
            id: id.to_owned(),
            kind,
            meaning: meaning.to_owned(),
        };
        self.subjects
            .insert(id.to_owned(), kind.zip(meaning).map(stated));
        for mut rule in rules {
            let part = if matches!(rule.effect, Effect::Limit { .. }) {
                "limits"
            } else {
                "rounding"
            };
            rule.id = format!("{id}/{part}");
            rule.subject = id.to_owned();
            rule.file = reader.document().name().to_owned();
            rule.overlay = self.over;
            rule.gather_shown();
            let known = Known {
                file: rule.file.clone(),
                subject: Some(rule.subject.clone()),
                disputes: false,
                new: true,
            };
            self.known.insert(rule.id.clone(), known);
            self.rules.insert(rule.id.clone(), rule);
        }
    }

    fn read_kind(&self, reader: &mut Reader<'d>, fields: &mut Fields<'d>) -> Option<SubjectKind> {
        let kind = fields.require("kind", reader)?;
        match reader.choice(
            kind,
            "a kind of subject",
            &["choice", "measure", "person", "steps"],
        ) {
            Some(0) => Some(SubjectKind::Choice),
            Some(1) => {
                let node = fields.require("notation", reader);
                node.and_then(|node| notation(reader, node))
                    .map(SubjectKind::Measure)
            }
            Some(2) => Some(SubjectKind::Person),
            Some(_) => Some(SubjectKind::Steps),
            None => None,
        }
    }

    /// The limits and the rounding of a measure; only they are allowed there, so other subjects do not come here.
    fn read_bounds(
        &self,
        reader: &mut Reader<'d>,
        fields: &mut Fields<'d>,
        notation: Notation,
    ) -> Vec<Rule> {
        let rounding = self.read_rounding(reader, fields, notation);
        let step = rounding.as_ref().and_then(|rule| match rule.effect {
            Effect::Rounding(step) => Some(step),
            _ => None,
        });
        let limits = fields.take("limits");
        let limits = limits.and_then(|node| self.read_limits(reader, node, notation, step));
        [limits, rounding].into_iter().flatten().collect()
    }

    fn read_rounding(
        &self,
        reader: &mut Reader<'d>,
        fields: &mut Fields<'d>,
        notation: Notation,
    ) -> Option<Rule> {
        let step = fields.require("round_to", reader);
        let because = fields.take("rounding_because");
        let source = fields.take("rounding_source");
        let source = match source {
            Some(node) => self.source_named(reader, node),
            None => Some(Source::plain(Strength::OwnChoice)),
        };
        let because_read = because.map(|node| self.texts(reader, node, None));
        let step = step?;
        if step.text() == Some("none") {
            return None;
        }
        let steps = steps(reader, step, undirected(notation))?;
        if steps <= 0 {
            reader.fault(
                step,
                "out-of-bounds",
                "a measure is rounded to a step above nothing",
            );
            return None;
        }
        let Some(because) = because_read else {
            reader.fault(
                step,
                "missing",
                "`rounding_because` is missing beside `round_to`",
            );
            return None;
        };
        Some(bound(Effect::Rounding(steps), because?, source?))
    }

    fn read_limits(
        &self,
        reader: &mut Reader<'d>,
        node: &'d Node,
        notation: Notation,
        step: Option<i64>,
    ) -> Option<Rule> {
        let mut fields = reader.fields(node, "limits")?;
        let mut faulty = false;
        let ends = ["lowest", "highest"].map(|key| {
            let end = fields.take(key)?;
            let value = steps(reader, end, notation);
            faulty |= value.is_none();
            if let (Some(value), Some(step)) = (value, step)
                && value % step != 0
            {
                let message = format!(
                    "a limit is a multiple of `round_to`, {}",
                    undirected(notation).write(step)
                );
                reader.fault(end, "limit-off-step", message);
                faulty = true;
            }
            value.map(|value| (value, end))
        });
        let because = fields
            .require("because", reader)
            .and_then(|node| self.texts(reader, node, None));
        let source = self.read_source(reader, &mut fields);
        fields.close(reader);
        match ends {
            [None, None] if !faulty => {
                reader.fault(node, "missing", "limits need `lowest`, `highest` or both");
                return None;
            }
            [Some((lowest, _)), Some((highest, end))] if lowest > highest => {
                reader.fault(end, "never-holds", "the highest limit is below the lowest");
                return None;
            }
            _ if faulty => return None,
            _ => {}
        }
        let [lowest, highest] = ends.map(|end| end.map(|(value, _)| value));
        Some(bound(Effect::Limit { lowest, highest }, because?, source?))
    }
}

/// A rounding step has no direction, so that of a pitch is written as a plain length of the same steps.
fn undirected(notation: Notation) -> Notation {
    match notation {
        Notation::ForwardPitch | Notation::LateralPitch | Notation::UpDown => Notation::Length,
        other => other,
    }
}

/// A rule of a measure itself; what it is called is filled in by the caller.
fn bound(effect: Effect, because: Texts, source: Source) -> Rule {
    Rule {
        id: String::new(),
        file: String::new(),
        overlay: false,
        subject: String::new(),
        when: Condition::default(),
        effect,
        disputes: None,
        then: None,
        because,
        source,
        practice: Vec::new(),
        shows: Vec::new(),
    }
}

/// The id of a subject: small letters, digits, hyphens, dots and underscores.
fn subject_id<'d>(reader: &mut Reader<'d>, node: &'d Node) -> Option<&'d str> {
    let id = reader.text(node, "an id")?;
    let letters = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || "-._".contains(c);
    let fits = !id.is_empty() && id.chars().all(letters);
    if !fits {
        reader.fault(
            node,
            "bad-id",
            format!("`{id}` is no id: small letters, digits, hyphens and dots"),
        );
    }
    fits.then_some(id)
}
