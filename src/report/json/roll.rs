//! A roll as an answer document. Lengths, speeds and angles are decimals in the unit that their name ends in.

use serde::Serialize;

use super::{AssumedDoc, Head, LineDoc, audience_name, lines, written};
use crate::advice::{Apart, Roll, RollLine, Rolled, Saying};
use crate::motion::Lane;
use crate::motion::path::{Ending, Mode, Station};
use crate::rules::Audience;

/// Writes the roll as an answer document, ending in a line break. The same roll gives the same bytes.
///
/// Boards are counted from the bowler's own side (`mirrored` says whether that is the left), angles toward the side the ball curves
/// to. A range is `[as thrown, at least, at most]`.
#[must_use]
pub fn roll_json(roll: &Roll, audience: Audience) -> String {
    written(&RollDoc::new(roll, audience))
}

#[derive(Serialize)]
struct RollDoc<'a> {
    #[serde(flatten)]
    head: Head<'a>,
    throw: Vec<ThrowDoc<'a>>,
    lane: LaneDoc<'a>,
    mirrored: bool,
    line: LineOfBallDoc<'a>,
    balls: Vec<BallDoc<'a>>,
    apart: Option<ApartDoc<'a>>,
    says: Vec<SayingDoc<'a>>,
    assumptions: Vec<AssumedDoc<'a>>,
    questions: &'a [String],
}

#[derive(Serialize)]
struct ThrowDoc<'a> {
    what: &'a str,
    value: &'a str,
}

#[derive(Serialize)]
struct LaneDoc<'a> {
    id: &'a str,
    name: &'a str,
    oil_feet: f64,
}

#[derive(Serialize)]
struct LineOfBallDoc<'a> {
    start_board: f64,
    launch_degrees: f64,
    target_board: f64,
    because: &'a str,
    lines: Vec<LineDoc<'a>>,
}

#[derive(Serialize)]
struct BallDoc<'a> {
    ball: &'a str,
    name: &'a str,
    owned: bool,
    friction: FrictionDoc<'a>,
    assumed: &'a [String],
    most_turn_degrees: f64,
    turn_done: f64,
    ends: &'static str,
    skid_feet: f64,
    hook_feet: f64,
    roll_feet: f64,
    slip_ends_feet: Option<f64>,
    breakpoint: Option<StationDoc>,
    last: StationDoc,
    flare_inches: Option<f64>,
    axis_path_inches: Option<f64>,
    axis_shift_inches: Option<f64>,
    stations: Vec<StationDoc>,
}

#[derive(Serialize)]
struct FrictionDoc<'a> {
    oil: f64,
    dry: f64,
    oil_lines: Vec<LineDoc<'a>>,
    dry_lines: Vec<LineDoc<'a>>,
}

#[derive(Serialize)]
struct StationDoc {
    feet: f64,
    seconds: f64,
    board: f64,
    direction_degrees: f64,
    mph: f64,
    rpm: f64,
    contact: &'static str,
}

#[derive(Serialize)]
struct ApartDoc<'a> {
    said: &'a str,
    boards: Vec<ApartAtDoc>,
    entry_degrees: Option<[f64; 3]>,
    finished_feet_sooner: Option<[f64; 3]>,
    taken_over: &'a [String],
    lines: Vec<LineDoc<'a>>,
}

#[derive(Serialize)]
struct ApartAtDoc {
    feet: f64,
    range: [f64; 3],
}

#[derive(Serialize)]
struct SayingDoc<'a> {
    id: &'a str,
    text: &'a str,
    balls: Vec<&'a str>,
    for_the_fitter: bool,
    source: &'a str,
    strength: &'a str,
}

/// To a thousandth: finer than anything here is known, and alike on every machine. Never a zero with a sign.
fn decimal(value: f64) -> f64 {
    libm::round(value * 1000.0) / 1000.0 + 0.0
}

fn triple((now, least, most): (f64, f64, f64)) -> [f64; 3] {
    [now, least, most].map(decimal)
}

