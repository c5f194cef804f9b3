//! From a fit card, symptoms and a rest test to likely causes and small changes. Health comes first: then nothing is changed.

use std::collections::BTreeSet;

use super::card_entries;
use super::consultation::{Consultation, PERSON};
use super::explain::{self, Scale};
use super::outcome::Trouble;
use super::reason::{Caution, Reason};
use super::refit::{Cause, Change, Refit};
use super::result::Assumed;
use super::shop::Shop;
use super::spec::SpecNumber;
use crate::bowler::Bowler;
use crate::notation::Notation;
use crate::rules::{Fate, Line, Measured, Severity};
use crate::vocabulary::{
    Alone, CARD_NUMBERS, CardNumber, Interval, StageWorld, all_words, answers_behind, cause_facts,
    words,
};

/// The measure by which no number may change more at once.
const MOST_AT_ONCE: &str = "refit.most_at_once";
/// Further times than these aren't planned ahead.
const MOST_TIMES: usize = 12;
/// What a blank number says while something serious comes first.
const HELD: &str = "Nothing is changed on the ball until that is settled.";
/// What a size says before the rest test.
const REST_TEST: &str = "Do the rest test first.";
/// What a number says if no rule tells how much it may change.
const NO_MOST: &str = "Say first how much one number may change at once.";
/// Causes for which there is no work on the ball.
const NO_WORK: &[&str] = &["nothing_in_the_fit", "the_way_it_is_held"];
/// Facts that a caution of a refit is about: the body, the hand, the card, the check.
const ABOUT_THE_FIT: &[&str] = &[
    "bowler.aches",
    "bowler.injuries",
    "bowler.child",
    "hand.",
    "card.",
    "check.",
    "refit.",
];

impl Shop {
    /// What may be wrong with the fit on the bowler's card, what to do first, and the small change to try.
    ///
    /// Numbers only ever start from the card's; what neither card nor hand tells stays blank.
    ///
    /// # Errors
    /// [`Trouble::Rules`] where the rules have no causes to choose from.
    pub fn refit(&self, bowler: &Bowler) -> Result<Refit, Trouble> {
        let mut consultation = Consultation::begin(self, bowler);
        consultation.numbers_for_the_hand();
        let (causes, ruled_out) = consultation.causes()?;
        let likeliest = causes.first().map(|cause| cause.word);
        if let Some(at) = words::CAUSES
            .iter()
            .position(|word| Some(*word) == likeliest)
        {
            let value = i64::try_from(at).unwrap_or_default();
            consultation
                .situation
                .set("refit.cause", Interval::point(value));
        }
        consultation.persons_cautions();
        consultation.cautions.retain(of_the_fit);
        consultation
            .cautions
            .sort_by_key(|caution| std::cmp::Reverse(caution.severity));
        let held = consultation
            .cautions
            .iter()
            .any(|c| c.about == PERSON && c.severity == Severity::Serious);
        let changes = consultation.changes(likeliest, held);
        let steps = if held {
            Vec::new()
        } else {
            self.steps("refit.steps", &consultation.situation)
        };
        let assumptions = consultation.taken_for_granted(&causes, &changes);
        let card = bowler.card();
        // Nothing is sold before the doctor, nor where the ball isn't at fault.
        let work = !held && likeliest.is_some_and(|cause| !NO_WORK.contains(&cause));
        let offers = match card {
            Some(_) if work => Some(self.offers(bowler)?),
            _ => None,
        };
        Ok(Refit {
            bowler: bowler.name().unwrap_or_default().to_owned(),
            held,
            offers: offers.filter(|offers| !offers.list().is_empty()),
            ball: card.and_then(|card| card.ball()).map(str::to_owned),
            past: card_entries::past(bowler),
            to_write: consultation.to_write(held, &changes),
            assumptions,
            questions: self.questions_for(bowler),
            digest: self.digest().to_owned(),
            cautions: consultation.cautions,
            causes,
            ruled_out,
            steps,
            changes,
        })
    }
}

/// Everything serious, and what is mild and speaks of the body or the fit. The numbers worked out for the hand are only held
/// against the card; nobody drills them, so what is said of them is left out.
fn of_the_fit(caution: &Caution) -> bool {
    let about = |starts: &[&str]| {
        let mut facts = caution.reason.facts.iter();
        facts.any(|(fact, _)| starts.iter().any(|start| fact.starts_with(start)))
    };
    !about(&["fit."]) && (caution.severity == Severity::Serious || about(ABOUT_THE_FIT))
}

