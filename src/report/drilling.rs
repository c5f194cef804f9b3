//! The computed ball in the fitter's part: holes, walls, layout, balance, core, what the rule book says.

use super::page::{Page, capitalised};
use crate::advice::{
    CoreChange, Drilling, PlannedHole, PlannedLayout, PlannedWeb, Predicted, Refusal,
};
use crate::fitting::layout::is_high_flare;
use crate::fitting::sixty_fourths;
use crate::notation::Notation;
use crate::rules::Audience;
use crate::standards::{Finding, Verdict};

/// Columns for the name of a hole, a weight or a way of stating a layout.
const NAME: usize = 29;
/// A wall of so many inches is far from breaking: where it would break is nobody's question.
const ROOMY: f64 = 0.5;

/// Writes what was computed; what may not be drilled stands first. Only the fitter reads more than refusals, broken limits and
/// the weights of a ball that may be drilled.
pub(super) fn write(page: &mut Page<'_>, drilling: &Drilling) {
    let fitter = page.audience() == Audience::Fitter;
    refusals(page, drilling.refusals(), fitter);
    if fitter && !drilling.holes().is_empty() {
        page.heading("The drilled ball, computed");
        page.paragraph(2, &ground(drilling));
        for hole in drilling.holes() {
            self::hole(page, hole, drilling.left_hand());
        }
        webs(page, drilling.webs());
    }
    if let Some(layout) = drilling.layout().as_ref().filter(|_| fitter) {
        self::layout(page, layout);
    }
    // Nobody but the fitter expects weights of what isn't drilled.
    let expected = fitter || !drilling.is_refused();
    if let Some(balance) = drilling.balance().as_ref().filter(|_| expected) {
        self::balance(page, balance, drilling.left_hand());
    }
    if let Some(core) = drilling.core().as_ref().filter(|_| fitter) {
        self::core(page, core);
    }
    findings(page, drilling);
    for open in drilling.open().iter().filter(|_| fitter) {
        page.item(2, "Open: ", open);
    }
}

fn refusals(page: &mut Page<'_>, refusals: &[Refusal], fitter: bool) {
    if refusals.is_empty() {
        return;
    }
    page.heading("Not to be drilled as it stands");
    for refusal in refusals {
        page.urgent(refusal.what());
        match refusal.mends() {
            [] if !fitter => {
                page.paragraph(4, "It takes more than one change; the fitter sees to it.")
            }
            [] => page.paragraph(4, "No single change mends it; change two."),
            _ if !fitter => page.paragraph(4, "One change can mend it; the fitter knows which."),
            [only] => page.paragraph(4, only),
            mends => {
                page.paragraph(4, "Any one of these mends it:");
                for mend in mends {
                    page.item(4, "- ", mend);
                }
            }
        }
    }
}

/// From where places count, and how much wall there must be.
fn ground(drilling: &Drilling) -> String {
    let mut limits = drilling.webs().iter().map(PlannedWeb::limit);
    let walls = limits.find(|limit| limit.is_finite()).map(|least| {
        format!(
            " Walls are read to the nearest 1/64 in over the whole depth; {} is the least.",
            written(least)
        )
    });
    format!(
        "Places count from the grip centre.{}",
        walls.unwrap_or_default()
    )
}

fn hole(page: &mut Page<'_>, hole: &PlannedHole, left_hand: bool) {
    let (over, up) = hole.place();
    let bore = match hole.oval() {
        Some((wide, narrow, angle)) => format!(
            "oval bore {} by {}, wide at {:.0} degrees",
            written(wide),
            written(narrow),
            // Half a turn: an oval has two ends.
            if left_hand { 180.0 - angle } else { angle }
        ),
        None => format!("bore {}", written(hole.bore())),
    };
    let wall = hole.wall().map(|wall| format!(" (wall {})", written(wall)));
    let outside = hole
        .outside()
        .map(|size| {
            let wall = wall.unwrap_or_default();
            format!(", hole as cut {}{wall}", written(size))
        })
        .unwrap_or_default();
    let depth = match hole.depth_known() {
        true => format!("{} deep", written(hole.depth())),
        false => "its depth still to be measured".to_owned(),
    };
    let edge = match hole.oval() {
        Some(_) => "; the span runs to the oval's edge",
        None => "",
    };
    let words = format!(
        "{bore}{outside}, {depth}{edge}; its middle lies {} and {}.",
        way(
            turned(over, left_hand),
            ["right", "left"],
            "on the centreline"
        ),
        way(up, ["up", "down"], "on the midline"),
    );
    row(page, hole.name(), &words);
    for line in hole.jig() {
        page.item(4, "- ", line);
    }
    if let Some(lateral) = hole.parallel_lateral() {
        let words = format!(
            "With lateral zero where both finger holes run side by side: {}.",
            Notation::LateralPitch.write(sixty_fourths(turned(lateral, left_hand)))
        );
        page.item(4, "- ", &words);
    }
}

