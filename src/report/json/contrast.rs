//! Two balls side by side, as an answer document.

use serde::Serialize;

use super::why_not::{BarrierDoc, barriers};
use super::{CautionDoc, Head, LineDoc, audience_name, cautions, written};
use crate::advice::{Compared, Contrast, Difference};
use crate::rules::Audience;

/// Writes two balls side by side as an answer document of contract 1, ending in a line break.
///
/// Points are whole tenths; `lines[].points` add up to `gap`, which is the first ball's total less the second's, always.
#[must_use]
pub fn contrast_json(contrast: &Contrast, audience: Audience) -> String {
    let difference = |difference| DifferenceDoc::new(difference, audience);
    written(&ContrastDoc {
        head: Head::new("compare")
            .digest(contrast.digest())
            .about(contrast.bowler(), audience_name(audience)),
        cautions: cautions(contrast.cautions(), audience),
        sentence: contrast.sentence(audience),
        left: contrast.left(),
        one: ComparedDoc::new(contrast.one(), audience),
        other: ComparedDoc::new(contrast.other(), audience),
        dearer_cents: contrast.dearer(),
        gap: contrast.gap(),
        lines: contrast.lines().iter().map(difference).collect(),
        schools: contrast.schools().iter().map(difference).collect(),
    })
}

#[derive(Serialize)]
struct ContrastDoc<'a> {
    #[serde(flatten)]
    head: Head<'a>,
    cautions: Vec<CautionDoc<'a>>,
    sentence: &'a str,
    left: usize,
    one: ComparedDoc<'a>,
    other: ComparedDoc<'a>,
    dearer_cents: Option<i64>,
    gap: i64,
    lines: Vec<DifferenceDoc<'a>>,
    schools: Vec<DifferenceDoc<'a>>,
}

#[derive(Serialize)]
struct ComparedDoc<'a> {
    ball: &'a str,
    name: &'a str,
    out_the_door: Option<String>,
    is_pick: bool,
    fate: &'static str,
    place: usize,
    total: i64,
    ruled_out: Vec<BarrierDoc<'a>>,
    cautions: Vec<CautionDoc<'a>>,
}

#[derive(Serialize)]
struct DifferenceDoc<'a> {
    rule: &'a str,
    points: i64,
    one: Option<LineDoc<'a>>,
    other: Option<LineDoc<'a>>,
}

impl<'a> ComparedDoc<'a> {
    fn new(ball: &'a Compared, audience: Audience) -> ComparedDoc<'a> {
        let out = ball.is_ruled_out();
        ComparedDoc {
            ball: ball.ball(),
            name: ball.name(),
            out_the_door: ball.out_the_door(),
            is_pick: ball.is_pick(),
            fate: if out { "ruled_out" } else { "ranked" },
            place: ball.place(),
            total: ball.total(),
            ruled_out: barriers(ball.barriers(), audience),
            cautions: cautions(ball.cautions(), audience),
        }
    }
}

impl<'a> DifferenceDoc<'a> {
    fn new(difference: &'a Difference, audience: Audience) -> DifferenceDoc<'a> {
        let line = |line| LineDoc::new(line, audience);
        DifferenceDoc {
            rule: difference.rule(),
            points: difference.points(),
            one: difference.one().map(line),
            other: difference.other().map(line),
        }
    }
}
