//! From what people say to answers: forgiving, and never guessing between two meanings.

use super::misheard::Misheard;
use super::question::{Choice, Form, Question};
use super::read::Questions;
use crate::bowler::{Bowler, Impossible, release_speed};
use crate::document::{clean, nearest};

/// A longer answer, in characters, isn't listened to.
const LONGEST: usize = 200;
/// The most of an answer that is said again, in characters.
const LONGEST_ECHO: usize = 40;
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

/// Text in small letters, one space between words, without marks at its ends.
pub(super) fn plain(text: &str) -> String {
    let even = |c: char| match c {
        '\u{2018}' | '\u{2019}' | '`' => '\'',
        '_' | '-' => ' ',
        c if c.is_control() => ' ',
        c => c,
    };
    let small: String = text
        .chars()
        .map(even)
        .flat_map(char::to_lowercase)
        .collect();
    let words: Vec<&str> = small.split_whitespace().collect();
    let whole = words.join(" ");
    let marks = ['.', ',', '!', '?', ';', ':', '"', '\'', '(', ')'];
    let bare = whole.trim_matches(marks).trim();
    if bare.is_empty() {
        whole
    } else {
        bare.to_owned()
    }
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
        if self.not_known.contains(&text) || question.open.contains(&text) {
            return Ok(Heard::NotKnown);
        }
        let heard = match question.form {
            Form::Balls => self.balls(question, &text)?.map(Heard::Balls),
            Form::Several => self.several(question, &text)?,
            Form::One => self.one(question, &text)?,
        };
        heard.ok_or_else(|| question.not_understood(&text))
    }

    /// A choice or a number.
    fn one(&self, question: &Question, text: &str) -> Result<Option<Heard>, Misheard> {
        if let (Some(name), Some(choice)) = (question.chosen, self.choice(question, text)) {
            return Ok(Some(Heard::Value(name, choice.value)));
        }
        let Some(quantity) = question.quantity else {
            return Ok(None);
        };
        let number = self.number(text);
        let (number, at_pins) = question.place(&number);
        let Ok(value) = quantity.notation.read(&number) else {
            return Ok(None);
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
        let mut bits = 0;
        for part in parts(text) {
            let found = match self.choice(question, &part) {
                Some(choice) => vec![choice],
                None => within(question, &part),
            };
            if found.is_empty() {
                return Err(question.not_understood(&part));
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
        let mut balls = Vec::new();
        for part in parts(text) {
            let words = self.number(&part);
            let (first, rest) = words.split_once(' ').unwrap_or((&words, ""));
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
                None => return Err(question.not_understood(&part)),
            };
            if count == 0 || balls.len() + count.min(MOST_BALLS + 1) > MOST_BALLS {
                return Err(question.not_understood(&part));
            }
            balls.extend(std::iter::repeat_n(cover, count));
        }
        Ok((!balls.is_empty()).then_some(balls))
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
    fn number(&self, text: &str) -> String {
        let bare = self.without_filler(text.trim_start_matches('~'));
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

    fn not_understood(&self, text: &str) -> Misheard {
        let sayings = self.choices.iter().flat_map(|choice| &choice.sayings);
        let sayings = sayings
            .chain(&self.none)
            .chain(&self.other)
            .chain(&self.open);
        let sayings = sayings.filter(|_| !is_negated(text));
        let several = within(self, text);
        let quoted = |text: &str| format!("\"{text}\"");
        let labels = || self.choices.iter().map(|choice| choice.label.as_str());
        let hint = if several.len() > 1 {
            let labels: Vec<String> = several.iter().map(|c| quoted(&c.label)).collect();
            format!("Which is it: {}?", labels.join(" or "))
        } else if let Some(near) = nearest(text, sayings.map(String::as_str)) {
            format!("Did you mean {}?", quoted(near))
        } else if let (Some(_), [first, ..]) = (self.quantity, &self.such_as[..]) {
            let last = self.such_as.last().unwrap_or(first);
            format!("Please say it like {} or {}.", quoted(first), quoted(last))
        } else {
            let labels: Vec<String> = labels().map(quoted).collect();
            format!("Please say one of: {}.", labels.join(", "))
        };
        let mut said: String = text.chars().take(LONGEST_ECHO).collect();
        if said.len() < text.len() {
            said.push('…');
        }
        Misheard::NotUnderstood {
            said: clean(&said),
            hint,
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
fn within<'q>(question: &'q Question, text: &str) -> Vec<&'q Choice> {
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

fn is_negated(text: &str) -> bool {
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

/// Whether these words begin with this saying.
fn begins(words: &[&str], saying: &str) -> bool {
    let mut said = words.iter();
    saying.split(' ').all(|word| said.next() == Some(&word))
}

/// The text with some of its words changed: at each place, how many words are replaced by what.
fn replaced<'r>(text: &str, change: impl Fn(&[&str]) -> Option<(usize, &'r str)>) -> String {
    let words: Vec<&str> = text.split_whitespace().collect();
    let mut left = &words[..];
    let mut kept: Vec<&str> = Vec::new();
    while let Some((first, rest)) = left.split_first() {
        match change(left) {
            Some((count, by)) if count > 0 => {
                kept.extend((!by.is_empty()).then_some(by));
                left = left.get(count..).unwrap_or_default();
            }
            _ => {
                kept.push(first);
                left = rest;
            }
        }
    }
    kept.join(" ")
}
