//! What one ball does on a lane for a bowler, and how two differ. Plain results with getters; nothing here computes.

use super::{Assumed, Reason, RollBall, Texts, WorkStep};
use crate::motion::path::Path;
use crate::motion::{Angle, Lane};

/// The answer to "what would this ball do, and that one?".
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Roll {
    pub(crate) bowler: String,
    pub(crate) throw: Vec<(&'static str, String)>,
    pub(crate) lane: String,
    pub(crate) lane_name: String,
    pub(crate) oil: Lane,
    pub(crate) mirrored: bool,
    pub(crate) line: RollLine,
    pub(crate) balls: Vec<Rolled>,
    pub(crate) apart: Option<Apart>,
    pub(crate) says: Vec<Saying>,
    pub(crate) assumptions: Vec<Assumed>,
    pub(crate) questions: Vec<String>,
    pub(crate) digest: String,
}

/// Where the balls are sent: the line that suits the one that hooks less, so that both stay on the lane, whichever was named first.
#[derive(Clone, Debug, PartialEq)]
pub struct RollLine {
    pub(crate) start_board: f64,
    pub(crate) launch: Angle,
    pub(crate) target_board: f64,
    pub(crate) suits: usize,
    pub(crate) because: String,
    pub(crate) lines: Vec<Reason>,
}

/// One ball's roll.
#[derive(Clone, Debug)]
pub struct Rolled {
    pub(crate) ball: RollBall,
    pub(crate) path: Path,
    pub(crate) most_turn: Angle,
    pub(crate) turn_done: f64,
}

/// A sentence or two that the rules say about a roll.
#[derive(Clone, Debug)]
pub struct Saying {
    pub(crate) step: WorkStep,
    pub(crate) texts: Texts,
    pub(crate) balls: Vec<usize>,
    pub(crate) for_the_fitter: bool,
}

/// How the second ball differs from the first, as a range over what isn't known well.
#[derive(Clone, Debug)]
pub struct Apart {
    pub(crate) along: Vec<ApartAt>,
    pub(crate) entry: Option<(f64, f64, f64)>,
    pub(crate) sooner: Option<(f64, f64, f64)>,
    pub(crate) said: Texts,
    pub(crate) varied: Vec<String>,
    pub(crate) off_the_lane: (usize, usize),
    pub(crate) lines: Vec<Reason>,
}

/// How far apart the two are at one place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ApartAt {
    pub(crate) feet: f64,
    pub(crate) boards: f64,
    pub(crate) least: f64,
    pub(crate) most: f64,
    pub(crate) whole: bool,
}

