//! A drilled hole in three dimensions: where it starts on the ball, where it points, its section and its depth.
//!
//! The frame is right-handed: the ball's centre is the origin, z runs out through the grip centre, y toward the
//! fingers, x toward the bowler's right. Looking at the grip from outside with the fingers up, x is right and y is up.

use glam::{DMat3, DVec3};

use super::{Misfit, Sphere, layout::Point, section::STEEPEST, within};

pub use super::section::{Pitches, Section};

/// The greatest depth as a share of the ball's radius: the bottom stays inside the ball however the hole leans.
const DEEPEST: f64 = 1.1;
/// Two directions closer than this are the same.
const SAME: f64 = 1e-9;

/// One drilled hole. Its depth (0 to 1.1 times the ball's radius) runs along the axis from where the axis leaves the
/// sphere to the flat bottom.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hole {
    /// On the surface, inches from the ball's centre.
    mouth: DVec3,
    /// Of length one, into the ball.
    axis: DVec3,
    /// Of length one, square to the axis.
    wide: DVec3,
    section: Section,
    depth: f64,
}

impl Hole {
    /// A hole at this place on the ball with these pitches.
    ///
    /// `mouth` says where the axis leaves the sphere; only its direction counts. `forward` says which way forward is;
    /// only its part along the surface counts. Forward with a part up (+y) is a thumb hole's, otherwise a finger
    /// hole's: that settles which side is right. With sin t = total pitch / R the axis leans t off the line to the
    /// centre, so that it misses the centre by exactly the total pitch.
    ///
    /// # Errors
    ///
    /// A section, pitch or depth that no hole has; no direction for the mouth; a forward direction straight in or out.
    pub fn new(
        ball: &Sphere,
        mouth: [f64; 3],
        forward: [f64; 3],
        pitches: Pitches,
        section: Section,
        depth: f64,
    ) -> Result<Hole, Misfit> {
        let out = direction("mouth of the hole", mouth)?;
        let forward = direction("forward direction", forward)?;
        let forward = tangent("forward direction", forward, out)?;
        let up = if forward.y > 0.0 { forward } else { -forward };
        Hole::pitched(ball, out, Facing { forward, up }, pitches, section, depth)
    }

    /// [`Hole::new`] for who knows forward and up, both of length one and along the surface.
    pub(super) fn pitched(
        ball: &Sphere,
        out: DVec3,
        facing: Facing,
        pitches: Pitches,
        section: Section,
        depth: f64,
    ) -> Result<Hole, Misfit> {
        let Pitches { forward, lateral } = pitches.checked(ball)?;
        let section = section.checked()?;
        let right = facing.up.cross(out);
        let aside = (facing.forward * forward + right * lateral) / ball.radius();
        let axis = aside - out * libm::sqrt((1.0 - aside.length_squared()).max(0.0));
        let angle = section.angle().to_radians();
        let wide = right * libm::cos(angle) + facing.up * libm::sin(angle);
        Hole::built(ball, out, axis, wide, section, depth)
    }

    /// A hole at this place along this axis. Lengths of the three directions don't count, and of `wide` (the oval's
    /// wide direction; a round hole takes any) only the part square to the axis does.
    ///
    /// # Errors
    ///
    /// A section or depth that no hole has; a direction of no length; an axis out of the ball or leaning over 30
    /// degrees; a wide direction along the axis.
    pub fn along(
        ball: &Sphere,
        mouth: [f64; 3],
        axis: [f64; 3],
        wide: [f64; 3],
        section: Section,
        depth: f64,
    ) -> Result<Hole, Misfit> {
        let out = direction("mouth of the hole", mouth)?;
        let axis = direction("axis of the hole", axis)?;
        let wide = direction("wide direction", wide)?;
        // Away from half a turn the arc cosine is a smooth number, so the limit is a plain one.
        let lean = libm::acos((-axis.dot(out)).clamp(-1.0, 1.0)).to_degrees();
        within("lean of the axis", lean, 0.0, STEEPEST + SAME)?;
        Hole::built(ball, out, axis, wide, section.checked()?, depth)
    }

    fn built(
        ball: &Sphere,
        out: DVec3,
        axis: DVec3,
        wide: DVec3,
        section: Section,
        depth: f64,
    ) -> Result<Hole, Misfit> {
        Ok(Hole {
            mouth: out * ball.radius(),
            axis,
            // As the table carries the drill: square to the spindle, along the mark on the ball.
            wide: tangent("wide direction", wide, axis)?,
            section,
            depth: checked_depth(ball, depth)?,
        })
    }

