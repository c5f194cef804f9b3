//! The printed sheet that lies beside the machine: one page, in the order of work, with everything to scale.
//!
//! [`svg`] gives the drawing alone, [`html`] a page with it. Both fit A4 and Letter alike and need nothing from outside.
//! The sheet tells nothing of aches or of body weight: it lies open on a bench. Where anything is missing or refused it
//! says so at the top and leaves the machine's numbers blank. The same advice gives the same bytes.

mod basis;
mod chart;
mod checks;
mod detail;
mod grip;
mod heading;
mod hole;
mod layout;
mod page;
mod rulebook;
mod section;
mod state;
mod weights;
mod words;

#[cfg(test)]
mod tests;

use super::paper::{canvas, flow, leaders, letters};
use crate::advice::Advice;

/// The sheet as an SVG document.
#[must_use]
pub fn svg(advice: &Advice) -> String {
    format!(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n{}",
        drawing(advice)
    )
}

/// The sheet as a web page that prints on one page.
#[must_use]
pub fn html(advice: &Advice) -> String {
    format!(
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n<title>{}</title>\n<style>\n@page {{ margin: 0 }}\nhtml, body {{ margin: 0; padding: 0; background: #fff }}\nsvg {{ display: block; margin: 0 auto; break-inside: avoid }}\n</style>\n</head>\n<body>\n{}</body>\n</html>\n",
        letters::escaped(&letters::plain(&title(advice))),
        drawing(advice)
    )
}

fn drawing(advice: &Advice) -> String {
    page::draw(&state::Job::of(advice)).finish(&title(advice))
}

fn title(advice: &Advice) -> String {
    match advice.bowler() {
        "" => "Drilling sheet".to_owned(),
        name => format!("Drilling sheet for {name}"),
    }
}
