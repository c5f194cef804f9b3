//! Each turning point on both sides, by whole consultations.

use proptest::prelude::*;
use proptest::test_runner::FileFailurePersistence;
use rstest::rstest;
use spanwright::advice::{Picked, Shop, Together, Turning, WhatIf};
use spanwright::bowler::Bowler;

use crate::demos::{bowlers, demo, shop};
use crate::profiles::profile;
use crate::written::bowler;

/// What a whole consultation picks.
fn advised(shop: &Shop, bowler: &Bowler) -> Picked {
    Picked::of(&shop.advise(bowler).unwrap())
}

/// The bowler who gives the answer of a turning point, and whatever follows from it.
fn turned(bowler: &Bowler, turn: &Turning) -> Bowler {
    let also = turn.also().iter();
    let other = also.fold(
        bowler.with(turn.step().fact(), Some(turn.step().to())),
        |bowler, also| bowler.with(also.fact(), Some(also.to())),
    );
    match turn.instead_of() {
        Some(fact) => other.with(fact, None),
        None => other,
    }
}

/// Both sides of every turn are as told.
fn verify(shop: &Shop, bowler: &Bowler, found: &WhatIf) {
    let now = advised(shop, bowler);
    assert_eq!(found.now(), &now);
    for turn in found.turns() {
        let fact = turn.step().fact();
        if let Some((keeps, _)) = turn.keeps() {
            let kept = advised(shop, &bowler.with(fact, Some(keeps)));
            assert_eq!(kept, now, "{fact} at {keeps} keeps");
        }
        let then = advised(shop, &turned(bowler, turn));
        assert_eq!(&then, turn.picked(), "{fact} at {}", turn.step().to());
        assert_ne!(then, now, "{fact} at {}", turn.step().to());
        assert_eq!(turn.changed(), now.changed(&then));
    }
    if let Together::Nearest { steps, picked, .. } = found.together() {
        let other = steps.iter().fold(bowler.clone(), |bowler, step| {
            bowler.with(step.fact(), Some(step.to()))
        });
        assert_eq!(&advised(shop, &other), picked);
        assert_ne!(picked, &now);
    }
}

#[test]
fn each_turn_of_each_demo_bowler_is_so_on_both_sides() {
    let shop = shop();
    for (name, bowler) in bowlers() {
        let found = shop.what_if(&bowler).unwrap();
        assert!(found.unfinished().is_empty(), "{name}");
        assert!(!found.turns().is_empty(), "{name}");
        verify(&shop, &bowler, &found);
    }
}

#[test]
fn the_quick_door_picks_what_a_consultation_picks() {
    let shop = shop();
    for (name, bowler) in bowlers() {
        assert_eq!(
            shop.pick(&bowler).unwrap(),
            advised(&shop, &bowler),
            "{name}"
        );
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: Some(Box::new(FileFailurePersistence::WithSource("proptest-regressions"))), ..ProptestConfig::default() })]

    #[test]
    fn turns_of_random_bowlers_are_so_on_both_sides(profile in profile()) {
        let shop = shop();
        let bowler = profile.bowler();
        let found = shop.what_if(&bowler).unwrap();
        prop_assert!(found.unfinished().is_empty());
        verify(&shop, &bowler, &found);
    }
}

#[test]
fn given_answers_stand_before_others_and_near_steps_before_far_ones() {
    let shop = shop();
    for (name, bowler) in bowlers() {
        let found = shop.what_if(&bowler).unwrap();
        let order = |turn: &Turning| (!turn.is_told(), turn.changed() == ["grip"], turn.distance());
        assert!(found.turns().is_sorted_by_key(order), "{name}");
        for turn in found.turns() {
            let forms = std::iter::once(turn.step().fact()).chain(turn.instead_of());
            let told = forms.into_iter().any(|form| bowler.tells(form));
            assert_eq!(turn.is_told(), told, "{name}");
        }
    }
}

/// A hold test that is passed at a weight that failed can't be written down, so it is no step.
#[test]
fn what_a_profile_refuses_is_never_told() {
    let shop = shop();
    for (name, bowler) in bowlers() {
        let found = shop.what_if(&bowler).unwrap();
        for turn in found.turns() {
            let other = turned(&bowler, turn);
            let answer = |name: &str| other.answer(name);
            if let (Some(passed), Some(failed)) =
                (answer("bowler.hold_passed"), answer("bowler.hold_failed"))
            {
                assert!(passed < failed, "{name}");
            }
            if answer("bowler.ball_now") == Some(0) {
                assert_eq!(answer("bowler.ball_now_weight"), None, "{name}");
            }
            let revs = (answer("bowler.rev_rate"), answer("bowler.rev_level"));
            assert!(revs.0.is_none() || revs.1.is_none(), "{name}");
            let covers = answer("owned.covers").unwrap_or(0);
            let count = answer("owned.count").unwrap_or(0);
            assert!(i64::from(covers.count_ones()) <= count, "{name}");
        }
    }
}

#[test]
fn a_ball_owned_more_is_counted() {
    let found = shop().what_if(&demo("sore-thumb")).unwrap();
    let owned = found.turns().iter();
    let owned: Vec<&Turning> = owned
        .filter(|turn| turn.step().fact() == "owned.covers" && !turn.also().is_empty())
        .collect();
    assert!(!owned.is_empty());
    for turn in owned {
        let also = &turn.also()[0];
        assert_eq!((also.fact(), also.to()), ("owned.count", 2));
    }
}

#[rstest]
#[case("settled: { weight: 13 lb }", &["weight"])]
#[case("settled: { grip: fingertip }", &["grip"])]
#[case("settled: { ball: daisy@12 }", &["weight", "ball"])]
#[case("settled: { ball: daisy }", &["ball"])]
#[case("settled: { ball: daisy, weight: 13 lb, grip: fingertip }", &["weight", "grip", "ball"])]
fn what_is_settled_does_not_change(#[case] settled: &str, #[case] stages: &[&str]) {
    let shop = shop();
    let profile = format!("intent: learn\nage: 40\nhold_test: {{ passed: 13 lb }}\n{settled}\n");
    let bowler = bowler(&profile);
    let found = shop.what_if(&bowler).unwrap();
    assert_eq!(found.settled(), stages);
    let model = |picked: &Picked| {
        picked
            .ball()
            .map(|ball| ball.split('@').next().unwrap().to_owned())
    };
    for turn in found.turns() {
        let (now, then) = (found.now(), turn.picked());
        if stages.contains(&"weight") {
            assert_eq!(now.weight(), then.weight());
        }
        if stages.contains(&"grip") {
            assert_eq!(now.grip(), then.grip());
        }
        if stages.contains(&"ball") && then.ball().is_some() {
            assert_eq!(model(now), model(then));
        }
        if then.ball().is_some() {
            assert_eq!(&advised(&shop, &turned(&bowler, turn)), then);
        }
    }
    if stages.len() == 3 {
        assert!(found.turns().is_empty());
    }
}

#[test]
fn a_settled_ball_that_nobody_knows_is_told_as_in_an_advice() {
    let bowler = bowler("settled: { ball: daysy }\n");
    let trouble = shop().what_if(&bowler).unwrap_err().to_string();
    assert!(trouble.contains("did you mean `daisy`?"), "{trouble}");
}
