//! A ball as the physics sees it: from the shelf or owned, its friction with reasons that add up, what isn't known said and never made up.

#![allow(clippy::unwrap_used, clippy::panic)] // a helper of a test fails the test

#[path = "bowler/written.rs"]
mod written;

use std::collections::BTreeSet;
use std::sync::LazyLock;

use proptest::prelude::*;
use rstest::rstest;
use spanwright::advice::{Reason, RollBall, Shop, ShopFiles, Surface, Trouble};
use spanwright::catalog::{Cover, Finish};
use written::{bowler, parse};

static SHOP: LazyLock<Shop> = LazyLock::new(|| Shop::demo().unwrap());

const HOOKS: &str = "hand: right\nintent: hook\nexperience: league\nhold_test: { passed: 15 lb }\n";

fn owned(ball: &str) -> String {
    format!("{HOOKS}owned:\n  - {{ {ball} }}\n")
}

fn rolled(profile: &str, ball: &str) -> RollBall {
    let rolled = SHOP.roll_ball(&bowler(profile), ball);
    rolled.unwrap_or_else(|why| panic!("{ball}: {why}"))
}

/// The one owned ball, called `mine`.
fn mine(ball: &str) -> RollBall {
    rolled(&owned(&format!("name: mine, {ball}")), "mine")
}

fn adds_up(lines: &[Reason], value: f64) {
    let sum: i64 = lines.iter().map(Reason::points).sum();
    assert!((sum as f64 / 1000.0 - value).abs() < 1e-12, "{sum} {value}");
}

#[test]
fn a_ball_of_the_shelf_is_named_with_or_without_its_weight() {
    let named = rolled(HOOKS, "daisy@14");
    assert_eq!((named.id(), named.name()), ("daisy@14", "Daisy, 14 lb"));
    assert!((named.body().mass().as_pounds() - 14.0).abs() < 1e-9);
    // 27 in round, the standard circumference.
    assert!((named.body().radius().as_inches() * std::f64::consts::TAU - 27.0).abs() < 1e-9);
    assert!(!named.is_owned() && named.cover() == Some(0));
    let bare = rolled(HOOKS, "daisy");
    let compared = SHOP.compare(&bowler(HOOKS), "daisy", "cowslip").unwrap();
    assert_eq!(bare.id(), compared.one().ball());
}

#[test]
fn a_ball_owned_is_found_by_what_it_is_called() {
    let profile = owned("name: The Red One, cover: solid, weight: 15 lb");
    let ball = rolled(&profile, " the red one ");
    assert_eq!((ball.id(), ball.is_owned()), ("The Red One", true));
    assert_eq!(ball.cover(), Some(2));
    // What is called like a model is the bowler's own.
    let profile = owned("name: daisy, cover: pearl");
    assert!(rolled(&profile, "daisy").is_owned());
    assert!(!rolled(&profile, "daisy@12").is_owned());
}

/// As the upgrade path has it: whoever owns balls throws that weight, so a ball of the shelf is taken in it.
#[test]
fn a_ball_without_a_weight_goes_by_the_balls_owned() {
    let profile = "hand: right\nintent: hook\nexperience: league\nowned:\n  - { name: mine, cover: solid, weight: 15 lb }\n";
    assert_eq!(rolled(profile, "daisy").id(), "daisy@15");
    assert_eq!(rolled(profile, "daisy@12").id(), "daisy@12");
}

#[rstest]
#[case("daisi", Some("daisy"))]
#[case("the red on", Some("the red one"))]
#[case("zzzzzzzz", None)]
fn the_nearest_name_of_both_is_told(#[case] asked: &str, #[case] near: Option<&str>) {
    let profile = bowler(&owned("name: the red one, cover: solid"));
    match SHOP.roll_ball(&profile, asked) {
        Err(Trouble::NoSuchBall { nearest, .. }) => assert_eq!(nearest.as_deref(), near),
        other => panic!("{other:?}"),
    }
}

