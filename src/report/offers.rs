//! What can be done about an old ball, each way with its quote, as text.

use super::Look;
use super::customer::{bill_lines, sourced};
use super::page::Page;
use crate::advice::{Offer, Offers};
use crate::rules::Audience;

/// Writes the offers side by side as plain text, ending in a line break.
#[must_use]
pub fn offers_text(offers: &Offers, look: &Look) -> String {
    let mut page = Page::new(look);
    write(&mut page, offers);
    page.finish()
}

/// Each way with the sentence that says when it is the right one, then its quote.
pub(super) fn write(page: &mut Page<'_>, offers: &Offers) {
    if offers.list().is_empty() {
        return;
    }
    page.heading(&format!("What can be done about {}", offers.ball()));
    page.paragraph(2, "Each way with its quote, least work first.");
    for offer in offers.list() {
        one(page, offer);
    }
    page.explain();
}

fn one(page: &mut Page<'_>, offer: &Offer) {
    page.heading(offer.title());
    for reason in offer.reasons() {
        let mut words = reason.text().to_owned();
        if let Some(because) = reason.because() {
            words.push(' ');
            words.push_str(because);
        }
        if page.audience() == Audience::Fitter {
            let from = sourced(reason.source(), reason.strength());
            words.push_str(&format!(" ({from})"));
        }
        page.paragraph(2, &words);
    }
    bill_lines(page, offer.bill());
}
