//! Kites, those who ask for one, and the facts about both.

use std::borrow::Cow;
use std::sync::Arc;

use spanwright::notation::Notation;
use spanwright::rules::{Fact, FactId, Kind, Origin, Vocabulary, World};

/// Who asks; all whole numbers.
#[derive(Clone, Copy, Debug)]
pub struct Asker {
    pub wind: i64,
    pub skill: i64,
    pub age: i64,
    pub budget: i64,
    pub arm: i64,
    pub beach: i64,
    pub gusts: i64,
    pub likes: i64,
}

/// A kite; all whole numbers.
#[derive(Clone, Copy, Debug)]
pub struct Kite {
    pub shape: i64,
    pub cloth: i64,
    pub price: i64,
    pub span: i64,
    pub weight: i64,
    pub tails: i64,
    pub lines: i64,
    pub maker: i64,
}

/// What follows from both.
#[derive(Clone, Copy, Debug)]
pub struct Gap {
    pub over: i64,
    pub pull: i64,
    pub reach: i64,
    pub skill: i64,
    pub load: i64,
    pub liked: i64,
}

impl Gap {
    pub fn of(asker: &Asker, kite: &Kite) -> Gap {
        Gap {
            over: over(asker, kite),
            pull: pull(asker, kite),
            reach: reach(asker, kite),
            skill: skill(asker, kite),
            load: load(asker, kite),
            liked: liked(asker, kite),
        }
    }
}

fn over(asker: &Asker, kite: &Kite) -> i64 {
    kite.price + kite.price * 8 / 100 - asker.budget
}

fn pull(asker: &Asker, kite: &Kite) -> i64 {
    (kite.span * asker.wind - kite.weight) / 10
}

fn reach(asker: &Asker, kite: &Kite) -> i64 {
    asker.arm * 3 - kite.span
}

fn skill(asker: &Asker, kite: &Kite) -> i64 {
    kite.lines + kite.shape - asker.skill
}

fn load(asker: &Asker, kite: &Kite) -> i64 {
    kite.weight * 10 / kite.span + asker.gusts
}

fn liked(asker: &Asker, kite: &Kite) -> i64 {
    i64::from(asker.likes == kite.shape)
}

/// Pseudo-random whole numbers, the same on every run.
struct Numbers(u64);

impl Numbers {
    fn below(&mut self, below: u64) -> i64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 33) % below) as i64
    }
}

pub fn kites(count: usize) -> Vec<Kite> {
    let mut numbers = Numbers(7);
    let mut kite = || Kite {
        shape: numbers.below(5),
        cloth: numbers.below(4),
        price: 10 + numbers.below(290),
        span: 40 + numbers.below(260),
        weight: 20 + numbers.below(400),
        tails: numbers.below(2),
        lines: 1 + numbers.below(4),
        maker: numbers.below(6),
    };
    (0..count).map(|_| kite()).collect()
}

pub fn askers(count: usize) -> Vec<Asker> {
    let mut numbers = Numbers(11);
    let mut asker = || Asker {
        wind: numbers.below(9),
        skill: numbers.below(6),
        age: 5 + numbers.below(80),
        budget: 40 + numbers.below(260),
        arm: 30 + numbers.below(50),
        beach: numbers.below(2),
        gusts: numbers.below(10),
        likes: numbers.below(5),
    };
    (0..count).map(|_| asker()).collect()
}

pub const SHAPES: &[&str] = &["diamond", "delta", "box", "foil", "rokkaku"];
const CLOTHS: &[&str] = &["paper", "cotton", "nylon", "film"];
const MAKERS: &[&str] = &["abel", "brook", "carter", "dunn", "ellis", "ford"];

/// The facts by name, those of askers first, then of kites, then of both.
pub fn vocabulary() -> Arc<Vocabulary> {
    let number = |lowest, highest| Kind::Number {
        notation: Notation::Count,
        lowest,
        highest,
    };
    let fact = |name: &'static str, kind: Kind| {
        let origin = match name.split_once('.') {
            Some(("asker", _)) => Origin::Answer,
            Some(("kite", _)) => Origin::Candidate,
            _ => Origin::Derived,
        };
        let subject = (!origin.is_scalar()).then_some("kite");
        Fact {
            name,
            meaning: "a fact of kites",
            kind,
            origin,
            from: "the bench",
            subject,
        }
    };
    let facts = vec![
        fact("asker.wind", number(0, 12)),
        fact("asker.skill", number(0, 10)),
        fact("asker.age", number(0, 120)),
        fact("asker.budget", number(0, 1000)),
        fact("asker.arm", number(0, 120)),
        fact("asker.beach", Kind::Flag),
        fact("asker.gusts", number(0, 20)),
        fact("asker.likes", Kind::Choice(SHAPES)),
        fact("kite.shape", Kind::Choice(SHAPES)),
        fact("kite.cloth", Kind::Choice(CLOTHS)),
        fact("kite.price", number(0, 1000)),
        fact("kite.span", number(0, 1000)),
        fact("kite.weight", number(0, 1000)),
        fact("kite.tails", Kind::Flag),
        fact("kite.lines", number(0, 10)),
        fact("kite.maker", Kind::Choice(MAKERS)),
        fact("gap.over", number(-1000, 1000)),
        fact("gap.pull", number(-1000, 1000)),
        fact("gap.reach", number(-1000, 1000)),
        fact("gap.skill", number(-20, 20)),
        fact("gap.load", number(-100, 1000)),
        fact("gap.liked", Kind::Flag),
    ];
    Arc::new(Vocabulary::new(facts).expect("the facts are well stated"))
}

/// One asker before all kites.
pub struct Day<'a> {
    asker: &'a Asker,
    kites: &'a [Kite],
}

impl<'a> Day<'a> {
    pub fn new(asker: &'a Asker, kites: &'a [Kite]) -> Day<'a> {
        Day { asker, kites }
    }
}

impl World for Day<'_> {
    fn candidates(&self) -> usize {
        self.kites.len()
    }

    fn scalar(&self, fact: FactId) -> i64 {
        let Asker {
            wind,
            skill,
            age,
            budget,
            arm,
            beach,
            gusts,
            likes,
        } = *self.asker;
        [wind, skill, age, budget, arm, beach, gusts, likes][usize::from(fact.0)]
    }

    fn column(&self, fact: FactId) -> Cow<'_, [i64]> {
        let of_kites = |value: fn(&Kite) -> i64| self.kites.iter().map(value).collect();
        macro_rules! of_both {
            ($value:ident) => {
                self.kites
                    .iter()
                    .map(|kite| $value(self.asker, kite))
                    .collect()
            };
        }
        Cow::Owned(match fact.0 {
            8 => of_kites(|kite| kite.shape),
            9 => of_kites(|kite| kite.cloth),
            10 => of_kites(|kite| kite.price),
            11 => of_kites(|kite| kite.span),
            12 => of_kites(|kite| kite.weight),
            13 => of_kites(|kite| kite.tails),
            14 => of_kites(|kite| kite.lines),
            15 => of_kites(|kite| kite.maker),
            16 => of_both!(over),
            17 => of_both!(pull),
            18 => of_both!(reach),
            19 => of_both!(skill),
            20 => of_both!(load),
            _ => of_both!(liked),
        })
    }
}
