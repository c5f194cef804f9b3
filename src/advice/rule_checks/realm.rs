//! What bowling's facts may be together, as far as rules are checked.

use std::collections::BTreeMap;

use super::super::chain::known_values;
use super::super::shop::Shop;
use super::behind::{behind, is_by_geometry};
use super::together::CLASHES;
use super::when::Settling;
use crate::catalog::{Grip, Order};
use crate::notation::Notation;
use crate::rules::{Fact, FactId, Interval, Kind, Origin, Truth, UNKNOWN, Vocabulary};
use crate::search::Realm;
use crate::vocabulary::{
    BallCandidate, Situation, StageFact, StageWorld, WeightCandidate, WordCandidate, all_words,
    ball_facts, cause_facts, gap_facts, grip_facts, layout_facts, surface_facts, weight_facts,
    words,
};

/// Whole pounds are offered; any other weight comes in by the fitter's word.
const OFFERED_POUNDS: std::ops::RangeInclusive<i64> = 6..=16;

/// A choice among words: its name, its facts and its candidates.
type WordStage = (
    &'static str,
    Vec<StageFact<WordCandidate>>,
    Vec<WordCandidate>,
);

/// A shop's rules, its stock and its prices, as what may be.
pub(super) struct Shelf<'s> {
    shop: &'s Shop,
    settling: Settling,
    /// What a missing answer is taken for.
    assumed: BTreeMap<FactId, i64>,
    prices: BTreeMap<FactId, Interval>,
    nobody: Situation,
    weights: Vec<WeightCandidate>,
    weight_facts: Vec<StageFact<WeightCandidate>>,
    ball_facts: Vec<StageFact<BallCandidate>>,
    lists: Vec<WordStage>,
}

impl<'s> Shelf<'s> {
    pub(super) fn new(shop: &'s Shop) -> Self {
        let whole = |pounds: i64| pounds * 100;
        let (lowest, highest) = (whole(*OFFERED_POUNDS.start()), whole(*OFFERED_POUNDS.end()));
        let between = (lowest..=highest).filter(|weight| weight % 100 != 0);
        let weights = OFFERED_POUNDS.map(whole).chain(between);
        let vocabulary = shop.vocabulary();
        let assumed = shop.rules().assumptions().iter();
        Shelf {
            shop,
            settling: Settling::new(vocabulary),
            assumed: assumed
                .filter_map(|a| Some((a.fact(), a.value()?)))
                .collect(),
            prices: prices(shop),
            nobody: Situation::empty(vocabulary),
            weights: weights.map(WeightCandidate).collect(),
            weight_facts: weight_facts(),
            ball_facts: ball_facts(),
            lists: vec![
                ("grip", grip_facts(), all_words(words::GRIPS)),
                ("surface", surface_facts(), all_words(words::SURFACES)),
                ("layout", layout_facts(), all_words(words::LAYOUTS)),
                ("cause", cause_facts(), all_words(words::CAUSES)),
                ("gap", gap_facts(), all_words(words::GAPS)),
            ],
        }
    }

    fn fact(&self, id: FactId) -> &Fact {
        self.shop.vocabulary().fact(id)
    }

    /// What a candidate is called.
    pub(super) fn name(&self, subject: &str, candidate: usize) -> String {
        let word = |list: &[&str]| list.get(candidate).map(|word| word.replace('_', " "));
        let name = match subject {
            "weight" => {
                let weight = self.weights.get(candidate);
                weight.map(|weight| Notation::Weight.write(weight.0))
            }
            "ball" => self
                .shop
                .candidates()
                .get(candidate)
                .map(|ball| ball.id.clone()),
            "grip" => word(words::GRIPS),
            "surface" => word(words::SURFACES),
            "layout" => word(words::LAYOUTS),
            "cause" => word(words::CAUSES),
            "gap" => word(words::GAPS),
            _ => None,
        };
        name.unwrap_or_else(|| format!("number {}", candidate + 1))
    }

    /// What a fact of a candidate may be in a situation.
    fn of_candidate(&self, situation: &Situation, candidate: usize, id: FactId) -> Interval {
        match self.fact(id).subject {
            Some("weight") => {
                StageWorld::new(situation, &self.weight_facts, &self.weights, |c| c.0)
                    .bounds(id, candidate)
            }
            Some("ball") => {
                let stock = self.shop.candidates();
                StageWorld::new(situation, &self.ball_facts, stock, |c| c.price)
                    .bounds(id, candidate)
            }
            Some(subject) => match self.lists.iter().find(|(name, ..)| *name == subject) {
                Some((_, facts, list)) => {
                    StageWorld::new(situation, facts, list, |c| c.0).bounds(id, candidate)
                }
                None => Interval::NOT_KNOWN,
            },
            None => Interval::NOT_KNOWN,
        }
    }
}

