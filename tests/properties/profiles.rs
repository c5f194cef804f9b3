//! Random profiles as JSON text, as a counter would send them; those that contradict themselves are left out.

use std::fmt;

use proptest::prelude::*;
use proptest::sample::{select, subsequence};
use serde_json::{Map, Value, json};
use spanwright::bowler::{self, Bowler};
use spanwright::document::{Document, Format};
use spanwright::notation::Notation::{
    self, Angle, ForwardPitch, HoleSize, LateralPitch, Length, Money, Rate, Speed, UpDown, Weight,
};

/// A profile that can be read.
#[derive(Clone)]
pub struct Profile(pub Value);

impl fmt::Debug for Profile {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.0)
    }
}

fn read(value: &Value) -> Option<Bowler> {
    let text = value.to_string();
    Bowler::read(&Document::parse("profile.json", text.as_bytes(), Format::Json).ok()?).ok()
}

impl Profile {
    /// The profile as read; it was read before, when it was made.
    pub fn bowler(&self) -> Bowler {
        read(&self.0).unwrap()
    }

    /// The same profile with another value under a key.
    pub fn with(&self, key: &str, value: Value) -> Profile {
        let mut changed = self.clone();
        changed.0[key] = value;
        changed
    }

    /// The same profile without these keys.
    pub fn without(&self, keys: &[&str]) -> Profile {
        let mut changed = self.clone();
        for key in keys {
            changed.0.as_object_mut().unwrap().remove(*key);
        }
        changed
    }
}

type Entry = BoxedStrategy<Option<(&'static str, Value)>>;

fn word(words: &'static [&'static str]) -> BoxedStrategy<Value> {
    select(words).prop_map(|word| json!(word)).boxed()
}

fn words(all: &'static [&'static str]) -> BoxedStrategy<Value> {
    prop_oneof![
        2 => Just(json!("none")),
        3 => subsequence(all, 1..=3.min(all.len())).prop_map(|some| json!(some)),
    ]
    .boxed()
}

/// A number from a range of whole steps, a few at a time.
fn number(notation: Notation, lowest: i64, highest: i64, step: i64) -> BoxedStrategy<Value> {
    (lowest / step..=highest / step)
        .prop_map(move |n| json!(notation.write(n * step)))
        .boxed()
}

fn whole(lowest: i64, highest: i64) -> BoxedStrategy<Value> {
    (lowest..=highest)
        .prop_map(|n| json!(n.to_string()))
        .boxed()
}

fn flag() -> BoxedStrategy<Value> {
    any::<bool>().prop_map(|yes| json!(yes)).boxed()
}

/// Told mostly; else asked and not known, or not asked.
fn entry(key: &'static str, told: BoxedStrategy<Value>) -> Entry {
    prop_oneof![
        6 => told.prop_map(move |value| Some((key, value))),
        1 => Just(Some((key, json!("unknown")))),
        2 => Just(None),
    ]
    .boxed()
}

/// Told now and then.
fn rare(key: &'static str, told: BoxedStrategy<Value>) -> Entry {
    prop_oneof![1 => told.prop_map(move |value| Some((key, value))), 5 => Just(None)].boxed()
}

/// Always told.
fn sure(key: &'static str, told: BoxedStrategy<Value>) -> Entry {
    told.prop_map(move |value| Some((key, value))).boxed()
}

fn map(entries: Vec<Entry>) -> BoxedStrategy<Value> {
    entries
        .prop_map(|entries| {
            let mut map = Map::new();
            for (key, value) in entries.into_iter().flatten() {
                map.insert(key.to_owned(), value);
            }
            Value::Object(map)
        })
        .boxed()
}

fn gauge() -> BoxedStrategy<Value> {
    prop_oneof![9 => number(HoleSize, 36, 76, 1), 1 => number(HoleSize, 20, 96, 1)].boxed()
}

fn span(
    grip: Option<&'static str>,
    finger: &'static str,
    lowest: i64,
    highest: i64,
) -> BoxedStrategy<Value> {
    let along = prop_oneof![5 => Just("arc"), 1 => Just("chord")];
    let kind = prop_oneof![9 => Just("full"), 1 => Just("cut")];
    (number(Length, lowest, highest, 2), along, kind)
        .prop_map(move |(value, along, kind)| {
            let mut span =
                json!({ "finger": finger, "value": value, "kind": kind, "along": along });
            if let Some(grip) = grip {
                span["grip"] = json!(grip);
            }
            span
        })
        .boxed()
}

