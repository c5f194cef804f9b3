//! What an upgrade path and a roll came to, as things that can be held side by side.

use super::outcome::{Outcome, SHOWN};
use crate::advice::result::Pick;
use crate::advice::roll::{Roll, Rolled};
use crate::advice::upgrade::Upgrade;
use crate::rules::Audience;

/// Everything of an upgrade path that a customer is told.
pub(super) fn upgrade(outcome: &mut Outcome, upgrade: &Upgrade) {
    let held = if upgrade.is_held() { "yes" } else { "no" };
    outcome.add("held", "", held);
    for settled in upgrade.settled() {
        outcome.settled(settled);
    }
    for gap in upgrade.gaps() {
        if gap.place() <= SHOWN {
            outcome.add("gap", &gap.place().to_string(), gap.word());
        }
        outcome.ranked("gap", gap.word(), gap.total());
    }
    for gap in upgrade.gaps().iter().chain(upgrade.ruled_out()) {
        outcome.ledgers.add("gap", gap.word(), gap.lines());
    }
    for two in upgrade.doubled() {
        outcome.add("doubled", &two.names().join(" and "), "yes");
    }
    let mut triggers = Vec::new();
    for next in upgrade.next() {
        let word = next.gap().word();
        let ball = next.pick().map_or("none on the shelf", Pick::ball);
        outcome.add("next", word, ball);
        if let Some(pick) = next.pick() {
            outcome.ranked("next", pick.ball(), pick.total());
            outcome.ledgers.add("next", pick.ball(), pick.lines());
        }
        if let Some(bill) = next.bill() {
            outcome.add("bill", word, bill.total());
        }
        triggers.extend_from_slice(next.triggers());
        outcome.cautions(next.cautions());
    }
    outcome.steps("upgrade, to wait for", &triggers);
    outcome.cautions(upgrade.cautions());
    outcome.steps("upgrade, before buying", upgrade.before());
    outcome.steps("upgrade, to come back", upgrade.wait_for());
}

/// The numbers of a roll as they are told, and its sentences.
pub(super) fn roll(outcome: &mut Outcome, roll: &Roll) {
    outcome.add("settled", "lane", roll.lane());
    for (place, rolled) in ["first", "second"].into_iter().zip(roll.balls()) {
        for (what, value) in numbers(rolled) {
            outcome.add("rolled", &format!("{place} ball: {what}"), value);
        }
    }
    if let Some(apart) = roll.apart() {
        if let Some((entry, _, _)) = apart.entry() {
            let name = "second against first: entry angle";
            outcome.add("rolled", name, format!("{:+.1} degrees", tenths(entry)));
        }
        if let Some(last) = apart.along().last() {
            let name = "second against first: at the pins";
            outcome.add(
                "rolled",
                name,
                format!("{:+.1} boards", tenths(last.boards())),
            );
        }
        outcome.add("said", "", apart.said().of(Audience::League));
    }
    for said in roll.says() {
        outcome.add("step", &format!("roll: {}", said.step().id()), "yes");
    }
}

fn numbers(rolled: &Rolled) -> [(&'static str, String); 4] {
    let path = rolled.path();
    let finished = path.slip_ends().map_or_else(
        || "not before the pins".to_owned(),
        |station| format!("{:.0} ft", station.down().as_feet()),
    );
    [
        (
            "most turn",
            format!("{:.1} degrees", rolled.most_turn().as_degrees()),
        ),
        ("turn done", format!("{:.0} %", 100.0 * rolled.turn_done())),
        ("has finished hooking", finished),
        (
            "entry angle",
            format!(
                "{:.1} degrees",
                tenths(path.last().direction().as_degrees())
            ),
        ),
    ]
}

/// Rounded to tenths, and nothing is never less than nothing.
fn tenths(value: f64) -> f64 {
    libm::round(value * 10.0) / 10.0 + 0.0
}
