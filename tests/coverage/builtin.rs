//! The built-in rules against the project's own cases.

use std::path::PathBuf;

use spanwright::advice::{Case, Missing, Shop};
use spanwright::catalog::Catalog;
use spanwright::document::{Document, Format};

fn cases() -> Vec<Case> {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/cases");
    Case::read_all(&[folder]).unwrap()
}

/// The demo shop with some rules of its own.
fn with(overlay: &str) -> Shop {
    let document = Document::parse("ours.yaml", overlay.as_bytes(), Format::Yaml).unwrap();
    let rules = Shop::demo().unwrap().rules().overlay(&[document]).unwrap();
    Shop::of(rules, Catalog::demo().unwrap())
}

#[test]
fn nothing_is_missing_for_the_built_in_rules() {
    let coverage = Shop::demo().unwrap().coverage(&cases()).unwrap();
    let gaps = coverage.gaps();
    assert!(gaps.is_empty(), "{gaps:#?}");
    let totals = coverage.totals();
    assert_eq!(totals.fired, totals.rules);
    assert_eq!(totals.tried, totals.sides);
}

#[test]
fn a_rule_that_no_case_fires_is_named_with_its_file() {
    let shop = with(
        "
        subject: weight
        rules:
          - id: far-too-many-games
            when: { bowler.games_a_week: { at_least: 50 games } }
            points: 1
            because: Nobody bowls as much.
            source: own choice
        ",
    );
    let gaps = shop.coverage(&cases()).unwrap().gaps();
    assert!(gaps.iter().all(|gap| gap.rule == "far-too-many-games"));
    assert!(gaps.iter().all(|gap| gap.file == "ours.yaml"));
    // It never fired: cases tell how many games are bowled, and none as many as that.
    let missing: Vec<&Missing> = gaps.iter().map(|gap| &gap.missing).collect();
    let games = |side: &str, hint: &str| Missing::Side {
        fact: "bowler.games_a_week",
        boundary: "50 games".to_owned(),
        side: side.to_owned(),
        hint: Some(hint.to_owned()),
    };
    let many = games("from 50 games on", "50 games");
    assert_eq!(missing, [&Missing::Fired, &many]);
}

/// Dropping a case that alone tries a boundary opens just that gap again.
#[test]
fn without_its_case_a_boundary_is_open() {
    let mut cases = cases();
    let before = cases.len();
    cases.retain(|case| !case.file().ends_with("v-81-five-tapes.yaml"));
    assert_eq!(cases.len(), before - 1);
    let gaps = Shop::demo().unwrap().coverage(&cases).unwrap().gaps();
    let missing = Missing::Side {
        fact: "card.tapes",
        boundary: "5".to_owned(),
        side: "from 5 on".to_owned(),
        hint: Some("5".to_owned()),
    };
    let found: Vec<_> = gaps.iter().map(|g| (&*g.rule, &g.missing)).collect();
    assert_eq!(found, [("up-to-five-tapes", &missing)]);
}

/// The order of cases doesn't matter.
#[test]
fn the_order_of_cases_does_not_matter() {
    let shop = Shop::demo().unwrap();
    let mut cases = cases();
    cases.truncate(40);
    let forward = shop.coverage(&cases).unwrap();
    cases.reverse();
    let backward = shop.coverage(&cases).unwrap();
    assert_eq!(forward.gaps(), backward.gaps());
    assert_eq!(forward.totals(), backward.totals());
}
