//! A grip on the ball: spans there and back, mirror images, walls the same from both sides, and every refusal with
//! what would be possible.

// Helpers of tests may stop a test just as tests may.
#![allow(clippy::unwrap_used, clippy::panic)]

mod grips;
mod jigs;
mod mends;
mod placing;
mod refusals;
mod turned;
mod walls;
