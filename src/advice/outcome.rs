//! What can go wrong in a consultation once all files are read.

use std::fmt;

use crate::document::Faults;

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
    /// No fit card tells of a drilled ball.
    NoUsedBall,
    /// The rules lack something the consultation can't do without.
    Rules(String),
}

impl fmt::Display for Trouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Trouble::Files(faults) => write!(f, "{faults}"),
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
            Trouble::NoUsedBall => write!(
                f,
                "no fit card tells of a drilled ball; read its holes off the ball and write them down as `fit_card`"
            ),
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
