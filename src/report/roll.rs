//! A roll as people read it: one ball as a table of stations, two as the difference between them with its range.

mod one;
mod two;

use super::customer::{about, sourced};
use super::fitter;
use super::look::Look;
use super::page::{Page, capitalised};
use crate::advice::{Roll, Rolled, Saying};
use crate::motion::Angle;
use crate::rules::Audience;

/// Feet between the rows of a table, for those who don't drill and for the fitter.
const APART: f64 = 10.0;
const APART_FOR_FITTER: f64 = 5.0;

/// Writes a roll as plain text, ending in a line break: where the ball is sent, what it does on the way, or how the second ball
/// differs from the first, and what the rules say about it.
#[must_use]
pub fn roll_text(roll: &Roll, look: &Look) -> String {
    let mut page = Page::new(look);
    if !roll.bowler().is_empty() {
        page.heading(&format!("For {}", roll.bowler()));
    }
    match (roll.balls(), roll.apart()) {
        ([one, other], Some(apart)) => two::write(&mut page, roll, [one, other], apart),
        (balls, _) => {
            for ball in balls {
                one::write(&mut page, roll, ball);
            }
        }
    }
    says(&mut page, roll);
    thrown(&mut page, roll);
    if page.audience() == Audience::Fitter {
        behind(&mut page, roll);
    }
    assumed(&mut page, roll);
    if !roll.questions().is_empty() {
        page.heading("Still to ask");
        for question in roll.questions() {
            page.item(2, "- ", question);
        }
    }
    page.explain();
    page.finish()
}

fn is_fitter(page: &Page<'_>) -> bool {
    page.audience() == Audience::Fitter
}

/// Feet between the rows of a table for this reader.
fn apart(page: &Page<'_>) -> f64 {
    match is_fitter(page) {
        true => APART_FOR_FITTER,
        false => APART,
    }
}

/// Which edge boards are counted from.
fn counted_from(roll: &Roll) -> &'static str {
    match roll.is_mirrored() {
        true => "Boards are counted from the left edge.",
        false => "Boards are counted from the right edge.",
    }
}

fn says(page: &mut Page<'_>, roll: &Roll) {
    let reader = page.audience();
    let mut heard: Vec<(&Saying, Vec<usize>)> = Vec::new();
    for saying in roll.says() {
        if reader != Audience::Fitter && saying.is_for_the_fitter() {
            continue;
        }
        let text = saying.texts().of(reader);
        // What a reader hears of both in the same words is said once.
        let known = heard
            .iter_mut()
            .find(|(known, _)| known.texts().of(reader) == text);
        match known {
            Some((_, balls)) => balls.extend(saying.balls()),
            None => heard.push((saying, saying.balls().to_vec())),
        }
    }
    if heard.is_empty() {
        return;
    }
    page.heading("What that means");
    let names = roll.names();
    for (saying, balls) in heard {
        let of: Vec<&str> = balls
            .iter()
            .filter_map(|&ball| names.get(ball).copied())
            .collect();
        // What holds for each of them needs no name.
        let label = match of.len() == names.len() {
            true => String::new(),
            false => format!("{}: ", capitalised(&of.join(", "))),
        };
        let text = saying.texts().of(reader);
        let words = match reader {
            Audience::Fitter => {
                let step = saying.step();
                let source = sourced(step.source(), step.strength());
                format!("{label}{text} ({}; {source})", step.id())
            }
            _ => format!("{label}{text}"),
        };
        page.item(2, "- ", &words);
    }
    page.explain();
}

/// The throw and the line, which everybody may check.
fn thrown(page: &mut Page<'_>, roll: &Roll) {
    page.heading("The throw it was worked out for");
    // Whoever doesn't know the words of the axis didn't measure it either.
    let told = match page.audience() {
        Audience::Newcomer => 2,
        Audience::League | Audience::Fitter => roll.throw().len(),
    };
    let throw: Vec<String> = roll
        .throw()
        .iter()
        .take(told)
        .map(|(what, value)| format!("{what} {value}"))
        .collect();
    page.paragraph(2, &format!("{}.", capitalised(&throw.join(", "))));
    let line = roll.line();
    page.paragraph(
        2,
        &format!(
            "It starts on board {:.0}, sent {}. {} {}",
            line.start_board(),
            direction(line.launch(), "outward", "inward"),
            line.because(),
            counted_from(roll)
        ),
    );
    page.explain();
}

/// What the fitter may want to check: friction of each ball, the line, what was assumed about the balls.
fn behind(page: &mut Page<'_>, roll: &Roll) {
    for rolled in roll.balls() {
        let ball = rolled.ball();
        page.heading(&format!("What {} was taken for", ball.name()));
        let friction = ball.friction();
        page.subheading(&format!("Friction in the oil {:.3}", friction.oil()));
        fitter::lines(page, 4, ball.friction_in_oil());
        page.subheading(&format!("Friction on the dry {:.3}", friction.dry()));
        fitter::lines(page, 4, ball.friction_on_dry());
        for words in ball.assumed() {
            page.item(2, "- ", words);
        }
    }
    page.heading("What the line goes by");
    fitter::lines(page, 2, roll.line().lines());
}

fn assumed(page: &mut Page<'_>, roll: &Roll) {
    let taken = roll.assumptions().iter().filter_map(|assumed| {
        let words = format!(
            "{}: {}. {}",
            about(assumed.fact()),
            assumed.value()?,
            assumed.reason()
        );
        Some(match page.audience() {
            Audience::Fitter => format!(
                "{words} ({})",
                sourced(assumed.source(), assumed.strength())
            ),
            _ => words,
        })
    });
    let taken: Vec<String> = taken.collect();
    if taken.is_empty() {
        return;
    }
    page.heading("Assumed, because we didn't know");
    for words in taken {
        page.item(2, "- ", &capitalised(&words));
    }
    page.explain();
}

/// Degrees, and which way in words.
fn direction(angle: Angle, out: &str, inward: &str) -> String {
    let tenths = libm::round(angle.as_degrees() * 10.0) / 10.0;
    match tenths {
        0.0 => "straight down the lane".to_owned(),
        tenths if tenths < 0.0 => format!("{:.1} degrees {out}", -tenths),
        tenths => format!("{tenths:.1} degrees {inward}"),
    }
}

/// Where the ball's three phases lie, as people say it.
fn phases(rolled: &Rolled) -> String {
    let path = rolled.path();
    let [skid, hook, roll] =
        [path.skid(), path.hook(), path.roll()].map(|length| libm::round(length.as_feet()));
    let mut said = vec![format!("slides for {skid:.0} ft")];
    if hook >= 1.0 {
        said.push(format!("hooks for {hook:.0} ft"));
    }
    if roll >= 1.0 {
        said.push(format!("rolls the last {roll:.0} ft"));
    }
    match said.split_last() {
        Some((last, [])) => last.clone(),
        Some((last, first)) => format!("{} and {last}", first.join(", ")),
        None => String::new(),
    }
}