/// Every new wall; of those to plugs, which are filled, only what comes near one.
fn webs(page: &mut Page<'_>, webs: &[PlannedWeb]) {
    let told = |web: &&PlannedWeb| web.limit().is_finite() || web.least() < ROOMY;
    for web in webs.iter().filter(told) {
        self::web(page, web);
    }
    if !webs.iter().all(|web| told(&web)) {
        let words = format!(
            "Every other plug of an old hole stays at least {} away.",
            written(ROOMY)
        );
        page.paragraph(2, &words);
    }
}

fn web(page: &mut Page<'_>, web: &PlannedWeb) {
    let meets = match web.breaks_at() {
        Some(depth) if web.least() < ROOMY => format!("; at {} they would meet", decimal(depth)),
        _ => String::new(),
    };
    let deep = decimal(web.at_depth());
    let words = if web.least() < 0.0 {
        format!("They run into each other, {deep} down.")
    } else {
        let least = decimal(web.least());
        format!("{least} of wall, thinnest {deep} down{meets}.")
    };
    row(page, web.between(), &words);
}

/// The points themselves are told by the ways of stating the layout and by the steps.
fn layout(page: &mut Page<'_>, layout: &PlannedLayout) {
    page.heading(&format!("Layout: {}", layout.kind()));
    for (label, numbers) in layout.stated() {
        row(page, label, numbers);
    }
    for (index, step) in layout.steps().iter().enumerate() {
        page.item(2, &format!("{:>2}. ", index + 1), step.text());
    }
    for words in layout.track() {
        page.item(2, "- ", words);
    }
}

fn balance(page: &mut Page<'_>, balance: &Predicted, left_hand: bool) {
    let fitter = page.audience() == Audience::Fitter;
    page.heading("Weights to expect after drilling");
    if fitter {
        page.item(2, "The ball: ", balance.unit());
        for line in balance.because() {
            page.paragraph(4, line);
        }
    }
    row(page, "whole ball", &format!("{:.2} lb", balance.pounds()));
    for (name, ounces, words) in [
        ("top or bottom", balance.top(), ["top", "bottom"]),
        ("side", turned(balance.side(), left_hand), ["right", "left"]),
        ("finger or thumb", balance.finger(), ["finger", "thumb"]),
    ] {
        row(page, name, &weight(ounces, words));
    }
    if !fitter {
        return;
    }
    if let Some(margin) = balance.margin() {
        let words = if margin < 0.0 {
            format!("{:.2} oz past it", -margin)
        } else {
            format!("{margin:.2} oz to spare")
        };
        row(page, "to the nearest limit", &words);
    }
    let words = format!(
        "{:.2} oz drilled out, {:.2} oz put back; the mass centre lies {:.3} in from the middle.",
        balance.out(),
        balance.back(),
        balance.offset()
    );
    page.paragraph(2, &words);
    page.paragraph(2, "The prediction rests on:");
    for (setting, value) in balance.settings() {
        page.item(4, "- ", &format!("{}: {value}", capitalised(setting)));
    }
}

fn core(page: &mut Page<'_>, core: &CoreChange) {
    page.heading("How the core turns");
    for (name, (rg, differential, intermediate)) in [
        ("before drilling", core.before()),
        ("after drilling", core.after()),
    ] {
        let words = format!(
            "low RG {rg:.3} in, differential {differential:.3} in, intermediate {intermediate:.3} in"
        );
        row(page, name, &words);
    }
    let (_, differential, _) = core.after();
    if is_high_flare(differential).unwrap_or(false) {
        let words = "In print such a differential is called high flare: a word, not a promise.";
        page.paragraph(2, words);
    }
    if let Some(moved) = core.moved() {
        let words = format!(
            "The axis of the low RG, under the pin before, moves {} along the ball.",
            decimal(moved)
        );
        page.paragraph(2, &words);
    }
}

