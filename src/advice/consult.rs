//! The stages in order, each seeing what the earlier ones chose.

use std::collections::BTreeSet;

use super::balls::Balls;
use super::consultation::{Chosen, Consultation, PERSON};
use super::drilling::Drilling;
use super::explain;
use super::old_ball::OldBall;
use super::outcome::Trouble;
use super::result::{Advice, Assumed};
use super::shop::Shop;
use super::spec::{DrillSpec, SpecNumber};
use super::stages::{self, Staged};
use crate::bowler::Bowler;
use crate::catalog::{Grip, Order};
use crate::notation::Notation;
use crate::rules::{Audience, FactId, Severity, SubjectKind};
use crate::vocabulary::{
    Alone, Interval, Situation, StageFact, StageWorld, WeightCandidate, WordCandidate, all_words,
    answers_behind, grip_facts, layout_facts, surface_facts, weight_facts, words,
};

/// What only the roll goes by: told where a reason hangs on it, and else not even to the fitter.
const WHERE_IT_MATTERS: [&str; 2] = ["bowler.rotation", "bowler.tilt"];

/// Runs all stages; `choice` is a ball that was decided on beforehand.
pub(super) fn consult(
    shop: &Shop,
    bowler: &Bowler,
    choice: Option<Chosen>,
) -> Result<Advice, Trouble> {
    run(shop, bowler, choice, None)
}

/// The same for a ball the customer brings drilled: there is no ball to choose.
pub(super) fn consult_used(shop: &Shop, bowler: &Bowler, old: &OldBall) -> Result<Advice, Trouble> {
    run(shop, bowler, None, Some(old))
}

/// Weight, grip and fit alone, whatever ball it is for.
pub(super) fn fit_without_a_ball<'s>(
    shop: &'s Shop,
    bowler: &'s Bowler,
    old: &OldBall,
) -> Result<Consultation<'s>, Trouble> {
    let mut consultation = Consultation::begin(shop, bowler);
    consultation.bring(old);
    let settled = bowler.answer("settled.weight");
    consultation.weight(settled)?;
    consultation.grip()?;
    consultation.spec();
    Ok(consultation)
}

fn run(
    shop: &Shop,
    bowler: &Bowler,
    choice: Option<Chosen>,
    old: Option<&OldBall>,
) -> Result<Advice, Trouble> {
    let mut consultation = Consultation::begin(shop, bowler);
    if let Some(old) = old {
        consultation.bring(old);
    }
    let chosen = choice.map(|c| shop.candidates()[c.candidate].weight);
    let brought = old.and_then(|old| old.weight);
    let settled = bowler.answer("settled.weight");
    consultation.weight(chosen.or(brought).or(settled))?;
    consultation.grip()?;
    let mut found = match old {
        Some(old) => {
            if let Some(cover) = old.cover {
                let cover = Interval::point(cover);
                consultation.situation.set("settled.cover", cover);
            }
            Balls::default()
        }
        None => consultation.balls(choice)?,
    };
    if let Some(chosen) = found.chosen {
        let ball = &shop.candidates()[chosen];
        consultation
            .situation
            .set("settled.cover", Interval::point(ball.cover));
        consultation
            .situation
            .set("settled.core", Interval::point(ball.core));
        consultation.words(
            "surface",
            &surface_facts(),
            words::SURFACES,
            "settled.surface",
        )?;
        consultation.words("layout", &layout_facts(), words::LAYOUTS, "settled.layout")?;
    }
    let mut spec = consultation.spec();
    let from_the_shelf = found.chosen.map(|c| shop.candidates()[c].id.clone());
    spec.for_ball = from_the_shelf.or_else(|| old.map(|old| old.name.clone()));
    consultation.persons_cautions();
    // A serious caution of the person comes before the drill, whatever it is about.
    let held = consultation
        .cautions
        .iter()
        .any(|c| c.about == PERSON && c.severity == Severity::Serious);
    let drilling = match consultation.away() {
        true => None,
        false => consultation.drilling(found.chosen),
    };
    let unit = drilling.as_ref().and_then(|d| d.balance.as_ref());
    if let (Some(pick), Some(balance)) = (found.picks.first_mut(), unit) {
        pick.unit = Some(balance.unit.clone());
    }
    let refused = drilling.as_ref().is_some_and(Drilling::is_refused);
    let complete = !spec.numbers.is_empty() && spec.numbers.iter().all(drillable);
    let drill_today = !held && !refused && complete;
    if consultation.away() {
        withhold(&mut spec);
    }
    let bill = match old {
        Some(old) => Some(consultation.redrill(old)),
        None => found.chosen.map(|c| consultation.bill(c)),
    };
    let used: BTreeSet<&str> = consultation
        .settled
        .iter()
        .flat_map(|s| &s.lines)
        .chain(found.picks.first().iter().flat_map(|pick| &pick.lines))
        .chain(spec.numbers.iter().flat_map(|number| &number.lines))
        .flat_map(|line| line.facts.iter().map(|(name, _)| *name))
        .flat_map(|name| answers_behind(name).iter().copied().chain([name]))
        .collect();
    let assumptions = consultation.assumptions(&used);
    consultation.cautions.sort_by_key(|c| match c.severity {
        Severity::Serious => 0,
        Severity::Mild => 1,
    });
    Ok(Advice {
        bowler: bowler.name().unwrap_or_default().to_owned(),
        questions: shop.questions_for(bowler),
        cautions: consultation.cautions,
        settled: consultation.settled,
        picks: found.picks,
        ruled_out: found.ruled_out,
        near_misses: found.near_misses,
        assumptions,
        bill,
        spec,
        drilling,
        offers: None,
        how_sure: None,
        drill_today,
        digest: shop.digest().to_owned(),
    })
}

