//! What people read, for each demo bowler. Read a changed snapshot aloud: would you say this to a customer?

#![allow(clippy::unwrap_used)]

use std::path::Path;

use rstest::rstest;
use spanwright::advice::{Advice, Shop};
use spanwright::bowler::Bowler;
use spanwright::document::{Document, Format};
use spanwright::report::{self, Look};
use spanwright::rules::Audience;

/// Words that a customer must not read; common practice, no source.
const AVOIDED: [&str; 9] = [
    "newcomer",
    "senior",
    "stiff",
    "rolled out",
    "speed-dominant",
    "goes where you aim",
    "does nothing for you",
    "ledger",
    "rev level",
];

/// Lines of the customer's part after serious cautions: about a screen.
const SCREEN: usize = 50;

fn bowler(name: &str) -> Bowler {
    let file = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("catalog-demo/bowlers")
        .join(format!("{name}.yaml"));
    let document = Document::read(&file).unwrap();
    Bowler::read(&document).unwrap()
}

fn advise(shop: &Shop, name: &str) -> Advice {
    shop.advise(&bowler(name)).unwrap()
}

#[rstest]
#[case("first-ball")]
#[case("straight-only")]
#[case("league-tired-ball")]
#[case("left-handed-child")]
#[case("two-handed-no-thumb")]
#[case("sore-thumb")]
#[case("backup-bowler")]
#[case("knows-nothing")]
fn reads_well(#[case] name: &str) {
    let shop = Shop::demo().unwrap();
    let advice = advise(&shop, name);
    let look = |audience| Look::plain(audience).explaining(shop.rules().glossary());

    let text = report::text(&advice, &look(Audience::Newcomer));
    insta::with_settings!({ snapshot_path => "snapshots", prepend_module_to_snapshot => false }, {
        insta::assert_snapshot!(name, text);
    });

    let customers = text.split("Drill spec").next().unwrap();
    let lower = customers.to_lowercase();
    for word in AVOIDED {
        assert!(!lower.contains(word), "{word}: {customers}");
    }
    let screen = customers
        .find("Settled")
        .map_or(customers, |at| &customers[at..]);
    let lines = screen.lines().count();
    assert!(lines <= SCREEN, "{lines} lines: {screen}");
}

/// Rotation and tilt had a say, but only who watches the release can put them right.
#[rstest]
#[case(Audience::Newcomer, false)]
#[case(Audience::League, true)]
#[case(Audience::Fitter, true)]
fn what_only_others_can_see_of_a_release_is_not_told_to_a_customer(
    #[case] audience: Audience,
    #[case] told: bool,
) {
    let answers =
        b"{ intent: hook, experience: league, rev_rate: 290 rpm, speed: { value: 17 mph, where: release }, lanes: [house] }";
    let document = Document::parse("somebody", answers, Format::Yaml).unwrap();
    let shop = Shop::demo().unwrap();
    let advice = shop.advise(&Bowler::read(&document).unwrap()).unwrap();
    let had_a_say = |fact: &str| {
        let mut all = advice.assumptions().iter();
        all.any(|assumed| assumed.fact() == fact && assumed.matters())
    };
    assert!(had_a_say("bowler.rotation") && had_a_say("bowler.tilt"));
    let text = report::text(&advice, &Look::plain(audience)).to_lowercase();
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for release in ["rotation: 45", "tilt: 13"] {
        assert_eq!(text.contains(release), told, "{text}");
    }
}

#[test]
fn the_fitter_reads_every_line() {
    let shop = Shop::demo().unwrap();
    let text = report::text(&advise(&shop, "first-ball"), &Look::plain(Audience::Fitter));
    insta::with_settings!({ snapshot_path => "snapshots", prepend_module_to_snapshot => false }, {
        insta::assert_snapshot!("first-ball-for-fitter", text);
    });
}

/// What is said about a fit that doesn't sit right: to the customer, and to the fitter.
#[rstest]
#[case("hanging-thumb", Audience::Newcomer, "refit-hanging-thumb")]
#[case("hanging-thumb", Audience::Fitter, "refit-hanging-thumb-for-fitter")]
#[case("sore-thumb", Audience::Newcomer, "refit-sore-thumb")]
fn a_refit_reads_well(#[case] name: &str, #[case] audience: Audience, #[case] snapshot: &str) {
    let shop = Shop::demo().unwrap();
    let refit = shop.refit(&bowler(name)).unwrap();
    let look = Look::plain(audience).explaining(shop.rules().glossary());
    let text = report::refit_text(&refit, &look);
    insta::with_settings!({ snapshot_path => "snapshots", prepend_module_to_snapshot => false }, {
        insta::assert_snapshot!(snapshot, text);
    });
    if audience == Audience::Newcomer {
        let lower = text.to_lowercase();
        for word in AVOIDED {
            assert!(!lower.contains(word), "{word}: {text}");
        }
    }
}
