//! What a vocabulary takes, and how it prints.

use rstest::rstest;
use spanwright::rules::{Fact, Kind, Origin, UNKNOWN, Vocabulary};

use crate::garden::{count, vocabulary};

fn fact(name: &'static str, kind: Kind) -> Fact {
    Fact {
        name,
        meaning: "a fact",
        kind,
        origin: Origin::Answer,
        from: "the test",
        subject: None,
    }
}

#[rstest]
#[case("garden.soil", 2, "heavy clay")]
#[case("garden.shade", 1, "yes")]
#[case("garden.shade", 0, "no")]
#[case("garden.sun", 7, "7")]
#[case("garden.budget", 12_950, "$129.50")]
#[case("garden.pests", 0, "none")]
#[case("garden.pests", 2, "mice")]
#[case("garden.pests", 5, "snails and deer")]
#[case("garden.pests", 7, "snails, mice and deer")]
#[case("garden.pests", UNKNOWN, "not known")]
#[case("garden.sun", UNKNOWN, "not known")]
#[case("garden.soil", 9, "not known")]
fn printing(#[case] name: &str, #[case] value: i64, #[case] expected: &str) {
    let vocabulary = vocabulary();
    assert_eq!(
        vocabulary.print(vocabulary.id(name).unwrap(), value),
        expected
    );
}

#[test]
fn names_and_ids() {
    let vocabulary = vocabulary();
    for (index, fact) in vocabulary.facts().iter().enumerate() {
        let id = vocabulary.id(fact.name).unwrap();
        assert_eq!(usize::from(id.0), index);
        assert_eq!(vocabulary.fact(id), fact);
    }
    assert_eq!(vocabulary.id("garden.moon"), None);
}

#[rstest]
#[case(vec![fact("a.b", Kind::Flag), fact("a.b", Kind::Flag)], "fact a.b: stated twice")]
#[case(vec![fact("soil", Kind::Flag)], "fact soil: a name is small letters with a dot, such as kite.shape")]
#[case(vec![fact("A.b", Kind::Flag)], "fact A.b: a name is small letters with a dot, such as kite.shape")]
#[case(vec![fact("a.b", Kind::Choice(&[]))], "fact a.b: it has no words")]
#[case(vec![fact("a.b", Kind::Set(&["x", "y", "x"]))], "fact a.b: the word x is stated twice")]
#[case(vec![fact("a.b", count(2, 1))], "fact a.b: lowest 2 is above highest 1")]
#[case(vec![fact("a.b", count(0, i64::MAX))], "fact a.b: bounds 0 and 9223372036854775807 do not fit 32 bits")]
#[case(vec![Fact { subject: Some("plant"), ..fact("a.b", Kind::Flag) }], "fact a.b: only a fact of candidates has a subject")]
#[case(vec![Fact { origin: Origin::Derived, ..fact("a.b", Kind::Flag) }], "fact a.b: a fact of candidates names their subject")]
fn what_is_refused(#[case] facts: Vec<Fact>, #[case] expected: &str) {
    assert_eq!(Vocabulary::new(facts).unwrap_err(), expected);
}