/// Bevels and depths can be settled at the machine; everything else must be known before the drill.
fn drillable(number: &SpecNumber) -> bool {
    let at_the_machine = [".depth", ".bevel"]
        .iter()
        .any(|end| number.name.ends_with(end));
    at_the_machine || number.value.is_some()
}

/// Nothing is drilled for someone who isn't here: no numbers leave the house.
fn withhold(spec: &mut DrillSpec) {
    for number in &mut spec.numbers {
        number.value = None;
        number.shop.clear();
        number.lines.clear();
        number.blank =
            Some("Nothing is drilled until the bowler is here: measure the hand.".to_owned());
    }
}

impl<'s> Consultation<'s> {
    /// Nothing is settled yet.
    pub(super) fn begin(shop: &'s Shop, bowler: &'s Bowler) -> Self {
        let mut consultation = Consultation {
            shop,
            bowler,
            situation: Situation::of(bowler, shop.rules()),
            cautions: Vec::new(),
            settled: Vec::new(),
        };
        consultation.price_list();
        consultation.bench();
        consultation
    }

    /// Prices that a reason may speak of.
    fn price_list(&mut self) {
        let prices = self.shop.catalog().prices();
        let holes = if self.situation.is_word("bowler.thumb", "out") {
            2
        } else {
            3
        };
        let plug = Order {
            plugs: 1,
            ..Order::default()
        };
        let mut redrill = Order::redrill(holes);
        redrill.grip = Grip::Fingertip;
        redrill.slug = holes == 3;
        let inserts = Interval::point(prices.finger_inserts());
        self.situation.set("price.inserts", inserts);
        for (fact, order) in [("price.plug", plug), ("price.redrill", redrill)] {
            self.situation
                .set(fact, Interval::point(prices.quote(&order).total()));
        }
    }

    /// The one who will bowl isn't here, so nothing is drilled.
    pub(super) fn away(&self) -> bool {
        self.situation.is("bowler.present") || self.situation.is("bowler.absent")
    }

