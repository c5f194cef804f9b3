//! `calibrate`: cards of balls weighed before and after drilling in, the shop's own arm and density out.

use super::Refusal;
use super::answer::read_bowler;
use super::arguments::Calibrate;
use super::output;
use crate::advice::Shop;
use crate::report::{self, Look};
use crate::rules::Audience;

/// Fits arm and density; the faults of the shop's files and of all cards are told together.
pub(super) fn calibrate(ask: &Calibrate) -> Result<(), Refusal> {
    let shop = Shop::open(&ask.shop.files()).map_err(|trouble| trouble.to_string());
    let mut refusals = Vec::new();
    let mut cards = Vec::new();
    for path in &ask.cards {
        match read_bowler(path) {
            Ok(bowler) => cards.push((path.display().to_string(), bowler)),
            Err(refusal) => refusals.push(refusal),
        }
    }
    let shop = match shop {
        Ok(shop) if refusals.is_empty() => shop,
        Ok(_) => return Err(refusals.join("\n\n")),
        Err(trouble) => {
            refusals.insert(0, trouble);
            return Err(refusals.join("\n\n"));
        }
    };
    let calibrated = shop.calibrate(&cards).map_err(|why| why.to_string())?;
    let text = if ask.output.json {
        report::calibrated_json(&calibrated)
    } else {
        let (width, colour) = output::surface(&ask.output);
        let look = Look::plain(Audience::Fitter).wide(width).coloured(colour);
        report::calibrated_text(&calibrated, &look)
    };
    output::put(&ask.output, &text)
}
