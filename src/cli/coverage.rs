//! `rules coverage`: what a set of cases never tries.

use super::Refusal;
use super::arguments::Coverage;
use super::output;
use crate::advice::{Case, Shop};
use crate::report::{coverage_json, coverage_text};

/// Reads the cases, asks them all, and tells what they never tried.
pub(super) fn run(ask: &Coverage) -> Result<(), Refusal> {
    let shop = Shop::open(&ask.shop.files());
    let cases = Case::read_all(&ask.cases);
    let (shop, cases) = match (shop, cases) {
        (Ok(shop), Ok(cases)) => (shop, cases),
        (shop, cases) => {
            let faults = [
                shop.err().map(|trouble| trouble.to_string()),
                cases.err().map(|faults| faults.to_string()),
            ];
            return Err(faults.into_iter().flatten().collect::<Vec<_>>().join("\n"));
        }
    };
    let coverage = shop.coverage(&cases).map_err(|faults| faults.to_string())?;
    let text = match ask.output.json {
        true => coverage_json(&coverage, &shop.rules().digest()),
        false => coverage_text(&coverage),
    };
    output::put(&ask.output, &text)?;
    match coverage.gaps().len() {
        0 => Ok(()),
        missing if ask.strict => Err(format!("{missing} missing")),
        _ => Ok(()),
    }
}
