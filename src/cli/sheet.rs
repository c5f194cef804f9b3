//! `sheet`: the page that lies beside the machine, as a drawing or a web page.

use std::path::Path;

use super::Refusal;
use super::answer;
use super::arguments::Sheet;
use super::output;
use crate::report::sheet;

/// Draws the sheet of one bowler and one ball into a file; its ending says as what.
pub(super) fn draw(ask: &Sheet) -> Result<(), Refusal> {
    let write = writer(&ask.file)?;
    let (shop, bowler) = answer::read(&ask.shop, &ask.bowler)?;
    let advice = match &ask.ball {
        Some(ball) => shop.fit(&bowler, ball),
        None => shop.fit_used(&bowler),
    }
    .map_err(|trouble| trouble.to_string())?;
    output::put_into(&ask.file, &write(&advice))
}

fn writer(path: &Path) -> Result<fn(&crate::advice::Advice) -> String, Refusal> {
    let ending = path.extension().map(|ending| ending.to_ascii_lowercase());
    match ending.as_ref().and_then(|ending| ending.to_str()) {
        Some("svg") => Ok(sheet::svg),
        Some("html" | "htm") => Ok(sheet::html),
        _ => Err(format!(
            "can't tell what to draw into `{}`: its name must end in .html or .svg",
            crate::document::clean(&path.display().to_string())
        )),
    }
}
