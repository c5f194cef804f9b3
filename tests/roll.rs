//! A roll keeps its promises: mirrored hands are mirror images, a ball against itself differs in nothing, the line comes to its board, and
//! what can't be is told.

#![allow(clippy::unwrap_used)]

mod roll {
    mod door;
    mod words;
}

use proptest::prelude::*;
use spanwright::advice::{Roll, Shop, Trouble};
use spanwright::bowler::Bowler;
use spanwright::document::{Document, Format};
use spanwright::report::{roll_json, roll_text};
use spanwright::rules::Audience;

/// A bowler who hooks; `more` are further lines of the profile. Invented.
fn bowler(more: &str) -> Bowler {
    let text = format!(
        "intent: hook\nexperience: league\nspeed: {{ value: 17 mph, where: release }}\nrev_rate: 300 rpm\n\
         rotation: 50 deg\ntilt: 13 deg\nbody_weight: 180 lb\nball_now: {{ whose: own, weight: 15 lb }}\n{more}"
    );
    let document = Document::parse("bowler.yaml", text.as_bytes(), Format::Yaml).unwrap();
    Bowler::read(&document).unwrap()
}

fn rolled(shop: &Shop, bowler: &Bowler, balls: &[&str], lane: Option<&str>) -> Roll {
    let balls: Vec<String> = balls.iter().map(|ball| (*ball).to_owned()).collect();
    shop.roll(bowler, &balls, lane).unwrap()
}

/// Everything about the path and the difference, and nothing about who threw it.
fn numbers(roll: &Roll) -> String {
    let stations = roll.balls().iter().map(|ball| ball.path());
    let paths: Vec<_> = stations.collect();
    let apart = roll
        .apart()
        .map(|apart| (apart.along(), apart.entry(), apart.sooner()));
    format!("{:?} {paths:?} {apart:?}", roll.line())
}

#[test]
fn a_left_hander_mirrors_a_right_hander_to_the_last_digit() {
    let shop = Shop::demo().unwrap();
    let balls = ["hawkbit@15", "daisy@15"];
    let throws = [
        "hand: right",
        "hand: left",
        "curve: away",
        "hand: left\ncurve: away",
    ];
    let rolls = throws.map(|more| rolled(&shop, &bowler(more), &balls, None));
    assert!(!rolls[0].is_mirrored() && rolls[1].is_mirrored());
    // A right-hander's backup ball curves like a left-hander's hook, and a left-hander's like a right-hander's.
    assert!(rolls[2].is_mirrored() && !rolls[3].is_mirrored());
    for other in &rolls[1..] {
        assert_eq!(numbers(&rolls[0]), numbers(other));
    }
}

#[test]
fn a_ball_against_itself_differs_in_nothing() {
    let shop = Shop::demo().unwrap();
    let roll = rolled(&shop, &bowler(""), &["hawkbit@15"; 2], None);
    let apart = roll.apart().unwrap();
    assert!(apart.along().len() > 55, "told along the whole lane");
    for at in apart.along() {
        assert_eq!((at.boards(), at.least(), at.most()), (0.0, 0.0, 0.0));
    }
    assert_eq!(apart.entry(), Some((0.0, 0.0, 0.0)));
    assert!(
        apart
            .said()
            .of(Audience::Newcomer)
            .contains("the same ball twice")
    );
}

/// Both are thrown on one line, whichever was named first: that of the ball that hooks less. So everything of the difference turns its sign.
#[test]
fn swapped_balls_differ_the_other_way_exactly() {
    let shop = Shop::demo().unwrap();
    for lane in ["medium-flat", "short-house", "long-house"] {
        for (one, other) in [
            ("daisy@15", "hawkbit@15"),
            ("eyebright@15", "hawkbit@15"),
            ("daisy@12", "daisy@15"),
        ] {
            let first = rolled(&shop, &bowler(""), &[one, other], Some(lane));
            let second = rolled(&shop, &bowler(""), &[other, one], Some(lane));
            assert_eq!(first.line().suits() + second.line().suits(), 1);
            assert_eq!(first.line().launch(), second.line().launch());
            let (a, b) = (first.apart().unwrap(), second.apart().unwrap());
            assert_eq!(a.along().len(), b.along().len());
            for (a, b) in std::iter::zip(a.along(), b.along()) {
                let turned = (-b.boards(), -b.most(), -b.least(), b.is_whole());
                assert_eq!((a.boards(), a.least(), a.most(), a.is_whole()), turned);
            }
            let turned = |(now, least, most): (f64, f64, f64)| (-now, -most, -least);
            assert_eq!(a.entry(), b.entry().map(turned));
            assert_eq!(a.sooner(), b.sooner().map(turned));
        }
    }
    // By the physics polyester hooks less than a matte reactive solid: the cover with the lower friction (P4, common practice).
    let roll = rolled(&shop, &bowler(""), &["hawkbit@15", "daisy@15"], None);
    assert_eq!(roll.line().suits(), 1);
    assert!(roll.line().because().contains("hooks less than Hawkbit"));
    assert!(roll.apart().unwrap().along().last().unwrap().most() < 0.0);
}

