//! What the sheet is drawn from, and whether anything may be drilled from it.

use super::words::BLANK;
use crate::advice::{Advice, Drilling, Pick};
use crate::report::customer;
use crate::rules::Severity;

/// Whether the machine may be set from this sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Readiness {
    /// Every number is there and none is refused.
    Drill,
    /// Numbers for the machine stay blank.
    NotYet,
}

/// One drilling job.
#[derive(Debug)]
pub(super) struct Job<'a> {
    pub(super) advice: &'a Advice,
    pub(super) pick: Option<&'a Pick>,
    pub(super) drilling: Option<&'a Drilling>,
    pub(super) ready: Readiness,
    /// Why nothing may be drilled, each with what would mend it.
    pub(super) reasons: Vec<String>,
}

impl<'a> Job<'a> {
    pub(super) fn of(advice: &'a Advice) -> Job<'a> {
        let drilling = advice
            .drilling()
            .filter(|drilling| drilling.circumference().is_finite());
        let reasons = reasons(advice, drilling);
        Job {
            advice,
            pick: customer::chosen(advice),
            drilling,
            ready: if reasons.is_empty() {
                Readiness::Drill
            } else {
                Readiness::NotYet
            },
            reasons,
        }
    }

    /// 1 for a right hand, -1 for a left one: what turns a number of the drilling to the hand at hand.
    pub(super) fn turn(&self) -> f64 {
        match self.drilling {
            Some(drilling) if drilling.left_hand() => -1.0,
            _ => 1.0,
        }
    }

    /// A number of the spec as a fitter writes it, or a blank to write on.
    pub(super) fn number(&self, name: &str) -> String {
        let number = self
            .advice
            .spec()
            .number(name)
            .filter(|_| self.ready == Readiness::Drill);
        match number.map(|number| number.shop()) {
            Some(shop) if !shop.is_empty() => shop.to_owned(),
            _ => BLANK.to_owned(),
        }
    }

    /// Whether a hole's depth is settled; one that isn't stays a blank to write on.
    pub(super) fn knows_depth(&self, hole: &str) -> bool {
        let number = self.advice.spec().number(&format!("{hole}.depth"));
        number.is_some_and(|number| number.value().is_some())
    }

    /// Whether the grip centre is known: without a thumb hole it waits for the palm mark, and the layout with it.
    pub(super) fn knows_centre(&self) -> bool {
        self.drilling.is_some_and(|drilling| {
            let thumb = drilling.holes().iter().any(|hole| hole.name() == "thumb");
            thumb || drilling.layout().is_some()
        })
    }

    /// The words for `middle` span, `ring` span or `bridge`.
    pub(super) fn span_words(&self, what: &str) -> Vec<String> {
        match what {
            "bridge" => vec![
                "Bridge".to_owned(),
                format!("{} as cut", self.number("bridge")),
            ],
            finger => {
                let name = if finger == "ring" {
                    "Ring span"
                } else {
                    "Middle span"
                };
                vec![
                    name.to_owned(),
                    format!("{} cut to cut", self.number(&format!("{finger}.cut_span"))),
                    format!("{} full", self.number(&format!("{finger}.span"))),
                ]
            }
        }
    }
}

/// What stands in the way of drilling. Nothing here tells what ails anybody: the sheet lies open on a bench.
fn reasons(advice: &Advice, drilling: Option<&Drilling>) -> Vec<String> {
    let mut reasons = Vec::new();
    let spoken = |about: &str, severity| about == "person" && severity == Severity::Serious;
    if advice
        .cautions()
        .iter()
        .any(|caution| spoken(caution.about(), caution.severity()))
    {
        reasons.push("Speak with the customer first: the advice says what about.".to_owned());
    }
    for refusal in drilling.iter().flat_map(|drilling| drilling.refusals()) {
        let mends = match refusal.mends() {
            [] => " No single change mends it.".to_owned(),
            [only] => format!(" One change mends it: {}", sentence(only)),
            several => format!(
                " Any one of these mends it: {}",
                sentence(&several.join("; "))
            ),
        };
        reasons.push(format!("{}{mends}", sentence(refusal.what())));
    }
    for (blank, names) in blanks(advice) {
        let blocking: Vec<&str> = names
            .iter()
            .filter(|name| !settled_at_the_machine(name))
            .copied()
            .collect();
        if !blocking.is_empty() {
            let names: Vec<String> = blocking.iter().map(|name| spoken_name(name)).collect();
            reasons.push(format!("{} Blank: {}.", sentence(blank), names.join(", ")));
        }
    }
    if reasons.is_empty() && advice.spec().numbers().is_empty() {
        reasons.push("Measure the hand: nothing was measured.".to_owned());
    } else if reasons.is_empty() && !advice.drill_today() {
        reasons.push("Read the advice first: it says that nothing is drilled today.".to_owned());
    } else if reasons.is_empty() && drilling.is_none_or(|drilling| drilling.holes().is_empty()) {
        reasons.push("Measure what is missing: the holes could not be worked out.".to_owned());
    }
    reasons
}

/// Blank numbers by what to do about them.
pub(super) fn blanks(advice: &Advice) -> Vec<(&str, Vec<&str>)> {
    let mut blanks: Vec<(&str, Vec<&str>)> = Vec::new();
    for number in advice.spec().numbers() {
        let Some(reason) = number.blank() else {
            continue;
        };
        match blanks.iter_mut().find(|(known, _)| *known == reason) {
            Some((_, names)) => names.push(number.name()),
            None => blanks.push((reason, vec![number.name()])),
        }
    }
    blanks
}

/// Bevels and depths can be settled at the machine; everything else must be known before the drill.
pub(super) fn settled_at_the_machine(name: &str) -> bool {
    name.ends_with(".depth") || name.ends_with(".bevel")
}

/// `thumb.forward_pitch` as people say it, the abbreviations of the trade in capitals.
pub(super) fn spoken_name(name: &str) -> String {
    let words = name.split(['.', '_']).map(|word| match word {
        "pap" => "PAP",
        "val" => "VAL",
        other => other,
    });
    words.collect::<Vec<&str>>().join(" ")
}

/// With a full stop, if it has no end yet.
pub(super) fn sentence(words: &str) -> String {
    let words = words.trim();
    let end = if words.is_empty() || words.ends_with(['.', '!', '?']) {
        ""
    } else {
        "."
    };
    format!("{words}{end}")
}

#[cfg(test)]
mod tests {
    use super::spoken_name;

    #[test]
    fn names_are_spoken_with_the_abbreviations_of_the_trade() {
        assert_eq!(spoken_name("thumb.forward_pitch"), "thumb forward pitch");
        assert_eq!(spoken_name("pin.from_pap"), "pin from PAP");
        assert_eq!(spoken_name("pin.val_angle"), "pin VAL angle");
    }
}
