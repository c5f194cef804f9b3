//! `rules check`: every kind of finding is found where it is and nowhere else, held against trying everything out.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

#[path = "rule_checks/kinds.rs"]
mod kinds;
#[path = "rule_checks/toy.rs"]
mod toy;
#[path = "rule_checks/unreachable.rs"]
mod unreachable;
