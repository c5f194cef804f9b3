//! What ends a step early: an edge of the oil, the pins, the gutter, and rolling that asks for more friction than there is.

use super::ground::{Bounds, Ground};
use super::rolling;
use super::state::{Body, Moving, State};
use crate::motion::stepper::{Step, crossing};

/// What can happen, each told by a number that is more than zero once it has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Event {
    /// The ball is at the pins.
    Pins,
    /// Its middle is past the lane's side.
    Gutter,
    /// It has left its piece of the lane.
    Edge,
    /// Rolling asks for more friction than there is.
    Breaks,
}

/// What is watched.
#[derive(Clone, Copy, Debug)]
pub(super) struct Watch<'a> {
    pub(super) body: &'a Body,
    pub(super) ground: &'a Ground,
    pub(super) length: f64,
    pub(super) half_width: f64,
    /// Whether rolling may break: the ball rolls and isn't held to it.
    pub(super) breaks: bool,
}

const ALL: [Event; 4] = [Event::Pins, Event::Gutter, Event::Edge, Event::Breaks];

impl Watch<'_> {
    fn measure(&self, event: Event, state: &State) -> f64 {
        let [x, y, ..] = *state;
        match event {
            Event::Pins => x - self.length,
            Event::Gutter => libm::fabs(y) - self.half_width,
            Event::Edge => {
                let Bounds {
                    down,
                    back,
                    left,
                    right,
                } = self.ground.bounds();
                (x - down).max(back - x).max(y - left).max(right - y)
            }
            Event::Breaks if self.breaks => self.grip(state).0,
            Event::Breaks => -1.0,
        }
    }

    /// What has happened here.
    pub(super) fn happened(&self, state: &State) -> Option<Event> {
        ALL.into_iter().find(|e| self.measure(*e, state) > 0.0)
    }

    /// How much more friction rolling asks for than there is, in m/s², and how much it asks for as a share of what presses on the lane.
    fn grip(&self, state: &State) -> (f64, f64) {
        let now = Moving::of(state);
        let change = rolling::change(self.body, &now);
        let drag = change.drag.length();
        let over = drag - self.ground.friction(now.place) * change.normal;
        (over / self.body.mass, asked(drag, change.normal))
    }

    /// Whether it can happen in a step whose values lie so.
    fn can(&self, event: Event, spans: &[(f64, f64); 13]) -> bool {
        let [x, y, ..] = spans;
        match event {
            Event::Pins => x.1 > self.length,
            Event::Gutter => y.1.max(-y.0) > self.half_width,
            Event::Edge => {
                let bounds = self.ground.bounds();
                x.1 > bounds.down || x.0 < bounds.back || y.1 > bounds.left || y.0 < bounds.right
            }
            Event::Breaks => self.breaks,
        }
    }

    /// The earliest event within a step, looked for at so many places in it, with the share of the step where it happens; and the most
    /// friction that rolling asks for in the places before it, where that is watched.
    pub(super) fn within(&self, step: &Step<13>, looks: usize) -> (Option<(Event, f64)>, f64) {
        let spans = step.spans();
        let can = ALL.map(|event| self.can(event, &spans));
        let mut most = 0.0f64;
        if !can.contains(&true) {
            return (None, most);
        }
        let mut before = 0.0;
        for look in 1..=looks {
            let share = look as f64 / looks as f64;
            let state = if look == looks {
                step.to
            } else {
                step.at(share)
            };
            let mut asks = 0.0;
            let earliest = std::iter::zip(ALL, can)
                .filter_map(|(event, can)| {
                    let above = match event {
                        _ if !can => return None,
                        Event::Breaks => {
                            let (over, asked) = self.grip(&state);
                            asks = asked;
                            over
                        }
                        event => self.measure(event, &state),
                    };
                    (above > 0.0).then(|| {
                        let below = self.measure(event, &step.at(before));
                        let measure = |share: f64| self.measure(event, &step.at(share));
                        let (share, _) = crossing(measure, (before, below), (share, above), CLOSE);
                        (event, share)
                    })
                })
                .min_by(|a, b| a.1.total_cmp(&b.1));
            if earliest.is_some() {
                return (earliest, most);
            }
            most = most.max(asks);
            before = share;
        }
        (None, most)
    }

    /// The step cut short where the event happens. Values inside a step are of a lower order than its end, so the end is
    /// found by steps of their own.
    pub(super) fn cut(
        &self,
        field: impl Fn(&State) -> State,
        first: &State,
        step: &Step<13>,
        (event, share): (Event, f64),
    ) -> Step<13> {
        let take = |share: f64| Step::take(&field, &step.from, first, share * step.size);
        let measure = |share: f64| self.measure(event, &take(share).to);
        let guess = measure(share);
        let (share, _) = if guess > 0.0 {
            let below = self.measure(event, &step.from);
            crossing(measure, (0.0, below), (share, guess), CLOSE)
        } else {
            let above = self.measure(event, &step.to);
            if above > 0.0 {
                crossing(measure, (share, guess), (1.0, above), CLOSE)
            } else {
                // It came and went within the error of the values inside: it didn't happen.
                return *step;
            }
        };
        take(share)
    }
}

/// Friction as a share of what presses on the lane.
pub(super) fn asked(drag: f64, normal: f64) -> f64 {
    match normal > 0.0 {
        true => drag / normal,
        false => 0.0,
    }
}

/// How near an event a step must end, in metres and in m/s².
const CLOSE: f64 = 1e-13;
