//! `legal`: a ball in, verdicts out. A ball that breaks a limit is an answer, not a fault.

use super::Refusal;
use super::answer::{document, told};
use super::arguments::Legal;
use super::output;
use crate::report::{self, Look};
use crate::rules::Audience;
use crate::standards::{BallFacts, Standards};

/// Judges the ball for the day asked for, else for the last day the table knows: no clock is asked, so the answer stays.
pub(super) fn judge(ask: &Legal) -> Result<(), Refusal> {
    let standards = Standards::builtin().map_err(told)?;
    let facts = BallFacts::read(&document(&ask.ball)?).map_err(told)?;
    let date = ask.on.unwrap_or(standards.known_until());
    let findings = standards.judge(&facts, date, ask.body);
    let legal = report::Legal {
        ball: facts.name.as_deref(),
        body: ask.body,
        date,
        known_until: standards.known_until(),
        findings: &findings,
    };
    let text = if ask.output.json {
        report::legal_json(&legal)
    } else {
        let (width, colour) = output::surface(&ask.output);
        let look = Look::plain(Audience::Fitter).wide(width).coloured(colour);
        report::legal_text(&legal, &look)
    };
    output::put(&ask.output, &text)
}
