//! Long ranges: with tight bounds a turn among 200,000 steps is found in tens of looks, and without bounds nothing wrong is said.

use proptest::prelude::*;
use spanwright::rules::{Interval, UNKNOWN};
use spanwright::search::{
    Decision, Holds, Outcome, Pair, Shape, Stretch, Turn, nearest, pair, settle, stretch,
};

const LAST: i64 = 200_000;

fn all() -> Interval {
    Interval::between(0, LAST)
}

/// One answer of many steps; another pick from each edge on.
#[derive(Debug)]
struct Stairs {
    edges: Vec<i64>,
    has_bounds: bool,
    has_cuts: bool,
    /// Values below this can't be given.
    lowest_possible: i64,
}

impl Decision for Stairs {
    type Pick = usize;

    fn answers(&self) -> usize {
        1
    }

    fn shape(&self, _: usize) -> Shape {
        Shape::Steps
    }

    fn pick(&self, point: &[i64]) -> usize {
        match point[0] {
            UNKNOWN => 0,
            value => self.edges.iter().filter(|&&edge| edge <= value).count(),
        }
    }

    fn is_possible(&self, point: &[i64]) -> bool {
        point[0] == UNKNOWN || point[0] >= self.lowest_possible
    }

    fn may_be_possible(&self, area: &[Interval]) -> bool {
        !self.has_bounds || area[0].may_be_unknown() || area[0].highest() >= self.lowest_possible
    }

    fn holds(&self, area: &[Interval], pick: &usize) -> Holds {
        let ends = [area[0].lowest(), area[0].highest()];
        let is_known = area[0].is_known();
        if self.has_bounds && is_known && ends.iter().all(|&end| self.pick(&[end]) == *pick) {
            Holds::Proved
        } else {
            Holds::Open { split: vec![0] }
        }
    }

    fn cuts(&self, _: usize) -> &[i64] {
        if self.has_cuts { &self.edges } else { &[] }
    }
}

fn stairs() -> impl Strategy<Value = Stairs> {
    let edges = prop::collection::btree_set(1..=LAST, 0..5);
    (edges, any::<bool>(), 0..LAST / 2).prop_map(|(edges, has_cuts, lowest_possible)| Stairs {
        edges: edges.into_iter().collect(),
        has_bounds: true,
        has_cuts,
        lowest_possible,
    })
}

/// Two answers of many steps; another pick where both reach so far.
#[derive(Debug)]
struct Corner([i64; 2]);

impl Decision for Corner {
    type Pick = bool;

    fn answers(&self) -> usize {
        2
    }

    fn shape(&self, _: usize) -> Shape {
        Shape::Steps
    }

    fn pick(&self, point: &[i64]) -> bool {
        point[0] >= self.0[0] && point[1] >= self.0[1]
    }

    fn holds(&self, area: &[Interval], pick: &bool) -> Holds {
        let corner = |end: fn(Interval) -> i64| self.pick(&[end(area[0]), end(area[1])]);
        if corner(Interval::lowest) == *pick && corner(Interval::highest) == *pick {
            Holds::Proved
        } else {
            Holds::Open { split: Vec::new() }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 500, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn tens_of_looks_find_a_turn(stairs in stairs(), start in 0..=LAST) {
        let start = start.max(stairs.lowest_possible);
        let found = nearest(&stairs, &[start], 0, all(), 130);
        prop_assert!(found.complete, "{} looks", found.work);
        // An edge among what can't be given turns nothing; the one at the lowest that can be is told by nobody.
        let below = stairs.edges.iter().rev().find(|&&edge| edge <= start && edge > stairs.lowest_possible);
        let above = stairs.edges.iter().find(|&&edge| edge > start);
        let turn = |from: i64, to: i64| Turn { answer: 0, from, to, pick: stairs.pick(&[to]) };
        let expected: Vec<_> = below.map(|&edge| turn(edge, edge - 1)).into_iter().chain(above.map(|&edge| turn(edge - 1, edge))).collect();
        prop_assert_eq!(found.turns, expected);
        let reach = Stretch {
            lowest: below.map_or((stairs.lowest_possible, false), |&edge| (edge, true)),
            highest: above.map_or((LAST, false), |&edge| (edge - 1, true)),
        };
        prop_assert_eq!(stretch(&stairs, &[start], 0, all(), 130), Some(reach));
    }

    #[test]
    fn not_many_more_where_nothing_is_told(stairs in stairs()) {
        let found = nearest(&stairs, &[UNKNOWN], 0, all(), 250);
        prop_assert!(found.complete, "{} looks", found.work);
        // What is picked where nothing is told is picked below the first edge.
        let first = stairs.edges.first().copied();
        let expected = match first {
            _ if stairs.pick(&[stairs.lowest_possible]) != 0 => vec![Turn {
                answer: 0,
                from: UNKNOWN,
                to: stairs.lowest_possible,
                pick: stairs.pick(&[stairs.lowest_possible]),
            }],
            Some(edge) => vec![Turn { answer: 0, from: edge - 1, to: edge, pick: 1 }],
            None => Vec::new(),
        };
        prop_assert_eq!(found.turns, expected);
    }

    #[test]
    fn without_bounds_nothing_wrong_is_said(stairs in stairs(), start in 0..=LAST, most in 0..2000_usize) {
        let stairs = Stairs { has_bounds: false, ..stairs };
        let start = start.max(stairs.lowest_possible);
        let found = nearest(&stairs, &[start], 0, all(), most);
        prop_assert!(found.work <= most);
        for turn in found.turns {
            prop_assert!(stairs.edges.contains(&turn.from.max(turn.to)) && (turn.from - turn.to).abs() == 1);
        }
        if let Outcome::Proved { .. } = settle(&stairs, &[all()], &[start], most) {
            prop_assert!(false, "nobody could know");
        }
    }

    #[test]
    fn a_pair_among_forty_thousand_million(corner in (1..=LAST, 1..=LAST)) {
        let corner = Corner([corner.0, corner.1]);
        let (found, is_certain) = pair(&corner, &[0, 0], &[all(), all()], 500);
        let steps = [(0, corner.0[0]), (1, corner.0[1])];
        prop_assert_eq!(found, Some(Pair { steps, pick: true }));
        prop_assert!(is_certain);
    }

    #[test]
    fn and_where_none_can_be(corner in 1..=LAST) {
        let corner = Corner([corner, LAST + 1]);
        prop_assert_eq!(pair(&corner, &[0, 0], &[all(), all()], 10), (None, true));
    }
}
