//! The governing bodies' limits as a dated table, and verdicts. Knows no rules of advice.
//!
//! [`Standards::judge`] holds a ball against every limit that a body had on a day. The numbers stand in
//! `rules/standards.yaml`, each with its days, its source and how sure that is; code knows only what is compared with what.
//!
//! What decides whether a ball may be used is the governing body's current rule book, never this table.
//!
//! ```
//! use spanwright::standards::{BallFacts, Body, Date, Standards, Verdict};
//!
//! let standards = Standards::builtin()?;
//! let mut ball = BallFacts::default();
//! ball.weight = Some(1601);
//! let day = Date::read("2024-10-01")?;
//! let findings = standards.judge(&ball, day, Body::Usbc);
//! let weight = findings.iter().find(|finding| finding.id() == "weight");
//! assert_eq!(weight.map(|finding| finding.verdict()), Some(Verdict::Fail));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod ball;
mod body;
mod date;
mod facts;
mod finding;
mod judge;
mod known;
mod quantity;
mod read;
mod read_row;
mod row;
mod situation;
mod strength;
mod subject;
mod table;
mod unit;

pub use body::Body;
pub use date::{Date, Period};
pub use facts::{BallFacts, CoverKind, Digit, HoleFacts, HoleKind};
pub use finding::{Finding, Verdict};
pub use known::{ApprovalLimits, StaticLimits};
pub use strength::Strength;
pub use table::Standards;
