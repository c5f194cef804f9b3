//! The fit check: what the bowler feels with the ball in hand, and what the fitter sees.

use super::answers::facts;
use crate::rules::Fact;

/// Every fact of the fit check.
pub(super) fn check() -> Vec<Fact> {
    let seen = "the fit check, ball in hand";
    facts(&[
        (
            "check.symptoms",
            "what hurts, slips or shows marks with the ball in hand",
            seen,
        ),
        (
            "check.rest_test",
            "whether a relaxed thumb slides out of the hole at rest",
            seen,
        ),
        (
            "check.joint_line",
            "how far the relaxed finger's joint line lies from the hole's edge",
            "the fit check of a fingertip grip",
        ),
        (
            "check.event_weeks",
            "weeks until the event that matters most",
            "the customer's answer",
        ),
    ])
}
