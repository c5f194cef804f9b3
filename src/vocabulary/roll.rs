//! What every ball on the shelf would do for this bowler, by the closed results for equal moments.

use super::BallCandidate;
use super::stage::StageFact;

/// Facts of a ball in this bowler's hand.
pub(super) fn columns() -> Vec<StageFact<BallCandidate>> {
    Vec::new()
}
