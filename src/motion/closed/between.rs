//! The same over a box of releases: the least and the most that each result can be.
//!
//! With a = R Omega cos(tilt), the slip is u = (v - a cos(rotation), -a sin(rotation)); U is its length, and e = (E, -W) its direction.
//! The least and most of U, E and W over the box are exact. Let p be how much of the slip's U k (k = beta/(1 + beta)) friction has
//! taken at a place x, as long as it slips: dp/dx = mu g/(v - E p), dy/dx = W p/(v - E p). Taken as if v, U, E and W could be chosen one
//! by one, p rises with E and falls with v, and ends at k U; longer oil makes it less. So each result is least and most at a corner
//! of (v, U, E, W, length of the oil). That is never too narrow; it is too wide by what U, E and W can't do at once, which is little
//! for a small box and nothing for a point.

use super::super::{Angle, Friction, Lane, Length, Release};
use super::course::{Surface, taken};
use super::{Course, MOST_OUT, length};

/// Times that the bounds of a launch are narrowed at most.
const ROUNDS: usize = 24;

/// The least and the most of something.
pub type Least<T> = (T, T);

/// Releases sent straight, from one speed, spin, rotation and tilt to another each.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Between {
    speed: Least<f64>,
    /// Spin square to the vertical, rad/s.
    flat: Least<f64>,
    /// Of the least and the most rotation.
    sine: Least<f64>,
    cosine: Least<f64>,
}

/// A ball on lanes from one length of oil to another; friction in the oil isn't above that on the dry.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rolling {
    share: f64,
    radius: f64,
    beta: f64,
    /// Where the oil ends soonest, and latest.
    surface: Least<Surface>,
}

/// What the slip at the release may be.
struct Slip {
    size: Least<f64>,
    along: Least<f64>,
    aside: Least<f64>,
    /// Forward over sideways slip.
    cotangent: Least<f64>,
    /// Surface speeds of the spin: forward and to the side, m/s.
    forward: Least<f64>,
    side: Least<f64>,
}

impl Between {
    /// All releases between these two, in speed, spin, rotation and tilt; where and in which direction they are sent doesn't count.
    pub fn of(one: &Release, other: &Release) -> Between {
        let sorted = |a: f64, b: f64| (a.min(b), a.max(b));
        let (rotation, tilt) = (
            sorted(one.rotation, other.rotation),
            sorted(one.tilt, other.tilt),
        );
        let spin = sorted(one.spin, other.spin);
        Between {
            speed: sorted(one.speed, other.speed),
            flat: (
                spin.0 * libm::cos(tilt.1).max(0.0),
                spin.1 * libm::cos(tilt.0).max(0.0),
            ),
            sine: (libm::sin(rotation.0), libm::sin(rotation.1)),
            cosine: (
                libm::cos(rotation.0).max(0.0),
                libm::cos(rotation.1).max(0.0),
            ),
        }
    }

    /// The angle between the release and the direction when slip has ended: it falls with speed and tilt, rises with spin and rotation.
    pub fn most_turn(&self, ball: &Rolling) -> Least<Angle> {
        let turn = |speed: f64, flat: f64, sine: f64, cosine: f64| {
            let spin = ball.beta * ball.radius * flat;
            Angle::radians(libm::atan2(spin * sine, speed + spin * cosine))
        };
        (
            turn(self.speed.1, self.flat.0, self.sine.0, self.cosine.0),
            turn(self.speed.0, self.flat.1, self.sine.1, self.cosine.1),
        )
    }

    /// How much of the slip is gone at the pins, 0 to 1: it rises with E, falls with v, U and the length of the oil.
    pub fn turn_done(&self, ball: &Rolling) -> Least<f64> {
        let slip = self.slip(ball.radius);
        let done = |speed: f64, along: f64, size: f64, surface: &Surface| {
            let all = ball.share * size;
            let oil = taken(speed, along, surface.oil, surface.ends, all);
            let dry = surface.length - surface.ends;
            let more = taken(speed - along * oil, along, surface.dry, dry, all - oil);
            match all > 0.0 {
                true => ((oil + more) / all).min(1.0),
                false => 1.0,
            }
        };
        (
            done(self.speed.1, slip.along.0, slip.size.1, &ball.surface.1),
            done(self.speed.0, slip.along.1, slip.size.0, &ball.surface.0),
        )
    }

