//! Speed over sixty feet, from bowling magazines.

use rstest::rstest;
use spanwright::fitting::speed;

use crate::prints_as;

/// The 2.15 s boundary of "hard": Kouros, Bowlers Journal, Feb 2009. The 19.03 mph is derived:
/// 60 ft in 2.15 s at 5280 ft a mile; arithmetic redone independently.
#[test]
fn hard_begins_at_two_and_fifteen_hundredths_seconds() -> Result<(), Box<dyn std::error::Error>> {
    prints_as(speed::mph(2.15)?, 19.03, 2);
    Ok(())
}

/// Minshew, "Recognizing and Producing the Matching Up Process", Bowling This Month; the second decimal derived.
#[rstest]
#[case(2.0, 20.45)]
#[case(2.4, 17.05)]
fn seconds_make_miles_an_hour(
    #[case] seconds: f64,
    #[case] mph: f64,
) -> Result<(), Box<dyn std::error::Error>> {
    prints_as(speed::mph(seconds)?, mph, 2);
    Ok(())
}