    /// Where the axis leaves the sphere, in inches.
    pub fn mouth(&self) -> [f64; 3] {
        self.mouth.to_array()
    }

    /// The direction of the axis, into the ball; its length is one.
    pub fn axis(&self) -> [f64; 3] {
        self.axis.to_array()
    }

    /// The wide direction, square to the axis; its length is one. A round hole has one too, without meaning.
    pub fn wide(&self) -> [f64; 3] {
        self.wide.to_array()
    }

    /// What it looks like across the axis.
    pub fn section(&self) -> Section {
        self.section
    }

    /// Inches along the axis from the sphere to the flat bottom.
    pub fn depth(&self) -> f64 {
        self.depth
    }

    /// Where the axis leaves the sphere, over and up from the grip centre.
    ///
    /// # Errors
    ///
    /// A hole made for a ball of another size may lie outside what a point can say.
    pub fn place(&self, ball: &Sphere) -> Result<Point, Misfit> {
        point(ball, self.mouth)
    }

    pub(super) fn mouth_vec(&self) -> DVec3 {
        self.mouth
    }

    pub(super) fn axis_vec(&self) -> DVec3 {
        self.axis
    }

    pub(super) fn wide_vec(&self) -> DVec3 {
        self.wide
    }

    /// The direction of the mouth, of length one.
    pub(super) fn out(&self) -> DVec3 {
        self.mouth.normalize_or_zero()
    }

    /// The same hole seen in a mirror that swaps left and right.
    pub fn mirrored(self) -> Hole {
        let swap = |v: DVec3| DVec3::new(-v.x, v.y, v.z);
        Hole {
            mouth: swap(self.mouth),
            axis: swap(self.axis),
            wide: swap(self.wide),
            section: self.section.mirrored(),
            depth: self.depth,
        }
    }

    /// The same hole after a turn of the ball.
    pub(super) fn turned(self, turn: &DMat3) -> Hole {
        Hole {
            mouth: *turn * self.mouth,
            axis: *turn * self.axis,
            wide: *turn * self.wide,
            ..self
        }
    }
}

/// The greatest depth of any hole.
pub(super) fn deepest(ball: &Sphere) -> f64 {
    DEEPEST * ball.radius()
}

pub(super) fn checked_depth(ball: &Sphere, depth: f64) -> Result<f64, Misfit> {
    within("depth", depth, 0.0, deepest(ball))
}

/// Two directions at a hole's mouth, of length one and along the surface: forward, and toward the fingers.
#[derive(Clone, Copy)]
pub(super) struct Facing {
    pub forward: DVec3,
    pub up: DVec3,
}

/// The point on the ball in this direction, over and up from the grip centre.
pub(super) fn point(ball: &Sphere, toward: DVec3) -> Result<Point, Misfit> {
    let out = direction("point on the ball", toward.to_array())?;
    let over = libm::atan2(out.x, out.z);
    let up = libm::asin(out.y.clamp(-1.0, 1.0));
    // Rounding must not carry half a turn past half way around.
    let half = ball.circumference() / 2.0;
    let over = (ball.radius() * over).clamp(-half, half);
    let up = (ball.radius() * up).clamp(-half / 2.0, half / 2.0);
    Point::new(ball, over, up)
}

/// This vector with length one.
pub(super) fn direction(what: &'static str, vector: [f64; 3]) -> Result<DVec3, Misfit> {
    let vector = DVec3::from_array(vector);
    if !vector.is_finite() {
        return Err(Misfit::NotANumber { what });
    }
    // Scaled first, so that huge and tiny ones neither overflow nor vanish.
    let largest = vector.abs().max_element();
    if largest < f64::MIN_POSITIVE {
        return Err(Misfit::NotANumber { what });
    }
    Ok((vector / largest).normalize())
}

/// The part of a direction square to another, with length one.
pub(super) fn tangent(
    what: &'static str,
    vector: DVec3,
    square_to: DVec3,
) -> Result<DVec3, Misfit> {
    let part = vector - square_to * vector.dot(square_to);
    if part.length() < SAME {
        return Err(Misfit::NotANumber { what });
    }
    let part = part.normalize();
    // A second pass takes out what rounding left of the first.
    Ok((part - square_to * part.dot(square_to)).normalize())
}
