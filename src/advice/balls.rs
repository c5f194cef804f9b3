//! The ball stage: ranking into picks, and what only the budget keeps out.

use super::consultation::{Chosen, Consultation};
use super::explain::{self, Scale};
use super::outcome::Trouble;
use super::reason::Reason;
use super::result::{Behind, NearMiss, Pick, RuledOut};
use super::stock::ball_name;
use crate::notation::Notation;
use crate::rules::{Chooser, Fate, Ranking, World};
use crate::vocabulary::{BallCandidate, Interval, Situation, StageWorld, ball_facts};

/// How many balls a customer is told of; a near miss is one that would be among them.
const SHOWN: usize = 3;

/// What the ball stage found.
#[derive(Default)]
pub(super) struct Balls {
    pub(super) picks: Vec<Pick>,
    pub(super) ruled_out: Vec<RuledOut>,
    pub(super) near_misses: Vec<NearMiss>,
    pub(super) chosen: Option<usize>,
}

impl Consultation<'_> {
    /// Ranks the stock; `choice` is the candidate the customer or fitter was decided on beforehand.
    pub(super) fn balls(&mut self, choice: Option<Chosen>) -> Result<Balls, Trouble> {
        let by_customer = choice.is_some_and(|c| c.by_customer);
        let choice = choice.map(|c| c.candidate);
        let rules = self.shop.rules();
        let candidates = self.shop.candidates();
        let facts = ball_facts();
        let tie = |c: &BallCandidate| c.price;
        let world = StageWorld::new(&self.situation, &facts, candidates, tie);
        self.shop.observe("ball", &world);
        let chooser = rules
            .chooser("ball", &world)
            .ok_or_else(|| Trouble::Rules("no subject `ball`".into()))?;
        let ranking = chooser.rank(&world);
        let best = choice.or_else(|| ranking.order().first().copied());
        let mut order: Vec<usize> = best.into_iter().collect();
        order.extend(ranking.order().iter().copied().filter(|&c| Some(c) != best));
        let lines = |c: usize| -> Vec<Reason> {
            let ledger = chooser.ledger(&world, &ranking, c);
            ledger
                .lines()
                .iter()
                .map(|line| explain::reason(rules, line, Scale::Points))
                .collect()
        };
        // What was decided on stands first, yet keeps the place the rules give it.
        let first = ranking.order().first().copied();
        let first_lines: Vec<Reason> = first.map(lines).unwrap_or_default();
        let mut picks = Vec::new();
        for &c in &order {
            let lines = if Some(c) == first {
                first_lines.clone()
            } else {
                lines(c)
            };
            let behind = if Some(c) == first {
                None
            } else {
                behind(&first_lines, &lines)
            };
            let place = ranking.place(c).unwrap_or(ranking.order().len()) + 1;
            let own = by_customer && choice == Some(c);
            picks.push(self.pick(&candidates[c], place, lines, behind, own));
        }
        let ruled_out = ruled_out(self, &chooser, &world, &ranking, choice);
        for line in best
            .map(|c| chooser.cautions(&world, c))
            .unwrap_or_default()
        {
            let about = best.map(|c| candidates[c].id.clone()).unwrap_or_default();
            self.cautions.push(explain::caution(rules, &line, &about));
        }
        if let Some(c) = choice
            && let Fate::RuledOut(lines) = chooser.fate(&world, &ranking, c)
        {
            for line in &lines {
                let caution = explain::caution(rules, line, &candidates[c].id);
                self.cautions.push(caution);
            }
        }
        let near_misses = self.near_misses(&ranking)?;
        Ok(Balls {
            picks,
            ruled_out,
            near_misses,
            chosen: best,
        })
    }

    fn pick(
        &self,
        ball: &BallCandidate,
        place: usize,
        lines: Vec<Reason>,
        behind: Option<Behind>,
        by_customer: bool,
    ) -> Pick {
        let unit = &self.shop.catalog().stock()[ball.stock];
        let model = unit.model();
        Pick {
            ball: ball.id.clone(),
            name: model.name().to_owned(),
            maker: model.maker().to_owned(),
            weight: Notation::Weight.write(unit.weight()),
            cover: model.cover().name().to_owned(),
            colours: model
                .colours()
                .iter()
                .map(|c| c.name())
                .collect::<Vec<_>>()
                .join(" and "),
            price: Notation::Money.write(model.price()),
            out_the_door: Notation::Money.write(ball.out_the_door(&self.situation).value()),
            place,
            total: lines.iter().map(Reason::points).sum(),
            by_customer,
            lines,
            behind,
            unit: unit.units().first().map(|u| {
                format!(
                    "pin-out {}, top weight {}",
                    Notation::Length.write(u.pin_out),
                    Notation::Ounces.write(u.top_weight)
                )
            }),
        }
    }

    /// Balls that would be in if nobody had named a budget, within the shop's near-miss window.
    fn near_misses(&self, within: &Ranking) -> Result<Vec<NearMiss>, Trouble> {
        if !self.situation.get("bowler.budget").is_known() {
            return Ok(Vec::new());
        }
        let rules = self.shop.rules();
        let candidates = self.shop.candidates();
        let mut free: Situation = self.situation.clone();
        free.set("bowler.budget", Interval::NOT_KNOWN);
        let facts = ball_facts();
        let world = StageWorld::new(&free, &facts, candidates, |c| c.price);
        let chooser = rules
            .chooser("ball", &world)
            .ok_or_else(|| Trouble::Rules("no subject `ball`".into()))?;
        let ranking = chooser.rank(&world);
        let budget = self.situation.get("bowler.budget").value();
        let shown = within.order().len().min(SHOWN);
        let worst = within.order()[..shown].last().map(|&c| within.total(c));
        let window = 1..=self.shop.catalog().prices().near_miss();
        let mut models: Vec<&str> = Vec::new();
        let mut found: Vec<(i64, usize)> = Vec::new();
        // In the order they would rank, the best weight of each model, so that the first is the one to talk about.
        for &c in ranking.order().iter().filter(|&&c| within.is_ruled_out(c)) {
            let over = candidates[c].out_the_door(&self.situation).value() - budget;
            let model = self.shop.catalog().stock()[candidates[c].stock]
                .model()
                .id();
            if window.contains(&over)
                && worst.is_none_or(|worst| ranking.total(c) >= worst)
                && !models.contains(&model)
            {
                models.push(model);
                found.push((over, c));
            }
        }
        // With nothing left in the budget, at least what comes nearest to it in the right weight.
        if found.is_empty() && within.order().is_empty() {
            let settled = self.situation.get("settled.weight").value();
            let over = |c: usize| candidates[c].out_the_door(&self.situation).value() - budget;
            let fits = |c: &usize| candidates[*c].weight == settled;
            let nearest = ranking
                .order()
                .iter()
                .copied()
                .filter(fits)
                .min_by_key(|&c| over(c));
            found.extend(nearest.map(|c| (over(c), c)));
        }
        Ok(found
            .into_iter()
            .map(|(over, c)| NearMiss {
                ball: candidates[c].id.clone(),
                name: ball_name(&self.shop.catalog().stock()[candidates[c].stock]),
                out_the_door: Notation::Money.write(over + budget),
                over: Notation::Money.write(over),
            })
            .collect())
    }
}

