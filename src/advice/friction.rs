//! The friction that a cover finds on a lane, by the rules' one table.

use std::collections::BTreeMap;
use std::fmt;

use super::explain::{self, Scale};
use super::friction_faults::{fault, stopped};
use super::outcome::Trouble;
use super::reason::Reason;
use super::shop::Shop;
use crate::catalog::{Cover, Finish, Stock};
use crate::fitting::Sphere;
use crate::motion::{Ball, Friction, Impossible, Length, Mass};
use crate::notation::Notation;
use crate::rules::{Measured, RuleSet};
use crate::vocabulary::{Alone, FRICTIONS, GRITS, Interval, Situation};

/// A cover as it meets the lane.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Surface {
    cover: Cover,
    finish: Option<Finish>,
    grit: Option<i64>,
    games: Option<i64>,
}

impl Surface {
    /// A cover, with nothing known of its surface: then it counts as its cover's plain start.
    #[must_use]
    pub fn new(cover: Cover) -> Self {
        Surface {
            cover,
            finish: None,
            grit: None,
            games: None,
        }
    }
    /// With this finish.
    #[must_use]
    pub fn finished(self, finish: Finish) -> Self {
        Surface {
            finish: Some(finish),
            ..self
        }
    }
    /// Sanded with this grit last; what no grit is, as [`GRITS`] has them, is taken for the nearest.
    #[must_use]
    pub fn grit(self, grit: i64) -> Self {
        let grit = grit.clamp(*GRITS.start(), *GRITS.end());
        Surface {
            grit: Some(grit),
            ..self
        }
    }
    /// So many games after it was cleaned out and resurfaced.
    #[must_use]
    pub fn games(self, games: i64) -> Self {
        Surface {
            games: Some(games.clamp(0, 5_000)),
            ..self
        }
    }
}

/// As `a solid cover, sanded, 2000 grit, 30 games after it was cleaned out`.
impl fmt::Display for Surface {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "the {} cover", self.cover.name())?;
        if let Some(finish) = self.finish {
            write!(f, ", {}", finish.name())?;
        }
        if let Some(grit) = self.grit {
            write!(f, ", {grit} grit")?;
        }
        match self.games.filter(|games| *games > 0) {
            Some(games) => write!(f, ", {games} games after it was cleaned out"),
            None => Ok(()),
        }
    }
}

/// What a surface finds on a lane, and why.
#[derive(Clone, Debug)]
pub struct Gripping {
    friction: Friction,
    lines: [Vec<Reason>; 2],
}

impl Gripping {
    /// Both coefficients.
    pub fn friction(&self) -> &Friction {
        &self.friction
    }
    /// Why that much in the oil: lines of a measure that add up to it.
    pub fn in_oil(&self) -> &[Reason] {
        &self.lines[0]
    }
    /// Why that much on the dry.
    pub fn on_dry(&self) -> &[Reason] {
        &self.lines[1]
    }
}

impl Shop {
    /// The friction of a surface by this shop's rules, `friction.oil` and `friction.dry`.
    ///
    /// # Errors
    /// [`Trouble::Friction`] where the rules give a surface no number, several, one beyond the limits, or more grip in the oil than on the
    /// dry.
    pub fn friction(&self, surface: &Surface) -> Result<Gripping, Trouble> {
        let situation = situation(self.rules(), surface);
        for subject in FRICTIONS {
            self.observe(subject, &Alone(&situation));
        }
        let (friction, measured) = judged(self.rules(), surface)?;
        let scale = Scale::Measure {
            notation: Notation::Coefficient,
            mirrored: false,
        };
        Ok(Gripping {
            friction,
            lines: measured.map(|measured| {
                let lines = measured.lines().iter();
                lines
                    .map(|line| explain::reason(self.rules(), line, scale))
                    .collect()
            }),
        })
    }
}

/// The frictions of what stands on a shelf, each surface worked out once.
pub(super) struct Frictions<'r> {
    rules: &'r RuleSet,
    known: BTreeMap<(Cover, Finish), Option<Friction>>,
}

impl<'r> Frictions<'r> {
    pub(super) fn new(rules: &'r RuleSet) -> Self {
        let known = BTreeMap::new();
        Frictions { rules, known }
    }

    /// Of a ball as it is delivered; none where the rules don't say.
    pub(super) fn of(&mut self, cover: Cover, finish: Finish) -> Option<Friction> {
        let rules = self.rules;
        *self.known.entry((cover, finish)).or_insert_with(|| {
            let surface = Surface::new(cover).finished(finish).games(0);
            judged(rules, &surface).ok().map(|(friction, _)| friction)
        })
    }
}

/// A stocked model as a rigid body: an undrilled ball 27 in round, its mass centre in the middle.
pub(super) fn body(stock: &Stock) -> Result<Ball, Impossible> {
    body_of(stock.weight(), stock.numbers().rgs())
}

/// A ball 27 in round, of a weight in 0.01 lb and lowest, middle and highest RG in 0.001 in.
pub(super) fn body_of(weight: i64, rg: [i64; 3]) -> Result<Ball, Impossible> {
    // Whole steps of a few thousand: exact.
    let mass = Mass::pounds(weight as f64 / 100.0);
    let radius = Length::inches(Sphere::default().radius());
    Ball::new(
        mass,
        radius,
        rg.map(|rg| Length::inches(rg as f64 / 1000.0)),
    )
}

fn situation(rules: &RuleSet, surface: &Surface) -> Situation {
    let mut situation = Situation::empty(rules.vocabulary());
    let index = |at: usize| i64::try_from(at).ok();
    let facts = [
        ("roll.cover", index(surface.cover.index())),
        (
            "roll.finish",
            surface.finish.and_then(|it| index(it.index())),
        ),
        ("roll.grit", surface.grit),
        ("roll.games", surface.games),
    ];
    let vocabulary = rules.vocabulary();
    let known = facts.into_iter().filter_map(|(name, value)| {
        let fact = vocabulary.id(name)?;
        Some((fact, Interval::point(value?)))
    });
    situation.set_all(known);
    situation
}

fn measured(rules: &RuleSet, situation: &Situation) -> [Measured; 2] {
    FRICTIONS.map(|subject| rules.measure(subject, &Alone(situation)))
}

/// Both coefficients and the lines that add up to them.
pub(super) fn judged(
    rules: &RuleSet,
    surface: &Surface,
) -> Result<(Friction, [Measured; 2]), Trouble> {
    let measured = measured(rules, &situation(rules, surface));
    match friction(&measured) {
        Some(friction) => Ok((friction, measured)),
        None => Err(Trouble::Friction(fault(rules, surface, &measured))),
    }
}

fn friction(measured: &[Measured; 2]) -> Option<Friction> {
    let number = |measured: &Measured| {
        let whole = measured.value().filter(|_| stopped(measured).is_none())?;
        Some(whole as f64 / 1000.0)
    };
    let [oil, dry] = measured;
    Friction::new(number(oil)?, number(dry)?).ok()
}
