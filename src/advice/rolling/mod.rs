//! The question "what would this ball do for this bowler on this lane, and that one beside it?".
//!
//! Everything is worked out for a right-hander whose ball curves to the left; a left-hander's roll, and a backup ball's, is the
//! same with boards counted from the other side, to the last digit.

mod band;
mod line;
mod says;
mod spread;
mod throw;
mod ways;
mod words;

use super::explain::{self, Scale};
use super::outcome::Trouble;
use super::reason::Reason;
use super::result::Assumed;
use super::roll::{Apart, Roll, RollLine, Rolled, names};
use super::roll_ball::RollBall;
use super::shop::Shop;
use crate::bowler::Bowler;
use crate::catalog::LaneRow;
use crate::motion::closed::{self, Thrown};
use crate::motion::path::{Ending, Path};
use crate::motion::{Angle, Lane, Release};
use crate::notation::Notation;
use crate::rules::{Audience, Interval};
use crate::vocabulary::{Alone, Situation};

use band::Sent;
use line::{Thrower, Wanted, Way};
use spread::Spread;
use throw::Throw;

/// Where the path to the pins is told while a line is looked for: nowhere but at its end.
const NOWHERE: &[crate::motion::Length] = &[];

impl Shop {
    /// What a ball does on a lane for this bowler; or two, on the line that suits the one that hooks less. Each ball is `model-id`, `model-id@weight` or
    /// the name of one the bowler owns; the lane is an id of the catalog's lanes, or the one that goes with the bowler's answer.
    ///
    /// # Errors
    /// No ball or more than two, a ball or a lane that there isn't, speed or rev rate not measured (all that is missing at once), or
    /// numbers that the physics has no roll for.
    pub fn roll(
        &self,
        bowler: &Bowler,
        balls: &[String],
        lane: Option<&str>,
    ) -> Result<Roll, Trouble> {
        if !(1..=2).contains(&balls.len()) {
            return Err(Trouble::NotOneOrTwoBalls { named: balls.len() });
        }
        self.check_frictions_for(bowler)?;
        let row = self.lane_for(bowler, lane)?;
        let mut situation = Situation::of(bowler, self.rules());
        situation.set("lane.oil", Interval::point(row.oil()));
        situation.set("lane.inside", Interval::point(inside(row)));
        let balls = balls
            .iter()
            .map(|ball| self.roll_ball(bowler, ball))
            .collect::<Result<Vec<RollBall>, Trouble>>()?;
        let (throw, mut assumptions) = Throw::of(bowler, &situation)?;
        assumptions.extend(self.taken(&situation, &assumptions));
        let oil = *row.lane();
        let release = throw.release().map_err(Trouble::NoRoll)?;
        let line = self.line_for(&balls, &oil, release, &situation)?;
        let sent = Sent {
            start: line.start_board,
            launch: line.launch,
        };
        let rolled = self.rolled(&balls, &oil, release, sent)?;
        let apart = self.apart(bowler, &rolled, &oil, throw, sent, &situation)?;
        let says = self.said_of_rolls(&situation, &rolled, apart.as_ref(), line.suits);
        Ok(Roll {
            bowler: bowler.name().unwrap_or_default().to_owned(),
            throw: throw.shown(),
            lane: row.id().to_owned(),
            lane_name: row.name().to_owned(),
            oil,
            mirrored: is_mirrored(&situation),
            line,
            balls: rolled,
            apart,
            says,
            assumptions,
            questions: self.questions_for(bowler),
            digest: self.digest().to_owned(),
        })
    }

    /// The lane that was named, or the one for the bowler's answer.
    fn lane_for(&self, bowler: &Bowler, lane: Option<&str>) -> Result<&LaneRow, Trouble> {
        let lanes = self.catalog().lanes();
        match lane {
            Some(id) => lanes.named(id).map_err(Trouble::UnknownLane),
            None => Ok(lanes.for_answer(bowler.answer("bowler.lanes").unwrap_or_default())),
        }
    }

