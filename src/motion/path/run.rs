//! The roll, step after step.

use super::axis::Axis;
use super::events::{Event, Watch};
use super::ground::Ground;
use super::record::Record;
use super::state::{Body, Change, FLOOR, Moving, State, slopes};
use super::{Ending, Mode, Path, Settings, Shot, rolling, slide};
use crate::motion::stepper::{SLOPES, Step, scale};
use crate::motion::{GRAVITY, Impossible, Length};

/// No step is longer than this, in seconds and in radians of spin.
const LONGEST: f64 = 0.05;
const MOST_TURN: f64 = 1.5;
/// A roll that takes longer than this isn't at the pins, in seconds.
const MOST_SECONDS: f64 = 120.0;
/// How much of the slip one step may take away: where slip is zero its direction is none, so no step may pass that.
const MOST_OF_SLIP: f64 = 0.7;
/// Friction turns the slip's direction towards its own, the faster the less slip there is; no step is longer than so many times the time that
/// takes. The pair is stable up to 3.3 of them, but slip falls within the step, and a direction that swings keeps slip from ending.
const FOLLOWS: f64 = 1.5;

/// A roll under way.
pub(super) struct Run<'a> {
    shot: &'a Shot,
    settings: &'a Settings,
    body: Body,
    ground: Ground,
    mode: Mode,
    state: State,
    seconds: f64,
    /// The slope at the state, where it is known.
    slope: Option<State>,
    /// How long the next step may be.
    size: f64,
    steps: usize,
    slopes: usize,
    slips_again: usize,
}

