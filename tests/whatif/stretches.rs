//! Stretches: one pick from end to end and another beyond, a rev rate instead of the word for it, and nothing said to a customer that
//! isn't so at every value the words speak of.

use proptest::prelude::*;
use rstest::rstest;
use spanwright::advice::{Picked, Shop, Turning, WhatIf};
use spanwright::bowler::{Bowler, Shape, answer};
use spanwright::report::{self, Look};
use spanwright::rules::Audience;

use crate::brute::{changed, writable};
use crate::demos::{bowlers, demo, shop};
use crate::profiles::profile;
use crate::written::bowler;

/// Looked at so many places within a stretch, besides its ends.
const PLACES: i64 = 40;

fn picked(shop: &Shop, bowler: &Bowler, fact: &'static str, value: i64) -> Option<Picked> {
    let other = changed(bowler, fact, value);
    writable(&other).then(|| shop.pick(&other).unwrap())
}

/// The values that a number may be given.
fn range(fact: &str) -> (i64, i64) {
    match answer(fact).unwrap().shape() {
        Shape::Number {
            lowest, highest, ..
        } => (lowest, highest),
        _ => panic!("{fact} is no number"),
    }
}

fn places((low, high): (i64, i64)) -> impl Iterator<Item = i64> {
    (0..=PLACES).map(move |place| low + (high - low) * place / PLACES)
}

fn verify(shop: &Shop, bowler: &Bowler, found: &WhatIf) {
    for turn in found.turns() {
        let Some(stretch) = turn.stretch() else {
            continue;
        };
        let fact = turn.step().fact();
        let (low, high) = (stretch.lowest().0, stretch.highest().0);
        assert!((low..=high).contains(&turn.step().to()), "{fact}");
        for value in places((low, high)) {
            let there = picked(shop, bowler, fact, value);
            assert_eq!(there.as_ref(), Some(turn.picked()), "{fact} {value}");
        }
        let (lowest, highest) = range(fact);
        // The next value that can be given has another pick, or there is none.
        let mut below = (lowest..low).rev();
        let mut above = high + 1..=highest;
        let next = below.find_map(|value| picked(shop, bowler, fact, value));
        assert_eq!(next.is_some(), stretch.turns_below(), "{fact}");
        assert_ne!(next.as_ref(), Some(turn.picked()), "{fact}");
        let next = above.find_map(|value| picked(shop, bowler, fact, value));
        assert_eq!(next.is_some(), stretch.turns_above(), "{fact}");
        assert_ne!(next.as_ref(), Some(turn.picked()), "{fact}");
    }
}

