//! Two balls on one line: how the second differs from the first, with its range, and both in a few words.

use super::super::fitter;
use super::super::page::{Page, capitalised};
use super::one::stations;
use super::{apart, direction, is_fitter, phases};
use crate::advice::{Apart, Roll, Rolled};
use crate::motion::path::Ending;

/// Writes both balls' part of the page.
pub(super) fn write(page: &mut Page<'_>, roll: &Roll, balls: [&Rolled; 2], apart: &Apart) {
    let names = roll.names();
    let name = |at: usize, rolled: &Rolled| {
        let short = names.get(at).copied();
        short.map_or_else(|| rolled.ball().name().to_owned(), str::to_owned)
    };
    let [one, other] = balls;
    let (one, other) = (name(0, one), name(1, other));
    let [first, second] = [one.as_str(), other.as_str()];
    let [beside, ball] = balls.map(|rolled| rolled.ball().name());
    page.heading(&capitalised(&format!(
        "{ball} beside {beside}, on {}",
        roll.lane_name()
    )));
    page.paragraph(2, apart.said().of(page.audience()));
    for (rolled, name) in std::iter::zip(balls, [first, second]) {
        page.item(2, "- ", &each(roll, rolled, name));
    }
    page.explain();
    along(page, roll, apart, [first, second]);
    range(page, apart);
    if is_fitter(page) {
        for rolled in balls {
            page.subheading(&capitalised(rolled.ball().name()));
            stations(page, roll, rolled);
        }
    }
}

/// One ball in a sentence.
fn each(roll: &Roll, rolled: &Rolled, name: &str) -> String {
    let path = rolled.path();
    let last = path.last();
    let end = match path.ending() {
        Ending::Pins => format!(
            "It comes to the pins on board {:.1}, {}.",
            roll.oil().board_at(last.across()),
            direction(last.direction(), "outward", "inward")
        ),
        Ending::Gutter(at) => format!("It leaves the lane at {:.0} ft.", at.as_feet()),
    };
    format!("{} {}. {end}", capitalised(name), phases(rolled))
}

/// The difference at places along the lane.
fn along(page: &mut Page<'_>, roll: &Roll, apart_by: &Apart, [first, second]: [&str; 2]) {
    let every = apart(page);
    let rows: Vec<_> = apart_by
        .along()
        .iter()
        .filter(|at| at.feet() > 0.0 && at.feet() % every == 0.0)
        .collect();
    if rows.is_empty() {
        return;
    }
    page.heading(&format!("Where {second} is beside {first}, in boards"));
    let (out, inward) = match roll.is_mirrored() {
        true => ("left", "right"),
        false => ("right", "left"),
    };
    page.paragraph(
        2,
        &format!("Outside is toward the {out} gutter, inside toward the {inward} one."),
    );
    page.aligned(&format!(
        "  {:>5}  {:>12}  {}",
        "feet", "as thrown", "at least and at most"
    ));
    for at in rows {
        let range = match at.is_whole() {
            true => format!("{} to {}", boards(at.least()), boards(at.most())),
            false => "a ball may be off the lane".to_owned(),
        };
        let thrown = boards(at.boards());
        page.aligned(&format!("  {:>5.0}  {thrown:>12}  {range}", at.feet()));
    }
}

fn boards(value: f64) -> String {
    let tenths = libm::round(value * 10.0) / 10.0;
    match tenths {
        0.0 => "0.0".to_owned(),
        tenths if tenths < 0.0 => format!("{:.1} outside", -tenths),
        tenths => format!("{tenths:.1} inside"),
    }
}

/// What the range was taken over.
fn range(page: &mut Page<'_>, apart: &Apart) {
    if !is_fitter(page) {
        page.paragraph(
            2,
            "The range allows for numbers that are a little off, and for lanes that grip a little more or less.",
        );
        return;
    }
    page.heading("What the range was taken over, all ends together");
    for words in apart.varied() {
        page.item(2, "- ", &capitalised(words));
    }
    if !apart.lines().is_empty() {
        page.heading("Why by so much");
        fitter::lines(page, 2, apart.lines());
    }
}
