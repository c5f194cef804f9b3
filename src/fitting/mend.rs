//! What could mend a thin wall: for each number that can do it alone, the smallest step that does.

use super::{
    Sphere,
    grip::{Digit, GripOrder, Reference, place},
    hole::{Hole, Section},
    wall,
};

/// More steps than any shop tries.
const MOST_STEPS: usize = 400;
/// A wall this little under the limit is at the limit: far below what any tool can cut.
const HAIR: f64 = 1e-9;

/// A number of the order that could mend a wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Number {
    /// The bridge as cut: wider.
    Bridge,
    /// A finger's lateral pitch: farther outward, left for the middle finger, right for the ring finger.
    Lateral(Digit),
    /// A forward pitch, either way.
    Forward(Digit),
    /// A depth: shallower.
    Depth(Digit),
    /// A hole as cut: smaller. The outside of a slug, sleeve or insert if there is one, else the bore.
    Size(Digit),
}

/// One number's change that mends the grip alone.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mend {
    /// Which number.
    pub what: Number,
    /// What was ordered. Laterals with their sign: right above zero.
    pub from: f64,
    /// What would do.
    pub to: f64,
    /// The thinnest wall of the whole grip then.
    pub least: f64,
}

/// In what steps a number may move, and between what ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// Inches a step, over 0.
    pub step: f64,
    /// The lowest value to suggest.
    pub lowest: f64,
    /// The highest.
    pub highest: f64,
}

/// What a shop would change, and how far. Whoever calls knows the trade; there are no defaults here.
#[derive(Clone, Debug, PartialEq)]
pub struct Steps {
    /// The bridge as cut.
    pub bridge: Bounds,
    /// A finger's lateral, outward above zero.
    pub lateral: Bounds,
    /// Forward pitch of any hole, forward above zero.
    pub forward: Bounds,
    /// Depth of a finger hole.
    pub finger_depth: Bounds,
    /// Depth of the thumb hole.
    pub thumb_depth: Bounds,
    /// Size of a hole without slug, sleeve or insert.
    pub size: Bounds,
    /// The outside diameters in which finger inserts can be bought.
    pub finger_outsides: Vec<f64>,
    /// The outside diameters in which slugs and sleeves can be bought.
    pub thumb_outsides: Vec<f64>,
    /// The least wall of an insert around its bore.
    pub insert_wall: f64,
    /// The least wall of a slug or sleeve around its bore.
    pub slug_wall: f64,
}

/// What a grip's walls must hold.
#[derive(Clone, Copy, Debug)]
pub struct Demand<'a> {
    /// The least wall, in inches, between any two holes that count.
    pub least: f64,
    /// Every way of counting forward pitch in which it must hold. None of them: the order's own.
    pub references: &'a [Reference],
    /// Old holes of the same ball that count, in the grip's frame.
    pub old: &'a [Hole],
    /// Whether walls to the thumb hole count; a depth that isn't known yet is no reason to change anything.
    pub thumb: bool,
}

/// Every mend of a grip whose walls, between any two of its holes, are under `least` inches: for each number that could
/// do it alone the smallest step that does. None for a number that can't, none at all if the grip needs no mending.
///
/// Each mend was tried: the grip was placed again with it, and all its walls reach the limit.
pub fn mends(ball: &Sphere, order: &GripOrder, least: f64, steps: &Steps) -> Vec<Mend> {
    let demand = Demand {
        least,
        references: &[],
        old: &[],
        thumb: true,
    };
    mends_for(ball, order, &demand, steps)
}

/// [`mends`] for more than one way of counting forward pitch, for a ball with old holes, or without the thumb hole.
pub fn mends_for(ball: &Sphere, order: &GripOrder, demand: &Demand, steps: &Steps) -> Vec<Mend> {
    let enough = |wall: &f64| *wall >= demand.least - HAIR;
    let today = thinnest(ball, order, demand);
    if !demand.least.is_finite() || today.is_none_or(|wall| enough(&wall)) {
        return Vec::new();
    }
    let digits = [Digit::Middle, Digit::Ring, Digit::Thumb];
    let of_holes = digits.into_iter().flat_map(|digit| {
        [
            Number::Lateral(digit),
            Number::Forward(digit),
            Number::Depth(digit),
            Number::Size(digit),
        ]
    });
    let smallest = |what: Number| {
        let from = value(order, what)?;
        let values = candidates(order, what, from, steps);
        values.into_iter().find_map(|to| {
            let mut changed = *order;
            set(&mut changed, what, to);
            let least = thinnest(ball, &changed, demand).filter(enough)?;
            Some(Mend {
                what,
                from,
                to,
                least,
            })
        })
    };
    let numbers = [Number::Bridge].into_iter().chain(of_holes);
    numbers.filter_map(smallest).collect()
}

