//! A rule: when it holds, what it does, and why.

use super::condition::Condition;
use super::curve::Curve;
use super::reason::{Audience, Template, Texts};
use super::shown::Shown;
use super::source::Source;
use super::vocabulary::FactId;

/// The place of a rule in its rule set.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct RuleId(pub(super) u32);

impl RuleId {
    pub(super) fn new(index: usize) -> RuleId {
        RuleId(u32::try_from(index).unwrap_or(u32::MAX))
    }

    pub(super) fn index(self) -> usize {
        self.0 as usize
    }

    /// Its place among the rules of its set, in the order of their ids.
    #[must_use]
    pub fn place(self) -> usize {
        self.index()
    }
}

/// How serious a caution is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// Worth knowing.
    Mild,
    /// To be heeded before anything else.
    Serious,
}

/// A number that a rule gives.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Amount {
    /// Always this.
    Number(i64),
    /// By the value of a fact.
    Along(Curve),
    /// The value of a fact itself.
    Copy(FactId),
}

impl Amount {
    /// The number, or none where the fact behind it is not known.
    pub(super) fn at(&self, value: &dyn Fn(FactId) -> i64) -> Option<i64> {
        match self {
            Amount::Number(number) => Some(*number),
            Amount::Along(curve) => curve.value(value(curve.along())),
            Amount::Copy(fact) => {
                Some(value(*fact)).filter(|&value| value != super::vocabulary::UNKNOWN)
            }
        }
    }

    /// The fact it hangs on.
    pub(super) fn fact(&self) -> Option<FactId> {
        match self {
            Amount::Number(_) => None,
            Amount::Along(curve) => Some(curve.along()),
            Amount::Copy(fact) => Some(*fact),
        }
    }
}

/// What a rule does.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Effect {
    /// Gives a candidate points, in tenths.
    Points(Amount),
    /// Rules a candidate out.
    RuleOut,
    /// Cautions about a candidate, a measure or the person.
    Caution(Severity),
    /// Starts a measure.
    Start(Amount),
    /// Adds to a measure.
    Add(Amount),
    /// Keeps a measure within bounds.
    Limit {
        lowest: Option<i64>,
        highest: Option<i64>,
    },
    /// Rounds a measure to multiples.
    Rounding(i64),
    /// Stands in a list of things to do, at this place.
    Step(i64),
}

impl Effect {
    /// The number it gives, if it is of a kind that gives one.
    pub(super) fn amount(&self) -> Option<&Amount> {
        match self {
            Effect::Points(amount) | Effect::Start(amount) | Effect::Add(amount) => Some(amount),
            _ => None,
        }
    }
}

/// A rule: when it holds, what it does, and why.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Rule {
    pub(super) id: String,
    pub(super) file: String,
    pub(super) overlay: bool,
    pub(super) subject: String,
    pub(super) when: Condition,
    pub(super) effect: Effect,
    pub(super) disputes: Option<String>,
    pub(super) then: Option<Template>,
    pub(super) because: Texts,
    pub(super) source: Source,
    pub(super) practice: Vec<String>,
    /// The facts of its conditions, its number and its texts, each once.
    pub(super) shows: Vec<FactId>,
}

impl Rule {
    /// Its id. The limits and the rounding of a measure are rules too, called `MEASURE/limits` and `MEASURE/rounding`.
    #[must_use]
    pub fn id(&self) -> &str {
        &self.id
    }

    /// The file that states it.
    #[must_use]
    pub fn file(&self) -> &str {
        &self.file
    }

    /// Whether an overlay brought it or changed it.
    #[must_use]
    pub fn is_overlay(&self) -> bool {
        self.overlay
    }

    /// The id of the subject it speaks of.
    #[must_use]
    pub fn subject(&self) -> &str {
        &self.subject
    }

    /// Where it comes from.
    #[must_use]
    pub fn source(&self) -> &Source {
        &self.source
    }

    /// The rows of practice it rests on.
    #[must_use]
    pub fn practice(&self) -> &[String] {
        &self.practice
    }

    /// The id of the rule that it disputes; such a rule is shown and counts nothing.
    #[must_use]
    pub fn disputes(&self) -> Option<&str> {
        self.disputes.as_deref()
    }

    /// What to do, as its file has it, placeholders not filled in.
    #[must_use]
    pub fn then(&self) -> Option<&str> {
        self.then.as_ref().map(|then| then.written.as_str())
    }

    /// Why, as its file has it, placeholders not filled in.
    #[must_use]
    pub fn because(&self, audience: Audience) -> &str {
        self.because.written(audience)
    }

    /// How serious it is, if it is a caution.
    #[must_use]
    pub fn severity(&self) -> Option<Severity> {
        match self.effect {
            Effect::Caution(severity) => Some(severity),
            _ => None,
        }
    }

    /// Whether it rules candidates out.
    #[must_use]
    pub fn rules_out(&self) -> bool {
        self.effect == Effect::RuleOut
    }

    /// The facts of its conditions, its number and its texts, each once.
    #[must_use]
    pub fn facts(&self) -> &[FactId] {
        &self.shows
    }

    /// Each fact that it shows with its value.
    pub(super) fn values(&self, value: &dyn Fn(FactId) -> i64) -> Shown {
        Shown::new(self.shows.iter().map(|&fact| (fact, value(fact))))
    }

    /// Gathers `shows` from the other parts.
    pub(super) fn gather_shown(&mut self) {
        let tests = self.when.all_tests().into_iter().map(|test| test.fact);
        let number = self.effect.amount().and_then(Amount::fact);
        let then = self.then.iter().flat_map(Template::facts);
        let mut shows: Vec<FactId> = Vec::new();
        for fact in tests.chain(number).chain(then).chain(self.because.facts()) {
            if !shows.contains(&fact) {
                shows.push(fact);
            }
        }
        self.shows = shows;
    }
}
