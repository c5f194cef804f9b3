//! `rules check`: reads all that a shop has, reports every fault, and tells what there is to say against the rules.

use super::Refusal;
use super::arguments::Check;
use super::output;
use crate::advice::Shop;
use crate::report::{self, Look};
use crate::rules::Audience;

/// Reads the built-in rules, the catalog and the shop's own files, and checks the rules together.
pub(super) fn check(ask: &Check) -> Result<(), Refusal> {
    let mut files = ask.shop.files();
    files.rules.extend(ask.files.iter().cloned());
    let shop = Shop::open(&files).map_err(|trouble| trouble.to_string())?;
    let checks = shop.check_rules().map_err(|trouble| trouble.to_string())?;
    let text = if ask.output.json {
        report::rule_checks_json(&shop, &checks)
    } else {
        let (width, colour) = output::surface(&ask.output);
        let look = Look::plain(Audience::Fitter).wide(width).coloured(colour);
        report::rule_checks_text(&shop, &checks, &look)
    };
    output::put(&ask.output, &text)?;
    if ask.strict && !checks.is_clean() {
        return Err("there is something to put right in the rules".to_owned());
    }
    Ok(())
}
