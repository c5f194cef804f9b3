//! What an upgrade path and a roll came to, as things that can be held side by side.

use super::outcome::Outcome;
use crate::advice::roll::{Roll, Rolled};
use crate::advice::upgrade::Upgrade;
use crate::rules::Audience;

/// Everything of an upgrade path that a customer is told.
pub(super) fn upgrade(outcome: &mut Outcome, upgrade: &Upgrade) {
    outcome.cautions(upgrade.cautions());
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
