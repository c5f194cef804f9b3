//! The drill spec in the answer document.

use serde::Serialize;

use super::{CautionDoc, LineDoc, cautions, lines};
use crate::advice::{DrillSpec, SpecNumber, WorkStep};
use crate::rules::Audience;

#[derive(Serialize)]
pub(super) struct SpecDoc<'a> {
    for_ball: Option<&'a str>,
    copied_from_card: bool,
    drill_today: bool,
    numbers: Vec<NumberDoc<'a>>,
    work: Vec<StepDoc<'a>>,
    handover: Vec<StepDoc<'a>>,
}

#[derive(Serialize)]
pub(super) struct NumberDoc<'a> {
    name: &'a str,
    meaning: &'a str,
    value: Option<i64>,
    unit: &'a str,
    shop: &'a str,
    blank: Option<&'a str>,
    lines: Vec<LineDoc<'a>>,
    cautions: Vec<CautionDoc<'a>>,
}

#[derive(Serialize)]
pub(super) struct StepDoc<'a> {
    id: &'a str,
    text: &'a str,
    because: Option<&'a str>,
    source: &'a str,
    strength: &'a str,
}

impl<'a> SpecDoc<'a> {
    pub(super) fn new(spec: &'a DrillSpec, drill_today: bool, audience: Audience) -> SpecDoc<'a> {
        SpecDoc {
            for_ball: spec.for_ball(),
            copied_from_card: spec.is_copied(),
            drill_today,
            numbers: spec
                .numbers()
                .iter()
                .map(|n| NumberDoc::new(n, audience))
                .collect(),
            work: spec.work().iter().map(StepDoc::new).collect(),
            handover: spec.handover().iter().map(StepDoc::new).collect(),
        }
    }
}

impl<'a> NumberDoc<'a> {
    pub(super) fn new(number: &'a SpecNumber, audience: Audience) -> NumberDoc<'a> {
        NumberDoc {
            name: number.name(),
            meaning: number.meaning(),
            value: number.value(),
            unit: number.unit(),
            shop: number.shop(),
            blank: number.blank(),
            lines: lines(number.lines(), audience),
            cautions: cautions(number.cautions(), audience),
        }
    }
}

impl<'a> StepDoc<'a> {
    pub(super) fn new(step: &'a WorkStep) -> StepDoc<'a> {
        StepDoc {
            id: step.id(),
            text: step.text(),
            because: step.because(),
            source: step.source(),
            strength: step.strength(),
        }
    }
}
