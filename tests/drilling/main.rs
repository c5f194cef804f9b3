//! The drilled ball that an advice computes: refused where it must be, mirrored for the other hand, open where nobody measured.

// Helpers of tests may stop a test just as tests may.
#![allow(clippy::unwrap_used, clippy::panic)]

mod bench;
mod core;
#[path = "../properties/count.rs"]
mod count;
mod document;
mod mirror;
mod old;
#[allow(dead_code)]
#[path = "../properties/profiles.rs"]
mod profiles;
mod refusals;
mod shelf;
mod texts;
mod thumbs;

use std::path::Path;
use std::sync::LazyLock;

use count::cases;
use proptest::prelude::*;
use serde_json::{Value, json};
use spanwright::advice::{Advice, Drilling, Shop};
use spanwright::bowler::Bowler;
use spanwright::document::{Document, Format};

/// The demo shop, read once.
static SHOP: LazyLock<Shop> = LazyLock::new(|| Shop::demo().unwrap());

/// Bowlers of the demo for whom something is computed.
const DEMO: [&str; 7] = [
    "first-ball",
    "straight-only",
    "league-tired-ball",
    "left-handed-child",
    "two-handed-no-thumb",
    "sore-thumb",
    "backup-bowler",
];

fn bowler(profile: &Value) -> Bowler {
    let text = profile.to_string();
    Document::parse("profile.json", text.as_bytes(), Format::Json)
        .and_then(|document| Bowler::read(&document))
        .unwrap_or_else(|faults| panic!("{faults}"))
}

fn advise(profile: &Value) -> Advice {
    SHOP.advise(&bowler(profile)).unwrap()
}

fn demo(name: &str) -> Advice {
    let file = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("catalog-demo/bowlers")
        .join(format!("{name}.yaml"));
    SHOP.advise(&Bowler::read(&Document::read(&file).unwrap()).unwrap())
        .unwrap()
}

fn drilling(advice: &Advice) -> &Drilling {
    advice.drilling().unwrap()
}

/// Somebody whose whole hand is measured and who holds 14 lb. Invented.
fn measured() -> Value {
    json!({
        "hand": "right", "delivery": "one hand", "thumb": "in", "intent": "hook", "curve": "usual",
        "experience": "league", "games_a_week": "6", "age": "36", "aches": "none", "injuries": "none",
        "skin": "normal", "ball_now": { "whose": "own", "weight": "14 lb" },
        "hold_test": { "passed": "14 lb", "failed": "16 lb" },
        "measured": {
            "thumb": { "cold": "30/32", "flexibility": "normal", "lies": "halfway", "length": "2 1/4" },
            "middle": { "cold": "25/32" },
            "ring": { "cold": "25/32" },
            "spans": [
                { "grip": "fingertip", "finger": "middle", "value": "4 1/4", "kind": "full", "along": "arc" },
                { "grip": "fingertip", "finger": "ring", "value": "4 1/4", "kind": "full", "along": "arc" },
            ],
            "finger_joints": "normal",
        },
    })
}

/// The same hand with the card of a fit that works, every number of it told.
fn with_card() -> Value {
    let mut profile = measured();
    profile["fit_card"] = json!({
        "works": true, "grip": "fingertip", "ball": "the blue ball",
        "spans": [
            { "finger": "middle", "value": "4 1/4", "kind": "full", "along": "arc" },
            { "finger": "ring", "value": "4 1/4", "kind": "full", "along": "arc" },
        ],
        "bridge": "1/4",
        "pitches": {
            "thumb": { "forward": "0", "lateral": "0" },
            "middle": { "forward": "1/8 R", "lateral": "3/8 L" },
            "ring": { "forward": "1/8 R", "lateral": "3/8 R" },
        },
        "bores": { "thumb": "30/32", "middle": "25/32", "ring": "25/32" },
        "depths": { "thumb": "2 1/4", "middle": "1 1/8", "ring": "1 1/8" },
        "slug": "1 1/4", "insert": "31/32", "weight": "14 lb",
    });
    profile
}

/// The profile with another value at a place such as `/fit_card/bridge`.
fn with(profile: &Value, place: &str, value: Value) -> Value {
    let mut changed = profile.clone();
    *changed
        .pointer_mut(place)
        .unwrap_or_else(|| panic!("{place}")) = value;
    changed
}

/// A random profile in which nothing is left unsaid that a hole hangs on: what it doesn't tell is the whole hand's and card's.
fn whole() -> BoxedStrategy<Value> {
    profiles::profile()
        .prop_filter_map("the profile contradicts itself", |random| {
            let mut filled = with_card();
            fill(
                &mut filled,
                random.without(&["present", "absent", "thumb"]).0,
            );
            let text = filled.to_string();
            let document = Document::parse("profile.json", text.as_bytes(), Format::Json).ok()?;
            Bowler::read(&document).ok()?;
            Some(filled)
        })
        .boxed()
}

/// Takes over what is told.
fn fill(base: &mut Value, told: Value) {
    match told {
        Value::Object(map) if base.is_object() => {
            for (key, value) in map {
                fill(&mut base[&key], value);
            }
        }
        Value::String(word) if word == "unknown" && !base.is_null() => {}
        told => *base = told,
    }
}
