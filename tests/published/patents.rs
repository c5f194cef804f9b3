//! What patents say of balls. Each speaks of one design, not of all.

use spanwright::fitting::removed;

use crate::prints_as;

/// Inner core of specific gravity 0.1063 or more for each pound of the ball: US RE34,614, abstract. The 1.70 of a 16 lb
/// ball is derived.
#[test]
fn a_core_gets_heavier_with_its_ball() -> Result<(), Box<dyn std::error::Error>> {
    prints_as(removed::least_core_gravity(16.0)?, 1.70, 2);
    assert!(removed::least_core_gravity(0.0).is_err());
    Ok(())
}
