//! Random tables against trying every point.

use proptest::prelude::*;
use spanwright::search::{Area, Point};

use crate::checks::{Asked, Counted, PLENTY};
use crate::table::{Table, asked};

/// The table asked about, with bounds or without.
fn about<'a>(
    (table, start, area): &'a (Table, Point, Area),
    has_bounds: bool,
) -> Asked<'a, Table, Table> {
    Asked {
        searched: Counted::new(table, has_bounds),
        truth: table,
        start,
        area,
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 3000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn with_plenty_of_work_all_is_told(asked in asked()) {
        about(&asked, true).all(PLENTY)?;
    }

    #[test]
    fn bounds_save_work_and_nothing_else(asked in asked()) {
        about(&asked, false).all(PLENTY)?;
    }

    #[test]
    fn a_work_limit_never_makes_it_wrong(asked in asked(), most in 0..150_usize, has_bounds: bool) {
        about(&asked, has_bounds).all(most)?;
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 60, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn nor_does_any_work_limit(asked in asked()) {
        for most in 0..120 {
            about(&asked, true).all(most)?;
        }
    }
}
