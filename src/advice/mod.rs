//! The consultation: stages in order, each with its reasons, then the drill spec.
//!
//! [`Shop`] holds what a shop has (rules, catalog, prices); [`Shop::advise`] turns a
//! [`Bowler`](crate::bowler::Bowler) into an [`Advice`]: cautions, what was settled, ranked balls,
//! what was assumed, the quote, and a [`DrillSpec`] whose every number carries its ledger.
//!
//! [`Shop::why_not`] and [`Shop::compare`] answer what people ask next: why not this ball, and this one or that?

mod ask;
mod balls;
mod bill;
mod builtin;
mod calibrated;
mod card_entries;
mod chain;
mod consult;
mod consultation;
mod contrast;
mod drilling;
mod explain;
mod measures;
mod named;
mod offers;
mod old_ball;
mod one_sentence;
mod outcome;
mod planned;
mod reason;
mod refit;
mod refitting;
mod result;
mod shop;
mod spec;
mod stages;
mod standing;
mod stock;
mod used;
mod weighings;
mod why_not;

pub use calibrated::{Calibrated, NotCalibrated, Setting};
pub use contrast::{Compared, Contrast, Difference};
pub use drilling::{
    CoreChange, Drilling, LayoutStep, PlannedHole, PlannedLayout, PlannedWeb, Predicted, Refusal,
};
pub use offers::{Offer, Offers};
pub use outcome::Trouble;
pub use reason::{Caution, Reason, Texts};
pub use refit::{Cause, Change, Past, Refit, ToWrite};
pub use result::{Advice, Assumed, Behind, Bill, NearMiss, Pick, RuledOut, Settled};
pub use shop::{Shop, ShopFiles};
pub use spec::{DrillSpec, SpecNumber, WorkStep};
pub use standing::Standing;
pub use weighings::CardTrouble;
pub use why_not::{BallFate, Barrier, Cost, Sought, WhyNot};
