//! Holes that would break the ball, fit nobody or break a rule are refused with the numbers, and each single mend mends.

use proptest::prelude::*;
use rstest::rstest;
use serde_json::{Value, json};
use spanwright::bowler::Bowler;
use spanwright::document::{Document, Format};
use spanwright::notation::Notation::{self, ForwardPitch, HoleSize, LateralPitch, Length};

use crate::{SHOP, advise, cases, drilling, with, with_card};

/// Two fingertip holes without outward lean and a narrow bridge: they run together under the surface (case
/// a-m4-web-too-thin, from memory).
fn too_thin() -> Value {
    let upright = |profile: &Value, digit: &str| {
        with(
            profile,
            &format!("/fit_card/pitches/{digit}"),
            json!({ "forward": "0", "lateral": "0" }),
        )
    };
    upright(&upright(&with_card(), "middle"), "ring")
}

/// A mend's words taken apart: where the card says it, how it is written, what it was and what it should be.
struct Mend {
    place: String,
    notation: Notation,
    from: i64,
    to: i64,
}

fn mend(words: &str) -> Mend {
    let (change, rest) = words.split_once(" (now ").unwrap();
    let (now, _) = rest.split_once("): then ").unwrap();
    let digit = change.split(' ').next().unwrap();
    let (what, notation, place) = if let Some(to) = change.strip_prefix("bridge ") {
        (to, Length, "/fit_card/bridge".to_owned())
    } else if let Some((_, to)) = change.split_once(" depth ") {
        (to, Length, format!("/fit_card/depths/{digit}"))
    } else if let Some((_, to)) = change.split_once(" lateral pitch ") {
        (
            to,
            LateralPitch,
            format!("/fit_card/pitches/{digit}/lateral"),
        )
    } else if let Some((_, to)) = change.split_once(" forward pitch ") {
        (
            to,
            ForwardPitch,
            format!("/fit_card/pitches/{digit}/forward"),
        )
    } else if let Some((_, to)) = change.split_once(" hole as cut ") {
        let part = if digit == "thumb" { "slug" } else { "insert" };
        (to, HoleSize, format!("/fit_card/{part}"))
    } else {
        panic!("{words}")
    };
    Mend {
        place,
        notation,
        from: notation.read(now).unwrap(),
        to: notation.read(what).unwrap(),
    }
}

#[test]
fn a_thin_wall_is_refused_with_its_numbers() {
    let advice = advise(&too_thin());
    let computed = drilling(&advice);
    assert!(!advice.drill_today());
    assert!(computed.is_refused());
    let web = &computed.webs()[0];
    assert_eq!(web.between(), "middle and ring");
    assert!(web.least() < web.limit());
    let what = computed.refusals()[0].what();
    assert!(what.contains("middle and ring"), "{what}");
    let least = match web.least() > 0.0 {
        true => format!("{:.3} in of wall", web.least()),
        false => "no wall remains".to_owned(),
    };
    assert!(what.contains(&least), "{what}");
    // The least wall: rules/bench.least_web.yaml, from memory.
    assert!(what.contains("1/8 in is the least"), "{what}");
}

/// Derived: the axes of two upright holes meet at the ball's centre, so the wall shrinks all the way down and is gone where
/// the holes meet; a hole that ends above that place keeps some wall, one that ends below keeps none.
#[test]
fn the_depth_where_two_holes_meet_is_told() {
    let deep = |depth: &str| {
        let profile = with(&too_thin(), "/fit_card/depths/middle", json!(depth));
        let advice = advise(&with(&profile, "/fit_card/depths/ring", json!(depth)));
        drilling(&advice).webs()[0].clone()
    };
    let meets = deep("1 1/8").breaks_at().unwrap();
    assert!(meets > 0.2 && meets < 4.0, "{meets}");
    // A quarter of an inch either way is more than a step of depth.
    let around = |by: f64| Length.write(libm_round((meets + by) * 16.0) * 4);
    let (shallow, deeper) = (deep(&around(-0.25)), deep(&around(0.25)));
    assert!(
        shallow.least() > 0.0 && deeper.least() < 0.0,
        "{shallow:?} {deeper:?}"
    );
    for web in [shallow, deeper] {
        assert!((web.breaks_at().unwrap() - meets).abs() < 1e-6, "{web:?}");
    }
}

fn libm_round(value: f64) -> i64 {
    value.round() as i64
}

