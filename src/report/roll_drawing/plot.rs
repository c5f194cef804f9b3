//! The plain numbers that are drawn, taken out of a roll.

use crate::advice::{Roll, Rolled};
use crate::motion::path::Ending;
use crate::motion::{Angle, Lane};
use crate::report::page::capitalised;
use crate::rules::Audience;

/// As thrown, at least, at most.
pub(super) type Span = (f64, f64, f64);

/// Everything a drawing shows, in feet, boards and degrees.
#[derive(Clone, Debug, Default)]
pub(super) struct Plot {
    pub(super) bowler: String,
    /// The comparison in words; empty where one ball stands alone.
    pub(super) said: String,
    /// Whether the ball curves to the right, and boards are counted from the left.
    pub(super) mirrored: bool,
    /// The ball that is drawn: the second of two, or the only one.
    pub(super) ball: Thrown,
    /// What it is held against; none where it stands alone and is held against the line it was sent on.
    pub(super) against: Option<Thrown>,
    /// Boards to the side it curves to, at growing places down the lane.
    pub(super) along: Vec<Place>,
    /// Where the oil ends, in feet.
    pub(super) oil: f64,
    /// By how much its angle at the pins is larger.
    pub(super) entry: Option<Span>,
    /// How many feet sooner it has finished hooking.
    pub(super) sooner: Option<Span>,
    pub(super) throw: Vec<String>,
    pub(super) lane: String,
    pub(super) start_board: f64,
    /// The direction it is sent in, in degrees; to the side it curves to is more than zero.
    pub(super) launch: f64,
    pub(super) because: String,
    /// What the range was taken over.
    pub(super) varied: Vec<String>,
    pub(super) assumed: Vec<String>,
}

/// One ball.
#[derive(Clone, Debug, Default)]
pub(super) struct Thrown {
    pub(super) name: String,
    /// Feet down the lane where it first rolls.
    pub(super) finished: Option<f64>,
    /// Feet down the lane where it falls into the gutter.
    pub(super) gutter: Option<f64>,
    /// Its direction at the pins in degrees; to the side it curves to is more than zero.
    pub(super) entry: Option<f64>,
    /// Where it is farthest out: feet down the lane, and the board there.
    pub(super) farthest: Option<(f64, f64)>,
}

/// How far it is to the side at one place, and at least and at most.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Place {
    pub(super) feet: f64,
    pub(super) boards: f64,
    pub(super) least: f64,
    pub(super) most: f64,
}

impl Plot {
    /// The difference of the first two balls; where they weren't compared, the first alone.
    pub(super) fn of(roll: &Roll) -> Plot {
        let balls = roll.balls();
        let shared = shared(roll);
        let names = roll.names();
        let name = |at: usize| names.get(at).copied().unwrap_or_default();
        match (balls, roll.apart()) {
            ([first, second, ..], Some(apart)) => Plot {
                said: apart.said().of(Audience::League).to_owned(),
                ball: thrown(second, name(1), roll.oil()),
                against: Some(thrown(first, name(0), roll.oil())),
                along: drawable(apart.along().iter().map(|at| {
                    let whole = at.is_whole();
                    // Where in some of the range a ball has left the lane there is no edge to draw.
                    let edge = |edge: f64| if whole { edge } else { at.boards() };
                    Place {
                        feet: at.feet(),
                        boards: at.boards(),
                        least: edge(at.least()),
                        most: edge(at.most()),
                    }
                })),
                entry: finite(apart.entry()),
                sooner: finite(apart.sooner()),
                varied: apart.varied().to_vec(),
                ..shared
            },
            ([only, ..], _) => Plot {
                ball: thrown(only, name(0), roll.oil()),
                along: drawable(off_its_line(roll, only).into_iter()),
                ..shared
            },
            ([], _) => shared,
        }
    }

