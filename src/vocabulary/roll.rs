//! What every ball on the shelf would do for this bowler, by the closed results for equal moments.
//!
//! A ball is taken undrilled, 27 in round, its three moments as their mean, sent straight down the lane; the lane is the one that stands
//! for the bowler's answer, its oil alike on every board. Known where speed (at release) and rev rate are; rotation and tilt have
//! assumptions. Over a box of answers each is between the least and the most that [`Between`] gives, which is too wide at times and never
//! too narrow.

use std::sync::Arc;

use super::answers::number;
use super::stage::{Column::Together, Given, StageFact};
use super::{BallCandidate, Interval};
use crate::catalog::Lanes;
use crate::fitting::Sphere;
use crate::motion::closed::{Between, Course, Rolling, Thrown, entry, most_turn};
use crate::motion::{Angle, Friction, Lane, Length, Release, Speed, Spin};
use crate::notation::Notation;

/// What the columns are made of.
pub(super) const HAND: &[&str] = &[
    "bowler.speed",
    "bowler.rev_rate",
    "bowler.rotation",
    "bowler.tilt",
    "bowler.lanes",
];

/// Facts of a ball in this bowler's hand.
pub(super) fn columns() -> Vec<StageFact<BallCandidate>> {
    let from = "speed, revs, rotation, tilt, lane, and the ball's RG, cover and finish";
    let column = |name, meaning, kind, values| StageFact {
        name,
        meaning,
        kind,
        from,
        column: Together(HAND, values),
    };
    vec![
        column(
            "roll.most_turn",
            "the most this hand can turn this ball",
            number(Notation::Angle, 0, TURN.most),
            |balls, given| TURN.of(balls, given, TURNS),
        ),
        column(
            "roll.turn_done",
            "how much of that turn is done at the pins: the share of the slip that is gone",
            number(Notation::Percent, 0, DONE.most),
            |balls, given| DONE.of(balls, given, DONES),
        ),
        column(
            "roll.entry_angle",
            "the angle at the pins, sent so that it is farthest out where the oil ends",
            number(Notation::Angle, 0, TURN.most),
            |balls, given| TURN.of(balls, given, ENTRIES),
        ),
        column(
            "roll.slip_ends",
            "where it has finished hooking, from the foul line; beyond the pins if the dry went on",
            number(Notation::Feet, 0, FEET.most),
            |balls, given| FEET.of(balls, given, ENDS),
        ),
        column(
            "roll.sideways",
            "how far it moves to the side it curves to, by the pins, sent straight",
            number(Notation::Boards, 0, BOARDS.most),
            |balls, given| BOARDS.of(balls, given, SIDEWAYS),
        ),
    ]
}

/// Where each ball has finished hooking, from the first facts given: those of the hand.
pub(super) fn slip_ends(balls: &[BallCandidate], given: &Given<'_>) -> Vec<Interval> {
    FEET.of(balls, given, ENDS)
}

/// How far sideways each ball moves by the pins, from the first facts given: those of the hand.
pub(super) fn sideways(balls: &[BallCandidate], given: &Given<'_>) -> Vec<Interval> {
    BOARDS.of(balls, given, SIDEWAYS)
}

/// How a result becomes whole steps.
struct Steps {
    a_unit: f64,
    most: i64,
}

/// Tenths of a degree, up to square.
const TURN: Steps = Steps {
    a_unit: 10.0,
    most: 900,
};
/// Hundredths.
const DONE: Steps = Steps {
    a_unit: 100.0,
    most: 100,
};
/// Tenths of a foot; what ends beyond ten lanes is told as that.
const FEET: Steps = Steps {
    a_unit: 10.0,
    most: 6000,
};
/// Tenths of a board, up to five lanes to the side.
const BOARDS: Steps = Steps {
    a_unit: 10.0,
    most: 2000,
};

/// A result at a single throw, and the least and most of it over a box.
struct Asked {
    at: fn(&Thrown, &Body, &Lane) -> f64,
    over: fn(&Between, &Rolling, &Lane) -> (f64, f64),
}

/// A ball as the closed results see it.
struct Body {
    beta: f64,
    radius: Length,
    friction: Friction,
}

impl Body {
    fn course(&self, thrown: &Thrown, lane: &Lane) -> Course {
        Course::of(thrown, self.beta, self.radius, lane, &self.friction)
    }
}

const TURNS: Asked = Asked {
    at: |thrown, body, _| most_turn(thrown, body.beta, body.radius).as_degrees(),
    over: |between, rolling, _| degrees(between.most_turn(rolling)),
};
const DONES: Asked = Asked {
    at: |thrown, body, lane| 1.0 - body.course(thrown, lane).at(lane.length()).slip_left(),
    over: |between, rolling, _| between.turn_done(rolling),
};
const ENTRIES: Asked = Asked {
    at: |thrown, body, lane| {
        entry(thrown, body.beta, body.radius, lane, &body.friction).as_degrees()
    },
    over: |between, rolling, _| degrees(between.entry(rolling)),
};
const ENDS: Asked = Asked {
    at: |thrown, body, lane| body.course(thrown, lane).slip_ends().down().as_feet(),
    over: |between, rolling, _| {
        let (least, most) = between.slip_ends(rolling);
        (least.as_feet(), most.as_feet())
    },
};
const SIDEWAYS: Asked = Asked {
    at: |thrown, body, lane| {
        let across = body.course(thrown, lane).at(lane.length()).across();
        across.as_metres() / lane.board().as_metres()
    },
    over: |between, rolling, lane| {
        let (least, most) = between.sideways(rolling);
        let board = lane.board().as_metres();
        (least.as_metres() / board, most.as_metres() / board)
    },
};

