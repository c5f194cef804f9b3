//! Two balls side by side for one bowler: only what differs, adding up to the gap.

use std::collections::BTreeMap;

use super::explain::{self, Scale};
use super::one_sentence::one_sentence;
use super::outcome::Trouble;
use super::reason::{Caution, Reason, Texts};
use super::shop::Shop;
use super::standing::Standing;
use super::why_not::Barrier;
use crate::bowler::Bowler;
use crate::notation::Notation;
use crate::rules::{Audience, Line, Role, RuleId};
use crate::vocabulary::{BallCandidate, StageWorld};

/// Two balls held against each other.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Contrast {
    pub(crate) bowler: String,
    pub(crate) digest: String,
    pub(crate) cautions: Vec<Caution>,
    pub(crate) left: usize,
    pub(crate) names: [String; 2],
    pub(crate) one: Compared,
    pub(crate) other: Compared,
    pub(crate) lines: Vec<Difference>,
    pub(crate) schools: Vec<Difference>,
    pub(crate) sentence: Texts,
}

/// One of the two.
#[derive(Clone, Debug)]
pub struct Compared {
    pub(crate) ball: String,
    pub(crate) name: String,
    pub(crate) price: Option<i64>,
    pub(crate) is_pick: bool,
    pub(crate) place: usize,
    pub(crate) total: i64,
    pub(crate) barriers: Vec<Barrier>,
    pub(crate) cautions: Vec<Caution>,
}

/// A rule that doesn't give both the same.
#[derive(Clone, Debug)]
pub struct Difference {
    pub(crate) rule: String,
    pub(crate) points: i64,
    pub(crate) one: Option<Reason>,
    pub(crate) other: Option<Reason>,
}

impl Shop {
    /// Holds two balls against each other for a bowler; each is `model-id` or `model-id@weight`.
    ///
    /// Without a weight a ball is taken in the weight on the shelf in which it stands best. To compare many balls make a
    /// [`Standing`] once.
    ///
    /// # Errors
    /// Unknown ball, ball not on the shelf in that weight or in any, what stands for a weight is none, the same ball twice;
    /// or the rules can't be used.
    pub fn compare(&self, bowler: &Bowler, one: &str, other: &str) -> Result<Contrast, Trouble> {
        self.standing(bowler)?.compare(one, other)
    }
}

impl Standing<'_> {
    /// The same as [`Shop::compare`] for the bowler of this standing.
    ///
    /// # Errors
    /// Unknown ball, ball not on the shelf in that weight or in any, what stands for a weight is none, the same ball twice.
    pub fn compare(&self, one: &str, other: &str) -> Result<Contrast, Trouble> {
        let (one, other) = (self.meant(one)?, self.meant(other)?);
        if one == other {
            let ball = self.id(one).to_owned();
            return Err(Trouble::SameBall { ball });
        }
        let world = self.world();
        let (lines, schools) = self.differences(&world, one, other);
        let [one, other] = [one, other].map(|candidate| self.compared(&world, candidate));
        let names = match one.0 == other.0 {
            true => [one.1.name.clone(), other.1.name.clone()],
            false => [one.0, other.0],
        };
        let (one, other) = (one.1, other.1);
        let sentence = Texts {
            newcomer: one_sentence(&one, &other, &names, &lines, Audience::Newcomer),
            league: one_sentence(&one, &other, &names, &lines, Audience::League),
            fitter: one_sentence(&one, &other, &names, &lines, Audience::Fitter),
        };
        Ok(Contrast {
            bowler: self.bowler.clone(),
            digest: self.shop.digest().to_owned(),
            cautions: self.first_of_all(),
            left: self.ranking.order().len(),
            names,
            one,
            other,
            lines,
            schools,
            sentence,
        })
    }

    /// The candidate that is meant; without a weight, the one that stands best.
    pub(super) fn meant(&self, ball: &str) -> Result<usize, Trouble> {
        let named = self.shop.named(ball)?;
        let said = self.shop.in_the_weight_said(&named)?;
        Ok(said.unwrap_or_else(|| {
            self.best_first(&named.own)
                .first()
                .copied()
                .unwrap_or_default()
        }))
    }

    /// With the model's name.
    fn compared(
        &self,
        world: &StageWorld<'_, BallCandidate>,
        candidate: usize,
    ) -> (String, Compared) {
        let compared = Compared {
            ball: self.id(candidate).to_owned(),
            name: self.name(candidate),
            price: self.out_the_door(candidate),
            is_pick: self.pick == Some(candidate),
            place: self.place_if_left(candidate),
            total: self.ranking.total(candidate),
            barriers: self.told_barriers(world, candidate),
            cautions: self.ball_cautions(world, candidate),
        };
        (self.model_name(candidate), compared)
    }

    /// The lines that differ, and apart from them those of opposing schools, which count nothing.
    fn differences(
        &self,
        world: &StageWorld<'_, BallCandidate>,
        one: usize,
        other: usize,
    ) -> (Vec<Difference>, Vec<Difference>) {
        let [one, other] = [one, other].map(|candidate| self.ledger(world, candidate));
        let mut pairs: BTreeMap<RuleId, [Option<&Line>; 2]> = BTreeMap::new();
        for line in one.lines() {
            pairs.entry(line.rule()).or_default()[0] = Some(line);
        }
        for line in other.lines() {
            pairs.entry(line.rule()).or_default()[1] = Some(line);
        }
        let rules = self.shop.rules();
        let mut lines = Vec::new();
        let mut schools = Vec::new();
        for (rule, [one, other]) in pairs {
            let is_school = [one, other]
                .iter()
                .flatten()
                .any(|line| line.role() == Role::Dispute);
            let points = said(one) - said(other);
            if points != 0 {
                let reason = |line: &Line| explain::reason(rules, line, Scale::Points);
                let into = if is_school { &mut schools } else { &mut lines };
                into.push(Difference {
                    rule: rules.rule(rule).id().to_owned(),
                    points,
                    one: one.map(reason),
                    other: other.map(reason),
                });
            }
        }
        for list in [&mut lines, &mut schools] {
            // Of equal size, in the order of ids, which is the order of pairs.
            list.sort_by_key(|difference| std::cmp::Reverse(difference.points.abs()));
        }
        (lines, schools)
    }
}

