//! The picks of a shop over the answers that a profile could tell: what turning points are searched among.

use rustc_hash::FxHashMap;

use super::chain::{Chain, Choice, Picks};
use super::shop::Shop;
use crate::bowler::{Answer, Bowler, Shape as Written, answer, contradiction};
use crate::notation::Notation;
use crate::rules::{FactId, Interval, UNKNOWN};
use crate::search::{Area, Decision, Holds, Point, Shape};

/// What the profile has settled about the ball.
#[derive(Debug)]
enum Fixed {
    Nothing,
    /// This candidate.
    Ball(usize),
    /// One of these, in whatever weight is right.
    Model(Vec<usize>),
}

/// Picks over answers that go together.
#[derive(Debug)]
pub(super) struct Told<'c, 's> {
    shop: &'s Shop,
    picks: Picks<'c, 's>,
    bowler: Bowler,
    answers: Vec<&'static Answer>,
    places: FxHashMap<&'static str, usize>,
    fixed: Fixed,
    /// Where the number of balls owned and their covers stand.
    owned: Option<(usize, usize)>,
    /// Where the two forms of one answer stand, of which a profile has only one.
    forms: Option<[usize; 2]>,
    start: Point,
}

/// The rate and the word for it: the same key of a profile, so giving one takes the other away.
const FORMS: [&str; 2] = ["bowler.rev_rate", "bowler.rev_level"];

impl<'c, 's> Told<'c, 's> {
    /// Over these answers; names that no answer has are left out.
    pub(super) fn new(
        shop: &'s Shop,
        chain: &'c Chain<'s>,
        bowler: &Bowler,
        names: &[&str],
    ) -> Self {
        let vocabulary = shop.vocabulary();
        let (answers, facts): (Vec<&'static Answer>, Vec<FactId>) = names
            .iter()
            .filter_map(|name| Some((answer(name)?, vocabulary.id(name)?)))
            .unzip();
        let fixed = fixed(shop, bowler);
        let bowler = match fixed {
            Fixed::Ball(ball) => {
                bowler.with("settled.weight", Some(shop.candidates()[ball].weight))
            }
            _ => bowler.clone(),
        };
        let numbered = answers.iter().enumerate();
        let places: FxHashMap<_, _> = numbered.map(|(at, answer)| (answer.name(), at)).collect();
        let place = |name: &str| places.get(name).copied();
        let picks = Picks::new(chain, &bowler, facts);
        let [rate, level] = FORMS.map(place);
        Told {
            shop,
            start: picks.start(),
            picks,
            owned: place("owned.count").zip(place("owned.covers")),
            forms: rate.zip(level).map(|(rate, level)| [rate, level]),
            bowler,
            answers,
            places,
            fixed,
        }
    }

    /// The answers in their order.
    pub(super) fn answers_told(&self) -> &[&'static Answer] {
        &self.answers
    }

    /// Where the bowler stands.
    pub(super) fn start(&self) -> Point {
        self.start.clone()
    }

    /// The other form of an answer that has two.
    pub(super) fn other_form(&self, answer: usize) -> Option<usize> {
        let [one, other] = self.forms?;
        match answer {
            _ if answer == one => Some(other),
            _ if answer == other => Some(one),
            _ => None,
        }
    }

    /// Every value that an answer may be given.
    pub(super) fn range(&self, answer: usize) -> Interval {
        match self.answers[answer].shape() {
            Written::Number {
                lowest, highest, ..
            } => Interval::between(lowest, highest),
            Written::Choice(words) => Interval::between(0, last(words)),
            Written::Flag => Interval::either(),
            Written::Set(words) => Interval::between(0, (1 << words.len()) - 1),
        }
    }

    /// A value as people read it.
    pub(super) fn print(&self, answer: usize, value: i64) -> String {
        let vocabulary = self.shop.vocabulary();
        match vocabulary.id(self.answers[answer].name()) {
            Some(fact) => vocabulary.print(fact, value),
            None => value.to_string(),
        }
    }

    /// The answers in full: one owned ball more where a cover more is owned, and the other form of an answer gone.
    pub(super) fn in_full(&self, point: &[i64]) -> Point {
        let mut point = point.to_vec();
        if let Some((count, covers)) = self.owned
            && point[covers] != UNKNOWN
        {
            point[count] = point[count].max(i64::from(point[covers].count_ones()));
        }
        if let Some(forms) = self.forms
            && forms.iter().all(|&form| point[form] != UNKNOWN)
            && let Some(old) = forms.into_iter().find(|&f| point[f] == self.start[f])
        {
            point[old] = UNKNOWN;
        }
        point
    }

    fn area_in_full(&self, area: &[Interval]) -> Area {
        let mut area = area.to_vec();
        if let Some((count, covers)) = self.owned
            && area[covers].may_be_known()
        {
            let least = |bits: i64| i64::from(bits.count_ones());
            let (low, high) = (least(area[covers].lowest()), least(area[covers].highest()));
            let unknown = area[count].may_be_unknown() && area[covers].may_be_unknown();
            let counted = match area[count].may_be_known() {
                true if area[count].may_be_unknown() || area[covers].may_be_unknown() => {
                    Interval::between(
                        area[count].lowest().min(low),
                        area[count].highest().max(high),
                    )
                }
                true => Interval::between(
                    area[count].lowest().max(low),
                    area[count].highest().max(high),
                ),
                false => Interval::between(low, high),
            };
            area[count] = if unknown {
                counted.or_unknown()
            } else {
                counted
            };
        }
        if let Some(forms) = self.forms
            && forms.iter().all(|&form| area[form].may_be_known())
        {
            let is_old = |form: usize| area[form] == Interval::point(self.start[form]);
            let is_new = |form: usize| self.start[form] == UNKNOWN && !area[form].may_be_unknown();
            let [one, other] = forms;
            match (is_old(one) && is_new(other), is_old(other) && is_new(one)) {
                (true, _) => area[one] = Interval::NOT_KNOWN,
                (_, true) => area[other] = Interval::NOT_KNOWN,
                _ => {
                    for form in forms {
                        area[form] = area[form].or_unknown();
                    }
                }
            }
        }
        area
    }

    /// What the profile has settled takes the place of what the rules pick.
    fn settled(&self, choice: Choice) -> Choice {
        let weight_of = |ball: &usize| self.shop.candidates()[*ball].weight;
        match &self.fixed {
            Fixed::Nothing => choice,
            Fixed::Ball(ball) => Choice {
                ball: Some(*ball),
                ..choice
            },
            Fixed::Model(balls) => {
                let weight = choice.weight.or_else(|| balls.iter().map(weight_of).min());
                let ball = balls.iter().find(|ball| Some(weight_of(ball)) == weight);
                Choice {
                    weight,
                    ball: ball.copied(),
                    ..choice
                }
            }
        }
    }
}

fn last(words: &[&str]) -> i64 {
    i64::try_from(words.len()).unwrap_or(1) - 1
}

fn fixed(shop: &Shop, bowler: &Bowler) -> Fixed {
    let Some(settled) = bowler.settled_ball() else {
        return Fixed::Nothing;
    };
    let (model, weight) = settled.split_once('@').unwrap_or((settled, ""));
    let own = (0..shop.candidates().len()).filter(|&c| shop.stock_model(c) == model);
    let own: Vec<usize> = own.collect();
    let weight = Notation::Weight.read(weight).ok();
    let ball = own
        .iter()
        .find(|&&c| Some(shop.candidates()[c].weight) == weight);
    match ball {
        Some(&ball) => Fixed::Ball(ball),
        None => Fixed::Model(own),
    }
}

impl Decision for Told<'_, '_> {
    type Pick = Choice;

