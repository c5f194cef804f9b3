//! The dear ball that a customer wants all the same: the better fit is told first, and this one beside it.

use super::consultation::{Chosen, Consultation};
use super::outcome::Trouble;
use super::result::Pick;
use super::upgrade::OwnChoice;
use super::upgrading::WISH;
use crate::catalog::Tier;

impl Consultation<'_> {
    /// Of the dearest kind that fills the gap in the settled weight, the one that fits best; none where nobody asked for it, or where the
    /// ball told is of that kind.
    pub(super) fn own_choice(
        &self,
        gap: &str,
        chosen: Option<usize>,
        ranked: &[Pick],
    ) -> Result<Option<OwnChoice>, Trouble> {
        let wished = self.situation.known(WISH) == Some(1);
        let (true, Some(chosen)) = (wished, chosen) else {
            return Ok(None);
        };
        let candidates = self.shop.candidates();
        let stock = self.shop.catalog().stock();
        let is_dear = |at: usize| {
            let ball = candidates.get(at).and_then(|ball| stock.get(ball.stock));
            ball.is_some_and(|unit| unit.model().tier() == Tier::High)
        };
        let weight = self.situation.known("settled.weight");
        let dear = ranked.iter().find_map(|pick| {
            let at = candidates.iter().position(|ball| ball.id == pick.ball)?;
            (is_dear(at) && Some(candidates[at].weight) == weight).then_some(at)
        });
        let Some(candidate) = dear.filter(|_| !is_dear(chosen)) else {
            return Ok(None);
        };
        let mut consultation = self.for_gap(gap);
        let found = consultation.balls(Some(Chosen {
            candidate,
            by_customer: true,
        }))?;
        let bill = consultation.bill(candidate);
        let dearer = bill.total_cents() - consultation.bill(chosen).total_cents();
        let pick = found.picks.into_iter().next();
        Ok(pick.map(|pick| OwnChoice {
            pick,
            bill,
            dearer,
            cautions: consultation.cautions,
        }))
    }
}