/// What a line gives, or would give if its school counted.
fn said(line: Option<&Line>) -> i64 {
    line.map_or(0, |line| line.points() + line.disputed_points())
}

impl Contrast {
    /// The customer's name, harmless to print; empty if none was given.
    pub fn bowler(&self) -> &str {
        &self.bowler
    }
    /// Digest of rules and catalog, so that two answers can be compared.
    pub fn digest(&self) -> &str {
        &self.digest
    }
    /// Serious cautions of the person, which come before any ball.
    pub fn cautions(&self) -> &[Caution] {
        &self.cautions
    }
    /// How many balls on the shelf are left.
    pub fn left(&self) -> usize {
        self.left
    }
    /// The ball that was named first.
    pub fn one(&self) -> &Compared {
        &self.one
    }
    /// The ball that was named second.
    pub fn other(&self) -> &Compared {
        &self.other
    }
    /// What the two are called beside each other: by their models, or with their weights where the models are one.
    pub fn names(&self) -> [&str; 2] {
        self.names.each_ref().map(String::as_str)
    }
    /// Tenths of a point that the first has more; the sum of the lines. A ball that is ruled out counts as it would if
    /// nothing ruled it out.
    pub fn gap(&self) -> i64 {
        self.one.total - self.other.total
    }
    /// Cents that the first costs more, drilled, with everything and tax; none where the grip isn't settled.
    pub fn dearer(&self) -> Option<i64> {
        Some(self.one.price? - self.other.price?)
    }
    /// The lines that differ, largest first. Their points add up to the gap.
    pub fn lines(&self) -> &[Difference] {
        &self.lines
    }
    /// What opposing schools would make of the two where it differs, largest first. Counts nothing.
    pub fn schools(&self) -> &[Difference] {
        &self.schools
    }
    /// One sentence that tells the two apart, of at most twenty words unless the balls' names are very long, in an audience's words.
    pub fn sentence(&self, audience: Audience) -> &str {
        self.sentence.of(audience)
    }
}

impl Compared {
    /// `model-id@weight`.
    pub fn ball(&self) -> &str {
        &self.ball
    }
    /// Name and weight as people say it.
    pub fn name(&self) -> &str {
        &self.name
    }
    /// Drilled, with everything and tax; none where the grip isn't settled.
    pub fn out_the_door(&self) -> Option<String> {
        self.price.map(|cents| Notation::Money.write(cents))
    }
    /// The same in cents.
    pub fn cents(&self) -> Option<i64> {
        self.price
    }
    /// True if it is the ball to take.
    pub fn is_pick(&self) -> bool {
        self.is_pick
    }
    /// Its place among the balls left, 1 for the best. For one that is ruled out, the place it would have if nothing did.
    pub fn place(&self) -> usize {
        self.place
    }
    /// Tenths of a point; also of a ball that is ruled out.
    pub fn total(&self) -> i64 {
        self.total
    }
    /// True if a rule rules it out.
    pub fn is_ruled_out(&self) -> bool {
        !self.barriers.is_empty()
    }
    /// Every rule that rules it out; empty for a ball that is left.
    pub fn barriers(&self) -> &[Barrier] {
        &self.barriers
    }
    /// What to watch out for with it.
    pub fn cautions(&self) -> &[Caution] {
        &self.cautions
    }
}

impl Difference {
    /// The rule's id.
    pub fn rule(&self) -> &str {
        &self.rule
    }
    /// Tenths of a point that the first ball gets more by it: above 0 it speaks for the first, below 0 for the second. Of an
    /// opposing school, what it would be if it counted.
    pub fn points(&self) -> i64 {
        self.points
    }
    /// The first ball's line, if the rule speaks of it.
    pub fn one(&self) -> Option<&Reason> {
        self.one.as_ref()
    }
    /// The second ball's line, if the rule speaks of it.
    pub fn other(&self) -> Option<&Reason> {
        self.other.as_ref()
    }
}
