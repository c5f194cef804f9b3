//! What balls do on the bowler's lane, by the closed results: those owned, and one from the shelf.

use super::consultation::Consultation;
use super::owned_now::called;
use super::upgrade::{Against, Does, PINS};
use crate::catalog::LaneRow;
use crate::fitting::Sphere;
use crate::motion::closed::{self, Thrown};
use crate::motion::{Angle, Friction, Lane, Length, Release, Speed, Spin};
use crate::vocabulary::{Alone, BallCandidate};

/// The measures that say how far a number of the throw may be off, for the answers that tell it.
const OFF: [(&str, &str); 3] = [
    ("bowler.speed", "band.speed"),
    ("bowler.rev_rate", "band.rev_rate"),
    ("bowler.rotation", "band.rotation"),
];
/// The measure that says how far the lane's grip may be off, in hundredths.
const GRIP_OFF: &str = "band.friction";

/// What balls do for one throw, and for the throws that it may be as well.
#[derive(Debug, Default)]
pub(super) struct Motions {
    /// The lane as people say it.
    pub(super) lane: Option<String>,
    /// For each ball owned: the throw as it was told first, then the others.
    owned: Vec<Vec<Does>>,
    throws: Vec<Corner>,
    oil: Option<Lane>,
}

/// A throw, and how much the lane grips beside what the table says.
#[derive(Clone, Copy, Debug)]
struct Corner {
    thrown: Thrown,
    grip: f64,
}

impl Motions {
    /// What an owned ball does; none where that can't be told.
    pub(super) fn of_owned(&self, at: usize) -> Option<Does> {
        self.owned.get(at)?.first().copied()
    }

    /// What a ball does for each throw; empty where one of them can't be had.
    fn each(&self, beta: f64, radius: Length, friction: &Friction) -> Vec<Does> {
        let Some(lane) = &self.oil else {
            return Vec::new();
        };
        let does = self.throws.iter().map(|corner| {
            let dry = (friction.dry() * corner.grip).min(1.0);
            let oil = (friction.oil() * corner.grip).clamp(0.001, dry);
            let found = Friction::new(oil, dry).ok()?;
            let rolled = closed::roll(&corner.thrown, beta, radius, lane, &found);
            Some(Does {
                boards: rolled.sideways().as_metres() / lane.board().as_metres(),
                finished: rolled.slip_ends().as_feet(),
                entry: rolled.entry().as_degrees(),
                turn_done: rolled.turn_done(),
            })
        });
        does.collect::<Option<Vec<Does>>>().unwrap_or_default()
    }
}