    /// How far down the lane slip ends: it rises with U, v and the length of the oil, falls with E.
    pub fn slip_ends(&self, ball: &Rolling) -> Least<Length> {
        let slip = self.slip(ball.radius);
        let ends = |speed, along, size, surface| {
            ball.course(speed, (along, 0.0), size, surface)
                .map(|course| course.slip_ends().down())
        };
        let least = ends(self.speed.0, slip.along.1, slip.size.0, &ball.surface.0);
        let most = ends(self.speed.1, slip.along.0, slip.size.1, &ball.surface.1);
        (
            least.unwrap_or(Length::metres(0.0)),
            most.unwrap_or(Length::metres(f64::INFINITY)),
        )
    }

    /// How far it has moved to the left at the pins: it rises with U, E and W, falls with v and the length of the oil.
    pub fn sideways(&self, ball: &Rolling) -> Least<Length> {
        let slip = self.slip(ball.radius);
        let aside = |speed, slip, size, surface: &Surface| {
            ball.course(speed, slip, size, surface)
                .map(|course| course.at(Length::metres(surface.length)).across())
        };
        let [low, high] = [(slip.along.0, slip.aside.0), (slip.along.1, slip.aside.1)];
        let least = aside(self.speed.1, low, slip.size.0, &ball.surface.1);
        let most = aside(self.speed.0, high, slip.size.1, &ball.surface.0);
        (
            least.unwrap_or(Length::metres(0.0)),
            most.unwrap_or(Length::metres(f64::INFINITY)),
        )
    }

    /// The direction at the pins on the line whose farthest-out place is where the oil ends.
    ///
    /// Sent out by o (sideways, m/s) where o = W p(oil's end), the slip's sideways part grows by o and its forward part shrinks a
    /// little. Bounds of o give bounds of U, E, W and p, and those narrower bounds of o. From there on the dry takes r, as long as it slips,
    /// and the slope is W r/(v - E p): it rises with W, E and r, and r rises with E and falls with v. When slip has ended the slope is
    /// (beta a sin - o)/(v + beta a cos), with the corners of the most turn. The smaller of the two is the ball's.
    pub fn entry(&self, ball: &Rolling) -> Least<Angle> {
        let slip = self.slip(ball.radius);
        let (short, long) = (&ball.surface.0, &ball.surface.1);
        let clamped = (self.speed.0 * MOST_OUT, self.speed.1 * MOST_OUT);
        let mut out = (0.0, clamped.1);
        let mut sent = slip.sent(self.speed, out);
        let mut oil = (0.0, 0.0);
        for _ in 0..ROUNDS {
            let (along, all) = (sent.along, ball.share * sent.size.0);
            oil.0 = taken(sent.speed.1, along.0, short.oil, short.ends, all);
            let all = ball.share * sent.size.1;
            oil.1 = taken(sent.speed.0, along.1, long.oil, long.ends, all);
            // W p is W q as long as it slips, and k (s + o) when slip has ended: the smaller of the two.
            let slips = taken(sent.speed.1, along.0, short.oil, short.ends, f64::INFINITY);
            let wanted = (
                match sent.aside.0 > 0.0 {
                    true => (sent.aside.0 * slips).min(ball.share * (slip.side.0 + out.0)),
                    false => 0.0,
                },
                (sent.aside.1 * oil.1).min(ball.share * (slip.side.1 + out.1)),
            );
            let last = out;
            out.0 = wanted.0.min(clamped.0).max(out.0);
            out.1 = wanted.1.min(clamped.1).min(out.1).max(out.0);
            sent = slip.sent(self.speed, out);
            if out.0 - last.0 + last.1 - out.1 < 1e-10 {
                break;
            }
        }
        // What a launch that would have to be wider leaves over where the oil ends.
        let over = (sent.aside.1 * oil.1 - clamped.0).max(0.0);
        let spent = |along: f64, most: bool| match (along > 0.0) == most {
            true => along * oil.1,
            false => along * oil.0,
        };
        let slipping = |speed: f64, along: f64, aside: f64, over: f64, surface: &Surface| {
            let dry = surface.length - surface.ends;
            let more = taken(speed, along, surface.dry, dry, f64::INFINITY);
            let ahead = speed - along * more;
            match ahead > 0.0 {
                true => (over + aside * more) / ahead,
                false => f64::INFINITY,
            }
        };
        let ((low, high), speed) = (sent.along, sent.speed);
        let slowest = speed.0 - spent(high, true);
        let fastest = speed.1 - spent(low, false);
        let least = slipping(fastest, low, sent.aside.0, 0.0, long);
        let most = slipping(slowest, high, sent.aside.1, over, short);
        let finished = |speed: f64, flat: f64, out: f64, sine: f64, cosine: f64| {
            let spin = ball.beta * ball.radius * flat;
            ((spin * sine - out) / (speed + spin * cosine)).max(0.0)
        };
        let last = (
            finished(speed.1, self.flat.0, out.1, self.sine.0, self.cosine.0),
            finished(speed.0, self.flat.1, out.0, self.sine.1, self.cosine.1),
        );
        let angle = |slope: f64| Angle::radians(libm::atan(slope));
        (angle(least.min(last.0)), angle(most.min(last.1)))
    }

