//! Two answers that turn the pick together.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use rustc_hash::FxHashSet;

use super::arm::Arm;
use super::decision::{Area, Decision, Holds, Point, Shape};
use super::effort::{Effort, Spent};
use super::span::{bits, sound};
use super::turn::{sides, turns_of};
use crate::rules::{Interval, UNKNOWN};

/// Two answers that turn the pick together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pair<P> {
    /// Which answers, each with its value there; the first has the lower number.
    pub steps: [(usize, i64); 2],
    /// What is picked there.
    pub pick: P,
}

/// The nearest two answers that turn the pick together, where no single one does.
///
/// Each answer changes within its range in `area`: a number short of its nearest turn on each side, a word or a single bit
/// to what wouldn't turn the pick alone. An answer that isn't known at `start` stays so.
///
/// Nearest by the sum of each answer's distance as a part of its range (in billionths, rounded down; a word or a bit counts as a
/// whole range), then by number of the answers, then by value. The second value is whether that was certain within `most` boxes
/// and points: whether there is no nearer one, or none at all.
pub fn pair<D: Decision>(
    decision: &D,
    start: &[i64],
    area: &[Interval],
    most: usize,
) -> (Option<Pair<D::Pick>>, bool) {
    let mut effort = Effort::new(decision, most);
    let start = effort.point(start);
    let area = effort.area(area, &start);
    let mut nearest = None;
    let ended = search(&mut effort, &start, &area, &mut nearest);
    (nearest.map(|(_, pair)| pair), ended.is_ok())
}

/// Orders pairs of values, and boxes of them by the least that could be in them: distance, answers, values.
type Key = (u128, [usize; 2], [i64; 2]);

fn search<D: Decision>(
    effort: &mut Effort<D>,
    start: &Point,
    area: &Area,
    nearest: &mut Option<(Key, Pair<D::Pick>)>,
) -> Result<(), Spent> {
    let target = effort.pick(start)?;
    let mut changes = Vec::new();
    for (answer, &within) in area.iter().enumerate() {
        let arms = arms(effort, start, answer, within, &target)?;
        if !arms.is_empty() {
            changes.push(arms);
        }
    }
    let mut queue = Queue::default();
    let mut blocks = vec![(changes.as_slice(), None)];
    while let Some((one, other)) = blocks.pop() {
        if is_proved(
            effort,
            start,
            one.iter().chain(other.unwrap_or_default()),
            &target,
        )? {
            continue;
        }
        match other {
            None => {
                let (first, second) = one.split_at(one.len() / 2);
                for half in [first, second] {
                    if half.len() > 1 {
                        blocks.push((half, None));
                    }
                }
                if !first.is_empty() {
                    blocks.push((first, Some(second)));
                }
            }
            Some(other) => match (one, other) {
                ([a], [b]) => queue.add_all(a, b),
                _ if one.len() >= other.len() => {
                    let (first, second) = one.split_at(one.len() / 2);
                    blocks.extend([(first, Some(other)), (second, Some(other))]);
                }
                _ => {
                    let (first, second) = other.split_at(other.len() / 2);
                    blocks.extend([(one, Some(first)), (one, Some(second))]);
                }
            },
        }
    }
    queue.search(effort, start, &target, nearest)
}

/// What an answer may change to; nothing if it can't.
fn arms<D: Decision>(
    effort: &mut Effort<D>,
    start: &Point,
    answer: usize,
    within: Interval,
    target: &D::Pick,
) -> Result<Vec<Arm>, Spent> {
    let shape = effort.decision.shape(answer);
    let value = start[answer];
    let range = sound(shape, within).if_known();
    if value == UNKNOWN || !range.may_be_known() || range == Interval::point(value) {
        return Ok(Vec::new());
    }
    let mut turns = Vec::new();
    turns_of(effort, start, answer, range, target, &mut turns)?;
    let is_turn = |other: i64| turns.iter().any(|turn| turn.to == other);
    let arms = match shape {
        Shape::Steps => {
            let reach = sides(value, range).into_iter().flatten();
            let kept = reach.filter_map(|(near, far)| {
                let is_here = |to: &i64| (*to < value) == (far < value);
                let last = match turns.iter().map(|turn| turn.to).find(is_here) {
                    None => far,
                    Some(turn) if turn == near => return None,
                    Some(turn) if turn < value => turn + 1,
                    Some(turn) => turn - 1,
                };
                Some(Arm::row(answer, shape, value, (near, last), range))
            });
            kept.collect()
        }
        Shape::Words => runs(range, |other| other != value && !is_turn(other))
            .into_iter()
            .map(|ends| Arm::row(answer, shape, value, ends, range))
            .collect(),
        Shape::Bits => {
            let (lowest, highest) = (range.lowest(), range.highest());
            let may = bits(i64::MAX).filter(|bit| {
                let set = value ^ bit;
                set & lowest == lowest && set & !highest == 0 && !is_turn(set)
            });
            match may.fold(0, |all, bit| all | bit) {
                0 => Vec::new(),
                open => vec![Arm::bits(answer, value, open)],
            }
        }
    };
    Ok(arms)
}

