//! A consultation as data: who, why, from where it is known, and what must come out.

use std::path::{Path, PathBuf};

use spanwright::advice::{Advice, Refit, Shop};
use spanwright::bowler::Bowler;
use spanwright::catalog::Catalog;
use spanwright::document::{Content, Document, Format};
use spanwright::report;
use spanwright::rules::Audience;

use crate::nodes::{json, list, map, text};

/// What a case asks.
pub enum Question {
    /// Which ball.
    Advise,
    /// How this one is drilled.
    Ball(String),
    /// How the drilled ball of the fit card is drilled anew.
    Used,
    /// What is wrong with a fit.
    Refit,
    /// Which ball comes next, if any.
    Upgrade,
    /// What these balls do, on this lane.
    Roll(Vec<String>, Option<String>),
}

/// One case file, read.
pub struct Case {
    pub file: String,
    pub practice: Vec<String>,
    pub bowler: Bowler,
    pub question: Question,
    /// A shop's own rules, laid over the built-in ones.
    overlay: Option<String>,
    /// Another shop's price list.
    prices: Option<String>,
    pub expected: Vec<(String, Content)>,
}

/// Every case file, by name.
pub fn all() -> Vec<Case> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/cases");
    let mut files: Vec<PathBuf> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    files.sort();
    files.iter().map(|file| read(file)).collect()
}

fn read(path: &Path) -> Case {
    let document = Document::read(path).unwrap_or_else(|faults| panic!("{faults}"));
    let file = path.file_name().unwrap().to_string_lossy().into_owned();
    let mut case = Case {
        file: file.clone(),
        practice: Vec::new(),
        bowler: Bowler::read(&Document::parse("empty", b"{}", Format::Json).unwrap()).unwrap(),
        question: Question::Advise,
        overlay: None,
        prices: None,
        expected: Vec::new(),
    };
    let mut told = Vec::new();
    let mut lane = None;
    for (key, value) in map(document.root()) {
        told.push(key.clone());
        match key.as_str() {
            "name" | "why" | "source" => assert!(!text(value).is_empty(), "{file}: {key}"),
            "practice" => case.practice = list(value),
            "profile" => {
                let json = json(value);
                let profile = Document::parse(&file, json.as_bytes(), Format::Json)
                    .unwrap_or_else(|faults| panic!("{file}: {faults}"));
                case.bowler =
                    Bowler::read(&profile).unwrap_or_else(|faults| panic!("{file}: {faults}"));
            }
            "overlay" => case.overlay = Some(text(value).to_owned()),
            "prices" => case.prices = Some(text(value).to_owned()),
            "refit" if text(value) == "yes" => case.question = Question::Refit,
            "used" if text(value) == "yes" => case.question = Question::Used,
            "upgrade" if text(value) == "yes" => case.question = Question::Upgrade,
            "refit" | "used" | "upgrade" => {}
            "ball" => case.question = Question::Ball(text(value).to_owned()),
            "roll" => case.question = Question::Roll(list(value), None),
            "lane" => lane = Some(text(value).to_owned()),
            "expect" => {
                case.expected = map(value)
                    .into_iter()
                    .map(|(k, v)| (k, v.content().clone()))
                    .collect()
            }
            other => panic!("{file}: unknown key {other}"),
        }
    }
    if let Some(lane) = lane {
        let Question::Roll(_, on) = &mut case.question else {
            panic!("{file}: a lane belongs to a roll");
        };
        *on = Some(lane);
    }
    for needed in ["name", "why", "source", "profile", "expect"] {
        assert!(
            told.iter().any(|key| key == needed),
            "{file} lacks {needed}"
        );
    }
    assert!(!case.expected.is_empty(), "{file} expects nothing");
    case
}

/// The answer document of a case, for the fitter.
pub fn answer(shop: &Shop, case: &Case) -> String {
    with_overlay(shop, case, |shop| match &case.question {
        Question::Refit => report::refit_json(&refit(shop, case), Audience::Fitter),
        Question::Upgrade => match shop.upgrade(&case.bowler) {
            Ok(upgrade) => super::upgrade::document(&upgrade),
            Err(trouble) => trouble.to_string(),
        },
        Question::Roll(balls, lane) => match shop.roll(&case.bowler, balls, lane.as_deref()) {
            Ok(roll) => super::roll::document(&roll),
            Err(trouble) => trouble.to_string(),
        },
        _ => report::json(&advise(shop, case), Audience::Fitter),
    })
}

/// What comes out otherwise than argued.
pub fn wrong(shop: &Shop, case: &Case) -> Vec<String> {
    with_overlay(shop, case, |shop| match &case.question {
        Question::Refit => super::refit::differences(case, &refit(shop, case)),
        Question::Upgrade => match shop.upgrade(&case.bowler) {
            Ok(upgrade) => super::upgrade::differences(case, &upgrade),
            Err(trouble) => vec![format!("{}: {trouble}", case.file)],
        },
        Question::Roll(balls, lane) => match shop.roll(&case.bowler, balls, lane.as_deref()) {
            Ok(roll) => super::roll::differences(case, &roll),
            Err(trouble) => vec![format!("{}: {trouble}", case.file)],
        },
        _ => super::advice::differences(case, &advise(shop, case)),
    })
}

/// With the case's own rules laid over and at its own prices, if it has some.
fn with_overlay<T>(shop: &Shop, case: &Case, ask: impl Fn(&Shop) -> T) -> T {
    if case.overlay.is_none() && case.prices.is_none() {
        return ask(shop);
    }
    let document = |text: &String| {
        Document::parse(&case.file, text.as_bytes(), Format::Yaml)
            .unwrap_or_else(|faults| panic!("{faults}"))
    };
    let overlay: Vec<Document> = case.overlay.iter().map(document).collect();
    let rules = shop.rules().overlay(&overlay);
    let mut catalog = Catalog::demo().unwrap();
    if let Some(prices) = &case.prices {
        let priced = catalog.priced(&document(prices));
        catalog = priced.unwrap_or_else(|faults| panic!("{faults}"));
    }
    ask(&Shop::of(
        rules.unwrap_or_else(|faults| panic!("{faults}")),
        catalog,
    ))
}

fn refit(shop: &Shop, case: &Case) -> Refit {
    shop.refit(&case.bowler)
        .unwrap_or_else(|trouble| panic!("{}: {trouble}", case.file))
}

fn advise(shop: &Shop, case: &Case) -> Advice {
    match &case.question {
        Question::Ball(ball) => shop.fit(&case.bowler, ball),
        Question::Used => shop.fit_used(&case.bowler),
        _ => shop.advise(&case.bowler),
    }
    .unwrap_or_else(|trouble| panic!("{}: {trouble}", case.file))
}
