//! An upgrade path as people read it: what comes first, what to do before buying, the next ball or nothing yet, the balls owned.

mod next;

use super::customer::{self, about, caution_words, sourced};
use super::fitter;
use super::page::{Page, capitalised};
use crate::advice::{BallGap, Caution, Does, OwnedNow, Upgrade, WorkStep};
use crate::notation::Notation;
use crate::rules::{Audience, Severity};

/// Reasons shown for a ball, and as many for a gap.
const REASONS: usize = 3;
/// Balls owned that are shown one by one to those who don't drill.
const OWNED: usize = 8;
/// Pairs shown that do the same.
const PAIRS: usize = 3;
/// Columns for the name of a ball.
const NAME: usize = 16;

/// Writes the whole page.
pub(super) fn write(page: &mut Page<'_>, upgrade: &Upgrade) {
    if !upgrade.bowler().is_empty() {
        page.heading(&format!("For {}", upgrade.bowler()));
    }
    serious(page, upgrade);
    if upgrade.owned().is_empty() && !upgrade.is_held() {
        page.heading("No ball of your own yet");
        page.paragraph(
            2,
            "This is about the balls you own. If you own some, tell us which. If not, ask which first ball suits you (`advise`).",
        );
    } else if !upgrade.is_held() {
        before(page, upgrade);
        match upgrade.next().is_empty() {
            true => nothing(page, upgrade),
            false => {
                for (place, next) in upgrade.next().iter().enumerate() {
                    next::ball(page, next, place == 0);
                }
            }
        }
        if page.audience() == Audience::Fitter {
            gaps(page, upgrade);
        }
    }
    owned(page, upgrade);
    mild(page, upgrade);
    assumed(page, upgrade);
    if !upgrade.questions().is_empty() {
        page.heading("Still to ask");
        for question in upgrade.questions() {
            page.item(2, "- ", question);
        }
    }
    page.explain();
}

fn serious(page: &mut Page<'_>, upgrade: &Upgrade) {
    let serious: Vec<&Caution> = of(upgrade, Severity::Serious).collect();
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
    if upgrade.is_held() {
        page.paragraph(2, "No ball is sold until that is settled.");
    }
    page.explain();
}

fn mild(page: &mut Page<'_>, upgrade: &Upgrade) {
    let mild: Vec<&Caution> = of(upgrade, Severity::Mild).collect();
    if mild.is_empty() {
        return;
    }
    page.heading("Keep in mind");
    for caution in mild {
        page.item(2, "- ", &caution_words(caution, page.audience()));
    }
    page.explain();
}

fn of(upgrade: &Upgrade, severity: Severity) -> impl Iterator<Item = &Caution> {
    let cautions = upgrade.cautions().iter();
    cautions.filter(move |caution| caution.severity() == severity)
}

/// A step with its reason, and for the fitter its source.
fn step_words(page: &Page<'_>, step: &WorkStep) -> String {
    let because = step.because().unwrap_or_default();
    let source = match page.audience() {
        Audience::Fitter => format!(" ({})", sourced(step.source(), step.strength())),
        _ => String::new(),
    };
    format!("{} {because}{source}", step.text())
}

fn before(page: &mut Page<'_>, upgrade: &Upgrade) {
    if upgrade.before().is_empty() {
        return;
    }
    page.heading(match upgrade.next().is_empty() {
        true => "What to do instead of buying",
        false => "Before you buy anything",
    });
    for (step, place) in upgrade.before().iter().zip(1..) {
        let words = step_words(page, step);
        page.item(2, &format!("{place}. "), &words);
    }
    if let (Some(bill), Audience::Fitter) = (upgrade.fingertip(), page.audience()) {
        page.subheading("An owned ball drilled again for fingertip");
        customer::amounts(page, bill);
    }
    page.explain();
}

fn nothing(page: &mut Page<'_>, upgrade: &Upgrade) {
    page.heading("Nothing yet: keep what you have");
    let enough = upgrade
        .gaps()
        .iter()
        .find(|gap| gap.word() == "nothing_yet");
    for line in enough.iter().flat_map(|gap| gap.lines()).take(REASONS) {
        page.item(2, "- ", line.text(page.audience()));
    }
    for step in upgrade.wait_for() {
        let words = step_words(page, step);
        page.paragraph(2, &words);
    }
    page.explain();
}

