//! Texts are plain: the words of the built-in rules, and what is found when they aren't.
#![allow(clippy::unwrap_used)]

use spanwright::advice::Shop;
use spanwright::rules::Audience;

#[test]
fn the_built_in_rules_are_worded_plainly() {
    let shop = Shop::demo().unwrap();
    let found = shop.rules().wording();
    let shown: Vec<String> = found.iter().map(ToString::to_string).collect();
    assert!(
        found.is_empty(),
        "{}\n{} findings",
        shown.join("\n"),
        shown.len()
    );
}
