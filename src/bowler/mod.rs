//! The bowler's profile: who throws, how, with what hand, and the fit that works.
//!
//! A profile is a YAML or JSON file. Every key may be left out; every value may be left empty or be `unknown`, which
//! means "asked, and not known": it isn't asked again. What contradicts itself is a fault with its place, or a
//! question; nothing is guessed, and no measurement is ever assumed.
//!
//! ```yaml
//! name: Ada Quill
//! hand: right
//! intent: learn
//! ball_now: { whose: house, weight: 10 lb }
//! measured:
//!   thumb: { cold: 25/32, flexibility: normal }
//!   spans:
//!     - { grip: conventional, finger: middle, value: 3 3/8, kind: full, along: arc }
//! ```
//!
//! A ball that was drilled before stands in the profile as it is: its holes and its years on the fit card, what the hand says of it in
//! the fit check, and where its new grip goes.
//!
//! ```yaml
//! fit_card:
//!   works: no
//!   complaint: the thumb hangs
//!   depths: { thumb: 2 1/4, middle: 1 1/8, ring: 1 1/8 }
//!   entries:
//!     - { date: 2026-03-14, kind: drilled }
//!     - { date: 2026-04-02, kind: complaint, text: hangs after two games }
//! fit_check: { symptoms: [thumb hangs], rest_test: slides out, event_in: 6 weeks }
//! used_ball: { holes: open, new_grip: { over: 3 1/2 R, up: 0, turned: 0 deg } }
//! ```
//!
//! A ball that was weighed before it was drilled as well as after helps to set up the shop's scale:
//!
//! ```yaml
//! fit_card:
//!   before: { weight: 15 lb 1 oz, statics: { top: 3 oz, right: 1/4 oz, finger: 0 oz } }
//!   weight: 14 lb 14 oz
//!   statics: { top: 1/2 oz, right: 1/4 oz, finger: 1/8 oz }
//! ```
//!
//! What was measured may be a little otherwise, and the profile can say by how much:
//!
//! ```yaml
//! speed: { value: 15 mph, where: release }
//! rev_rate: 240 rpm
//! give_or_take: { speed: 1 mph, rev_rate: 20 rpm }
//! ```
//!
//! Everything that rules may ask is an *answer* with a name, such as `bowler.age`; [`ANSWERS`] lists them all with
//! their ranges, and [`Bowler::answer`] gives their values.

mod answer;
mod answered;
mod card;
mod check;
mod contradiction;
mod entry;
mod give_or_take;
mod hand;
mod old_holes;
mod oval;
mod owned;
mod pap;
mod read;
mod sheet;
mod span;
mod statics;
mod surface;
mod table;
mod used;
mod weighed;
mod words;
mod write;
mod written;

pub use answer::{Answer, Shape};
pub use answered::Impossible;
pub use card::FitCard;
pub use contradiction::{Contradiction, contradiction};
pub use entry::Entry;
pub use give_or_take::MEASURED;
pub use old_holes::NoOldHoles;
pub use owned::OwnedBall;
pub use read::release_speed;
pub use span::{Along, Finger, Grip, Span, SpanKind};
pub use statics::Statics;
pub use surface::{FINISHES, GRITS, Surface};
pub use table::{ANSWERS, answer};
pub use used::{NewGrip, UsedBall};
pub use weighed::Weighed;
pub use words::{
    ACHES, BALLS_NOW, COLOURS, COVERS, CURVES, DELIVERIES, ENTRIES, EXPERIENCES, FLEXIBILITIES,
    GRIPS, HANDS, INJURIES, INTENTS, LANES, LIES, OLD_HOLES, REST_TESTS, REV_LEVELS, SKINS,
    SYMPTOMS, THUMBS,
};

use crate::document::{Document, Faults, Node};

/// How much slower a ball is at the pins than when it is let go, in 0.01 mph: the middle of "2 to 2.5 mph".
///
/// Source: S. Minshew, "Recognizing and Producing the Matching Up Process", Bowling This Month (published).
pub const SLOWER_AT_THE_PINS: i64 = 225;

/// Something to clear up with the bowler. The work can go on without an answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Question {
    about: &'static str,
    text: String,
}

impl Question {
    /// The answer it is about, such as `bowler.curve`.
    pub fn about(&self) -> &'static str {
        self.about
    }

    /// The question, in plain words.
    pub fn text(&self) -> &str {
        &self.text
    }
}

/// Everything a profile tells about one bowler.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Bowler {
    name: Option<String>,
    notes: sheet::Notes,
    spans: Vec<Span>,
    card: Option<FitCard>,
    owned: Vec<OwnedBall>,
    used: Option<UsedBall>,
    settled_ball: Option<String>,
    give_or_take: give_or_take::HalfWidths,
}

impl Bowler {
    /// Reads a profile.
    ///
    /// # Errors
    ///
    /// All faults of the profile, each with its place: unknown keys and words, values that can't be read or lie
    /// outside their range, spans without their kind, and answers that contradict each other.
    pub fn read(document: &Document) -> Result<Bowler, Faults> {
        read::read(document, document.root())
    }

    /// Reads a profile that stands within a document.
    ///
    /// # Errors
    /// As of [`Bowler::read`].
    pub fn read_within(document: &Document, node: &Node) -> Result<Bowler, Faults> {
        read::read(document, node)
    }

    /// The bowler's name, safe to print.
    pub fn name(&self) -> Option<&str> {
        self.name.as_deref()
    }

    /// The value of an answer in the steps of [`ANSWERS`]; `None` if it isn't known.
    ///
    /// Choices are the index of the word, flags 0 or 1, sets have one bit a word. Spans are given here only as full
    /// spans along the arc; those read in another way are in [`Bowler::spans`]. Lateral pitches are as written.
    pub fn answer(&self, name: &str) -> Option<i64> {
        self.notes.values.get(name).copied()
    }

    /// The same bowler with another value of one answer, or without it. Nothing is checked.
    #[must_use]
    pub fn with(&self, name: &'static str, value: Option<i64>) -> Bowler {
        let mut other = self.clone();
        match value {
            Some(value) => other.notes.values.insert(name, value),
            None => other.notes.values.remove(name),
        };
        other
    }

    /// How far off a measured answer may be, either way, in steps of its notation (of a length for one that is up or down); none if
    /// the profile doesn't say.
    pub fn give_or_take(&self, name: &str) -> Option<i64> {
        self.give_or_take.get(name).copied()
    }

    /// Whether the profile tells this answer.
    pub fn tells(&self, name: &str) -> bool {
        self.notes.values.contains_key(name)
    }

    /// Whether the bowler was asked for this answer and didn't know. It isn't asked again.
    pub fn is_unknown(&self, name: &str) -> bool {
        self.notes.unknown.contains(name)
    }

    /// What should be cleared up with the bowler, in the order it was noticed.
    pub fn questions(&self) -> &[Question] {
        &self.notes.questions
    }

    /// The spans measured on the hand, as they were read.
    pub fn spans(&self) -> &[Span] {
        &self.spans
    }

    /// The fit card, if there is one.
    pub fn card(&self) -> Option<&FitCard> {
        self.card.as_ref()
    }

    /// The balls owned.
    pub fn owned(&self) -> &[OwnedBall] {
        &self.owned
    }

    /// The drilled ball that is to be drilled anew, if there is one; its old holes stand on the fit card.
    pub fn used_ball(&self) -> Option<&UsedBall> {
        self.used.as_ref()
    }

    /// The id of the ball the fitter has settled on.
    pub fn settled_ball(&self) -> Option<&str> {
        self.settled_ball.as_deref()
    }
}
