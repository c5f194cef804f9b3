//! Turning points and how sure, as documents.

use serde::Serialize;

use super::{Head, audience_name, written};
use crate::advice::{
    ChangedAnswer, HowSure, Measured, Over, Picked, Stretch, SureRange, Together, Turning, WhatIf,
};
use crate::rules::Audience;

/// Writes the turning points as an answer document, ending in a line break.
#[must_use]
pub fn what_if_json(what_if: &WhatIf, audience: Audience) -> String {
    let turn = |turn| TurnDoc::new(turn, audience);
    written(&WhatIfDoc {
        head: Head::new("whatif")
            .digest(what_if.digest())
            .about(what_if.bowler(), audience_name(audience)),
        now: PickedDoc::new(what_if.now()),
        settled: what_if.settled(),
        turns: what_if.turns().iter().map(turn).collect(),
        together: TogetherDoc::new(what_if.together(), audience),
        steady: what_if.steady(),
        unfinished: what_if.unfinished(),
    })
}

#[derive(Serialize)]
struct WhatIfDoc<'a> {
    #[serde(flatten)]
    head: Head<'a>,
    now: PickedDoc<'a>,
    settled: &'a [&'static str],
    turns: Vec<TurnDoc<'a>>,
    together: TogetherDoc<'a>,
    steady: &'a [&'static str],
    unfinished: &'a [&'static str],
}

#[derive(Serialize)]
struct PickedDoc<'a> {
    weight: Option<&'a str>,
    grip: Option<&'a str>,
    ball: Option<&'a str>,
    name: Option<&'a str>,
}

#[derive(Serialize)]
struct TurnDoc<'a> {
    fact: &'a str,
    told: bool,
    last_that_keeps: Option<ValueDoc<'a>>,
    first_that_changes: ValueDoc<'a>,
    stretch: Option<StretchDoc<'a>>,
    instead_of: Option<&'static str>,
    also: Vec<StepDoc<'a>>,
    changes: &'a [&'static str],
    picked: PickedDoc<'a>,
    distance: i64,
    phrase: Option<&'a str>,
}

/// The values onward from a step with the very same pick.
#[derive(Serialize)]
struct StretchDoc<'a> {
    lowest: ValueDoc<'a>,
    turns_below: bool,
    highest: ValueDoc<'a>,
    turns_above: bool,
}

impl<'a> StretchDoc<'a> {
    fn new(stretch: &'a Stretch) -> StretchDoc<'a> {
        StretchDoc {
            lowest: value(stretch.lowest()),
            turns_below: stretch.turns_below(),
            highest: value(stretch.highest()),
            turns_above: stretch.turns_above(),
        }
    }
}

#[derive(Serialize)]
struct ValueDoc<'a> {
    value: i64,
    shown: &'a str,
}

#[derive(Serialize)]
struct StepDoc<'a> {
    fact: &'a str,
    value: i64,
    shown: &'a str,
}

#[derive(Serialize)]
struct TogetherDoc<'a> {
    outcome: &'static str,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    steps: Vec<StepDoc<'a>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    picked: Option<PickedDoc<'a>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    phrase: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    certain: Option<bool>,
    #[serde(skip_serializing_if = "Option::is_none")]
    within: Option<usize>,
}

impl<'a> PickedDoc<'a> {
    fn new(picked: &'a Picked) -> PickedDoc<'a> {
        PickedDoc {
            weight: picked.weight(),
            grip: picked.grip(),
            ball: picked.ball(),
            name: picked.name(),
        }
    }
}

impl<'a> StepDoc<'a> {
    fn new(step: &'a ChangedAnswer) -> StepDoc<'a> {
        StepDoc {
            fact: step.fact(),
            value: step.to(),
            shown: step.shown(),
        }
    }

    fn measured(step: &'a Measured) -> StepDoc<'a> {
        StepDoc {
            fact: step.fact(),
            value: step.value(),
            shown: step.shown(),
        }
    }
}

fn value<'a>((value, shown): (i64, &'a str)) -> ValueDoc<'a> {
    ValueDoc { value, shown }
}

