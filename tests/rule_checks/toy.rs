//! Random rules of a small shop for lamps: what is found agrees with trying every case, by other code.

use std::collections::BTreeSet;
use std::sync::Arc;

use proptest::prelude::*;
use spanwright::document::{Document, Format};
use spanwright::notation::Notation;
use spanwright::rules::{Fact, FactId, Interval, Kind, Origin, RuleSet, UNKNOWN, Vocabulary};
use spanwright::search::{Finding, Realm, check_rules};

const HIGHEST: i64 = 6;
const ROOMS: &[&str] = &["hall", "kitchen", "attic"];
const WISHES: &[&str] = &["dim", "warm", "plain"];
/// What each lamp gives.
const LAMPS: [i64; 3] = [0, 2, 5];

/// One who asks: light already there, room, whether it is wet (always answered), wishes. `None`: not known.
#[derive(Clone, Copy, Debug)]
struct Asker {
    light: Option<i64>,
    room: Option<i64>,
    wet: bool,
    wishes: Option<i64>,
}

fn everybody() -> Vec<Asker> {
    let known = |highest: i64| std::iter::once(None).chain((0..=highest).map(Some));
    let mut all = Vec::new();
    for light in known(HIGHEST) {
        for room in known(2) {
            for wishes in known(7) {
                for wet in [false, true] {
                    all.push(Asker {
                        light,
                        room,
                        wet,
                        wishes,
                    });
                }
            }
        }
    }
    all
}

/// What a rule asks of one fact.
#[derive(Clone, Copy, Debug)]
enum Asks {
    /// `room.light` from a lowest to a highest value.
    Light(i64, i64),
    Room(i64),
    NotRoom(i64),
    Wet(bool),
    /// `room.wishes` has, has any, has none of these bits.
    Wishes(u8, i64),
    LightKnown(bool),
    RoomKnown(bool),
    /// `room.bright`: at least 4 of light.
    Bright(bool),
    /// `lamp.gives`
    Gives(i64, i64),
    /// `lamp.more`: what it gives less the light that is there, counted from -6 on.
    More(i64, i64),
}