fn degrees((least, most): (Angle, Angle)) -> (f64, f64) {
    (least.as_degrees(), most.as_degrees())
}

impl Steps {
    /// The result for each ball.
    fn of(&self, balls: &[BallCandidate], given: &Given<'_>, asked: Asked) -> Vec<Interval> {
        let nobody_knows = || balls.iter().map(|_| Interval::NOT_KNOWN).collect();
        let hand: [Interval; 5] = std::array::from_fn(|place| given.at(place));
        if hand.iter().any(|fact| !fact.may_be_known()) {
            return nobody_knows();
        }
        let (Some(low), Some(high)) = (
            release(hand, Interval::lowest),
            release(hand, Interval::highest),
        ) else {
            return nobody_knows();
        };
        let radius = Length::inches(Sphere::default().radius());
        let body = |ball: &BallCandidate| {
            Some(Body {
                beta: (ball.beta > 0.0).then_some(ball.beta)?,
                radius,
                friction: ball.friction?,
            })
        };
        let words = hand[4];
        if hand.iter().all(|fact| fact.is_point()) {
            let thrown = Thrown::of(&low);
            let value = |ball: &BallCandidate| {
                let lane = ball.lanes.for_answer(words.lowest()).lane();
                let body = body(ball)?;
                Some(Interval::point(
                    self.steps((asked.at)(&thrown, &body, lane)),
                ))
            };
            let values = balls.iter().map(value);
            return values
                .map(|value| value.unwrap_or(Interval::NOT_KNOWN))
                .collect();
        }
        let between = Between::of(&low, &high);
        let maybe = hand.iter().any(|fact| fact.may_be_unknown());
        let mut seen: Option<(&Arc<Lanes>, (&Lane, &Lane))> = None;
        let value = |ball: &'_ BallCandidate, lanes: (&Lane, &Lane)| {
            let body = body(ball)?;
            let rolling = Rolling::on(body.beta, radius, lanes, &body.friction);
            let (least, most) = (asked.over)(&between, &rolling, lanes.0);
            let known = Interval::between(self.at_least(least), self.at_most(most));
            Some(if maybe { known.or_unknown() } else { known })
        };
        let mut values = Vec::with_capacity(balls.len());
        for ball in balls {
            let lanes = match seen {
                Some((list, lanes)) if Arc::ptr_eq(list, &ball.lanes) => lanes,
                _ => among(&ball.lanes, words),
            };
            seen = Some((&ball.lanes, lanes));
            values.push(value(ball, lanes).unwrap_or(Interval::NOT_KNOWN));
        }
        values
    }

    /// In whole steps, halves upward.
    fn steps(&self, value: f64) -> i64 {
        // The cast stops at the ends.
        (libm::floor(value * self.a_unit + 0.5) as i64).clamp(0, self.most)
    }
    /// The same for the low end of a range: a hair lower, which is more than rounding errors can do.
    fn at_least(&self, value: f64) -> i64 {
        self.steps(value - HAIR * (1.0 + value.abs()))
    }
    fn at_most(&self, value: f64) -> i64 {
        match value.is_finite() {
            true => self.steps(value + HAIR * (1.0 + value.abs())),
            false => self.most,
        }
    }
}

const HAIR: f64 = 1e-8;

/// The release at one end of the ranges; none where a number isn't one that a release can have.
fn release(hand: [Interval; 5], end: fn(Interval) -> i64) -> Option<Release> {
    let [speed, revs, rotation, tilt, _] = hand.map(end);
    // Whole steps of a few hundred: exact.
    Release::new(
        Speed::mph(speed as f64 / 10.0),
        Spin::rpm(revs as f64),
        Angle::degrees(rotation as f64 / 10.0),
        Angle::degrees(tilt as f64 / 10.0),
    )
    .ok()
}

/// Of the lanes that may stand for the answer, where the oil ends soonest and where it ends latest.
fn among(lanes: &Lanes, words: Interval) -> (&Lane, &Lane) {
    let (certain, open) = (words.lowest(), words.highest() & !words.lowest());
    let first = lanes.for_answer(certain | open).lane();
    let (mut short, mut long) = (first, first);
    // Every set of the words that are open, from all of them down to none.
    let mut set = open;
    while set != 0 {
        set = (set - 1) & open;
        let lane = lanes.for_answer(certain | set).lane();
        if lane.oil_ends() < short.oil_ends() {
            short = lane;
        }
        if lane.oil_ends() > long.oil_ends() {
            long = lane;
        }
    }
    (short, long)
}