    /// What the slip may be.
    fn slip(&self, radius: f64) -> Slip {
        let (v, a) = (self.speed, (radius * self.flat.0, radius * self.flat.1));
        let squared = |v: f64, a: f64, cosine: f64| v * v - 2.0 * v * a * cosine + a * a;
        // As a function of v and a it is convex, and it rises with rotation: most at a corner of the largest rotation,
        let most = [(v.0, a.0), (v.0, a.1), (v.1, a.0), (v.1, a.1)]
            .map(|(v, a)| squared(v, a, self.cosine.1))
            .into_iter()
            .fold(0.0, f64::max);
        // least on an edge of the smallest.
        let c = self.cosine.0;
        let edge = |v: f64, a: f64| squared(v, a, c).max(0.0);
        let least = [
            edge(v.0, (v.0 * c).clamp(a.0, a.1)),
            edge(v.1, (v.1 * c).clamp(a.0, a.1)),
            edge((a.0 * c).clamp(v.0, v.1), a.0),
            edge((a.1 * c).clamp(v.0, v.1), a.1),
        ]
        .into_iter()
        .fold(f64::INFINITY, f64::min);
        let cotangent = self.cotangent(v, a);
        Slip {
            size: (libm::sqrt(least), libm::sqrt(most)),
            along: (cosine(cotangent.0), cosine(cotangent.1)),
            aside: aside(cotangent),
            cotangent,
            forward: (a.0 * self.cosine.1, a.1 * self.cosine.0),
            side: (a.0 * self.sine.0, a.1 * self.sine.1),
        }
    }

    /// Forward over sideways slip, (v - a cos)/(a sin): rises with v, falls with a; along the rotation it falls to where cos = a/v and
    /// rises again. Anything where there may be no slip at all.
    fn cotangent(&self, v: Least<f64>, a: Least<f64>) -> Least<f64> {
        let at = |v: f64, a: f64, sine: f64, cosine: f64| (v - a * cosine) / (a * sine);
        let ends = |v: f64, a: f64| {
            (
                at(v, a, self.sine.0, self.cosine.0),
                at(v, a, self.sine.1, self.cosine.1),
            )
        };
        let (high, low) = (ends(v.1, a.0), ends(v.0, a.1));
        let turn = a.1 / v.0;
        let least = match self.cosine.1 <= turn && turn <= self.cosine.0 {
            true => libm::sqrt((1.0 / (turn * turn) - 1.0).max(0.0)),
            false => low.0.min(low.1),
        };
        let nowhere = [high.0, high.1, low.0, low.1].into_iter().any(f64::is_nan);
        // No sideways spin at all: the slip's direction can turn round within the box.
        let flips = self.sine.0 == 0.0 && a.1 * self.cosine.0 >= v.0;
        match nowhere || flips {
            true => (f64::NEG_INFINITY, f64::INFINITY),
            false => (least, high.0.max(high.1)),
        }
    }
}

/// The slip of a ball that is sent out.
struct Sent {
    /// Down the lane.
    speed: Least<f64>,
    size: Least<f64>,
    along: Least<f64>,
    aside: Least<f64>,
}

