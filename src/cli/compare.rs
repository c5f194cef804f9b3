//! `compare`: two balls for one bowler.

use super::arguments::Compare;
use super::{Refusal, answer, output};
use crate::report;

/// Puts two balls side by side.
pub(super) fn run(ask: &Compare) -> Result<(), Refusal> {
    let (shop, bowler) = answer::open(&ask.advise)?;
    let contrast = shop
        .compare(&bowler, &ask.one, &ask.other)
        .map_err(|trouble| trouble.to_string())?;
    let text = match ask.advise.output.json {
        true => report::contrast_json(&contrast, ask.advise.reader.into()),
        false => report::contrast_text(&contrast, &answer::look(&ask.advise, &shop)),
    };
    output::put(&ask.advise.output, &text)
}
