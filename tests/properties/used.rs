//! An old ball: every way to go on has a quote that adds up and a reason, and the numbers are those of a new ball.

use proptest::prelude::*;
use serde_json::{Value, json};
use spanwright::advice::Bill;
use spanwright::fitting::Sphere;
use spanwright::fitting::grip::Reference;
use spanwright::notation::Notation::Money;
use spanwright::report::{self, Look};
use spanwright::rules::Audience;

use crate::profiles::profile;
use crate::{SHOP, cases};

fn adds_up(bill: &Bill) -> bool {
    let cents = |text: &str| Money.read(text).unwrap();
    let net: i64 = bill.lines().iter().map(|(_, price)| cents(price)).sum();
    net + cents(bill.tax()) == bill.total_cents() && cents(bill.total()) == bill.total_cents()
}

proptest! {
    #![proptest_config(cases(96))]

    #[test]
    fn every_offer_adds_up_and_says_when_it_is_right(profile in profile()) {
        let bowler = profile.bowler();
        // No card makes the geometry stumble.
        let _ = bowler.old_holes(&Sphere::default(), Reference::OwnLine);
        let Ok(advice) = SHOP.fit_used(&bowler) else {
            prop_assert!(bowler.card().is_none(), "a card tells of a drilled ball");
            return Ok(());
        };
        let offers = advice.offers().unwrap();
        prop_assert!(advice.picks().is_empty());
        for offer in offers.list() {
            prop_assert!(adds_up(offer.bill()), "{}: {:?}", offer.id(), offer.bill());
            prop_assert!(offer.right_when().ends_with('.'), "{}", offer.id());
            let sources = offer.reasons().iter().all(|reason| !reason.source().is_empty());
            prop_assert!(sources, "{}", offer.id());
        }
        // What is charged for plugs and new holes is what is drilled.
        let redrill = offers.offer("redrill").unwrap();
        prop_assert_eq!(redrill.bill().lines(), advice.bill().unwrap().lines());
        let plugged = bowler.used_ball().is_some_and(|used| used.is_plugged());
        let filled = redrill.bill().lines().iter().any(|(label, _)| label.starts_with("Filling"));
        prop_assert_eq!(filled, !plugged);
        let text = report::text(&advice, &Look::plain(Audience::Newcomer).wide(200));
        prop_assert!(!text.contains(['{', '}']), "{text}");
        let answer: Value = serde_json::from_str(&report::json(&advice, Audience::Fitter)).unwrap();
        prop_assert_eq!(answer["offers"]["list"].as_array().unwrap().len(), offers.list().len());
    }

    /// Where the same grip and weight come out, every number is the one a new ball would get.
    #[test]
    fn the_fit_is_that_of_a_new_ball(profile in profile()) {
        let bowler = profile.without(&["settled"]).bowler();
        let (Ok(old), Ok(new)) = (SHOP.fit_used(&bowler), SHOP.advise(&bowler)) else {
            return Ok(());
        };
        prop_assume!(new.bill().is_some());
        for number in old.spec().numbers() {
            let other = new.spec().number(number.name());
            prop_assert_eq!(number.value(), other.and_then(|n| n.value()), "{}", number.name());
        }
    }

    /// Filling the holes beforehand never makes new holes dearer.
    #[test]
    fn plugged_is_never_dearer(profile in profile()) {
        let redrill = |holes: &str| {
            let bowler = profile.with("used_ball", json!({ "holes": holes }));
            let bowler = bowler.0.get("fit_card").is_some_and(Value::is_object).then(|| bowler.bowler())?;
            SHOP.offers(&bowler).ok().map(|offers| offers.offer("redrill").unwrap().bill().total_cents())
        };
        if let (Some(open), Some(plugged)) = (redrill("open"), redrill("plugged")) {
            prop_assert!(plugged < open);
        }
    }
}
