//! A refit as people read it: what comes first, what to do, what is likely, the small change, the card.

use super::customer::{about, caution_words, sourced};
use super::fitter;
use super::page::{Page, capitalised};
use crate::advice::{Caution, Change, Reason, Refit, WorkStep};
use crate::rules::{Audience, Severity};

/// Causes shown to those who don't drill.
const CAUSES: usize = 3;
/// Reasons shown for a cause, and as many against.
const REASONS: usize = 2;
/// Columns for the name of a number.
const NAME: usize = 16;

/// Writes the whole page.
pub(super) fn write(page: &mut Page<'_>, refit: &Refit) {
    if !refit.bowler().is_empty() {
        page.heading(&format!("For {}", refit.bowler()));
    }
    serious(page, refit);
    steps(page, refit);
    causes(page, refit);
    mild(page, refit);
    changes(page, refit);
    card(page, refit);
    offers(page, refit);
    assumed(page, refit);
    if !refit.questions().is_empty() {
        page.heading("Still to ask");
        for question in refit.questions() {
            page.item(2, "- ", question);
        }
    }
    page.explain();
}

fn serious(page: &mut Page<'_>, refit: &Refit) {
    let serious: Vec<&Caution> = of(refit, Severity::Serious).collect();
    if serious.is_empty() {
        return;
    }
    page.heading("First of all");
    for caution in serious {
        let reason = caution.reason().text(page.audience());
        match caution.action(page.audience()) {
            Some(action) => {
                page.urgent(action);
                page.paragraph(4, reason);
            }
            None => page.urgent(reason),
        }
    }
    if refit.is_held() {
        page.paragraph(2, "Nothing is changed on the ball until that is settled.");
    }
    page.explain();
}

fn mild(page: &mut Page<'_>, refit: &Refit) {
    let mild: Vec<&Caution> = of(refit, Severity::Mild).collect();
    if mild.is_empty() {
        return;
    }
    page.heading("Keep in mind");
    for caution in mild {
        page.item(2, "- ", &caution_words(caution, page.audience()));
    }
    page.explain();
}

fn of(refit: &Refit, severity: Severity) -> impl Iterator<Item = &Caution> {
    refit
        .cautions()
        .iter()
        .filter(move |caution| caution.severity() == severity)
}

fn steps(page: &mut Page<'_>, refit: &Refit) {
    if refit.steps().is_empty() {
        return;
    }
    page.heading("What to do, the first thing first");
    for (step, place) in refit.steps().iter().zip(1..) {
        let because = step.because().unwrap_or_default();
        let source = match page.audience() {
            Audience::Fitter => source(step),
            _ => String::new(),
        };
        let words = format!("{} {because}{source}", step.text());
        page.item(2, &format!("{place}. "), &words);
    }
    page.explain();
}

fn source(step: &WorkStep) -> String {
    format!(" ({})", sourced(step.source(), step.strength()))
}

fn causes(page: &mut Page<'_>, refit: &Refit) {
    if refit.causes().is_empty() {
        if refit.is_held() {
            return;
        }
        page.heading("No likely cause");
        page.paragraph(
            2,
            "Nothing that was said points to the fit. Say what it does: hang, drop, squeeze, hurt or blister.",
        );
        return;
    }
    if refit.is_held() && page.audience() != Audience::Fitter {
        page.heading("What the fitter will look at afterwards");
        let names: Vec<String> = refit
            .causes()
            .iter()
            .take(CAUSES)
            .map(|cause| cause.said(page.audience()))
            .collect();
        page.paragraph(2, &format!("{}.", capitalised(&names.join("; "))));
        return;
    }
    page.heading(match refit.is_held() {
        true => "What is likely, for afterwards",
        false => "What is likely",
    });
    if page.audience() == Audience::Fitter {
        for cause in refit.causes() {
            page.subheading(&format!(
                "{}. {}",
                cause.place(),
                capitalised(&cause.said(page.audience()))
            ));
            fitter::lines(page, 4, cause.lines());
        }
        excluded(page, refit);
        return;
    }
    for cause in refit.causes().iter().take(CAUSES) {
        page.subheading(&format!(
            "{}. {}",
            cause.place(),
            capitalised(&cause.said(page.audience()))
        ));
        let side = |wanted: fn(i64) -> bool| {
            let lines = cause.lines().iter();
            lines
                .filter(move |line| wanted(line.points()))
                .take(REASONS)
        };
        said(page, "", side(|points| points > 0));
        said(page, "Against it: ", side(|points| points < 0));
        let schools = cause.lines().iter().filter(|line| line.role() == "dispute");
        said(page, "Others differ: ", schools.take(REASONS));
    }
    page.explain();
}

