//! A reason as it leaves the engine: the same line in words for each audience, with its source.

use crate::rules::{Audience, Severity};

/// One text for each audience.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Texts {
    pub(crate) newcomer: String,
    pub(crate) league: String,
    pub(crate) fitter: String,
}

impl Texts {
    /// The same words for everybody.
    pub(crate) fn alike(text: impl Into<String>) -> Self {
        let text = text.into();
        Texts {
            newcomer: text.clone(),
            league: text.clone(),
            fitter: text,
        }
    }

    /// The words for one audience.
    pub fn of(&self, audience: Audience) -> &str {
        match audience {
            Audience::Newcomer => &self.newcomer,
            Audience::League => &self.league,
            Audience::Fitter => &self.fitter,
        }
    }
}

/// One ledger line, with everything a reader needs to judge it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reason {
    pub(crate) rule: String,
    pub(crate) file: String,
    pub(crate) points: i64,
    pub(crate) shown: String,
    pub(crate) role: &'static str,
    pub(crate) common: bool,
    pub(crate) facts: Vec<(&'static str, String)>,
    pub(crate) texts: Texts,
    pub(crate) source: String,
    pub(crate) strength: &'static str,
}

impl Reason {
    /// The id of the rule that speaks, stable between releases.
    pub fn rule(&self) -> &str {
        &self.rule
    }
    /// The file the rule stands in, so that a shop's own rules can be told from the built-in ones.
    pub fn file(&self) -> &str {
        &self.file
    }
    /// Tenths of a point in a choice; steps of the measure's notation in a measure.
    pub fn points(&self) -> i64 {
        self.points
    }
    /// The points as people read them: `+1.4`, or `1/8 in R` in a measure.
    pub fn shown(&self) -> &str {
        &self.shown
    }
    /// What the line does: `points`, `rule_out`, `caution`, `start`, `add`, `limit`, `rounding` or `dispute`.
    pub fn role(&self) -> &'static str {
        self.role
    }
    /// True if every remaining candidate has the same line, so it is no reason for this one.
    pub fn is_common(&self) -> bool {
        self.common
    }
    /// The facts the rule looked at or prints, each with its value as people write it.
    pub fn facts(&self) -> &[(&'static str, String)] {
        &self.facts
    }
    /// The reason in an audience's words.
    pub fn text(&self, audience: Audience) -> &str {
        self.texts.of(audience)
    }
    /// Title, author and section of the source, or `common practice`, `from memory`, `own choice`.
    pub fn source(&self) -> &str {
        &self.source
    }
    /// How sure the source is: `published`, `published, weak`, `common practice`, …
    pub fn strength(&self) -> &'static str {
        self.strength
    }
}

/// Something to watch out for: of the person, of a ball or of a number.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Caution {
    pub(crate) severity: Severity,
    pub(crate) about: String,
    pub(crate) action: Option<Texts>,
    pub(crate) reason: Reason,
}

impl Caution {
    /// Mild or serious; serious ones stand first in every output.
    pub fn severity(&self) -> Severity {
        self.severity
    }
    /// What it is about: `person`, a ball's id, or a measure's name.
    pub fn about(&self) -> &str {
        &self.about
    }
    /// What to do, said before the reason.
    pub fn action(&self, audience: Audience) -> Option<&str> {
        self.action.as_ref().map(|texts| texts.of(audience))
    }
    /// Why.
    pub fn reason(&self) -> &Reason {
        &self.reason
    }
}
