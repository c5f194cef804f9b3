//! What the rules say about a roll: the facts of each ball's path, and the sentences that hold for them.

use super::super::explain::{self, Scale};
use super::super::reason::Reason;
use super::super::roll::{Apart, Rolled, Saying};
use super::super::shop::Shop;
use super::super::spec::WorkStep;
use crate::motion::path::Ending;
use crate::rules::Interval;
use crate::vocabulary::{Alone, Situation};

/// The lists of sentences: what everybody hears, and what only the fitter reads.
const SAY: [&str; 2] = ["roll.say", LIMITS];
const LIMITS: &str = "roll.limits";

impl Shop {
    /// What holds for each ball, a sentence once; each with the balls it holds for.
    pub(super) fn said_of_rolls(
        &self,
        situation: &Situation,
        balls: &[Rolled],
        apart: Option<&Apart>,
        suited: usize,
    ) -> Vec<Saying> {
        let rules = self.rules();
        let mut found: Vec<Saying> = Vec::new();
        for (ball, rolled) in balls.iter().enumerate() {
            let mut situation = situation.clone();
            for (fact, value) in facts(rolled) {
                situation.set(fact, value.map_or(Interval::NOT_KNOWN, Interval::point));
            }
            let beside = boards_from_the_suited(ball == suited, apart);
            let beside = beside.map_or(Interval::NOT_KNOWN, Interval::point);
            situation.set("difference.boards", beside);
            let mut new = Vec::new();
            for list in SAY {
                self.observe(list, &Alone(&situation));
                for line in rules.steps(list, &Alone(&situation)) {
                    let reason = explain::reason(rules, &line, Scale::Points);
                    let text = rules.action(&line).unwrap_or_default();
                    let known = |saying: &Saying| {
                        saying.step.id == reason.rule && saying.texts == reason.texts
                    };
                    match found.iter().position(known) {
                        // What this ball has for itself stands before what both have next, as the rules order it.
                        Some(at) => {
                            let behind = found.split_off(at);
                            found.append(&mut new);
                            found.extend(behind.into_iter().enumerate().map(
                                |(place, mut saying)| {
                                    if place == 0 {
                                        saying.balls.push(ball);
                                    }
                                    saying
                                },
                            ));
                        }
                        None => new.push(saying(reason, text, ball, list == LIMITS)),
                    }
                }
            }
            found.append(&mut new);
        }
        // What everybody hears comes first.
        found.sort_by_key(Saying::is_for_the_fitter);
        found
    }
}

fn saying(reason: Reason, text: String, ball: usize, for_the_fitter: bool) -> Saying {
    Saying {
        step: WorkStep {
            id: reason.rule,
            text,
            because: reason.texts.fitter.clone(),
            source: reason.source,
            strength: reason.strength,
        },
        texts: reason.texts,
        balls: vec![ball],
        for_the_fitter,
    }
}

/// Whole steps, each so many parts of one.
fn steps(value: f64, parts: f64) -> i64 {
    libm::round(value * parts) as i64
}

fn facts(rolled: &Rolled) -> [(&'static str, Option<i64>); 7] {
    let path = rolled.path();
    let last = path.last();
    let gutter = matches!(path.ending(), Ending::Gutter(_));
    let flare = rolled.ball().attitude().map(|_| path.flare().as_inches());
    let tenths = |value: f64| steps(value, 10.0).max(0);
    [
        (
            "path.most_turn",
            Some(tenths(rolled.most_turn().as_degrees())),
        ),
        (
            "path.turn_done",
            Some(steps(rolled.turn_done(), 100.0).clamp(0, 100)),
        ),
        (
            "path.entry_angle",
            (!gutter).then(|| tenths(last.direction().as_degrees())),
        ),
        (
            "path.slip_ends",
            path.slip_ends()
                .map(|station| tenths(station.down().as_feet())),
        ),
        ("path.flare", flare.map(|inches| steps(inches, 64.0).max(0))),
        ("path.cover", rolled.ball().cover()),
        ("path.in_gutter", Some(i64::from(gutter))),
    ]
}

/// How far a ball is at the pins from the one its line suits, in tenths of a board; none where either isn't there.
fn boards_from_the_suited(suits: bool, apart: Option<&Apart>) -> Option<i64> {
    const FOOT_OF_THE_PINS: f64 = 60.0;
    if suits {
        return Some(0);
    }
    let at = apart?.along().last()?;
    (at.feet() >= FOOT_OF_THE_PINS).then(|| steps(libm::fabs(at.boards()), 10.0).min(400))
}
