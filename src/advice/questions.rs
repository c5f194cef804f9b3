//! What should be cleared up with the bowler: what the profile asks, and where the shop's catalog knows otherwise.

use super::owned_now::called;
use super::shop::Shop;
use crate::bowler::{Bowler, COVERS, OwnedBall};
use crate::catalog::Model;

impl Shop {
    /// Each question in plain words, those of the profile first.
    pub(super) fn questions_for(&self, bowler: &Bowler) -> Vec<String> {
        let profile = bowler.questions().iter().map(|it| it.text().to_owned());
        let owned = bowler.owned();
        let covers = (0..owned.len()).filter_map(|at| self.other_cover(owned, at));
        profile.chain(covers).collect()
    }

    /// A ball whose model is made with another cover than its owner tells.
    fn other_cover(&self, owned: &[OwnedBall], at: usize) -> Option<String> {
        let ball = owned.get(at)?;
        let cover = usize::try_from(ball.cover()?).ok()?;
        let told = COVERS.get(cover)?;
        let model: &Model = self.catalog().find(ball.model()?).ok()?;
        let made = model.cover();
        (made.index() != cover).then(|| {
            format!(
                "For {}, the cover is told as {told}, yet {} has a {} one. Which is right?",
                called(owned, at),
                model.name(),
                made.name()
            )
        })
    }
}
