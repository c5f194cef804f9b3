//! What a search should find, by trying every point.

use spanwright::rules::{Interval, UNKNOWN};
use spanwright::search::{Area, Decision, Pair, Point, Shape, Stretch, Turn};

/// Whether a value is among what an answer may be.
pub fn lies_in(shape: Shape, span: Interval, value: i64) -> bool {
    match shape {
        _ if value == UNKNOWN => span.may_be_unknown(),
        _ if !span.may_be_known() => false,
        Shape::Bits => (0..62).all(|bit| {
            let has = |mask: i64| mask >> bit & 1 == 1;
            (has(value) || !has(span.lowest())) && (!has(value) || has(span.highest()))
        }),
        Shape::Steps | Shape::Words => span.lowest() <= value && value <= span.highest(),
    }
}

/// All values that an answer may be.
pub fn values(shape: Shape, span: Interval) -> Vec<i64> {
    let known = span.may_be_known().then(|| span.lowest()..=span.highest());
    known
        .into_iter()
        .flatten()
        .chain([UNKNOWN])
        .filter(|&value| lies_in(shape, span, value))
        .collect()
}

/// All points of an area.
pub fn points<D: Decision>(decision: &D, area: &Area) -> Vec<Point> {
    let mut points = vec![Vec::new()];
    for (answer, &span) in area.iter().enumerate() {
        let values = values(decision.shape(answer), span);
        let longer = |point: &Point| {
            let one = |&value: &i64| [point.as_slice(), &[value]].concat();
            values.iter().map(one).collect::<Vec<_>>()
        };
        points = points.iter().flat_map(longer).collect();
    }
    points
}

/// The pick at a point if it can be given.
pub fn possible<D: Decision>(decision: &D, point: &[i64]) -> Option<D::Pick> {
    decision.is_possible(point).then(|| decision.pick(point))
}

/// Whether something else can be picked in the area.
pub fn turns<D: Decision>(decision: &D, area: &Area, pick: &D::Pick) -> bool {
    let points = points(decision, area);
    points
        .iter()
        .any(|point| possible(decision, point).is_some_and(|found| found != *pick))
}

/// A point with one answer changed.
pub fn with(point: &Point, answer: usize, value: i64) -> Point {
    let mut point = point.clone();
    point[answer] = value;
    point
}

/// The known values that can be given with the rest, lowest first, and what is picked there.
fn row<D: Decision>(
    decision: &D,
    start: &Point,
    answer: usize,
    within: Interval,
) -> Vec<(i64, D::Pick)> {
    let values = values(decision.shape(answer), within.if_known());
    let known = values.into_iter().filter(|&value| value != UNKNOWN);
    known
        .filter_map(|value| Some((value, possible(decision, &with(start, answer, value))?)))
        .collect()
}

/// Turns of one answer.
pub fn nearest<D: Decision>(
    decision: &D,
    start: &Point,
    answer: usize,
    within: Interval,
) -> Vec<Turn<D::Pick>> {
    let target = decision.pick(start);
    let here = start[answer];
    let row = row(decision, start, answer, within);
    let turn = |from: i64, (to, pick): &(i64, D::Pick)| Turn {
        answer,
        from,
        to: *to,
        pick: pick.clone(),
    };
    let turning = |(value, pick): &&(i64, D::Pick)| *value != here && *pick != target;
    match decision.shape(answer) {
        Shape::Words => row
            .iter()
            .filter(turning)
            .map(|to| turn(here, to))
            .collect(),
        Shape::Bits => {
            let single = |(value, _): &&(i64, D::Pick)| {
                let from = if here == UNKNOWN {
                    within.lowest()
                } else {
                    here
                };
                let steps = (value ^ from).count_ones();
                steps == 1 || (steps == 0 && here == UNKNOWN)
            };
            let mut found: Vec<_> = row.iter().filter(turning).filter(single).collect();
            // By bit, not by value: a set that loses its first word comes before one that gains its second.
            found.sort_by_key(|(value, _)| {
                if here == UNKNOWN {
                    *value
                } else {
                    value ^ here
                }
            });
            found.into_iter().map(|to| turn(here, to)).collect()
        }
        Shape::Steps if here == UNKNOWN => {
            let Some(first_kept) = row.iter().position(|(_, pick)| *pick == target) else {
                return row
                    .first()
                    .map(|to| turn(UNKNOWN, to))
                    .into_iter()
                    .collect();
            };
            let last_kept = row.iter().rposition(|(_, pick)| *pick == target).unwrap();
            let first_turn = row.iter().position(|(_, pick)| *pick != target);
            let last_turn = row.iter().rposition(|(_, pick)| *pick != target);
            let (Some(first_turn), Some(last_turn)) = (first_turn, last_turn) else {
                return Vec::new();
            };
            let mut found = Vec::new();
            // Each end by itself: does it keep the pick?
            let (low_keeps, high_keeps) = (first_kept == 0, last_kept == row.len() - 1);
            if low_keeps {
                found.push(turn(row[first_turn - 1].0, &row[first_turn]));
            }
            if high_keeps {
                found.push(turn(row[last_turn + 1].0, &row[last_turn]));
            }
            if !low_keeps && !high_keeps {
                found.push(turn(row[first_kept].0, &row[first_kept - 1]));
                found.push(turn(row[last_kept].0, &row[last_kept + 1]));
            }
            found
        }
        Shape::Steps => {
            let (mut found, mut last) = (Vec::new(), here);
            for to in row.iter().rev().filter(|(value, _)| *value < here) {
                if to.1 != target {
                    found.push(turn(last, to));
                    break;
                }
                last = to.0;
            }
            last = here;
            for to in row.iter().filter(|(value, _)| *value > here) {
                if to.1 != target {
                    found.push(turn(last, to));
                    break;
                }
                last = to.0;
            }
            found
        }
    }
}