/// Own choice: beside the whole oil a ball would roll from the start, whatever the rule of thumb says.
#[test]
fn on_short_oil_the_line_stays_in_the_whole_oil() {
    let shop = Shop::demo().unwrap();
    for (lane, exit) in [("short-house", 8.0), ("short-flat", 3.0)] {
        let roll = rolled(&shop, &bowler(""), &["hawkbit@15"], Some(lane));
        let path = roll.balls()[0].path();
        let farthest = path.stations().iter();
        let farthest = farthest.map(|at| roll.oil().board_at(at.across()));
        let farthest = farthest.fold(f64::INFINITY, f64::min);
        assert!((farthest - exit).abs() <= 0.1, "{lane}: {farthest}");
        let length = |part: spanwright::motion::Length| part.as_feet();
        let parts = [path.skid(), path.hook(), path.roll()].map(length);
        assert!(parts.iter().all(|part| *part >= 0.0), "{parts:?}");
        assert!((parts.iter().sum::<f64>() - 60.0).abs() < 1e-6);
        // The oil is 34 ft and thins from 31.
        assert!(parts[0] >= 31.0, "{lane}: slides for {}", parts[0]);
    }
}

/// Board 17.5 is published (S15, S50 of the fact sheet): a study in the light pocket strike, and a list on the perfect pocket hit.
#[test]
fn the_line_comes_to_its_board() {
    let shop = Shop::demo().unwrap();
    for (more, ball) in [
        ("", "hawkbit@15"),
        ("", "selfheal@15"),
        ("", "daisy@15"),
        ("delivery: two_hands\nthumb: out", "hawkbit@15"),
        ("curve: none\nhand: left", "daisy@15"),
    ] {
        for lane in ["short-house", "medium-house", "long-house", "medium-flat"] {
            let roll = rolled(&shop, &bowler(more), &[ball], Some(lane));
            let last = roll.balls()[0].path().last();
            assert!((last.down().as_feet() - 60.0).abs() < 1e-6, "{ball} {lane}");
            let board = roll.oil().board_at(last.across());
            assert!((board - 17.5).abs() <= 0.05, "{ball} on {lane}: {board}");
        }
    }
}

/// Where the ball turns back on the exit board it does so on the length of the oil less 31, a published rule of thumb.
#[test]
fn a_hooking_ball_turns_back_where_the_rule_of_thumb_says() {
    let shop = Shop::demo().unwrap();
    for (lane, exit) in [
        ("medium-house", 9.0),
        ("medium-flat", 9.0),
        ("long-flat", 14.0),
    ] {
        let roll = rolled(&shop, &bowler(""), &["hawkbit@15"], Some(lane));
        let turned = roll.balls()[0].path().breakpoint().unwrap();
        let board = roll.oil().board_at(turned.across());
        assert!((board - exit).abs() <= 0.1, "{lane}: {board}");
    }
}

#[test]
fn the_range_holds_what_it_is_the_range_of_and_the_same_is_told_twice() {
    let shop = Shop::demo().unwrap();
    let roll = rolled(&shop, &bowler(""), &["hawkbit@15", "daisy@15"], None);
    for at in roll.apart().unwrap().along() {
        assert!(at.least() <= at.boards() && at.boards() <= at.most());
    }
    let again = rolled(&shop, &bowler(""), &["hawkbit@15", "daisy@15"], None);
    for reader in [Audience::Newcomer, Audience::League, Audience::Fitter] {
        assert_eq!(roll_json(&roll, reader), roll_json(&again, reader));
        let look = spanwright::report::Look::plain(reader);
        assert_eq!(roll_text(&roll, &look), roll_text(&again, &look));
    }
}

