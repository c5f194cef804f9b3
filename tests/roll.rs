//! A roll keeps its promises: mirrored hands are mirror images, a ball against itself differs in nothing, the line comes to its board, and
//! what can't be is told.

#![allow(clippy::unwrap_used)]

mod roll {
    mod door;
    mod words;
}

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

/// The second ball is thrown on the first one's line, so swapping them changes the line. On a lane alike on every board the boards between
/// them change by little more than that; the sign turns.
#[test]
fn swapped_balls_differ_the_other_way() {
    let shop = Shop::demo().unwrap();
    let lane = Some("medium-flat");
    let one = rolled(&shop, &bowler(""), &["daisy@15", "hawkbit@15"], lane);
    let other = rolled(&shop, &bowler(""), &["hawkbit@15", "daisy@15"], lane);
    let at_pins = |roll: &Roll| *roll.apart().unwrap().along().last().unwrap();
    let (one, other) = (at_pins(&one), at_pins(&other));
    assert_eq!((one.feet(), other.feet()), (60.0, 60.0));
    // By the physics polyester hooks less than a matte reactive solid: the cover with the lower friction (P4, common practice).
    assert!(one.least() > 0.0 && other.most() < 0.0);
    assert!((one.boards() + other.boards()).abs() < 0.2 * one.boards().abs());
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
