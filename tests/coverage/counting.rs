//! What counts, held against a plain count over random rules of a kite shop and random flyers.

use std::borrow::Cow;
use std::sync::Arc;

use proptest::prelude::*;
use spanwright::advice::{Coverage, Missing};
use spanwright::document::{Document, Format};
use spanwright::notation::Notation;
use spanwright::rules::{Fact, FactId, Kind, Origin, RuleSet, UNKNOWN, Vocabulary, World};

/// Numbers go from 0 to this.
const MOST: i64 = 9;
const WINDS: &[&str] = &["calm", "light", "fresh"];
const GEAR: &[&str] = &["gloves", "reel"];
/// The facts by their places: two numbers, words, a set. The second is a property of each kite.
const NAMES: [&str; 4] = ["flyer.age", "kite.size", "flyer.wind", "flyer.gear"];

fn vocabulary() -> Arc<Vocabulary> {
    let number = Kind::Number {
        notation: Notation::Count,
        lowest: 0,
        highest: MOST,
    };
    let kinds = [number, number, Kind::Choice(WINDS), Kind::Set(GEAR)];
    let facts = NAMES.iter().zip(kinds).map(|(name, kind)| Fact {
        name,
        meaning: "a fact of the kite shop",
        kind,
        origin: match *name {
            "kite.size" => Origin::Candidate,
            _ => Origin::Answer,
        },
        from: "the test",
        subject: (*name == "kite.size").then_some("kite"),
    });
    Arc::new(Vocabulary::new(facts.collect()).unwrap())
}

/// One flyer before two kites.
#[derive(Clone, Debug)]
struct Flyer {
    scalars: [i64; 4],
    sizes: [i64; 2],
}

impl Flyer {
    fn value(&self, fact: usize, kite: usize) -> i64 {
        match fact {
            1 => self.sizes[kite],
            _ => self.scalars[fact],
        }
    }
}

impl World for Flyer {
    fn candidates(&self) -> usize {
        2
    }
    fn scalar(&self, fact: FactId) -> i64 {
        self.scalars[usize::from(fact.0)]
    }
    fn column(&self, _: FactId) -> Cow<'_, [i64]> {
        Cow::Borrowed(&self.sizes)
    }
}

/// A test as it is written, and as a plain list of the values it lets through.
#[derive(Clone, Debug)]
enum Matcher {
    Between(i64, i64),
    Not(i64),
    Known(bool),
    Word(usize),
    Has(usize),
}

impl Matcher {
    fn written(&self) -> String {
        match self {
            Matcher::Between(low, high) => format!("{{ at_least: {low}, at_most: {high} }}"),
            Matcher::Not(value) => format!("{{ not: {value} }}"),
            Matcher::Known(known) => format!("{{ known: {known} }}"),
            Matcher::Word(word) => WINDS[*word].to_owned(),
            Matcher::Has(word) => format!("{{ has: {} }}", GEAR[*word]),
        }
    }

    fn met(&self, value: i64) -> bool {
        let known = value != UNKNOWN;
        match self {
            Matcher::Between(low, high) => known && (*low..=*high).contains(&value),
            Matcher::Not(other) => known && value != *other,
            Matcher::Known(wanted) => known == *wanted,
            Matcher::Word(word) => value == *word as i64,
            Matcher::Has(word) => known && value >> word & 1 == 1,
        }
    }

    /// The values that belong together, lowest first; none where numbers aren't told apart.
    fn stretches(&self) -> Vec<Vec<i64>> {
        let mut stretches: Vec<Vec<i64>> = Vec::new();
        for value in 0..=MOST {
            match stretches.last_mut() {
                Some(last) if self.met(value) == self.met(last[0]) => last.push(value),
                _ => stretches.push(vec![value]),
            }
        }
        stretches
    }
}

/// Tests by fact, and alternatives of the same kind.
#[derive(Clone, Debug)]
struct Plan {
    all: Vec<(usize, Matcher)>,
    any: Vec<Vec<(usize, Matcher)>>,
}

impl Plan {
    fn written(&self) -> String {
        let map = |tests: &[(usize, Matcher)]| {
            let tests = tests.iter();
            let tests = tests.map(|(fact, test)| format!("{}: {}", NAMES[*fact], test.written()));
            tests.collect::<Vec<_>>().join(", ")
        };
        let mut parts = vec![map(&self.all)];
        if !self.any.is_empty() {
            let any = self.any.iter().map(|tests| format!("{{ {} }}", map(tests)));
            parts.push(format!(
                "any_of: [ {} ]",
                any.collect::<Vec<_>>().join(", ")
            ));
        }
        parts.retain(|part| !part.is_empty());
        format!("{{ {} }}", parts.join(", "))
    }

