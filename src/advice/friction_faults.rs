//! A friction table that can't be: what is wrong with it, on which cover, and by which rules.

use super::friction::{Surface, judged};
use super::outcome::Trouble;
use super::shop::Shop;
use crate::bowler::Bowler;
use crate::catalog::{Cover, Finish};
use crate::notation::Notation;
use crate::rules::{Line, Measured, Role, RuleSet};
use crate::vocabulary::{FRICTIONS, GRITS};

/// Grits that are tried besides none: both ends, and what is common between (own choice).
const TRIED_GRITS: [i64; 8] = [
    *GRITS.start(),
    500,
    1000,
    1500,
    2000,
    3000,
    4000,
    *GRITS.end(),
];
/// Games that are tried besides none told (own choice).
const TRIED_GAMES: [i64; 7] = [0, 1, 15, 30, 60, 120, 5000];

impl Shop {
    /// Tries the friction table on every cover and finish there may be.
    ///
    /// # Errors
    /// [`Trouble::Friction`], the first surface that the rules give no friction.
    pub(super) fn check_friction_table(&self) -> Result<(), Trouble> {
        if !self.has_friction() {
            return Ok(());
        }
        for &cover in Cover::ALL {
            for &finish in Finish::ALL {
                let plain = Surface::new(cover).finished(finish);
                let sanded = TRIED_GRITS.map(|grit| plain.grit(grit));
                for surface in std::iter::once(plain).chain(sanded) {
                    self.try_friction(&surface)?;
                    for games in TRIED_GAMES {
                        self.try_friction(&surface.games(games))?;
                    }
                }
            }
        }
        Ok(())
    }

    /// The same on what stands on the shelf and on what the bowler owns: whoever answers by motion has to have it whole.
    pub(super) fn check_frictions_for(&self, bowler: &Bowler) -> Result<(), Trouble> {
        if !self.has_friction() {
            return Ok(());
        }
        let missing = self.candidates().iter().find(|it| it.friction.is_none());
        if let Some(stock) = missing.and_then(|ball| self.catalog().stock().get(ball.stock)) {
            let model = stock.model();
            let surface = Surface::new(model.cover()).finished(model.finish());
            self.try_friction(&surface.games(0))?;
        }
        for owned in bowler.owned() {
            // What else there is to say of an owned ball is said where it is rolled.
            if let Err(trouble @ Trouble::Friction(_)) = self.owned_roll_ball(bowler, owned) {
                return Err(trouble);
            }
        }
        Ok(())
    }

    /// Rules that say nothing of friction at all are of another trade.
    fn has_friction(&self) -> bool {
        let rules = self.rules();
        FRICTIONS.iter().all(|id| rules.subject(id).is_some())
    }

    fn try_friction(&self, surface: &Surface) -> Result<(), Trouble> {
        judged(self.rules(), surface).map(|_| ())
    }
}

/// What is wrong with two measures that are no friction, in words.
pub(super) fn fault(rules: &RuleSet, surface: &Surface, measured: &[Measured; 2]) -> String {
    let of = |at: usize| (FRICTIONS.get(at).copied(), measured.get(at));
    for at in 0..FRICTIONS.len() {
        let (Some(subject), Some(found)) = of(at) else {
            continue;
        };
        if let Some(problem) = found.problem() {
            return format!("for {surface}, {problem}{}", stated(rules, subject));
        }
        if let Some(limit) = stopped(found) {
            let value = found.value().unwrap_or_default();
            let sum = Notation::Coefficient.write(value - limit.points());
            let most = Notation::Coefficient.write(value);
            let side = if limit.points() > 0 { "least" } else { "most" };
            return format!(
                "for {surface}, {subject} comes to {sum}, and {most} is the {side} there can be: {}",
                added(rules, found)
            );
        }
    }
    let sums = std::iter::zip(FRICTIONS, measured).map(|(subject, found)| {
        let value = Notation::Coefficient.write(found.value().unwrap_or_default());
        format!("{subject} is {value}: {}", added(rules, found))
    });
    format!(
        "for {surface}, the oil grips more than the dry; {}",
        sums.collect::<Vec<_>>().join("; ")
    )
}

/// The limit that a sum ran into.
pub(super) fn stopped(measured: &Measured) -> Option<&Line> {
    let mut lines = measured.lines().iter();
    lines.find(|line| line.role() == Role::Limit && line.points() != 0)
}

/// Each rule that adds to a measure, with its file and what it adds.
fn added(rules: &RuleSet, measured: &Measured) -> String {
    let lines = measured.lines().iter();
    let lines = lines.filter(|line| matches!(line.role(), Role::Start | Role::Add));
    let lines = lines.map(|line| {
        let rule = rules.rule(line.rule());
        let amount = Notation::Coefficient.write(line.points());
        format!("`{}` in {} {amount}", rule.id(), rule.file())
    });
    lines.collect::<Vec<_>>().join(", ")
}

/// Where the rules of a measure are: the shop's own files alone where they change it.
fn stated(rules: &RuleSet, subject: &str) -> String {
    let all = || rules.rules().iter().filter(|it| it.subject() == subject);
    let own = all().any(|rule| rule.is_overlay());
    let files = all().filter(|rule| !own || rule.is_overlay());
    let mut told: Vec<String> = match own {
        true => files
            .map(|rule| format!("`{}` in {}", rule.id(), rule.file()))
            .collect(),
        false => files.map(|rule| rule.file().to_owned()).collect(),
    };
    told.dedup();
    match told.is_empty() {
        true => String::new(),
        false => format!("; its rules: {}", told.join(", ")),
    }
}
