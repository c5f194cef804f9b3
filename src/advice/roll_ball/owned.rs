//! A ball the bowler owns, as far as it is known; what isn't is taken from the shop's catalog, and said.

use super::super::friction::{Surface, body_of};
use super::super::outcome::Trouble;
use super::super::shop::Shop;
use super::{RollBall, attitude, words};
use crate::bowler::{Bowler, OwnedBall};
use crate::catalog::{CoreNumbers, Cover, Finish, Model};
use crate::document::clean;
use crate::notation::Notation;

/// A ball whose weight nobody tells, in 0.01 lb. Own choice; the weight hardly matters to a roll.
const SOME_WEIGHT: i64 = 1400;

impl Shop {
    /// An owned ball as the physics sees it.
    pub(in crate::advice) fn owned_roll_ball(
        &self,
        bowler: &Bowler,
        owned: &OwnedBall,
    ) -> Result<RollBall, Trouble> {
        let name = owned.name().or(owned.model()).unwrap_or("the ball");
        let mut assumed = Vec::new();
        let model = owned.model().map(|id| self.owned_model(id)).transpose()?;
        let cover = owned.cover().and_then(|at| usize::try_from(at).ok());
        let cover = cover.and_then(|at| Cover::ALL.get(at).copied());
        let cover = cover
            .or(model.map(Model::cover))
            .ok_or_else(|| Trouble::CoverNotKnown { ball: clean(name) })?;

        let weight = self.owned_weight(bowler, owned, &mut assumed);
        let (of, core) = self
            .core_of(model, cover, weight)
            .ok_or_else(|| Trouble::Rules("the catalog has no core numbers".into()))?;
        if model.is_none() {
            assumed.push(format!(
                "Its model isn't known: it is taken to turn as {of} does, the middle one of its kind here."
            ));
        }
        let ball = body_of(weight, core.rgs()).map_err(Trouble::NoRoll)?;

        let gripping = self.friction(&surface(owned, model, cover, &mut assumed))?;
        let told = owned.pin_from_pap();
        let pin = told.or_else(|| owned.layout().and_then(words::pin_from_pap));
        if pin.is_none() {
            assumed.push(
                "How far its pin is from the PAP isn't known, so its flare can't be told.".into(),
            );
        }
        let attitude = pin.map(attitude).transpose().map_err(Trouble::NoRoll)?;
        Ok(RollBall {
            id: name.to_owned(),
            name: name.to_owned(),
            cover: i64::try_from(cover.index()).ok(),
            owned: true,
            ball,
            attitude,
            friction: *gripping.friction(),
            friction_lines: [gripping.in_oil().to_vec(), gripping.on_dry().to_vec()],
            assumed,
        })
    }

    fn owned_model(&self, id: &str) -> Result<&Model, Trouble> {
        self.catalog().find(id).map_err(|unknown| {
            let nearest = unknown.nearest;
            Trouble::UnknownBall {
                asked: id.to_owned(),
                nearest,
            }
        })
    }

    fn owned_weight(&self, bowler: &Bowler, owned: &OwnedBall, assumed: &mut Vec<String>) -> i64 {
        let told = owned.weight();
        let others = ["bowler.ball_now_weight", "settled.weight"];
        let other = || others.iter().find_map(|name| bowler.answer(name));
        told.unwrap_or_else(|| {
            let weight = other().unwrap_or(SOME_WEIGHT);
            let pounds = Notation::Weight.write(weight);
            assumed.push(format!("Its weight isn't known: {pounds} is taken."));
            weight
        })
    }

    /// The core numbers of a model in the weight nearest to this one; without a model, of the middle one, by RG, among all of its cover in
    /// this weight, or in any, or of all there are. With the model's name.
    fn core_of(
        &self,
        model: Option<&Model>,
        cover: Cover,
        weight: i64,
    ) -> Option<(String, CoreNumbers)> {
        let all = || self.catalog().core_numbers();
        let named = |id: &str, core| Some((self.catalog().find(id).ok()?.name().to_owned(), core));
        if let Some(model) = model {
            let own = all().filter(|(id, ..)| *id == model.id());
            let (id, _, core) = own.min_by_key(|(_, made, _)| ((made - weight).abs(), *made))?;
            return named(id, core);
        }
        let is_kind = |id: &str| self.catalog().find(id).is_ok_and(|m| m.cover() == cover);
        let kind = || all().filter(|(id, ..)| is_kind(id));
        let here = kind().filter(|(_, made, _)| *made == weight);
        let choices = [here.collect(), kind().collect(), all().collect::<Vec<_>>()];
        let mut cores = choices.into_iter().find(|choice| !choice.is_empty())?;
        cores.sort_by_key(|(id, made, core)| (core.rgs(), *id, *made));
        let (id, _, core) = *cores.get((cores.len() - 1) / 2)?;
        named(id, core)
    }
}

/// The surface as it is now, by the note on it; else as the model is delivered.
fn surface(
    owned: &OwnedBall,
    model: Option<&Model>,
    cover: Cover,
    assumed: &mut Vec<String>,
) -> Surface {
    let (finish, grit) = owned.surface().map(words::surface).unwrap_or_default();
    let finish = finish.or_else(|| {
        let as_sold = model.map(Model::finish);
        assumed.push(match (as_sold, cover) {
            (Some(_), _) => "Its surface isn't known: it is taken as it was sold.".into(),
            (None, Cover::Polyester) => "Its surface isn't known: it is taken as polished.".into(),
            (None, _) => "Its surface isn't known: it is taken as matte.".into(),
        });
        as_sold
    });
    let finish = finish.unwrap_or(match cover {
        Cover::Polyester => Finish::Polished,
        _ => Finish::Matte,
    });
    let mut surface = Surface::new(cover).finished(finish);
    if let Some(grit) = grit {
        surface = surface.grit(grit);
    }
    match owned.games_since_service() {
        Some(games) => surface = surface.games(games),
        None if owned.is_reactive() == Some(false) => {}
        None => assumed.push(
            "The games since it was cleaned out aren't known: it is taken as freshly done.".into(),
        ),
    }
    surface
}
