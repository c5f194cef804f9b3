//! The consultation: stages in order, each with its reasons, then the drill spec.
//!
//! [`Shop`] holds what a shop has (rules, catalog, prices); [`Shop::advise`] turns a
//! [`Bowler`](crate::bowler::Bowler) into an [`Advice`]: cautions, what was settled, ranked balls,
//! what was assumed, the quote, and a [`DrillSpec`] whose every number carries its ledger.

mod ask;
mod balls;
mod bill;
mod builtin;
mod calibrated;
mod card_entries;
mod chain;
mod consult;
mod consultation;
mod drilling;
mod explain;
mod measures;
mod offers;
mod old_ball;
mod outcome;
mod planned;
mod reason;
mod refit;
mod refitting;
mod result;
mod rule_checks;
mod shop;
mod spec;
mod stages;
mod stock;
mod used;
mod weighings;

pub use calibrated::{Calibrated, NotCalibrated, Setting};
pub use drilling::{
    CoreChange, Drilling, LayoutStep, PlannedHole, PlannedLayout, PlannedWeb, Predicted, Refusal,
};
pub use offers::{Offer, Offers};
pub use outcome::Trouble;
pub use reason::{Caution, Reason, Texts};
pub use refit::{Cause, Change, Past, Refit, ToWrite};
pub use result::{Advice, Assumed, Behind, Bill, NearMiss, Pick, RuledOut, Settled};
pub use rule_checks::RuleChecks;
pub use shop::{Shop, ShopFiles};
pub use spec::{DrillSpec, SpecNumber, WorkStep};
pub use weighings::CardTrouble;
