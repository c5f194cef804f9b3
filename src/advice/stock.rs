//! The shelf as candidates: what each would cost drilled, how it rolls, and what it is called.

use std::sync::Arc;

use super::friction::{Frictions, body};
use crate::catalog::{Catalog, Grip, Order, Stock};
use crate::notation::Notation;
use crate::rules::RuleSet;
use crate::vocabulary::{BallCandidate, Situation};

/// Everything in stock as candidates, in the catalog's order.
pub(super) fn candidates(catalog: &Catalog, rules: &RuleSet) -> Vec<BallCandidate> {
    let mut frictions = Frictions::new(rules);
    let index = |i: usize| i64::try_from(i).unwrap_or(i64::MAX);
    let mut all: Vec<BallCandidate> = catalog
        .stock()
        .iter()
        .enumerate()
        .map(|(stock, unit)| {
            let model = unit.model();
            let thumbs = |grip| {
                [Thumb::Bored, Thumb::Slug, Thumb::Sleeve]
                    .map(|thumb| catalog.prices().quote(&order(unit, grip, thumb)).total())
            };
            BallCandidate {
                id: ball_id(unit),
                stock,
                cover: index(model.cover().index()),
                core: index(model.core().index()),
                finish: index(model.finish().index()),
                tier: index(model.tier().index()),
                price: model.price(),
                weight: unit.weight(),
                rg: unit.rg(),
                differential: unit.differential(),
                intermediate: unit.intermediate(),
                colours: model
                    .colours()
                    .iter()
                    .fold(0, |set, colour| set | 1 << colour.index()),
                drilled: [thumbs(Grip::Conventional), thumbs(Grip::Fingertip)],
                cheapest: [[i64::MAX; 3]; 2],
                friction: frictions.of(model.cover(), model.finish()),
                beta: body(unit).map_or(0.0, |ball| ball.beta()),
                lanes: Arc::clone(catalog.lanes()),
            }
        })
        .collect();
    for at in 0..all.len() {
        let mut cheapest = all[at].drilled;
        for other in all.iter().filter(|other| other.weight == all[at].weight) {
            for (least, price) in cheapest
                .iter_mut()
                .flatten()
                .zip(other.drilled.iter().flatten())
            {
                *least = (*least).min(*price);
            }
        }
        all[at].cheapest = cheapest;
    }
    all
}

/// What the thumb hole gets.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Thumb {
    /// Nothing: it is bored into the ball, or there is none.
    Bored,
    /// A solid slug.
    Slug,
    /// A sleeve that can be changed.
    Sleeve,
}

impl Thumb {
    /// What the settled fit asks for.
    pub(super) fn of(situation: &Situation) -> Thumb {
        if situation.is("fit.has_sleeve") {
            Thumb::Sleeve
        } else if situation.is("fit.has_slug") {
            Thumb::Slug
        } else {
            Thumb::Bored
        }
    }

    /// The order with it.
    pub(super) fn on<'c>(self, mut order: Order<'c>) -> Order<'c> {
        order.slug = self == Thumb::Slug;
        order.sleeve = self == Thumb::Sleeve;
        order
    }
}

/// The order for a ball bought here.
pub(super) fn order(unit: &Stock, grip: Grip, thumb: Thumb) -> Order<'_> {
    let mut order = Order::ball(unit.model(), unit.weight());
    order.grip = grip;
    thumb.on(order)
}

/// `model-id@weight`, the weight without its unit.
pub(super) fn ball_id(unit: &Stock) -> String {
    let weight = Notation::Weight.write(unit.weight());
    format!("{}@{}", unit.model().id(), weight.trim_end_matches(" lb"))
}

/// Name and weight as people say it.
pub(super) fn ball_name(unit: &Stock) -> String {
    format!(
        "{}, {}",
        unit.model().name(),
        Notation::Weight.write(unit.weight())
    )
}
