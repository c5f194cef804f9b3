//! How a changed answer is said: `rules/phrases.yaml`, one row an answer.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use super::reason::Texts;
use crate::document::{Document, Faults, Fields, Format, Node, Reader, nearest};
use crate::notation::Notation;
use crate::rules::{Audience, Kind, Origin, Vocabulary};
use crate::vocabulary::vocabulary;

/// Where the first value that changes the pick is filled in.
const VALUE: &str = "{value}";
/// Where the last value that keeps it is filled in.
const KEEPS: &str = "{keeps}";
/// Where the ends of a stretch are filled in.
const LOW: &str = "{low}";
const HIGH: &str = "{high}";

/// How one answer is said.
#[derive(Clone, Debug)]
pub struct Phrase {
    called: String,
    asked: Texts,
    steps: Steps,
}

/// How its values are said.
#[derive(Clone, Debug)]
enum Steps {
    /// From a value upward, and below a value.
    Number(Box<Number>),
    /// Each word of a choice, or `no` and `yes`.
    Words(Vec<Texts>),
    /// Each word of a set: with it, and without it.
    Bits { has: Vec<Texts>, lacks: Vec<Texts> },
}

/// How a number is said, and in what people count it.
#[derive(Clone, Debug)]
struct Number {
    from: Texts,
    below: Texts,
    at: Texts,
    between: Texts,
    /// In steps of its notation, above nothing.
    step: i64,
    of_a_ball: bool,
}

/// A step of an answer to be said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Step<'a> {
    From(&'a str),
    /// The last that keeps the pick, and the first that changes it.
    Below(&'a str, &'a str),
    At(&'a str),
    /// Both ends of a stretch.
    Between(&'a str, &'a str),
    Word(usize),
    Has(usize),
    Lacks(usize),
}

/// All phrases, by fact.
#[derive(Clone, Debug)]
pub struct Phrases(BTreeMap<&'static str, Phrase>);

impl Phrases {
    /// The table that is built in.
    ///
    /// # Errors
    /// None in a released crate: a test reads this very table.
    pub fn builtin() -> Result<&'static Phrases, Faults> {
        static TABLE: OnceLock<Result<Phrases, Faults>> = OnceLock::new();
        let table = TABLE.get_or_init(|| {
            let text = include_bytes!("../../rules/phrases.yaml");
            let document = Document::parse("rules/phrases.yaml", text, Format::Yaml)?;
            // A test holds that the vocabulary is sound.
            let vocabulary = vocabulary().map_err(|_| Faults::new())?;
            Phrases::read(&vocabulary, &document)
        });
        table.as_ref().map_err(Clone::clone)
    }

    /// Reads a table.
    ///
    /// # Errors
    /// Every fault with its place: unknown keys, facts that are no answers, an answer or a word that is said twice or not at all, a
    /// phrase for a number that doesn't say it.
    pub fn read(vocabulary: &Vocabulary, document: &Document) -> Result<Phrases, Faults> {
        let mut reader = Reader::new(document);
        let mut table = BTreeMap::new();
        if let Some(mut fields) = reader.fields(document.root(), "a table of phrases") {
            let rows = fields.require("phrases", &mut reader);
            for row in rows
                .and_then(|node| reader.list(node, "the phrases"))
                .unwrap_or_default()
            {
                read_row(&mut reader, vocabulary, row, &mut table);
            }
            fields.close(&mut reader);
        }
        reader.finish()?;
        Ok(Phrases(table))
    }

    /// Every text with the answer it is about; values aren't filled in.
    pub fn texts(&self) -> impl Iterator<Item = (&'static str, &Texts)> {
        self.0.iter().flat_map(|(fact, phrase)| {
            let steps: Vec<&Texts> = match &phrase.steps {
                Steps::Number(number) => {
                    vec![&number.from, &number.below, &number.at, &number.between]
                }
                Steps::Words(words) => words.iter().collect(),
                Steps::Bits { has, lacks } => has.iter().chain(lacks).collect(),
            };
            let all = std::iter::once(&phrase.asked).chain(steps);
            all.map(|texts| (*fact, texts))
        })
    }

    /// How an answer is said, if the table has it.
    #[must_use]
    pub fn of(&self, fact: &str) -> Option<&Phrase> {
        self.0.get(fact)
    }
}

impl Phrase {
    /// What it is called in the middle of a sentence: `your ball speed`.
    #[must_use]
    pub fn called(&self) -> &str {
        &self.called
    }

    /// How a sentence begins if the answer wasn't given: `If you told us your budget`.
    #[must_use]
    pub fn asked(&self) -> &Texts {
        &self.asked
    }

    /// What a customer counts this number in, in steps of its notation; 1 for what is no number.
    #[must_use]
    pub fn practical_step(&self) -> i64 {
        self.number().map_or(1, |number| number.step)
    }

    /// Whether it is a ball's weight, or one that a ball is held to.
    #[must_use]
    pub fn is_of_a_ball(&self) -> bool {
        self.number().is_some_and(|number| number.of_a_ball)
    }

    fn number(&self) -> Option<&Number> {
        match &self.steps {
            Steps::Number(number) => Some(number),
            Steps::Words(_) | Steps::Bits { .. } => None,
        }
    }

    /// How a sentence begins where the answer takes this step; none if the answer has no such step.
    pub(super) fn step(&self, step: Step<'_>) -> Option<Texts> {
        let filled = |texts: &Texts, place: &str, value: &str| Texts {
            newcomer: texts.newcomer.replace(place, value),
            league: texts.league.replace(place, value),
            fitter: texts.fitter.replace(place, value),
        };
        match (&self.steps, step) {
            (Steps::Number(number), Step::From(value)) => Some(filled(&number.from, VALUE, value)),
            (Steps::Number(number), Step::Below(keeps, value)) => {
                Some(filled(&filled(&number.below, KEEPS, keeps), VALUE, value))
            }
            (Steps::Number(number), Step::At(value)) => Some(filled(&number.at, VALUE, value)),
            (Steps::Number(number), Step::Between(low, high)) => {
                let low = without_unit(low, high);
                Some(filled(&filled(&number.between, LOW, low), HIGH, high))
            }
            (Steps::Words(words), Step::Word(word)) => words.get(word).cloned(),
            (Steps::Bits { has, .. }, Step::Has(bit)) => has.get(bit).cloned(),
            (Steps::Bits { lacks, .. }, Step::Lacks(bit)) => lacks.get(bit).cloned(),
            _ => None,
        }
    }
}

/// The first of two values; a unit that both have is said once, at the end.
pub(crate) fn without_unit<'t>(one: &'t str, other: &str) -> &'t str {
    // `4 1/2` has a fraction there, no unit.
    let is_unit = |unit: &str| unit.starts_with(char::is_alphabetic);
    match (one.rsplit_once(' '), other.rsplit_once(' ')) {
        (Some((number, unit)), Some((_, same))) if unit == same && is_unit(unit) => number,
        _ => one,
    }
}

