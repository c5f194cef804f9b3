//! Grips: as ordered, and as they lie on the ball.
//!
//! A [`GripOrder`] says what the work order says, and [`place`] turns it into a [`Placed`] grip: holes with mouths and
//! axes. What can't lie on the ball is refused as [`Unplaceable`], with every reason.

pub use super::digit::Digit;
pub use super::order::{Along, GripOrder, HoleOrder, Kind, Reading, Reference};
pub use super::placed::{Bores, Placed};
pub use super::placing::place;
pub use super::unplaceable::{Fault, Unplaceable};
pub use super::view::Shift;
