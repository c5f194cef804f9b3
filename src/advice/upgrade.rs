//! Which ball comes next for a bowler, and why; or none. Plain results with getters; nothing here computes.

use super::{Assumed, Bill, Caution, NearMiss, Pick, Reason, Settled, WorkStep};
use crate::rules::Audience;

/// How far down the lane the head pin stands, in feet.
pub(super) const PINS: f64 = 60.0;

/// The answer to "which ball comes next, why, and when not to buy?".
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Upgrade {
    pub(crate) bowler: String,
    pub(crate) cautions: Vec<Caution>,
    pub(crate) held: bool,
    pub(crate) owned: Vec<OwnedNow>,
    pub(crate) lane: Option<String>,
    pub(crate) doubled: Vec<Doubled>,
    pub(crate) before: Vec<WorkStep>,
    pub(crate) fingertip: Option<Bill>,
    pub(crate) settled: Vec<Settled>,
    pub(crate) gaps: Vec<BallGap>,
    pub(crate) ruled_out: Vec<BallGap>,
    pub(crate) next: Vec<NextBall>,
    pub(crate) wait_for: Vec<WorkStep>,
    pub(crate) assumptions: Vec<Assumed>,
    pub(crate) questions: Vec<String>,
    pub(crate) digest: String,
}

/// A ball that is owned, and what it does.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct OwnedNow {
    pub(crate) name: String,
    pub(crate) about: String,
    pub(crate) role: &'static str,
    pub(crate) does: Option<Does>,
}

/// What a ball does on the bowler's lane, by the closed results for equal moments.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Does {
    /// How many boards sideways from the line of its launch it is at the pins, toward the side it hooks to.
    pub boards: f64,
    /// How far down the lane it has finished hooking, in feet; beyond 60 if it hasn't at the pins.
    pub finished: f64,
    /// The angle at the pins, in degrees.
    pub entry: f64,
    /// How much of its turn is done at the pins, 0 to 1.
    pub turn_done: f64,
}

/// Two owned balls that do the same.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Doubled {
    pub(crate) names: [String; 2],
    pub(crate) apart: Option<(f64, f64)>,
}

/// Something the balls owned may lack, with what speaks for and against it.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct BallGap {
    pub(crate) word: &'static str,
    pub(crate) place: usize,
    pub(crate) total: i64,
    pub(crate) lines: Vec<Reason>,
}

/// The ball that would fill a gap.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct NextBall {
    pub(crate) gap: BallGap,
    pub(crate) pick: Option<Pick>,
    pub(crate) bill: Option<Bill>,
    pub(crate) over_budget: Option<i64>,
    pub(crate) near_misses: Vec<NearMiss>,
    pub(crate) against: Option<Against>,
    pub(crate) own_choice: Option<OwnChoice>,
    pub(crate) triggers: Vec<WorkStep>,
    pub(crate) cautions: Vec<Caution>,
}

/// The dear ball that a customer wants all the same: drilled, and marked as their own choice.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct OwnChoice {
    pub(crate) pick: Pick,
    pub(crate) bill: Bill,
    pub(crate) dearer: i64,
    pub(crate) cautions: Vec<Caution>,
}

/// How a ball from the shelf would differ from the owned ball that comes nearest to it: least and most, over what isn't known well.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub struct Against {
    /// The owned ball that comes nearest.
    pub owned: String,
    /// Whole boards at the pins; more than none hooks more.
    pub boards: (i64, i64),
    /// Whole feet; more than none has finished hooking sooner.
    pub sooner: (i64, i64),
}

