//! A garden shop: its facts, its world, and short ways to read rules.

use std::borrow::Cow;
use std::collections::HashMap;
use std::sync::Arc;

use spanwright::document::{Document, Format};
use spanwright::notation::Notation;
use spanwright::rules::{Fact, FactId, Kind, Ledger, Origin, RuleSet, UNKNOWN, Vocabulary, World};

/// A number from `lowest` to `highest` without a unit.
pub const fn count(lowest: i64, highest: i64) -> Kind {
    Kind::Number {
        notation: Notation::Count,
        lowest,
        highest,
    }
}

fn fact(name: &'static str, kind: Kind, origin: Origin) -> Fact {
    let subject = (!origin.is_scalar()).then(|| {
        if name.starts_with("pot.") {
            "pot"
        } else {
            "plant"
        }
    });
    Fact {
        name,
        meaning: "a fact of the garden",
        kind,
        origin,
        from: "the test",
        subject,
    }
}

/// The facts of the garden shop.
pub fn vocabulary() -> Arc<Vocabulary> {
    let money = |lowest, highest| Kind::Number {
        notation: Notation::Money,
        lowest,
        highest,
    };
    let length = Kind::Number {
        notation: Notation::Length,
        lowest: 0,
        highest: 6400,
    };
    let pests = Kind::Set(&["snails", "mice", "deer"]);
    let facts = vec![
        fact(
            "garden.soil",
            Kind::Choice(&["sand", "loam", "heavy_clay"]),
            Origin::Answer,
        ),
        fact("garden.shade", Kind::Flag, Origin::Answer),
        fact("garden.sun", count(0, 24), Origin::Answer),
        fact("garden.pests", pests, Origin::Answer),
        fact("garden.budget", money(0, 20_000), Origin::Answer),
        fact("old.stake", length, Origin::Answer),
        fact(
            "settled.tool",
            Kind::Choice(&["spade", "fork"]),
            Origin::Settled,
        ),
        fact("worked.dry", Kind::Flag, Origin::Worked),
        fact("worked.wind", count(-20, 20), Origin::Worked),
        fact(
            "plant.soil",
            Kind::Choice(&["sand", "loam", "heavy_clay"]),
            Origin::Candidate,
        ),
        fact("plant.height", count(0, 300), Origin::Candidate),
        fact("plant.price", money(0, 20_000), Origin::Candidate),
        fact("plant.safe_from", pests, Origin::Candidate),
        fact("plant.evergreen", Kind::Flag, Origin::Candidate),
        fact("match.over_budget", money(-20_000, 20_000), Origin::Derived),
        fact("match.sun_gap", count(-24, 24), Origin::Derived),
        fact("match.unsafe_from", pests, Origin::Derived),
        fact("pot.width", count(1, 60), Origin::Candidate),
    ];
    Arc::new(Vocabulary::new(facts).expect("the facts are well stated"))
}

/// Subjects, and a source to name.
pub const SUBJECTS: &str = "
subjects:
  - { id: plant, kind: choice, meaning: what to plant }
  - { id: pot, kind: choice, meaning: what to plant it in }
  - id: stake.length
    kind: measure
    notation: length
    limits: { lowest: 8 in, highest: 60 in, because: Shops stock no other stakes., source: own choice }
    round_to: 1/2
    rounding_because: Stakes are cut to half inches.
    meaning: how long a stake
  - { id: tie.count, kind: measure, notation: count, round_to: none, meaning: how many ties }
  - { id: gardener, kind: person, meaning: who gardens }
  - { id: planting, kind: steps, meaning: what to do in order }
sources:
  hedge-book: { title: The Plain Hedge, author: A. Rowe, year: 1974, strength: published }
";

/// A document from YAML text.
pub fn document(name: &str, text: &str) -> Document {
    Document::parse(name, text.as_bytes(), Format::Yaml).unwrap_or_else(|faults| panic!("{faults}"))
}

/// Reads rules of the garden shop, beside [`SUBJECTS`].
pub fn rules(text: &str) -> RuleSet {
    let documents = [
        document("subjects.yaml", SUBJECTS),
        document("rules.yaml", text),
    ];
    RuleSet::read(&vocabulary(), &documents).unwrap_or_else(|faults| panic!("{faults}"))
}

/// A rule file about plants, from `id | rest in YAML flow style` a line; reason and source are added.
pub fn plant_rules(lines: &str) -> String {
    about("plant", lines)
}

/// A rule file about a subject, from `id | rest in YAML flow style` a line; reason and source are added.
pub fn about(subject: &str, lines: &str) -> String {
    let mut text = format!("subject: {subject}\nrules:\n");
    for line in lines.lines().map(str::trim).filter(|line| !line.is_empty()) {
        let (id, rest) = line.split_once('|').expect("a rule has an id");
        text += &format!(
            "  - {{ id: {}, {}, because: So it is., source: own choice }}\n",
            id.trim(),
            rest.trim()
        );
    }
    text
}

/// The values of facts by name; what is not said is unknown.
#[derive(Clone, Debug, Default)]
pub struct Garden {
    pub vocabulary: Option<Arc<Vocabulary>>,
    pub candidates: usize,
    pub scalars: HashMap<String, i64>,
    pub columns: HashMap<String, Vec<i64>>,
    pub ties: Vec<i64>,
}

impl Garden {
    /// A garden with this many plants and nothing known.
    pub fn of(candidates: usize) -> Garden {
        Garden {
            vocabulary: Some(vocabulary()),
            candidates,
            ..Garden::default()
        }
    }

    /// The same with a fact of the gardener known.
    pub fn with(mut self, name: &str, value: i64) -> Garden {
        self.scalars.insert(name.to_owned(), value);
        self
    }

    /// The same with a fact of the plants known.
    pub fn column(mut self, name: &str, values: &[i64]) -> Garden {
        self.columns.insert(name.to_owned(), values.to_vec());
        self
    }

    fn name(&self, fact: FactId) -> &'static str {
        self.vocabulary
            .as_ref()
            .expect("a garden has a vocabulary")
            .fact(fact)
            .name
    }
}

impl World for Garden {
    fn candidates(&self) -> usize {
        self.candidates
    }

    fn scalar(&self, fact: FactId) -> i64 {
        self.scalars
            .get(self.name(fact))
            .copied()
            .unwrap_or(UNKNOWN)
    }

    fn column(&self, fact: FactId) -> Cow<'_, [i64]> {
        match self.columns.get(self.name(fact)) {
            Some(column) => Cow::Borrowed(column),
            None => Cow::Owned(Vec::new()),
        }
    }

    fn tie(&self, candidate: usize) -> i64 {
        self.ties
            .get(candidate)
            .copied()
            .unwrap_or(candidate as i64)
    }
}

/// `rule id: points` for each line, in order.
pub fn lines(rules: &RuleSet, ledger: &Ledger) -> Vec<String> {
    let line = |line: &spanwright::rules::Line| {
        format!("{}: {}", rules.rule(line.rule()).id(), line.points())
    };
    ledger.lines().iter().map(line).collect()
}

/// The ids of the rules whose lines these are.
pub fn ids<'r>(rules: &'r RuleSet, lines: &[spanwright::rules::Line]) -> Vec<&'r str> {
    lines
        .iter()
        .map(|line| rules.rule(line.rule()).id())
        .collect()
}

/// The total of each plant under these rules.
pub fn totals(rules: &RuleSet, garden: &Garden) -> Vec<i64> {
    let chooser = rules.chooser("plant", garden).expect("plant is a choice");
    let ranking = chooser.rank(garden);
    (0..garden.candidates)
        .map(|plant| ranking.total(plant))
        .collect()
}
