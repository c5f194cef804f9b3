//! What the balls owned do and lack, for the upgrade path.

use crate::rules::Fact;

/// The facts of the upgrade path.
pub(super) fn facts() -> Vec<Fact> {
    Vec::new()
}
