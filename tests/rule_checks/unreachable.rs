//! Balls that are first for nobody, and balls that are first for hardly anybody.

use std::fs;
use std::path::Path;

use spanwright::advice::{Shop, ShopFiles};
use spanwright::bowler::Bowler;
use spanwright::document::{Document, Format};
use spanwright::search::{Example, Finding, FindingKind};

/// The demo shop with rules of its own, and with another line for a model.
fn shop(rules: &str, model: Option<(&str, &str)>) -> Shop {
    let folder = tempfile::tempdir().unwrap();
    let own = folder.path().join("own.yaml");
    fs::write(&own, rules).unwrap();
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("catalog-demo");
    for file in fs::read_dir(demo).unwrap() {
        let path = file.unwrap().path();
        if !path.is_file() {
            continue;
        }
        let mut text = fs::read_to_string(&path).unwrap();
        if let Some((before, after)) = model
            && path.ends_with("models.csv")
        {
            assert!(text.contains(before));
            text = text.replace(before, after);
        }
        fs::write(folder.path().join(path.file_name().unwrap()), text).unwrap();
    }
    let files = ShopFiles {
        rules: if rules.is_empty() {
            Vec::new()
        } else {
            vec![own]
        },
        catalog: Some(folder.path().to_owned()),
        ..ShopFiles::default()
    };
    Shop::open(&files).unwrap_or_else(|trouble| panic!("{trouble}"))
}

/// Name of the ball that is first for nobody, and who is ahead of it.
fn beaten(shop: &Shop) -> Vec<(String, Vec<String>)> {
    let checks = shop.check_rules().unwrap();
    let unreachable = |finding: &Finding| match finding {
        Finding::Unreachable {
            name, beaten_by, ..
        } => Some((name.clone(), beaten_by.clone())),
        _ => None,
    };
    checks
        .findings()
        .findings
        .iter()
        .filter_map(unreachable)
        .collect()
}

#[test]
fn a_dearer_ball_of_no_colour_of_its_own_is_first_for_nobody() {
    // Daisy is white, Cowslip yellow; both cost less, have the same cover and core, and are there in all weights.
    let shop = shop("", Some(("$94.95,white orange", "$94.95,white yellow")));
    let all = beaten(&shop);
    let names: Vec<&str> = all.iter().map(|(name, _)| name.as_str()).collect();
    let pounds = [6, 7, 8, 10, 11, 12, 16];
    assert_eq!(names, pounds.map(|pounds| format!("oxeye@{pounds}")));
    for ((_, ahead), pounds) in all.iter().zip(pounds) {
        assert!(ahead.contains(&format!("daisy@{pounds}")), "{ahead:?}");
    }
}

#[test]
fn a_cover_that_a_rule_speaks_against_is_first_for_nobody() {
    // No other rules together give as many points as this one takes, and each pearl has plain plastic of its weight beside it
    // that costs less. Without the rules of the upgrade path that rule out other balls.
    let own = "switch_off: [spares-take-plastic, spares-in-the-same-weight, plastic-fills-no-hook-gap, no-sooner-than-yours, the-same-on-the-lane, no-later-than-yours]\nrules:\n  - { id: no-pearl, subject: ball, when: { ball.cover: pearl }, points: -200, because: It is so., source: own choice }\n";
    let shop = shop(own, None);
    let pearls = [
        "cats-ear",
        "eyebright",
        "cuckooflower",
        "crosswort",
        "meadow-vetchling",
        "tormentil",
        "stitchwort",
        "bistort",
    ];
    let is_pearl = |name: &str| {
        pearls
            .iter()
            .any(|model| name.starts_with(&format!("{model}@")))
    };
    assert_eq!(shop.check_rules().unwrap().not_settled(), 0);
    let all = beaten(&shop);
    let stocked = shop.catalog().stock().len();
    assert!(all.len() > pearls.len() && all.len() < stocked);
    for (name, ahead) in &all {
        assert!(is_pearl(name), "{name}");
        let (_, weight) = name.split_once('@').unwrap();
        // Any ball that is always ahead has to be there in the same weight, or the weight would decide some day.
        assert!(!ahead.is_empty(), "{name}");
        for other in ahead {
            assert!(!is_pearl(other), "{name} {other}");
            assert!(other.ends_with(&format!("@{weight}")), "{name} {other}");
        }
    }
    let checks = shop.check_rules().unwrap();
    for example in checks.first_for() {
        assert!(!is_pearl(
            &shop.candidate_name("ball", example.candidate.unwrap())
        ));
    }
}

/// The ball that somebody of this example is advised.
fn first(shop: &Shop, example: &Example) -> Option<String> {
    let document = Document::parse("somebody", b"{}", Format::Json).unwrap();
    let nobody = Bowler::read(&document).unwrap();
    let somebody = example
        .values
        .iter()
        .fold(nobody, |bowler, &(fact, value)| {
            bowler.with(shop.vocabulary().fact(fact).name, Some(value))
        });
    let picked = shop.pick(&somebody).unwrap();
    picked.ball().map(str::to_owned)
}

#[test]
fn each_ball_of_the_demo_shop_is_first_for_somebody() {
    let shop = Shop::demo().unwrap();
    let checks = shop.check_rules().unwrap();
    let counted = checks.findings().counted(FindingKind::Unreachable);
    assert_eq!((counted.found, counted.open), (0, 0));
    assert_eq!(checks.first_for().len(), counted.absent);
    for example in checks.first_for() {
        let name = shop.candidate_name("ball", example.candidate.unwrap());
        assert_eq!(first(&shop, example).as_deref(), Some(name.as_str()));
    }
}

#[test]
fn a_ball_that_is_first_at_one_speed_only_is_found_there() {
    let own = "rules:\n  - { id: calm-at-one-speed, subject: ball, when: { ball.cover: urethane, any_of: [ { bowler.speed: { known: false } }, { bowler.speed: { below: 17.3 mph } }, { bowler.speed: { above: 17.4 mph } } ] }, points: -200, because: It is so., source: own choice }\n";
    let shop = shop(own, None);
    let checks = shop.check_rules().unwrap();
    assert_eq!((beaten(&shop), checks.not_settled()), (Vec::new(), 0));
    let speed = shop.vocabulary().id("bowler.speed").unwrap();
    let mut urethane = 0;
    for example in checks.first_for() {
        let name = shop.candidate_name("ball", example.candidate.unwrap());
        assert_eq!(first(&shop, example).as_deref(), Some(name.as_str()));
        if [
            "bedstraw@",
            "quaking-grass@",
            "dropwort@",
            "meadow-foxtail@",
        ]
        .iter()
        .any(|model| name.starts_with(model))
        {
            urethane += 1;
            let known = example.values.iter().find(|(fact, _)| *fact == speed);
            // Tenths of a mile an hour.
            assert!(
                known.is_some_and(|(_, speed)| (173..=174).contains(speed)),
                "{name} {known:?}"
            );
        }
    }
    assert!(urethane > 4);
}
