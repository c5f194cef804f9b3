//! How sure: the ranges at both ends, the box of what is given or taken by two thousand random points.

use rstest::rstest;
use spanwright::advice::{HowSure, Over, Picked, Shop};
use spanwright::bowler::{Bowler, Shape, answer};
use spanwright::report::{self, Look};
use spanwright::rules::Audience;

use crate::demos::{bowlers, shop};
use crate::written::bowler;

/// Of how many random points in the box.
const POINTS: usize = 2_000;

fn picked(shop: &Shop, bowler: &Bowler, fact: &'static str, value: i64) -> Picked {
    shop.pick(&bowler.with(fact, Some(value))).unwrap()
}

#[test]
fn each_range_keeps_the_pick_up_to_both_ends_and_not_beyond() {
    let shop = shop();
    for (name, bowler) in bowlers() {
        let now = shop.pick(&bowler).unwrap();
        let sure = shop.how_sure(&bowler).unwrap();
        assert_eq!(shop.advise(&bowler).unwrap().how_sure(), Some(&sure));
        for range in sure.ranges() {
            let fact = range.fact();
            let (lowest, highest) = (range.lowest().0, range.highest().0);
            assert!((lowest..=highest).contains(&range.value().0));
            // Every step of a short range, sixty of a long one.
            let step = usize::try_from((highest - lowest) / 60).unwrap().max(1);
            for value in (lowest..=highest).step_by(step).chain([highest]) {
                assert_eq!(
                    picked(&shop, &bowler, fact, value),
                    now,
                    "{name} {fact} {value}"
                );
            }
            if range.turns_below() {
                assert_ne!(
                    picked(&shop, &bowler, fact, lowest - 1),
                    now,
                    "{name} {fact}"
                );
            }
            if range.turns_above() {
                assert_ne!(
                    picked(&shop, &bowler, fact, highest + 1),
                    now,
                    "{name} {fact}"
                );
            }
        }
    }
}

/// The answers with a width and what they may be, inside their own ranges.
fn widths(bowler: &Bowler, sure: &HowSure) -> Vec<(&'static str, i64, i64)> {
    let stated = sure.ranges().iter().filter_map(|range| {
        let (width, _) = range.give_or_take()?;
        let Shape::Number {
            lowest, highest, ..
        } = answer(range.fact())?.shape()
        else {
            return None;
        };
        let value = bowler.answer(range.fact())?;
        Some((
            range.fact(),
            (value - width).max(lowest),
            (value + width).min(highest),
        ))
    });
    stated.collect()
}

const LEAGUE: &str = "intent: hook\nexperience: league\nrev_rate: 290 rpm\nbody_weight: 160 lb\n\
    speed: { value: 16 mph, where: release }\nlanes: [oily]\nhold_test: { passed: 14 lb, failed: 16 lb }\n";

#[rstest]
#[case("give_or_take: { speed: 1 mph, rev_rate: 20 rpm }\n")]
#[case("give_or_take: { speed: 0.1 mph, rev_rate: 1 rpm, body_weight: 2 lb }\n")]
#[case("give_or_take: { body_weight: 10 lb, hold_test: { passed: 0.25 lb } }\n")]
#[case(
    "give_or_take: { speed: 8 mph, rev_rate: 150 rpm, hold_test: { passed: 2 lb, failed: 2 lb } }\n"
)]
fn what_is_said_of_the_box_is_so_at_two_thousand_points(#[case] stated: &str) {
    let shop = shop();
    let bowler = bowler(&format!("{LEAGUE}{stated}"));
    let now = shop.pick(&bowler).unwrap();
    let sure = shop.how_sure(&bowler).unwrap();
    let widths = widths(&bowler, &sure);
    assert!(!widths.is_empty());
    let mut random = 1_u64;
    let mut other = None;
    for _ in 0..POINTS {
        let point = widths
            .iter()
            .fold(bowler.clone(), |bowler, &(fact, low, high)| {
                let among = u64::try_from(high - low + 1).unwrap();
                // A linear congruential generator, its high bits (D. E. Knuth's multiplier, from memory).
                random = random
                    .wrapping_mul(6_364_136_223_846_793_005)
                    .wrapping_add(1);
                let value = low + i64::try_from((random >> 33) % among).unwrap();
                bowler.with(fact, Some(value))
            });
        let test = (
            point.answer("bowler.hold_passed"),
            point.answer("bowler.hold_failed"),
        );
        if test.0 >= test.1 && test.1.is_some() {
            continue;
        }
        let picked = shop.pick(&point).unwrap();
        if picked != now {
            other = Some(picked);
            break;
        }
    }
    match sure.over() {
        Over::Stays => assert_eq!(other, None),
        Over::Breaks { steps, picked, .. } => {
            let there = steps.iter().fold(bowler.clone(), |bowler, step| {
                bowler.with(step.fact(), Some(step.value()))
            });
            assert_eq!(&shop.pick(&there).unwrap(), picked);
            assert_ne!(picked, &now);
            for step in steps {
                let (_, low, high) = widths.iter().find(|w| w.0 == step.fact()).unwrap();
                assert!((low..=high).contains(&&step.value()));
            }
        }
        found => panic!("not settled: {found:?}"),
    }
}