/// A number that is better known gives a range that is no wider.
#[test]
fn a_better_measurement_narrows_the_range() {
    let shop = Shop::demo().unwrap();
    let width = |more: &str| {
        let roll = rolled(&shop, &bowler(more), &["hawkbit@15", "daisy@15"], None);
        let last = *roll.apart().unwrap().along().last().unwrap();
        last.most() - last.least()
    };
    let well = width("give_or_take: { speed: 0.1 mph, rev_rate: 5 rpm, rotation: 1 deg }");
    let badly = width("give_or_take: { speed: 2 mph, rev_rate: 60 rpm, rotation: 15 deg }");
    assert!(well < badly, "{well} {badly}");
}

/// Where balls leave the lane in many of the throws, everybody hears that it can't be told well, and the range doesn't shrink to nothing.
#[test]
fn what_leaves_the_lane_makes_no_false_certainty() {
    let shop = Shop::demo().unwrap();
    let balls = ["hawkbit@15", "daisy@15"];
    let width = |off: &str| {
        let more = format!("give_or_take: {{ speed: {off} mph }}");
        let roll = rolled(&shop, &bowler(&more), &balls, Some("short-house"));
        let apart = roll.apart().unwrap().clone();
        let last = *apart.along().last().unwrap();
        (last.most() - last.least(), last.is_whole(), apart)
    };
    let (well, ..) = width("1");
    for off in ["6", "9", "13"] {
        let (wide, whole, apart) = width(off);
        assert!(wide >= well, "give or take {off}: {wide}, not {well}");
        let (gone, of) = apart.off_the_lane();
        assert_eq!(whole, gone == 0);
        let doubted = |reader| {
            apart
                .said()
                .of(reader)
                .starts_with("We can't tell this well.")
        };
        for reader in [Audience::Newcomer, Audience::League, Audience::Fitter] {
            assert_eq!(doubted(reader), 4 * gone > of, "{off}: {gone} of {of}");
        }
    }
    let (gone, of) = width("13").2.off_the_lane();
    assert!(4 * gone > of, "{gone} of {of}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// Numbers that are less certain give no narrower range, where every throw stays on the lane.
    #[test]
    fn less_certain_is_never_narrower(speed in 13..20_i64, revs in 120..420_i64, rotation in 10..70_i64, lane in 0..3_usize) {
        let shop = Shop::demo().unwrap();
        let lane = ["medium-house", "long-house", "medium-flat"][lane];
        let apart = |off: i64| {
            let text = format!(
                "intent: hook\nexperience: league\nspeed: {{ value: {speed} mph, where: release }}\nrev_rate: {revs} rpm\n\
                 rotation: {rotation} deg\nball_now: {{ whose: own, weight: 15 lb }}\ngive_or_take: {{ speed: {off} mph }}\n"
            );
            let document = Document::parse("bowler.yaml", text.as_bytes(), Format::Yaml).unwrap();
            let bowler = Bowler::read(&document).unwrap();
            rolled(&shop, &bowler, &["hawkbit@15", "daisy@15"], Some(lane)).apart().unwrap().clone()
        };
        let (well, badly) = (apart(1), apart(3));
        for (well, badly) in std::iter::zip(well.along(), badly.along()) {
            if badly.is_whole() {
                prop_assert!(badly.least() <= well.least() + 1e-9, "{badly:?} {well:?}");
                prop_assert!(badly.most() >= well.most() - 1e-9, "{badly:?} {well:?}");
            }
        }
    }
}

#[test]
fn what_is_not_measured_is_told_all_at_once() {
    let shop = Shop::demo().unwrap();
    let text = "intent: hook\nrev_rate: high\n";
    let document = Document::parse("bowler.yaml", text.as_bytes(), Format::Yaml).unwrap();
    let bowler = Bowler::read(&document).unwrap();
    let balls = ["daisy@12".to_owned()];
    let Err(Trouble::NotMeasured { missing }) = shop.roll(&bowler, &balls, None) else {
        unreachable!("nothing is rolled without a speed");
    };
    assert_eq!(missing.len(), 2);
    assert!(missing[0].contains("ball speed") && missing[1].contains("as a number"));
}
