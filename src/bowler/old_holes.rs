//! The holes of the drilled ball on the fit card, as they lie on the ball: what new holes have to keep clear of.

use std::fmt;

use super::span::{self, Finger, Span, SpanKind};
use super::{Bowler, NewGrip, answer};
use crate::fitting::grip::{
    Along, Digit, GripOrder, HoleOrder, Kind, Placed, Reading, Reference, Shift, Unplaceable, place,
};
use crate::fitting::hole::{Hole, Pitches, Section};
use crate::fitting::{Misfit, Sphere};

/// Steps in one inch of a length, a hole size or a pitch.
const INCH: f64 = 64.0;

/// Why the old holes can't be placed on the ball.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum NoOldHoles {
    /// There is no fit card to take them from.
    NoCard,
    /// The card doesn't tell these; read them off the ball.
    Missing(Vec<&'static str>),
    /// The numbers of the card make no grip.
    Unplaceable(Unplaceable),
    /// The place of the new grip isn't on the ball.
    Misfit(Misfit),
}

impl fmt::Display for NoOldHoles {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            NoOldHoles::NoCard => {
                write!(f, "Read the old holes off the ball: there is no fit card.")
            }
            NoOldHoles::Missing(names) => write!(f, "Read off the old ball: {}.", names.join(", ")),
            NoOldHoles::Unplaceable(why) => write!(f, "Check the old ball's card: {why}."),
            NoOldHoles::Misfit(why) => write!(f, "Check where the new grip goes: {why}."),
        }
    }
}

impl std::error::Error for NoOldHoles {}

/// What a card may tell of a thumb hole.
const THUMB: [&str; 8] = [
    "card.thumb_bore",
    "card.thumb_forward",
    "card.thumb_lateral",
    "card.thumb_depth",
    "card.oval_wide",
    "card.oval_narrow",
    "card.slug",
    "card.tapes",
];

impl Bowler {
    /// Whether the drilled ball of the fit card has a thumb hole. A card that tells nothing of one is that of a ball without
    /// only where the thumb stays out.
    pub fn card_has_thumb(&self) -> bool {
        let told = THUMB.iter().any(|name| self.tells(name));
        let spans = self.card().is_some_and(|card| !card.spans().is_empty());
        told || spans || self.answer("bowler.thumb") != Some(1)
    }

    /// The holes of the fit card's ball as cut, in the frame of [`crate::fitting::hole`] of the *new* grip of
    /// [`Bowler::used_ball`], for a right hand: a left hand's ball is given as its mirror image.
    ///
    /// Nothing is filled in: a depth or a slug that isn't on the card is asked for.
    ///
    /// # Errors
    ///
    /// [`NoOldHoles`], with what to do about it.
    pub fn old_holes(
        &self,
        ball: &Sphere,
        reference: Reference,
    ) -> Result<Vec<(Digit, Hole)>, NoOldHoles> {
        let (seen, _) = self.old_grip_seen(ball, reference)?;
        Ok(seen.holes().collect())
    }

    /// The grip of the fit card's ball seen from the new one, and where the new one lies, both for a right hand.
    ///
    /// # Errors
    ///
    /// As of [`Bowler::old_holes`].
    pub fn old_grip_seen(
        &self,
        ball: &Sphere,
        reference: Reference,
    ) -> Result<(Placed, Shift), NoOldHoles> {
        let old = self.old_grip(ball, reference)?;
        let place = self.used_ball().and_then(|used| used.new_grip());
        let place = place.ok_or_else(|| NoOldHoles::Missing(vec!["where the new grip goes"]))?;
        let shift = self.shift(place);
        let seen = old.seen_from(ball, shift).map_err(NoOldHoles::Misfit)?;
        Ok((seen, shift))
    }

    /// The grip of the fit card's ball in its own frame, for a right hand.
    ///
    /// # Errors
    ///
    /// As of [`Bowler::old_holes`].
    pub fn old_grip(&self, ball: &Sphere, reference: Reference) -> Result<Placed, NoOldHoles> {
        if self.card().is_none() {
            return Err(NoOldHoles::NoCard);
        }
        let mut card = Card {
            bowler: self,
            missing: Vec::new(),
        };
        let order = card.order(reference);
        match order {
            Some(order) if card.missing.is_empty() => {
                place(ball, &order).map_err(NoOldHoles::Unplaceable)
            }
            _ => Err(NoOldHoles::Missing(card.missing)),
        }
    }

    fn is_left(&self) -> bool {
        self.answer("bowler.hand") == Some(1)
    }

    /// The place of the new grip, turned to a right hand.
    fn shift(&self, place: NewGrip) -> Shift {
        let side = if self.is_left() { -1.0 } else { 1.0 };
        Shift {
            over: side * place.over() as f64 / INCH,
            up: place.up() as f64 / INCH,
            turned: side * place.turned() as f64 / 10.0,
        }
    }
}

