//! The integrated roll: reference trajectories, what must be kept, closed forms, flare, an off mass centre, and bad input.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

#[path = "motion_path/reference.rs"]
mod reference;
#[path = "motion_path/shot.rs"]
mod shot;
