//! What an order comes to, line by line.

use super::model::Model;
use super::prices::PriceList;
use crate::notation::Notation;

/// How the fingers go in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Grip {
    /// To the second joint; the holes are bored in the ball itself.
    #[default]
    Conventional,
    /// To the first joint; the holes take inserts.
    Fingertip,
}

/// What a customer asks for. Begin with [`Order::ball`], [`Order::own_ball`] or [`Order::redrill`], then set the rest.
#[derive(Clone, Copy, Debug, Default)]
#[non_exhaustive]
pub struct Order<'c> {
    /// A ball bought here: its model, and its weight in 0.01 lb.
    pub ball: Option<(&'c Model, i64)>,
    /// The ball bought here goes over the counter without holes, as a present does.
    pub undrilled: bool,
    /// The customer brings an undrilled ball.
    pub own_ball: bool,
    /// The customer brings a drilled ball for new holes.
    pub redrill: bool,
    /// The holes of a drilled ball are eased by hand, which costs nothing.
    pub easing: bool,
    /// The customer brings a drilled ball for new parts in its old holes: inserts by its grip, slug or sleeve.
    pub new_parts: bool,
    /// Old holes to fill.
    pub plugs: u8,
    /// How the fingers go in; a fingertip grip needs a pair of inserts in every ball that is drilled.
    pub grip: Grip,
    /// A solid thumb slug.
    pub slug: bool,
    /// An interchangeable thumb sleeve; it takes the place of the slug, also where both are set.
    pub sleeve: bool,
}

impl<'c> Order<'c> {
    /// A ball bought and drilled here, of a weight in 0.01 lb.
    #[must_use]
    pub fn ball(model: &'c Model, weight: i64) -> Self {
        Self {
            ball: Some((model, weight)),
            ..Self::default()
        }
    }
    /// Drilling an undrilled ball the customer brings.
    #[must_use]
    pub fn own_ball() -> Self {
        Self {
            own_ball: true,
            ..Self::default()
        }
    }
    /// Holes of a drilled ball that are eased.
    #[must_use]
    pub fn easing() -> Self {
        Self {
            easing: true,
            ..Self::default()
        }
    }
    /// New parts in the holes of a drilled ball the customer brings: set the grip for inserts, slug or sleeve.
    #[must_use]
    pub fn new_parts() -> Self {
        Self {
            new_parts: true,
            ..Self::default()
        }
    }
    /// New holes in a drilled ball the customer brings, with so many old ones filled.
    #[must_use]
    pub fn redrill(plugs: u8) -> Self {
        Self {
            redrill: true,
            plugs,
            ..Self::default()
        }
    }
}

/// What an order comes to. The lines and the tax add up to the total, to the cent.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Quote {
    lines: Vec<(String, i64)>,
    tax: i64,
    total: i64,
}

impl Quote {
    /// What is charged for, each with its price before tax, in cents.
    #[must_use]
    pub fn lines(&self) -> &[(String, i64)] {
        &self.lines
    }
    /// Sales tax, in cents, rounded to the nearest with halves up.
    #[must_use]
    pub fn tax(&self) -> i64 {
        self.tax
    }
    /// What the customer pays, in cents.
    #[must_use]
    pub fn total(&self) -> i64 {
        self.total
    }
}

impl PriceList {
    /// What the order comes to. Services priced at nothing are listed too, so that the customer sees what is included.
    #[must_use]
    pub fn quote(&self, order: &Order<'_>) -> Quote {
        let mut lines: Vec<(String, i64)> = Vec::new();
        let mut line = |label: &str, price: i64| lines.push((label.to_owned(), price));
        let mut drilled_balls = 0;
        if let Some((model, weight)) = order.ball {
            line(
                &format!("{}, {}", model.name(), Notation::Weight.write(weight)),
                model.price(),
            );
            if !order.undrilled {
                drilled_balls += 1;
                line("Drilling", self.drilling_with_ball);
            }
        }
        if order.easing {
            line("Easing the holes", 0);
        }
        match order.plugs {
            0 => {}
            1 => line("Filling an old hole", self.plug),
            plugs => line(
                &format!("Filling {plugs} old holes"),
                i64::from(plugs) * self.plug,
            ),
        }
        if order.redrill {
            drilled_balls += 1;
            line("Drilling new holes", self.redrill);
        }
        if order.own_ball {
            drilled_balls += 1;
            line("Drilling your own ball", self.drilling_own_ball);
        }
        for _ in 0..drilled_balls + usize::from(order.new_parts) {
            if order.grip == Grip::Fingertip {
                line("Finger inserts, a pair", self.finger_inserts);
            }
            if order.sleeve {
                line("Thumb sleeve that can be changed", self.thumb_sleeve);
            } else if order.slug {
                line("Thumb slug", self.thumb_slug);
            }
        }
        let net: i64 = lines.iter().map(|(_, price)| price).sum();
        // Thousandths of a percent of cents; adding half the divisor first rounds halves up.
        let tax = (net * self.tax + 50_000) / 100_000;
        Quote {
            lines,
            tax,
            total: net + tax,
        }
    }
}