/// Spans of one grip, of the other, or of both.
fn spans() -> BoxedStrategy<Value> {
    let pair = |grip, lowest, highest| {
        (
            span(Some(grip), "middle", lowest, highest),
            span(Some(grip), "ring", lowest, highest),
        )
    };
    (
        pair("conventional", 160, 256),
        pair("fingertip", 220, 320),
        0..3,
    )
        .prop_map(|((a, b), (c, d), which)| match which {
            0 => json!([a, b]),
            1 => json!([c, d]),
            _ => json!([a, b, c, d]),
        })
        .boxed()
}

/// An oval, now and then one that nobody measured to the end.
fn oval() -> BoxedStrategy<Value> {
    map(vec![
        sure("wide", number(HoleSize, 50, 80, 1)),
        entry("narrow", number(HoleSize, 36, 60, 1)),
        entry("angle", number(Angle, 0, 1800, 50)),
    ])
}

fn depths() -> BoxedStrategy<Value> {
    let depth = || number(Length, 48, 200, 4);
    map(vec![
        entry("thumb", depth()),
        entry("middle", depth()),
        entry("ring", depth()),
    ])
}

/// What was found in a fit check.
fn fit_check() -> BoxedStrategy<Value> {
    map(vec![
        entry("symptoms", words(bowler::SYMPTOMS)),
        entry("rest_test", word(bowler::REST_TESTS)),
        rare("joint_line", number(Length, 0, 32, 2)),
        rare("event_in", whole(0, 20)),
    ])
}

fn used_ball() -> BoxedStrategy<Value> {
    let grip = map(vec![
        entry("over", number(LateralPitch, -256, 256, 16)),
        entry("up", number(UpDown, -256, 256, 16)),
        entry("turned", number(Angle, 0, 3600, 150)),
    ]);
    map(vec![
        entry("holes", word(bowler::OLD_HOLES)),
        entry("new_grip", grip),
    ])
}

fn measured() -> BoxedStrategy<Value> {
    let thumb = map(vec![
        sure("cold", gauge()),
        rare("warm", gauge()),
        entry("flexibility", word(bowler::FLEXIBILITIES)),
        entry("lies", word(bowler::LIES)),
        rare("length", number(Length, 96, 192, 4)),
        rare("oval", oval()),
    ]);
    let finger = || map(vec![sure("cold", gauge()), rare("warm", gauge())]);
    map(vec![
        entry("thumb", thumb),
        entry("middle", finger()),
        entry("ring", finger()),
        entry("spans", spans()),
        rare("crease_difference", number(Length, 0, 32, 4)),
        entry("finger_joints", word(bowler::FLEXIBILITIES)),
        entry("finger_reach", number(Length, 64, 160, 4)),
        rare("slim_fingers", flag()),
    ])
}

fn pitches() -> BoxedStrategy<Value> {
    let hole = || {
        map(vec![
            entry("forward", number(ForwardPitch, -40, 40, 4)),
            entry("lateral", number(LateralPitch, -40, 40, 4)),
        ])
    };
    map(vec![
        entry("thumb", hole()),
        entry("middle", hole()),
        entry("ring", hole()),
    ])
}

fn card() -> BoxedStrategy<Value> {
    let span_pair = (span(None, "middle", 180, 320), span(None, "ring", 180, 320));
    let complaint = prop_oneof![Just(json!("none")), Just(json!("the thumb sticks"))].boxed();
    map(vec![
        entry("works", flag()),
        entry("grip", word(bowler::GRIPS)),
        entry("spans", span_pair.prop_map(|(a, b)| json!([a, b])).boxed()),
        entry("bridge", number(Length, 12, 28, 2)),
        entry("pitches", pitches()),
        entry(
            "bores",
            map(vec![
                entry("thumb", number(HoleSize, 50, 76, 1)),
                entry("middle", number(HoleSize, 40, 62, 1)),
                entry("ring", number(HoleSize, 40, 62, 1)),
            ]),
        ),
        entry("slug", number(HoleSize, 80, 96, 1)),
        entry("insert", number(HoleSize, 60, 64, 1)),
        rare("tapes", whole(0, 4)),
        rare("depths", depths()),
        rare("oval", oval()),
        rare("sleeve", flag()),
        rare("weight", number(Weight, 800, 1600, 25)),
        rare("complaint", complaint),
    ])
}

