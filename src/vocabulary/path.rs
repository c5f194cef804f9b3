//! What a roll came to, for the sentences said about it.

use crate::rules::Fact;

/// The facts of one ball's roll, and of how two differ.
pub(super) fn facts() -> Vec<Fact> {
    Vec::new()
}
