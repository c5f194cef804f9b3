//! What can be done about an old ball, each way with its quote, as text.

use super::Look;
use super::customer::{amounts, sourced};
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
    // What holds for each of them is said once.
    let shared: Vec<&str> = match offers.list() {
        [first, rest @ ..] if !rest.is_empty() => notes(first)
            .filter(|note| rest.iter().all(|offer| notes(offer).any(|n| n == *note)))
            .collect(),
        _ => Vec::new(),
    };
    page.heading(&format!("What can be done about {}", offers.ball()));
    page.paragraph(2, "Each way with its quote, least work first.");
    for offer in offers.list() {
        one(page, offer, &shared);
    }
    if !shared.is_empty() {
        page.heading("Whichever it is");
        page.paragraph(2, &shared.join(" "));
    }
    page.explain();
}

fn notes(offer: &Offer) -> impl Iterator<Item = &str> {
    offer.bill().notes().iter().map(String::as_str)
}

fn one(page: &mut Page<'_>, offer: &Offer, shared: &[&str]) {
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
    amounts(page, offer.bill());
    let own = notes(offer).filter(|note| !shared.contains(note));
    let said: Vec<&str> = std::iter::once(offer.bill().ready_when())
        .chain(own)
        .filter(|note| !note.is_empty())
        .collect();
    page.paragraph(2, &said.join(" "));
}
