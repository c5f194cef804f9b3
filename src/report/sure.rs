//! How sure a pick is, as people read it: one plain sentence, or every range.

use super::page::Page;
use super::whatif::sentence;
use crate::advice::{Advice, HowSure, Over, Picked, SureRange, without_unit};
use crate::rules::Audience;

/// The one sentence for a customer; nothing where nothing measured matters.
pub(super) fn say(page: &mut Page<'_>, advice: &Advice) {
    let Some(sure) = advice.how_sure().filter(|_| !advice.picks().is_empty()) else {
        return;
    };
    if page.audience() == Audience::Fitter {
        return;
    }
    let now = Picked::of(advice);
    if let Some(words) = told(sure, &now, page.audience()) {
        page.paragraph(2, &words);
    }
}

fn told(sure: &HowSure, now: &Picked, audience: Audience) -> Option<String> {
    if let Over::Breaks { picked, .. } = sure.over() {
        let then = match sure.over().phrase(audience) {
            Some(phrase) => {
                let words = sentence(&uncapitalised(phrase), picked, &now.changed(picked));
                format!(": {words}")
            }
            None => match picked.name().filter(|name| now.name() != Some(name)) {
                Some(name) => format!(", and then we might pick {name}."),
                None => ", and that might change what we say.".to_owned(),
            },
        };
        return Some(format!("Your numbers may be a little off{then}"));
    }
    let range = sure.narrowest_for_customers()?;
    Some(format!(
        "This would still be first if {} were anything {}.",
        range.called(),
        span(range, range.practical()?)
    ))
}

fn uncapitalised(words: &str) -> String {
    let mut letters = words.chars();
    let first = letters.next().map(char::to_lowercase);
    first.into_iter().flatten().chain(letters).collect()
}

/// `from 13 to 16 mph`.
fn span(range: &SureRange, [lowest, highest]: [&str; 2]) -> String {
    match (range.turns_below(), range.turns_above()) {
        (true, true) => format!("from {} to {highest}", without_unit(lowest, highest)),
        (true, false) => format!("from {lowest} up"),
        (false, true) => format!("up to {highest}"),
        (false, false) => "at all".to_owned(),
    }
}

/// Every range, for the fitter.
pub(super) fn ranges(page: &mut Page<'_>, advice: &Advice) {
    let Some(sure) = advice.how_sure().filter(|sure| !sure.ranges().is_empty()) else {
        return;
    };
    page.heading("How sure");
    if sure.narrowest().is_none() {
        page.paragraph(2, "Nothing in the measured numbers changes the pick.");
    }
    for range in sure.ranges() {
        let stated = range.give_or_take();
        let stated = stated.map(|(_, width)| format!(", give or take {width}"));
        let words = format!(
            "{}{}; the same pick {}.",
            range.value().1,
            stated.unwrap_or_default(),
            if range.turns_below() || range.turns_above() {
                span(range, [range.lowest().1, range.highest().1])
            } else {
                "whatever it is".to_owned()
            }
        );
        page.item(2, &format!("{}: ", range.fact()), &words);
    }
    match sure.over() {
        Over::NothingStated => {}
        Over::Stays => page.paragraph(2, "The pick stays over all that is given or taken."),
        Over::NotSettled(work) => page.paragraph(
            2,
            &format!("Over all that is given or taken: not settled within {work} looks."),
        ),
        Over::Breaks { steps, picked, .. } => {
            let steps: Vec<String> = steps
                .iter()
                .map(|step| format!("{} {}", step.fact(), step.shown()))
                .collect();
            let ball = picked.ball().unwrap_or("no ball");
            let words = format!(
                "Within what is given or taken the pick changes: {} gives {ball}.",
                steps.join(", ")
            );
            page.paragraph(2, &words);
        }
    }
}
