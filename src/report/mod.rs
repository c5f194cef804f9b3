//! An [`Advice`] as people and programs read it.
//!
//! [`text`] writes for the counter: serious cautions, the customer's part on about a screen, then the drill spec for
//! the fitter. [`json`] writes the answer document for programs; both say the same. [`sheet`] draws the page that lies
//! beside the machine.

mod against;
mod calibrated;
mod contrast;
mod coverage;
mod customer;
mod drilling;
mod fitter;
mod json;
mod legal;
mod look;
mod offers;
mod page;
mod paper;
mod points;
mod question;
mod refit;
mod roll;
mod roll_drawing;
mod rule_checks;
mod rules_diff;
pub mod sheet;
mod sure;
mod upgrade;
mod whatif;
mod why_not;
mod words;

#[cfg(test)]
#[path = "../../tests/sheet/drawn.rs"]
#[allow(clippy::unwrap_used)] // a helper of a test fails the test
mod drawn;
#[cfg(test)]
mod tests;

pub(crate) use json::{Head, written};

pub use calibrated::{calibrated_json, calibrated_text};
pub use contrast::contrast_text;
pub use coverage::{coverage_json, coverage_text};
pub use json::{
    CONTRACT, contrast_json, json, offers_json, refit_json, roll_json, upgrade_json, what_if_json,
    why_not_json,
};
pub use legal::{Legal, legal_json, legal_text};
pub use look::{Look, Term};
pub use offers::offers_text;
pub use question::{help_text, next_json, question_text};
pub use roll::roll_text;
pub use roll_drawing::roll_drawing;
pub use rule_checks::{rule_checks_json, rule_checks_text};
pub use rules_diff::{rules_diff_json, rules_diff_text};
pub use whatif::what_if_text;
pub use why_not::why_not_text;

use crate::advice::{Advice, Refit, Upgrade};
use crate::rules::Audience;

/// Writes the advice as plain text, ending in a line break; no line is wider than the look allows unless one word is.
///
/// Parts with nothing to say are left out with their headings. For [`Audience::Fitter`] every number comes with its
/// ledger, and the ledger of the pick, the order of work and the checks at hand-over follow.
#[must_use]
pub fn text(advice: &Advice, look: &Look) -> String {
    let mut page = page::Page::new(look);
    customer::write(&mut page, advice);
    if let Some(offers) = advice.offers() {
        offers::write(&mut page, offers);
    }
    fitter::spec(&mut page, advice);
    if let Some(computed) = advice.drilling() {
        drilling::write(&mut page, computed);
    }
    if look.audience() == Audience::Fitter {
        fitter::background(&mut page, advice);
    }
    page.finish()
}

/// Writes a refit as plain text, ending in a line break: what comes first, what to do, likely causes, the small change, the card.
#[must_use]
pub fn refit_text(refit: &Refit, look: &Look) -> String {
    let mut page = page::Page::new(look);
    refit::write(&mut page, refit);
    page.finish()
}

/// Writes an upgrade path as plain text, ending in a line break: what comes first, the balls owned, what to do before buying, then the
/// next ball with what to wait for, or "nothing yet".
#[must_use]
pub fn upgrade_text(upgrade: &Upgrade, look: &Look) -> String {
    let mut page = page::Page::new(look);
    upgrade::write(&mut page, upgrade);
    page.finish()
}