    /// What the rules take for granted about the throw, the hand and the lanes.
    fn taken(&self, situation: &Situation, told: &[Assumed]) -> Vec<Assumed> {
        const ABOUT: [&str; 5] = [
            "bowler.hand",
            "bowler.curve",
            "bowler.rotation",
            "bowler.tilt",
            "bowler.lanes",
        ];
        let vocabulary = situation.vocabulary();
        let assumptions = self.rules().assumptions().iter();
        assumptions
            .filter(|a| situation.assumed().contains(&a.fact()))
            .filter(|a| {
                let name = vocabulary.fact(a.fact()).name;
                ABOUT.contains(&name) && !told.iter().any(|told| told.fact == name)
            })
            .map(|a| Assumed {
                fact: vocabulary.fact(a.fact()).name.to_owned(),
                meaning: vocabulary.fact(a.fact()).meaning.to_owned(),
                value: a.value().map(|value| vocabulary.print(a.fact(), value)),
                matters: true,
                reason: a.because(Audience::Newcomer).to_owned(),
                source: a.source().to_string(),
                strength: a.source().strength().words(),
            })
            .collect()
    }

    /// A setting of the rules: its value and its reasons.
    fn rolls_setting(&self, name: &str, situation: &Situation) -> (Option<i64>, Vec<Reason>) {
        self.observe(name, &Alone(situation));
        let rules = self.rules();
        let measured = rules.measure(name, &Alone(situation));
        let notation = rules.subject(name).and_then(|subject| subject.notation());
        let scale = Scale::Measure {
            notation: notation.unwrap_or(Notation::Count),
            mirrored: false,
        };
        let lines = measured.lines().iter();
        let lines = lines.map(|line| explain::reason(rules, line, scale));
        (measured.value(), lines.collect())
    }

    fn needed(
        &self,
        name: &str,
        situation: &Situation,
        lines: &mut Vec<Reason>,
    ) -> Result<i64, Trouble> {
        let (value, found) = self.rolls_setting(name, situation);
        lines.extend(found);
        value.ok_or_else(|| Trouble::Rules(format!("no rule says `{name}`")))
    }

    /// The line that suits the ball that hooks less: on the other's it might not come back. Whichever was named first, it is the same.
    fn line_for(
        &self,
        balls: &[RollBall],
        oil: &Lane,
        release: Release,
        situation: &Situation,
    ) -> Result<RollLine, Trouble> {
        let mut lines = Vec::new();
        let mut board = |name: &str| -> Result<f64, Trouble> {
            // A board is counted in tenths.
            Ok(self.needed(name, situation, &mut lines)? as f64 / 10.0)
        };
        let wanted = Wanted {
            exit: board("line.exit_board")?.max(board("line.least_exit")?),
            target: board("line.target_board")?,
            most_start: board("line.most_start")?,
        };
        let mut calmest: Option<(f64, &str, usize, &RollBall)> = None;
        for (at, ball) in balls.iter().enumerate() {
            let roll = |release| band::rolled(ball, oil, release, NOWHERE);
            let comes = Thrower::new(oil, release, &roll).hooks_to(wanted);
            let comes = comes.map_err(Trouble::NoRoll)?;
            // Of two that hook alike the first by its id, so that the order in which they were named decides nothing.
            if calmest.is_none_or(|(least, id, ..)| (comes, ball.id()) < (least, id)) {
                calmest = Some((comes, ball.id(), at, ball));
            }
        }
        let Some((_, _, suits, ball)) = calmest else {
            return Err(Trouble::NotOneOrTwoBalls { named: 0 });
        };
        let roll = |release| band::rolled(ball, oil, release, NOWHERE);
        let found = Thrower::new(oil, release, &roll).line(wanted);
        let found = found.map_err(Trouble::NoRoll)?;
        let all: Vec<&RollBall> = balls.iter().collect();
        let called = names(&all);
        let name = called.get(suits).copied().unwrap_or_default();
        let other = called.iter().enumerate().find(|(at, _)| *at != suits);
        let other = other.filter(|(at, _)| balls.get(*at).is_some_and(|it| it.id() != ball.id()));
        let mut because = because(found.way, name, wanted);
        if let Some((_, other)) = other {
            because.push_str(&format!(
                " It hooks less than {other}, so its line is taken for both."
            ));
        }
        Ok(RollLine {
            start_board: found.start,
            launch: Angle::degrees(found.launch),
            target_board: wanted.target,
            suits,
            because,
            lines,
        })
    }

