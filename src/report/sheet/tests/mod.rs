//! The sheet, drawn from made-up drillings: everything on the page, nothing over anything else, to scale, and harmless.

#![allow(clippy::unwrap_used, clippy::panic)]

mod fixture;

use std::f64::consts::TAU;
use std::path::Path;

use rstest::rstest;

use super::basis::{Basis, basis};
use crate::advice::{Advice, LayoutStep, Refusal};
use crate::report::drawn::Drawn;
use crate::rules::Strength;
use crate::standards::Verdict;

const ALL: [&str; 6] = [
    "fingertip",
    "oval-left",
    "no-thumb",
    "refused",
    "large",
    "blank",
];

fn named(name: &str) -> Advice {
    match name {
        "fingertip" => fixture::fingertip(),
        "oval-left" => fixture::oval_left(),
        "no-thumb" => fixture::no_thumb(),
        "refused" => fixture::refused(),
        "large" => fixture::large(),
        _ => fixture::advice("{ name: Nobody Yet }"),
    }
}

/// Writes every sheet into the folder SHEETS, for eyes: `SHEETS=/tmp cargo test --lib sheets_to_look_at -- --ignored`.
#[test]
#[ignore = "for eyes, not for machines"]
fn sheets_to_look_at() {
    let folder = std::env::var("SHEETS").unwrap();
    for name in ALL {
        let advice = named(name);
        for (ending, sheet) in [("html", super::html(&advice)), ("svg", super::svg(&advice))] {
            std::fs::write(Path::new(&folder).join(format!("{name}.{ending}")), sheet).unwrap();
        }
    }
}

/// Well-formed, on the page, nothing over anything else.
fn sound(advice: &Advice) -> Drawn {
    let drawn = Drawn::read(&super::svg(advice));
    let faults = drawn.faults();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    drawn
}

