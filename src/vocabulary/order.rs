//! The grip as it is to be drilled: the settled numbers as an order that can be placed on the ball.

use super::Situation;
use super::answers::INCH;
use crate::fitting::grip::{Along, GripOrder, HoleOrder, Kind, Reading, Reference};
use crate::fitting::hole::{Pitches, Section};

/// A grip with what is not known yet beside it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ordered {
    /// The grip; a thumb hole whose depth isn't known stands in it as deep as the middle finger's.
    pub grip: GripOrder,
    /// Whether the thumb's depth is known, or there is no thumb hole.
    pub thumb_depth_known: bool,
}

/// The order that the settled numbers make, for a right hand; `None` while one that places the holes is missing.
pub fn ordered(s: &Situation, reference: Reference) -> Option<Ordered> {
    let middle = hole(s, "middle", "insert", None)?;
    let ring = hole(s, "ring", "insert", None)?;
    let with_thumb = !s.is_word("bowler.thumb", "out");
    let thumb = match with_thumb {
        true => Some(hole(s, "thumb", "slug", Some(middle.depth))?),
        false => None,
    };
    let full = |name: &str| {
        Some(Reading {
            value: inches(s, name)?,
            kind: Kind::Full,
            along: Along::Arc,
        })
    };
    let spans = match with_thumb {
        true => Some([full("fit.middle.span")?, full("fit.ring.span")?]),
        false => None,
    };
    let palm_mark = match with_thumb {
        true => None,
        false => Some(inches(s, "hand.palm_mark")?),
    };
    Some(Ordered {
        grip: GripOrder {
            thumb,
            middle,
            ring,
            spans,
            palm_mark,
            bridge: inches(s, "fit.bridge")?,
            reference,
        },
        thumb_depth_known: !with_thumb || s.known("fit.thumb.depth").is_some(),
    })
}

/// One hole; `depth` stands in for one that isn't known.
fn hole(s: &Situation, name: &str, sleeve: &str, depth: Option<f64>) -> Option<HoleOrder> {
    let known = |what: &str| inches(s, &format!("fit.{name}.{what}"));
    let bore = known("bore")?;
    let oval = || {
        let angle = s.known(&format!("fit.{name}.oval_angle"))?;
        let (wide, narrow) = (known("oval_wide")?, known("oval_narrow")?);
        (wide > narrow).then_some(Section::Oval {
            wide,
            narrow,
            // Tenths of a degree.
            angle: angle as f64 / 10.0,
        })
    };
    Some(HoleOrder {
        bore: oval().unwrap_or(Section::Round { size: bore }),
        outside: known(sleeve),
        depth: known("depth").or(depth)?,
        pitches: Pitches {
            forward: known("forward_pitch")?,
            lateral: known("lateral_pitch")?,
        },
        // The slug's own hole leans as the bore in it does.
        outside_pitches: None,
    })
}

/// A known length in inches.
fn inches(s: &Situation, name: &str) -> Option<f64> {
    // Steps of a hand are far below 2^52.
    s.known(name).map(|steps| steps as f64 / INCH as f64)
}
