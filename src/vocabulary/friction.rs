//! What the friction of a cover goes by, and the friction itself: settings, not measurements.

use super::answers::number;
use super::settled::settled;
use super::words;
pub use crate::bowler::GRITS;
use crate::notation::Notation::{Count, Counted};
use crate::rules::{Fact, Kind};

/// The measures of friction: in the oil, on the dry.
pub const FRICTIONS: [&str; 2] = ["friction.oil", "friction.dry"];

/// The facts of a ball's cover as it meets the lane.
pub(super) fn facts() -> Vec<Fact> {
    let from = "the ball that rolls, from the catalog or the balls owned";
    let row = |name, meaning, kind| settled(name, meaning, kind, from);
    vec![
        row(
            "roll.cover",
            "the cover of the ball that rolls",
            Kind::Choice(words::COVERS),
        ),
        row(
            "roll.finish",
            "its finish as it is now",
            Kind::Choice(words::FINISHES),
        ),
        row(
            "roll.grit",
            "the grit it was sanded with last",
            number(Count, *GRITS.start(), *GRITS.end()),
        ),
        row(
            "roll.games",
            "games since it was cleaned out and resurfaced",
            number(Counted("game", "games"), 0, 5_000),
        ),
    ]
}
