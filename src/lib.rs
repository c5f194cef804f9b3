//! Choosing, fitting and drilling a ten-pin bowling ball, with a reason beside every suggestion and every number.

pub mod advice;
pub mod bowler;
pub mod catalog;
pub mod cli;
pub mod document;
pub mod fitting;
pub mod notation;
pub mod report;
pub mod rules;
pub mod vocabulary;
