//! What is picked, and nothing of why.

use super::chain::Choice;
use super::consultation::Consultation;
use super::outcome::Trouble;
use super::result::Advice;
use super::shop::Shop;
use super::stock::ball_name;
use crate::bowler::Bowler;
use crate::notation::Notation;
use crate::vocabulary::{BallCandidate, StageWorld, ball_facts, words};

/// Weight, grip and ball as a consultation would pick them. Whatever nothing is right for is none.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Picked {
    weight: Option<String>,
    grip: Option<String>,
    ball: Option<String>,
    name: Option<String>,
    ball_weight: Option<String>,
}

impl Picked {
    /// What an advice picked.
    #[must_use]
    pub fn of(advice: &Advice) -> Picked {
        let settled = |stage: &str| {
            let found = advice.settled().iter().find(|s| s.stage() == stage);
            found.map(|s| s.value().to_owned())
        };
        let first = advice.picks().first();
        Picked {
            weight: settled("weight"),
            grip: settled("grip"),
            ball: first.map(|pick| pick.ball().to_owned()),
            name: first.map(|pick| format!("{}, {}", pick.name(), pick.weight())),
            ball_weight: first.map(|pick| pick.weight().to_string()),
        }
    }

    /// A choice of the shop's, in words.
    pub(super) fn named(shop: &Shop, choice: &Choice) -> Picked {
        let grip = choice.grip.and_then(|grip| usize::try_from(grip).ok());
        let ball = choice.ball.and_then(|ball| shop.candidates().get(ball));
        Picked {
            weight: choice.weight.map(|weight| Notation::Weight.write(weight)),
            grip: grip
                .and_then(|grip| words::GRIPS.get(grip))
                .map(|word| word.replace('_', " ")),
            ball: ball.map(|ball| ball.id.clone()),
            name: ball.map(|ball| ball_name(&shop.catalog().stock()[ball.stock])),
            ball_weight: ball.map(|ball| Notation::Weight.write(ball.weight)),
        }
    }

    /// The weight, such as `12 lb`.
    pub fn weight(&self) -> Option<&str> {
        self.weight.as_deref()
    }

    /// The grip, such as `fingertip`.
    pub fn grip(&self) -> Option<&str> {
        self.grip.as_deref()
    }

    /// `model-id@weight` of the best ball.
    pub fn ball(&self) -> Option<&str> {
        self.ball.as_deref()
    }

    /// Name and weight of the best ball, as people say it.
    pub fn name(&self) -> Option<&str> {
        self.name.as_deref()
    }

    /// The weight, where the ball has another or there is no ball.
    pub fn weight_beside_the_ball(&self) -> Option<&str> {
        let is_beside = self.ball_weight != self.weight;
        self.weight().filter(|_| is_beside)
    }

    /// Which of `weight`, `grip` and `ball` the other has otherwise.
    #[must_use]
    pub fn changed(&self, other: &Picked) -> Vec<&'static str> {
        let all = [
            ("weight", self.weight != other.weight),
            ("grip", self.grip != other.grip),
            ("ball", self.ball != other.ball),
        ];
        let changed = all.into_iter().filter(|(_, changed)| *changed);
        changed.map(|(what, _)| what).collect()
    }
}

impl Shop {
    /// Weight, grip and ball for a bowler, by the same stages as [`Shop::advise`] but without reasons, quote and drill spec.
    ///
    /// # Errors
    /// Those of [`Shop::advise`].
    pub fn pick(&self, bowler: &Bowler) -> Result<Picked, Trouble> {
        if bowler.settled_ball().is_some() {
            return Ok(Picked::of(&self.advise(bowler)?));
        }
        let mut consultation = Consultation::begin(self, bowler);
        consultation.weight(bowler.answer("settled.weight"))?;
        consultation.grip()?;
        let settled = |fact: &str| consultation.situation.known(fact);
        let choice = Choice {
            weight: settled("settled.weight"),
            grip: settled("settled.grip"),
            ball: consultation.first_ball()?,
        };
        Ok(Picked::named(self, &choice))
    }
}

impl Consultation<'_> {
    fn first_ball(&self) -> Result<Option<usize>, Trouble> {
        let facts = ball_facts();
        let price = |c: &BallCandidate| c.price;
        let world = StageWorld::new(&self.situation, &facts, self.shop.candidates(), price);
        let chooser = self.shop.rules().chooser("ball", &world);
        let chooser = chooser.ok_or_else(|| Trouble::Rules("no subject `ball`".into()))?;
        Ok(chooser.rank(&world).order().first().copied())
    }
}
