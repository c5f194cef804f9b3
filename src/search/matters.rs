//! Whether one answer alone can turn the pick, whatever the others are.

use std::collections::VecDeque;

use super::decision::{Area, Decision, Holds, Point};
use super::effort::{Effort, Spent};
use super::settle::{corner_of, telling};
use super::span::{halves, nearest_to};
use crate::rules::{Interval, UNKNOWN};

/// What is known of an answer over a box of answers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Matters<P> {
    /// Changing it alone turns no pick, wherever in the box the others lie.
    Never {
        /// How many boxes and points were looked at.
        work: usize,
    },
    /// Here it does: two points, both possible, that differ in it alone, and what is picked at each.
    Here {
        /// The one and the other.
        points: [(Point, P); 2],
        /// How many boxes and points were looked at.
        work: usize,
    },
    /// The work limit was reached first.
    NotSettled {
        /// How many boxes and points were looked at.
        work: usize,
    },
}

/// Whether there are two possible points of `area` that differ in `answer` alone, with different picks, looking at no more than
/// `most` boxes and points.
///
/// Points nearest to `start` are tried first; it needn't lie in the area.
pub fn turning_with<D: Decision>(
    decision: &D,
    area: &[Interval],
    start: &[i64],
    answer: usize,
    most: usize,
) -> Matters<D::Pick> {
    let mut effort = Effort::new(decision, most);
    let start = effort.point(start);
    let area = effort.area(area, &start);
    let found = if answer < area.len() {
        explore(&mut effort, &area, &start, answer)
    } else {
        Ok(None)
    };
    let work = effort.work;
    match found {
        Ok(None) => Matters::Never { work },
        Ok(Some(points)) => Matters::Here { points, work },
        Err(Spent) => Matters::NotSettled { work },
    }
}

type Found<P> = Option<[(Point, P); 2]>;

/// A box of the other answers, and what is left to show there.
struct Piece<P> {
    /// The answer in question has its whole range here.
    area: Area,
    /// A point of the box, and what is picked there; the box comes from one whose point that was if it lies outside.
    at: Point,
    pick: P,
    /// Over all other ranges of the answer, `pick` is proved.
    open: Vec<Interval>,
}

fn explore<D: Decision>(
    effort: &mut Effort<D>,
    area: &Area,
    start: &Point,
    answer: usize,
) -> Result<Found<D::Pick>, Spent> {
    let decision = effort.decision;
    let whole = area[answer];
    if whole.is_point() {
        return Ok(None);
    }
    let home = |area: &Area| corner_of(decision, area, start, nearest_to);
    let at = home(area);
    let first = match around(effort, &at, whole, answer)? {
        Around::Turn(points) => return Ok(Some(points)),
        Around::Kept(pick) => pick,
        Around::Impossible => effort.pick(&at)?,
    };
    let mut pieces = VecDeque::from([Piece {
        area: area.clone(),
        at,
        pick: first,
        open: vec![whole],
    }]);
    while let Some(mut piece) = pieces.pop_front() {
        if !effort.can_matter(&piece.area, answer)? {
            continue;
        }
        let is_row = (0..area.len()).all(|other| other == answer || piece.area[other].is_point());
        if is_row {
            let found = along(effort, &piece, whole, answer)?;
            if found.is_some() {
                return Ok(found);
            }
            continue;
        }
        let at = home(&piece.area);
        if at != piece.at {
            match around(effort, &at, whole, answer)? {
                Around::Turn(points) => return Ok(Some(points)),
                Around::Kept(pick) if pick != piece.pick => {
                    piece.pick = pick;
                    piece.open = vec![whole];
                }
                Around::Kept(_) | Around::Impossible => {}
            }
            piece.at = at;
        }
        pieces.extend(narrow(effort, piece, start, answer)?);
    }
    Ok(None)
}

/// Proves as much of a piece as bounds show; its halves if something is left.
fn narrow<D: Decision>(
    effort: &mut Effort<D>,
    mut piece: Piece<D::Pick>,
    start: &Point,
    answer: usize,
) -> Result<Vec<Piece<D::Pick>>, Spent> {
    while let Some(span) = piece.open.pop() {
        let mut area = piece.area.clone();
        area[answer] = span;
        let Holds::Open { split } = effort.holds(&area, &piece.pick)? else {
            continue;
        };
        let Some((place, near, far)) = effort.parts(&area, &split, start) else {
            continue;
        };
        if place == answer {
            piece.open.extend([far, near]);
            continue;
        }
        piece.open.push(span);
        let half = |part| {
            let mut area = piece.area.clone();
            area[place] = part;
            Piece {
                area,
                at: piece.at.clone(),
                pick: piece.pick.clone(),
                open: piece.open.clone(),
            }
        };
        return Ok(vec![half(near), half(far)]);
    }
    Ok(Vec::new())
}

/// What is picked at a few values of the answer, all else as at a point.
enum Around<P> {
    /// Different things.
    Turn([(Point, P); 2]),
    /// The same wherever it is possible.
    Kept(P),
    /// Nothing that could be given.
    Impossible,
}

fn around<D: Decision>(
    effort: &mut Effort<D>,
    at: &Point,
    whole: Interval,
    answer: usize,
) -> Result<Around<D::Pick>, Spent> {
    let (shape, cuts) = (effort.decision.shape(answer), effort.decision.cuts(answer));
    let here = at[answer];
    let mut first: Option<(Point, D::Pick)> = None;
    for value in std::iter::once(here).chain(telling(shape, whole, cuts, here)) {
        let mut point = at.clone();
        point[answer] = value;
        let Some(pick) = effort.possible_pick(&point)? else {
            continue;
        };
        match first {
            None => first = Some((point, pick)),
            Some(first) if first.1 != pick => return Ok(Around::Turn([first, (point, pick)])),
            Some(_) => {}
        }
    }
    Ok(match first {
        Some((_, pick)) => Around::Kept(pick),
        None => Around::Impossible,
    })
}

/// Two values of the answer with different picks, in a piece in which nothing else is open.
fn along<D: Decision>(
    effort: &mut Effort<D>,
    piece: &Piece<D::Pick>,
    whole: Interval,
    answer: usize,
) -> Result<Found<D::Pick>, Spent> {
    // Where this finds nothing, the pick of the piece is the only one.
    let Some(one) = other(effort, &piece.area, piece.open.clone(), answer, &piece.pick)? else {
        return Ok(None);
    };
    let second = other(effort, &piece.area, vec![whole], answer, &one.1)?;
    Ok(second.map(|second| [one, second]))
}

/// A possible point at which something else is picked, over some ranges of one answer.
fn other<D: Decision>(
    effort: &mut Effort<D>,
    area: &Area,
    mut open: Vec<Interval>,
    answer: usize,
    pick: &D::Pick,
) -> Result<Option<(Point, D::Pick)>, Spent> {
    let (shape, cuts) = (effort.decision.shape(answer), effort.decision.cuts(answer));
    let mut area = area.clone();
    while let Some(span) = open.pop() {
        area[answer] = span;
        if span.is_point() {
            let point: Point = area.iter().map(|span| span.value()).collect();
            if let Some(found) = effort.other_pick(&point, pick)? {
                return Ok(Some((point, found)));
            }
        } else if effort.holds(&area, pick)? != Holds::Proved
            && let Some((near, far)) = halves(shape, span, cuts, UNKNOWN)
        {
            open.extend([far, near]);
        }
    }
    Ok(None)
}
