//! `rules diff`: what other rules change.

use std::path::{Path, PathBuf};

use super::Refusal;
use super::arguments::Diff;
use super::output;
use crate::advice::{Case, RulesDiff, Shop, ShopFiles, Trouble};
use crate::document::{clean, yaml_and_json_in};
use crate::report::{rules_diff_json, rules_diff_text};

/// The word for the rules of the program as they are.
const BUILT_IN: &str = "built-in";

/// Asks the demo's customers and the shop's own cases under both rule sets, and tells what comes out otherwise.
pub(super) fn run(ask: &Diff) -> Result<(), Refusal> {
    let old = shop(&ask.old, ask.catalog.as_deref());
    let new = shop(&ask.new, ask.catalog.as_deref());
    let demo = Case::demo();
    let own = Case::read_all(&ask.cases);
    let (old, new, mut cases, own) = match (old, new, demo, own) {
        (Ok(old), Ok(new), Ok(demo), Ok(own)) => (old, new, demo, own),
        (old, new, demo, own) => {
            let mut faults = vec![old.err(), new.err()];
            faults.push(demo.err().map(|faults| faults.to_string()));
            faults.push(own.err().map(|faults| faults.to_string()));
            let mut faults: Vec<String> = faults.into_iter().flatten().collect();
            // The same fault may be found twice, as in the catalog.
            faults.dedup();
            return Err(faults.join("\n"));
        }
    };
    cases.extend(own);
    let diff = RulesDiff::between(&old, &new, &cases);
    let text = match ask.output.json {
        true => rules_diff_json(&diff),
        false => rules_diff_text(&diff),
    };
    output::put(&ask.output, &text)
}

/// The shop under the rules that were named.
fn shop(rules: &Path, catalog: Option<&Path>) -> Result<Shop, Refusal> {
    let rules = match rules.to_str() {
        Some(BUILT_IN) => Vec::new(),
        _ if rules.is_dir() => overlay_files(rules)?,
        _ => vec![rules.to_owned()],
    };
    let files = ShopFiles {
        catalog: catalog.map(Path::to_owned),
        rules,
        ..ShopFiles::default()
    };
    Shop::open(&files).map_err(|trouble: Trouble| trouble.to_string())
}

fn overlay_files(folder: &Path) -> Result<Vec<PathBuf>, Refusal> {
    let shown = clean(&folder.display().to_string());
    let files = yaml_and_json_in(folder).map_err(|why| format!("{shown} can't be read: {why}"))?;
    match files.is_empty() {
        true => Err(format!("{shown} holds no .yaml, .yml or .json file")),
        false => Ok(files),
    }
}
