//! The interview: of the questions that can still change the pick, the one that costs least to ask.
//!
//! It keeps no state: a profile goes in, a question comes out; an answer as people give it goes in with the profile, the profile with
//! that answer comes out. So a host can hold the profile wherever it likes.

mod hearing;
mod misheard;
mod open;
mod question;
mod read;
mod spoken;
mod texts;
mod when;

pub use hearing::Request;
pub use misheard::Misheard;
pub use question::{Choice, Form, Quantity, Question};

use self::open::{Asked, Gaps, Standing, differing};
use self::read::Questions;
use super::chain::{Chain, Picks};
use super::outcome::Trouble;
use super::shop::Shop;
use crate::bowler::Bowler;
use crate::search::{Outcome, nearest, settle};
use crate::vocabulary::Situation;

/// The most boxes and points that are looked at for one question.
const MOST_WORK: usize = 1_500;
/// The most of them for one answer alone.
const MOST_ALONE: usize = 300;

/// What comes next.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Next {
    /// This question can still change the pick, or it isn't certain that it can't.
    Ask(Box<Question>),
    /// No answer can change the pick any more.
    Done {
        /// How many questions the profile answers, "I don't know" included.
        answered: usize,
        /// How many questions make sense and needn't be asked.
        saved: usize,
    },
}

/// The interview of a shop, ready for any profile.
#[derive(Debug)]
pub struct Interview<'s> {
    chain: Chain<'s>,
    questions: &'static Questions,
}

impl Shop {
    /// The interview of this shop: made once, for any number of profiles.
    ///
    /// # Errors
    /// [`Trouble`] where the rules or the questions can't be used.
    pub fn interview(&self) -> Result<Interview<'_>, Trouble> {
        Ok(Interview {
            chain: Chain::new(self)?,
            questions: Questions::builtin()?,
        })
    }

    /// What to ask next; for many profiles, [`Shop::interview`] is quicker.
    ///
    /// # Errors
    /// [`Trouble`] where the rules or the questions can't be used.
    pub fn next_question(&self, bowler: &Bowler) -> Result<Next, Trouble> {
        Ok(self.interview()?.next(bowler))
    }
}

impl Interview<'_> {
    /// All questions, in the order of the file.
    #[must_use]
    pub fn questions(&self) -> &[Question] {
        &self.questions.list
    }

    /// The answers that nobody is asked for, each with the reason.
    pub fn never_asked(&self) -> impl Iterator<Item = (&'static str, &str)> {
        let list = self.questions.never_asked.iter();
        list.map(|(name, because)| (*name, because.as_str()))
    }

    /// What to ask next.
    #[must_use]
    pub fn next(&self, bowler: &Bowler) -> Next {
        let (gaps, open) = self.gaps(bowler);
        match open {
            Some(question) => Next::Ask(Box::new(question.clone())),
            None => self.done(&gaps),
        }
    }

    /// The questions that make sense now and are still unanswered, whether or not they can change the pick; cheapest first.
    #[must_use]
    pub fn unanswered(&self, bowler: &Bowler) -> Vec<&Question> {
        let gaps = self.all_gaps(bowler);
        let numbered = self.questions.list.iter().zip(&gaps.standing);
        let ready = numbered.filter(|(_, standing)| **standing == Standing::Ready);
        let mut ready: Vec<&Question> = ready.map(|(question, _)| question).collect();
        ready.sort_by_key(|question| question.cost);
        ready
    }

    /// What is asked for by this, if it is no answer to the question.
    #[must_use]
    pub fn request(&self, question: &Question, said: &str) -> Option<Request> {
        self.questions.request(question, said)
    }

    /// The profile with this answer to the question of this id, in whatever words it was said.
    ///
    /// # Errors
    /// Why it wasn't taken, in words for whoever said it.
    pub fn hear(&self, bowler: &Bowler, id: &str, said: &str) -> Result<Bowler, Misheard> {
        let question = self.questions.find(id);
        let question = question.ok_or_else(|| Misheard::NoQuestion(crate::document::clean(id)))?;
        self.questions.hear(question, bowler, said)
    }

    fn all_gaps(&self, bowler: &Bowler) -> Gaps {
        let rules = self.chain.shop.rules();
        let granted = Situation::of(bowler, rules);
        let blank = |fact| granted.at(fact).value();
        Gaps::new(&self.questions.list, bowler, rules.vocabulary(), &blank)
    }

    fn ready<'g>(&'g self, gaps: &'g Gaps) -> impl Iterator<Item = (usize, &'g Question)> {
        let numbered = self.questions.list.iter().enumerate();
        numbered.filter(|(index, _)| gaps.standing.get(*index) == Some(&Standing::Ready))
    }

    /// The open answers, and the question to ask if there is one.
    fn gaps(&self, bowler: &Bowler) -> (Gaps, Option<&Question>) {
        let gaps = self.all_gaps(bowler);
        if gaps.facts.is_empty() {
            return (gaps, None);
        }
        let picks = Picks::new(&self.chain, bowler, gaps.facts.clone());
        let asked = Asked {
            gaps: &gaps,
            picks: &picks,
            bowler,
        };
        let start = picks.start();
        let area = gaps.area();
        let question = match settle(&asked, &area, &start, MOST_WORK) {
            Outcome::Proved { .. } => None,
            Outcome::Turns { at, .. } => self.turning(&asked, &start, &differing(&at, &start)),
            Outcome::NotSettled { .. } => self.cheapest(&gaps, |_| true),
        };
        drop(picks);
        let question = question.map(|index| &self.questions.list[index]);
        (gaps, question)
    }

    /// Of the questions for the answers that turn the pick together, and of those that turn it alone, the cheapest.
    fn turning(&self, asked: &Asked<'_>, start: &[i64], differing: &[usize]) -> Option<usize> {
        let gaps = asked.gaps;
        let among = |index: usize| {
            let mut questions = differing.iter().filter_map(|gap| gaps.question(*gap));
            questions.any(|question| question == index)
        };
        let together = self.cheapest(gaps, among);
        let cost = |index: usize| self.questions.list[index].cost;
        let area = gaps.area();
        let alone = |index: usize| {
            let cheaper = together.is_none_or(|together| cost(index) < cost(together));
            cheaper
                && gaps.of(index).any(|gap| {
                    let turns = nearest(asked, start, gap, area[gap], MOST_ALONE).turns;
                    !turns.is_empty()
                })
        };
        let alone = self.cheapest(gaps, alone);
        // Whatever the search says, something must be asked for it to be settled.
        alone.or(together).or_else(|| self.cheapest(gaps, |_| true))
    }

    /// The cheapest question that makes sense now and is of this kind.
    fn cheapest(&self, gaps: &Gaps, of_kind: impl Fn(usize) -> bool) -> Option<usize> {
        let mut ready: Vec<(i64, usize)> = self
            .ready(gaps)
            .map(|(index, question)| (question.cost, index))
            .collect();
        ready.sort_unstable();
        ready
            .into_iter()
            .map(|(_, index)| index)
            .find(|index| of_kind(*index))
    }

    fn done(&self, gaps: &Gaps) -> Next {
        let count = |standing| gaps.standing.iter().filter(|one| **one == standing).count();
        Next::Done {
            answered: count(Standing::Settled),
            saved: count(Standing::Ready),
        }
    }
}
