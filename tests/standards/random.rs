//! Whatever is known of a ball: knowing less never makes a pass, only print decides, and any number is judged.

use proptest::prelude::*;
use spanwright::standards::{
    BallFacts, Body, Date, Digit, Finding, HoleFacts, HoleKind, Period, Strength, Verdict,
};

use Verdict::{Ask, Pass};

use crate::standards;

fn grip(digit: Digit, used: Option<bool>) -> HoleFacts {
    let mut hole = HoleFacts::new(HoleKind::Grip(digit));
    hole.used = used;
    hole
}

fn holes() -> impl Strategy<Value = Vec<HoleFacts>> {
    let used = || prop::option::of(any::<bool>());
    let thumb = prop::option::of(used());
    (thumb, used(), any::<bool>(), any::<bool>()).prop_map(|(thumb, used, balance, bare)| {
        let mut holes = Vec::new();
        if bare {
            return holes;
        }
        holes.extend(thumb.map(|used| grip(Digit::Thumb, used)));
        holes.push(grip(Digit::Middle, used));
        if balance {
            holes.push(HoleFacts::new(HoleKind::Balance));
        }
        holes
    })
}

fn balls() -> impl Strategy<Value = BallFacts> {
    let year = (1985_u16..2027).prop_map(|year| Period::read(&year.to_string()).unwrap());
    (
        prop::option::of(500_i64..1700),
        prop::option::of(year),
        prop::option::of(holes()),
        prop::option::of(-400_i64..400),
        prop::option::of(2400_i64..2900),
        (
            prop::option::of(60_i64..7000),
            prop::option::of(any::<bool>()),
            600_i64..900,
        ),
    )
        .prop_map(
            |(weight, approved, holes, side, rg, (absorption, high, hardness))| {
                let mut ball = BallFacts::default();
                (ball.weight, ball.approved, ball.holes) = (weight, approved, holes);
                (ball.side, ball.halves) = (side, side.map(i64::abs));
                (ball.rg, ball.absorption, ball.high_performance) = (rg, absorption, high);
                ball.hardness_approved = Some(hardness);
                ball
            },
        )
}

fn dates() -> impl Strategy<Value = Date> {
    (2005_u16..2030, 1_u8..=12, 1_u8..=28)
        .prop_map(|(year, month, day)| Date::new(year, month, day).unwrap())
}

proptest! {
    /// Forgetting something never turns a broken or open limit into one that is kept.
    #[test]
    fn knowing_less_never_makes_a_pass(
        ball in balls(),
        date in dates(),
        body in prop::sample::select(Body::ALL.to_vec()),
        forget in 0..6,
    ) {
        let mut less = ball.clone();
        match forget {
            0 => less.weight = None,
            1 => less.approved = None,
            2 => less.absorption = None,
            3 => less.high_performance = None,
            4 => less.rg = None,
            _ => for hole in less.holes.iter_mut().flatten() { hole.used = None; },
        }
        let before = standards().judge(&ball, date, body);
        for finding in standards().judge(&less, date, body) {
            if finding.verdict() == Pass {
                let was = before.iter().find(|other| other.id() == finding.id() && other.about() == finding.about());
                prop_assert_eq!(was.map(Finding::verdict), Some(Pass), "{:?}", finding);
            }
        }
    }

    /// Only what was published or follows from it says pass or fail; and the same ball gets the same answer.
    #[test]
    fn only_print_decides(ball in balls(), date in dates(), body in prop::sample::select(Body::ALL.to_vec())) {
        let findings = standards().judge(&ball, date, body);
        prop_assert_eq!(&findings, &standards().judge(&ball, date, body));
        for finding in findings {
            if finding.verdict() != Ask {
                let strength = finding.strength();
                prop_assert!(
                    matches!(strength, Some(Strength::Published | Strength::PublishedWeak | Strength::Derived)),
                    "{:?}", finding
                );
                prop_assert!(!finding.clause().is_empty());
            }
        }
    }

    /// No number makes it stumble.
    #[test]
    fn any_number_is_judged(number in any::<i64>(), date in dates()) {
        let mut ball = BallFacts::default();
        (ball.weight, ball.rg, ball.side, ball.top) = (Some(number), Some(number), Some(number), Some(number));
        (ball.diameter, ball.absorption, ball.plus_marks) = (Some(number), Some(number), Some(number));
        ball.densities = vec![number];
        let mut hole = HoleFacts::new(HoleKind::Grip(Digit::Middle));
        (hole.diameter, hole.depth) = (Some(number), Some(number));
        ball.holes = Some(vec![hole]);
        for body in Body::ALL {
            prop_assert!(!standards().judge(&ball, date, body).is_empty());
            let _ = standards().static_limits(number, date, body, true, false);
        }
    }
}
