//! `facts`: every fact that a rule may name.

use serde::Serialize;

use super::Refusal;
use super::arguments::Facts;
use super::output;
use crate::advice::Shop;
use crate::report::{Head, written};
use crate::rules::{Kind, Origin, Vocabulary};

#[derive(Serialize)]
struct FactList<'a> {
    #[serde(flatten)]
    head: Head<'a>,
    facts: Vec<FactDoc<'a>>,
}

#[derive(Serialize)]
struct FactDoc<'a> {
    name: &'a str,
    meaning: &'a str,
    kind: &'static str,
    values: &'a [&'a str],
    lowest: Option<String>,
    highest: Option<String>,
    step: Option<String>,
    origin: &'static str,
    from: &'a str,
    subject: Option<&'a str>,
}

/// Lists the facts in the order of the vocabulary.
pub(super) fn list(ask: &Facts) -> Result<(), Refusal> {
    let shop = Shop::open(&ask.shop.files()).map_err(|trouble| trouble.to_string())?;
    let facts = documents(shop.vocabulary());
    let text = if ask.output.json {
        let list = FactList {
            head: Head::new("facts"),
            facts,
        };
        written(&list)
    } else {
        let (width, _) = output::surface(&ask.output);
        facts.iter().map(|fact| fact.text(width)).collect()
    };
    output::put(&ask.output, &text)
}

fn documents(vocabulary: &Vocabulary) -> Vec<FactDoc<'_>> {
    let mut documents = Vec::with_capacity(vocabulary.facts().len());
    for fact in vocabulary.facts() {
        let id = vocabulary.id(fact.name);
        let print = |value| id.map(|id| vocabulary.print(id, value));
        let (kind, bounds) = match fact.kind {
            Kind::Number {
                lowest, highest, ..
            } => ("number", Some((lowest, highest))),
            Kind::Choice(_) => ("choice", None),
            Kind::Flag => ("yes or no", None),
            Kind::Set(_) => ("set", None),
        };
        documents.push(FactDoc {
            name: fact.name,
            meaning: fact.meaning,
            kind,
            values: if kind == "yes or no" {
                &[]
            } else {
                fact.words()
            },
            lowest: bounds.and_then(|(lowest, _)| print(lowest)),
            highest: bounds.and_then(|(_, highest)| print(highest)),
            step: bounds.and_then(|_| print(1)),
            origin: match fact.origin {
                Origin::Answer => "answer",
                Origin::Settled => "settled",
                Origin::Worked => "worked out",
                Origin::Candidate => "of each candidate",
                Origin::Derived => "worked out for each candidate",
            },
            from: fact.from,
            subject: fact.subject,
        });
    }
    documents
}

impl FactDoc<'_> {
    /// Name and values in a line, then what it means and where it comes from.
    fn text(&self, width: usize) -> String {
        let values = match (&self.lowest, &self.highest, &self.step) {
            (Some(lowest), Some(highest), Some(step)) => {
                format!("number from {lowest} to {highest}, in steps of {step}")
            }
            _ if self.values.is_empty() => self.kind.to_owned(),
            _ => format!("{}: {}", self.kind, self.values.join(", ")),
        };
        let origin = match self.subject {
            Some(subject) => format!("{} ({subject})", self.origin),
            None => self.origin.to_owned(),
        };
        let paragraphs = [
            format!("{values}."),
            sentence(self.meaning),
            format!("From: {} ({origin}).", self.from.trim_end_matches('.')),
        ];
        let mut text = format!("{}\n", self.name);
        for paragraph in paragraphs {
            let options = textwrap::Options::new(width)
                .initial_indent("    ")
                .subsequent_indent("    ");
            for line in textwrap::wrap(&paragraph, options) {
                text.push_str(&line);
                text.push('\n');
            }
        }
        text
    }
}

/// With a capital and a full stop.
fn sentence(words: &str) -> String {
    let mut letters = words.chars();
    let first = letters.next().into_iter().flat_map(char::to_uppercase);
    let stop = if words.ends_with(['.', '!', '?']) {
        ""
    } else {
        "."
    };
    format!("{}{}{stop}", first.collect::<String>(), letters.as_str())
}
