//! `ask`: the interview.

use super::Refusal;
use super::arguments::Ask;

pub(super) fn run(ask: &Ask) -> Result<(), Refusal> {
    let _ = ask;
    Err("not yet".to_owned())
}
