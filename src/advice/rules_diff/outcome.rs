//! What a question came to, as things that can be held side by side.

use std::collections::BTreeMap;

use super::path;
use crate::advice::case::{Answer, Case, Question};
use crate::advice::offers::Offers;
use crate::advice::reason::{Caution, Reason};
use crate::advice::refit::Refit;
use crate::advice::result::{Advice, Settled};
use crate::advice::shop::Shop;
use crate::advice::spec::{SpecNumber, WorkStep};
use crate::bowler::Bowler;
use crate::notation::Notation;
use crate::rules::Severity;
use crate::vocabulary::words;

/// How many picks and causes are compared: so many a customer is told of.
pub(super) const SHOWN: usize = 3;
/// The kinds of things in the order they are told.
const ORDER: [&str; 16] = [
    "answer",
    "held",
    "settled",
    "cause",
    "gap",
    "doubled",
    "next",
    "pick",
    "rolled",
    "said",
    "number",
    "caution",
    "step",
    "drill_today",
    "bill",
    "offer",
];

/// What a question came to.
#[derive(Debug, Default)]
pub(super) struct Outcome {
    /// By place of the kind, kind and name.
    pub(super) items: BTreeMap<(usize, &'static str, String), String>,
    pub(super) ledgers: Ledgers,
    /// The totals of what was settled, of balls and of causes, in tenths of a point, by kind and name.
    pub(super) totals: BTreeMap<(&'static str, String), i64>,
    /// The balls or causes that are still in, best first, by kind.
    pub(super) order: BTreeMap<&'static str, Vec<String>>,
    /// The ids of each list of steps, in order.
    pub(super) steps: BTreeMap<&'static str, Vec<String>>,
}

/// The lines behind what came out, by kind and name.
#[derive(Debug, Default)]
pub(super) struct Ledgers(BTreeMap<(&'static str, String), Vec<Reason>>);

impl Ledgers {
    /// Whether there is anything to it.
    pub(super) fn knows(&self, kind: &'static str, name: &str) -> bool {
        self.0.contains_key(&(kind, name.to_owned()))
    }

    /// The names of one kind, in the order of the alphabet.
    pub(super) fn names(&self, kind: &'static str) -> impl Iterator<Item = &str> {
        let of_kind = self.0.keys().filter(move |(found, _)| *found == kind);
        of_kind.map(|(_, name)| name.as_str())
    }

    /// The lines of one thing; none where there are none.
    pub(super) fn of(&self, kind: &'static str, name: &str) -> &[Reason] {
        let found = self.0.get(&(kind, name.to_owned()));
        found.map(Vec::as_slice).unwrap_or_default()
    }

    pub(super) fn add(&mut self, kind: &'static str, name: &str, lines: &[Reason]) {
        let all = self.0.entry((kind, name.to_owned())).or_default();
        all.extend(lines.iter().cloned());
    }
}

/// A settled value as the answer that fixes its stage.
pub(super) fn as_answer(stage: &str, value: &str) -> Option<(&'static str, i64)> {
    let word = |list: &[&str]| {
        let spaced = |word: &&str| word.replace('_', " ") == value;
        i64::try_from(list.iter().position(spaced)?).ok()
    };
    Some(match stage {
        "weight" => ("settled.weight", Notation::Weight.read(value).ok()?),
        "grip" => ("settled.grip", word(words::GRIPS)?),
        "surface" => ("settled.surface", word(words::SURFACES)?),
        "layout" => ("settled.layout", word(words::LAYOUTS)?),
        _ => return None,
    })
}

impl Outcome {
    /// Asks one question of a case for this bowler.
    pub(super) fn of(case: &Case, shop: &Shop, bowler: &Bowler, question: &Question) -> Outcome {
        let mut outcome = Outcome::default();
        match case.ask_for(shop, bowler, question) {
            Ok(Answer::Advice(advice)) => outcome.advice(&advice),
            Ok(Answer::Refit(refit)) => outcome.refit(&refit),
            Ok(Answer::Upgrade(upgrade)) => path::upgrade(&mut outcome, &upgrade),
            Ok(Answer::Roll(roll)) => path::roll(&mut outcome, &roll),
            Err(trouble) => outcome.add("answer", "", trouble.to_string()),
        }
        outcome
    }

    pub(super) fn add(&mut self, kind: &'static str, name: &str, value: impl Into<String>) {
        let place = ORDER.iter().position(|known| *known == kind);
        let key = (place.unwrap_or(ORDER.len()), kind, name.to_owned());
        self.items.insert(key, value.into());
    }

    /// The place of a ball or a cause among those still in, from 0.
    pub(super) fn place(&self, kind: &'static str, name: &str) -> Option<usize> {
        let order = self.order.get(kind)?;
        order.iter().position(|found| found == name)
    }

    pub(super) fn ranked(&mut self, kind: &'static str, name: &str, total: i64) {
        self.order.entry(kind).or_default().push(name.to_owned());
        self.totals.insert((kind, name.to_owned()), total);
    }

    fn advice(&mut self, advice: &Advice) {
        for settled in advice.settled() {
            self.settled(settled);
            // What was fixed against a rule stands among the cautions of its stage.
            let against = advice
                .cautions()
                .iter()
                .filter(|caution| caution.about() == settled.stage())
                .map(|caution| caution.reason().clone());
            let against: Vec<Reason> = against.collect();
            self.ledgers.add("settled", settled.stage(), &against);
        }
        for (pick, place) in advice.picks().iter().zip(1..) {
            if place <= SHOWN {
                self.add("pick", &place.to_string(), pick.ball());
            }
            self.ranked("pick", pick.ball(), pick.total());
            self.ledgers.add("pick", pick.ball(), pick.lines());
        }
        for out in advice.ruled_out() {
            self.ledgers.add("pick", out.ball(), out.lines());
        }
        for number in advice.spec().numbers() {
            self.number(number);
        }
        self.cautions(advice.cautions());
        for (list, steps) in [
            ("work", advice.spec().work()),
            ("handover", advice.spec().handover()),
        ] {
            self.steps(list, steps);
        }
        let today = if advice.drill_today() { "yes" } else { "no" };
        self.add("drill_today", "", today);
        if let Some(bill) = advice.bill() {
            self.add("bill", "", bill.total());
        }
        self.offers(advice.offers());
    }

    pub(super) fn settled(&mut self, settled: &Settled) {
        let (stage, total) = (settled.stage(), settled.total());
        self.add("settled", stage, settled.value());
        self.totals.insert(("settled", stage.to_owned()), total);
        self.ledgers.add("settled", stage, settled.lines());
    }

    fn refit(&mut self, refit: &Refit) {
        let held = if refit.is_held() { "yes" } else { "no" };
        self.add("held", "", held);
        for cause in refit.causes() {
            if cause.place() <= SHOWN {
                self.add("cause", &cause.place().to_string(), cause.word());
            }
            self.ranked("cause", cause.word(), cause.total());
            self.ledgers.add("cause", cause.word(), cause.lines());
        }
        for cause in refit.ruled_out() {
            self.ledgers.add("cause", cause.word(), cause.lines());
        }
        for change in refit.changes() {
            self.number(change.number());
        }
        self.cautions(refit.cautions());
        self.steps("refit", refit.steps());
        self.offers(refit.offers());
    }

    fn number(&mut self, number: &SpecNumber) {
        let blank = number.blank().unwrap_or_default();
        let value = match number.value() {
            Some(_) => number.shop().to_owned(),
            None => format!("blank: {blank}"),
        };
        self.add("number", number.name(), value);
        self.ledgers.add("number", number.name(), number.lines());
        self.cautions(number.cautions());
    }

    pub(super) fn cautions(&mut self, cautions: &[Caution]) {
        for caution in cautions {
            let name = format!("{} ({})", caution.reason().rule(), caution.about());
            let severity = match caution.severity() {
                Severity::Serious => "serious",
                Severity::Mild => "mild",
            };
            self.add("caution", &name, severity);
        }
    }

    pub(super) fn steps(&mut self, list: &'static str, steps: &[WorkStep]) {
        for step in steps {
            self.add("step", &format!("{list}: {}", step.id()), "yes");
        }
        let ids = steps.iter().map(|step| step.id().to_owned());
        self.steps.insert(list, ids.collect());
    }

    fn offers(&mut self, offers: Option<&Offers>) {
        for offer in offers.map(Offers::list).unwrap_or_default() {
            self.add("offer", offer.id(), offer.bill().total());
        }
    }
}
