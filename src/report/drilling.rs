//! The computed ball in the fitter's part: holes, walls, layout, balance, core, what the rule book says.

use super::page::{Page, capitalised};
use crate::advice::{
    CoreChange, Drilling, PlannedHole, PlannedLayout, PlannedWeb, Predicted, Refusal,
};
use crate::fitting::sixty_fourths;
use crate::notation::Notation;
use crate::rules::Audience;
use crate::standards::{Finding, Verdict};

/// Columns for the name of a hole or a weight.
const NAME: usize = 26;

/// Writes what was computed; what may not be drilled stands first.
pub(super) fn write(page: &mut Page<'_>, drilling: &Drilling) {
    refusals(page, drilling.refusals());
    let fitter = page.audience() == Audience::Fitter;
    if fitter {
        page.heading("The drilled ball, computed");
        for hole in drilling.holes() {
            self::hole(page, hole);
        }
        for web in drilling.webs() {
            self::web(page, web);
        }
    }
    if let Some(layout) = drilling.layout().as_ref().filter(|_| fitter) {
        self::layout(page, layout);
    }
    if let Some(balance) = drilling.balance() {
        self::balance(page, balance, drilling.left_hand());
    }
    if let Some(core) = drilling.core().as_ref().filter(|_| fitter) {
        self::core(page, core);
    }
    findings(page, drilling.findings(), fitter);
    for open in drilling.open() {
        page.item(2, "Open: ", open);
    }
}

fn refusals(page: &mut Page<'_>, refusals: &[Refusal]) {
    if refusals.is_empty() {
        return;
    }
    page.heading("Not to be drilled as it stands");
    for refusal in refusals {
        page.urgent(refusal.what());
        match refusal.mends() {
            [] => page.paragraph(4, "No single change mends it; change two."),
            mends => {
                page.paragraph(4, "Any one of these mends it:");
                for mend in mends {
                    page.item(4, "- ", mend);
                }
            }
        }
    }
}

fn hole(page: &mut Page<'_>, hole: &PlannedHole) {
    let (over, up) = hole.place();
    let bore = match hole.oval() {
        Some((wide, narrow, angle)) => format!(
            "oval bore {} by {}, wide at {angle:.0} degrees",
            written(wide),
            written(narrow)
        ),
        None => format!("bore {}", written(hole.bore())),
    };
    let outside = hole
        .outside()
        .map(|size| format!(", hole as cut {}", written(size)))
        .unwrap_or_default();
    let words = format!(
        "{bore}{outside}, {} deep; its middle lies {} and {}.",
        written(hole.depth()),
        way(over, "right", "left"),
        way(up, "up", "down"),
    );
    page.row(2, NAME, hole.name(), &words);
    for line in hole.jig() {
        page.item(4, "Jig: ", line);
    }
    if let Some(lateral) = hole.parallel_lateral() {
        let words = format!(
            "Counted from where both finger holes run side by side, its lateral is {}.",
            Notation::LateralPitch.write(sixty_fourths(lateral))
        );
        page.paragraph(4, &words);
    }
}

fn web(page: &mut Page<'_>, web: &PlannedWeb) {
    let meets = match web.breaks_at() {
        Some(depth) => format!("; at {} they would meet", decimal(depth)),
        None => String::new(),
    };
    let least = match web.limit() {
        limit if limit.is_finite() => format!(" At least {}.", decimal(limit)),
        _ => String::new(),
    };
    let words = if web.least() < 0.0 {
        format!(
            "They run into each other, {} down.{least}",
            decimal(web.at_depth())
        )
    } else {
        format!(
            "{} left between them, thinnest {} down{meets}.{least}",
            decimal(web.least()),
            decimal(web.at_depth()),
        )
    };
    page.row(2, NAME, web.between(), &words);
}

