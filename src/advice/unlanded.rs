//! Stands in for what isn't written yet.

use super::outcome::Trouble;
use super::roll::Roll;
use super::shop::Shop;
use crate::bowler::Bowler;

impl Shop {
    /// What balls do on a lane.
    ///
    /// # Errors
    /// Always, for now.
    pub fn roll(
        &self,
        _bowler: &Bowler,
        _balls: &[String],
        _lane: Option<&str>,
    ) -> Result<Roll, Trouble> {
        Err(Trouble::Rules("no roll yet".to_owned()))
    }
}
