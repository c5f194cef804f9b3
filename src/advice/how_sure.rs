//! How sure a pick is, as it is given back. Plain results with getters; nothing here searches.

use super::picked::Picked;
use super::reason::Texts;
use crate::rules::Audience;

/// How sure a pick is, as far as what was measured goes.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub struct HowSure {
    pub(crate) ranges: Vec<SureRange>,
    pub(crate) over: Over,
}

/// The range of one measured answer over which the pick stays.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SureRange {
    pub(crate) fact: &'static str,
    pub(crate) called: String,
    pub(crate) value: (i64, String),
    pub(crate) lowest: (i64, String),
    pub(crate) highest: (i64, String),
    pub(crate) turns: (bool, bool),
    pub(crate) practical: Option<[String; 2]>,
    pub(crate) give_or_take: Option<(i64, String)>,
}

/// What becomes of the pick over everything the bowler isn't sure of.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
// There is one to an answer; a box would only stand in the reader's way.
#[allow(clippy::large_enum_variant)]
pub enum Over {
    /// The profile says of no answer how sure it is.
    NothingStated,
    /// It stays, proved.
    Stays,
    /// Here it doesn't: the nearest step that was found.
    Breaks {
        /// The answers that differ from what was given.
        steps: Vec<Measured>,
        /// How a sentence about them begins; customers hear of numbers in steps that people count in, or of none.
        phrase: Texts,
        /// Whether there is such a sentence for customers.
        practical: bool,
        /// What is picked then.
        picked: Picked,
    },
    /// It couldn't be settled by looking at this many boxes and points.
    NotSettled(usize),
}

/// A measured answer with a value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Measured {
    pub(crate) fact: &'static str,
    pub(crate) value: i64,
    pub(crate) shown: String,
}

impl HowSure {
    /// Each measured answer that was given, with its range.
    pub fn ranges(&self) -> &[SureRange] {
        &self.ranges
    }

    /// What becomes of the pick over everything that is given or taken.
    pub fn over(&self) -> &Over {
        &self.over
    }

    /// The range worth a word: one that the bowler isn't sure of, else the narrowest for its size; none if nothing measured matters.
    pub fn narrowest(&self) -> Option<&SureRange> {
        self.narrowest_of(|_| true)
    }

    /// The same among the ranges that a customer can be told of.
    pub fn narrowest_for_customers(&self) -> Option<&SureRange> {
        self.narrowest_of(|range| range.practical.is_some())
    }

    fn narrowest_of(&self, may_be: impl Fn(&SureRange) -> bool) -> Option<&SureRange> {
        let matters = self.ranges.iter().filter(|range| {
            let turns = range.turns.0 || range.turns.1;
            turns && may_be(range)
        });
        matters.min_by_key(|range| (!range.is_stated(), range.room()))
    }
}

impl SureRange {
    /// The answer, such as `bowler.speed`.
    pub fn fact(&self) -> &'static str {
        self.fact
    }

    /// What it is called in a sentence: `your ball speed`.
    pub fn called(&self) -> &str {
        &self.called
    }

    /// The value that was given, in steps and as people write it.
    pub fn value(&self) -> (i64, &str) {
        (self.value.0, &self.value.1)
    }

    /// The lowest value with the same pick.
    pub fn lowest(&self) -> (i64, &str) {
        (self.lowest.0, &self.lowest.1)
    }

    /// The highest value with the same pick.
    pub fn highest(&self) -> (i64, &str) {
        (self.highest.0, &self.highest.1)
    }

    /// Whether the next lower value changes the pick; if not, no value is lower.
    pub fn turns_below(&self) -> bool {
        self.turns.0
    }

    /// Whether the next higher value changes the pick; if not, no value is higher.
    pub fn turns_above(&self) -> bool {
        self.turns.1
    }

    /// The lowest and the highest value with the same pick in steps that people count in, neither beyond the range and both around the
    /// value that was given; none where there aren't such two.
    pub fn practical(&self) -> Option<[&str; 2]> {
        let [lowest, highest] = self.practical.as_ref()?;
        Some([lowest, highest])
    }

    /// What the bowler gives or takes, if the profile says so.
    pub fn give_or_take(&self) -> Option<(i64, &str)> {
        let stated = self.give_or_take.as_ref();
        stated.map(|(width, shown)| (*width, shown.as_str()))
    }

    pub(super) fn is_stated(&self) -> bool {
        self.give_or_take.is_some()
    }

    /// The room to the nearer end that turns, in thousandths of what is given or taken, else of the value.
    fn room(&self) -> i64 {
        let below = self.turns.0.then_some(self.value.0 - self.lowest.0);
        let above = self.turns.1.then_some(self.highest.0 - self.value.0);
        let room = below
            .into_iter()
            .chain(above)
            .min()
            .unwrap_or(i64::MAX / 1000);
        let whole = self.give_or_take.as_ref().map(|(width, _)| *width);
        room * 1000 / whole.unwrap_or(self.value.0.abs()).max(1)
    }
}

impl Measured {
    /// The answer, such as `bowler.speed`.
    pub fn fact(&self) -> &'static str {
        self.fact
    }

    /// Its value, in steps.
    pub fn value(&self) -> i64 {
        self.value
    }

    /// Its value as people write it.
    pub fn shown(&self) -> &str {
        &self.shown
    }
}

impl Over {
    /// How a sentence about what breaks the pick begins; none for a customer where it can't be told in steps that people count in.
    #[must_use]
    pub fn phrase(&self, audience: Audience) -> Option<&str> {
        match self {
            Over::Breaks {
                phrase, practical, ..
            } => {
                let is_said = *practical || audience == Audience::Fitter;
                is_said.then(|| phrase.of(audience))
            }
            _ => None,
        }
    }
}