impl<'a> TurnDoc<'a> {
    fn new(turn: &'a Turning, audience: Audience) -> TurnDoc<'a> {
        TurnDoc {
            fact: turn.step().fact(),
            told: turn.is_told(),
            last_that_keeps: turn.keeps().map(value),
            first_that_changes: value((turn.step().to(), turn.step().shown())),
            stretch: turn.stretch().map(StretchDoc::new),
            instead_of: turn.instead_of(),
            also: turn.also().iter().map(StepDoc::new).collect(),
            changes: turn.changed(),
            picked: PickedDoc::new(turn.picked()),
            distance: turn.distance(),
            phrase: turn.said(audience),
        }
    }
}

impl<'a> TogetherDoc<'a> {
    fn new(together: &'a Together, audience: Audience) -> TogetherDoc<'a> {
        let empty = TogetherDoc {
            outcome: "not_asked",
            steps: Vec::new(),
            picked: None,
            phrase: None,
            certain: None,
            within: None,
        };
        match together {
            Together::NotAsked => empty,
            Together::Nothing => TogetherDoc {
                outcome: "nothing",
                ..empty
            },
            Together::NotSettled(within) => TogetherDoc {
                outcome: "not_settled",
                within: Some(*within),
                ..empty
            },
            Together::Nearest {
                steps,
                picked,
                certain,
                practical,
            } => {
                let is_said = *practical || audience == Audience::Fitter;
                let [one, other] = steps;
                let phrase = other.phrase().after(one.phrase(), ", and ");
                TogetherDoc {
                    outcome: "nearest",
                    steps: steps.iter().map(StepDoc::new).collect(),
                    picked: Some(PickedDoc::new(picked)),
                    phrase: is_said.then(|| phrase.of(audience).to_owned()),
                    certain: Some(*certain),
                    ..empty
                }
            }
        }
    }
}

/// How sure the pick is.
#[derive(Serialize)]
pub(super) struct SureDoc<'a> {
    ranges: Vec<RangeDoc<'a>>,
    given_or_taken: OverDoc<'a>,
}

#[derive(Serialize)]
struct RangeDoc<'a> {
    fact: &'a str,
    value: ValueDoc<'a>,
    lowest: ValueDoc<'a>,
    turns_below: bool,
    highest: ValueDoc<'a>,
    turns_above: bool,
    give_or_take: Option<ValueDoc<'a>>,
}

#[derive(Serialize)]
struct OverDoc<'a> {
    outcome: &'static str,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    steps: Vec<StepDoc<'a>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    picked: Option<PickedDoc<'a>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    within: Option<usize>,
}

impl<'a> SureDoc<'a> {
    pub(super) fn new(sure: &'a HowSure) -> SureDoc<'a> {
        SureDoc {
            ranges: sure.ranges().iter().map(RangeDoc::new).collect(),
            given_or_taken: OverDoc::new(sure.over()),
        }
    }
}

impl<'a> RangeDoc<'a> {
    fn new(range: &'a SureRange) -> RangeDoc<'a> {
        RangeDoc {
            fact: range.fact(),
            value: value(range.value()),
            lowest: value(range.lowest()),
            turns_below: range.turns_below(),
            highest: value(range.highest()),
            turns_above: range.turns_above(),
            give_or_take: range.give_or_take().map(value),
        }
    }
}

impl<'a> OverDoc<'a> {
    fn new(over: &'a Over) -> OverDoc<'a> {
        let (outcome, within) = match over {
            Over::NothingStated => ("nothing_stated", None),
            Over::Stays => ("stays", None),
            Over::Breaks { .. } => ("breaks", None),
            Over::NotSettled(within) => ("not_settled", Some(*within)),
        };
        let (steps, picked) = match over {
            Over::Breaks { steps, picked, .. } => (
                steps.iter().map(StepDoc::measured).collect(),
                Some(PickedDoc::new(picked)),
            ),
            _ => (Vec::new(), None),
        };
        OverDoc {
            outcome,
            steps,
            picked,
            within,
        }
    }
}
