//! The fit card keeps what was drilled, what the scales showed and what happened since; a used ball is the card's.

use rstest::rstest;
use spanwright::bowler::Bowler;
use spanwright::document::Document;

use crate::demo;
use crate::written::{bowler, parse};

#[test]
fn the_fit_card_keeps_its_words_and_spans() {
    let league = Bowler::read(&Document::read(&demo("league-tired-ball.yaml")).unwrap()).unwrap();
    let card = league.card().unwrap();
    assert_eq!(
        (card.ball(), card.date(), card.complaint()),
        (Some("the old solid"), Some("2024-09-12"), None)
    );
    assert_eq!(card.spans().len(), 2);
    assert_eq!(league.answer("card.ring_span"), Some(276));
    assert_eq!(league.answer("card.middle_lateral"), Some(-24));
}

const CARD: &str = "fit_card:\n  ball: the blue ball\n  serial: B7X1\n  layout: pin over the ring finger\n  \
                    statics: { top: 3/4 oz, left: 1/4 oz, thumb: 0.5 oz }\n  entries:\n    \
                    - { date: 2024-02-29, kind: ordered, text: one set }\n    \
                    - { date: 2024-02-29, kind: drilled }\n    \
                    - { date: 2025-01-01, kind: tapes, tapes: 2, text: two white }\n";

#[test]
fn the_card_keeps_the_years() {
    let bowler = bowler(CARD);
    let card = bowler.card().unwrap();
    assert_eq!(card.serial(), Some("B7X1"));
    assert_eq!(card.layout(), Some("pin over the ring finger"));
    let statics = card.statics();
    // 0.01 oz; left and thumb weight are below nothing.
    assert_eq!(
        (statics.top(), statics.right(), statics.finger()),
        (Some(75), Some(-25), Some(-50))
    );
    let entries: Vec<_> = card
        .entries()
        .iter()
        .map(|entry| (entry.date(), entry.kind(), entry.tapes()))
        .collect();
    assert_eq!(
        entries,
        [
            ("2024-02-29", "ordered", None),
            ("2024-02-29", "drilled", None),
            ("2025-01-01", "tapes", Some(2)),
        ]
    );
    assert_eq!(card.entries()[2].text(), Some("two white"));
    // A text that could play with a terminal doesn't get in.
    assert!(parse(&CARD.replace("two white", "\"two \\e[31mwhite\"")).is_err());
}

#[test]
fn the_card_keeps_what_the_scales_showed_before() {
    let card = "fit_card:\n  before: { weight: 15 lb 1 oz, statics: { top: 3 oz, left: 1/4 oz, finger: 0 oz } }\n";
    let bowler = bowler(&format!("{card}  weight: 14 lb 14 oz\n"));
    let before = bowler.card().unwrap().before();
    // 0.01 lb: 15 1/16 lb is 15.0625 lb.
    assert_eq!(before.weight(), Some(1506));
    let statics = before.statics();
    assert_eq!(
        (statics.top(), statics.right(), statics.finger()),
        (Some(300), Some(-25), Some(0))
    );
    // The readings after are the card's own, and stay apart.
    assert_eq!(bowler.answer("card.ball_weight"), Some(1488));
    assert_eq!(bowler.card().unwrap().statics(), Default::default());
}

#[rstest]
#[case("fit_card: { works: yes }\n")]
#[case("fit_card: { before: unknown }\n")]
#[case("fit_card: { before: { weight: unknown, statics: unknown } }\n")]
fn a_ball_that_was_not_weighed_before_has_no_readings(#[case] text: &str) {
    let bowler = bowler(text);
    assert_eq!(bowler.card().unwrap().before(), Default::default());
}

#[test]
fn a_used_ball_is_the_cards_unless_it_is_named() {
    let card = "fit_card: { ball: the blue ball, works: yes }\n";
    let plain = bowler(&format!("{card}used_ball: {{ holes: plugged }}\n"));
    let used = plain.used_ball().unwrap();
    assert_eq!(
        (used.ball(), used.is_plugged(), used.new_grip()),
        (Some("the blue ball"), true, None)
    );
    let placed = bowler(&format!(
        "{card}owned: [{{ name: the red ball }}]\nused_ball: {{ ball: the red ball, new_grip: {{ over: 2 1/2 L, up: 1/2 down, turned: 30 deg }} }}\n"
    ));
    let used = placed.used_ball().unwrap();
    let grip = used.new_grip().unwrap();
    assert_eq!(
        (used.ball(), used.is_plugged()),
        (Some("the red ball"), false)
    );
    assert_eq!((grip.over(), grip.up(), grip.turned()), (-160, -32, 300));
    // The card is of another ball, so somebody has to look at this one's holes.
    assert!(
        placed
            .questions()
            .iter()
            .any(|q| q.text().contains("another ball"))
    );
}
