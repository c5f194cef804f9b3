//! The closed lists of words that facts are made of. An index into a list is the fact's value.
//!
//! The words of a profile and of a catalog stand there; only what neither has stands here.

pub use crate::bowler::{COLOURS, COVERS, GRIPS};
use crate::catalog::{Core, Finish, Tier};

/// Core shapes.
pub const CORES: &[&str] = Core::NAMES;
/// Finishes.
pub const FINISHES: &[&str] = Finish::NAMES;
/// Price tiers.
pub const TIERS: &[&str] = Tier::NAMES;
/// What to do with the surface.
pub const SURFACES: &[&str] = &["factory", "smoother", "duller"];
/// Ways to lay a ball out.
pub const LAYOUTS: &[&str] = &["over_label", "pin_from_grip", "pin_from_PAP"];
