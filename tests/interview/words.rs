//! What people say, and what is understood.

use rstest::rstest;
use spanwright::advice::Shop;
use spanwright::advice::interview::{Misheard, Request};
use spanwright::bowler::Bowler;

fn heard(id: &str, said: &str) -> Result<Bowler, Misheard> {
    let shop = Shop::demo().unwrap();
    let interview = shop.interview().unwrap();
    let mut bowler = Bowler::unheard();
    if id == "service" {
        bowler = bowler.owning(&[Some(4)]).unwrap();
    }
    interview.hear(&bowler, id, said)
}

#[rstest]
#[case("intent", "straight", "bowler.intent", 0)]
#[case("intent", "  Straight.", "bowler.intent", 0)]
#[case("intent", "1", "bowler.intent", 0)]
#[case("intent", "I’d like to learn to curve it", "bowler.intent", 1)]
#[case("intent", "maybe curve later", "bowler.intent", 1)]
#[case("intent", "it hooks", "bowler.intent", 2)]
#[case("ball_now_weight", "12", "bowler.ball_now_weight", 1200)]
#[case("ball_now_weight", "12 pounds", "bowler.ball_now_weight", 1200)]
#[case("ball_now_weight", "twelve pounds", "bowler.ball_now_weight", 1200)]
#[case("ball_now_weight", "about 12lb", "bowler.ball_now_weight", 1200)]
#[case("ball_now_weight", "a 12 pounder", "bowler.ball_now_weight", 1200)]
#[case("budget", "$150", "bowler.budget", 15_000)]
#[case("budget", "150 bucks", "bowler.budget", 15_000)]
#[case("budget", "about 200", "bowler.budget", 20_000)]
#[case("age", "I'm 30 years old", "bowler.age", 30)]
#[case("age", "30", "bowler.age", 30)]
#[case(
    "body_weight",
    "I weigh about 150 pounds",
    "bowler.body_weight",
    15_000
)]
#[case("speed", "17", "bowler.speed", 170)]
// 15 mph at the pins left the hand 2.25 mph faster: the middle of the published "2 to 2.5 mph".
#[case("speed", "15 mph at the pins", "bowler.speed", 173)]
#[case("speed", "17 miles an hour at release", "bowler.speed", 170)]
#[case("revs", "about 300 rpm", "bowler.rev_rate", 300)]
#[case("revs", "a lot", "bowler.rev_level", 2)]
#[case("aches", "no", "bowler.aches", 0)]
#[case("aches", "back", "bowler.aches", 1 << 5)]
#[case("aches", "my wrist and my shoulder", "bowler.aches", (1 << 2) | (1 << 4))]
#[case("aches", "wrist, elbow", "bowler.aches", (1 << 2) | (1 << 3))]
#[case("lanes", "oily and dry", "bowler.lanes", (1 << 1) | (1 << 2))]
#[case("owned", "none", "owned.count", 0)]
#[case("owned", "two solid, plastic", "owned.count", 3)]
#[case("owned", "two solid, plastic", "owned.covers", 0b101)]
#[case("owned", "a ball", "owned.count", 1)]
#[case("thumb", "no thumb", "bowler.thumb", 1)]
#[case("service", "about 60 games", "owned.games_since_service", 60)]
#[case("fit_works", "y", "card.works", 1)]
#[case("fit_works", "not really", "card.works", 0)]
#[case("fit_works", "Yeah", "card.works", 1)]
#[case("fit_works", "sure", "card.works", 1)]
#[case("fit_works", "yes", "card.works", 1)]
#[case("thumb", "yep", "bowler.thumb", 0)]
#[case("thumb", "nope", "bowler.thumb", 1)]
#[case("thumb", "yeah, it goes in", "bowler.thumb", 0)]
#[case("aches", "nope", "bowler.aches", 0)]
#[case("injuries", "Not really.", "bowler.injuries", 0)]
#[case("intent", "hook", "bowler.intent", 2)]
#[case("intent", "straight please", "bowler.intent", 0)]
#[case("age", "thirty five", "bowler.age", 35)]
#[case("age", "forty-two", "bowler.age", 42)]
#[case("budget", "two hundred", "bowler.budget", 20_000)]
#[case("budget", "a hundred and fifty", "bowler.budget", 15_000)]
#[case("budget", "one hundred fifty bucks", "bowler.budget", 15_000)]
#[case("budget", "under 200", "bowler.budget", 20_000)]
#[case("budget", "200 max", "bowler.budget", 20_000)]
#[case("budget", "$1,200", "bowler.budget", 120_000)]
#[case("body_weight", "180ish", "bowler.body_weight", 18_000)]
#[case("ball_now_weight", "12#", "bowler.ball_now_weight", 1200)]
// 5.4 kg at 0.45359237 kg a pound is 11.905 lb.
#[case("ball_now_weight", "5,4 kg", "bowler.ball_now_weight", 1190)]
#[case("ball_now_weight", "12-1/2", "bowler.ball_now_weight", 1250)]
#[case("owned", "one plastic one solid", "owned.count", 2)]
#[case("owned", "one plastic one solid", "owned.covers", 0b101)]
#[case("owned", "a plastic one", "owned.count", 1)]
#[case("owned", "two solid one plastic", "owned.count", 3)]
#[case("aches", "3 and 5", "bowler.aches", (1 << 2) | (1 << 4))]
fn people_are_understood(
    #[case] id: &str,
    #[case] said: &str,
    #[case] name: &str,
    #[case] value: i64,
) {
    assert_eq!(heard(id, said).unwrap().answer(name), Some(value));
}

