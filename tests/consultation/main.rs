//! Consultations: every case file comes out as argued in it, and no rule is without a case.

#![allow(clippy::unwrap_used, clippy::panic)]

mod advice;
mod case;
mod nodes;
mod refit;
mod roll;
mod says;
mod told;
mod upgrade;

use spanwright::advice::Shop;
use spanwright::catalog::Catalog;

#[test]
fn every_case_comes_out_as_argued() {
    let shop = Shop::demo().unwrap();
    let wrong: Vec<String> = case::all()
        .iter()
        .flat_map(|case| case::wrong(&shop, case))
        .collect();
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

/// Dropping a rule must show: some case then gets another answer.
#[test]
fn every_rule_has_a_case_that_needs_it() {
    let shop = Shop::demo().unwrap();
    let cases = case::all();
    let answer = |shop: &Shop, case: &case::Case| {
        let text = case::answer(shop, case);
        // The digest tells any two rule sets apart; only what is advised counts here.
        let digest = |line: &&str| !line.trim_start().starts_with("\"digest\"");
        text.lines().filter(digest).collect::<String>()
    };
    let answers: Vec<String> = cases.iter().map(|case| answer(&shop, case)).collect();
    let mut unneeded = Vec::new();
    // Limits and rounding (`subject/limits`) belong to their measure and are held by other tests.
    for rule in shop
        .rules()
        .rules()
        .iter()
        .filter(|rule| !rule.id().contains('/'))
    {
        let without = Shop::of(shop.rules().without(rule.id()), Catalog::demo().unwrap());
        let named = format!("\"{}\"", rule.id());
        // Cases that name the rule are tried first; they nearly always settle it.
        let (likely, rest): (Vec<usize>, Vec<usize>) =
            (0..cases.len()).partition(|&at| answers[at].contains(&named));
        let differs = |&at: &usize| answer(&without, &cases[at]) != answers[at];
        if !likely.iter().any(differs) && !rest.iter().any(differs) {
            unneeded.push(format!("{} ({})", rule.id(), rule.file()));
        }
    }
    assert!(
        unneeded.is_empty(),
        "no case needs:\n{}",
        unneeded.join("\n")
    );
}

/// Every row of common practice that a rule names as its ground stands in a case, too.
#[test]
fn every_row_of_practice_has_a_case() {
    let shop = Shop::demo().unwrap();
    let cases = case::all();
    let mut rows: Vec<&str> = shop
        .rules()
        .rules()
        .iter()
        .flat_map(|rule| rule.practice())
        .map(String::as_str)
        .collect();
    rows.sort_unstable();
    rows.dedup();
    let missing: Vec<&str> = rows
        .into_iter()
        .filter(|row| {
            !cases
                .iter()
                .any(|case| case.practice.iter().any(|p| p == row))
        })
        .collect();
    assert!(missing.is_empty(), "no case for {missing:?}");
}
