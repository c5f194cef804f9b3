//! A grip as an order that can be placed on the ball: the one that was settled, or the one on the fit card.

use super::Situation;
use super::answers::INCH;
use crate::fitting::grip::{Along, GripOrder, HoleOrder, Kind, Reading, Reference};
use crate::fitting::hole::{Pitches, Section};

/// Whose numbers make the grip.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GripOf {
    /// The fit that was worked out.
    Fit,
    /// The fit card: the holes of the ball that was drilled last.
    Card,
}

/// A grip with what is not known yet beside it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ordered {
    /// The grip; a thumb hole whose depth isn't known stands in it as deep as the middle finger's.
    pub grip: GripOrder,
    /// Whether the thumb's depth is known, or there is no thumb hole.
    pub thumb_depth_known: bool,
    /// Whether the grip centre is known: it hangs on the thumb, or on a palm mark that was measured. Without one the mark
    /// stands anywhere; walls between fingers don't depend on it.
    pub centre_known: bool,
}

/// Where the palm mark stands while nobody has measured it: only for walls, which don't depend on it.
const SOMEWHERE: f64 = 2.0;

/// The order that the numbers make, for a right hand; `None` while one that places the holes is missing.
pub fn ordered(s: &Situation, of: GripOf, reference: Reference) -> Option<Ordered> {
    let middle = of.hole(s, "middle", None)?;
    let ring = of.hole(s, "ring", None)?;
    let with_thumb = !s.is_word("bowler.thumb", "out");
    let (thumb, spans, palm_mark) = if with_thumb {
        let thumb = of.hole(s, "thumb", Some(middle.depth))?;
        let spans = [of.span(s, "middle")?, of.span(s, "ring")?];
        (Some(thumb), Some(spans), None)
    } else {
        let mark = inches(s, "hand.palm_mark");
        (None, None, Some(mark.unwrap_or(SOMEWHERE)))
    };
    let bridge = match of {
        GripOf::Fit => "fit.bridge",
        GripOf::Card => "card.bridge",
    };
    Some(Ordered {
        grip: GripOrder {
            thumb,
            middle,
            ring,
            spans,
            palm_mark,
            bridge: inches(s, bridge)?,
            reference,
        },
        centre_known: with_thumb || inches(s, "hand.palm_mark").is_some(),
        thumb_depth_known: !with_thumb || of.number(s, "thumb", "depth").is_some(),
    })
}

impl GripOf {
    /// A full span along the arc.
    fn span(self, s: &Situation, finger: &str) -> Option<Reading> {
        Some(Reading {
            value: self.number(s, finger, "span")?,
            kind: Kind::Full,
            along: Along::Arc,
        })
    }

    /// One hole; `depth` stands in for one that isn't known.
    fn hole(self, s: &Situation, digit: &str, depth: Option<f64>) -> Option<HoleOrder> {
        let known = |what: &str| self.number(s, digit, what);
        let bore = known("bore")?;
        let pitch = |what: &str| match self {
            GripOf::Fit => known(&format!("{what}_pitch")),
            GripOf::Card => known(what),
        };
        let outside = match (self, digit) {
            (GripOf::Fit, "thumb") => known("slug"),
            (GripOf::Fit, _) => known("insert"),
            (GripOf::Card, "thumb") => inches(s, "card.slug"),
            (GripOf::Card, _) => inches(s, "card.insert"),
        };
        Some(HoleOrder {
            bore: self.oval(s, digit).unwrap_or(Section::Round { size: bore }),
            outside,
            depth: known("depth").or(depth)?,
            pitches: Pitches {
                forward: pitch("forward")?,
                lateral: pitch("lateral")?,
            },
            // The slug's own hole leans as the bore in it does.
            outside_pitches: None,
        })
    }

    /// The thumb hole's oval, if it is one.
    fn oval(self, s: &Situation, digit: &str) -> Option<Section> {
        if digit != "thumb" {
            return None;
        }
        let name = |what: &str| match self {
            GripOf::Fit => format!("fit.thumb.oval_{what}"),
            GripOf::Card => format!("card.oval_{what}"),
        };
        let (wide, narrow) = (inches(s, &name("wide"))?, inches(s, &name("narrow"))?);
        let angle = s.known(&name("angle"))?;
        (wide > narrow).then_some(Section::Oval {
            wide,
            narrow,
            // Tenths of a degree.
            angle: angle as f64 / 10.0,
        })
    }

    /// A known length of one hole, in inches.
    fn number(self, s: &Situation, digit: &str, what: &str) -> Option<f64> {
        match self {
            GripOf::Fit => inches(s, &format!("fit.{digit}.{what}")),
            GripOf::Card => inches(s, &format!("card.{digit}_{what}")),
        }
    }
}

/// A known length in inches.
fn inches(s: &Situation, name: &str) -> Option<f64> {
    // Steps of a hand are far below 2^52.
    s.known(name).map(|steps| steps as f64 / INCH as f64)
}
