//! What is charged: quotes as people read them.

use super::consultation::Consultation;
use super::offers::Offer;
use super::old_ball::OldBall;
use super::result::Bill;
use super::stock::{self, Thumb};
use crate::catalog::{Cover, Grip, Order, Quote, Stock};
use crate::notation::Notation;

impl Bill {
    /// The bill of a quote, with when it is ready and what else is to be said.
    pub(super) fn of(quote: &Quote, ready_when: &str, notes: Vec<String>) -> Bill {
        let money = |cents| Notation::Money.write(cents);
        Bill {
            lines: quote
                .lines()
                .iter()
                .map(|(label, cents)| (label.clone(), money(*cents)))
                .collect(),
            tax: money(quote.tax()),
            total: money(quote.total()),
            total_cents: quote.total(),
            ready_when: ready_when.to_owned(),
            notes,
        }
    }
}

impl Consultation<'_> {
    /// The ball from the shelf that was chosen, drilled unless nobody is here to drill it for.
    pub(super) fn bill(&self, chosen: usize) -> Bill {
        let catalog = self.shop.catalog();
        let unit = &catalog.stock()[self.shop.candidates()[chosen].stock];
        let thumb = stock::Thumb::of(&self.situation);
        let mut order = stock::order(unit, self.settled_grip(), thumb);
        order.undrilled = self.away();
        let prices = catalog.prices();
        let quote = prices.quote(&order);
        let mut notes = vec![prices.warranty().to_owned()];
        if !order.undrilled {
            notes.insert(0, self.free_easing());
        } else {
            let drilled = self.shop.candidates()[chosen].out_the_door(&self.situation);
            let total = Notation::Money.write(drilled.value());
            notes.insert(0, format!("Drilled later, it comes to {total} in all."));
        }
        Bill::of(&quote, prices.ready_when(), notes)
    }

    /// Plugs and new holes in the old ball.
    pub(super) fn redrill(&self, old: &OldBall) -> Bill {
        let prices = self.shop.catalog().prices();
        let mut order = Order::redrill(old.open_holes);
        order.grip = self.settled_grip();
        let order = Thumb::of(&self.situation).on(order);
        let ready = match old.open_holes {
            0 => prices.ready_when(),
            _ => prices.plug_ready_when(),
        };
        let notes = vec![self.free_easing(), prices.warranty().to_owned()];
        Bill::of(&prices.quote(&order), ready, notes)
    }

    /// Easing costs nothing for the shop's weeks.
    pub(super) fn eased(&self) -> Bill {
        let prices = self.shop.catalog().prices();
        let notes = vec![self.free_easing()];
        Bill::of(&prices.quote(&Order::easing()), prices.ready_when(), notes)
    }

    /// New parts in the old ball.
    pub(super) fn parts(&self, order: &Order<'_>) -> Bill {
        let prices = self.shop.catalog().prices();
        let notes = vec![self.free_easing(), prices.warranty().to_owned()];
        Bill::of(&prices.quote(order), prices.ready_when(), notes)
    }

    /// The cheapest polyester ball in stock in the settled weight, drilled to the same fit.
    pub(super) fn plain_ball(&self) -> Option<Offer> {
        let catalog = self.shop.catalog();
        let weight = self.situation.known("settled.weight")?;
        let plain =
            |unit: &&Stock| unit.model().cover() == Cover::Polyester && unit.weight() == weight;
        let cheapest = catalog.stock().iter().filter(plain).min_by(|a, b| {
            let key = |unit: &Stock| (unit.model().price(), unit.model().id().to_owned());
            key(a).cmp(&key(b))
        })?;
        let thumb = Thumb::of(&self.situation);
        let order = stock::order(cheapest, self.settled_grip(), thumb);
        let prices = catalog.prices();
        let bill = Bill::of(
            &prices.quote(&order),
            prices.ready_when(),
            vec![self.free_easing()],
        );
        let title = format!("A new plain ball: {}", stock::ball_name(cheapest));
        let mut offer = Offer::new("plain", &title, bill);
        offer.ball = Some(stock::ball_id(cheapest));
        Some(offer)
    }

    /// How long holes are eased for nothing.
    pub(super) fn free_easing(&self) -> String {
        let weeks = self.shop.catalog().prices().free_easing_weeks();
        let weeks = Notation::Counted("week", "weeks").write(weeks);
        format!("Free easing of the holes for {weeks}.")
    }

    /// How the fingers go in.
    pub(super) fn settled_grip(&self) -> Grip {
        match self.situation.known("settled.grip") {
            Some(1) => Grip::Fingertip,
            _ => Grip::Conventional,
        }
    }
}
