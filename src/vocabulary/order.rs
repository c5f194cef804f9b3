//! The settled numbers as an order of a grip that can be placed on the ball.

use super::Situation;
use super::answers::INCH;
use super::geometry::is_due;
use crate::fitting::grip::{Along, GripOrder, HoleOrder, Kind, Reading, Reference};
use crate::fitting::hole::{Pitches, Section};

/// Where the palm mark stands while nobody has measured it: only for walls, which don't depend on it.
const SOMEWHERE: f64 = 2.0;
/// Half a turn, in tenths of a degree.
const HALF_TURN: i64 = 1800;

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

/// The order that the settled numbers make, for a right hand; `None` while one that places the holes is missing.
pub fn ordered(s: &Situation, reference: Reference) -> Option<Ordered> {
    let fingers = fingers(s, reference)?;
    if s.is_word("bowler.thumb", "out") {
        let mark = inches(s, "hand.palm_mark");
        return Some(Ordered {
            grip: GripOrder {
                palm_mark: mark.or(fingers.palm_mark),
                ..fingers
            },
            thumb_depth_known: true,
            centre_known: mark.is_some(),
        });
    }
    let thumb = hole(s, "thumb", "slug", Some(fingers.middle.depth))?;
    Some(Ordered {
        grip: GripOrder {
            thumb: Some(thumb),
            spans: Some([span(s, "middle")?, span(s, "ring")?]),
            palm_mark: None,
            ..fingers
        },
        thumb_depth_known: s.get("fit.thumb.depth").is_known(),
        centre_known: true,
    })
}

/// The two finger holes alone, with the palm mark anywhere: enough for the web between them.
pub(super) fn fingers(s: &Situation, reference: Reference) -> Option<GripOrder> {
    Some(GripOrder {
        thumb: None,
        middle: hole(s, "middle", "insert", None)?,
        ring: hole(s, "ring", "insert", None)?,
        spans: None,
        palm_mark: Some(SOMEWHERE),
        bridge: inches(s, "fit.bridge")?,
        reference,
    })
}

/// A full span along the arc.
fn span(s: &Situation, finger: &str) -> Option<Reading> {
    Some(Reading {
        value: inches(s, &format!("fit.{finger}.span"))?,
        kind: Kind::Full,
        along: Along::Arc,
    })
}

/// One hole; `depth` stands in for one that isn't known.
fn hole(s: &Situation, digit: &str, sleeve: &str, depth: Option<f64>) -> Option<HoleOrder> {
    let known = |what: &str| inches(s, &format!("fit.{digit}.{what}"));
    let bore = known("bore")?;
    let outside = known(sleeve);
    // What is cut is the outside of slug and insert: without a size there is no hole yet, rather than one of the bore's.
    if outside.is_none() && is_due(s, digit) {
        return None;
    }
    Some(HoleOrder {
        bore: oval(s, digit).unwrap_or(Section::Round { size: bore }),
        outside,
        depth: known("depth").or(depth)?,
        pitches: Pitches {
            forward: known("forward_pitch")?,
            lateral: known("lateral_pitch")?,
        },
        // The slug's own hole leans as the bore in it does.
        outside_pitches: None,
    })
}

/// The thumb hole's oval, if it is one.
fn oval(s: &Situation, digit: &str) -> Option<Section> {
    if digit != "thumb" {
        return None;
    }
    let wide = inches(s, "fit.thumb.oval_wide")?;
    let narrow = inches(s, "fit.thumb.oval_narrow")?;
    // Angles are noted as they are on the ball; here everything is a right hand's.
    let angle = match s.known("fit.thumb.oval_angle")? {
        angle if s.is_word("bowler.hand", "left") => HALF_TURN - angle,
        angle => angle,
    };
    (wide > narrow).then_some(Section::Oval {
        wide,
        narrow,
        // Tenths of a degree.
        angle: angle as f64 / 10.0,
    })
}

/// A known length in inches.
fn inches(s: &Situation, name: &str) -> Option<f64> {
    // Steps of a hand are far below 2^52.
    s.known(name).map(|steps| steps as f64 / INCH as f64)
}
