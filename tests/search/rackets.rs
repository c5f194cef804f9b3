//! A racket shop: a random vocabulary within its words, a stock, rules read from text, and what is handed over for a player's answers,
//! once by the engine and once by the naive evaluator.

use std::borrow::Cow;
use std::sync::Arc;

use spanwright::document::{Document, Format};
use spanwright::notation::Notation;
use spanwright::rules::{
    Challenge, Chooser, Fact, FactId, Interval, Kind, Origin, Ranged, RuleSet, UNKNOWN, Vocabulary,
    World,
};
use spanwright::search::{Decision, Holds, Shape};

use crate::naive::{Does, PlainRule, holds, points, written};

/// The answers come first; a fact's place is its id.
pub const ANSWERS: usize = 5;
const REACH: usize = 0;
const BUDGET: usize = 1;
const LEFT: usize = 4;
const SPARE: usize = 5;
const WEIGHT: usize = 6;
const PRICE: usize = 7;
const FRAME: usize = 8;
const SOFT_FOR: usize = 9;
const OVER_BUDGET: usize = 10;
const OFF_WEIGHT: usize = 11;

const STYLES: &[&str] = &["patient", "quick", "wild", "sly"];
const ACHES: &[&str] = &["elbow", "wrist", "back"];
const FRAMES: &[&str] = &["ash", "cane", "tin"];

/// How large the answers are.
#[derive(Clone, Copy, Debug)]
pub struct Size {
    pub reach: (i64, i64),
    pub budget: (i64, i64),
    pub styles: usize,
    pub aches: usize,
}

/// The facts of a shop of this size.
pub fn vocabulary(size: Size) -> Arc<Vocabulary> {
    let number = |(lowest, highest)| Kind::Number {
        notation: Notation::Count,
        lowest,
        highest,
    };
    let aches = Kind::Set(&ACHES[..size.aches]);
    let facts = [
        ("player.reach", number(size.reach), Origin::Answer),
        ("player.budget", number(size.budget), Origin::Answer),
        (
            "player.style",
            Kind::Choice(&STYLES[..size.styles]),
            Origin::Answer,
        ),
        ("player.aches", aches, Origin::Answer),
        ("player.left", Kind::Flag, Origin::Answer),
        ("worked.spare", number((-300_000, 300_000)), Origin::Worked),
        ("racket.weight", number((-9, 20)), Origin::Candidate),
        ("racket.price", number((0, 200_000)), Origin::Candidate),
        ("racket.frame", Kind::Choice(FRAMES), Origin::Candidate),
        ("racket.soft_for", aches, Origin::Candidate),
        (
            "match.over_budget",
            number((-300_000, 300_000)),
            Origin::Derived,
        ),
        ("match.off_weight", number((0, 60)), Origin::Derived),
    ];
    let fact = |(name, kind, origin): (&'static str, Kind, Origin)| Fact {
        name,
        meaning: "a fact of the racket shop",
        kind,
        origin,
        from: "the test",
        subject: (!origin.is_scalar()).then_some("racket"),
    };
    Arc::new(Vocabulary::new(facts.map(fact).to_vec()).expect("the facts are well stated"))
}

/// A racket on the wall.
#[derive(Clone, Debug)]
pub struct Racket {
    pub weight: i64,
    pub price: i64,
    pub frame: i64,
    pub soft_for: i64,
    pub tie: i64,
}

/// A shop: what it has and what its rules say.
#[derive(Clone, Debug)]
pub struct Shop {
    pub size: Size,
    pub rackets: Vec<Racket>,
    pub rules: Vec<PlainRule>,
    /// So much more reach than budget can't be given.
    pub impossible: Option<i64>,
}

