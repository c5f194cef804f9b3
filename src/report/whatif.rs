//! Which answers would change the pick, as people read it.

use super::Look;
use super::page::{Page, capitalised};
use crate::advice::{Picked, Together, Turning, WhatIf, without_unit};
use crate::rules::Audience;

/// Steps told to a customer: in all, and of them at most so many of what was answered.
const SHOWN: usize = 7;
const TOLD: usize = 5;
/// The most of them that stand for one answer.
const OF_ONE: usize = 2;
/// The most stretches of one answer that a fitter reads.
const STRETCHES: usize = 12;

/// Writes the turning points as plain text, ending in a line break.
#[must_use]
pub fn what_if_text(what_if: &WhatIf, look: &Look) -> String {
    let mut page = Page::new(look);
    if !what_if.bowler().is_empty() {
        page.heading(&format!("For {}", what_if.bowler()));
    }
    page.paragraph(2, &standing(what_if));
    let expert = page.audience() == Audience::Fitter;
    let turns = match expert {
        true => all_but_many(what_if.turns()),
        false => most_telling(what_if.turns(), page.audience()),
    };
    list(&mut page, "What would change this", &turns, true);
    let after = match turns.iter().any(|turn| turn.is_told()) {
        true => "And what we don't know yet",
        false => "What would change this, once we know",
    };
    list(&mut page, after, &turns, false);
    together(&mut page, what_if.together());
    let more = what_if.turns().len() - turns.len();
    if more > 0 {
        let words = match expert {
            true => format!("{more} more stretches stand in the document that --json writes."),
            false => format!("The fitter's list has {more} more."),
        };
        page.paragraph(2, &words);
    }
    if expert {
        steady(&mut page, what_if);
    }
    page.explain();
    page.finish()
}

/// The steps of answers that were given, or of those that weren't.
fn list(page: &mut Page<'_>, title: &str, turns: &[&Turning], told: bool) {
    let mut first = true;
    for turn in turns.iter().filter(|turn| turn.is_told() == told) {
        if std::mem::take(&mut first) {
            page.heading(title);
        }
        let audience = page.audience();
        let Some(phrase) = turn.said(audience) else {
            continue;
        };
        let mut words = sentence(phrase, turn.picked(), turn.changed());
        if audience == Audience::Fitter {
            words.push_str(&format!(" ({})", background(turn)));
        }
        page.item(2, "- ", &words);
    }
}

/// What is picked as things stand, and what no answer can change.
fn standing(what_if: &WhatIf) -> String {
    let now = what_if.now();
    let mut words = match (now.name(), now.grip()) {
        (Some(name), Some(grip)) => format!("As things stand: {name}, with a {grip} grip."),
        (Some(name), None) => format!("As things stand: {name}."),
        (None, _) => "As things stand, no ball on the shelf is right.".to_owned(),
    };
    if let Some(weight) = now.weight_beside_the_ball() {
        words.push_str(&format!(" The weight we look for is {weight}."));
    }
    if let Some(settled) = listed(what_if.settled()) {
        let verb = if what_if.settled().len() == 1 {
            "is"
        } else {
            "are"
        };
        words.push_str(&format!(
            " {} {verb} settled, so no answer changes that.",
            capitalised(&format!("the {settled}"))
        ));
    }
    words
}

fn listed(words: &[&str]) -> Option<String> {
    match words {
        [] => None,
        [only] => Some((*only).to_owned()),
        [most @ .., end] => Some(format!("{} and {end}", most.join(", "))),
    }
}

/// Those told to a customer: not too many, nor too many of one answer, and of one answer no pick twice.
fn most_telling(turns: &[Turning], audience: Audience) -> Vec<&Turning> {
    let mut shown: Vec<&Turning> = Vec::new();
    for turn in turns.iter().filter(|turn| turn.said(audience).is_some()) {
        let is_like = |other: &&&Turning| other.step().fact() == turn.step().fact();
        let of_one: Vec<&&Turning> = shown.iter().filter(is_like).collect();
        let is_said = of_one.iter().any(|other| other.picked() == turn.picked());
        // Words are steps of their own: with a sore thumb is no sore wrist.
        let is_repeated = is_said && turn.stretch().is_some();
        let most = if turn.is_told() { TOLD } else { SHOWN };
        if shown.len() < most && of_one.len() < OF_ONE && !is_repeated {
            shown.push(turn);
        }
    }
    shown
}

/// All of them, but no more than so many stretches of one answer.
fn all_but_many(turns: &[Turning]) -> Vec<&Turning> {
    let mut shown: Vec<&Turning> = Vec::new();
    for turn in turns {
        let is_like = |other: &&&Turning| other.step().fact() == turn.step().fact();
        if turn.stretch().is_none() || shown.iter().filter(is_like).count() < STRETCHES {
            shown.push(turn);
        }
    }
    shown
}

