//! The customer's part: cautions, what was settled, the best ball and why, what it comes to.

use super::page::{Page, capitalised};
use super::sure;
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
/// Columns for the name of a stage.
const STAGE: usize = 8;
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
    mild(page, advice, pick);
    match (pick, advice.offers()) {
        (Some(pick), _) => {
            best(page, pick);
            sure::say(page, advice);
            runners_up(page, advice, pick);
        }
        // The ball is there already.
        (None, Some(_)) => {}
        (None, None) => none_left(page, advice),
    }
    assumed(page, advice);
    // The quotes about an old ball stand side by side on their own.
    if advice.offers().is_none() {
        quote(page, advice);
    }
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
        let reason = caution.reason().text(audience);
        match caution.action(audience) {
            Some(action) => {
                page.urgent(action);
                page.paragraph(4, reason);
            }
            None => page.urgent(reason),
        }
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
        page.row(2, STAGE, &capitalised(stage.stage()), &why);
    }
    page.explain();
}

/// What was chosen and the one or two reasons that weighed most.
pub(super) fn stage_reasons(stage: &Settled, audience: Audience) -> String {
    let mut words = capitalised(stage.value());
    words.push('.');
    if stage.is_by_fitter() {
        words.push_str(" This was fixed beforehand.");
    }
    let own = stage
        .lines()
        .iter()
        .filter(|line| line.points() > 0 && !line.is_common());
    let against = stage.not_more();
    for line in own.take(if against.is_some() { 1 } else { 2 }) {
        words.push(' ');
        words.push_str(line.text(audience));
    }
    if let Some((name, line)) = against {
        words.push_str(&format!(" Why not {name}? {}", line.text(audience)));
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
    shared(page, pick);
    reasons(page, "Against it", &pick.reasons_against(REASONS));
    if let (true, Some(behind)) = (pick.is_by_customer(), pick.behind()) {
        page.paragraph(2, &behind_words(behind, page.audience()));
    }
    page.explain();
}

/// What speaks for the ball and for every other that is left: no reason to take this one, yet worth knowing where it weighs
/// more than anything that tells them apart.
fn shared(page: &mut Page<'_>, pick: &Pick) {
    let own = pick.reasons_for(1).first().map_or(0, |line| line.points());
    let common = pick
        .lines()
        .iter()
        .find(|line| line.is_common() && line.points() > own);
    if let Some(line) = common {
        page.subheading("True of every ball left");
        page.item(4, "- ", line.text(page.audience()));
    }
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
    if !advice.near_misses().is_empty() {
        page.paragraph(2, "Only the budget stands in the way of these:");
        near_misses(page, advice);
        page.explain();
        return;
    }
    let mut told: Vec<&str> = Vec::new();
    for out in advice.ruled_out() {
        for line in out.lines() {
            if told.len() < REASONS && !told.contains(&line.rule()) {
                told.push(line.rule());
                let words = format!("{}. {}", out.name(), line.text(page.audience()));
                page.item(2, "- ", &words);
            }
        }
    }
    page.explain();
}

fn near_misses(page: &mut Page<'_>, advice: &Advice) {
    for miss in advice.near_misses().iter().take(NEAR_MISSES) {
        let words = format!(
            "{}, {}: {} over.",
            miss.name(),
            miss.out_the_door(),
            miss.over()
        );
        page.item(4, "- ", &words);
    }
}

fn mild(page: &mut Page<'_>, advice: &Advice, pick: Option<&Pick>) {
    let ball = pick.map(Pick::ball).unwrap_or_default();
    let model = ball.split('@').next().unwrap_or_default();
    let cautions: Vec<&Caution> = advice
        .cautions()
        .iter()
        .filter(|caution| caution.severity() == Severity::Mild)
        .filter(|caution| ["person", "weight", "grip", ball, model].contains(&caution.about()))
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
        } else if other.place() > pick.place() {
            words.push_str(" Just as good by our reasons; the first one costs no more.");
        }
        page.item(2, &format!("{}. ", other.place()), &words);
    }
    page.explain();
}