fn owned() -> BoxedStrategy<Value> {
    let ball = map(vec![
        entry("cover", word(bowler::COVERS)),
        entry("weight", number(Weight, 800, 1600, 100)),
        sure("games", whole(100, 400)),
        entry("games_since_service", whole(0, 100)),
        rare("spare", flag()),
    ]);
    prop_oneof![1 => Just(json!("none")), 1 => prop::collection::vec(ball, 1..4).prop_map(|balls| json!(balls))].boxed()
}

fn person() -> Vec<Entry> {
    let rev_rate = prop_oneof![number(Rate, 60, 500, 10), word(bowler::REV_LEVELS)].boxed();
    let at = select(vec!["release", "pins"])
        .prop_map(|at| json!(at))
        .boxed();
    vec![
        sure("hand", word(bowler::HANDS)),
        entry("delivery", word(bowler::DELIVERIES)),
        entry(
            "thumb",
            prop_oneof![4 => Just(json!("in")), 1 => Just(json!("out"))].boxed(),
        ),
        entry("intent", word(bowler::INTENTS)),
        entry("curve", word(bowler::CURVES)),
        entry("experience", word(bowler::EXPERIENCES)),
        entry("games_a_week", whole(0, 30)),
        entry(
            "age",
            prop_oneof![1 => whole(4, 17), 2 => whole(18, 95)].boxed(),
        ),
        entry("body_weight", number(Weight, 4000, 28000, 100)),
        entry(
            "ball_now",
            map(vec![
                sure("whose", word(&["house", "own"])),
                entry("weight", number(Weight, 600, 1600, 100)),
            ]),
        ),
        entry(
            "hold_test",
            map(vec![
                entry("passed", number(Weight, 600, 1200, 100)),
                entry("failed", number(Weight, 1000, 1600, 100)),
            ]),
        ),
        entry("aches", words(bowler::ACHES)),
        entry("injuries", words(bowler::INJURIES)),
        entry("skin", word(bowler::SKINS)),
        entry("rev_rate", rev_rate),
        entry(
            "speed",
            map(vec![
                sure("value", number(Speed, 80, 220, 5)),
                sure("where", at),
            ]),
        ),
        rare("rotation", number(Angle, 0, 900, 50)),
        rare("tilt", number(Angle, 0, 400, 10)),
        rare(
            "pap",
            map(vec![
                entry("over", number(Length, 192, 384, 8)),
                entry("up", number(UpDown, -96, 96, 8)),
            ]),
        ),
        entry("lanes", words(bowler::LANES)),
        entry("budget", number(Money, 5_000, 40_000, 500)),
        entry("owned", owned()),
    ]
}

fn wishes() -> Vec<Entry> {
    vec![
        rare("target_weight", number(Weight, 600, 1600, 100)),
        rare("cover_wish", word(bowler::COVERS)),
        rare("colour_wish", word(bowler::COLOURS)),
        rare("wants_dearest", flag()),
        rare("wrist_support", flag()),
        rare("present", flag()),
        rare("absent", flag()),
        rare(
            "settled",
            map(vec![
                entry("weight", number(Weight, 600, 1600, 100)),
                entry("grip", word(bowler::GRIPS)),
                rare("sleeve", flag()),
            ]),
        ),
        entry("measured", measured()),
        entry("fit_card", card()),
        rare("fit_check", fit_check()),
        rare("used_ball", used_ball()),
    ]
}

/// Any profile that can be read.
pub fn profile() -> BoxedStrategy<Profile> {
    let mut entries = person();
    entries.extend(wishes());
    map(entries)
        .prop_filter_map("the profile contradicts itself", |mut value| {
            if value["thumb"] == "out"
                && let Some(hand) = value.get_mut("measured").and_then(Value::as_object_mut)
            {
                hand.remove("thumb");
            }
            read(&value)?;
            Some(Profile(value))
        })
        .boxed()
}
