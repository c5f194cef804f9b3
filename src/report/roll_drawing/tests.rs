//! The drawing, from made-up rolls: everything on the page, nothing over anything else, to scale, and harmless. All numbers invented.

#![allow(clippy::unwrap_used, clippy::panic)]

#[path = "../../../tests/sheet/drawn.rs"]
#[allow(dead_code)]
mod drawn;

use proptest::prelude::*;
use rstest::rstest;

use super::plot::{Place, Plot, Thrown};
use super::{words, words::about};
use drawn::Drawn;

const ALL: [&str; 12] = [
    "more",
    "left",
    "either",
    "tiny",
    "huge",
    "gutter",
    "first-gutter",
    "less",
    "flat",
    "alone",
    "alone-left",
    "bare",
];

/// Nothing to the side up to 30 ft, then along a parabola to so many boards at 60 ft; the range likewise.
fn along(boards: f64, least: f64, most: f64, end: f64) -> Vec<Place> {
    let mut places: Vec<Place> = (0..=60)
        .map(f64::from)
        .filter(|feet| *feet <= end)
        .map(|feet| {
            let share = ((feet - 30.0).max(0.0) / 30.0).powi(2);
            Place {
                feet,
                boards: boards * share,
                least: least * share,
                most: most * share,
            }
        })
        .collect();
    if let (true, Some(last)) = (end.fract() > 0.0, places.last().copied()) {
        places.push(Place { feet: end, ..last });
    }
    places
}

fn ball(name: &str, finished: Option<f64>, entry: Option<f64>) -> Thrown {
    Thrown {
        name: name.into(),
        finished,
        entry,
        ..Thrown::default()
    }
}

/// A solid against a polyester, for a right-hander.
fn more() -> Plot {
    Plot {
        bowler: "Ada Quill".into(),
        said: "The Bramble hooks four to eight boards more than the Harebell on this lane, and finishes about four feet sooner.".into(),
        mirrored: false,
        ball: ball("Bramble", Some(46.2), Some(4.4)),
        against: Some(ball("Harebell", None, Some(2.6))),
        along: along(6.0, 4.0, 8.0, 60.0),
        oil: 39.0,
        entry: Some((1.8, 1.1, 2.4)),
        sooner: None,
        throw: ["speed 16.5 mph", "revs 280 rpm", "rotation 45 degrees", "tilt 13 degrees"].map(String::from).into(),
        lane: "a medium house lane".into(),
        start_board: 28.0,
        launch: -1.8,
        because: "On this line the Harebell comes to the pocket.".into(),
        varied: ["speed 16 to 17 mph", "revs 250 to 310 rpm", "rotation 35 to 55 degrees", "friction a quarter up or down"].map(String::from).into(),
        assumed: ["axis rotation: 45 degrees.", "axis tilt: 13 degrees.", "Harebell: the surface is taken as it leaves the box."].map(String::from).into(),
    }
}

fn named(name: &str) -> Plot {
    let long = "The Very Long And Winding Meadow Saxifrage Of The North <&> \"Pearl\" Hybrid Number Forty-Four";
    let alone = || Plot {
        said: String::new(),
        against: None,
        entry: None,
        ball: Thrown {
            farthest: Some((40.6, 7.8)),
            ..ball("Bramble", Some(47.0), Some(4.4))
        },
        along: along(21.0, 21.0, 21.0, 60.0),
        varied: Vec::new(),
        ..more()
    };
    match name {
        "left" => Plot {
            mirrored: true,
            said: "The Bramble hooks one to three boards more than the Yarrow, and finishes about three feet sooner.".into(),
            against: Some(ball("Yarrow", Some(50.3), Some(3.9))),
            along: along(2.0, 1.1, 3.2, 60.0),
            entry: Some((0.5, 0.2, 0.8)),
            sooner: Some((3.4, 1.2, 5.3)),
            ..more()
        },
        "either" => Plot {
            said: "Between the Bramble and the old solid there is hardly anything to tell on this lane.".into(),
            ball: ball("Bramble", Some(47.3), Some(4.4)),
            against: Some(ball("the old solid", Some(46.9), Some(4.3))),
            along: along(0.6, -0.9, 1.8, 60.0),
            entry: Some((0.1, -0.2, 0.3)),
            sooner: Some((-0.4, -2.0, 1.7)),
            ..more()
        },
        "tiny" => Plot {
            said: "They do the same.".into(),
            ball: ball("Bramble", Some(47.0), Some(4.4)),
            against: Some(ball("Yarrow", Some(47.0), Some(4.4))),
            along: along(0.1, 0.08, 0.12, 60.0),
            entry: Some((0.0, 0.0, 0.0)),
            sooner: Some((0.0, 0.0, 0.0)),
            ..more()
        },
        "huge" => Plot {
            bowler: long.repeat(2),
            said: format!("{long} hooks far more. ").repeat(12),
            ball: ball(long, Some(59.5), Some(14.4)),
            against: Some(ball(&long.replace(' ', ""), Some(59.9), Some(-1.4))),
            along: along(25.0, 14.0, 33.0, 60.0),
            oil: 59.7,
            throw: vec![long.into(); 20],
            lane: long.repeat(9),
            because: long.repeat(9),
            varied: vec![long.into(); 20],
            assumed: vec![long.into(); 20],
            entry: Some((15.8, 11.0, 22.0)),
            sooner: Some((0.4, -9.0, 12.0)),
            ..more()
        },
        "gutter" => Plot {
            ball: Thrown {
                gutter: Some(43.4),
                ..ball("Bramble", None, None)
            },
            along: along(-14.0, -15.0, -8.0, 43.4),
            entry: None,
            ..more()
        },
        "first-gutter" => Plot {
            against: Some(Thrown {
                gutter: Some(48.2),
                ..ball("Harebell", Some(44.0), None)
            }),
            along: along(9.0, 5.0, 11.0, 48.2),
            entry: None,
            ..more()
        },
        "less" => Plot {
            said: "The Harebell hooks four to eight boards less than the Bramble on this lane.".into(),
            ball: ball("Harebell", None, Some(2.6)),
            against: Some(ball("Bramble", Some(46.2), Some(4.4))),
            along: along(-6.0, -8.0, -4.0, 60.0),
            entry: Some((-1.8, -2.4, -1.1)),
            ..more()
        },
        "flat" => Plot {
            along: along(0.0, 0.0, 0.0, 60.0),
            oil: 0.0,
            ..more()
        },
        "alone" => alone(),
        "alone-left" => Plot {
            mirrored: true,
            ..alone()
        },
        "bare" => Plot::default(),
        _ => more(),
    }
}

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
        assert!(!super::page(&plot, 7.5).0.left_out(), "{name}: left out");
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
