//! Boxes of answers: what stays first, what turns it.
//!
//! It knows no trade. Who uses it brings a [`Decision`]: answers with the values they may take, what is picked for one
//! point of answers, and, where it can be shown cheaply, that a pick holds over a whole box. A single point is always decided by
//! the pick itself, so exactness never hangs on bounds: loose bounds cost time, nothing else.

mod arm;
mod decision;
mod effort;
mod finding;
mod pair;
mod reach;
mod realm;
mod reduce;
mod row;
mod rule_checks;
mod settle;
mod span;
mod turn;

pub use decision::{Area, Decision, Holds, Point, Shape};
pub use finding::{Clash, Counted, Finding, FindingKind, Findings};
pub use pair::{Pair, pair};
pub use reach::{Judged, Reached, Region, reach};
pub use realm::{Can, Example, Realm, can_hold, can_hold_for_all};
pub use rule_checks::{MOST, check_rules};
pub use settle::{Outcome, settle};
pub(crate) use span::halves;
pub use turn::{Nearest, Stretch, Turn, nearest, stretch};
