//! Bringing a turn back toward where it started.

use super::decision::{Area, Decision, Point, Shape};
use super::effort::{Effort, Spent};
use super::span::{bits, middle, nearest_to};
use crate::rules::UNKNOWN;

/// A turn that differs from `start` in as little as can be had cheaply, and in no answer that could be put back alone.
/// Stays in the area, and stops where the work limit is reached.
pub(super) fn reduce<D: Decision>(
    effort: &mut Effort<D>,
    area: &Area,
    start: &Point,
    target: &D::Pick,
    found: (Point, D::Pick),
) -> (Point, D::Pick) {
    let mut turn = Turned {
        effort,
        target,
        at: found.0,
        pick: found.1,
    };
    // Where the limit comes first, what was reached so far is as true a turn.
    let _spent = turn.reduce(area, start);
    (turn.at, turn.pick)
}

struct Turned<'e, 'd, 't, D: Decision> {
    effort: &'e mut Effort<'d, D>,
    target: &'t D::Pick,
    at: Point,
    pick: D::Pick,
}

impl<D: Decision> Turned<'_, '_, '_, D> {
    fn reduce(&mut self, area: &Area, start: &Point) -> Result<(), Spent> {
        let decision = self.effort.decision;
        let home = |answer: usize| nearest_to(decision.shape(answer), area[answer], start[answer]);
        let homes: Vec<i64> = (0..area.len()).map(home).collect();
        self.put_back(&homes)?;
        for (answer, &home) in homes.iter().enumerate() {
            let value = self.at[answer];
            if value == home || value == UNKNOWN || home == UNKNOWN {
                continue;
            }
            match decision.shape(answer) {
                Shape::Words => {}
                Shape::Bits => {
                    for bit in bits(value ^ home) {
                        self.moves(answer, self.at[answer] ^ bit)?;
                    }
                }
                Shape::Steps => self.approach(answer, home)?,
            }
        }
        // Nearer numbers may have set free what had to stay before.
        self.put_back(&homes)
    }

    /// Puts answers back, until no single one can be.
    fn put_back(&mut self, homes: &[i64]) -> Result<(), Spent> {
        let mut again = true;
        while again {
            again = false;
            for (answer, &home) in homes.iter().enumerate() {
                if self.at[answer] != home {
                    again |= self.moves(answer, home)?;
                }
            }
        }
        Ok(())
    }

    /// Moves one answer if the pick is still turned there.
    fn moves(&mut self, answer: usize, to: i64) -> Result<bool, Spent> {
        let from = std::mem::replace(&mut self.at[answer], to);
        let looked = self.effort.other_pick(&self.at, self.target);
        if let Ok(Some(pick)) = looked {
            self.pick = pick;
            return Ok(true);
        }
        self.at[answer] = from;
        looked.map(|_| false)
    }

    /// Halves the way to `home`, at which the pick isn't turned, until one step is left.
    fn approach(&mut self, answer: usize, home: i64) -> Result<(), Spent> {
        let mut kept = home;
        while kept.abs_diff(self.at[answer]) > 1 {
            let between = middle(kept, self.at[answer]);
            if !self.moves(answer, between)? {
                kept = between;
            }
        }
        Ok(())
    }
}
