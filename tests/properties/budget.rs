//! More money never takes a ball away.

use std::collections::BTreeSet;

use proptest::prelude::*;
use serde_json::json;
use spanwright::advice::Advice;

use crate::profiles::profile;
use crate::{advise, cases};

fn picks(advice: &Advice) -> BTreeSet<String> {
    advice
        .picks()
        .iter()
        .map(|pick| pick.ball().to_owned())
        .collect()
}

fn ruled_out(advice: &Advice) -> BTreeSet<String> {
    advice
        .ruled_out()
        .iter()
        .map(|out| out.ball().to_owned())
        .collect()
}

proptest! {
    #![proptest_config(cases(64))]

    #[test]
    fn a_bigger_budget_never_removes_a_ball(profile in profile(), budget in 50..300_u32, more in 1..150_u32) {
        let less = advise(&profile.with("budget", json!(format!("${budget}"))));
        let more = advise(&profile.with("budget", json!(format!("${}", budget + more))));
        let open = advise(&profile.without(&["budget"]));
        prop_assert!(picks(&less).is_subset(&picks(&more)));
        prop_assert!(picks(&more).is_subset(&picks(&open)));
        prop_assert!(ruled_out(&more).is_subset(&ruled_out(&less)));
        prop_assert!(ruled_out(&open).is_subset(&ruled_out(&more)));
    }

    /// Each ball of the shelf is either in or out, with a rule that says so.
    #[test]
    fn every_ball_has_a_fate(profile in profile()) {
        let advice = advise(&profile);
        let (inside, out) = (picks(&advice), ruled_out(&advice));
        prop_assert!(inside.is_disjoint(&out));
        prop_assert_eq!(inside.len() + out.len(), crate::SHOP.catalog().stock().len());
        prop_assert!(advice.ruled_out().iter().all(|out| !out.lines().is_empty()));
    }
}
