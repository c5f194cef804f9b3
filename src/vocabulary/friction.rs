//! What the friction of a cover goes by, and the friction itself: settings, not measurements.

use crate::rules::Fact;

/// The facts of a cover on a lane, and what the measures of friction come to.
pub(super) fn facts() -> Vec<Fact> {
    Vec::new()
}
