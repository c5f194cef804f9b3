//! `whatif`: which answers would change the pick.

use super::Refusal;
use super::arguments::Advise;

pub(super) fn run(ask: &Advise) -> Result<(), Refusal> {
    let _ = ask;
    Err("not yet".to_owned())
}
