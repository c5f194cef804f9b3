//! How far two balls are apart, in a sentence or two: outward to whole boards and half feet, and honest where nobody can tell.

use super::super::reason::Texts;
use super::super::roll::Apart;

/// Both names, as people say them.
type Names<'a> = [&'a str; 2];

/// How the second ball ends on this line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Ends {
    /// Both come to the pins.
    AtThePins,
    /// One of the two, the first or the second, leaves the lane.
    InTheGutter(usize),
    /// It is one and the same ball.
    SameBall,
}

/// What is said of a difference that lies between two numbers.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Said {
    /// Between so much less and so much more, and nobody can tell which.
    Either(f64, f64),
    /// Nothing, or at most one step either way.
    Alike,
    /// More, by at least and at most so much; at least may be nothing.
    More(f64, f64),
    /// Less, in the same way.
    Less(f64, f64),
}

/// The range, rounded outward to whole steps.
fn said((least, most): (f64, f64), step: f64) -> Said {
    // What differs by less than this is no difference at all.
    let none = step / 1000.0;
    let up = |value: f64| libm::ceil((value - none) / step) * step;
    let down = |value: f64| libm::floor((value + none) / step) * step;
    if most <= none && least >= -none {
        Said::Alike
    } else if least >= -none {
        Said::More(down(least).max(0.0), up(most))
    } else if most <= none {
        Said::Less(down(-most).max(0.0), up(-least))
    } else if up(most) <= step && up(-least) <= step {
        Said::Alike
    } else {
        Said::Either(up(-least), up(most))
    }
}

/// The comparison for each reader.
pub(super) fn sentence(apart: &Apart, names: Names<'_>, ends: Ends, finished: [bool; 2]) -> Texts {
    match ends {
        Ends::SameBall => {
            return Texts::alike("That is the same ball twice, so there is no difference.");
        }
        Ends::InTheGutter(which) => {
            let name = names.get(which).copied().unwrap_or_default();
            let name = begun(name);
            return Texts::alike(format!(
                "{name} leaves the lane on this line, so the two can't be compared at the pins."
            ));
        }
        Ends::AtThePins => {}
    }
    let boards = apart
        .along
        .last()
        .map(|at| (at.boards, (at.least, at.most), at.whole));
    let Some((now, range, whole)) = boards else {
        return Texts::alike("Neither ball comes to the pins on this line.");
    };
    let sooner = apart.sooner.map(|(_, least, most)| (least, most));
    let (gone, of) = apart.off_the_lane;
    // More than a quarter: own choice.
    let many = 4 * gone > of;
    let doubt = match many {
        true => {
            "We can't tell this well. With numbers this uncertain, a ball often leaves the lane. "
        }
        false => "",
    };
    let gutter = match whole || many {
        true => "",
        false => " If the numbers are a little off, a ball may leave the lane.",
    };
    let plain = format!("{} {}", hook(names, range), finish(names, sooner, finished));
    let league = match apart.entry {
        Some((_, least, most)) => format!("{plain} {}", steeper(names, (least, most))),
        None => plain.clone(),
    };
    Texts {
        newcomer: format!("{doubt}{plain}{gutter}"),
        league: format!("{doubt}{league}{gutter}"),
        fitter: match gone {
            0 => exact(apart, names, now, range),
            gone => format!(
                "{doubt}{} A ball leaves the lane in {gone} of {of} throws at the ends; the range is of those that stay.",
                exact(apart, names, now, range)
            ),
        },
    }
}

fn hook([first, second]: Names<'_>, range: (f64, f64)) -> String {
    match said(range, 1.0) {
        Said::Alike => {
            let second = begun(second);
            format!("{second} and {first} come to about the same place; we can't tell them apart.")
        }
        Said::More(least, most) => format!(
            "Thrown the same way, {second} likely hooks {} more than {first}.",
            amount(least, most, "board")
        ),
        Said::Less(least, most) => format!(
            "Thrown the same way, {second} likely hooks {} less than {first}.",
            amount(least, most, "board")
        ),
        Said::Either(less, more) => format!(
            "We can't tell which hooks more. {} may come out {}.",
            begun(second),
            either([less, more], "board", ["less", "more"])
        ),
    }
}

