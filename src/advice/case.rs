//! A consultation kept as data: who asks what, under which rules of a shop's own, and what ought to come out.

use std::path::{Path, PathBuf};

use super::outcome::Trouble;
use super::refit::Refit;
use super::result::Advice;
use super::roll::Roll;
use super::shop::Shop;
use super::upgrade::Upgrade;
use crate::bowler::Bowler;
use crate::document::{
    Content, Document, Fault, Faults, Fields, Format, Node, Reader, clean, yaml_and_json_in,
};

/// The longest ball id that is taken, in characters.
const LONGEST_BALL: usize = 200;

/// A consultation kept as data.
#[derive(Debug)]
pub struct Case {
    file: String,
    bowler: Bowler,
    questions: Vec<Question>,
    overlay: Option<Document>,
    prices: Option<Document>,
    practice: Vec<String>,
    expected: Vec<(String, Content)>,
}

/// What a case asks.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Question {
    /// Which ball, and how is it drilled.
    Advise,
    /// The same for this ball.
    Fit(String),
    /// The drilled ball of the fit card, drilled anew.
    Used,
    /// What is wrong with a fit.
    Refit,
    /// Which ball comes next, and when not to buy.
    Upgrade,
    /// What one ball does on a lane, or how two differ.
    Roll {
        /// One or two, each `model-id@weight` or what the bowler calls it.
        balls: Vec<String>,
        /// The lane's id in the catalog; none for the one that the bowler's lanes stand for.
        lane: Option<String>,
    },
}

/// What a question came to.
#[derive(Clone, Debug)]
pub enum Answer {
    /// A consultation.
    Advice(Box<Advice>),
    /// A refit.
    Refit(Box<Refit>),
    /// An upgrade path.
    Upgrade(Box<Upgrade>),
    /// A roll.
    Roll(Box<Roll>),
}

impl Case {
    /// Reads a document that is either a case (with the key `profile`) or the profile of a bowler.
    ///
    /// # Errors
    /// All faults of the document: unknown keys, missing ones, and whatever is wrong with the profile.
    pub fn read(document: &Document) -> Result<Case, Faults> {
        let is_case = match document.root().content() {
            Content::Map(pairs) => pairs
                .iter()
                .any(|(key, _)| matches!(key.text(), Some("profile" | "expect"))),
            _ => false,
        };
        if is_case {
            return read_case(document);
        }
        let bowler = Bowler::read(document)?;
        let mut questions = vec![Question::Advise];
        if bowler.answer("check.symptoms").is_some() || bowler.answer("check.rest_test").is_some() {
            questions.push(Question::Refit);
        }
        if !bowler.owned().is_empty() {
            questions.push(Question::Upgrade);
        }
        Ok(Case {
            file: document.name().to_owned(),
            bowler,
            questions,
            overlay: None,
            prices: None,
            practice: Vec::new(),
            expected: Vec::new(),
        })
    }

    /// Reads files and folders of them, in the order given; within a folder in the order of names. Of a folder only `.yaml`,
    /// `.yml` and `.json` files count.
    ///
    /// # Errors
    /// All faults of all files, and folders without a case.
    pub fn read_all(paths: &[PathBuf]) -> Result<Vec<Case>, Faults> {
        let mut cases = Vec::new();
        let mut faults = Faults::new();
        for path in paths {
            for file in files(path, &mut faults) {
                match Document::read(&file).and_then(|document| Case::read(&document)) {
                    Ok(case) => cases.push(case),
                    Err(found) => faults.merge(found),
                }
            }
        }
        faults.into_result()?;
        Ok(cases)
    }

    /// The name of its file.
    pub fn file(&self) -> &str {
        &self.file
    }
    /// Who asks.
    pub fn bowler(&self) -> &Bowler {
        &self.bowler
    }
    /// What is asked, one after another.
    pub fn questions(&self) -> &[Question] {
        &self.questions
    }
    /// The rows of common practice it stands for.
    pub fn practice(&self) -> &[String] {
        &self.practice
    }
    /// What ought to come out, key by key; nothing for a plain profile.
    pub fn expected(&self) -> &[(String, Content)] {
        &self.expected
    }

