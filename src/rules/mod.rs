//! The engine: rules as data, over facts that are whole numbers, and a ledger for every answer.
//!
//! It knows no trade. Who uses it brings a [`Vocabulary`] of facts, files of rules, and a [`World`] that gives the facts
//! their values. A *choice* ranks candidates by the sum of the rules' points; a *measure* sums to a number. Either way the
//! lines of the ledger add up to the answer, and each line knows its rule, its reason and how sure its source is.
//!
//! A kite shop could say:
//!
//! ```yaml
//! subject: kite
//! rules:
//!   - id: delta-for-light-wind
//!     when: { flyer.wind: light, kite.shape: delta }
//!     points: 6
//!     because: A delta lifts in hardly any wind.
//!     source: common practice
//! ```

mod answer;
mod challenge;
mod compile;
mod condition;
mod curve;
mod digest;
mod found;
mod gain;
mod interval;
mod ledger;
mod logic;
mod measure;
mod moving;
mod observe;
mod outdone;
mod over;
mod overlay;
mod parting;
mod plain;
mod range;
mod ranged;
mod rank;
mod read;
mod reason;
mod refute;
mod rule;
mod set;
mod shown;
mod source;
mod stated;
mod subject;
mod told;
mod vocabulary;
mod words;
mod world;

pub use challenge::Challenge;
pub use compile::Chooser;
pub use found::Found;
pub use interval::Interval;
pub use ledger::{Fate, Ledger, Line, Role};
pub use logic::{Doing, Statement, Truth};
pub use measure::Measured;
pub use observe::{Observed, Seen};
pub use outdone::Outdone;
pub use parting::{Parting, Side, Sides};
pub use plain::{MOST_WORDS, Misworded, TextPlace, Wording};
pub use range::Range;
pub use ranged::Ranged;
pub use rank::Ranking;
pub use reason::Audience;
pub use rule::{Rule, RuleId, Severity};
pub use set::RuleSet;
pub use source::{Source, Strength};
pub use stated::Part;
pub use subject::{Subject, SubjectKind};
pub use vocabulary::{Fact, FactId, Kind, Origin, UNKNOWN, Vocabulary};
pub use words::{Assumption, Word};
pub use world::World;
