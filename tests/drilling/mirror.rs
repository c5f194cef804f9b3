//! A left hand's drilled ball is the mirror image: the same numbers, other words. A ball that curves away keeps its holes.

use proptest::prelude::*;
use serde_json::{Value, json};
use spanwright::advice::Advice;
use spanwright::notation::Notation::{Angle, LateralPitch};
use spanwright::report;
use spanwright::rules::Audience;

use crate::profiles::profile;
use crate::{SHOP, advise, bowler, cases, drilling, measured, with_card};

/// The same bowler in a mirror.
fn mirrored(profile: &Value) -> Value {
    let mut image = profile.clone();
    let other = if profile["hand"] == "left" {
        "right"
    } else {
        "left"
    };
    image["hand"] = json!(other);
    let mut laterals: Vec<String> = ["thumb", "middle", "ring"]
        .iter()
        .map(|digit| format!("/fit_card/pitches/{digit}/lateral"))
        .collect();
    laterals.push("/used_ball/new_grip/over".to_owned());
    for place in laterals {
        if let Some(lateral) = image.pointer_mut(&place)
            && let Ok(steps) = LateralPitch.read(lateral.as_str().unwrap_or_default())
        {
            *lateral = json!(LateralPitch.write(-steps));
        }
    }
    for (place, turn) in [
        ("/fit_card/oval/angle", 1800),
        ("/measured/thumb/oval/angle", 1800),
        ("/used_ball/new_grip/turned", 3600),
    ] {
        if let Some(angle) = image.pointer_mut(place)
            && let Ok(tenths) = Angle.read(angle.as_str().unwrap_or_default())
        {
            *angle = json!(Angle.write(turn - tenths));
        }
    }
    image
}

/// Words in a mirror.
fn turned(words: &str) -> String {
    // Two halves are weighed against each other whichever hand it is.
    if words.starts_with("Weigh right") {
        return words.to_owned();
    }
    let lateral = words.contains("lateral pitch");
    let turn = |word: &str| {
        match word {
            "left" => "right",
            "right" => "left",
            "clockwise" => "counter-clockwise",
            "counter-clockwise" => "clockwise",
            "L" if lateral => "R",
            "R" if lateral => "L",
            same => same,
        }
        .to_owned()
    };
    let is_end = |letter: char| !(letter.is_alphanumeric() || letter == '-');
    let mut image = String::new();
    for piece in words.split_inclusive(is_end) {
        let word = piece.trim_end_matches(is_end);
        image.push_str(&turn(word));
        image.push_str(&piece[word.len()..]);
    }
    image
}

/// What is computed, as the answer document has it: the hand apart, words turned if asked.
fn computed(advice: &Advice, turn: bool) -> Value {
    let text = report::json(advice, Audience::Fitter);
    let answer: Value = serde_json::from_str(&text).unwrap();
    let mut computed = answer["drilling"].clone();
    if let Some(fields) = computed.as_object_mut() {
        fields.remove("left_hand");
    }
    if turn {
        each_text(&mut computed, &|text| *text = turned(text));
    }
    computed
}

fn each_text(value: &mut Value, change: &dyn Fn(&mut String)) {
    match value {
        Value::String(text) => change(text),
        Value::Array(list) => list.iter_mut().for_each(|item| each_text(item, change)),
        Value::Object(map) => map.values_mut().for_each(|item| each_text(item, change)),
        _ => {}
    }
}

/// Where two documents part, for reading.
fn parts(one: &Value, other: &Value, at: &str) -> Vec<String> {
    match (one, other) {
        (Value::Array(a), Value::Array(b)) if a.len() == b.len() => {
            let pairs = a.iter().zip(b).enumerate();
            pairs
                .flat_map(|(i, (a, b))| parts(a, b, &format!("{at}/{i}")))
                .collect()
        }
        (Value::Object(a), Value::Object(b)) if a.len() == b.len() => a
            .iter()
            .flat_map(|(key, a)| parts(a, &b[key], &format!("{at}/{key}")))
            .collect(),
        _ if one == other => Vec::new(),
        _ => vec![format!("{at}: {one} against {other}")],
    }
}

