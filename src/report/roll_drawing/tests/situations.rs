//! Rolls to draw, named and at random. All numbers invented.

use proptest::prelude::*;

use crate::report::roll_drawing::plot::{Place, Plot, Thrown, drawable};

pub(super) const ALL: [&str; 12] = [
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
    let at = |feet: f64| {
        let share = ((feet - 30.0).max(0.0) / 30.0).powi(2);
        Place {
            feet,
            boards: boards * share,
            least: least * share,
            most: most * share,
        }
    };
    let mut places: Vec<Place> = (0..=60)
        .map(f64::from)
        .filter(|feet| *feet <= end)
        .map(at)
        .collect();
    if end.fract() > 0.0 {
        places.push(at(end));
    }
    places
}

pub(super) fn ball(name: &str, finished: Option<f64>, entry: Option<f64>) -> Thrown {
    Thrown {
        name: name.into(),
        finished,
        entry,
        ..Thrown::default()
    }
}

/// A solid against a polyester, for a right-hander.
pub(super) fn more() -> Plot {
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
        varied: ["speed 16.5 mph, give or take 0.5 mph", "rev rate 280 rpm, give or take 30 rpm", "axis rotation 45 degrees, give or take 10 degrees", "the lane's grip on both balls alike, give or take 25 %", "In 3 of 32 of these a ball leaves the lane; from there on they aren't counted."].map(String::from).into(),
        assumed: ["axis rotation: 45 degrees.", "axis tilt: 13 degrees.", "Harebell: the surface is taken as it leaves the box."].map(String::from).into(),
    }
}

pub(super) fn named(name: &str) -> Plot {
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
            along: along(-14.0, -22.0, -8.0, 43.4),
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

fn thrown() -> impl Strategy<Value = Thrown> {
    let feet = || proptest::option::of(-1.0..62.0);
    let name = prop_oneof![
        "[A-Z][a-z]{2,9}",
        "([A-Za-zé木&<>\"]{3,9}[ -]?){0,9}",
        "[A-Z]{60}"
    ];
    (
        name,
        feet(),
        proptest::option::weighted(0.2, 1.0..60.0),
        proptest::option::of(-9.0..20.0),
        feet(),
    )
        .prop_map(|(name, finished, gutter, entry, farthest)| Thrown {
            name,
            finished,
            gutter,
            entry,
            farthest: farthest.map(|feet| (feet, 9.0)),
        })
}

fn span(most: f64) -> impl Strategy<Value = Option<(f64, f64, f64)>> {
    let one = move || -most..most;
    proptest::option::of((one(), one(), one()))
}

fn boards() -> impl Strategy<Value = f64> {
    prop_oneof![-0.2..0.2, -3.0..3.0, -39.0..39.0, -1e9..1e9]
}

pub(super) fn any_plot() -> impl Strategy<Value = Plot> {
    let end = prop_oneof![Just(60.0), 1.0..60.0];
    let along = (boards(), boards(), boards(), end)
        .prop_map(|(a, b, c, end)| drawable(along(a, b, c, end).into_iter()));
    let texts = || proptest::collection::vec("([a-z]{2,9}[ ,;.]{1,2}){0,12}", 0..6);
    (
        (
            thrown(),
            proptest::option::weighted(0.8, thrown()),
            along,
            any::<bool>(),
        ),
        (
            -1.0..61.0,
            span(20.0),
            span(40.0),
            "[A-Za-z ]{0,300}",
            "[A-Za-z ]{0,80}",
        ),
        (texts(), texts(), texts(), "([a-z]{2,9} ){0,40}"),
    )
        .prop_map(
            |(
                (ball, against, along, mirrored),
                (oil, entry, sooner, said, bowler),
                (throw, varied, assumed, lane),
            )| Plot {
                bowler,
                said,
                mirrored,
                ball,
                against,
                along,
                oil,
                entry,
                sooner,
                throw,
                because: lane.clone(),
                lane,
                start_board: 20.0,
                launch: -1.0,
                varied,
                assumed,
            },
        )
}
