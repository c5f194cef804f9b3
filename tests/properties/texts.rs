//! What the customer reads is whole, plain and kind.

use proptest::prelude::*;
use spanwright::advice::{Advice, Reason};
use spanwright::report::{self, Look};
use spanwright::rules::Audience;

use crate::profiles::profile;
use crate::{advise, cases};

/// Words that hurt, mislead or belong to the program (common practice, no source).
const AVOIDED: &[&str] = &[
    "newcomer",
    "senior",
    "stiff",
    "rolled out",
    "speed-dominant",
    "goes where you aim",
    "does nothing for you",
    "ledger",
    "fate",
    "rev level",
];

/// The first word that stands twice in a row within a line.
fn doubled(text: &str) -> Option<&str> {
    text.lines().find(|line| {
        let words: Vec<&str> = line.split(' ').collect();
        words.windows(2).any(|two| {
            two[0] == two[1] && two[0].len() > 1 && two[0].chars().all(char::is_alphabetic)
        })
    })
}

fn has_word(text: &str, word: &str) -> bool {
    let edge = |c: Option<char>| !c.is_some_and(char::is_alphanumeric);
    text.match_indices(word).any(|(at, _)| {
        edge(text[..at].chars().next_back()) && edge(text[at + word.len()..].chars().next())
    })
}

/// Every reason of an advice, those of cautions and of ruled out balls too.
fn reasons(advice: &Advice) -> impl Iterator<Item = &Reason> {
    let settled = advice.settled().iter().flat_map(|stage| stage.lines());
    let picks = advice.picks().iter().flat_map(|pick| pick.lines());
    let out = advice.ruled_out().iter().flat_map(|out| out.lines());
    let numbers = advice.spec().numbers();
    let lines = numbers.iter().flat_map(|number| number.lines());
    let cautions = advice
        .cautions()
        .iter()
        .chain(numbers.iter().flat_map(|number| number.cautions()));
    settled
        .chain(picks)
        .chain(out)
        .chain(lines)
        .chain(cautions.map(|caution| caution.reason()))
}

proptest! {
    #![proptest_config(cases(96))]

    #[test]
    fn customers_text_is_plain(profile in profile()) {
        let text = report::text(&advise(&profile), &Look::plain(Audience::Newcomer).wide(200));
        for mark in ["{", "}", "_"] {
            prop_assert!(!text.contains(mark), "`{mark}` in:\n{text}");
        }
        prop_assert_eq!(doubled(&text), None);
        let lower = text.to_lowercase();
        for word in AVOIDED {
            prop_assert!(!has_word(&lower, word), "`{word}` in:\n{text}");
        }
    }

    /// A fitter may read words of the trade, but no holes in the sentences either.
    #[test]
    fn fitters_text_is_whole(profile in profile()) {
        let text = report::text(&advise(&profile), &Look::plain(Audience::Fitter).wide(200));
        for mark in ["{", "}"] {
            prop_assert!(!text.contains(mark), "`{mark}` in:\n{text}");
        }
        prop_assert_eq!(doubled(&text), None);
    }

    /// No reason speaks of a value nobody knows, for any audience.
    #[test]
    fn no_reason_has_a_hole(profile in profile()) {
        let advice = advise(&profile);
        for reason in reasons(&advice) {
            for audience in [Audience::Newcomer, Audience::League, Audience::Fitter] {
                let text = reason.text(audience);
                // A rule may say itself that something isn't known; a placeholder may not.
                let own = crate::SHOP.rules().find(reason.rule()).is_some_and(|(_, rule)| rule.because(audience).contains("not known"));
                let whole = ["{", "}", "_"].iter().all(|mark| !text.contains(mark)) && (own || !text.contains("not known"));
                prop_assert!(whole && doubled(text).is_none(), "{}: {text}", reason.rule());
                prop_assert!(text.ends_with(['.', '!', '?', ')']), "{}: {text}", reason.rule());
            }
        }
    }
}
