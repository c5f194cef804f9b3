//! The built-in rule files, part of the program.

use std::sync::Arc;

use crate::document::{Document, Faults, Format};
use crate::rules::{RuleSet, Vocabulary};

macro_rules! files {
    ($($name:literal),* $(,)?) => {
        &[$((concat!("rules/", $name), include_str!(concat!("../../rules/", $name)))),*]
    };
}

/// Name and text of every file under `rules/`; a test holds that none is missing.
pub(super) const FILES: &[(&str, &str)] = files![
    "assumptions.yaml",
    "ball.yaml",
    "fingers.yaml",
    "glossary.yaml",
    "grip.yaml",
    "layout.yaml",
    "person.yaml",
    "sources.yaml",
    "spans.yaml",
    "subjects.yaml",
    "surface.yaml",
    "thumb.yaml",
    "weight.yaml",
    "work.yaml",
];

/// Reads the built-in rules.
pub(super) fn rules(vocabulary: &Arc<Vocabulary>) -> Result<RuleSet, Faults> {
    let mut documents = Vec::new();
    let mut faults = Faults::default();
    for (name, text) in FILES {
        match Document::parse(name, text.as_bytes(), Format::Yaml) {
            Ok(document) => documents.push(document),
            Err(found) => faults.merge(found),
        }
    }
    match RuleSet::read(vocabulary, &documents) {
        Ok(rules) if faults.is_empty() => Ok(rules),
        Ok(_) => Err(faults),
        Err(found) => {
            faults.merge(found);
            Err(faults)
        }
    }
}
