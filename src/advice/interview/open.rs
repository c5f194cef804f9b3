//! What the answers that are still open may come to, and what is decided by them.

use super::question::Question;
use super::when::{Truth, Wish, all};
use crate::advice::chain::{Choice, Picks, known_values};
use crate::bowler::{Bowler, contradiction};
use crate::rules::{FactId, Interval, UNKNOWN, Vocabulary};
use crate::search::{Area, Decision, Holds, Point, Shape};

/// How a question stands with a profile.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Standing {
    /// Answered, or asked and not known.
    Settled,
    /// It makes no sense any more.
    Idle,
    /// It may make sense once others are answered.
    Later,
    /// It makes sense now.
    Ready,
}

/// What an answer is that a condition looks at.
#[derive(Clone, Copy, Debug)]
enum Place {
    /// Among the open answers.
    Open(usize),
    /// Given, or taken for granted.
    Fixed(Interval),
}

/// An answer that may still be given.
#[derive(Debug)]
struct Gap {
    name: &'static str,
    /// Which question asks for it.
    question: usize,
    /// Whether the question makes sense, by places.
    when: Vec<(Place, Wish)>,
    /// What it is as long as nobody gives it.
    blank: i64,
    range: Interval,
}

/// The answers that are still open, with where each question stands.
#[derive(Debug)]
pub(super) struct Gaps {
    gaps: Vec<Gap>,
    pub(super) facts: Vec<FactId>,
    pub(super) standing: Vec<Standing>,
}

impl Gaps {
    /// Of a profile; `blank` tells what is taken for granted of an answer, or [`UNKNOWN`].
    pub(super) fn new(
        questions: &[Question],
        bowler: &Bowler,
        vocabulary: &Vocabulary,
        blank: &dyn Fn(FactId) -> i64,
    ) -> Gaps {
        let mut gaps: Vec<Gap> = Vec::new();
        let mut facts = Vec::new();
        let mut standing = Vec::new();
        for (index, question) in questions.iter().enumerate() {
            let place = |name: &str| {
                if let Some(open) = gaps.iter().position(|gap| gap.name == name) {
                    return Place::Open(open);
                }
                let fixed = |id| {
                    let value = bowler.answer(name).unwrap_or_else(|| blank(id));
                    Place::Fixed(Interval::point(value))
                };
                vocabulary
                    .id(name)
                    .map_or(Place::Fixed(Interval::NOT_KNOWN), fixed)
            };
            let when: Vec<(Place, Wish)> = question
                .when
                .iter()
                .map(|wish| (place(wish.answer), wish.clone()))
                .collect();
            let truth = all(when.iter().map(|(place, wish)| {
                wish.wanted.truth(match place {
                    Place::Open(open) => gaps[*open].range,
                    Place::Fixed(fixed) => *fixed,
                })
            }));
            let stands = match truth {
                Truth::Never => Standing::Idle,
                _ if question.is_settled(bowler) => Standing::Settled,
                // An open answer that is granted isn't an answer yet, so its question comes first.
                _ if when
                    .iter()
                    .any(|(place, _)| matches!(place, Place::Open(_))) =>
                {
                    Standing::Later
                }
                Truth::Maybe => Standing::Later,
                Truth::Always => Standing::Ready,
            };
            standing.push(stands);
            if !matches!(stands, Standing::Later | Standing::Ready) {
                continue;
            }
            for name in &question.answers {
                let Some(fact) = vocabulary.id(name) else {
                    continue;
                };
                let known = known_values(vocabulary, fact);
                let blank = blank(fact);
                let range = if blank == UNKNOWN {
                    known.or(Interval::NOT_KNOWN)
                } else {
                    known
                };
                facts.push(fact);
                gaps.push(Gap {
                    name,
                    question: index,
                    when: when.clone(),
                    blank,
                    range,
                });
            }
        }
        Gaps {
            gaps,
            facts,
            standing,
        }
    }

