//! Two balls side by side, as text.

use super::Look;
use super::customer::caution_words;
use super::page::Page;
use super::points::{counted, signed};
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
        page.item(
            4,
            "Keep in mind: ",
            &caution_words(caution, page.audience()),
        );
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
        let label = signed(difference.points() * turn);
        page.row(
            2,
            POINTS,
            &label,
            &words(contrast, difference, page.audience()),
        );
    }
    let sum = match contrast.gap() {
        0 => "in all, so neither is ahead.".to_owned(),
        _ => format!("in all for {name}."),
    };
    page.row(2, POINTS, &signed(contrast.gap() * turn), &sum);
    page.explain();
}

/// What opposing schools would add.
fn schools(page: &mut Page<'_>, contrast: &Contrast) {
    if contrast.schools().is_empty() {
        return;
    }
    page.heading("What another school would add, not counted here");
    let (_, turn) = ahead(contrast);
    for difference in contrast.schools() {
        let label = format!("({})", signed(difference.points() * turn));
        page.row(
            2,
            POINTS,
            &label,
            &words(contrast, difference, page.audience()),
        );
    }
    page.explain();
}

/// What one rule says of either ball, where it speaks of it.
fn words(contrast: &Contrast, difference: &Difference, audience: Audience) -> String {
    let [one, other] = contrast.names();
    let both = difference.one().is_some() && difference.other().is_some();
    // A school's line counts nothing, and says for which ball it speaks by the other's having none.
    let speaks = |line: &Reason, of_first: bool| match line.points() {
        0 => (difference.points() > 0) == of_first,
        points => points > 0,
    };
    let said = |name: &str, line: &Reason, of_first: bool| {
        let side = if speaks(line, of_first) {
            "for"
        } else {
            "against"
        };
        let origin = origin(line, audience);
        // Where both have a line, those who know the game see how the difference comes about.
        let own = match both && audience != Audience::Newcomer {
            true => format!(", {}", signed(line.points())),
            false => String::new(),
        };
        format!("{side} {name}{own}: {}{origin}", line.text(audience))
    };
    let one = difference.one().map(|line| said(one, line, true));
    let other = difference.other().map(|line| said(other, line, false));
    let all: Vec<String> = one.into_iter().chain(other).collect();
    all.join(" And ")
}
