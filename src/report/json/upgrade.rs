//! An upgrade path as an answer document.

use serde::Serialize;

use super::spec::StepDoc;
use super::{
    AssumedDoc, CautionDoc, Head, LineDoc, NearMissDoc, PickDoc, QuoteDoc, SettledDoc,
    audience_name, cautions, lines, written,
};
use crate::advice::{Against, BallGap, Does, Doubled, NextBall, OwnedNow, Upgrade};
use crate::rules::Audience;

/// Writes the upgrade path as an answer document, ending in a line break.
///
/// The lines of a gap and of a ball add up to its `total`, always. The same path gives the same bytes.
#[must_use]
pub fn upgrade_json(upgrade: &Upgrade, audience: Audience) -> String {
    written(&UpgradeDoc::new(upgrade, audience))
}

#[derive(Serialize)]
struct UpgradeDoc<'a> {
    #[serde(flatten)]
    head: Head<'a>,
    cautions: Vec<CautionDoc<'a>>,
    held: bool,
    before: Vec<StepDoc<'a>>,
    fingertip: Option<QuoteDoc<'a>>,
    next: Vec<NextDoc<'a>>,
    wait_for: Vec<StepDoc<'a>>,
    gaps: Vec<GapDoc<'a>>,
    ruled_out: Vec<GapDoc<'a>>,
    lane: Option<&'a str>,
    owned: Vec<OwnedDoc<'a>>,
    doubled: Vec<DoubledDoc<'a>>,
    settled: Vec<SettledDoc<'a>>,
    assumptions: Vec<AssumedDoc<'a>>,
    questions: &'a [String],
}

#[derive(Serialize)]
struct GapDoc<'a> {
    gap: &'a str,
    said: &'a str,
    place: usize,
    total: i64,
    lines: Vec<LineDoc<'a>>,
}

#[derive(Serialize)]
struct NextDoc<'a> {
    gap: &'a str,
    said: &'a str,
    ball: Option<PickDoc<'a>>,
    quote: Option<QuoteDoc<'a>>,
    over_budget_cents: Option<i64>,
    near_misses: Vec<NearMissDoc<'a>>,
    against: Option<AgainstDoc<'a>>,
    own_choice: Option<OwnChoiceDoc<'a>>,
    wait_for: Vec<StepDoc<'a>>,
    cautions: Vec<CautionDoc<'a>>,
}

/// What the customer wants all the same.
#[derive(Serialize)]
struct OwnChoiceDoc<'a> {
    ball: PickDoc<'a>,
    quote: QuoteDoc<'a>,
    dearer_cents: i64,
    cautions: Vec<CautionDoc<'a>>,
}

/// Whole boards and feet, least and most; hooking more and finishing sooner count upward.
#[derive(Serialize)]
struct AgainstDoc<'a> {
    owned: &'a str,
    boards: [i64; 2],
    sooner_feet: [i64; 2],
}

#[derive(Serialize)]
struct OwnedDoc<'a> {
    name: &'a str,
    about: &'a str,
    role: &'a str,
    does: Option<DoesDoc>,
}

/// By the closed results: tenths of boards, feet and degrees, and percent.
#[derive(Serialize)]
struct DoesDoc {
    boards_tenths: i64,
    finished_feet_tenths: i64,
    entry_degrees_tenths: i64,
    turn_done_percent: i64,
}

#[derive(Serialize)]
struct DoubledDoc<'a> {
    names: [&'a str; 2],
    by_motion: bool,
}

impl<'a> UpgradeDoc<'a> {
    fn new(upgrade: &'a Upgrade, audience: Audience) -> UpgradeDoc<'a> {
        let gap = |gap| GapDoc::new(gap, audience);
        UpgradeDoc {
            head: Head::new("upgrade")
                .digest(upgrade.digest())
                .about(upgrade.bowler(), audience_name(audience)),
            cautions: cautions(upgrade.cautions(), audience),
            held: upgrade.is_held(),
            before: upgrade.before().iter().map(StepDoc::new).collect(),
            fingertip: upgrade.fingertip().map(QuoteDoc::new),
            next: upgrade
                .next()
                .iter()
                .map(|next| NextDoc::new(next, audience))
                .collect(),
            wait_for: upgrade.wait_for().iter().map(StepDoc::new).collect(),
            gaps: upgrade.gaps().iter().map(gap).collect(),
            ruled_out: upgrade.ruled_out().iter().map(gap).collect(),
            lane: upgrade.lane(),
            owned: upgrade.owned().iter().map(OwnedDoc::new).collect(),
            doubled: upgrade.doubled().iter().map(DoubledDoc::new).collect(),
            settled: upgrade
                .settled()
                .iter()
                .map(|stage| SettledDoc::new(stage, audience))
                .collect(),
            assumptions: upgrade.assumptions().iter().map(AssumedDoc::new).collect(),
            questions: upgrade.questions(),
        }
    }
}

impl<'a> GapDoc<'a> {
    fn new(gap: &'a BallGap, audience: Audience) -> GapDoc<'a> {
        GapDoc {
            gap: gap.word(),
            said: gap.said(audience),
            place: gap.place(),
            total: gap.total(),
            lines: lines(gap.lines(), audience),
        }
    }
}

impl<'a> NextDoc<'a> {
    fn new(next: &'a NextBall, audience: Audience) -> NextDoc<'a> {
        NextDoc {
            gap: next.gap().word(),
            said: next.gap().said(audience),
            ball: next.pick().map(|pick| PickDoc::new(pick, audience)),
            quote: next.bill().map(QuoteDoc::new),
            over_budget_cents: next.over_budget(),
            near_misses: next
                .near_misses()
                .iter()
                .map(|miss| NearMissDoc {
                    ball: miss.ball(),
                    name: miss.name(),
                    out_the_door: miss.out_the_door(),
                    over: miss.over(),
                })
                .collect(),
            against: next.against().map(AgainstDoc::new),
            own_choice: next.own_choice().map(|own| OwnChoiceDoc {
                ball: PickDoc::new(own.pick(), audience),
                quote: QuoteDoc::new(own.bill()),
                dearer_cents: own.dearer(),
                cautions: cautions(own.cautions(), audience),
            }),
            wait_for: next.triggers().iter().map(StepDoc::new).collect(),
            cautions: cautions(next.cautions(), audience),
        }
    }
}

impl<'a> AgainstDoc<'a> {
    fn new(against: &'a Against) -> AgainstDoc<'a> {
        AgainstDoc {
            owned: &against.owned,
            boards: [against.boards.0, against.boards.1],
            sooner_feet: [against.sooner.0, against.sooner.1],
        }
    }
}

impl<'a> OwnedDoc<'a> {
    fn new(owned: &'a OwnedNow) -> OwnedDoc<'a> {
        OwnedDoc {
            name: owned.name(),
            about: owned.about(),
            role: owned.role(),
            does: owned.does().map(DoesDoc::new),
        }
    }
}

impl DoesDoc {
    fn new(does: &Does) -> DoesDoc {
        DoesDoc {
            boards_tenths: does.tenths_of_boards(),
            finished_feet_tenths: does.tenths_of_feet(),
            entry_degrees_tenths: does.tenths_of_degrees(),
            turn_done_percent: does.percent_done(),
        }
    }
}

impl<'a> DoubledDoc<'a> {
    fn new(doubled: &'a Doubled) -> DoubledDoc<'a> {
        DoubledDoc {
            names: doubled.names(),
            by_motion: doubled.apart().is_some(),
        }
    }
}
