//! What the profile has settled counts; and where no ball is right, that is said.

use spanwright::advice::{Shop, Trouble};
use spanwright::report::{self, Look};
use spanwright::rules::Audience;

use crate::profile;

/// Straight, 14 lb passed. Left alone the pick is the cheapest plain ball in 14 lb.
const STRAIGHT: &str = "intent: straight\nexperience: first ball\nhold_test: { passed: 14 lb }\n\
    ball_now: { whose: house, weight: 13 lb }\nbudget: $200\n";

fn text(shop: &Shop, profile: &str, ball: &str) -> String {
    let answer = shop.why_not(&crate::profile(profile), ball).unwrap();
    report::why_not_text(&answer, &Look::plain(Audience::Newcomer))
}

#[test]
fn the_pick_itself_is_said_to_be_the_pick() {
    let shop = Shop::demo().unwrap();
    let answer = shop.why_not(&profile(STRAIGHT), "daisy@14").unwrap();
    let [fate] = answer.fates() else { panic!() };
    assert!(fate.is_pick() && !answer.is_fixed());
    assert_eq!((fate.place(), fate.behind_pick()), (1, 0));
    assert!(text(&shop, STRAIGHT, "daisy@14").contains("This is the pick"));
}

#[test]
fn a_ball_that_is_settled_is_the_pick() {
    let shop = Shop::demo().unwrap();
    let fixed = format!("{STRAIGHT}settled: {{ ball: eyebright@13 }}\n");
    let advice = shop.advise(&profile(&fixed)).unwrap();
    assert_eq!(advice.picks()[0].ball(), "eyebright@13");
    let answer = shop.why_not(&profile(&fixed), "daisy@13").unwrap();
    assert!(answer.is_fixed());
    assert_eq!(answer.pick().unwrap().ball(), "eyebright@13");
    // The weight is then the ball's, and by the rules a plain ball of that weight comes first.
    let [fate] = answer.fates() else { panic!() };
    assert_eq!(fate.place(), 1);
    assert!(!fate.is_pick());
    let totals = |ball: &str| {
        advice
            .picks()
            .iter()
            .find(|pick| pick.ball() == ball)
            .unwrap()
            .total()
    };
    assert_eq!(fate.total(), totals("daisy@13"));
    assert_eq!(
        fate.behind_pick(),
        totals("eyebright@13") - totals("daisy@13")
    );
    assert!(fate.behind_pick() < 0);
    assert!(text(&shop, &fixed, "daisy@13").contains("more than the pick"));
    assert!(text(&shop, &fixed, "eyebright@13").contains("fixed beforehand"));
}

/// Fixed against a rule: it is the pick all the same, and what speaks against it is told.
#[test]
fn a_settled_ball_may_be_ruled_out() {
    let shop = Shop::demo().unwrap();
    let fixed = format!("{STRAIGHT}settled: {{ ball: bistort }}\n");
    let answer = shop.why_not(&profile(&fixed), "bistort@14").unwrap();
    let [fate] = answer.fates() else { panic!() };
    assert!(fate.is_pick() && fate.is_ruled_out() && answer.is_fixed());
    assert_eq!(fate.barriers()[0].line().rule(), "over-budget");
    let text = text(&shop, &fixed, "bistort@14");
    assert!(
        text.contains("fixed beforehand") && text.contains("over your $200"),
        "{text}"
    );
}

#[test]
fn a_weight_that_is_settled_counts() {
    let shop = Shop::demo().unwrap();
    let fixed = format!("{STRAIGHT}settled: {{ weight: 12 lb }}\n");
    let answer = shop.why_not(&profile(&fixed), "daisy").unwrap();
    assert_eq!(answer.fates()[0].ball(), "daisy@12");
    assert!(answer.fates()[0].is_pick());
    let contrast = shop.compare(&profile(&fixed), "daisy", "cowslip").unwrap();
    assert_eq!(contrast.one().ball(), "daisy@12");
    assert_eq!(contrast.other().ball(), "cowslip@12");
}

#[test]
fn a_settled_ball_that_is_not_there_is_told_as_advise_tells_it() {
    let shop = Shop::demo().unwrap();
    for settled in ["daisi", "eyebright@16", "eyebright@heavy"] {
        let fixed = format!("{STRAIGHT}settled: {{ ball: {settled} }}\n");
        let words = |trouble: Trouble| trouble.to_string();
        let advice = shop.advise(&profile(&fixed)).map(|_| ()).map_err(words);
        let answer = shop
            .why_not(&profile(&fixed), "daisy")
            .map(|_| ())
            .map_err(words);
        assert!(advice.is_err(), "{settled}");
        assert_eq!(advice, answer, "{settled}");
    }
}

