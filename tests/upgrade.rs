//! The upgrade path: nothing is sold while something serious comes first, what is told is on the shelf at its quote, and the order of
//! hands, balls and runs doesn't matter.
#![allow(clippy::unwrap_used)]

#[path = "upgrade/words.rs"]
mod words;

use std::sync::LazyLock;

use spanwright::advice::{Shop, Upgrade};
use spanwright::bowler::Bowler;
use spanwright::document::{Document, Format};
use spanwright::report::upgrade_json;
use spanwright::rules::Audience;

static SHOP: LazyLock<Shop> = LazyLock::new(|| Shop::demo().unwrap());

const THROW: &str = "intent: hook\nexperience: league\nage: 40\nlanes: [oily]\nrev_rate: 300 rpm\n\
    speed: { value: 16 mph, where: release }\nrotation: 45 deg\ntilt: 13 deg\n";
const RED: &str = "  - { name: red, cover: solid, weight: 15 lb, surface: sanded 2000, games_since_service: 5 }\n";

fn bowler(text: &str) -> Bowler {
    let document = Document::parse("bowler.yaml", text.as_bytes(), Format::Yaml).unwrap();
    Bowler::read(&document).unwrap()
}

fn path(text: &str) -> Upgrade {
    SHOP.upgrade(&bowler(text)).unwrap()
}

fn told(upgrade: &Upgrade) -> Vec<(&'static str, String, i64)> {
    let told = upgrade.next().iter().map(|next| {
        let ball = next.pick().map_or("none", |pick| pick.ball());
        let cents = next.bill().map_or(0, |bill| bill.total_cents());
        (next.gap().word(), ball.to_owned(), cents)
    });
    told.collect()
}

#[test]
fn what_is_serious_comes_before_any_ball() {
    for first in [
        "aches: [numbness]\n",
        "aches: [thumb]\n",
        "injuries: [recent surgery]\n",
        "present: yes\n",
        "absent: yes\n",
    ] {
        let upgrade = path(&format!("hand: right\n{THROW}{first}owned:\n{RED}"));
        assert!(upgrade.is_held(), "{first}");
        assert!(
            upgrade.next().is_empty() && upgrade.before().is_empty(),
            "{first}"
        );
        assert!(upgrade.wait_for().is_empty(), "{first}");
    }
}

#[test]
fn what_is_told_is_on_the_shelf_at_its_quote_and_a_spare_ball_is_plastic() {
    let upgrade = path(&format!("hand: right\nbudget: $250\n{THROW}owned:\n{RED}"));
    let words: Vec<&str> = upgrade
        .next()
        .iter()
        .map(|next| next.gap().word())
        .collect();
    assert_eq!(words, ["spare_ball", "less_for_dry"]);
    for next in upgrade.next() {
        let pick = next.pick().unwrap();
        let on_shelf = SHOP.catalog().stock().iter().any(|unit| {
            unit.model().name() == pick.name() && pick.ball().starts_with(unit.model().id())
        });
        assert!(on_shelf, "{}", pick.ball());
        let bill = next.bill().unwrap();
        assert_eq!(pick.out_the_door(), bill.total());
        assert_eq!(next.over_budget(), Some(bill.total_cents() - 25_000));
        assert_eq!(
            pick.total(),
            pick.lines().iter().map(|line| line.points()).sum::<i64>()
        );
        assert_eq!(pick.weight(), "15 lb");
        assert!(!next.triggers().is_empty());
    }
    assert_eq!(upgrade.next()[0].pick().unwrap().cover(), "polyester");
    assert_ne!(upgrade.next()[1].pick().unwrap().cover(), "polyester");
}

#[test]
fn another_ball_just_like_it_makes_a_pair_and_a_plastic_one_fills_the_gap_for_spares() {
    let alone = path(&format!("hand: right\n{THROW}owned:\n{RED}"));
    assert!(alone.doubled().is_empty());
    let twin = RED.replace("red", "twin");
    let pair = path(&format!("hand: right\n{THROW}owned:\n{RED}{twin}"));
    assert_eq!(pair.doubled().len(), 1);
    assert_eq!(pair.doubled()[0].names(), ["red", "twin"]);
    assert!(pair.doubled()[0].apart().is_some());
    let spare = "  - { name: white, cover: polyester, weight: 15 lb }\n";
    let with = path(&format!("hand: right\n{THROW}owned:\n{RED}{spare}"));
    assert!(told(&alone).iter().any(|(gap, ..)| *gap == "spare_ball"));
    assert!(told(&with).iter().all(|(gap, ..)| *gap != "spare_ball"));
}

#[test]
fn a_left_hander_is_told_the_same_and_every_run_says_the_same() {
    let right = format!("hand: right\n{THROW}owned:\n{RED}");
    let (one, again) = (path(&right), path(&right));
    let json = |upgrade: &Upgrade| upgrade_json(upgrade, Audience::Fitter);
    assert_eq!(json(&one), json(&again));
    let left = path(&right.replace("hand: right", "hand: left"));
    assert_eq!(told(&one), told(&left));
    let does = |upgrade: &Upgrade| upgrade.owned()[0].does().copied();
    assert_eq!(does(&one), does(&left));
    let backup = path(&right.replace("hand: right", "hand: right\ncurve: away"));
    assert_eq!(told(&one), told(&backup));
}

/// Whoever asks for the dearest ball is told the better fit first, and the dear one beside it, marked and priced.
#[test]
fn a_wish_for_the_dearest_adds_a_ball_and_changes_none() {
    let plain = format!(
        "hand: right\n{}owned:\n  - {{ name: white, cover: polyester, weight: 15 lb }}\n",
        THROW.replace("intent: hook", "intent: learn")
    );
    let (without, with) = (path(&plain), path(&format!("wants_dearest: yes\n{plain}")));
    assert_eq!(told(&without), told(&with));
    assert!(
        without
            .next()
            .iter()
            .all(|next| next.own_choice().is_none())
    );
    let next = &with.next()[0];
    let own = next.own_choice().unwrap();
    assert!(own.pick().is_by_customer());
    assert_ne!(own.pick().ball(), next.pick().unwrap().ball());
    let cents = next.bill().unwrap().total_cents();
    assert_eq!(own.bill().total_cents(), cents + own.dearer());
    assert!(own.dearer() > 0 && !own.cautions().is_empty());
    assert!(next.cautions().is_empty());
}

/// Two balls that are called the same are told apart by their place.
#[test]
fn the_same_name_twice_is_told_apart() {
    let twins = path(&format!("hand: right\n{THROW}owned:\n{RED}{RED}"));
    assert_eq!(twins.doubled()[0].names(), ["red (ball 1)", "red (ball 2)"]);
}

#[test]
fn forty_balls_none_and_nothing_known_are_ordinary() {
    let none = path("hand: right\nowned: none\n");
    assert!(none.owned().is_empty() && none.next().is_empty());
    let unknown = path("hand: right\nintent: hook\n");
    assert!(unknown.next().is_empty());
    let many: String = (0..40)
        .map(|at| RED.replace("red", &format!("ball {at}")))
        .collect();
    let many = path(&format!("hand: right\n{THROW}owned:\n{many}"));
    assert_eq!(many.owned().len(), 40);
    assert_eq!(many.doubled().len(), 40 * 39 / 2);
    let bare = path("hand: right\nintent: hook\nowned:\n  - { spare: no }\n");
    assert!(bare.owned()[0].does().is_none() && bare.next().is_empty());
}
