//! A consultation as data: who, why, from where it is known, and what must come out.

use std::path::{Path, PathBuf};

use spanwright::advice::{Advice, Reason, Refit, Shop, SpecNumber};
use spanwright::bowler::Bowler;
use spanwright::catalog::Catalog;
use spanwright::document::{Content, Document, Format};
use spanwright::report;
use spanwright::rules::Audience;

use crate::nodes::{items, json, list, lists, map, pairs, scalar, text};
use crate::says;

/// One case file, read.
pub struct Case {
    pub file: String,
    pub practice: Vec<String>,
    pub bowler: Bowler,
    pub ball: Option<String>,
    /// The question is what is wrong with a fit, not which ball.
    pub refit: bool,
    /// The drilled ball of the fit card is fitted, not one from the shelf.
    used: bool,
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
        ball: None,
        refit: false,
        used: false,
        overlay: None,
        prices: None,
        expected: Vec::new(),
    };
    let mut told = Vec::new();
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
            "refit" => case.refit = text(value) == "yes",
            "used" => case.used = text(value) == "yes",
            "ball" => case.ball = Some(text(value).to_owned()),
            "expect" => {
                case.expected = map(value)
                    .into_iter()
                    .map(|(k, v)| (k, v.content().clone()))
                    .collect()
            }
            other => panic!("{file}: unknown key {other}"),
        }
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
    with_overlay(shop, case, |shop| match case.refit {
        true => report::refit_json(&refit(shop, case), Audience::Fitter),
        false => report::json(&advise(shop, case), Audience::Fitter),
    })
}