/// A phrase that begins, and what we'd pick then.
pub(super) fn sentence(phrase: &str, picked: &Picked, changed: &[&str]) -> String {
    format!("{phrase}, {}.", then(picked, changed))
}

/// `we'd pick Common Daisy, 12 lb`; of what stays the same nothing is said, nor of a ball where there is none.
fn then(picked: &Picked, changed: &[&str]) -> String {
    let ball = changed.contains(&"ball");
    let grip = picked.grip().filter(|_| changed.contains(&"grip"));
    let weight = picked.weight().filter(|_| changed.contains(&"weight"));
    let Some(name) = picked.name() else {
        return match (grip, weight) {
            _ if ball => "no ball on the shelf would be right".to_owned(),
            (Some(grip), _) => format!("we'd choose a {grip} grip"),
            (None, Some(weight)) => format!("we'd look for {weight}"),
            (None, None) => "no weight would be right".to_owned(),
        };
    };
    let beside = picked
        .weight_beside_the_ball()
        .filter(|_| ball || weight.is_some());
    let picks = match (ball, beside) {
        (true, Some(weight)) => format!("we'd look for {weight} and pick {name}"),
        (true, None) => format!("we'd pick {name}"),
        (false, Some(weight)) => format!("we'd look for {weight} and still pick {name}"),
        (false, None) => {
            return match (grip, picked.weight()) {
                (Some(grip), _) => format!("we'd pick a {grip} grip for the same ball"),
                (None, Some(weight)) => format!("we'd look for {weight}"),
                (None, None) => "no weight would be right".to_owned(),
            };
        }
    };
    match grip {
        Some(grip) => format!("{picks}, with a {grip} grip"),
        None => picks,
    }
}

/// The answer with its values, and what changes.
fn background(turn: &Turning) -> String {
    let keeps = match (turn.keeps(), turn.stretch()) {
        (Some((_, keeps)), _) => format!("{keeps} keeps, {} changes", turn.step().shown()),
        (None, Some(stretch)) => {
            let (lowest, highest) = (stretch.lowest().1, stretch.highest().1);
            format!("{} to {highest} changes", without_unit(lowest, highest))
        }
        (None, None) => format!("{} changes", turn.step().shown()),
    };
    let also = turn.also().iter();
    let also = also.map(|also| format!(", with {} {}", also.fact(), also.shown()));
    let instead = turn.instead_of();
    let instead = instead.map(|fact| format!(", instead of {fact}"));
    let also: String = also.chain(instead).collect();
    let ball = turn.picked().ball().unwrap_or("no ball");
    let changed = turn.changed().join(", ");
    format!("{}: {keeps} {changed}{also}; {ball}", turn.step().fact())
}

fn together(page: &mut Page<'_>, together: &Together) {
    match together {
        Together::NotAsked => {}
        Together::Nothing => {
            page.paragraph(2, "No answer changes this, nor any two together.");
        }
        Together::NotSettled(work) => {
            page.paragraph(2, "No single answer changes this.");
            if page.audience() == Audience::Fitter {
                let words = format!("Two together: not settled within {work} looks.");
                page.paragraph(2, &words);
            }
        }
        Together::Nearest {
            steps: [one, other],
            picked,
            certain,
            practical,
        } => {
            if !practical && page.audience() != Audience::Fitter {
                page.paragraph(2, "No single answer changes this, but two together do.");
                return;
            }
            page.heading("No single answer changes this, but two together do");
            let audience = page.audience();
            let phrase = other.phrase().after(one.phrase(), ", and ");
            let changed = ["weight", "grip", "ball"];
            let mut words = sentence(phrase.of(audience), picked, &changed);
            if audience == Audience::Fitter {
                let sure = if *certain {
                    "the nearest pair"
                } else {
                    "a nearer pair may exist"
                };
                words.push_str(&format!(
                    " ({} {}, {} {}; {sure})",
                    one.fact(),
                    one.shown(),
                    other.fact(),
                    other.shown()
                ));
            }
            page.item(2, "- ", &words);
        }
    }
}

fn steady(page: &mut Page<'_>, what_if: &WhatIf) {
    if !what_if.steady().is_empty() {
        page.heading("Tried at every step, without a change");
        page.paragraph(2, &format!("{}.", what_if.steady().join(", ")));
    }
    if !what_if.unfinished().is_empty() {
        page.heading("Not tried at every step");
        page.paragraph(2, &format!("{}.", what_if.unfinished().join(", ")));
    }
}
