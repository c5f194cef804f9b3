//! `upgrade`: a bowler who owns balls in, what comes next out, or nothing yet.

use super::arguments::Advise;
use super::{Refusal, answer, output};
use crate::report;

/// Tells which ball comes next, or none.
pub(super) fn run(ask: &Advise) -> Result<(), Refusal> {
    let (shop, bowler) = answer::open(ask)?;
    let upgrade = shop
        .upgrade(&bowler)
        .map_err(|trouble| trouble.to_string())?;
    let text = match ask.output.json {
        true => report::upgrade_json(&upgrade, ask.reader.into()),
        false => report::upgrade_text(&upgrade, &answer::look(ask, &shop)),
    };
    output::put(&ask.output, &text)
}