#[rstest]
#[case("")]
#[case("@14")]
#[case("daisy@99 lb")]
#[case("daisy@heavy")]
#[case("\u{1b}[31mred")]
fn what_is_no_ball_is_refused(#[case] asked: &str) {
    let why = SHOP.roll_ball(&bowler(HOOKS), asked).unwrap_err();
    assert!(!why.to_string().contains('\u{1b}'), "{why}");
}

#[test]
fn without_a_cover_there_is_no_roll() {
    let profile = bowler(&owned("name: mine, weight: 15 lb"));
    let why = SHOP.roll_ball(&profile, "mine").unwrap_err();
    assert_eq!(
        why.to_string(),
        "nobody knows the cover of `mine`; tell it as `cover` beside the ball, or its `model` in the catalog"
    );
}

/// Its cover and core numbers come from the catalog then, also in a weight that isn't on the shelf.
#[test]
fn a_model_tells_cover_and_core() {
    let (id, weight, core) = SHOP
        .catalog()
        .core_numbers()
        .find(|(id, weight, _)| *id == "daisy" && *weight == 1500)
        .unwrap();
    let ball = mine(&format!("model: {id}, weight: {} lb", weight / 100));
    let [low, middle, high] = core.rgs().map(|rg| rg as f64 / 1000.0);
    let mass = ball.body().mass().as_kilograms();
    for (moment, rg) in ball.body().moments().into_iter().zip([low, middle, high]) {
        assert!((moment / mass - (rg * 0.0254).powi(2)).abs() < 1e-12);
    }
    assert_eq!(ball.cover(), Some(0));
    let unknown = bowler(&owned("name: mine, model: daisi"));
    let why = SHOP.roll_ball(&unknown, "mine").unwrap_err();
    assert_eq!(
        why.to_string(),
        "no ball `daisi` in the catalog; did you mean `daisy`?"
    );
}

/// The middle one by RG of the shop's solids in 15 lb, worked out here anew.
#[test]
fn an_unknown_core_is_the_middle_one_of_its_kind() {
    let catalog = SHOP.catalog();
    let mut rgs: Vec<_> = catalog
        .core_numbers()
        .filter(|(id, weight, _)| {
            catalog.find(id).unwrap().cover() == Cover::Solid && *weight == 1500
        })
        .map(|(.., core)| core.rgs())
        .collect();
    rgs.sort_unstable();
    let middle = rgs[(rgs.len() - 1) / 2][0] as f64 / 1000.0 * 0.0254;
    let ball = mine("cover: solid, weight: 15 lb");
    let mass = ball.body().mass().as_kilograms();
    assert!((ball.body().moments()[0] / mass - middle * middle).abs() < 1e-12);
    assert!(
        ball.assumed()
            .iter()
            .any(|line| line.contains("middle one of its kind"))
    );
}

#[test]
fn what_isnt_known_is_said() {
    let bare = mine("cover: solid");
    let all = bare.assumed().join(" ");
    for said in ["weight", "model", "surface", "cleaned out", "flare"] {
        assert!(all.contains(said), "{said}: {all}");
    }
    let full = mine(
        "model: meadow-fescue, weight: 14 lb, surface: polished, games_since_service: 3, pin_from_pap: 4",
    );
    assert!(full.assumed().is_empty(), "{:?}", full.assumed());
}

#[rstest]
#[case("pin_from_pap: 4 1/2 in", Some(60.0))]
#[case("layout: pin 3 3/8 in from the PAP", Some(45.0))]
#[case("layout: label", None)]
fn the_pin_of_a_ball_owned_is_where_it_is_told(#[case] key: &str, #[case] degrees: Option<f64>) {
    let ball = mine(&format!("cover: pearl, {key}"));
    let wanted = degrees.map(|pin| {
        let [pin, no] = [pin, 0.0].map(spanwright::motion::Angle::degrees);
        spanwright::motion::Attitude::new(pin, no, no).unwrap()
    });
    let gap = |a: &spanwright::motion::Attitude, b: &spanwright::motion::Attitude| {
        format!("{a:.9?}") == format!("{b:.9?}")
    };
    match (ball.attitude(), &wanted) {
        (Some(found), Some(wanted)) => assert!(gap(found, wanted), "{found:?} {wanted:?}"),
        (found, wanted) => assert_eq!(found, wanted.as_ref()),
    }
}