impl Slip {
    /// Sent out by so much at these speeds: U'² = U² + 2 s o + 2 f o²/(v' + v) with s and f the surface speeds of the spin and v' the
    /// speed down the lane.
    fn sent(&self, v: Least<f64>, out: Least<f64>) -> Sent {
        let down = |v: f64, out: f64| libm::sqrt((v * v - out * out).max(0.0));
        let speed = (down(v.0, out.1), down(v.1, out.0));
        let more = |side: f64, out: f64, forward: f64, both: f64| {
            2.0 * side * out + 2.0 * forward * out * out / both
        };
        let least = more(self.side.0, out.0, self.forward.0, 2.0 * v.1);
        let most = more(self.side.1, out.1, self.forward.1, speed.0 + v.0);
        let size = |size: f64, more: f64| libm::sqrt(size * size + more);
        // (v - f)/s becomes (v' - f)/(s + o): less by the larger divisor, and by (v - v')/(s + o) = o²/((v' + v)(s + o)).
        let slower = |out: f64, side: f64, both: f64| match out > 0.0 {
            true => out * out / ((side + out) * both),
            false => 0.0,
        };
        let slower = (
            slower(out.0, self.side.1, 2.0 * v.1),
            slower(out.1, self.side.0, speed.0 + v.0),
        );
        let part = |side: f64, out: f64| match side + out > 0.0 {
            true => side / (side + out),
            false => 1.0,
        };
        let (small, large) = (part(self.side.0, out.1), part(self.side.1, out.0));
        let by = |cotangent: f64, part: f64| match cotangent.is_finite() {
            true => cotangent * part,
            false => cotangent,
        };
        let (low, high) = self.cotangent;
        let mut cotangent = (
            by(low, if low > 0.0 { small } else { large }) - slower.1,
            by(high, if high > 0.0 { large } else { small }) - slower.0,
        );
        // The same by the ranges of v - f and s + o, which serves where there may be no sideways spin.
        let ahead = (v.0 - self.forward.1, v.1 - self.forward.0);
        if ahead.0 > 0.0 {
            let least = ahead.0 / (self.side.1 + out.1) - slower.1;
            let most = ahead.1 / (self.side.0 + out.0) - slower.0;
            cotangent = (cotangent.0.max(least), cotangent.1.min(most));
        }
        Sent {
            speed,
            size: (size(self.size.0, least), size(self.size.1, most)),
            along: (cosine(cotangent.0), cosine(cotangent.1)),
            aside: aside(cotangent),
        }
    }
}

impl Rolling {
    /// A ball with moment of inertia `beta` times mass times radius squared (0.01 to 2) on any lane whose oil ends between where it ends on
    /// these two; they are as long as each other.
    pub fn on(beta: f64, radius: Length, lanes: (&Lane, &Lane), friction: &Friction) -> Rolling {
        let beta = beta.clamp(0.01, 2.0);
        let [one, other] = [lanes.0, lanes.1].map(|lane| Surface::of(lane, friction));
        Rolling {
            share: beta / (1.0 + beta),
            radius: radius.as_metres().clamp(0.01, 1.0),
            beta,
            surface: match one.ends <= other.ends {
                true => (one, other),
                false => (other, one),
            },
        }
    }

    /// A course at a corner; none if such a ball would stop.
    fn course(
        &self,
        speed: f64,
        (along, aside): (f64, f64),
        size: f64,
        surface: &Surface,
    ) -> Option<Course> {
        let keeps_on = speed - along * self.share * size > 0.0;
        keeps_on.then(|| {
            let turned = 1.0 / (self.beta * self.radius);
            Course::sliding(
                [speed, 0.0],
                [0.0; 3],
                [along, -aside],
                self.share * size,
                turned,
                surface,
            )
        })
    }
}

/// The cosine that goes with a cotangent.
fn cosine(cotangent: f64) -> f64 {
    match cotangent.abs() < 1e100 {
        true => cotangent / length([1.0, cotangent]),
        false => cotangent.signum(),
    }
}

/// The sines that go with a range of cotangents.
fn aside((low, high): Least<f64>) -> Least<f64> {
    let sine = |cotangent: f64| match cotangent.abs() < 1e100 {
        true => 1.0 / length([1.0, cotangent]),
        false => 0.0,
    };
    let nearest = 0f64.clamp(low, high);
    (sine(low).min(sine(high)), sine(nearest))
}
