//! The principal values and axes of a symmetric tensor, by Jacobi's turns: the same bytes on every machine.

use glam::{DMat3, DVec3};

use super::Misfit;

/// Full rounds of three turns. The part off the diagonal shrinks quadratically: five are enough, the rest is certainty.
const ROUNDS: usize = 24;

/// Beside a largest part of one, less than the last digit.
const NOTHING: f64 = 1e-18;

/// What [`symmetric`] finds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Principal {
    values: [f64; 3],
    axes: [DVec3; 3],
}

impl Principal {
    /// The principal values, lowest first.
    pub fn values(&self) -> [f64; 3] {
        self.values
    }

    /// The axes in the same order, each of length one, square to each other and right-handed. An axis is a line: the first two
    /// point so that their largest part is positive, the third follows from them. Where values are equal any axes of their
    /// plane are right, and which of them come out is only repeatable.
    pub fn axes(&self) -> [[f64; 3]; 3] {
        self.axes.map(|axis| axis.to_array())
    }
}

/// Principal values and axes of a symmetric tensor; what little row and column differ is evened out.
///
/// # Errors
///
/// A part that is infinite or no number.
pub fn symmetric(tensor: [[f64; 3]; 3]) -> Result<Principal, Misfit> {
    let largest = tensor
        .iter()
        .flatten()
        .fold(0.0, |most: f64, part| most.max(part.abs()));
    if !tensor.iter().flatten().all(|part| part.is_finite()) {
        return Err(Misfit::NotANumber { what: "tensor" });
    }
    if largest < f64::MIN_POSITIVE {
        return Ok(Principal {
            values: [0.0; 3],
            axes: DVec3::AXES,
        });
    }
    // To the size of one first, so that nothing overflows.
    let whole = DMat3::from_cols_array_2d(&tensor.map(|row| row.map(|part| part / largest)));
    let mut rest = (whole + whole.transpose()) * 0.5;
    let mut turns = DMat3::IDENTITY;
    for _ in 0..ROUNDS {
        for (one, other) in [(0, 1), (0, 2), (1, 2)] {
            let turn = turn(&rest, one, other);
            rest = turn.transpose() * rest * turn;
            turns *= turn;
        }
    }
    let mut found = [0, 1, 2].map(|index| (rest.col(index)[index] * largest, turns.col(index)));
    found.sort_by(|one, other| one.0.total_cmp(&other.0));
    let [first, second, _] = found.map(|(_, axis)| pointed(axis.normalize()));
    let second = (second - first * first.dot(second)).normalize();
    Ok(Principal {
        values: found.map(|(value, _)| value),
        axes: [first, second, first.cross(second)],
    })
}

/// The turn in the plane of two axes that takes away what joins them.
fn turn(rest: &DMat3, one: usize, other: usize) -> DMat3 {
    let joins = rest.col(one)[other];
    let mut turn = DMat3::IDENTITY;
    if joins.abs() < NOTHING {
        return turn;
    }
    // The smaller of the two angles, by the formula that loses no digits (Jacobi's as commonly taught).
    let lean = (rest.col(other)[other] - rest.col(one)[one]) / (2.0 * joins);
    let tangent = 1.0_f64.copysign(lean) / (lean.abs() + libm::hypot(lean, 1.0));
    let cosine = 1.0 / libm::hypot(tangent, 1.0);
    let sine = tangent * cosine;
    turn.col_mut(one)[one] = cosine;
    turn.col_mut(other)[other] = cosine;
    turn.col_mut(one)[other] = -sine;
    turn.col_mut(other)[one] = sine;
    turn
}

/// The same line, its largest part positive.
fn pointed(axis: DVec3) -> DVec3 {
    let largest = axis.to_array().into_iter().reduce(|most, part| {
        // A hair's lead keeps rounding from choosing between equals.
        if part.abs() > most.abs() + 1e-9 {
            part
        } else {
            most
        }
    });
    axis * 1.0_f64.copysign(largest.unwrap_or(1.0))
}