impl<'a> RollDoc<'a> {
    fn new(roll: &'a Roll, audience: Audience) -> RollDoc<'a> {
        RollDoc {
            head: Head::new("roll")
                .digest(roll.digest())
                .about(roll.bowler(), audience_name(audience)),
            throw: roll
                .throw()
                .iter()
                .map(|(what, value)| ThrowDoc { what, value })
                .collect(),
            lane: LaneDoc {
                id: roll.lane(),
                name: roll.lane_name(),
                oil_feet: decimal(roll.oil().oil().as_feet()),
            },
            mirrored: roll.is_mirrored(),
            line: LineOfBallDoc::new(roll.line(), audience),
            balls: roll
                .balls()
                .iter()
                .map(|ball| BallDoc::new(ball, roll.oil(), audience))
                .collect(),
            apart: roll.apart().map(|apart| ApartDoc::new(apart, audience)),
            says: roll
                .says()
                .iter()
                .map(|saying| SayingDoc::new(saying, roll, audience))
                .collect(),
            assumptions: roll.assumptions().iter().map(AssumedDoc::new).collect(),
            questions: roll.questions(),
        }
    }
}

impl<'a> LineOfBallDoc<'a> {
    fn new(line: &'a RollLine, audience: Audience) -> LineOfBallDoc<'a> {
        LineOfBallDoc {
            start_board: decimal(line.start_board()),
            launch_degrees: decimal(line.launch().as_degrees()),
            target_board: decimal(line.target_board()),
            because: line.because(),
            lines: lines(line.lines(), audience),
        }
    }
}

impl<'a> BallDoc<'a> {
    fn new(rolled: &'a Rolled, lane: &Lane, audience: Audience) -> BallDoc<'a> {
        let (ball, path) = (rolled.ball(), rolled.path());
        let station = |station: &Station| StationDoc::new(station, lane);
        // Without a layout the flare can't be told.
        let of_the_axis = |inches: f64| ball.attitude().map(|_| decimal(inches));
        BallDoc {
            ball: ball.id(),
            name: ball.name(),
            owned: ball.is_owned(),
            friction: FrictionDoc {
                oil: decimal(ball.friction().oil()),
                dry: decimal(ball.friction().dry()),
                oil_lines: lines(ball.friction_in_oil(), audience),
                dry_lines: lines(ball.friction_on_dry(), audience),
            },
            assumed: ball.assumed(),
            most_turn_degrees: decimal(rolled.most_turn().as_degrees()),
            turn_done: decimal(rolled.turn_done()),
            ends: match path.ending() {
                Ending::Pins => "pins",
                Ending::Gutter(_) => "gutter",
            },
            skid_feet: decimal(path.skid().as_feet()),
            hook_feet: decimal(path.hook().as_feet()),
            roll_feet: decimal(path.roll().as_feet()),
            slip_ends_feet: path.slip_ends().map(|s| decimal(s.down().as_feet())),
            breakpoint: path.breakpoint().map(station),
            last: station(path.last()),
            flare_inches: of_the_axis(path.flare().as_inches()),
            axis_path_inches: of_the_axis(path.axis_path().as_inches()),
            axis_shift_inches: of_the_axis(path.axis_shift().as_inches()),
            stations: path.stations().iter().map(station).collect(),
        }
    }
}

impl StationDoc {
    fn new(station: &Station, lane: &Lane) -> StationDoc {
        StationDoc {
            feet: decimal(station.down().as_feet()),
            seconds: decimal(station.seconds()),
            board: decimal(lane.board_at(station.across())),
            direction_degrees: decimal(station.direction().as_degrees()),
            mph: decimal(station.speed().as_mph()),
            rpm: decimal(station.revs().as_rpm()),
            contact: match station.mode() {
                Mode::Slip => "slips",
                Mode::Roll => "rolls",
            },
        }
    }
}

impl<'a> ApartDoc<'a> {
    fn new(apart: &'a Apart, audience: Audience) -> ApartDoc<'a> {
        ApartDoc {
            said: apart.said().of(audience),
            boards: apart
                .along()
                .iter()
                .map(|at| ApartAtDoc {
                    feet: decimal(at.feet()),
                    range: triple((at.boards(), at.least(), at.most())),
                })
                .collect(),
            entry_degrees: apart.entry().map(triple),
            finished_feet_sooner: apart.sooner().map(triple),
            taken_over: apart.varied(),
            lines: lines(apart.lines(), audience),
        }
    }
}

impl<'a> SayingDoc<'a> {
    fn new(saying: &'a Saying, roll: &'a Roll, audience: Audience) -> SayingDoc<'a> {
        let balls = saying.balls().iter();
        SayingDoc {
            id: saying.step().id(),
            text: saying.texts().of(audience),
            balls: balls
                .filter_map(|&ball| Some(roll.balls().get(ball)?.ball().id()))
                .collect(),
            for_the_fitter: saying.is_for_the_fitter(),
            source: saying.step().source(),
            strength: saying.step().strength(),
        }
    }
}
