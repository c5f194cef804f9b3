//! Choosing, fitting and drilling a ten-pin bowling ball, with a reason beside every suggestion and every number.
//!
//! The person behind a pro-shop counter interviews a bowler, settles weight and grip, picks a ball that is in stock,
//! measures the hand and turns it into a drill spec. This crate does the deciding and the reckoning, and says why:
//! every suggestion and every drilled number is a sum of small rules, each with its reason and its source.
//!
//! ```
//! use spanwright::advice::Shop;
//! use spanwright::bowler::Bowler;
//! use spanwright::document::{Document, Format};
//!
//! let profile = b"{ intent: straight, hold_test: { passed: 12 lb }, budget: $200 }";
//! let bowler = Bowler::read(&Document::parse("walk-in", profile, Format::Yaml)?)?;
//! let advice = Shop::demo()?.advise(&bowler)?;
//! assert_eq!(advice.picks()[0].cover(), "polyester");
//! // Nobody measured a hand, so nothing is drilled.
//! assert!(advice.spec().numbers().iter().all(|number| number.value().is_none()));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! # The house
//!
//! Arrows point down only.
//!
//! | module | what it is |
//! | --- | --- |
//! | [`cli`] | the command line |
//! | [`report`] | advice as text, as JSON, and as the sheet to drill from |
//! | [`advice`] | the consultation: stages in order, the drill spec, the drilled ball computed; refit, the roll, the upgrade path |
//! | [`vocabulary`] | where bowling meets the engine: a fact's meaning, column and bounds side by side |
//! | [`rules`] | the engine; it knows no word of bowling |
//! | [`search`] | boxes of answers: what stays first, what turns it, what no one can reach |
//! | [`fitting`] | the mathematics of the hand and the drill; it knows no rules |
//! | [`motion`] | the physics of the roll; it knows no rules |
//! | [`bowler`] | the profile: who throws, how, with what hand; the fit card of a ball that works |
//! | [`catalog`] | balls, core numbers, the shelf, prices |
//! | [`standards`] | the governing bodies' limits as a dated table, and verdicts |
//! | [`notation`] | numbers of the trade as whole steps, in and out |
//! | [`document`] | files in: a placed tree from YAML, JSON or CSV, faults with places |
//!
//! # No hand, no numbers
//!
//! Nothing is ever drilled from an assumed measurement: what wasn't measured is blank.

pub mod advice;
pub mod bowler;
pub mod catalog;
pub mod cli;
pub mod document;
pub mod fitting;
pub mod motion;
pub mod notation;
pub mod report;
pub mod rules;
pub mod search;
pub mod standards;
pub mod vocabulary;

/// The README, so that its example is compiled and run.
#[cfg(doctest)]
#[doc = include_str!("../README.md")]
pub struct Readme;
