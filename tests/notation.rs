//! Numbers read as a fitter writes them, and print so that they read back the same.
//!
//! Unit factors are exact by definition: 25.4 mm an inch, 0.45359237 kg a pound, 1.609344 km a mile.

use proptest::prelude::*;
use rstest::rstest;
use spanwright::notation::{Notation, raw_fraction, shop_fraction};

const ALL: [Notation; 21] = [
    Notation::Count,
    Notation::Counted("game", "games"),
    Notation::Points,
    Notation::Money,
    Notation::Weight,
    Notation::Ounces,
    Notation::Speed,
    Notation::Rate,
    Notation::Length,
    Notation::HoleSize,
    Notation::ForwardPitch,
    Notation::LateralPitch,
    Notation::UpDown,
    Notation::Thousandths,
    Notation::Fine,
    Notation::Angle,
    Notation::Density,
    Notation::Percent,
    Notation::Feet,
    Notation::Boards,
    Notation::Coefficient,
];

#[rstest]
#[case(Notation::Feet, "38.5 ft", 385)]
#[case(Notation::Feet, "12.192 m", 400)]
#[case(Notation::Boards, "2.5 boards", 25)]
#[case(Notation::Boards, "1 board", 10)]
#[case(Notation::Coefficient, "0.04", 40)]
#[case(Notation::Length, "4 3/8", 280)]
#[case(Notation::Length, "4-3/8 in", 280)]
#[case(Notation::Length, "4.375", 280)]
#[case(Notation::Length, "4.375\"", 280)]
#[case(Notation::Length, "  4  3/8  inches ", 280)]
#[case(Notation::Length, "111 mm", 280)]
#[case(Notation::Length, "11.1cm", 280)]
#[case(Notation::Length, "4½", 288)]
#[case(Notation::Length, "4 ¼ in", 272)]
#[case(Notation::Length, "¾", 48)]
#[case(Notation::Length, ".5", 32)]
#[case(Notation::Length, "3/8 in less", -24)]
#[case(Notation::HoleSize, "25/32", 50)]
#[case(Notation::HoleSize, "50/64", 50)]
#[case(Notation::HoleSize, "65/64", 65)]
#[case(Notation::HoleSize, "20 mm", 50)]
#[case(Notation::ForwardPitch, "3/8 F", 24)]
#[case(Notation::ForwardPitch, "3/8 in forward", 24)]
#[case(Notation::ForwardPitch, "1/8R", -8)]
#[case(Notation::ForwardPitch, "0", 0)]
#[case(Notation::LateralPitch, "1/8 R", 8)]
#[case(Notation::LateralPitch, "1/4 l", -16)]
#[case(Notation::LateralPitch, "0 L", 0)]
#[case(Notation::UpDown, "1/2 up", 32)]
#[case(Notation::UpDown, "1 1/4 Down", -80)]
#[case(Notation::Weight, "12", 1200)]
#[case(Notation::Weight, "12 lb 4 oz", 1225)]
#[case(Notation::Weight, "12 lbs", 1200)]
#[case(Notation::Weight, "12 1/2 pounds", 1250)]
#[case(Notation::Weight, "5.4 kg", 1190)]
#[case(Notation::Weight, "5443 g", 1200)]
#[case(Notation::Weight, "2 lb less", -200)]
#[case(Notation::Ounces, "2 1/2 oz", 250)]
#[case(Notation::Ounces, "70 g", 247)]
#[case(Notation::Speed, "16 mph", 160)]
#[case(Notation::Speed, "25.7 km/h", 160)]
#[case(Notation::Speed, "16.55", 166)]
#[case(Notation::Rate, "300 rpm", 300)]
#[case(Notation::Money, "$129", 12_900)]
#[case(Notation::Money, "$1,299.50", 129_950)]
#[case(Notation::Money, "$ 12,345,678", 1_234_567_800)]
#[case(Notation::Money, "129.00", 12_900)]
#[case(Notation::Money, "$6 under", -600)]
#[case(Notation::Angle, "10 deg", 100)]
#[case(Notation::Angle, "12.5°", 125)]
#[case(Notation::Percent, "40%", 40)]
#[case(Notation::Density, "1.2 g/cc", 1200)]
#[case(Notation::Density, "1.25 g/cm³", 1250)]
#[case(Notation::Density, "1.175", 1175)]
#[case(Notation::Thousandths, "2.500", 2500)]
#[case(Notation::Thousandths, "0.048 in", 48)]
#[case(Notation::Fine, "1 9/16", 12_500)]
#[case(Notation::Fine, "26.704 in", 213_632)]
#[case(Notation::Fine, "31.8 mm", 10_016)]
#[case(Notation::Count, "3", 3)]
#[case(Notation::Count, "3.0", 3)]
#[case(Notation::Counted("game", "games a week"), "12 games a week", 12)]
#[case(Notation::Points, "14", 140)]
#[case(Notation::Points, "-2.5", -25)]
#[case(Notation::Points, "\u{2212}10 points", -100)]
#[case(Notation::Points, "+3", 30)]
fn a_number_is_read(#[case] notation: Notation, #[case] text: &str, #[case] steps: i64) {
    assert_eq!(notation.read(text), Ok(steps), "{text}");
}

