//! A grip as it is ordered, in the words of the work order, and as it lies on the ball.
//!
//! [`place`] turns the one into the other and [`Placed::measure`] reads the spans and the bridge back.

use super::{
    Sphere,
    hole::{Hole, Pitches, Section},
};

pub use super::placing::{Unplaceable, place};

/// From where to where a span runs, always along the great circle between the two hole centres and to unbevelled edges.
///
/// Edges are the real ones: of a hole that leans, and of an oval. The edge of an oval is that of the oval itself, not of its drill.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Between the near edges of the bores, with insert, slug or sleeve in place.
    Full,
    /// Between the near edges as drilled, before insert, slug or sleeve go in.
    Cut,
    /// Between the hole centres: where the axes leave the sphere.
    Centre,
}

/// How a distance was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Along {
    /// With a tape along the ball.
    Arc,
    /// With a calliper, straight across.
    Chord,
}

/// A span as it was read, in inches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// What was read.
    pub value: f64,
    /// From where to where.
    pub kind: Kind,
    /// How.
    pub along: Along,
}

/// One hole as it is ordered.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HoleOrder {
    /// What the finger feels.
    pub bore: Section,
    /// The outside diameter of a slug, sleeve or insert, which is then what gets drilled. `None` where the ball is bare.
    pub outside: Option<f64>,
    /// Inches from the sphere to the flat bottom, along the axis.
    pub depth: f64,
    /// Where the bore leans.
    pub pitches: Pitches,
    /// Where the hole for a slug, sleeve or insert leans. `None`: as the bore; [`Pitches::NONE`]: straight at the centre.
    pub outside_pitches: Option<Pitches>,
}

impl HoleOrder {
    /// What the drill cuts into the ball: the outside if there is one, else the bore.
    pub fn cut(&self) -> Section {
        match self.outside {
            Some(size) => Section::Round { size },
            None => self.bore,
        }
    }
}

/// From what line a finger's forward pitch is counted. The trade doesn't agree, so it is a setting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reference {
    /// Each finger's own line: the great circle to the thumb's centre.
    OwnLine,
    /// The direction of the centreline: the great circle through the finger's centre square to the great circle through the
    /// middle of the bridge that is square to the centreline.
    Centreline,
}

/// A whole grip as it is ordered.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GripOrder {
    /// `None` for a grip without thumb hole.
    pub thumb: Option<HoleOrder>,
    /// The middle finger's hole, which lies left for a right-hander.
    pub middle: HoleOrder,
    /// The ring finger's hole, right.
    pub ring: HoleOrder,
    /// The spans to the middle and the ring finger: needed with a thumb, unused without.
    pub spans: Option<[Reading; 2]>,
    /// Without a thumb: inches along the ball from the middle of the bridge, down the centreline, to the + mark under the palm.
    pub palm_mark: Option<f64>,
    /// The arc between the near edges of the finger holes as cut, along the great circle between their centres.
    pub bridge: f64,
    /// From what line the fingers' forward pitch is counted.
    pub reference: Reference,
}

/// Spans and bridge read off a placed grip.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    /// Middle and ring span; `None` without a thumb.
    pub spans: Option<[f64; 2]>,
    /// The arc between the near edges of the finger holes as cut.
    pub bridge: f64,
}

/// A grip on the ball, as cut: the frame is that of [`super::hole`].
///
/// The grip centre lies on +z and the centreline in the y-z plane, fingers at +y. With a thumb the centreline is the great
/// circle from the thumb's centre through the middle of the bridge, and the grip centre is the middle of its two cut spans:
/// each cut span's midpoint is taken, and the grip centre is the point of the centreline half way between the two.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placed {
    /// The thumb hole, as cut.
    pub thumb: Option<Hole>,
    /// The middle finger's hole, as cut.
    pub middle: Hole,
    /// The ring finger's hole, as cut.
    pub ring: Hole,
    /// What the hand feels: the bores of thumb, middle and ring, with the same mouths as the holes as cut.
    pub bores: Bores,
}

/// The bores of a placed grip. Where there is no slug, sleeve or insert, the bore is the hole as cut.
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
    /// All holes: middle, ring and, if there is one, thumb.
    pub fn holes(&self) -> impl Iterator<Item = &Hole> {
        [Some(&self.middle), Some(&self.ring), self.thumb.as_ref()]
            .into_iter()
            .flatten()
    }
}

/// Placeholder until the placing is there.
pub(super) fn _unused(_: &Sphere) {}