/// The thinnest of all walls that count; `None` if the grip can't be placed in each way.
fn thinnest(ball: &Sphere, order: &GripOrder, demand: &Demand) -> Option<f64> {
    let own = [order.reference];
    let references = match demand.references {
        [] => &own,
        references => references,
    };
    let counts = |digit: &Digit| demand.thumb || *digit != Digit::Thumb;
    let mut thinnest = f64::INFINITY;
    for reference in references {
        let order = GripOrder {
            reference: *reference,
            ..*order
        };
        let grip = place(ball, &order).ok()?;
        for pair in wall::within_grip(ball, &grip) {
            if pair.holes.iter().all(counts) {
                thinnest = thinnest.min(pair.wall.least);
            }
        }
        for beside in wall::to_old(ball, &grip, demand.old) {
            if counts(&beside.digit) {
                thinnest = thinnest.min(beside.wall.least);
            }
        }
    }
    Some(thinnest)
}

/// The number as ordered; `None` if this grip has no such number, or it is none to be changed.
fn value(order: &GripOrder, what: Number) -> Option<f64> {
    match what {
        Number::Bridge => Some(order.bridge),
        Number::Lateral(Digit::Thumb) => None,
        Number::Lateral(digit) => Some(order.hole(digit)?.cut_pitches().lateral),
        Number::Forward(digit) => Some(order.hole(digit)?.cut_pitches().forward),
        Number::Depth(digit) => Some(order.hole(digit)?.depth),
        Number::Size(digit) => match order.hole(digit)?.cut() {
            Section::Round { size } => Some(size),
            // Its shape is the thumb's: it isn't for the web to change.
            Section::Oval { .. } => None,
        },
    }
}

/// Writes the number. A slug's hole with pitches of its own keeps its bore.
fn set(order: &mut GripOrder, what: Number, to: f64) {
    let digit = match what {
        Number::Bridge => {
            order.bridge = to;
            return;
        }
        Number::Lateral(digit)
        | Number::Forward(digit)
        | Number::Depth(digit)
        | Number::Size(digit) => digit,
    };
    let Some(hole) = order.hole_mut(digit) else {
        return;
    };
    let pitches = match &mut hole.outside_pitches {
        Some(pitches) if hole.outside.is_some() => pitches,
        _ => &mut hole.pitches,
    };
    match what {
        Number::Lateral(_) => pitches.lateral = to,
        Number::Forward(_) => pitches.forward = to,
        Number::Depth(_) => hole.depth = to,
        _ if hole.outside.is_some() => hole.outside = Some(to),
        _ => hole.bore = Section::Round { size: to },
    }
}

/// Values to try, the smallest change first.
fn candidates(order: &GripOrder, what: Number, from: f64, steps: &Steps) -> Vec<f64> {
    match what {
        Number::Bridge => walk(from, 1.0, &steps.bridge),
        Number::Lateral(digit) => {
            let outward = if digit == Digit::Middle { -1.0 } else { 1.0 };
            let values = walk(from * outward, 1.0, &steps.lateral);
            values.into_iter().map(|value| value * outward).collect()
        }
        Number::Forward(_) => {
            let less = walk(from, -1.0, &steps.forward);
            let more = walk(from, 1.0, &steps.forward);
            let mut both: Vec<f64> = less.into_iter().chain(more).collect();
            // A stable sort: of equal changes, less forward comes first.
            both.sort_by(|one, other| change(from, *one).total_cmp(&change(from, *other)));
            both
        }
        Number::Depth(Digit::Thumb) => walk(from, -1.0, &steps.thumb_depth),
        Number::Depth(_) => walk(from, -1.0, &steps.finger_depth),
        Number::Size(digit) => match order.hole(digit) {
            Some(hole) if hole.outside.is_some() => {
                let (stock, wall) = if digit == Digit::Thumb {
                    (&steps.thumb_outsides, steps.slug_wall)
                } else {
                    (&steps.finger_outsides, steps.insert_wall)
                };
                let least = hole.bore.drill() + hole.bore.run() + 2.0 * wall;
                let fits = |size: &f64| *size < from && *size >= least - HAIR;
                let mut sizes: Vec<f64> = stock.iter().copied().filter(fits).collect();
                sizes.sort_by(|one, other| other.total_cmp(one));
                sizes
            }
            _ => walk(from, -1.0, &steps.size),
        },
    }
}

fn change(from: f64, to: f64) -> f64 {
    libm::round(libm::fabs(to - from) / HAIR)
}

/// Step after step from a value, up (1) or down (-1), as far as the bounds go.
fn walk(from: f64, sign: f64, bounds: &Bounds) -> Vec<f64> {
    if bounds.step <= 0.0 || !bounds.step.is_finite() {
        return Vec::new();
    }
    let values = (1..=MOST_STEPS).map(|count| from + sign * bounds.step * count as f64);
    let inside = |value: &f64| {
        let past = if sign > 0.0 {
            *value > bounds.highest + HAIR
        } else {
            *value < bounds.lowest - HAIR
        };
        !past
    };
    let reached = |value: &f64| *value >= bounds.lowest - HAIR && *value <= bounds.highest + HAIR;
    values.take_while(inside).filter(reached).collect()
}