/// Nobody who can't hold six pounds gets a ball.
#[test]
fn where_no_weight_is_right_there_is_no_pick() {
    let shop = Shop::demo().unwrap();
    let weak = "hold_test: { failed: 6 lb }\n";
    assert!(shop.advise(&profile(weak)).unwrap().picks().is_empty());
    let answer = shop.why_not(&profile(weak), "daisy").unwrap();
    assert!(answer.pick().is_none());
    assert_eq!((answer.left(), answer.attainable()), (0, 0));
    for fate in answer.fates() {
        let rules: Vec<&str> = fate.barriers().iter().map(|b| b.line().rule()).collect();
        assert!(rules.contains(&"no-weight-no-ball"), "{rules:?}");
    }
    let text = text(&shop, weak, "daisy@12");
    assert!(
        text.contains("There is no pick") && text.contains("No weight is right"),
        "{text}"
    );
    let contrast = shop
        .compare(&profile(weak), "daisy@12", "cowslip@12")
        .unwrap();
    assert!(contrast.one().is_ruled_out() && contrast.other().is_ruled_out());
    assert_eq!(
        contrast.sentence(Audience::Newcomer),
        "Neither will do: No weight is right for now, so no ball is either."
    );
}

/// Pain comes before any ball, whatever was asked.
#[test]
fn health_comes_first() {
    let shop = Shop::demo().unwrap();
    let bowler = crate::bowler("sore-thumb");
    let look = Look::plain(Audience::Newcomer);
    let why_not = report::why_not_text(&shop.why_not(&bowler, "daisy").unwrap(), &look);
    let contrast = shop.compare(&bowler, "daisy", "cowslip").unwrap();
    for text in [why_not, report::contrast_text(&contrast, &look)] {
        let doctor = text.find("See a doctor before bowling").unwrap();
        let ball = text.find("Daisy").unwrap();
        assert!(doctor < ball, "{text}");
    }
}

/// Where a model is out in every weight, the one told first has least against it, and of those the most points: the settled
/// weight, unless another makes up for being off it.
#[test]
fn a_model_that_is_out_is_told_in_the_weight_that_suits() {
    let shop = Shop::demo().unwrap();
    // Every hooking ball costs more than $180, drilled and taxed; 15 lb is what is thrown now.
    let poor = "intent: hook\nexperience: league\nball_now: {whose: own, weight: 15 lb}\n";
    for (budget, ball) in [("$180", "selfheal"), ("$20", "selfheal"), ("$20", "daisy")] {
        let poor = format!("{poor}budget: {budget}\n");
        let standing = shop.standing(&profile(&poor)).unwrap();
        let answer = standing.why_not(ball).unwrap();
        let best = &answer.fates()[0];
        assert_eq!(best.weight(), "15 lb", "{ball}");
        assert_eq!(best.barriers().len(), 1);
        assert_eq!(best.barriers()[0].line().rule(), "over-budget");
        let words = text(&shop, &poor, ball);
        assert!(words.contains("comes nearest in 15 lb"), "{words}");
        assert!(!words.contains("Best in"), "{words}");
        let first = words.find("In other weights").unwrap();
        let alone = "But for that it would be the only ball left.";
        assert_eq!(
            words[..first].contains(alone),
            answer.left() == 0,
            "{words}"
        );
        // Held against another, it is taken in the same weight.
        let contrast = standing.compare(ball, "cowslip@12").unwrap();
        assert_eq!(contrast.one().ball(), best.ball());
    }
}

/// A customer who is told the sum is not told it twice; the fitter sees what the rule looked at.
#[test]
fn what_the_reason_says_is_not_said_again() {
    let shop = Shop::demo().unwrap();
    let bowler = crate::bowler("first-ball");
    // Over the budget: the reason has the sum. Too far from the settled weight: it has not how far.
    for (audience, over, far) in [
        (
            Audience::Newcomer,
            1,
            "How far its weight is from the settled one: 3 lb. At most 2 lb would do.",
        ),
        (
            Audience::League,
            1,
            "How far its weight is from the settled one: 3 lb. At most 2 lb would do.",
        ),
        (
            Audience::Fitter,
            2,
            "How far its weight is from the settled one: found 3 lb, wanted at most 2 lb.",
        ),
    ] {
        let said = |ball: &str| {
            let answer = shop.why_not(&bowler, ball).unwrap();
            let text = report::why_not_text(&answer, &Look::plain(audience));
            text.split_whitespace().collect::<Vec<_>>().join(" ")
        };
        let text = said("hawkbit@12");
        assert_eq!(text.matches("$14.38").count(), over, "{text}");
        assert!(
            said("marsh-marigold@15").contains(far),
            "{}",
            said("marsh-marigold@15")
        );
    }
}
