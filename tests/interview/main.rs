//! The interview: only what is asked is needed, people are understood, nothing said is lost, and no input makes it stumble.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod customers;
mod pipe;
mod same_pick;
mod table;
mod words;
mod written;
