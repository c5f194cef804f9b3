//! What must hold for every bowler there could be: random profiles against the demo shop; and for every drilled ball.

#![allow(clippy::unwrap_used, clippy::panic)]

mod bounds;
mod budget;
mod fitting;
mod hand;
mod mirror;
mod order;
mod profiles;
mod refit;
mod sums;
mod texts;
mod used;
mod vocabulary;

use std::sync::LazyLock;

use proptest::test_runner::Config;
use spanwright::advice::{Advice, Shop};

/// The demo shop, read once.
static SHOP: LazyLock<Shop> = LazyLock::new(|| Shop::demo().unwrap());

/// The demo shop's advice for a profile.
fn advise(profile: &profiles::Profile) -> Advice {
    SHOP.advise(&profile.bowler()).unwrap()
}

/// So many random cases; times `PROPERTY_TIMES` for a long look.
fn cases(count: u32) -> Config {
    let times = std::env::var("PROPERTY_TIMES")
        .ok()
        .and_then(|times| times.parse().ok())
        .unwrap_or(1);
    Config {
        cases: count.saturating_mul(times),
        failure_persistence: None,
        ..Config::default()
    }
}
