//! A grip on the ball, with its spans and its bridge to be read back.

use super::{
    Misfit, Sphere,
    digit::Digit,
    edge::{apart, reach, toward},
    hole::Hole,
    order::{Along, Kind},
    view::Shift,
};

/// A grip on the ball, in the frame of [`super::hole`].
///
/// The grip centre lies on +z and the centreline in the y-z plane, fingers at +y.
///
/// With a thumb the centreline is the great circle from the thumb's centre through the middle of the bridge as cut.
/// Take the midpoint of each span as cut, from edge to edge; the great circle through the two midpoints crosses the
/// centreline at the grip centre. (To measure from the cut edges is printed; that the centre is the midpoint is common
/// practice.)
///
/// Without a thumb the centreline crosses the bridge squarely in its middle, and the grip centre is the palm mark on
/// it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placed {
    /// The thumb hole, as cut.
    pub thumb: Option<Hole>,
    /// The middle finger's hole, as cut.
    pub middle: Hole,
    /// The ring finger's hole, as cut.
    pub ring: Hole,
    /// What the hand feels.
    pub bores: Bores,
}

/// The bores of a placed grip, with the same mouths as the holes as cut. Where there is no slug, sleeve or insert, the
/// bore is the hole as cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bores {
    /// The thumb's.
    pub thumb: Option<Hole>,
    /// The middle finger's.
    pub middle: Hole,
    /// The ring finger's.
    pub ring: Hole,
}

impl Placed {
    /// The holes as cut: thumb, if there is one, middle, ring.
    pub fn holes(&self) -> impl Iterator<Item = (Digit, Hole)> + use<> {
        let thumb = self.thumb.map(|hole| (Digit::Thumb, hole));
        let fingers = [(Digit::Middle, self.middle), (Digit::Ring, self.ring)];
        thumb.into_iter().chain(fingers)
    }

    /// The span to this finger, of this kind, read in this way; `None` without a thumb, or for the thumb.
    pub fn span(&self, ball: &Sphere, finger: Digit, kind: Kind, along: Along) -> Option<f64> {
        let cut = (self.thumb?, self.finger(finger)?);
        let bore = (self.bores.thumb?, self.bores.finger(finger)?);
        let angle = match kind {
            Kind::Full => between_edges(&bore.0, &bore.1),
            Kind::Cut => between_edges(&cut.0, &cut.1),
            Kind::Centre => between_centres(&cut.0, &cut.1),
        };
        Some(match along {
            Along::Arc => ball.radius() * angle,
            Along::Chord => 2.0 * ball.radius() * libm::sin(0.5 * angle),
        })
    }

    /// The arc between the near edges of the finger holes as cut.
    pub fn bridge(&self, ball: &Sphere) -> f64 {
        ball.radius() * between_edges(&self.middle, &self.ring)
    }

    /// The arc between the near edges of the finger bores: the bridge as felt, with inserts in place.
    pub fn felt_bridge(&self, ball: &Sphere) -> f64 {
        ball.radius() * between_edges(&self.bores.middle, &self.bores.ring)
    }

    /// The straight line between the centres of the finger holes, which [`super::jig::parallel_lateral`] asks for.
    pub fn between_fingers(&self) -> f64 {
        (self.middle.mouth_vec() - self.ring.mouth_vec()).length()
    }

    /// The grip of the other hand: left and right swapped, each hole still the same finger's.
    pub fn mirrored(&self) -> Placed {
        self.map(Hole::mirrored)
    }

    /// This grip seen from another one on the same ball, for example an old grip from the new. Oval angles in the
    /// sections stay as they were ordered; [`Hole::wide`] turns.
    ///
    /// # Errors
    ///
    /// A number outside its range.
    pub fn seen_from(&self, ball: &Sphere, new: Shift) -> Result<Placed, Misfit> {
        let view = new.view(ball)?;
        Ok(self.map(|hole| hole.turned(&view)))
    }

    fn finger(&self, finger: Digit) -> Option<Hole> {
        match finger {
            Digit::Thumb => None,
            Digit::Middle => Some(self.middle),
            Digit::Ring => Some(self.ring),
        }
    }

    pub(super) fn map(&self, change: impl Fn(Hole) -> Hole) -> Placed {
        Placed {
            thumb: self.thumb.map(&change),
            middle: change(self.middle),
            ring: change(self.ring),
            bores: Bores {
                thumb: self.bores.thumb.map(&change),
                middle: change(self.bores.middle),
                ring: change(self.bores.ring),
            },
        }
    }
}

impl Bores {
    fn finger(&self, finger: Digit) -> Option<Hole> {
        match finger {
            Digit::Thumb => None,
            Digit::Middle => Some(self.middle),
            Digit::Ring => Some(self.ring),
        }
    }
}

/// Radians between the centres of two holes.
fn between_centres(one: &Hole, other: &Hole) -> f64 {
    apart(one.out(), other.out())
}

/// Radians between the near edges of two holes, along the great circle between their centres; below zero if they
/// overlap.
pub(super) fn between_edges(one: &Hole, other: &Hole) -> f64 {
    let (here, there) = (one.out(), other.out());
    let edges = reach(one, toward(here, there)) + reach(other, toward(there, here));
    between_centres(one, other) - edges
}
