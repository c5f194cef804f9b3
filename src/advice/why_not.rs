//! Why a ball isn't the pick: what rules it out, or what cost it most against the best there is.

use super::explain::{self, Scale};
use super::outcome::Trouble;
use super::reason::{Caution, Reason};
use super::shop::Shop;
use super::standing::{Most, Standing, counted};
use crate::bowler::Bowler;
use crate::notation::Notation;
use crate::rules::{Line, RuleId};
use crate::vocabulary::{BallCandidate, StageWorld};

/// So many lines that cost a ball points are told.
const COSTS: usize = 3;

/// The answer to "why not this ball?".
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct WhyNot {
    pub(crate) bowler: String,
    pub(crate) digest: String,
    pub(crate) cautions: Vec<Caution>,
    pub(crate) ball: String,
    pub(crate) name: String,
    pub(crate) left: usize,
    pub(crate) attainable: i64,
    pub(crate) pick: Option<BallFate>,
    pub(crate) by_fitter: bool,
    pub(crate) fates: Vec<BallFate>,
    pub(crate) elsewhere: Option<BallFate>,
}

/// What became of one ball: a model in a weight.
#[derive(Clone, Debug)]
pub struct BallFate {
    pub(crate) ball: String,
    pub(crate) name: String,
    pub(crate) weight: String,
    pub(crate) out_the_door: Option<String>,
    pub(crate) is_pick: bool,
    pub(crate) total: i64,
    pub(crate) place: usize,
    pub(crate) barriers: Vec<Barrier>,
    pub(crate) lost: i64,
    pub(crate) behind_pick: i64,
    pub(crate) costs: Vec<Cost>,
}

/// A rule that rules a ball out, what it found in the ball, and what it wanted.
#[derive(Clone, Debug)]
pub struct Barrier {
    pub(crate) line: Reason,
    pub(crate) found: Vec<Sought>,
}

/// A value that a rule found, and what would have let the ball pass.
#[derive(Clone, Debug)]
pub struct Sought {
    pub(crate) fact: &'static str,
    pub(crate) meaning: &'static str,
    pub(crate) value: String,
    pub(crate) wanted: String,
}

/// What one rule cost a ball against the best that any ball left gets by it.
#[derive(Clone, Debug)]
pub struct Cost {
    pub(crate) own: i64,
    pub(crate) best: i64,
    pub(crate) best_ball: Option<String>,
    pub(crate) pick: i64,
    pub(crate) lacks: bool,
    pub(crate) line: Reason,
}

impl Shop {
    /// Why a ball (`model-id` or `model-id@weight`) isn't the pick for this bowler.
    ///
    /// Without a weight every weight on the shelf is told, best first. To ask about many balls make a
    /// [`Standing`] once.
    ///
    /// # Errors
    /// Unknown ball, ball not on the shelf in that weight or in any, what stands for a weight is none; or the rules can't
    /// be used.
    pub fn why_not(&self, bowler: &Bowler, ball: &str) -> Result<WhyNot, Trouble> {
        self.standing(bowler)?.why_not(ball)
    }
}

