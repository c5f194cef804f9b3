//! `refit`: a bowler whose ball doesn't sit right in, likely causes and one small change out.

use super::arguments::Advise;
use super::{Refusal, answer, output};
use crate::report::{self, Look};

/// Looks for what is wrong with the fit on the bowler's card.
pub(super) fn refit(ask: &Advise) -> Result<(), Refusal> {
    let (shop, bowler) = answer::open(ask)?;
    let refit = shop.refit(&bowler).map_err(|trouble| trouble.to_string())?;
    let audience = ask.reader.into();
    let text = if ask.output.json {
        report::refit_json(&refit, audience)
    } else {
        let (width, colour) = output::surface(&ask.output);
        let look = Look::plain(audience).wide(width).coloured(colour);
        report::refit_text(&refit, &look.explaining(shop.rules().glossary()))
    };
    output::put(&ask.output, &text)
}