    fn answers(&self) -> usize {
        self.answers.len()
    }

    fn shape(&self, answer: usize) -> Shape {
        self.picks.shape(answer)
    }

    fn pick(&self, point: &[i64]) -> Choice {
        self.settled(self.picks.pick(&self.in_full(point)))
    }

    fn holds(&self, area: &[Interval], pick: &Choice) -> Holds {
        let area = self.area_in_full(area);
        if matches!(self.fixed, Fixed::Nothing) {
            return self.picks.holds(&area, pick);
        }
        // What the rules pick stays, so what is settled over it stays.
        let corner: Point = area.iter().map(|range| range.lowest()).collect();
        let by_rules = self.picks.pick(&corner);
        if self.settled(by_rules) == *pick {
            return self.picks.holds(&area, &by_rules);
        }
        Holds::Open { split: Vec::new() }
    }

    fn is_possible(&self, point: &[i64]) -> bool {
        let point = self.in_full(point);
        let value = |name: &str| match self.places.get(name).copied() {
            Some(place) => Some(point[place]).filter(|value| *value != UNKNOWN),
            None => self.bowler.answer(name),
        };
        contradiction(&value).is_none()
    }

    fn cuts(&self, answer: usize) -> &[i64] {
        self.picks.cuts(answer)
    }
}

/// The answers of the bowler, the balls owned and the fit card on which the pick can hang, in the vocabulary's order.
pub(super) fn answers_of(chain: &Chain<'_>) -> Vec<&'static str> {
    let vocabulary = chain.shop.vocabulary();
    let names = chain.matters().into_iter();
    let names = names.map(|fact| vocabulary.fact(fact).name);
    let told = |name: &&str| {
        ["bowler.", "owned.", "card."]
            .iter()
            .any(|of| name.starts_with(of))
    };
    names.filter(told).collect()
}
