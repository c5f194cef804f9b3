//! Every ledger adds up to the number beside it.

use proptest::prelude::*;
use spanwright::advice::Reason;

use crate::profiles::profile;
use crate::{advise, cases};

fn sum(lines: &[Reason]) -> i64 {
    lines.iter().map(Reason::points).sum()
}

proptest! {
    #![proptest_config(cases(96))]

    #[test]
    fn ledgers_add_up(profile in profile()) {
        let advice = advise(&profile);
        for stage in advice.settled() {
            prop_assert_eq!(sum(stage.lines()), stage.total(), "{}", stage.stage());
        }
        for pick in advice.picks() {
            prop_assert_eq!(sum(pick.lines()), pick.total(), "{}", pick.ball());
        }
        for number in advice.spec().numbers() {
            if let Some(value) = number.value() {
                prop_assert_eq!(sum(number.lines()), value, "{}", number.name());
                prop_assert!(number.blank().is_none());
            } else {
                prop_assert!(number.blank().is_some(), "{} is blank and doesn't say why", number.name());
                prop_assert!(number.shop().is_empty());
            }
        }
        let stages = advice.settled().iter().flat_map(|stage| stage.lines());
        let picks = advice.picks().iter().flat_map(|pick| pick.lines());
        let numbers = advice.spec().numbers().iter().flat_map(|number| number.lines());
        for line in stages.chain(picks).chain(numbers).filter(|line| line.role() == "dispute") {
            prop_assert_eq!(line.points(), 0, "{} only speaks", line.rule());
        }
    }

    /// Places count from 1, and totals never rise from one place to the next.
    #[test]
    fn picks_stand_in_the_order_of_their_totals(profile in profile()) {
        let advice = advise(&profile);
        let totals: Vec<i64> = advice.picks().iter().map(|pick| pick.total()).collect();
        prop_assert!(totals.windows(2).all(|two| two[0] >= two[1]), "{totals:?}");
        prop_assert!(advice.picks().iter().enumerate().all(|(index, pick)| pick.place() == index + 1));
    }
}
