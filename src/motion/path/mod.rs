//! The full rigid body, integrated from the foul line to the pins.

mod axis;
mod events;
mod ground;
mod record;
mod rolling;
mod run;
mod slide;
mod state;

use super::{
    Angle, Attitude, Ball, Friction, Impossible, Lane, Length, Release, Speed, Spin, within,
};

/// Whether the ball slips on the lane or rolls.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mode {
    /// The contact point slips.
    Slip,
    /// It rolls without slip.
    Roll,
}

/// How a roll ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Ending {
    /// At the pins.
    Pins,
    /// In the gutter, so far down the lane.
    Gutter(Length),
}

/// The ball at one place along the lane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Station {
    pub(super) mode: Mode,
    pub(super) seconds: f64,
    pub(super) down: f64,
    pub(super) across: f64,
    pub(super) velocity: [f64; 2],
    pub(super) spin: [f64; 3],
    pub(super) spin_in_ball: [f64; 3],
    pub(super) axes: [[f64; 3]; 3],
    pub(super) slip: f64,
    pub(super) energy_lost: f64,
}

impl Station {
    /// Slip or roll.
    pub fn mode(&self) -> Mode {
        self.mode
    }
    /// Seconds since the foul line.
    pub fn seconds(&self) -> f64 {
        self.seconds
    }
    /// How far down the lane.
    pub fn down(&self) -> Length {
        Length::metres(self.down)
    }
    /// How far left of the middle.
    pub fn across(&self) -> Length {
        Length::metres(self.across)
    }
    /// Velocity of the ball's middle, down the lane and to the left, m/s.
    pub fn velocity(&self) -> [f64; 2] {
        self.velocity
    }
    /// How fast the ball's middle goes.
    pub fn speed(&self) -> Speed {
        let [x, y] = self.velocity;
        Speed::metres_a_second(libm::sqrt(x * x + y * y))
    }
    /// The direction of the path; to the left is more than zero.
    pub fn direction(&self) -> Angle {
        let [x, y] = self.velocity;
        Angle::radians(libm::atan2(y, x))
    }
    /// Angular velocity in the lane's frame, rad/s.
    pub fn spin(&self) -> [f64; 3] {
        self.spin
    }
    /// Angular velocity along the ball's axes of lowest, middle and highest RG, rad/s.
    pub fn spin_in_ball(&self) -> [f64; 3] {
        self.spin_in_ball
    }
    /// The ball's axes of lowest, middle and highest RG in the lane's frame.
    pub fn axes(&self) -> [[f64; 3]; 3] {
        self.axes
    }
    /// How fast it spins in all.
    pub fn revs(&self) -> Spin {
        let [x, y, z] = self.spin;
        Spin::radians_a_second(libm::sqrt(x * x + y * y + z * z))
    }
    /// Slip at the contact, m/s.
    pub fn slip(&self) -> f64 {
        self.slip
    }
    /// Energy lost to friction so far, J.
    pub fn energy_lost(&self) -> f64 {
        self.energy_lost
    }
}

/// One roll from the foul line to the pins or the gutter.
#[derive(Clone, Debug, PartialEq)]
pub struct Path {
    pub(super) stations: Vec<Station>,
    pub(super) ending: Ending,
    pub(super) last: Station,
    pub(super) slip_ends: Option<Station>,
    pub(super) breakpoint: Option<Station>,
    pub(super) oil_ends: Option<Station>,
    pub(super) slips_again: usize,
    pub(super) friction_asked: f64,
    pub(super) axis_path: f64,
    pub(super) axis_shift: f64,
    pub(super) axis_farthest: f64,
    pub(super) steps: usize,
    pub(super) slopes: usize,
}

