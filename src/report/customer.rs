//! The customer's part: cautions, what was settled, the best ball and why, what it comes to.

use super::page::Page;
use crate::advice::{Advice, Assumed, Behind, Bill, Caution, Pick, Reason, Settled};
use crate::rules::{Audience, Severity};

/// Reasons shown for a ball, and as many against.
const REASONS: usize = 4;
/// Runners-up shown.
const RUNNERS_UP: usize = 2;
/// Near misses of the budget shown.
const NEAR_MISSES: usize = 2;
/// Up to this many assumptions are shown with their reasons; a longer list is shown without.
const ARGUED: usize = 3;
/// Columns of the quote.
const QUOTE: usize = 46;

/// Writes the part that is read to the customer.
pub(super) fn write(page: &mut Page<'_>, advice: &Advice) {
    if !advice.bowler().is_empty() {
        page.heading(&format!("For {}", advice.bowler()));
    }
    serious(page, advice);
    settled(page, advice);
    let pick = chosen(advice);
    match pick {
        Some(pick) => best(page, pick),
        None => none_left(page, advice),
    }
    if let Some(pick) = pick {
        mild(page, advice, pick);
        runners_up(page, advice, pick);
    }
    assumed(page, advice);
    quote(page, advice);
    if !advice.questions().is_empty() {
        page.heading("Still to ask");
        for question in advice.questions() {
            page.item(2, "- ", question);
        }
    }
    page.explain();
}

/// The customer's own choice if there is one, else the best ball.
pub(super) fn chosen(advice: &Advice) -> Option<&Pick> {
    let own = advice.picks().iter().find(|pick| pick.is_by_customer());
    own.or_else(|| advice.picks().first())
}

/// The action before the reason.
pub(super) fn caution_words(caution: &Caution, audience: Audience) -> String {
    let reason = caution.reason().text(audience);
    match caution.action(audience) {
        Some(action) => format!("{action} {reason}"),
        None => reason.to_owned(),
    }
}

fn serious(page: &mut Page<'_>, advice: &Advice) {
    let of_numbers = advice
        .spec()
        .numbers()
        .iter()
        .flat_map(|number| number.cautions());
    let mut shown: Vec<(&str, &str)> = Vec::new();
    for caution in advice.cautions().iter().chain(of_numbers) {
        let key = (caution.about(), caution.reason().rule());
        if caution.severity() != Severity::Serious || shown.contains(&key) {
            continue;
        }
        if shown.is_empty() {
            page.heading("First of all");
        }
        shown.push(key);
        let audience = page.audience();
        if let Some(action) = caution.action(audience) {
            page.urgent(action);
        }
        page.paragraph(2, caution.reason().text(audience));
    }
    page.explain();
}

fn settled(page: &mut Page<'_>, advice: &Advice) {
    // Surface and layout are the fitter's business; the customer hears about weight and grip.
    let stages: Vec<&Settled> = advice
        .settled()
        .iter()
        .filter(|s| matches!(s.stage(), "weight" | "grip"))
        .collect();
    if stages.is_empty() {
        return;
    }
    page.heading("Settled");
    for stage in stages {
        let why = stage_reasons(stage, page.audience());
        page.bold_item(2, &format!("{:<8}", capitalised(stage.stage())), &why);
    }
    page.explain();
}

/// What was chosen and the one or two reasons that weighed most.
pub(super) fn stage_reasons(stage: &Settled, audience: Audience) -> String {
    let mut words = capitalised(stage.value());
    words.push('.');
    if stage.is_by_fitter() {
        words.push_str(" The fitter has set this.");
    }
    let own = stage
        .lines()
        .iter()
        .filter(|line| line.points() > 0 && !line.is_common());
    for line in own.take(2) {
        words.push(' ');
        words.push_str(line.text(audience));
    }
    words
}

fn best(page: &mut Page<'_>, pick: &Pick) {
    let name = called(pick);
    if pick.is_by_customer() {
        page.heading(&format!("Your own choice: {name}"));
    } else {
        page.heading(&format!("The ball: {name}"));
    }
    page.paragraph(
        2,
        &format!(
            "{} out the door. Made by {}. {} cover; {}.",
            pick.out_the_door(),
            pick.maker(),
            capitalised(pick.cover()),
            pick.colours()
        ),
    );
    reasons(page, "For it", &pick.reasons_for(REASONS));
    reasons(page, "Against it", &pick.reasons_against(REASONS));
    if let (true, Some(behind)) = (pick.is_by_customer(), pick.behind()) {
        page.paragraph(2, &behind_words(behind, page.audience()));
    }
    page.explain();
}

fn reasons(page: &mut Page<'_>, title: &str, lines: &[&Reason]) {
    if lines.is_empty() {
        return;
    }
    page.subheading(title);
    for line in lines {
        page.item(4, "- ", line.text(page.audience()));
    }
}

fn none_left(page: &mut Page<'_>, advice: &Advice) {
    page.heading("No ball on the shelf is right");
    let mut told: Vec<&str> = Vec::new();
    for out in advice.ruled_out() {
        for line in out.lines() {
            if told.len() < REASONS && !told.contains(&line.rule()) {
                told.push(line.rule());
                page.item(
                    2,
                    "- ",
                    &format!("{}: {}", out.name(), line.text(page.audience())),
                );
            }
        }
    }
    page.explain();
}

