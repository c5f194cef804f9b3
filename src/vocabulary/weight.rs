//! The weight stage: whole pounds, against the body, the hold test and the ball used now.

use super::Interval;
use super::answers::{POUND, number};
use super::stage::{Column::*, StageFact};
use crate::notation::Notation::Weight;
use crate::rules::Kind;

/// A weight that could be chosen, in hundredths of a pound.
#[derive(Clone, Copy, Debug)]
pub struct WeightCandidate(pub i64);

/// Facts of a weight.
pub fn facts() -> Vec<StageFact<WeightCandidate>> {
    let signed = || number(Weight, -400 * POUND, 20 * POUND);
    vec![
        StageFact {
            name: "weight.pounds",
            meaning: "the weight itself",
            kind: number(Weight, 6 * POUND, 16 * POUND),
            from: "whole pounds from 6 to 16",
            column: Fixed(|c| c.0),
        },
        StageFact {
            name: "weight.step",
            meaning: "pounds over the ball used now",
            kind: signed(),
            from: "the weight less the ball used now",
            column: Less(|c| c.0, "bowler.ball_now_weight"),
        },
        StageFact {
            name: "weight.over_tenth",
            meaning: "pounds over a tenth of body weight",
            kind: signed(),
            from: "the weight less a tenth of body weight",
            column: Less(|c| c.0, "bowler.tenth_of_body"),
        },
        StageFact {
            name: "weight.over_age",
            meaning: "pounds over the child's age in years",
            kind: signed(),
            from: "the weight less a pound a year of age",
            column: Derived(&["bowler.age"], |c, given| {
                Interval::point(c.0).minus(given.at(0).rising(|years| years * POUND))
            }),
        },
        StageFact {
            name: "weight.over_hold",
            meaning: "pounds over the heaviest ball held in comfort",
            kind: signed(),
            from: "the weight less the weight that passed the hold test",
            column: Less(|c| c.0, "bowler.hold_passed"),
        },
        StageFact {
            name: "weight.at_failed",
            meaning: "at or over a weight that wasn't comfortable in the hold test",
            kind: Kind::Flag,
            from: "the weight against the weight that failed the hold test",
            column: Derived(&["bowler.hold_failed"], |c, given| {
                Interval::point(c.0).is_at_least(given.at(0))
            }),
        },
        StageFact {
            name: "weight.off_target",
            meaning: "pounds off the weight the customer insists on",
            kind: number(Weight, 0, 20 * POUND),
            from: "distance from the customer's target weight",
            column: Derived(&["bowler.target_weight"], |c, given| {
                Interval::point(c.0).minus(given.at(0)).distance()
            }),
        },
    ]
}
