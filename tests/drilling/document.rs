//! The answer document has every computed number, the same bytes each time, and never one that is no number.

use proptest::prelude::*;
use serde_json::Value;
use spanwright::advice::{Advice, Drilling};
use spanwright::report;
use spanwright::rules::Audience;

use crate::profiles::profile;
use crate::{DEMO, advise, cases, demo, drilling};

fn answer(advice: &Advice) -> Value {
    serde_json::from_str(&report::json(advice, Audience::Fitter)).unwrap()
}

fn close(value: &Value, number: f64, what: &str) {
    let told = value.as_f64().unwrap_or_else(|| panic!("{what}: {value}"));
    assert!((told - number).abs() < 6e-4, "{what}: {told} for {number}");
}

#[test]
fn every_number_is_in_the_document() {
    for name in DEMO {
        let advice = demo(name);
        let computed = drilling(&advice);
        let answer = answer(&advice);
        let doc = &answer["drilling"];
        assert_eq!(doc["left_hand"], computed.left_hand());
        close(
            &doc["circumference"],
            computed.circumference(),
            "circumference",
        );
        for (hole, doc) in computed
            .holes()
            .iter()
            .zip(doc["holes"].as_array().unwrap())
        {
            assert_eq!(doc["name"], hole.name());
            close(&doc["bore"], hole.bore(), "bore");
            assert_eq!(doc["depth"].is_null(), !hole.depth_known());
            for (axis, part) in [
                ("over", hole.place().0),
                ("up", hole.place().1),
                ("forward", hole.forward()),
                ("lateral", hole.lateral()),
            ] {
                close(&doc[axis], part, axis);
            }
            for at in 0..3 {
                close(&doc["mouth"][at], hole.mouth()[at], "mouth");
                close(&doc["axis"][at], hole.axis()[at], "axis");
            }
            assert_eq!(doc["jig"].as_array().unwrap().len(), hole.jig().len());
        }
        assert_eq!(doc["webs"].as_array().unwrap().len(), computed.webs().len());
        for (web, doc) in computed.webs().iter().zip(doc["webs"].as_array().unwrap()) {
            assert_eq!(doc["between"], web.between());
            close(&doc["least"], web.least(), "least");
            close(&doc["at_depth"], web.at_depth(), "at_depth");
        }
        if let Some(layout) = computed.layout() {
            assert_eq!(
                doc["layout"]["points"].as_array().unwrap().len(),
                layout.points().len()
            );
            assert_eq!(
                doc["layout"]["steps"].as_array().unwrap().len(),
                layout.steps().len()
            );
        }
        if let Some(balance) = computed.balance() {
            let doc = &doc["balance"];
            assert_eq!(doc["unit"], balance.unit());
            for (key, number) in [
                ("ounces_out", balance.out()),
                ("ounces_back", balance.back()),
                ("pounds", balance.pounds()),
                ("offset", balance.offset()),
                ("top", balance.top()),
                ("side", balance.side()),
                ("finger", balance.finger()),
            ] {
                close(&doc[key], number, key);
            }
        }
        if let Some(core) = computed.core() {
            for (key, turning) in [("before", core.before()), ("after", core.after())] {
                close(&doc["core"][key]["rg"], turning.0, key);
                close(&doc["core"][key]["differential"], turning.1, key);
                close(&doc["core"][key]["intermediate"], turning.2, key);
            }
        }
        assert_eq!(
            doc["findings"].as_array().unwrap().len(),
            computed.findings().len()
        );
    }
}

#[test]
fn the_same_bytes_each_time() {
    for name in DEMO {
        let text = || report::json(&demo(name), Audience::Fitter);
        assert_eq!(text(), text(), "{name}");
    }
}

/// Every number of it; one that is no number would be written as null.
fn numbers(computed: &Drilling) -> Vec<f64> {
    let mut numbers = vec![computed.circumference()];
    for hole in computed.holes() {
        numbers.extend([hole.bore(), hole.depth(), hole.forward(), hole.lateral()]);
        numbers.extend([hole.place().0, hole.place().1]);
        numbers.extend(hole.mouth().into_iter().chain(hole.axis()));
        numbers.extend(hole.outside().into_iter().chain(hole.parallel_lateral()));
        numbers.extend(hole.oval().into_iter().flat_map(|(a, b, c)| [a, b, c]));
    }
    for web in computed.webs() {
        numbers.extend([web.least(), web.at_depth()]);
        numbers.extend(web.breaks_at());
    }
    if let Some(layout) = computed.layout() {
        numbers.extend(layout.points().iter().flat_map(|(_, at)| [at.0, at.1]));
        let lines = layout.steps().iter().flat_map(|step| step.line());
        numbers.extend(lines.flat_map(|at| [at.0, at.1]));
    }
    if let Some(b) = computed.balance() {
        numbers.extend([
            b.out(),
            b.back(),
            b.pounds(),
            b.offset(),
            b.top(),
            b.side(),
            b.finger(),
        ]);
        numbers.extend(b.margin());
    }
    if let Some(core) = computed.core() {
        let of = |(a, b, c)| [a, b, c];
        numbers.extend(of(core.before()).into_iter().chain(of(core.after())));
        numbers.extend(core.moved());
    }
    numbers
}

proptest! {
    #![proptest_config(cases(96))]

    #[test]
    fn numbers_are_numbers(profile in profile()) {
        let advice = advise(&profile.0);
        let text = report::json(&advice, Audience::Fitter);
        prop_assert!(!text.contains("NaN") && !text.contains("inf,"), "{text}");
        if let Some(computed) = advice.drilling() {
            let numbers = numbers(computed);
            prop_assert!(numbers.iter().all(|number| number.is_finite()), "{computed:?}");
            // Nothing refused is drilled.
            prop_assert!(!(computed.is_refused() && advice.drill_today()));
            for web in computed.webs() {
                // The wall is gone above the bottom exactly where the holes meet above it.
                prop_assert!(web.breaks_at().is_some() || web.least() >= 0.0, "{web:?}");
            }
            let new: Vec<f64> = computed.webs().iter().map(|web| web.least()).collect();
            prop_assert!(new.is_sorted(), "{new:?}");
        }
    }
}
