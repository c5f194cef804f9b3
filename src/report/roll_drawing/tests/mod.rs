//! The drawing, from made-up rolls: everything on the page, nothing over anything else, to scale, and harmless. All numbers invented.

#![allow(clippy::unwrap_used, clippy::panic)]

mod situations;

use proptest::prelude::*;
use rstest::rstest;

use super::plot::{Place, Plot};
use super::scale;
use super::words::{self, Count};
use crate::report::drawn::{self, Drawn};
use situations::{ALL, any_plot, ball, more, named};

/// Writes every drawing into the folder ROLLS, for eyes: `ROLLS=/tmp cargo test --lib rolls_to_look_at -- --ignored`.
#[test]
#[ignore = "for eyes, not for machines"]
fn rolls_to_look_at() {
    let folder = std::env::var("ROLLS").unwrap();
    for name in ALL {
        let file = std::path::Path::new(&folder).join(format!("{name}.svg"));
        std::fs::write(file, super::drawn(&named(name))).unwrap();
    }
}

/// Well-formed, on the page, nothing over anything else, nothing left out.
fn sound(plot: &Plot) -> Drawn {
    let drawn = Drawn::read(&super::drawn(plot));
    let faults = drawn.faults();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    drawn
}

/// Everything on the page, with line breaks as spaces.
fn running(plot: &Plot) -> String {
    let words = sound(plot).words();
    words.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn everything_is_on_the_page_and_nothing_over_anything_else() {
    for name in ALL {
        let plot = named(name);
        let drawing = super::drawn(&plot);
        assert_eq!(drawing, super::drawn(&plot));
        let drawn = sound(&plot);
        assert!(!super::page(&plot, 6.0).0.left_out(), "{name}: left out");
        assert_eq!(
            drawn
                .lines
                .iter()
                .filter(|line| line.role == "zero")
                .count(),
            1
        );
        let inside = drawing.replace("xmlns=\"http://www.w3.org/2000/svg\"", "");
        for outside in ["http", "href", "url(", "@import", "<script", "src="] {
            assert!(!inside.contains(outside), "{outside}");
        }
        let document = roxmltree::Document::parse(&drawing).unwrap();
        for tag in ["title", "desc"] {
            let found = document.descendants().find(|node| node.has_tag_name(tag));
            let words = found.unwrap().text().unwrap();
            assert!(!words.trim().is_empty());
        }
    }
}

/// Where the straight line stands on paper, how wide a board is and how long a foot, from the marks that a reader has.
fn measured(drawn: &Drawn) -> (f64, f64, f64) {
    let of = |role: &'static str| drawn.lines.iter().filter(move |line| line.role == role);
    let mut ticks: Vec<f64> = of("board").map(|line| line.points[0].0).collect();
    ticks.sort_by(f64::total_cmp);
    let mut feet: Vec<f64> = of("feet").map(|line| line.points[0].1).collect();
    feet.sort_by(f64::total_cmp);
    assert_eq!(feet.len(), 7);
    for ten in feet.windows(2) {
        assert!((ten[1] - ten[0] - (feet[1] - feet[0])).abs() < 0.03);
    }
    (
        drawn.line("zero").points[0].0,
        (ticks[ticks.len() - 1] - ticks[0]) / (ticks.len() - 1) as f64,
        (feet[6] - feet[0]) / 60.0,
    )
}

/// By its own ticks, every point of the line and of the band's edges is where the numbers say, to the side that is named.
#[test]
fn boards_and_feet_can_be_read_off() {
    for name in [
        "more",
        "left",
        "either",
        "gutter",
        "first-gutter",
        "less",
        "alone",
        "alone-left",
    ] {
        let plot = named(name);
        let drawn = sound(&plot);
        let (zero, board, foot) = measured(&drawn);
        let bottom = drawn.line("zero").points[1].1;
        let turn = if plot.mirrored { 1.0 } else { -1.0 };
        let mut edges = drawn.lines.iter().filter(|line| line.role == "band-edge");
        let check = |line: &drawn::Line, boards: fn(&Place) -> f64| {
            assert_eq!(line.points.len(), plot.along.len());
            for (point, place) in line.points.iter().zip(&plot.along) {
                let found = ((point.0 - zero) * turn / board, (bottom - point.1) / foot);
                assert!((found.0 - boards(place)).abs() < 0.02, "{name}: {found:?}");
                assert!((found.1 - place.feet).abs() < 0.02, "{name}: {found:?}");
            }
        };
        check(drawn.line("line"), |place| place.boards);
        if plot.against.is_some() {
            check(edges.next().unwrap(), |place| place.least);
            check(edges.next().unwrap(), |place| place.most);
        }
        assert!(edges.next().is_none());
        let words = running(&plot);
        let said = format!(
            "{:.2} in of paper, ten feet along are {:.2} in",
            board / 100.0,
            foot / 10.0
        );
        assert!(words.contains(&said), "{words}");
    }
}

/// What a reader must find named, in each situation.
#[rstest]
#[case("more", &["The thick line: where the Bramble would be", "The straight line: where the Harebell would be", "about 6 boards further left than the Harebell",
    "(between 4 and 8 boards further left)", "comes in at about 4.4 degrees", "comes in at about 2.6 degrees", "about 1.8 degrees more than the Harebell",
    "(between 1.1 and 2.4 degrees more)", "The Bramble has finished hooking", "hasn't finished hooking at the pins", "The oil ends",
    "The grey band between thin lines", "speed 16.5 mph, revs 280 rpm", "a medium house lane, oiled for 39 ft", "lanes differ",
    "axis rotation 45 degrees, give or take 10 degrees", "counted from the right, 1.8 degrees toward the right", "The Bramble hooks four to eight boards"])]
