//! The engine on a trade of its own: choosing garden plants. Every expectation here is worked out by hand from the rules
//! written beside it, or by the plain evaluator of `naive`; none comes from outside the project.

// Helpers of tests may stop a test just as tests may.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

#[path = "engine/challenge.rs"]
mod challenge;
#[path = "engine/choices.rs"]
mod choices;
#[path = "engine/common.rs"]
mod common;
#[path = "engine/curves.rs"]
mod curves;
#[path = "engine/disputes.rs"]
mod disputes;
#[path = "engine/garden.rs"]
mod garden;
#[path = "engine/matchers.rs"]
mod matchers;
#[path = "engine/measures.rs"]
mod measures;
#[path = "engine/naive.rs"]
mod naive;
#[path = "engine/overlays.rs"]
mod overlays;
#[path = "engine/random.rs"]
mod random;
#[path = "engine/reasons.rs"]
mod reasons;
#[path = "engine/vocabularies.rs"]
mod vocabularies;