fn ruled_out<W: World>(
    consultation: &Consultation<'_>,
    chooser: &Chooser<'_>,
    world: &W,
    ranking: &Ranking,
    choice: Option<usize>,
) -> Vec<RuledOut> {
    let candidates = consultation.shop.candidates();
    let mut out: Vec<RuledOut> = (0..candidates.len())
        .filter(|&c| Some(c) != choice)
        .filter_map(|c| match chooser.fate(world, ranking, c) {
            Fate::RuledOut(lines) => Some(RuledOut {
                ball: candidates[c].id.clone(),
                name: ball_name(&consultation.shop.catalog().stock()[candidates[c].stock]),
                lines: lines
                    .iter()
                    .map(|line| explain::reason(consultation.shop.rules(), line, Scale::Points))
                    .collect(),
            }),
            _ => None,
        })
        .collect();
    out.sort_by(|a, b| a.ball.cmp(&b.ball));
    out
}

/// The line on which `these` lost most against `best`.
fn behind(best: &[Reason], these: &[Reason]) -> Option<Behind> {
    let points = |lines: &[Reason], rule: &str| -> i64 {
        lines
            .iter()
            .filter(|l| l.rule == rule)
            .map(|l| l.points)
            .sum()
    };
    let lost = |line: &Reason| points(best, &line.rule) - points(these, &line.rule);
    best.iter()
        .chain(these)
        .map(|line| (lost(line), line))
        .filter(|(lost, _)| *lost > 0)
        .max_by(|(a, x), (b, y)| a.cmp(b).then_with(|| y.rule.cmp(&x.rule)))
        .map(|(points, worst)| {
            let own = these.iter().find(|l| l.rule == worst.rule);
            let lacks = own.is_none_or(|l| l.points > 0);
            let line = if lacks {
                best.iter().find(|l| l.rule == worst.rule).unwrap_or(worst)
            } else {
                own.unwrap_or(worst)
            };
            Behind {
                points,
                lacks,
                line: line.clone(),
            }
        })
}
