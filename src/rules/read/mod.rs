//! Reading rules: every fault of every file is reported, each at its place.
//!
//! Files may come in any order, so what others refer to is read first: sources, then subjects, then rules, and at last
//! what rules say of one another.

mod condition;
mod effect;
pub(super) mod parts;
mod plain;
mod rules;
mod sources;
mod subjects;
mod texts;
mod values;
mod words;

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use self::parts::{Parts, Reference};
use super::plain::PlainWords;
use super::rule::Rule;
use super::set::RuleSet;
use super::source::Source;
use super::subject::Subject;
use super::vocabulary::{FactId, Vocabulary};
use super::words::{Assumption, Word};
use crate::document::{Document, Faults, Node, Reader, nearest};

/// Something with an id that a file states; `None` if it is faulty, so that naming it is not a fault of its own.
pub(super) type Stated<T> = Option<T>;

/// What is known of a rule by its id, even if it is faulty.
#[derive(Clone, Debug)]
pub(super) struct Known {
    file: String,
    subject: Option<String>,
    pub(super) disputes: bool,
    /// Whether the files being read state it, not the set that they are laid over.
    new: bool,
}

/// What has been read so far.
pub(super) struct Reading<'d> {
    pub(super) vocabulary: &'d Vocabulary,
    /// Whether the files are laid over a set.
    pub(super) over: bool,
    pub(super) sources: BTreeMap<String, Stated<Source>>,
    pub(super) subjects: BTreeMap<String, Stated<Subject>>,
    pub(super) known: BTreeMap<String, Known>,
    /// The rules by id: those of the set below, then those of the files.
    pub(super) rules: BTreeMap<String, Rule>,
    pub(super) assumptions: BTreeMap<FactId, Assumption>,
    /// The assumptions that the files being read state, and where.
    pub(super) assumed: BTreeMap<FactId, String>,
    pub(super) glossary: BTreeMap<String, Word>,
    pub(super) plain: PlainWords,
    /// The words and forms that the files being read explain, in small letters.
    pub(super) explained: BTreeMap<String, String>,
    /// Which rule each disputing rule names.
    disputes: Vec<(usize, String, Reference<'d>)>,
    /// The disputing rules that a file follows; they count, so they may be disputed.
    followed: BTreeSet<&'d str>,
}

impl RuleSet {
    /// Reads rules, subjects, sources, assumptions and glossary from these documents, in whatever order.
    ///
    /// # Errors
    /// All faults of all documents.
    pub fn read(vocabulary: &Arc<Vocabulary>, documents: &[Document]) -> Result<RuleSet, Faults> {
        read(vocabulary, None, documents)
    }
}

/// Reads documents, over a set if one is given.
pub(super) fn read(
    vocabulary: &Arc<Vocabulary>,
    base: Option<&RuleSet>,
    documents: &[Document],
) -> Result<RuleSet, Faults> {
    let mut reading = Reading::new(vocabulary, base);
    let mut readers: Vec<Reader<'_>> = documents.iter().map(Reader::new).collect();
    let parts: Vec<Parts<'_>> = readers
        .iter_mut()
        .map(|reader| Parts::read(reader, reading.over))
        .collect();
    let mut files: Vec<_> = readers.iter_mut().zip(&parts).collect();
    for (reader, parts) in &mut files {
        reading.read_sources(reader, parts.sources);
    }
    for (reader, parts) in &mut files {
        reading.read_subjects(reader, parts.subjects);
    }
    for (index, (reader, parts)) in files.iter_mut().enumerate() {
        reading.read_rules(reader, index, parts);
        reading.read_assumptions(reader, parts.assumptions);
        reading.read_glossary(reader, parts.glossary);
        reading.read_plain_words(reader, parts.plain_words);
    }
    let follow = files.iter().flat_map(|(_, parts)| &parts.follow);
    reading.followed = follow.map(|reference| reference.id).collect();
    for (index, id, reference) in std::mem::take(&mut reading.disputes) {
        if let Some((reader, _)) = files.get_mut(index) {
            reading.check_dispute(reader, &id, reference);
        }
    }
    for (reader, parts) in &mut files {
        reading.check_overlay(reader, parts);
    }
    drop(files);
    finish(readers)?;
    let mut set = reading.into_set(vocabulary, base);
    for parts in &parts {
        set.apply_overlay(parts);
    }
    Ok(set)
}

