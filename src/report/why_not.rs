//! Why a ball isn't the pick, as text.

use super::Look;
use super::customer::{caution_words, sourced};
use super::page::{Page, capitalised};
use super::points::{bare, counted};
use crate::advice::{BallFate, Barrier, Caution, Cost, Reason, Sought, WhyNot};
use crate::notation::Notation;
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
        let text = barrier.line().text(page.audience());
        let found = barrier.found().iter();
        let found: String = match page.audience() {
            Audience::Fitter => found.map(found_for_fitter).collect(),
            _ => found
                .filter(|found| !says(text, found.value()))
                .map(found_for_customer)
                .collect(),
        };
        let words = format!("{text}{found}{}", origin(barrier.line(), page.audience()));
        page.item(indent, "- ", &words);
    }
}

fn found_for_fitter(found: &Sought) -> String {
    let meaning = capitalised(found.meaning());
    format!(
        " {meaning}: found {}, wanted {}.",
        found.value(),
        found.wanted()
    )
}

/// Only where the reason doesn't say the value itself.
fn found_for_customer(found: &Sought) -> String {
    let (meaning, wanted) = (capitalised(found.meaning()), capitalised(found.wanted()));
    format!(" {meaning}: {}. {wanted} would do.", found.value())
}

/// True if a value stands in a text as a whole: `3 lb` isn't in `13 lb`, nor `$14` in `$14.38`.
fn says(text: &str, value: &str) -> bool {
    let digit = |letter: Option<char>| letter.is_some_and(char::is_alphanumeric);
    text.match_indices(value).any(|(at, value)| {
        let (before, after) = (&text[..at], &text[at + value.len()..]);
        let mut next = after.chars();
        let follows = match next.next() {
            Some('.' | ',') => digit(next.next()),
            letter => digit(letter),
        };
        let precedes = before.ends_with(|c: char| c.is_alphanumeric() || matches!(c, '.' | ','));
        !value.is_empty() && !follows && !precedes
    })
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
    let drilled = drilled(ball);
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

/// What it costs, where that is known.
fn drilled(ball: &BallFate) -> String {
    let price = ball.out_the_door();
    price
        .map(|price| format!(" It comes to {price} out the door."))
        .unwrap_or_default()
}

/// All that there is to say of one ball.
fn one(page: &mut Page<'_>, answer: &WhyNot, ball: &BallFate, among_weights: bool) {
    let mut words = place(answer, ball);
    if among_weights {
        words = match ball.is_ruled_out() && !ball.is_pick() {
            true => format!(
                "It is out in every weight here, and comes nearest in {}.{}",
                ball.weight(),
                drilled(ball)
            ),
            false => format!("Best in {}. {words}", ball.weight()),
        };
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
            let words = match answer.left() {
                0 => "But for that it would be the only ball left.",
                _ => "But for that it would come first.",
            };
            page.paragraph(4, words);
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
                words.push_str(" The pick is no better in this.");
            }
            page.row(4, POINTS, &label, &words);
        }
    }
    page.paragraph(2, &in_all(answer, ball));
}

/// What one line cost. Where it speaks of another ball, that one is named first, in a sentence of its own.
fn cost_words(cost: &Cost, audience: Audience) -> String {
    let line = cost.line();
    let said = format!("{}{}", line.text(audience), origin(line, audience));
    match cost.best_ball() {
        Some(ball) if cost.lacks() => format!("Better in this is {ball}. {said}"),
        _ => said,
    }
}

/// What ball and best got by it.
fn got(cost: &Cost) -> String {
    let best = match cost.best_ball() {
        Some(ball) if !cost.lacks() => format!("{} for {ball}", bare(cost.best())),
        _ => bare(cost.best()),
    };
    format!("This ball gets {}; the best is {best}.", bare(cost.own()))
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
    out.sort_by_key(|ball| (ball.barriers().len(), rules(ball)));
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
            let mut weights: Vec<&str> = others.iter().map(|ball| ball.weight()).collect();
            weights.sort_by_key(|weight| Notation::Weight.read(weight).ok());
            words.push_str(&format!(" The same goes for {}.", listed(weights)));
        }
        page.row(2, POINTS, first.weight(), &words);
    }
    page.explain();
}

fn rules(ball: &BallFate) -> Vec<&str> {
    let barriers = ball.barriers().iter();
    barriers.map(|barrier| barrier.line().rule()).collect()
}

/// `7, 8 and 9 lb`.
fn listed(weights: Vec<&str>) -> String {
    match weights.as_slice() {
        [first @ .., last] if !first.is_empty() => {
            let numbers = first.iter().map(|weight| weight.trim_end_matches(" lb"));
            format!("{} and {last}", numbers.collect::<Vec<_>>().join(", "))
        }
        _ => weights.concat(),
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_value_is_said_only_as_a_whole() {
        let cases = [
            ("It weighs 13 lb.", "3 lb", false),
            ("It is 3 lb off.", "3 lb", true),
            ("It comes to $14.38 over.", "$14.38", true),
            ("It comes to $14.38 over.", "$14", false),
            ("It is over by $14.", "$14", true),
            ("Off by 1.3 lb.", "3 lb", false),
            ("It costs $1,140.", "$1", false),
            ("", "", false),
        ];
        for (text, value, said) in cases {
            assert_eq!(says(text, value), said, "{value} in {text}");
        }
    }
}
