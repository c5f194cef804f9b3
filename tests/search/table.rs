//! A decision that is nothing but a table: a pick for each point of a few small answers, and bounds as tight as wished.

use proptest::prelude::*;
use proptest::sample::{Index, select};
use spanwright::rules::{Interval, UNKNOWN};
use spanwright::search::{Area, Decision, Holds, Point, Shape};

use crate::plain;

/// How much the table's bounds show.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Bounds {
    /// All there is to show.
    Tight,
    /// Some of it, by chance; the number tells which.
    Loose(u64),
}

#[derive(Clone, Debug)]
pub struct Answer {
    pub shape: Shape,
    pub lowest: i64,
    pub highest: i64,
    pub cuts: Vec<i64>,
}

impl Answer {
    /// Everything it may be, not known last.
    pub fn values(&self) -> Vec<i64> {
        (self.lowest..=self.highest).chain([UNKNOWN]).collect()
    }

    pub fn all(&self) -> Interval {
        Interval::between(self.lowest, self.highest).or_unknown()
    }
}

#[derive(Clone, Debug)]
pub struct Table {
    pub answers: Vec<Answer>,
    bounds: Bounds,
    /// By place; a point that isn't possible has none.
    picks: Vec<Option<u8>>,
    split: Vec<usize>,
}

impl Table {
    fn place(&self, point: &[i64]) -> usize {
        assert_eq!(point.len(), self.answers.len());
        self.answers
            .iter()
            .zip(point)
            .fold(0, |place, (answer, &value)| {
                let values = answer.values();
                let index = values.iter().position(|&known| known == value);
                let index =
                    index.unwrap_or_else(|| panic!("asked for {value}, which isn't in {answer:?}"));
                place * values.len() + index
            })
    }

    /// Whether the bounds show what there is to show here.
    fn shows(&self, area: &[Interval]) -> bool {
        match self.bounds {
            Bounds::Tight => true,
            Bounds::Loose(seed) => {
                let ends = area.iter().flat_map(|span| [span.lowest(), span.highest()]);
                let mixed = ends.fold(seed, |sum, end| {
                    (sum ^ end as u64)
                        .wrapping_mul(0x9e37_79b9_7f4a_7c15)
                        .rotate_left(29)
                });
                mixed % 3 != 0
            }
        }
    }
}

impl Decision for Table {
    type Pick = u8;

    fn answers(&self) -> usize {
        self.answers.len()
    }

    fn shape(&self, answer: usize) -> Shape {
        self.answers[answer].shape
    }

    fn pick(&self, point: &[i64]) -> u8 {
        // A point that isn't possible has a pick all the same, which must never count.
        self.picks[self.place(point)].unwrap_or(9)
    }

    fn is_possible(&self, point: &[i64]) -> bool {
        self.picks[self.place(point)].is_some()
    }

    fn holds(&self, area: &[Interval], pick: &u8) -> Holds {
        if self.shows(area) && !plain::turns(self, &area.to_vec(), pick) {
            return Holds::Proved;
        }
        Holds::Open {
            split: self.split.clone(),
        }
    }

    fn may_be_possible(&self, area: &[Interval]) -> bool {
        let points = plain::points(self, &area.to_vec());
        !self.shows(area) || points.iter().any(|point| self.is_possible(point))
    }

    fn cuts(&self, answer: usize) -> &[i64] {
        &self.answers[answer].cuts
    }
}

fn answer() -> impl Strategy<Value = Answer> {
    let shapes = vec![Shape::Steps, Shape::Steps, Shape::Words, Shape::Bits];
    (
        select(shapes),
        -3..3_i64,
        0..6_i64,
        prop::collection::btree_set(-5..9_i64, 0..4),
    )
        .prop_map(|(shape, lowest, width, cuts)| {
            let (lowest, highest) = match shape {
                Shape::Steps => (lowest, lowest + width),
                Shape::Words => (0, width.min(4)),
                Shape::Bits => (0, if width < 3 { 3 } else { 7 }),
            };
            Answer {
                shape,
                lowest,
                highest,
                cuts: cuts.into_iter().collect(),
            }
        })
}

/// Tables of one to three answers. From nearly always the same pick to a different one everywhere; some points aren't possible.
pub fn table() -> impl Strategy<Value = Table> {
    let bounds = prop_oneof![Just(Bounds::Tight), any::<u64>().prop_map(Bounds::Loose),];
    let split = prop::collection::vec(0..5_usize, 0..4);
    let rare = select(vec![0_u8, 1, 3, 10, 40]);
    let missing = select(vec![0_u8, 0, 5, 40]);
    (
        prop::collection::vec(answer(), 1..4),
        bounds,
        split,
        rare,
        missing,
    )
        .prop_flat_map(|(answers, bounds, split, rare, missing)| {
            let size = answers
                .iter()
                .map(|answer| answer.values().len())
                .product::<usize>();
            let pick = (0..100_u8, 0..100_u8, 1..4_u8).prop_map(move |(chance, gap, other)| {
                (gap >= missing).then_some(if chance < rare { other } else { 0 })
            });
            let picks = prop::collection::vec(pick, size);
            picks.prop_map(move |picks| Table {
                answers: answers.clone(),
                bounds,
                picks,
                split: split.clone(),
            })
        })
}

/// A part of what an answer may be, of any form.
fn part(shape: Shape, all: Interval, ends: (Index, Index), unknown: u8) -> Interval {
    let width = usize::try_from(all.highest() - all.lowest()).unwrap() + 1;
    let at = |index: Index| all.lowest() + index.index(width) as i64;
    let (a, b) = (at(ends.0), at(ends.1));
    let known = match shape {
        Shape::Bits => Interval::between(a & b, a | b),
        Shape::Steps | Shape::Words => Interval::between(a, b),
    };
    match unknown {
        0 => Interval::NOT_KNOWN,
        1 | 2 => known.or_unknown(),
        3 => all,
        4 => all.if_known(),
        _ => known,
    }
}

/// A table, a point of it and an area of it.
pub fn asked() -> impl Strategy<Value = (Table, Point, Area)> {
    table().prop_flat_map(|table| {
        let count = table.answers.len();
        let ends = prop::collection::vec((any::<Index>(), any::<Index>(), 0..8_u8), count);
        let start = prop::collection::vec(any::<Index>(), count);
        (Just(table), start, ends).prop_map(|(table, start, ends)| {
            let point = table.answers.iter().zip(start).map(|(answer, index)| {
                let values = answer.values();
                values[index.index(values.len())]
            });
            let point: Point = point.collect();
            let spans = table.answers.iter().zip(ends);
            let area = spans
                .map(|(answer, (a, b, unknown))| part(answer.shape, answer.all(), (a, b), unknown));
            let area: Area = area.collect();
            (table, point, area)
        })
    })
}
