//! What must hold for every bowler there could be: random profiles against the demo shop; and for every drilled ball.

#![allow(clippy::unwrap_used, clippy::panic)]

mod bounds;
mod budget;
mod count;
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

use count::cases;
use spanwright::advice::{Advice, Shop};

/// The demo shop, read once.
static SHOP: LazyLock<Shop> = LazyLock::new(|| Shop::demo().unwrap());

/// The demo shop's advice for a profile.
fn advise(profile: &profiles::Profile) -> Advice {
    SHOP.advise(&profile.bowler()).unwrap()
}
