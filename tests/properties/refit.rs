//! A refit, for every bowler there could be: sums, small steps, health first, the mirror, plain words.

use proptest::prelude::*;
use spanwright::advice::{Change, Reason, Refit};
use spanwright::report::{self, Look};
use spanwright::rules::{Audience, Severity};

use crate::mirror::mirrored;
use crate::profiles::{Profile, profile};
use crate::{SHOP, cases};

/// A quarter inch in 64ths: no number changes by more at once. Our own screening value, from memory.
const MOST: i64 = 16;

/// Words for which a sentence is too long; house rule.
const WORDS: usize = 20;

fn refit(profile: &Profile) -> Refit {
    SHOP.refit(&profile.bowler()).unwrap()
}

fn sum(lines: &[Reason]) -> i64 {
    lines.iter().map(Reason::points).sum()
}

/// The profile with more to complain of than chance gives.
fn complaining() -> impl Strategy<Value = Profile> {
    let symptoms = proptest::sample::subsequence(spanwright::bowler::SYMPTOMS, 1..=3);
    let rest = proptest::option::of(proptest::sample::select(spanwright::bowler::REST_TESTS));
    (profile(), symptoms, rest).prop_map(|(profile, symptoms, rest)| {
        profile.with(
            "fit_check",
            serde_json::json!({ "symptoms": symptoms, "rest_test": rest }),
        )
    })
}

proptest! {
    #![proptest_config(cases(192))]

    #[test]
    fn ledgers_add_up_and_steps_are_small(profile in complaining()) {
        let refit = refit(&profile);
        for cause in refit.causes() {
            prop_assert_eq!(sum(cause.lines()), cause.total(), "{}", cause.word());
            prop_assert!(cause.total() > 0);
        }
        let totals: Vec<i64> = refit.causes().iter().map(|cause| cause.total()).collect();
        prop_assert!(totals.windows(2).all(|two| two[0] >= two[1]), "{totals:?}");
        for change in refit.changes() {
            let number = change.number();
            let Some(value) = number.value() else {
                prop_assert!(number.blank().is_some() && number.lines().is_empty() && change.later().is_empty());
                continue;
            };
            prop_assert_eq!(sum(number.lines()), value, "{}", number.name());
            // No number without the card's own.
            let mut at = change.card().unwrap();
            for &next in [value].iter().chain(change.later().iter().map(|(value, _)| value)) {
                prop_assert!((next - at).abs() <= MOST, "{} from {at} to {next}", number.name());
                at = next;
            }
        }
    }

    /// Numbness, swelling, pain at night: nothing else is said before, and nothing is changed.
    #[test]
    fn health_comes_first(profile in complaining(), ache in proptest::sample::select(&["numbness", "swelling", "night_pain"][..])) {
        let refit = refit(&profile.with("aches", serde_json::json!([ache])));
        prop_assert!(refit.is_held() && refit.steps().is_empty() && refit.offers().is_none());
        prop_assert_eq!(refit.cautions()[0].severity(), Severity::Serious);
        prop_assert!(refit.changes().iter().all(|change| change.number().value().is_none()));
        let text = report::refit_text(&refit, &Look::plain(Audience::Newcomer).wide(200));
        prop_assert!(!text.contains("Try "), "{text}");
    }

    /// Before the rest test nobody touches the size of the thumb hole.
    #[test]
    fn no_size_before_the_rest_test(profile in complaining()) {
        let mut profile = profile;
        profile.0["fit_check"].as_object_mut().unwrap().remove("rest_test");
        let refit = refit(&profile);
        for name in ["refit.tapes", "refit.thumb_bore"] {
            prop_assert_eq!(refit.change(name).and_then(|change| change.number().value()), None);
        }
    }

    #[test]
    fn left_is_the_mirror_image_of_right(profile in complaining()) {
        let (here, there) = (refit(&profile), refit(&mirrored(&profile)));
        let causes = |refit: &Refit| -> Vec<(&str, i64)> {
            refit.causes().iter().map(|cause| (cause.word(), cause.total())).collect()
        };
        prop_assert_eq!(causes(&here), causes(&there));
        let changes = |refit: &Refit, side: i64| -> Vec<(String, Option<i64>, Vec<i64>)> {
            let turn = |change: &Change| if change.number().name().ends_with("lateral") { side } else { 1 };
            refit.changes().iter().map(|change| (
                change.number().name().to_owned(),
                change.number().value().map(|value| value * turn(change)),
                change.later().iter().map(|(value, _)| value * turn(change)).collect(),
            )).collect()
        };
        prop_assert_eq!(changes(&here, 1), changes(&there, -1));
    }

    #[test]
    fn texts_are_whole_and_plain(profile in complaining()) {
        for caution in refit(&profile).cautions() {
            for audience in [Audience::Newcomer, Audience::League, Audience::Fitter] {
                let text = caution.reason().text(audience);
                prop_assert!(!text.contains("not known"), "{}: {text}", caution.reason().rule());
            }
        }
        let refit = refit(&profile);
        for audience in [Audience::Newcomer, Audience::League, Audience::Fitter] {
            let text = report::refit_text(&refit, &Look::plain(audience).wide(200));
            // A blank for the day is the only underscore, and only on the line to write.
            let marks = text.replace("____-__-__", "");
            let open = marks.contains(['{', '}']) || audience == Audience::Newcomer && marks.contains('_');
            prop_assert!(!open, "{text}");
        }
    }
}

/// Every sentence of a rule of refit can be said in one breath.
#[test]
fn sentences_are_short() {
    let rules = SHOP.rules().rules().iter();
    for rule in rules.filter(|rule| rule.file().starts_with("rules/refit.")) {
        let texts =
            [Audience::Newcomer, Audience::League, Audience::Fitter].map(|a| rule.because(a));
        for text in texts.into_iter().chain(rule.then()) {
            for sentence in text.split_inclusive(['.', '!', '?', ';']) {
                let words = sentence.split_whitespace().count();
                assert!(words <= WORDS, "{}: {words} words: {sentence}", rule.id());
            }
        }
    }
}
