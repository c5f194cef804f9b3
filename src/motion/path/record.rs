//! What is kept of a roll on the way.

use super::axis::Axis;
use super::events::asked;
use super::state::{Body, Moving, State};
use super::{Mode, Station, rolling};
use crate::motion::Length;
use crate::motion::stepper::{Step, crossing};

/// What was seen so far.
pub(super) struct Record {
    body: Body,
    oil: f64,
    /// The places still to come, nearest first, in metres.
    pub(super) places: Vec<f64>,
    pub(super) stations: Vec<Station>,
    pub(super) slip_ends: Option<Station>,
    pub(super) breakpoint: Option<Station>,
    pub(super) oil_ends: Option<Station>,
    pub(super) friction_asked: f64,
    pub(super) axis: Axis,
    /// How fast it went outward since it last turned back, less than zero.
    outward: f64,
}

/// Slower outward than this is rounding, m/s.
const OUTWARD: f64 = -1e-9;

impl Record {
    /// Nothing yet. Places may come in any order.
    pub(super) fn new(body: Body, oil: f64, places: &[Length], axis: Axis) -> Record {
        let mut places: Vec<f64> = places.iter().map(|place| place.as_metres()).collect();
        places.sort_by(|a, b| b.total_cmp(a));
        Record {
            body,
            oil,
            places,
            stations: Vec::new(),
            slip_ends: None,
            breakpoint: None,
            oil_ends: None,
            friction_asked: 0.0,
            axis,
            outward: 0.0,
        }
    }

    /// It rolls from here.
    pub(super) fn rolls(&mut self, state: &State, seconds: f64) {
        if self.slip_ends.is_none() {
            self.slip_ends = Some(Moving::of(state).station(&self.body, Mode::Roll, seconds));
        }
    }

    /// A step was made, from this moment on; looked at in so many places. What rolling asks for in it may be known already.
    pub(super) fn step(
        &mut self,
        (step, asked): &(Step<13>, Option<f64>),
        seconds: f64,
        mode: Mode,
        looks: usize,
    ) {
        self.pass_places(step, seconds, mode);
        for quarter in 1..=4u8 {
            self.axis.see(&step.at(f64::from(quarter) / 4.0));
        }
        if mode == Mode::Roll {
            self.asks(&step.from);
            match asked {
                Some(asked) => self.friction_asked = self.friction_asked.max(*asked),
                None => (1..=looks).for_each(|l| self.asks(&step.at(l as f64 / looks as f64))),
            }
        }
        self.look_for_turns(step, seconds, mode, looks);
    }

    /// It rolls here.
    fn asks(&mut self, state: &State) {
        let change = rolling::change(&self.body, &Moving::of(state));
        self.friction_asked = asked(change.drag.length(), change.normal).max(self.friction_asked);
    }

    fn look_for_turns(&mut self, step: &Step<13>, seconds: f64, mode: Mode, looks: usize) {
        let across = |state: &State| {
            let [_, _, _, across, ..] = *state;
            across
        };
        let [_, _, _, (least, most), ..] = step.spans();
        if most < 0.0 {
            let slowest = across(&step.from).min(across(&step.to));
            self.outward = slowest.min(self.outward);
            return;
        }
        if least >= 0.0 && self.outward >= OUTWARD {
            return;
        }
        let mut before = step.from;
        for look in 0..=looks {
            let share = look as f64 / looks as f64;
            let state = step.at(share);
            self.outward = across(&before).min(self.outward);
            if self.outward < OUTWARD && across(&state) >= 0.0 {
                self.outward = 0.0;
                let earlier = (look as f64 - 1.0) / looks as f64;
                let turn = |share: f64| across(&step.at(share));
                let (share, _) =
                    crossing(turn, (earlier, turn(earlier)), (share, turn(share)), 1e-13);
                self.turns(&step.at(share), seconds + share * step.size, mode);
            }
            before = state;
        }
    }

    /// The path turns back here; the farthest out of such places counts.
    fn turns(&mut self, state: &State, seconds: f64, mode: Mode) {
        let here = Moving::of(state).station(&self.body, mode, seconds);
        if self
            .breakpoint
            .is_none_or(|there| here.across < there.across)
        {
            self.breakpoint = Some(here);
        }
    }

    fn pass_places(&mut self, step: &Step<13>, seconds: f64, mode: Mode) {
        let ([from, ..], [to, ..]) = (step.from, step.to);
        let body = self.body;
        let at = |place: f64| {
            let down = |share: f64| {
                let [x, ..] = step.at(share);
                x - place
            };
            let share = if from >= place {
                0.0
            } else {
                // Nothing lies past the end of the step, so a place there is at the end.
                let end = (to - place).max(f64::MIN_POSITIVE);
                crossing(down, (0.0, from - place), (1.0, end), 1e-13).0
            };
            Moving::of(&step.at(share)).station(&body, mode, seconds + share * step.size)
        };
        while let Some(place) = self.places.pop_if(|place| *place <= to) {
            self.stations.push(at(place));
        }
        if self.oil_ends.is_none() && self.oil <= to {
            self.oil_ends = Some(at(self.oil));
        }
    }
}
