//! From what people say to answers: forgiving, and never guessing between two meanings.

use super::misheard::{Misheard, unclear};
use super::question::{Choice, Form, Question};
use super::read::Questions;
use super::spoken::{begins, in_digits, is_below_nothing, loosened, numbers_in, plain, replaced};
use crate::bowler::{Bowler, Impossible, release_speed};
use crate::notation::Notation;

/// A longer answer, in characters, isn't listened to.
const LONGEST: usize = 200;
/// The most balls that are taken.
const MOST_BALLS: usize = 40;
/// Words that turn a meaning round; with one of these an answer is only taken as a whole.
const NEGATIONS: [&str; 8] = [
    "not", "no", "never", "without", "don't", "dont", "isn't", "doesn't",
];

/// What was said besides an answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Request {
    /// What does the question mean?
    Help,
    /// One step back.
    Back,
    /// Enough.
    Stop,
}

/// An answer as it was understood.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Heard {
    NotKnown,
    Value(&'static str, i64),
    Balls(Vec<Option<i64>>),
}

impl Questions {
    /// What is asked for, if this is no answer to the question.
    pub(super) fn request(&self, question: &Question, said: &str) -> Option<Request> {
        let said = plain(said);
        if question.says(&said) {
            return None;
        }
        let among = |list: &[String]| list.contains(&said);
        match () {
            () if among(&self.help) => Some(Request::Help),
            () if among(&self.back) => Some(Request::Back),
            () if among(&self.stop) => Some(Request::Stop),
            () => None,
        }
    }

    /// The profile with what was said to the question.
    pub(super) fn hear(
        &self,
        question: &Question,
        bowler: &Bowler,
        said: &str,
    ) -> Result<Bowler, Misheard> {
        let heard = self.understand(question, said)?;
        let taken = match heard {
            Heard::NotKnown => question.not_known(bowler),
            Heard::Value(name, value) => bowler.answered(name, value),
            Heard::Balls(covers) => bowler.owning(&covers),
        };
        taken.map_err(Misheard::Impossible)
    }

    fn understand(&self, question: &Question, said: &str) -> Result<Heard, Misheard> {
        if said.chars().take(LONGEST + 1).count() > LONGEST {
            return Err(Misheard::TooLong);
        }
        let text = plain(said);
        if text.is_empty() {
            return Err(Misheard::Silence);
        }
        let text = self.meant(question, text);
        if let Some((to, with)) = &question.ask_back
            && to.contains(&text)
        {
            return Err(unclear(said, with.clone()));
        }
        if self.not_known.contains(&text) || question.open.contains(&text) {
            return Ok(Heard::NotKnown);
        }
        let heard = match question.form {
            Form::Balls => self.balls(question, &text)?.map(Heard::Balls),
            Form::Several => self.several(question, &text)?,
            Form::One => self.one(question, &text)?,
        };
        heard.ok_or_else(|| {
            if !question.choices.is_empty() && (text == "yes" || text == "no") {
                return unclear(said, question.which(&question.choices));
            }
            question.not_understood(&text, said)
        })
    }

    /// The text with words as this table spells them, and every way of saying yes or no as that.
    fn meant(&self, question: &Question, text: String) -> String {
        if question.says(&text) {
            return text;
        }
        let text = replaced(&text, |words| {
            let (from, to) = self.spelling.iter().find(|(from, _)| begins(words, from))?;
            Some((from.split(' ').count(), to.as_str()))
        });
        let is_kept = question.says(&text) || self.not_known.contains(&text);
        match () {
            () if is_kept => text,
            () if self.yes.contains(&text) => "yes".to_owned(),
            () if self.no.contains(&text) => "no".to_owned(),
            () => text,
        }
    }

    /// A choice or a number.
    fn one(&self, question: &Question, text: &str) -> Result<Option<Heard>, Misheard> {
        if let (Some(name), Some(choice)) = (question.chosen, self.choice(question, text)) {
            return Ok(Some(Heard::Value(name, choice.value)));
        }
        let Some(quantity) = question.quantity else {
            return Ok(None);
        };
        // Cents are two digits; a ball's weight has one at most.
        let decimals = if quantity.notation == Notation::Money {
            2
        } else {
            1
        };
        let number = self.number(question, &loosened(text, decimals));
        let (number, at_pins) = question.place(&number);
        let Ok(value) = quantity.notation.read(&number) else {
            return match numbers_in(&number)[..] {
                [one, other] => Err(unclear(text, format!("Which one is it: {one} or {other}?"))),
                [_, _, ..] => Err(unclear(text, "Please say one number.".to_owned())),
                [_] if is_below_nothing(&number) => {
                    let like = question.such_as_hint().unwrap_or_default();
                    Err(unclear(text, format!("It can't be below zero. {like}")))
                }
                _ => Ok(None),
            };
        };
        let value = if at_pins { release_speed(value) } else { value };
        Ok(Some(Heard::Value(quantity.answer, value)))
    }

