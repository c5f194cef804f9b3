//! The fit card of a ball that works: what was drilled, so that it can be copied.

use super::answers::facts;
use crate::rules::Fact;

/// Every fact of the fit card.
pub(super) fn card() -> Vec<Fact> {
    let from = "the fit card of the ball that works, as drilled";
    facts(&[
        ("card.works", "a fit without pain is on file", from),
        ("card.grip", "its grip", from),
        (
            "card.middle_span",
            "its full span to the middle finger, along the arc",
            from,
        ),
        (
            "card.ring_span",
            "its full span to the ring finger, along the arc",
            from,
        ),
        ("card.bridge", "its bridge", from),
        (
            "card.thumb_forward",
            "its thumb pitch, forward or reverse",
            from,
        ),
        (
            "card.middle_forward",
            "its middle finger pitch, forward or reverse",
            from,
        ),
        (
            "card.ring_forward",
            "its ring finger pitch, forward or reverse",
            from,
        ),
        ("card.thumb_lateral", "its thumb pitch to the side", from),
        (
            "card.middle_lateral",
            "its middle finger pitch to the side",
            from,
        ),
        (
            "card.ring_lateral",
            "its ring finger pitch to the side",
            from,
        ),
        ("card.thumb_bore", "its thumb hole", from),
        ("card.middle_bore", "its middle finger bore", from),
        ("card.ring_bore", "its ring finger bore", from),
        ("card.slug", "outside of its thumb slug", from),
        ("card.insert", "outside of its finger inserts", from),
        (
            "card.tapes",
            "pieces of tape in its thumb hole at hand-over",
            from,
        ),
        ("card.complaint", "it has drawn a complaint", from),
        ("card.thumb_depth", "depth of its thumb hole", from),
        ("card.middle_depth", "depth of its middle finger hole", from),
        ("card.ring_depth", "depth of its ring finger hole", from),
        ("card.oval_wide", "its thumb hole, the wide way", from),
        ("card.oval_narrow", "its thumb hole, the narrow way", from),
        (
            "card.oval_angle",
            "how far its oval is turned, as on the ball",
            from,
        ),
        (
            "card.sleeve",
            "its thumb has a sleeve that can be changed",
            from,
        ),
        ("card.ball_weight", "what the drilled ball weighs", from),
    ])
}
