//! `rules coverage`: what a set of cases never tries.

use super::Refusal;
use super::arguments::Coverage;

pub(super) fn run(ask: &Coverage) -> Result<(), Refusal> {
    let _ = ask;
    Err("not yet".to_owned())
}
