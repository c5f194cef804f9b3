//! Why a ball isn't the pick, as text.

use super::Look;
use super::customer::{caution_words, sourced};
use super::page::{Page, capitalised};
use super::points::{bare, counted};
use crate::advice::{BallFate, Barrier, Caution, Cost, Reason, WhyNot};
use crate::rules::Audience;

/// Columns for points.
pub(super) const POINTS: usize = 8;

/// Writes the answer to "why not this ball?" as plain text, ending in a line break: what became of the ball, what cost it most,
/// and how it does in its other weights where none was named.
#[must_use]
pub fn why_not_text(answer: &WhyNot, look: &Look) -> String {
    let mut page = Page::new(look);
    first_of_all(&mut page, answer.bowler(), answer.cautions());
    if let [best, others @ ..] = answer.fates() {
        page.heading(&format!("Why not {}?", answer.name()));
        if answer.pick().is_none() {
            page.paragraph(2, "There is no pick: no ball on the shelf is right.");
        }
        one(&mut page, answer, best, !others.is_empty());
        if let Some(elsewhere) = answer.elsewhere() {
            let place = match elsewhere.is_pick() {
                true => "the pick".to_owned(),
                false => format!("{} of {}", ordinal(elsewhere.place()), answer.left()),
            };
            let words = format!("The same ball in {} is {place}.", elsewhere.weight());
            page.paragraph(2, &words);
        }
        page.explain();
        in_other_weights(&mut page, answer, others);
    }
    page.finish()
}

/// Whom it is for, and what comes before any ball.
pub(super) fn first_of_all(page: &mut Page<'_>, bowler: &str, cautions: &[Caution]) {
    if !bowler.is_empty() {
        page.heading(&format!("For {bowler}"));
    }
    if cautions.is_empty() {
        return;
    }
    page.heading("First of all");
    for caution in cautions {
        let audience = page.audience();
        match caution.action(audience) {
            Some(action) => {
                page.urgent(action);
                page.paragraph(4, caution.reason().text(audience));
            }
            None => page.urgent(&caution_words(caution, audience)),
        }
    }
    page.explain();
}

/// What keeps a ball out, each rule with what it found in the ball.
pub(super) fn barriers(page: &mut Page<'_>, indent: usize, barriers: &[Barrier]) {
    for barrier in barriers {
        let mut words = barrier.line().text(page.audience()).to_owned();
        for found in barrier.found() {
            let meaning = capitalised(found.meaning());
            words.push_str(&format!(
                " {meaning}: {}; wanted: {}.",
                found.value(),
                found.wanted()
            ));
        }
        words.push_str(&origin(barrier.line(), page.audience()));
        page.item(indent, "- ", &words);
    }
}

/// Rule and source, for the fitter.
pub(super) fn origin(line: &Reason, audience: Audience) -> String {
    match audience {
        Audience::Fitter => {
            let source = sourced(line.source(), line.strength());
            format!(" ({}; {source})", line.rule())
        }
        _ => String::new(),
    }
}

/// `1st`, `2nd`, `11th`.
pub(super) fn ordinal(place: usize) -> String {
    let end = match (place % 10, place % 100) {
        (_, 11..=13) => "th",
        (1, _) => "st",
        (2, _) => "nd",
        (3, _) => "rd",
        _ => "th",
    };
    format!("{place}{end}")
}

/// Where a ball stands, in a sentence.
fn place(answer: &WhyNot, ball: &BallFate) -> String {
    let drilled = match ball.out_the_door() {
        Some(price) => format!(" It comes to {price} out the door."),
        None => String::new(),
    };
    let of = match answer.left() {
        1 => "the only ball left".to_owned(),
        left => format!("{} of the {left} balls left", ordinal(ball.place())),
    };
    if ball.is_pick() && answer.is_fixed() {
        let rank = match ball.is_ruled_out() {
            true => "our reasons rule it out".to_owned(),
            false => format!("by our reasons it is {of}"),
        };
        format!("This was fixed beforehand, so it is the pick; {rank}.{drilled}")
    } else if ball.is_pick() {
        format!("This is the pick: {of}.{drilled}")
    } else if ball.is_ruled_out() {
        format!("It is out.{drilled}")
    } else {
        format!("It is {of}.{drilled}")
    }
}