    /// The side it curves to.
    pub(super) fn side(&self) -> &'static str {
        if self.mirrored { "right" } else { "left" }
    }
    /// The other side, from which boards are counted.
    pub(super) fn other(&self) -> &'static str {
        if self.mirrored { "left" } else { "right" }
    }
    /// Both ways of being apart from the first ball.
    pub(super) fn further(&self) -> (&'static str, &'static str) {
        if self.mirrored {
            ("further right", "further left")
        } else {
            ("further left", "further right")
        }
    }
    /// Both ways off a straight line.
    pub(super) fn aside(&self) -> (&'static str, &'static str) {
        if self.mirrored {
            ("to the right", "to the left")
        } else {
            ("to the left", "to the right")
        }
    }
    /// How far down the lane there is something to draw.
    pub(super) fn end(&self) -> f64 {
        self.along.last().map_or(0.0, |place| place.feet)
    }
    /// How far it is to the side there; none beyond what is drawn.
    pub(super) fn at(&self, feet: f64) -> Option<Place> {
        let mut before: Option<&Place> = None;
        for place in &self.along {
            if place.feet >= feet {
                let Some(before) = before else {
                    return (place.feet - feet < 0.5).then_some(Place { feet, ..*place });
                };
                let share = (feet - before.feet) / (place.feet - before.feet);
                let mid = |a: f64, b: f64| a + (b - a) * share;
                return Some(Place {
                    feet,
                    boards: mid(before.boards, place.boards),
                    least: mid(before.least, place.least),
                    most: mid(before.most, place.most),
                });
            }
            before = Some(place);
        }
        None
    }
}

fn shared(roll: &Roll) -> Plot {
    let of_balls = roll.balls().iter().take(2).flat_map(|one| {
        let sentences = one.ball().assumed().iter();
        sentences.map(|sentence| format!("{}: {sentence}", one.ball().name()))
    });
    let of_answers = roll.assumptions().iter().filter_map(|one| {
        let value = one.value()?;
        Some(format!("{}: {value}.", capitalised(one.meaning())))
    });
    Plot {
        bowler: roll.bowler().to_owned(),
        mirrored: roll.is_mirrored(),
        oil: roll.oil().oil().as_feet(),
        throw: roll
            .throw()
            .iter()
            .map(|(what, value)| format!("{what} {value}"))
            .collect(),
        lane: roll.lane_name().to_owned(),
        start_board: roll.line().start_board(),
        launch: roll.line().launch().as_degrees(),
        because: roll.line().because().to_owned(),
        assumed: of_answers.chain(of_balls).collect(),
        ..Plot::default()
    }
}

fn thrown(rolled: &Rolled, name: &str, lane: &Lane) -> Thrown {
    let path = rolled.path();
    let (gutter, entry) = match path.ending() {
        Ending::Gutter(down) => (Some(down.as_feet()), None),
        Ending::Pins => (None, Some(path.last().direction().as_degrees())),
    };
    Thrown {
        name: name.to_owned(),
        finished: path.slip_ends().map(|at| at.down().as_feet()),
        gutter,
        entry,
        farthest: path
            .breakpoint()
            .map(|at| (at.down().as_feet(), lane.board_at(at.across()))),
    }
}

/// How far a ball is from the straight line it was sent on, in boards, at each of its stations.
fn off_its_line(roll: &Roll, rolled: &Rolled) -> Vec<Place> {
    let (lane, line) = (roll.oil(), roll.line());
    let start = lane.across(line.start_board()).as_metres();
    let slope = slope(line.launch());
    let path = rolled.path();
    let stations = path.stations().iter().chain([path.last()]);
    let pins = lane.length().as_feet();
    stations
        .map(|at| {
            let straight = start + slope * at.down().as_metres();
            let boards = (at.across().as_metres() - straight) / lane.board().as_metres();
            Place {
                // A step to the pins ends a hair before or behind them.
                feet: match at.down().as_feet() {
                    feet if libm::fabs(feet - pins) < 1e-6 => libm::round(pins),
                    feet => feet,
                },
                boards,
                least: boards,
                most: boards,
            }
        })
        .collect()
}

fn slope(launch: Angle) -> f64 {
    libm::tan(launch.as_radians())
}

/// The places on the lane that are numbers, each further down than the one before, the range in order around the middle.
pub(super) fn drawable(places: impl Iterator<Item = Place>) -> Vec<Place> {
    let mut kept: Vec<Place> = Vec::new();
    for place in places {
        let numbers = [place.boards, place.least, place.most];
        let sound = (0.0..=60.0).contains(&place.feet) && numbers.iter().all(|n| n.is_finite());
        let further = kept.last().is_none_or(|last| place.feet > last.feet);
        if sound && further {
            kept.push(Place {
                least: place.least.min(place.most).min(place.boards),
                most: place.most.max(place.least).max(place.boards),
                ..place
            });
        }
    }
    kept
}

fn finite(span: Option<Span>) -> Option<Span> {
    span.filter(|(a, b, c)| a.is_finite() && b.is_finite() && c.is_finite())
}