/// Everything on the page, with line breaks as spaces.
fn running(advice: &Advice) -> String {
    let words = sound(advice).words();
    words.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[rstest]
fn everything_is_on_the_page_and_nothing_over_anything_else(
    #[values("fingertip", "oval-left", "no-thumb", "refused", "large", "blank")] name: &str,
) {
    let advice = named(name);
    sound(&advice);
    assert_eq!(super::svg(&advice), super::svg(&advice));
    let page = super::html(&advice);
    assert!(Drawn::read(&page).faults().is_empty());
    for outside in ["http", "href", "url(", "@import", "<script", "src="] {
        let page = page.replace("xmlns=\"http://www.w3.org/2000/svg\"", "");
        assert!(!page.contains(outside), "{outside}");
    }
}

#[rstest]
fn the_grip_is_true_to_scale(#[values("fingertip", "oval-left", "no-thumb", "large")] name: &str) {
    let advice = named(name);
    let drawn = sound(&advice);
    let drilling = advice.drilling().unwrap();
    let turn = if drilling.left_hand() { -1.0 } else { 1.0 };
    for hole in drilling.holes() {
        drawn.is_true(
            &format!("centre {}", hole.name()),
            hole.mouth(),
            drilling.left_hand(),
        );
    }
    let [a, b] = ["centre middle", "centre ring"].map(|dot| drawn.dot(dot));
    assert_eq!(
        a.0 < b.0,
        turn > 0.0,
        "the middle finger is on the left of a right hand"
    );
}

/// Every point of a drawn rim, laid back on the ball, is half a cut size from the axis.
#[rstest]
fn a_rim_is_the_cut_cylinder_on_the_ball(#[values("fingertip", "large")] name: &str) {
    let advice = named(name);
    let drawn = sound(&advice);
    let (centre, inch) = drawn.scale();
    let drilling = advice.drilling().unwrap();
    let ball = drilling.circumference() / TAU;
    for hole in drilling.holes() {
        let rim = drawn.line(&format!("cut {}", hole.name()));
        assert!(rim.points.len() > 60);
        for spot in &rim.points {
            let (over, up) = ((spot.0 - centre.0) / inch, (centre.1 - spot.1) / inch);
            let arc = over.hypot(up);
            let (sin, cos) = (arc / ball).sin_cos();
            let point = [ball * sin * over / arc, ball * sin * up / arc, ball * cos];
            let from: Vec<f64> = (0..3).map(|i| point[i] - hole.mouth()[i]).collect();
            let along: f64 = (0..3).map(|i| from[i] * hole.axis()[i]).sum();
            let square: f64 = from.iter().map(|x| x * x).sum::<f64>() - along * along;
            let wanted = hole.outside().unwrap_or(hole.bore()) / 2.0;
            assert!(
                (square.sqrt() - wanted).abs() < 2e-3,
                "{} {wanted}",
                square.sqrt()
            );
        }
    }
}

/// Sections are half size, a wall's two corners as far apart as the hole is cut wide and as deep as it is deep.
#[test]
fn sections_are_half_size() {
    let advice = fixture::fingertip();
    let drawn = sound(&advice);
    for hole in advice.drilling().unwrap().holes() {
        let wall = &drawn.line(&format!("wall {}", hole.name())).points;
        let (a, b) = (wall[1], wall[2]);
        let wide = (a.0 - b.0).hypot(a.1 - b.1) / 50.0;
        assert!((wide - hole.outside().unwrap()).abs() < 2e-3, "{wide}");
    }
    let thumb = &drawn.line("wall thumb").points;
    // The thumb has no lateral pitch, so its axis lies in the plane. Its walls are as long as the hole is deep, less the
    // crown of the ball over half its width (derived).
    let ball = 27.0 / TAU;
    let crown = ball - (ball * ball - 0.65625_f64.powi(2)).sqrt();
    let long = [(0, 1), (3, 2)].map(|(top, low): (usize, usize)| {
        (thumb[top].0 - thumb[low].0).hypot(thumb[top].1 - thumb[low].1) / 50.0
    });
    assert!(
        ((long[0] + long[1]) / 2.0 - (2.75 - crown)).abs() < 5e-3,
        "{long:?} {crown}"
    );
}

#[test]
fn a_left_hand_is_the_mirror_image() {
    let right = fixture::fingertip();
    let mut left = fixture::fingertip();
    left.drilling.as_mut().unwrap().left_hand = true;
    let [right, left] = [sound(&right), sound(&left)];
    let about = |drawn: &Drawn, role: &str| {
        let ((over, down), inch) = drawn.scale();
        let spot = drawn.dot(role);
        ((spot.0 - over) / inch, (spot.1 - down) / inch)
    };
    for role in ["centre thumb", "centre middle", "centre ring"] {
        let (a, b) = (about(&right, role), about(&left, role));
        assert!(
            (a.0 + b.0).abs() < 1e-3 && (a.1 - b.1).abs() < 1e-3,
            "{role} {a:?} {b:?}"
        );
    }
    // The middle finger leans left on a right hand, so right on a left one.
    assert!(right.words().contains("3/8 in left") && left.words().contains("3/8 in right"));
    assert!(left.words().contains("0.31 oz left"), "{}", left.words());
}

#[test]
fn it_tells_nothing_of_aches_or_body_weight() {
    // The profile has both.
    assert!(fixture::FINGERTIP.contains("187 lb") && fixture::FINGERTIP.contains("aches: [wrist]"));
    for advice in [
        fixture::fingertip(),
        fixture::refused(),
        fixture::advice(fixture::FINGERTIP),
    ] {
        let words = Drawn::read(&super::html(&advice)).words().to_lowercase();
        for secret in ["187", "body weight", "ache", "wrist", "pain", "doctor"] {
            assert!(!words.contains(secret), "{secret}");
        }
    }
}

#[test]
fn what_is_refused_leaves_the_machine_no_number() {
    let words = sound(&fixture::refused()).words();
    assert!(words.contains("NOT TO BE DRILLED"));
    assert!(words.contains("bridge 11/32 in in place of 1/4 in"));
    for number in ["31/32 in", "depth stop", "Jig", "2 3/4 in", "14.83"] {
        assert!(!words.contains(number), "{number}");
    }
    let ready = sound(&fixture::fingertip()).words();
    assert!(!ready.contains("NOT TO BE DRILLED") && !ready.contains("______"));
    for number in [
        "Clamp the ball",
        "Draw the dust off",
        "Read every number back",
        "cut 31/32 in",
        "cut 1 5/16 in",
        "1/4 in reverse",
        "3/8 in left",
        "depth 2 3/4 in",
        "14.83 lb",
    ] {
        assert!(ready.contains(number), "{number}");
    }
}

/// What stands beside the sizes: the wall around a bore, and where a span ends at an oval.
#[test]
fn walls_and_edges_are_told() {
    let words = running(&fixture::fingertip());
    // Half of what the cut is wider than the bore (invented): 1 5/16 less 25/32, and 31/32 less 3/4.
    for wall in ["slug wall 17/64 in", "insert wall 7/64 in"] {
        assert!(words.contains(wall), "{wall}: {words}");
    }
    assert!(!words.contains("oval"), "{words}");
    let words = running(&fixture::oval_left());
    assert!(words.contains("span runs to the oval's edge"), "{words}");
    assert!(!words.contains(" wall "), "{words}");
}

/// Where the holes would meet, and what the least wall is meant to, once on the page.
#[test]
fn a_web_says_where_the_holes_would_meet() {
    let mut advice = fixture::fingertip();
    let webs = &mut advice.drilling.as_mut().unwrap().webs;
    let mut second = webs[0].clone();
    second.between = "thumb and ring".to_owned();
    (second.least, second.breaks_at) = (0.5, None);
    webs.push(second);
    let words = running(&advice);
    // 2.2656 is 2 17/64 (invented).
    assert!(words.contains("would meet 2 17/64 in down"), "{words}");
    assert_eq!(words.matches("would meet").count(), 1, "{words}");
    assert_eq!(words.matches("wanted").count(), 2, "{words}");
    assert_eq!(
        words.matches("to the nearest 1/64 in").count(),
        1,
        "{words}"
    );
    // They meet 7/8 down.
    let web = &mut advice.drilling.as_mut().unwrap().webs[0];
    (web.least, web.breaks_at) = (-0.1, Some(0.875));
    let words = running(&advice);
    assert!(words.contains("run into each other 7/8 in down"), "{words}");
}

#[test]
fn a_hand_that_was_not_measured_gets_lines_to_write_on() {
    let drawn = sound(&named("blank"));
    let words = drawn.words();
    assert!(words.contains("NOT TO BE DRILLED") && words.contains("Measure the hand."));
    assert!(
        drawn
            .lines
            .iter()
            .filter(|line| line.role == "write-here")
            .count()
            > 15
    );
    assert!(
        drawn
            .dots
            .iter()
            .all(|(role, _)| !role.starts_with("centre"))
    );
}

#[rstest]
#[case("<script>alert(\"1\")</script>&amp;'".to_owned())]
#[case("W".repeat(300))]
#[case("Ada ".repeat(300))]
#[case("\u{202e}gnort\u{1b}[31m\u{0}\u{fffe}\n\r\t end".to_owned())]
#[case("\u{5b57}".repeat(200))]
#[case("]]> <!-- -->".to_owned())]
fn a_hostile_name_stays_a_name(#[case] name: String) {
    let mut advice = fixture::fingertip();
    advice.bowler = name.clone();
    advice.picks[0].name = name.clone();
    advice.picks[0].maker = name.clone();
    let drilling = advice.drilling.as_mut().unwrap();
    drilling.findings[3].says = name.clone();
    drilling.balance.as_mut().unwrap().unit = name;
    sound(&advice);
    let page = super::html(&advice);
    assert!(Drawn::read(&page).faults().is_empty());
    assert!(!page.contains("<script") && !page.contains('\u{1b}') && !page.contains('\u{202e}'));
}

#[rstest]
fn no_number_is_worth_a_crash(#[values(f64::NAN, f64::INFINITY, -1e300, 0.0)] wild: f64) {
    let mut advice = fixture::fingertip();
    let drilling = advice.drilling.as_mut().unwrap();
    for hole in &mut drilling.holes {
        hole.mouth = [wild; 3];
        hole.axis = [wild; 3];
        hole.depth = wild;
        hole.place = (wild, wild);
        hole.outside = Some(wild);
        hole.oval = Some((wild, wild, wild));
        hole.forward = wild;
        hole.lateral = wild;
        hole.wall = Some(wild);
    }
    drilling.webs[0].least = wild;
    drilling.webs[0].at_depth = wild;
    drilling.webs[0].breaks_at = Some(wild);
    for step in &mut drilling.layout.as_mut().unwrap().steps {
        step.line[0] = (wild, wild);
    }
    let balance = drilling.balance.as_mut().unwrap();
    (balance.pounds, balance.top, balance.side, balance.margin) = (wild, wild, wild, Some(wild));
    drilling.core.as_mut().unwrap().after = (wild, wild, wild);
    let words = sound(&advice).words();
    assert!(!words.contains("NaN") && !words.contains("inf") && !words.contains("300"));
    advice.drilling.as_mut().unwrap().circumference = wild;
    sound(&advice);
}

#[test]
fn more_than_fits_is_said_and_never_written_over() {
    let mut advice = fixture::fingertip();
    let drilling = advice.drilling.as_mut().unwrap();
    let long =
        "Every word of this goes on for longer than anybody at the bench would care to read. "
            .repeat(4);
    drilling.layout.as_mut().unwrap().steps = vec![
        LayoutStep {
            text: long.clone(),
            line: vec![(0.0, 0.0), (1.0, 1.0)]
        };
        30
    ];
    for finding in &mut drilling.findings {
        finding.verdict = Verdict::Fail;
        finding.says.clone_from(&long);
    }
    drilling.open = vec![long.clone(); 20];
    let words = sound(&advice).words();
    assert!(words.contains("Not everything fits on this sheet"));
    assert!(words.contains("Read part 8 before drilling"));
    advice.drilling.as_mut().unwrap().refusals = vec![
        Refusal {
            what: long,
            mends: Vec::new()
        };
        40
    ];
    assert!(
        sound(&advice)
            .words()
            .contains("And more: read the advice.")
    );
}

#[test]
fn a_number_is_a_default_by_the_weakest_line_that_moves_it() {
    let advice = fixture::fingertip();
    let of = |name: &str| basis(advice.spec().number(name).unwrap());
    assert_eq!(of("middle.bore"), Basis::Measured);
    assert_eq!(of("middle.span"), Basis::Measured);
    assert_eq!(of("middle.cut_span"), Basis::Derived);
    assert_eq!(of("bridge"), Basis::Default(Strength::CommonPractice));
    assert_eq!(of("pin.from_grip"), Basis::Default(Strength::OwnChoice));
}