impl Upgrade {
    /// The customer's name, harmless to print; empty if none was given.
    pub fn bowler(&self) -> &str {
        &self.bowler
    }
    /// What to take care of; serious ones first.
    pub fn cautions(&self) -> &[Caution] {
        &self.cautions
    }
    /// True if a serious caution comes before any purchase: then no ball is told.
    pub fn is_held(&self) -> bool {
        self.held
    }
    /// The balls owned, in the order of the profile.
    pub fn owned(&self) -> &[OwnedNow] {
        &self.owned
    }
    /// The lane on which the balls owned are looked at; none where speed or revs aren't known.
    pub fn lane(&self) -> Option<&str> {
        self.lane.as_deref()
    }
    /// Pairs of owned balls that do the same.
    pub fn doubled(&self) -> &[Doubled] {
        &self.doubled
    }
    /// What to do before buying, in order; empty if it is held.
    pub fn before(&self) -> &[WorkStep] {
        &self.before
    }
    /// What it comes to to drill an owned ball again for fingertip, where that is a step to think of.
    pub fn fingertip(&self) -> Option<&Bill> {
        self.fingertip.as_ref()
    }
    /// Weight and grip of whatever comes next.
    pub fn settled(&self) -> &[Settled] {
        &self.settled
    }
    /// The gaps that something speaks for, strongest first; `nothing_yet` among them.
    pub fn gaps(&self) -> &[BallGap] {
        &self.gaps
    }
    /// The gaps that a rule excludes.
    pub fn ruled_out(&self) -> &[BallGap] {
        &self.ruled_out
    }
    /// The balls that come next, in order; empty if the answer is "nothing yet", or if it is held.
    pub fn next(&self) -> &[NextBall] {
        &self.next
    }
    /// Where nothing comes next: what to wait for.
    pub fn wait_for(&self) -> &[WorkStep] {
        &self.wait_for
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

impl Does {
    /// Boards sideways at the pins, in tenths.
    pub fn tenths_of_boards(&self) -> i64 {
        whole(self.boards * 10.0)
    }
    /// Feet to where it has finished hooking, in tenths.
    pub fn tenths_of_feet(&self) -> i64 {
        whole(self.finished * 10.0)
    }
    /// The angle at the pins, in tenths of a degree.
    pub fn tenths_of_degrees(&self) -> i64 {
        whole(self.entry * 10.0)
    }
    /// How much of its turn is done at the pins, in percent.
    pub fn percent_done(&self) -> i64 {
        whole(self.turn_done * 100.0)
    }
    /// True if it still turns when it reaches the pins.
    pub fn is_unfinished(&self) -> bool {
        self.finished > PINS
    }
}

/// Rounded to a whole number; far beyond any lane it stays there.
pub(super) fn whole(value: f64) -> i64 {
    libm::round(value.clamp(-1e9, 1e9)) as i64
}

impl OwnedNow {
    /// What the bowler calls it, or weight and cover.
    pub fn name(&self) -> &str {
        &self.name
    }
    /// Cover, weight, surface and games, as far as they are known.
    pub fn about(&self) -> &str {
        &self.about
    }
    /// What it is among the others, in a few words.
    pub fn role(&self) -> &'static str {
        self.role
    }
    /// What it does on the bowler's lane; none where speed, revs or cover aren't known, or for the ball for spares.
    pub fn does(&self) -> Option<&Does> {
        self.does.as_ref()
    }
}

impl Doubled {
    /// The two.
    pub fn names(&self) -> [&str; 2] {
        self.names.each_ref().map(String::as_str)
    }
    /// How many boards and feet apart they are; none where only cover and surface are known.
    pub fn apart(&self) -> Option<(f64, f64)> {
        self.apart
    }
}

impl BallGap {
    /// The gap, one of `GAPS`.
    pub fn word(&self) -> &'static str {
        self.word
    }
    /// The same as people say it.
    pub fn said(&self, audience: Audience) -> &'static str {
        let plain = audience == Audience::Newcomer;
        match self.word {
            "nothing_yet" => "nothing yet",
            "spare_ball" => "a ball for single pins",
            "first_hooking_ball" if plain => "a first ball that grips the lane",
            "first_hooking_ball" => "a first ball that hooks",
            "between_the_others" => "a ball between the others",
            "more_for_oil" if plain => "a ball that grips sooner",
            "more_for_oil" => "a ball that hooks more and sooner",
            "less_for_dry" if plain => "a ball that goes further before it turns",
            "less_for_dry" => "a ball that goes longer or hooks more calmly",
            "replacement" if plain => "a new ball for a worn one",
            "replacement" => "a replacement for a worn ball",
            _ => "a gap",
        }
    }
    /// Counted from 1; 0 for one that is ruled out.
    pub fn place(&self) -> usize {
        self.place
    }
    /// Tenths of a point: the sum of the lines.
    pub fn total(&self) -> i64 {
        self.total
    }
    /// What speaks for it and against it, largest first; other schools count nothing.
    pub fn lines(&self) -> &[Reason] {
        &self.lines
    }
}

impl NextBall {
    /// The gap it fills.
    pub fn gap(&self) -> &BallGap {
        &self.gap
    }
    /// The ball, with every line of its sum; none where the shelf has none that fills the gap.
    pub fn pick(&self) -> Option<&Pick> {
        self.pick.as_ref()
    }
    /// What it comes to, drilled.
    pub fn bill(&self) -> Option<&Bill> {
        self.bill.as_ref()
    }
    /// Cents over the budget, or under it if below zero; none without a budget.
    pub fn over_budget(&self) -> Option<i64> {
        self.over_budget
    }
    /// Balls that only the budget keeps out, nearest first.
    pub fn near_misses(&self) -> &[NearMiss] {
        &self.near_misses
    }
    /// How it would differ from the owned ball that comes nearest; none where that can't be told.
    pub fn against(&self) -> Option<&Against> {
        self.against.as_ref()
    }
    /// The dear ball beside it, where the customer wants one; never the same ball again.
    pub fn own_choice(&self) -> Option<&OwnChoice> {
        self.own_choice.as_ref()
    }
    /// What to count before it is bought.
    pub fn triggers(&self) -> &[WorkStep] {
        &self.triggers
    }
    /// What to take care of with this ball.
    pub fn cautions(&self) -> &[Caution] {
        &self.cautions
    }
}

impl OwnChoice {
    /// The ball, with every line of its sum; the place is what the rules give it.
    pub fn pick(&self) -> &Pick {
        &self.pick
    }
    /// What it comes to, drilled.
    pub fn bill(&self) -> &Bill {
        &self.bill
    }
    /// Cents more than the ball that fits better; less if below zero.
    pub fn dearer(&self) -> i64 {
        self.dearer
    }
    /// The mild word that goes with it.
    pub fn cautions(&self) -> &[Caution] {
        &self.cautions
    }
}