    fn tests(&self) -> Vec<&(usize, Matcher)> {
        self.all.iter().chain(self.any.iter().flatten()).collect()
    }

    /// Whether it holds; the test at `forced.0`, counted along `tests`, comes out as told.
    fn holds(&self, flyer: &Flyer, kite: usize, forced: Option<(usize, bool)>) -> bool {
        let mut place = 0;
        let mut met = |(fact, test): &(usize, Matcher)| {
            let own = match forced {
                Some((at, outcome)) if at == place => outcome,
                _ => test.met(flyer.value(*fact, kite)),
            };
            place += 1;
            own
        };
        let all: Vec<bool> = self.all.iter().map(&mut met).collect();
        let any: Vec<bool> = self
            .any
            .iter()
            .map(|tests| {
                let each: Vec<bool> = tests.iter().map(&mut met).collect();
                each.iter().all(|met| *met)
            })
            .collect();
        all.iter().all(|met| *met) && (any.is_empty() || any.iter().any(|met| *met))
    }

    /// Everything that none of the flyers tries, in words.
    fn gaps(&self, flyers: &[Flyer]) -> Vec<String> {
        let pairs: Vec<(&Flyer, usize)> = flyers.iter().flat_map(|f| [(f, 0), (f, 1)]).collect();
        let mut gaps = Vec::new();
        if !pairs
            .iter()
            .any(|(flyer, kite)| self.holds(flyer, *kite, None))
        {
            gaps.push("never fired".to_owned());
        }
        for (place, (fact, test)) in self.tests().into_iter().enumerate() {
            let seen = |wanted: &dyn Fn(i64) -> bool, decides: bool| {
                pairs.iter().any(|(flyer, kite)| {
                    let forced = |outcome| self.holds(flyer, *kite, Some((place, outcome)));
                    wanted(flyer.value(*fact, *kite)) && (!decides || forced(true) != forced(false))
                })
            };
            let mut want = |wanted: &dyn Fn(i64) -> bool, decides: bool, side: String| {
                if !seen(wanted, decides) {
                    gaps.push(format!("{} {side}", NAMES[*fact]));
                }
            };
            let about_known = matches!(test, Matcher::Known(_))
                || *fact < 2 && (0..=MOST).all(|value| test.met(value));
            if about_known {
                want(&|value| value == UNKNOWN, true, "not known".to_owned());
                want(&|value| value != UNKNOWN, true, "known".to_owned());
            } else if *fact >= 2 {
                want(&|value| test.met(value), true, "met".to_owned());
                want(&|value| !test.met(value), false, "not met".to_owned());
            } else {
                for pair in test.stretches().windows(2) {
                    let (below, from) = (&pair[0], &pair[1]);
                    let begin = from[0];
                    let upper = match from.len() {
                        1 => format!("exactly {begin}"),
                        _ => format!("from {begin} on"),
                    };
                    want(
                        &|value| below.contains(&value),
                        true,
                        format!("below {begin}"),
                    );
                    want(&|value| from.contains(&value), true, upper);
                }
            }
        }
        gaps.sort();
        gaps
    }
}

fn value(fact: usize) -> BoxedStrategy<i64> {
    let known = match fact {
        0 | 1 => 0..=MOST,
        2 => 0..=2,
        _ => 0..=3,
    };
    prop_oneof![4 => known, 1 => Just(UNKNOWN)].boxed()
}

fn flyer() -> impl Strategy<Value = Flyer> {
    let scalars = (value(0), value(2), value(3));
    (scalars, value(1), value(1)).prop_map(|((age, wind, gear), one, other)| Flyer {
        scalars: [age, UNKNOWN, wind, gear],
        sizes: [one, other],
    })
}

fn matcher(fact: usize) -> BoxedStrategy<Matcher> {
    let known = any::<bool>().prop_map(Matcher::Known);
    let own = match fact {
        0 | 1 => prop_oneof![
            (0..=MOST, 0..=MOST).prop_map(|(a, b)| Matcher::Between(a.min(b), a.max(b))),
            (0..=MOST).prop_map(Matcher::Not),
        ]
        .boxed(),
        2 => (0..WINDS.len()).prop_map(Matcher::Word).boxed(),
        _ => (0..GEAR.len()).prop_map(Matcher::Has).boxed(),
    };
    prop_oneof![4 => own, 1 => known].boxed()
}

fn tests(least: usize) -> impl Strategy<Value = Vec<(usize, Matcher)>> {
    let facts = proptest::sample::subsequence(vec![0, 1, 2, 3], least..=3);
    facts.prop_flat_map(|facts| {
        let each: Vec<_> = facts.into_iter().map(|f| (Just(f), matcher(f))).collect();
        each
    })
}

