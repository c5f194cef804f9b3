//! The fit card of a ball that works: what was drilled, so that it can be copied.

use super::answers::{INCH, fact, number};
use super::words;
use crate::notation::Notation::{Count, ForwardPitch, HoleSize, LateralPitch, Length};
use crate::rules::{Fact, Kind};

/// Every fact of the fit card.
pub(super) fn card() -> Vec<Fact> {
    let from = "the fit card of the ball that works, as drilled";
    let span = || number(Length, INCH, 7 * INCH);
    let bore = || number(HoleSize, 20, 100);
    let outside = || number(HoleSize, 40, 110);
    let forward = || number(ForwardPitch, -2 * INCH, 2 * INCH);
    let lateral = || number(LateralPitch, -2 * INCH, 2 * INCH);
    vec![
        fact(
            "card.works",
            "a fit without pain is on file",
            Kind::Flag,
            from,
        ),
        fact("card.grip", "its grip", Kind::Choice(words::GRIPS), from),
        fact(
            "card.middle_span",
            "its full span to the middle finger, along the arc",
            span(),
            from,
        ),
        fact(
            "card.ring_span",
            "its full span to the ring finger, along the arc",
            span(),
            from,
        ),
        fact("card.bridge", "its bridge", number(Length, 0, INCH), from),
        fact(
            "card.thumb_forward",
            "its thumb pitch, forward or reverse",
            forward(),
            from,
        ),
        fact(
            "card.middle_forward",
            "its middle finger pitch, forward or reverse",
            forward(),
            from,
        ),
        fact(
            "card.ring_forward",
            "its ring finger pitch, forward or reverse",
            forward(),
            from,
        ),
        fact(
            "card.thumb_lateral",
            "its thumb pitch to the side",
            lateral(),
            from,
        ),
        fact(
            "card.middle_lateral",
            "its middle finger pitch to the side",
            lateral(),
            from,
        ),
        fact(
            "card.ring_lateral",
            "its ring finger pitch to the side",
            lateral(),
            from,
        ),
        fact("card.thumb_bore", "its thumb hole", bore(), from),
        fact("card.middle_bore", "its middle finger bore", bore(), from),
        fact("card.ring_bore", "its ring finger bore", bore(), from),
        fact("card.slug", "outside of its thumb slug", outside(), from),
        fact(
            "card.insert",
            "outside of its finger inserts",
            outside(),
            from,
        ),
        fact(
            "card.tapes",
            "pieces of tape in its thumb hole at hand-over",
            number(Count, 0, 20),
            from,
        ),
        fact(
            "card.complaint",
            "it has drawn a complaint",
            Kind::Flag,
            from,
        ),
    ]
}
