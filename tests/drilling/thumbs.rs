//! Without a thumb hole, its depth or the palm mark nothing is made up: what can't be told is open, with what to measure.

use serde_json::{Value, json};

use crate::{advise, drilling, measured};

fn without_thumb() -> Value {
    let mut profile = measured();
    profile["thumb"] = json!("out");
    profile["delivery"] = json!("two hands");
    let hand = profile["measured"].as_object_mut().unwrap();
    hand.remove("thumb");
    hand.remove("spans");
    profile
}

#[test]
fn no_thumb_and_no_palm_mark_leave_layout_and_weights_open() {
    let advice = advise(&without_thumb());
    let computed = drilling(&advice);
    let names: Vec<&str> = computed.holes().iter().map(|hole| hole.name()).collect();
    assert_eq!(names, ["middle", "ring"]);
    assert_eq!(computed.webs().len(), 1);
    assert!(
        computed.layout().is_none() && computed.balance().is_none() && computed.core().is_none()
    );
    assert!(
        computed
            .findings()
            .iter()
            .all(|finding| !finding.id().starts_with("static"))
    );
    let open = computed.open().join(" ");
    assert!(
        open.starts_with("Measure") && open.contains("palm"),
        "{open}"
    );
}

#[test]
fn no_thumb_with_a_palm_mark_has_everything() {
    let mut profile = without_thumb();
    profile["measured"]["palm_mark"] = json!("2 1/4");
    let advice = advise(&profile);
    let computed = drilling(&advice);
    assert!(
        computed.layout().is_some() && computed.balance().is_some() && computed.core().is_some()
    );
    assert!(computed.open().is_empty(), "{:?}", computed.open());
    // The walls are those without the mark.
    let bare = advise(&without_thumb());
    let (one, other) = (&computed.webs()[0], &drilling(&bare).webs()[0]);
    assert!((one.least() - other.least()).abs() < 1e-9);
}

#[test]
fn a_thumb_of_unknown_depth_leaves_its_walls_and_all_weights_open() {
    let mut profile = measured();
    profile["measured"]["thumb"]
        .as_object_mut()
        .unwrap()
        .remove("length");
    let advice = advise(&profile);
    let computed = drilling(&advice);
    let between: Vec<&str> = computed.webs().iter().map(|web| web.between()).collect();
    assert_eq!(between, ["middle and ring"]);
    assert!(computed.balance().is_none() && computed.core().is_none());
    assert!(
        computed.open()[0].starts_with("Measure the length of the thumb"),
        "{:?}",
        computed.open()
    );
    for hole in computed.holes() {
        let is_thumb = hole.name() == "thumb";
        assert_eq!(hole.depth_known(), !is_thumb);
        assert_eq!(
            hole.jig()
                .iter()
                .any(|line| line.contains("Stop the drill")),
            !is_thumb
        );
    }
    let weighed = |finding: &&spanwright::standards::Finding| {
        finding.id().starts_with("static")
            && finding.verdict() != spanwright::standards::Verdict::Ask
    };
    assert!(!computed.findings().iter().any(|finding| weighed(&finding)));
    // Measured, everything is there.
    let advice = advise(&measured());
    let computed = drilling(&advice);
    assert!(
        computed.balance().is_some() && computed.core().is_some() && computed.webs().len() == 3
    );
    let sorted = computed
        .webs()
        .windows(2)
        .all(|pair| pair[0].least() <= pair[1].least());
    assert!(sorted, "{:?}", computed.webs());
}