fn said<'a>(page: &mut Page<'_>, label: &str, lines: impl Iterator<Item = &'a Reason>) {
    for line in lines {
        let words = format!("{label}{}", line.text(page.audience()));
        page.item(4, "- ", &words);
    }
}

fn excluded(page: &mut Page<'_>, refit: &Refit) {
    for cause in refit.ruled_out() {
        let why: Vec<String> = cause
            .lines()
            .iter()
            .map(|line| format!("{} ({})", line.text(Audience::Fitter), line.rule()))
            .collect();
        let label = format!("Not {}: ", cause.said(Audience::Fitter));
        page.item(2, &label, &why.join(" "));
    }
}

fn changes(page: &mut Page<'_>, refit: &Refit) {
    let second = refit.causes().get(1);
    // What is held is no change to try; the answer document tells what it would touch.
    if refit.is_held() || refit.changes().is_empty() && second.is_none() {
        return;
    }
    if !refit.changes().is_empty() {
        page.heading("The change to try");
        for change in refit.changes() {
            self::change(page, change);
        }
    }
    if let Some(second) = second {
        let words = format!(
            "If that doesn't help, the next to look at: {}.",
            second.said(page.audience())
        );
        page.paragraph(2, &words);
    }
    page.explain();
}

fn change(page: &mut Page<'_>, change: &Change) {
    let number = change.number();
    let name = number.name().trim_start_matches("refit.").replace('_', " ");
    let now = match change.card_shop() {
        "" => String::new(),
        card => format!("{card} now. "),
    };
    let words = match (number.blank(), change.card()) {
        (Some(blank), _) => format!("{now}{blank}"),
        (None, card) if card == number.value() => format!("{now}It stays."),
        (None, _) => format!("{now}Try {}.{}", number.shop(), later(change)),
    };
    page.row(2, NAME, &capitalised(&name), &words);
    for caution in number.cautions() {
        page.item(4, "Caution: ", &caution_words(caution, page.audience()));
    }
    if page.audience() == Audience::Fitter {
        fitter::lines(page, 4, number.lines());
    } else if let Some(line) = number.lines().iter().find(|line| line.role() == "add") {
        page.item(4, "", line.text(page.audience()));
    }
}

/// The rest of a long way, a step each time.
fn later(change: &Change) -> String {
    let steps: Vec<&str> = change
        .later()
        .iter()
        .map(|(_, shop)| shop.as_str())
        .collect();
    match steps.as_slice() {
        [] => String::new(),
        [one] => format!(" Next time, if it helped: {one}."),
        many => format!(" Later, a step each time: {}.", many.join(", then ")),
    }
}

fn card(page: &mut Page<'_>, refit: &Refit) {
    if refit.past().is_empty() && refit.to_write().is_empty() {
        return;
    }
    page.heading(&match refit.ball() {
        Some(ball) => format!("The card of {ball}"),
        None => "The card".to_owned(),
    });
    for past in refit.past() {
        let text = match past.text() {
            "" => String::new(),
            text => format!(": {text}"),
        };
        page.item(2, "", &format!("{}  {}{text}", past.date(), past.kind()));
    }
    if !refit.to_write().is_empty() {
        page.paragraph(2, "To write today, with the date:");
    }
    for entry in refit.to_write() {
        let words = format!("____-__-__  {}: {}", entry.kind(), entry.text());
        page.item(2, "", &words);
    }
    page.explain();
}

/// A line each; the quotes in full are in the answer document and in `fit --used`.
fn offers(page: &mut Page<'_>, refit: &Refit) {
    let Some(offers) = refit.offers() else { return };
    page.heading("What it may come to");
    for offer in offers.list() {
        let words = format!("{}. {}", offer.bill().total(), offer.right_when());
        page.item(2, &format!("- {}: ", offer.title()), &words);
    }
    page.explain();
}

fn assumed(page: &mut Page<'_>, refit: &Refit) {
    let taken = refit.assumptions().iter().filter_map(|assumed| {
        let value = assumed.value()?;
        let shown = page.audience() == Audience::Fitter || !matches!(value, "no" | "0");
        shown.then(|| format!("{}: {value}. {}", about(assumed.fact()), assumed.reason()))
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
