//! The writing alone, on a made-up advice. What the rules make of the demo bowlers is held in `tests/report.rs`.

use super::{Look, Term, json, text};
use crate::advice::{
    Advice, Assumed, Behind, Bill, Caution, DrillSpec, NearMiss, Pick, Reason, RuledOut, Settled,
    SpecNumber, Texts, WorkStep,
};
use crate::rules::{Audience, Severity};

const ALL: [Audience; 3] = [Audience::Newcomer, Audience::League, Audience::Fitter];

fn reason(rule: &str, points: i64, shown: &str, role: &'static str, words: &str) -> Reason {
    Reason {
        rule: rule.into(),
        file: "rules/ball.yaml".into(),
        points,
        shown: shown.into(),
        role,
        common: false,
        facts: vec![("bowler.intent", "straight".into())],
        texts: Texts::alike(words),
        source: "common practice".into(),
        strength: "common practice",
    }
}

fn caution(severity: Severity, about: &str, action: Option<&str>, words: &str) -> Caution {
    Caution {
        severity,
        about: about.into(),
        action: action.map(Texts::alike),
        reason: reason(words, 0, "", "caution", words),
    }
}

fn pick(place: usize, name: &str, lines: Vec<Reason>) -> Pick {
    Pick {
        ball: format!("{}@12", name.to_lowercase()),
        name: name.into(),
        maker: "Ottersby".into(),
        weight: "12 lb".into(),
        cover: "polyester".into(),
        colours: "pink and white".into(),
        price: "$74.95".into(),
        out_the_door: "$129.85".into(),
        place,
        total: lines.iter().map(|line| line.points).sum(),
        by_customer: false,
        lines,
        behind: None,
        unit: Some("pin-out 1 in, top weight 2 oz".into()),
    }
}

fn number(name: &str, shop: &str, lines: Vec<Reason>) -> SpecNumber {
    SpecNumber {
        name: name.into(),
        meaning: format!("{name} in a line"),
        value: (!shop.is_empty()).then(|| lines.iter().map(|line| line.points).sum()),
        unit: "1/64 in",
        shop: shop.into(),
        blank: shop.is_empty().then(|| "Measure the hand.".into()),
        lines,
        cautions: Vec::new(),
    }
}

fn nothing() -> Advice {
    Advice {
        bowler: String::new(),
        cautions: Vec::new(),
        settled: Vec::new(),
        picks: Vec::new(),
        ruled_out: Vec::new(),
        near_misses: Vec::new(),
        assumptions: Vec::new(),
        questions: Vec::new(),
        bill: None,
        spec: DrillSpec::default(),
        drilling: None,
        offers: None,
        how_sure: None,
        drill_today: true,
        digest: "0000".into(),
    }
}

fn full() -> Advice {
    let plastic = "A plastic cover hardly grips the lane, so the ball keeps its line.";
    let mut second = pick(
        2,
        "Cowslip",
        vec![reason("price", 6, "+0.6", "points", "It is cheap.")],
    );
    second.behind = Some(Behind {
        points: 8,
        lacks: true,
        line: reason("plastic", 14, "+1.4", "points", plastic),
    });
    let mut alike = reason("on-the-shelf", 1, "+0.1", "points", "It is on the shelf.");
    alike.common = true;
    let work = WorkStep {
        id: "mark".into(),
        text: "Mark the centre line.".into(),
        because: "So that all agrees.".into(),
        source: "common practice".into(),
        strength: "common practice",
    };
    Advice {
        bowler: "Anna".into(),
        cautions: vec![
            caution(
                Severity::Serious,
                "person",
                Some("See a doctor before bowling."),
                "Pain at night is no matter of fit.",
            ),
            caution(
                Severity::Mild,
                "daisy@12",
                None,
                "Plastic may never hook much.",
            ),
            caution(
                Severity::Mild,
                "cowslip@12",
                None,
                "Not said of another ball.",
            ),
        ],
        settled: vec![Settled {
            stage: "weight".into(),
            value: "12 lb".into(),
            by_fitter: false,
            total: 14,
            lines: vec![reason(
                "two-up",
                14,
                "+1.4",
                "points",
                "A fitted ball is easier to carry.",
            )],
            runner_up: Some("13 lb".into()),
            not_more: None,
        }],
        picks: vec![
            pick(
                1,
                "Daisy",
                vec![
                    reason("plastic", 14, "+1.4", "points", plastic),
                    alike,
                    reason("dear", -3, "-0.3", "points", "It costs a little more."),
                ],
            ),
            second,
        ],
        ruled_out: vec![RuledOut {
            ball: "clover@12".into(),
            name: "Clover, 12 lb".into(),
            lines: vec![reason(
                "over-budget",
                0,
                "",
                "rule_out",
                "It comes to $6 over.",
            )],
        }],
        near_misses: vec![NearMiss {
            ball: "clover@12".into(),
            name: "Clover, 12 lb".into(),
            out_the_door: "$156.00".into(),
            over: "$6".into(),
        }],
        assumptions: vec![Assumed {
            fact: "bowler.skin".into(),
            meaning: "How your skin is".into(),
            value: Some("normal".into()),
            matters: true,
            reason: "Most hands are.".into(),
            source: "own choice".into(),
            strength: "own choice",
        }],
        questions: vec!["Does the thumb come out by itself?".into()],
        bill: Some(Bill {
            lines: vec![("Daisy, 12 lb".into(), "$74.95".into())],
            tax: "$9.90".into(),
            total: "$129.85".into(),
            total_cents: 12_985,
            ready_when: "Usually the same day.".into(),
            notes: vec!["Easing is free for 6 weeks.".into()],
        }),
        spec: DrillSpec {
            for_ball: Some("daisy@12".into()),
            copied_from_card: false,
            numbers: vec![
                number(
                    "thumb.forward_pitch",
                    "1/8 in R",
                    vec![
                        reason("start", 0, "0", "start", "Zero is a fair start."),
                        reason("bend", -8, "1/8 in R", "add", "The thumb bends well."),
                        reason("chart", 0, "1/4 in F", "dispute", "A chart says otherwise."),
                    ],
                ),
                number("thumb.bore", "", Vec::new()),
                number("thumb.slug", "", Vec::new()),
            ],
            work: vec![work.clone()],
            handover: vec![work],
        },
        ..nothing()
    }
}

