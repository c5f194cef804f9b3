//! Why an answer wasn't taken.

use std::fmt;

use super::hearing::{is_negated, within};
use super::question::{Choice, Question};
use crate::bowler::Impossible;
use crate::document::{clean, nearest};

/// The most of an answer that is said again, in characters.
const LONGEST_ECHO: usize = 40;

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
    /// It may mean several things, or nothing that this question takes.
    Unclear {
        /// What was said, safe to print and short.
        said: String,
        /// What to say instead.
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
            Misheard::Unclear { said, hint } => write!(f, "You said \"{said}\". {hint}"),
            Misheard::Impossible(why) => {
                write!(f, "That can't be right: {}.", why.message())?;
                why.help().iter().try_for_each(|help| {
                    let mut letters = help.chars();
                    let first = letters.next().into_iter().flat_map(char::to_uppercase);
                    write!(f, " {}{}.", first.collect::<String>(), letters.as_str())
                })?;
                if why.is_against_another() {
                    f.write_str(" Say \"go back\" to change what you said before.")?;
                }
                Ok(())
            }
            Misheard::NoQuestion(id) => write!(f, "There is no question called \"{id}\"."),
        }
    }
}

impl std::error::Error for Misheard {}

impl Question {
    /// Why this isn't understood: the text that was looked at, and how it was said.
    pub(super) fn not_understood(&self, text: &str, said: &str) -> Misheard {
        let sayings = self.choices.iter().flat_map(|choice| &choice.sayings);
        let sayings = sayings
            .chain(&self.none)
            .chain(&self.other)
            .chain(&self.open);
        // What was said word for word, and still isn't an answer, is no help.
        let sayings = sayings.filter(|saying| !is_negated(text) && *saying != text);
        let several = within(self, text);
        let hint = if several.len() > 1 {
            self.which(several)
        } else if let Some(near) = nearest(text, sayings.map(String::as_str)) {
            format!("Did you mean \"{near}\"?")
        } else if let Some(like) = self.such_as_hint() {
            like
        } else {
            let labels: Vec<String> = self.choices.iter().map(quoted).collect();
            format!("Please say one of: {}.", labels.join(", "))
        };
        Misheard::NotUnderstood {
            said: echo(said),
            hint,
        }
    }

    /// Examples of a number.
    pub(super) fn such_as_hint(&self) -> Option<String> {
        self.quantity?;
        let (first, last) = (self.such_as.first()?, self.such_as.last()?);
        Some(if first == last {
            format!("Please say it like \"{first}\".")
        } else {
            format!("Please say it like \"{first}\" or \"{last}\".")
        })
    }

    /// Asks which of these it is.
    pub(super) fn which<'c>(&self, choices: impl IntoIterator<Item = &'c Choice>) -> String {
        let labels: Vec<String> = choices.into_iter().map(quoted).collect();
        format!("Which is it: {}?", labels.join(" or "))
    }

    /// That none of the choices doesn't go with one of them.
    pub(super) fn none_alone(&self) -> String {
        let none = self.none_label.as_deref().unwrap_or_default();
        format!("Please say \"{none}\" alone, or name what there is.")
    }
}

fn quoted(choice: &Choice) -> String {
    format!("\"{}\"", choice.label)
}

pub(super) fn unclear(said: &str, hint: String) -> Misheard {
    Misheard::Unclear {
        said: echo(said),
        hint,
    }
}

/// What was said, short and safe to print.
fn echo(said: &str) -> String {
    let words: Vec<&str> = said.split_whitespace().collect();
    let whole = words.join(" ");
    let mut short: String = whole.chars().take(LONGEST_ECHO).collect();
    if short.len() < whole.len() {
        short.push('…');
    }
    clean(&short)
}
