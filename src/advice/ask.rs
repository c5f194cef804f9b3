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
        let (model, weight) = match ball.split_once('@') {
            Some((model, weight)) => (model, Some(weight).filter(|text| !text.trim().is_empty())),
            None => (ball, None),
        };
        self.catalog()
            .find(model)
            .map_err(|unknown| Trouble::UnknownBall {
                asked: model.to_owned(),
                nearest: unknown.nearest,
            })?;
        let own: Vec<usize> = (0..self.candidates().len())
            .filter(|&c| self.stock_model(c) == model)
            .collect();
        let wanted = match weight {
            Some(text) => Notation::Weight.read(text).ok(),
            None => {
                let first = consult(self, bowler, None)?;
                let settled = first.settled().iter().find(|s| s.stage() == "weight");
                // Where no weight is right, the lightest on the shelf shows best what speaks against it.
                match settled {
                    Some(settled) => Notation::Weight.read(settled.value()).ok(),
                    None => own.iter().map(|&c| self.candidates()[c].weight).min(),
                }
            }
        };
        match own
            .iter()
            .find(|&&c| Some(self.candidates()[c].weight) == wanted)
        {
            Some(&candidate) => consult(
                self,
                bowler,
                Some(Chosen {
                    candidate,
                    by_customer,
                }),
            ),
            None => Err(Trouble::NotOnShelf {
                asked: model.to_owned(),
                wanted: match (weight, wanted) {
                    (_, Some(steps)) => Notation::Weight.write(steps),
                    (Some(text), None) => text.to_owned(),
                    (None, None) => "a weight that suits".to_owned(),
                },
                weights: own
                    .iter()
                    .map(|&c| Notation::Weight.write(self.candidates()[c].weight))
                    .collect::<Vec<_>>()
                    .join(", "),
            }),
        }
    }
}
