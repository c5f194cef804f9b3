//! The offers about an old ball, in the answer document and as a document of their own.

use serde::Serialize;

use super::spec::StepDoc;
use super::{CONTRACT, QuoteDoc};
use crate::advice::{Offer, Offers};

#[derive(Serialize)]
pub(super) struct OffersDoc<'a> {
    about: &'a str,
    list: Vec<OfferDoc<'a>>,
}

#[derive(Serialize)]
struct OfferDoc<'a> {
    id: &'a str,
    title: &'a str,
    ball: Option<&'a str>,
    quote: QuoteDoc<'a>,
    reasons: Vec<StepDoc<'a>>,
}

#[derive(Serialize)]
struct Answer<'a> {
    contract: u32,
    version: &'static str,
    digest: &'a str,
    question: &'static str,
    offers: OffersDoc<'a>,
}

/// Writes the offers as an answer document of contract 1, ending in a line break; `digest` is the shop's.
#[must_use]
pub fn offers_json(offers: &Offers, digest: &str) -> String {
    let answer = Answer {
        contract: CONTRACT,
        version: env!("CARGO_PKG_VERSION"),
        digest,
        question: "offers",
        offers: OffersDoc::new(offers),
    };
    // Strings, whole numbers and lists always have a JSON form.
    let mut text = serde_json::to_string_pretty(&answer).unwrap_or_default();
    text.push('\n');
    text
}

impl<'a> OffersDoc<'a> {
    pub(super) fn new(offers: &'a Offers) -> OffersDoc<'a> {
        OffersDoc {
            about: offers.ball(),
            list: offers.list().iter().map(OfferDoc::new).collect(),
        }
    }
}

impl<'a> OfferDoc<'a> {
    fn new(offer: &'a Offer) -> OfferDoc<'a> {
        OfferDoc {
            id: offer.id(),
            title: offer.title(),
            ball: offer.ball(),
            quote: QuoteDoc::new(offer.bill()),
            reasons: offer.reasons().iter().map(StepDoc::new).collect(),
        }
    }
}