/// All gaps with their reasons, for the fitter.
fn gaps(page: &mut Page<'_>, upgrade: &Upgrade) {
    if !upgrade.settled().is_empty() {
        page.heading("Settled for whatever comes next");
    }
    for stage in upgrade.settled() {
        let words = customer::stage_reasons(stage, page.audience());
        page.row(2, NAME, &capitalised(stage.stage()), &words);
    }
    page.heading("What speaks for each gap");
    for gap in upgrade.gaps() {
        gap_lines(page, gap);
    }
    for gap in upgrade.ruled_out() {
        let why: Vec<String> = gap
            .lines()
            .iter()
            .map(|line| format!("{} ({})", line.text(Audience::Fitter), line.rule()))
            .collect();
        let label = format!("Not {}: ", gap.said(Audience::Fitter));
        page.item(2, &label, &why.join(" "));
    }
}

fn gap_lines(page: &mut Page<'_>, gap: &BallGap) {
    let total = Notation::Points.write(gap.total());
    let title = format!(
        "{}. {} ({total})",
        gap.place(),
        capitalised(gap.said(Audience::Fitter))
    );
    page.subheading(&title);
    fitter::lines(page, 4, gap.lines());
}

fn owned(page: &mut Page<'_>, upgrade: &Upgrade) {
    let held_back = upgrade.is_held() && page.audience() != Audience::Fitter;
    if upgrade.owned().is_empty() || held_back {
        return;
    }
    page.heading(&match upgrade.lane() {
        Some(lane) => format!("Your balls, on {lane}"),
        None => "Your balls".to_owned(),
    });
    let shown = match page.audience() {
        Audience::Fitter => upgrade.owned().len(),
        _ => OWNED,
    };
    for ball in upgrade.owned().iter().take(shown) {
        let words = owned_words(ball, page.audience());
        page.row(2, NAME, &capitalised(ball.name()), &words);
    }
    if upgrade.owned().len() > shown {
        let more = upgrade.owned().len() - shown;
        page.paragraph(2, &format!("And {more} more."));
    }
    for pair in upgrade.doubled().iter().take(PAIRS) {
        let [one, other] = pair.names();
        let how = match pair.apart() {
            Some(_) => "do the same on the lane for you",
            None => "have the same cover and surface, so they should do the same",
        };
        page.item(2, "- ", &format!("{} and {other} {how}.", capitalised(one)));
    }
    if upgrade.doubled().len() > PAIRS {
        let more = upgrade.doubled().len() - PAIRS;
        page.paragraph(2, &format!("And {more} more pairs that do the same."));
    }
    if upgrade.lane().is_none() {
        page.paragraph(
            2,
            "Told by cover and surface alone. What a ball does for you depends on your speed and your revs.",
        );
    } else if upgrade.owned().iter().any(|ball| ball.does().is_some()) {
        page.paragraph(
            2,
            "These are sums, not promises: the oil moves while you bowl.",
        );
    }
    page.explain();
}

fn owned_words(ball: &OwnedNow, audience: Audience) -> String {
    let mut words = capitalised(ball.role());
    if !ball.about().is_empty() && audience != Audience::Newcomer {
        words = format!("{words}. {}", capitalised(ball.about()));
    }
    words.push('.');
    if let Some(does) = ball.does() {
        words.push(' ');
        words.push_str(&does_words(does, audience));
    }
    words
}

fn does_words(does: &Does, audience: Audience) -> String {
    let done = does.percent_done();
    let finished = match does.is_unfinished() {
        true => {
            format!("Hasn't finished hooking at the pins; about {done}% of its turn is done there.")
        }
        false => format!(
            "Has finished hooking after about {} ft.",
            (does.tenths_of_feet() + 5) / 10
        ),
    };
    match audience {
        Audience::Fitter => format!(
            "{finished} {} to the side, entry {}, {done}% done.",
            Notation::Boards.write(does.tenths_of_boards()),
            Notation::Angle.write(does.tenths_of_degrees())
        ),
        _ => finished,
    }
}

fn assumed(page: &mut Page<'_>, upgrade: &Upgrade) {
    let taken = upgrade.assumptions().iter().filter_map(|assumed| {
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
