//! No hand, no numbers.

use proptest::prelude::*;
use serde_json::json;

use crate::profiles::profile;
use crate::{advise, cases};

proptest! {
    #![proptest_config(cases(64))]

    #[test]
    fn nothing_measured_gives_no_numbers(profile in profile()) {
        let advice = advise(&profile.without(&["measured", "fit_card", "used_ball"]));
        for number in advice.spec().numbers() {
            prop_assert_eq!(number.value(), None, "{} is {}", number.name(), number.shop());
            prop_assert!(number.blank().is_some_and(|text| text.contains("easure the hand")));
        }
        prop_assert!(!advice.drill_today());
    }

    /// Part of a hand is no hand: without every hole size and span of the settled grip nothing is drilled today.
    #[test]
    fn nothing_is_drilled_from_part_of_a_hand(profile in profile()) {
        let advice = advise(&profile);
        let sizes = || advice.spec().numbers().iter().filter(|n| n.name().ends_with("bore") || n.name().ends_with("span"));
        let blank: Vec<&str> = sizes().filter(|n| n.value().is_none()).map(|n| n.name()).collect();
        prop_assert!(!advice.drill_today() || blank.is_empty(), "drilled today, yet blank: {blank:?}");
    }

    #[test]
    fn nothing_is_drilled_for_somebody_else(profile in profile(), key in prop_oneof![Just("absent"), Just("present")]) {
        let advice = advise(&profile.with(key, json!(true)));
        prop_assert!(!advice.drill_today());
        prop_assert!(advice.spec().numbers().iter().all(|number| number.value().is_none()));
    }

    /// A thumb that stays out has no hole, and no span is measured from it.
    #[test]
    fn no_thumb_hole_for_a_thumb_that_stays_out(profile in profile()) {
        let mut profile = profile.with("thumb", json!("out"));
        if let Some(hand) = profile.0.get_mut("measured").and_then(|hand| hand.as_object_mut()) {
            hand.remove("thumb");
        }
        let advice = advise(&profile);
        let names = advice.spec().numbers().iter().map(|number| number.name());
        let thumb: Vec<&str> = names.filter(|name| name.starts_with("thumb.") || name.ends_with("span")).collect();
        prop_assert!(thumb.is_empty(), "{thumb:?}");
    }
}