impl Shop {
    /// The rules read from their text.
    pub fn read(&self) -> RuleSet {
        let facts = vocabulary(self.size);
        let mut text = "subject: racket\nrules:\n  - { id: first, points: 1, because: So it is., source: own choice }\n".to_owned();
        for (index, rule) in self.rules.iter().enumerate() {
            text += &written(&facts, &format!("rule-{index}"), rule);
        }
        let subjects = "subjects:\n  - { id: racket, kind: choice, meaning: what to play with }\n";
        let document = |name: &str, text: &str| {
            Document::parse(name, text.as_bytes(), Format::Yaml)
                .unwrap_or_else(|faults| panic!("{faults}"))
        };
        let documents = [
            document("subjects.yaml", subjects),
            document("rackets.yaml", &text),
        ];
        RuleSet::read(&facts, &documents).unwrap_or_else(|faults| panic!("{faults}\n{text}"))
    }

    /// The value of a fact for these answers, of a racket where it is one of rackets.
    fn value(&self, answers: &[i64], racket: Option<&Racket>, fact: usize) -> i64 {
        let both = |a: i64, b: i64, f: fn(i64, i64) -> i64| {
            if a == UNKNOWN || b == UNKNOWN {
                UNKNOWN
            } else {
                f(a, b)
            }
        };
        let of = |from: fn(&Racket) -> i64| racket.map_or(UNKNOWN, from);
        match fact {
            SPARE => both(answers[BUDGET], answers[REACH], |budget, reach| {
                budget - reach
            }),
            WEIGHT => of(|racket| racket.weight),
            PRICE => of(|racket| racket.price),
            FRAME => of(|racket| racket.frame),
            SOFT_FOR => of(|racket| racket.soft_for),
            OVER_BUDGET => both(
                of(|racket| racket.price),
                answers[BUDGET],
                |price, budget| price - budget,
            ),
            OFF_WEIGHT => both(
                of(|racket| racket.weight),
                answers[REACH],
                |weight, reach| (weight - reach).abs(),
            ),
            answer => answers[answer],
        }
    }

    fn shape(&self, answer: usize) -> Shape {
        match vocabulary(self.size).facts()[answer].kind {
            Kind::Number { .. } => Shape::Steps,
            Kind::Choice(_) | Kind::Flag => Shape::Words,
            Kind::Set(_) => Shape::Bits,
        }
    }

    /// All that an answer can be.
    pub fn all(&self, answer: usize) -> Interval {
        let known = match answer {
            REACH => Interval::between(self.size.reach.0, self.size.reach.1),
            BUDGET => Interval::between(self.size.budget.0, self.size.budget.1),
            LEFT => Interval::either(),
            _ if self.shape(answer) == Shape::Bits => {
                Interval::between(0, (1 << self.size.aches) - 1)
            }
            _ => Interval::between(0, self.size.styles as i64 - 1),
        };
        known.or_unknown()
    }

    fn is_possible(&self, point: &[i64]) -> bool {
        match self.impossible {
            Some(more) if point[REACH] != UNKNOWN && point[BUDGET] != UNKNOWN => {
                point[REACH] - point[BUDGET] <= more
            }
            _ => true,
        }
    }
}

/// One player at the counter.
struct Player<'s>(&'s Shop, &'s [i64]);

impl World for Player<'_> {
    fn candidates(&self) -> usize {
        self.0.rackets.len()
    }

    fn scalar(&self, fact: FactId) -> i64 {
        self.0.value(self.1, None, usize::from(fact.0))
    }

    fn column(&self, fact: FactId) -> Cow<'_, [i64]> {
        let of = |racket| self.0.value(self.1, Some(racket), usize::from(fact.0));
        Cow::Owned(self.0.rackets.iter().map(of).collect())
    }

    fn tie(&self, candidate: usize) -> i64 {
        self.0.rackets[candidate].tie
    }
}

/// All players whose answers lie in a box.
struct Players<'s>(&'s Shop, &'s [Interval]);