impl<'a> Run<'a> {
    pub(super) fn new(shot: &'a Shot, settings: &'a Settings) -> Run<'a> {
        let body = Body::of(&shot.ball);
        let state = Moving::released(shot).state();
        let [x, y, ..] = state;
        Run {
            shot,
            settings,
            body,
            ground: Ground::new(&shot.lane, &shot.friction, [x, y]),
            mode: Mode::Slip,
            state,
            seconds: 0.0,
            slope: None,
            size: 1e-3,
            steps: 0,
            slopes: 0,
            slips_again: 0,
        }
    }

    /// To the pins or the gutter.
    pub(super) fn whole(mut self, places: &[Length]) -> Result<Path, Impossible> {
        let released = Moving::of(&self.state);
        let axis = Axis::new(&released, self.change(&released).spin);
        let mut record = Record::new(self.body, self.shot.lane.oil, places, axis);
        loop {
            self.settle(&mut record)?;
            if let Some(event) = self.watch().happened(&self.state) {
                match event {
                    Event::Pins => return Ok(self.told(record, Ending::Pins)),
                    Event::Gutter => {
                        let [x, ..] = self.state;
                        return Ok(self.told(record, Ending::Gutter(Length::metres(x))));
                    }
                    Event::Edge => {
                        let [x, y, ..] = self.state;
                        self.ground.stand([x, y]);
                        self.slope = None;
                    }
                    Event::Breaks => self.slip_again(),
                }
                self.count()?;
                continue;
            }
            let step = self.step()?;
            let looks = self.looks(step.0.size);
            record.step(&step, self.seconds, self.mode, looks);
            self.accept(&step.0)?;
        }
    }

    fn change(&self, now: &Moving) -> Change {
        match self.mode {
            Mode::Slip => slide::change(&self.body, now, self.ground.friction(now.place)),
            Mode::Roll => rolling::change(&self.body, now),
        }
    }

    fn watch(&self) -> Watch<'_> {
        Watch {
            body: &self.body,
            ground: &self.ground,
            length: self.shot.lane.length,
            half_width: self.shot.lane.width / 2.0,
            breaks: self.mode == Mode::Roll && !self.settings.keeps_rolling,
        }
    }

    fn feet(&self) -> f64 {
        let [x, ..] = self.state;
        Length::metres(x).as_feet()
    }

    /// One more of the steps allowed.
    fn count(&mut self) -> Result<(), Impossible> {
        self.steps += 1;
        if self.steps > self.settings.most_steps || self.seconds > MOST_SECONDS {
            return Err(Impossible::TooManySteps { feet: self.feet() });
        }
        Ok(())
    }

    /// How many places within a step are looked at: one in every tenth of a radian of spin.
    fn looks(&self, size: f64) -> usize {
        let spin = Moving::of(&self.state).spin.length();
        // At most `MOST_TURN` over a tenth.
        (libm::ceil(spin * size * 10.0) as usize).clamp(4, 16)
    }

    /// Slip that has come to nothing: rolls from here, if friction can hold it.
    fn settle(&mut self, record: &mut Record) -> Result<(), Impossible> {
        let now = Moving::of(&self.state);
        if self.mode == Mode::Roll {
            return Ok(());
        }
        let slip = now.slip(&self.body);
        if slip.length() > self.settings.no_slip()
            || self.slip_change(&now, &self.field(&self.state)) > 0.0
        {
            return Ok(());
        }
        let change = rolling::change(&self.body, &now);
        let held = self.ground.friction(now.place) * change.normal;
        self.slope = None;
        if change.drag.length() > held && !self.settings.keeps_rolling {
            self.slip_against(&now, change);
            return self.count();
        }
        self.mode = Mode::Roll;
        self.size = 1e-3;
        self.state = Moving {
            velocity: now.rolling(&self.body),
            ..now
        }
        .state();
        record.rolls(&self.state, self.seconds);
        Ok(())
    }

    /// How fast slip grows when the state has this slope, m/s².
    fn slip_change(&self, now: &Moving, slope: &State) -> f64 {
        let [_, _, ax, ay, wx, wy, ..] = *slope;
        let slip = now.slip(&self.body);
        let radius = self.body.radius;
        let fast = slip.length();
        if fast > 0.0 {
            (slip.x * (ax - radius * wy) + slip.y * (ay + radius * wx)) / fast
        } else {
            0.0
        }
    }

    /// Rolling breaks.
    fn slip_again(&mut self) {
        let now = Moving::of(&self.state);
        let change = rolling::change(&self.body, &now);
        self.mode = Mode::Slip;
        self.slips_again += 1;
        self.slip_against(&now, change);
    }

    /// Slip starts against the friction that rolling would need.
    fn slip_against(&mut self, now: &Moving, change: Change) {
        let seed = self.settings.first_slip();
        self.state = Moving {
            velocity: now.rolling(&self.body) - seed * change.drag.normalize_or_zero(),
            ..*now
        }
        .state();
        self.slope = None;
        self.size = seed / GRAVITY;
    }

    /// How long a step may be before the slip's direction is passed or turns faster than a step can follow.
    fn longest(&self, now: &Moving, slope: &State) -> f64 {
        let spin = now.spin.length();
        let mut longest = LONGEST;
        if spin * longest > MOST_TURN {
            longest = MOST_TURN / spin;
        }
        if self.mode == Mode::Slip {
            let slip = now.slip(&self.body).length();
            let change = self.slip_change(now, slope);
            if change < 0.0 {
                longest = longest.min(MOST_OF_SLIP * slip / -change);
            }
            let drag = self.ground.friction(now.place) * GRAVITY * self.body.mobility();
            if drag * longest > FOLLOWS * slip {
                longest = FOLLOWS * slip / drag;
            }
        }
        longest
    }

    /// The next step that is precise enough, cut at the first event in it; and the most friction that rolling asks for in it, if that was
    /// looked for all along.
    fn step(&mut self) -> Result<(Step<13>, Option<f64>), Impossible> {
        let now = Moving::of(&self.state);
        let change = self.change(&now);
        if change.normal <= 0.0 {
            return Err(Impossible::Hops { feet: self.feet() });
        }
        let first = match self.slope {
            Some(slope) => slope,
            None => self.field(&self.state),
        };
        let longest = self.longest(&now, &first);
        let mut size = self.size.min(longest);
        loop {
            self.count()?;
            self.slopes += SLOPES;
            let step = Step::take(|at| self.field(at), &self.state, &first, size);
            let error = step.error(&FLOOR, self.settings.tolerance);
            let next = scale(error);
            if error > 1.0 {
                size *= next.min(0.9);
                continue;
            }
            self.size = size * next;
            let watch = self.watch();
            return Ok(match watch.within(&step, self.looks(size)) {
                (Some(event), _) => (watch.cut(|at| self.field(at), &first, &step, event), None),
                (None, asked) => (step, watch.breaks.then_some(asked)),
            });
        }
    }

    fn field(&self, state: &State) -> State {
        let now = Moving::of(state);
        let velocity = match self.mode {
            Mode::Slip => now.velocity,
            Mode::Roll => now.rolling(&self.body),
        };
        slopes(&now, velocity, self.change(&now))
    }

    /// Goes to the end of a step.
    fn accept(&mut self, step: &Step<13>) -> Result<(), Impossible> {
        self.seconds += step.size;
        let mut now = Moving::of(&step.to);
        if self.mode == Mode::Roll {
            now.velocity = now.rolling(&self.body);
        }
        self.state = now.state();
        self.slope = Some(step.slope);
        match self.state.iter().all(|value| value.is_finite()) {
            true => Ok(()),
            false => Err(Impossible::TooManySteps { feet: self.feet() }),
        }
    }

    fn told(self, record: Record, ending: Ending) -> Path {
        let now = Moving::of(&self.state);
        let last = now.station(&self.body, self.mode, self.seconds);
        let shift = record.axis.shift(&self.state);
        let radius = self.body.radius;
        let mut stations = record.stations;
        let reached = |place: &&f64| **place <= last.down;
        stations.extend(record.places.iter().filter(reached).map(|_| last));
        let oil_ends = match record.oil_ends {
            None if self.shot.lane.oil <= last.down => Some(last),
            found => found,
        };
        Path {
            stations,
            ending,
            last,
            slip_ends: record.slip_ends,
            breakpoint: record.breakpoint,
            oil_ends,
            slips_again: self.slips_again,
            friction_asked: record.friction_asked,
            axis_path: now.wandered * radius,
            axis_shift: shift * radius,
            axis_farthest: record.axis.farthest() * radius,
            steps: self.steps,
            slopes: self.slopes,
        }
    }
}
