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
/// What may be wrong with a fit, what is tried or undone most easily first: of two causes alike, that one is looked at first.
pub const CAUSES: &[&str] = &[
    "nothing_in_the_fit",
    "the_way_it_is_held",
    "thumb_hole_too_loose",
    "thumb_hole_too_tight",
    "finger_holes_too_tight",
    "thumb_hole_of_the_wrong_shape",
    "ball_too_heavy",
    "span_too_long",
    "ring_span_too_long",
    "span_too_short",
    "too_much_thumb_reverse",
    "too_much_thumb_forward",
    "too_little_thumb_forward",
    "thumb_leans_to_the_wrong_side",
    "fingers_need_reverse",
    "fingers_lean_to_the_wrong_side",
];
/// What a bowler's balls may lack, in the order of the path: of two gaps alike, that one comes first.
pub const GAPS: &[&str] = &[
    "nothing_yet",
    "spare_ball",
    "first_hooking_ball",
    "between_the_others",
    "more_for_oil",
    "less_for_dry",
    "replacement",
];