impl Standing<'_> {
    /// The same as [`Shop::why_not`] for the bowler of this standing.
    ///
    /// # Errors
    /// Unknown ball, ball not on the shelf in that weight or in any, what stands for a weight is none.
    pub fn why_not(&self, ball: &str) -> Result<WhyNot, Trouble> {
        let named = self.shop.named(ball)?;
        let said = self.shop.in_the_weight_said(&named)?;
        let world = self.world();
        let all = self.best_first(&named.own);
        let elsewhere = said.and_then(|said| {
            let ahead = all.iter().take_while(|&&c| c != said);
            ahead
                .copied()
                .find(|&c| !self.ranking.is_ruled_out(c))
                .map(|c| self.fate(&world, c))
        });
        let told = said.map_or(all, |said| vec![said]);
        let (ball, name) = match said {
            Some(said) => (self.id(said).to_owned(), self.name(said)),
            None => {
                let any = named.own.first().copied().unwrap_or_default();
                (named.model.to_owned(), self.model_name(any))
            }
        };
        Ok(WhyNot {
            bowler: self.bowler.clone(),
            digest: self.shop.digest().to_owned(),
            cautions: self.first_of_all(),
            ball,
            name,
            left: self.ranking.order().len(),
            attainable: self.attainable(),
            pick: self.pick.map(|pick| self.fate(&world, pick)),
            by_fitter: self.by_fitter,
            fates: told.iter().map(|&c| self.fate(&world, c)).collect(),
            elsewhere,
        })
    }

    /// What became of every ball on the shelf: those left, best first, then those ruled out, by id.
    #[must_use]
    pub fn all(&self) -> Vec<BallFate> {
        let world = self.world();
        let left = self.ranking.order().iter().copied();
        let mut out: Vec<usize> = (0..self.shop.candidates().len())
            .filter(|&c| self.ranking.is_ruled_out(c))
            .collect();
        out.sort_by_key(|&c| self.id(c));
        left.chain(out).map(|c| self.fate(&world, c)).collect()
    }

    /// The points of a ball that had the best of everything: the sum over the rules of the most points that any ball left
    /// gets by that rule. Tenths of a point; 0 if no ball is left. No single ball need reach it.
    #[must_use]
    pub fn attainable(&self) -> i64 {
        self.best().attainable
    }

    fn fate(&self, world: &StageWorld<'_, BallCandidate>, candidate: usize) -> BallFate {
        let total = self.ranking.total(candidate);
        let out = self.ranking.is_ruled_out(candidate);
        let pick = self.pick.map_or(total, |pick| self.ranking.total(pick));
        let price = self.out_the_door(candidate);
        BallFate {
            ball: self.id(candidate).to_owned(),
            name: self.name(candidate),
            weight: self.weight(candidate),
            out_the_door: price.map(|cents| Notation::Money.write(cents)),
            is_pick: self.pick == Some(candidate),
            total,
            place: self.place_if_left(candidate),
            barriers: self.told_barriers(world, candidate),
            lost: if out { 0 } else { self.attainable() - total },
            behind_pick: pick - total,
            costs: match out {
                true => Vec::new(),
                false => self.costs(candidate),
            },
        }
    }

    /// What keeps a ball out, each with what it found.
    pub(super) fn told_barriers(
        &self,
        world: &StageWorld<'_, BallCandidate>,
        candidate: usize,
    ) -> Vec<Barrier> {
        let rules = self.shop.rules();
        let vocabulary = rules.vocabulary();
        let barrier = |line: &Line| Barrier {
            line: explain::reason(rules, line, Scale::Points),
            found: rules
                .found(line)
                .iter()
                .map(|found| Sought {
                    fact: vocabulary.fact(found.fact()).name,
                    meaning: vocabulary.fact(found.fact()).meaning,
                    value: vocabulary.print(found.fact(), found.value()),
                    wanted: found.wanted().to_owned(),
                })
                .collect(),
        };
        let lines = self.barriers(world, candidate);
        lines.iter().map(barrier).collect()
    }

    /// The lines on which a ball that is left lost most, most costly first.
    fn costs(&self, candidate: usize) -> Vec<Cost> {
        let best = self.best();
        let Some(Some(ledger)) = best.ledgers.get(candidate) else {
            return Vec::new();
        };
        let own = |rule: RuleId| counted(ledger).find(|line| line.rule() == rule);
        let points = |rule: RuleId| own(rule).map_or(0, Line::points);
        let mut lost: Vec<(i64, RuleId, &Most)> = best
            .most
            .iter()
            .map(|(&rule, most)| (most.points - points(rule), rule, most))
            .filter(|(lost, ..)| *lost > 0)
            .collect();
        lost.sort_by_key(|&(lost, rule, _)| (std::cmp::Reverse(lost), rule));
        lost.truncate(COSTS);
        let cost = |(_, rule, most): (i64, RuleId, &Most)| {
            // A line against it speaks for itself; what it lacks is said by the ball that has it.
            let against = own(rule).filter(|line| line.points() < 0);
            let line = match (against, &most.by) {
                (Some(line), _) => explain::reason(self.shop.rules(), line, Scale::Points),
                (None, Some((_, reason))) => reason.clone(),
                (None, None) => return None,
            };
            Some(Cost {
                own: points(rule),
                best: most.points,
                best_ball: most.by.as_ref().map(|(name, _)| name.clone()),
                pick: self.picks_points(rule),
                lacks: against.is_none(),
                line,
            })
        };
        lost.into_iter().filter_map(cost).collect()
    }
}

