//! `rules check`: reads all that a shop has and reports every fault.

use std::collections::BTreeSet;

use serde::Serialize;

use super::Refusal;
use super::arguments::Check;
use super::output;
use crate::advice::Shop;
use crate::report::{Head, written};

#[derive(Serialize)]
struct Checked<'a> {
    #[serde(flatten)]
    head: Head<'a>,
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
    let digest = shop.rules().digest();
    let checked = Checked {
        head: Head::new("rules check").digest(&digest),
        rules: rules.len(),
        files: rules.into_iter().collect::<BTreeSet<_>>().len(),
    };
    let text = if ask.output.json {
        written(&checked)
    } else {
        format!(
            "{} rules in {} files read without fault\n",
            checked.rules, checked.files
        )
    };
    output::put(&ask.output, &text)
}