/// The faults of all readers together, if there are any.
fn finish(readers: Vec<Reader<'_>>) -> Result<(), Faults> {
    let mut all: Option<Faults> = None;
    for faults in readers
        .into_iter()
        .filter_map(|reader| reader.finish().err())
    {
        match &mut all {
            None => all = Some(faults),
            Some(all) => all.merge(faults),
        }
    }
    all.map_or(Ok(()), Err)
}

impl<'d> Reading<'d> {
    fn new(vocabulary: &'d Vocabulary, base: Option<&RuleSet>) -> Reading<'d> {
        let mut reading = Reading {
            vocabulary,
            over: base.is_some(),
            sources: BTreeMap::new(),
            subjects: BTreeMap::new(),
            known: BTreeMap::new(),
            rules: BTreeMap::new(),
            assumptions: BTreeMap::new(),
            assumed: BTreeMap::new(),
            glossary: BTreeMap::new(),
            plain: PlainWords::default(),
            explained: BTreeMap::new(),
            disputes: Vec::new(),
            followed: BTreeSet::new(),
        };
        let Some(base) = base else { return reading };
        let named = |(key, source): (&String, &Source)| (key.clone(), Some(source.clone()));
        reading.sources = base.sources.iter().map(named).collect();
        for subject in &base.subjects {
            reading
                .subjects
                .insert(subject.id.clone(), Some(subject.clone()));
        }
        for rule in &base.rules {
            let known = Known {
                file: rule.file.clone(),
                subject: Some(rule.subject.clone()),
                disputes: rule.disputes.is_some(),
                new: false,
            };
            reading.known.insert(rule.id.clone(), known);
            reading.rules.insert(rule.id.clone(), rule.clone());
        }
        for assumption in &base.assumptions {
            reading
                .assumptions
                .insert(assumption.fact, assumption.clone());
        }
        reading.plain = base.plain.clone();
        for word in &base.glossary {
            reading
                .glossary
                .insert(word.word.to_lowercase(), word.clone());
        }
        reading
    }

    fn into_set(self, vocabulary: &Arc<Vocabulary>, base: Option<&RuleSet>) -> RuleSet {
        let vocabulary = base.map_or(vocabulary, |base| &base.vocabulary);
        let stated = |(key, source): (String, Stated<Source>)| Some((key, source?));
        RuleSet {
            vocabulary: Arc::clone(vocabulary),
            subjects: self.subjects.into_values().flatten().collect(),
            rules: self.rules.into_values().collect(),
            sources: self.sources.into_iter().filter_map(stated).collect(),
            assumptions: self.assumptions.into_values().collect(),
            glossary: self.glossary.into_values().collect(),
            plain: self.plain,
        }
    }

    /// The fact of this name; an unknown one is a fault at `node`.
    pub(super) fn fact(
        &self,
        reader: &mut Reader<'d>,
        node: &'d Node,
        name: &str,
    ) -> Option<FactId> {
        let found = self.vocabulary.id(name);
        if found.is_none() {
            let names = self.vocabulary.facts().iter().map(|fact| fact.name);
            unknown(
                reader,
                node,
                "unknown-fact",
                &format!("there is no fact `{name}`"),
                name,
                names,
            );
        }
        found
    }

    /// What is known of the rule of this id; one that there is not is a fault at `node`.
    pub(super) fn rule_named(
        &self,
        reader: &mut Reader<'d>,
        node: &'d Node,
        id: &str,
    ) -> Option<&Known> {
        let found = self.known.get(id);
        if found.is_none() {
            let ids = self.known.keys().map(String::as_str);
            unknown(
                reader,
                node,
                "unknown-rule",
                &format!("there is no rule `{id}`"),
                id,
                ids,
            );
        }
        found
    }
}

/// A fault about a name that there is not, with the nearest one that there is.
pub(super) fn unknown<'d, 'n>(
    reader: &mut Reader<'d>,
    node: &'d Node,
    code: &'static str,
    message: &str,
    name: &str,
    names: impl IntoIterator<Item = &'n str>,
) {
    match nearest(name, names) {
        Some(near) => {
            reader.fault_with_help(node, code, message, format!("did you mean `{near}`?"))
        }
        None => reader.fault(node, code, message),
    }
}
