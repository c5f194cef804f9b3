//! A ball as the physics of the roll sees it: from the shelf, or one the bowler owns.

mod owned;
mod words;

use super::consultation::Consultation;
use super::friction::{Surface, body};
use super::outcome::Trouble;
use super::owned_now::called;
use super::reason::Reason;
use super::shop::Shop;
use super::standing::Standing;
use super::stock::ball_name;
use crate::bowler::{Bowler, OwnedBall};
use crate::document::nearest;
use crate::fitting::{Sphere, inches};
use crate::motion::{Angle, Attitude, Ball, Friction, Impossible};
use crate::rules::Interval;
use crate::vocabulary::{Alone, StageWorld, all_words, layout_facts, words as lists};

/// A ball as the physics of the roll sees it.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct RollBall {
    pub(crate) id: String,
    pub(crate) name: String,
    pub(crate) cover: Option<i64>,
    pub(crate) owned: bool,
    pub(crate) ball: Ball,
    pub(crate) attitude: Option<Attitude>,
    pub(crate) friction: Friction,
    pub(crate) friction_lines: [Vec<Reason>; 2],
    pub(crate) assumed: Vec<String>,
}

impl Shop {
    /// A ball as the physics of the roll sees it: one that the bowler owns, by what the bowler calls it, else one on the shelf, `model-id` or
    /// `model-id@weight`. Without a weight it is in the one that goes with the balls owned, as [`Shop::upgrade`] has it; else the one that
    /// stands best for this bowler, as [`Shop::compare`] has it.
    ///
    /// # Errors
    /// No such ball, none on the shelf in that weight, an owned ball whose cover isn't known, or rules that give its cover no friction.
    pub fn roll_ball(&self, bowler: &Bowler, name: &str) -> Result<RollBall, Trouble> {
        let asked = name.trim();
        if let Some(owned) = owned_by_name(bowler.owned(), asked)? {
            let mut ball = self.owned_roll_ball(bowler, &bowler.owned()[owned])?;
            ball.name = called(bowler.owned(), owned);
            ball.id = ball.name.clone();
            if self.catalog().find(asked).is_ok() {
                ball.assumed.push(format!(
                    "It is the ball owned. To mean the one on the shelf, write `{asked}@` and its weight."
                ));
            }
            return Ok(ball);
        }
        let id = asked.split_once('@').map_or(asked, |(id, _)| id);
        if self.catalog().find(id).is_err() && !id.trim().is_empty() {
            let own = bowler.owned().iter().filter_map(OwnedBall::name);
            let sold = self.catalog().models().map(|model| model.id());
            return Err(Trouble::NoSuchBall {
                nearest: nearest(id, own.chain(sold)).map(str::to_owned),
                asked: asked.chars().take(LONGEST).collect(),
            });
        }
        let standing = self.standing(bowler)?;
        let candidate = match self.in_the_weight_owned(bowler, asked)? {
            Some(candidate) => candidate,
            None => standing.meant(asked)?,
        };
        let ball = &self.candidates()[candidate];
        let stock = &self.catalog().stock()[ball.stock];
        let model = stock.model();
        let surface = Surface::new(model.cover())
            .finished(model.finish())
            .games(0);
        let gripping = self.friction(&surface)?;
        let mut assumed =
            vec!["It is taken as it stands on the shelf, before it is drilled.".into()];
        let attitude = match standing.pin_from_pap(candidate) {
            Some(pin) => Some(attitude(pin).map_err(Trouble::NoRoll)?),
            None => {
                assumed.push(UNTOLD.into());
                None
            }
        };
        Ok(RollBall {
            id: ball.id.clone(),
            name: ball_name(stock),
            cover: Some(ball.cover),
            owned: false,
            ball: body(stock).map_err(Trouble::NoRoll)?,
            attitude,
            friction: *gripping.friction(),
            friction_lines: [gripping.in_oil().to_vec(), gripping.on_dry().to_vec()],
            assumed,
        })
    }
}

impl Shop {
    /// The ball named without its weight, in the weight that goes with the balls owned; none where nothing is owned, or it isn't on the
    /// shelf in that weight.
    fn in_the_weight_owned(&self, bowler: &Bowler, asked: &str) -> Result<Option<usize>, Trouble> {
        let named = self.named(asked)?;
        if named.weight.is_some() || bowler.owned().is_empty() {
            return Ok(None);
        }
        let mut consultation = Consultation::begin(self, bowler);
        consultation.take_owned_weight();
        consultation.weight(bowler.answer("settled.weight"))?;
        let weight = consultation.situation.known("settled.weight");
        Ok(weight.and_then(|weight| self.in_weight(&named, weight).ok()))
    }
}