impl Ranged for Players<'_> {
    fn candidates(&self) -> usize {
        self.0.rackets.len()
    }

    fn scalar(&self, fact: FactId) -> Interval {
        match usize::from(fact.0) {
            SPARE => self.1[BUDGET].minus(self.1[REACH]),
            answer => self.1[answer],
        }
    }

    fn bounds(&self, fact: FactId, candidate: usize) -> Interval {
        let racket = &self.0.rackets[candidate];
        match usize::from(fact.0) {
            OVER_BUDGET => Interval::point(racket.price).minus(self.1[BUDGET]),
            OFF_WEIGHT => Interval::point(racket.weight)
                .minus(self.1[REACH])
                .distance(),
            fact => Interval::point(self.0.value(&[], Some(racket), fact)),
        }
    }
}

/// What the engine hands over.
pub struct Counter<'s> {
    shop: &'s Shop,
    chooser: Chooser<'s>,
    cuts: Vec<Vec<i64>>,
}

impl<'s> Counter<'s> {
    pub fn new(shop: &'s Shop, rules: &'s RuleSet) -> Self {
        let nobody = [UNKNOWN; ANSWERS];
        let chooser = rules.chooser("racket", &Player(shop, &nobody));
        let cuts = |answer: usize| rules.cuts("racket", FactId(answer as u16));
        Counter {
            shop,
            chooser: chooser.expect("rackets are a choice"),
            cuts: (0..ANSWERS).map(cuts).collect(),
        }
    }
}

impl Decision for Counter<'_> {
    type Pick = Option<usize>;

    fn answers(&self) -> usize {
        ANSWERS
    }

    fn shape(&self, answer: usize) -> Shape {
        self.shop.shape(answer)
    }

    fn pick(&self, point: &[i64]) -> Option<usize> {
        let ranking = self.chooser.rank(&Player(self.shop, point));
        ranking.best(1).first().copied()
    }

    fn is_possible(&self, point: &[i64]) -> bool {
        self.shop.is_possible(point)
    }

    fn holds(&self, area: &[Interval], pick: &Option<usize>) -> Holds {
        match self.chooser.challenge(&Players(self.shop, area), *pick) {
            Challenge::Holds => Holds::Proved,
            Challenge::Open { facts, .. } => {
                let told = |fact: FactId| match usize::from(fact.0) {
                    SPARE => vec![BUDGET, REACH],
                    OVER_BUDGET => vec![BUDGET],
                    OFF_WEIGHT => vec![REACH],
                    fact => vec![fact],
                };
                Holds::Open {
                    split: facts.into_iter().flat_map(told).collect(),
                }
            }
        }
    }

    fn may_be_possible(&self, area: &[Interval]) -> bool {
        let (reach, budget) = (area[REACH], area[BUDGET]);
        match self.shop.impossible {
            Some(more) if reach.is_known() && budget.is_known() => {
                reach.lowest() - budget.highest() <= more
            }
            _ => true,
        }
    }

    fn cuts(&self, answer: usize) -> &[i64] {
        &self.cuts[answer]
    }
}

/// The same by the naive evaluator, which knows no boxes.
#[derive(Debug)]
pub struct ByHand<'s>(pub &'s Shop);

impl Decision for ByHand<'_> {
    type Pick = Option<usize>;

    fn answers(&self) -> usize {
        ANSWERS
    }

    fn shape(&self, answer: usize) -> Shape {
        self.0.shape(answer)
    }

    fn pick(&self, point: &[i64]) -> Option<usize> {
        let left = self
            .0
            .rackets
            .iter()
            .enumerate()
            .filter_map(|(place, racket)| {
                let value = |fact: usize| self.0.value(point, Some(racket), fact);
                let is_out =
                    |rule: &PlainRule| matches!(rule.does, Does::Out) && holds(rule, &value);
                if self.0.rules.iter().any(is_out) {
                    return None;
                }
                let counted = self.0.rules.iter().filter(|rule| !rule.disputes);
                let total: i64 = counted.map(|rule| points(rule, &value)).sum();
                Some((-total, racket.tie, place))
            });
        left.min().map(|(_, _, place)| place)
    }

    fn is_possible(&self, point: &[i64]) -> bool {
        self.0.is_possible(point)
    }

    fn holds(&self, _: &[Interval], _: &Option<usize>) -> Holds {
        Holds::Open { split: Vec::new() }
    }
}
