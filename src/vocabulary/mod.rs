//! Where bowling meets the engine: one file a family, a fact's meaning, column and bounds side by side.

mod answers;
mod ball;
mod bench;
mod card;
mod check;
mod friction;
mod geometry;
mod grip;
mod order;
mod path;
mod refit;
mod remembered;
mod roll;
mod settled;
mod situation;
mod stage;
mod upgrade;
mod web;
mod weight;
pub mod words;
mod worked;

use std::sync::Arc;

use crate::bowler::Bowler;
use crate::rules::{Fact, Vocabulary};

pub use crate::rules::Interval;
pub use ball::{BallCandidate, facts as ball_facts};
pub use bench::bench;
pub use friction::{FRICTIONS, GRITS};
pub use grip::{WordCandidate, all as all_words, grip_facts, layout_facts, surface_facts};
pub use order::{Ordered, ordered};
pub use refit::{CARD_NUMBERS, CardNumber, cause_facts};
pub use remembered::Remembered;
pub use settled::{Measure, NoStart, measures};
pub use situation::Situation;
pub use stage::{Alone, Column, Columns, Given, StageFact, StageWorld};
pub use upgrade::gap_facts;
pub use web::REFERENCES;
pub use weight::{WeightCandidate, facts as weight_facts};
pub use worked::answers_behind;

/// Every fact a rule may name.
///
/// # Errors
/// A text if two facts share a name; a test holds that none do.
pub fn vocabulary() -> Result<Arc<Vocabulary>, String> {
    let mut facts: Vec<Fact> = Vec::new();
    facts.extend(answers::person());
    facts.extend(answers::hand());
    facts.extend(card::card());
    facts.extend(check::check());
    facts.extend(settled::choices());
    facts.extend(settled::prices());
    facts.extend(settled::used());
    facts.extend(settled::measures().into_iter().map(|measure| measure.fact));
    facts.extend(bench());
    facts.extend(worked::facts(worked::WORKED));
    facts.extend(worked::facts(refit::GAPS));
    facts.extend(refit::facts());
    facts.extend(friction::facts());
    facts.extend(path::facts());
    facts.extend(upgrade::facts());
    facts.extend(weight_facts().iter().map(|f| f.fact("weight")));
    facts.extend(grip_facts().iter().map(|f| f.fact("grip")));
    facts.extend(ball_facts().iter().map(|f| f.fact("ball")));
    facts.extend(surface_facts().iter().map(|f| f.fact("surface")));
    facts.extend(layout_facts().iter().map(|f| f.fact("layout")));
    facts.extend(cause_facts().iter().map(|f| f.fact("cause")));
    facts.extend(gap_facts().iter().map(|f| f.fact("gap")));
    Ok(Arc::new(Vocabulary::new(facts)?))
}

/// A bowler's answer as the rules see it: spans made full and along the arc, and a left hand's
/// laterals turned to a right hand's, since the rules are written for a right hand.
pub fn answer(bowler: &Bowler, name: &str) -> Option<i64> {
    let value = geometry::span_answer(bowler, name).or_else(|| bowler.answer(name))?;
    let lateral = name.starts_with("card.") && name.ends_with("_lateral");
    let left = bowler.answer("bowler.hand") == Some(1);
    Some(if lateral && left { -value } else { value })
}