/// The longest rows of values of a range that are wanted.
fn runs(range: Interval, is_wanted: impl Fn(i64) -> bool) -> Vec<(i64, i64)> {
    let mut runs: Vec<(i64, i64)> = Vec::new();
    for value in (range.lowest()..=range.highest()).filter(|&value| is_wanted(value)) {
        match runs.last_mut() {
            Some((_, last)) if last.checked_add(1) == Some(value) => *last = value,
            _ => runs.push((value, value)),
        }
    }
    runs
}

/// Whether the pick is certainly kept however these answers change together.
fn is_proved<'a, D: Decision>(
    effort: &mut Effort<D>,
    start: &Point,
    changes: impl Iterator<Item = &'a Vec<Arm>>,
    target: &D::Pick,
) -> Result<bool, Spent> {
    let mut area: Area = start.iter().copied().map(Interval::point).collect();
    for arm in changes.flatten() {
        let place = &mut area[arm.answer()];
        *place = arm.reach(*place);
    }
    Ok(effort.holds(&area, target)? == Holds::Proved)
}

/// Boxes of two answers, those that may hold the nearest pair first.
#[derive(Default)]
struct Queue {
    boxes: Vec<[Arm; 2]>,
    order: BinaryHeap<Reverse<(Key, usize)>>,
    /// Corners looked at.
    seen: FxHashSet<[(usize, i64); 2]>,
}

impl Queue {
    fn add_all(&mut self, one: &[Arm], other: &[Arm]) {
        for &first in one {
            for &second in other {
                self.add([first, second]);
            }
        }
    }

    fn add(&mut self, arms: [Arm; 2]) {
        let [first, second] = &arms;
        let key = (
            first.least_distance() + second.least_distance(),
            [first.answer(), second.answer()],
            [first.lowest(), second.lowest()],
        );
        self.order.push(Reverse((key, self.boxes.len())));
        self.boxes.push(arms);
    }

    fn search<D: Decision>(
        &mut self,
        effort: &mut Effort<D>,
        start: &Point,
        target: &D::Pick,
        nearest: &mut Option<(Key, Pair<D::Pick>)>,
    ) -> Result<(), Spent> {
        while let Some(Reverse((key, index))) = self.order.pop() {
            if nearest.as_ref().is_some_and(|(best, _)| *best <= key) {
                break;
            }
            let arms = self.boxes[index];
            let [first, second] = &arms;
            let mut is_open = None;
            if first.only().is_none() || second.only().is_none() {
                let mut area: Area = start.iter().copied().map(Interval::point).collect();
                area[first.answer()] = first.span();
                area[second.answer()] = second.span();
                match effort.holds(&area, target)? {
                    Holds::Proved => continue,
                    Holds::Open { split } => is_open = Some(split),
                }
            }
            self.look(effort, start, target, &arms, nearest)?;
            if let Some(split) = is_open {
                self.part(effort, &arms, &split);
            }
        }
        Ok(())
    }

    /// Looks at the far corner of a box, which is all of it where nothing is open.
    fn look<D: Decision>(
        &mut self,
        effort: &mut Effort<D>,
        start: &Point,
        target: &D::Pick,
        [first, second]: &[Arm; 2],
        nearest: &mut Option<(Key, Pair<D::Pick>)>,
    ) -> Result<(), Spent> {
        let steps = [
            (first.answer(), first.far()),
            (second.answer(), second.far()),
        ];
        if !self.seen.insert(steps) {
            return Ok(());
        }
        let mut point = start.clone();
        for (answer, value) in steps {
            point[answer] = value;
        }
        let Some(pick) = effort.other_pick(&point, target)? else {
            return Ok(());
        };
        let key = (
            first.distance(first.far()) + second.distance(second.far()),
            steps.map(|(answer, _)| answer),
            steps.map(|(_, value)| value),
        );
        if nearest.as_ref().is_none_or(|(best, _)| key < *best) {
            *nearest = Some((key, Pair { steps, pick }));
        }
        Ok(())
    }

    /// Parts a box at the answer named first, else at the one of which most is open.
    fn part<D: Decision>(
        &mut self,
        effort: &Effort<D>,
        [first, second]: &[Arm; 2],
        split: &[usize],
    ) {
        let first_parts = first.parts(effort.decision.cuts(first.answer()));
        let second_parts = second.parts(effort.decision.cuts(second.answer()));
        let place = |arm: &Arm| split.iter().position(|&named| named == arm.answer());
        let is_first = match (place(first), place(second)) {
            (Some(one), Some(other)) => one < other,
            (None, None) => first.open() >= second.open(),
            (named, _) => named.is_some(),
        };
        match (first_parts, second_parts) {
            (Some(parts), None) => parts.map(|part| self.add([part, *second])),
            (Some(parts), Some(_)) if is_first => parts.map(|part| self.add([part, *second])),
            (_, Some(parts)) => parts.map(|part| self.add([*first, part])),
            (None, None) => return,
        };
    }
}
