//! The order of files, rules and rows never matters, and the same question gets the same bytes.

use std::fs;
use std::path::Path;

use proptest::prelude::*;
use spanwright::advice::Shop;
use spanwright::catalog::Catalog;
use spanwright::document::{Document, Format};
use spanwright::report;
use spanwright::rules::{Audience, RuleSet};

use crate::profiles::{Profile, profile};
use crate::{SHOP, advise, cases};

fn folder(name: &str) -> std::path::PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(name)
}

/// Tables, not rules: each is read where it is used.
const NO_RULES: [&str; 3] = [
    "rules/phrases.yaml",
    "rules/questions.yaml",
    "rules/standards.yaml",
];

/// Name and text of each rule file, by name.
pub fn rule_files() -> Vec<(String, String)> {
    let entries = fs::read_dir(folder("rules")).unwrap();
    let mut files: Vec<_> = entries
        .map(|entry| {
            let path = entry.unwrap().path();
            let name = format!("rules/{}", path.file_name().unwrap().to_string_lossy());
            (name, fs::read_to_string(path).unwrap())
        })
        .filter(|(name, _)| !NO_RULES.contains(&name.as_str()))
        .collect();
    files.sort();
    files
}

/// A rule file with the items of each of its lists in reverse.
fn reversed(text: &str) -> String {
    let mut out = String::new();
    let mut items: Vec<String> = Vec::new();
    let flush = |items: &mut Vec<String>, out: &mut String| {
        items.drain(..).rev().for_each(|item| out.push_str(&item));
    };
    for line in text.lines().map(|line| format!("{line}\n")) {
        if line.starts_with("  - ") {
            items.push(line);
        } else if line.starts_with(|c: char| c.is_alphabetic()) {
            flush(&mut items, &mut out);
            out.push_str(&line);
        } else if let Some(item) = items.last_mut() {
            item.push_str(&line);
        } else {
            out.push_str(&line);
        }
    }
    flush(&mut items, &mut out);
    out
}

pub fn rules(files: &[(String, String)]) -> RuleSet {
    let documents: Vec<Document> = files
        .iter()
        .map(|(name, text)| {
            Document::parse(name, text.as_bytes(), Format::Yaml)
                .unwrap_or_else(|faults| panic!("{faults}"))
        })
        .collect();
    RuleSet::read(SHOP.vocabulary(), &documents).unwrap_or_else(|faults| panic!("{faults}"))
}

fn rows(name: &str) -> (String, Vec<String>) {
    let text = fs::read_to_string(folder("catalog-demo").join(name)).unwrap();
    let mut lines = text.lines().map(str::to_owned);
    let head = lines.next().unwrap();
    (head, lines.collect())
}

fn table(name: &str, head: &str, rows: &[String]) -> Document {
    let text = format!("{head}\n{}\n", rows.join("\n"));
    Document::parse(name, text.as_bytes(), Format::Csv).unwrap()
}

/// The demo catalog with the rows of its three tables in random order.
fn shuffled_catalog() -> impl Strategy<Value = [Vec<String>; 3]> {
    let shuffled = |name| Just(rows(name).1).prop_shuffle();
    (
        shuffled("models.csv"),
        shuffled("cores.csv"),
        shuffled("shelf.csv"),
    )
        .prop_map(|(a, b, c)| [a, b, c])
}

fn catalog([models, cores, shelf]: &[Vec<String>; 3]) -> Catalog {
    let table = |name: &str, own: &[String]| table(name, &rows(name).0, own);
    let prices = Document::read(&folder("catalog-demo/prices.yaml")).unwrap();
    Catalog::read(
        &table("models.csv", models),
        &table("cores.csv", cores),
        &table("shelf.csv", shelf),
        &prices,
    )
    .unwrap_or_else(|faults| panic!("{faults}"))
}

fn answer(shop: &Shop, profile: &Profile) -> String {
    report::json(&shop.advise(&profile.bowler()).unwrap(), Audience::Fitter)
}

proptest! {
    #![proptest_config(cases(8))]

    #[test]
    fn order_of_rules_never_matters(files in Just(rule_files()).prop_shuffle(), turned in any::<u64>(), some in prop::collection::vec(profile(), 6)) {
        let files: Vec<(String, String)> = files
            .into_iter()
            .enumerate()
            .map(|(at, (name, text))| if turned >> (at % 64) & 1 == 1 { let text = reversed(&text); (name, text) } else { (name, text) })
            .collect();
        let shop = Shop::of(rules(&files), Catalog::demo().unwrap());
        prop_assert_eq!(shop.digest(), SHOP.digest());
        for profile in some {
            prop_assert_eq!(answer(&shop, &profile), answer(&SHOP, &profile));
        }
    }

    #[test]
    fn order_of_rows_never_matters(tables in shuffled_catalog(), some in prop::collection::vec(profile(), 6)) {
        let shop = Shop::of(SHOP.rules().clone(), catalog(&tables));
        prop_assert_eq!(shop.digest(), SHOP.digest());
        for profile in some {
            prop_assert_eq!(answer(&shop, &profile), answer(&SHOP, &profile));
        }
    }
}

proptest! {
    #![proptest_config(cases(32))]

    #[test]
    fn same_question_same_bytes(profile in profile()) {
        let first = report::json(&advise(&profile), Audience::Newcomer);
        let again = std::thread::scope(|scope| {
            let ask = || scope.spawn(|| report::json(&advise(&profile), Audience::Newcomer));
            [ask(), ask()].map(|thread| thread.join().unwrap())
        });
        prop_assert!(again.iter().all(|text| *text == first));
    }
}
