//! `compare`: two balls for one bowler.

use super::Refusal;
use super::arguments::Compare;

pub(super) fn run(ask: &Compare) -> Result<(), Refusal> {
    let _ = ask;
    Err("not yet".to_owned())
}