    /// The shop in which it is asked, where it brings rules of its own to lay over these, or other prices.
    ///
    /// # Errors
    /// All faults of the case's own rules and prices.
    pub(super) fn own_shop(&self, shop: &Shop) -> Result<Option<Shop>, Faults> {
        if self.overlay.is_none() && self.prices.is_none() {
            return Ok(None);
        }
        let rules = match &self.overlay {
            Some(overlay) => shop.rules().overlay(std::slice::from_ref(overlay))?,
            None => shop.rules().clone(),
        };
        let catalog = match &self.prices {
            Some(prices) => shop.catalog().priced(prices)?,
            None => shop.catalog().clone(),
        };
        Ok(Some(shop.with(rules, catalog)))
    }

    /// Asks all its questions.
    ///
    /// # Errors
    /// [`Trouble`] of a question, and all faults of the case's own rules.
    pub fn ask(&self, shop: &Shop) -> Result<Vec<Answer>, Trouble> {
        let each = self.questions.iter();
        each.map(|question| self.ask_for(shop, &self.bowler, question))
            .collect()
    }

    /// Asks one question for this bowler, under the case's own rules where it brings some.
    pub(super) fn ask_for(
        &self,
        shop: &Shop,
        bowler: &Bowler,
        question: &Question,
    ) -> Result<Answer, Trouble> {
        let own = self.own_shop(shop)?;
        let shop = own.as_ref().unwrap_or(shop);
        let advice = match question {
            Question::Refit => return Ok(Answer::Refit(Box::new(shop.refit(bowler)?))),
            Question::Upgrade => return Ok(Answer::Upgrade(Box::new(shop.upgrade(bowler)?))),
            Question::Roll { balls, lane } => {
                let roll = shop.roll(bowler, balls, lane.as_deref())?;
                return Ok(Answer::Roll(Box::new(roll)));
            }
            Question::Advise => shop.advise(bowler),
            Question::Fit(ball) => shop.fit(bowler, ball),
            Question::Used => shop.fit_used(bowler),
        };
        Ok(Answer::Advice(Box::new(advice?)))
    }
}

/// The file itself, or what lies in the folder.
fn files(path: &Path, faults: &mut Faults) -> Vec<PathBuf> {
    if !path.is_dir() {
        return vec![path.to_owned()];
    }
    let shown = clean(&path.display().to_string());
    let found = match yaml_and_json_in(path) {
        Ok(found) => found,
        Err(why) => {
            let message = format!("{shown} can't be read: {why}");
            faults.push(Fault::new("unreadable", message));
            return Vec::new();
        }
    };
    if found.is_empty() {
        let message = format!("{shown} holds no .yaml, .yml or .json file");
        faults.push(Fault::new("nothing-found", message));
    }
    found
}

/// A file whose text stands in a case.
fn file_within<'d>(
    node: &'d Node,
    what: &str,
    reader: &mut Reader<'d>,
    faults: &mut Faults,
) -> Option<Document> {
    let Some(text) = node.text() else {
        reader.fault(node, "shape", format!("`{what}` is the text of a file"));
        return None;
    };
    let name = format!("{} ({what})", reader.document().name());
    match Document::parse(&name, text.as_bytes(), Format::Yaml) {
        Ok(document) => Some(document),
        Err(found) => {
            faults.merge(found);
            None
        }
    }
}

