//! Why a ball isn't the pick, as an answer document.

use serde::Serialize;

use super::{CautionDoc, Head, LineDoc, audience_name, cautions, written};
use crate::advice::{BallFate, Barrier, Cost, WhyNot};
use crate::rules::Audience;

/// Writes the answer to "why not this ball?" as an answer document of contract 1, ending in a line break.
///
/// Points are whole tenths. `attainable` is the sum over the rules of the most points that any ball left gets by that rule; a
/// ball's `lost` is `attainable` less its `total`.
#[must_use]
pub fn why_not_json(answer: &WhyNot, audience: Audience) -> String {
    let fate = |fate| FateDoc::new(fate, audience);
    written(&WhyNotDoc {
        head: Head::new("why_not")
            .digest(answer.digest())
            .about(answer.bowler(), audience_name(audience)),
        cautions: cautions(answer.cautions(), audience),
        ball: answer.ball(),
        name: answer.name(),
        left: answer.left(),
        attainable: answer.attainable(),
        pick: answer.pick().map(fate),
        fixed: answer.is_fixed(),
        fates: answer.fates().iter().map(fate).collect(),
        elsewhere: answer.elsewhere().map(fate),
    })
}

#[derive(Serialize)]
struct WhyNotDoc<'a> {
    #[serde(flatten)]
    head: Head<'a>,
    cautions: Vec<CautionDoc<'a>>,
    ball: &'a str,
    name: &'a str,
    left: usize,
    attainable: i64,
    pick: Option<FateDoc<'a>>,
    fixed: bool,
    fates: Vec<FateDoc<'a>>,
    elsewhere: Option<FateDoc<'a>>,
}

#[derive(Serialize)]
struct FateDoc<'a> {
    ball: &'a str,
    name: &'a str,
    weight: &'a str,
    out_the_door: Option<&'a str>,
    is_pick: bool,
    fate: &'static str,
    place: usize,
    total: i64,
    lost: Option<i64>,
    behind_pick: i64,
    costs: Vec<CostDoc<'a>>,
    ruled_out: Vec<BarrierDoc<'a>>,
}

#[derive(Serialize)]
struct CostDoc<'a> {
    points: i64,
    own: i64,
    best: i64,
    best_ball: Option<&'a str>,
    pick: i64,
    lacks: bool,
    line: LineDoc<'a>,
}

#[derive(Serialize)]
pub(super) struct BarrierDoc<'a> {
    line: LineDoc<'a>,
    found: Vec<SoughtDoc<'a>>,
}

#[derive(Serialize)]
struct SoughtDoc<'a> {
    fact: &'a str,
    meaning: &'a str,
    value: &'a str,
    wanted: &'a str,
}

impl<'a> FateDoc<'a> {
    fn new(fate: &'a BallFate, audience: Audience) -> FateDoc<'a> {
        let out = fate.is_ruled_out();
        FateDoc {
            ball: fate.ball(),
            name: fate.name(),
            weight: fate.weight(),
            out_the_door: fate.out_the_door(),
            is_pick: fate.is_pick(),
            fate: if out { "ruled_out" } else { "ranked" },
            place: fate.place(),
            total: fate.total(),
            lost: (!out).then(|| fate.lost()),
            behind_pick: fate.behind_pick(),
            costs: fate
                .costs()
                .iter()
                .map(|cost| CostDoc::new(cost, audience))
                .collect(),
            ruled_out: barriers(fate.barriers(), audience),
        }
    }
}

impl<'a> CostDoc<'a> {
    fn new(cost: &'a Cost, audience: Audience) -> CostDoc<'a> {
        CostDoc {
            points: cost.points(),
            own: cost.own(),
            best: cost.best(),
            best_ball: cost.best_ball(),
            pick: cost.pick(),
            lacks: cost.lacks(),
            line: LineDoc::new(cost.line(), audience),
        }
    }
}

/// Rules that keep a ball out, each with what it found.
pub(super) fn barriers(barriers: &[Barrier], audience: Audience) -> Vec<BarrierDoc<'_>> {
    let barrier = |barrier| BarrierDoc::new(barrier, audience);
    barriers.iter().map(barrier).collect()
}

impl<'a> BarrierDoc<'a> {
    fn new(barrier: &'a Barrier, audience: Audience) -> BarrierDoc<'a> {
        let found = barrier.found().iter();
        BarrierDoc {
            line: LineDoc::new(barrier.line(), audience),
            found: found
                .map(|found| SoughtDoc {
                    fact: found.fact(),
                    meaning: found.meaning(),
                    value: found.value(),
                    wanted: found.wanted(),
                })
                .collect(),
        }
    }
}
