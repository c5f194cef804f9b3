//! What a case about which ball, and how it is drilled, expects.

use spanwright::advice::{Advice, Reason, SpecNumber};

use crate::case::Case;
use crate::nodes::{items, lists, pairs, scalar};
use crate::says;

/// Everything that is otherwise than expected.
pub fn differences(case: &Case, advice: &Advice) -> Vec<String> {
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