/// What comes out otherwise than argued.
pub fn wrong(shop: &Shop, case: &Case) -> Vec<String> {
    with_overlay(shop, case, |shop| match case.refit {
        true => super::refit::differences(case, &refit(shop, case)),
        false => differences(case, &advise(shop, case)),
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
    match &case.ball {
        Some(ball) => shop.fit(&case.bowler, ball),
        None if case.used => shop.fit_used(&case.bowler),
        None => shop.advise(&case.bowler),
    }
    .unwrap_or_else(|trouble| panic!("{}: {trouble}", case.file))
}

/// Everything that is otherwise than expected.
fn differences(case: &Case, advice: &Advice) -> Vec<String> {
    let mut wrong = Vec::new();
    let mut same = |what: String, found: String, wanted: &str| {
        if found != wanted {
            wrong.push(format!(
                "{}: {what} is `{found}`, expected `{wanted}`",
                case.file
            ));
        }
    };
    for (key, content) in &case.expected {
        let best = advice.picks().first();
        match key.as_str() {
            "settled" => {
                for (stage, wanted) in pairs(content) {
                    let found = advice.settled().iter().find(|s| s.stage() == stage);
                    same(
                        stage,
                        found.map(|s| s.value().to_owned()).unwrap_or_default(),
                        &wanted,
                    );
                }
            }
            "pick" => same(
                key.clone(),
                best.map(|p| p.ball().to_owned()).unwrap_or("none".into()),
                scalar(content),
            ),
            "cover" => same(
                key.clone(),
                best.map(|p| p.cover().to_owned()).unwrap_or_default(),
                scalar(content),
            ),
            "second" | "third" => {
                let place = if key == "second" { 1 } else { 2 };
                let found = advice.picks().get(place).map(|p| p.ball().to_owned());
                same(key.clone(), found.unwrap_or_default(), scalar(content));
            }
            "total" => same(
                key.clone(),
                best.map(|p| p.total().to_string()).unwrap_or_default(),
                scalar(content),
            ),
            "out_the_door" => same(
                key.clone(),
                best.map(|p| p.out_the_door().to_owned())
                    .unwrap_or_default(),
                scalar(content),
            ),
            "customers_choice" => same(
                key.clone(),
                best.is_some_and(|p| p.is_by_customer()).to_string(),
                scalar(content),
            ),
            "drill_today" => same(
                key.clone(),
                advice.drill_today().to_string(),
                scalar(content),
            ),
            "lines" => {
                let lines: Vec<&Reason> =
                    best.map(|p| p.lines().iter().collect()).unwrap_or_default();
                for (rule, wanted) in pairs(content) {
                    same(format!("line {rule}"), shown(&lines, &rule), &wanted);
                }
            }
            "weight_lines" | "grip_lines" | "surface_lines" | "layout_lines" => {
                let stage = key.trim_end_matches("_lines");
                let lines: Vec<&Reason> = advice
                    .settled()
                    .iter()
                    .filter(|s| s.stage() == stage)
                    .flat_map(|s| s.lines())
                    .collect();
                for (rule, wanted) in pairs(content) {
                    same(format!("line {rule}"), shown(&lines, &rule), &wanted);
                }
            }
            "ruled_out" => {
                for (ball, rule) in pairs(content) {
                    let out = advice.ruled_out().iter().find(|r| r.ball() == ball);
                    let found = out.is_some_and(|r| r.lines().iter().any(|l| l.rule() == rule));
                    same(
                        format!("{ball} ruled out by {rule}"),
                        found.to_string(),
                        "true",
                    );
                }
            }
            "near_misses" => {
                for (ball, over) in pairs(content) {
                    let found = advice.near_misses().iter().find(|n| n.ball() == ball);
                    same(
                        format!("near miss {ball}"),
                        found.map(|n| n.over().to_owned()).unwrap_or_default(),
                        &over,
                    );
                }
            }
            "numbers" => {
                for (name, wanted) in pairs(content) {
                    same(name.clone(), number(advice, &name), &wanted);
                }
            }
            "number_lines" => {
                for (name, rules) in lists(content) {
                    let lines: Vec<&Reason> = advice
                        .spec()
                        .number(&name)
                        .map(|n| n.lines().iter().collect())
                        .unwrap_or_default();
                    for rule in rules {
                        let found = lines.iter().any(|l| l.rule() == rule);
                        same(
                            format!("{name} has a line {rule}"),
                            found.to_string(),
                            "true",
                        );
                    }
                }
            }
            "number_says" | "caution_says" => {
                let says = match key.as_str() {
                    "number_says" => says::number,
                    _ => says::caution,
                };
                for (of, parts) in lists(content) {
                    for words in parts {
                        let found = says(advice, &of, &words);
                        same(format!("{of} says `{words}`"), found.to_string(), "true");
                    }
                }
            }
            "cautions" => {
                for rule in items(content) {
                    same(
                        format!("caution {rule}"),
                        cautioned(advice, &rule).to_string(),
                        "true",
                    );
                }
            }
            "no_cautions" => {
                for rule in items(content) {
                    same(
                        format!("caution {rule}"),
                        cautioned(advice, &rule).to_string(),
                        "false",
                    );
                }
            }
            "first_caution" => {
                let found = advice
                    .cautions()
                    .first()
                    .map(|c| c.reason().rule().to_owned());
                same(key.clone(), found.unwrap_or_default(), scalar(content));
            }
            "assumed" => {
                for (fact, wanted) in pairs(content) {
                    let found = advice.assumptions().iter().find(|a| a.fact() == fact);
                    let found = found.map(|a| a.value().unwrap_or("needed").to_owned());
                    same(
                        format!("assumed {fact}"),
                        found.unwrap_or_default(),
                        &wanted,
                    );
                }
            }
            "work" | "handover" => {
                let steps = if key == "work" {
                    advice.spec().work()
                } else {
                    advice.spec().handover()
                };
                for id in items(content) {
                    same(
                        format!("step {id}"),
                        steps.iter().any(|s| s.id() == id).to_string(),
                        "true",
                    );
                }
            }
            "bill" => same(
                key.clone(),
                advice
                    .bill()
                    .map(|b| b.total().to_owned())
                    .unwrap_or_default(),
                scalar(content),
            ),
            "offers" => {
                for (id, wanted) in pairs(content) {
                    let found = advice.offers().and_then(|offers| offers.offer(&id));
                    same(
                        format!("offer {id}"),
                        found
                            .map(|o| o.bill().total().to_owned())
                            .unwrap_or("none".into()),
                        &wanted,
                    );
                }
            }
            "offer_reasons" => {
                for (id, rules) in lists(content) {
                    let found: Vec<&str> = advice
                        .offers()
                        .and_then(|offers| offers.offer(&id))
                        .map(|offer| offer.reasons().iter().map(|r| r.id()).collect())
                        .unwrap_or_default();
                    same(
                        format!("reasons of {id}"),
                        found.join(" "),
                        &rules.join(" "),
                    );
                }
            }
            "questions" => {
                for part in items(content) {
                    let found = advice.questions().iter().any(|q| q.contains(&part));
                    same(format!("question `{part}`"), found.to_string(), "true");
                }
            }
            other => panic!("{}: unknown expectation {other}", case.file),
        }
    }
    wrong
}

pub fn shown(lines: &[&Reason], rule: &str) -> String {
    lines
        .iter()
        .find(|l| l.rule() == rule)
        .map(|l| l.shown().replace('\u{2212}', "-"))
        .unwrap_or("none".into())
}

fn number(advice: &Advice, name: &str) -> String {
    match advice.spec().number(name) {
        None => "none".to_owned(),
        Some(number) if number.blank().is_some() => "blank".to_owned(),
        Some(number) => SpecNumber::shop(number).to_owned(),
    }
}

fn cautioned(advice: &Advice, rule: &str) -> bool {
    says::cautions(advice).any(|c| c.reason().rule() == rule)
}
