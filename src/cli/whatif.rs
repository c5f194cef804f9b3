//! `whatif`: which answers would change the pick.

use super::Refusal;
use super::answer;
use super::arguments::Advise;
use super::output;
use crate::report::{self, Look};

/// Tells the nearest step of each answer that changes weight, grip or ball.
pub(super) fn run(ask: &Advise) -> Result<(), Refusal> {
    let (shop, bowler) = answer::open(ask)?;
    let what_if = shop
        .what_if(&bowler)
        .map_err(|trouble| trouble.to_string())?;
    let audience = ask.reader.into();
    let text = if ask.output.json {
        report::what_if_json(&what_if, audience)
    } else {
        let (width, colour) = output::surface(&ask.output);
        let look = Look::plain(audience).wide(width).coloured(colour);
        report::what_if_text(&what_if, &look.explaining(shop.rules().glossary()))
    };
    output::put(&ask.output, &text)
}