#[case("left", &["about 2 boards further right", "counted from the left, 1.8 degrees toward the left", "about 3 feet sooner than the Yarrow", "(between 1 and 5 feet sooner)"])]
#[case("either", &["(from 1 board further right to 2 boards further left)", "Here both have finished hooking: about 47 ft", "where the old solid would be"])]
#[case("tiny", &["level with the Yarrow", "the same as the Yarrow"])]
#[case("less", &["about 6 boards further right than the Bramble", "about 1.8 degrees less than the Bramble"])]
#[case("gutter", &["The Bramble falls into the gutter", "The Harebell at the pins"])]
#[case("first-gutter", &["The Harebell falls into the gutter", "The Harebell has finished hooking"])]
#[case("alone", &["The straight line it was sent on", "about 21 boards to the left of its straight line", "Here it turns back", "about board 8 from the right", "it promises no boards"])]
#[case("alone-left", &["about 21 boards to the right of its straight line", "about board 8 from the left"])]
fn everything_is_named(#[case] name: &str, #[case] said: &[&str]) {
    let words = running(&named(name));
    for one in said {
        assert!(words.contains(one), "{one}: {words}");
    }
    assert!(!words.contains("rolled out"));
}

/// A range too narrow to be seen isn't named as one, and two balls that never come apart are still named.
#[test]
fn a_range_that_cant_be_seen_isnt_named() {
    let words = running(&named("tiny"));
    assert!(!words.contains("grey band"), "{words}");
    assert!(words.contains("The thick line"), "{words}");
    assert!(!running(&named("gutter")).contains("The Bramble at the pins"));
    assert!(!running(&named("first-gutter")).contains("The Harebell at the pins"));
}

/// A left-hander's drawing is the mirror image of a right-hander's.
#[test]
fn mirrored_bowlers_get_mirrored_drawings() {
    let right = sound(&named("more"));
    let left = sound(&Plot {
        mirrored: true,
        ..named("more")
    });
    for role in ["line", "zero"] {
        for (a, b) in right.line(role).points.iter().zip(&left.line(role).points) {
            assert!((a.0 + b.0 - scale::LEFT - scale::RIGHT).abs() < 0.02);
            assert!((a.1 - b.1).abs() < 1e-9);
        }
    }
}

const BOARDS: fn() -> Count = || words::boards("left", "right");

#[rstest]
#[case(BOARDS(), 0.0, "level")]
#[case(BOARDS(), 0.24, "level")]
#[case(BOARDS(), 0.26, "1/2 board left")]
#[case(BOARDS(), -1.0, "1 board right")]
#[case(BOARDS(), 1.4, "1 1/2 boards left")]
#[case(BOARDS(), -12.6, "12 1/2 boards right")]
#[case(words::DEGREES, 1.0, "1.0 degree more")]
#[case(words::DEGREES, -0.26, "0.3 degrees less")]
#[case(words::FEET, 1.2, "1 foot sooner")]
#[case(words::FEET, -3.6, "4 feet later")]
#[case(words::FEET, f64::NAN, "the same")]
fn numbers_are_said_in_words(#[case] count: Count, #[case] value: f64, #[case] said: &str) {
    assert_eq!(count.far(value), said);
}

#[rstest]
#[case(1.0, 3.0, Some("between 1 and 3 boards left"))]
#[case(-3.0, -1.0, Some("between 1 and 3 boards right"))]
#[case(-1.0, 2.0, Some("from 1 board right to 2 boards left"))]
#[case(0.1, 2.0, Some("from level to 2 boards left"))]
#[case(-2.0, 0.2, Some("from level to 2 boards right"))]
#[case(1.9, 2.1, None)]
fn ranges_are_said_in_words(#[case] least: f64, #[case] most: f64, #[case] said: Option<&str>) {
    assert_eq!(BOARDS().range(least, most).as_deref(), said);
}

#[rstest]
#[case("Daisy", "the Daisy")]
#[case("The old solid", "The old solid")]
#[case("my plastic", "my plastic")]
#[case("", "the ball")]
fn a_ball_has_one_article(#[case] name: &str, #[case] said: &str) {
    assert_eq!(words::the(name), said);
}

#[rstest]
#[case("<script>&\"'</script>")]
#[case("]]><!-- ${x} {{y}} -->")]
#[case("\u{202e}abc\u{0}\n\t]]>")]
fn a_hostile_name_stays_a_name(#[case] name: &str) {
    for name in [name.to_owned(), name.repeat(30)] {
        let plot = Plot {
            bowler: name.clone(),
            said: name.clone(),
            ball: ball(&name, Some(44.0), Some(4.0)),
            against: Some(ball(&name, Some(45.0), Some(4.0))),
            lane: name.clone(),
            because: name.clone(),
            varied: vec![name.clone()],
            throw: vec![name.clone()],
            assumed: vec![name.clone()],
            ..more()
        };
        sound(&plot);
        assert!(!super::drawn(&plot).contains("<script"));
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever the numbers: on the page, nothing over anything else, nothing left out, the same bytes.
    #[test]
    fn whatever_the_numbers_it_can_be_read(plot in any_plot()) {
        let drawing = super::drawn(&plot);
        prop_assert_eq!(&drawing, &super::drawn(&plot));
        let faults = Drawn::read(&drawing).faults();
        prop_assert!(faults.is_empty(), "{}", faults.join("\n"));
        let fits = super::FEET.iter().any(|foot| {
            let (canvas, _, bottom) = super::page(&plot, *foot);
            !canvas.left_out() && bottom <= 1100.0 - super::MARGIN
        });
        prop_assert!(fits);
    }
}
