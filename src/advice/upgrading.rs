//! From the balls owned to what they lack, what comes before buying, and the ball that would come next, or none. Health comes first.

use std::collections::BTreeSet;

use super::consultation::{Consultation, PERSON};
use super::explain::{self, Scale};
use super::outcome::Trouble;
use super::owned_motion::Motions;
use super::reason::{Caution, Reason};
use super::result::{Assumed, Bill, NearMiss};
use super::shop::Shop;
use super::upgrade::{BallGap, NextBall, Upgrade};
use crate::bowler::Bowler;
use crate::catalog::{Grip, Order};
use crate::notation::Notation;
use crate::rules::{Fate, Line, Severity};
use crate::vocabulary::{Alone, Interval, StageWorld, all_words, answers_behind, gap_facts, words};

/// The gap that is none.
const NOTHING: &str = "nothing_yet";
/// The wish for the dearest ball.
pub(super) const WISH: &str = "bowler.wants_dearest";
/// How many balls are told at most.
const MOST_BALLS: &str = "upgrade.most_balls";
/// Gaps whose ball isn't meant to move otherwise than one that is owned.
const ALIKE: [&str; 2] = ["spare_ball", "replacement"];
/// Facts that a mild caution of an upgrade may be about: the body, and what is wished. Of the balls owned the steps speak.
const ABOUT_THE_PERSON: &[&str] = &["bowler.", "check.", "card.complaint"];

impl Shop {
    /// What the balls owned do and lack, what to do before another is bought, and which ball would come next; or none.
    ///
    /// # Errors
    /// [`Trouble::Rules`] where the rules have no gaps or balls to choose from.
    pub fn upgrade(&self, bowler: &Bowler) -> Result<Upgrade, Trouble> {
        self.check_frictions_for(bowler)?;
        let mut consultation = Consultation::begin(self, bowler);
        consultation.take_owned_weight();
        consultation.weight(bowler.answer("settled.weight"))?;
        consultation.grip()?;
        let motions = consultation.motions();
        let owned = consultation.owned_now(&motions);
        consultation.persons_cautions();
        consultation.cautions.retain(of_the_person);
        consultation
            .cautions
            .sort_by_key(|caution| std::cmp::Reverse(caution.severity));
        let held = consultation
            .cautions
            .iter()
            .any(|c| c.about == PERSON && c.severity == Severity::Serious);
        let (gaps, ruled_out) = consultation.gaps()?;
        let told = match held || bowler.owned().is_empty() {
            true => Vec::new(),
            false => consultation.told(&gaps),
        };
        let mut next = Vec::new();
        for gap in told {
            next.push(consultation.next_ball(gap, &motions)?);
        }
        let first = next.first().map_or(NOTHING, |ball| ball.gap.word);
        consultation.look_for(first);
        let steps = |part| match held || bowler.owned().is_empty() {
            true => Vec::new(),
            false => self.steps(part, &consultation.situation),
        };
        let before = steps("upgrade.before");
        let wait_for = match next.is_empty() {
            true => steps("upgrade.trigger"),
            false => Vec::new(),
        };
        let fingertip = before
            .iter()
            .any(|step| step.id.starts_with("fingertip-"))
            .then(|| consultation.fingertip());
        let assumptions = consultation.taken_for_the_path(&gaps, &next);
        Ok(Upgrade {
            bowler: bowler.name().unwrap_or_default().to_owned(),
            held,
            owned: owned.balls,
            doubled: owned.doubled,
            lane: motions.lane,
            before,
            wait_for,
            fingertip,
            gaps,
            ruled_out,
            next,
            assumptions,
            questions: self.questions_for(bowler),
            digest: self.digest().to_owned(),
            settled: consultation.settled,
            cautions: consultation.cautions,
        })
    }
}

/// Everything serious, and what is mild and speaks of the person. What is drilled is settled when a ball is bought.
fn of_the_person(caution: &Caution) -> bool {
    let about = |starts: &[&str]| {
        let mut facts = caution.reason.facts.iter();
        facts.any(|(fact, _)| starts.iter().any(|start| fact.starts_with(start)))
    };
    caution.severity == Severity::Serious || about(ABOUT_THE_PERSON) && !about(&["hand.", "fit."])
}

