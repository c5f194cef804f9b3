//! `roll`: what a ball does on a lane for a bowler, or how two differ.

use std::path::Path;

use super::Refusal;
use super::answer;
use super::arguments::Roll;
use super::output;
use crate::report;

/// Rolls one ball or two; into a file whose name ends in .svg it is drawn.
pub(super) fn run(ask: &Roll) -> Result<(), Refusal> {
    let drawn = ask
        .advise
        .output
        .file
        .as_deref()
        .filter(|file| is_svg(file));
    if drawn.is_some() && ask.advise.output.json {
        return Err(
            "a drawing or JSON, not both: leave out --json, or name another file".to_owned(),
        );
    }
    if ask.lane.as_deref().is_some_and(|it| it.trim().is_empty()) {
        return Err(
            "no lane was named after --lane: give its id in the shop's lanes.yaml, or leave --lane out and the bowler's answer counts"
                .to_owned(),
        );
    }
    let (shop, bowler) = answer::open(&ask.advise)?;
    let rolled = shop.roll(&bowler, &ask.balls, ask.lane.as_deref());
    let roll = rolled.map_err(|trouble| trouble.to_string())?;
    let text = if drawn.is_some() {
        report::roll_drawing(&roll)
    } else if ask.advise.output.json {
        report::roll_json(&roll, ask.advise.reader.into())
    } else {
        report::roll_text(&roll, &answer::look(&ask.advise, &shop))
    };
    output::put(&ask.advise.output, &text)
}

fn is_svg(path: &Path) -> bool {
    path.extension()
        .is_some_and(|ending| ending.eq_ignore_ascii_case("svg"))
}