/// The place of the owned ball that is called this; with its place in the list behind it where several are called the same.
fn owned_by_name(owned: &[OwnedBall], asked: &str) -> Result<Option<usize>, Trouble> {
    let places = 0..owned.len();
    if let Some(place) = places.clone().find(|&at| same(&called(owned, at), asked)) {
        return Ok(Some(place));
    }
    let is_named = |at: &usize| owned[*at].name().is_some_and(|own| same(own, asked));
    let found: Vec<usize> = places.filter(is_named).collect();
    match found[..] {
        [] => Ok(None),
        [one] => Ok(Some(one)),
        _ => Err(Trouble::SeveralOfThatName {
            names: found.iter().map(|&at| called(owned, at)).collect(),
        }),
    }
}

/// The most letters of a name that a message repeats.
const LONGEST: usize = 60;
/// Said of a ball whose layout doesn't start from a measured PAP.
const UNTOLD: &str = "Its pin isn't placed from a measured PAP, so its flare can't be told.";

/// Whether two names are one, whatever the capitals.
fn same(one: &str, other: &str) -> bool {
    one.trim().to_lowercase() == other.to_lowercase()
}

/// The pin so far from the PAP along a ball 27 in round, in 1/64 in, straight above it.
fn attitude(pin: i64) -> Result<Attitude, Impossible> {
    let pin = Sphere::default().degrees(inches(pin));
    let nothing = Angle::degrees(0.0);
    Attitude::new(Angle::degrees(pin), nothing, nothing)
}

impl Standing<'_> {
    /// How far from the PAP the pin of a new ball would be laid out, in 1/64 in; none where its layout doesn't go by a measured PAP.
    fn pin_from_pap(&self, candidate: usize) -> Option<i64> {
        let rules = self.shop.rules();
        let ball = self.shop.candidates().get(candidate)?;
        let mut situation = self.situation.clone();
        situation.set("settled.cover", Interval::point(ball.cover));
        situation.set("settled.core", Interval::point(ball.core));
        if situation.known("settled.layout").is_none() {
            let candidates = all_words(lists::LAYOUTS);
            let facts = layout_facts();
            let first = {
                let world = StageWorld::new(&situation, &facts, &candidates, |c| c.0);
                let ranking = rules.chooser("layout", &world)?.rank(&world);
                ranking.order().first().copied()?
            };
            let layout = candidates.get(first)?.0;
            situation.set("settled.layout", Interval::point(layout));
        }
        let from_pap = situation.is_word("settled.layout", "pin_from_PAP");
        let known = ["bowler.pap_over", "bowler.pap_up"];
        let known = known.iter().all(|name| situation.get(name).is_known());
        let value = || rules.measure("pin.from_pap", &Alone(&situation)).value();
        (from_pap && known).then(value).flatten()
    }
}

impl RollBall {
    /// `model-id@weight`, or what the bowler calls it.
    pub fn id(&self) -> &str {
        &self.id
    }
    /// As people say it.
    pub fn name(&self) -> &str {
        &self.name
    }
    /// Its cover, as an index of `COVERS`.
    pub fn cover(&self) -> Option<i64> {
        self.cover
    }
    /// Whether the bowler owns it.
    pub fn is_owned(&self) -> bool {
        self.owned
    }
    /// Mass, radius and moments.
    pub fn body(&self) -> &Ball {
        &self.ball
    }
    /// Where the pin stands at the release; none where it isn't known how far it is from the PAP: then flare can't be told.
    pub fn attitude(&self) -> Option<&Attitude> {
        self.attitude.as_ref()
    }
    /// The friction its cover finds.
    pub fn friction(&self) -> &Friction {
        &self.friction
    }
    /// Why that friction, in the oil: lines of a measure.
    pub fn friction_in_oil(&self) -> &[Reason] {
        &self.friction_lines[0]
    }
    /// Why that friction, on the dry.
    pub fn friction_on_dry(&self) -> &[Reason] {
        &self.friction_lines[1]
    }
    /// What was taken for granted about this ball, in a sentence each.
    pub fn assumed(&self) -> &[String] {
        &self.assumed
    }
}