/// Broken limits to everybody; what to ask to whoever bowls in leagues; what is kept to the fitter, in brief.
fn findings(page: &mut Page<'_>, drilling: &Drilling) {
    let findings = drilling.findings();
    let of = |verdict| {
        let such = findings.iter();
        such.filter(move |finding| finding.verdict() == verdict)
    };
    let audience = page.audience();
    if findings.is_empty() || audience == Audience::Newcomer && of(Verdict::Fail).next().is_none() {
        return;
    }
    let body = drilling.body().name();
    page.heading(&format!("What the rule book of {body} says"));
    for finding in of(Verdict::Fail) {
        let about = capitalised(finding.about());
        let clause = match audience {
            Audience::Fitter => format!(" ({})", finding.clause()),
            _ => String::new(),
        };
        let words = format!("{about}. {}{clause}", finding.says());
        page.item(2, "Broken: ", &words);
    }
    match audience {
        Audience::Newcomer => {}
        Audience::League => {
            let mut about: Vec<&str> = of(Verdict::Ask).map(Finding::about).collect();
            about.dedup();
            if !about.is_empty() {
                page.item(2, "To ask: ", &format!("{}.", about.join(", ")));
            }
        }
        Audience::Fitter => {
            for (question, about) in questions(of(Verdict::Ask)) {
                let about = capitalised(&about.join(", "));
                page.item(2, "Ask: ", &format!("{about}. {question}"));
            }
            kept(page, of(Verdict::Pass).collect());
        }
    }
    page.paragraph(
        2,
        "The governing body's current rule book decides; check it before the ball is used in competition.",
    );
}

/// Each question once, with everything that it is asked about and what was found of it.
fn questions<'f>(asked: impl Iterator<Item = &'f Finding>) -> Vec<(&'f str, Vec<String>)> {
    let mut questions: Vec<(&str, Vec<String>)> = Vec::new();
    for finding in asked {
        let found = finding.says().strip_prefix("It is ");
        let (about, question) = match found.and_then(|found| found.split_once(". ")) {
            Some((value, rest)) => (format!("{} ({value})", finding.about()), rest),
            None => (finding.about().to_owned(), finding.says()),
        };
        match questions.iter_mut().find(|(says, _)| *says == question) {
            Some((_, all)) => all.push(about),
            None => questions.push((question, vec![about])),
        }
    }
    questions
}

/// What is kept, weights with the room that remains; what lies close to its limit, in full.
fn kept(page: &mut Page<'_>, kept: Vec<&Finding>) {
    for finding in kept.iter().filter(|finding| finding.is_close()) {
        let about = capitalised(finding.about());
        let words = format!("{about}. {} ({})", finding.says(), finding.clause());
        page.item(2, "Close: ", &words);
    }
    let brief = |finding: &&&Finding| match finding.distance() {
        Some(distance) if finding.id().starts_with("static") => {
            format!("{} ({distance})", finding.about())
        }
        _ => finding.about().to_owned(),
    };
    let rest: Vec<String> = kept
        .iter()
        .filter(|finding| !finding.is_close())
        .map(|finding| brief(&finding))
        .collect();
    if !rest.is_empty() {
        let words = format!("{}. The JSON answer names each clause.", rest.join(", "));
        page.item(2, "Kept: ", &words);
    }
}

/// A row, or a line of its own where the label is too long for the column.
fn row(page: &mut Page<'_>, label: &str, words: &str) {
    if label.chars().count() < NAME {
        page.row(2, NAME, label, words);
    } else {
        page.item(2, &format!("{label}: "), words);
    }
}

/// A length or weight to the right, as the bowler's hand has it.
fn turned(right: f64, left_hand: bool) -> f64 {
    if left_hand { -right } else { right }
}

/// Inches as a fitter writes them, to a sixty-fourth.
fn written(inches: f64) -> String {
    Notation::Length.write(sixty_fourths(inches))
}

/// Inches with three decimals.
fn decimal(inches: f64) -> String {
    format!("{:.3} in", inches + 0.0)
}

/// A signed length in words.
fn way(inches: f64, [more, less]: [&str; 2], nothing: &str) -> String {
    if inches.abs() < 0.0005 {
        nothing.to_owned()
    } else if inches > 0.0 {
        format!("{} {more}", decimal(inches))
    } else {
        format!("{} {less}", decimal(-inches))
    }
}

/// Ounces in words.
fn weight(ounces: f64, [more, less]: [&str; 2]) -> String {
    if ounces.abs() < 0.005 {
        "level".to_owned()
    } else if ounces > 0.0 {
        format!("{ounces:.2} oz {more}")
    } else {
        format!("{:.2} oz {less}", -ounces)
    }
}
