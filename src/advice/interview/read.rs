//! Reads the table of questions: every fault with its place.

use std::sync::OnceLock;

use super::question::{Choice, Form, Quantity, Question};
use super::spoken::plain;
use super::texts::{ask_back, number, numbers, pairs, sayings, sentences, spoken, texts};
use super::when::{Wanted, Wish};
use crate::bowler::{self, Shape};
use crate::document::{Content, Document, Faults, Format, Node, Reader, nearest};

/// The questions of the interview, and what people say to any of them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Questions {
    pub(super) list: Vec<Question>,
    /// Answers that are never asked for, each with the reason.
    pub(super) never_asked: Vec<(&'static str, String)>,
    pub(super) not_known: Vec<String>,
    pub(super) help: Vec<String>,
    pub(super) back: Vec<String>,
    pub(super) stop: Vec<String>,
    pub(super) filler: Vec<String>,
    pub(super) same: Vec<(String, String)>,
    pub(super) yes: Vec<String>,
    pub(super) no: Vec<String>,
    /// Other spellings, whatever the question.
    pub(super) spelling: Vec<(String, String)>,
    pub(super) numbers: Vec<(String, i64)>,
}

impl Questions {
    /// The table that is built in, `rules/questions.yaml`.
    pub(super) fn builtin() -> Result<&'static Questions, Faults> {
        static TABLE: OnceLock<Result<Questions, Faults>> = OnceLock::new();
        let table = TABLE.get_or_init(|| {
            let text = include_bytes!("../../../rules/questions.yaml");
            Document::parse("rules/questions.yaml", text, Format::Yaml)
                .and_then(|document| Questions::read(&document))
        });
        table.as_ref().map_err(Clone::clone)
    }

    /// Reads a table; a question's conditions name only answers of questions before it.
    pub(super) fn read(document: &Document) -> Result<Questions, Faults> {
        let mut reader = Reader::new(document);
        let mut table = Questions::default();
        if let Some(mut fields) = reader.fields(document.root(), "the table of questions") {
            if let Some(node) = fields.require("questions", &mut reader) {
                for item in reader.list(node, "the questions").unwrap_or_default() {
                    if let Some(question) = question(&mut reader, item, &table.list) {
                        table.list.push(question);
                    }
                }
            }
            if let Some(node) = fields.take("never_asked") {
                table.never_asked = never_asked(&mut reader, node, &table.list);
            }
            if let Some(node) = fields.require("words", &mut reader)
                && let Some(mut words) = reader.fields(node, "the words")
            {
                for (key, list) in [
                    ("not_known", &mut table.not_known),
                    ("help", &mut table.help),
                    ("back", &mut table.back),
                    ("stop", &mut table.stop),
                ] {
                    if let Some(node) = words.require(key, &mut reader) {
                        *list = sayings(&mut reader, node);
                    }
                }
                (table.yes, _) = spoken(&mut reader, &mut words, "yes");
                (table.no, _) = spoken(&mut reader, &mut words, "no");
                words.close(&mut reader);
            }
            if let Some(node) = fields.take("filler") {
                table.filler = sayings(&mut reader, node);
            }
            table.same = pairs(&mut reader, &mut fields, "same");
            table.spelling = pairs(&mut reader, &mut fields, "spelling");
            table.numbers = numbers(&mut reader, &mut fields, "numbers");
            fields.close(&mut reader);
        }
        reader.finish()?;
        // Longer words first, so that "at most" isn't taken apart.
        table
            .filler
            .sort_by_key(|word| std::cmp::Reverse(word.len()));
        Ok(table)
    }

    /// The question with this id.
    pub(super) fn find(&self, id: &str) -> Option<&Question> {
        self.list.iter().find(|question| question.id == id)
    }
}

/// The name of an answer, which must be one.
fn answer<'d>(reader: &mut Reader<'d>, node: &'d Node) -> Option<&'static str> {
    let text = reader.text(node, "the name of an answer")?;
    let found = bowler::answer(text).map(bowler::Answer::name);
    if found.is_none() {
        let names = bowler::ANSWERS.iter().map(bowler::Answer::name);
        let message = format!("no answer is called `{}`", crate::document::clean(text));
        match nearest(text, names) {
            Some(name) => {
                let help = format!("did you mean `{name}`?");
                reader.fault_with_help(node, "unknown-fact", message, help);
            }
            None => reader.fault(node, "unknown-fact", message),
        }
    }
    found
}