/// The lead-in is a sentence of its own, so that no reason grows too long by it.
fn behind_words(behind: &Behind, audience: Audience) -> String {
    let line = behind.line.text(audience);
    if behind.lacks {
        format!("The first has the edge. {line}")
    } else {
        format!("It falls behind the first. {line}")
    }
}

/// Facts of the release that only somebody who watches it can tell: nothing for a customer to put right.
const SEEN_BY_OTHERS: [&str; 2] = ["bowler.rotation", "bowler.tilt"];

/// What was taken for granted and had a say, for the customer to put right. That something ordinary is *not* so (the ball is no
/// present) needs no word, and what is blank for want of a measurement says so itself. How a ball leaves the hand is told only to those
/// who may know it of themselves: see [`SEEN_BY_OTHERS`].
fn assumed(page: &mut Page<'_>, advice: &Advice) {
    let taken: Vec<(&Assumed, &str)> = advice
        .assumptions()
        .iter()
        .filter(|assumed| assumed.matters())
        .filter(|assumed| {
            page.audience() != Audience::Newcomer || !SEEN_BY_OTHERS.contains(&assumed.fact())
        })
        .filter_map(|assumed| Some((assumed, assumed.value()?)))
        .filter(|(_, value)| !matches!(*value, "no" | "0"))
        .collect();
    if taken.is_empty() || page.audience() == Audience::Fitter {
        return;
    }
    page.heading("Assumed, because we didn't know");
    if taken.len() <= ARGUED {
        for (assumed, value) in &taken {
            let words = format!("{}: {value}. {}", about(assumed.fact()), assumed.reason());
            page.item(2, "- ", &capitalised(&words));
        }
    } else {
        let all = taken
            .iter()
            .map(|(assumed, value)| format!("{}: {value}", about(assumed.fact())));
        let all = all.collect::<Vec<_>>().join("; ");
        page.paragraph(2, &format!("{}.", capitalised(&all)));
    }
    page.explain();
}

fn quote(page: &mut Page<'_>, advice: &Advice) {
    let Some(bill) = advice.bill() else { return };
    page.heading("What it comes to");
    amounts(page, bill);
    let mut notes = vec![bill.ready_when()];
    notes.extend(bill.notes().iter().map(String::as_str));
    notes.retain(|note| !note.is_empty());
    if !notes.is_empty() {
        page.paragraph(2, &notes.join(" "));
    }
    if !advice.near_misses().is_empty() {
        page.paragraph(2, "Just over your budget:");
        near_misses(page, advice);
    }
    page.explain();
}

/// Each line of a bill, the tax and the total.
pub(super) fn amounts(page: &mut Page<'_>, bill: &Bill) {
    for (label, amount) in bill.lines() {
        page.amount(QUOTE, label, amount);
    }
    page.amount(QUOTE, "Tax", bill.tax());
    page.amount(QUOTE, "Out the door", bill.total());
}

/// `Daisy, 12 lb`; the name may say the weight already.
pub(super) fn called(pick: &Pick) -> String {
    if pick.name().ends_with(pick.weight()) {
        pick.name().to_owned()
    } else {
        format!("{}, {}", pick.name(), pick.weight())
    }
}

/// Source and strength; a source such as `common practice` is its own strength.
pub(super) fn sourced(source: &str, strength: &str) -> String {
    if source.is_empty() {
        strength.to_owned()
    } else if source.starts_with(strength) {
        source.to_owned()
    } else {
        format!("{source}; {strength}")
    }
}

/// What a fact is about, in words: `bowler.ball_now` is the ball now, `owned.covers` the owned covers.
pub(super) fn about(fact: &str) -> String {
    fact.trim_start_matches("bowler.").replace(['.', '_'], " ")
}