fn finish([first, second]: Names<'_>, sooner: Option<(f64, f64)>, finished: [bool; 2]) -> String {
    let Some(range) = sooner else {
        return match finished {
            [false, false] => "Neither has finished hooking at the pins.".to_owned(),
            [false, true] => format!("{} hasn't finished hooking at the pins.", begun(first)),
            [true, _] => format!("{} hasn't finished hooking at the pins.", begun(second)),
        };
    };
    match said(range, 0.5) {
        Said::Alike => "Both finish hooking at about the same place.".to_owned(),
        Said::More(least, most) => format!(
            "{} likely finishes hooking {} earlier.",
            begun(second),
            amount(least, most, "foot")
        ),
        Said::Less(least, most) => format!(
            "{} likely finishes hooking {} later.",
            begun(second),
            amount(least, most, "foot")
        ),
        Said::Either(later, earlier) => format!(
            "It may finish hooking {}.",
            either([later, earlier], "foot", ["later", "earlier"])
        ),
    }
}

fn steeper([_, second]: Names<'_>, range: (f64, f64)) -> String {
    match said(range, 0.5) {
        Said::Alike => "They enter the pins at about the same angle.".to_owned(),
        Said::More(least, most) => format!(
            "{} likely enters {} steeper.",
            begun(second),
            amount(least, most, "degree")
        ),
        Said::Less(least, most) => format!(
            "{} likely enters {} flatter.",
            begun(second),
            amount(least, most, "degree")
        ),
        Said::Either(flatter, steeper) => format!(
            "It may enter {}.",
            either([flatter, steeper], "degree", ["flatter", "steeper"])
        ),
    }
}

/// "one to three boards", "about two boards", "up to three boards".
fn amount(least: f64, most: f64, unit: &str) -> String {
    if least <= 0.0 {
        return format!("up to {}", counted(most, unit));
    }
    if least == most {
        return format!("about {}", counted(most, unit));
    }
    let write = writing(&[least, most]);
    format!("{} to {} {}", write(least), write(most), named(most, unit))
}

/// "one board less or three boards more".
fn either(amounts: [f64; 2], unit: &str, [one, other]: [&str; 2]) -> String {
    let write = writing(&amounts);
    let [first, second] = amounts.map(|value| match value {
        0.5 => format!("half a {unit}"),
        value => format!("{} {}", write(value), named(value, unit)),
    });
    format!("{first} {one} or {second} {other}")
}

fn counted(value: f64, unit: &str) -> String {
    match value {
        0.5 => format!("half a {unit}"),
        value => format!("{} {}", writing(&[value])(value), named(value, unit)),
    }
}

/// The unit after so many of it.
fn named(value: f64, unit: &str) -> String {
    match (unit, value > 1.0) {
        ("foot", true) => "feet".to_owned(),
        (unit, true) => format!("{unit}s"),
        (unit, false) => unit.to_owned(),
    }
}

/// Up to this, numbers are words. Numbers beside each other are all words, or all digits.
const IN_WORDS: f64 = 12.5;

fn writing(all: &[f64]) -> fn(f64) -> String {
    match all.iter().all(|value| *value <= IN_WORDS) {
        true => words,
        false => digits,
    }
}

/// Small whole numbers as words; a half as people say it.
fn words(value: f64) -> String {
    const WORDS: [&str; 13] = [
        "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
        "eleven", "twelve",
    ];
    let (whole, half) = halves(value);
    let word = WORDS
        .get(whole.max(0.0) as usize)
        .map_or_else(|| format!("{whole:.0}"), |word| (*word).to_owned());
    match (whole == 0.0, half) {
        (true, true) => "half".to_owned(),
        (false, true) => format!("{word} and a half"),
        (_, false) => word,
    }
}

