//! A refit as an answer document.

use serde::Serialize;

use super::offers::OffersDoc;
use super::spec::{NumberDoc, StepDoc};
use super::{AssumedDoc, CautionDoc, Head, LineDoc, audience_name, cautions, lines, written};
use crate::advice::{Cause, Change, Refit};
use crate::rules::Audience;

/// Writes the refit as an answer document, ending in a line break.
///
/// The lines of a cause add up to its `total`, those of a number to its `value`, always. The same refit gives the same bytes.
#[must_use]
pub fn refit_json(refit: &Refit, audience: Audience) -> String {
    written(&RefitDoc::new(refit, audience))
}

#[derive(Serialize)]
struct RefitDoc<'a> {
    #[serde(flatten)]
    head: Head<'a>,
    cautions: Vec<CautionDoc<'a>>,
    held: bool,
    first: Option<String>,
    steps: Vec<StepDoc<'a>>,
    causes: Vec<CauseDoc<'a>>,
    ruled_out: Vec<CauseDoc<'a>>,
    changes: Vec<ChangeDoc<'a>>,
    ball: Option<&'a str>,
    card: Vec<PastDoc<'a>>,
    to_write: Vec<ToWriteDoc<'a>>,
    offers: Option<OffersDoc<'a>>,
    assumptions: Vec<AssumedDoc<'a>>,
    questions: &'a [String],
}

#[derive(Serialize)]
struct CauseDoc<'a> {
    cause: &'a str,
    place: usize,
    total: i64,
    lines: Vec<LineDoc<'a>>,
}

#[derive(Serialize)]
struct ChangeDoc<'a> {
    #[serde(flatten)]
    number: NumberDoc<'a>,
    card: Option<i64>,
    card_shop: &'a str,
    later: Vec<LaterDoc<'a>>,
}

#[derive(Serialize)]
struct LaterDoc<'a> {
    value: i64,
    shop: &'a str,
}

#[derive(Serialize)]
struct PastDoc<'a> {
    date: &'a str,
    kind: &'a str,
    text: &'a str,
}

#[derive(Serialize)]
struct ToWriteDoc<'a> {
    kind: &'a str,
    text: &'a str,
}

impl<'a> RefitDoc<'a> {
    fn new(refit: &'a Refit, audience: Audience) -> RefitDoc<'a> {
        let cause = |cause| CauseDoc::new(cause, audience);
        RefitDoc {
            head: Head::new("refit")
                .digest(refit.digest())
                .about(refit.bowler(), audience_name(audience)),
            cautions: cautions(refit.cautions(), audience),
            held: refit.is_held(),
            first: refit.first().map(|texts| texts.of(audience).to_owned()),
            steps: refit.steps().iter().map(StepDoc::new).collect(),
            causes: refit.causes().iter().map(cause).collect(),
            ruled_out: refit.ruled_out().iter().map(cause).collect(),
            changes: refit
                .changes()
                .iter()
                .map(|change| ChangeDoc::new(change, audience))
                .collect(),
            ball: refit.ball(),
            card: refit
                .past()
                .iter()
                .map(|past| PastDoc {
                    date: past.date(),
                    kind: past.kind(),
                    text: past.text(),
                })
                .collect(),
            to_write: refit
                .to_write()
                .iter()
                .map(|entry| ToWriteDoc {
                    kind: entry.kind(),
                    text: entry.text(),
                })
                .collect(),
            offers: refit.offers().map(OffersDoc::new),
            assumptions: refit.assumptions().iter().map(AssumedDoc::new).collect(),
            questions: refit.questions(),
        }
    }
}

impl<'a> CauseDoc<'a> {
    fn new(cause: &'a Cause, audience: Audience) -> CauseDoc<'a> {
        CauseDoc {
            cause: cause.word(),
            place: cause.place(),
            total: cause.total(),
            lines: lines(cause.lines(), audience),
        }
    }
}

impl<'a> ChangeDoc<'a> {
    fn new(change: &'a Change, audience: Audience) -> ChangeDoc<'a> {
        ChangeDoc {
            number: NumberDoc::new(change.number(), audience),
            card: change.card(),
            card_shop: change.card_shop(),
            later: change
                .later()
                .iter()
                .map(|(value, shop)| LaterDoc {
                    value: *value,
                    shop,
                })
                .collect(),
        }
    }
}