const MEASURED: &str = "measured:\n  thumb: { cold: 27/32, flexibility: normal, lies: middle }\n  middle: { cold: 24/32 }\n  ring: { cold: 23/32 }\n  spans:\n    - { grip: fingertip, finger: middle, value: 4 1/16, kind: full, along: arc }\n    - { grip: fingertip, finger: ring, value: 4 1/8, kind: full, along: arc }\n";

/// A new ball's pin is where `advise` would put it; without a PAP nobody knows.
#[test]
fn the_pin_of_a_new_ball_goes_by_the_pap() {
    let shelf = |profile: &str| rolled(profile, &solid());
    let measured = format!("{HOOKS}pap: {{ over: 5, up: 1/2 up }}\n{MEASURED}");
    assert!(shelf(&measured).attitude().is_some());
    let without = format!("{HOOKS}{MEASURED}");
    assert!(shelf(&without).attitude().is_none());
    assert!(
        shelf(&without)
            .assumed()
            .iter()
            .any(|line| line.contains("flare"))
    );
}

fn solid() -> String {
    let catalog = SHOP.catalog();
    let mut stock = catalog.stock().iter();
    let found = stock.find(|it| it.model().cover() == Cover::Solid && it.weight() == 1500);
    format!("{}@15", found.unwrap().model().id())
}

#[test]
fn the_reasons_of_friction_add_up_to_it() {
    for ball in [
        rolled(HOOKS, "daisy@14"),
        rolled(HOOKS, &solid()),
        mine("cover: pearl, surface: \"sanded, 2000\", games_since_service: 70"),
        mine("cover: polyester, surface: matte"),
    ] {
        adds_up(ball.friction_in_oil(), ball.friction().oil());
        adds_up(ball.friction_on_dry(), ball.friction().dry());
    }
}

/// Common practice, no source: a duller surface grips more and sooner, polish less; a cover full of oil less (M18); plastic hardly (P4).
#[rstest]
#[case("cover: solid, surface: sanded", "cover: solid, surface: matte")]
#[case("cover: solid, surface: matte", "cover: solid, surface: polished")]
#[case("cover: pearl, surface: 500 grit", "cover: pearl, surface: 2000 grit")]
#[case("cover: pearl, surface: 2000 grit", "cover: pearl, surface: 5000 grit")]
#[case(
    "cover: hybrid, surface: matte, games_since_service: 0",
    "cover: hybrid, surface: matte, games_since_service: 60"
)]
#[case(
    "cover: polyester, surface: sanded",
    "cover: polyester, surface: polished"
)]
#[case(
    "cover: pearl, surface: polished, games_since_service: 500",
    "cover: polyester, surface: polished"
)]
fn this_grips_more_than_that(#[case] this: &str, #[case] that: &str) {
    let (this, that) = (mine(this), mine(that));
    assert!(this.friction().oil() > that.friction().oil());
    assert!(this.friction().dry() > that.friction().dry());
}

/// Every rule of friction speaks of some ball on the shelf or owned.
#[test]
fn every_rule_of_friction_can_speak() {
    let mut balls: Vec<RollBall> = Vec::new();
    for cover in Cover::NAMES {
        for note in ["sanded", "matte", "polished", "sanded, 1000"] {
            let known = format!("cover: {cover}, surface: \"{note}\", games_since_service: 80");
            balls.push(mine(&known));
        }
    }
    let lines = balls.iter().flat_map(|ball| {
        let (oil, dry) = (ball.friction_in_oil(), ball.friction_on_dry());
        oil.iter().chain(dry).map(Reason::rule)
    });
    let spoke: BTreeSet<&str> = lines.collect();
    let rules = SHOP.rules().rules().iter().map(|rule| rule.id());
    let silent: Vec<&str> = rules
        .filter(|id| SHOP_FRICTION.contains(&format!("id: {id}\n")))
        .filter(|id| !spoke.contains(id))
        .collect();
    assert!(silent.is_empty(), "{silent:?}");
    assert_eq!(spoke.len(), SHOP_FRICTION.matches("- id: ").count());
}