impl Consultation<'_> {
    /// Works out what would be drilled for the measured hand today, as if there were no fit to copy: what the card is held against.
    fn numbers_for_the_hand(&mut self) {
        let grip = self.situation.get("card.grip");
        if grip.is_known() {
            self.situation.set("settled.grip", grip);
        }
        let works = self.situation.get("card.works");
        self.situation.set("card.works", Interval::flag(false));
        self.spec();
        self.situation.set("card.works", works);
    }

    /// What something speaks for, likeliest first, and what is excluded.
    fn causes(&self) -> Result<(Vec<Cause>, Vec<Cause>), Trouble> {
        let rules = self.shop.rules();
        let candidates = all_words(words::CAUSES);
        let world = StageWorld::new(&self.situation, &cause_facts(), &candidates, |c| c.0);
        self.shop.observe("cause", &world);
        let chooser = rules
            .chooser("cause", &world)
            .ok_or_else(|| Trouble::Rules("no subject `cause`".to_owned()))?;
        let ranking = chooser.rank(&world);
        let said = |line: &Line| explain::reason(rules, line, Scale::Points);
        let likely = ranking.order().iter().filter_map(|&at| {
            let ledger = chooser.ledger(&world, &ranking, at);
            (ledger.total() > 0).then(|| Cause {
                word: words::CAUSES[at],
                place: 0,
                total: ledger.total(),
                lines: ledger.lines().iter().map(said).collect(),
            })
        });
        let likely = likely
            .zip(1..)
            .map(|(cause, place)| Cause { place, ..cause })
            .collect();
        let out = (0..candidates.len()).filter_map(|at| {
            let Fate::RuledOut(lines) = chooser.fate(&world, &ranking, at) else {
                return None;
            };
            Some(Cause {
                word: words::CAUSES[at],
                place: 0,
                total: 0,
                lines: lines.iter().map(said).collect(),
            })
        });
        Ok((likely, out.collect()))
    }

    /// The numbers of the card that the likeliest cause changes.
    fn changes(&self, likeliest: Option<&str>, held: bool) -> Vec<Change> {
        self.shop.observe(MOST_AT_ONCE, &Alone(&self.situation));
        let most = self
            .shop
            .rules()
            .measure(MOST_AT_ONCE, &Alone(&self.situation));
        CARD_NUMBERS
            .iter()
            .filter(|row| !row.thumb || !self.situation.is_word("bowler.thumb", "out"))
            .filter_map(|row| {
                let asked = row.causes.iter().any(|cause| Some(*cause) == likeliest);
                self.change(row, asked, held, &most)
            })
            .collect()
    }

    /// One number: the card's and what is added, in one step that isn't too large. None if it stays as it is.
    fn change(&self, row: &CardNumber, asked: bool, held: bool, most: &Measured) -> Option<Change> {
        let rules = self.shop.rules();
        let subject = rules.subject(row.id)?;
        let notation = subject.notation()?;
        self.shop.observe(row.id, &Alone(&self.situation));
        let measured = rules.measure(row.id, &Alone(&self.situation));
        let card = self.situation.known(row.card);
        let differs = measured.value().is_some() && measured.value() != card;
        let argued = measured.lines().len() > 1;
        // A cause that asks for this number, or a rule that speaks of it; a size that waits for the rest test is told by a step.
        let waits = row.thumb_size && !self.situation.get("check.rest_test").is_known();
        // Rules that start it twice settle nothing; the fitter hears of it.
        let unsettled = measured.value().is_none();
        if !(differs || argued || asked && (card.is_none() || waits || unsettled)) {
            return None;
        }
        let mirrored =
            self.situation.is_word("bowler.hand", "left") && notation == Notation::LateralPitch;
        let turn = if mirrored { -1 } else { 1 };
        let mut number = self.number(row.id, subject.meaning(), notation, mirrored, &measured);
        let mut later = Vec::new();
        let blank = if held {
            Some(HELD)
        } else if waits {
            Some(REST_TEST)
        } else if card.is_none() {
            Some(row.ask)
        } else if most.value().is_none() {
            Some(NO_MOST)
        } else {
            None
        };
        match (blank, measured.value(), card, most.value()) {
            (None, Some(wanted), Some(card), Some(step)) => {
                let way = way(card, wanted, step);
                if let Some(&first) = way.first()
                    && first != wanted
                {
                    number
                        .lines
                        .extend(self.limit(most, notation, (first - wanted) * turn));
                    number.value = Some(first * turn);
                    number.shop = notation.write(first * turn);
                }
                later = way
                    .iter()
                    .skip(1)
                    .map(|value| (value * turn, notation.write(value * turn)))
                    .collect();
            }
            (None, None, ..) if number.blank.is_some() => {}
            (blank, ..) => clear(&mut number, blank.unwrap_or(row.ask)),
        }
        Some(Change {
            number,
            card: card.map(|value| value * turn),
            card_shop: card
                .map(|value| notation.write(value * turn))
                .unwrap_or_default(),
            later,
        })
    }

    /// The line that takes back what is too much at once, with the reason of the rule that says how much is.
    fn limit(&self, most: &Measured, notation: Notation, points: i64) -> Option<Reason> {
        let scale = Scale::Measure {
            notation,
            mirrored: false,
        };
        let mut line = explain::reason(self.shop.rules(), most.lines().first()?, scale);
        line.points = points;
        line.shown = notation.write(points);
        line.role = "limit";
        Some(line)
    }

    /// What was assumed and had a say in this refit.
    fn taken_for_granted(&self, causes: &[Cause], changes: &[Change]) -> Vec<Assumed> {
        let lines = causes.iter().flat_map(|cause| &cause.lines);
        let used: BTreeSet<&str> = lines
            .chain(changes.iter().flat_map(|change| &change.number.lines))
            .flat_map(|line| line.facts.iter().map(|(name, _)| *name))
            .flat_map(|name| answers_behind(name).iter().copied().chain([name]))
            .collect();
        let mut assumptions = self.assumptions(&used);
        assumptions.retain(|assumed| assumed.matters && assumed.value.is_some());
        assumptions
    }
}

/// From the card's number to the wanted one in steps of at most `most`; the first is for this time.
fn way(card: i64, wanted: i64, most: i64) -> Vec<i64> {
    let most = most.max(1);
    let mut way = Vec::new();
    let mut at = card;
    while way.is_empty() || at != wanted && way.len() < MOST_TIMES {
        at += (wanted - at).clamp(-most, most);
        way.push(at);
    }
    way
}

/// Nothing is said of this number but why.
fn clear(number: &mut SpecNumber, blank: &str) {
    number.value = None;
    number.shop.clear();
    number.lines.clear();
    number.blank = Some(blank.to_owned());
}
