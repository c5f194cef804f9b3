//! Lanes: one for whatever a bowler answers, a shop's own or the built-in ones, every fault told at its place.

use rstest::rstest;
use spanwright::bowler;
use spanwright::catalog::{Catalog, LANE_WORDS, LaneRow, Lanes};
use spanwright::document::{Document, Faults, Format};

use super::faults::told;
use super::{CORES, MODELS, PRICES, SHELF, demo};

const LANES: &str = include_str!("../../catalog-demo/lanes.yaml");

fn document(text: &str) -> Document {
    Document::parse("lanes.yaml", text.as_bytes(), Format::Yaml).unwrap()
}

fn lanes(text: &str) -> Result<Lanes, Faults> {
    Lanes::read(&document(text))
}

fn set(words: &[&str]) -> i64 {
    let bit = |word: &&str| 1 << LANE_WORDS.iter().position(|known| known == word).unwrap();
    words.iter().map(bit).sum()
}

#[test]
fn the_words_are_those_of_a_profile() {
    assert_eq!(LANE_WORDS, bowler::LANES);
}

/// Lengths and ratio as the file's own sources have them: house oil 38 to 42 ft, 8:1; inside boards 8 to 32.
#[test]
fn the_built_in_lanes_are_generic_zones() {
    let catalog = demo();
    let ids: Vec<_> = catalog.lanes().rows().iter().map(LaneRow::id).collect();
    assert_eq!(
        ids,
        [
            "long-flat",
            "long-house",
            "medium-flat",
            "medium-house",
            "short-flat",
            "short-house"
        ]
    );
    let house = catalog.lanes().named("medium-house").unwrap();
    assert_eq!((house.oil(), house.ramp(), house.ratio()), (400, 30, 80));
    assert_eq!((house.inside(), house.taper()), (80, 20));
    assert!((house.lane().oil().as_feet() - 40.0).abs() < 1e-9);
    let flat = catalog.lanes().named("long-flat").unwrap();
    assert_eq!((flat.oil(), flat.ratio(), flat.inside()), (450, 10, 0));
}

#[rstest]
#[case(&[], "medium-house")]
#[case(&["house"], "medium-house")]
#[case(&["oily"], "long-house")]
#[case(&["long_oil"], "long-house")]
#[case(&["dry"], "short-house")]
#[case(&["short_oil"], "short-house")]
#[case(&["sport"], "medium-flat")]
#[case(&["sport", "long_oil"], "long-flat")]
#[case(&["sport", "dry"], "short-flat")]
#[case(&["house", "sport"], "medium-house")]
#[case(&["house", "oily"], "medium-house")]
#[case(&["oily", "dry"], "medium-house")]
#[case(&["sport", "long_oil", "short_oil"], "medium-flat")]
fn each_answer_has_its_lane(#[case] words: &[&str], #[case] lane: &str) {
    assert_eq!(demo().lanes().for_answer(set(words)).id(), lane);
}

/// Also for numbers that are no set of words.
#[test]
fn every_answer_has_a_lane_whatever_the_order_of_the_rows() {
    let (head, rest) = LANES.split_once("lanes:\n").unwrap();
    let mut rows: Vec<&str> = rest.split("\n\n").collect();
    rows.reverse();
    let turned = lanes(&format!("{head}lanes:\n{}", rows.join("\n\n"))).unwrap();
    assert_eq!(&turned, demo().lanes().as_ref());
    for set in (-3..70).chain([i64::MIN, i64::MAX]) {
        assert!(!turned.for_answer(set).id().is_empty(), "{set}");
    }
}

#[test]
fn a_lane_is_found_by_id_or_the_nearest_is_named() {
    let catalog = demo();
    let unknown = catalog.lanes().named("medium-hose").unwrap_err();
    assert_eq!(
        unknown.to_string(),
        "no lane has the id `medium-hose`; did you mean `medium-house`?"
    );
    let unknown = catalog.lanes().named("\u{1b}[31m").unwrap_err();
    assert!(!unknown.to_string().contains('\u{1b}'));
}

/// A shop's folder may have lanes of its own; without them the built-in ones count, so that old folders load.
#[test]
fn a_folder_may_have_lanes() {
    let shop = tempfile::tempdir().unwrap();
    for (name, text) in [
        ("models.csv", MODELS),
        ("cores.csv", CORES),
        ("shelf.csv", SHELF),
        ("prices.yaml", PRICES),
    ] {
        std::fs::write(shop.path().join(name), text).unwrap();
    }
    let without = Catalog::read_folder(shop.path()).unwrap();
    assert_eq!(without, demo());
    let own = LANES.replacen("oil: 40 ft", "oil: 41.5 ft", 1);
    std::fs::write(shop.path().join("lanes.yaml"), &own).unwrap();
    let with = Catalog::read_folder(shop.path()).unwrap();
    assert_eq!(with.lanes().for_answer(1).oil(), 415);
    assert_ne!(with.digest(), without.digest());
    let moved = demo().on_lanes(&document(&own)).unwrap();
    assert_eq!(moved.lanes(), with.lanes());
    assert_ne!(moved.digest(), without.digest());
    std::fs::write(shop.path().join("lanes.yaml"), "lanes: [").unwrap();
    std::fs::remove_file(shop.path().join("cores.csv")).unwrap();
    assert_eq!(Catalog::read_folder(shop.path()).unwrap_err().len(), 2);
}

/// The file holds every kind of fault of a lane; nothing else is told of it.
#[test]
fn every_fault_of_a_lane_is_told_at_its_place() {
    let faults = lanes(include_str!("../faults/catalog/lanes.yaml")).unwrap_err();
    let expected: Vec<&str> = include_str!("../faults/catalog/lanes.txt")
        .lines()
        .filter(|line| !line.starts_with('#'))
        .collect();
    assert_eq!(told(&faults), expected);
}

#[rstest]
#[case(
    "lanes: []\n",
    "lanes.yaml:1:8 missing: the list has no lanes; expected at least one"
)]
#[case(
    "- a\n",
    "lanes.yaml:1:1 shape: a list of lanes must be a map of keys and values, found a list"
)]
#[case("lane: []\n", "lanes.yaml:1:1 missing: `lanes` is missing")]
fn a_list_of_lanes_that_is_none_is_a_fault(#[case] text: &str, #[case] first: &str) {
    let faults = lanes(text).unwrap_err();
    assert!(
        told(&faults).contains(&first.to_owned()),
        "{:?}",
        told(&faults)
    );
}

#[test]
fn somebody_has_to_be_told_of_a_house_lane() {
    let none = LANES.replacen("answers: [house]", "answers: []", 1);
    let faults = lanes(&none).unwrap_err();
    assert_eq!(
        told(&faults),
        [
            "lanes.yaml:4:1 missing: no lane stands for `house`, which is taken when nobody knows the lane / give one of them `answers: [house]`"
        ]
    );
}
