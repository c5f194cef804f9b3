//! What people read of a roll. Read a changed snapshot aloud: would you say this to a customer?

use rstest::rstest;
use spanwright::advice::Shop;
use spanwright::report::{Look, roll_text};
use spanwright::rules::Audience;

use super::super::{bowler, rolled};

/// Words that nobody should read of a roll; common practice, no source.
const AVOIDED: [&str; 6] = [
    "rolled out",
    "rolls out",
    "newcomer",
    "guarantee",
    "speed-dominant",
    "rev level",
];

#[rstest]
#[case::one(&["hawkbit@15"], Audience::Newcomer, "roll-one")]
#[case::one_fitter(&["hawkbit@15"], Audience::Fitter, "roll-one-for-fitter")]
#[case::two(&["daisy@15", "hawkbit@15"], Audience::Newcomer, "roll-two")]
#[case::two_league(&["hawkbit@15", "eyebright@15"], Audience::League, "roll-two-for-league")]
#[case::two_fitter(&["daisy@15", "hawkbit@15"], Audience::Fitter, "roll-two-for-fitter")]
fn a_roll_reads_well(#[case] balls: &[&str], #[case] reader: Audience, #[case] snapshot: &str) {
    let shop = Shop::demo().unwrap();
    let roll = rolled(&shop, &bowler("name: Nell Tarn"), balls, None);
    let look = Look::plain(reader).explaining(shop.rules().glossary());
    let text = roll_text(&roll, &look);
    insta::with_settings!({ snapshot_path => "../snapshots", prepend_module_to_snapshot => false }, {
        insta::assert_snapshot!(snapshot, text);
    });
    let lower = text.to_lowercase();
    for word in AVOIDED {
        assert!(!lower.contains(word), "{word}: {text}");
    }
    for line in text.lines() {
        assert!(line.chars().count() <= 80, "{line}");
    }
}

/// Sentences for customers are made in code; at most twenty words each, none of them to avoid.
#[test]
fn sentences_made_of_numbers_are_in_plain_words() {
    let shop = Shop::demo().unwrap();
    for (one, other) in [
        ("daisy@15", "hawkbit@15"),
        ("hawkbit@15", "daisy@15"),
        ("hawkbit@15", "eyebright@15"),
        ("selfheal@15", "cats-ear@15"),
    ] {
        let roll = rolled(&shop, &bowler(""), &[one, other], None);
        let said = roll.apart().unwrap().said().of(Audience::Newcomer);
        // Names aren't words of the list.
        let mut plain = said.to_owned();
        for name in roll.names() {
            plain = plain.replace(name, "the ball");
        }
        let found = shop.rules().wording_of(&plain, Audience::Newcomer);
        assert!(found.is_empty(), "{plain}: {found:?}");
    }
}
