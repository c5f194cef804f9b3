//! What doesn't go together: clear faults where two answers can't both be right, questions where they might.

use super::contradiction::{Contradiction, contradictions};
use super::hand::Hand;
use super::sheet::Sheet;
use super::span::{Finger, Grip, Span, SpanKind};
use super::words::SYMPTOMS;
use super::{FitCard, OwnedBall, oval};
use crate::notation::Notation;

/// Complaints that a thumb outside the ball can't have.
const OF_THE_THUMB: [&str; 7] = [
    "thumb_hangs",
    "tape_in_or_out",
    "wants_open_thumb",
    "blister_thumb_back",
    "blister_thumb_side",
    "thumb_tip_bruise",
    "thumb_base_callus",
];
/// The most by which the spans to the two fingers differ without a second look, in 1/64 in.
const SPAN_DIFFERENCE: i64 = 16;
/// Ages from which and up to which a body weight is compared with the age, in years.
const GROWN: i64 = 18;
const SMALL: i64 = 8;
/// A grown person lighter, and a small child heavier, than this is asked again, in 0.01 lb. Own choice.
const LIGHT: i64 = 7000;
const HEAVY: i64 = 15000;
/// Below this age a tournament bowler is asked again, in years. Own choice.
const YOUNGEST_IN_TOURNAMENTS: i64 = 8;

/// What the checks look at besides the answers.
pub(super) struct Parts<'a, 'd> {
    pub(super) hand: &'a Hand<'d>,
    pub(super) card: Option<&'a FitCard>,
    pub(super) owned: &'a [OwnedBall],
}

/// Compares the answers with each other.
pub(super) fn check(sheet: &mut Sheet, parts: &Parts) {
    check_values(sheet);
    oval::check(sheet);
    check_thumb(sheet, parts);
    ask_about_delivery(sheet);
    ask_about_curve(sheet);
    ask_about_experience(sheet, parts.owned);
    ask_about_body(sheet);
    ask_about_weights(sheet);
    ask_about_presence(sheet, parts.hand);
    ask_about_pap(sheet);
    ask_about_warm_hands(sheet);
    ask_about_spans(sheet, &parts.hand.spans);
    ask_for_full_spans(sheet, &parts.hand.spans);
    ask_about_card(sheet, parts.card);
}

fn pounds(value: i64) -> String {
    Notation::Weight.write(value)
}

/// Faults where values alone can't go together; what was measured on a thumb is looked at as a whole.
fn check_values(sheet: &mut Sheet) {
    let value = |name: &str| sheet.value(name);
    let found: Vec<Contradiction> = contradictions(&value).collect();
    for one in found {
        let (first, second) = one.between();
        if first == "bowler.thumb" {
            continue;
        }
        if let Some((first, second)) = sheet.both(first, second) {
            let message = one.message_with_line(sheet.line(first.node));
            sheet.contradict(second.node, message, one.help());
        }
    }
}

/// The thumb can't stay out and be fitted as well.
fn check_thumb(sheet: &mut Sheet, parts: &Parts) {
    let Some(thumb) = sheet.found("bowler.thumb").filter(|thumb| thumb.value == 1) else {
        return;
    };
    let line = sheet.line(thumb.node);
    if let Some(node) = parts.hand.thumb {
        let message = format!(
            "the thumb stays out of the ball (line {line}), yet it was measured for a hole"
        );
        sheet.contradict(
            node,
            message,
            "leave the thumb's measurements out, or write `thumb: in`",
        );
    } else if !parts.hand.spans.is_empty() {
        sheet.ask(
            "bowler.thumb",
            "The thumb stays out, yet spans from the thumb are given. Does it go in?",
        );
    }
    let symptoms = sheet.value("check.symptoms").unwrap_or(0);
    let has = |word: &&str| SYMPTOMS.iter().position(|w| w == word);
    if OF_THE_THUMB
        .iter()
        .filter_map(has)
        .any(|bit| symptoms & (1 << bit) != 0)
    {
        sheet.ask(
            "bowler.thumb",
            "The thumb stays out, yet the fit check names a complaint of the thumb. Does it go in?",
        );
    }
    if ["card.thumb_bore", "card.thumb_forward", "card.slug"]
        .iter()
        .any(|name| sheet.value(name).is_some())
    {
        sheet.ask(
            "card.works",
            "The fit card has a thumb hole, yet the thumb stays out. Is the card still right?",
        );
    }
}

