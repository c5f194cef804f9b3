//! One more answer in a profile: given, or asked and not known.

use std::fmt;

use super::answer::Shape;
use super::contradiction::contradiction;
use super::span::{Along, CARD_SPANS, Finger, Grip, HAND_SPANS, Span, SpanKind};
use super::table::answer;
use super::{Bowler, OwnedBall, Question};
use crate::document::{Document, Format};

/// Answers of which one is asked for by the others: who doesn't know one doesn't know the rest.
const TOGETHER: &[&[&str]] = &[
    &["bowler.rev_rate", "bowler.rev_level"],
    &["owned.count", "owned.covers", "owned.games_since_service"],
];

/// Why an answer can't be taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Impossible {
    message: String,
    help: Option<String>,
    is_against_another: bool,
}

impl Impossible {
    fn new(message: impl Into<String>, help: impl Into<String>) -> Impossible {
        Impossible {
            message: message.into(),
            help: Some(help.into()),
            is_against_another: false,
        }
    }

    /// Whether it goes against another answer, so that either may be the wrong one.
    #[must_use]
    pub fn is_against_another(&self) -> bool {
        self.is_against_another
    }

    /// What is wrong, in lower case without a full stop.
    #[must_use]
    pub fn message(&self) -> &str {
        &self.message
    }

    /// What to do about it.
    #[must_use]
    pub fn help(&self) -> Option<&str> {
        self.help.as_deref()
    }
}

impl fmt::Display for Impossible {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.message)?;
        self.help.iter().try_for_each(|help| write!(f, "; {help}"))
    }
}

impl std::error::Error for Impossible {}

impl Bowler {
    /// The profile of somebody of whom nothing is known yet.
    #[must_use]
    pub fn unheard() -> Bowler {
        Bowler {
            name: None,
            notes: Default::default(),
            spans: Vec::new(),
            card: None,
            owned: Vec::new(),
            used: None,
            settled_ball: None,
            give_or_take: Default::default(),
        }
        .reread()
        .unwrap_or_else(|bowler| *bowler)
    }

    /// The same bowler with one more answer, or another one, in the steps of [`ANSWERS`](super::ANSWERS).
    ///
    /// # Errors
    /// Why it can't be so: no such answer, out of range, or against another answer.
    pub fn answered(&self, name: &str, value: i64) -> Result<Bowler, Impossible> {
        let Some(row) = answer(name) else {
            return Err(no_answer(name));
        };
        check_range(row.called(), row.shape(), value)?;
        let name = row.name();
        if name == "hand.measured" {
            let help = "give what was measured";
            return Err(Impossible::new("this follows from the measurements", help));
        }
        let mut other = self.clone();
        other.notes.unknown.remove(name);
        other.put(name, value);
        if let Some(wrong) = contradiction(&|name| other.answer(name)) {
            return Err(Impossible {
                is_against_another: true,
                ..Impossible::new(wrong.message(), wrong.help())
            });
        }
        other.reread().map_err(|other| {
            let why = other.faults();
            Impossible {
                message: why,
                help: None,
                is_against_another: false,
            }
        })
    }

    /// The same bowler, who was asked for this answer and doesn't know it. What is answered together isn't known together.
    ///
    /// # Errors
    /// If there is no such answer.
    pub fn not_known(&self, name: &str) -> Result<Bowler, Impossible> {
        let Some(row) = answer(name) else {
            return Err(no_answer(name));
        };
        let alone = [row.name()];
        let together = TOGETHER.iter().find(|names| names.contains(&row.name()));
        // The games since service are asked for alone once the balls are known.
        let names = match together {
            Some(names) if name != "owned.games_since_service" => names,
            _ => &alone[..],
        };
        let mut other = self.clone();
        if name.starts_with("card.") && name != "card.works" {
            other.card.get_or_insert_default();
        }
        for name in names {
            other.notes.values.remove(name);
            other.notes.unknown.insert(name);
            other.forget(name);
        }
        Ok(other.reread().unwrap_or_else(|other| *other))
    }