macro_rules! getters {
    ($kind:ident { $($(#[$doc:meta])* $name:ident : $type:ty),* $(,)? }) => {
        impl $kind { $( $(#[$doc])* pub fn $name(&self) -> $type { &self.$name } )* }
    };
}

getters!(WhyNot {
    /// The customer's name, harmless to print; empty if none was given.
    bowler: &str,
    /// Digest of rules and catalog, so that two answers can be compared.
    digest: &str,
    /// Serious cautions of the person, which come before any ball.
    cautions: &[Caution],
    /// What was asked about: `model-id`, or `model-id@weight` if a weight was said.
    ball: &str,
    /// What it is called: `Daisy`, or `Daisy, 12 lb`.
    name: &str,
    /// What became of it in each weight asked about, best first; never empty.
    fates: &[BallFate],
});
impl WhyNot {
    /// The pick; none if no ball is left and the profile has settled on none.
    pub fn pick(&self) -> Option<&BallFate> {
        self.pick.as_ref()
    }
    /// True if the profile fixed the pick and the rules would have chosen another.
    pub fn is_fixed(&self) -> bool {
        self.by_fitter
    }
    /// How many balls are left.
    pub fn left(&self) -> usize {
        self.left
    }
    /// The best attainable: the sum over the rules of the most points that any ball left gets by that rule. Tenths of a
    /// point.
    pub fn attainable(&self) -> i64 {
        self.attainable
    }
    /// The same model in a weight that stands better, if one weight was asked about and there is one.
    pub fn elsewhere(&self) -> Option<&BallFate> {
        self.elsewhere.as_ref()
    }
}

getters!(BallFate {
    /// `model-id@weight`.
    ball: &str,
    /// Name and weight as people say it.
    name: &str,
    /// The weight as people say it.
    weight: &str,
    /// Every rule that rules it out; empty for a ball that is left.
    barriers: &[Barrier],
    /// The lines that cost it most against the best attainable, most costly first; three at most.
    costs: &[Cost],
});
impl BallFate {
    /// Drilled, with everything and tax; none where the grip isn't settled.
    pub fn out_the_door(&self) -> Option<&str> {
        self.out_the_door.as_deref()
    }
    /// True if it is the ball to take.
    pub fn is_pick(&self) -> bool {
        self.is_pick
    }
    /// True if a rule rules it out.
    pub fn is_ruled_out(&self) -> bool {
        !self.barriers.is_empty()
    }
    /// Tenths of a point; also of a ball that is ruled out.
    pub fn total(&self) -> i64 {
        self.total
    }
    /// Its place among the balls left, 1 for the best. For one that is ruled out, the place it would have if nothing did.
    pub fn place(&self) -> usize {
        self.place
    }
    /// Tenths of a point that it is short of [`WhyNot::attainable`]; 0 for a ball that is ruled out.
    pub fn lost(&self) -> i64 {
        self.lost
    }
    /// Tenths of a point that the pick has more; below 0 where the pick was fixed and has fewer.
    pub fn behind_pick(&self) -> i64 {
        self.behind_pick
    }
}

getters!(Barrier {
    /// The rule's line, with its reason.
    line: &Reason,
    /// What it found in the ball; any one of these being otherwise would let the ball pass. Empty where the rule looks at no
    /// fact of balls.
    found: &[Sought],
});
getters!(Sought {
    /// The fact's name.
    fact: &str,
    /// What it means, in a line.
    meaning: &str,
    /// Its value at the ball, as people write it.
    value: &str,
    /// What was wanted: `at most $0.00`.
    wanted: &str,
});
impl Cost {
    /// Tenths of a point lost, above 0.
    pub fn points(&self) -> i64 {
        self.best - self.own
    }
    /// Tenths of a point that the ball gets by the rule.
    pub fn own(&self) -> i64 {
        self.own
    }
    /// The most that any ball left gets by it.
    pub fn best(&self) -> i64 {
        self.best
    }
    /// The first ball that gets the most; none where the best is to be passed over by the rule.
    pub fn best_ball(&self) -> Option<&str> {
        self.best_ball.as_deref()
    }
    /// What the pick gets by it; the same as [`Cost::own`] where the rule doesn't tell the two apart.
    pub fn pick(&self) -> i64 {
        self.pick
    }
    /// True if the ball lacks something that another has; false if it has something against it.
    pub fn lacks(&self) -> bool {
        self.lacks
    }
    /// The rule's line: the ball's own where it speaks against it, else that of the ball that has the most.
    pub fn line(&self) -> &Reason {
        &self.line
    }
}
