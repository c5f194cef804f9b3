//! How every ball on the shelf stands for one bowler: ranked once, asked as often as wanted.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use super::chain::Chain;
use super::consultation::{Consultation, PERSON};
use super::explain::{self, Scale};
use super::outcome::Trouble;
use super::reason::{Caution, Reason};
use super::shop::Shop;
use super::stock::ball_name;
use crate::bowler::Bowler;
use crate::catalog::Stock;
use crate::notation::Notation;
use crate::rules::{Fate, Ledger, Line, Ranking, Role, RuleId, Severity};
use crate::vocabulary::{Alone, BallCandidate, Interval, Situation, StageWorld};

/// How every ball on the shelf stands for one bowler, weight and grip being settled as a consultation settles them.
///
/// Made once, it answers "why not this one?" and "this one or that?" for any balls: [`Standing::why_not`],
/// [`Standing::all`], [`Standing::compare`].
#[derive(Debug)]
pub struct Standing<'s> {
    pub(super) shop: &'s Shop,
    chain: Chain<'s>,
    pub(super) situation: Situation,
    pub(super) ranking: Ranking,
    pub(super) pick: Option<usize>,
    pub(super) by_fitter: bool,
    pub(super) bowler: String,
    best: OnceLock<Best>,
    /// By rule: what the pick gets by it.
    picks: OnceLock<BTreeMap<RuleId, i64>>,
}

/// The best of everything that is left.
#[derive(Debug)]
pub(super) struct Best {
    /// By rule: the most that any ball left gets by it.
    pub(super) most: BTreeMap<RuleId, Most>,
    /// Their sum.
    pub(super) attainable: i64,
    /// The ledgers it was found in, by candidate; none for a ball that is ruled out.
    pub(super) ledgers: Vec<Option<Ledger>>,
}

/// The most points that a ball left gets by one rule.
#[derive(Debug)]
pub(super) struct Most {
    /// Tenths of a point; 0 where a ball is left that the rule doesn't speak of and no other gets more.
    pub(super) points: i64,
    /// The name of the first ball that gets them, and its line, where the rule speaks of it.
    pub(super) by: Option<(String, Reason)>,
}

impl Shop {
    /// Ranks the shelf for a bowler, to be asked about any ball. A ball, weight or grip that the profile has settled counts.
    ///
    /// # Errors
    /// [`Trouble`] where the rules can't be used, or the ball the profile has settled on isn't on the shelf.
    pub fn standing(&self, bowler: &Bowler) -> Result<Standing<'_>, Trouble> {
        let chain = Chain::new(self)?;
        let mut situation = Consultation::begin(self, bowler).situation;
        let decided = match bowler.settled_ball() {
            Some(ball) => Some(self.decided(&chain, &situation, ball)?),
            None => None,
        };
        if let Some(ball) = decided.and_then(|c| self.candidates().get(c)) {
            situation.set("settled.weight", Interval::point(ball.weight));
        }
        chain.choose(&mut situation);
        let ranking = chain.balls().rank(&situation);
        let first = ranking.order().first().copied();
        Ok(Standing {
            shop: self,
            pick: decided.or(first),
            by_fitter: decided.is_some() && decided != first,
            bowler: bowler.name().unwrap_or_default().to_owned(),
            chain,
            situation,
            ranking,
            best: OnceLock::new(),
            picks: OnceLock::new(),
        })
    }

    /// The candidate that the profile has settled on; without a weight, in the one that the rules settle on.
    fn decided(
        &self,
        chain: &Chain<'_>,
        situation: &Situation,
        ball: &str,
    ) -> Result<usize, Trouble> {
        let named = self.named(ball)?;
        if let Some(said) = self.in_the_weight_said(&named)? {
            return Ok(said);
        }
        match chain.choose(&mut situation.clone()).weight {
            Some(weight) => self.in_weight(&named, weight),
            None => Ok(self.lightest(&named)),
        }
    }
}