    /// The same bowler with these balls, each by its cover in the order of [`COVERS`](super::COVERS), if that is known.
    ///
    /// # Errors
    /// As [`Bowler::answered`].
    pub fn owning(&self, covers: &[Option<i64>]) -> Result<Bowler, Impossible> {
        let mut other = self.clone();
        for name in TOGETHER.iter().flat_map(|names| *names) {
            if name.starts_with("owned.") {
                other.notes.unknown.remove(name);
            }
        }
        let ball = |&cover| OwnedBall {
            cover,
            ..OwnedBall::default()
        };
        other.owned = covers.iter().map(ball).collect();
        other.count_balls();
        let count = other.answer("owned.count").unwrap_or(0);
        other.answered("owned.count", count)
    }

    /// Puts a value where it belongs.
    fn put(&mut self, name: &'static str, value: i64) {
        if name.starts_with("owned.") {
            self.put_owned(name, value);
            return;
        }
        if let Some(place) = HAND_SPANS.iter().position(|one| *one == name) {
            let grip = [Grip::Conventional, Grip::Fingertip][usize::from(place >= 2)];
            put_span(&mut self.spans, Some(grip), name, value);
        }
        if name.starts_with("card.") {
            let grip = self.answer("card.grip").map(super::span::grip);
            let card = self.card.get_or_insert_default();
            if CARD_SPANS.contains(&name) {
                put_span(&mut card.spans, grip, name, value);
            }
            if name == "card.complaint" {
                card.complaint = (value == 1).then(|| "yes".to_owned());
            }
        }
        self.notes.values.insert(name, value);
    }

    /// Takes away what an answer stood in besides its value.
    fn forget(&mut self, name: &str) {
        let full = |span: &Span, finger| span.is_full_arc() && span.finger == finger;
        let finger = if name.ends_with("ring_span") {
            Finger::Ring
        } else {
            Finger::Middle
        };
        if let Some(place) = HAND_SPANS.iter().position(|one| *one == name) {
            let grip = [Grip::Conventional, Grip::Fingertip][usize::from(place >= 2)];
            self.spans
                .retain(|span| !(full(span, finger) && span.grip == Some(grip)));
        }
        if let Some(card) = &mut self.card {
            if CARD_SPANS.contains(&name) {
                card.spans.retain(|span| !full(span, finger));
            }
            if name == "card.complaint" {
                card.complaint = None;
            }
        }
        match name {
            "owned.count" => self.owned.clear(),
            "owned.games_since_service" => {
                for ball in &mut self.owned {
                    ball.games_since_service = None;
                }
            }
            _ => {}
        }
    }

    fn put_owned(&mut self, name: &'static str, value: i64) {
        match name {
            "owned.games_since_service" => {
                // The games are those of the most used ball, so no other ball may have more.
                let reactive = |ball: &&mut OwnedBall| ball.is_reactive() == Some(true);
                let mut balls = self.owned.iter_mut().filter(reactive);
                if let Some(first) = balls.next() {
                    first.games_since_service = Some(value);
                    first.games = first.games.map(|games| games.max(value));
                }
                for ball in balls {
                    let since = ball.games_since_service;
                    ball.games_since_service = since.map(|games| games.min(value));
                }
            }
            "owned.count" => {
                let count = usize::try_from(value).unwrap_or(0);
                if self.owned.len() != count {
                    self.owned.resize(count, OwnedBall::default());
                }
            }
            _ => {
                let has = |ball: &OwnedBall| ball.cover;
                self.owned
                    .retain(|ball| has(ball).is_none_or(|cover| value >> cover & 1 == 1));
                for cover in (0..).take_while(|bit| value >> bit != 0) {
                    let wanted = value >> cover & 1 == 1;
                    if wanted && !self.owned.iter().any(|ball| has(ball) == Some(cover)) {
                        self.owned.push(OwnedBall {
                            cover: Some(cover),
                            ..OwnedBall::default()
                        });
                    }
                }
            }
        }
        self.count_balls();
        if name == "owned.games_since_service" {
            self.notes.values.insert(name, value);
        }
    }