    /// All that the open answers may come to.
    pub(super) fn area(&self) -> Area {
        self.gaps.iter().map(|gap| gap.range).collect()
    }

    /// Which question asks for an open answer.
    pub(super) fn question(&self, gap: usize) -> Option<usize> {
        self.gaps.get(gap).map(|gap| gap.question)
    }

    /// The open answers that a question asks for.
    pub(super) fn of(&self, question: usize) -> impl Iterator<Item = usize> + '_ {
        let numbered = self.gaps.iter().enumerate();
        numbered.filter_map(move |(index, gap)| (gap.question == question).then_some(index))
    }
}

/// The picks over the open answers, where each question that makes no sense stays unanswered.
#[derive(Debug)]
pub(super) struct Asked<'a> {
    pub(super) gaps: &'a Gaps,
    pub(super) picks: &'a Picks<'a, 'a>,
    pub(super) bowler: &'a Bowler,
}

impl Asked<'_> {
    fn truth(&self, gap: &Gap, at: &dyn Fn(usize) -> Interval) -> Truth {
        all(gap.when.iter().map(|(place, wish)| {
            wish.wanted.truth(match place {
                Place::Open(open) => at(*open),
                Place::Fixed(fixed) => *fixed,
            })
        }))
    }

    /// The part of a box where answers that make no sense are left out; none if that part is empty.
    fn narrowed(&self, area: &[Interval]) -> Option<Area> {
        let mut narrow = area.to_vec();
        for (index, gap) in self.gaps.gaps.iter().enumerate() {
            let at = |open: usize| narrow.get(open).copied().unwrap_or(Interval::NOT_KNOWN);
            if self.truth(gap, &at) != Truth::Never {
                continue;
            }
            let blank = Interval::point(gap.blank);
            let here = at(index);
            let among = match self.picks.shape(index) {
                _ if gap.blank == UNKNOWN => here.may_be_unknown(),
                Shape::Bits => {
                    here.may_be_known()
                        && here.lowest() & !gap.blank == 0
                        && gap.blank & !here.highest() == 0
                }
                _ => here.holds(gap.blank),
            };
            if !among {
                return None;
            }
            if let Some(place) = narrow.get_mut(index) {
                *place = blank;
            }
        }
        Some(narrow)
    }
}

impl Decision for Asked<'_> {
    type Pick = Choice;

    fn answers(&self) -> usize {
        self.picks.answers()
    }

    fn shape(&self, answer: usize) -> Shape {
        self.picks.shape(answer)
    }

    fn pick(&self, point: &[i64]) -> Choice {
        self.picks.pick(point)
    }

    fn holds(&self, area: &[Interval], pick: &Choice) -> Holds {
        match self.narrowed(area) {
            Some(area) => self.picks.holds(&area, pick),
            None => Holds::Proved,
        }
    }

    fn is_possible(&self, point: &[i64]) -> bool {
        let at = |open: usize| {
            let value = point.get(open).copied().unwrap_or(UNKNOWN);
            Interval::point(value)
        };
        let sensible = self.gaps.gaps.iter().zip(point);
        let mut sensible = sensible
            .map(|(gap, value)| *value == gap.blank || self.truth(gap, &at) != Truth::Never);
        if !sensible.all(|sensible| sensible) {
            return false;
        }
        let get = |name: &str| match self.gaps.gaps.iter().position(|gap| gap.name == name) {
            Some(open) => point.get(open).copied().filter(|value| *value != UNKNOWN),
            None => self.bowler.answer(name),
        };
        contradiction(&get).is_none() && self.picks.is_possible(point)
    }

    fn cuts(&self, answer: usize) -> &[i64] {
        self.picks.cuts(answer)
    }
}

/// The open answers in which two points differ.
pub(super) fn differing(one: &Point, other: &[i64]) -> Vec<usize> {
    let pairs = one.iter().zip(other).enumerate();
    let differs = pairs.filter(|(_, (one, other))| one != other);
    differs.map(|(index, _)| index).collect()
}
