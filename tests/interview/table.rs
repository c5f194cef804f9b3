//! The table of questions leaves nothing out that a pick may hang on.

use std::collections::BTreeSet;

use spanwright::advice::Shop;
use spanwright::bowler::{self, Bowler, Shape};

use crate::customers::{Chance, complete, pick};

/// Every answer that changes some made-up customer's pick is asked for, or stands among those that never are.
#[test]
fn whatever_changes_a_pick_is_asked_for_or_says_why_not() {
    let shop = Shop::demo().unwrap();
    let interview = shop.interview().unwrap();
    let asked = interview
        .questions()
        .iter()
        .flat_map(|q| q.answers().iter().copied());
    let never = interview.never_asked().map(|(name, _)| name);
    let accounted: BTreeSet<&str> = asked.chain(never).collect();
    let mut chance = Chance::new(7);
    for _ in 0..25 {
        let (whole, _) = complete(&interview, &Bowler::unheard(), &mut chance);
        let before = pick(&shop, &whole);
        for answer in bowler::ANSWERS {
            let values = match answer.shape() {
                Shape::Number {
                    lowest, highest, ..
                } => vec![lowest, chance.between(lowest, highest), highest],
                Shape::Choice(words) => (0..words.len() as i64).collect(),
                Shape::Flag => vec![0, 1],
                Shape::Set(words) => (0..words.len()).map(|bit| 1 << bit).collect(),
                _ => Vec::new(),
            };
            if accounted.contains(answer.name()) {
                continue;
            }
            for value in values {
                let Ok(other) = whole.answered(answer.name(), value) else {
                    continue;
                };
                assert_eq!(
                    pick(&shop, &other),
                    before,
                    "{} turns a pick",
                    answer.name()
                );
            }
        }
    }
}

#[test]
fn no_question_says_what_customers_should_not_hear() {
    let shop = Shop::demo().unwrap();
    let interview = shop.interview().unwrap();
    for question in interview.questions() {
        let labels = question.choices().iter().map(|choice| choice.label());
        for text in labels.chain([question.ask(), question.help()]) {
            let small = text.to_lowercase();
            for word in [
                "newcomer",
                "senior",
                "stiff",
                "rolled out",
                "speed-dominant",
                "ledger",
                "rev level",
            ] {
                assert!(!small.contains(word), "{}: {text}", question.id());
            }
        }
        assert!(question.ask().ends_with('?'), "{}", question.ask());
    }
}

/// What is shown is understood when it is said, by its words and by its place.
#[test]
fn every_label_is_an_answer() {
    let shop = Shop::demo().unwrap();
    let interview = shop.interview().unwrap();
    for question in interview.questions() {
        let mut ready = Bowler::unheard();
        // The balls that a service is for.
        if question.id() == "service" {
            ready = ready.owning(&[Some(2)]).unwrap();
        }
        let hear = |said: &str| {
            let heard = interview.hear(&ready, question.id(), said);
            heard.unwrap_or_else(|why| panic!("{}: {said}: {why}", question.id()))
        };
        for choice in question.choices() {
            assert!(
                question.is_settled(&hear(choice.label())),
                "{}",
                choice.label()
            );
        }
        let others = [question.none(), question.other(), question.open()];
        let others = others
            .into_iter()
            .flatten()
            .chain(["I don't know", "dunno."]);
        for said in others.chain(question.such_as().iter().map(String::as_str)) {
            assert!(
                question.is_settled(&hear(said)),
                "{}: {said}",
                question.id()
            );
        }
    }
}

/// Costs follow the counter: what they want to do before how they turn the ball, the rack before the person, money late, colour last.
#[test]
fn the_order_is_that_of_the_counter() {
    let shop = Shop::demo().unwrap();
    let interview = shop.interview().unwrap();
    let cost = |id: &str| {
        let mut questions = interview.questions().iter();
        questions
            .find(|question| question.id() == id)
            .unwrap()
            .cost()
    };
    assert!(cost("intent") < cost("revs"));
    for person in ["age", "body_weight", "aches", "injuries"] {
        assert!(cost("ball_now_weight") < cost(person) && cost("hold_failed") < cost(person));
        assert!(cost(person) < cost("budget"));
    }
    let dearest = interview
        .questions()
        .iter()
        .map(|question| question.cost())
        .max();
    assert_eq!(dearest, Some(cost("colour_wish")));
}
