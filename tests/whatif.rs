//! Turning points and how sure: each one told is so on both sides, none nearer was missed, and nothing is told that no profile could hold.

// Helpers of tests may stop a test just as tests may.
#![allow(clippy::unwrap_used, clippy::panic)]

#[path = "whatif/brute.rs"]
mod brute;
#[path = "whatif/demos.rs"]
mod demos;
#[path = "whatif/door.rs"]
mod door;
#[path = "whatif/give_or_take.rs"]
mod give_or_take;
#[path = "whatif/phrases.rs"]
mod phrases;
#[path = "properties/profiles.rs"]
#[allow(dead_code)]
mod profiles;
#[path = "whatif/stretches.rs"]
mod stretches;
#[path = "whatif/sure.rs"]
mod sure;
#[path = "whatif/turns.rs"]
mod turns;
#[path = "bowler/written.rs"]
mod written;