#[rstest]
#[case("age", "don't know")]
#[case("age", "Dunno")]
#[case("age", "I don't know.")]
#[case("budget", "no limit")]
#[case("colour_wish", "any")]
#[case("hold_passed", "I haven't tried")]
#[case("owned", "idk")]
#[case("hold_passed", "i havent tried")]
#[case("ball_now_weight", "I haven't tried")]
#[case("cover_wish", "no preference")]
#[case("cover_wish", "nope")]
#[case("colour_wish", "whatever you think")]
#[case("intent", "No preference")]
#[case("experience", "just for fun")]
fn not_to_know_is_an_answer(#[case] id: &str, #[case] said: &str) {
    let bowler = heard(id, said).unwrap();
    let shop = Shop::demo().unwrap();
    let interview = shop.interview().unwrap();
    let question = interview
        .questions()
        .iter()
        .find(|question| question.id() == id)
        .unwrap();
    for name in question.answers() {
        assert!(bowler.is_unknown(name), "{name}");
    }
    assert!(bowler.to_yaml().contains("unknown"));
}

#[rstest]
#[case("intent", "strait", "Did you mean \"straight\"?")]
#[case("intent", "not straight", "Please say one of")]
#[case("intent", "", "\"I don't know\" is one too")]
#[case("age", "old", "Please say it like \"30\"")]
#[case("age", "2", "the age can't be 2 years")]
#[case("ball_now_weight", "40", "It lies between 4 lb and 16 lb")]
#[case("experience", "league and tournaments", "Which is it")]
#[case("body_weight", "-150", "You said \"-150\". It can't be below zero.")]
#[case("budget", "-5", "You said \"-5\". It can't be below zero.")]
#[case("budget", "-$5", "below zero")]
#[case("budget", "$-5", "below zero")]
#[case("ball_now_weight", "\u{2212}12", "below zero")]
#[case("hold_passed", "-12 lb", "below zero")]
#[case("age", "minus thirty", "below zero")]
#[case(
    "budget",
    "150-200",
    "You said \"150-200\". Which one is it: 150 or 200?"
)]
#[case("hold_passed", "12 or 13", "Which one is it: 12 or 13?")]
#[case("hold_passed", "twelve or thirteen", "Which one is it: 12 or 13?")]
#[case("ball_now_weight", "12,13", "Which one is it: 12 or 13?")]
#[case("age", "30, 40, 50", "Please say one number.")]
#[case("age", "under 18", "I didn't understand \"under 18\"")]
#[case("hold_passed", "none", "say \"I don't know\" here")]
#[case(
    "experience",
    "yes",
    "Which is it: \"my first ball\" or \"I bowl in a league\""
)]
#[case("experience", "nope", "You said \"nope\". Which is it")]
#[case("owned", "plastic and none", "Please say \"none\" alone")]
#[case("owned", "none, sold them", "Please say \"none\" alone")]
#[case("owned", "3 and 5", "name the cover of each ball")]
#[case("aches", "wrist and none", "alone")]
#[case("lanes", "Nope", "You said \"Nope\". Which is it: \"ordinary\"")]
#[case("aches", "-3", "I didn't understand \"-3\"")]
#[case("owned", "Forty-two", "I didn't understand \"Forty-two\"")]
#[case("owned", "99 plastic", "I didn't understand")]
#[case("aches", "wrist and moonlight", "I didn't understand \"moonlight\"")]
fn what_is_not_understood_is_said_so(#[case] id: &str, #[case] said: &str, #[case] words: &str) {
    let told = heard(id, said).unwrap_err().to_string();
    assert!(told.contains(words), "{told}");
    let sentences = told.split_inclusive(['.', '?', '!']);
    for sentence in sentences {
        assert!(sentence.split_whitespace().count() <= 60, "{sentence}");
    }
}