#[test]
fn stretches_of_the_demo_bowlers_hold_from_end_to_end_and_no_farther() {
    let shop = shop();
    for (_, bowler) in bowlers() {
        verify(&shop, &bowler, &shop.what_if(&bowler).unwrap());
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 8, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn stretches_of_random_bowlers_hold_from_end_to_end_and_no_farther(profile in profile()) {
        let shop = shop();
        let bowler = profile.bowler();
        verify(&shop, &bowler, &shop.what_if(&bowler).unwrap());
    }
}

/// Whatever another pick is found at, some stretch holds it.
#[test]
fn stretches_of_what_is_not_known_leave_nothing_out() {
    let shop = shop();
    for file in ["knows-nothing", "backup-bowler"] {
        let bowler = demo(file);
        let found = shop.what_if(&bowler).unwrap();
        assert!(found.unfinished().is_empty());
        for fact in ["bowler.target_weight", "bowler.rev_rate"] {
            for value in places(range(fact)) {
                let then = picked(&shop, &bowler, fact, value).unwrap();
                let is_told = found.turns().iter().any(|turn| {
                    let stretch = turn.stretch();
                    let ends = stretch.map(|s| s.lowest().0..=s.highest().0);
                    turn.step().fact() == fact
                        && ends.is_some_and(|ends| ends.contains(&value))
                        && *turn.picked() == then
                });
                assert_eq!(is_told, then != *found.now(), "{file} {fact} {value}");
            }
        }
    }
}

/// What a customer hears of a number: the values the sentence speaks of, read from its words.
fn spoken_of(turn: &Turning, phrase: &str) -> (i64, i64) {
    let Shape::Number { notation, .. } = answer(turn.step().fact()).unwrap().shape() else {
        panic!("no number")
    };
    let (lowest, highest) = range(turn.step().fact());
    let words: Vec<&str> = phrase.split(' ').collect();
    let number = |word: &&str| {
        word.trim_start_matches('$')
            .starts_with(|c: char| c.is_ascii_digit())
    };
    let numbers: Vec<i64> = words
        .iter()
        .enumerate()
        .filter(|(_, word)| number(word))
        .map(|(place, word)| {
            let unit = words.get(place + 1).copied().unwrap_or("");
            let with_unit = format!("{word} {unit}");
            let read = notation.read(&with_unit).or_else(|_| notation.read(word));
            read.unwrap()
        })
        .collect();
    let has = |part: &str| phrase.contains(part);
    match numbers[..] {
        [low, high] => (low, high),
        [one] if has("or more") || has(" on") || has("farther") => (one, highest),
        [one] if has("or less") || has("or fewer") || has("only") || has("already") => {
            (lowest, one)
        }
        [one] if has("elow ") || has("under ") || has("less than") => (lowest, one - 1),
        [one] => (one, one),
        _ => panic!("{phrase}"),
    }
}

#[test]
fn customers_hear_what_is_so_at_every_value_they_are_told_of() {
    let shop = shop();
    let mut heard = 0;
    for (name, bowler) in bowlers() {
        let found = shop.what_if(&bowler).unwrap();
        for turn in found.turns() {
            let Some(stretch) = turn.stretch() else {
                continue;
            };
            let Some(phrase) = turn.said(Audience::Newcomer) else {
                continue;
            };
            if answer(turn.step().fact()).unwrap().name().contains("pap") {
                continue;
            }
            heard += 1;
            let (low, high) = spoken_of(turn, phrase);
            assert!(low <= high, "{name}: {phrase}");
            // Values that can't be given say nothing.
            let within = |value: i64| value >= stretch.lowest().0 && value <= stretch.highest().0;
            for value in places((low, high)) {
                let possible = writable(&changed(&bowler, turn.step().fact(), value));
                assert!(within(value) || !possible, "{name}: {phrase} at {value}");
            }
            assert!(
                !phrase.contains(" lb") || !phrase.contains('.'),
                "{name}: {phrase}"
            );
            assert!(
                !phrase.contains('$') || !phrase.contains('.'),
                "{name}: {phrase}"
            );
        }
    }
    assert!(heard > 30);
}

/// Each sentence of a customer's list leads to another ball than those about the same answer.
#[test]
fn a_customer_never_reads_one_pick_twice_of_one_number() {
    let shop = shop();
    for (name, bowler) in bowlers() {
        let text = report::what_if_text(
            &shop.what_if(&bowler).unwrap(),
            &Look::plain(Audience::Newcomer),
        );
        for start in ["If your body weight", "If you weighed", "If you asked for"] {
            let joined = text.split_whitespace().collect::<Vec<_>>().join(" ");
            let lines = joined.split("- ").filter(|line| line.starts_with(start));
            let picks: Vec<&str> = lines
                .filter_map(|line| line.split("pick ").nth(1))
                .collect();
            let mut once = picks.clone();
            once.dedup();
            assert_eq!(once, picks, "{name}");
        }
    }
}

/// The rate is tried without the word, as a profile has one key for both.
#[rstest]
#[case("two-handed-no-thumb", 300, "knapweed@14")]
#[case("backup-bowler", 260, "eyebright@13")]
fn a_rev_rate_is_told_in_the_place_of_the_word(
    #[case] file: &str,
    #[case] rate: i64,
    #[case] ball: &str,
) {
    let shop = shop();
    let bowler = demo(file);
    let then = picked(&shop, &bowler, "bowler.rev_rate", rate).unwrap();
    assert_eq!(then.ball(), Some(ball));
    let found = shop.what_if(&bowler).unwrap();
    let told = found.turns().iter().find(|turn| {
        let stretch = turn.stretch();
        turn.step().fact() == "bowler.rev_rate"
            && stretch.is_some_and(|s| (s.lowest().0..=s.highest().0).contains(&rate))
    });
    let told = told.unwrap();
    assert_eq!(told.picked(), &then);
    assert_eq!(told.instead_of(), Some("bowler.rev_level"));
    assert!(!found.steady().contains(&"bowler.rev_rate"));
}

/// And the word without the rate.
#[test]
fn a_word_for_the_revs_is_told_in_the_place_of_the_rate() {
    let shop = shop();
    let rate = "intent: hook\nexperience: league\nrev_rate: 300 rpm\nlanes: [house]\n\
        hold_test: { passed: 14 lb, failed: 16 lb }\nspeed: { value: 16 mph, where: release }\n";
    let bowler = bowler(rate);
    let found = shop.what_if(&bowler).unwrap();
    for word in 0..3 {
        let then = picked(&shop, &bowler, "bowler.rev_level", word).unwrap();
        let told = found
            .turns()
            .iter()
            .find(|turn| turn.step().fact() == "bowler.rev_level" && turn.step().to() == word);
        assert_eq!(told.is_some(), then != *found.now(), "{word}");
        assert!(told.is_none_or(|turn| *turn.picked() == then));
        assert!(told.is_none_or(|turn| turn.instead_of() == Some("bowler.rev_rate")));
    }
}

fn text(profile: &str, audience: Audience) -> String {
    let found = shop().what_if(&bowler(profile)).unwrap();
    let text = report::what_if_text(&found, &Look::plain(audience));
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The shelf's Hawkbit has no 11 lb, so another weight is picked than the one looked for.
#[test]
fn a_weight_that_the_ball_does_not_have_is_told() {
    let shop = shop();
    let bowler = demo("league-tired-ball");
    let fitter = report::what_if_text(
        &shop.what_if(&bowler).unwrap(),
        &Look::plain(Audience::Fitter),
    );
    let fitter = fitter.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        fitter.contains("we'd look for 11 lb and pick Hawkbit, 10 lb"),
        "{fitter}"
    );
    assert!(!fitter.contains("we'd look for 10 lb and pick Hawkbit, 10 lb"));
}

/// Also as things stand.
#[test]
fn a_weight_looked_for_is_told_beside_the_ball_that_has_another() {
    let shop = shop();
    let bowler = demo("league-tired-ball").with("bowler.target_weight", Some(1_100));
    let found = shop.what_if(&bowler).unwrap();
    assert_eq!(found.now().weight(), Some("11 lb"));
    assert_ne!(found.now().name(), Some("Hawkbit, 11 lb"));
    for audience in [Audience::Newcomer, Audience::Fitter] {
        let text = report::what_if_text(&found, &Look::plain(audience));
        let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(text.contains("The weight we look for is 11 lb."), "{text}");
    }
}

#[test]
fn without_a_ball_nothing_is_the_same_ball() {
    let found = text(
        "intent: learn\nbudget: $1\nhold_test: { passed: 13 lb }\n",
        Audience::Fitter,
    );
    assert!(
        found.contains("no ball on the shelf is right. The weight we look for is"),
        "{found}"
    );
    assert!(!found.contains("same ball"), "{found}");
}
