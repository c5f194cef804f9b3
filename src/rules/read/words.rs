//! Reading assumptions and the glossary.

use super::Reading;
use crate::document::{Content, Fields, Node, Reader};
use crate::rules::vocabulary::{FactId, Kind, Origin};
use crate::rules::words::{Assumption, Word};

/// What stands in for an answer.
enum Assumed {
    Value(i64),
    Needed,
    Absent,
}

impl<'d> Reading<'d> {
    /// The `assumptions` of a file.
    pub(super) fn read_assumptions(&mut self, reader: &mut Reader<'d>, node: Option<&'d Node>) {
        let items = node.and_then(|node| reader.list(node, "the assumptions"));
        for item in items.unwrap_or_default() {
            self.read_assumption(reader, item);
        }
    }

    fn read_assumption(&mut self, reader: &mut Reader<'d>, node: &'d Node) {
        let Some(mut fields) = reader.fields(node, "an assumption") else {
            return;
        };
        let named = fields.require("fact", reader);
        let fact = named.and_then(|node| self.answer_named(reader, node));
        let assumed = self.assumed(reader, &mut fields, fact);
        let because = fields
            .require("because", reader)
            .and_then(|node| self.texts(reader, node, None));
        let source = self.read_source(reader, &mut fields);
        fields.close(reader);
        let (Some(fact), Some(named)) = (fact, named) else {
            return;
        };
        let file = reader.document().name().to_owned();
        if let Some(other) = self.assumed.get(&fact) {
            let message = format!(
                "`{}` has an assumption already, in {other}",
                self.vocabulary.fact(fact).name
            );
            reader.fault(named, "repeated-assumption", message);
            return;
        }
        self.assumed.insert(fact, file.clone());
        if let (Some(assumed), Some(because), Some(source)) = (assumed, because, source) {
            let value = match assumed {
                Assumed::Value(value) => Some(value),
                Assumed::Needed | Assumed::Absent => None,
            };
            let needed = matches!(assumed, Assumed::Needed);
            let stated = Assumption {
                fact,
                value,
                needed,
                because,
                source,
                file,
            };
            self.assumptions.insert(fact, stated);
        }
    }

    /// The fact that an assumption is about, which is an answer.
    fn answer_named(&self, reader: &mut Reader<'d>, node: &'d Node) -> Option<FactId> {
        let name = reader.text(node, "a fact")?;
        let id = self.fact(reader, node, name)?;
        let is_answer = self.vocabulary.fact(id).origin == Origin::Answer;
        if !is_answer {
            let message = format!("`{name}` is no answer; only answers are assumed");
            reader.fault(node, "not-an-answer", message);
        }
        is_answer.then_some(id)
    }

    /// What stands in for the answer: a value, or that it is needed, or that rules get along without.
    fn assumed(
        &self,
        reader: &mut Reader<'d>,
        fields: &mut Fields<'d>,
        fact: Option<FactId>,
    ) -> Option<Assumed> {
        let mut found: Vec<(&'static str, &'d Node)> = Vec::new();
        for key in ["value", "needed", "absent"] {
            found.extend(fields.take(key).map(|node| (key, node)));
        }
        let Some(&(key, node)) = found.first() else {
            let message = "an assumption needs `value`, `needed: true` or `absent: true`";
            reader.fault(fields.node(), "missing", message);
            return None;
        };
        if let Some(&(second, node)) = found.get(1) {
            let message = format!("`{second}` beside `{key}`: say one of them");
            reader.fault(node, "two-effects", message);
            return None;
        }
        if key == "value" {
            return self.assumed_value(reader, node, fact?).map(Assumed::Value);
        }
        let flag = reader.flag(node, key)?;
        if !flag {
            reader.fault(
                node,
                "no-effect",
                format!("`{key}: false` says nothing; give a `value`"),
            );
            return None;
        }
        Some(if key == "needed" {
            Assumed::Needed
        } else {
            Assumed::Absent
        })
    }

    fn assumed_value(&self, reader: &mut Reader<'d>, node: &'d Node, fact: FactId) -> Option<i64> {
        match (self.vocabulary.fact(fact).kind, node.content()) {
            (Kind::Set(_), Content::List(_)) => {
                let bits = self.values(reader, node, fact)?;
                Some(bits.into_iter().fold(0, |mask, bit| mask | bit))
            }
            (Kind::Set(words), _) if node.text() == Some("none") && !words.contains(&"none") => {
                Some(0)
            }
            _ => self.value(reader, node, fact),
        }
    }

    /// The `glossary` of a file.
    pub(super) fn read_glossary(&mut self, reader: &mut Reader<'d>, node: Option<&'d Node>) {
        let items = node.and_then(|node| reader.list(node, "the glossary"));
        for item in items.unwrap_or_default() {
            self.read_word(reader, item);
        }
    }

    fn read_word(&mut self, reader: &mut Reader<'d>, node: &'d Node) {
        let Some(mut fields) = reader.fields(node, "a word with its meaning") else {
            return;
        };
        let named = fields.require("word", reader);
        let word = named.and_then(|node| reader.text(node, "a word"));
        let forms = fields
            .take("also")
            .and_then(|node| reader.list(node, "the other forms"));
        let meaning = fields
            .require("meaning", reader)
            .and_then(|node| reader.sentence(node, "a meaning"));
        let mut also = Vec::new();
        let mut new = true;
        if let (Some(named), Some(word)) = (named, word) {
            new &= self.explain(reader, named, word);
        }
        for form in forms.unwrap_or_default() {
            let Some(text) = reader.text(form, "a form") else {
                continue;
            };
            new &= self.explain(reader, form, text);
            also.push(text.to_owned());
        }
        fields.close(reader);
        if let (true, Some(word), Some(meaning)) = (new, word, meaning) {
            let stated = Word {
                word: word.to_owned(),
                also,
                meaning: meaning.to_owned(),
            };
            self.glossary.insert(word.to_lowercase(), stated);
        }
    }

    /// Notes that a word is explained; twice is a fault.
    fn explain(&mut self, reader: &mut Reader<'d>, node: &'d Node, word: &str) -> bool {
        let file = reader.document().name().to_owned();
        let before = self.explained.insert(word.to_lowercase(), file);
        if let Some(other) = &before {
            reader.fault(
                node,
                "repeated-word",
                format!("`{word}` is explained already, in {other}"),
            );
        }
        before.is_none()
    }
}