fn ask_about_delivery(sheet: &mut Sheet) {
    if sheet.value("bowler.delivery") == Some(1) && sheet.value("bowler.wrist_support") == Some(1) {
        sheet.ask(
            "bowler.wrist_support",
            "Two hands and a wrist support are rare together. Is that right?",
        );
    }
}

fn ask_about_curve(sheet: &mut Sheet) {
    let curve = sheet.value("bowler.curve");
    match sheet.value("bowler.intent") {
        Some(0) if curve.is_some_and(|curve| curve > 0) => {
            sheet.ask(
                "bowler.curve",
                "You'd like to roll it straight, yet the ball curves. Which do you want?",
            );
        }
        Some(2) if curve == Some(0) => {
            sheet.ask(
                "bowler.curve",
                "You'd like to hook, yet the ball doesn't curve. Would you like to learn it?",
            );
        }
        _ => {}
    }
}

fn ask_about_experience(sheet: &mut Sheet, owned: &[OwnedBall]) {
    let own_ball_now = sheet.value("bowler.ball_now") == Some(2);
    let experience = sheet.value("bowler.experience");
    if experience == Some(0) && (own_ball_now || !owned.is_empty()) {
        sheet.ask(
            "bowler.experience",
            "It is to be the first ball, yet one is owned. Which is right?",
        );
    }
    if own_ball_now && sheet.value("owned.count") == Some(0) {
        sheet.ask(
            "owned.count",
            "Your own ball is used now, yet no ball is owned. Whose is it?",
        );
    }
    if experience != Some(2) {
        return;
    }
    if sheet.value("bowler.games_a_week") == Some(0) {
        sheet.ask(
            "bowler.games_a_week",
            "A tournament bowler with no games a week. Is that right?",
        );
    }
    if sheet
        .value("bowler.age")
        .is_some_and(|age| age < YOUNGEST_IN_TOURNAMENTS)
    {
        sheet.ask(
            "bowler.age",
            "That is very young for tournaments. Is the age right?",
        );
    }
}

fn ask_about_body(sheet: &mut Sheet) {
    let (Some(age), Some(weight)) = (sheet.value("bowler.age"), sheet.value("bowler.body_weight"))
    else {
        return;
    };
    if (age >= GROWN && weight < LIGHT) || (age <= SMALL && weight > HEAVY) {
        sheet.ask(
            "bowler.body_weight",
            "Age and body weight don't look alike. Are both right?",
        );
    }
}

/// A weight that is wanted, used or settled against the weight that was too much to hold.
fn ask_about_weights(sheet: &mut Sheet) {
    if let (Some(wish), Some(settled)) = (
        sheet.value("bowler.target_weight"),
        sheet.value("settled.weight"),
    ) && wish != settled
    {
        let text = format!(
            "{} is asked for, but {} is settled. Is that agreed?",
            pounds(wish),
            pounds(settled)
        );
        sheet.ask("settled.weight", text);
    }
    let Some(failed) = sheet.value("bowler.hold_failed") else {
        return;
    };
    let compared = [
        ("bowler.ball_now_weight", "is used now"),
        ("bowler.target_weight", "is asked for"),
        ("settled.weight", "is settled"),
    ];
    for (name, how) in compared {
        if let Some(weight) = sheet.value(name).filter(|weight| *weight >= failed) {
            let text = format!(
                "{} {how}, yet {} was too much to hold. Which is right?",
                pounds(weight),
                pounds(failed)
            );
            sheet.ask(name, text);
        }
    }
}

fn ask_about_presence(sheet: &mut Sheet, hand: &Hand) {
    if sheet.value("bowler.absent") == Some(1) && hand.node.is_some() {
        sheet.ask(
            "bowler.absent",
            "The bowler isn't here, yet the hand was measured. Who measured it, and when?",
        );
    }
}

fn ask_about_pap(sheet: &mut Sheet) {
    let over = sheet.value("bowler.pap_over").is_some();
    let up = sheet.value("bowler.pap_up").is_some();
    if over && !up {
        sheet.ask(
            "bowler.pap_up",
            "The PAP is given over, but not up or down. Can you measure both?",
        );
    } else if up && !over {
        sheet.ask(
            "bowler.pap_over",
            "The PAP is given up or down, but not over. Can you measure both?",
        );
    }
}