    /// Any of the choices, with commas or "and" between them.
    fn several(&self, question: &Question, text: &str) -> Result<Option<Heard>, Misheard> {
        let Some(name) = question.chosen else {
            return Ok(None);
        };
        if question.none.iter().any(|none| none == text) {
            return Ok(Some(Heard::Value(name, 0)));
        }
        if let Some(choice) = exact(question, text) {
            return Ok(Some(Heard::Value(name, 1 << choice.value)));
        }
        let parts = parts(text);
        if parts.iter().any(|part| question.none.contains(part)) {
            return Err(unclear(text, question.none_alone()));
        }
        let mut bits = 0;
        let is_whole = parts.len() == 1;
        let lost = |part: &str| match is_whole {
            true => Ok(None),
            false => Err(question.not_understood(part, part)),
        };
        for part in parts {
            let found = match self.choice(question, &part) {
                Some(choice) => vec![choice],
                None => within(question, &part),
            };
            if found.is_empty() {
                return lost(&part);
            }
            bits = found
                .iter()
                .fold(bits, |bits, choice| bits | 1 << choice.value);
        }
        Ok((bits != 0).then_some(Heard::Value(name, bits)))
    }

    /// A ball each: `plastic, two solid`.
    fn balls(&self, question: &Question, text: &str) -> Result<Option<Vec<Option<i64>>>, Misheard> {
        if question.none.iter().any(|none| none == text) {
            return Ok(Some(Vec::new()));
        }
        if question.other.iter().any(|other| other == text) {
            return Ok(Some(vec![None]));
        }
        let parts = self.ball_parts(question, text);
        if parts.iter().any(|part| question.none.contains(part)) {
            return Err(unclear(text, question.none_alone()));
        }
        let is_bare = |part: &String| part.parse::<usize>().is_ok();
        if parts.len() > 1 && parts.iter().all(is_bare) {
            let hint = "Please name the cover of each ball.".to_owned();
            return Err(unclear(text, hint));
        }
        let mut balls = Vec::new();
        let is_whole = parts.len() == 1;
        let lost = |part: &str| match is_whole {
            true => Ok(None),
            false => Err(question.not_understood(part, part)),
        };
        for part in parts {
            let (first, rest) = part.split_once(' ').unwrap_or((&part, ""));
            let (count, rest) = match first.parse::<usize>() {
                Ok(count) => (count, rest),
                Err(_) => (1, &*part),
            };
            let is_other = |text: &str| {
                let one = text.strip_suffix('s').unwrap_or(text);
                text.is_empty() || question.other.iter().any(|o| o == text || o == one)
            };
            let cover = match self.choice(question, rest) {
                Some(choice) => Some(choice.value),
                None if is_other(rest) => None,
                None => return lost(&part),
            };
            if count == 0 || balls.len() + count.min(MOST_BALLS + 1) > MOST_BALLS {
                return lost(&part);
            }
            balls.extend(std::iter::repeat_n(cover, count));
        }
        Ok((!balls.is_empty()).then_some(balls))
    }

    /// What may be a kind of ball each: between commas and "and", and before each count, as in `one plastic one solid`.
    fn ball_parts(&self, question: &Question, text: &str) -> Vec<String> {
        let mut kinds = Vec::new();
        for part in parts(text) {
            // Words that this question knows as a whole, such as "a ball", are no fillers here.
            let known = question.says(&part);
            let part = if known {
                part
            } else {
                self.number(question, &part)
            };
            let mut kind: Vec<&str> = Vec::new();
            let mut words = part.split(' ').peekable();
            let is_count = |word: &str| word.parse::<usize>().is_ok();
            while let Some(word) = words.next() {
                let goes_on = words.peek().is_some_and(|next| !is_count(next));
                if is_count(word) && goes_on && !kind.is_empty() {
                    kinds.push(kind.join(" "));
                    kind.clear();
                }
                kind.push(word);
            }
            kinds.push(kind.join(" "));
        }
        kinds
    }

