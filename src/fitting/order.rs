//! A grip as it is ordered, in the words of the work order.

use super::{
    Misfit, Sphere,
    digit::Digit,
    hole::{Pitches, Section},
    unplaceable::Fault,
    within,
};

/// From where to where a span runs, always along the great circle between the two hole centres and to unbevelled edges.
///
/// Edges are the real ones: of a hole that leans, and of an oval. The edge of an oval is that of the oval itself, not
/// of its drill.
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

/// A span as it was read, in inches; no more than a quarter of the way around the ball.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// What was read.
    pub value: f64,
    /// From where to where.
    pub kind: Kind,
    /// How.
    pub along: Along,
}

impl Reading {
    /// The same distance along the ball.
    pub(super) fn arc(&self, ball: &Sphere, names: Names) -> Result<f64, Misfit> {
        let quarter = ball.quarter();
        let arc = match self.along {
            Along::Arc => self.value,
            Along::Chord => {
                let diameter = 2.0 * ball.radius();
                ball.chord_to_arc(within(names.chord, self.value, 0.0, diameter)?)?
            }
        };
        within(names.arc, arc, 0.0, quarter)
    }

    /// An arc as this reading would give it.
    pub(super) fn read(&self, ball: &Sphere, arc: f64) -> f64 {
        match self.along {
            Along::Arc => arc,
            // A negative one keeps its sign: it says that no such span is there.
            Along::Chord => 2.0 * ball.radius() * libm::sin(arc / (2.0 * ball.radius())),
        }
    }
}

/// What a span is called in a refusal.
#[derive(Clone, Copy)]
pub(super) struct Names {
    pub arc: &'static str,
    pub chord: &'static str,
}

/// The middle and the ring span's names.
pub(super) const SPANS: [Names; 2] = [
    Names {
        arc: "middle span",
        chord: "middle span as a straight line",
    },
    Names {
        arc: "ring span",
        chord: "ring span as a straight line",
    },
];

/// One hole as it is ordered.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HoleOrder {
    /// What the finger feels.
    pub bore: Section,
    /// The outside diameter of a slug, sleeve or insert, which is then what gets drilled. `None` where the ball is
    /// bare.
    pub outside: Option<f64>,
    /// Inches from the sphere to the flat bottom, along the axis.
    pub depth: f64,
    /// Where the bore leans.
    pub pitches: Pitches,
    /// Where the hole for a slug, sleeve or insert leans. `None`: as the bore; [`Pitches::NONE`]: straight at the
    /// centre.
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

    /// Where the hole as cut leans.
    pub fn cut_pitches(&self) -> Pitches {
        match (self.outside, self.outside_pitches) {
            (Some(_), Some(pitches)) => pitches,
            _ => self.pitches,
        }
    }
}

/// From what line a finger's forward pitch is counted. The trade doesn't agree, so it is a setting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reference {
    /// Each finger's own line: the great circle from its centre to the thumb's. A grip without thumb hole has no such
    /// lines; there it is parallel to the centreline.
    OwnLine,
    /// Parallel to the centreline: the great circle through the finger's centre that is square to the one which crosses
    /// the centreline squarely at the middle of the bridge.
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
    /// Without a thumb: inches along the centreline from the line of the near edges to the + mark under the palm. That
    /// line is the great circle through the palm-side edges of the two bores, each straight below its hole's centre. No
    /// more than a quarter of the way around the ball.
    pub palm_mark: Option<f64>,
    /// The arc between the near edges of the finger holes as cut, along the great circle between their centres; 0 to 2
    /// in.
    pub bridge: f64,
    /// From what line the fingers' forward pitch is counted.
    pub reference: Reference,
}

impl GripOrder {
    /// The order for this digit's hole, if it has one.
    pub fn hole(&self, digit: Digit) -> Option<&HoleOrder> {
        match digit {
            Digit::Thumb => self.thumb.as_ref(),
            Digit::Middle => Some(&self.middle),
            Digit::Ring => Some(&self.ring),
        }
    }

    /// The same, to be changed.
    pub fn hole_mut(&mut self, digit: Digit) -> Option<&mut HoleOrder> {
        match digit {
            Digit::Thumb => self.thumb.as_mut(),
            Digit::Middle => Some(&mut self.middle),
            Digit::Ring => Some(&mut self.ring),
        }
    }

    /// Everything wrong with single numbers.
    pub(super) fn faults(&self, ball: &Sphere) -> Vec<Fault> {
        let mut faults = Vec::new();
        for digit in [Digit::Thumb, Digit::Middle, Digit::Ring] {
            let misfits = self.hole(digit).map(|hole| hole.misfits(ball));
            let misfits = misfits.into_iter().flatten();
            faults.extend(misfits.map(|misfit| Fault::InHole { digit, misfit }));
        }
        let mut grip = vec![within("bridge", self.bridge, 0.0, WIDEST_BRIDGE)];
        match (self.thumb, self.spans, self.palm_mark) {
            (Some(_), Some(spans), _) => {
                for (reading, names) in spans.iter().zip(SPANS) {
                    grip.push(reading.arc(ball, names));
                }
            }
            (Some(_), None, _) => faults.push(Fault::Missing {
                what: "a grip with a thumb hole needs its two spans",
            }),
            (None, _, Some(mark)) => {
                grip.push(within("way to the palm mark", mark, 0.0, ball.quarter()));
            }
            (None, _, None) => faults.push(Fault::Missing {
                what: "a grip without thumb hole needs the way from the fingers to the palm mark",
            }),
        }
        let misfits = grip.into_iter().filter_map(Result::err);
        faults.extend(misfits.map(Fault::InGrip));
        faults
    }
}

/// As for the planar web.
const WIDEST_BRIDGE: f64 = 2.0;

impl HoleOrder {
    fn misfits(&self, ball: &Sphere) -> Vec<Misfit> {
        let mut checks = vec![
            self.bore.checked().err(),
            super::hole::checked_depth(ball, self.depth).err(),
            self.pitches.checked(ball).err(),
        ];
        if let Some(size) = self.outside {
            checks.push(Section::Round { size }.checked().err());
            let widest = self.bore.drill() + self.bore.run();
            checks.push(within("bore", widest, 0.0, size).err());
        }
        if let Some(pitches) = self.outside_pitches {
            checks.push(pitches.checked(ball).err());
        }
        let mut misfits: Vec<Misfit> = checks.into_iter().flatten().collect();
        misfits.dedup();
        misfits
    }
}
