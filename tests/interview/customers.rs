//! Made-up customers: complete profiles by chance, and what they say when they are asked.

use spanwright::advice::interview::{Form, Interview, Next, Question};
use spanwright::advice::{Advice, Shop};
use spanwright::bowler::{self, Bowler, Shape};

/// A small generator (xorshift), so that the same number gives the same customer everywhere.
pub struct Chance(u64);

impl Chance {
    pub fn new(seed: u64) -> Chance {
        Chance(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1)
    }

    fn next(&mut self) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 11
    }

    /// A whole number from `lowest` to `highest`.
    pub fn between(&mut self, lowest: i64, highest: i64) -> i64 {
        let width = (highest - lowest + 1) as u64;
        lowest + (self.next() % width) as i64
    }

    /// True in so many of a hundred cases.
    pub fn percent(&mut self, percent: i64) -> bool {
        self.between(1, 100) <= percent
    }
}

/// A likely value of an answer, by chance.
fn value(name: &str, chance: &mut Chance) -> i64 {
    match bowler::answer(name).unwrap().shape() {
        Shape::Number {
            lowest, highest, ..
        } => {
            // People name round numbers, and most weights are whole pounds; now and then anything at all comes.
            let (low, high, step) = match name {
                _ if chance.percent(15) => (lowest, highest, 1),
                "bowler.age" => (6, 85, 1),
                "bowler.body_weight" => (5_000, 24_000, 100),
                "bowler.budget" => (6_000, 40_000, 100),
                "bowler.speed" => (120, 210, 5),
                "bowler.rev_rate" => (100, 480, 10),
                "owned.games_since_service" => (0, 200, 1),
                _ => (600, 1_600, 100),
            };
            chance.between(low / step, high / step) * step
        }
        Shape::Choice(words) => chance.between(0, words.len() as i64 - 1),
        Shape::Flag => chance.between(0, 1),
        Shape::Set(words) => match chance.between(0, 9) {
            0..=3 => 0,
            4..=7 => 1 << chance.between(0, words.len() as i64 - 1),
            _ => chance.between(0, (1 << words.len()) - 1),
        },
        _ => unreachable!("a new shape"),
    }
}

fn not_known(bowler: &Bowler, question: &Question) -> Bowler {
    let names = question.answers().iter();
    names.fold(bowler.clone(), |bowler, name| {
        bowler.not_known(name).unwrap()
    })
}

/// The profile with an answer to this question by chance; what contradicts another answer is drawn again.
fn answered(bowler: &Bowler, question: &Question, chance: &mut Chance) -> Bowler {
    for _ in 0..20 {
        if chance.percent(12) {
            break;
        }
        let tried = if question.form() == Form::Balls {
            let count = chance.between(0, 3);
            let cover = |chance: &mut Chance| (!chance.percent(15)).then(|| chance.between(0, 4));
            let covers: Vec<_> = (0..count).map(|_| cover(chance)).collect();
            bowler.owning(&covers)
        } else {
            let which = chance.between(0, question.answers().len() as i64 - 1);
            let name = question.answers()[which as usize];
            bowler.answered(name, value(name, chance))
        };
        if let Ok(bowler) = tried {
            return bowler;
        }
    }
    not_known(bowler, question)
}

/// Somebody who was asked everything that makes sense, beginning from `known`.
pub fn complete(interview: &Interview<'_>, known: &Bowler, chance: &mut Chance) -> (Bowler, usize) {
    let mut bowler = known.clone();
    let mut asked = 0;
    while let Some(question) = interview.unanswered(&bowler).first() {
        bowler = answered(&bowler, question, chance);
        asked += 1;
    }
    (bowler, asked)
}

/// What the customer, who is `whole`, says to this question.
pub fn says(bowler: &Bowler, question: &Question, whole: &Bowler) -> Bowler {
    if question.form() == Form::Balls && whole.tells("owned.count") {
        let covers: Vec<_> = whole.owned().iter().map(|ball| ball.cover()).collect();
        return bowler.owning(&covers).unwrap();
    }
    let told = |name: &&&'static str| whole.tells(name);
    match question.answers().iter().find(told) {
        Some(name) => bowler.answered(name, whole.answer(name).unwrap()).unwrap(),
        None => {
            let unknown = question.answers().iter().any(|name| whole.is_unknown(name));
            assert!(
                unknown,
                "`{}` makes no sense, yet it was asked",
                question.id()
            );
            not_known(bowler, question)
        }
    }
}

/// Asks until nothing more can change the pick: the profile and the number of questions.
pub fn interviewed(
    interview: &Interview<'_>,
    known: &Bowler,
    whole: &Bowler,
    mut next: impl FnMut(&Interview<'_>, &Bowler) -> Option<Question>,
) -> (Bowler, usize) {
    let mut bowler = known.clone();
    let mut asked = 0;
    while let Some(question) = next(interview, &bowler) {
        bowler = says(&bowler, &question, whole);
        asked += 1;
        assert!(
            asked <= interview.questions().len(),
            "a question came twice"
        );
    }
    (bowler, asked)
}

/// The question that the interview asks.
pub fn by_what_matters(interview: &Interview<'_>, bowler: &Bowler) -> Option<Question> {
    match interview.next(bowler) {
        Next::Ask(question) => Some(question),
        _ => None,
    }
}

/// Weight, grip and ball.
pub fn pick(shop: &Shop, bowler: &Bowler) -> [Option<String>; 3] {
    let advice: Advice = shop.advise(bowler).unwrap();
    let ball = advice.picks().first().map(|pick| pick.ball().to_owned());
    [settled(&advice, "weight"), settled(&advice, "grip"), ball]
}

fn settled(advice: &Advice, stage: &str) -> Option<String> {
    let stages = advice.settled().iter();
    let mut found = stages.filter(|settled| settled.stage() == stage);
    found.next().map(|settled| settled.value().to_owned())
}