fn question<'d>(reader: &mut Reader<'d>, item: &'d Node, before: &[Question]) -> Option<Question> {
    let mut fields = reader.fields(item, "a question")?;
    let id = fields.require("id", reader);
    let id_text = id.and_then(|node| reader.text(node, "the id"));
    if let (Some(node), Some(text)) = (id, id_text)
        && before.iter().any(|other| other.id == text)
    {
        reader.fault(
            node,
            "repeated",
            format!("a question has the id `{text}` already"),
        );
    }
    let answers = fields.require("answers", reader);
    let answers = answers.map(|node| names(reader, node, before));
    let answers = answers.unwrap_or_default();
    let when = fields.take("when");
    let when = when.map(|node| wishes(reader, node, before));
    let cost = fields.require("cost", reader);
    let cost = cost.and_then(|node| number(reader, node));
    let ask = fields.require("ask", reader);
    let ask = ask.and_then(|node| sentences(reader, node, "the question"));
    let help = fields.require("help", reader);
    let help = help.and_then(|node| sentences(reader, node, "the help"));
    let balls = fields.take("form");
    let balls = balls.and_then(|node| reader.choice(node, "the form", &["balls"]));
    let shape = |name: &&'static str| bowler::answer(name).map(bowler::Answer::shape);
    let is_number = |name: &&&'static str| matches!(shape(name), Some(Shape::Number { .. }));
    let chosen = answers.iter().find(|name| !is_number(name)).copied();
    let quantity = answers.iter().find(is_number).filter(|_| balls.is_none());
    let quantity = quantity.and_then(|name| match shape(name)? {
        Shape::Number {
            notation,
            lowest,
            highest,
            ..
        } => Some(Quantity {
            answer: name,
            notation,
            lowest,
            highest,
        }),
        _ => None,
    });
    let form = match chosen.as_ref().and_then(shape) {
        _ if balls.is_some() => Form::Balls,
        Some(Shape::Set(_)) => Form::Several,
        _ => Form::One,
    };
    let choices = match (fields.take("choices"), chosen) {
        (Some(node), Some(name)) => choices(reader, node, name),
        (Some(node), None) => {
            reader.fault(node, "wrong-matcher", "a number has no choices");
            Vec::new()
        }
        (None, Some(name)) => {
            let message = format!("`{name}` has words to choose from, and no `choices` say them");
            reader.fault(item, "missing", message);
            Vec::new()
        }
        (None, None) => Vec::new(),
    };
    let such_as = fields.take("such_as").map(|node| texts(reader, node));
    if let (Some(_), None) = (quantity, &such_as) {
        reader.fault(
            item,
            "missing",
            "a number needs `such_as`, examples of what to say",
        );
    }
    let mut list = |key| spoken(reader, &mut fields, key);
    let (none, none_label) = list("none");
    let (other, other_label) = list("other");
    let (open, open_label) = list("open");
    let (at_the_pins, _) = list("at_the_pins");
    let (at_release, _) = list("at_release");
    let (at_most, _) = list("at_most");
    let back = fields.take("ask_back");
    let back = back.and_then(|node| ask_back(reader, node));
    fields.close(reader);
    Some(Question {
        id: id_text?.to_owned(),
        answers,
        when: when.unwrap_or_default(),
        cost: cost?,
        ask: ask?,
        help: help?,
        form,
        quantity,
        chosen,
        choices,
        such_as: such_as.unwrap_or_default(),
        none,
        none_label,
        other,
        other_label,
        open,
        open_label,
        at_most,
        ask_back: back,
        at_the_pins,
        at_release,
    })
}

/// The answers of a question; no other question asks for them.
fn names<'d>(reader: &mut Reader<'d>, node: &'d Node, before: &[Question]) -> Vec<&'static str> {
    let mut names = Vec::new();
    let items = reader.list(node, "the answers").unwrap_or_default();
    if items.is_empty() {
        reader.fault(node, "missing", "a question asks for an answer at least");
    }
    for item in items {
        let Some(name) = answer(reader, item) else {
            continue;
        };
        let taken = before.iter().find(|other| other.answers.contains(&name));
        if let Some(other) = taken {
            let message = format!("`{}` asks for `{name}` already", other.id);
            reader.fault(item, "repeated", message);
        }
        names.push(name);
    }
    names
}

fn wishes<'d>(reader: &mut Reader<'d>, node: &'d Node, before: &[Question]) -> Vec<Wish> {
    let Some(mut fields) = reader.fields(node, "the conditions") else {
        return Vec::new();
    };
    let mut wishes = Vec::new();
    for (key, value) in fields.rest() {
        let Some(name) = answer(reader, key) else {
            continue;
        };
        if !before.iter().any(|other| other.answers.contains(&name)) {
            let message = format!("no question before this one asks for `{name}`");
            let help = "a condition looks at what was asked earlier";
            reader.fault_with_help(key, "unknown-fact", message, help);
        }
        if let Some(wanted) = wanted(reader, value, name) {
            wishes.push(Wish {
                answer: name,
                wanted,
            });
        }
    }
    fields.close(reader);
    wishes
}