const SHOP_FRICTION: &str = include_str!("../rules/friction.yaml");

/// A shop's table that has more grip in the oil than on the dry, or no start, gives no friction and isn't guessed at; advice goes on.
#[rstest]
#[case(
    "- id: slick\n    subject: friction.dry\n    when: { roll.cover: solid }\n    add: 0.120 less\n    because: Slick.\n    source: own choice\n"
)]
#[case(
    "- id: two\n    subject: friction.oil\n    when: { roll.cover: solid }\n    start: 0.030\n    because: Two starts.\n    source: own choice\n"
)]
fn a_table_that_cannot_be_is_told(#[case] rule: &str) {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("own.yaml");
    std::fs::write(&file, format!("rules:\n  {rule}")).unwrap();
    let shop = Shop::open(&ShopFiles {
        rules: vec![file],
        ..ShopFiles::default()
    })
    .unwrap();
    let why = shop.roll_ball(&bowler(&owned("name: mine, cover: solid")), "mine");
    assert!(matches!(why, Err(Trouble::Friction(_))), "{why:?}");
    assert!(
        shop.roll_ball(&bowler(&owned("name: mine, cover: pearl")), "mine")
            .is_ok()
    );
    assert!(shop.advise(&bowler(HOOKS)).is_ok());
}

proptest! {
    /// Whatever note stands on a ball, there is a friction that the physics takes, and coarser never grips less.
    #[test]
    fn any_note_gives_a_friction(note in "[ -~]{0,40}", layout in "[ -~]{0,40}", games in 0..5_000_i64) {
        let text = |note: &str| note.replace(['"', '\\'], "");
        let ball = format!(
            "cover: solid, surface: \"{} \", layout: \"{} \", games_since_service: {games}",
            text(&note), text(&layout)
        );
        if parse(&owned(&format!("name: mine, {ball}"))).is_ok() {
            let ball = mine(&ball);
            prop_assert!(ball.friction().oil() <= ball.friction().dry());
        }
    }

    #[test]
    fn coarser_never_grips_less(cover in 0..5_usize, one in 100..6000_i64, other in 100..6000_i64) {
        let gripping = |grit| {
            let surface = Surface::new(Cover::ALL[cover]).finished(Finish::Sanded).grit(grit);
            *SHOP.friction(&surface).unwrap().friction()
        };
        let (coarse, fine) = (gripping(one.min(other)), gripping(one.max(other)));
        prop_assert!(coarse.oil() >= fine.oil() && coarse.dry() >= fine.dry());
    }
}

/// Nobody guesses which of two balls called the same is meant, nor hides that an owned ball has the name of one on the shelf.
#[test]
fn balls_called_the_same_are_told_apart() {
    let shop = Shop::demo().unwrap();
    let two = "intent: hook\nowned:\n  - { name: the white one, cover: polyester, weight: 14 lb }\n  - { name: the white one, cover: solid, weight: 15 lb }\n  - { name: silverweed, cover: pearl, weight: 15 lb }\n";
    let bowler = bowler(two);
    let told = shop
        .roll_ball(&bowler, "the white one")
        .unwrap_err()
        .to_string();
    for name in ["the white one (ball 1)", "the white one (ball 2)"] {
        assert!(told.contains(name), "{told}");
        assert_eq!(shop.roll_ball(&bowler, name).unwrap().name(), name);
    }
    let second = shop.roll_ball(&bowler, "the white one (ball 2)").unwrap();
    assert_eq!(second.cover(), Some(2));
    let own = shop.roll_ball(&bowler, "silverweed").unwrap();
    assert!(
        own.is_owned()
            && own
                .assumed()
                .iter()
                .any(|line| line.contains("silverweed@"))
    );
}
