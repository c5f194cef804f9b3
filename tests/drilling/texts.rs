//! What people read of the drilled ball: everything once for the fitter, refusals, weights and broken limits for the others.

use rstest::rstest;
use serde_json::json;
use spanwright::advice::Advice;
use spanwright::report::{self, Look};
use spanwright::rules::Audience;

use crate::{DEMO, advise, demo, with, with_card};

fn read(advice: &Advice, audience: Audience) -> String {
    report::text(advice, &Look::plain(audience))
}

fn thin() -> Advice {
    let upright = json!({ "forward": "0", "lateral": "0" });
    let profile = with(&with_card(), "/fit_card/pitches/middle", upright.clone());
    advise(&with(&profile, "/fit_card/pitches/ring", upright))
}

#[test]
fn each_question_is_asked_once() {
    for name in DEMO {
        let text = report::text(&demo(name), &Look::plain(Audience::Fitter).wide(2000));
        let asked: Vec<&str> = text
            .lines()
            .filter_map(|line| line.trim_start().strip_prefix("Ask: "))
            .filter_map(|line| line.split_once(". ").map(|(_, question)| question))
            .collect();
        assert!(!asked.is_empty(), "{name}");
        let mut once = asked.clone();
        once.sort_unstable();
        once.dedup();
        assert_eq!(once.len(), asked.len(), "{name}: {asked:?}");
    }
}

#[rstest]
#[case(Audience::Newcomer)]
#[case(Audience::League)]
fn only_the_fitter_reads_the_bench(#[case] audience: Audience) {
    for name in DEMO {
        let text = read(&demo(name), audience);
        for bench in [
            "Sliding table",
            "Layout: ",
            "How the core turns",
            "Kept: ",
            "scale reads",
        ] {
            assert!(!text.contains(bench), "{name}: {bench}");
        }
    }
    let text = read(&demo("first-ball"), audience);
    assert!(text.contains("Weights to expect after drilling"), "{text}");
    let text = read(&thin(), audience);
    assert!(
        text.contains("Not to be drilled as it stands") && text.contains("is the least"),
        "{text}"
    );
    assert!(!text.contains("Any one of these mends it"), "{text}");
}

#[test]
fn the_fitter_reads_every_mend() {
    let advice = thin();
    let text = report::text(&advice, &Look::plain(Audience::Fitter).wide(400));
    for mend in advice.drilling().unwrap().refusals()[0].mends() {
        assert!(text.contains(mend.as_str()), "{mend}");
    }
}

/// A label never runs into what it labels.
#[test]
fn labels_stand_apart() {
    for name in DEMO {
        let advice = demo(name);
        let text = report::text(&advice, &Look::plain(Audience::Fitter).wide(400));
        let computed = advice.drilling().unwrap();
        let stated = computed.layout().iter().flat_map(|layout| layout.stated());
        for (label, numbers) in stated {
            let apart = |line: &str| {
                let rest = line.trim_start().strip_prefix(label.as_str());
                rest.is_some_and(|rest| {
                    rest.starts_with([' ', ':']) && rest.ends_with(numbers.as_str())
                })
            };
            assert!(text.lines().any(apart), "{name}: {label}: {numbers}");
        }
    }
}

/// A depth that nobody measured is no number.
#[test]
fn an_unknown_depth_is_said() {
    let text = report::text(
        &demo("sore-thumb"),
        &Look::plain(Audience::Fitter).wide(400),
    );
    let thumb = text
        .lines()
        .find(|line| line.starts_with("  thumb  "))
        .unwrap();
    assert!(
        thumb.contains("its depth still to be measured") && !thumb.contains(" deep"),
        "{thumb}"
    );
}

/// A ball that isn't drilled has no weights to expect.
#[rstest]
#[case(Audience::Newcomer)]
#[case(Audience::League)]
fn a_refused_ball_has_no_weights_to_expect(#[case] audience: Audience) {
    let refused = read(&thin(), audience);
    assert!(refused.contains("Not to be drilled"), "{refused}");
    assert!(!refused.contains("Weights to expect"), "{refused}");
    let drillable = read(&advise(&with_card()), audience);
    assert!(drillable.contains("Weights to expect"), "{drillable}");
}
