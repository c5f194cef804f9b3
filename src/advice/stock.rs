//! The shelf as candidates: what each would cost drilled, and what it is called.

use crate::catalog::{Catalog, Grip, Order, Stock};
use crate::notation::Notation;
use crate::vocabulary::BallCandidate;

/// Everything in stock as candidates, in the catalog's order.
pub(super) fn candidates(catalog: &Catalog) -> Vec<BallCandidate> {
    let index = |i: usize| i64::try_from(i).unwrap_or(i64::MAX);
    let mut all: Vec<BallCandidate> = catalog
        .stock()
        .iter()
        .enumerate()
        .map(|(stock, unit)| {
            let model = unit.model();
            let total = |grip, slug| order_total(catalog, unit, grip, slug);
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
                drilled: [
                    [
                        total(Grip::Conventional, false),
                        total(Grip::Conventional, true),
                    ],
                    [total(Grip::Fingertip, false), total(Grip::Fingertip, true)],
                ],
                cheapest: [[i64::MAX; 2]; 2],
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

fn order_total(catalog: &Catalog, unit: &Stock, grip: Grip, slug: bool) -> i64 {
    catalog.prices().quote(&order(unit, grip, slug)).total()
}

/// The order for a ball bought here.
pub(super) fn order(unit: &Stock, grip: Grip, slug: bool) -> Order<'_> {
    let mut order = Order::ball(unit.model(), unit.weight());
    order.grip = grip;
    order.slug = slug;
    order
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