impl Consultation<'_> {
    /// What the balls owned do; nothing where speed or revs aren't known.
    pub(super) fn motions(&self) -> Motions {
        let throws = self.throws();
        if throws.is_empty() {
            return Motions::default();
        }
        let row = self.lane();
        let mut motions = Motions {
            lane: Some(row.name().to_owned()),
            owned: Vec::new(),
            throws,
            oil: Some(*row.lane()),
        };
        let owned = self.bowler.owned().iter();
        motions.owned = owned
            .map(|ball| match self.shop.owned_roll_ball(self.bowler, ball) {
                Ok(ball) => {
                    let body = ball.body();
                    motions.each(body.beta(), body.radius(), ball.friction())
                }
                // A cover that nobody knows has no friction.
                Err(_) => Vec::new(),
            })
            .collect();
        motions
    }

    /// The one lane that stands for the bowler's answer.
    fn lane(&self) -> &LaneRow {
        let lanes = self.shop.catalog().lanes();
        lanes.for_answer(self.situation.known("bowler.lanes").unwrap_or_default())
    }

    /// The throw as it was told, then every throw at which all that may be off is at an end.
    fn throws(&self) -> Vec<Corner> {
        let known = |name: &str| self.situation.known(name);
        let numbers = OFF.map(|(name, _)| known(name));
        let ([Some(speed), Some(revs), Some(rotation)], Some(tilt)) =
            (numbers, known("bowler.tilt"))
        else {
            return Vec::new();
        };
        let off = OFF.map(|(name, measure)| {
            let told = self.bowler.give_or_take(name);
            told.unwrap_or_else(|| self.setting(measure))
        });
        let grip = self.setting(GRIP_OFF);
        let mut throws = Vec::new();
        throws.extend(corner([speed, revs, rotation], tilt, 0));
        for speed in ends(speed, off[0]) {
            for revs in ends(revs, off[1]) {
                for rotation in ends(rotation, off[2]) {
                    for grip in ends(0, grip) {
                        throws.extend(corner([speed, revs, rotation], tilt, grip));
                    }
                }
            }
        }
        throws
    }

    /// What the rules set, or nothing.
    fn setting(&self, measure: &str) -> i64 {
        let alone = Alone(&self.situation);
        let measured = self.shop.rules().measure(measure, &alone);
        measured.value().unwrap_or_default().max(0)
    }

    /// How a ball from the shelf differs from the owned ball that comes nearest to it.
    pub(super) fn against_owned(&self, motions: &Motions, candidate: usize) -> Option<Against> {
        let ball = self.shop.candidates().get(candidate)?;
        let (beta, radius, friction) = of_shelf(ball)?;
        let new = motions.each(beta, radius, &friction);
        let now = new.first()?;
        let balls = motions.owned.iter().enumerate();
        // The ball for single pins is thrown straight; nobody compares a new one for the first throw with it.
        let balls = balls.filter(|(at, _)| !self.bowler.owned()[*at].is_spare());
        let (at, owned) = balls
            .filter(|(_, does)| !does.is_empty())
            .min_by(|(_, a), (_, b)| distance(a, now).total_cmp(&distance(b, now)))?;
        let pairs = || std::iter::zip(&new, owned);
        let boards = whole_range(pairs().map(|(new, old)| new.boards - old.boards))?;
        let sooner =
            whole_range(pairs().map(|(new, old)| old.finished.min(PINS) - new.finished.min(PINS)))?;
        Some(Against {
            owned: called(self.bowler.owned(), at),
            boards,
            sooner,
        })
    }
}

/// How far apart two are at the pins, in boards, as thrown.
fn distance(one: &[Does], other: &Does) -> f64 {
    one.first()
        .map_or(f64::INFINITY, |one| (one.boards - other.boards).abs())
}

/// From the least to the most, in whole numbers that hold all of them.
fn whole_range(values: impl Iterator<Item = f64> + Clone) -> Option<(i64, i64)> {
    let least = values.clone().reduce(f64::min)?;
    let most = values.reduce(f64::max)?;
    let whole = |value: f64| value.clamp(-1e6, 1e6) as i64;
    Some((whole(libm::floor(least)), whole(libm::ceil(most))))
}

/// Both ends, or the one value where there is nothing to vary.
fn ends(value: i64, off: i64) -> Vec<i64> {
    match off {
        0 => vec![value],
        off => vec![value - off, value + off],
    }
}

/// A throw sent straight, within what a release can have.
fn corner([speed, revs, rotation]: [i64; 3], tilt: i64, grip: i64) -> Option<Corner> {
    let tenths = |steps: i64| steps as f64 / 10.0;
    let release = Release::new(
        Speed::mph(tenths(speed.clamp(30, 400))),
        Spin::rpm(revs.clamp(0, 1000) as f64),
        Angle::degrees(tenths(rotation.clamp(0, 900))),
        Angle::degrees(tenths(tilt.clamp(0, 900))),
    );
    Some(Corner {
        thrown: Thrown::of(&release.ok()?),
        grip: 1.0 + grip as f64 / 100.0,
    })
}

/// A ball from the shelf, undrilled: its moment of inertia, its radius and its friction.
fn of_shelf(ball: &BallCandidate) -> Option<(f64, Length, Friction)> {
    let radius = Length::inches(Sphere::default().radius());
    Some((ball.beta, radius, ball.friction?)).filter(|_| ball.beta > 0.0)
}
