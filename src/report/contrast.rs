//! Two balls side by side, as text.

use super::Look;
use super::customer::caution_words;
use super::page::Page;
use super::points::{bare, counted, signed};
use super::why_not::{POINTS, barriers, first_of_all, ordinal, origin};
use crate::advice::{Compared, Contrast, Difference, Reason};
use crate::notation::Notation;
use crate::rules::Audience;

/// Columns of the prices.
const PRICES: usize = 46;

/// Writes two balls side by side as plain text, ending in a line break: one sentence, the prices, where each stands, and the
/// lines that differ with their sum.
#[must_use]
pub fn contrast_text(contrast: &Contrast, look: &Look) -> String {
    let mut page = Page::new(look);
    first_of_all(&mut page, contrast.bowler(), contrast.cautions());
    let (one, other) = (contrast.one(), contrast.other());
    page.heading(&format!("{}, or {}?", one.name(), other.name()));
    page.paragraph(2, contrast.sentence(page.audience()));
    page.explain();
    prices(&mut page, contrast);
    page.heading("Where they stand");
    for ball in [one, other] {
        standing(&mut page, ball, contrast.left());
    }
    page.explain();
    differences(&mut page, contrast);
    schools(&mut page, contrast);
    page.finish()
}

fn prices(page: &mut Page<'_>, contrast: &Contrast) {
    let (one, other) = (contrast.one(), contrast.other());
    let (Some(first), Some(second), Some(dearer)) =
        (one.out_the_door(), other.out_the_door(), contrast.dearer())
    else {
        return;
    };
    page.heading("Drilled, with everything and tax");
    page.amount(PRICES, one.name(), &first);
    page.amount(PRICES, other.name(), &second);
    let size = Notation::Money.write(dearer.abs());
    match dearer {
        0 => page.paragraph(2, "Both cost the same."),
        d if d > 0 => page.amount(PRICES, &format!("More for {}", one.name()), &size),
        _ => page.amount(PRICES, &format!("More for {}", other.name()), &size),
    }
}

fn standing(page: &mut Page<'_>, ball: &Compared, left: usize) {
    let points = counted(ball.total());
    let pick = if ball.is_pick() { "the pick, " } else { "" };
    if ball.is_ruled_out() {
        let words = format!(
            "{}: {pick}ruled out. Without that it would have {points}.",
            ball.name()
        );
        page.paragraph(2, &words);
        barriers(page, 4, ball.barriers());
    } else {
        let place = ordinal(ball.place());
        let words = format!("{}: {pick}{place} of {left}, with {points}.", ball.name());
        page.paragraph(2, &words);
    }
    for caution in ball.cautions() {
        let caution = caution_words(caution, page.audience());
        page.paragraph(4, &format!("Keep this in mind. {caution}"));
    }
}

/// The ball that has more points; the first if neither has.
fn ahead(contrast: &Contrast) -> (&str, i64) {
    let [one, other] = contrast.names();
    if contrast.gap() < 0 {
        (other, -1)
    } else {
        (one, 1)
    }
}

/// Each line as it counts for the ball that is ahead.
fn differences(page: &mut Page<'_>, contrast: &Contrast) {
    if contrast.lines().is_empty() {
        page.heading("What differs");
        page.paragraph(2, "Nothing that our reasons speak of.");
        return;
    }
    page.heading("What differs in points, the weightiest first");
    let (name, turn) = ahead(contrast);
    for difference in contrast.lines() {
        row(page, contrast, difference, turn);
    }
    let gap = contrast.gap() * turn;
    let (label, points) = match page.audience() {
        Audience::Newcomer => (bare(gap), format!("{} ", unit(gap))),
        _ => (signed(gap), String::new()),
    };
    let sum = match gap {
        0 => "in all, so neither is ahead.".to_owned(),
        _ => format!("{points}in all for {name}."),
    };
    page.row(2, POINTS, &label, &sum);
    page.explain();
}

/// A difference: with a sign, as it counts for the ball that is ahead; for customers as points of the ball that it favours.
fn row(page: &mut Page<'_>, contrast: &Contrast, difference: &Difference, turn: i64) {
    let audience = page.audience();
    let points = difference.points();
    let (label, said) = match audience {
        Audience::Newcomer => {
            let [one, other] = contrast.names();
            let favoured = if points > 0 { one } else { other };
            let lead = format!("{} for {favoured}.", unit(points.abs()));
            let said = words_for_customer(contrast, difference);
            (bare(points.abs()), format!("{lead} {said}"))
        }
        _ => (signed(points * turn), words(contrast, difference, audience)),
    };
    let label = match is_school(difference) {
        true => format!("({label})"),
        false => label,
    };
    page.row(2, POINTS, &label, &said);
}

/// What follows a number of points.
fn unit(tenths: i64) -> &'static str {
    if tenths == 10 { "point" } else { "points" }
}

/// A school's line counts nothing.
fn is_school(difference: &Difference) -> bool {
    let lines = [difference.one(), difference.other()];
    lines.iter().flatten().all(|line| line.points() == 0)
}

/// What opposing schools would add.
fn schools(page: &mut Page<'_>, contrast: &Contrast) {
    if contrast.schools().is_empty() {
        return;
    }
    page.heading("What another school would add, not counted here");
    let (_, turn) = ahead(contrast);
    for difference in contrast.schools() {
        row(page, contrast, difference, turn);
    }
    page.explain();
}

/// True if a line speaks for its ball. A school's line counts nothing, and says for which ball it speaks by the other's
/// having none.
fn speaks_for(difference: &Difference, line: &Reason, of_first: bool) -> bool {
    match line.points() {
        0 => (difference.points() > 0) == of_first,
        points => points > 0,
    }
}

/// What one rule says of either ball. A reason follows the name of the ball that it is about, in a sentence of its own.
fn words_for_customer(contrast: &Contrast, difference: &Difference) -> String {
    let [one, other] = contrast.names();
    let text = |line: &Reason| line.text(Audience::Newcomer).to_owned();
    let said = |name: &str, line: &Reason, of_first: bool| {
        let side = match speaks_for(difference, line, of_first) {
            true => "for",
            false => "against",
        };
        format!("{name} has this {side} it. {}", text(line))
    };
    match (difference.one(), difference.other()) {
        (Some(line), None) if speaks_for(difference, line, true) => text(line),
        (None, Some(line)) if speaks_for(difference, line, false) => text(line),
        (first, second) => {
            let first = first.map(|line| said(one, line, true));
            let second = second.map(|line| said(other, line, false));
            first
                .into_iter()
                .chain(second)
                .collect::<Vec<_>>()
                .join(" ")
        }
    }
}

/// What one rule says of either ball, for those who know the game.
fn words(contrast: &Contrast, difference: &Difference, audience: Audience) -> String {
    let [one, other] = contrast.names();
    let both = difference.one().is_some() && difference.other().is_some();
    let said = |name: &str, line: &Reason, of_first: bool| {
        let side = match speaks_for(difference, line, of_first) {
            true => "for",
            false => "against",
        };
        let origin = origin(line, audience);
        // Where both have a line, it shows how the difference comes about.
        let own = match both {
            true => format!(", {}", signed(line.points())),
            false => String::new(),
        };
        format!("{side} {name}{own}. {}{origin}", line.text(audience))
    };
    let one = difference.one().map(|line| said(one, line, true));
    let other = difference.other().map(|line| said(other, line, false));
    let all: Vec<String> = one.into_iter().chain(other).collect();
    all.join(" And ")
}
