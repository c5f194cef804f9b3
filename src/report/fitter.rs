//! The fitter's part: the drill spec, and behind it every ledger.

use super::customer::{called, caution_words, chosen, sourced, stage_reasons};
use super::page::Page;
use super::sure;
use crate::advice::{Advice, Reason, SpecNumber, WorkStep};
use crate::notation::Notation;
use crate::rules::Audience;

/// Columns for the name of a number.
const NAME: usize = 24;
/// Balls named for a rule that rules out more.
const NAMED: usize = 4;
/// Columns for a value.
const VALUE: usize = 14;

/// The numbers to drill; blank ones are named together, once for each reason.
pub(super) fn spec(page: &mut Page<'_>, advice: &Advice) {
    let spec = advice.spec();
    if spec.numbers().is_empty() && advice.drill_today() {
        return;
    }
    page.heading("Drill spec, for the fitter");
    if !advice.drill_today() {
        page.paragraph(2, "Nothing is drilled today.");
    }
    if spec.is_copied() {
        page.paragraph(
            2,
            "Copied from the fit that works, where its card has a number. Change one thing at a time.",
        );
    }
    if let Some(unit) = chosen(advice).and_then(|pick| pick.unit()) {
        page.item(2, "From the shelf: ", unit);
    }
    for stage in advice
        .settled()
        .iter()
        .filter(|s| matches!(s.stage(), "surface" | "layout"))
    {
        page.row(
            2,
            NAME,
            stage.stage(),
            &stage_reasons(stage, Audience::Fitter),
        );
        let own = advice
            .cautions()
            .iter()
            .filter(|c| c.about() == stage.stage());
        for caution in own {
            page.item(4, "Caution: ", &caution_words(caution, Audience::Fitter));
        }
    }
    for number in spec
        .numbers()
        .iter()
        .filter(|number| number.blank().is_none())
    {
        self::number(page, number);
    }
    blanks(page, spec.numbers());
}

/// What stands behind the advice: the ledgers, the rules that ruled balls out, the order of work, the checks.
pub(super) fn background(page: &mut Page<'_>, advice: &Advice) {
    for stage in advice.settled() {
        let total = Notation::Points.write(stage.total());
        page.heading(&format!(
            "Why {}: {} ({total})",
            stage.stage(),
            stage.value()
        ));
        lines(page, 2, stage.lines());
        if let Some(second) = stage.runner_up() {
            page.item(2, "Next best: ", second);
        }
    }
    if let Some(pick) = chosen(advice) {
        let total = Notation::Points.write(pick.total());
        page.heading(&format!("Why {} ({total})", called(pick)));
        lines(page, 2, pick.lines());
    }
    sure::ranges(page, advice);
    ruled_out(page, advice);
    assumed(page, advice);
    steps(page, "Order of work", advice.spec().work());
    steps(page, "Before the customer leaves", advice.spec().handover());
}

fn number(page: &mut Page<'_>, number: &SpecNumber) {
    let words = format!("{:<VALUE$} {}", number.shop(), note(number));
    page.row(2, NAME, &label(number), &words);
    for caution in number.cautions() {
        page.item(4, "Caution: ", &caution_words(caution, Audience::Fitter));
    }
    if page.audience() == Audience::Fitter {
        lines(page, 4, number.lines());
    }
}

/// One word on a number that wants a second look.
fn note(number: &SpecNumber) -> &'static str {
    let has = |role: &str| number.lines().iter().any(|line| line.role() == role);
    if !number.cautions().is_empty() {
        "careful"
    } else if has("limit") {
        "limited"
    } else if has("dispute") {
        "disputed"
    } else {
        ""
    }
}

fn blanks(page: &mut Page<'_>, numbers: &[SpecNumber]) {
    let mut reasons: Vec<(&str, Vec<String>)> = Vec::new();
    for number in numbers {
        let Some(reason) = number.blank() else {
            continue;
        };
        match reasons.iter_mut().find(|(known, _)| *known == reason) {
            Some((_, names)) => names.push(label(number)),
            None => reasons.push((reason, vec![label(number)])),
        }
    }
    for (reason, names) in reasons {
        page.item(2, "Blank: ", &format!("{}. {reason}", names.join(", ")));
    }
}

pub(super) fn lines(page: &mut Page<'_>, indent: usize, lines: &[Reason]) {
    for line in lines {
        let (shown, role) = match line.role() {
            "dispute" => (
                format!("({})", line.shown()),
                "Another school, not counted: ",
            ),
            "limit" => (line.shown().to_owned(), "Limit: "),
            "rounding" => (line.shown().to_owned(), "Rounding: "),
            _ => (line.shown().to_owned(), ""),
        };
        let common = if line.is_common() { "; all alike" } else { "" };
        let source = sourced(line.source(), line.strength());
        let reason = line.text(Audience::Fitter);
        let words = format!("{role}{reason} ({}; {source}{common})", line.rule());
        page.item(indent, &format!("{shown:<VALUE$}  "), &words);
    }
}

fn ruled_out(page: &mut Page<'_>, advice: &Advice) {
    let mut rules: Vec<(&str, Vec<&str>)> = Vec::new();
    for out in advice.ruled_out() {
        for line in out.lines() {
            match rules.iter_mut().find(|(rule, _)| *rule == line.rule()) {
                Some((_, names)) => names.push(out.name()),
                None => rules.push((line.rule(), vec![out.name()])),
            }
        }
    }
    if rules.is_empty() {
        return;
    }
    page.heading("Ruled out");
    for (rule, names) in rules {
        let words = if names.len() > NAMED {
            format!(
                "{} balls, such as {}.",
                names.len(),
                names[..NAMED].join("; ")
            )
        } else {
            format!("{}.", names.join("; "))
        };
        page.item(2, &format!("{rule}: "), &words);
    }
}

/// What was assumed, and what stays unknown, with where that comes from.
fn assumed(page: &mut Page<'_>, advice: &Advice) {
    if advice.assumptions().is_empty() {
        return;
    }
    page.heading("Assumed");
    let mut unknown: Vec<(String, Vec<&str>)> = Vec::new();
    for assumed in advice.assumptions() {
        let source = sourced(assumed.source(), assumed.strength());
        let why = format!("{} ({source})", assumed.reason());
        match assumed.value() {
            Some(value) => page.item(
                2,
                &format!("{}: ", assumed.fact()),
                &format!("{value}. {why}"),
            ),
            None => match unknown.iter_mut().find(|(known, _)| *known == why) {
                Some((_, facts)) => facts.push(assumed.fact()),
                None => unknown.push((why, vec![assumed.fact()])),
            },
        }
    }
    for (why, facts) in unknown {
        page.item(2, "Not known: ", &format!("{}. {why}", facts.join(", ")));
    }
}

fn steps(page: &mut Page<'_>, title: &str, steps: &[WorkStep]) {
    if steps.is_empty() {
        return;
    }
    page.heading(title);
    for (index, step) in steps.iter().enumerate() {
        let because = step
            .because()
            .map(|why| format!(" {why}"))
            .unwrap_or_default();
        let source = sourced(step.source(), step.strength());
        page.item(
            2,
            &format!("{:>2}. ", index + 1),
            &format!("{}{because} ({source})", step.text()),
        );
    }
}

/// `thumb.forward_pitch` as people say it.
fn label(number: &SpecNumber) -> String {
    let words = number.name().replace(['.', '_'], " ");
    // Short forms are written large.
    let large = |word: &str| match word {
        "pap" | "val" => word.to_uppercase(),
        _ => word.to_owned(),
    };
    words.split(' ').map(large).collect::<Vec<_>>().join(" ")
}