/// A card while its numbers are gathered.
struct Card<'b> {
    bowler: &'b Bowler,
    missing: Vec<&'static str>,
}

impl Card<'_> {
    /// The whole order; what the card doesn't tell is noted, all of it.
    fn order(&mut self, reference: Reference) -> Option<GripOrder> {
        let thumb = self.bowler.card_has_thumb();
        // A fingertip hole has an insert or a slug whatever the card says; its size can't be guessed.
        let fingertip = self.bowler.answer("card.grip") != Some(0);
        let outside = |card: &mut Self, name| match card.bowler.tells(name) || fingertip {
            true => card.inches(name).map(Some),
            false => Some(None),
        };
        let insert = outside(self, "card.insert");
        let slug = if thumb {
            outside(self, "card.slug")
        } else {
            Some(None)
        };
        let middle = self.hole(["card.middle_bore", "card.middle_depth"], insert);
        let middle = middle.zip(self.pitches(["card.middle_forward", "card.middle_lateral"]));
        let ring = self.hole(["card.ring_bore", "card.ring_depth"], insert);
        let ring = ring.zip(self.pitches(["card.ring_forward", "card.ring_lateral"]));
        let bridge = self.inches("card.bridge");
        let of_thumb = thumb.then(|| {
            let hole = self.thumb(slug);
            let hole = hole.zip(self.pitches(["card.thumb_forward", "card.thumb_lateral"]));
            let spans = [Finger::Middle, Finger::Ring].map(|finger| self.span(finger));
            (hole, spans)
        });
        if !thumb {
            self.missing.push("where the old palm mark lies");
        }
        let whole = |(hole, pitches): (HoleOrder, Pitches)| HoleOrder { pitches, ..hole };
        let (thumb, spans) = match of_thumb {
            Some((hole, [middle, ring])) => (Some(whole(hole?)), Some([middle?, ring?])),
            None => (None, None),
        };
        Some(GripOrder {
            thumb,
            middle: whole(middle?),
            ring: whole(ring?),
            spans,
            palm_mark: None,
            bridge: bridge?,
            reference,
        })
    }

    fn inches(&mut self, name: &'static str) -> Option<f64> {
        let value = self.bowler.answer(name);
        if value.is_none() {
            let called = answer(name).map_or(name, |row| row.called());
            if !self.missing.contains(&called) {
                self.missing.push(called);
            }
        }
        value.map(|steps| steps as f64 / INCH)
    }

    fn hole(
        &mut self,
        [bore, depth]: [&'static str; 2],
        outside: Option<Option<f64>>,
    ) -> Option<HoleOrder> {
        let bore = self.inches(bore).map(|size| Section::Round { size });
        let depth = self.inches(depth);
        Some(ordered(bore?, outside?, depth?))
    }

    fn thumb(&mut self, slug: Option<Option<f64>>) -> Option<HoleOrder> {
        if !self.bowler.tells("card.oval_wide") && !self.bowler.tells("card.oval_narrow") {
            return self.hole(["card.thumb_bore", "card.thumb_depth"], slug);
        }
        let wide = self.inches("card.oval_wide");
        let narrow = self.inches("card.oval_narrow");
        // Steps of an angle are tenths of a degree.
        let angle = self.inches("card.oval_angle").map(|n| n * INCH / 10.0);
        let depth = self.inches("card.thumb_depth");
        let oval = Section::Oval {
            wide: wide?,
            narrow: narrow?,
            angle: if self.bowler.is_left() {
                180.0 - angle?
            } else {
                angle?
            },
        };
        Some(ordered(oval, slug?, depth?))
    }

    fn pitches(&mut self, [forward, lateral]: [&'static str; 2]) -> Option<Pitches> {
        let (forward, lateral) = (self.inches(forward), self.inches(lateral));
        let side = if self.bowler.is_left() { -1.0 } else { 1.0 };
        Some(Pitches {
            forward: forward?,
            lateral: side * lateral?,
        })
    }

    fn span(&mut self, finger: Finger) -> Option<Reading> {
        let spans = self.bowler.card()?.spans();
        let found = spans.iter().find(|span| span.finger() == finger);
        if found.is_none() {
            self.missing.push(match finger {
                Finger::Middle => "the card's span to the middle finger",
                Finger::Ring => "the card's span to the ring finger",
            });
        }
        found.map(reading)
    }
}

fn ordered(bore: Section, outside: Option<f64>, depth: f64) -> HoleOrder {
    HoleOrder {
        bore,
        outside,
        depth,
        pitches: Pitches::NONE,
        outside_pitches: None,
    }
}

fn reading(span: &Span) -> Reading {
    Reading {
        value: span.value() as f64 / INCH,
        kind: match span.kind() {
            SpanKind::Full => Kind::Full,
            SpanKind::Cut => Kind::Cut,
            SpanKind::Centre => Kind::Centre,
        },
        along: match span.along() {
            span::Along::Arc => Along::Arc,
            span::Along::Chord => Along::Chord,
        },
    }
}