    /// Settles the weight; `asked` is one that was decided on beforehand.
    pub(super) fn weight(&mut self, asked: Option<i64>) -> Result<(), Trouble> {
        let mut candidates: Vec<WeightCandidate> =
            (6..=16).map(|lb| WeightCandidate(lb * 100)).collect();
        if let Some(between) = asked
            && let Err(at) = candidates.binary_search_by_key(&between, |c| c.0)
        {
            candidates.insert(at, WeightCandidate(between));
        }
        let fixed = asked.and_then(|w| candidates.iter().position(|c| c.0 == w));
        let facts = weight_facts();
        let staged = {
            let world = StageWorld::new(&self.situation, &facts, &candidates, |c| c.0);
            let name = |c: usize| Notation::Weight.write(candidates[c].0);
            self.shop.observe("weight", &world);
            let heavier = |c: usize| (c + 1 < candidates.len()).then_some(c + 1);
            stages::settle(self.shop.rules(), "weight", &world, fixed, &name, &heavier)?
        };
        let value = staged.chosen.map(|c| candidates[c].0);
        self.take(staged, "settled.weight", value);
        Ok(())
    }

    pub(super) fn grip(&mut self) -> Result<(), Trouble> {
        self.words("grip", &grip_facts(), words::GRIPS, "settled.grip")
    }

    fn words(
        &mut self,
        stage: &str,
        facts: &[StageFact<WordCandidate>],
        list: &[&str],
        fact: &str,
    ) -> Result<(), Trouble> {
        let candidates = all_words(list);
        let fixed = self
            .bowler
            .answer(fact)
            .and_then(|value| candidates.iter().position(|c| c.0 == value));
        let staged = {
            let world = StageWorld::new(&self.situation, facts, &candidates, |c| c.0);
            self.shop.observe(stage, &world);
            let name = |c: usize| list[c].replace('_', " ");
            stages::settle(self.shop.rules(), stage, &world, fixed, &name, &|_| None)?
        };
        let value = staged.chosen.map(|c| candidates[c].0);
        self.take(staged, fact, value);
        Ok(())
    }

    fn take(&mut self, staged: Staged, fact: &str, value: Option<i64>) {
        if let Some(value) = value {
            self.situation.set(fact, Interval::point(value));
        }
        self.settled.extend(staged.settled);
        self.cautions.extend(staged.cautions);
    }

    pub(super) fn persons_cautions(&mut self) {
        let rules = self.shop.rules();
        let persons = rules.subjects().iter();
        for subject in persons.filter(|subject| subject.kind() == SubjectKind::Person) {
            self.shop.observe(subject.id(), &Alone(&self.situation));
        }
        let lines = rules.cautions(&Alone(&self.situation));
        self.cautions.extend(
            lines
                .iter()
                .map(|line| explain::caution(rules, line, PERSON)),
        );
    }

    pub(super) fn assumptions(&self, used: &BTreeSet<&str>) -> Vec<Assumed> {
        let vocabulary = self.situation.vocabulary();
        // What keeps a serious caution away is worth putting right, even if no reason looked at it.
        let rules = self.shop.rules().rules();
        let guarding: BTreeSet<FactId> = rules
            .iter()
            .filter(|rule| rule.severity() == Some(Severity::Serious))
            .flat_map(|rule| rule.facts().iter().copied())
            .collect();
        self.shop
            .rules()
            .assumptions()
            .iter()
            .filter(|a| match a.value() {
                Some(_) => {
                    let name = vocabulary.fact(a.fact()).name;
                    let told = used.contains(name) || !WHERE_IT_MATTERS.contains(&name);
                    told && self.situation.assumed().contains(&a.fact())
                }
                None => {
                    a.is_needed()
                        && !self
                            .situation
                            .get(vocabulary.fact(a.fact()).name)
                            .is_known()
                }
            })
            .map(|a| Assumed {
                fact: vocabulary.fact(a.fact()).name.to_owned(),
                meaning: vocabulary.fact(a.fact()).meaning.to_owned(),
                value: a.value().map(|value| vocabulary.print(a.fact(), value)),
                matters: used.contains(vocabulary.fact(a.fact()).name)
                    || guarding.contains(&a.fact()),
                reason: a.because(Audience::Newcomer).to_owned(),
                source: a.source().to_string(),
                strength: a.source().strength().words(),
            })
            .collect()
    }
}