fn mild(page: &mut Page<'_>, advice: &Advice, pick: &Pick) {
    let model = pick.ball().split('@').next().unwrap_or_default();
    let cautions: Vec<&Caution> = advice
        .cautions()
        .iter()
        .filter(|caution| caution.severity() == Severity::Mild)
        .filter(|caution| ["person", pick.ball(), model].contains(&caution.about()))
        .collect();
    if cautions.is_empty() {
        return;
    }
    page.heading("Keep in mind");
    for caution in cautions {
        page.item(2, "- ", &caution_words(caution, page.audience()));
    }
    page.explain();
}

fn runners_up(page: &mut Page<'_>, advice: &Advice, pick: &Pick) {
    let others = advice
        .picks()
        .iter()
        .filter(|other| other.ball() != pick.ball());
    let others: Vec<&Pick> = others.take(RUNNERS_UP).collect();
    if others.is_empty() {
        return;
    }
    let ahead = others.iter().any(|other| other.place() < pick.place());
    page.heading(if ahead {
        "What our reasons put first"
    } else {
        "Next best"
    });
    for other in others {
        let mut words = format!("{}, {}.", called(other), other.out_the_door());
        if let Some(behind) = other.behind() {
            words.push(' ');
            words.push_str(&behind_words(behind, page.audience()));
        }
        page.item(2, &format!("{}. ", other.place()), &words);
    }
    page.explain();
}

fn behind_words(behind: &Behind, audience: Audience) -> String {
    let line = behind.line.text(audience);
    if behind.lacks {
        format!("What decided for the first: {line}")
    } else {
        format!("What put it behind: {line}")
    }
}

fn assumed(page: &mut Page<'_>, advice: &Advice) {
    let (taken, needed): (Vec<&Assumed>, Vec<&Assumed>) = advice
        .assumptions()
        .iter()
        .partition(|assumed| assumed.value().is_some());
    if taken.is_empty() && needed.is_empty() {
        return;
    }
    page.heading("Assumed, because we didn't know");
    if page.audience() == Audience::Fitter {
        for assumed in taken.iter().chain(&needed) {
            let value = assumed.value().unwrap_or("can't be judged without");
            let words = format!("{value}. {}", assumed.reason());
            let source = sourced(assumed.source(), assumed.strength());
            page.item(
                2,
                &format!("{}: ", assumed.fact()),
                &format!("{words} ({source})"),
            );
        }
        return;
    }
    if taken.len() <= ARGUED {
        for assumed in &taken {
            let value = assumed.value().unwrap_or_default();
            let words = format!("{}: {value}. {}", bare(assumed.meaning()), assumed.reason());
            page.item(2, "- ", &words);
        }
    } else {
        let all = taken.iter().map(|assumed| {
            format!(
                "{}: {}",
                bare(assumed.meaning()),
                assumed.value().unwrap_or_default()
            )
        });
        page.paragraph(2, &format!("{}.", all.collect::<Vec<_>>().join("; ")));
    }
    if !needed.is_empty() {
        let all: Vec<&str> = needed
            .iter()
            .map(|assumed| bare(assumed.meaning()))
            .collect();
        page.paragraph(
            2,
            &format!("Not assumed, only measured or told: {}.", all.join("; ")),
        );
    }
    page.explain();
}

fn quote(page: &mut Page<'_>, advice: &Advice) {
    let misses: Vec<String> = advice
        .near_misses()
        .iter()
        .take(NEAR_MISSES)
        .map(|miss| {
            format!(
                "{}, {}: {} over.",
                miss.name(),
                miss.out_the_door(),
                miss.over()
            )
        })
        .collect();
    if advice.bill().is_none() && misses.is_empty() {
        return;
    }
    page.heading("What it comes to");
    if let Some(bill) = advice.bill() {
        bill_lines(page, bill);
    }
    if !misses.is_empty() {
        page.item(2, "Just over your budget: ", &misses.join(" "));
    }
    page.explain();
}

fn bill_lines(page: &mut Page<'_>, bill: &Bill) {
    for (label, amount) in bill.lines() {
        page.amount(QUOTE, label, amount);
    }
    page.amount(QUOTE, "Tax", bill.tax());
    page.amount(QUOTE, "Out the door", bill.total());
    let mut notes = vec![bill.ready_when()];
    notes.extend(bill.notes().iter().map(String::as_str));
    notes.retain(|note| !note.is_empty());
    if !notes.is_empty() {
        page.paragraph(2, &notes.join(" "));
    }
}

/// `Daisy, 12 lb`; the name may say the weight already.
pub(super) fn called(pick: &Pick) -> String {
    if pick.name().ends_with(pick.weight()) {
        pick.name().to_owned()
    } else {
        format!("{}, {}", pick.name(), pick.weight())
    }
}

/// Source and strength, said once where they are the same words.
pub(super) fn sourced(source: &str, strength: &str) -> String {
    if source.is_empty() || source == strength {
        strength.to_owned()
    } else {
        format!("{source}; {strength}")
    }
}

/// A sentence without its full stop, to stand before a colon.
fn bare(sentence: &str) -> &str {
    sentence.trim_end_matches('.')
}

fn capitalised(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}
