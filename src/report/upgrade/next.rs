//! One ball of an upgrade path: the gap, what to wait for, the ball with its price and reasons, how it differs, and a choice of one's own.

use super::{REASONS, step_words};
use crate::advice::{NextBall, OwnChoice, Pick, Reason};
use crate::notation::Notation;
use crate::report::against;
use crate::report::customer::{called, caution_words};
use crate::report::fitter;
use crate::report::page::{Page, capitalised};
use crate::rules::Audience;

/// Writes it; of a later ball only what fills the gap is told.
pub(super) fn ball(page: &mut Page<'_>, next: &NextBall, is_first: bool) {
    let audience = page.audience();
    let gap = next.gap().said(audience);
    let is_sold = next.pick().is_some() || !next.near_misses().is_empty();
    let when = match (is_sold, is_first) {
        (false, _) => "What is missing",
        (true, true) => "Next",
        (true, false) => "Later",
    };
    page.heading(&format!("{when}: {gap}"));
    for line in next
        .gap()
        .lines()
        .iter()
        .filter(|line| line.points() > 0)
        .take(REASONS)
    {
        page.item(2, "- ", line.text(audience));
    }
    for step in next.triggers().iter().filter(|_| is_sold) {
        let words = step_words(page, step);
        page.item(2, "When: ", &words);
    }
    let Some(pick) = next.pick() else {
        page.paragraph(
            2,
            match next.near_misses().is_empty() {
                true => "No ball on our shelf fills that, so there is none to buy here.",
                false => "Nothing within your budget fills that.",
            },
        );
        for miss in next.near_misses().iter().take(1) {
            let words = format!(
                "{} would, at {}. That is {} over your budget.",
                miss.name(),
                miss.out_the_door(),
                miss.over()
            );
            page.paragraph(2, &words);
        }
        page.explain();
        return;
    };
    page.subheading(&called(pick));
    let price = next.bill().map_or(pick.out_the_door(), |bill| bill.total());
    let cover = capitalised(pick.cover());
    page.paragraph(
        4,
        &format!(
            "{price} drilled{}. {cover} cover; {}.",
            budget(next),
            pick.colours()
        ),
    );
    if audience == Audience::Fitter {
        fitter::lines(page, 4, pick.lines());
    } else {
        for line in reasons(pick, is_first) {
            page.item(4, "- ", line.text(audience));
        }
        for line in pick.reasons_against(1) {
            page.item(4, "- Against it: ", line.text(audience));
        }
    }
    if let Some(against) = next.against() {
        for words in against::words(against) {
            page.item(4, "- ", &words);
        }
    }
    if let Some(own) = next.own_choice() {
        own_choice(page, own);
    }
    for caution in next.cautions() {
        page.item(4, "Caution: ", &caution_words(caution, audience));
    }
    page.explain();
}

/// What fills the gap comes first; of a later ball only that.
fn reasons(pick: &Pick, is_first: bool) -> Vec<&Reason> {
    let all = pick.reasons_for(pick.lines().len());
    let of_gap = |line: &&Reason| line.facts().iter().any(|(fact, _)| *fact == "upgrade.gap");
    let (mut told, rest): (Vec<&Reason>, Vec<&Reason>) = all.into_iter().partition(of_gap);
    if is_first || told.is_empty() {
        told.extend(rest);
    }
    told.truncate(REASONS);
    told
}

/// The dear ball that is wanted all the same, with its price and one mild word.
fn own_choice(page: &mut Page<'_>, own: &OwnChoice) {
    let audience = page.audience();
    let pick = own.pick();
    page.subheading(&format!(
        "If you'd rather choose yourself: {}",
        called(pick)
    ));
    let dearer = match own.dearer() {
        cents if cents > 0 => format!(", {} more", Notation::Money.write(cents)),
        _ => String::new(),
    };
    let cover = capitalised(pick.cover());
    let price = own.bill().total();
    let words = format!(
        "{price} drilled{dearer}. {cover} cover; {}. Noted as your own choice.",
        pick.colours()
    );
    page.paragraph(4, &words);
    if audience == Audience::Fitter {
        fitter::lines(page, 4, pick.lines());
        for caution in own.cautions() {
            page.item(4, "Caution: ", &caution_words(caution, audience));
        }
        return;
    }
    for line in pick.reasons_against(1) {
        page.item(4, "- Against it: ", line.text(audience));
    }
}

fn budget(next: &NextBall) -> String {
    match next.over_budget() {
        Some(over) if over > 0 => format!(", {} over your budget", Notation::Money.write(over)),
        Some(over) if over < 0 => format!(", {} under your budget", Notation::Money.write(-over)),
        Some(_) => ", just your budget".to_owned(),
        None => String::new(),
    }
}