const LENGTH: &str = "expected a length such as `4 3/8`, `4.375 in` or `111 mm`";

#[rstest]
#[case(Notation::Length, "", "")]
#[case(Notation::Length, "long", "")]
#[case(Notation::Length, "in", "")]
#[case(Notation::Length, ".", "")]
#[case(Notation::Length, "4 3", "")]
#[case(Notation::Length, "4,5", "")]
#[case(Notation::Length, "1e3", "")]
#[case(Notation::Length, "NaN", "")]
#[case(Notation::Length, "4 lb", "; that unit is not read here")]
#[case(Notation::Length, "4 in in", "; that unit is not read here")]
#[case(
    Notation::Length,
    "4 1/3",
    "; the bottom of a fraction is 2, 4, 8, 16, 32 or 64"
)]
#[case(
    Notation::Length,
    "1/128",
    "; the bottom of a fraction is 2, 4, 8, 16, 32 or 64"
)]
#[case(
    Notation::Length,
    "3/0",
    "; the bottom of a fraction is 2, 4, 8, 16, 32 or 64"
)]
#[case(
    Notation::Length,
    "4 9/8",
    "; the fraction beside a whole number is less than one"
)]
#[case(Notation::Length, "-3/8", "; it takes no plus or minus sign")]
#[case(Notation::Length, "12345678901", "; at most nine digits are read")]
#[case(Notation::Length, "0.1234567890", "; at most nine digits are read")]
fn what_is_not_a_length_says_why(
    #[case] notation: Notation,
    #[case] text: &str,
    #[case] why: &str,
) {
    assert_eq!(notation.read(text), Err(format!("{LENGTH}{why}")), "{text}");
}

#[rstest]
#[case(Notation::ForwardPitch, "3/8", "F for forward, R for reverse")]
#[case(Notation::ForwardPitch, "-3/8", "F for forward, R for reverse")]
#[case(Notation::ForwardPitch, "3/8 L", "not read here")]
#[case(Notation::LateralPitch, "-1/8", "R for right, L for left")]
#[case(Notation::UpDown, "1/2", "up or down")]
#[case(Notation::Weight, "-12 lb", "no plus or minus sign")]
#[case(Notation::Weight, "12 lb 16 oz", "less than 16")]
#[case(Notation::Weight, "4 oz 12 lb", "expected a weight")]
#[case(Notation::Money, "$1,29", "expected an amount")]
#[case(Notation::Money, "$12.345", "parts of a cent")]
#[case(Notation::Money, "$,129", "expected an amount")]
#[case(Notation::Count, "2.5", "must be a whole number")]
#[case(Notation::Points, "-2 against", "sign")]
fn what_is_refused_says_why(#[case] notation: Notation, #[case] text: &str, #[case] why: &str) {
    let said = notation.read(text).unwrap_err();
    assert!(said.starts_with("expected "), "{said}");
    assert!(said.contains(why), "{said}");
}