fn outward(by: &str, bridge: &str) -> Value {
    let profile = with(&with_card(), "/fit_card/bridge", json!(bridge));
    let middle = with(
        &profile,
        "/fit_card/pitches/middle/lateral",
        json!(format!("{by} L")),
    );
    with(
        &middle,
        "/fit_card/pitches/ring/lateral",
        json!(format!("{by} R")),
    )
}

/// Pairs of holes that one change can mend, and some that want several.
#[rstest]
#[case("1/4", "1/4")]
#[case("5/16", "1/4")]
#[case("3/8", "3/16")]
fn every_mend_mends_and_one_step_less_does_not(#[case] by: &str, #[case] bridge: &str) {
    let profile = outward(by, bridge);
    let advice = advise(&profile);
    assert!(!advice.drill_today());
    let mends = drilling(&advice).refusals()[0].mends();
    for kind in ["bridge", "middle lateral pitch", "ring lateral pitch"] {
        assert!(
            mends.iter().any(|mend| mend.starts_with(kind)),
            "{kind}: {mends:?}"
        );
    }
    each_holds(&profile, mends);
}

/// Each mend alone, written into the card, is enough; a step less of it is not.
fn each_holds(profile: &Value, mends: &[String]) {
    for words in mends {
        let mend = mend(words);
        let tried = |value: i64| {
            let written = mend.notation.write(value);
            drilling(&advise(&with(profile, &mend.place, json!(written)))).is_refused()
        };
        assert!(!tried(mend.to), "{words}");
        let measure = match mend.place.as_str() {
            "/fit_card/bridge" => "bridge",
            place if place.contains("depths") => "middle.depth",
            place if place.ends_with("lateral") => "ring.lateral_pitch",
            place if place.ends_with("forward") => "middle.forward_pitch",
            // Inserts come in stock sizes; the next larger one is the one that was refused.
            _ => continue,
        };
        let step = SHOP.rules().range(measure).step.unwrap();
        let less = mend.to - step * (mend.to - mend.from).signum();
        assert!(
            tried(less),
            "{words}: {} would do",
            mend.notation.write(less)
        );
    }
}

/// A multiple of a measure's step between two ends, in 1/64 in.
fn steps(measure: &str, lowest: i64, highest: i64) -> impl Strategy<Value = i64> + use<> {
    let step = SHOP.rules().range(measure).step.unwrap();
    (lowest / step..=highest / step).prop_map(move |count| count * step)
}

proptest! {
    #![proptest_config(cases(48))]

    #[test]
    fn any_mend_mends(
        bridge in steps("bridge", 12, 24),
        middle in steps("ring.lateral_pitch", 0, 32),
        ring in steps("ring.lateral_pitch", 0, 32),
        forward in steps("middle.forward_pitch", -16, 16),
        deep in steps("middle.depth", 56, 112),
    ) {
        let mut profile = with(&with_card(), "/fit_card/bridge", json!(Length.write(bridge)));
        for (digit, lateral) in [("middle", -middle), ("ring", ring)] {
            let pitches = json!({ "forward": ForwardPitch.write(forward), "lateral": LateralPitch.write(lateral) });
            profile = with(&profile, &format!("/fit_card/pitches/{digit}"), pitches);
            profile = with(&profile, &format!("/fit_card/depths/{digit}"), json!(Length.write(deep)));
        }
        let advice = advise(&profile);
        let thin = drilling(&advice).webs().iter().any(|web| web.least() < web.limit() - 0.01);
        prop_assert!(drilling(&advice).is_refused() || !thin);
        if let [refusal] = drilling(&advice).refusals() {
            each_holds(&profile, refusal.mends());
        }
    }
}

/// Where none is named, not even the farthest that each number goes is enough.
#[test]
fn where_no_single_mend_is_named_none_is_enough() {
    let profile = too_thin();
    assert!(drilling(&advise(&profile)).refusals()[0].mends().is_empty());
    let range = |measure: &str| SHOP.rules().range(measure);
    let outward = range("ring.lateral_pitch").highest.unwrap();
    for (place, written) in [
        (
            "/fit_card/bridge",
            Length.write(range("bridge").highest.unwrap()),
        ),
        (
            "/fit_card/pitches/middle/lateral",
            LateralPitch.write(-outward),
        ),
        (
            "/fit_card/pitches/ring/lateral",
            LateralPitch.write(outward),
        ),
        (
            "/fit_card/depths/ring",
            Length.write(range("ring.depth").lowest.unwrap()),
        ),
    ] {
        let changed = advise(&with(&profile, place, json!(written)));
        assert!(drilling(&changed).is_refused(), "{place} {written}");
    }
}