fn hook() -> Term {
    Term {
        word: "hook".into(),
        also: vec!["hooks".into()],
        meaning: "the curve a ball makes near the pins.".into(),
    }
}

#[test]
fn says_the_action_before_the_reason_and_all_of_it_before_any_sale() {
    for audience in ALL {
        let text = text(&full(), &Look::plain(audience));
        let order = [
            "See a doctor",
            "Pain at night",
            "12 lb",
            "Daisy",
            "$129.85",
            "Measure the hand",
        ];
        let places: Vec<_> = order
            .iter()
            .map(|words| text.find(words).unwrap())
            .collect();
        assert!(places.is_sorted(), "{text}");
    }
}

#[test]
fn leaves_out_what_has_nothing_to_say() {
    for audience in ALL {
        let text = text(&nothing(), &Look::plain(audience));
        assert_eq!(text, "No ball on the shelf is right\n");
    }
}

#[test]
fn shows_only_reasons_that_speak_for_this_ball() {
    let text = text(&full(), &Look::plain(Audience::Newcomer));
    assert!(text.contains("hardly grips"));
    assert!(
        !text.contains("It is on the shelf"),
        "a common line is no reason"
    );
    assert!(!text.contains("Not said of another ball"));
    assert!(text.contains("The first has the edge."));
    assert!(text.contains("$6 over"));
}

#[test]
fn explains_a_word_once_where_it_first_appears() {
    let look = Look::plain(Audience::Newcomer).explaining([hook()]);
    let said = text(&full(), &look);
    let coloured = text(&full(), &look.coloured(true));
    assert_eq!(coloured.matches("(Hook: ").count(), 1);
    assert_eq!(said.matches("(Hook: ").count(), 1);
    assert!(said.find("may never hook").unwrap() < said.find("(Hook: ").unwrap());
    let look = Look::plain(Audience::League).explaining([hook()]);
    assert!(!text(&full(), &look).contains("(Hook: "));
}

#[test]
fn groups_blank_numbers_by_reason() {
    let text = text(&full(), &Look::plain(Audience::Newcomer));
    assert!(
        text.contains("Blank: thumb bore, thumb slug. Measure the hand."),
        "{text}"
    );
    assert_eq!(text.matches("Measure the hand.").count(), 1);
}

#[test]
fn shows_the_fitter_every_line_and_the_customer_none() {
    let fitter = text(&full(), &Look::plain(Audience::Fitter));
    for words in [
        "(1/4 in F)      Another school",
        "(bend;",
        "all alike",
        "Order of work",
        "over-budget: ",
    ] {
        assert!(fitter.contains(words), "{words} in {fitter}");
    }
    let customer = text(&full(), &Look::plain(Audience::Newcomer));
    assert!(!customer.contains("Another school") && customer.contains("disputed"));
    assert!(!customer.contains("+1.4"), "no scores for customers");
}

#[test]
fn keeps_to_the_width_and_to_plain_text() {
    for audience in ALL {
        for width in [40, 80, 100] {
            let text = text(
                &full(),
                &Look::plain(audience).wide(width).explaining([hook()]),
            );
            assert!(!text.contains('\u{1b}'));
            for line in text.lines() {
                assert!(line.chars().count() <= width, "{width}: {line}");
                assert_eq!(line, line.trim_end());
            }
        }
    }
    let coloured = text(&full(), &Look::plain(Audience::Newcomer).coloured(true));
    assert!(coloured.contains("\u{1b}[1;36m"));
}

#[test]
fn makes_control_characters_harmless() {
    let advice = Advice {
        bowler: "An\u{1b}[2Jna".into(),
        ..full()
    };
    let text = text(&advice, &Look::plain(Audience::Newcomer));
    assert!(!text.contains('\u{1b}'));
}

#[test]
fn adds_up_in_json_and_puts_cautions_before_picks() {
    let written = json(&full(), Audience::Newcomer);
    assert!(written.find("\"cautions\"").unwrap() < written.find("\"picks\"").unwrap());
    let answer: serde_json::Value = serde_json::from_str(&written).unwrap();
    assert_eq!(answer["contract"], 1);
    assert_eq!(answer["question"], "advise");
    for pick in answer["picks"].as_array().unwrap() {
        let lines = pick["lines"].as_array().unwrap();
        let sum: i64 = lines
            .iter()
            .map(|line| line["points"].as_i64().unwrap())
            .sum();
        assert_eq!(pick["total"], sum);
    }
    assert_eq!(answer["spec"]["numbers"][0]["value"], -8);
    assert!(answer["spec"]["numbers"][1]["value"].is_null());
    assert_eq!(answer["ruled_out"][0]["rule"], "over-budget");
    assert_eq!(written, json(&full(), Audience::Newcomer));
}

#[test]
fn marks_the_customers_own_choice_and_says_what_comes_before_it() {
    let mut advice = full();
    advice.picks[1].by_customer = true;
    let text = text(&advice, &Look::plain(Audience::Newcomer));
    assert!(text.contains("Your own choice: Cowslip, 12 lb"), "{text}");
    assert!(text.contains("What our reasons put first"));
    assert!(json(&advice, Audience::Newcomer).contains("\"question\": \"fit\""));
}
