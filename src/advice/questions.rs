//! What should be cleared up with the bowler: what the profile asks, and where the shop's catalog knows otherwise.

use super::owned_now::called;
use super::shop::Shop;
use crate::bowler::{Bowler, COVERS, OwnedBall};
use crate::catalog::Model;

impl Shop {
    /// Each question in plain words, those of the profile first.
    pub(super) fn questions_for(&self, bowler: &Bowler) -> Vec<String> {
        let profile = bowler.questions().iter().map(|it| it.text().to_owned());
        let owned = bowler.owned().iter().enumerate();
        let covers =
            owned.filter_map(|(at, ball)| self.other_cover(ball, &called(bowler.owned(), at)));
        profile.chain(covers).collect()
    }

    /// A ball whose model is made with another cover than its owner tells.
    fn other_cover(&self, ball: &OwnedBall, called: &str) -> Option<String> {
        let cover = usize::try_from(ball.cover()?).ok()?;
        let told = COVERS.get(cover)?;
        let model: &Model = self.catalog().find(ball.model()?).ok()?;
        let made = model.cover();
        (made.index() != cover).then(|| {
            format!(
                "For {called}, the cover is told as {told}, yet {} has a {} one. Which is right?",
                model.name(),
                made.name()
            )
        })
    }
}
