//! The offers about an old ball, in the answer document and as a document of their own.

use serde::Serialize;

use super::spec::StepDoc;
use super::{Head, QuoteDoc, written};
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
    #[serde(flatten)]
    head: Head<'a>,
    offers: OffersDoc<'a>,
}

/// Writes the offers as an answer document of contract 1, ending in a line break; `digest` is the shop's.
#[must_use]
pub fn offers_json(offers: &Offers, digest: &str) -> String {
    written(&Answer {
        head: Head::new("offers").digest(digest),
        offers: OffersDoc::new(offers),
    })
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
