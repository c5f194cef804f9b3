//! Where a curve gives more than nothing.

use super::condition::LOWEST;
use super::curve::Curve;
use super::logic::Statement;

/// Where the value of a curve is above nothing.
pub(super) fn above_nothing(curve: &Curve) -> Statement {
    let above = |at: i64| curve.value(at).is_some_and(|value| value > 0);
    let mut places: Vec<(i64, i64)> = Vec::new();
    // Within a piece the value rises or falls all along, so the places above nothing are one end of it.
    for piece in curve.knots().windows(2) {
        let (left, right) = (piece[0].0, piece[1].0);
        match (above(left), above(right)) {
            (true, true) => places.push((left, right)),
            (true, false) => places.push((left, last(left, right, &above))),
            (false, true) => {
                let mirrored = |at: i64| above(-at);
                places.push((-last(-right, -left, &mirrored), right));
            }
            (false, false) => {}
        }
    }
    let first = curve.knots().first().map_or(0, |&(at, _)| at);
    let end = curve.knots().last().map_or(0, |&(at, _)| at);
    Statement::any(places.iter().map(|&(low, high)| {
        // Flat outside the knots.
        let low = if low == first { LOWEST } else { low };
        let high = if high == end { i64::MAX } else { high };
        Statement::within(curve.along(), low, high)
    }))
}

/// The last place from `from` toward `to` where it holds; it does at `from` and doesn't at `to`.
fn last(mut from: i64, mut to: i64, holds: &dyn Fn(i64) -> bool) -> i64 {
    while to - from > 1 {
        let middle = from + (to - from) / 2;
        if holds(middle) {
            from = middle;
        } else {
            to = middle;
        }
    }
    from
}