fn read_row<'d>(
    reader: &mut Reader<'d>,
    vocabulary: &Vocabulary,
    row: &'d Node,
    table: &mut BTreeMap<&'static str, Phrase>,
) {
    let Some(mut fields) = reader.fields(row, "a phrase") else {
        return;
    };
    let named = fields.require("fact", reader);
    let fact = named.and_then(|node| answer_named(reader, vocabulary, node));
    let called = fields
        .require("called", reader)
        .and_then(|node| reader.text(node, "what it is called"));
    let asked = fields
        .require("asked", reader)
        .and_then(|node| texts(reader, node, &[]));
    let Some((name, kind)) = fact else {
        // What else the row may say hangs on the fact.
        let _ = fields.rest();
        return;
    };
    let steps = match kind {
        Kind::Number { notation, .. } => number(reader, &mut fields, notation),
        Kind::Choice(words) => words_of(reader, &mut fields, "words", words).map(Steps::Words),
        Kind::Flag => words_of(reader, &mut fields, "words", &["no", "yes"]).map(Steps::Words),
        Kind::Set(words) => {
            let has = words_of(reader, &mut fields, "has", words);
            let lacks = words_of(reader, &mut fields, "lacks", words);
            has.zip(lacks)
                .map(|(has, lacks)| Steps::Bits { has, lacks })
        }
    };
    fields.close(reader);
    if table.contains_key(name)
        && let Some(node) = named
    {
        reader.fault(node, "repeated-phrase", format!("`{name}` is said twice"));
    }
    if let (Some(called), Some(asked), Some(steps)) = (called, asked, steps) {
        let called = called.to_owned();
        table.insert(
            name,
            Phrase {
                called,
                asked,
                steps,
            },
        );
    }
}

fn answer_named<'d>(
    reader: &mut Reader<'d>,
    vocabulary: &Vocabulary,
    node: &'d Node,
) -> Option<(&'static str, Kind)> {
    let name = reader.text(node, "a fact")?;
    let answers = || {
        let facts = vocabulary.facts().iter();
        facts.filter(|fact| fact.origin == Origin::Answer)
    };
    let found = answers().find(|fact| fact.name == name);
    if found.is_none() {
        let message = format!("there is no answer `{name}`");
        match nearest(name, answers().map(|fact| fact.name)) {
            Some(near) => {
                let help = format!("did you mean `{near}`?");
                reader.fault_with_help(node, "unknown-fact", message, help);
            }
            None => reader.fault(node, "unknown-fact", message),
        }
    }
    found.map(|fact| (fact.name, fact.kind))
}

