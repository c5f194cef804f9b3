//! What can go wrong in a consultation once all files are read.

use std::fmt;

use itertools::Itertools;

use crate::catalog::UnknownLane;
use crate::document::Faults;
use crate::motion::Impossible;

/// Why there is no advice.
#[derive(Debug)]
#[non_exhaustive]
pub enum Trouble {
    /// A file is at fault; every fault with its place.
    Files(Faults),
    /// No ball in the catalog has this id.
    UnknownBall {
        /// What was asked for.
        asked: String,
        /// The nearest id the catalog has.
        nearest: Option<String>,
    },
    /// The ball is not on the shelf in any weight this advice could use.
    NotOnShelf {
        /// What was asked for.
        asked: String,
        /// The weight that was asked for or settled on.
        wanted: String,
        /// The weights that are on the shelf.
        weights: String,
    },
    /// The ball is in the catalog and in no weight on the shelf.
    NoneOnShelf {
        /// What was asked for.
        asked: String,
    },
    /// What stands behind the `@` of a ball is no weight.
    NotAWeight {
        /// The ball.
        asked: String,
        /// What was found in place of a weight.
        found: String,
        /// The weights that are on the shelf.
        weights: String,
    },
    /// Two balls were to be held against each other and are one.
    SameBall {
        /// The ball, `model-id@weight`.
        ball: String,
    },
    /// No fit card tells of a drilled ball.
    NoUsedBall,
    /// Something has to be measured before a roll can be told.
    NotMeasured {
        /// Each with how it is measured.
        missing: Vec<String>,
    },
    /// A roll is told of one ball or two.
    NotOneOrTwoBalls {
        /// How many were named.
        named: usize,
    },
    /// No lane in the catalog has this id.
    UnknownLane(UnknownLane),
    /// Neither the catalog nor the bowler has a ball of this name.
    NoSuchBall {
        /// What was asked for.
        asked: String,
        /// The nearest name there is.
        nearest: Option<String>,
    },
    /// Several balls owned are called the same.
    SeveralOfThatName {
        /// How each is told apart.
        names: Vec<String>,
    },
    /// An owned ball can't be rolled while nobody knows what it is made of.
    CoverNotKnown {
        /// What the bowler calls it.
        ball: String,
    },
    /// The rules give a surface no friction that can be: which surface, which measure, which rules and their files.
    Friction(String),
    /// The physics has no roll for these numbers.
    NoRoll(Impossible),
    /// The rules lack something the consultation can't do without.
    Rules(String),
}

impl fmt::Display for Trouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Trouble::Files(faults) => write!(f, "{faults}"),
            Trouble::UnknownBall { asked, .. } if asked.trim().is_empty() => write!(
                f,
                "no ball was named; expected its id in the catalog, or `ID@WEIGHT`"
            ),
            Trouble::UnknownBall { asked, nearest } => {
                write!(
                    f,
                    "no ball `{}` in the catalog",
                    crate::document::clean(asked)
                )?;
                match nearest {
                    Some(name) => write!(f, "; did you mean `{name}`?"),
                    None => Ok(()),
                }
            }
            Trouble::NotOnShelf {
                asked,
                wanted,
                weights,
            } => write!(
                f,
                "`{}` is not on the shelf in {}; on the shelf: {weights}",
                crate::document::clean(asked),
                crate::document::clean(wanted)
            ),
            Trouble::NoneOnShelf { asked } => write!(
                f,
                "`{}` is not on the shelf in any weight",
                crate::document::clean(asked)
            ),
            Trouble::NotAWeight {
                asked,
                found,
                weights,
            } if found.trim().is_empty() => write!(
                f,
                "no weight stands behind the `@` of `{0}@`; leave the `@` out, or say one as in `{0}@12`; on the shelf: {weights}",
                crate::document::clean(asked)
            ),
            Trouble::NotAWeight {
                asked,
                found,
                weights,
            } => write!(
                f,
                "`{}` is no weight; `{}` is on the shelf in {weights}",
                crate::document::clean(found),
                crate::document::clean(asked)
            ),
            Trouble::SameBall { ball } => write!(
                f,
                "`{}` was named twice; expected two balls, or one in two weights such as `ID@12` and `ID@14`",
                crate::document::clean(ball)
            ),
            Trouble::NoUsedBall => write!(
                f,
                "no fit card tells of a drilled ball; read its holes off the ball and write them down as `fit_card`"
            ),
            Trouble::NotMeasured { missing } => {
                write!(
                    f,
                    "the roll can't be told yet, and nothing of it is guessed; to measure first:"
                )?;
                missing.iter().try_for_each(|what| write!(f, "\n- {what}"))
            }
            Trouble::NotOneOrTwoBalls { named } => write!(
                f,
                "{named} balls were named; expected one, or two to be held against each other"
            ),
            Trouble::UnknownLane(unknown) => write!(f, "{unknown}"),
            Trouble::SeveralOfThatName { names } => write!(
                f,
                "{} balls owned are called the same; say which: `{}`",
                names.len(),
                names
                    .iter()
                    .map(|name| crate::document::clean(name))
                    .join("`, `")
            ),
            Trouble::NoSuchBall { asked, nearest } => {
                write!(
                    f,
                    "no ball `{}` in the catalog or among the balls owned",
                    crate::document::clean(asked)
                )?;
                match nearest {
                    Some(name) => write!(f, "; did you mean `{name}`?"),
                    None => write!(
                        f,
                        "; name one by its id in the shop's models.csv, or as the profile's `owned` calls it"
                    ),
                }
            }
            Trouble::CoverNotKnown { ball } => write!(
                f,
                "nobody knows the cover of `{}`; tell it as `cover` beside the ball, or its `model` in the catalog",
                crate::document::clean(ball)
            ),
            Trouble::Friction(what) => write!(f, "the friction table can't be used: {what}"),
            Trouble::NoRoll(why) => write!(f, "there is no roll to tell: {why}"),
            Trouble::Rules(text) => write!(f, "the rules can't be used: {text}"),
        }
    }
}

impl std::error::Error for Trouble {}

impl From<Faults> for Trouble {
    fn from(faults: Faults) -> Self {
        Trouble::Files(faults)
    }
}