    /// The answers that follow from the balls owned.
    fn count_balls(&mut self) {
        let count = i64::try_from(self.owned.len()).unwrap_or(i64::MAX);
        let covers = self.owned.iter().filter_map(|ball| ball.cover);
        let covers = covers.fold(0, |bits, cover| bits | 1 << cover);
        let values = &mut self.notes.values;
        values.insert("owned.count", count);
        values.insert("owned.covers", covers);
        let reactive = self.owned.iter().filter(|b| b.is_reactive() == Some(true));
        match reactive.filter_map(|ball| ball.games_since_service).max() {
            Some(games) => values.insert("owned.games_since_service", games),
            None => values.remove("owned.games_since_service"),
        };
    }

    /// The profile as it is read once written down, so that all that follows from the answers is worked out anew; itself where that
    /// can't be read.
    fn reread(self) -> Result<Bowler, Box<Bowler>> {
        let text = self.to_yaml();
        let read = Document::parse("the profile", text.as_bytes(), Format::Yaml)
            .and_then(|document| Bowler::read(&document));
        read.map_err(|_| Box::new(self))
    }

    /// The first thing wrong with a profile that can't be read.
    fn faults(&self) -> String {
        let text = self.to_yaml();
        let read = Document::parse("the profile", text.as_bytes(), Format::Yaml)
            .and_then(|document| Bowler::read(&document));
        match read {
            Ok(_) => String::new(),
            Err(faults) => faults
                .iter()
                .next()
                .map(|fault| fault.message().to_owned())
                .unwrap_or_default(),
        }
    }

    /// What should be cleared up about one answer.
    pub fn questions_about<'b>(&'b self, name: &'b str) -> impl Iterator<Item = &'b Question> {
        self.notes.questions.iter().filter(move |q| q.about == name)
    }
}

fn no_answer(name: &str) -> Impossible {
    let name = crate::document::clean(name);
    let names = super::ANSWERS.iter().map(|answer| answer.name());
    let message = format!("there is no answer `{name}`");
    match crate::document::nearest(&name, names) {
        Some(nearest) => Impossible::new(message, format!("did you mean `{nearest}`?")),
        None => Impossible {
            message,
            help: None,
            is_against_another: false,
        },
    }
}

fn put_span(spans: &mut Vec<Span>, grip: Option<Grip>, name: &str, value: i64) {
    let finger = if name.ends_with("ring_span") {
        Finger::Ring
    } else {
        Finger::Middle
    };
    spans.retain(|span| !(span.is_full_arc() && span.finger == finger && span.grip == grip));
    spans.push(Span {
        grip,
        finger,
        value,
        kind: SpanKind::Full,
        along: Along::Arc,
    });
}

fn check_range(called: &str, shape: Shape, value: i64) -> Result<(), Impossible> {
    let (lowest, highest) = match shape {
        Shape::Number {
            lowest, highest, ..
        } => (lowest, highest),
        Shape::Choice(words) => (0, words.len() as i64 - 1),
        Shape::Flag => (0, 1),
        Shape::Set(words) => (0, (1 << words.len()) - 1),
    };
    if (lowest..=highest).contains(&value) {
        return Ok(());
    }
    match shape {
        Shape::Number { notation, .. } => {
            let (least, most) = (notation.write(lowest), notation.write(highest));
            let message = format!("{called} can't be {}", notation.write(value));
            Err(Impossible::new(
                message,
                format!("it lies between {least} and {most}"),
            ))
        }
        _ => Err(Impossible::new(
            format!("{called} has no such value"),
            format!("it lies between {lowest} and {highest}"),
        )),
    }
}
