//! What a case about one ball's roll, or about two, expects. Numbers are ranges argued from closed forms and published figures.
//!
//! ```yaml
//! expect:
//!   roll:
//!     lane: medium-house                 # the lane's id
//!     mirrored: no                       # boards counted from the left, the ball curves to the right
//!     most_turn: { first: [3, 4] }       # degrees
//!     turn_done: { second: [90, 100] }   # per cent, at the pins
//!     finishes: { first: no }            # feet from the foul line, or `no`: not at the pins
//!     entry_angle: { first: [2, 5] }     # degrees at the pins, toward the side it curves to
//!     speed_at_pins: { first: [13, 14] } # mph
//!     done_first: second                 # which has finished hooking sooner: first, second, or neither
//!     boards_apart: { 60: [0.3, 14] }    # by feet: boards the second is further to the side it curves to
//!     entry_apart: [0.1, 3]              # degrees more of the second
//!     says_ids: [id]                     # rules that speak
//!     never_says_ids: [id]
//!   says: [words]                        # in the customer's answer
//!   never_says: [words]
//! ```

use spanwright::advice::{Roll, Rolled};
use spanwright::document::{Content, Node};
use spanwright::report;
use spanwright::rules::Audience;

use crate::case::Case;
use crate::nodes::{map_of, text};
use crate::told::{Compared, each, list_of, one, otherwise, said, words};

const PLACES: [&str; 2] = ["first", "second"];

/// The answer as a document that shows every change.
pub fn document(roll: &Roll) -> String {
    report::roll_json(roll, Audience::Fitter)
}

/// What comes out otherwise than argued.
pub fn differences(case: &Case, roll: &Roll) -> Vec<String> {
    let mut compared = sound(roll);
    for (key, content) in &case.expected {
        compared.extend(match key.as_str() {
            "roll" => {
                let keys = map_of(content).into_iter();
                keys.flat_map(|(key, node)| numbers(case, roll, &key, node))
                    .collect()
            }
            "says" => words(key, content, true, &customer(roll)),
            "never_says" => words(key, content, false, &customer(roll)),
            other => panic!("{}: unknown expectation {other} of a roll", case.file),
        });
    }
    otherwise(&case.file, compared)
}

/// What holds of every roll: each range holds what it is the range of.
fn sound(roll: &Roll) -> Compared {
    let mut compared = Vec::new();
    if let Some(apart) = roll.apart() {
        let along = apart.along().iter();
        let inside = |(what, (as_thrown, least, most)): (String, (f64, f64, f64))| {
            let held = least <= as_thrown && as_thrown <= most;
            (format!("range {what}"), said(held), "yes".to_owned())
        };
        let feet = along.map(|at| {
            (
                format!("at {} ft", at.feet()),
                (at.boards(), at.least(), at.most()),
            )
        });
        let entry = apart.entry().into_iter();
        let entry = entry.map(|range| ("of the entry angle".to_owned(), range));
        compared.extend(feet.chain(entry).map(inside));
    }
    compared
}

fn numbers(case: &Case, roll: &Roll, key: &str, node: &Node) -> Compared {
    let content = node.content();
    let balls = |of: &dyn Fn(&Rolled) -> Option<f64>| -> Compared {
        let wanted = map_of(content).into_iter();
        let compared = wanted.map(|(place, range)| {
            let at = PLACES.iter().position(|known| *known == place);
            let at = at.unwrap_or_else(|| panic!("{}: no ball {place}", case.file));
            let rolled = roll.balls().get(at);
            let rolled = rolled.unwrap_or_else(|| panic!("{}: no {place} ball", case.file));
            within(case, &format!("{key} of the {place}"), of(rolled), range)
        });
        compared.collect()
    };
    let apart = || {
        let apart = roll.apart();
        apart.unwrap_or_else(|| panic!("{}: {key} wants two balls", case.file))
    };
    match key {
        "lane" => one(key, roll.lane(), content),
        "mirrored" => one(key, said(roll.is_mirrored()), content),
        "most_turn" => balls(&|rolled| Some(rolled.most_turn().as_degrees())),
        "turn_done" => balls(&|rolled| Some(100.0 * rolled.turn_done())),
        "finishes" => balls(&finishes),
        "entry_angle" => balls(&|rolled| Some(rolled.path().last().direction().as_degrees())),
        "speed_at_pins" => balls(&|rolled| Some(rolled.path().last().speed().as_mph())),
        "done_first" => one(key, done_first(roll), content),
        "entry_apart" => vec![within(
            case,
            key,
            apart().entry().map(|(thrown, _, _)| thrown),
            node,
        )],
        "boards_apart" => {
            let wanted = map_of(content).into_iter();
            let compared = wanted.map(|(feet, range)| {
                let at: f64 = feet.parse().unwrap();
                let mut along = apart().along().iter();
                let found = along.find(|along| (along.feet() - at).abs() < 0.01);
                within(
                    case,
                    &format!("boards apart at {feet} ft"),
                    found.map(|at| at.boards()),
                    range,
                )
            });
            compared.collect()
        }
        "says_ids" => each(key, content, true, &|id| speaks(roll, id)),
        "never_says_ids" => each(key, content, false, &|id| speaks(roll, id)),
        other => panic!("{}: unknown expectation {other} of a roll", case.file),
    }
}

/// How far down it has finished hooking, in feet; none if it hasn't at the pins.
fn finishes(rolled: &Rolled) -> Option<f64> {
    let station = rolled.path().slip_ends()?;
    Some(station.down().as_feet())
}

fn done_first(roll: &Roll) -> &'static str {
    let mut feet = roll
        .balls()
        .iter()
        .map(|rolled| finishes(rolled).unwrap_or(f64::INFINITY));
    match (feet.next(), feet.next()) {
        (Some(first), Some(second)) if first < second => "first",
        (Some(first), Some(second)) if second < first => "second",
        _ => "neither",
    }
}

fn speaks(roll: &Roll, id: &str) -> bool {
    roll.says().iter().any(|said| said.step().id() == id)
}

/// Whether a number lies in its range, ends included; `no` where none is wanted.
fn within(case: &Case, what: &str, found: Option<f64>, range: &Node) -> (String, String, String) {
    let shown = |value: f64| format!("{value:.2}");
    let wanted = match range.content() {
        Content::List(_) => list_of(range),
        _ => {
            assert_eq!(text(range), "no", "{}: {what}", case.file);
            let found = found.map_or("no".to_owned(), shown);
            return (what.to_owned(), found, "no".to_owned());
        }
    };
    let ends: Vec<f64> = wanted.iter().map(|end| end.parse().unwrap()).collect();
    let [least, most] = ends[..] else {
        panic!("{}: {what} wants a range of two", case.file);
    };
    assert!(
        least < most,
        "{}: {what} wants a range that can fail",
        case.file
    );
    let range = format!("{least} to {most}");
    let found = match found {
        Some(value) if least <= value && value <= most => range.clone(),
        Some(value) => shown(value),
        None => "no".to_owned(),
    };
    (what.to_owned(), found, range)
}

/// What customers read: one text for each kind of reader.
fn customer(roll: &Roll) -> Vec<String> {
    let readers = [Audience::Newcomer, Audience::League];
    let text = |reader| report::roll_text(roll, &report::Look::plain(reader));
    readers.into_iter().map(text).collect()
}