fn ask_about_warm_hands(sheet: &mut Sheet) {
    let pairs = [
        ("hand.thumb_gauge", "hand.thumb_gauge_warm", "thumb"),
        (
            "hand.middle_gauge",
            "hand.middle_gauge_warm",
            "middle finger",
        ),
        ("hand.ring_gauge", "hand.ring_gauge_warm", "ring finger"),
    ];
    for (cold, warm, part) in pairs {
        let (Some(before), Some(after)) = (sheet.value(cold), sheet.value(warm)) else {
            continue;
        };
        if after < before {
            let size = |value| Notation::HoleSize.write(value);
            let (before, after) = (size(before), size(after));
            sheet.ask(
                warm,
                format!("The {part} is {before} cold and {after} warm. Were the two exchanged?"),
            );
        }
    }
}

fn ask_about_spans(sheet: &mut Sheet, spans: &[Span]) {
    for (index, one) in spans.iter().enumerate() {
        for other in spans.iter().skip(index + 1) {
            if (one.kind(), one.along()) != (other.kind(), other.along()) {
                continue;
            }
            if one.grip() == other.grip() {
                ask_about_fingers(sheet, one, other);
            } else if one.finger() == other.finger() {
                ask_about_grips(sheet, one, other);
            }
        }
    }
}

/// A hand is drilled from full spans; cut and centre spans need sizes of a ball that isn't drilled yet.
fn ask_for_full_spans(sheet: &mut Sheet, spans: &[Span]) {
    let full = |one: &Span| {
        let same = |other: &&Span| (other.grip(), other.finger()) == (one.grip(), one.finger());
        spans
            .iter()
            .filter(same)
            .any(|span| span.kind() == SpanKind::Full)
    };
    for span in spans.iter().filter(|span| !full(span)) {
        sheet.ask(
            name(span.grip(), span.finger()),
            "This span isn't a full span. Please measure the full span too.",
        );
    }
}

/// The two fingers of one grip lie close together.
fn ask_about_fingers(sheet: &mut Sheet, one: &Span, other: &Span) {
    if (one.value() - other.value()).abs() > SPAN_DIFFERENCE {
        let about = name(one.grip(), other.finger());
        sheet.ask(
            about,
            "The spans to the two fingers differ by over 1/4 in. Please measure them again.",
        );
    }
}

/// The first joint lies farther from the thumb than the second.
fn ask_about_grips(sheet: &mut Sheet, one: &Span, other: &Span) {
    let (conventional, fingertip) = if one.grip() == Some(Grip::Conventional) {
        (one, other)
    } else {
        (other, one)
    };
    if conventional.value() >= fingertip.value() {
        let about = name(fingertip.grip(), fingertip.finger());
        sheet.ask(
            about,
            "The fingertip span isn't longer than the conventional one. Were they exchanged?",
        );
    }
}

fn name(grip: Option<Grip>, finger: Finger) -> &'static str {
    match (grip, finger) {
        (Some(Grip::Conventional), Finger::Middle) => "hand.conventional_middle_span",
        (Some(Grip::Conventional), Finger::Ring) => "hand.conventional_ring_span",
        (_, Finger::Middle) => "hand.fingertip_middle_span",
        (_, Finger::Ring) => "hand.fingertip_ring_span",
    }
}

/// The bits of `bowler.aches` that speak against "a fit without pain": thumb, fingers, numbness, swelling.
const HAND_ACHES: i64 = 1 | (1 << 1) | (1 << 7) | (1 << 8);

fn ask_about_card(sheet: &mut Sheet, card: Option<&FitCard>) {
    let Some(card) = card else { return };
    let works = sheet.value("card.works");
    if works == Some(1)
        && sheet
            .value("bowler.aches")
            .is_some_and(|aches| aches & HAND_ACHES != 0)
    {
        sheet.ask(
            "card.works",
            "The card says the fit works, yet the hand hurts. Did this ball do it?",
        );
    }
    // Who only says that no drilled ball fits may have none, and can't say what is wrong with it.
    let tells_more = !card.spans().is_empty() || card.ball().is_some() || card.date().is_some();
    let tells_more = tells_more
        || super::ANSWERS.iter().map(super::Answer::name).any(|name| {
            name.starts_with("card.") && name != "card.works" && sheet.value(name).is_some()
        });
    if works == Some(0) && card.complaint().is_none() && tells_more {
        sheet.ask(
            "card.complaint",
            "The fit doesn't work. What is wrong with it?",
        );
    }
    if !card.spans().is_empty() && sheet.value("card.grip").is_none() {
        sheet.ask(
            "card.grip",
            "The fit card has spans but no grip. Is it conventional or fingertip?",
        );
    }
    ask_about_spans(sheet, card.spans());
}
