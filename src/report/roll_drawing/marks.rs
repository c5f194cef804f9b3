//! What each line and place of the drawing is, in words that stand beside it.

use super::chart::{has_band, has_oil};
use super::plot::{Place, Plot, Thrown};
use super::scale::{LANE, RIGHT, Scale};
use super::words;
use crate::report::page::capitalised;
use crate::report::paper::canvas::Spot;
use crate::report::paper::leaders::{Label, NAME, Side};
use crate::report::paper::letters;

/// Where the words begin, and how wide they may be.
pub(super) const EDGE: f64 = 520.0;
pub(super) const WIDE: f64 = 279.0;
/// A name takes no more than two lines.
const NAMED: usize = 2;
/// Lines to the pins come from above them; this high, and as much more for the farther one.
pub(super) const ABOVE: f64 = 11.0;
/// Feet down the lane where the straight line is named.
const ZERO_NAMED: f64 = 12.0;

/// Two lines closer than this on paper look like one.
const TOGETHER: f64 = 2.5;
/// The band is named at this share of what is drawn.
const BAND_NAMED: f64 = 0.9;
/// Feet that a mark without a place of its own keeps from others.
const APART: f64 = 2.5;

/// A ball's name, cut where it is very long.
pub(super) fn name(thrown: &Thrown) -> String {
    letters::lines(&words::the(&thrown.name), NAME, WIDE * 0.7, NAMED).join(" ")
}

/// All of them.
pub(super) fn labels(plot: &Plot, scale: &Scale) -> Vec<Label> {
    let mut labels = Vec::new();
    labels.extend(at_the_pins(plot, scale));
    labels.extend(finished(plot, scale));
    labels.extend(in_the_gutter(plot, scale));
    labels.extend(the_band(plot, scale));
    labels.extend(the_line(plot, scale));
    labels.extend(farthest(plot, scale));
    labels.extend(oil(plot, scale));
    labels.push(straight(plot, scale));
    labels
}

/// Words for a place on the paper: their line runs level inside the drawing, so that no two cross.
fn level(to: Spot, words: Vec<String>) -> Label {
    Label {
        via: Some((RIGHT, to.1)),
        ..Label::new(Side::Right, to, words)
    }
}

/// Both balls where they come to the pins. Their lines come from above, the farther one higher.
fn at_the_pins(plot: &Plot, scale: &Scale) -> Vec<Label> {
    let mut ends: Vec<(Spot, Vec<String>)> = Vec::new();
    if let Some(place) = plot.at(LANE) {
        ends.push((scale.spot(place.boards, LANE), arrives(plot, &place)));
    }
    if let Some(first) = plot.against.as_ref().filter(|one| one.gutter.is_none()) {
        let mut words = vec![format!("{} at the pins", capitalised(&name(first)))];
        words.extend(entry(first));
        words.extend(unfinished(first));
        ends.push((scale.spot(0.0, LANE), words));
    }
    ends.sort_by(|a, b| b.0.0.total_cmp(&a.0.0));
    ends.into_iter()
        .enumerate()
        .map(|(index, (to, words))| Label {
            via: Some((RIGHT, to.1 - ABOVE * (index as f64 + 1.0))),
            ..Label::new(Side::Right, to, words)
        })
        .collect()
}

fn arrives(plot: &Plot, place: &Place) -> Vec<String> {
    let ball = &plot.ball;
    let mut words = vec![format!("{} at the pins", capitalised(&name(ball)))];
    let span = (place.boards, place.least, place.most);
    match &plot.against {
        Some(first) => {
            let boards = words::boards(plot.further().0, plot.further().1);
            words.extend(words::about(boards, span, &name(first)));
            words.extend(entry(ball));
            let apart = plot
                .entry
                .map(|apart| words::about(words::DEGREES, apart, &name(first)));
            words.extend(apart.into_iter().flatten());
        }
        None => {
            let boards = words::boards(plot.aside().0, plot.aside().1);
            let off = words::about(boards, span, "").into_iter().take(1);
            words.extend(off.map(|off| format!("{off} of its straight line")));
            words.extend(entry(ball));
        }
    }
    words.extend(unfinished(ball));
    words
}

fn entry(thrown: &Thrown) -> Option<String> {
    let degrees = thrown.entry.filter(|degrees| degrees.is_finite())?;
    let flat = words::degrees(degrees);
    Some(if degrees < -0.05 {
        format!("comes in at {flat}, still going out")
    } else {
        format!("comes in at {flat}")
    })
}

fn unfinished(thrown: &Thrown) -> Option<String> {
    let at_pins = thrown.finished.is_none() && thrown.gutter.is_none();
    at_pins.then(|| "hasn't finished hooking at the pins".to_owned())
}

/// Where each has finished hooking; one mark for both where that is the same foot.
fn finished(plot: &Plot, scale: &Scale) -> Vec<Label> {
    let own = plot.ball.finished.and_then(|feet| {
        let place = plot.at(feet)?;
        Some((feet, scale.spot(place.boards, feet)))
    });
    let other = plot.against.as_ref().and_then(|first| {
        let feet = first.finished.filter(|feet| (0.0..=LANE).contains(feet))?;
        Some((first, feet, scale.spot(0.0, feet)))
    });
    let done = |name: &str| format!("{} has finished hooking", capitalised(name));
    let mut labels = Vec::new();
    if let Some((feet, spot)) = own
        && same_foot(plot)
    {
        let name = format!("Here both have finished hooking: {}", words::feet(feet));
        let sooner = plot
            .sooner
            .and_then(|(_, least, most)| words::FEET.range(least, most));
        let sooner = sooner.map(|range| format!("({}: {range})", self::name(&plot.ball)));
        return vec![level(spot, std::iter::once(name).chain(sooner).collect())];
    }
    if let Some((feet, spot)) = own {
        let mut words = vec![done(&name(&plot.ball)), words::feet(feet)];
        if let (Some(span), Some((first, ..))) = (plot.sooner, &other) {
            words.extend(words::about(words::FEET, span, &name(first)));
        }
        labels.push(level(spot, words));
    }
    if let Some((first, feet, spot)) = other {
        labels.push(level(spot, vec![done(&name(first)), words::feet(feet)]));
    }
    labels
}

