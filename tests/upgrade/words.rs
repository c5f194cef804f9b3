//! What people read of an upgrade path, and its document. Read a changed snapshot aloud: would you say this to a customer?

use insta::assert_snapshot;
use rstest::rstest;
use spanwright::advice::{Shop, Upgrade};
use spanwright::report::{Look, upgrade_json, upgrade_text};
use spanwright::rules::Audience;

use super::{SHOP, bowler};

/// Lines of a customer's answer: about a screen.
const SCREEN: usize = 50;

/// Three balls to come, one budget.
const TILDA: &str = "name: Tilda Marsh\nhand: left\nintent: hook\nexperience: tournament\nage: 27\nlanes: [house]\nbudget: $300\n\
    speed: { value: 15 mph, where: release }\nrev_rate: 240 rpm\nrotation: 45 deg\ntilt: 13 deg\nowned:\n\
    \x20 - { name: the dull one, cover: solid, weight: 15 lb, surface: sanded 500, games: 40, games_since_service: 2 }\n\
    \x20 - { name: the shiny one, cover: pearl, weight: 15 lb, surface: polished, games: 250, games_since_service: 20 }\n";

/// Plastic only, and the dearest ball is wanted.
const LIONEL: &str = "name: Lionel Vance\nhand: right\nintent: learn\nexperience: league\nage: 36\nlanes: [house]\nwants_dearest: yes\n\
    speed: { value: 13 mph, where: release }\nrev_rate: 120 rpm\nrotation: 20 deg\ntilt: 13 deg\nowned:\n\
    \x20 - { name: the pink one, cover: polyester, weight: 14 lb, surface: polished, games: 40, fit: good }\n";

/// Two that do the same, tired, and a spare ball; with a complaint nothing is sold.
const BRAM: &str = "name: Bram Holloway\nhand: right\nintent: hook\nexperience: league\nage: 41\nlanes: [house]\naches: [wrist]\n\
    speed: { value: 16 mph, where: release }\nrev_rate: 300 rpm\nrotation: 45 deg\ntilt: 13 deg\nowned:\n\
    \x20 - { name: the red one, cover: solid, weight: 15 lb, surface: sanded 2000, games: 80, games_since_service: 70 }\n\
    \x20 - { name: the black one, cover: solid, weight: 15 lb, surface: sanded 2000, games: 65, games_since_service: 25 }\n\
    \x20 - { name: the white one, cover: polyester, weight: 15 lb, spare: yes }\n";

fn path(text: &str) -> Upgrade {
    SHOP.upgrade(&bowler(text)).unwrap()
}

fn written(upgrade: &Upgrade, audience: Audience) -> String {
    let shop: &Shop = &SHOP;
    let look = Look::plain(audience).explaining(shop.rules().glossary());
    upgrade_text(upgrade, &look)
}

#[rstest]
#[case("three-to-come", TILDA)]
#[case("wants-the-dearest", LIONEL)]
#[case("nothing-yet", BRAM)]
fn an_upgrade_reads_well(#[case] name: &str, #[case] text: &str) {
    let upgrade = path(text);
    let customer = written(&upgrade, Audience::Newcomer);
    let lines = customer.lines().count();
    // A path of three balls needs a little more than a screen.
    let most = SCREEN + 8 * upgrade.next().len().saturating_sub(1);
    assert!(lines <= most, "{name}: {lines} lines");
    insta::with_settings!({ snapshot_path => "../snapshots", prepend_module_to_snapshot => false }, {
        assert_snapshot!(format!("upgrade-{name}"), customer);
        assert_snapshot!(format!("upgrade-{name}-for-league"), written(&upgrade, Audience::League));
        assert_snapshot!(format!("upgrade-{name}-for-fitter"), written(&upgrade, Audience::Fitter));
    });
}

/// All of it for programs; the digest changes with any rule, so it is left out.
#[rstest]
#[case("three-to-come", TILDA)]
#[case("wants-the-dearest", LIONEL)]
fn its_document_is_complete(#[case] name: &str, #[case] text: &str) {
    let upgrade = path(text);
    let json = upgrade_json(&upgrade, Audience::Newcomer);
    let mut value: serde_json::Value = serde_json::from_str(&json).unwrap();
    assert_eq!(value["question"], "upgrade");
    assert_eq!(value["digest"], SHOP.digest());
    let sums = |of: &serde_json::Value| {
        let lines = of["lines"].as_array().unwrap().iter();
        let points = lines.map(|line| line["points"].as_i64().unwrap());
        assert_eq!(of["total"].as_i64().unwrap(), points.sum::<i64>());
    };
    value["gaps"].as_array().unwrap().iter().for_each(sums);
    for next in value["next"].as_array().unwrap() {
        sums(&next["ball"]);
        assert!(!next["wait_for"].as_array().unwrap().is_empty());
        assert!(next["quote"]["total"].is_string(), "{}", next["quote"]);
    }
    value.as_object_mut().unwrap().remove("digest");
    value.as_object_mut().unwrap().remove("version");
    let written = serde_json::to_string_pretty(&value).unwrap();
    insta::with_settings!({ snapshot_path => "../snapshots", prepend_module_to_snapshot => false }, {
        assert_snapshot!(format!("upgrade-{name}-json"), written);
    });
}
