//! What the fit card of a ball that was weighed before and after drilling says, as readings and solids.

use std::fmt;

use super::shop::Shop;
use crate::bowler::{Bowler, FitCard, NoOldHoles, Statics};
use crate::document::clean;
use crate::fitting::balance::{self, Change};
use crate::fitting::calibrate::{Reading, ReadingPair};
use crate::fitting::grip::{Digit, Placed, Reference};
use crate::fitting::hole::Hole;
use crate::fitting::solid::{Solid, drilled, sleeve};
use crate::fitting::{Misfit, Sphere};
use crate::vocabulary::{Alone, Situation};

/// Steps of the profile's weights in a pound, and of its static weights in an ounce.
const HUNDREDTHS: f64 = 100.0;
const POUND: f64 = 16.0;

/// Why a card can't be used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CardTrouble {
    pub(super) card: String,
    pub(super) missing: Vec<String>,
    pub(super) wrong: Vec<String>,
}

impl CardTrouble {
    /// What the card was called.
    pub fn card(&self) -> &str {
        &self.card
    }

    /// What it doesn't tell, each in a few words.
    pub fn missing(&self) -> &[String] {
        &self.missing
    }

    /// What is wrong with what it tells, in sentences.
    pub fn wrong(&self) -> &[String] {
        &self.wrong
    }
}

impl fmt::Display for CardTrouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let card = clean(&self.card);
        let mut lines = Vec::new();
        if !self.missing.is_empty() {
            lines.push(format!(
                "{card}: still to tell: {}",
                self.missing.join("; ")
            ));
        }
        lines.extend(self.wrong.iter().map(|wrong| format!("{card}: {wrong}")));
        f.write_str(&lines.join("\n"))
    }
}

/// A card's readings with what the fit needs besides.
pub(super) struct Weighing {
    pub(super) pair: ReadingPair,
    /// Ounces by which the weight falls for each g/cm³ of what was drilled out; none if the ball wasn't weighed.
    pub(super) ounces_a_density: Option<f64>,
    /// What slugs and inserts were counted at, in 0.001 g/cm³, if there are any.
    pub(super) back: Option<i64>,
}

/// Reads one card.
pub(super) fn weighing(shop: &Shop, card: &str, bowler: &Bowler) -> Result<Weighing, CardTrouble> {
    let mut trouble = CardTrouble {
        card: card.to_owned(),
        missing: Vec::new(),
        wrong: Vec::new(),
    };
    let Some(fit) = bowler.card() else {
        trouble.missing.push("the fit card (`fit_card`)".to_owned());
        return Err(trouble);
    };
    // As for every ball: nobody measures it at the counter.
    let ball = Sphere::default();
    if bowler.answer("bowler.hand").is_none() {
        trouble.missing.push("whose hand it is (`hand`)".to_owned());
    }
    let grip = match bowler.old_grip(&ball, Reference::OwnLine) {
        Ok(grip) => Some(grip),
        Err(NoOldHoles::Missing(names)) => {
            trouble.missing.extend(names.into_iter().map(str::to_owned));
            None
        }
        Err(why) => {
            trouble.wrong.push(why.to_string());
            None
        }
    };
    let readings = readings(bowler, fit, &mut trouble.missing);
    let (Some(grip), Some([before, after])) = (grip, readings) else {
        return Err(trouble);
    };
    if !trouble.missing.is_empty() {
        return Err(trouble);
    }
    let back = density_back(shop, bowler);
    match solids(&ball, &grip, back) {
        Ok((removed, put_back)) => {
            let weighed = before.ounces.is_some();
            let one = |solid| Change::out(solid, 1.0).map(|change| change.ounces().abs());
            let ounces: Result<Vec<f64>, Misfit> = removed.iter().copied().map(one).collect();
            Ok(Weighing {
                ounces_a_density: ounces.ok().filter(|_| weighed).map(|all| all.iter().sum()),
                back: back.filter(|_| !put_back.is_empty()),
                pair: ReadingPair {
                    removed,
                    put_back,
                    before,
                    after,
                },
            })
        }
        Err(why) => {
            trouble.wrong.push(why);
            Err(trouble)
        }
    }
}

/// The readings before and after; what is missing is named.
fn readings(bowler: &Bowler, card: &FitCard, missing: &mut Vec<String>) -> Option<[Reading; 2]> {
    let count = missing.len();
    let before = card.before();
    let after = bowler.answer("card.ball_weight");
    if before == Default::default() {
        missing.push("the readings before drilling (`before`)".to_owned());
    } else if before.weight().is_none() && after.is_some() {
        missing.push("the weight before drilling".to_owned());
    }
    if before.weight().is_some() && after.is_none() {
        missing.push("the weight after drilling".to_owned());
    }
    // The profile says right and left as they are seen; a left hand's grip is given as its mirror image.
    let side = if bowler.answer("bowler.hand") == Some(1) {
        -1.0
    } else {
        1.0
    };
    let mut read = |weight: Option<i64>, statics: Statics, when: &str| {
        let ounces = |name: &str, value: Option<i64>, missing: &mut Vec<String>| {
            if value.is_none() && before != Default::default() {
                missing.push(format!("the {name} weight {when} drilling"));
            }
            value.map_or(0.0, |steps| steps as f64 / HUNDREDTHS)
        };
        Reading {
            ounces: weight.map(|steps| steps as f64 / HUNDREDTHS * POUND),
            statics: balance::Statics {
                top: ounces("top", statics.top(), missing),
                side: side * ounces("side", statics.right(), missing),
                finger: ounces("finger", statics.finger(), missing),
            },
        }
    };
    let both = [
        read(before.weight(), before.statics(), "before"),
        read(after, card.statics(), "after"),
    ];
    (missing.len() == count).then_some(both)
}

/// What slugs and inserts weigh by the shop's rules, in 0.001 g/cm³.
fn density_back(shop: &Shop, bowler: &Bowler) -> Option<i64> {
    let situation = Situation::of(bowler, shop.rules());
    let measured = shop
        .rules()
        .measure("bench.density_back", &Alone(&situation));
    measured.value()
}

/// What went out, and what came back with its density.
type Solids = (Vec<Solid>, Vec<(Solid, f64)>);

fn solids(ball: &Sphere, grip: &Placed, back: Option<i64>) -> Result<Solids, String> {
    let check = |digit: Digit, why: Misfit| format!("check the {} hole: {why}", digit.name());
    let (mut removed, mut put_back) = (Vec::new(), Vec::new());
    for (digit, cut) in grip.holes() {
        removed.push(drilled(ball, &cut).map_err(|why| check(digit, why))?);
        let Some(bore) = bore(grip, digit).filter(|bore| *bore != cut) else {
            continue;
        };
        let filled = sleeve(ball, &cut, &bore).map_err(|why| check(digit, why))?;
        let density = back.ok_or("the rules give no `bench.density_back`")?;
        put_back.push((filled, density as f64 / 1000.0));
    }
    Ok((removed, put_back))
}

fn bore(grip: &Placed, digit: Digit) -> Option<Hole> {
    match digit {
        Digit::Thumb => grip.bores.thumb,
        Digit::Middle => Some(grip.bores.middle),
        Digit::Ring => Some(grip.bores.ring),
    }
}
