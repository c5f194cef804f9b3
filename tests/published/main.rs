//! Numbers from outside the project: printed in a magazine, or worked out by hand from stated premises.
//!
//! One file a family of sources. Each test says where its numbers come from. "Derived" means that nobody printed the
//! number: it follows from the premises named there, and the arithmetic was redone independently of this crate.

mod columnists;
mod derived_balance;
mod derived_holes;
mod derived_layout;
mod derived_solids;
mod derived_sphere;
mod derived_web;
mod drilling_lectures;
mod newspapers;
mod patents;
mod standards_cases;
mod webs;

/// Checks a number to the last digit printed: `decimals` places after the point.
#[track_caller]
fn prints_as(found: f64, printed: f64, decimals: i32) {
    let half_a_digit = 0.5 * 10_f64.powi(-decimals) + 1e-9;
    assert!(
        (found - printed).abs() <= half_a_digit,
        "found {found}, printed {printed}"
    );
}
