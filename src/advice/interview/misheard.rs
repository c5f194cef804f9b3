//! Why an answer wasn't taken.

use std::fmt;

use crate::bowler::Impossible;

/// Why an answer wasn't taken, in words for whoever gave it.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Misheard {
    /// Nothing was said.
    Silence,
    /// Far more was said than an answer needs.
    TooLong,
    /// It means nothing here, or more than one thing.
    NotUnderstood {
        /// What was said, safe to print and short.
        said: String,
        /// What may be said.
        hint: String,
    },
    /// It was understood, and it can't be.
    Impossible(Impossible),
    /// There is no question with this id.
    NoQuestion(String),
}

impl fmt::Display for Misheard {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Misheard::Silence => {
                f.write_str("I didn't hear an answer. \"I don't know\" is one too.")
            }
            Misheard::TooLong => f.write_str("That was a lot. A word or two will do."),
            Misheard::NotUnderstood { said, hint } => {
                write!(f, "I didn't understand \"{said}\". {hint}")
            }
            Misheard::Impossible(why) => {
                write!(f, "That can't be right: {}.", why.message())?;
                why.help().iter().try_for_each(|help| {
                    let mut letters = help.chars();
                    let first = letters.next().into_iter().flat_map(char::to_uppercase);
                    write!(f, " {}{}.", first.collect::<String>(), letters.as_str())
                })
            }
            Misheard::NoQuestion(id) => write!(f, "There is no question called \"{id}\"."),
        }
    }
}

impl std::error::Error for Misheard {}
