//! `rules check`: reads all that a shop has and reports every fault.

use std::collections::BTreeSet;

use serde::Serialize;

use super::Refusal;
use super::arguments::Check;
use super::output;
use crate::advice::Shop;
use crate::report::CONTRACT;

#[derive(Serialize)]
struct Checked {
    contract: u32,
    version: &'static str,
    digest: String,
    question: &'static str,
    rules: usize,
    files: usize,
}

/// Reads the built-in rules, the catalog and the shop's own files.
pub(super) fn check(ask: &Check) -> Result<(), Refusal> {
    let mut files = ask.shop.files();
    files.rules.extend(ask.files.iter().cloned());
    let shop = Shop::open(&files).map_err(|trouble| trouble.to_string())?;
    let rules: Vec<&str> = shop
        .rules()
        .rules()
        .iter()
        .map(|rule| rule.file())
        .collect();
    let checked = Checked {
        contract: CONTRACT,
        version: env!("CARGO_PKG_VERSION"),
        digest: shop.rules().digest(),
        question: "rules check",
        rules: rules.len(),
        files: rules.into_iter().collect::<BTreeSet<_>>().len(),
    };
    let text = if ask.output.json {
        let json = serde_json::to_string_pretty(&checked).map_err(|why| why.to_string())?;
        format!("{json}\n")
    } else {
        format!(
            "{} rules in {} files read without fault\n",
            checked.rules, checked.files
        )
    };
    output::put(&ask.output, &text)
}