/// Whether both have finished hooking at what is written as the same foot.
fn same_foot(plot: &Plot) -> bool {
    let first = plot.against.as_ref().and_then(|first| first.finished);
    let apart = plot.ball.finished.zip(first);
    apart.is_some_and(|(a, b)| libm::round(a) == libm::round(b) && (a - b).abs() < 0.6)
}

/// Where a ball falls off the lane, beyond which nothing is drawn of it.
fn in_the_gutter(plot: &Plot, scale: &Scale) -> Vec<Label> {
    let mut labels = Vec::new();
    let words = |thrown: &Thrown, feet: f64| {
        vec![
            format!("{} falls into the gutter", capitalised(&name(thrown))),
            format!("{}; nothing is drawn of it beyond", words::feet(feet)),
        ]
    };
    if let Some(feet) = plot.ball.gutter {
        let place = plot.at(feet).or_else(|| plot.along.last().copied());
        if let Some(place) = place {
            labels.push(level(
                scale.spot(place.boards, place.feet),
                words(&plot.ball, feet),
            ));
        }
    }
    let first = plot.against.as_ref();
    if let Some((first, feet)) = first.and_then(|first| Some((first, first.gutter?)))
        && (0.0..=LANE).contains(&feet)
    {
        labels.push(level(scale.spot(0.0, feet), words(first, feet)));
    }
    labels
}

/// The range: a place in it, between the line and its farther edge.
fn the_band(plot: &Plot, scale: &Scale) -> Option<Label> {
    let mut seen = plot.along.iter().rev().filter(|at| at.most > at.least);
    let end = BAND_NAMED * plot.end();
    let place = seen.clone().find(|at| at.feet <= end);
    let place = *place.or_else(|| seen.next_back())?;
    if !has_band(plot, scale) {
        return None;
    }
    let edge = if place.most - place.boards >= place.boards - place.least {
        place.most
    } else {
        place.least
    };
    let inside = (place.boards + edge) / 2.0;
    let words = vec![
        "The grey band between thin lines".to_owned(),
        format!(
            "where {} may be instead: see the range below",
            name(&plot.ball)
        ),
    ];
    Some(level(scale.spot(inside, place.feet), words))
}

/// The line itself, named where it has left the straight one, away from other marks; halfway down if it never does.
fn the_line(plot: &Plot, scale: &Scale) -> Option<Label> {
    let most = plot.along.iter().map(|place| place.boards.abs());
    let most = most.fold(0.0, f64::max);
    let others = [
        plot.ball.finished,
        plot.against.as_ref().and_then(|first| first.finished),
        plot.ball.farthest.map(|(feet, _)| feet),
        Some(plot.oil),
        Some(BAND_NAMED * plot.end()),
    ];
    let free = |feet: f64| {
        others
            .iter()
            .flatten()
            .all(|other| (other - feet).abs() >= APART)
    };
    let mut left = plot
        .along
        .iter()
        .filter(|place| place.boards.abs() >= 0.15 * most)
        .filter(|place| place.boards.abs() * scale.board >= 3.0);
    let place = match left
        .clone()
        .find(|place| free(place.feet))
        .or_else(|| left.next())
    {
        Some(place) => *place,
        None => plot.at(plot.end() / 2.0)?,
    };
    let words = match plot.against {
        Some(_) => format!("The thick line: where {} would be", name(&plot.ball)),
        None => format!("The thick line: {}", name(&plot.ball)),
    };
    Some(level(scale.spot(place.boards, place.feet), vec![words]))
}

/// Where a ball alone is farthest out.
fn farthest(plot: &Plot, scale: &Scale) -> Option<Label> {
    let (feet, board) = plot.ball.farthest.filter(|_| plot.against.is_none())?;
    let place = plot.at(feet)?;
    let board = format!(
        "{}, about board {:.0} from the {}",
        words::feet(feet),
        board.clamp(0.0, 40.0),
        plot.other()
    );
    let words = vec!["Here it turns back toward the middle".to_owned(), board];
    Some(level(scale.spot(place.boards, feet), words))
}

fn oil(plot: &Plot, scale: &Scale) -> Option<Label> {
    let on = has_oil(plot);
    let words = vec!["The oil ends".to_owned(), words::feet(plot.oil)];
    on.then(|| Label::new(Side::Right, (RIGHT, scale.down(plot.oil)), words))
}

/// The line from which everything is counted.
fn straight(plot: &Plot, scale: &Scale) -> Label {
    let words = match &plot.against {
        Some(first) => format!("The straight line: where {} would be", name(first)),
        None => "The straight line it was sent on".to_owned(),
    };
    let together = plot
        .at(ZERO_NAMED)
        .is_some_and(|place| place.boards.abs() * scale.board < TOGETHER);
    let both = match plot.against {
        Some(_) => "here both run together",
        None => "here it still runs along it",
    };
    let more = together.then(|| both.to_owned());
    level(
        scale.spot(0.0, ZERO_NAMED),
        std::iter::once(words).chain(more).collect(),
    )
}
