//! Stands in for what isn't written yet.

use super::outcome::Trouble;
use super::roll::Roll;
use super::shop::Shop;
use super::upgrade::Upgrade;
use crate::bowler::Bowler;

impl Shop {
    /// Which ball comes next.
    ///
    /// # Errors
    /// Always, for now.
    pub fn upgrade(&self, _bowler: &Bowler) -> Result<Upgrade, Trouble> {
        Err(Trouble::Rules("no upgrade path yet".to_owned()))
    }

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