impl Consultation<'_> {
    /// The gaps that outweigh having enough, strongest first.
    fn told(&self, gaps: &[BallGap]) -> Vec<BallGap> {
        let alone = Alone(&self.situation);
        self.shop.observe(MOST_BALLS, &alone);
        let most = self.shop.rules().measure(MOST_BALLS, &alone).value();
        let most = usize::try_from(most.unwrap_or_default()).unwrap_or_default();
        let enough = gaps.iter().find(|gap| gap.word == NOTHING);
        let enough = enough.map_or(0, |gap| gap.total);
        let gaps = gaps.iter().filter(|gap| gap.word != NOTHING);
        let outweigh = gaps.filter(|gap| gap.total > enough);
        outweigh.take(most).cloned().collect()
    }

    /// What something speaks for, strongest first, and what is excluded.
    fn gaps(&self) -> Result<(Vec<BallGap>, Vec<BallGap>), Trouble> {
        let rules = self.shop.rules();
        let candidates = all_words(words::GAPS);
        let world = StageWorld::new(&self.situation, &gap_facts(), &candidates, |c| c.0);
        self.shop.observe("gap", &world);
        let chooser = rules
            .chooser("gap", &world)
            .ok_or_else(|| Trouble::Rules("no subject `gap`".to_owned()))?;
        let ranking = chooser.rank(&world);
        let said = |line: &Line| explain::reason(rules, line, Scale::Points);
        let found = ranking.order().iter().filter_map(|&at| {
            let ledger = chooser.ledger(&world, &ranking, at);
            let word = words::GAPS.get(at)?;
            (ledger.total() > 0).then(|| BallGap {
                word,
                place: 0,
                total: ledger.total(),
                lines: ledger.lines().iter().map(said).collect(),
            })
        });
        let found = found.zip(1..).map(|(gap, place)| BallGap { place, ..gap });
        let out = words::GAPS.iter().enumerate().filter_map(|(at, word)| {
            let Fate::RuledOut(lines) = chooser.fate(&world, &ranking, at) else {
                return None;
            };
            Some(BallGap {
                word,
                place: 0,
                total: 0,
                lines: lines.iter().map(said).collect(),
            })
        });
        Ok((found.collect(), out.collect()))
    }

    /// From now on the rules know which gap is to be filled.
    fn look_for(&mut self, gap: &str) {
        let at = words::GAPS.iter().position(|word| *word == gap);
        let value = at.and_then(|at| i64::try_from(at).ok());
        self.situation.set(
            "upgrade.gap",
            value.map_or(Interval::NOT_KNOWN, Interval::point),
        );
    }

    /// The same bowler, looking for a ball that fills this gap.
    pub(super) fn for_gap(&self, gap: &str) -> Self {
        let mut consultation = Consultation {
            shop: self.shop,
            bowler: self.bowler,
            situation: self.situation.clone(),
            cautions: Vec::new(),
            settled: Vec::new(),
        };
        consultation.look_for(gap);
        consultation
    }

    /// The ball from the shelf that fills a gap best, with what to wait for.
    fn next_ball(&self, gap: BallGap, motions: &Motions) -> Result<NextBall, Trouble> {
        let mut consultation = self.for_gap(gap.word);
        let found = consultation.balls(None)?;
        let chosen = found.chosen;
        // What is told here is what fits; only a ball of one's own choice goes with a word about that.
        let wished = |caution: &Caution| {
            let mut facts = caution.reason.facts.iter();
            facts.any(|(fact, _)| *fact == WISH)
        };
        consultation.cautions.retain(|caution| !wished(caution));
        let bill = chosen.map(|c| consultation.bill(c));
        let budget = self.situation.known("bowler.budget");
        let over_budget = match (&bill, budget) {
            (Some(bill), Some(budget)) => Some(bill.total_cents - budget),
            _ => None,
        };
        Ok(NextBall {
            triggers: self.shop.steps("upgrade.trigger", &consultation.situation),
            // A ball for single pins is to go straight, and a replacement is to do the same; nobody asks how they differ.
            against: chosen
                .filter(|_| !ALIKE.contains(&gap.word))
                .and_then(|c| self.against_owned(motions, c)),
            own_choice: self.own_choice(gap.word, chosen, &found.picks)?,
            pick: found.picks.into_iter().next(),
            near_misses: match (chosen, budget) {
                (None, Some(budget)) => self.if_money_were_no_matter(gap.word, budget)?,
                _ => found.near_misses,
            },
            cautions: consultation.cautions,
            bill,
            over_budget,
            gap,
        })
    }

    /// With nothing left in the budget: the ball that fills the gap best, and how much it is over.
    fn if_money_were_no_matter(&self, gap: &str, budget: i64) -> Result<Vec<NearMiss>, Trouble> {
        let mut free = self.for_gap(gap);
        free.situation.set("bowler.budget", Interval::NOT_KNOWN);
        let found = free.balls(None)?;
        let candidates = self.shop.candidates();
        let best = found.chosen.and_then(|c| candidates.get(c));
        let miss = best.zip(found.picks.first()).map(|(ball, pick)| {
            let price = ball.out_the_door(&free.situation).value();
            NearMiss {
                ball: ball.id.clone(),
                name: format!("{}, {}", pick.name, pick.weight),
                out_the_door: Notation::Money.write(price),
                over: Notation::Money.write(price - budget),
            }
        });
        Ok(miss.into_iter().collect())
    }

    /// An owned ball drilled again for fingertip.
    fn fingertip(&self) -> Bill {
        let prices = self.shop.catalog().prices();
        let holes = match self.situation.is_word("bowler.thumb", "out") {
            true => 2,
            false => 3,
        };
        let mut order = Order::redrill(holes);
        order.grip = Grip::Fingertip;
        order.slug = holes == 3;
        let notes = vec![self.free_easing(), prices.warranty().to_owned()];
        Bill::of(&prices.quote(&order), prices.plug_ready_when(), notes)
    }

    /// What was assumed and had a say.
    fn taken_for_the_path(&self, gaps: &[BallGap], next: &[NextBall]) -> Vec<Assumed> {
        let picks = next.iter().filter_map(|ball| ball.pick.as_ref());
        let lines = gaps.iter().flat_map(|gap| &gap.lines);
        let settled = self.settled.iter().flat_map(|stage| &stage.lines);
        let lines = lines
            .chain(picks.flat_map(|pick| &pick.lines))
            .chain(settled);
        let used: BTreeSet<&str> = lines
            .flat_map(|line: &Reason| line.facts.iter().map(|(name, _)| *name))
            .flat_map(|name| answers_behind(name).iter().copied().chain([name]))
            .collect();
        let mut assumptions = self.assumptions(&used);
        assumptions.retain(|assumed| assumed.matters && assumed.value.is_some());
        assumptions
    }
}
