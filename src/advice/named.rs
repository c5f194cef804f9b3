//! A ball as a person names it: `model-id`, or `model-id@weight`.

use super::outcome::Trouble;
use super::shop::Shop;
use crate::notation::Notation;

/// The most letters of a name that a message repeats.
const LONGEST: usize = 60;

/// A ball of the catalog that stands on the shelf, as it was named.
#[derive(Debug)]
pub(super) struct Named<'a> {
    /// The id of the model.
    pub(super) model: &'a str,
    /// The weight beside it, as it was said.
    pub(super) weight: Option<&'a str>,
    /// The candidates of the model, lightest first; never empty.
    pub(super) own: Vec<usize>,
}

impl Shop {
    /// Finds the model that `ball` names.
    pub(super) fn named<'a>(&self, ball: &'a str) -> Result<Named<'a>, Trouble> {
        let (model, weight) = match ball.split_once('@') {
            Some((model, weight)) => (model, Some(weight)),
            None => (ball, None),
        };
        self.catalog()
            .find(model)
            .map_err(|unknown| Trouble::UnknownBall {
                asked: shortened(model),
                nearest: unknown.nearest,
            })?;
        let own: Vec<usize> = (0..self.candidates().len())
            .filter(|&c| self.stock_model(c) == model)
            .collect();
        if own.is_empty() {
            let asked = model.to_owned();
            return Err(Trouble::NoneOnShelf { asked });
        }
        Ok(Named { model, weight, own })
    }

    /// The candidate of the weight that was said; none if no weight was.
    pub(super) fn in_the_weight_said(&self, named: &Named<'_>) -> Result<Option<usize>, Trouble> {
        let Some(text) = named.weight else {
            return Ok(None);
        };
        match Notation::Weight.read(text) {
            Ok(weight) => self.in_weight(named, weight).map(Some),
            Err(_) => Err(Trouble::NotAWeight {
                asked: named.model.to_owned(),
                found: shortened(text),
                weights: self.weights(named),
            }),
        }
    }

    /// The candidate of this weight, in hundredths of a pound.
    pub(super) fn in_weight(&self, named: &Named<'_>, weight: i64) -> Result<usize, Trouble> {
        let mut own = named.own.iter().copied();
        own.find(|&c| self.candidates()[c].weight == weight)
            .ok_or_else(|| Trouble::NotOnShelf {
                asked: named.model.to_owned(),
                wanted: Notation::Weight.write(weight),
                weights: self.weights(named),
            })
    }

    /// The candidate of the least weight.
    pub(super) fn lightest(&self, named: &Named<'_>) -> usize {
        let lightest = named.own.iter().copied();
        lightest
            .min_by_key(|&c| self.candidates()[c].weight)
            .unwrap_or_default()
    }

    fn weights(&self, named: &Named<'_>) -> String {
        let all = named.own.iter();
        all.map(|&c| Notation::Weight.write(self.candidates()[c].weight))
            .collect::<Vec<_>>()
            .join(", ")
    }
}

fn shortened(text: &str) -> String {
    let mut short: String = text.chars().take(LONGEST).collect();
    if short.len() < text.len() {
        short.push('…');
    }
    short
}