/// All that there is to say of one ball.
fn one(page: &mut Page<'_>, answer: &WhyNot, ball: &BallFate, among_weights: bool) {
    let mut words = place(answer, ball);
    if among_weights {
        words = format!("Best in {}. {words}", ball.weight());
    }
    if let (Some(pick), false) = (answer.pick(), ball.is_pick()) {
        let fixed = if answer.is_fixed() {
            ", fixed beforehand,"
        } else {
            ""
        };
        let price = pick.out_the_door().map(|price| format!(", at {price}"));
        let price = price.unwrap_or_default();
        words.push_str(&format!(" The pick{fixed} is {}{price}.", pick.name()));
    }
    page.paragraph(2, &words);
    if ball.is_ruled_out() {
        page.subheading("What rules it out");
        barriers(page, 4, ball.barriers());
        if ball.place() == 1 && !ball.is_pick() {
            page.paragraph(4, "But for that it would come first.");
        }
        return;
    }
    if !ball.costs().is_empty() {
        page.subheading(match ball.is_pick() {
            true => "What others have over it, in points",
            false => "What cost it most, in points",
        });
        for cost in ball.costs() {
            let label = bare(cost.points());
            let mut words = cost_words(cost, page.audience());
            if page.audience() != Audience::Newcomer {
                words.push_str(&format!(" {}", got(cost)));
            }
            if cost.pick() == cost.own() && answer.pick().is_some() && !ball.is_pick() {
                words.push_str(" The same goes for the pick.");
            }
            page.row(4, POINTS, &label, &words);
        }
    }
    page.paragraph(2, &in_all(answer, ball));
}

/// What one line cost.
fn cost_words(cost: &Cost, audience: Audience) -> String {
    let line = cost.line();
    let said = match cost.lacks() {
        true => "Others have this",
        false => "Against it",
    };
    format!("{said}: {}{}", line.text(audience), origin(line, audience))
}

/// What ball and best got by it.
fn got(cost: &Cost) -> String {
    let best = match cost.best_ball() {
        Some(ball) => format!("{} for {ball}", bare(cost.best())),
        None => bare(cost.best()),
    };
    format!("It gets {}; the best is {best}.", bare(cost.own()))
}

/// What the points add up to, against the pick and against the best there is.
fn in_all(answer: &WhyNot, ball: &BallFate) -> String {
    let against_pick = match ball.behind_pick() {
        _ if ball.is_pick() => String::new(),
        0 => ", as many as the pick, which costs no more".to_owned(),
        behind if behind > 0 => format!(", {} fewer than the pick", bare(behind)),
        ahead => format!(", {} more than the pick", bare(-ahead)),
    };
    let best = match ball.lost() {
        0 => "No ball here could have more".to_owned(),
        lost => format!(
            "The best of everything here would make {}, which is {} more",
            bare(answer.attainable()),
            bare(lost)
        ),
    };
    let own = counted(ball.total());
    format!("In all it has {own}{against_pick}. {best}.")
}

/// The other weights, in a line or two each.
fn in_other_weights(page: &mut Page<'_>, answer: &WhyNot, others: &[BallFate]) {
    if others.is_empty() {
        return;
    }
    page.heading("In other weights");
    // What cost the best weight as much was told already.
    let told: Vec<(&str, i64)> = answer.fates().first().map(costs).unwrap_or_default();
    let audience = page.audience();
    let (mut out, left): (Vec<&BallFate>, Vec<&BallFate>) =
        others.iter().partition(|ball| ball.is_ruled_out());
    for ball in left {
        let new = |cost: &&Cost| !told.contains(&(cost.line().rule(), cost.points()));
        let cost = ball.costs().iter().find(new).or(ball.costs().first());
        let why = cost.map(|cost| format!(" {}", cost_words(cost, audience)));
        let words = format!("{}{}", of(answer, ball), why.unwrap_or_default());
        page.row(2, POINTS, ball.weight(), &words);
    }
    out.sort_by_key(|ball| rules(ball));
    for alike in out.chunk_by(|a, b| rules(a) == rules(b)) {
        let [first, others @ ..] = alike else {
            continue;
        };
        let texts = first.barriers().iter().map(|barrier| {
            let line = barrier.line();
            format!(" {}{}", line.text(audience), origin(line, audience))
        });
        let mut words = format!("Out.{}", texts.collect::<String>());
        if !others.is_empty() {
            let weights = others.iter().map(|ball| ball.weight());
            words.push_str(&format!(
                " The same goes for {}.",
                listed(weights.collect())
            ));
        }
        page.row(2, POINTS, first.weight(), &words);
    }
    page.explain();
}

fn rules(ball: &BallFate) -> Vec<&str> {
    let barriers = ball.barriers().iter();
    barriers.map(|barrier| barrier.line().rule()).collect()
}

/// `7 lb, 8 lb and 9 lb`.
fn listed(words: Vec<&str>) -> String {
    match words.as_slice() {
        [first @ .., last] if !first.is_empty() => format!("{} and {last}", first.join(", ")),
        _ => words.concat(),
    }
}

fn costs(ball: &BallFate) -> Vec<(&str, i64)> {
    let costs = ball.costs().iter();
    costs
        .map(|cost| (cost.line().rule(), cost.points()))
        .collect()
}

/// `4th of 15.`
fn of(answer: &WhyNot, ball: &BallFate) -> String {
    format!("{} of {}.", ordinal(ball.place()), answer.left())
}
