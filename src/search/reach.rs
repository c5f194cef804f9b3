//! Whether something holds anywhere in a box.

use super::decision::{Area, Point, Shape};
use crate::rules::Interval;

/// What is known of a box.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Judged {
    /// It holds at every point.
    Everywhere,
    /// It holds at no point.
    Nowhere,
    /// It may hold at some points; these answers keep it open, the most telling first.
    Open(Vec<usize>),
}

/// Something that holds at some points of a box and not at others.
pub trait Region {
    /// How the values of an answer lie to each other.
    fn shape(&self, answer: usize) -> Shape;

    /// The values of an answer from which on something else may be said, lowest first; of a set one mask, the bits that matter.
    fn cuts(&self, answer: usize) -> &[i64];

    /// What is known of a box. Of a single point it is never open.
    fn judge(&self, area: &[Interval]) -> Judged;
}

/// What was found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Reached {
    /// It holds here.
    At(Point),
    /// It holds nowhere.
    Nowhere,
    /// The work limit was reached first.
    NotSettled,
}

/// Looks for a point of `area` where it holds, at no more than `most` boxes; says how many it looked at.
///
/// A box that is open is cut in two until all of it is decided, so what is said is certain. Known values are tried before unknown
/// ones and low ones before high ones: always the same point is found.
pub fn reach(region: &dyn Region, area: &[Interval], most: usize) -> (Reached, usize) {
    let mut open: Vec<Area> = vec![area.to_vec()];
    let mut work = 0;
    while let Some(area) = open.pop() {
        if work == most {
            return (Reached::NotSettled, work);
        }
        work += 1;
        match region.judge(&area) {
            Judged::Nowhere => {}
            Judged::Everywhere => return (Reached::At(area.iter().map(first).collect()), work),
            Judged::Open(split) => match halves(region, &area, &split) {
                Some((one, other)) => open.extend([other, one]),
                // A point that stays open breaks the promise of `judge`.
                None => return (Reached::NotSettled, work),
            },
        }
    }
    (Reached::Nowhere, work)
}

/// A value that the answer may have: the lowest known one, if it may be known.
fn first(interval: &Interval) -> i64 {
    interval.lowest()
}

/// The box cut in two along the answer that promises most.
fn halves(region: &dyn Region, area: &[Interval], split: &[usize]) -> Option<(Area, Area)> {
    let all: Vec<usize> = (0..area.len()).collect();
    let (answer, (one, other)) =
        along(region, area, split).or_else(|| along(region, area, &all))?;
    let with = |part: Interval| {
        let mut area = area.to_vec();
        area[answer] = part;
        area
    };
    Some((with(one), with(other)))
}

fn along(
    region: &dyn Region,
    area: &[Interval],
    split: &[usize],
) -> Option<(usize, (Interval, Interval))> {
    // First what may not be known at all, then where a rule cuts, then words, then the widest number.
    let open = |&&answer: &&usize| area.get(answer).is_some_and(|it| !it.is_point());
    let unsure = |&&answer: &&usize| area[answer].may_be_unknown();
    if let Some(&answer) = split.iter().filter(open).find(unsure) {
        let it = area[answer];
        let known = Interval::between(it.lowest(), it.highest());
        return Some((answer, (known, Interval::NOT_KNOWN)));
    }
    let cut = |&answer: &usize| {
        let parts = at_a_cut(region, answer, area[answer])?;
        Some((answer, parts))
    };
    if let Some(found) = split.iter().filter(open).find_map(cut) {
        return Some(found);
    }
    let few = |&&answer: &&usize| region.shape(answer) != Shape::Steps;
    if let Some(&answer) = split.iter().filter(open).find(few) {
        return Some((answer, in_half(region.shape(answer), area[answer])));
    }
    let width = |&&answer: &&usize| area[answer].highest().saturating_sub(area[answer].lowest());
    let widest = split.iter().filter(open).max_by_key(width)?;
    Some((*widest, in_half(region.shape(*widest), area[*widest])))
}

/// The parts on both sides of a cut inside, the one in the middle of them; of a set with and without a bit that matters.
fn at_a_cut(region: &dyn Region, answer: usize, it: Interval) -> Option<(Interval, Interval)> {
    let cuts = region.cuts(answer);
    if region.shape(answer) == Shape::Bits {
        let matters = cuts.iter().fold(0, |all, bits| all | bits) & open_bits(it);
        return (matters != 0).then(|| at_bit(it, matters));
    }
    let inside = |cut: &&i64| it.lowest() < **cut && **cut <= it.highest();
    let inside: Vec<i64> = cuts.iter().filter(inside).copied().collect();
    let cut = *inside.get(inside.len() / 2)?;
    Some((
        Interval::between(it.lowest(), cut - 1),
        Interval::between(cut, it.highest()),
    ))
}

fn in_half(shape: Shape, it: Interval) -> (Interval, Interval) {
    if shape == Shape::Bits {
        return at_bit(it, open_bits(it));
    }
    let middle = it.lowest() + (it.highest() - it.lowest()) / 2;
    (
        Interval::between(it.lowest(), middle),
        Interval::between(middle + 1, it.highest()),
    )
}

/// What may be in a set and needn't be.
fn open_bits(it: Interval) -> i64 {
    it.highest() & !it.lowest()
}

/// Without and with the lowest of these bits.
fn at_bit(it: Interval, bits: i64) -> (Interval, Interval) {
    let bit = bits & bits.wrapping_neg();
    (
        Interval::between(it.lowest(), it.highest() & !bit),
        Interval::between(it.lowest() | bit, it.highest()),
    )
}
