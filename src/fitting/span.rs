//! Spans: the ways of stating the distance from thumb to finger, and the way from one to another.
//!
//! A *full* span goes from the near edge of the thumb hole to the near edge of the finger hole, with insert and slug in
//! place: it is what the hand feels. A *cut* span joins the same edges as drilled, before insert and slug go in. A
//! *centre* span joins the middles of the holes. All are inches along the ball.

use super::{Misfit, Sphere, within};

/// Half the circumference of the largest ball: no span is longer.
const LONGEST: f64 = 15.0;
/// Wider than any hole or slug.
const WIDEST: f64 = 3.0;

/// The wall of an insert or slug whose bore is in the middle: half the difference of its diameters.
///
/// # Errors
///
/// A diameter that is not between 0 and 3 in, or a bore wider than the outside.
pub fn wall(outside: f64, bore: f64) -> Result<f64, Misfit> {
    let outside = within("outside diameter", outside, 0.0, WIDEST)?;
    Ok((outside - within("bore", bore, 0.0, outside)?) / 2.0)
}

/// The cut span of a full span, given the walls of slug and insert (0 where there is none).
///
/// # Errors
///
/// A span outside 0 to 15 in, a wall outside 0 to 3 in, or walls longer than the span.
pub fn full_to_cut(full: f64, thumb_wall: f64, finger_wall: f64) -> Result<f64, Misfit> {
    let walls = walls(thumb_wall, finger_wall)?;
    Ok(within("full span", full, walls, LONGEST)? - walls)
}

/// The full span of a cut span, given the walls of slug and insert (0 where there is none).
///
/// # Errors
///
/// A span outside 0 to 15 in or a wall outside 0 to 3 in.
pub fn cut_to_full(cut: f64, thumb_wall: f64, finger_wall: f64) -> Result<f64, Misfit> {
    Ok(within("cut span", cut, 0.0, LONGEST)? + walls(thumb_wall, finger_wall)?)
}

/// The centre span of a full span between two holes that aim at the ball's centre.
///
/// Half a bore reaches `R asin(bore / 2R)` along the ball. A pitch of 3/8 along the span moves an edge by 0.004 in.
///
/// # Errors
///
/// A span outside 0 to 15 in or a bore outside 0 to 3 in.
pub fn full_to_centre(
    ball: &Sphere,
    full: f64,
    thumb_bore: f64,
    finger_bore: f64,
) -> Result<f64, Misfit> {
    let halves = half_bore(ball, thumb_bore)? + half_bore(ball, finger_bore)?;
    Ok(within("full span", full, 0.0, LONGEST)? + halves)
}

/// The full span of a centre span between two holes that aim at the ball's centre.
///
/// # Errors
///
/// A bore outside 0 to 3 in, or a span shorter than the two half bores or over 15 in.
pub fn centre_to_full(
    ball: &Sphere,
    centre: f64,
    thumb_bore: f64,
    finger_bore: f64,
) -> Result<f64, Misfit> {
    let halves = half_bore(ball, thumb_bore)? + half_bore(ball, finger_bore)?;
    Ok(within("centre span", centre, halves, LONGEST + WIDEST)? - halves)
}

/// How far an oval hole reaches from its middle toward the other hole, half the size of a round hole that would reach as
/// far: the narrow drill moved along the wide way, whose angle in degrees is counted from straight across.
///
/// A span runs to the oval's edge. That edge is read here along the centreline; a finger's own line leaves it by under 10
/// degrees, which moves the edge of an oval whose sizes differ by 1/8 in by at most 0.011 in. [`super::grip`] is exact.
///
/// # Errors
///
/// A size that is not between 0 and 3 in, a narrow size over the wide one, or an angle that is not between 0 and 180.
pub fn oval_reach(wide: f64, narrow: f64, angle: f64) -> Result<f64, Misfit> {
    let wide = within("wide size", wide, 0.0, WIDEST)?;
    let narrow = within("narrow size", narrow, 0.0, wide)?;
    let turned = within("angle of the oval", angle, 0.0, 180.0)?.to_radians();
    Ok(narrow / 2.0 + (wide - narrow) / 2.0 * libm::sin(turned).abs())
}

fn walls(thumb_wall: f64, finger_wall: f64) -> Result<f64, Misfit> {
    Ok(within("thumb wall", thumb_wall, 0.0, WIDEST)?
        + within("finger wall", finger_wall, 0.0, WIDEST)?)
}

fn half_bore(ball: &Sphere, bore: f64) -> Result<f64, Misfit> {
    Ok(ball.chord_to_arc(within("bore", bore, 0.0, WIDEST)?)? / 2.0)
}