    /// The one choice that is meant, if there is just one.
    fn choice<'q>(&self, question: &'q Question, text: &str) -> Option<&'q Choice> {
        let by_place = || {
            let place: usize = text.parse().ok()?;
            let is_place = question.quantity.is_none() && question.form != Form::Balls;
            question
                .choices
                .get(place.checked_sub(1)?)
                .filter(|_| is_place)
        };
        let without_filler = || exact(question, &self.without_filler(text));
        let inside = || match within(question, text)[..] {
            [only] => Some(only),
            _ => None,
        };
        exact(question, text)
            .or_else(by_place)
            .or_else(without_filler)
            .or_else(inside)
    }

    fn without_filler(&self, text: &str) -> String {
        replaced(text, |words| {
            let filler = self.filler.iter().find(|filler| begins(words, filler))?;
            Some((filler.split(' ').count(), ""))
        })
    }

    /// The text as notations read it: filler left out, other words for the same put in.
    fn number(&self, question: &Question, text: &str) -> String {
        let digits = in_digits(text.trim_start_matches('~'), &self.numbers);
        let bare = self.without_filler(&digits);
        let bare = replaced(&bare, |words| {
            let limit = question.at_most.iter().find(|one| begins(words, one))?;
            Some((limit.split(' ').count(), ""))
        });
        replaced(&bare, |words| {
            let (from, to) = self.same.iter().find(|(from, _)| begins(words, from))?;
            Some((from.split(' ').count(), to.as_str()))
        })
    }
}

impl Question {
    /// Whether this is one of its own sayings.
    fn says(&self, text: &str) -> bool {
        let lists = [&self.none, &self.other, &self.open];
        exact(self, text).is_some() || lists.iter().any(|list| list.iter().any(|s| s == text))
    }

    /// The profile of somebody who was asked this and doesn't know.
    pub(super) fn not_known(&self, bowler: &Bowler) -> Result<Bowler, Impossible> {
        let mut bowler = bowler.clone();
        for name in &self.answers {
            bowler = bowler.not_known(name)?;
        }
        Ok(bowler)
    }

    /// The text without the words for the place where it was read, and whether that was at the pins.
    fn place(&self, text: &str) -> (String, bool) {
        let take = |sayings: &[String]| {
            let mut sayings: Vec<&String> = sayings.iter().collect();
            sayings.sort_by_key(|saying| std::cmp::Reverse(saying.len()));
            let mut ends = sayings.into_iter();
            ends.find_map(|saying| Some(text.strip_suffix(saying.as_str())?.trim_end().to_owned()))
        };
        match (take(&self.at_the_pins), take(&self.at_release)) {
            (Some(rest), _) => (rest, true),
            (None, Some(rest)) => (rest, false),
            (None, None) => (text.to_owned(), false),
        }
    }
}

/// The choice with this very saying.
fn exact<'q>(question: &'q Question, text: &str) -> Option<&'q Choice> {
    let says = |choice: &&Choice| choice.sayings.iter().any(|saying| saying == text);
    question.choices.iter().find(says)
}

/// The choices whose sayings stand in the text as whole words, but for those inside a longer saying of another. None if a word turns
/// the meaning round.
pub(super) fn within<'q>(question: &'q Question, text: &str) -> Vec<&'q Choice> {
    if is_negated(text) {
        return Vec::new();
    }
    let spaced = |text: &str| format!(" {} ", text.replace([',', '.', ';', '!'], " "));
    let whole = spaced(text);
    let mut found: Vec<(&Choice, String)> = Vec::new();
    for choice in &question.choices {
        let sayings = choice.sayings.iter().map(|saying| spaced(saying));
        let sayings = sayings.filter(|saying| whole.contains(saying.as_str()));
        found.extend(sayings.map(|saying| (choice, saying)));
    }
    let mut left: Vec<&Choice> = Vec::new();
    for (choice, saying) in &found {
        let covered = found.iter().any(|(other, longer)| {
            other.value != choice.value && longer != saying && longer.contains(saying.as_str())
        });
        if !covered && !left.iter().any(|other| other.value == choice.value) {
            left.push(choice);
        }
    }
    left
}

pub(super) fn is_negated(text: &str) -> bool {
    text.split(' ').any(|word| NEGATIONS.contains(&word))
}

/// What stands between commas and "and".
fn parts(text: &str) -> Vec<String> {
    let text = text.replace([';', '/', '&', '+'], ",");
    let text = format!(" {text} ").replace(" and ", ",");
    let parts = text.split(',').map(str::trim);
    let parts = parts.filter(|part| !part.is_empty());
    parts.map(str::to_owned).collect()
}
