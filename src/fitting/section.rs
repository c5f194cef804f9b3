//! What a work order says of one hole: its section and its pitches.

use super::{Misfit, Sphere, pitch, within};

/// Wider than any hole or slug.
const WIDEST: f64 = 2.0;
/// Narrower than any drill.
const NARROWEST: f64 = 0.125;
/// The most an axis may lean, in degrees: a pitch of half the radius, twice what any printed fit has.
pub(super) const STEEPEST: f64 = 30.0;

/// What a hole looks like across its axis. Inches, from 1/8 to 2.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Section {
    /// One drill, straight in.
    Round {
        /// The diameter.
        size: f64,
    },
    /// The narrow drill moved along the wide direction: two half circles and a straight middle.
    Oval {
        /// Across the longer way, as wide as narrow or wider.
        wide: f64,
        /// The drill that cut it.
        narrow: f64,
        /// Degrees of the wide direction from the hole's right, counter-clockwise as seen from outside with the fingers
        /// up; 0 to 180.
        angle: f64,
    },
}

impl Section {
    /// The diameter of the drill that cuts it: the narrow size of an oval.
    pub fn drill(&self) -> f64 {
        match self {
            Section::Round { size } => *size,
            Section::Oval { narrow, .. } => *narrow,
        }
    }

    /// Inches that the drill is moved along the wide direction; 0 for a round hole.
    pub fn run(&self) -> f64 {
        match self {
            Section::Round { .. } => 0.0,
            Section::Oval { wide, narrow, .. } => wide - narrow,
        }
    }

    /// The angle of the wide direction in degrees; 0 for a round hole, which has none.
    pub fn angle(&self) -> f64 {
        match self {
            Section::Round { .. } => 0.0,
            Section::Oval { angle, .. } => *angle,
        }
    }

    /// The same section seen in a mirror that swaps left and right.
    pub fn mirrored(self) -> Section {
        match self {
            Section::Oval {
                wide,
                narrow,
                angle,
            } => Section::Oval {
                wide,
                narrow,
                angle: 180.0 - angle,
            },
            round => round,
        }
    }

    /// The section itself, if its numbers are a drill's.
    ///
    /// # Errors
    ///
    /// A size outside 1/8 to 2 in, an oval narrower than its drill, or an angle outside 0 to 180 degrees.
    pub fn checked(self) -> Result<Section, Misfit> {
        let drill = within("hole diameter", self.drill(), NARROWEST, WIDEST)?;
        if let Section::Oval { wide, angle, .. } = self {
            within("wide size of the oval", wide, drill, WIDEST)?;
            within("angle of the oval", angle, 0.0, 180.0)?;
        }
        Ok(self)
    }
}

/// How far a hole's axis misses the ball's centre, in inches: forward and right count above zero, reverse and left
/// below.
///
/// Forward is toward the fingers for a thumb hole and toward the thumb for a finger hole. Right means that the bottom
/// of the hole leans to the right as seen from outside with the fingers up.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Pitches {
    /// Forward above zero, reverse below.
    pub forward: f64,
    /// Right above zero, left below.
    pub lateral: f64,
}

impl Pitches {
    /// Aimed at the ball's centre.
    pub const NONE: Pitches = Pitches {
        forward: 0.0,
        lateral: 0.0,
    };

    /// The whole miss: the two parts stand square to each other.
    pub fn total(&self) -> f64 {
        pitch::combined(self.forward, self.lateral)
    }

    pub(super) fn checked(self, ball: &Sphere) -> Result<Pitches, Misfit> {
        let most = ball.radius() * libm::sin(STEEPEST.to_radians());
        within("forward pitch", self.forward, -most, most)?;
        within("lateral pitch", self.lateral, -most, most)?;
        within("total pitch", self.total(), 0.0, most)?;
        Ok(self)
    }

    /// The same pitches seen in a mirror that swaps left and right.
    pub fn mirrored(self) -> Pitches {
        Pitches {
            lateral: -self.lateral,
            ..self
        }
    }
}
