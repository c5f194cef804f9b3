//! A shop's own scale arm, density and least wall change the prediction as the mathematics says.

use std::path::Path;

use spanwright::advice::{Advice, Predicted, Shop};
use spanwright::bowler::Bowler;
use spanwright::catalog::Catalog;
use spanwright::document::{Document, Format};
use spanwright::report::{Look, text};
use spanwright::rules::Audience;
use spanwright::standards::{Body, Verdict};

use crate::{SHOP, drilling};

/// The demo shop with one bench setting of its own.
pub fn shop(setting: &str, rule: &str, value: &str) -> Shop {
    let overlay = format!(
        "subject: {setting}\nrules:\n  - {{ id: {rule}, override: true, start: {value}, because: Ours., source: own choice }}\n"
    );
    let document = Document::parse("ours.yaml", overlay.as_bytes(), Format::Yaml).unwrap();
    let rules = SHOP
        .rules()
        .overlay(&[document])
        .unwrap_or_else(|faults| panic!("{faults}"));
    Shop::of(rules, Catalog::demo().unwrap())
}

/// Rolls it straight: a ball over its label has its heavy spot in the grip centre, whatever the weights are.
pub fn straight(shop: &Shop) -> Advice {
    let file =
        Path::new(env!("CARGO_MANIFEST_DIR")).join("catalog-demo/bowlers/straight-only.yaml");
    let bowler = Bowler::read(&Document::read(&file).unwrap()).unwrap();
    shop.fit(&bowler, "harebell@14").unwrap()
}

fn balance(advice: &Advice) -> &Predicted {
    drilling(advice).balance().as_ref().unwrap()
}

/// What drilling does to the three weights; the undrilled ball has all of its top weight over the grip centre.
fn done(advice: &Advice) -> [f64; 3] {
    // catalog-demo/shelf.csv: the only Harebell of 14 lb has 3 1/2 oz.
    let balance = balance(advice);
    assert!(
        balance.unit().contains("top weight 3.5 oz"),
        "{}",
        balance.unit()
    );
    [balance.top() - 3.5, balance.side(), balance.finger()]
}

/// Derived: a scale reads moment over arm.
#[test]
fn half_the_arm_doubles_what_drilling_does() {
    let usual = straight(&SHOP);
    // The built-in arm is 3 in (rules/bench.scale_arm.yaml, own choice).
    let half = straight(&shop("bench.scale_arm", "scale-arm-three-inches", "1.5 in"));
    for (one, two) in done(&usual).into_iter().zip(done(&half)) {
        assert!(one != 0.0 && (2.0 * one - two).abs() < 1e-9, "{one} {two}");
    }
    assert!((balance(&usual).pounds() - balance(&half).pounds()).abs() < 1e-12);
}

/// Derived: weight is volume times density.
#[test]
fn twice_the_density_takes_twice_the_weight() {
    let usual = straight(&SHOP);
    let dense = straight(&shop(
        "bench.density_out",
        "drilled-out-like-a-cover",
        "2.4 g/cc",
    ));
    let (one, two) = (balance(&usual), balance(&dense));
    assert!((2.0 * one.out() - two.out()).abs() < 1e-9);
    assert!((one.pounds() - two.pounds() - one.out() / 16.0).abs() < 1e-9);
    assert_eq!(one.back(), two.back());
    for (one, two) in done(&usual).into_iter().zip(done(&dense)) {
        assert!((2.0 * one - two).abs() < 1e-9, "{one} {two}");
    }
}

#[test]
fn a_wider_least_wall_refuses_more() {
    let usual = straight(&SHOP);
    let wall = drilling(&usual).webs()[0].least();
    assert!(
        !drilling(&usual).is_refused() && wall > 0.125 && wall < 0.25,
        "{wall}"
    );
    let strict = straight(&shop("bench.least_web", "an-eighth-of-web", "1/4"));
    let refused = drilling(&strict);
    assert!(refused.is_refused() && !strict.drill_today());
    assert!(
        refused
            .webs()
            .iter()
            .all(|web| (web.limit() - 0.25).abs() < 1e-12)
    );
    assert!(
        refused.refusals()[0].what().contains("1/4 in is the least"),
        "{:?}",
        refused.refusals()
    );
    assert!((refused.webs()[0].least() - wall).abs() < 1e-12);
}

