//! How a layout is said at the bench: lengths to a sixteenth, whole degrees, right and left as the fitter sees them.

use super::Point;
use crate::notation::Notation;

/// A length, to the nearest sixteenth of an inch.
pub(super) fn length(inches: f64) -> String {
    Notation::Length.write(sixteenths(inches.abs()).saturating_mul(4))
}

/// An angle, to the nearest degree.
pub(super) fn angle(degrees: f64) -> String {
    // The cast keeps to the ends of the range, and makes "no number" zero.
    let whole = libm::round(degrees.abs()) as i64;
    Notation::Angle.write(whole.saturating_mul(10))
}

/// Whether a length is written as nothing.
pub(super) fn is_nothing(inches: f64) -> bool {
    sixteenths(inches) == 0
}

/// Right or left as seen with the fingers up.
pub(super) fn side(over: f64, left_hand: bool) -> &'static str {
    if (over >= 0.0) == left_hand {
        "left"
    } else {
        "right"
    }
}

/// Up or down.
pub(super) fn height(up: f64) -> &'static str {
    if up >= 0.0 { "up" } else { "down" }
}

/// A place: over along the midline, then up or down.
pub(super) fn place(point: Point, left_hand: bool) -> String {
    let over = if is_nothing(point.over()) {
        "on the centreline".to_owned()
    } else {
        let side = side(point.over(), left_hand);
        format!("{} to the {side}", length(point.over()))
    };
    if is_nothing(point.up()) {
        format!("{over}, on the midline")
    } else {
        format!("{over}, then {} {}", length(point.up()), height(point.up()))
    }
}

/// The way to turn: counter-clockwise if the angle is above zero, for a right hand.
pub(super) fn way_to_turn(angle: f64, left_hand: bool) -> &'static str {
    if (angle >= 0.0) == left_hand {
        "clockwise"
    } else {
        "counter-clockwise"
    }
}

fn sixteenths(inches: f64) -> i64 {
    // The cast keeps to the ends of the range, and makes "no number" zero.
    libm::round(inches * 16.0) as i64
}
