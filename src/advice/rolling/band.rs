//! How far two balls may be apart, over all that isn't known well.
//!
//! Every number is taken at its least and at its most, all together in every way: speed, revs, rotation, the lane's friction (of
//! both balls alike, since they roll on the same lane), and the RG of each ball by itself; each alone as well, and all that half as
//! far. The range is from the least to the most of what comes out, the throw as it is among them. Where a ball leaves the lane it
//! is tried less far that way, until it stays: so numbers that are less certain don't make the range narrower.

use super::super::roll::{Apart, ApartAt};
use super::super::roll_ball::RollBall;
use super::spread::Spread;
use super::throw::Throw;
use super::ways::{self, Way};
use crate::motion::path::{self, Ending, Path, Shot};
use crate::motion::{Attitude, Ball, Friction, Impossible, Lane, Length, Release};

/// Feet from the foul line to the pins, a place each.
const FEET: i32 = 60;
/// Error of a step.
const TOLERANCE: f64 = 1e-8;

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
    let places = places();
    let rolled = &|ball: &RollBall, way: &Way, rg: f64| -> Result<Told, Impossible> {
        let release = way.throw(throw, spread).release()?;
        let release = release.sent(lane.across(sent.start), sent.launch)?;
        let friction = 1.0 + way.friction(spread);
        let path = scaled(ball, lane, release, &places, friction, 1.0 + rg)?;
        Ok(Told::of(&path, lane))
    };
    let same = balls[0].id() == balls[1].id();
    let mut found = Found::from(paths.map(|path| Told::of(path, lane)));
    for way in ways::all(spread) {
        for share in ways::SHARES {
            let way = way.share(share);
            let (way, rgs) = (&way, way.rgs(spread));
            let told = |ball| rgs.iter().map(move |rg| rolled(ball, way, *rg));
            let ones = told(balls[0]).collect::<Result<Vec<Told>, Impossible>>()?;
            let others = told(balls[1]).collect::<Result<Vec<Told>, Impossible>>()?;
            let mut complete = true;
            for (i, one) in ones.iter().enumerate() {
                for (j, other) in others.iter().enumerate() {
                    // The same ball can't be lighter in the core than itself.
                    if !(same && i != j) {
                        complete &= found.take(one, other, way.is_corner());
                    }
                }
            }
            // Less far still only where it is needed.
            if complete && share <= ways::HALF {
                break;
            }
        }
    }
    let mut varied = spread.said(throw);
    found.left_out(&mut varied);
    Ok(found.told(varied))
}

/// What the throws came to so far.
struct Found {
    along: Vec<Option<At>>,
    entry: Option<(f64, Range)>,
    sooner: Option<(f64, Range)>,
    corners: usize,
    off_the_lane: usize,
    unfinished: usize,
}

/// One place along the lane: as thrown, the range, and whether every throw got there.
#[derive(Clone, Copy)]
struct At {
    now: f64,
    range: Range,
    whole: bool,
}

fn difference(one: Option<f64>, other: Option<f64>) -> Option<f64> {
    Some(other? - one?)
}

impl Found {
    /// The throw as it is.
    fn from([first, second]: [Told; 2]) -> Found {
        let alone = |now: f64| (now, Range::of(now));
        let boards = std::iter::zip(&first.boards, &second.boards);
        Found {
            along: boards
                .map(|(one, other)| {
                    difference(*one, *other).map(|now| At {
                        now,
                        range: Range::of(now),
                        whole: true,
                    })
                })
                .collect(),
            entry: difference(first.entry, second.entry).map(alone),
            sooner: difference(second.finished, first.finished).map(alone),
            corners: 0,
            off_the_lane: 0,
            unfinished: 0,
        }
    }

    /// Takes a throw in; whether all of it could be.
    fn take(&mut self, one: &Told, other: &Told, corner: bool) -> bool {
        let mut complete = true;
        let boards = std::iter::zip(&one.boards, &other.boards);
        for (at, (one, other)) in self.along.iter_mut().zip(boards) {
            match (at, difference(*one, *other)) {
                (Some(at), Some(value)) => at.range.take(value),
                (Some(at), None) => {
                    at.whole = false;
                    complete = false;
                }
                (None, _) => {}
            }
        }
        if let (Some((_, range)), Some(value)) =
            (self.entry.as_mut(), difference(one.entry, other.entry))
        {
            range.take(value);
        }
        let finished = difference(other.finished, one.finished);
        match (self.sooner.as_mut(), finished) {
            (Some((_, range)), Some(value)) => range.take(value),
            (Some(_), None) => complete = false,
            (None, _) => {}
        }
        if corner {
            let stays = one.entry.is_some() && other.entry.is_some();
            self.corners += 1;
            self.off_the_lane += usize::from(!stays);
            self.unfinished += usize::from(stays && self.sooner.is_some() && finished.is_none());
        }
        complete
    }

    /// A line for each reason why the range isn't of all throws.
    fn left_out(&self, varied: &mut Vec<String>) {
        let corners = self.corners;
        let ends = self.along.iter().flatten().position(|at| !at.whole);
        if let Some(feet) = ends {
            let gone = self.off_the_lane;
            varied.push(format!(
                "In {gone} of {corners} of these a ball leaves the lane. The range of all of them ends at {feet} ft; from there on it is of those that stay."
            ));
        }
        if self.unfinished > 0 {
            let open = self.unfinished;
            varied.push(format!(
                "In {open} of {corners} of these a ball hasn't finished hooking at the pins; they aren't counted for that."
            ));
        }
    }

    fn told(self, varied: Vec<String>) -> Apart {
        let along = self.along.iter().enumerate();
        let along = along.filter_map(|(feet, at)| {
            let At { now, range, whole } = (*at)?;
            Some(ApartAt {
                feet: feet as f64,
                boards: now,
                least: range.least,
                most: range.most,
                whole,
            })
        });
        let triple = |(now, range): (f64, Range)| (now, range.least, range.most);
        Apart {
            along: along.collect(),
            entry: self.entry.map(triple),
            sooner: self.sooner.map(triple),
            said: super::super::reason::Texts::alike(""),
            varied,
            off_the_lane: (self.off_the_lane, self.corners),
            lines: Vec::new(),
        }
    }
}
