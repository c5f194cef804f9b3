//! How far two balls may be apart, over all that isn't known well.
//!
//! Every number is taken at its least and at its most, all together in every way: speed, revs, rotation, the lane's friction (of
//! both balls alike, since they roll on the same lane), and the RG of each ball by itself. The range is from the least to the most
//! of what comes out, the throw as it is among them.

use super::super::roll::{Apart, ApartAt};
use super::super::roll_ball::RollBall;
use super::spread::Spread;
use super::throw::Throw;
use crate::motion::path::{self, Ending, Path, Shot};
use crate::motion::{Attitude, Ball, Friction, Impossible, Lane, Length, Release};

/// Feet from the foul line to the pins, a place each.
const FEET: i32 = 60;
/// Error of a step.
const TOLERANCE: f64 = 1e-8;

/// What both balls share at one corner: the throw, and how the lane grips.
#[derive(Clone, Copy)]
struct Corner {
    throw: Throw,
    friction: f64,
}

/// Where the throw goes.
#[derive(Clone, Copy)]
pub(super) struct Sent {
    pub(super) start: f64,
    pub(super) launch: crate::motion::Angle,
}

/// The places at which a path is told.
pub(super) fn places() -> Vec<Length> {
    (0..=FEET)
        .map(|feet| Length::feet(f64::from(feet)))
        .collect()
}

/// One ball rolled on a lane. Where nobody knows how its axes stand, its moments are taken alike.
pub(super) fn rolled(
    ball: &RollBall,
    lane: &Lane,
    release: Release,
    places: &[Length],
) -> Result<Path, Impossible> {
    scaled(ball, lane, release, places, 1.0, 1.0)
}

fn scaled(
    ball: &RollBall,
    lane: &Lane,
    release: Release,
    places: &[Length],
    friction: f64,
    rg: f64,
) -> Result<Path, Impossible> {
    let body = ball.body();
    let mass = body.mass();
    let of_mass = body.moments().map(|moment| moment / mass.as_kilograms());
    let [low, middle, high] = of_mass;
    let alike = (low + middle + high) / 3.0;
    let squares = match ball.attitude() {
        Some(_) => of_mass,
        None => [alike; 3],
    };
    let body = Ball::new(
        mass,
        body.radius(),
        squares.map(|square| Length::metres(libm::sqrt(square) * rg)),
    )?;
    let found = ball.friction();
    let dry = (found.dry() * friction).min(1.0);
    let shot = Shot {
        ball: body,
        attitude: ball.attitude().copied().unwrap_or(Attitude::default()),
        release,
        lane: *lane,
        friction: Friction::new((found.oil() * friction).clamp(0.001, dry), dry)?,
    };
    path::roll(&shot, places, TOLERANCE)
}

/// The least, as thrown, and the most of one number.
#[derive(Clone, Copy)]
struct Range {
    least: f64,
    most: f64,
}

impl Range {
    fn of(value: f64) -> Range {
        Range {
            least: value,
            most: value,
        }
    }
    fn take(&mut self, value: f64) {
        self.least = self.least.min(value);
        self.most = self.most.max(value);
    }
}

/// What is compared of a path.
struct Told {
    boards: Vec<Option<f64>>,
    entry: Option<f64>,
    finished: Option<f64>,
}

impl Told {
    fn of(path: &Path, lane: &Lane) -> Told {
        let mut boards = vec![None; usize::try_from(FEET).unwrap_or_default() + 1];
        for station in path.stations() {
            let foot = libm::round(station.down().as_feet());
            if foot >= 0.0
                && let Some(place) = boards.get_mut(foot as usize)
            {
                *place = Some(lane.board_at(station.across()));
            }
        }
        let at_pins = path.ending() == Ending::Pins;
        if at_pins && let Some(place) = boards.last_mut() {
            *place = Some(lane.board_at(path.last().across()));
        }
        Told {
            boards,
            entry: at_pins.then(|| path.last().direction().as_degrees()),
            finished: path.slip_ends().map(|station| station.down().as_feet()),
        }
    }
}

