//! What the balls owned do and lack, for the upgrade path.

use super::answers::number;
use super::grip::WordCandidate;
use super::roll::slip_ends;
use super::settled::settled;
use super::stage::{Column, Given, StageFact};
use super::words::{COVERS, GAPS};
use super::{BallCandidate, Interval};
use crate::notation::Notation::{Count, Counted, Feet, Percent};
use crate::rules::{Fact, Kind};

/// Facts of a gap among the balls owned.
pub fn gap_facts() -> Vec<StageFact<WordCandidate>> {
    vec![StageFact {
        name: "gap.kind",
        meaning: "what the balls owned may lack",
        kind: Kind::Choice(GAPS),
        from: "gaps a fitter looks for",
        column: Column::Fixed(|c| c.0),
    }]
}

/// What a place down the lane is held against: the facts of the hand, then one of the balls owned.
macro_rules! hand_and {
    ($fact:literal) => {
        &[
            "bowler.speed",
            "bowler.rev_rate",
            "bowler.rotation",
            "bowler.tilt",
            "bowler.lanes",
            $fact,
        ]
    };
}

/// Where each ball has finished hooking, less the place that is given last.
fn past(balls: &[BallCandidate], given: &Given<'_>) -> Vec<Interval> {
    let ends = slip_ends(balls, given).into_iter();
    ends.map(|end| end.minus(given.at(5))).collect()
}

/// Facts of a ball from the shelf beside those owned.
pub(super) fn columns() -> Vec<StageFact<BallCandidate>> {
    let from = "where it has finished hooking, against the balls owned";
    let feet = |least| number(Feet, least, 6_000);
    vec![
        StageFact {
            name: "match.worn_cover",
            meaning: "has the cover of the owned ball with the most games",
            kind: Kind::Flag,
            from: "the ball's cover against the most-used one's",
            column: Column::Derived(&["upgrade.worn_cover"], |c, given| given.at(0).is(c.cover)),
        },
        StageFact {
            name: "match.before_soonest",
            meaning: "how far before the owned ball that hooks soonest it has finished hooking",
            kind: feet(-6_000),
            from,
            column: Column::Together(hand_and!("upgrade.soonest"), |balls, given| {
                let past = past(balls, given).into_iter();
                past.map(|past| Interval::point(0).minus(past)).collect()
            }),
        },
        StageFact {
            name: "match.after_latest",
            meaning: "how far after the owned ball that hooks latest it has finished hooking",
            kind: feet(-6_000),
            from,
            column: Column::Together(hand_and!("upgrade.latest"), past),
        },
        StageFact {
            name: "match.from_between",
            meaning: "how far from the middle of the widest gap between two owned balls it has finished hooking",
            kind: feet(0),
            from,
            column: Column::Together(hand_and!("upgrade.between"), |balls, given| {
                let past = past(balls, given).into_iter();
                past.map(Interval::distance).collect()
            }),
        },
    ]
}

/// The facts of the upgrade path.
pub(super) fn facts() -> Vec<Fact> {
    let owned = "the balls owned";
    let lane = "the closed results of the balls owned on the bowler's lane";
    let feet = || number(Feet, 0, 6_000);
    vec![
        settled(
            "upgrade.gap",
            "the gap that a ball is looked for",
            Kind::Choice(GAPS),
            "the ranking of gaps",
        ),
        settled(
            "upgrade.hooking",
            "owned balls for the first throw with a cover that hooks: urethane or reactive",
            number(Count, 0, 40),
            owned,
        ),
        settled(
            "upgrade.has_spare",
            "a ball for single pins is owned: one kept for spares, or one of plastic",
            Kind::Flag,
            owned,
        ),
        settled(
            "upgrade.doubled",
            "pairs of owned balls that do the same on the lane",
            number(Count, 0, 780),
            "motion where speed and revs are known, else cover and surface",
        ),
        settled(
            "upgrade.most_games",
            "games on the most-used ball with a cover that hooks",
            number(Counted("game", "games"), 0, 100_000),
            owned,
        ),
        settled(
            "upgrade.worn_cover",
            "the cover of that ball",
            Kind::Choice(COVERS),
            owned,
        ),
        settled(
            "upgrade.soonest",
            "how far down the lane the owned ball that hooks soonest has finished hooking",
            feet(),
            lane,
        ),
        settled(
            "upgrade.latest",
            "how far down the lane the owned ball that hooks latest has finished hooking",
            feet(),
            lane,
        ),
        settled(
            "upgrade.widest",
            "the widest gap between two owned balls next to each other, in where they have finished hooking",
            feet(),
            lane,
        ),
        settled(
            "upgrade.between",
            "the middle of that gap, down the lane",
            feet(),
            lane,
        ),
        settled(
            "upgrade.turn_done",
            "how much of its turn the owned ball that hooks soonest has done at the pins",
            number(Percent, 0, 100),
            lane,
        ),
    ]
}
