//! Search over boxes of answers, held against trying every point: what is proved is so, every turn is one, and the nearest is the
//! nearest, whatever the bounds can show and wherever the work limit lies.

// Helpers of tests may stop a test just as tests may.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

#[path = "search/checks.rs"]
mod checks;
#[path = "search/long.rs"]
mod long;
#[path = "engine/naive.rs"]
mod naive;
#[path = "search/plain.rs"]
mod plain;
#[path = "search/rackets.rs"]
mod rackets;
#[path = "search/shops.rs"]
mod shops;
#[path = "search/table.rs"]
mod table;
#[path = "search/tables.rs"]
mod tables;
#[path = "search/words.rs"]
mod words;
