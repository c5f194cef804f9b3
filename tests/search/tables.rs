//! Random tables against trying every point.

use proptest::prelude::*;
use spanwright::rules::Interval;
use spanwright::search::{Area, Decision, Outcome, Point, nearest, pair, settle, stretch};

use crate::plain;
use crate::table::{Bounds, Table, asked};

/// More than any of the tables can want.
const PLENTY: usize = 100_000;

fn settles_as_it_should(
    table: &Table,
    start: &Point,
    area: &Area,
    most: usize,
) -> Result<(), TestCaseError> {
    let target = table.pick(start);
    let truth = plain::turns(table, area, &target);
    table.calls.set(0);
    let outcome = settle(table, area, start, most);
    let calls = table.calls.get();
    let work = match outcome {
        Outcome::Proved { work } => {
            prop_assert!(!truth);
            work
        }
        Outcome::Turns { at, pick, work } => {
            let inside = (0..at.len())
                .all(|answer| plain::lies_in(table.shape(answer), area[answer], at[answer]));
            prop_assert!(inside);
            prop_assert_eq!(plain::possible(table, &at), Some(pick));
            prop_assert_ne!(pick, target);
            if work < most {
                for (answer, &back) in start.iter().enumerate() {
                    let changed = at[answer] != back;
                    if changed && plain::lies_in(table.shape(answer), area[answer], back) {
                        let less = plain::possible(table, &plain::with(&at, answer, back));
                        prop_assert!(less.is_none_or(|pick| pick == target));
                    }
                }
            }
            work
        }
        Outcome::NotSettled { work } => {
            prop_assert_eq!(work, most);
            work
        }
    };
    prop_assert!(
        work <= most && calls <= work,
        "{} calls are not {} looks",
        calls,
        work
    );
    Ok(())
}

fn one_answer_as_it_should(
    table: &Table,
    start: &Point,
    answer: usize,
    within: Interval,
    most: usize,
) -> Result<(), TestCaseError> {
    let truth = plain::nearest(table, start, answer, within);
    table.calls.set(0);
    let found = nearest(table, start, answer, within, most);
    prop_assert!(found.work <= most && table.calls.get() <= found.work);
    if found.complete {
        prop_assert_eq!(&found.turns, &truth);
    } else {
        prop_assert_eq!(found.work, most);
        prop_assert!(found.turns.iter().all(|turn| truth.contains(turn)));
    }
    let far = stretch(table, start, answer, within, most);
    if far.is_some() || most == PLENTY {
        prop_assert_eq!(far, plain::stretch(table, start, answer, within));
    }
    Ok(())
}

fn pairs_as_it_should(
    table: &Table,
    start: &Point,
    area: &Area,
    most: usize,
) -> Result<(), TestCaseError> {
    let truth = plain::pair(table, start, area);
    table.calls.set(0);
    let (found, certain) = pair(table, start, area, most);
    prop_assert!(table.calls.get() <= most);
    if certain {
        prop_assert_eq!(found, truth);
    } else if let Some(found) = found {
        // Perhaps not the nearest, but a pair, and then there is a nearest one.
        prop_assert!(truth.is_some());
        let [(one, a), (other, b)] = found.steps;
        let at = plain::with(&plain::with(start, one, a), other, b);
        prop_assert_eq!(plain::possible(table, &at), Some(found.pick));
        prop_assert_ne!(found.pick, table.pick(start));
        for (answer, value) in found.steps {
            let alone = plain::possible(table, &plain::with(start, answer, value));
            prop_assert!(alone.is_none_or(|pick| pick == table.pick(start)));
        }
    }
    prop_assert!(certain || most < PLENTY);
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn settle_tells_the_truth((table, start, area) in asked(), most in 0..60_usize) {
        settles_as_it_should(&table, &start, &area, most)?;
        settles_as_it_should(&table, &start, &area, PLENTY)?;
        let settled = settle(&table, &area, &start, PLENTY);
        let is_settled = !matches!(settled, Outcome::NotSettled { .. });
        prop_assert!(is_settled);
    }

    #[test]
    fn one_answer_turns_where_it_should((table, start, area) in asked(), most in 0..30_usize) {
        for answer in 0..area.len() {
            for most in [most, PLENTY] {
                one_answer_as_it_should(&table, &start, answer, area[answer], most)?;
            }
            prop_assert!(nearest(&table, &start, answer, area[answer], PLENTY).complete);
        }
    }

    #[test]
    fn two_answers_turn_where_they_should((table, start, area) in asked(), most in 0..100_usize) {
        pairs_as_it_should(&table, &start, &area, most)?;
        pairs_as_it_should(&table, &start, &area, PLENTY)?;
    }

    #[test]
    fn bounds_change_the_work_and_nothing_else((table, start, area) in asked()) {
        for answer in 0..area.len() {
            let found = |bounds| nearest(&table.with(bounds), &start, answer, area[answer], PLENTY).turns;
            prop_assert_eq!(found(Bounds::Open), found(Bounds::Tight));
        }
    }
}