/// What a case asks: at most one of the keys that say so.
fn question<'d>(fields: &mut Fields<'d>, reader: &mut Reader<'d>) -> Question {
    let mut asked: Vec<(&'d Node, Question)> = Vec::new();
    for (key, question) in [
        ("used", Question::Used),
        ("refit", Question::Refit),
        ("upgrade", Question::Upgrade),
    ] {
        if let Some(node) = fields.take(key)
            && reader.flag(node, key) == Some(true)
        {
            asked.push((node, question));
        }
    }
    let lane = fields.take("lane");
    if let Some(node) = fields.take("ball")
        && let Some(ball) = ball(node, reader)
    {
        asked.push((node, Question::Fit(ball)));
    }
    match fields.take("roll") {
        Some(node) => {
            let balls = reader.list(node, "the balls").unwrap_or(&[]);
            if !(1..=2).contains(&balls.len()) {
                reader.fault(node, "shape", "`roll` names one ball or two");
            }
            let balls = balls.iter().filter_map(|node| ball(node, reader)).collect();
            let lane = lane.and_then(|node| reader.text(node, "the lane"));
            let lane = lane.map(str::to_owned);
            asked.push((node, Question::Roll { balls, lane }));
        }
        None => {
            if let Some(node) = lane {
                reader.fault(node, "contradiction", "`lane` belongs to `roll`");
            }
        }
    }
    if let [_, (node, _), ..] = asked.as_slice() {
        let message =
            "a case asks one question: `ball`, `used: yes`, `refit: yes`, `upgrade: yes` or `roll`";
        reader.fault(node, "contradiction", message);
    }
    let first = asked.into_iter().next();
    first.map_or(Question::Advise, |(_, question)| question)
}

/// The id of a ball, or what somebody calls it.
fn ball<'d>(node: &'d Node, reader: &mut Reader<'d>) -> Option<String> {
    let name = reader.text(node, "the ball")?;
    if name.chars().count() > LONGEST_BALL {
        reader.fault(node, "shape", "a ball's id isn't as long as that");
    }
    Some(name.to_owned())
}

fn read_case(document: &Document) -> Result<Case, Faults> {
    let mut reader = Reader::new(document);
    let mut faults = Faults::new();
    let Some(mut fields) = reader.fields(document.root(), "the case") else {
        reader.finish()?;
        return Err(faults);
    };
    for key in ["name", "why", "source"] {
        if let Some(node) = fields.require(key, &mut reader)
            && node.text().is_none_or(|text| text.trim().is_empty())
        {
            reader.fault(node, "shape", format!("`{key}` says nothing"));
        }
    }
    let mut practice = Vec::new();
    if let Some(node) = fields.take("practice") {
        for row in reader.list(node, "the rows of practice").unwrap_or(&[]) {
            practice.extend(reader.text(row, "a row of practice").map(str::to_owned));
        }
    }
    let profile = fields.require("profile", &mut reader);
    let overlay = fields.take("overlay");
    let overlay = overlay.and_then(|node| file_within(node, "overlay", &mut reader, &mut faults));
    let prices = fields.take("prices");
    let prices = prices.and_then(|node| file_within(node, "prices", &mut reader, &mut faults));
    let question = question(&mut fields, &mut reader);
    let mut expected = Vec::new();
    if let Some(node) = fields.require("expect", &mut reader)
        && let Some(mut wanted) = reader.fields(node, "what is expected")
    {
        let pairs = wanted.rest().into_iter();
        expected.extend(pairs.map(|(key, value)| {
            let key = key.text().unwrap_or_default().to_owned();
            (key, value.content().clone())
        }));
        if expected.is_empty() {
            reader.fault(node, "shape", "the case expects nothing");
        }
    }
    fields.close(&mut reader);
    let bowler = profile.map(|node| Bowler::read_within(document, node));
    if let Err(found) = reader.finish() {
        faults.merge(found);
    }
    let bowler = match bowler {
        Some(Ok(bowler)) => Some(bowler),
        Some(Err(found)) => {
            faults.merge(found);
            None
        }
        None => None,
    };
    match bowler {
        Some(bowler) if faults.is_empty() => Ok(Case {
            file: document.name().to_owned(),
            bowler,
            questions: vec![question],
            overlay,
            prices,
            practice,
            expected,
        }),
        _ => Err(faults),
    }
}
