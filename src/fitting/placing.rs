//! From a grip as ordered to holes on the ball.

use super::{
    Sphere,
    grip::{GripOrder, Placed},
};

/// Why a grip can't lie on the ball.
#[derive(Clone, Debug, PartialEq)]
pub struct Unplaceable {}

/// Places a grip on the ball.
///
/// # Errors
///
/// Spans that close no triangle.
pub fn place(_ball: &Sphere, _order: &GripOrder) -> Result<Placed, Unplaceable> {
    Err(Unplaceable {})
}
