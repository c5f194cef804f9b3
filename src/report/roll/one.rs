//! One ball: what it does in a few sentences, then its stations.

use super::super::page::{Page, capitalised};
use super::{apart, direction, is_fitter, phases};
use crate::advice::{Roll, Rolled};
use crate::motion::Lane;
use crate::motion::path::{Ending, Mode, Station};

/// Writes one ball's part of the page.
pub(super) fn write(page: &mut Page<'_>, roll: &Roll, rolled: &Rolled) {
    let heading = format!("{} on {}", rolled.ball().name(), roll.lane_name());
    page.heading(&capitalised(&heading));
    page.paragraph(2, &format!("It {}.", phases(rolled)));
    for words in sentences(roll.oil(), rolled) {
        page.paragraph(2, &words);
    }
    if is_fitter(page) {
        for words in for_the_fitter(rolled) {
            page.paragraph(2, &words);
        }
    }
    page.explain();
    stations(page, roll, rolled);
}

/// A ball that goes out by fewer boards than this is sent straight, as people see it.
const TURNS_BACK: f64 = 0.5;

/// Where it turns and how it comes to the pins.
fn sentences(lane: &Lane, rolled: &Rolled) -> Vec<String> {
    let path = rolled.path();
    let mut said = Vec::new();
    let start = path.stations().first().map(|first| first.across());
    let out = |place: &Station| {
        let boards = start.map(|start| lane.board_at(start) - lane.board_at(place.across()));
        boards.is_some_and(|boards| boards >= TURNS_BACK)
    };
    if let Some(place) = path.breakpoint().filter(|place| out(place)) {
        said.push(format!(
            "It turns back {:.0} ft down the lane, on board {:.1}.",
            place.down().as_feet(),
            lane.board_at(place.across())
        ));
    }
    let last = path.last();
    said.push(match path.ending() {
        Ending::Pins => format!(
            "It comes to the pins on board {:.1}, {}, at {:.1} mph and {:.0} rpm.",
            lane.board_at(last.across()),
            direction(last.direction(), "outward", "inward"),
            last.speed().as_mph(),
            last.revs().as_rpm()
        ),
        Ending::Gutter(at) => format!("It leaves the lane at {:.0} ft.", at.as_feet()),
    });
    said
}

fn for_the_fitter(rolled: &Rolled) -> Vec<String> {
    let path = rolled.path();
    let mut said = vec![format!(
        "Most turn {:.1} degrees if sent straight, {:.0}% of it done {}; {}.",
        rolled.most_turn().as_degrees(),
        rolled.turn_done() * 100.0,
        match path.ending() {
            Ending::Pins => "at the pins",
            Ending::Gutter(_) => "where it leaves the lane",
        },
        match (path.slip_ends(), path.ending()) {
            (Some(station), _) => format!("slip ends at {:.1} ft", station.down().as_feet()),
            (None, Ending::Pins) => "slip doesn't end before the pins".to_owned(),
            (None, Ending::Gutter(_)) => "slip doesn't end before that".to_owned(),
        }
    )];
    if rolled.ball().attitude().is_some() {
        said.push(format!(
            "Flare {:.1} in at its widest; the axis moves {:.1} in over the ball in all and ends {:.1} in from where it began.",
            path.flare().as_inches(),
            path.axis_path().as_inches(),
            path.axis_shift().as_inches()
        ));
    }
    if path.slips_again() > 0 {
        said.push(format!(
            "It slips again {} times after it first rolls.",
            path.slips_again()
        ));
    }
    said
}

/// A row every so many feet: place, board, direction, speed, revs, and whether it slips or rolls.
pub(super) fn stations(page: &mut Page<'_>, roll: &Roll, rolled: &Rolled) {
    let every = apart(page);
    let fitter = is_fitter(page);
    page.aligned("");
    page.aligned(&match fitter {
        true => format!(
            "  {:>5}  {:>6}  {:>9}  {:>5}  {:>4}  {}",
            "feet", "board", "direction", "mph", "rpm", "on the lane"
        ),
        false => format!(
            "  {:>5}  {:>6}  {:>5}  {}",
            "feet", "board", "mph", "on the lane"
        ),
    });
    let rows = rolled.path().stations().iter();
    for station in rows.filter(|station| is_row(station, every)) {
        let feet = station.down().as_feet();
        let board = roll.oil().board_at(station.across());
        let speed = station.speed().as_mph();
        let mode = mode(station);
        page.aligned(&match fitter {
            true => format!(
                "  {feet:>5.0}  {board:>6.1}  {:>9}  {speed:>5.1}  {:>4.0}  {mode}",
                short(station),
                station.revs().as_rpm()
            ),
            false => format!("  {feet:>5.0}  {board:>6.1}  {speed:>5.1}  {mode}"),
        });
    }
}

/// Whether a station stands at a whole number of these steps.
fn is_row(station: &Station, every: f64) -> bool {
    let steps = station.down().as_feet() / every;
    libm::fabs(steps - libm::round(steps)) < 1e-6
}

fn mode(station: &Station) -> &'static str {
    match station.mode() {
        Mode::Slip => "slips",
        Mode::Roll => "rolls",
    }
}

fn short(station: &Station) -> String {
    let tenths = libm::round(station.direction().as_degrees() * 10.0) / 10.0;
    match tenths {
        0.0 => "straight".to_owned(),
        tenths if tenths < 0.0 => format!("{:.1} out", -tenths),
        tenths => format!("{tenths:.1} in"),
    }
}