impl Realm for Shelf<'_> {
    fn vocabulary(&self) -> &Vocabulary {
        self.shop.vocabulary()
    }

    fn behind(&self, fact: FactId) -> Vec<FactId> {
        let stated = self.fact(fact);
        match stated.origin {
            Origin::Answer | Origin::Settled => vec![fact],
            Origin::Worked | Origin::Derived if is_by_geometry(stated.name) => vec![fact],
            _ => {
                let names = behind(stated.name).iter();
                names
                    .filter_map(|name| self.shop.vocabulary().id(name))
                    .collect()
            }
        }
    }

    fn range(&self, subject: &str, fact: FactId) -> Interval {
        let known = known_values(self.shop.vocabulary(), fact);
        match self.fact(fact).origin {
            Origin::Answer if self.assumed.contains_key(&fact) => known,
            Origin::Settled => match self.prices.get(&fact) {
                Some(price) => *price,
                None if !self.settling.may_be_settled(subject, fact) => Interval::NOT_KNOWN,
                None if self.settling.is_settled(subject, fact) => known,
                None => known.or_unknown(),
            },
            _ => known.or_unknown(),
        }
    }

    fn plain(&self, subject: &str, fact: FactId) -> i64 {
        if let Some(assumed) = self.assumed.get(&fact) {
            return *assumed;
        }
        let range = self.range(subject, fact);
        if range.may_be_unknown() {
            return UNKNOWN;
        }
        range.lowest()
    }

    fn candidates(&self, subject: &str) -> usize {
        match subject {
            "weight" => self.weights.len(),
            "ball" => self.shop.candidates().len(),
            _ => {
                let list = self.lists.iter().find(|(name, ..)| *name == subject);
                list.map_or(0, |(_, _, list)| list.len())
            }
        }
    }

    fn offered(&self, subject: &str) -> usize {
        match subject {
            "weight" => OFFERED_POUNDS.count(),
            _ => self.candidates(subject),
        }
    }

    fn values(
        &self,
        _subject: &str,
        candidate: Option<usize>,
        free: &[FactId],
        area: &[Interval],
        wanted: &[FactId],
    ) -> Vec<Interval> {
        let place = |fact: &FactId| free.iter().position(|known| known == fact);
        let given = |fact: &FactId| place(fact).and_then(|place| area.get(place).copied());
        let columns = |fact: &FactId| self.fact(*fact).origin == Origin::Candidate;
        // Working everything out again is dear, and needless where all is given.
        let follows = |fact: &FactId| given(fact).is_none() && !columns(fact);
        let worked;
        let situation = if wanted.iter().any(follows) {
            let mut situation = self.nobody.clone();
            situation.set_all(free.iter().copied().zip(area.iter().copied()));
            worked = situation;
            &worked
        } else {
            &self.nobody
        };
        let value = |fact: &FactId| {
            if let Some(given) = given(fact) {
                return given;
            }
            // First it must be clear which answers are given, and all words; only then is it worked out.
            let unclear = |source: &FactId| {
                let is_word = matches!(self.fact(*source).kind, Kind::Choice(_) | Kind::Flag);
                given(source).is_some_and(|it| {
                    !it.is_point() && (is_word || it.may_be_known() && it.may_be_unknown())
                })
            };
            if self.behind(*fact).iter().any(unclear) {
                return known_values(self.shop.vocabulary(), *fact).or_unknown();
            }
            match (self.fact(*fact).origin.is_scalar(), candidate) {
                (true, _) => situation.at(*fact),
                (false, Some(candidate)) => self.of_candidate(situation, candidate, *fact),
                (false, None) => Interval::NOT_KNOWN,
            }
        };
        wanted.iter().map(value).collect()
    }

    fn possible(&self, free: &[FactId], area: &[Interval]) -> Truth {
        let value = |name: &str| {
            let id = self.shop.vocabulary().id(name)?;
            let place = free.iter().position(|&fact| fact == id)?;
            area.get(place).copied()
        };
        let mut possible = Truth::Yes;
        for clash in CLASHES {
            possible = possible.min(clash(&value));
        }
        possible
    }

    fn hint(&self, subject: &str, fact: FactId) -> Option<String> {
        let stated = self.fact(fact);
        if let Some(value) = self.assumed.get(&fact) {
            let value = self.shop.vocabulary().print(fact, *value);
            return Some(format!(
                "where nobody knows, {value} is assumed, so it is always known"
            ));
        }
        let later = stated.origin == Origin::Settled
            && !self.settling.may_be_settled(subject, fact)
            && !self.prices.contains_key(&fact);
        later.then(|| format!("it is settled only after {subject}, so it isn't known yet"))
    }
}

/// What the price list comes to, for a ball with a thumb hole and for one without.
fn prices(shop: &Shop) -> BTreeMap<FactId, Interval> {
    let list = shop.catalog().prices();
    let plug = Order {
        plugs: 1,
        ..Order::default()
    };
    let redrill = |holes: u8| {
        let mut order = Order::redrill(holes);
        order.grip = Grip::Fingertip;
        order.slug = holes == 3;
        Interval::point(list.quote(&order).total())
    };
    let known = [
        ("price.plug", Interval::point(list.quote(&plug).total())),
        ("price.inserts", Interval::point(list.finger_inserts())),
        ("price.redrill", redrill(2).or(redrill(3))),
    ];
    let named = |(name, price): (&str, Interval)| Some((shop.vocabulary().id(name)?, price));
    known.into_iter().filter_map(named).collect()
}