#[test]
fn the_prediction_names_what_it_rests_on() {
    let settings = balance(&straight(&shop(
        "bench.scale_arm",
        "scale-arm-three-inches",
        "2.5 in",
    )))
    .settings()
    .to_vec();
    let arm = settings
        .iter()
        .find(|(name, _)| name.contains("arm"))
        .unwrap();
    assert!(
        arm.1.starts_with("2.500 in.") && arm.1.contains("own choice"),
        "{arm:?}"
    );
    assert_eq!(
        settings
            .iter()
            .filter(|(name, _)| name.contains("density"))
            .count(),
        2
    );
    // The other way of counting is told beside them; walls are no part of a weight.
    let counted = settings.iter().find(|(name, _)| name.contains("counted"));
    assert!(counted.unwrap().1.contains("By the weight of each half"));
    assert_eq!(settings.len(), 4);
}

/// A setting that two rules state, or none, is no setting: nothing is drilled by it, and it is named.
#[test]
fn a_setting_that_is_not_settled_holds_the_drill() {
    for setting in ["bench.least_web", "bench.density_out", "bench.scale_arm"] {
        let value = SHOP.rules().starts(setting)[0];
        let notation = SHOP.rules().subject(setting).unwrap().notation().unwrap();
        let overlay = format!(
            "subject: {setting}\nrules:\n  - {{ id: one-more, start: {}, because: Ours., source: own choice }}\n",
            notation.write(value)
        );
        let document = Document::parse("ours.yaml", overlay.as_bytes(), Format::Yaml).unwrap();
        let rules = SHOP.rules().overlay(&[document]).unwrap();
        let advice = straight(&Shop::of(rules, Catalog::demo().unwrap()));
        let computed = drilling(&advice);
        let named = |refusal: &spanwright::advice::Refusal| refusal.what().contains(setting);
        assert!(computed.refusals().iter().any(named), "{setting}");
        assert!(computed.balance().is_none() && !advice.drill_today());
    }
}

/// The widest gripping hole was read in USBC's manual only (01/2021, drilling section, in a French translation): under
/// another body it is a question.
#[test]
fn another_body_is_asked_where_only_one_is_in_print() {
    let verdict = |shop: &Shop| {
        let advice = straight(shop);
        let findings = drilling(&advice).findings().iter();
        let of_widths = findings.filter(|finding| finding.id() == "gripping-hole-diameter");
        of_widths
            .map(|finding| finding.verdict())
            .collect::<Vec<_>>()
    };
    let other = Shop::demo().unwrap().judged_by(Body::Ibf);
    assert!(
        verdict(&SHOP)
            .iter()
            .all(|verdict| *verdict == Verdict::Pass)
    );
    assert!(
        verdict(&other)
            .iter()
            .all(|verdict| *verdict == Verdict::Ask)
    );
    assert!(!verdict(&SHOP).is_empty() && !verdict(&other).is_empty());
    // Whose rule book it is stands above what it says.
    let advice = straight(&other);
    assert_eq!(drilling(&advice).body(), Body::Ibf);
    let said = text(&advice, &Look::plain(Audience::Fitter));
    assert!(said.contains("What the rule book of IBF says"), "{said}");
}

/// A scale that reads a weight in full at one inch shows three times what the built-in arm does: more than the printed
/// limit, so the ball isn't drilled as it stands.
#[test]
fn a_predicted_weight_over_a_printed_limit_holds_the_drill() {
    let advice = straight(&shop("bench.scale_arm", "scale-arm-three-inches", "1 in"));
    let computed = drilling(&advice);
    let failed = |finding: &&spanwright::standards::Finding| {
        finding.id().starts_with("static-") && finding.verdict() == Verdict::Fail
    };
    let broken: Vec<_> = computed.findings().iter().filter(failed).collect();
    assert!(!broken.is_empty());
    for finding in broken {
        let told = |refusal: &spanwright::advice::Refusal| refusal.what().contains(finding.says());
        assert!(computed.refusals().iter().any(told));
    }
    assert!(!advice.drill_today());
}