/// Derived: the middle finger's span and the bridge leave the ring finger no more room than their sum and difference.
#[test]
fn spans_that_close_no_triangle_are_refused_with_what_would() {
    let spans = |ring: &str| {
        let mut profile = with_card();
        profile["fit_card"]["spans"][1]["value"] = json!(ring);
        profile["measured"].as_object_mut().unwrap().remove("spans");
        profile
    };
    let advice = advise(&spans("2"));
    let computed = drilling(&advice);
    assert!(!advice.drill_today() && computed.holes().is_empty());
    let refusal = &computed.refusals()[0];
    assert!(refusal.what().contains("2 in"), "{refusal:?}");
    let (_, range) = refusal.mends()[0].split_once("the ring span is ").unwrap();
    let (shortest, longest) = range.trim_end_matches('.').split_once(" to ").unwrap();
    assert!(Length.read(shortest).unwrap() < Length.read(longest).unwrap());
    for span in [shortest, longest] {
        let advice = advise(&spans(span));
        assert!(!drilling(&advice).holes().is_empty(), "{span}");
    }
    // Spans are set to steps of their own.
    let step = SHOP.rules().range("ring.span").step.unwrap();
    let shorter = Length.write(Length.read(shortest).unwrap() - step);
    assert!(
        drilling(&advise(&spans(&shorter))).holes().is_empty(),
        "{shorter}"
    );
}

/// No gripping hole is wider than 1 9/16 in: USBC specifications, drilling section, edition 01/2021 (rules/standards.yaml,
/// gripping-hole-diameter; published, weak).
#[rstest]
#[case("/fit_card/slug", "1 5/8")]
#[case("/fit_card/bores/thumb", "1 5/8")]
fn a_hole_wider_than_the_rule_is_refused(#[case] place: &str, #[case] size: &str) {
    let mut profile = with(&with_card(), place, json!(size));
    if place.ends_with("thumb") {
        profile["fit_card"].as_object_mut().unwrap().remove("slug");
    }
    let Some(bowler) = read(&profile) else {
        // So wide a bore can't even be written.
        assert!(place.ends_with("thumb"));
        return;
    };
    let advice = SHOP.advise(&bowler).unwrap();
    assert!(!advice.drill_today());
    let refusals = drilling(&advice).refusals();
    let told = refusals
        .iter()
        .any(|refusal| refusal.what().contains("1 5/8"));
    assert!(told, "{refusals:?}");
    assert!(
        refusals
            .iter()
            .all(|refusal| !refusal.mends().is_empty() || refusal.what().contains("Between"))
    );
    assert!(
        !drilling(&advise(&with(
            &with_card(),
            "/fit_card/slug",
            json!("1 1/4")
        )))
        .is_refused()
    );
}

fn read(profile: &Value) -> Option<Bowler> {
    let text = profile.to_string();
    Bowler::read(&Document::parse("profile.json", text.as_bytes(), Format::Json).unwrap()).ok()
}

#[rstest]
#[case("-1")]
#[case("-1 1/8 in")]
#[case("0")]
fn a_depth_below_nothing_cannot_be_written(#[case] depth: &str) {
    assert!(read(&with_card()).is_some());
    for digit in ["thumb", "middle", "ring"] {
        let place = format!("/fit_card/depths/{digit}");
        assert!(
            read(&with(&with_card(), &place, json!(depth))).is_none(),
            "{digit} {depth}"
        );
    }
}

/// A slug narrower than the trade's narrowest (rules/subjects.yaml, own choice) isn't quietly drilled as a wider one.
#[test]
fn a_slug_that_would_be_raised_is_refused() {
    let advice = advise(&with(&with_card(), "/fit_card/slug", json!("1 in")));
    let told = drilling(&advice).refusals().iter();
    let told: Vec<&str> = told.map(|refusal| refusal.what()).collect();
    assert!(
        told.iter()
            .any(|what| what.contains("slug") && what.contains("is the least")),
        "{told:?}"
    );
    assert!(!advice.drill_today());
}