fn wanted<'d>(reader: &mut Reader<'d>, node: &'d Node, name: &'static str) -> Option<Wanted> {
    let words = words(name);
    if let Content::Map(_) = node.content() {
        let mut fields = reader.fields(node, "a matcher")?;
        let bits = fields.take("has_any").map(|node| {
            let items = reader.list(node, "the words").unwrap_or_default();
            let indices = items.iter().map(|item| reader.choice(item, name, words));
            indices
                .flatten()
                .fold(0, |bits, index| bits | 1_i64 << index)
        });
        let known = fields.take("known");
        let known = known.and_then(|node| reader.choice(node, "a condition", &["yes"]));
        fields.close(reader);
        let wanted = match (bits, known) {
            (Some(bits), None) => Some(Wanted::HasAny(bits)),
            (None, Some(_)) => Some(Wanted::Known),
            _ => None,
        };
        if wanted.is_none() {
            let help = "write `{ has_any: [...] }` or `{ known: yes }`";
            reader.fault_with_help(node, "wrong-matcher", "this says nothing", help);
        }
        return wanted;
    }
    let one = |reader: &mut Reader<'d>, node: &'d Node| {
        let index = reader.choice(node, name, words)?;
        i64::try_from(index).ok()
    };
    let values = match node.content() {
        Content::List(items) => items.iter().filter_map(|item| one(reader, item)).collect(),
        _ => vec![one(reader, node)?],
    };
    Some(Wanted::OneOf(values))
}

/// The words of a choice, a set or a flag.
fn words(name: &str) -> &'static [&'static str] {
    match bowler::answer(name).map(bowler::Answer::shape) {
        Some(Shape::Choice(words) | Shape::Set(words)) => words,
        Some(Shape::Flag) => &["no", "yes"],
        _ => &[],
    }
}

/// What people say for each word; every word has its saying, and no saying means two words.
fn choices<'d>(reader: &mut Reader<'d>, node: &'d Node, name: &'static str) -> Vec<Choice> {
    let words = words(name);
    let mut choices: Vec<Choice> = Vec::new();
    let Some(mut fields) = reader.fields(node, "the choices") else {
        return choices;
    };
    for (key, value) in fields.rest() {
        let Some(index) = reader.choice(key, name, words) else {
            continue;
        };
        let said = texts(reader, value);
        let sayings: Vec<String> = said.iter().map(|text| plain(text)).collect();
        let taken = choices
            .iter()
            .flat_map(|other| &other.sayings)
            .find(|other| sayings.contains(other));
        if let Some(taken) = taken {
            let message = format!("`{taken}` would mean two things");
            reader.fault(value, "repeated", message);
        }
        let (Some(label), Ok(value), Some(word)) =
            (said.first(), i64::try_from(index), words.get(index))
        else {
            continue;
        };
        choices.push(Choice {
            value,
            word,
            label: label.clone(),
            sayings,
        });
    }
    fields.close(reader);
    for (index, word) in words.iter().enumerate() {
        if !choices.iter().any(|choice| choice.value == index as i64) {
            let message = format!("nothing is said for `{word}` of `{name}`");
            reader.fault(node, "missing", message);
        }
    }
    choices
}

fn never_asked<'d>(
    reader: &mut Reader<'d>,
    node: &'d Node,
    questions: &[Question],
) -> Vec<(&'static str, String)> {
    let mut list = Vec::new();
    for item in reader.list(node, "what is never asked").unwrap_or_default() {
        let Some(mut fields) = reader.fields(item, "an answer that is never asked for") else {
            continue;
        };
        let named = fields.require("answer", reader);
        let name = named.and_then(|node| answer(reader, node));
        let because = fields.require("because", reader);
        let because = because.and_then(|node| reader.sentence(node, "the reason"));
        fields.close(reader);
        let (Some(named), Some(name), Some(because)) = (named, name, because) else {
            continue;
        };
        if let Some(question) = questions.iter().find(|one| one.answers.contains(&name)) {
            let message = format!("`{}` asks for it", question.id);
            reader.fault(named, "contradiction", message);
        }
        list.push((name, because.to_owned()));
    }
    list
}

#[cfg(test)]
mod tests;
