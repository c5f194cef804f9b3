//! How near two holes' middles come to each other: line segments for round holes, flat strips for ovals.

use glam::{DMat3, DVec3};

use super::hole::Hole;

/// Nearer by less than this is not nearer: of equally near places the first is kept.
const NEARER: f64 = 1e-14;
/// Directions whose box is flatter than this, for edges of length one, are parallel.
const FLAT: f64 = 1e-18;

/// The middle of a hole down to some depth: what its drill's centre sweeps.
#[derive(Clone, Copy)]
pub(super) struct Strip {
    mouth: DVec3,
    axis: DVec3,
    wide: DVec3,
    depth: f64,
    half_run: f64,
}

impl Strip {
    pub fn of(hole: &Hole, depth: f64) -> Strip {
        Strip {
            mouth: hole.mouth_vec(),
            axis: hole.axis_vec(),
            wide: hole.wide_vec(),
            depth,
            half_run: 0.5 * hole.section().run(),
        }
    }
}

/// The least distance of two strips, and how deep on each it is found.
#[derive(Clone, Copy)]
pub(super) struct Nearest {
    pub distance: f64,
    pub depths: [f64; 2],
}

/// One number that may move between two ends, and what it does to the line from one strip to the other.
#[derive(Clone, Copy)]
struct Slide {
    along: DVec3,
    ends: [f64; 2],
}

/// The least distance between two strips.
///
/// The square of the distance is a convex quadratic of at most four numbers in a box: down each axis and along each
/// wide direction. So its least value is where some of them stand at an end and the others where the slope vanishes;
/// parallel ones can always be pushed to an end. All these places are tried, each held inside the box: none is farther
/// than its own distance, and one is the nearest.
pub(super) fn nearest(one: &Strip, other: &Strip) -> Nearest {
    let slides = [
        Slide {
            along: one.axis,
            ends: [0.0, one.depth],
        },
        Slide {
            along: -other.axis,
            ends: [0.0, other.depth],
        },
        Slide {
            along: one.wide,
            ends: [-one.half_run, one.half_run],
        },
        Slide {
            along: -other.wide,
            ends: [-other.half_run, other.half_run],
        },
    ];
    let from = one.mouth - other.mouth;
    let mut best = Nearest {
        distance: f64::INFINITY,
        depths: [0.0; 2],
    };
    // In base three, one digit a number: at its lower end, at its upper end, free.
    for choice in 0..81_usize {
        let digits = [choice % 3, choice / 3 % 3, choice / 9 % 3, choice / 27];
        if let Some(at) = settle(from, &slides, digits) {
            let distance = line(from, &slides, at).length();
            if distance < best.distance - NEARER {
                best = Nearest {
                    distance,
                    depths: [at[0], at[1]],
                };
            }
        }
    }
    best
}

/// The line from the second strip to the first.
fn line(from: DVec3, slides: &[Slide; 4], at: [f64; 4]) -> DVec3 {
    let moved = slides.iter().zip(at);
    from + moved.map(|(slide, by)| slide.along * by).sum::<DVec3>()
}

/// Where the free numbers make the line shortest while the others stand at their ends. `None` if another choice does
/// it.
fn settle(from: DVec3, slides: &[Slide; 4], digits: [usize; 4]) -> Option<[f64; 4]> {
    let mut at = [0.0; 4];
    let mut free = [0; 3];
    let mut count = 0;
    for (index, digit) in digits.into_iter().enumerate() {
        let ends = slides[index].ends;
        match ends.get(digit) {
            // Both ends of a round hole's run are the same.
            Some(_) if digit == 1 && ends[0] == ends[1] => return None,
            Some(end) => at[index] = *end,
            None if count == free.len() || ends[0] == ends[1] => return None,
            None => {
                free[count] = index;
                count += 1;
            }
        }
    }
    let rest = line(from, slides, at);
    let side = |index: usize| slides[free[index]].along;
    let moves = match count {
        0 => [0.0; 3],
        1 => [-rest.dot(side(0)), 0.0, 0.0],
        2 => {
            let (a, b) = (side(0), side(1));
            let square = a.cross(b).length_squared();
            if square < FLAT {
                return None;
            }
            let normal = a.cross(b) / square;
            [-rest.cross(b).dot(normal), -a.cross(rest).dot(normal), 0.0]
        }
        _ => {
            let sides = DMat3::from_cols(side(0), side(1), side(2));
            let size = sides.determinant();
            if size * size < FLAT {
                return None;
            }
            (sides.inverse() * -rest).to_array()
        }
    };
    for (index, by) in free.into_iter().zip(moves).take(count) {
        let [low, high] = slides[index].ends;
        at[index] = by.clamp(low, high);
    }
    // Where two directions are nearly parallel the last digits are uncertain; one number at a time they are not.
    for index in free.into_iter().take(count) {
        let Slide { along, ends } = slides[index];
        let short = line(from, slides, at).dot(along);
        at[index] = (at[index] - short).clamp(ends[0], ends[1]);
    }
    Some(at)
}