impl Path {
    /// The ball at each place asked for that it reached, in order.
    pub fn stations(&self) -> &[Station] {
        &self.stations
    }
    /// How it ends.
    pub fn ending(&self) -> Ending {
        self.ending
    }
    /// The ball at the pins, or where it leaves the lane.
    pub fn last(&self) -> &Station {
        &self.last
    }
    /// Where it first rolls: it has finished hooking. None if it slips all the way.
    pub fn slip_ends(&self) -> Option<&Station> {
        self.slip_ends.as_ref()
    }
    /// Where it is farthest out, if it turns back on the lane.
    pub fn breakpoint(&self) -> Option<&Station> {
        self.breakpoint.as_ref()
    }
    /// Where the oil ends under it.
    pub fn oil_ends(&self) -> Option<&Station> {
        self.oil_ends.as_ref()
    }
    /// Skid: from the foul line to the end of the oil, or to where slip ends if that is sooner (own definition).
    pub fn skid(&self) -> Length {
        Length::metres(self.hook_from())
    }
    /// Hook: from there to where slip ends.
    pub fn hook(&self) -> Length {
        Length::metres((self.hook_to() - self.hook_from()).max(0.0))
    }
    /// Roll: from there to the pins.
    pub fn roll(&self) -> Length {
        Length::metres((self.last.down - self.hook_to()).max(0.0))
    }
    fn hook_from(&self) -> f64 {
        let oil = self.oil_ends.map_or(self.last.down, |s| s.down);
        oil.min(self.hook_to())
    }
    fn hook_to(&self) -> f64 {
        self.slip_ends.map_or(self.last.down, |s| s.down)
    }
    /// How often it slips again after rolling.
    pub fn slips_again(&self) -> usize {
        self.slips_again
    }
    /// The most friction that rolling asked for, as a share of what presses on the lane.
    pub fn friction_asked(&self) -> f64 {
        self.friction_asked
    }
    /// How far the axis point wanders over the ball in all.
    pub fn axis_path(&self) -> Length {
        Length::metres(self.axis_path)
    }
    /// From the axis point at the release to the last one, along the ball.
    pub fn axis_shift(&self) -> Length {
        Length::metres(self.axis_shift)
    }
    /// From the axis point at the release to the farthest one, along the ball: about the flare at its widest.
    pub fn flare(&self) -> Length {
        Length::metres(self.axis_farthest)
    }
    /// Steps that were taken.
    pub fn steps(&self) -> usize {
        self.steps
    }
    /// How often the equations were worked out for those steps.
    pub fn slopes(&self) -> usize {
        self.slopes
    }
}

/// What to integrate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shot {
    /// The ball.
    pub ball: Ball,
    /// How its axes stand at the release.
    pub attitude: Attitude,
    /// How it leaves the hand.
    pub release: Release,
    /// The lane.
    pub lane: Lane,
    /// The friction its cover finds there.
    pub friction: Friction,
}

/// How precisely to integrate, and how long.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Settings {
    tolerance: f64,
    most_steps: usize,
    keeps_rolling: bool,
}

impl Settings {
    /// To a relative error of about `tolerance` a step (1e-12 to 1e-3), in at most 400,000 steps.
    ///
    /// # Errors
    /// A tolerance outside those limits.
    pub fn new(tolerance: f64) -> Result<Settings, Impossible> {
        Ok(Settings {
            tolerance: within("tolerance", tolerance, 1e-12, 1e-3, "")?,
            most_steps: 400_000,
            keeps_rolling: false,
        })
    }
    /// The same in at most so many steps.
    pub fn in_steps(self, most_steps: usize) -> Settings {
        Settings { most_steps, ..self }
    }
    /// The same, but once it rolls it keeps rolling, however much friction that asks for.
    pub fn kept_rolling(self) -> Settings {
        Settings {
            keeps_rolling: true,
            ..self
        }
    }
    /// Slip when it starts again after rolling, m/s: slip must start as something, since its direction is none at zero. A hundred
    /// times the tolerance, but not so small that the first steps are too many.
    fn first_slip(&self) -> f64 {
        (100.0 * self.tolerance).clamp(1e-7, 1e-5)
    }
    /// Slip that counts as none, m/s.
    fn no_slip(&self) -> f64 {
        0.01 * self.first_slip()
    }
}

/// Integrates a shot, to a relative error of about `tolerance` a step (1e-12 to 1e-3), and tells it at these places along the lane (0 to the
/// pins, in any order; they are told in order).
///
/// # Errors
/// A tolerance or a place outside those limits, a ball that would hop, or one that isn't at the pins within the steps allowed.
pub fn roll(shot: &Shot, places: &[Length], tolerance: f64) -> Result<Path, Impossible> {
    roll_with(shot, places, &Settings::new(tolerance)?)
}

/// The same with more said about how.
///
/// # Errors
/// As [`roll`].
pub fn roll_with(shot: &Shot, places: &[Length], settings: &Settings) -> Result<Path, Impossible> {
    for place in places {
        within(
            "place along the lane",
            place.as_feet(),
            0.0,
            shot.lane.length().as_feet(),
            "ft",
        )?;
    }
    run::Run::new(shot, settings).whole(places)
}
