//! The web: what is left of the ball between two finger holes, at any depth.

use super::{Misfit, Sphere, pitch, within};

/// Two finger holes of the same size and what stands between them.
///
/// Each lateral pitch is counted from "aims at the ball's centre" and is positive when the bottom of the hole leans away
/// from the other hole. The web is exact when neither finger has forward or reverse pitch. With such pitch along the
/// centreline the true web is thicker, so this errs to the safe side. Forward pitch measured along each finger's own line to
/// the thumb makes the holes close in on each other, by 0.03 in where two conventional holes are 2 in deep with 3/8 forward:
/// [`FingerHoles::toward_the_thumb`] takes it off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FingerHoles {
    bridge: f64,
    /// Half the angle between the two hole centres, seen from the ball's centre.
    half: f64,
    /// Inches of web lost for an inch of depth; below zero when the holes lean apart.
    closing: f64,
}

impl FingerHoles {
    /// Two holes with this bridge (0 to 2 in), diameter as drilled (1/4 to 2 in), and lateral pitches outward
    /// (-2 to 2 in).
    ///
    /// # Errors
    ///
    /// A number outside those ranges.
    pub fn new(
        ball: &Sphere,
        bridge: f64,
        diameter: f64,
        outward: [f64; 2],
    ) -> Result<FingerHoles, Misfit> {
        let bridge = within("bridge", bridge, 0.0, 2.0)?;
        let between = bridge + within("hole diameter", diameter, 0.25, 2.0)?;
        let half = libm::asin(between / (2.0 * ball.radius()));
        let mut closing = 0.0;
        for lateral in outward {
            let lean = pitch::lean(ball, within("lateral pitch", lateral, -2.0, 2.0)?)?;
            closing += libm::sin(half - lean);
        }
        Ok(FingerHoles {
            bridge,
            half,
            closing,
        })
    }

    /// The same holes with forward pitch (0 to 2 in; reverse counts as 0, which is the safe side) measured along each
    /// finger's own line to the thumb, whose centre is this far away along the arc (1 to 8 in).
    ///
    /// The two lines meet the line between the fingers at less than a right angle, by w with sin w = tan(half the angle
    /// between the fingers) / tan(the span's angle), from the right-angled half of the spherical triangle. A lean of t along
    /// such a line brings the bottom of the hole inward by sin t sin w for each inch of depth.
    ///
    /// # Errors
    ///
    /// A number outside those ranges.
    pub fn toward_the_thumb(
        mut self,
        ball: &Sphere,
        forward: [f64; 2],
        centre_span: f64,
    ) -> Result<FingerHoles, Misfit> {
        let span = within("centre span", centre_span, 1.0, 8.0)? / ball.radius();
        let inward = (libm::tan(self.half) / libm::tan(span)).max(0.0);
        for forward in forward {
            let lean = pitch::lean(ball, within("forward pitch", forward, -2.0, 2.0)?.max(0.0))?;
            self.closing += libm::sin(lean) * inward;
        }
        Ok(self)
    }

    /// Inches between the walls at this depth; below zero the holes have run into each other.
    ///
    /// # Errors
    ///
    /// A depth outside 0 to 4 in.
    pub fn web_at(&self, depth: f64) -> Result<f64, Misfit> {
        Ok(self.bridge - within("depth", depth, 0.0, 4.0)? * self.closing)
    }

    /// The thinnest web anywhere from the surface down to this depth.
    ///
    /// # Errors
    ///
    /// A depth outside 0 to 4 in.
    pub fn least_web(&self, depth: f64) -> Result<f64, Misfit> {
        // It changes evenly with depth, so it is thinnest at one end.
        Ok(self.web_at(depth)?.min(self.bridge))
    }

    /// The depth at which the holes meet; `None` if they run side by side or apart.
    pub fn breaks_at(&self) -> Option<f64> {
        (self.closing > 0.0).then(|| self.bridge / self.closing)
    }
}
