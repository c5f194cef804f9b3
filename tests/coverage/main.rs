//! Coverage and differences of rules: the cases try every rule and every boundary, and what other rules change is named.

#![allow(clippy::unwrap_used, clippy::panic)]

mod builtin;
mod case_files;
mod commands;
mod counting;
mod diff;