    fn rolled(
        &self,
        balls: &[RollBall],
        oil: &Lane,
        release: Release,
        sent: Sent,
    ) -> Result<Vec<Rolled>, Trouble> {
        let places = band::places();
        // What a hand can turn a ball is told of a straight throw: sent outward it would be more, as two directions add up.
        let straight = Thrown::of(&release);
        let sent = release
            .sent(oil.across(sent.start), sent.launch)
            .map_err(Trouble::NoRoll)?;
        balls
            .iter()
            .map(|ball| {
                let path = band::rolled(ball, oil, sent, &places).map_err(Trouble::NoRoll)?;
                let body = ball.body();
                Ok(Rolled {
                    ball: ball.clone(),
                    most_turn: closed::most_turn(&straight, body.beta(), body.radius()),
                    turn_done: turn_done(&path),
                    path,
                })
            })
            .collect()
    }

    /// The second ball against the first, if there are two.
    fn apart(
        &self,
        bowler: &Bowler,
        rolled: &[Rolled],
        oil: &Lane,
        throw: Throw,
        sent: Sent,
        situation: &Situation,
    ) -> Result<Option<Apart>, Trouble> {
        let [one, other] = rolled else {
            return Ok(None);
        };
        let mut lines = Vec::new();
        let mut values = Vec::new();
        for name in spread::SETTINGS {
            let mut found = Vec::new();
            values.push((name, self.needed(name, situation, &mut found)?));
            // What the bowler says of a measurement stands before the rule.
            if !spread::is_told(bowler, name) {
                lines.append(&mut found);
            }
        }
        let setting = |name: &str| values.iter().find(|(n, _)| *n == name).map(|(_, v)| *v);
        let spread = Spread::of(bowler, &setting)
            .ok_or_else(|| Trouble::Rules("no rule says how far numbers are off".to_owned()))?;
        let mut apart = band::apart(
            [&one.ball, &other.ball],
            [&one.path, &other.path],
            oil,
            throw,
            spread,
            sent,
        )
        .map_err(Trouble::NoRoll)?;
        apart.lines = lines;
        let gutter = rolled
            .iter()
            .position(|rolled| matches!(rolled.path.ending(), Ending::Gutter(_)));
        let ends = match gutter {
            _ if one.ball.id() == other.ball.id() => words::Ends::SameBall,
            Some(which) => words::Ends::InTheGutter(which),
            None => words::Ends::AtThePins,
        };
        let balls = [&one.ball, &other.ball];
        let called = names(&balls);
        let finished = [one, other].map(|rolled| rolled.path.slip_ends().is_some());
        if let [first, second] = called.as_slice() {
            apart.said = words::sentence(&apart, [first, second], ends, finished);
        }
        Ok(Some(apart))
    }
}

/// How much of the slip at the release is gone at the pins.
fn turn_done(path: &Path) -> f64 {
    if path.slip_ends().is_some() {
        return 1.0;
    }
    let first = path.stations().first().map_or(0.0, |first| first.slip());
    if first <= 0.0 {
        return 1.0;
    }
    (1.0 - path.last().slip() / first).clamp(0.0, 1.0)
}

/// A left-hander, or a right-hander's backup ball; not both.
fn is_mirrored(situation: &Situation) -> bool {
    let left = situation.is_word("bowler.hand", "left");
    left != situation.is_word("bowler.curve", "away")
}

/// The first board with the whole oil, in tenths; 0 where it is alike on every board.
fn inside(row: &LaneRow) -> i64 {
    match row.lane().is_even() {
        true => 0,
        false => row.inside(),
    }
}

/// Why a ball is sent this way.
fn because(way: Way, name: &str, wanted: Wanted) -> String {
    let ball = words::begun(name);
    let Wanted {
        exit,
        target,
        most_start,
    } = wanted;
    match way {
        Way::Out => format!(
            "{ball} then turns back on board {exit}, where the oil lets it, and comes to board {target}."
        ),
        Way::Inward => format!(
            "{ball} hooks no farther than from board {exit} to board {target}, so it starts there."
        ),
        Way::Farthest => format!(
            "{ball} hooks more than the lane is wide from board {exit}, so it starts on board {most_start} and turns back on another board."
        ),
        Way::Nearest => {
            format!(
                "No line was found that brings {name} to board {target}; this one comes nearest."
            )
        }
    }
}