impl Standing<'_> {
    /// The ball stage as this bowler sees it.
    pub(super) fn world(&self) -> StageWorld<'_, BallCandidate> {
        self.chain.balls().world(&self.situation)
    }

    /// The lines of a ball, also of one that is ruled out.
    pub(super) fn ledger(&self, world: &StageWorld<'_, BallCandidate>, candidate: usize) -> Ledger {
        self.chain
            .balls()
            .chooser
            .ledger(world, &self.ranking, candidate)
    }

    /// The rules that rule a ball out.
    pub(super) fn barriers(
        &self,
        world: &StageWorld<'_, BallCandidate>,
        candidate: usize,
    ) -> Vec<Line> {
        match self
            .chain
            .balls()
            .chooser
            .fate(world, &self.ranking, candidate)
        {
            Fate::RuledOut(lines) => lines,
            Fate::Ranked { .. } => Vec::new(),
        }
    }

    /// What to watch out for with a ball.
    pub(super) fn ball_cautions(
        &self,
        world: &StageWorld<'_, BallCandidate>,
        candidate: usize,
    ) -> Vec<Caution> {
        let chooser = &self.chain.balls().chooser;
        let lines = chooser.ranked_cautions(world, &self.ranking, candidate);
        let about = self.id(candidate);
        lines
            .iter()
            .map(|line| explain::caution(self.shop.rules(), line, about))
            .collect()
    }

    /// What comes before any ball: the serious cautions of the person.
    pub(super) fn first_of_all(&self) -> Vec<Caution> {
        let rules = self.shop.rules();
        let lines = rules.cautions(&Alone(&self.situation));
        let all = lines
            .iter()
            .map(|line| explain::caution(rules, line, PERSON));
        all.filter(|caution| caution.severity() == Severity::Serious)
            .collect()
    }

    /// The most that any ball left gets by each rule that speaks of one; found once.
    pub(super) fn best(&self) -> &Best {
        self.best.get_or_init(|| {
            let world = self.world();
            let left = self.ranking.order();
            let mut ledgers = vec![None; self.shop.candidates().len()];
            // With how many balls the rule speaks of.
            let mut most: BTreeMap<RuleId, (usize, Line, usize)> = BTreeMap::new();
            for &candidate in left {
                let ledger = self.ledger(&world, candidate);
                for line in counted(&ledger) {
                    let best = most.entry(line.rule());
                    let (by, best, spoken) = best.or_insert_with(|| (candidate, line.clone(), 0));
                    *spoken += 1;
                    if line.points() > best.points() {
                        (*by, *best) = (candidate, line.clone());
                    }
                }
                if let Some(kept) = ledgers.get_mut(candidate) {
                    *kept = Some(ledger);
                }
            }
            let of_rule = |(rule, (by, line, spoken)): (RuleId, (usize, Line, usize))| {
                let passed_over = spoken < left.len() && line.points() < 0;
                let points = if passed_over { 0 } else { line.points() };
                let reason = || explain::reason(self.shop.rules(), &line, Scale::Points);
                let by = (!passed_over).then(|| (self.name(by), reason()));
                (rule, Most { points, by })
            };
            let most: BTreeMap<RuleId, Most> = most.into_iter().map(of_rule).collect();
            Best {
                attainable: most.values().map(|most| most.points).sum(),
                most,
                ledgers,
            }
        })
    }

    /// Tenths of a point that the pick gets by a rule.
    pub(super) fn picks_points(&self, rule: RuleId) -> i64 {
        let points = self.picks.get_or_init(|| {
            let Some(pick) = self.pick else {
                return BTreeMap::new();
            };
            let ledger = self.ledger(&self.world(), pick);
            counted(&ledger)
                .map(|line| (line.rule(), line.points()))
                .collect()
        });
        points.get(&rule).copied().unwrap_or(0)
    }

    /// The place of a ball among those left, if nothing ruled it out; 1 for the best.
    pub(super) fn place_if_left(&self, candidate: usize) -> usize {
        let candidates = self.shop.candidates();
        let key = |c: usize| {
            let price = candidates.get(c).map_or(0, |ball| ball.price);
            (std::cmp::Reverse(self.ranking.total(c)), price, c)
        };
        let own = key(candidate);
        self.ranking.order().partition_point(|&c| key(c) < own) + 1
    }

    /// The pick first, then balls left by place, then those ruled out: by fewest rules against them, then by most points, then
    /// by how near they are to the settled weight.
    pub(super) fn best_first(&self, candidates: &[usize]) -> Vec<usize> {
        let world = self.world();
        let mut sorted = candidates.to_vec();
        sorted.sort_by_cached_key(|&c| {
            let against = self.barriers(&world, c).len();
            // The place of a ball left takes its points into account.
            let (points, off) = match against {
                0 => (0, 0),
                _ => (self.ranking.total(c), self.off_the_settled_weight(c)),
            };
            let place = self.place_if_left(c);
            let by_points = std::cmp::Reverse(points);
            (Some(c) != self.pick, against, by_points, off, place, c)
        });
        sorted
    }

    /// Hundredths of a pound between a ball and the settled weight; 0 where none is settled.
    fn off_the_settled_weight(&self, candidate: usize) -> u64 {
        let ball = self.shop.candidates().get(candidate);
        ball.zip(self.situation.known("settled.weight"))
            .map_or(0, |(ball, settled)| ball.weight.abs_diff(settled))
    }

    /// `model-id@weight`.
    pub(super) fn id(&self, candidate: usize) -> &str {
        let ball = self.shop.candidates().get(candidate);
        ball.map(|ball| ball.id.as_str()).unwrap_or_default()
    }

    /// `Daisy, 12 lb`.
    pub(super) fn name(&self, candidate: usize) -> String {
        self.stock(candidate).map(ball_name).unwrap_or_default()
    }

    /// `Daisy`.
    pub(super) fn model_name(&self, candidate: usize) -> String {
        let stock = self.stock(candidate);
        stock
            .map(|stock| stock.model().name().to_owned())
            .unwrap_or_default()
    }

    /// `12 lb`.
    pub(super) fn weight(&self, candidate: usize) -> String {
        let stock = self.stock(candidate);
        stock
            .map(|stock| Notation::Weight.write(stock.weight()))
            .unwrap_or_default()
    }

    /// Drilled, with everything and tax, in cents; none where the grip isn't settled.
    pub(super) fn out_the_door(&self, candidate: usize) -> Option<i64> {
        let price = self
            .shop
            .candidates()
            .get(candidate)?
            .out_the_door(&self.situation);
        price.is_known().then(|| price.value())
    }

    fn stock(&self, candidate: usize) -> Option<&Stock> {
        let ball = self.shop.candidates().get(candidate)?;
        self.shop.catalog().stock().get(ball.stock)
    }
}

/// The lines that count.
pub(super) fn counted(ledger: &Ledger) -> impl Iterator<Item = &Line> {
    let lines = ledger.lines().iter();
    lines.filter(|line| line.role() == Role::Points)
}
