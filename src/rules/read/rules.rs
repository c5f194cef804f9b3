//! Reading the rules themselves.

use super::parts::{Parts, Reference};
use super::{Known, Reading, unknown};
use crate::document::{Fields, Node, Reader};
use crate::rules::condition::Condition;
use crate::rules::rule::{Effect, Rule};
use crate::rules::subject::Subject;

/// The most rules a set may have, so that totals fit 32 bits.
const MOST_RULES: usize = 20_000;

impl<'d> Reading<'d> {
    /// The rules of a file.
    pub(super) fn read_rules(&mut self, reader: &mut Reader<'d>, file: usize, parts: &Parts<'d>) {
        let of_file = parts
            .subject
            .and_then(|node| self.subject_named(reader, node));
        let Some(rules) = parts.rules else {
            // A file that only switches rules off may still say what it is about.
            if let Some(node) = parts.subject.filter(|_| !parts.says_something) {
                reader.fault(node, "missing", "a subject, but no `rules` about it");
            }
            return;
        };
        let Some(items) = reader.list(rules, "the rules") else {
            return;
        };
        for item in items {
            if self.rules.len() >= MOST_RULES {
                reader.fault(item, "too-many", format!("more than {MOST_RULES} rules"));
                return;
            }
            self.read_rule(reader, file, item, parts.subject.is_some(), of_file.clone());
        }
    }

    fn read_rule(
        &mut self,
        reader: &mut Reader<'d>,
        file: usize,
        node: &'d Node,
        file_has_subject: bool,
        of_file: Option<String>,
    ) {
        let Some(mut fields) = reader.fields(node, "a rule") else {
            return;
        };
        let id_node = fields.require("id", reader);
        let id = id_node.and_then(|node| id_text(reader, node));
        let subject = match fields.take("subject") {
            Some(node) => self.subject_named(reader, node),
            None => {
                if !file_has_subject {
                    let message = "this rule has no subject, and neither has the file";
                    reader.fault(fields.node(), "missing", message);
                }
                of_file
            }
        };
        let overrides = match fields.take("override") {
            Some(node) => reader.flag(node, "override"),
            None => Some(false),
        };
        let unique = match (id_node, id, overrides) {
            (Some(node), Some(id), Some(overrides)) => self.check_id(reader, node, id, overrides),
            _ => false,
        };
        let found = subject
            .as_ref()
            .and_then(|id| self.subjects.get(id).cloned().flatten());
        let disputes = self.read_disputes(reader, &mut fields);
        let rule = self.read_body(reader, &mut fields, found.as_ref(), disputes.is_some());
        fields.close(reader);
        let Some(id) = id else { return };
        if !unique {
            return;
        }
        let name = reader.document().name().to_owned();
        let known = Known {
            file: name.clone(),
            subject: subject.clone(),
            disputes: disputes.is_some(),
            new: true,
        };
        self.known.insert(id.to_owned(), known);
        let disputed = disputes.map(|reference| {
            self.disputes.push((file, id.to_owned(), reference));
            reference.id.to_owned()
        });
        if let (Some(mut rule), Some(subject)) = (rule, subject) {
            rule.id = id.to_owned();
            rule.file = name;
            rule.overlay = self.over;
            rule.subject = subject;
            rule.disputes = disputed;
            rule.gather_shown();
            self.rules.insert(id.to_owned(), rule);
        }
    }

    /// All of a rule but what it is called; those parts are filled in by the caller.
    fn read_body(
        &self,
        reader: &mut Reader<'d>,
        fields: &mut Fields<'d>,
        subject: Option<&Subject>,
        disputes: bool,
    ) -> Option<Rule> {
        let when = match fields.take("when") {
            Some(node) => self.condition(reader, node, subject),
            None => Some(Condition::default()),
        };
        let effect = self.effect(reader, fields, subject);
        let then_node = fields.take("then");
        let then = then_node.map(|node| self.template(reader, node, subject));
        if let (Some(node), Some(effect)) = (then_node, &effect)
            && !matches!(effect, Effect::Caution(_) | Effect::Step(_))
        {
            reader.fault(
                node,
                "wrong-effect",
                "`then` says what to do: of a caution or a step, which this is not",
            );
        }
        if disputes
            && effect
                .as_ref()
                .is_some_and(|effect| effect.amount().is_none())
        {
            let message = "a rule that disputes another gives points, a start or an add";
            reader.fault(fields.node(), "wrong-effect", message);
        }
        let because = fields
            .require("because", reader)
            .and_then(|node| self.texts(reader, node, subject));
        let source = self.read_source(reader, fields);
        let practice = read_practice(reader, fields);
        let then = match then {
            Some(then) => Some(then?),
            None => None,
        };
        Some(Rule {
            id: String::new(),
            file: String::new(),
            overlay: false,
            subject: String::new(),
            when: when?,
            effect: effect?,
            disputes: None,
            then,
            because: because?,
            source: source?,
            practice,
            shows: Vec::new(),
        })
    }

