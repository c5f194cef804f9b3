//! What a refit gives back: what comes first, likely causes, small changes. Plain results with getters; nothing here computes.

use super::{Assumed, Caution, Offers, Reason, SpecNumber, Texts, WorkStep};
use crate::rules::Audience;

/// The answer to "it doesn't sit right: what is wrong, and what do we change?".
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Refit {
    pub(crate) bowler: String,
    pub(crate) cautions: Vec<Caution>,
    pub(crate) held: bool,
    pub(crate) causes: Vec<Cause>,
    pub(crate) ruled_out: Vec<Cause>,
    pub(crate) steps: Vec<WorkStep>,
    pub(crate) changes: Vec<Change>,
    pub(crate) ball: Option<String>,
    pub(crate) past: Vec<Past>,
    pub(crate) to_write: Vec<ToWrite>,
    pub(crate) offers: Option<Offers>,
    pub(crate) assumptions: Vec<Assumed>,
    pub(crate) questions: Vec<String>,
    pub(crate) digest: String,
}

/// Something that may be wrong, with what speaks for and against it.
#[derive(Clone, Debug)]
pub struct Cause {
    pub(crate) word: &'static str,
    pub(crate) place: usize,
    pub(crate) total: i64,
    pub(crate) lines: Vec<Reason>,
}

/// One number of the card and the small change that is tried.
#[derive(Clone, Debug)]
pub struct Change {
    pub(crate) number: SpecNumber,
    pub(crate) card: Option<i64>,
    pub(crate) card_shop: String,
    pub(crate) later: Vec<(i64, String)>,
}

/// Something that stands on the card, with its day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Past {
    pub(crate) date: String,
    pub(crate) kind: &'static str,
    pub(crate) text: String,
}

/// What to write on the card; the day is for whoever writes it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ToWrite {
    pub(crate) kind: &'static str,
    pub(crate) text: String,
}

impl Refit {
    /// The customer's name, harmless to print; empty if none was given.
    pub fn bowler(&self) -> &str {
        &self.bowler
    }
    /// What concerns the body or the fit; serious ones first.
    pub fn cautions(&self) -> &[Caution] {
        &self.cautions
    }
    /// True if a serious caution comes before any change: then there are no steps, and every change is blank.
    pub fn is_held(&self) -> bool {
        self.held
    }
    /// The causes that something speaks for, likeliest first.
    pub fn causes(&self) -> &[Cause] {
        &self.causes
    }
    /// The causes that a rule excludes, in the order of the trade's list.
    pub fn ruled_out(&self) -> &[Cause] {
        &self.ruled_out
    }
    /// What to do, in order; empty if it is held.
    pub fn steps(&self) -> &[WorkStep] {
        &self.steps
    }
    /// What the likeliest cause changes on the ball; a number that can't be given is blank and says why.
    pub fn changes(&self) -> &[Change] {
        &self.changes
    }
    /// The change of one number, by the measure's name, e.g. `refit.middle_span`.
    pub fn change(&self, name: &str) -> Option<&Change> {
        self.changes.iter().find(|c| c.number.name == name)
    }
    /// The ball of the card.
    pub fn ball(&self) -> Option<&str> {
        self.ball.as_deref()
    }
    /// What the card tells, oldest first.
    pub fn past(&self) -> &[Past] {
        &self.past
    }
    /// What to write on the card today.
    pub fn to_write(&self) -> &[ToWrite] {
        &self.to_write
    }
    /// What the work comes to, beside a new plain ball; none while it is held or where there is nothing to change.
    pub fn offers(&self) -> Option<&Offers> {
        self.offers.as_ref()
    }
    /// What was assumed because it wasn't known.
    pub fn assumptions(&self) -> &[Assumed] {
        &self.assumptions
    }
    /// Questions the profile raises, for the fitter to ask.
    pub fn questions(&self) -> &[String] {
        &self.questions
    }
    /// Digest of rules and catalog.
    pub fn digest(&self) -> &str {
        &self.digest
    }
}

impl Refit {
    /// What comes before all else: the action of the first serious caution, or the first step.
    pub fn first(&self) -> Option<Texts> {
        if self.held {
            let first = self.cautions.first()?;
            return Some(first.action.clone().unwrap_or(first.reason.texts.clone()));
        }
        self.steps.first().map(|step| Texts::alike(&step.text))
    }
}

impl Cause {
    /// Its word in the rules, e.g. `span_too_long`.
    pub fn word(&self) -> &'static str {
        self.word
    }
    /// As people say it: "span too long". The trade's words for a lean are for league and fitter.
    pub fn said(&self, audience: Audience) -> String {
        let plain = match self.word {
            "too_much_thumb_reverse" => "thumb hole leans too far away from the palm",
            "too_much_thumb_forward" => "thumb hole leans too far toward the palm",
            "too_little_thumb_forward" => "thumb hole leans too little toward the palm",
            "fingers_need_reverse" => "finger holes lean too little away from the palm",
            word => return word.replace('_', " "),
        };
        match audience {
            Audience::Newcomer => plain.to_owned(),
            Audience::League | Audience::Fitter => self.word.replace('_', " "),
        }
    }
    /// Counted from 1; 0 for one that is ruled out.
    pub fn place(&self) -> usize {
        self.place
    }
    /// Tenths of a point: the sum of the lines.
    pub fn total(&self) -> i64 {
        self.total
    }
    /// What speaks for it and against it, largest first; other schools count nothing.
    pub fn lines(&self) -> &[Reason] {
        &self.lines
    }
}

impl Change {
    /// What it comes to now, with its lines; blank where nothing may or can be said.
    pub fn number(&self) -> &SpecNumber {
        &self.number
    }
    /// What the card tells, in the steps of the number.
    pub fn card(&self) -> Option<i64> {
        self.card
    }
    /// The same as a fitter writes it; empty if the card doesn't tell it.
    pub fn card_shop(&self) -> &str {
        &self.card_shop
    }
    /// Where the whole way is longer than one change may be: the numbers of the next times, in steps and as written.
    pub fn later(&self) -> &[(i64, String)] {
        &self.later
    }
}

impl Past {
    /// The day, as `2026-03-14`.
    pub fn date(&self) -> &str {
        &self.date
    }
    /// What kind of entry: `drilled`, `eased`, `complaint`, …
    pub fn kind(&self) -> &'static str {
        self.kind
    }
    /// What was done or said; may be empty.
    pub fn text(&self) -> &str {
        &self.text
    }
}

impl ToWrite {
    /// What kind of entry: `complaint`, `tapes` or `eased`.
    pub fn kind(&self) -> &'static str {
        self.kind
    }
    /// The words.
    pub fn text(&self) -> &str {
        &self.text
    }
}