fn text(stated: &str, audience: Audience) -> String {
    let advice = shop().advise(&bowler(stated)).unwrap();
    report::text(&advice, &Look::plain(audience))
}

#[test]
fn a_customer_hears_one_sentence_of_it() {
    for (name, bowler) in bowlers() {
        let advice = shop().advise(&bowler).unwrap();
        for audience in [Audience::Newcomer, Audience::League] {
            let text = report::text(&advice, &Look::plain(audience));
            let told = text.matches("would still be first").count()
                + text.matches("may be a little off").count();
            let sure = advice.how_sure().unwrap();
            let sayable = sure.narrowest_for_customers().is_some()
                || matches!(sure.over(), Over::Breaks { .. });
            assert_eq!(
                told,
                usize::from(sayable && !advice.picks().is_empty()),
                "{name}"
            );
        }
    }
}

/// Rounded inward: both ends that are said keep the pick, and a ball is counted in whole pounds.
#[test]
fn customers_are_told_no_more_than_the_range() {
    let mut said = 0;
    for (name, bowler) in bowlers() {
        let sure = shop().how_sure(&bowler).unwrap();
        for range in sure.ranges() {
            let Some(ends) = range.practical() else {
                continue;
            };
            let Shape::Number { notation, .. } = answer(range.fact()).unwrap().shape() else {
                panic!("{} is no number", range.fact());
            };
            said += 1;
            let [low, high] = ends.map(|end| notation.read(end).unwrap());
            assert!(
                range.lowest().0 <= low && high <= range.highest().0,
                "{name}"
            );
            assert!((low..=high).contains(&range.value().0), "{name}");
            if range.fact().starts_with("bowler.hold") {
                assert_eq!((low % 100, high % 100), (0, 0), "{name}");
            }
        }
    }
    assert!(said > 5);
}

/// The value that is said to break the pick does, and lies within what is given or taken; else no value is said.
#[rstest]
#[case("hold_test: { passed: 1 lb }", true)]
#[case("hold_test: { passed: 0.7 lb }", false)]
fn a_break_is_told_in_whole_pounds_or_without_a_number(#[case] stated: &str, #[case] told: bool) {
    let profile = format!("{LEAGUE}give_or_take: {{ {stated} }}\n");
    let customer = text(&profile, Audience::Newcomer);
    let customer = customer.split_whitespace().collect::<Vec<_>>().join(" ");
    let sentence = customer.split("a little off").nth(1).unwrap();
    let sentence = sentence.split('.').next().unwrap();
    assert_eq!(sentence.starts_with(": if you held"), told, "{sentence}");
    assert_eq!(
        sentence.starts_with(", and then we might pick"),
        !told,
        "{sentence}"
    );
}

#[test]
fn with_nothing_measured_there_is_nothing_to_be_sure_of() {
    let stated = "intent: straight\n";
    assert!(
        shop()
            .how_sure(&bowler(stated))
            .unwrap()
            .ranges()
            .is_empty()
    );
    assert!(!text(stated, Audience::Newcomer).contains("would still be first"));
    assert!(!text(stated, Audience::Fitter).contains("How sure"));
}

#[test]
fn numbers_that_change_nothing_are_told_to_the_fitter_alone() {
    let stated = "intent: straight\ntilt: 12 deg\n";
    assert!(!text(stated, Audience::Newcomer).contains("would still be first"));
    let fitter = text(stated, Audience::Fitter);
    assert!(fitter.contains("Nothing in the measured numbers changes the pick."));
}
