//! An old ball: what can be done with it, each way with its quote, and a new plain ball beside it.

use super::consult::{consult_used, fit_without_a_ball};
use super::consultation::Consultation;
use super::offers::{Offer, Offers};
use super::old_ball::OldBall;
use super::outcome::Trouble;
use super::result::{Advice, Bill};
use super::shop::Shop;
use super::spec::WorkStep;
use super::stock::Thumb;
use crate::bowler::Bowler;
use crate::catalog::{Grip, Order};
use crate::vocabulary::Interval;

impl Shop {
    /// What can be done about the drilled ball of the fit card, each way with its quote, beside a new plain ball.
    ///
    /// Which ways there are, and when each is right, is said by the rules of the subject `offer`.
    ///
    /// # Errors
    /// [`Trouble::NoUsedBall`] where no fit card tells of a drilled ball, and where the rules can't be used.
    pub fn offers(&self, bowler: &Bowler) -> Result<Offers, Trouble> {
        let old = OldBall::of(bowler).ok_or(Trouble::NoUsedBall)?;
        let mut consultation = fit_without_a_ball(self, bowler, &old)?;
        let redrill = consultation.redrill(&old);
        let plain = consultation.plain_ball();
        if let Some(plain) = &plain {
            let over = plain.bill.total_cents() - redrill.total_cents();
            let over = Interval::point(over);
            consultation.situation.set("used.plain_over", over);
        }
        let suits = consultation.situation.known("settled.weight");
        if let (Some(weight), Some(suits)) = (old.weight, suits) {
            let over = Interval::point(weight - suits);
            consultation.situation.set("used.weight_over", over);
        }
        let steps = self.steps("offer", &consultation.situation);
        let mut offers = consultation.work_on(&old, redrill);
        offers.extend(plain);
        for offer in &mut offers {
            let own = |step: &&WorkStep| step.id().split('-').next() == Some(offer.id);
            offer.reasons = steps.iter().filter(own).cloned().collect();
        }
        offers.retain(|offer| !offer.reasons.is_empty());
        Ok(Offers {
            ball: old.name,
            offers,
        })
    }

    /// The consultation for the drilled ball of the fit card in place of one from the shelf: its new spec, what plugs and
    /// new holes come to, and the other offers beside it.
    ///
    /// # Errors
    /// As of [`Shop::offers`].
    pub fn fit_used(&self, bowler: &Bowler) -> Result<Advice, Trouble> {
        let old = OldBall::of(bowler).ok_or(Trouble::NoUsedBall)?;
        let mut advice = consult_used(self, bowler, &old)?;
        advice.offers = Some(self.offers(bowler)?);
        Ok(advice)
    }
}

impl Consultation<'_> {
    /// What can be done with the old ball itself, without the reasons.
    fn work_on(&self, old: &OldBall, redrill: Bill) -> Vec<Offer> {
        let mut inserts = Order::new_parts();
        inserts.grip = Grip::Fingertip;
        let (thumb, part) = match Thumb::of(&self.situation) {
            Thumb::Sleeve => (Thumb::Sleeve, "A new thumb sleeve in the old ball"),
            _ => (Thumb::Slug, "A new thumb slug in the old ball"),
        };
        let anew = match old.open_holes {
            0 => "New holes in the same ball",
            _ => "Plugs and new holes in the same ball",
        };
        let new_thumb = self.parts(&thumb.on(Order::new_parts()));
        let new_inserts = self.parts(&inserts);
        vec![
            Offer::new("ease", "Ease the holes", self.eased()),
            Offer::new("slug", part, new_thumb),
            Offer::new("inserts", "New finger inserts in the old ball", new_inserts),
            Offer::new("redrill", anew, redrill),
        ]
    }
}