fn digits(value: f64) -> String {
    match halves(value) {
        (0.0, true) => "1/2".to_owned(),
        (whole, true) => format!("{whole:.0} 1/2"),
        (whole, false) => format!("{whole:.0}"),
    }
}

/// A number's whole part, and whether a half is left.
fn halves(value: f64) -> (f64, bool) {
    let whole = libm::floor(value);
    (whole, value - whole >= 0.25)
}

/// A name as a sentence begins with it.
pub(super) fn begun(name: &str) -> String {
    let mut letters = name.chars();
    let first = letters.next().map(char::to_uppercase);
    first.into_iter().flatten().chain(letters).collect()
}

/// The numbers themselves, a direction in words beside each.
fn exact(apart: &Apart, names: Names<'_>, now: f64, range: (f64, f64)) -> String {
    let [first, second] = names;
    let second = begun(second);
    let mut said = format!(
        "{second} against {first} at the pins: {} boards",
        signed(now, range, "more", "less")
    );
    if let Some((now, least, most)) = apart.entry {
        let entry = signed(now, (least, most), "steeper", "flatter");
        said.push_str(&format!("; entry angle {entry} degrees"));
    }
    match apart.sooner {
        Some((now, least, most)) => {
            let sooner = signed(now, (least, most), "sooner", "later");
            said.push_str(&format!("; slip ends {sooner} ft."));
        }
        None => said.push_str("; slip doesn't end before the pins for one or both."),
    }
    said
}

/// `1.2 more (0.4 less to 2.6 more)`.
fn signed(now: f64, (least, most): (f64, f64), more: &str, less: &str) -> String {
    let one = |value: f64| {
        let tenths = libm::round(value * 10.0) / 10.0;
        match tenths {
            0.0 => "0.0".to_owned(),
            tenths if tenths > 0.0 => format!("{tenths:.1} {more}"),
            tenths => format!("{:.1} {less}", -tenths),
        }
    };
    format!("{} ({} to {})", one(now), one(least), one(most))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ranges_are_rounded_outward() {
        assert_eq!(said((1.2, 2.4), 1.0), Said::More(1.0, 3.0));
        assert_eq!(said((-2.4, -1.2), 1.0), Said::Less(1.0, 3.0));
        assert_eq!(said((0.3, 2.0), 1.0), Said::More(0.0, 2.0));
        assert_eq!(said((-0.4, 0.9), 1.0), Said::Alike);
        assert_eq!(said((-0.4, 1.1), 1.0), Said::Either(1.0, 2.0));
        assert_eq!(said((0.0, 0.0), 1.0), Said::Alike);
        assert_eq!(said((3.2, 4.4), 0.5), Said::More(3.0, 4.5));
    }

    #[test]
    fn amounts_are_said_in_words() {
        assert_eq!(amount(1.0, 3.0, "board"), "one to three boards");
        assert_eq!(amount(0.0, 1.0, "board"), "up to one board");
        assert_eq!(amount(2.0, 2.0, "board"), "about two boards");
        assert_eq!(amount(0.5, 1.5, "foot"), "half to one and a half feet");
        assert_eq!(amount(0.0, 0.5, "foot"), "up to half a foot");
        assert_eq!(amount(3.0, 14.0, "board"), "3 to 14 boards");
        assert_eq!(amount(0.5, 13.5, "foot"), "1/2 to 13 1/2 feet");
        assert_eq!(amount(0.0, 16.0, "board"), "up to 16 boards");
        let either = |less, more| either([less, more], "board", ["less", "more"]);
        assert_eq!(either(1.0, 3.0), "one board less or three boards more");
        assert_eq!(either(0.5, 16.0), "half a board less or 16 boards more");
        assert_eq!(either(2.0, 16.0), "2 boards less or 16 boards more");
    }
}
