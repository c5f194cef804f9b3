//! The track and the holes: whether the first ring of oil runs over a hole, and how far the axis may wander until a ring does.

use std::f64::consts::{FRAC_PI_2, PI, TAU};

use super::great_circle::apart;
use super::{Point, Wander, phrase};
use crate::fitting::{Misfit, Sphere, track, within};

/// A hole as a mark on the surface.
#[derive(Clone, Debug, PartialEq)]
pub struct HoleMark {
    name: String,
    mouth: Point,
    radius: f64,
}

impl HoleMark {
    /// A hole by its name in a sentence (`thumb hole`), the middle of its mouth, and half its width (0 to 2 in), bevel
    /// included where the bevel matters.
    ///
    /// # Errors
    ///
    /// A radius outside that range.
    pub fn new(name: &str, mouth: Point, radius: f64) -> Result<HoleMark, Misfit> {
        Ok(HoleMark {
            name: name.to_owned(),
            mouth,
            radius: within("radius of the hole", radius, 0.0, 2.0)?,
        })
    }

    /// What it is called.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The middle of its mouth.
    pub fn mouth(&self) -> Point {
        self.mouth
    }

    /// Inches along the ball from the middle of the mouth to the edge.
    pub fn edge(&self, ball: &Sphere) -> f64 {
        ball.radius() * libm::asin((self.radius / ball.radius()).clamp(0.0, 1.0))
    }

    /// Inches along the ball from a point to the near edge; below zero inside the hole.
    pub fn to_edge(&self, ball: &Sphere, point: Point) -> f64 {
        self.mouth.to(ball, point) - self.edge(ball)
    }
}

/// How one hole lies to the rings of oil.
#[derive(Clone, Debug, PartialEq)]
pub struct Clearance {
    hole: String,
    gap: f64,
    round_the_pin: Option<f64>,
    knows_the_pin: bool,
}

impl Clearance {
    /// The hole's name.
    pub fn hole(&self) -> &str {
        &self.hole
    }

    /// Inches along the ball from the first ring to the near edge of the hole; below zero the ring runs over the hole.
    pub fn gap(&self) -> f64 {
        self.gap
    }

    /// How far the axis may wander, whichever way, before a ring can reach the hole: inches, 0 if the first already does.
    pub fn room(&self) -> f64 {
        self.gap.max(0.0)
    }

    /// How far from the first axis point the axis is when a ring reaches the hole, if it goes round the pin on a circle as
    /// that of a symmetric core does. Both ways round are looked at and the shorter is given; none if no ring reaches the
    /// hole within half a turn either way, or the pin wasn't stated.
    pub fn round_the_pin(&self) -> Option<f64> {
        self.round_the_pin
    }
}

/// How each hole lies to the rings of oil of a bowler with this PAP and axis tilt (0 to 90 degrees).
///
/// The first ring is a circle about the PAP, a quarter of the way around and the tilt away from it. As the axis wanders, later
/// rings lie about its later places; the tilt against the lane is taken to stay.
///
/// # Errors
///
/// A tilt outside that range.
pub fn clearances(
    ball: &Sphere,
    pap: Point,
    pin: Option<Point>,
    tilt: f64,
    holes: &[HoleMark],
) -> Result<Vec<Clearance>, Misfit> {
    let ring = ball.radians(track::axis_point_to_track(ball, tilt)?);
    let of_hole = |hole: &HoleMark| {
        let edge = ball.radians(hole.edge(ball));
        let away = apart(pap.unit(ball), hole.mouth.unit(ball));
        let gap = ball.radius() * ((away - ring).abs() - edge);
        let round_the_pin = match pin {
            Some(_) if gap <= 0.0 => Some(0.0),
            Some(pin) => until_reached(ball, pap, pin, hole, (ring - edge, ring + edge)),
            None => None,
        };
        Clearance {
            hole: hole.name.clone(),
            gap,
            round_the_pin,
            knows_the_pin: pin.is_some(),
        }
    };
    Ok(holes.iter().map(of_hole).collect())
}

/// The distance from the first axis point at which the axis, going round the pin, first has the hole's middle at one of two
/// angles from it.
fn until_reached(
    ball: &Sphere,
    pap: Point,
    pin: Point,
    hole: &HoleMark,
    angles: (f64, f64),
) -> Option<f64> {
    let (axis, pin, mouth) = (pap.unit(ball), pin.unit(ball), hole.mouth.unit(ball));
    // With the axis turned by t about the pin: axis . mouth = still + a cos t + b sin t.
    let still = axis.dot(pin) * pin.dot(mouth);
    let a = axis.dot(mouth) - still;
    let b = pin.cross(axis).dot(mouth);
    let (swing, phase) = (libm::hypot(a, b), libm::atan2(b, a));
    let mut first = f64::INFINITY;
    for angle in [angles.0, angles.1] {
        // Past either end of the axis no ring is left.
        if !(0.0..=PI).contains(&angle) || swing == 0.0 {
            continue;
        }
        let wanted = (libm::cos(angle) - still) / swing;
        if wanted.abs() > 1.0 {
            continue;
        }
        let open = libm::acos(wanted);
        for turned in [phase + open, phase - open] {
            let once = turned - TAU * libm::floor(turned / TAU);
            first = first.min(once.min(TAU - once));
        }
    }
    first.is_finite().then(|| {
        let half = axis.cross(pin).length() * libm::sin(first.min(PI) / 2.0);
        2.0 * ball.radius() * libm::asin(half.clamp(0.0, 1.0)).min(FRAC_PI_2)
    })
}

/// What to say about each hole and the flare, given about how far the axis wanders, if that can be worked out.
///
/// The figures are rough and the words say so: layouts and flare are a small part of what a ball does.
pub fn track_words(clearances: &[Clearance], likely: Option<Wander>) -> Vec<String> {
    clearances
        .iter()
        .map(|clearance| sentence(clearance, likely))
        .collect()
}

fn sentence(clearance: &Clearance, likely: Option<Wander>) -> String {
    let hole = &clearance.hole;
    if clearance.gap <= 0.0 {
        return format!(
            "Look at the track on the old ball first. By PAP and tilt, the first ring of oil runs over the {hole}. \
             No layout changes that."
        );
    }
    let room = phrase::length(clearance.gap);
    let Some(likely) = likely else {
        return format!(
            "The first ring of oil passes {room} from the {hole}. How far this ball flares is not known, so watch the rings."
        );
    };
    let band = band(likely);
    let met_on_the_way = match clearance.round_the_pin {
        Some(reached) => reached <= likely.most,
        None => !clearance.knows_the_pin,
    };
    if clearance.gap > likely.most {
        format!(
            "The flare should stay clear of the {hole}. The first ring passes {room} from it, and the axis may wander \
             about {band}."
        )
    } else if met_on_the_way {
        format!(
            "The flare may run over the {hole}. The first ring passes {room} from it, and the axis may wander about \
             {band}. This is a rough figure: watch the rings."
        )
    } else {
        format!(
            "The flare will probably pass beside the {hole}. The first ring passes {room} from it. The axis may wander about \
             {band}, mostly another way. Watch the rings."
        )
    }
}

/// Both ends of the estimate, or one where they read alike.
fn band(likely: Wander) -> String {
    let (least, most) = (phrase::length(likely.least), phrase::length(likely.most));
    if least == most {
        most
    } else {
        format!("{least} to {most}")
    }
}
