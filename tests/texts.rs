//! Texts are plain: the words of the built-in rules and of the interview, and what is found where a text leaves them.
#![allow(clippy::unwrap_used)]

#[path = "texts/built_in.rs"]
mod built_in;
#[path = "texts/planted.rs"]
mod planted;
#[path = "texts/reading.rs"]
mod reading;
