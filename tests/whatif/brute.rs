//! The nearest turns against every step of every answer, ranked one by one through [`Shop::pick`], which shares neither the compiled
//! chain nor the search.

use rstest::rstest;
use spanwright::advice::{Picked, Shop, Turning, WhatIf};
use spanwright::bowler::{ANSWERS, Answer, Bowler, Shape};

use crate::demos::{demo, shop};

/// Answers with more steps are tried around the turns that were told, not from end to end.
const MOST: i64 = 3_000;

/// Whether a profile could be written down: the contradictions that reading refuses, told again in other words.
pub fn writable(bowler: &Bowler) -> bool {
    let told = |name: &str| bowler.answer(name);
    if let (Some(passed), Some(failed)) = (told("bowler.hold_passed"), told("bowler.hold_failed"))
        && failed <= passed
    {
        return false;
    }
    if told("bowler.ball_now") == Some(0) && bowler.tells("bowler.ball_now_weight") {
        return false;
    }
    if told("bowler.thumb") == Some(1) && bowler.tells("hand.thumb_gauge") {
        return false;
    }
    let covers = told("owned.covers").unwrap_or(0);
    let needs_reactive = bowler.tells("owned.games_since_service");
    !needs_reactive || covers & 0b11100 != 0
}

/// The bowler with an answer changed; a cover owned more is a ball owned more, and the one key for the revs says one thing.
pub fn changed(bowler: &Bowler, name: &'static str, value: i64) -> Bowler {
    let bowler = match name {
        "bowler.rev_rate" => bowler.with("bowler.rev_level", None),
        "bowler.rev_level" => bowler.with("bowler.rev_rate", None),
        _ => bowler.clone(),
    };
    let other = bowler.with(name, Some(value));
    let covers = other.answer("owned.covers").unwrap_or(0);
    let count = other.answer("owned.count").unwrap_or(0);
    let owned = i64::from(covers.count_ones());
    match owned > count {
        true => other.with("owned.count", Some(owned)),
        false => other,
    }
}

struct Tried<'a> {
    shop: &'a Shop,
    bowler: &'a Bowler,
    now: Picked,
    found: WhatIf,
}

impl Tried<'_> {
    /// What is picked with an answer changed, if it is something else and could be written down.
    fn other(&self, name: &'static str, value: i64) -> Option<Picked> {
        let other = changed(self.bowler, name, value);
        if !writable(&other) {
            return None;
        }
        Some(self.shop.pick(&other).unwrap()).filter(|picked| *picked != self.now)
    }

    fn told(&self, name: &str) -> Vec<(i64, Picked)> {
        let turns = self.found.turns().iter();
        let turns = turns.filter(|turn| turn.step().fact() == name);
        let mut turns: Vec<(i64, Picked)> = turns
            .map(|turn: &Turning| (turn.step().to(), turn.picked().clone()))
            .collect();
        turns.sort_by_key(|(value, _)| *value);
        turns
    }

    /// Where the bowler stands: what was answered, else what the rules assume.
    fn standing(&self, name: &str) -> Option<i64> {
        let vocabulary = self.shop.vocabulary();
        let mut assumed = self.shop.rules().assumptions().iter();
        let assumed = assumed.find(|a| vocabulary.fact(a.fact()).name == name);
        let assumed = assumed.and_then(|a| a.value());
        self.bowler.answer(name).or(assumed)
    }

    /// The nearest turn of a number on each side of where it stands; of one that isn't known, steps that turn if there are any.
    fn number(&self, answer: &Answer, (lowest, highest): (i64, i64)) {
        let name = answer.name();
        let told = self.told(name);
        let nearest = |values: &mut dyn Iterator<Item = i64>| {
            for value in values {
                if let Some(picked) = self.other(name, value) {
                    return Some((value, picked));
                }
            }
            None
        };
        let Some(stands) = self.standing(name) else {
            let any = nearest(&mut (lowest..=highest));
            assert_eq!(any.is_some(), !told.is_empty(), "{name}");
            for (value, picked) in told {
                assert_eq!(self.other(name, value), Some(picked), "{name}");
            }
            return;
        };
        let below = nearest(&mut (lowest..stands).rev());
        let above = nearest(&mut (stands + 1..=highest));
        let wanted: Vec<(i64, Picked)> = below.into_iter().chain(above).collect();
        assert_eq!(told, wanted, "{name}");
    }

    fn words(&self, answer: &Answer, values: impl Iterator<Item = i64>) {
        let name = answer.name();
        let turns = |value: i64| Some((value, self.other(name, value)?));
        let wanted: Vec<(i64, Picked)> = values.filter_map(turns).collect();
        assert_eq!(self.told(name), wanted, "{name}");
    }
}

#[rstest]
#[case("first-ball")]
#[case("league-tired-ball")]
#[case("sore-thumb")]
#[case("two-handed-no-thumb")]
#[case("left-handed-child")]
fn no_nearer_step_was_missed(#[case] file: &str) {
    let (shop, bowler) = (shop(), demo(file));
    let tried = Tried {
        now: shop.pick(&bowler).unwrap(),
        found: shop.what_if(&bowler).unwrap(),
        shop: &shop,
        bowler: &bowler,
    };
    let of_person = |answer: &&Answer| {
        let name = answer.name();
        name.starts_with("bowler.") || name.starts_with("owned.") || name.starts_with("card.")
    };
    for answer in ANSWERS.iter().filter(of_person) {
        let standing = tried.standing(answer.name());
        match answer.shape() {
            Shape::Number {
                lowest, highest, ..
            } if highest - lowest <= MOST => tried.number(answer, (lowest, highest)),
            Shape::Choice(words) => tried.words(answer, 0..words.len() as i64),
            Shape::Flag => tried.words(answer, 0..2),
            Shape::Set(words) => {
                let bits = (0..words.len()).map(|bit| standing.unwrap_or(0) ^ (1 << bit));
                // Of a set that nobody knows, the empty one is a step as well.
                let none = standing.is_none().then_some(0);
                let mut sets: Vec<i64> = bits.chain(none).collect();
                sets.sort_unstable();
                tried.words(answer, sets.into_iter());
            }
            _ => {}
        }
    }
}

/// Two dollars on either side of where the budget turns, cent by cent.
#[rstest]
#[case("first-ball")]
#[case("sore-thumb")]
#[case("two-handed-no-thumb")]
fn the_budget_turns_at_that_very_cent(#[case] file: &str) {
    let (shop, bowler) = (shop(), demo(file));
    let found = shop.what_if(&bowler).unwrap();
    let now = shop.pick(&bowler).unwrap();
    let stands = bowler.answer("bowler.budget").unwrap();
    let turns = found.turns().iter();
    let turns: Vec<&Turning> = turns
        .filter(|turn| turn.step().fact() == "bowler.budget")
        .collect();
    assert_eq!(turns.len(), 2);
    for turn in turns {
        let to = turn.step().to();
        assert_eq!((turn.keeps().unwrap().0 - to).abs(), 1);
        for cents in (to - 200).max(0)..=to + 200 {
            let picked = shop
                .pick(&bowler.with("bowler.budget", Some(cents)))
                .unwrap();
            let between = (stands.min(to)..=stands.max(to)).contains(&cents);
            match between && cents != to {
                true => assert_eq!(picked, now, "{cents}"),
                false if cents == to => assert_eq!(&picked, turn.picked()),
                false => {}
            }
        }
    }
}