fn number<'d>(
    reader: &mut Reader<'d>,
    fields: &mut Fields<'d>,
    notation: Notation,
) -> Option<Steps> {
    let said: [(&'static str, &[&[&str]]); 4] = [
        ("from", &[&[VALUE]]),
        ("below", &[&[VALUE, KEEPS]]),
        ("at", &[&[VALUE]]),
        ("between", &[&[LOW], &[HIGH]]),
    ];
    let [from, below, at, between] = said.map(|(key, places)| {
        let node = fields.require(key, reader)?;
        texts(reader, node, places)
    });
    let step = fields.require("step", reader);
    let step = step.and_then(|node| step_of(reader, node, notation));
    let of_a_ball = fields.take("of_a_ball");
    let of_a_ball = of_a_ball.map(|node| reader.flag(node, "whether it is a ball's"));
    Some(Steps::Number(Box::new(Number {
        from: from?,
        below: below?,
        at: at?,
        between: between?,
        step: step?,
        of_a_ball: of_a_ball.unwrap_or(Some(false))?,
    })))
}

fn step_of<'d>(reader: &mut Reader<'d>, node: &'d Node, notation: Notation) -> Option<i64> {
    let text = reader.text(node, "the step")?;
    let step = notation.read(text).and_then(|step| match step {
        1.. => Ok(step),
        _ => Err("a step is more than nothing".to_owned()),
    });
    match step {
        Ok(step) => Some(step),
        Err(message) => {
            reader.fault(node, "bad-step", message);
            None
        }
    }
}

/// One phrase for each word, all of them.
fn words_of<'d>(
    reader: &mut Reader<'d>,
    fields: &mut Fields<'d>,
    key: &'static str,
    words: &'static [&'static str],
) -> Option<Vec<Texts>> {
    let node = fields.require(key, reader)?;
    let mut said = reader.fields(node, "the phrases of the words")?;
    let found: Vec<Option<Texts>> = words
        .iter()
        .map(|word| {
            let node = said.require(word, reader)?;
            texts(reader, node, &[])
        })
        .collect();
    said.close(reader);
    found.into_iter().collect()
}

/// One text for all, or one for each audience.
///
/// Of each group of places just one is said, once.
fn texts<'d>(reader: &mut Reader<'d>, node: &'d Node, places: &[&[&str]]) -> Option<Texts> {
    if node.text().is_some() || node.is_null() {
        return text(reader, node, places).map(Texts::alike);
    }
    let mut fields = reader.fields(node, "the phrase")?;
    let [newcomer, league, fitter] = ["newcomer", "league", "fitter"].map(|key| {
        let node = fields.require(key, reader)?;
        text(reader, node, places)
    });
    fields.close(reader);
    Some(Texts {
        newcomer: newcomer?.to_owned(),
        league: league?.to_owned(),
        fitter: fitter?.to_owned(),
    })
}

fn text<'d>(reader: &mut Reader<'d>, node: &'d Node, places: &[&[&str]]) -> Option<&'d str> {
    let text = reader.text(node, "a phrase")?;
    let times =
        |group: &&[&str]| -> usize { group.iter().map(|place| text.matches(place).count()).sum() };
    let is_said = places.iter().all(|group| times(group) == 1);
    if !is_said || text.matches(['{', '}']).count() != 2 * places.len() {
        let message = match places {
            [] => "a phrase for a word has no placeholder".to_owned(),
            _ => {
                let groups: Vec<String> = places.iter().map(|group| group.join("` or `")).collect();
                format!("this phrase says `{}` once", groups.join("` and `"))
            }
        };
        reader.fault(node, "bad-placeholder", message);
        return None;
    }
    Some(text)
}

impl Texts {
    /// The words for each audience, after the same beginning for each.
    pub(crate) fn after(&self, before: &Texts, between: &str) -> Texts {
        let joined = |audience| {
            let mut letters = self.of(audience).chars();
            let first = letters.next().map(|c| c.to_lowercase());
            let rest: String = first.into_iter().flatten().chain(letters).collect();
            format!("{}{between}{rest}", before.of(audience))
        };
        Texts {
            newcomer: joined(Audience::Newcomer),
            league: joined(Audience::League),
            fitter: joined(Audience::Fitter),
        }
    }
}