    fn read_disputes(
        &self,
        reader: &mut Reader<'d>,
        fields: &mut Fields<'d>,
    ) -> Option<Reference<'d>> {
        let node = fields.take("disputes")?;
        let id = reader.text(node, "the id of a rule")?;
        Some(Reference { node, id })
    }

    /// Whether the id may be used: new, or that of a rule below which this one overrides.
    fn check_id(&self, reader: &mut Reader<'d>, node: &'d Node, id: &str, overrides: bool) -> bool {
        match (self.known.get(id), overrides) {
            (None, false) => true,
            (Some(known), true) if !known.new => true,
            (None, true) => {
                let message = format!("there is no rule `{id}` to override");
                let ids = self
                    .known
                    .iter()
                    .filter(|(_, known)| !known.new)
                    .map(|(id, _)| id.as_str());
                unknown(reader, node, "overrides-nothing", &message, id, ids);
                false
            }
            (Some(known), _) => {
                let message = format!("there is a rule `{id}` already, in {}", known.file);
                if known.new {
                    reader.fault(node, "repeated-id", message);
                } else {
                    let help = "say `override: true` to replace it";
                    reader.fault_with_help(node, "repeated-id", message, help);
                }
                false
            }
        }
    }

    /// The id of a subject that there is; `None` is told.
    pub(super) fn subject_named(&self, reader: &mut Reader<'d>, node: &'d Node) -> Option<String> {
        let id = reader.text(node, "the id of a subject")?;
        if !self.subjects.contains_key(id) {
            let ids = self.subjects.keys().map(String::as_str);
            unknown(
                reader,
                node,
                "unknown-subject",
                &format!("there is no subject `{id}`"),
                id,
                ids,
            );
            return None;
        }
        Some(id.to_owned())
    }

    /// Checks what a disputing rule names, once all rules are known.
    pub(super) fn check_dispute(
        &self,
        reader: &mut Reader<'d>,
        id: &str,
        reference: Reference<'d>,
    ) {
        let Reference { node, id: disputed } = reference;
        let Some(known) = self.rule_named(reader, node, disputed) else {
            return;
        };
        let subject = self.known.get(id).and_then(|known| known.subject.as_ref());
        if let (Some(subject), Some(other)) = (subject, &known.subject)
            && subject != other
        {
            let message = format!("`{disputed}` is about {other}, not about {subject}");
            reader.fault(node, "other-subject", message);
        } else if known.disputes && !self.followed.contains(disputed) {
            let message =
                format!("`{disputed}` disputes a rule itself, so it counts nothing to dispute");
            reader.fault(node, "disputes-a-dispute", message);
        }
    }
}

/// An id: small letters, digits and hyphens.
fn id_text<'d>(reader: &mut Reader<'d>, node: &'d Node) -> Option<&'d str> {
    let id = reader.text(node, "an id")?;
    let letters = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
    let fits = !id.is_empty() && id.chars().all(letters);
    if !fits {
        let message = format!("`{id}` is no id: small letters, digits and hyphens");
        reader.fault(node, "bad-id", message);
    }
    fits.then_some(id)
}

fn read_practice<'d>(reader: &mut Reader<'d>, fields: &mut Fields<'d>) -> Vec<String> {
    let items = fields
        .take("practice")
        .and_then(|node| reader.list(node, "the rows of practice"));
    let rows = items
        .unwrap_or_default()
        .iter()
        .filter_map(|item| reader.text(item, "a row of practice"));
    rows.map(str::to_owned).collect()
}
