//! What a roll came to, for the sentences said about it, and the lane's oil, for the line.

use super::answers::{INCH, number};
use super::settled::settled;
use super::words::COVERS;
use crate::notation::Notation::{Angle, Boards, Feet, Length, Percent};
use crate::rules::{Fact, Kind};

/// The facts of one ball's roll, and of how two differ.
pub(super) fn facts() -> Vec<Fact> {
    let lane = "the lane that is rolled on";
    let roll = "the roll of one ball";
    let two = "the rolls of two balls";
    vec![
        settled(
            "lane.oil",
            "how far down the lane the oil goes",
            number(Feet, 0, 600),
            lane,
        ),
        settled(
            "lane.inside",
            "the first board, from either side, with the whole oil; none where it is alike on every board",
            number(Boards, 0, 190),
            lane,
        ),
        settled(
            "path.most_turn",
            "the most this hand can turn this ball",
            number(Angle, 0, 900),
            roll,
        ),
        settled(
            "path.turn_done",
            "how much of that turn is done at the pins",
            number(Percent, 0, 100),
            roll,
        ),
        settled(
            "path.entry_angle",
            "the angle at which it comes to the pins",
            number(Angle, 0, 900),
            roll,
        ),
        settled(
            "path.slip_ends",
            "where it has finished hooking, from the foul line; not known if it hasn't at the pins",
            number(Feet, 0, 600),
            roll,
        ),
        settled(
            "path.flare",
            "how far its axis wanders over the ball; not known without a layout",
            number(Length, 0, 14 * INCH),
            roll,
        ),
        settled(
            "path.cover",
            "the cover of the ball that rolls",
            Kind::Choice(COVERS),
            roll,
        ),
        settled(
            "path.in_gutter",
            "it leaves the lane before the pins",
            Kind::Flag,
            roll,
        ),
        settled(
            "difference.boards",
            "how many boards a ball is at the pins from the one its line suits: none for that ball itself; not known where one leaves the lane",
            number(Boards, 0, 400),
            two,
        ),
    ]
}
