//! What the governing body's rules say of the drilled ball.

use super::super::drilling::Drilling;
use super::Bench;
use crate::catalog::Stock;
use crate::fitting::balance::Finished;
use crate::fitting::best_unit::Limits;
use crate::standards::Finding;

impl Bench<'_, '_> {
    /// The static limits that are aimed at, and whether they were read in print.
    pub(super) fn limits(&self, _weight: i64) -> (Limits, bool) {
        let limits = Limits {
            top: 3.0,
            side: 3.0,
            finger: 3.0,
        };
        (limits, true)
    }

    /// Every clause that the computed ball can be held against.
    pub(super) fn findings(
        &self,
        _stock: &Stock,
        _finished: &Finished,
        _drilling: &Drilling,
    ) -> Vec<Finding> {
        Vec::new()
    }
}
