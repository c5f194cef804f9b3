//! `roll`: what a ball does on a lane for a bowler, or how two differ.

use super::Refusal;
use super::arguments::Roll;

/// Rolls one ball or two.
pub(super) fn run(ask: &Roll) -> Result<(), Refusal> {
    let _ = (&ask.balls, &ask.lane, &ask.advise);
    Err("not built yet".to_owned())
}
