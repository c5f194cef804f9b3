//! The integrated roll: reference trajectories, what must be kept, closed forms, flare, an off mass centre, and bad input.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

#[path = "motion_path/bad.rs"]
mod bad;
#[path = "motion_path/closed_forms.rs"]
mod closed_forms;
#[path = "motion_path/flare.rs"]
mod flare;
#[path = "motion_path/free.rs"]
mod free;
#[path = "motion_path/kept.rs"]
mod kept;
#[path = "motion_path/offset.rs"]
mod offset;
#[path = "motion_path/reference.rs"]
mod reference;
#[path = "motion_path/shot.rs"]
mod shot;