fn plan() -> impl Strategy<Value = Plan> {
    let any = prop_oneof![
        Just(Vec::new()).boxed(),
        proptest::collection::vec(tests(1), 1..=3).boxed()
    ];
    (tests(1), any).prop_map(|(all, any)| Plan { all, any })
}

fn rules(plans: &[Plan]) -> RuleSet {
    let mut text = "
subjects:
  - { id: kite, kind: choice, meaning: Which kite. }
subject: kite
rules:
"
    .to_owned();
    for (at, plan) in plans.iter().enumerate() {
        text.push_str(&format!(
            "  - {{ id: rule-{at}, when: {}, points: 1, because: It is so., source: own choice }}\n",
            plan.written()
        ));
    }
    let document = Document::parse("kites.yaml", text.as_bytes(), Format::Yaml).unwrap();
    RuleSet::read(&vocabulary(), &[document]).unwrap_or_else(|faults| panic!("{faults}\n{text}"))
}

fn said(missing: &Missing) -> String {
    match missing {
        Missing::Fired => "never fired".to_owned(),
        Missing::Side { fact, side, .. } => format!("{fact} {side}"),
    }
}

proptest! {
    #[test]
    fn gaps_are_those_of_a_plain_count(
        plans in proptest::collection::vec(plan(), 1..4),
        flyers in proptest::collection::vec(flyer(), 0..30),
    ) {
        let rules = rules(&plans);
        let mut coverage = Coverage::of(&rules);
        for flyer in &flyers {
            coverage.observe(&rules, "kite", flyer, true);
        }
        for (at, plan) in plans.iter().enumerate() {
            let id = format!("rule-{at}");
            let gaps = coverage.gaps();
            let own = gaps.iter().filter(|gap| gap.rule == id);
            let mut found: Vec<String> = own.map(|gap| said(&gap.missing)).collect();
            found.sort();
            prop_assert_eq!(found, plan.gaps(&flyers), "{}", plan.written());
        }
    }
}

/// A hand-made example, so that the plain count above isn't believed blindly.
#[test]
fn a_boundary_counts_only_where_the_other_tests_are_met() {
    let plan = Plan {
        all: vec![(0, Matcher::Between(3, 5)), (2, Matcher::Word(1))],
        any: Vec::new(),
    };
    let rules = rules(std::slice::from_ref(&plan));
    let mut coverage = Coverage::of(&rules);
    let mut try_out = |age, wind, left: &[&str]| {
        let flyer = Flyer {
            scalars: [age, UNKNOWN, wind, 0],
            sizes: [0, 0],
        };
        coverage.observe(&rules, "kite", &flyer, true);
        let gaps: Vec<String> = coverage.gaps().iter().map(|g| said(&g.missing)).collect();
        assert_eq!(gaps, left);
    };
    // In another wind nothing is learned of the ages.
    try_out(
        3,
        2,
        &[
            "never fired",
            "flyer.age below 3",
            "flyer.age from 3 on",
            "flyer.age below 6",
            "flyer.age from 6 on",
            "flyer.wind met",
        ],
    );
    // Four lies between both boundaries.
    try_out(4, 1, &["flyer.age below 3", "flyer.age from 6 on"]);
    try_out(6, 0, &["flyer.age below 3", "flyer.age from 6 on"]);
    try_out(UNKNOWN, 1, &["flyer.age below 3", "flyer.age from 6 on"]);
    try_out(9, 1, &["flyer.age below 3"]);
    try_out(0, 1, &[]);
}

/// A subject that is left out shows words that aren't met and facts that aren't known, and nothing else.
#[test]
fn a_subject_that_is_left_out_only_guards() {
    let plan = Plan {
        all: vec![
            (0, Matcher::Known(true)),
            (1, Matcher::Between(0, 4)),
            (2, Matcher::Word(1)),
        ],
        any: Vec::new(),
    };
    let rules = rules(std::slice::from_ref(&plan));
    let mut coverage = Coverage::of(&rules);
    for (age, wind) in [(UNKNOWN, 0), (4, 1)] {
        let flyer = Flyer {
            scalars: [age, UNKNOWN, wind, 0],
            sizes: [0, 9],
        };
        coverage.observe(&rules, "kite", &flyer, false);
    }
    let gaps: Vec<String> = coverage.gaps().iter().map(|g| said(&g.missing)).collect();
    let left = [
        "never fired",
        "flyer.age known",
        "kite.size below 5",
        "kite.size from 5 on",
        "flyer.wind met",
    ];
    assert_eq!(gaps, left);
}
