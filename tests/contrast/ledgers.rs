//! The ledgers of all balls, read from the answer document of a plain advice: nothing here knows of contrasts.

use std::collections::BTreeMap;

use serde_json::Value;
use spanwright::advice::Shop;
use spanwright::bowler::Bowler;
use spanwright::catalog::Catalog;
use spanwright::report;
use spanwright::rules::Audience;

/// What a plain advice says of one ball.
#[derive(Debug)]
pub struct Ledger {
    pub total: i64,
    /// Rule and points, counted lines only.
    pub points: BTreeMap<String, i64>,
    /// Rules of opposing schools that speak of it.
    pub schools: Vec<String>,
    /// Cents, drilled.
    pub price: i64,
}

/// The balls left, best first, with their ledgers; and by which rules each other ball is ruled out.
#[derive(Debug)]
pub struct Advised {
    pub left: Vec<(String, Ledger)>,
    pub out: BTreeMap<String, Vec<String>>,
}

pub fn advised(shop: &Shop, bowler: &Bowler) -> Advised {
    let text = report::json(&shop.advise(bowler).unwrap(), Audience::Newcomer);
    let answer: Value = serde_json::from_str(&text).unwrap();
    let list = |name: &str| answer[name].as_array().unwrap().clone();
    let text = |value: &Value| value.as_str().unwrap().to_owned();
    let picks = list("picks");
    let left = picks.iter().map(|pick| {
        let lines = pick["lines"].as_array().unwrap();
        let of = |role: &'static str| lines.iter().filter(move |line| line["role"] == role);
        let points =
            of("points").map(|line| (text(&line["rule"]), line["points"].as_i64().unwrap()));
        let ledger = Ledger {
            total: pick["total"].as_i64().unwrap(),
            points: points.collect(),
            schools: of("dispute").map(|line| text(&line["rule"])).collect(),
            price: cents(pick["out_the_door"].as_str().unwrap()),
        };
        (text(&pick["ball"]), ledger)
    });
    let out = list("ruled_out")
        .iter()
        .map(|out| {
            let lines = out["lines"].as_array().unwrap();
            let rules = lines.iter().map(|line| text(&line["rule"]));
            (text(&out["ball"]), rules.collect())
        })
        .collect();
    Advised {
        left: left.collect(),
        out,
    }
}

/// `$129.85` is 12985.
fn cents(text: &str) -> i64 {
    let (dollars, cents) = text
        .trim_start_matches('$')
        .split_once('.')
        .unwrap_or((text.trim_start_matches('$'), "00"));
    dollars.replace(',', "").parse::<i64>().unwrap() * 100 + cents.parse::<i64>().unwrap()
}

/// The same shop without the rules that rule balls out, so that a plain advice has a ledger for every ball. Such rules give
/// no points, so no total changes.
pub fn nothing_ruled_out(shop: &Shop) -> Shop {
    let out: Vec<&str> = shop
        .rules()
        .rules()
        .iter()
        .filter(|rule| rule.rules_out() && rule.subject() == "ball")
        .map(|rule| rule.id())
        .collect();
    assert!(out.len() >= 2, "{out:?}");
    let open = out
        .iter()
        .fold(shop.rules().clone(), |rules, id| rules.without(id));
    Shop::of(open, Catalog::demo().unwrap())
}
