//! The drilled ball of a profile: what it is called, what it weighs, and how many of its holes are open.

use super::consultation::Consultation;
use crate::bowler::Bowler;
use crate::vocabulary::Interval;

/// A drilled ball the customer brings.
pub(super) struct OldBall {
    /// What it is called; "the old ball" where nobody said.
    pub(super) name: String,
    /// What it weighs, in 0.01 lb.
    pub(super) weight: Option<i64>,
    /// Its cover, as an index of the covers.
    pub(super) cover: Option<i64>,
    /// Holes to fill before it is drilled anew.
    pub(super) open_holes: u8,
}

impl OldBall {
    /// The profile's used ball, else the ball of its fit card; none without a card.
    pub(super) fn of(bowler: &Bowler) -> Option<OldBall> {
        let card = bowler.card()?;
        let used = bowler.used_ball();
        let name = used.and_then(|used| used.ball()).or(card.ball());
        let owned = bowler
            .owned()
            .iter()
            .find(|ball| name.is_some() && ball.name() == name);
        let own_now = bowler.answer("bowler.ball_now") == Some(2);
        let weight = owned
            .and_then(|ball| ball.weight())
            .or_else(|| bowler.answer("card.ball_weight"))
            .or_else(|| {
                let now = bowler.answer("bowler.ball_now_weight");
                now.filter(|_| own_now)
            });
        let plugged = used.is_some_and(|used| used.is_plugged());
        Some(OldBall {
            name: name.unwrap_or("the old ball").to_owned(),
            weight,
            cover: owned.and_then(|ball| ball.cover()),
            open_holes: match (plugged, bowler.card_has_thumb()) {
                (true, _) => 0,
                (false, true) => 3,
                (false, false) => 2,
            },
        })
    }
}

impl Consultation<'_> {
    /// What the old ball tells before any rule is asked.
    pub(super) fn bring(&mut self, old: &OldBall) {
        let holes = Interval::point(i64::from(old.open_holes));
        self.situation.set("used.open_holes", holes);
    }
}