#[test]
fn answers_that_contradict_each_other_are_explained() {
    let shop = Shop::demo().unwrap();
    let interview = shop.interview().unwrap();
    let held = Bowler::unheard()
        .answered("bowler.hold_passed", 1400)
        .unwrap();
    let told = interview
        .hear(&held, "hold_failed", "13 pounds")
        .unwrap_err();
    assert_eq!(
        told.to_string(),
        "That can't be right: 13 lb can't be too much: 14 lb was held in comfort. Try both weights again. Say \"go back\" to change what you said before."
    );
    assert!(matches!(told, Misheard::Impossible(_)));
    assert!(interview.hear(&held, "hold_failed", "15").is_ok());
}

/// Asking whether somebody meant the very words that weren't understood helps nobody.
#[test]
fn nobody_is_offered_their_own_words() {
    let shop = Shop::demo().unwrap();
    let interview = shop.interview().unwrap();
    for question in interview.questions() {
        for said in ["none", "plastic", "yes", "no", "none and none", "a, b"] {
            let Err(why) = interview.hear(&Bowler::unheard(), question.id(), said) else {
                continue;
            };
            let offer = format!("Did you mean \"{said}\"");
            assert!(!why.to_string().contains(&offer), "{why}");
        }
    }
}

#[test]
fn a_request_is_no_answer_and_an_answer_no_request() {
    let shop = Shop::demo().unwrap();
    let interview = shop.interview().unwrap();
    let find = |id: &str| {
        interview
            .questions()
            .iter()
            .find(|question| question.id() == id)
            .unwrap()
    };
    let (intent, aches) = (find("intent"), find("aches"));
    assert_eq!(interview.request(intent, "?"), Some(Request::Help));
    assert_eq!(interview.request(intent, "Help!"), Some(Request::Help));
    assert_eq!(interview.request(intent, "back"), Some(Request::Back));
    assert_eq!(interview.request(intent, "stop"), Some(Request::Stop));
    assert_eq!(interview.request(intent, "straight"), None);
    // Somebody's back may hurt.
    assert_eq!(interview.request(aches, "back"), None);
    assert_eq!(interview.request(aches, "go back"), Some(Request::Back));
}

#[test]
fn any_text_is_heard_or_refused() {
    let shop = Shop::demo().unwrap();
    let interview = shop.interview().unwrap();
    let texts = [
        "\u{0}",
        "\u{202E}",
        "🎳",
        "999999999999999999999999",
        "1/0",
        "0.0.0",
        "$",
        ",",
        "and",
        " and , and ",
        "~",
        "'",
        "\"\"",
        "40 40 40",
        "9223372036854775808 plastic",
        "two",
        "1e9",
        "½",
        "－12",
    ];
    for question in interview.questions() {
        for text in texts {
            if let Err(why) = interview.hear(&Bowler::unheard(), question.id(), text) {
                assert!(!why.to_string().contains(char::is_control), "{why}");
            }
        }
    }
    assert!(matches!(
        interview.hear(&Bowler::unheard(), "nothing", "x"),
        Err(Misheard::NoQuestion(_))
    ));
    let long = "x".repeat(1_000_000);
    assert_eq!(
        interview.hear(&Bowler::unheard(), "age", &long),
        Err(Misheard::TooLong)
    );
}
