//! A drilled ball drilled anew: walls to the plugs of the old holes, and what to read off the ball where the card is silent.

use serde_json::{Value, json};
use spanwright::advice::{Advice, PlannedWeb};

use crate::{SHOP, bowler, drilling, with_card};

fn anew(new_grip: Value) -> Value {
    let mut profile = with_card();
    profile["used_ball"] =
        json!({ "ball": "the blue ball", "holes": "open", "new_grip": new_grip });
    profile
}

fn fit(profile: &Value) -> Advice {
    SHOP.fit_used(&bowler(profile)).unwrap()
}

fn plugs(advice: &Advice) -> Vec<PlannedWeb> {
    let webs = drilling(advice).webs().iter();
    webs.filter(|web| web.between().contains("plug"))
        .cloned()
        .collect()
}

/// The card's fit works, so the new holes are the old ones: in the same place they lie in each other.
#[test]
fn the_same_place_runs_into_the_plugs() {
    let advice = fit(&anew(json!({ "over": "0", "up": "0" })));
    let walls = plugs(&advice);
    assert_eq!(walls.len(), 9);
    for digit in ["thumb", "middle", "ring"] {
        let own = format!("{digit} and the plug of the old {digit} hole");
        let wall = walls.iter().find(|web| web.between() == own).unwrap();
        assert!(wall.least() < 0.0, "{wall:?}");
    }
    let open = drilling(&advice).open().join(" ");
    assert!(
        open.contains("harden overnight")
            && open.contains("middle and the plug of the old middle hole"),
        "{open}"
    );
    // A plug is filled: it is no reason to refuse.
    assert!(!drilling(&advice).is_refused());
}

/// Derived: a third of the way around the ball no hole reaches the others' half, since all are under 2 1/2 in deep.
#[test]
fn far_away_there_is_wall_everywhere() {
    let advice = fit(&anew(json!({ "over": "9 R", "up": "0" })));
    let walls = plugs(&advice);
    assert_eq!(walls.len(), 9);
    assert!(walls.iter().all(|web| web.least() > 0.0), "{walls:?}");
    assert!(
        drilling(&advice)
            .open()
            .iter()
            .all(|open| !open.contains("run into"))
    );
    // The thinnest of the new walls first, then those to plugs.
    let names: Vec<bool> = drilling(&advice)
        .webs()
        .iter()
        .map(|web| web.between().contains("plug"))
        .collect();
    assert!(names.is_sorted(), "{names:?}");
    assert_eq!(names.len(), 12);
}

#[test]
fn what_the_card_does_not_tell_is_asked() {
    let mut profile = anew(json!({ "over": "0", "up": "0" }));
    profile["fit_card"]
        .as_object_mut()
        .unwrap()
        .remove("depths");
    for (profile, asked) in [
        (profile, "depth"),
        (without_place(), "where the new grip goes"),
    ] {
        let advice = fit(&profile);
        assert!(plugs(&advice).is_empty());
        let open = drilling(&advice).open().join(" ");
        assert!(
            open.contains("Read off the old ball") && open.contains(asked),
            "{open}"
        );
    }
}

fn without_place() -> Value {
    let mut profile = with_card();
    profile["used_ball"] = json!({ "holes": "plugged" });
    profile
}

/// Nothing comes off the shelf, but the holes are held against the rule book all the same.
#[test]
fn the_holes_are_judged_without_a_ball() {
    let advice = fit(&anew(json!({ "over": "9 R", "up": "0" })));
    let computed = drilling(&advice);
    assert!(computed.balance().is_none() && computed.layout().is_none());
    let depths = computed
        .findings()
        .iter()
        .filter(|finding| finding.id() == "gripping-hole-depth");
    assert_eq!(depths.count(), 3);
}

/// The card with what the scales said of the drilled ball.
fn weighed() -> Value {
    let mut profile = anew(json!({ "over": "0", "up": "0", "turned": "180 deg" }));
    profile["fit_card"]["statics"] =
        json!({ "top": "1 1/2 oz", "right": "1/2 oz", "finger": "3/4 oz" });
    profile
}

/// Derived: about the same centre, turned by half a turn, what the plugs give back on top the same new holes take again, all
/// densities being alike; so weight and top weight stay as the card has them.
#[test]
fn half_a_turn_about_the_same_centre_keeps_weight_and_top() {
    let advice = fit(&weighed());
    let balance = drilling(&advice).balance().clone().unwrap();
    assert!((balance.pounds() - 14.0).abs() < 1e-9, "{balance:?}");
    assert!((balance.top() - 1.5).abs() < 1e-9, "{balance:?}");
    assert!((balance.out() - balance.back()).abs() < 1e-9, "{balance:?}");
    // Seen from the turned grip right is left; these holes lie alike on both sides of the centreline.
    assert!((balance.side() + 0.5).abs() < 1e-9, "{balance:?}");
}

/// Mirrored, the same ball has the same weights, and the side is turned in words only.
#[test]
fn a_left_hands_old_ball_is_the_mirror_image() {
    let mut left = weighed();
    left["hand"] = json!("left");
    let statics = json!({ "top": "1 1/2 oz", "left": "1/2 oz", "finger": "3/4 oz" });
    left["fit_card"]["statics"] = statics;
    for (digit, lateral) in [("middle", "3/8 R"), ("ring", "3/8 L")] {
        left["fit_card"]["pitches"][digit]["lateral"] = json!(lateral);
    }
    let (right, left) = (fit(&weighed()), fit(&left));
    let numbers = |advice: &Advice| {
        let balance = drilling(advice).balance().clone().unwrap();
        [
            balance.pounds(),
            balance.top(),
            balance.side(),
            balance.finger(),
        ]
    };
    for (one, other) in numbers(&right).into_iter().zip(numbers(&left)) {
        assert!((one - other).abs() < 1e-9);
    }
}

#[test]
fn without_the_cards_readings_no_weights_are_told() {
    let advice = fit(&anew(json!({ "over": "3 R", "up": "0" })));
    assert!(drilling(&advice).balance().is_none());
    let open = drilling(&advice).open().join(" ");
    assert!(open.contains("Weigh the old ball"), "{open}");
}

#[test]
fn plugs_that_are_in_are_not_waited_for() {
    let mut profile = anew(json!({ "over": "0", "up": "0" }));
    profile["used_ball"]["holes"] = json!("plugged");
    let open = drilling(&fit(&profile)).open().join(" ");
    assert!(open.contains("See that the plugs have hardened"), "{open}");
    assert!(!open.contains("overnight"), "{open}");
}

/// Derived: three readings of 16 oz square to each other come to 16 times the root of 3, almost 28 oz, along their middle.
#[test]
fn readings_that_no_scale_shows_together_are_asked_again() {
    let mut profile = anew(json!({ "over": "3 R", "up": "0" }));
    profile["fit_card"]["statics"] =
        json!({ "bottom": "16 oz", "left": "16 oz", "thumb": "16 oz" });
    let advice = fit(&profile);
    let open = drilling(&advice).open().join(" ");
    assert!(open.contains("more than any scale shows"), "{open}");
    // Sides are named, never signed.
    assert!(!open.contains("-"), "{open}");
    assert!(drilling(&advice).balance().is_none());
}