#[rstest]
#[case(Notation::Length, 280, "4 3/8 in")]
#[case(Notation::Length, 0, "0 in")]
#[case(Notation::Length, -24, "3/8 in less")]
#[case(Notation::HoleSize, 50, "25/32 in")]
#[case(Notation::HoleSize, 64, "1 in")]
#[case(Notation::ForwardPitch, 24, "3/8 F")]
#[case(Notation::ForwardPitch, -8, "1/8 R")]
#[case(Notation::LateralPitch, 8, "1/8 R")]
#[case(Notation::LateralPitch, -16, "1/4 L")]
#[case(Notation::LateralPitch, 0, "0")]
#[case(Notation::UpDown, -80, "1 1/4 down")]
#[case(Notation::Weight, 1205, "12.05 lb")]
#[case(Notation::Weight, -200, "2 lb less")]
#[case(Notation::Ounces, 250, "2.5 oz")]
#[case(Notation::Money, 129_950, "$1,299.50")]
#[case(Notation::Money, 12_900, "$129")]
#[case(Notation::Money, -600, "$6 under")]
#[case(Notation::Speed, 165, "16.5 mph")]
#[case(Notation::Rate, 300, "300 rpm")]
#[case(Notation::Thousandths, 48, "0.048 in")]
#[case(Notation::Fine, 12_500, "1.5625 in")]
#[case(Notation::Fine, 216_000, "27 in")]
#[case(Notation::Fine, 1, "0.000125 in")]
#[case(Notation::Angle, 10, "1 degree")]
#[case(Notation::Percent, 40, "40%")]
#[case(Notation::Density, 1200, "1.2 g/cc")]
#[case(Notation::Density, 1175, "1.175 g/cc")]
#[case(Notation::Counted("game", "games"), 1, "1 game")]
#[case(Notation::Points, -25, "2.5 points against")]
fn a_number_is_printed(#[case] notation: Notation, #[case] steps: i64, #[case] text: &str) {
    assert_eq!(notation.write(steps), text);
}

#[test]
fn sizes_print_over_a_fixed_bottom_too() {
    assert_eq!(shop_fraction(50), "25/32");
    assert_eq!(raw_fraction(50, 64).as_deref(), Some("50/64"));
    assert_eq!(raw_fraction(50, 32).as_deref(), Some("25/32"));
    assert_eq!(raw_fraction(51, 32), None);
    assert_eq!(raw_fraction(50, 0), None);
    assert_eq!(raw_fraction(50, 3), None);
}

#[test]
fn every_name_leads_to_its_notation() {
    assert_eq!(Notation::named("hole size"), Some(Notation::HoleSize));
    assert_eq!(Notation::named("furlong"), None);
    assert!(Notation::names().all(|name| Notation::named(name).is_some()));
    assert_eq!(Notation::names().count(), ALL.len() - 1);
}

#[test]
fn the_ends_of_the_number_line_print() {
    for notation in ALL {
        assert!(!notation.write(i64::MIN).is_empty());
        assert!(!notation.write(i64::MAX).is_empty());
    }
}

proptest! {
    #[test]
    fn what_is_printed_reads_back(at in 0..ALL.len(), steps in -1_000_000_i64..1_000_000) {
        let notation = ALL[at];
        prop_assert_eq!(notation.read(&notation.write(steps)), Ok(steps));
    }

    #[test]
    fn print_has_no_bare_sign(at in 0..ALL.len(), steps in any::<i64>()) {
        let text = ALL[at].write(steps);
        prop_assert!(!text.contains(['-', '+', '\u{2212}']), "{}", text);
    }

    #[test]
    fn any_text_is_read_or_refused(at in 0..ALL.len(), text in "\\PC{0,24}") {
        let _ = ALL[at].read(&text);
    }

    #[test]
    fn any_near_number_is_read_or_refused(at in 0..ALL.len(), text in "[-+$]?[0-9]{0,12}[ .,/-]?[0-9]{0,12}(/[0-9]{1,3})?[ ]?[a-z\"°%]{0,5}") {
        if let Err(said) = ALL[at].read(&text) {
            prop_assert!(said.starts_with("expected "));
        }
    }

    #[test]
    fn a_decimal_inch_reads_as_its_fraction(steps in 0_i64..1000) {
        let text = format!("{:.6}", steps as f64 / 64.0);
        prop_assert_eq!(Notation::Length.read(&text), Ok(steps));
    }
}
