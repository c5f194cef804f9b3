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
mod case;
mod chain;
mod consult;
mod consultation;
mod contrast;
mod coverage;
mod demo_cases;
mod drilling;
mod explain;
mod friction;
mod friction_faults;
mod how_sure;
pub mod interview;
mod measures;
mod named;
mod offers;
mod old_ball;
mod one_sentence;
mod outcome;
mod own_choice;
mod owned_motion;
mod owned_now;
mod phrases;
mod picked;
mod planned;
mod questions;
mod reason;
mod refit;
mod refitting;
mod result;
mod roll;
mod roll_ball;
mod rolling;
mod rule_checks;
mod rules_diff;
mod shop;
mod spec;
mod stages;
mod standing;
mod stock;
mod stretch;
mod sure;
mod told;
mod turning;
mod upgrade;
mod upgrading;
mod used;
mod weighings;
mod what_if;
mod why_not;

pub use calibrated::{Calibrated, NotCalibrated, Setting};
pub use case::{Answer, Case, Question};
pub use contrast::{Compared, Contrast, Difference};
pub use coverage::{Coverage, Gap, Missing, Totals};
pub use drilling::{
    CoreChange, Drilling, LayoutStep, PlannedHole, PlannedLayout, PlannedWeb, Predicted, Refusal,
};
pub use friction::{Gripping, Surface};
pub use how_sure::{HowSure, Measured, Over, SureRange};
pub use offers::{Offer, Offers};
pub use outcome::Trouble;
pub(crate) use phrases::without_unit;
pub use phrases::{Phrase, Phrases};
pub use picked::Picked;
pub use reason::{Caution, Reason, Texts};
pub use refit::{Cause, Change, Past, Refit, ToWrite};
pub use result::{Advice, Assumed, Behind, Bill, NearMiss, Pick, RuledOut, Settled};
pub use roll::{Apart, ApartAt, Roll, RollLine, Rolled, Saying};
pub use roll_ball::RollBall;
pub use rule_checks::RuleChecks;
pub use rules_diff::{
    ChangeKind, ChangedCase, LineChange, OutcomeChange, PartChange, RuleChange, RulesDiff,
    WordChange,
};
pub use shop::{Shop, ShopFiles};
pub use spec::{DrillSpec, SpecNumber, WorkStep};
pub use standing::Standing;
pub use stretch::Stretch;
pub use upgrade::{Against, BallGap, Does, Doubled, NextBall, OwnChoice, OwnedNow, Upgrade};
pub use weighings::CardTrouble;
pub use what_if::{ChangedAnswer, Together, Turning, WhatIf};
pub use why_not::{BallFate, Barrier, Cost, Sought, WhyNot};
