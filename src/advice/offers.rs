//! What can be done about an old ball. Plain results with getters.

use super::{Bill, WorkStep};

/// What can be done about an old ball, each way with its quote, least work first.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Offers {
    pub(super) ball: String,
    pub(super) offers: Vec<Offer>,
}

/// One way to go on with an old ball, or beside it.
#[derive(Clone, Debug)]
pub struct Offer {
    pub(super) id: &'static str,
    pub(super) title: String,
    pub(super) ball: Option<String>,
    pub(super) bill: Bill,
    pub(super) reasons: Vec<WorkStep>,
}

impl Offers {
    /// What the old ball is called.
    pub fn ball(&self) -> &str {
        &self.ball
    }
    /// The ways, least work first.
    pub fn list(&self) -> &[Offer] {
        &self.offers
    }
    /// One of them by id: `ease`, `slug`, `inserts`, `redrill` or `plain`.
    pub fn offer(&self, id: &str) -> Option<&Offer> {
        self.offers.iter().find(|offer| offer.id == id)
    }
}

impl Offer {
    /// An offer whose reasons are still to be asked.
    pub(super) fn new(id: &'static str, title: &str, bill: Bill) -> Offer {
        Offer {
            id,
            title: title.to_owned(),
            ball: None,
            bill,
            reasons: Vec::new(),
        }
    }
    /// `ease`, `slug`, `inserts`, `redrill` or `plain`.
    pub fn id(&self) -> &'static str {
        self.id
    }
    /// What is done, in a few words.
    pub fn title(&self) -> &str {
        &self.title
    }
    /// The new ball as `model-id@weight`, where it is one.
    pub fn ball(&self) -> Option<&str> {
        self.ball.as_deref()
    }
    /// What it comes to, when it is ready, and what to know before.
    pub fn bill(&self) -> &Bill {
        &self.bill
    }
    /// When it is the right one, and why: rules of the subject `offer`. The first is the sentence to say.
    pub fn reasons(&self) -> &[WorkStep] {
        &self.reasons
    }
    /// The sentence that says when it is the right one.
    pub fn right_when(&self) -> &str {
        self.reasons.first().map_or("", WorkStep::text)
    }
}