impl Asks {
    fn fact(self) -> &'static str {
        match self {
            Asks::Light(..) | Asks::LightKnown(_) => "room.light",
            Asks::Room(_) | Asks::NotRoom(_) | Asks::RoomKnown(_) => "room.kind",
            Asks::Wet(_) => "room.wet",
            Asks::Wishes(..) => "room.wishes",
            Asks::Bright(_) => "room.bright",
            Asks::Gives(..) => "lamp.gives",
            Asks::More(..) => "lamp.more",
        }
    }

    fn written(self) -> String {
        let between = |low: i64, high: i64| format!("{{ at_least: {low}, at_most: {high} }}");
        let flag = |yes: bool| if yes { "yes" } else { "no" };
        let matcher = match self {
            Asks::Light(low, high) | Asks::Gives(low, high) | Asks::More(low, high) => {
                between(low, high)
            }
            Asks::Room(room) => ROOMS[room as usize].to_owned(),
            Asks::NotRoom(room) => format!("{{ not: {} }}", ROOMS[room as usize]),
            Asks::Wet(yes) | Asks::Bright(yes) => flag(yes).to_owned(),
            Asks::LightKnown(yes) | Asks::RoomKnown(yes) => format!("{{ known: {yes} }}"),
            Asks::Wishes(how, bits) => {
                let words: Vec<&str> = (0..3)
                    .filter(|bit| bits >> bit & 1 == 1)
                    .map(|bit| WISHES[bit])
                    .collect();
                format!(
                    "{{ {}: [{}] }}",
                    ["has", "has_any", "has_none"][how as usize],
                    words.join(", ")
                )
            }
        };
        format!("{}: {matcher}", self.fact())
    }

    fn holds(self, who: Asker, lamp: usize) -> bool {
        let within = |value: i64, low: i64, high: i64| low <= value && value <= high;
        match self {
            Asks::Light(low, high) => who.light.is_some_and(|light| within(light, low, high)),
            Asks::Room(room) => who.room == Some(room),
            Asks::NotRoom(room) => who.room.is_some_and(|known| known != room),
            Asks::Wet(yes) => who.wet == yes,
            Asks::LightKnown(yes) => who.light.is_some() == yes,
            Asks::RoomKnown(yes) => who.room.is_some() == yes,
            Asks::Wishes(how, bits) => who.wishes.is_some_and(|wishes| match how {
                0 => wishes & bits == bits,
                1 => wishes & bits != 0,
                _ => wishes & bits == 0,
            }),
            Asks::Bright(yes) => who.light.is_some_and(|light| (light >= 4) == yes),
            Asks::Gives(low, high) => within(LAMPS[lamp], low, high),
            Asks::More(low, high) => who
                .light
                .is_some_and(|light| within(LAMPS[lamp] + HIGHEST - light, low, high)),
        }
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Does {
    Points(i64),
    RuleOut,
    Caution(bool),
}

#[derive(Clone, Debug)]
struct Stated {
    all: Vec<Asks>,
    any: Vec<Asks>,
    does: Does,
}

impl Stated {
    fn holds(&self, who: Asker, lamp: usize) -> bool {
        self.all.iter().all(|one| one.holds(who, lamp))
            && (self.any.is_empty() || self.any.iter().any(|one| one.holds(who, lamp)))
    }

    fn written(&self, id: usize) -> String {
        let mut parts: Vec<String> = self.all.iter().map(|one| one.written()).collect();
        if !self.any.is_empty() {
            let any: Vec<String> = self
                .any
                .iter()
                .map(|one| format!("{{ {} }}", one.written()))
                .collect();
            parts.push(format!("any_of: [{}]", any.join(", ")));
        }
        let does = match self.does {
            Does::Points(points) => format!("points: {points}"),
            Does::RuleOut => "rule_out: true".to_owned(),
            Does::Caution(true) => "caution: serious".to_owned(),
            Does::Caution(false) => "caution: mild".to_owned(),
        };
        let when = if parts.is_empty() {
            String::new()
        } else {
            format!("when: {{ {} }}, ", parts.join(", "))
        };
        format!("  - {{ id: r{id}, {when}{does}, because: It is so., source: own choice }}\n")
    }
}

fn asks() -> impl Strategy<Value = Asks> {
    let pair = |lowest: i64, highest: i64| {
        (lowest..=highest, lowest..=highest).prop_map(|(a, b)| (a.min(b), a.max(b)))
    };
    prop_oneof![
        3 => pair(0, HIGHEST).prop_map(|(low, high)| Asks::Light(low, high)),
        1 => (0..3i64).prop_map(Asks::Room),
        1 => (0..3i64).prop_map(Asks::NotRoom),
        1 => any::<bool>().prop_map(Asks::Wet),
        2 => (0..3u8, 1..8i64).prop_map(|(how, bits)| Asks::Wishes(how, bits)),
        1 => any::<bool>().prop_map(Asks::LightKnown),
        1 => any::<bool>().prop_map(Asks::RoomKnown),
        2 => any::<bool>().prop_map(Asks::Bright),
        2 => pair(0, HIGHEST).prop_map(|(low, high)| Asks::Gives(low, high)),
        2 => pair(0, 2 * HIGHEST).prop_map(|(low, high)| Asks::More(low, high)),
    ]
}

fn stated() -> impl Strategy<Value = Stated> {
    let does = prop_oneof![
        Just(Does::Points(3)),
        Just(Does::Points(-3)),
        Just(Does::RuleOut),
        any::<bool>().prop_map(Does::Caution),
    ];
    let all = prop::collection::vec(asks(), 0..4);
    let any = prop_oneof![2 => Just(Vec::new()), 1 => prop::collection::vec(asks(), 2..4)];
    (all, any, does).prop_map(|(mut all, any, does)| {
        // A fact is asked once on one level.
        let mut seen = BTreeSet::new();
        all.retain(|one| seen.insert(one.fact()));
        Stated { all, any, does }
    })
}

/// The shop's facts, for the checks.
struct Lamps(Arc<Vocabulary>);

fn vocabulary() -> Arc<Vocabulary> {
    let number = |lowest, highest| Kind::Number {
        notation: Notation::Count,
        lowest,
        highest,
    };
    let fact = |name, kind, origin: Origin| Fact {
        name,
        meaning: "a fact of the test",
        kind,
        origin,
        from: "the test",
        subject: (!origin.is_scalar()).then_some("lamp"),
    };
    let facts = vec![
        fact("room.light", number(0, HIGHEST), Origin::Answer),
        fact("room.kind", Kind::Choice(ROOMS), Origin::Answer),
        fact("room.wet", Kind::Flag, Origin::Answer),
        fact("room.wishes", Kind::Set(WISHES), Origin::Answer),
        fact("room.bright", Kind::Flag, Origin::Worked),
        fact("lamp.gives", number(0, HIGHEST), Origin::Candidate),
        fact("lamp.more", number(0, 2 * HIGHEST), Origin::Derived),
    ];
    Arc::new(Vocabulary::new(facts).unwrap())
}

impl Realm for Lamps {
    fn vocabulary(&self) -> &Vocabulary {
        &self.0
    }

    fn behind(&self, fact: FactId) -> Vec<FactId> {
        match self.0.fact(fact).name {
            "room.bright" | "lamp.more" => vec![self.0.id("room.light").unwrap()],
            "lamp.gives" => Vec::new(),
            _ => vec![fact],
        }
    }

    fn range(&self, _subject: &str, fact: FactId) -> Interval {
        match self.0.fact(fact).name {
            "room.light" => Interval::between(0, HIGHEST).or_unknown(),
            "room.kind" => Interval::between(0, 2).or_unknown(),
            "room.wishes" => Interval::between(0, 7).or_unknown(),
            _ => Interval::either(),
        }
    }

    fn candidates(&self, _subject: &str) -> usize {
        LAMPS.len()
    }

    fn values(
        &self,
        _subject: &str,
        candidate: Option<usize>,
        free: &[FactId],
        area: &[Interval],
        wanted: &[FactId],
    ) -> Vec<Interval> {
        let given = |fact: FactId| {
            free.iter()
                .position(|&known| known == fact)
                .map(|place| area[place])
        };
        let light = self
            .0
            .id("room.light")
            .and_then(given)
            .unwrap_or(Interval::NOT_KNOWN);
        let gives = Interval::point(LAMPS[candidate.unwrap_or(0)]);
        let value = |&fact: &FactId| match self.0.fact(fact).name {
            "room.bright" => light.is_at_least(Interval::point(4)),
            "lamp.more" => gives.plus(Interval::point(HIGHEST)).minus(light),
            "lamp.gives" => gives,
            _ => given(fact).unwrap_or(Interval::NOT_KNOWN),
        };
        wanted.iter().map(value).collect()
    }
}

/// What a finding says, in a form that both sides can write.
fn told(rules: &RuleSet, finding: &Finding) -> String {
    let ids: Vec<&str> = finding
        .rules()
        .iter()
        .map(|&rule| rules.rule(rule).id())
        .collect();
    format!("{} {}", finding.kind().words(), ids.join(" "))
}

/// The same by trying every case.
fn by_trying(rules: &[Stated]) -> BTreeSet<String> {
    let everybody = everybody();
    let points: Vec<(Asker, usize)> = everybody
        .iter()
        .flat_map(|&who| (0..LAMPS.len()).map(move |lamp| (who, lamp)))
        .collect();
    let held: Vec<Vec<bool>> = rules
        .iter()
        .map(|rule| {
            points
                .iter()
                .map(|&(who, lamp)| rule.holds(who, lamp))
                .collect()
        })
        .collect();
    let within =
        |one: usize, other: usize| held[one].iter().zip(&held[other]).all(|(a, b)| !a || *b);
    let lives = |one: usize| held[one].iter().any(|held| *held);
    let mut found = BTreeSet::new();
    for one in 0..rules.len() {
        let asks = !rules[one].all.is_empty() || !rules[one].any.is_empty();
        if !lives(one) {
            found.insert(format!("never true r{one}"));
            continue;
        }
        if asks && held[one].iter().all(|held| *held) {
            found.insert(format!("always true r{one}"));
        }
        for other in (0..rules.len()).filter(|&other| other != one && lives(other)) {
            let (does, does_other) = (rules[one].does, rules[other].does);
            if one < other && does == does_other && held[one] == held[other] {
                found.insert(format!("duplicate r{one} r{other}"));
            }
            if !within(one, other) {
                continue;
            }
            match (does, does_other) {
                (Does::Points(points), Does::RuleOut) if points > 0 => {
                    found.insert(format!("contradictory r{one} r{other}"));
                }
                // The same all the way is a duplicate.
                (Does::RuleOut, Does::RuleOut) if within(other, one) => {}
                (_, Does::RuleOut) | (Does::Caution(false), Does::Caution(true)) => {
                    found.insert(format!("contained r{one} r{other}"));
                }
                _ => {}
            }
        }
    }
    // Nobody is left a lamp: one rule alone for somebody, else all together.
    let outs: Vec<usize> = (0..rules.len())
        .filter(|&one| rules[one].does == Does::RuleOut && lives(one))
        .collect();
    let leaves_none = |outs: &[usize]| {
        everybody.iter().any(|&who| {
            (0..LAMPS.len()).all(|lamp| outs.iter().any(|&one| rules[one].holds(who, lamp)))
        })
    };
    let alone: Vec<usize> = outs
        .iter()
        .copied()
        .filter(|&one| leaves_none(&[one]))
        .collect();
    for one in &alone {
        found.insert(format!("none left r{one}"));
    }
    if alone.is_empty() && outs.len() > 1 && leaves_none(&outs) {
        let ids: Vec<String> = outs.iter().map(|one| format!("r{one}")).collect();
        found.insert(format!("none left {}", ids.join(" ")));
    }
    found
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn findings_agree_with_trying_everything(rules in prop::collection::vec(stated(), 1..8)) {
        let mut text = "subjects:\n  - { id: lamp, kind: choice, meaning: Which lamp. }\nsubject: lamp\nrules:\n".to_owned();
        for (id, rule) in rules.iter().enumerate() {
            text.push_str(&rule.written(id));
        }
        let document = Document::parse("toy.yaml", text.as_bytes(), Format::Yaml).unwrap();
        let vocabulary = vocabulary();
        let set = RuleSet::read(&vocabulary, &[document]).map_err(|faults| TestCaseError::fail(format!("{faults}\n{text}")))?;
        let realm = Lamps(vocabulary);
        let findings = check_rules(&set, &realm);
        prop_assert!(findings.not_settled.is_empty());
        let ours: BTreeSet<String> = findings.findings.iter().map(|finding| told(&set, finding)).collect();
        prop_assert_eq!(ours, by_trying(&rules), "{}", text);
        for finding in &findings.findings {
            let Some(example) = finding.example() else { continue };
            let value = |name: &str| {
                let fact = realm.0.id(name).unwrap();
                example.values.iter().find(|(known, _)| *known == fact).map(|&(_, value)| value)
            };
            prop_assert!(example.values.iter().all(|&(_, value)| value != UNKNOWN));
            let who = Asker {
                light: value("room.light"),
                room: value("room.kind"),
                wet: value("room.wet") == Some(1),
                wishes: value("room.wishes"),
            };
            let held = finding.rules().into_iter().map(|rule| {
                let id: usize = set.rule(rule).id()[1..].parse().unwrap();
                id
            });
            if let Some(lamp) = example.candidate {
                for id in held {
                    prop_assert!(rules[id].holds(who, lamp), "{} {:?}\n{}", told(&set, finding), who, text);
                }
            }
        }
    }
}
