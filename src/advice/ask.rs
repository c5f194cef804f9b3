//! What a shop is asked: which ball, and how is it drilled?

use super::consult::consult;
use super::consultation::Chosen;
use super::outcome::Trouble;
use super::result::Advice;
use super::shop::Shop;
use crate::bowler::Bowler;
use crate::notation::Notation;

impl Shop {
    /// The consultation; a ball the profile has settled on is taken as the fitter's.
    ///
    /// # Errors
    /// [`Trouble`] where the rules can't be used.
    pub fn advise(&self, bowler: &Bowler) -> Result<Advice, Trouble> {
        let mut advice = match bowler.settled_ball() {
            Some(ball) => self.with_ball(bowler, ball, false),
            None => consult(self, bowler, None),
        }?;
        advice.how_sure = Some(self.how_sure(bowler)?);
        Ok(advice)
    }

    /// The same for a ball of the customer's choice (`model-id` or `model-id@weight`), marked as theirs.
    ///
    /// Without a weight, the one the rules settle on is taken.
    ///
    /// # Errors
    /// Unknown ball, ball not on the shelf.
    pub fn fit(&self, bowler: &Bowler, ball: &str) -> Result<Advice, Trouble> {
        self.with_ball(bowler, ball, true)
    }

    fn with_ball(&self, bowler: &Bowler, ball: &str, by_customer: bool) -> Result<Advice, Trouble> {
        let named = self.named(ball)?;
        let candidate = match self.in_the_weight_said(&named)? {
            Some(candidate) => candidate,
            None => {
                let first = consult(self, bowler, None)?;
                let settled = first.settled().iter().find(|s| s.stage() == "weight");
                match settled.and_then(|s| Notation::Weight.read(s.value()).ok()) {
                    Some(weight) => self.in_weight(&named, weight)?,
                    // Where no weight is right, the lightest on the shelf shows best what speaks against it.
                    None => self.lightest(&named),
                }
            }
        };
        let choice = Chosen {
            candidate,
            by_customer,
        };
        consult(self, bowler, Some(choice))
    }
}