fn layout(page: &mut Page<'_>, layout: &PlannedLayout) {
    page.heading(&format!("Layout: {}", layout.kind()));
    for (name, (over, up)) in layout.points() {
        let words = format!(
            "{} and {} from the grip centre.",
            way(*over, "right", "left"),
            way(*up, "up", "down")
        );
        page.row(2, NAME, name, &words);
    }
    for (label, numbers) in layout.stated() {
        page.row(2, NAME, label, numbers);
    }
    for (index, step) in layout.steps().iter().enumerate() {
        page.item(2, &format!("{:>2}. ", index + 1), step.text());
    }
    for words in layout.track() {
        page.paragraph(2, words);
    }
}

fn balance(page: &mut Page<'_>, balance: &Predicted, left_hand: bool) {
    page.heading("Weights to expect after drilling");
    page.item(2, "From the shelf: ", balance.unit());
    for line in balance.because() {
        page.paragraph(4, line);
    }
    let (right, left) = if left_hand {
        ("left", "right")
    } else {
        ("right", "left")
    };
    page.row(
        2,
        NAME,
        "whole ball",
        &format!("{:.2} lb", balance.pounds()),
    );
    for (name, ounces, more, less) in [
        ("top or bottom", balance.top(), "top", "bottom"),
        ("side", balance.side(), right, left),
        ("finger or thumb", balance.finger(), "finger", "thumb"),
    ] {
        page.row(2, NAME, name, &weight(ounces, more, less));
    }
    if let Some(margin) = balance.margin() {
        let words = if margin < 0.0 {
            format!("{:.2} oz over", -margin)
        } else {
            format!("{margin:.2} oz left")
        };
        page.row(2, NAME, "to the nearest limit", &words);
    }
    if page.audience() != Audience::Fitter {
        return;
    }
    let words = format!(
        "{:.2} oz drilled out, {:.2} oz put back; the mass centre lies {:.3} in from the middle.",
        balance.out(),
        balance.back(),
        balance.offset()
    );
    page.paragraph(2, &words);
    for (setting, value) in balance.settings() {
        page.item(4, &format!("{setting}: "), value);
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
        page.row(2, NAME, name, &words);
    }
    if let Some(moved) = core.moved() {
        let words = format!(
            "The axis it turns easiest on moves {} along the ball.",
            decimal(moved)
        );
        page.paragraph(2, &words);
    }
}

fn findings(page: &mut Page<'_>, findings: &[Finding], fitter: bool) {
    if findings.is_empty() {
        return;
    }
    let of = |verdict| {
        findings
            .iter()
            .filter(move |finding| finding.verdict() == verdict)
    };
    page.heading("What the rule book says");
    for finding in of(Verdict::Fail) {
        finding_line(page, "Broken: ", finding, fitter);
    }
    if fitter {
        for finding in of(Verdict::Ask) {
            finding_line(page, "Ask: ", finding, fitter);
        }
        for finding in of(Verdict::Pass) {
            finding_line(page, "Kept: ", finding, fitter);
        }
    } else {
        let mut about: Vec<&str> = of(Verdict::Ask).map(Finding::about).collect();
        about.dedup();
        if !about.is_empty() {
            page.item(2, "To ask: ", &format!("{}.", about.join(", ")));
        }
    }
    page.paragraph(
        2,
        "The governing body's current rule book decides; check it before the ball is used in competition.",
    );
}

fn finding_line(page: &mut Page<'_>, verdict: &str, finding: &Finding, fitter: bool) {
    let about = capitalised(finding.about());
    let words = if fitter {
        format!("{about}. {} ({})", finding.says(), finding.clause())
    } else {
        format!("{about}. {}", finding.says())
    };
    page.item(2, verdict, &words);
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
fn way(inches: f64, more: &str, less: &str) -> String {
    if inches.abs() < 0.0005 {
        "0".to_owned()
    } else if inches > 0.0 {
        format!("{} {more}", decimal(inches))
    } else {
        format!("{} {less}", decimal(-inches))
    }
}

/// Ounces in words.
fn weight(ounces: f64, more: &str, less: &str) -> String {
    if ounces.abs() < 0.005 {
        "level".to_owned()
    } else if ounces > 0.0 {
        format!("{ounces:.2} oz {more}")
    } else {
        format!("{:.2} oz {less}", -ounces)
    }
}
