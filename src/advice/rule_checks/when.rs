//! When a consultation settles what: a rule can't look at what comes only later.

use std::collections::BTreeMap;

use crate::rules::{FactId, Vocabulary};
use crate::vocabulary::{bench, measures};

/// What the fitter may have settled before anything else, and what the ball brought tells.
const BEFORE_ALL: &[&str] = &[
    "settled.weight",
    "settled.grip",
    "settled.sleeve",
    "used.open_holes",
];
/// What a later subject finds settled by an earlier one.
const SETTLED_BY: &[(&str, &str)] = &[
    ("settled.cover", "ball"),
    ("settled.core", "ball"),
    ("settled.layout", "layout"),
    ("refit.cause", "cause"),
];
/// Facts that only one subject finds.
const ONLY_FOR: &[(&str, &str)] = &[("used.plain_over", "offer"), ("used.weight_over", "offer")];
/// Settled facts that a subject always finds: there is a grip before a ball is chosen, and a ball before its surface.
const ALWAYS: &[(&str, &[&str])] = &[
    ("ball", &["settled.grip"]),
    (
        "surface",
        &[
            "settled.weight",
            "settled.grip",
            "settled.cover",
            "settled.core",
        ],
    ),
    (
        "layout",
        &[
            "settled.weight",
            "settled.grip",
            "settled.cover",
            "settled.core",
        ],
    ),
];

/// The order of a consultation's subjects, and the facts that each settles.
pub(super) struct Settling {
    subjects: Vec<&'static str>,
    /// The subject that settles a fact; none for what is there before all.
    by: BTreeMap<FactId, Option<&'static str>>,
    only: BTreeMap<FactId, &'static str>,
    always: Vec<(&'static str, FactId)>,
}

impl Settling {
    pub(super) fn new(vocabulary: &Vocabulary) -> Self {
        let (bench, measures) = (bench(), measures());
        let mut subjects: Vec<&'static str> = bench.iter().map(|fact| fact.name).collect();
        subjects.extend(["weight", "grip", "ball", "surface", "layout"]);
        subjects.extend(measures.iter().map(|measure| measure.id));
        subjects.push("cause");
        let id = |name: &str| vocabulary.id(name);
        let mut by: BTreeMap<FactId, Option<&'static str>> = BTreeMap::new();
        by.extend(BEFORE_ALL.iter().filter_map(|name| Some((id(name)?, None))));
        by.extend(
            bench
                .iter()
                .filter_map(|fact| Some((id(fact.name)?, Some(fact.name)))),
        );
        by.extend(
            measures
                .iter()
                .filter_map(|measure| Some((id(measure.fact.name)?, Some(measure.id)))),
        );
        by.extend(
            SETTLED_BY
                .iter()
                .filter_map(|&(name, subject)| Some((id(name)?, Some(subject)))),
        );
        let only = ONLY_FOR.iter();
        let always = ALWAYS
            .iter()
            .flat_map(|&(subject, names)| names.iter().map(move |name| (subject, name)));
        Settling {
            subjects,
            by,
            only: only
                .filter_map(|&(name, subject)| Some((id(name)?, subject)))
                .collect(),
            always: always
                .filter_map(|(subject, name)| Some((subject, id(name)?)))
                .collect(),
        }
    }

    fn place(&self, subject: &str) -> Option<usize> {
        self.subjects.iter().position(|known| *known == subject)
    }

    /// Whether the rules of this subject may find the fact settled.
    pub(super) fn may_be_settled(&self, subject: &str, fact: FactId) -> bool {
        if let Some(only) = self.only.get(&fact) {
            return *only == subject;
        }
        match (self.by.get(&fact), self.place(subject)) {
            (Some(Some(by)), Some(place)) => self.place(by).is_some_and(|by| by < place),
            // What isn't in the order comes after all of it.
            _ => true,
        }
    }

    /// Whether they always find it settled.
    pub(super) fn is_settled(&self, subject: &str, fact: FactId) -> bool {
        self.always.contains(&(subject, fact))
    }
}