/// The second ball against the first on the same line. The sentence is left to others.
pub(super) fn apart(
    balls: [&RollBall; 2],
    paths: [&Path; 2],
    lane: &Lane,
    throw: Throw,
    spread: Spread,
    sent: Sent,
) -> Result<Apart, Impossible> {
    let [first, second] = paths.map(|path| Told::of(path, lane));
    let difference = |a: Option<f64>, b: Option<f64>| Some(b? - a?);
    let centre: Vec<Option<f64>> = std::iter::zip(&first.boards, &second.boards)
        .map(|(a, b)| difference(*a, *b))
        .collect();
    let mut along: Vec<Option<Range>> = centre.iter().map(|v| v.map(Range::of)).collect();
    let mut whole = vec![true; along.len()];
    let entry_now = difference(first.entry, second.entry);
    let sooner_now = difference(second.finished, first.finished);
    let mut entry = entry_now.map(Range::of);
    let mut sooner = sooner_now.map(Range::of);
    let mut gutters = 0;
    let (mut corners, mut unfinished) = (0, 0);
    let same = balls[0].id() == balls[1].id();
    let places = places();
    for corner in throws(throw, spread) {
        let told = |ball: &RollBall| -> Result<Vec<Told>, Impossible> {
            let release = corner.throw.release()?;
            let release = release.sent(lane.across(sent.start), sent.launch)?;
            ends(spread.rg)
                .into_iter()
                .map(|off| {
                    let rg = 1.0 + off as f64 / 100.0;
                    let path = scaled(ball, lane, release, &places, corner.friction, rg)?;
                    Ok(Told::of(&path, lane))
                })
                .collect()
        };
        let (ones, others) = (told(balls[0])?, told(balls[1])?);
        for (i, one) in ones.iter().enumerate() {
            for (j, other) in others.iter().enumerate() {
                // The same ball can't be lighter in the core than itself.
                if same && i != j {
                    continue;
                }
                corners += 1;
                let places = std::iter::zip(&one.boards, &other.boards);
                for ((range, whole), (a, b)) in along.iter_mut().zip(&mut whole).zip(places) {
                    match (range.as_mut(), difference(*a, *b)) {
                        (Some(range), Some(value)) => range.take(value),
                        _ => *whole = false,
                    }
                }
                match (entry.as_mut(), difference(one.entry, other.entry)) {
                    (Some(range), Some(value)) => range.take(value),
                    (Some(_), None) => gutters += 1,
                    _ => {}
                }
                match (sooner.as_mut(), difference(other.finished, one.finished)) {
                    (Some(range), Some(value)) => range.take(value),
                    (Some(_), None) => unfinished += 1,
                    _ => {}
                }
            }
        }
    }
    let mut varied = spread.said(throw);
    if gutters > 0 {
        varied.push(format!(
            "In {gutters} of {corners} of these a ball leaves the lane; from there on they aren't counted."
        ));
    }
    if unfinished > 0 {
        varied.push(format!(
            "In {unfinished} of {corners} of these a ball hasn't finished hooking at the pins; they aren't counted for that."
        ));
    }
    let triple = |now: Option<f64>, range: Option<Range>| Some((now?, range?.least, range?.most));
    Ok(Apart {
        along: along
            .iter()
            .zip(&centre)
            .zip(whole)
            .enumerate()
            .filter_map(|(feet, ((range, now), whole))| {
                Some(ApartAt {
                    feet: feet as f64,
                    boards: (*now)?,
                    least: (*range)?.least,
                    most: (*range)?.most,
                    whole,
                })
            })
            .collect(),
        entry: triple(entry_now, entry),
        sooner: triple(sooner_now, sooner),
        said: super::super::reason::Texts::alike(""),
        varied,
        lines: Vec::new(),
    })
}

/// Both ends, or the one value where there is nothing to vary.
fn ends(off: i64) -> Vec<i64> {
    match off {
        0 => vec![0],
        off => vec![-off, off],
    }
}

/// Every throw at which all that both balls share is at an end.
fn throws(throw: Throw, spread: Spread) -> Vec<Corner> {
    let mut found = Vec::new();
    for speed in ends(spread.speed) {
        for revs in ends(spread.revs) {
            for rotation in ends(spread.rotation) {
                for friction in ends(spread.friction) {
                    // Within what a release can have.
                    let throw = Throw {
                        speed: (throw.speed + speed).clamp(30, 400),
                        revs: (throw.revs + revs).clamp(0, 1000),
                        rotation: (throw.rotation + rotation).clamp(0, 900),
                        tilt: throw.tilt,
                    };
                    found.push(Corner {
                        throw,
                        friction: 1.0 + friction as f64 / 100.0,
                    });
                }
            }
        }
    }
    found
}