/// The stretch of one answer over which the pick stays.
pub fn stretch<D: Decision>(
    decision: &D,
    start: &Point,
    answer: usize,
    within: Interval,
) -> Option<Stretch> {
    let here = start[answer];
    if here == UNKNOWN || decision.shape(answer) != Shape::Steps {
        return None;
    }
    let target = decision.pick(start);
    let row = row(decision, start, answer, within);
    let reach = |values: &mut dyn Iterator<Item = &(i64, D::Pick)>| {
        let mut last = here;
        for (value, pick) in values {
            if *pick != target {
                return (last, true);
            }
            last = *value;
        }
        (last, false)
    };
    Some(Stretch {
        lowest: reach(&mut row.iter().rev().filter(|(value, _)| *value < here)),
        highest: reach(&mut row.iter().filter(|(value, _)| *value > here)),
    })
}

/// What one answer may change to without turning the pick alone.
fn free<D: Decision>(decision: &D, start: &Point, answer: usize, within: Interval) -> Vec<i64> {
    let here = start[answer];
    if here == UNKNOWN {
        return Vec::new();
    }
    let target = decision.pick(start);
    let turns = |value: i64| {
        possible(decision, &with(start, answer, value)).is_some_and(|pick| pick != target)
    };
    let known = values(decision.shape(answer), within.if_known());
    let others = known
        .into_iter()
        .filter(|&value| value != UNKNOWN && value != here);
    let is_free = |value: &i64| match decision.shape(answer) {
        Shape::Words => !turns(*value),
        Shape::Bits => (value ^ here).count_ones() == 1 && !turns(*value),
        Shape::Steps => {
            let lies_between = |other: &i64| {
                (*other < here) == (*value < here) && (other - here).abs() <= (value - here).abs()
            };
            let row = values(Shape::Steps, within.if_known());
            !row.into_iter()
                .filter(|&other| other != here)
                .filter(lies_between)
                .any(turns)
        }
    };
    others.filter(is_free).collect()
}

/// The nearest pair that turns together.
pub fn pair<D: Decision>(decision: &D, start: &Point, area: &Area) -> Option<Pair<D::Pick>> {
    let target = decision.pick(start);
    let far = |answer: usize, value: i64| -> i64 {
        let whole = area[answer].highest() - area[answer].lowest();
        match decision.shape(answer) {
            Shape::Steps if whole > 0 => (value - start[answer]).abs() * 1_000_000_000 / whole,
            _ => 1_000_000_000,
        }
    };
    let mut found = Vec::new();
    for one in 0..area.len() {
        for other in one + 1..area.len() {
            for a in free(decision, start, one, area[one]) {
                for b in free(decision, start, other, area[other]) {
                    let point = with(&with(start, one, a), other, b);
                    if let Some(pick) = possible(decision, &point).filter(|pick| *pick != target) {
                        found.push((far(one, a) + far(other, b), [(one, a), (other, b)], pick));
                    }
                }
            }
        }
    }
    let nearest = found
        .into_iter()
        .min_by_key(|(far, [one, other], _)| (*far, one.0, other.0, one.1, other.1));
    nearest.map(|(_, steps, pick)| Pair { steps, pick })
}
