//! Boxes of answers: what stays first, what turns it.
//!
//! It knows no trade. Who uses it brings a [`Decision`]: answers with the values they may take, what is picked for one
//! point of answers, and, where it can be shown cheaply, that a pick holds over a whole box. A single point is always decided by
//! the pick itself, so exactness never hangs on bounds: loose bounds cost time, nothing else.

mod arm;
mod decision;
mod effort;
mod matters;
mod pair;
mod reduce;
mod row;
mod settle;
mod span;
mod turn;

pub use decision::{Area, Decision, Holds, Point, Shape};
pub use matters::{Matters, turning_with};
pub use pair::{Pair, pair};
pub use settle::{Outcome, settle};
pub use turn::{Nearest, Stretch, Turn, nearest, stretch};