impl Roll {
    /// The customer's name, harmless to print; empty if none was given.
    pub fn bowler(&self) -> &str {
        &self.bowler
    }
    /// The numbers of the throw as they were taken: what, and its value as people write it.
    pub fn throw(&self) -> &[(&'static str, String)] {
        &self.throw
    }
    /// The lane's id in the catalog.
    pub fn lane(&self) -> &str {
        &self.lane
    }
    /// The lane as people say it.
    pub fn lane_name(&self) -> &str {
        &self.lane_name
    }
    /// The lane as the physics sees it.
    pub fn oil(&self) -> &Lane {
        &self.oil
    }
    /// Whether boards are counted from the left and the ball curves to the right: a left-hander, or a right-hander's backup ball.
    pub fn is_mirrored(&self) -> bool {
        self.mirrored
    }
    /// Where the balls are sent.
    pub fn line(&self) -> &RollLine {
        &self.line
    }
    /// One ball or two.
    pub fn balls(&self) -> &[Rolled] {
        &self.balls
    }
    /// What each ball is called beside the other: without its weight, unless that is what tells them apart.
    pub fn names(&self) -> Vec<&str> {
        let balls: Vec<&RollBall> = self.balls.iter().map(Rolled::ball).collect();
        names(&balls)
    }
    /// How the second differs from the first.
    pub fn apart(&self) -> Option<&Apart> {
        self.apart.as_ref()
    }
    /// What the rules say about it, in their order.
    pub fn says(&self) -> &[Saying] {
        &self.says
    }
    /// What was assumed because it wasn't known.
    pub fn assumptions(&self) -> &[Assumed] {
        &self.assumptions
    }
    /// Questions the profile raises, for the fitter to ask.
    pub fn questions(&self) -> &[String] {
        &self.questions
    }
    /// Digest of rules and catalog.
    pub fn digest(&self) -> &str {
        &self.digest
    }
}

impl RollLine {
    /// The board it starts on, at the foul line.
    pub fn start_board(&self) -> f64 {
        self.start_board
    }
    /// The direction it is sent in; more than zero is toward the side it curves to.
    pub fn launch(&self) -> Angle {
        self.launch
    }
    /// The ball it suits, by its place among [`Roll::balls`].
    pub fn suits(&self) -> usize {
        self.suits
    }
    /// The board that ball comes to at the pins.
    pub fn target_board(&self) -> f64 {
        self.target_board
    }
    /// Why this line.
    pub fn because(&self) -> &str {
        &self.because
    }
    /// The rules behind the board it turns on, the target and the farthest start, each with its source.
    pub fn lines(&self) -> &[Reason] {
        &self.lines
    }
}

impl Rolled {
    /// The ball.
    pub fn ball(&self) -> &RollBall {
        &self.ball
    }
    /// Its path: a station at every foot.
    pub fn path(&self) -> &Path {
        &self.path
    }
    /// The most this hand can turn it, sent straight down the lane.
    pub fn most_turn(&self) -> Angle {
        self.most_turn
    }
    /// How much of that is done at the pins, 0 to 1.
    pub fn turn_done(&self) -> f64 {
        self.turn_done
    }
}

impl Saying {
    /// The rule it comes from, with its source.
    pub fn step(&self) -> &WorkStep {
        &self.step
    }
    /// As it is said to each reader.
    pub fn texts(&self) -> &Texts {
        &self.texts
    }
    /// Whether only a fitter has a use for it.
    pub fn is_for_the_fitter(&self) -> bool {
        self.for_the_fitter
    }
    /// The balls it holds for, by their places among [`Roll::balls`].
    pub fn balls(&self) -> &[usize] {
        &self.balls
    }
}

impl Apart {
    /// At every foot: boards that the second ball is further to the side it curves to, and the range of that.
    pub fn along(&self) -> &[ApartAt] {
        &self.along
    }
    /// How much larger the second ball's entry angle is in degrees: as thrown, at least, at most; none where one of them leaves the lane.
    pub fn entry(&self) -> Option<(f64, f64, f64)> {
        self.entry
    }
    /// How many feet sooner the second ball has finished hooking: as thrown, at least, at most; none where one hasn't at the pins.
    pub fn sooner(&self) -> Option<(f64, f64, f64)> {
        self.sooner
    }
    /// The comparison in a sentence or two, with its range.
    pub fn said(&self) -> &Texts {
        &self.said
    }
    /// The rules that say how far each number may be off, with their sources.
    pub fn lines(&self) -> &[Reason] {
        &self.lines
    }
    /// In how many of the throws with every number at an end of its range a ball leaves the lane, and of how many. The range is of those
    /// that stay, and of throws as far toward these as stay.
    pub fn off_the_lane(&self) -> (usize, usize) {
        self.off_the_lane
    }
    /// What the range was taken over, and how far, in a line each.
    pub fn varied(&self) -> &[String] {
        &self.varied
    }
}

impl ApartAt {
    /// Feet from the foul line.
    pub fn feet(&self) -> f64 {
        self.feet
    }
    /// As thrown.
    pub fn boards(&self) -> f64 {
        self.boards
    }
    /// At least.
    pub fn least(&self) -> f64 {
        self.least
    }
    /// At most.
    pub fn most(&self) -> f64 {
        self.most
    }
    /// Whether the range is over everything that was varied: not where, in some of it, a ball has left the lane by then.
    pub fn is_whole(&self) -> bool {
        self.whole
    }
}

/// What balls are called beside each other: a ball of the shelf without its weight, unless another is called the same.
pub(super) fn names<'r>(balls: &[&'r RollBall]) -> Vec<&'r str> {
    let short = |ball: &&'r RollBall| match ball.name().rsplit_once(", ") {
        Some((name, _)) if !ball.is_owned() => name,
        _ => ball.name(),
    };
    let all: Vec<&str> = balls.iter().map(short).collect();
    let alone = |name: &str| all.iter().filter(|other| **other == name).count() == 1;
    std::iter::zip(balls, &all)
        .map(|(ball, name)| if alone(name) { name } else { ball.name() })
        .collect()
}
