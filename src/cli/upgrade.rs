//! `upgrade`: from the balls owned and the throw to what comes next.

use super::Refusal;
use super::arguments::Advise;

/// Tells which ball comes next, or none.
pub(super) fn run(ask: &Advise) -> Result<(), Refusal> {
    let _ = ask;
    Err("not built yet".to_owned())
}