#[test]
fn words_are_turned_and_numbers_are_not() {
    let right = advise(&with_card());
    let left = advise(&mirrored(&with_card()));
    assert!(drilling(&left).left_hand() && !drilling(&right).left_hand());
    let differ = parts(&computed(&left, true), &computed(&right, false), "");
    assert!(differ.is_empty(), "{differ:#?}");
    // The words are there to be turned.
    assert!(!parts(&computed(&left, false), &computed(&right, false), "").is_empty());
}

#[test]
fn the_text_says_the_other_side_too() {
    let read = |profile: &Value| {
        let advice = advise(profile);
        let look = report::Look::plain(Audience::Fitter).wide(400);
        let text = report::text(&advice, &look);
        let start = text.find("The drilled ball, computed").unwrap();
        let end = text.find("How the core turns").unwrap();
        text[start..end].to_owned()
    };
    let (right, left) = (read(&with_card()), read(&mirrored(&with_card())));
    for (one, other) in right.lines().zip(left.lines()) {
        // A letter for the side is a lateral's here.
        let other = turned(other)
            .replace("64 L.", "64 *.")
            .replace("64 R.", "64 L.")
            .replace("64 *.", "64 R.");
        assert_eq!(one, other);
    }
}

proptest! {
    #![proptest_config(cases(64))]

    #[test]
    fn any_left_hand_is_a_right_hand_in_a_mirror(profile in profile()) {
        let (here, there) = (advise(&profile.0), advise(&mirrored(&profile.0)));
        let differ = parts(&computed(&here, true), &computed(&there, false), "");
        prop_assert!(differ.is_empty(), "{differ:#?}");
    }

    #[test]
    fn any_old_ball_too(profile in profile()) {
        let used = |profile: &Value| SHOP.fit_used(&bowler(profile)).ok();
        let (Some(here), Some(there)) = (used(&profile.0), used(&mirrored(&profile.0))) else {
            return Ok(());
        };
        let differ = parts(&computed(&here, true), &computed(&there, false), "");
        prop_assert!(differ.is_empty(), "{differ:#?}");
    }

    #[test]
    fn a_ball_that_curves_away_keeps_its_holes(profile in profile()) {
        let profile = profile.without(&["settled"]);
        let of = |curve: &str| advise(&profile.with("curve", json!(curve)).0);
        let (usual, away) = (of("usual"), of("away"));
        let (Some(usual), Some(away)) = (usual.drilling(), away.drilling()) else {
            prop_assert!(usual.drilling().is_none() == away.drilling().is_none());
            return Ok(());
        };
        prop_assert_eq!(usual.holes(), away.holes());
        prop_assert_eq!(usual.webs(), away.webs());
    }
}

/// Both kinds of layout, on one and the same ball.
#[test]
fn a_ball_that_curves_away_mirrors_its_layout() {
    let points = |curve: &str, pap: Option<Value>| {
        let mut profile = measured();
        profile["curve"] = json!(curve);
        if let Some(pap) = pap {
            profile["pap"] = pap;
        }
        let advice = SHOP.fit(&bowler(&profile), "hawkbit@14").unwrap();
        let layout = drilling(&advice).layout().clone().unwrap();
        let named = |name: &str| layout.points().iter().find(|p| p.0 == name).map(|p| p.1);
        (
            layout.kind().to_owned(),
            named("pin").unwrap(),
            named("PAP"),
        )
    };
    let near = |a: (f64, f64), b: (f64, f64)| (a.0 - b.0).abs() < 1e-9 && (a.1 - b.1).abs() < 1e-9;
    for pap in [None, Some(json!({ "over": "5 in", "up": "1/2 up" }))] {
        let usual = points("usual", pap.clone());
        let away = points("away", pap.clone());
        assert_eq!(usual.0, away.0);
        assert!(usual.1.0.abs() > 0.1, "{usual:?}");
        assert!(near((-usual.1.0, usual.1.1), away.1), "{usual:?} {away:?}");
        assert_eq!(usual.2.is_some(), pap.is_some());
        let turned = usual.2.map(|(over, up)| (-over, up));
        assert!(
            turned.zip(away.2).is_none_or(|(a, b)| near(a, b)),
            "{usual:?} {away:?}"
        );
    }
}
